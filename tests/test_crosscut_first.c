/* SPDX-License-Identifier: MIT */
/* Boards that are crosscut into segments first: small jobs against every way of cutting them, a
 * checker that takes nothing broken, where all lies. Sizes in tenths of an inch. */
#include "board_hand.h"
#include "board_ways.h"
#include "cmocka_all.h"
#include "cut/board/board_layout.h"
#include "cut/board/board_search.h"

#define EFFORT  300000
#define ITEMS   3
#define STOCKS  2
#define MILLION INT64_C(1000000)

/* --- small jobs --- */

/* One or two sizes of board, one to five parts of up to three sizes. */
static struct board_job small_job(uint64_t *seed, struct cut_stock *stocks,
                                  struct cut_item *items) {
    struct board_job job = {.kerf = draw_from_to(seed, 0, 2),
                            .end_trim = draw_from_to(seed, 0, 3),
                            .edge = draw_from_to(seed, 0, 2),
                            .defects = draw_from_to(seed, 0, 2) * 50000,
                            .crosscut_first = true,
                            .stocks = stocks,
                            .stock_count = (size_t)draw_from_to(seed, 1, STOCKS),
                            .items = items,
                            .item_count = (size_t)draw_from_to(seed, 1, ITEMS)};
    stocks[0] = (struct cut_stock){100, 60, draw_from_to(seed, 6, 9), CUT_UNLIMITED};
    stocks[1] = (struct cut_stock){draw_from_to(seed, 60, 140), 40, draw_from_to(seed, 3, 7),
                                   CUT_UNLIMITED};
    ways_draw_items(seed, items, job.item_count, 8, 56);
    return job;
}

static void every_way(void **state) {
    (void)state;
    uint64_t seed = 20261127;
    size_t planned = 0, least = 0, met = 0, cheaper = 0, dearer = 0;
    for (int round = 0; round < 600; round++) {
        struct cut_stock stocks[STOCKS];
        struct cut_item items[ITEMS];
        struct board_job job = small_job(&seed, stocks, items);
        struct board_plan *plan = NULL, *ripped = NULL;
        const enum cut_status status = board_plan_make(&job, EFFORT, &plan);
        const int64_t best = ways_least_cost(&job);
        assert_int_equal(status, best == INT64_MAX ? CUT_NO_ROOM : CUT_DONE);
        if (status != CUT_DONE) {
            continue;
        }
        planned++;
        assert_null(board_plan_check(&job, plan));
        assert_true(plan->cost >= best);
        least += plan->cost == best ? 1 : 0;
        assert_true(plan->bound <= best);
        met += plan->bound == best ? 1 : 0;
        job.crosscut_first = false;
        assert_int_equal(board_plan_make(&job, EFFORT, &ripped), CUT_DONE);
        assert_null(board_plan_check(&job, ripped));
        cheaper += plan->cost < ripped->cost ? 1 : 0;
        dearer += plan->cost > ripped->cost ? 1 : 0;
        board_plan_free(plan);
        board_plan_free(ripped);
    }
    print_message(
        "%zu jobs, %zu planned for the least, bound met in %zu; crosscut first cheaper in "
        "%zu, dearer in %zu\n",
        planned, least, met, cheaper, dearer);
    assert_true(planned > 400 && cheaper > 0 && dearer > 0);
    assert_true(100 * least >= 99 * planned && 100 * met >= 85 * planned);
}

/* Each part on a board of its own, the first that holds it. NULL: none does. */
static struct board_plan *apart(const struct board_job *job) {
    struct board_plan *const plan = board_plan_new(job);
    assert_non_null(plan);
    for (size_t i = 0; i < job->item_count; i++) {
        size_t s = 0;
        while (s < job->stock_count && (board_usable_length(job, s) < job->items[i].length ||
                                        board_usable_width(job, s) < job->items[i].width)) {
            s++;
        }
        if (s == job->stock_count) {
            board_plan_free(plan);
            return NULL;
        }
        for (int64_t n = 0; n < job->items[i].demand; n++) {
            const size_t at = plan->piece_count++;
            plan->pieces[at] = i;
            plan->strips[at] = (struct board_strip){job->items[i].width, at, 1};
            plan->boards[at] = (struct board_use){s, at, 1};
            plan->cost += job->stocks[s].price;
        }
    }
    plan->board_count = plan->strip_count = plan->piece_count;
    return plan;
}

