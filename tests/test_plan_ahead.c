/* SPDX-License-Identifier: MIT */
/* Plans made ahead are those that a planner makes when asked, on however many threads. */
#include "cut/ahead/plan_ahead.h"

#include <setjmp.h>
#include <stdarg.h>
#include <string.h>

#include <cmocka.h>

#define EFFORT INT64_C(3000000)
#define INCH   INT64_C(1000000)

enum { JOBS = 5 };

static const struct cut_stock boards[] = {
    {96 * INCH, 6 * INCH, 1600, CUT_UNLIMITED},
    {120 * INCH, 8 * INCH, 2700, CUT_UNLIMITED},
};
static const struct cut_stock sheet[] = {{96 * INCH, 48 * INCH, 5000, CUT_UNLIMITED}};
static const struct offcut_rule keep = {12 * INCH, 2 * INCH, 6 * INCH};

/* Of each kind so many jobs, every one of other sizes. */
struct jobs {
    struct cut_item items[JOBS][3];
    struct board_job of_boards[JOBS];
    struct cut_job of_sheets[JOBS];
};

static void set_jobs(struct jobs *jobs) {
    for (int64_t i = 0; i < JOBS; i++) {
        struct cut_item *const items = jobs->items[i];
        items[0] = (struct cut_item){(30 + i) * INCH, 5 * INCH / 2, 14, false};
        items[1] = (struct cut_item){(13 + 2 * i) * INCH, 5 * INCH / 2, 17, false};
        items[2] = (struct cut_item){(9 + i) * INCH, 3 * INCH, 5, i == 2};
        jobs->of_boards[i] = (struct board_job){.kerf = INCH / 8,
                                                .end_trim = INCH,
                                                .edge = INCH / 8,
                                                .defects = 50000,
                                                .crosscut_first = i == 3,
                                                .stocks = boards,
                                                .stock_count = 2,
                                                .items = items,
                                                .item_count = 3};
        jobs->of_sheets[i] = (struct cut_job){.kerf = INCH / 8,
                                              .trim = INCH / 4,
                                              .stock_count = 1,
                                              .stocks = sheet,
                                              .item_count = 3,
                                              .items = items};
    }
}

static void same_boards(const struct board_plan *a, const struct board_plan *b) {
    assert_non_null(a);
    assert_non_null(b);
    assert_int_equal(a->cost, b->cost);
    assert_int_equal(a->bound, b->bound);
    assert_int_equal(a->board_count, b->board_count);
    assert_int_equal(a->strip_count, b->strip_count);
    assert_int_equal(a->piece_count, b->piece_count);
    assert_memory_equal(a->pieces, b->pieces, a->piece_count * sizeof *a->pieces);
    for (size_t s = 0; s < a->strip_count; s++) {
        assert_int_equal(a->strips[s].width, b->strips[s].width);
        assert_int_equal(a->strips[s].count, b->strips[s].count);
    }
    for (size_t i = 0; i < a->board_count; i++) {
        assert_int_equal(a->boards[i].stock, b->boards[i].stock);
    }
}

static void same_sheets(const struct sheet_plan *a, const struct sheet_plan *b) {
    assert_non_null(a);
    assert_non_null(b);
    assert_int_equal(a->cost, b->cost);
    assert_int_equal(a->bound, b->bound);
    assert_int_equal(a->part_count, b->part_count);
    assert_int_equal(a->node_count, b->node_count);
    for (size_t p = 0; p < a->part_count; p++) {
        assert_int_equal(a->parts[p].item, b->parts[p].item);
        assert_int_equal(a->parts[p].x, b->parts[p].x);
        assert_int_equal(a->parts[p].y, b->parts[p].y);
    }
}

/* Asks for all jobs, the last first; without `ahead` each is planned when it is asked for. */
static void ask_all(struct plan_ahead *ahead, const struct jobs *jobs) {
    for (size_t i = JOBS; i-- > 0;) {
        struct board_plan *of_boards = NULL;
        struct board_plan *fresh_boards = NULL;
        struct sheet_plan *of_sheets = NULL;
        struct sheet_plan *fresh_sheets = NULL;
        assert_int_equal(plan_ahead_boards(ahead, &jobs->of_boards[i], EFFORT, &of_boards),
                         CUT_DONE);
        assert_int_equal(plan_ahead_sheets(ahead, &jobs->of_sheets[i], keep, EFFORT, &of_sheets),
                         CUT_DONE);
        assert_int_equal(board_plan_make(&jobs->of_boards[i], EFFORT, &fresh_boards), CUT_DONE);
        assert_int_equal(sheet_plan_make(&jobs->of_sheets[i], keep, EFFORT, &fresh_sheets),
                         CUT_DONE);
        same_boards(of_boards, fresh_boards);
        same_sheets(of_sheets, fresh_sheets);
        board_plan_free(of_boards);
        board_plan_free(fresh_boards);
        sheet_plan_free(of_sheets);
        sheet_plan_free(fresh_sheets);
    }
}

/* Gathers all jobs; what they point to is changed afterwards, as the copies are to count. */
static struct plan_ahead *gather(const struct jobs *jobs) {
    struct plan_ahead *const ahead = plan_ahead_new();
    struct jobs other = *jobs;
    assert_non_null(ahead);
    for (size_t i = 0; i < JOBS; i++) {
        struct board_plan *of_boards = NULL;
        struct sheet_plan *of_sheets = NULL;
        other.of_boards[i].items = other.items[i];
        other.of_sheets[i].items = other.items[i];
        assert_int_equal(plan_ahead_boards(ahead, &other.of_boards[i], EFFORT, &of_boards),
                         CUT_SHORT);
        assert_int_equal(plan_ahead_sheets(ahead, &other.of_sheets[i], keep, EFFORT, &of_sheets),
                         CUT_SHORT);
        assert_null(of_boards);
        assert_null(of_sheets);
    }
    memset(other.items, 0, sizeof other.items);
    return ahead;
}

static void test_threads(void **state) {
    (void)state;
    static const size_t threads[] = {1, 2, 3, 10, 100};
    struct jobs jobs;
    set_jobs(&jobs);
    for (size_t t = 0; t < sizeof threads / sizeof *threads; t++) {
        struct plan_ahead *const ahead = gather(&jobs);
        plan_ahead_make(ahead, threads[t]);
        ask_all(ahead, &jobs);
        ask_all(ahead, &jobs); /* all are given away: made when asked for */
        plan_ahead_free(ahead);
    }
    assert_true(plan_ahead_threads() >= 1);
}

/* A job that differs by one number gets a plan of its own. */
static void test_not_gathered(void **state) {
    (void)state;
    struct jobs jobs;
    set_jobs(&jobs);
    struct plan_ahead *const ahead = gather(&jobs);
    plan_ahead_make(ahead, 2);
    for (size_t i = 0; i < JOBS; i++) {
        jobs.items[i][1].demand++;
        jobs.of_boards[i].kerf += INCH / 64;
    }
    ask_all(ahead, &jobs);
    plan_ahead_free(ahead); /* with the plans that nobody asked for */
}

static void test_none(void **state) {
    (void)state;
    struct jobs jobs;
    set_jobs(&jobs);
    ask_all(NULL, &jobs);
    plan_ahead_free(NULL);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_threads),
                                       cmocka_unit_test(test_not_gathered),
                                       cmocka_unit_test(test_none)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
