/* SPDX-License-Identifier: MIT */
/* A plan by whose work it is: nobody and nothing does two things at once, all minutes of the plan
 * are given out and no more, people keep to what they were at. Small plans are written down whole.
 * 2026-03-02 is a Monday, a working day has eight hours. */
#include "support.h"

#include "base/date.h"
#include "case.h"
#include "days/work/day_rows.h"
#include "report/calendar/day_calendar.h"
#include "report/chart/chart_parts.h"
#include "report/words/day_words.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

struct planned_rows {
    struct bench *bench;
    struct pool pool;
    struct day_job jobs[2];
    struct day_plan plan;
    struct day_rows rows;
};

static void make(struct planned_rows *p, struct bench *bench, size_t jobs, int32_t from) {
    *p = (struct planned_rows){.bench = bench};
    pool_init(&p->pool);
    for (size_t i = 0; i < jobs; i++) {
        p->jobs[i].estimate = &bench->estimate;
    }
    assert_int_equal(
        day_plan_make(&p->plan, (struct day_request){.jobs = p->jobs, .count = jobs, .from = from},
                      &p->pool),
        DAY_OK);
    assert_true(day_rows_make(&p->rows, &p->plan, &p->pool));
}

/* --- all plans --- */

/* The entries of a row stand by day, then as the work goes; the rows take them all, one behind the
 * other. */
static void check_order(struct planned_rows *p) {
    size_t next = 0;
    for (size_t r = 0; r < p->rows.row_count; r++) {
        const struct day_row *const row = &p->rows.rows[r];
        if (row->first_entry != next || row->entry_count == 0) {
            bench_wrong(p->bench, "row %zu does not follow the one before it", r);
        }
        next = row->first_entry + row->entry_count;
        if (r > 0 && (row->kind < row[-1].kind && row->kind != ROW_MACHINE)) {
            bench_wrong(p->bench, "row %zu stands before its turn", r);
        }
        for (size_t i = row->first_entry; i < next; i++) {
            const struct day_entry *const entry = &p->rows.entries[i];
            if (entry->row != r || entry->day >= p->plan.work_day_count || entry->span_count == 0) {
                bench_wrong(p->bench, "entry %zu is of no row or day", i);
            }
            if (i > row->first_entry &&
                (entry->day < entry[-1].day ||
                 (entry->day == entry[-1].day && p->rows.spans[entry->first_span].from <
                                                     p->rows.spans[entry[-1].first_span].from))) {
                bench_wrong(p->bench, "entry %zu stands before its turn", i);
            }
        }
    }
    if (next != p->rows.entry_count) {
        bench_wrong(p->bench, "%zu entries are in no row", p->rows.entry_count - next);
    }
}

static void check_spans(struct planned_rows *p) {
    for (size_t i = 0; i < p->rows.entry_count; i++) {
        const struct day_entry *const entry = &p->rows.entries[i];
        int64_t minutes = 0;
        int32_t last = -1;
        for (size_t s = 0; s < entry->span_count; s++) {
            const struct day_stretch span = p->rows.spans[entry->first_span + s];
            if (span.from <= last || span.from >= span.to || span.to > p->plan.day_minutes) {
                bench_wrong(p->bench, "entry %zu: a stretch from %d to %d", i, (int)span.from,
                            (int)span.to);
            }
            minutes += span.to - span.from;
            last = span.to;
        }
        if (minutes != entry->minutes) {
            bench_wrong(p->bench, "entry %zu: %lld minutes in all, %lld said", i,
                        (long long)minutes, (long long)entry->minutes);
        }
    }
}

/* A person, or a machine that is no place where things set, does one thing at a time. */
static void check_alone(struct planned_rows *p) {
    for (size_t r = 0; r < p->rows.row_count; r++) {
        const struct day_row *const row = &p->rows.rows[r];
        if (row->kind != ROW_PERSON && row->kind != ROW_MACHINE) {
            continue;
        }
        char *const taken = calloc(p->plan.work_day_count * (size_t)p->plan.day_minutes + 1, 1);
        assert_non_null(taken);
        for (size_t i = 0; i < row->entry_count; i++) {
            const struct day_entry *const entry = &p->rows.entries[row->first_entry + i];
            for (size_t s = 0; s < entry->span_count; s++) {
                const struct day_stretch span = p->rows.spans[entry->first_span + s];
                for (int32_t minute = span.from; minute < span.to; minute++) {
                    char *const at =
                        &taken[entry->day * (size_t)p->plan.day_minutes + (size_t)minute];
                    if (*at != 0) {
                        bench_wrong(p->bench, "row %zu does two things at once", r);
                        minute = span.to;
                    }
                    *at = 1;
                }
            }
        }
        free(taken);
    }
}

