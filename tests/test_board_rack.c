/* SPDX-License-Identifier: MIT */
/* Boards of which there are only so many, as on a rack: small jobs against every way of cutting
 * them, cases that are plain by hand, a checker that counts them. Sizes in tenths of an inch. */
#include "board_ways.h"
#include "cmocka_all.h"
#include "cut/board/board_layout.h"

#include <string.h>

#define EFFORT 300000
#define ITEMS  3

/* --- small jobs --- */

/* One or two sizes that are sold, one to three on the rack, some of these sawn; one to five parts.
 */
static struct board_job small_job(uint64_t *seed, struct cut_stock *stocks,
                                  struct cut_item *items) {
    struct board_job job = {.kerf = draw_from_to(seed, 0, 2),
                            .end_trim = draw_from_to(seed, 0, 3),
                            .edge = draw_from_to(seed, 0, 2),
                            .defects = draw_from_to(seed, 0, 2) * 50000,
                            .crosscut_first = draw_from_to(seed, 0, 1) == 1,
                            .stocks = stocks,
                            .items = items,
                            .item_count = (size_t)draw_from_to(seed, 1, ITEMS)};
    const size_t sold = (size_t)draw_from_to(seed, 1, 2);
    const size_t rack = (size_t)draw_from_to(seed, 1, 3);
    stocks[0] = (struct cut_stock){100, 60, draw_from_to(seed, 6, 9), CUT_UNLIMITED};
    stocks[1] = (struct cut_stock){draw_from_to(seed, 60, 140), 40, draw_from_to(seed, 3, 7),
                                   CUT_UNLIMITED};
    for (size_t s = sold; s < sold + rack; s++) {
        stocks[s] = (struct cut_stock){draw_from_to(seed, 15, 150), draw_from_to(seed, 12, 62),
                                       draw_from_to(seed, 0, 1) * draw_from_to(seed, 0, 6),
                                       draw_from_to(seed, 0, 2)};
    }
    job.stock_count = sold + rack;
    job.sawn_count = (size_t)draw_from_to(seed, 0, (int64_t)rack);
    ways_draw_items(seed, items, job.item_count, 11, 58);
    return job;
}

static void every_way(void **state) {
    (void)state;
    uint64_t seed = 20261128;
    size_t planned = 0, least = 0, met = 0, lacking = 0, missed = 0;
    for (int round = 0; round < 2000; round++) {
        struct cut_stock stocks[WAYS_STOCKS];
        struct cut_item items[ITEMS];
        const struct board_job job = small_job(&seed, stocks, items);
        struct board_plan *plan = NULL;
        const enum cut_status status = board_plan_make(&job, EFFORT, &plan);
        const int64_t best = ways_least_cost(&job);
        if (best == INT64_MAX) {
            assert_true(status == CUT_NO_ROOM || status == CUT_SHORT);
            lacking += status == CUT_SHORT ? 1 : 0;
            continue;
        }
        if (status == CUT_SHORT) {
            missed++;
            continue;
        }
        assert_int_equal(status, CUT_DONE);
        planned++;
        assert_null(board_plan_check(&job, plan));
        assert_true(plan->cost >= best);
        least += plan->cost == best ? 1 : 0;
        assert_true(plan->bound <= best);
        met += plan->bound == best ? 1 : 0;
        board_plan_free(plan);
    }
    print_message("%zu jobs, %zu planned for the least, bound met in %zu; too few boards in %zu, "
                  "%zu more not found\n",
                  planned, least, met, lacking, missed);
    assert_true(planned > 1000 && lacking > 10);
    assert_int_equal(missed, 0);
    assert_true(100 * least >= 99 * planned && 100 * met >= 75 * planned);
}

/* --- plain by hand --- */

#define PLAIN 3

static const struct plain {
    const char *name;
    struct board_job job;
    struct cut_stock stocks[PLAIN];
    struct cut_item item;
    int64_t cost;
    int64_t used[PLAIN];
} plains[] = {
    {"what is there is cut first",
     {0},
     {{100, 50, 7, -1}, {100, 50, 0, 2}},
     {60, 50, 3, false},
     7,
     {1, 2}},
    {"of two that cost the same the smaller",
     {0},
     {{100, 50, 7, -1}, {80, 50, 0, 1}, {60, 50, 0, 1}},
     {60, 50, 1, false},
     0,
     {0, 0, 1}},
    {"one that holds both rather than two, where the two are larger",
     {0},
     {{100, 50, 7, -1}, {80, 50, 0, 2}, {100, 50, 0, 1}},
     {50, 50, 2, false},
     0,
     {0, 0, 1}},
    {"what is worth more than a new one stays",
     {0},
     {{100, 50, 7, -1}, {100, 50, 8, 1}},
     {60, 50, 1, false},
     7,
     {1, 0}},
    {"sawn: all of it is of use",
     {.end_trim = 3, .edge = 2, .defects = 100000, .sawn_count = 1},
     {{120, 60, 7, -1}, {100, 50, 0, 1}, {100, 50, 0, 1}},
     {100, 50, 2, false},
     7,
     {1, 0, 1}},
    {"what is not is as what is bought",
     {.end_trim = 3, .edge = 2},
     {{120, 60, 7, -1}, {106, 54, 0, 1}, {105, 54, 0, 1}},
     {100, 50, 2, false},
     7,
     {1, 1, 0}},
};

