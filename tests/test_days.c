/* SPDX-License-Identifier: MIT */
/* Steps of work made of an estimate, and the days that they take, each small enough to be put in
 * order by hand. A working day has eight hours, 2026-03-02 is a Monday. */
#include "support.h"

#include "base/date.h"
#include "days/work/day_plan.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

struct days_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *ready;    /* all done */
    const char *soonest;  /* bound; NULL: the same */
    const char *decides;  /* letter of its cause; NULL: not looked at */
    const char *one_more; /* `p 1`: days saved by a person; NULL: not looked at */
    int64_t minutes;      /* of people; 0: not looked at */
};

/* Letters of enum day_cause, in its order. */
#define CAUSES "odprcm"

#define SLAB "make|style = slab", "door slab|operations = cut, look"
#define LAST "days|last = look"
#define CLAMPED                                                                                    \
    "door plain|operations = glue, look", "machine clamps|rate = 1 per hour\nkind = clamps"
#define GLUE "operation glue|per = joint\nmachine = clamps\nminutes = 2.5" /* 10 a door */
#define LOOK "operation look|per = job\nminutes = 1"
#define PAINTED                                                                                    \
    "make|style = slab\nfinish = painted", "door slab|operations = look",                          \
        "finish painted|operations = spray"
/* A slab of 18 x 30 x 3/4 has 1080 + 72 sq in sprayed, 8 sq ft: 10 minutes. */
#define SPRAY "operation spray|per = sqft sprayed per coat\nmachine = sander\nminutes = 1.25"

