/* SPDX-License-Identifier: MIT */
/* Plans of boards: small cases whose best is plain by hand, a checker that takes nothing broken,
 * and random jobs that all come out sound. Sizes in tenths of an inch. */
#include "board_hand.h"
#include "cmocka_all.h"
#include "cut/board/board_coarse.h"
#include "cut/board/board_layout.h"
#include "cut/board/board_repair.h"
#include "draw_number.h"

#include <stdlib.h>
#include <string.h>

#define EFFORT 300000
#define MOST   8

struct plain {
    const char *name;
    struct board_job job;
    struct cut_stock stocks[MOST];
    struct cut_item items[MOST];
    int64_t cost; /* the least, by hand */
    int64_t boards;
};

/* Cost is a tenth of the area where nothing else is said. */
static const struct plain plains[] = {
    {"a part fills its board", {0}, {{100, 50, 7, -1}}, {{100, 50, 1, false}}, 7, 1},
    {"two strips, side by side", {0}, {{100, 50, 7, -1}}, {{100, 25, 2, false}}, 7, 1},
    {"a kerf between them is one too much",
     {.kerf = 1},
     {{100, 50, 7, -1}},
     {{100, 25, 2, false}},
     14,
     2},
    {"and fits where the board is that much wider",
     {.kerf = 1},
     {{100, 51, 7, -1}},
     {{100, 25, 2, false}},
     7,
     1},
    {"both ends are trimmed", {.end_trim = 3}, {{100, 50, 7, -1}}, {{47, 50, 2, false}}, 7, 1},
    {"a part more than they leave",
     {.end_trim = 3},
     {{100, 50, 7, -1}},
     {{48, 50, 2, false}},
     14,
     2},
    {"both edges are straightened", {.edge = 2}, {{100, 50, 7, -1}}, {{100, 23, 2, false}}, 7, 1},
    {"a tenth is for defects", {.defects = 100000}, {{100, 50, 7, -1}}, {{45, 50, 2, false}}, 7, 1},
    {"so 46 twice is too long",
     {.defects = 100000},
     {{100, 50, 7, -1}},
     {{46, 50, 2, false}},
     14,
     2},
    {"the shorter board is enough",
     {0},
     {{100, 50, 10, -1}, {60, 50, 6, -1}},
     {{60, 50, 1, false}},
     6,
     1},
    {"the narrower board is enough",
     {0},
     {{100, 50, 10, -1}, {100, 30, 6, -1}},
     {{100, 30, 1, false}},
     6,
     1},
    {"one long board is cheaper than two short ones",
     {0},
     {{100, 50, 10, -1}, {50, 50, 6, -1}},
     {{50, 50, 2, false}},
     10,
     1},
    {"parts of two widths from one board",
     {.kerf = 1},
     {{100, 41, 9, -1}},
     {{100, 25, 1, false}, {49, 15, 2, false}},
     9,
     1},
    {"not where the kerf makes a strip too long",
     {.kerf = 1},
     {{100, 41, 9, -1}},
     {{100, 25, 1, false}, {50, 15, 2, false}},
     18,
     2},
    {"parts of two lengths from one strip",
     {.kerf = 1},
     {{100, 41, 9, -1}},
     {{100, 25, 1, false}, {49, 15, 1, false}, {50, 15, 1, false}},
     9,
     1},
};

/* How many stocks or items there are: up to the first of no size. */
static size_t stocks_of(const struct plain *p) {
    size_t n = 0;
    while (n < MOST && p->stocks[n].length > 0) {
        n++;
    }
    return n;
}

static size_t items_of(const struct plain *p) {
    size_t n = 0;
    while (n < MOST && p->items[n].length > 0) {
        n++;
    }
    return n;
}

static struct board_job job_of(const struct plain *p) {
    struct board_job job = p->job;
    job.stocks = p->stocks;
    job.stock_count = stocks_of(p);
    job.items = p->items;
    job.item_count = items_of(p);
    return job;
}

