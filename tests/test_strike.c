/* SPDX-License-Identifier: MIT */
/* Rows struck and added, and nearly equal sizes made one: small jobs whose amounts are worked out
 * by hand. Lists of whole samples against edited ones: tests/outside/strike.py. */
#include "price/near_size.h"
#include "price/strike.h"
#include "support.h"

#include "base/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* Slabs of a board of 32 sq ft at 277.20, which so many doors share to the cent; 10 min a door at
 * 60.00 an hour, 36 min for each height. */
#define SLABS                                                                                      \
    "make|style = slab", "door slab|operations = saw", "shop|charge sheets = bought",              \
        "sheet board|price = 277.20 per sheet",                                                    \
        "operation saw|per = door\nminutes = 10\nsetup = 36 min per length"
#define HEAD "id,count,width,height\n"

#define MOST_ROWS 3

/* Money in cents, hours in hundredths, as struct outcome has them: client, before tax, tax,
 * direct, left, bought, hours, of these at the bench, setups. */
struct struck {
    struct outcome less, more;
    int64_t listed, listed_one;
};

static const struct strike_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    size_t rows[MOST_ROWS], row_count; /* those asked for; 0: all */
    struct struck wants[MOST_ROWS];
    struct outcome together;
    size_t want_count;
} cases[] = {
    /* Ten doors of 3 sq ft are one board: 277.20, 100.00 of work, two heights 72.00; 10 % of tax.
     * Struck, the board is still bought; one more of either is a second board, and eleven prices
     * in whole cents are 0.05 more. Hours are 172, 126, 46 and 182 min, each rounded. */
    {"a row takes its minutes and its set-up, a board stays",
     {SLABS, "sale|tax = 10 %\ntax on = selling price"},
     HEAD "D1,1,16,27\nD2,9,18,24\n",
     {0},
     0,
     {{.less = {5060, 4600, 460, 4600, 0, 0, 77, 77, 1, 0},
       .more = {31598, 28725, 2873, 28720, 5, 27720, 16, 16, 0, 0}},
      {.less = {13860, 12600, 1260, 12600, 0, 0, 210, 210, 1, 0},
       .more = {31598, 28725, 2873, 28720, 5, 27720, 16, 16, 0, 0}}},
     {0},
     2},
    {"of a row of its own all goes",
     {SLABS},
     HEAD "D1,2,18,24\n",
     {0},
     0,
     {{.less = {33320, 33320, 0, 33320, 0, 27720, 93, 93, 1, 0},
       .more = {1000, 1000, 0, 1000, 0, 0, 17, 17, 0, 0},
       .listed = 33320,
       .listed_one = 16660}},
     {0},
     1},
    {"two rows of three: the height that they share goes with both alone",
     {SLABS},
     HEAD "D1,1,18,24\nD2,1,16,27\nD3,1,18,24\n",
     {0, 2},
     2,
     {{.less = {1000, 1000, 0, 1000, 0, 0, 17, 17, 0, 0},
       .more = {1000, 1000, 0, 1000, 0, 0, 17, 17, 0, 0}},
      {.less = {1000, 1000, 0, 1000, 0, 0, 17, 17, 0, 0},
       .more = {1000, 1000, 0, 1000, 0, 0, 17, 17, 0, 0}}},
     {5600, 5600, 0, 5600, 0, 0, 93, 93, 1, 0},
     2},
    {"overhead of half the cost is left over",
     {SLABS, "shop|overhead = 50 % of cost"},
     HEAD "D1,1,18,24\nD2,1,16,27\n",
     {0},
     1,
     {{.less = {6900, 6900, 0, 4600, 2300, 0, 76, 76, 1, 0},
       .more = {1500, 1500, 0, 1000, 500, 0, 17, 17, 0, 0}}},
     {0},
     1},
    {"a charge that is worked for is direct cost too",
     {SLABS, "sale|charges = 45.00 for templates by cut them",
      "operation cut them|per = job\nminutes = 30\noff the bench = yes"},
     HEAD "D1,2,18,24\n",
     {0},
     0,
     {{.less = {37820, 37820, 0, 36320, 1500, 27720, 143, 93, 1, 0},
       .more = {1000, 1000, 0, 1000, 0, 0, 17, 17, 0, 0}}},
     {0},
     1},
};

static void show(struct bench *b, const char *what, size_t i, struct outcome is,
                 struct outcome want) {
    is.profit = want.profit; /* which strike does not tell */
    if (memcmp(&is, &want, sizeof is) != 0) {
        bench_wrong(
            b,
            "row %zu, %s: client %lld, before tax %lld, tax %lld, direct %lld, left %lld, bought "
            "%lld, "
            "hours %lld, at the bench %lld, set-ups %lld",
            i, what, (long long)is.client, (long long)is.before_tax, (long long)is.tax,
            (long long)is.direct, (long long)is.left, (long long)is.bought, (long long)is.hours,
            (long long)is.bench, (long long)is.setups);
    }
}