static const struct days_case cases[] = {
    /* days */
    {"ten hours in two days",
     {SLAB, "operation cut|per = job\nminutes = 599", LOOK},
     "D1,18,30\n",
     "2026-03-03",
     NULL,
     "o",
     NULL,
     600},
    {"eight hours in one",
     {SLAB, "operation cut|per = job\nminutes = 479", LOOK},
     "D1,18,30\n",
     "2026-03-02",
     NULL,
     "o",
     NULL,
     480},
    {"over the weekend",
     {SLAB, "operation cut|per = job\nminutes = 2400", LOOK},
     "D1,18,30\n",
     "2026-03-09",
     NULL,
     "o",
     NULL,
     2401},
    {"days off, one by one and in a row",
     {SLAB, "operation cut|per = job\nminutes = 960", LOOK,
      "days|holidays = 2026-03-03, 2026-03-05 to 2026-03-09"},
     "D1,18,30\n",
     "2026-03-10",
     NULL,
     NULL,
     NULL,
     961},
    {"Saturdays are worked",
     {SLAB, "operation cut|per = job\nminutes = 2400", LOOK,
      "days|working days = Mon, Tue, Wed, Thu, Fri, Sat"},
     "D1,18,30\n",
     "2026-03-07",
     NULL,
     NULL,
     NULL,
     0},
    {"the allowance takes time",
     {SLAB, "operation cut|per = job\nminutes = 470", LOOK, "shop|allowance = 10 % added"},
     "D1,18,30\n",
     "2026-03-03",
     NULL,
     NULL,
     NULL,
     519},

    /* people */
    {"two hands at once are one day",
     {SLAB, "operation cut|per = job\nminutes = 470\nhands = 2", LOOK, "days|people = 2"},
     "D1,18,30\n",
     "2026-03-02",
     NULL,
     NULL,
     NULL,
     941},
    {"handwork on doors is shared",
     {SLAB, "operation cut|per = door\nminutes = 900", LOOK, "days|people = 2"},
     "D1,18,30\n",
     "2026-03-02",
     NULL,
     NULL,
     "p 0",
     901},
    {"by one person it takes two days",
     {SLAB, "operation cut|per = door\nminutes = 900", LOOK},
     "D1,18,30\n",
     "2026-03-03",
     NULL,
     NULL,
     "p 1",
     901},
    {"what is done before is not planned",
     {SLAB, "operation cut|per = job\nminutes = 599", LOOK, "days|not planned = cut"},
     "D1,18,30\n",
     "2026-03-02",
     NULL,
     NULL,
     NULL,
     1},

    /* clamps: at 0 and 10, out at 250 and 260; the third at 250 is out after closing time */
    {"two sets for three doors",
     {CLAMPED, GLUE, LOOK, "days|clamp sets = 2\nclamp time = 240 min\nlast = look"},
     "D1,18,30\nD2,18,30\nD3,18,30\n",
     "2026-03-03",
     "2026-03-02",
     NULL,
     "c 1",
     31},
    {"three sets",
     {CLAMPED, GLUE, LOOK, "days|clamp sets = 3\nclamp time = 240 min\nlast = look"},
     "D1,18,30\nD2,18,30\nD3,18,30\n",
     "2026-03-02",
     NULL,
     NULL,
     "c 0",
     31},
    {"glue sets at night",
     {CLAMPED, GLUE, LOOK, "days|clamp sets = 1\nclamp time = 475 min\nlast = look"},
     "D1,18,30\nD2,18,30\n",
     "2026-03-04",
     "2026-03-03",
     NULL,
     "c 1",
     21},

    /* drying: the back, ten hours, the face, ten hours */
    {"a coat on both sides",
     {PAINTED, SPRAY, LOOK, "coating paint|dry = 10 hours", LAST},
     "D1,18,30\n",
     "2026-03-04",
     NULL,
     "d",
     "d 2",
     11},
    {"both sides at once",
     {PAINTED, SPRAY, LOOK, "coating paint|dry = 10 hours",
      "days|last = look\nboth faces at once = yes"},
     "D1,18,30\n",
     "2026-03-03",
     NULL,
     "d",
     "d 1",
     11},
    {"two coats",
     {PAINTED, SPRAY, LOOK, "coating paint|dry = 10 hours", "finish painted|coats = paint x 2",
      "days|last = look\nboth faces at once = yes"},
     "D1,18,30\n",
     "2026-03-04",
     NULL,
     "d",
     NULL,
     21},
    {"the front alone",
     {PAINTED, SPRAY, LOOK, "coating paint|dry = 10 hours", "finish painted|faces = front", LAST},
     "D1,18,30\n",
     "2026-03-03",
     NULL,
     "d",
     NULL,
     0},

    /* racks: a door at 0 until 250, the other from 250 until 500 */
    {"a place for one door",
     {PAINTED, SPRAY, LOOK, "coating paint|dry = 4 hours",
      "days|last = look\nboth faces at once = yes\nracks = 1\nrack places = 1"},
     "D1,18,30\nD2,18,30\n",
     "2026-03-03",
     NULL,
     "r",
     "r 1",
     21},
    {"two racks",
     {PAINTED, SPRAY, LOOK, "coating paint|dry = 4 hours",
      "days|last = look\nboth faces at once = yes\nracks = 2\nrack places = 1"},
     "D1,18,30\nD2,18,30\n",
     "2026-03-02",
     NULL,
     NULL,
     "r 0",
     21},

    /* done by others: sent on Monday, back on Thursday */
    {"three days at the finisher",
     {"make|style = slab\nfinish = painted", "door slab|operations = look",
      "finish painted|put out = 5 per sqft\ncoats\nspray\noperations = send",
      "operation send|per = door\nminutes = 10", LOOK, "days|last = look\nfinisher = 3 days"},
     "D1,18,30\n",
     "2026-03-05",
     NULL,
     "d",
     NULL,
     11},
    {"three days at the finisher, sent off once for the job",
     {"make|style = slab\nfinish = painted", "door slab|operations = look",
      "finish painted|put out = 5 per sqft\ncoats\nspray\noperations = send",
      "operation send|per = job\nminutes = 10", LOOK, "days|last = look\nfinisher = 3 days"},
     "D1,18,30\n",
     "2026-03-05",
     NULL,
     "d",
     NULL,
     11},
    {"wrapped door by door, then sent off once",
     {"make|style = slab\nfinish = painted", "door slab|operations = look",
      "finish painted|put out = 5 per sqft\ncoats\nspray\noperations = wrap, send",
      "operation wrap|per = door\nminutes = 5", "operation send|per = job\nminutes = 10", LOOK,
      "days|last = look\nfinisher = 3 days"},
     "D1,18,30\n",
     "2026-03-05",
     NULL,
     "d",
     NULL,
     16},
    {"three days at the finisher, who calls for them",
     {"make|style = slab\nfinish = painted", "door slab|operations = look",
      "finish painted|put out = 5 per sqft\ncoats\nspray", LOOK,
      "days|last = look\nfinisher = 3 days"},
     "D1,18,30\n",
     "2026-03-05",
     NULL,
     "d",
     NULL,
     1},
    {"painted here, no days at a finisher",
     {"make|style = slab\nfinish = painted", "door slab|operations = look", LOOK,
      "days|last = look\nfinisher = 3 days"},
     "D1,18,30\n",
     "2026-03-02",
     NULL,
     NULL,
     NULL,
     1},

    /* frames and panels side by side, then the doors */
    {"panels beside frames",
     {"door plain|operations = rip, size", "operation rip|per = rail\nminutes = 230",
      "operation size|per = panel\nminutes = 460", "days|people = 2"},
     "D1,18,30\n",
     "2026-03-02",
     NULL,
     NULL,
     NULL,
     920},
};

