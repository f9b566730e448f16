/* SPDX-License-Identifier: MIT */
/* What stands on the buying list beside a thing: why so much of it, and what a supplier reads. The
 * figures are worked out by hand from the plain shop's. */
#include "support.h"

#include "report/words/buy_list.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

struct list_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *what, *note, *ordered; /* of the first line with this name */
};

/* A door of 18 x 30 has 199.125 sq in of frame, 1.3828 bf: 2 are bought, at 4.00. 55 of 12 x 12
 * have panels of 8 1/8 x 8 1/8, 25.2136 sq ft; 5 x 11 of them fit a sheet of 48 x 96, and with 30 %
 * the factor buys two, at 50.00. */
#define CUT                                                                                        \
    "machine saw|rate = 3.00 per hour\nkind = table saw",                                          \
        "operation cut|machine = saw\nper = cut\nminutes = 2", "door plain|operations = cut",      \
        "lumber poplar|board widths = 6\nboard lengths = 8 ft"
static const struct list_case cases[] = {
    {"what is needed", {NULL}, "D1,18,30\n", "poplar", "", "poplar"},
    {"words of its own",
     {"lumber poplar|words = tulip tree"},
     "D1,18,30\n",
     "poplar",
     "",
     "tulip tree"},
    {"the yard's minimum",
     {"lumber poplar|minimum = 20 bf"},
     "D1,18,30\n",
     "poplar",
     "2 bf with waste, the yard sells no less than 20 bf",
     "poplar"},
    {"a price break",
     {"lumber poplar|price from = 3 bf at 1.00 per bf"},
     "D1,18,30\n",
     "poplar",
     "2 bf needed, 3 bf cost less: 3.00, not 8.00",
     "poplar"},
    {"a break that is no cheaper",
     {"lumber poplar|price from = 3 bf at 3.00 per bf"},
     "D1,18,30\n",
     "poplar",
     "",
     "poplar"},
    {"a sheet by the factor",
     {"sheet ply|waste = 30 % added\nwords = plywood", CUT},
     "id,width,height,count\nD1,12,12,55\n",
     "ply",
     "by the waste factor; by the cutting plan 50.00 would do",
     "plywood"},
    {"a sheet that the plan needs, too",
     {"sheet ply|waste = 20 % added", CUT},
     "id,width,height,count\nD1,12,12,55\n",
     "ply",
     "",
     "ply"},
    {"a sheet more by the plan",
     {"sheet ply|waste = 20 % added", CUT, "job|accept = plan-over-factor"},
     "id,width,height,count\nD1,12,12,56\n",
     "ply",
     "the plan needs 32 sq ft more than the factor buys: buy by the plan",
     "ply"},
    {"hardware with spares",
     {"hardware hook|price = 1.00 each\nspares = 50 %\nwords = coat hook", "make|hardware = hook"},
     "D1,18,30\nD2,18,30\n",
     "hook",
     "2 on the doors, the rest to spare",
     "coat hook"},
    {"glass by the pane",
     {"make|style = glazed"},
     "D1,18,30\n",
     "clear",
     "cut to size; the area is as charged",
     "clear, cut to size"},
    {"two that read alike",
     {"lumber poplar|words = poplar", "lumber other|species = yellow-poplar\nthickness = 4/4\n"
                                      "price = 3.00 per bf\nwaste = 0 % added\nwords = poplar"},
     "id,width,height,frame\nD1,18,30,poplar\nD2,18,30,other\n",
     "other",
     "",
     "poplar (other)"},
};

static void listed(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        const struct list_case *const c = &cases[i];
        struct bench bench;
        struct buy_list list;
        struct pool pool;
        size_t at = 0;
        bench_open(&bench, c->name, BENCH_INCH, c->edits, c->doors);
        bench_sound(&bench);
        pool_init(&pool);
        assert_true(buy_list_make(&list, &pool, &bench.estimate));
        while (at < list.line_count && strcmp(list.lines[at].what, c->what) != 0) {
            at++;
        }
        if (at == list.line_count) {
            bench_wrong(&bench, "no '%s'", c->what);
        } else if (strcmp(list.lines[at].note, c->note) != 0 ||
                   strcmp(list.lines[at].ordered, c->ordered) != 0) {
            bench_wrong(&bench, "'%s', ordered as '%s'", list.lines[at].note,
                        list.lines[at].ordered);
        }
        buy_list_clear(&list);
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* A supplier is asked for what the boards hold where the factor buys less: a frame of 2 bf is cut
 * from a board of 6 x 96, which is 4. */
static void beyond_the_factor(void **state) {
    static const struct {
        const char *name, *by, *many;
    } rows[] = {{"by the factor, which is short", NULL, "2 bf"},
                {"by the plan", "shop|price lumber by = plan", "4 bf"}};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *const edits[BENCH_MOST_EDITS] = {CUT, rows[i].by};
        struct bench bench;
        struct buy_list list;
        struct pool pool;
        bench_open(&bench, rows[i].name, BENCH_INCH, edits, "D1,18,30\n");
        bench_sound(&bench);
        pool_init(&pool);
        assert_true(buy_list_make(&list, &pool, &bench.estimate));
        assert_string_equal(list.lines[0].what, "poplar");
        assert_string_equal(list.lines[0].how_many, rows[i].many);
        assert_string_equal(list.lines[0].ordered_many, "4 bf");
        assert_string_equal(list.lines[1].how_many, "1 board");
        assert_string_equal(list.lines[1].ordered, "");
        buy_list_clear(&list);
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(listed),
                                       cmocka_unit_test(beyond_the_factor)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