static void plain_cases(void **state) {
    (void)state;
    for (size_t i = 0; i < sizeof plains / sizeof *plains; i++) {
        const struct board_job job = job_of(&plains[i]);
        struct board_plan *plan = NULL;
        assert_int_equal(board_plan_make(&job, EFFORT, &plan), CUT_DONE);
        const char *const fault = board_plan_check(&job, plan);
        if (fault != NULL || plan->cost != plains[i].cost ||
            (int64_t)plan->board_count != plains[i].boards) {
            print_error("%s: %s, costs %lld\n", plains[i].name, fault == NULL ? "sound" : fault,
                        (long long)plan->cost);
        }
        assert_null(fault);
        assert_int_equal(plan->cost, plains[i].cost);
        assert_int_equal(plan->board_count, plains[i].boards);
        assert_true(plan->bound <= plan->cost);
        board_plan_free(plan);
    }
}

static void no_room(void **state) {
    (void)state;
    const struct plain longer = {"", {0}, {{100, 50, 7, -1}}, {{101, 50, 1, false}}, 0, 0};
    const struct plain wider = {"", {.edge = 1}, {{100, 50, 7, -1}}, {{9, 49, 1, false}}, 0, 0};
    const struct plain nothing = {"", {.end_trim = 50}, {{100, 50, 7, -1}}, {{1, 1, 1, false}}, 0,
                                  0};
    const struct plain *const cases[] = {&longer, &wider, &nothing};
    for (size_t i = 0; i < 3; i++) {
        const struct board_job job = job_of(cases[i]);
        struct board_plan *plan = NULL;
        assert_int_equal(board_plan_make(&job, EFFORT, &plan), CUT_NO_ROOM);
        assert_null(plan);
    }
    const struct board_job none = {0};
    struct board_plan *plan = NULL;
    assert_int_equal(board_plan_make(&none, EFFORT, &plan), CUT_BAD_INPUT);
    assert_null(plan);
}

/* Each width by itself would be taken. */
static void too_many_parts(void **state) {
    (void)state;
    const struct plain p = {
        "", {0}, {{100, 50, 7, -1}}, {{90, 50, CUT_PIECES_MAX, false}, {90, 40, 1, false}}, 0, 0};
    const struct board_job job = job_of(&p);
    struct board_plan *plan = NULL;
    assert_int_equal(board_plan_make(&job, EFFORT, &plan), CUT_BAD_INPUT);
    assert_null(plan);
}

/* --- the checker --- */

/* A plan by hand that is sound: a board of two strips, three parts. */
static void take_hand(struct by_hand *h) {
    *h = (struct by_hand){
        .stocks = {{.length = 100, .width = 41, .price = 9, .copies = CUT_UNLIMITED}},
        .items = {{.length = 49, .width = 20, .demand = 3},
                  {.length = 100, .width = 20, .demand = 0}},
        .boards = {{.stock = 0, .first = 0, .count = 2}},
        .strips = {{.width = 20, .first = 0, .count = 2}, {.width = 20, .first = 2, .count = 1}},
    };
    hand_join(h, false);
}

static void break_item(struct by_hand *h) {
    h->pieces[1] = 7;
}
static void break_width(struct by_hand *h) {
    h->strips[1].width = 19;
}
static void break_length(struct by_hand *h) {
    h->items[0].length = 50; /* 50 + 1 + 50 */
}
static void break_board_width(struct by_hand *h) {
    h->stocks[0].width = 40;
}
static void break_stock(struct by_hand *h) {
    h->boards[0].stock = 1;
}
static void break_strips(struct by_hand *h) {
    h->boards[0].count = 3;
}
static void break_pieces(struct by_hand *h) {
    h->strips[1].count = 2;
}
static void break_empty(struct by_hand *h) {
    h->strips[1].count = 0;
}
static void break_twice(struct by_hand *h) {
    h->boards[1] = h->boards[0];
    h->plan.board_count = 2;
    h->plan.cost = 18;
}
static void break_missing(struct by_hand *h) {
    h->items[0].demand = 4;
}
static void break_other(struct by_hand *h) {
    h->items[1].demand = 1;
}
static void break_cost(struct by_hand *h) {
    h->plan.cost = 8;
    h->plan.bound = 8;
}
static void break_bound(struct by_hand *h) {
    h->plan.bound = 10;
}

