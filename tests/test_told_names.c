/* SPDX-License-Identifier: MIT */
/* Figures asked for by name, what moves the total against estimates with edited rates, where
 * hinges are bored, and days and hours in words. */
#include "support.h"

#include "report/words/bore_list.h"
#include "report/words/day_words.h"
#include "report/words/field.h"
#include "report/words/moves.h"
#include "report/words/named_figure.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <math.h>

/* --- figures by name --- */

struct name_case {
    const char *name;
    struct want want; /* whose figure it is; THING_NONE: there is none */
    const char *near;
};

#define NAMED(name, ...)                                                                           \
    { name, __VA_ARGS__, NULL }
#define NEAR(name, near)                                                                           \
    { name, {0}, near }

static const struct name_case names[] = {
    /* the job's own */
    NAMED("total", SALE(total, NULL)), NAMED("TOTAL", SALE(total, NULL)),
    /* a row is its price; its own figures follow its name */
    NAMED("A", DOOR(0, unit, NULL)), NAMED("a", DOOR(0, unit, NULL)),
    NAMED("B", DOOR(1, unit, NULL)), NAMED("A width", LEAF(0, width, NULL)),
    NAMED("B width", LEAF(1, width, NULL)), NAMED("b HEIGHT", LEAF(1, height, NULL)),
    NAMED("B weight", LEAF(1, weight, NULL)),
    NAMED("A work", {"share", THING_SHARE, 0, offsetof(struct operation_share, person), NULL}),
    NAMED("B work", {"share", THING_SHARE, 1, offsetof(struct operation_share, person), NULL}),
    /* goods and work */
    NAMED("poplar net", LUMBER(0, net, NULL)), NAMED("poplar", LUMBER(0, priced.cost, NULL)),
    NAMED("ply", SHEET(0, charged, NULL)), NAMED("work", OPERATION(0, cost, NULL)),
    NAMED("hinge", HARDWARE(0, charged, NULL)),
    /* there is no such name, and what is near it */
    NEAR("totl", "total"), NEAR("popla", "poplar"), NEAR("B weihgt", "B weight"),
    NEAR("workk", "work"), NEAR("A  weight", "A weight"), NEAR("", NULL),
    NEAR("nothing like it at all", NULL), NEAR("C weight", "A weight"),
    NEAR("board", NULL), /* in the rates, not in the job */
};

static void test_names(void **state) {
    static const char *const edits[] = {"operation work|per = door\nminutes = 10",
                                        "door plain|operations = work", "make|hinge = hinge", NULL};
    struct bench bench;
    struct pool pool;
    (void)state;
    bench_open(&bench, "names", BENCH_INCH, edits, "id,width,height\nA,15,30\nB,18,40\n");
    bench_sound(&bench);
    pool_init(&pool);
    for (size_t i = 0; i < COUNT(names); i++) {
        const char *near = NULL;
        fig wanted = {0};
        const fig found = named_figure(&bench.estimate, &pool, names[i].name, &near);
        const void *const thing = bench_thing(&bench, &names[i].want);
        if (thing != NULL) {
            memcpy(&wanted, (const char *)thing + names[i].want.at, sizeof wanted);
            assert_false(fig_none(wanted));
        }
        if (found.id != wanted.id) {
            bench_wrong(&bench, "'%s' is figure %u, expected %u", names[i].name, (unsigned)found.id,
                        (unsigned)wanted.id);
        }
        if ((near == NULL) != (names[i].near == NULL) ||
            (near != NULL && strcmp(near, names[i].near) != 0)) {
            bench_wrong(&bench, "near '%s' is '%s', expected '%s'", names[i].name,
                        near == NULL ? "none" : near,
                        names[i].near == NULL ? "none" : names[i].near);
        }
    }
    pool_clear(&pool);
    assert_int_equal(bench_close(&bench), 0);
}

/* Of each row of each sample every figure of its own is found by the row's name and its label, and
 * by its key where that is another. */
static bool text_is(const char *a, const char *b) {
    return a != NULL && strcmp(a, b) == 0;
}

static void check_rows(struct bench *bench, struct pool *pool) {
    const struct estimate *const e = &bench->estimate;
    for (size_t r = 0; r < e->quantities.count; r++) {
        const char *const id = e->quantities.leaves[r].door->name;
        for (size_t i = 0; i < fields_leaf.count; i++) {
            const struct field *const field = &fields_leaf.fields[i];
            const fig wanted = field_figure(field, &e->quantities.leaves[r]);
            const char *near = NULL;
            const char *const asked[] = {field_label(field), field->key};
            for (size_t k = 0; k < 2 && !fig_none(wanted); k++) {
                if (asked[k] == NULL) {
                    continue;
                }
                const fig found =
                    named_figure(e, pool, pool_words(pool, "%s %s", id, asked[k]), &near);
                /* what has the same name before it is of the door's price */
                bool other = false;
                for (size_t p = 0; p < fields_door_price.count; p++) {
                    other = other || text_is(field_label(&fields_door_price.fields[p]), asked[k]) ||
                            text_is(fields_door_price.fields[p].key, asked[k]);
                }
                if (!other && found.id != wanted.id) {
                    bench_wrong(bench, "%s %s is another figure", id, asked[k]);
                }
            }
        }
    }
}

