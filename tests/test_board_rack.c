/* SPDX-License-Identifier: MIT */
/* Boards of which there are only so many, as on a rack: small jobs against every way of cutting
 * them, cases that are plain by hand, a checker that counts them. Sizes in tenths of an inch. */
#include "board_hand.h"
#include "cmocka_all.h"
#include "cut/board/board_layout.h"

#include <string.h>

#define EFFORT  300000
#define PARTS   5 /* of a small job */
#define ITEMS   3
#define STOCKS  5
#define MILLION INT64_C(1000000)

/* --- every way of cutting a small job --- */

/* A strip, or a segment: parts of one size in it, side by side the other way. */
struct lane {
    size_t board;
    int64_t size, used;
};

struct search {
    const struct board_job *job;
    const struct cut_item *parts[PARTS];
    size_t part_count;
    struct lane lanes[PARTS];
    size_t lane_count;
    size_t stock[PARTS]; /* of each board */
    int64_t used[PARTS]; /* of each board, over its lanes */
    int64_t left[STOCKS];
    size_t board_count;
    int64_t cost, best;
};

/* By the words of docs/method.md, "By plan": rooms along and across. */
static int64_t room(const struct search *s, size_t stock, bool along) {
    const struct board_job *const job = s->job;
    const struct cut_stock *const b = &job->stocks[stock];
    if (stock + job->sawn_count >= job->stock_count) {
        return along ? b->length : b->width;
    }
    return along ? (b->length - 2 * job->end_trim) * (MILLION - job->defects) / MILLION
                 : b->width - 2 * job->edge;
}

static int64_t of_lane(const struct search *s, const struct cut_item *part) {
    return s->job->crosscut_first ? part->length : part->width;
}

static int64_t in_lane(const struct search *s, const struct cut_item *part) {
    return s->job->crosscut_first ? part->width : part->length;
}

static void place(struct search *s, size_t part);

/* The part begins a lane of a board, if that is large enough. */
static void begin_lane(struct search *s, size_t part, size_t board) {
    const struct cut_item *const p = s->parts[part];
    const int64_t used = s->used[board];
    const int64_t taken = used + (used > 0 ? s->job->kerf : 0) + of_lane(s, p);
    const size_t stock = s->stock[board];
    if (taken <= room(s, stock, s->job->crosscut_first) &&
        in_lane(s, p) <= room(s, stock, !s->job->crosscut_first)) {
        s->lanes[s->lane_count++] = (struct lane){board, of_lane(s, p), in_lane(s, p)};
        s->used[board] = taken;
        place(s, part + 1);
        s->used[board] = used;
        s->lane_count--;
    }
}

static void begin_board(struct search *s, size_t part, size_t stock) {
    if (s->left[stock] == 0) {
        return;
    }
    s->left[stock]--; /* what never runs out is below 0 */
    s->stock[s->board_count] = stock;
    s->used[s->board_count++] = 0;
    s->cost += s->job->stocks[stock].price;
    begin_lane(s, part, s->board_count - 1);
    s->cost -= s->job->stocks[stock].price;
    s->board_count--;
    s->left[stock]++;
}

/* Tries every place for the part and those after it. */
static void place(struct search *s, size_t part) {
    if (part == s->part_count) {
        s->best = s->cost < s->best ? s->cost : s->best;
        return;
    }
    const struct cut_item *const p = s->parts[part];
    for (size_t i = 0; i < s->lane_count; i++) {
        struct lane *const lane = &s->lanes[i];
        const int64_t more = s->job->kerf + in_lane(s, p);
        if (lane->size == of_lane(s, p) &&
            lane->used + more <= room(s, s->stock[lane->board], !s->job->crosscut_first)) {
            lane->used += more;
            place(s, part + 1);
            lane->used -= more;
        }
    }
    for (size_t b = 0; b < s->board_count; b++) {
        begin_lane(s, part, b);
    }
    for (size_t k = 0; k < s->job->stock_count; k++) {
        begin_board(s, part, k);
    }
}

/* INT64_MAX: there is no way. */
static int64_t least_cost(const struct board_job *job) {
    struct search s = {.job = job, .best = INT64_MAX};
    for (size_t k = 0; k < job->stock_count; k++) {
        s.left[k] = job->stocks[k].copies;
    }
    for (size_t i = 0; i < job->item_count; i++) {
        for (int64_t n = 0; n < job->items[i].demand; n++) {
            s.parts[s.part_count++] = &job->items[i];
        }
    }
    place(&s, 0);
    return s.best;
}

static uint64_t next(uint64_t *seed) {
    *seed = *seed * 6364136223846793005u + 1442695040888963407u;
    return *seed >> 33;
}

static int64_t from_to(uint64_t *seed, int64_t low, int64_t high) {
    return low + (int64_t)(next(seed) % (uint64_t)(high - low + 1));
}

/* One or two sizes that are sold, one to three on the rack, some of these sawn; one to five parts.
 */
static struct board_job small_job(uint64_t *seed, struct cut_stock *stocks,
                                  struct cut_item *items) {
    struct board_job job = {.kerf = from_to(seed, 0, 2),
                            .end_trim = from_to(seed, 0, 3),
                            .edge = from_to(seed, 0, 2),
                            .defects = from_to(seed, 0, 2) * 50000,
                            .crosscut_first = from_to(seed, 0, 1) == 1,
                            .stocks = stocks,
                            .items = items,
                            .item_count = (size_t)from_to(seed, 1, ITEMS)};
    const size_t sold = (size_t)from_to(seed, 1, 2);
    const size_t rack = (size_t)from_to(seed, 1, 3);
    stocks[0] = (struct cut_stock){100, 60, from_to(seed, 6, 9), CUT_UNLIMITED};
    stocks[1] = (struct cut_stock){from_to(seed, 60, 140), 40, from_to(seed, 3, 7), CUT_UNLIMITED};
    for (size_t s = sold; s < sold + rack; s++) {
        stocks[s] =
            (struct cut_stock){from_to(seed, 15, 150), from_to(seed, 12, 62),
                               from_to(seed, 0, 1) * from_to(seed, 0, 6), from_to(seed, 0, 2)};
    }
    job.stock_count = sold + rack;
    job.sawn_count = (size_t)from_to(seed, 0, (int64_t)rack);
    int64_t left = PARTS;
    for (size_t i = 0; i < job.item_count; i++) {
        const int64_t demand = from_to(seed, 1, left - (int64_t)(job.item_count - i - 1));
        items[i] = (struct cut_item){
            .length = 10 * from_to(seed, 2, 11), .width = from_to(seed, 12, 58), .demand = demand};
        left -= demand;
    }
    return job;
}

static void every_way(void **state) {
    (void)state;
    uint64_t seed = 20261128;
    size_t planned = 0, least = 0, met = 0, lacking = 0, missed = 0;
    for (int round = 0; round < 2000; round++) {
        struct cut_stock stocks[STOCKS];
        struct cut_item items[ITEMS];
        const struct board_job job = small_job(&seed, stocks, items);
        struct board_plan *plan = NULL;
        const enum cut_status status = board_plan_make(&job, EFFORT, &plan);
        const int64_t best = least_cost(&job);
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