/* The job of the bench with its purchase, which rows are counted from. */
static void open_base(struct bench *b, struct estimate *base) {
    const struct estimate_request request = {
        .option = -1, .plans = {.effort = CUT_EFFORT_SECOND}, .purchase = true};
    bench_sound(b);
    assert_int_equal(estimate_make(base, &b->rates, &b->job, request, &b->problems), ESTIMATE_OK);
}

static int strike(const struct strike_case *c) {
    struct bench b;
    struct estimate base;
    struct strike found;
    struct pool pool = {0};
    bench_open(&b, c->name, BENCH_INCH, c->edits, c->doors);
    open_base(&b, &base);
    assert_true(strike_make(&found, &base, (struct plan_request){.effort = CUT_EFFORT_SECOND},
                            c->rows, c->row_count, &pool));
    if (found.row_count != c->want_count || found.has_together != (c->together.client != 0)) {
        bench_wrong(&b, "%zu rows, together %d", found.row_count, found.has_together);
    }
    for (size_t i = 0; i < c->want_count && i < found.row_count; i++) {
        const struct strike_row *const row = &found.rows[i];
        const struct struck *const want = &c->wants[i];
        show(&b, "struck", i, row->less, want->less);
        show(&b, "one more", i, row->more, want->more);
        if (!row->has_less || !row->has_more ||
            row->row != &b.job.rows[c->row_count == 0 ? i : c->rows[i]]) {
            bench_wrong(&b, "row %zu is not told", i);
        }
        if (want->listed != 0 &&
            (row->listed != want->listed || row->listed_one != want->listed_one)) {
            bench_wrong(&b, "row %zu is listed at %lld, each %lld", i, (long long)row->listed,
                        (long long)row->listed_one);
        }
    }
    if (found.has_together) {
        show(&b, "together", 0, found.together, c->together);
    }
    pool_clear(&pool);
    estimate_clear(&base);
    return bench_close(&b);
}

static void test_rows(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        wrong += strike(&cases[i]);
    }
    assert_int_equal(wrong, 0);
}

/* A row has 9,999 doors at most: none more is told of such a one. */
static void test_most_of_row(void **state) {
    static const struct {
        const char *doors;
        bool more;
    } rows[] = {{HEAD "D1,9998,18,24\n", true}, {HEAD "D1,9999,18,24\n", false}};
    static const char *const edits[BENCH_MOST_EDITS] = {SLABS};
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct bench b;
        struct estimate base;
        struct strike found;
        struct pool pool = {0};
        bench_open(&b, "the most of a row", BENCH_INCH, edits, rows[i].doors);
        open_base(&b, &base);
        assert_true(strike_make(&found, &base, (struct plan_request){.effort = CUT_EFFORT_SECOND},
                                NULL, 0, &pool));
        assert_int_equal(found.row_count, 1);
        assert_int_equal(found.rows[0].has_more, rows[i].more);
        pool_clear(&pool);
        estimate_clear(&base);
        assert_int_equal(bench_close(&b), 0);
    }
}

/* --- sizes made one --- */

/* Work by area alone, and so many minutes for the job. */
#define PER_AREA(minutes)                                                                          \
    "door slab|operations = plane, plan", "sheet board|price = 100.00 per sheet",                  \
        "operation plane|per = sqft of door\nminutes = 10",                                        \
        ("operation plan|per = job\nminutes = " minutes)