static void test_rows(void **state) {
    static const char *const jobs[] = {"samples/metric/tea-kitchen.ini", "tests/data/opens.ini"};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(jobs); i++) {
        struct bench bench;
        struct pool pool;
        bench_open_job(&bench, jobs[i]);
        bench_sound(&bench);
        pool_init(&pool);
        check_rows(&bench, &pool);
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- what moves the total --- */

/* A number of the rates, and the same a tenth higher. */
static const struct {
    const char *section, *key, *is, *more;
} tenths[] = {
    {"shop", "labor rate", "labor rate = 60.00 per hour", "labor rate = 66.00 per hour"},
    {"lumber poplar", "price", "price = 4.00 per bf", "price = 4.40 per bf"},
    {"sheet ply", "price", "price = 50.00 per sheet", "price = 55.00 per sheet"},
    {"operation work", "minutes", "minutes = 10", "minutes = 11"},
    {"machine sander", "rate", "rate = 6.00 per hour", "rate = 6.60 per hour"},
    {"shop", "overhead", "overhead = 20 % of cost", "overhead = 22 % of cost"},
    {"shop", "profit", "profit = 15 % markup", "profit = 16.5 % markup"},
};

#define MOVING "id,count,width,height\nA,12,15,30\nB,3,18,40\n"

static double total_with(const char *section, const char *key_value) {
    char edit[200];
    struct bench bench;
    (void)snprintf(edit, sizeof edit, "%s|%s", section, key_value);
    const char *const edits[] = {"operation work|per = door\nminutes = 10\nmachine = sander",
                                 "door plain|operations = work",
                                 "shop|overhead = 20 % of cost\nprofit = 15 % markup", edit, NULL};
    bench_open(&bench, key_value, BENCH_INCH, edits, MOVING);
    bench_sound(&bench);
    const double total = tape_real(&bench.estimate.tape, bench.estimate.sale.total);
    assert_int_equal(bench_close(&bench), 0);
    return total;
}

static void test_moves(void **state) {
    static const char *const edits[] = {"operation work|per = door\nminutes = 10\nmachine = sander",
                                        "door plain|operations = work",
                                        "shop|overhead = 20 % of cost\nprofit = 15 % markup", NULL};
    struct bench bench;
    struct pool pool;
    (void)state;
    bench_open(&bench, "moves", BENCH_INCH, edits, MOVING);
    bench_sound(&bench);
    pool_init(&pool);
    const struct moves moves = moves_of(&bench.estimate, &pool);
    assert_false(pool_failed(&pool));
    for (size_t i = 1; i < moves.count; i++) {
        assert_true(fabs(moves.list[i - 1].adds) >= fabs(moves.list[i].adds));
    }
    for (size_t t = 0; t < COUNT(tenths); t++) {
        const double adds = total_with(tenths[t].section, tenths[t].more) -
                            total_with(tenths[t].section, tenths[t].is);
        const struct move *found = NULL;
        for (size_t i = 0; i < moves.count; i++) {
            const struct setting *const s = moves.list[i].setting;
            if (strcmp(s->title, tenths[t].section) == 0 && strcmp(s->key, tenths[t].key) == 0) {
                assert_null(found);
                found = &moves.list[i];
            }
        }
        if (found == NULL) {
            bench_wrong(&bench, "[%s] %s does not move the total", tenths[t].section,
                        tenths[t].key);
            continue;
        }
        /* what is rounded cent by cent, door by door */
        if (fabs(found->adds - adds) > 0.15) {
            bench_wrong(&bench, "[%s] %s adds %.4f, edited %.4f", tenths[t].section, tenths[t].key,
                        found->adds, adds);
        }
    }
    pool_clear(&pool);
    assert_int_equal(bench_close(&bench), 0);
}

/* --- bores --- */

struct bores_case {
    const char *name, *doors;
    const char *groups; /* `edge: places = hinges (doors)` of each, parted by ` | ` */
};

#define PLACES "id,count,width,height,hinge side,hinges,hinges at\n"

static const struct bores_case bores[] = {
    {"one door", PLACES "A,1,15,30,left,2,3 1/2 | 26 1/2\n", "30: 3 1/2, 26 1/2 = 2 (A 1)"},
    {"alike though counted apart", PLACES "A,2,15,30,left,2,3 | 27\nB,3,18,30,right,2,3 | 27\n",
     "30: 3, 27 = 10 (A 2, B 3)"},
    {"the longest edge first",
     PLACES "A,1,15,30,left,2,3 | 27\nB,1,15,40,left,2,3 | 37\nC,1,15,30,left,3,3 | 15 | 27\n",
     "40: 3, 37 = 2 (B 1) | 30: 3, 27 = 2 (A 1) | 30: 3, 15, 27 = 3 (C 1)"},
    {"another place", PLACES "A,1,15,30,left,2,3 | 27\nB,1,15,30,left,2,3 | 26\n",
     "30: 3, 26 = 2 (B 1) | 30: 3, 27 = 2 (A 1)"},
    {"nobody says where", "id,count,width,height,hinge side,hinges\nA,1,15,30,left,2\n", ""},
};

static void dump_bores(const struct estimate *e, struct pool *pool, char *text, size_t size) {
    struct bore_list list;
    assert_true(bore_list_make(&list, pool, e));
    text[0] = '\0';
    for (size_t i = 0; i < list.count; i++) {
        const struct bore_group *const g = &list.groups[i];
        char edge[32];
        (void)snprintf(text + strlen(text), size - strlen(text), "%s%s: %s = %lld (%s)",
                       i == 0 ? "" : " | ", length_show(g->edge, LENGTH_INCH, edge, sizeof edge),
                       g->places, (long long)g->hinges, g->doors);
    }
}

static void test_bores(void **state) {
    static const char *const edits[] = {"make|hinge = hinge", NULL};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(bores); i++) {
        struct bench bench;
        struct pool pool;
        char text[1000];
        bench_open(&bench, bores[i].name, BENCH_INCH, edits, bores[i].doors);
        bench_sound(&bench);
        pool_init(&pool);
        dump_bores(&bench.estimate, &pool, text, sizeof text);
        if (strcmp(text, bores[i].groups) != 0) {
            bench_wrong(&bench, "is\n  %s, expected\n  %s", text, bores[i].groups);
        }
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Of every sample: all hinges of leaves whose places are said, each once. */
static void test_all_bores(void **state) {
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini", "tests/data/opens.ini"};
    (void)state;
    for (size_t i = 0; i < COUNT(jobs); i++) {
        struct bench bench;
        struct pool pool;
        struct bore_list list;
        int64_t wanted = 0;
        int64_t found = 0;
        bench_open_job(&bench, jobs[i]);
        const struct estimate *const e = &bench.estimate;
        pool_init(&pool);
        assert_true(bore_list_make(&list, &pool, e));
        for (size_t r = 0; r < e->quantities.count; r++) {
            const struct leaf_figures *const leaf = &e->quantities.leaves[r];
            const char *const places = bore_places(&pool, e, leaf);
            const int64_t hinges = tape_amount(&e->tape, leaf->hinges);
            assert_int_equal(places[0] != '\0', leaf->hinge_at != NULL);
            wanted += leaf->hinge_at == NULL ? 0 : hinges * tape_amount(&e->tape, leaf->pieces);
            int64_t commas = 0;
            for (const char *at = strchr(places, ','); at != NULL; at = strchr(at + 1, ',')) {
                commas++;
            }
            assert_true(places[0] == '\0' || commas == hinges - 1);
        }
        for (size_t g = 0; g < list.count; g++) {
            found += list.groups[g].hinges;
            assert_true(g == 0 || list.groups[g].hinge != list.groups[g - 1].hinge ||
                        list.groups[g].level != list.groups[g - 1].level ||
                        list.groups[g].edge <= list.groups[g - 1].edge);
        }
        assert_int_equal(found, wanted);
        pool_clear(&pool);
        assert_int_equal(bench_close(&bench), 0);
    }
}

/* --- days and hours --- */

/* Weekday as RFC 3339, appendix B, has it; 0: Sunday. */
static int weekday(int year, int month, int day) {
    month -= 2;
    if (month < 1) {
        month += 12;
        year--;
    }
    const int century = year / 100;
    year %= 100;
    return ((26 * month - 2) / 10 + day + year + year / 4 + century / 4 + 5 * century) % 7;
}

static void test_days(void **state) {
    static const char *const short_names[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    const int32_t first = date_number((struct date){1999, 12, 1});
    (void)state;
    for (int32_t day = first; day < first + 12000; day += 1) {
        const struct date date = date_of_number(day);
        char wanted[32];
        (void)snprintf(wanted, sizeof wanted, "%s %04d-%02d-%02d",
                       short_names[weekday(date.year, date.month, date.day)], (int)date.year,
                       (int)date.month, (int)date.day);
        assert_string_equal(show_day(day).text, wanted);
    }
}

/* Tenths of an hour, six minutes each, a half up. */
static void test_hours(void **state) {
    (void)state;
    for (int64_t minutes = 0; minutes < 2000; minutes++) {
        char wanted[32];
        const int64_t tenths_of = (minutes + 3) / 6;
        (void)snprintf(wanted, sizeof wanted, "%lld.%lld", (long long)(tenths_of / 10),
                       (long long)(tenths_of % 10));
        assert_string_equal(show_hours(minutes).text, wanted);
    }
    assert_string_equal(show_working_days(1).text, "1 working day");
    assert_string_equal(show_working_days(2).text, "2 working days");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_names),     cmocka_unit_test(test_rows),
        cmocka_unit_test(test_moves),     cmocka_unit_test(test_bores),
        cmocka_unit_test(test_all_bores), cmocka_unit_test(test_days),
        cmocka_unit_test(test_hours),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