static struct board_job plain_job(const struct plain *p) {
    struct board_job job = p->job;
    job.stocks = p->stocks;
    job.items = &p->item;
    job.item_count = 1;
    while (job.stock_count < PLAIN && p->stocks[job.stock_count].length > 0) {
        job.stock_count++;
    }
    return job;
}

static void plain_cases(void **state) {
    (void)state;
    for (size_t i = 0; i < sizeof plains / sizeof *plains; i++) {
        for (int crosscut = 0; crosscut < 2; crosscut++) {
            struct board_job job = plain_job(&plains[i]);
            struct board_plan *plan = NULL;
            int64_t used[PLAIN] = {0};
            job.crosscut_first = crosscut == 1;
            assert_int_equal(board_plan_make(&job, EFFORT, &plan), CUT_DONE);
            assert_null(board_plan_check(&job, plan));
            for (size_t b = 0; b < plan->board_count; b++) {
                used[plan->boards[b].stock]++;
            }
            if (plan->cost != plains[i].cost || memcmp(used, plains[i].used, sizeof used) != 0) {
                print_error("%s: costs %lld, boards %lld %lld %lld\n", plains[i].name,
                            (long long)plan->cost, (long long)used[0], (long long)used[1],
                            (long long)used[2]);
            }
            assert_int_equal(plan->cost, plains[i].cost);
            assert_memory_equal(used, plains[i].used, sizeof used);
            board_plan_free(plan);
        }
    }
}

/* One board is there, and two are cut: of a good plan otherwise. */
static void checker(void **state) {
    (void)state;
    struct cut_stock stocks[] = {{100, 50, 7, 2}};
    const struct cut_item item = {60, 50, 2, false};
    const struct board_job job = {
        .stocks = stocks, .stock_count = 1, .items = &item, .item_count = 1};
    struct board_plan *plan = NULL;
    assert_int_equal(board_plan_make(&job, EFFORT, &plan), CUT_DONE);
    assert_null(board_plan_check(&job, plan));
    stocks[0].copies = 1;
    assert_string_equal(board_plan_check(&job, plan),
                        "more boards of a size are cut than there are");
    board_plan_free(plan);
    assert_int_equal(board_plan_make(&job, EFFORT, &plan), CUT_SHORT);
}

/* Nothing is trimmed off a sawn board, straightened or kept; a rough offcut of a bought one is
 * marked. */
static void layout(void **state) {
    (void)state;
    const struct cut_stock stocks[] = {{120, 60, 7, -1}, {100, 50, 0, 1}};
    const struct cut_item item = {50, 30, 2, false};
    const struct offcut_rule keep = {.length = 10, .board_width = 5};
    struct board_job job = {.end_trim = 3,
                            .edge = 2,
                            .defects = 100000,
                            .crosscut_first = true,
                            .stocks = stocks,
                            .stock_count = 2,
                            .items = &item,
                            .item_count = 1};
    for (size_t sawn = 0; sawn < 2; sawn++) {
        struct board_layout l = {0};
        struct board_plan *plan = NULL;
        job.sawn_count = sawn;
        assert_int_equal(board_plan_make(&job, EFFORT, &plan), CUT_DONE);
        assert_int_equal(plan->boards[0].stock, sawn);
        assert_true(board_layout_make(&l, &job, plan, 0, keep));
        if (sawn == 1) { /* 100 x 50: crosscut in the middle, 20 ripped off each half */
            assert_int_equal(l.cut_count, 3);
            assert_int_equal(l.reserve_count, 0);
            assert_int_equal(l.offcut_count, 2);
            assert_int_equal(l.offcuts[0].box.width, 20);
            assert_false(l.offcuts[0].rough);
        } else { /* of 114 x 0.9 = 102 two and 2 left over the whole width */
            assert_int_equal(l.offcuts[0].box.width, 60);
            assert_int_equal(l.offcuts[0].box.length, 2);
            assert_true(l.offcuts[0].rough);
            assert_false(l.offcuts[1].rough);
        }
        board_layout_clear(&l);
        board_plan_free(plan);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_way),
        cmocka_unit_test(plain_cases),
        cmocka_unit_test(checker),
        cmocka_unit_test(layout),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