/* Minutes of people of one work on one day: as the lines of the plan have it. */
static void check_minutes(struct planned_rows *p) {
    int64_t all = 0;
    for (size_t i = 0; i < p->plan.line_count; i++) {
        const struct day_line *const line = &p->plan.lines[i];
        int64_t given = 0;
        for (size_t k = 0; k < p->rows.entry_count; k++) {
            const struct day_entry *const entry = &p->rows.entries[k];
            if (p->rows.rows[entry->row].kind == ROW_PERSON && entry->job == line->job &&
                entry->operation == line->operation && strcmp(entry->what, line->what) == 0 &&
                p->plan.work_days[entry->day] == line->day) {
                given += entry->minutes;
            }
        }
        if (given != line->minutes) {
            bench_wrong(p->bench, "%lld of %lld minutes are given to people", (long long)given,
                        (long long)line->minutes);
        }
    }
    for (size_t k = 0; k < p->rows.entry_count; k++) {
        all += p->rows.rows[p->rows.entries[k].row].kind == ROW_PERSON ? p->rows.entries[k].minutes
                                                                       : 0;
    }
    if (all != p->plan.minutes) {
        bench_wrong(p->bench, "people have %lld minutes, the plan %lld", (long long)all,
                    (long long)p->plan.minutes);
    }
}

/* Work at a machine stands in its row as long as its steps take; what waits is in a place. */
static void check_machines(struct planned_rows *p) {
    for (size_t m = 0; m < p->bench->rates.machine_count; m++) {
        int64_t steps = 0;
        int64_t rows = 0;
        for (size_t s = 0; s < p->plan.step_count; s++) {
            const struct day_step *const step = &p->plan.steps[s];
            steps += step->operation >= 0 && step->machine == (int32_t)m ? step->minutes : 0;
        }
        for (size_t k = 0; k < p->rows.entry_count; k++) {
            const struct day_row *const row = &p->rows.rows[p->rows.entries[k].row];
            rows += (row->kind == ROW_MACHINE || row->kind == ROW_CLAMPS) &&
                            row->of == (int32_t)m && !p->rows.entries[k].waits
                        ? p->rows.entries[k].minutes
                        : 0;
        }
        const bool clamps = p->bench->rates.machines[m].kind.choice == MACHINE_CLAMPS;
        /* several sets of clamps at once are one entry */
        if (clamps ? rows > steps : rows != steps) {
            bench_wrong(p->bench, "machine %zu runs %lld minutes, its work takes %lld", m,
                        (long long)rows, (long long)steps);
        }
    }
    for (size_t k = 0; k < p->rows.entry_count; k++) {
        const enum day_row_kind kind = p->rows.rows[p->rows.entries[k].row].kind;
        const bool place = kind == ROW_CLAMPS || kind == ROW_RACKS || kind == ROW_FINISHER;
        if (p->rows.entries[k].waits != place &&
            !(kind == ROW_CLAMPS && !p->rows.entries[k].waits)) {
            bench_wrong(p->bench, "entry %zu waits where nothing waits, or does not", k);
        }
        const char *const words =
            day_entry_words(&p->bench->rates, &p->rows, &p->rows.entries[k], &p->pool);
        const bool told = strstr(words, ", in clamps") != NULL ||
                          strstr(words, ", dries") != NULL || strstr(words, ", away") != NULL;
        if (told != p->rows.entries[k].waits) {
            bench_wrong(p->bench, "'%s'", words);
        }
    }
}

static void check_all(struct planned_rows *p) {
    check_order(p);
    check_spans(p);
    check_alone(p);
    check_minutes(p);
    check_machines(p);
}