static struct day_plan plan_of(const struct bench *bench, int32_t from, struct pool *pool) {
    struct day_job *const job = pool_take(pool, 1, sizeof *job);
    struct day_plan plan;
    assert_non_null(job);
    job->estimate = &bench->estimate;
    assert_int_equal(day_plan_make(&plan, (struct day_request){job, 1, from}, pool), DAY_OK);
    return plan;
}

static void check_day(struct bench *bench, const char *what, int32_t day, const char *wanted) {
    char text[16];
    if (strcmp(date_text(date_of_number(day), text, sizeof text), wanted) != 0) {
        bench_wrong(bench, "%s on %s in place of %s", what, text, wanted);
    }
}

/* What one more of a cause saves. */
static void check_more(struct bench *bench, const struct day_plan *plan, const char *wanted) {
    for (size_t i = 0; i < plan->more_count; i++) {
        if (CAUSES[plan->more[i].cause] == wanted[0]) {
            if (plan->more[i].gained != strtol(wanted + 1, NULL, 10)) {
                bench_wrong(bench, "one more saves %lld", (long long)plan->more[i].gained);
            }
            return;
        }
    }
    bench_wrong(bench, "no '%s'", wanted);
}

static void by_hand(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        const struct days_case *const c = &cases[i];
        struct bench bench;
        struct pool pool;
        pool_init(&pool);
        bench_open(&bench, c->name, BENCH_INCH, c->edits, c->doors);
        bench_sound(&bench);
        const struct day_plan plan = plan_of(&bench, INT32_MIN, &pool);
        check_day(&bench, "ready", plan.ready, c->ready);
        check_day(&bench, "bound", plan.soonest, c->soonest == NULL ? c->ready : c->soonest);
        if (c->decides != NULL && CAUSES[plan.bounds[0].cause] != c->decides[0]) {
            bench_wrong(&bench, "decided by %c", CAUSES[plan.bounds[0].cause]);
        }
        if (c->one_more != NULL) {
            check_more(&bench, &plan, c->one_more);
        }
        if (c->minutes != 0 && plan.minutes != c->minutes) {
            bench_wrong(&bench, "%lld minutes", (long long)plan.minutes);
        }
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* When work begins: as asked, else when the client took the job, else at the date of the quote. */
static void from_when(void **state) {
    static const struct {
        const char *agreed;
        int32_t year;
        const char *first;
    } begins[] = {
        {"job|note = none", 0, "2026-03-02"},
        {"job|agreed = as listed, 2026-03-14", 0, "2026-03-16"}, /* a Saturday */
        {"job|agreed = as listed, 2026-03-14", 2027, "2027-01-01"},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(begins); i++) {
        struct bench bench;
        struct pool pool;
        pool_init(&pool);
        bench_open(&bench, begins[i].first, BENCH_INCH,
                   (const char *const[BENCH_MOST_EDITS]){
                       SLAB, "operation cut|per = job\nminutes = 5", LOOK, begins[i].agreed},
                   "D1,18,30\n");
        bench_sound(&bench);
        const int32_t from =
            begins[i].year == 0 ? INT32_MIN : date_number((struct date){begins[i].year, 1, 1});
        const struct day_plan plan = plan_of(&bench, from, &pool);
        check_day(&bench, "first", plan.first, begins[i].first);
        pool_clear(&pool);
        assert_int_equal(bench_close(&bench), 0);
    }
}

/* What is too much of steps or of days is told. */
static void too_much(void **state) {
    static const struct {
        const char *name;
        const char *edits[BENCH_MOST_EDITS];
        const char *doors;
        enum day_result result;
    } much[] = {
        {"loads of one door",
         {PAINTED, SPRAY, LOOK, "days|racks = 1\nrack places = 1"},
         "D1,18,30,9999\nD2,18,30,9999\n",
         DAY_TOO_MANY},
        {"loads within the limit, steps over it",
         {PAINTED, SPRAY, LOOK, "days|racks = 1\nrack places = 1"},
         "D1,18,30,3999\n",
         DAY_TOO_MANY},
        /* 9999 doors a row of 600 minutes each: 12,499 days of 8 hours */
        {"more work than days",
         {SLAB, "operation cut|per = door\nminutes = 600", LOOK},
         "D1,18,30,9999\n",
         DAY_TOO_LONG},
        /* 9999 doors of 479.9 minutes: 4,798,521 of 4,800,000; the last day is kept free, and a
         * year at the finisher is beyond it */
        {"away beyond the last day",
         {"make|style = slab\nfinish = painted", "door slab|operations = cut",
          "operation cut|per = door\nminutes = 479.9",
          "finish painted|put out = 5 per sqft\ncoats\nspray\noperations = send",
          "operation send|per = door\nminutes = 0.01", "days|finisher = 365 days"},
         "D1,18,30,9999\n",
         DAY_TOO_LONG},
    };
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(much); i++) {
        struct bench bench;
        struct pool pool;
        struct day_job job = {0};
        struct day_plan plan;
        char doors[128];
        (void)snprintf(doors, sizeof doors, "id,width,height,count\n%s", much[i].doors);
        pool_init(&pool);
        bench_open(&bench, much[i].name, BENCH_INCH, much[i].edits, doors);
        bench_sound(&bench);
        job.estimate = &bench.estimate;
        const enum day_result result =
            day_plan_make(&plan, (struct day_request){&job, 1, INT32_MIN}, &pool);
        if (result != much[i].result) {
            bench_wrong(&bench, "result %d", (int)result);
        }
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Numbers of days against the C library's: mktime's day of the week, and days by 86400 seconds. */
static void numbers(void **state) {
    static const struct {
        struct date date;
        int32_t number, weekday;
    } known[] = {
        {{1970, 1, 1}, 0, 3},      {{2000, 2, 29}, 11016, 1}, {{2000, 3, 1}, 11017, 2},
        {{1900, 3, 1}, -25508, 3}, {{2026, 3, 2}, 20514, 0},  {{2100, 12, 31}, 47846, 4},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(known); i++) {
        assert_int_equal(date_number(known[i].date), known[i].number);
        assert_int_equal(date_weekday(known[i].number), known[i].weekday);
    }
    for (int32_t day = -25567; day < 60000; day++) {
        const struct date date = date_of_number(day);
        const struct date next = date_after(date, 1);
        assert_int_equal(date_number(date), day);
        assert_int_equal(date_number(next), day + 1);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),
        cmocka_unit_test(from_when),
        cmocka_unit_test(too_much),
        cmocka_unit_test(numbers),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