/* sizes: those made one, as `height 24 1/8 > 24: D3, as D2, saves 30.00, 1 set-up; ...`. */
static const struct size_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *sizes;
} size_cases[] = {
    {"a set-up of 36 min is saved, down where both ways save as much",
     {SLABS},
     HEAD "D1,1,18,30\nD2,2,18,24\nD3,1,18,24 1/8\nD4,1,20,24 1/8\n",
     "height 24 1/8 > 24: D3 D4, as D2, 3600, 1"},
    {"nothing is saved where nothing hangs on the height",
     {SLABS, "operation saw|setup = 36 min per width"},
     HEAD "D1,1,18,30\nD2,2,18,24\nD3,1,18,24 1/8\n",
     ""},
    {"a width of a pair, where each leaf changes",
     {SLABS, "operation saw|setup = 36 min per width", "make|measure = opening\noverlay = 0"},
     "id,leaves,width,height\nD1,1,18 1/8,30\nD2,2,36 1/8,30\n",
     "width 18 1/8 > 18: D1, as D2, 3600, 1"},
    {"what saves more stands first, equal ones as they are listed",
     {SLABS, "door slab|operations = saw, edge",
      "operation edge|per = door\nminutes = 1\nsetup = 20 min per width"},
     HEAD "D1,1,18,24\nD2,1,18 1/8,30\nD3,1,12,30 1/8\nD4,1,12 1/8,40\nD5,1,10,40 1/4\n",
     "height 30 1/8 > 30: D3, as D2, 3600, 1; height 40 1/4 > 40: D5, as D4, 3600, 1; "
     "width 18 1/8 > 18: D2, as D1, 2000, 1; width 12 1/8 > 12: D4, as D3, 2000, 1"},
    /* 0.001 of a minute are 0.00 */
    {"a set-up that costs nothing",
     {SLABS, "operation saw|setup = 0.001 min per length"},
     HEAD "D1,1,18,24\nD2,1,18,24 1/8\n",
     ""},
    /* 0.10 of more than 300 are less than a thousandth, but a set-up is saved */
    {"a small set-up",
     {SLABS, "operation saw|setup = 0.1 min per length"},
     HEAD "D1,1,18,24\nD2,1,18,24 1/8\n",
     "height 24 1/8 > 24: D2, as D1, 10, 1"},
    /* Two doors of 30.16 min are 30.00: 0.32 of 100.00 + 60.32 + 30.00 + 129.68 = 320.00. */
    {"without a set-up, the thousandth part of the direct cost",
     {SLABS, PER_AREA("129.68")},
     HEAD "D1,1,18,24\nD2,2,18,24 1/8\n",
     "height 24 1/8 > 24: D2, as D1, 32, 0"},
    {"a cent more of direct cost",
     {SLABS, PER_AREA("129.69")},
     HEAD "D1,1,18,24\nD2,2,18,24 1/8\n",
     ""},
};

static void tell_sizes(const struct strike *found, char *text, size_t size) {
    size_t at = 0;
    text[0] = '\0';
    for (size_t i = 0; i < found->size_count; i++) {
        const struct strike_size *const s = &found->sizes[i];
        char from[32];
        char to[32];
        at += (size_t)snprintf(text + at, size - at, "%s%s %s > %s:", i == 0 ? "" : "; ",
                               s->width ? "width" : "height",
                               length_show(s->from, LENGTH_INCH, from, sizeof from),
                               length_show(s->to, LENGTH_INCH, to, sizeof to));
        for (size_t r = 0; r < s->row_count; r++) {
            at += (size_t)snprintf(text + at, size - at, " %s", s->rows[r]->id.s);
        }
        at += (size_t)snprintf(text + at, size - at, ", as %s, %lld, %lld", s->other->id.s,
                               (long long)s->less.direct, (long long)s->less.setups);
        assert_true(at < size);
    }
}

static void test_sizes(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(size_cases); i++) {
        const struct size_case *const c = &size_cases[i];
        struct bench b;
        struct estimate base;
        struct strike found;
        struct pool pool = {0};
        char text[512];
        bench_open(&b, c->name, BENCH_INCH, c->edits, c->doors);
        open_base(&b, &base);
        assert_true(strike_make(&found, &base, (struct plan_request){.effort = CUT_EFFORT_SECOND},
                                NULL, 0, &pool));
        tell_sizes(&found, text, sizeof text);
        if (strcmp(text, c->sizes) != 0) {
            bench_wrong(&b, "'%s', wanted '%s'", text, c->sizes);
        }
        pool_clear(&pool);
        estimate_clear(&base);
        wrong += bench_close(&b);
    }
    assert_int_equal(wrong, 0);
}

/* --- nearly equal sizes --- */

