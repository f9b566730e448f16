/* SPDX-License-Identifier: MIT */
/* The columns that a search of boards begins with: a board of one kind of part from each stock that
 * holds it, so that any need can be met.  What they are was worked out by hand. */
#include "cmocka_all.h"
#include "cut/board/board_columns.h"

#include <stdio.h>
#include <string.h>

#define MOST 4

/* columns: ` STOCK:` and for each strip ` TIMESxKIND`, in the order of kinds, then stocks. */
struct columns_case {
    const char *name;
    struct board_job job;
    struct cut_stock stocks[MOST];
    struct cut_item items[MOST];
    const char *columns;
};

static const struct columns_case cases[] = {
    {"as long and as wide as its board", {0}, {{100, 50, 7, -1}}, {{100, 50, 1, false}}, " 0: 1x0"},
    {"a saw takes nothing where nothing is cut",
     {.kerf = 3},
     {{100, 50, 7, -1}},
     {{100, 50, 1, false}},
     " 0: 1x0"},
    {"longer by one", {0}, {{100, 50, 7, -1}}, {{101, 50, 1, false}}, ""},
    {"wider by one", {0}, {{100, 50, 7, -1}}, {{100, 51, 1, false}}, ""},
    {"only the second stock holds it",
     {0},
     {{99, 50, 7, -1}, {100, 50, 8, -1}},
     {{100, 50, 1, false}},
     " 1: 1x0"},
    {"both stocks hold it",
     {0},
     {{120, 50, 9, -1}, {100, 50, 8, -1}},
     {{100, 50, 1, false}},
     " 0: 1x0 1: 1x0"},
    {"the ends that are trimmed are just left over",
     {.end_trim = 3},
     {{106, 50, 7, -1}},
     {{100, 50, 1, false}},
     " 0: 1x0"},
    {"and one less", {.end_trim = 3}, {{105, 50, 7, -1}}, {{100, 50, 1, false}}, ""},
    {"so are the edges", {.edge = 2}, {{100, 54, 7, -1}}, {{100, 50, 1, false}}, " 0: 1x0"},
    {"and one less of these", {.edge = 2}, {{100, 53, 7, -1}}, {{100, 50, 1, false}}, ""},
    {"so is the share of defects",
     {.defects = 100000},
     {{100, 50, 7, -1}},
     {{90, 50, 1, false}},
     " 0: 1x0"},
    {"two to a strip, to the last tenth",
     {.kerf = 2},
     {{100, 50, 7, -1}},
     {{49, 50, 5, false}},
     " 0: 2x0"},
    {"one to a strip", {.kerf = 3}, {{100, 50, 7, -1}}, {{49, 50, 5, false}}, " 0: 1x0"},
    {"two strips, to the last tenth",
     {.kerf = 2},
     {{100, 50, 7, -1}},
     {{100, 24, 5, false}},
     " 0: 1x0 1x0"},
    {"one strip", {.kerf = 3}, {{100, 50, 7, -1}}, {{100, 24, 5, false}}, " 0: 1x0"},
    {"no more than is wanted", {0}, {{100, 50, 7, -1}}, {{30, 10, 4, false}}, " 0: 3x0 1x0"},
    {"as many as there is room for", {0}, {{100, 50, 7, -1}}, {{30, 20, 9, false}}, " 0: 3x0 3x0"},
    {"two of one size are one kind",
     {0},
     {{100, 50, 7, -1}},
     {{50, 50, 1, false}, {50, 50, 1, false}},
     " 0: 2x0"},
    {"what is not wanted is no kind",
     {0},
     {{100, 50, 7, -1}},
     {{50, 50, 0, false}, {40, 50, 2, false}},
     " 0: 2x0"},
    {"two kinds, each by itself",
     {0},
     {{100, 50, 7, -1}, {60, 50, 5, -1}},
     {{100, 50, 1, false}, {60, 25, 2, false}},
     " 0: 1x0 0: 1x1 1x1 1: 1x1 1x1"},
    {"a stock of which the trim leaves nothing",
     {.end_trim = 30},
     {{60, 50, 1, -1}, {100, 50, 7, -1}},
     {{40, 50, 1, false}},
     " 1: 1x0"},
};

static struct board_job job_of(const struct columns_case *c) {
    struct board_job job = c->job;
    job.stocks = c->stocks;
    job.items = c->items;
    while (job.stock_count < MOST && c->stocks[job.stock_count].length > 0) {
        job.stock_count++;
    }
    while (job.item_count < MOST && c->items[job.item_count].length > 0) {
        job.item_count++;
    }
    return job;
}

static void describe(const struct board_columns *columns, char *text, size_t size) {
    size_t used = 0;
    text[0] = '\0';
    for (size_t i = 0; i < columns->column_count; i++) {
        const struct column *const column = &columns->columns[i];
        used += (size_t)snprintf(text + used, size - used, " %zu:", column->stock);
        for (size_t p = 0; p < column->count; p++) {
            const struct column_part *const part = &columns->parts[column->first + p];
            assert_int_equal(part->strip, p);
            used +=
                (size_t)snprintf(text + used, size - used, " %dx%zu", (int)part->times, part->kind);
        }
    }
}

static void test_singles(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        const struct board_job job = job_of(&cases[i]);
        struct board_columns columns;
        char found[256];
        assert_true(board_columns_open(&columns, &job));
        describe(&columns, found, sizeof found);
        if (strcmp(found, cases[i].columns) != 0) {
            print_error("%s:%s, expected%s\n", cases[i].name, found, cases[i].columns);
            wrong++;
        }
        board_columns_close(&columns);
    }
    assert_int_equal(wrong, 0);
}

/* A part exactly as long as its board is planned, and its bound is the board's price. */
static void test_exact_parts(void **state) {
    (void)state;
    for (int64_t kerf = 0; kerf <= 5; kerf += 5) {
        for (int64_t trim = 0; trim <= 7; trim += 7) {
            const struct cut_stock stocks[] = {{100 + 2 * trim, 60, 11, -1},
                                               {130 + 2 * trim, 60, 14, -1}};
            const struct cut_item items[] = {{100, 60, 3, false}, {130, 60, 2, false}};
            const struct board_job job = {.kerf = kerf,
                                          .end_trim = trim,
                                          .stocks = stocks,
                                          .stock_count = 2,
                                          .items = items,
                                          .item_count = 2};
            struct board_plan *plan = NULL;
            int64_t bound;
            int64_t spent;
            assert_int_equal(board_plan_make(&job, 100000, &plan), CUT_DONE);
            assert_null(board_plan_check(&job, plan));
            assert_int_equal(plan->cost, 3 * 11 + 2 * 14);
            assert_int_equal(plan->board_count, 5);
            assert_int_equal(plan->bound, plan->cost);
            board_plan_free(plan);
            assert_true(board_relaxed_bound(&job, 100000, &bound, &spent));
            assert_int_equal(bound, 3 * 11 + 2 * 14);
        }
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_singles),
        cmocka_unit_test(test_exact_parts),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