/* The search for single parts, which here has all to do, against every way; ripped first. */
static void search_alone(void **state) {
    (void)state;
    uint64_t seed = 20261128;
    size_t searched = 0, least = 0;
    for (int round = 0; round < 300; round++) {
        struct cut_stock stocks[STOCKS];
        struct cut_item items[ITEMS];
        struct board_job job = small_job(&seed, stocks, items);
        job.crosscut_first = false;
        struct board_plan *plan = apart(&job);
        if (plan == NULL || plan->piece_count == 0) {
            board_plan_free(plan);
            continue;
        }
        const int64_t before = plan->cost;
        assert_true(board_search(&job, 0, &plan));
        assert_int_equal(plan->cost, before);
        assert_true(board_search(&job, EFFORT, &plan));
        assert_null(board_plan_check(&job, plan));
        const int64_t best = ways_least_cost(&job);
        assert_true(plan->cost >= best && plan->cost <= before);
        searched++;
        least += plan->cost == best ? 1 : 0;
        board_plan_free(plan);
    }
    print_message("%zu searched, %zu for the least\n", searched, least);
    assert_true(searched > 200 && 100 * least >= 90 * searched);
}

/* --- a plan by hand: two segments of 49, three parts 20 wide --- */

static void take_hand(struct by_hand *h) {
    *h = (struct by_hand){
        .stocks = {{.length = 99, .width = 41, .price = 9, .copies = CUT_UNLIMITED}},
        .items = {{.length = 49, .width = 20, .demand = 3}, {.length = 48, .width = 20}},
        .boards = {{.stock = 0, .first = 0, .count = 2}},
        .strips = {{.width = 49, .first = 0, .count = 2}, {.width = 49, .first = 2, .count = 1}},
    };
    hand_join(h, true);
}

static void break_kind(struct by_hand *h) {
    h->job.crosscut_first = false;
}
static void break_length(struct by_hand *h) {
    h->strips[1].width = 48;
}
static void break_part(struct by_hand *h) {
    h->pieces[2] = 1;
    h->items[0].demand = 2;
    h->items[1].demand = 1;
}
static void break_wide(struct by_hand *h) {
    h->stocks[0].width = 40; /* 20 + 1 + 20 */
}
static void break_long(struct by_hand *h) {
    h->stocks[0].length = 98; /* 49 + 1 + 49 */
}

static void checker(void **state) {
    (void)state;
    static const struct {
        void (*broken)(struct by_hand *);
        const char *fault;
    } cases[] = {
        {break_kind, "a part is not as wide as its strip"},
        {break_length, "a part is not as long as its segment"},
        {break_part, "a part is not as long as its segment"},
        {break_wide, "a segment's parts are wider than their board"},
        {hand_edge, "a segment's parts are wider than their board"},
        {break_long, "the segments are longer than their board"},
        {hand_trim, "the segments are longer than their board"},
        {hand_defects, "the segments are longer than their board"},
    };
    struct by_hand h;
    take_hand(&h);
    assert_null(board_plan_check(&h.job, &h.plan));
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        take_hand(&h);
        cases[i].broken(&h);
        const char *const fault = board_plan_check(&h.job, &h.plan);
        assert_non_null(fault);
        assert_string_equal(fault, cases[i].fault);
    }
}

static void is_box(struct board_box box, int64_t x, int64_t y, int64_t length, int64_t width) {
    assert_int_equal(box.x, x);
    assert_int_equal(box.y, y);
    assert_int_equal(box.length, length);
    assert_int_equal(box.width, width);
}

static void is_cut(const struct board_layout *l, size_t i, enum board_cut_kind kind, size_t strip) {
    assert_int_equal(l->cuts[i].kind, kind);
    assert_int_equal(l->cuts[i].strip, strip);
}