#define KINDS "id,use,style,width,height,mid rails,mid stiles,arch\n"
/* near: pairs found, `18 18 1/8` of widths, then those of heights behind a bar. */
static const struct near_case {
    const char *name;
    enum bench_unit unit;
    const char *edits[3];
    const char *doors;
    const char *near;
} near_cases[] = {
    {"a quarter of an inch is near",
     BENCH_INCH,
     {NULL},
     "D1,18,30\nD2,18 1/4,30 1/4\n",
     "18 18 1/4 | 30 30 1/4"},
    {"a 64th more is not", BENCH_INCH, {NULL}, "D1,18,30\nD2,18 17/64,30 17/64\n", " |"},
    {"6 mm are near", BENCH_MM, {NULL}, "D1,400,700\nD2,406,706\n", "400 406 | 700 706"},
    {"a tenth more is not", BENCH_MM, {NULL}, "D1,400,700\nD2,406.1,706.1\n", " |"},
    {"three in a row are two pairs",
     BENCH_INCH,
     {NULL},
     "D1,18 1/4,30\nD2,18,30\nD3,18 1/8,30\nD4,18,30\n",
     "18 18 1/8, 18 1/8 18 1/4 |"},
    {"of two uses",
     BENCH_INCH,
     {NULL},
     KINDS "D1,door,,18,30,,,\nD2,end panel,,18 1/8,30,,,\n",
     " |"},
    {"of two styles",
     BENCH_INCH,
     {NULL},
     KINDS "D1,door,,18,30,,,\nD2,door,profiled,18 1/8,30,,,\n",
     " |"},
    {"divided otherwise by a mid rail",
     BENCH_INCH,
     {NULL},
     KINDS "D1,door,,18,30,,,\nD2,door,,18 1/8,30,1,,\n",
     " |"},
    {"divided otherwise by a mid stile",
     BENCH_INCH,
     {NULL},
     KINDS "D1,door,,18,30,,,\nD2,door,,18 1/8,30,,1,\n",
     " |"},
    {"an arch stays as it is",
     BENCH_INCH,
     {NULL},
     KINDS "D1,door,,18,30,,,1\nD2,door,,18 1/8,30,,,1\n",
     " |"},
    {"a bi-fold stays as it is",
     BENCH_INCH,
     {"make|fold hinge = none"},
     "id,width,height,opens\nD1,36,30,bi-fold\nD2,36 1/8,30,bi-fold\n",
     " |"},
    {"inset doors fit one opening",
     BENCH_INCH,
     {"make|measure = opening\nreveal = 1/8"},
     "D1,18,30\nD2,18 1/8,30\n",
     " |"},
    {"rails at given heights let widths be one alone",
     BENCH_INCH,
     {NULL},
     "id,width,height,rows\nD1,18,30,10 | 13 1/4\nD2,18 1/8,30 1/8,10 | 13 3/8\n",
     "18 18 1/8 |"},
};

static void tell_near(struct bench *b, const struct near_sizes *near, char *text, size_t size) {
    size_t at = 0;
    for (int side = 0; side < 2; side++) {
        bool any = false;
        at += (size_t)snprintf(text + at, size - at, "%s", side == 0 ? "" : " |");
        for (size_t i = 0; i < near->count; i++) {
            char low[32];
            char high[32];
            if (near->list[i].width != (side == 0)) {
                continue;
            }
            const enum length_unit unit = b->job.unit;
            at += (size_t)snprintf(text + at, size - at, "%s%s%s %s", any ? "," : "",
                                   side == 0 && !any ? "" : " ",
                                   length_show(near->list[i].size[0], unit, low, sizeof low),
                                   length_show(near->list[i].size[1], unit, high, sizeof high));
            any = true;
        }
        assert_true(at < size);
    }
}

static void test_near(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(near_cases); i++) {
        const struct near_case *const c = &near_cases[i];
        struct bench b;
        struct near_sizes near;
        struct pool pool = {0};
        char text[256] = "";
        bench_open(&b, c->name, c->unit, c->edits, c->doors);
        bench_sound(&b);
        if (b.result == ESTIMATE_OK) {
            assert_true(near_sizes_find(&near, &b.estimate.doors, b.job.unit, &pool));
            tell_near(&b, &near, text, sizeof text);
            for (size_t n = 1; n < near.count; n++) { /* widths first */
                assert_true(near.list[n - 1].width || !near.list[n].width);
            }
            const char *const told = text[0] == ' ' && c->near[0] != ' ' ? text + 1 : text;
            if (strcmp(told, c->near) != 0) {
                bench_wrong(&b, "'%s', wanted '%s'", told, c->near);
            }
        }
        pool_clear(&pool);
        wrong += bench_close(&b);
    }
    assert_int_equal(wrong, 0);
}

/* An arched door is not made as wide as a straight one beside it. */
static void test_kind(void **state) {
    (void)state;
    struct bench b;
    const char *const edits[BENCH_MOST_EDITS] = {NULL};
    bench_open(&b, "arched beside straight", BENCH_INCH, edits,
               KINDS "D1,door,,18,30,,,\nD2,door,,18,30,,,1\n");
    const struct door *const leaves = b.estimate.doors.doors;
    assert_true(near_size_kind_same(&leaves[0], &leaves[0], true));
    assert_false(near_size_kind_same(&leaves[0], &leaves[1], true));
    assert_false(near_size_kind_same(&leaves[1], &leaves[0], true));
    assert_int_equal(bench_close(&b), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_rows),        cmocka_unit_test(test_kind),
        cmocka_unit_test(test_most_of_row), cmocka_unit_test(test_sizes),
        cmocka_unit_test(test_near),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