static void test_samples(void **state) {
    static const struct {
        const char *job;
        int32_t people;
        size_t count; /* of this job */
    } rows[] = {{"samples/metric/tea-kitchen.ini", 1, 2},
                {"samples/metric/tea-kitchen.ini", 3, 1},
                {"samples/old-house/old-house.ini", 4, 1}};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct bench bench;
        struct planned_rows p;
        bench_open_job(&bench, rows[i].job);
        bench_sound(&bench);
        bench.rates.days.people.amount = rows[i].people;
        make(&p, &bench, rows[i].count, INT32_MIN);
        check_all(&p);
        pool_clear(&p.pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- small plans, whole --- */

struct rows_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *rows; /* `person 1: 0 cut 0-480, 1 cut 0-120; ...`: day, work, minutes */
};

#define SLAB "make|style = slab", "door slab|operations = cut, look"
#define LOOK "operation look|per = job\nminutes = 1"

static const struct rows_case small[] = {
    {"over a night",
     {SLAB, "operation cut|per = job\nminutes = 599", LOOK},
     "D1,18,30\n",
     "person 1: 0 cut 0-480, 1 cut 0-119, 1 look 119-120"},
    {"two hands",
     {SLAB, "operation cut|per = job\nminutes = 100\nhands = 2", LOOK, "days|people = 3"},
     "D1,18,30\n",
     "person 1: 0 cut 0-100, 0 look 100-101; person 2: 0 cut 0-100"},
    {"shared, and each keeps to it",
     {SLAB, "operation cut|per = door\nminutes = 600", LOOK, "days|people = 2"},
     "D1,18,30\n",
     "person 1: 0 cut 0-300, 0 look 300-301; person 2: 0 cut 0-300"},
    {"a machine",
     {SLAB, "operation cut|per = job\nminutes = 30\nmachine = sander", LOOK},
     "D1,18,30\n",
     "person 1: 0 cut 0-30, 0 look 30-31; sander: 0 cut 0-30"},
    {"clamps set",
     {"door plain|operations = glue, look", "machine clamps|rate = 1 per hour\nkind = clamps",
      "operation glue|per = joint\nmachine = clamps\nminutes = 2.5", LOOK,
      "days|clamp sets = 2\nclamp time = 60 min"},
     "id,count,width,height\nD1,3,18,30\n",
     "person 1: 0 glue 0-20 70-80, 0 look 140-141; clamps: 0 glue 0-20 70-80, 0 glue, in clamps "
     "10-140"},
    {"paint dries",
     {"make|style = slab\nfinish = painted", "door slab|operations = look",
      "finish painted|operations = spray",
      "operation spray|per = sqft sprayed per coat\nmachine = sander\nminutes = 1.25",
      "coating paint|dry = 2 hours", "finish painted|coats = paint x 2", LOOK},
     "D1,18,30\n",
     "person 1: 0 look 0-1, 0 spray: paint, coat 1 of 2 1-6 126-131, 0 spray: paint, coat 2 of 2 "
     "251-256 376-381; sander: 0 spray: paint, coat 1 of 2 1-6 126-131, 0 spray: paint, coat 2 of "
     "2 251-256 376-381; racks: 0 spray: paint, coat 1 of 2, dries 6-126 131-251, 0 spray: paint, "
     "coat 2 of 2, dries 256-376 381-480"},
    {"sent away for a day, from Monday to Tuesday",
     {"make|style = slab\nfinish = painted", "door slab|operations = look",
      "finish painted|put out = 5 per sqft\ncoats\nspray\noperations = send",
      "operation send|per = door\nminutes = 10", LOOK, "days|finisher = 1 days\nlast = look"},
     "D1,18,30\n",
     "person 1: 0 send 0-10, 1 look 10-11; at the finisher: 0 send, away 10-480, 1 send, away "
     "0-10"},
    {"two coats put on by hand, of two batches",
     {"make|style = slab", "door slab|operations = look", "spray rag|transfer efficiency = 100 %",
      "coating paint|put on = rag", "finish painted|operations = wipe",
      "operation wipe|per = sqft sprayed\nminutes = 1.25", LOOK, "days|last = look"},
     "id,width,height,finish\nD1,18,30,painted\nD2,18,30,none\n",
     "person 1: 0 wipe 0-10, 0 look 10-11"},
};

static void dump_rows(const struct planned_rows *p, char *text, size_t size) {
    struct pool pool;
    pool_init(&pool);
    text[0] = '\0';
    for (size_t r = 0; r < p->rows.row_count; r++) {
        const struct day_row *const row = &p->rows.rows[r];
        (void)snprintf(text + strlen(text), size - strlen(text), "%s%s:", r == 0 ? "" : "; ",
                       day_row_name(&p->bench->rates, row, &pool));
        for (size_t i = 0; i < row->entry_count; i++) {
            const struct day_entry *const entry = &p->rows.entries[row->first_entry + i];
            (void)snprintf(text + strlen(text), size - strlen(text), "%s %zu %s", i == 0 ? "" : ",",
                           entry->day, day_entry_words(&p->bench->rates, &p->rows, entry, &pool));
            for (size_t s = 0; s < entry->span_count; s++) {
                const struct day_stretch span = p->rows.spans[entry->first_span + s];
                (void)snprintf(text + strlen(text), size - strlen(text), " %d-%d", (int)span.from,
                               (int)span.to);
            }
        }
    }
    pool_clear(&pool);
}

static void test_small(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(small); i++) {
        struct bench bench;
        char text[2000];
        bench_open(&bench, small[i].name, BENCH_INCH, small[i].edits, small[i].doors);
        bench_sound(&bench);
        if (bench.result == ESTIMATE_OK) {
            struct planned_rows p;
            make(&p, &bench, 1, INT32_MIN);
            check_all(&p);
            dump_rows(&p, text, sizeof text);
            if (strcmp(text, small[i].rows) != 0) {
                bench_wrong(&bench, "is\n  %s, expected\n  %s", text, small[i].rows);
            }
            pool_clear(&p.pool);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- finishes --- */

/* The only finish that has coats is named once in the chart, whatever stands in its color; coats of
 * the finish of one batch alone have no name before them. */
static void test_only_finish(void **state) {
    static const struct {
        const char *name, *doors, *finish, *coat;
    } rows[] = {
        {"one with coats, one sent out",
         "id,width,height,finish,color\nD1,18,30,painted,gray: 5\nD2,18,30,sent,\n",
         "painted, gray: 5", "paint, coat 1 of 1"},
        {"two colors",
         "id,width,height,finish,color\nD1,18,30,painted,gray\nD2,18,30,painted,red\n", "",
         "paint, coat 1 of 1"},
        {"one batch", "id,width,height,finish,color\nD1,18,30,painted,gray: 5\n", "",
         "paint, coat 1 of 1"},
    };
    static const char *const edits[BENCH_MOST_EDITS] = {
        "make|style = slab",
        "coating paint|tinted = yes",
        "finish painted|operations = spray",
        "finish sent|put out = 5.00 per sqft\noperations = send",
        "operation spray|per = sqft sprayed per coat\nminutes = 10",
        "operation send|per = door\nminutes = 10"};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct bench bench;
        struct planned_rows p;
        size_t coats = 0;
        bench_open(&bench, rows[i].name, BENCH_INCH, edits, rows[i].doors);
        bench_sound(&bench);
        make(&p, &bench, 1, INT32_MIN);
        assert_string_equal(chart_only_finish(&p.rows, &p.pool), rows[i].finish);
        for (size_t k = 0; k < p.rows.entry_count; k++) {
            const struct day_entry *const entry = &p.rows.entries[k];
            if (entry->coat != NULL) {
                assert_string_equal(entry->coat, rows[i].coat);
                coats++;
            }
        }
        assert_true(coats > 0);
        pool_clear(&p.pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- as a calendar --- */

#define FILE_NAME "test-day-rows.ics"

struct lines {
    char *text; /* on the heap */
    char *list[6000];
    size_t count;
};

/* The lines of the calendar, unfolded (RFC 5545, 3.1). */
static void calendar(const struct planned_rows *p, struct lines *lines) {
    struct pool pool;
    pool_init(&pool);
    assert_true(day_calendar_write(&p->plan, &p->rows, FILE_NAME, &pool));
    pool_clear(&pool);
    lines->text = case_load(FILE_NAME, NULL);
    assert_non_null(lines->text);
    assert_int_equal(unlink(FILE_NAME), 0);
    char *to = lines->text;
    for (const char *from = lines->text; *from != '\0'; from++) {
        if (strncmp(from, "\r\n ", 3) == 0) {
            from += 2;
        } else {
            *to++ = *from;
        }
    }
    *to = '\0';
    lines->count = 0;
    for (char *at = lines->text; *at != '\0';) {
        char *const end = strstr(at, "\r\n");
        assert_non_null(end);
        assert_true(lines->count < COUNT(lines->list));
        lines->list[lines->count++] = at;
        *end = '\0';
        at = end + 2;
    }
}

/* The value of a property of the event that begins at `at`; "" where it has none. */
static const char *property(const struct lines *lines, size_t at, const char *name) {
    for (; at < lines->count && strcmp(lines->list[at], "END:VEVENT") != 0; at++) {
        if (strncmp(lines->list[at], name, strlen(name)) == 0) {
            return lines->list[at] + strlen(name);
        }
    }
    return "";
}

/* Events last a day each; the hours that they tell of add up to those of the plan; the last one is
 * left open. */
static void check_events(struct planned_rows *p, const struct lines *lines) {
    double hours = 0;
    size_t events = 0;
    size_t ended = 0;
    size_t ready = 0;
    for (size_t i = 0; i < lines->count; i++) {
        ended += strcmp(lines->list[i], "END:VEVENT") == 0 ? 1 : 0;
        if (strcmp(lines->list[i], "BEGIN:VEVENT") != 0) {
            continue;
        }
        events++;
        const char *const first = property(lines, i, "DTSTART;VALUE=DATE:");
        const char *const behind = property(lines, i, "DTEND;VALUE=DATE:");
        const char *const together = strstr(property(lines, i, "DESCRIPTION:"), "together ");
        const struct date day = {(int32_t)strtol(first, NULL, 10) / 10000,
                                 (int32_t)strtol(first, NULL, 10) / 100 % 100,
                                 (int32_t)strtol(first, NULL, 10) % 100};
        const struct date next = date_of_number(date_number(day) + 1);
        assert_int_equal(strtol(behind, NULL, 10), next.year * 10000 + next.month * 100 + next.day);
        assert_true(property(lines, i, "SUMMARY:")[0] != '\0');
        hours += together == NULL ? 0 : strtod(together + strlen("together "), NULL);
        if (strstr(property(lines, i, "UID:"), "-ready@") != NULL) {
            assert_int_equal(date_number(day), p->plan.jobs[ready].ready);
            ready++;
        }
        for (size_t k = 0; k < i; k++) {
            if (strcmp(lines->list[k], "BEGIN:VEVENT") == 0) {
                assert_string_not_equal(property(lines, k, "UID:"), property(lines, i, "UID:"));
            }
        }
    }
    assert_int_equal(ended, events - 1);
    assert_int_equal(ready, p->plan.job_count);
    /* each is rounded to a tenth of an hour */
    const double off = hours - (double)p->plan.minutes / 60;
    assert_true(off < 0.05 * (double)events && off > -0.05 * (double)events);
}

/* Planned anew from a week later on, the events of a job keep their names. */
static void test_calendar(void **state) {
    static struct lines lines;
    static struct lines later;
    struct bench bench;
    (void)state;
    bench_open_job(&bench, "samples/metric/tea-kitchen.ini");
    for (size_t count = 1; count <= 2; count++) {
        struct planned_rows p;
        struct planned_rows q;
        make(&p, &bench, count, date_number((struct date){2026, 3, 2}));
        make(&q, &bench, count, date_number((struct date){2026, 3, 9}));
        calendar(&p, &lines);
        calendar(&q, &later);
        check_events(&p, &lines);
        check_events(&q, &later);
        assert_string_equal(lines.list[0], "BEGIN:VCALENDAR");
        assert_int_equal(lines.count, later.count);
        for (size_t i = 0; i < lines.count; i++) {
            if (strncmp(lines.list[i], "UID:", 4) == 0) {
                assert_string_equal(lines.list[i], later.list[i]);
            }
        }
        free(lines.text);
        free(later.text);
        pool_clear(&p.pool);
        pool_clear(&q.pool);
    }
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_samples),
        cmocka_unit_test(test_small),
        cmocka_unit_test(test_only_finish),
        cmocka_unit_test(test_calendar),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