static void layout(void **state) {
    (void)state;
    struct by_hand h;
    struct board_layout l = {0};
    const struct offcut_rule keep = {.length = 50, .board_width = 10};
    take_hand(&h);
    h.job.end_trim = 5;
    h.job.edge = 2;
    h.job.defects = 100000;
    h.stocks[0] = (struct cut_stock){.length = 200, .width = 60, .price = 9, .copies = -1};
    assert_null(board_plan_check(&h.job, &h.plan));
    assert_true(board_layout_make(&l, &h.job, &h.plan, 0, keep));
    /* ends and segments first, then edges and rips of each segment */
    assert_int_equal(l.cut_count, 11);
    is_cut(&l, 1, BOARD_CUT_END, 0);
    is_cut(&l, 2, BOARD_CUT_CROSS, 0);
    is_box(l.cuts[2].box, 54, 0, 1, 60);
    assert_int_equal(l.cuts[2].size, 49);
    is_cut(&l, 3, BOARD_CUT_CROSS, 1);
    is_cut(&l, 4, BOARD_CUT_EDGE, 0);
    is_box(l.cuts[4].box, 5, 0, 49, 2);
    is_box(l.cuts[5].box, 5, 58, 49, 2);
    is_cut(&l, 6, BOARD_CUT_RIP, 0);
    is_box(l.cuts[6].box, 5, 22, 49, 1);
    is_cut(&l, 8, BOARD_CUT_EDGE, 1);
    is_cut(&l, 10, BOARD_CUT_RIP, 1);
    is_box(l.pieces[1].box, 5, 23, 49, 20);
    is_box(l.pieces[2].box, 55, 2, 49, 20);
    /* clear to 5 + 171: what lies behind the last segment keeps its edges */
    assert_int_equal(l.offcut_count, 3);
    is_box(l.offcuts[0].box, 105, 0, 71, 60);
    assert_true(l.offcuts[0].keep);
    is_box(l.offcuts[1].box, 5, 44, 49, 14);
    assert_false(l.offcuts[1].keep);
    is_box(l.offcuts[2].box, 55, 23, 49, 35);
    assert_int_equal(l.reserve_count, 1);
    is_box(l.reserves[0], 176, 0, 19, 60);
    board_layout_clear(&l);
}

static void totals(void **state) {
    (void)state;
    struct by_hand h;
    struct board_totals t;
    take_hand(&h);
    /* a unit is a million, so that an area of one is a hundred hundredths */
    h.job.kerf = MILLION;
    h.job.end_trim = 5 * MILLION;
    h.job.edge = 2 * MILLION;
    h.job.defects = 100000;
    h.stocks[0].length = 200 * MILLION;
    h.stocks[0].width = 60 * MILLION;
    h.items[0].length = 49 * MILLION;
    h.items[0].width = 20 * MILLION;
    h.strips[0].width = 49 * MILLION;
    h.strips[1].width = 49 * MILLION;
    assert_true(board_totals_make(
        &t, &h.job, &h.plan, (struct offcut_rule){.length = 50 * MILLION, .board_width = MILLION}));
    assert_int_equal(t.cuts, 11);
    assert_int_equal(t.parts, 100 * 3 * 49 * 20);
    assert_int_equal(t.trim, 100 * (2 * 5 * 60 + 4 * 2 * 49));
    assert_int_equal(t.kerf, 100 * (2 * 60 + 3 * 49));
    assert_int_equal(t.defects, 100 * 19 * 60);
    assert_int_equal(t.offcuts, 100 * (71 * 60 + 14 * 49 + 35 * 49));
    assert_int_equal(t.keep, 100 * 71 * 60);
    assert_int_equal(t.parts + t.trim + t.kerf + t.defects + t.offcuts, 100 * 200 * 60);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_way), cmocka_unit_test(search_alone), cmocka_unit_test(checker),
        cmocka_unit_test(layout),    cmocka_unit_test(totals),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