static void checker(void **state) {
    (void)state;
    static void (*const breaks[])(struct by_hand *) = {
        break_item,   break_width, break_length, break_board_width, break_stock, break_strips,
        break_pieces, break_empty, break_twice,  break_missing,     break_other, break_cost,
        break_bound,  hand_trim,   hand_edge,    hand_defects};
    struct by_hand h;
    take_hand(&h);
    assert_null(board_plan_check(&h.job, &h.plan));
    for (size_t i = 0; i < sizeof breaks / sizeof *breaks; i++) {
        take_hand(&h);
        breaks[i](&h);
        if (board_plan_check(&h.job, &h.plan) == NULL) {
            print_error("broken plan %zu is taken\n", i);
        }
        assert_non_null(board_plan_check(&h.job, &h.plan));
    }
}

/* --- layouts --- */

static void layout(void **state) {
    (void)state;
    struct by_hand h;
    struct board_layout l = {0};
    struct board_totals t;
    const struct offcut_rule keep = {.length = 20, .board_width = 10};
    take_hand(&h);
    h.job.end_trim = 5;
    h.job.edge = 2;
    h.job.defects = 100000;
    h.stocks[0] = (struct cut_stock){.length = 200, .width = 60, .price = 9, .copies = -1};
    assert_true(board_layout_make(&l, &h.job, &h.plan, 0, keep));
    /* 2 ends, 2 edges, 2 rips (15 are left beside), 2 and 1 crosscuts */
    assert_int_equal(l.cut_count, 9);
    assert_int_equal(l.cuts[0].kind, BOARD_CUT_END);
    assert_int_equal(l.cuts[2].kind, BOARD_CUT_EDGE);
    assert_int_equal(l.cuts[4].kind, BOARD_CUT_RIP);
    assert_int_equal(l.cuts[4].box.y, 22);
    assert_int_equal(l.cuts[6].kind, BOARD_CUT_CROSS);
    assert_int_equal(l.cuts[6].box.x, 54);
    assert_int_equal(l.pieces[1].box.x, 55);
    assert_int_equal(l.pieces[2].box.y, 23);
    /* clear to 5 + 171: beside the strips 14 wide, behind them 71 and 121 long */
    assert_int_equal(l.offcut_count, 3);
    assert_int_equal(l.offcuts[0].box.width, 14);
    assert_int_equal(l.offcuts[0].box.length, 171);
    assert_true(l.offcuts[0].keep);
    assert_int_equal(l.offcuts[1].box.length, 71);
    assert_int_equal(l.offcuts[2].box.length, 121);
    assert_int_equal(l.reserve_count, 3);
    assert_int_equal(l.reserves[0].length, 19);
    board_layout_clear(&l);
    assert_true(board_totals_make(&t, &h.job, &h.plan, keep));
    assert_int_equal(t.cuts, 9);
}

/* --- random jobs --- */

static void same_plan(const struct board_plan *a, const struct board_plan *b) {
    assert_int_equal(a->cost, b->cost);
    assert_int_equal(a->bound, b->bound);
    assert_int_equal(a->board_count, b->board_count);
    assert_int_equal(a->strip_count, b->strip_count);
    assert_int_equal(a->piece_count, b->piece_count);
    assert_memory_equal(a->pieces, b->pieces, a->piece_count * sizeof *a->pieces);
}

/* Parts, trim, kerf, defects and offcuts are the boards; hundredths of 10^12, so sizes are taken in
 * tenths of millions. */
