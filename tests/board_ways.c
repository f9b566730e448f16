/* SPDX-License-Identifier: MIT */
#include "board_ways.h"

#include "cmocka_all.h"

#define MILLION INT64_C(1000000)

/* A strip, or a segment: parts of one size in it, side by side the other way. */
struct lane {
    size_t board;
    int64_t size, used;
};

struct search {
    const struct board_job *job;
    const struct cut_item *parts[WAYS_PARTS];
    size_t part_count;
    struct lane lanes[WAYS_PARTS];
    size_t lane_count;
    size_t stock[WAYS_PARTS]; /* of each board */
    int64_t used[WAYS_PARTS]; /* of each board, over its lanes */
    int64_t left[WAYS_STOCKS];
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

int64_t ways_least_cost(const struct board_job *job) {
    struct search s = {.job = job, .best = INT64_MAX};
    for (size_t k = 0; k < job->stock_count; k++) {
        s.left[k] = job->stocks[k].copies;
    }
    for (size_t i = 0; i < job->item_count; i++) {
        for (int64_t n = 0; n < job->items[i].demand; n++) {
            assert_true(s.part_count < WAYS_PARTS);
            s.parts[s.part_count++] = &job->items[i];
        }
    }
    place(&s, 0);
    return s.best;
}

void ways_draw_items(uint64_t *seed, struct cut_item *items, size_t count, int64_t longest,
                     int64_t widest) {
    int64_t left = WAYS_PARTS;
    for (size_t i = 0; i < count; i++) {
        const int64_t demand = draw_from_to(seed, 1, left - (int64_t)(count - i - 1));
        items[i] = (struct cut_item){.length = 10 * draw_from_to(seed, 2, longest),
                                     .width = draw_from_to(seed, 12, widest),
                                     .demand = demand};
        left -= demand;
    }
}