static void adds_up(const struct board_job *job, const struct board_plan *plan) {
    struct board_totals t;
    int64_t boards = 0;
    assert_true(
        board_totals_make(&t, job, plan, (struct offcut_rule){.length = 120, .board_width = 15}));
    for (size_t b = 0; b < plan->board_count; b++) {
        const struct cut_stock *const s = &job->stocks[plan->boards[b].stock];
        boards += s->length / 100000 * (s->width / 100000);
    }
    const int64_t off = boards - t.parts - t.trim - t.kerf - t.defects - t.offcuts;
    assert_in_range(off + 3, 0, 6);
    assert_true(t.keep <= t.offcuts);
}

static void random_jobs(void **state) {
    (void)state;
    uint64_t seed = 20260302;
    for (int round = 0; round < 200; round++) {
        struct cut_stock stocks[6];
        struct cut_item items[12];
        const size_t lengths = (size_t)draw_from_to(&seed, 1, 3);
        const size_t widths = (size_t)draw_from_to(&seed, 1, 2);
        struct board_job job = {.kerf = draw_from_to(&seed, 0, 2) * 100000,
                                .end_trim = draw_from_to(&seed, 0, 20) * 100000,
                                .edge = draw_from_to(&seed, 0, 2) * 100000,
                                .defects = draw_from_to(&seed, 0, 20) * 10000,
                                .crosscut_first = round % 2 == 1,
                                .stocks = stocks,
                                .stock_count = lengths * widths,
                                .items = items,
                                .item_count = (size_t)draw_from_to(&seed, 1, 12)};
        for (size_t s = 0; s < job.stock_count; s++) {
            const int64_t along = 960 + 240 * (int64_t)(s / widths);
            const int64_t across = 50 + 20 * (int64_t)(s % widths);
            stocks[s] =
                (struct cut_stock){.length = along * 100000,
                                   .width = across * 100000,
                                   .price = along * across / 100 + draw_from_to(&seed, 0, 30),
                                   .copies = CUT_UNLIMITED};
        }
        for (size_t i = 0; i < job.item_count; i++) {
            items[i] = (struct cut_item){.length = draw_from_to(&seed, 60, 700) * 100000,
                                         .width = draw_from_to(&seed, 1, 4) * 1000000 + 600000,
                                         .demand = draw_from_to(&seed, 0, 9)};
        }
        struct board_plan *plan = NULL;
        struct board_plan *again = NULL;
        assert_int_equal(board_plan_make(&job, 100000, &plan), CUT_DONE);
        const char *const fault = board_plan_check(&job, plan);
        if (fault != NULL) {
            print_error("round %d: %s\n", round, fault);
        }
        assert_null(fault);
        assert_true(plan->bound <= plan->cost);
        adds_up(&job, plan);
        assert_int_equal(board_plan_make(&job, 100000, &again), CUT_DONE);
        same_plan(plan, again);
        board_plan_free(again);
        /* a bound holds for every plan, whoever found it */
        assert_int_equal(board_plan_make(&job, 20 * (int64_t)EFFORT, &again), CUT_DONE);
        assert_null(board_plan_check(&job, again));
        assert_true(again->bound <= plan->cost);
        assert_true(plan->bound <= again->cost);
        board_plan_free(plan);
        board_plan_free(again);
    }
}

/* --- many sizes --- */

#define SIZES 300

/* Parts of two widths and hardly a length twice. */
static struct board_job many_sizes(const struct cut_stock stocks[2], struct cut_item items[SIZES]) {
    uint64_t seed = 7;
    for (size_t i = 0; i < SIZES; i++) {
        items[i] = (struct cut_item){
            .length = draw_from_to(&seed, 600, 4000), .width = i % 2 == 0 ? 225 : 150, .demand = 2};
    }
    return (struct board_job){
        .kerf = 12, .stocks = stocks, .stock_count = 2, .items = items, .item_count = SIZES};
}

static int by_size(const void *left, const void *right) {
    const struct cut_item *const a = left;
    const struct cut_item *const b = right;
    const int64_t wider = a->width - b->width;
    const int64_t longer = a->length - b->length;
    return wider != 0 ? (wider > 0) - (wider < 0) : (longer > 0) - (longer < 0);
}

static size_t distinct(const struct cut_item *items) {
    struct cut_item sorted[SIZES];
    size_t count = 1;
    memcpy(sorted, items, sizeof sorted);
    qsort(sorted, SIZES, sizeof *sorted, by_size);
    for (size_t i = 1; i < SIZES; i++) {
        count += by_size(&sorted[i - 1], &sorted[i]) != 0 ? 1 : 0;
    }
    return count;
}

static const struct cut_stock two_boards[] = {{9600, 600, 576, -1}, {12000, 800, 960, -1}};

static void near_sizes_become_one(void **state) {
    (void)state;
    struct cut_item items[SIZES];
    struct board_job job = many_sizes(two_boards, items);
    struct board_coarse coarse = {0};
    assert_true(distinct(items) > 250);
    assert_true(board_coarse_make(&coarse, &job));
    assert_true(coarse.simpler);
    assert_int_equal(distinct(coarse.least), 100);
    assert_int_equal(distinct(coarse.greatest), 100);
    for (size_t i = 0; i < SIZES; i++) {
        assert_true(coarse.least[i].length <= items[i].length);
        assert_true(coarse.greatest[i].length >= items[i].length);
        assert_true(coarse.greatest[i].length - coarse.least[i].length < 300);
        assert_int_equal(coarse.least[i].width, items[i].width);
        assert_int_equal(coarse.greatest[i].demand, items[i].demand);
    }
    board_coarse_clear(&coarse);
    job.item_count = 90;
    assert_true(board_coarse_make(&coarse, &job));
    assert_false(coarse.simpler);
    assert_memory_equal(coarse.least, items, 90 * sizeof *items);
    board_coarse_clear(&coarse);
}

static void many_sizes_are_bounded_too(void **state) {
    (void)state;
    struct cut_item items[SIZES];
    const struct board_job job = many_sizes(two_boards, items);
    struct board_plan *plan = NULL;
    assert_int_equal(board_plan_make(&job, 400000000, &plan), CUT_DONE);
    assert_null(board_plan_check(&job, plan));
    assert_true(plan->bound > board_plan_bound(&job));
    assert_true(plan->cost * 100 < plan->bound * 112);
    board_plan_free(plan);
}

static void repair_betters_a_plan(void **state) {
    (void)state;
    /* two boards of one part each, which one holds */
    const struct cut_stock stock = {100, 50, 7, -1};
    struct cut_item item = {50, 50, 2, false};
    const struct board_job job = {
        .stocks = &stock, .stock_count = 1, .items = &item, .item_count = 1};
    struct board_plan *plan = calloc(1, sizeof *plan);
    assert_non_null(plan);
    *plan = (struct board_plan){.boards = calloc(2, sizeof *plan->boards),
                                .board_count = 2,
                                .strips = calloc(2, sizeof *plan->strips),
                                .strip_count = 2,
                                .pieces = calloc(2, sizeof *plan->pieces),
                                .piece_count = 2,
                                .cost = 14};
    assert_true(plan->boards != NULL && plan->strips != NULL && plan->pieces != NULL);
    for (size_t i = 0; i < 2; i++) {
        plan->boards[i] = (struct board_use){0, i, 1};
        plan->strips[i] = (struct board_strip){50, i, 1};
    }
    assert_null(board_plan_check(&job, plan));
    assert_true(board_repair(&job, 100000, &plan));
    assert_null(board_plan_check(&job, plan));
    assert_int_equal(plan->cost, 7);
    assert_int_equal(plan->board_count, 1);
    board_plan_free(plan);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(plain_cases),
        cmocka_unit_test(no_room),
        cmocka_unit_test(too_many_parts),
        cmocka_unit_test(checker),
        cmocka_unit_test(layout),
        cmocka_unit_test(random_jobs),
        cmocka_unit_test(near_sizes_become_one),
        cmocka_unit_test(many_sizes_are_bounded_too),
        cmocka_unit_test(repair_betters_a_plan),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
