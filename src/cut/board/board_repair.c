/* SPDX-License-Identifier: MIT */
/* Ruin and recreate (Schrimpf and others 2000), whole boards at a time: the dives plan a handful of
 * boards nearly always as well as can be, a whole job less surely. */
#include "cut/board/board_repair.h"

#include "cut/board/board_columns.h"
#include "cut/board/board_limited.h"
#include "cut/common/cut_random.h"

#include <stdlib.h>
#include <string.h>

enum { LEAST_BOARDS = 2, MOST_BOARDS = 6 };
/* Share of the effort that one try may take. */
#define TRY_SHARE 20
/* Tries without a cheaper plan that end the repair; where boards are few more of them, as plans
 * that cost the same cut up more or less of these. */
enum { PATIENCE = 30, PATIENCE_LIMITED = 100 };

struct repair {
    const struct board_job *job;
    struct board_plan *plan; /* the best so far */
    struct cut_item *items;  /* of the job, with what the boards taken hold as the demand */
    struct cut_stock stocks[CUT_STOCKS_MAX]; /* of the job, less what the other boards have */
    size_t *order;                           /* boards; the first ones are those taken */
    size_t taken;
    bool limited; /* some boards are few */
    struct cut_random random;
    int64_t effort, spent;
};

/* Draws boards to the front of order. */
static void take_boards(struct repair *r) {
    const size_t count = r->plan->board_count;
    for (size_t b = 0; b < count; b++) {
        r->order[b] = b;
    }
    r->taken = LEAST_BOARDS + cut_random_below(&r->random, MOST_BOARDS - LEAST_BOARDS + 1);
    r->taken = r->taken < count ? r->taken : count;
    for (size_t i = 0; i < r->taken; i++) {
        const size_t other = i + cut_random_below(&r->random, count - i);
        const size_t held = r->order[i];
        r->order[i] = r->order[other];
        r->order[other] = held;
    }
}

/* The parts of the boards taken become the demand; returns what these boards cost. */
static int64_t demand_of(struct repair *r) {
    int64_t cost = 0;
    for (size_t i = 0; i < r->job->item_count; i++) {
        r->items[i].demand = 0;
    }
    for (size_t i = 0; i < r->taken; i++) {
        const struct board_use *const board = &r->plan->boards[r->order[i]];
        cost += r->job->stocks[board->stock].price;
        for (size_t s = board->first; s < board->first + board->count; s++) {
            const struct board_strip *const strip = &r->plan->strips[s];
            for (size_t p = strip->first; p < strip->first + strip->count; p++) {
                r->items[r->plan->pieces[p]].demand++;
            }
        }
    }
    return cost;
}

/* What the boards not taken leave of each stock. */
static void leave_stocks(struct repair *r) {
    memcpy(r->stocks, r->job->stocks, r->job->stock_count * sizeof *r->stocks);
    for (size_t i = r->taken; i < r->plan->board_count; i++) {
        struct cut_stock *const stock = &r->stocks[r->plan->boards[r->order[i]].stock];
        stock->copies -= stock->copies > 0 ? 1 : 0;
    }
}

/* The boards not taken, then those of part. NULL: out of memory. */
static struct board_plan *join(const struct repair *r, const struct board_plan *part) {
    const struct board_plan *const old = r->plan;
    struct board_plan *const plan = board_plan_new(r->job);
    if (plan == NULL) {
        return NULL;
    }
    for (size_t i = r->taken; i < old->board_count; i++) {
        board_plan_add(r->job, plan, old, r->order[i]);
    }
    for (size_t b = 0; b < part->board_count; b++) {
        board_plan_add(r->job, plan, part, b);
    }
    plan->bound = old->bound;
    return plan;
}

/* false: out of memory. */
static bool try_once(struct repair *r) {
    struct board_plan *part = NULL;
    int64_t bound = 0;
    int64_t spent = 0;
    struct board_job job = *r->job;
    job.items = r->items;
    job.stocks = r->stocks;
    take_boards(r);
    const int64_t cost = demand_of(r);
    leave_stocks(r);
    /* as good as before is taken too: from there another way may be open */
    const struct board_part now = {r->plan, r->order, r->taken, cost};
    if (!board_dive(&job, r->effort / TRY_SHARE, cost + 1, r->limited ? NULL : &now, &part, &bound,
                    &spent)) {
        return false;
    }
    r->spent += spent + 1000;
    if (part == NULL || (part->cost == cost && part->board_count > r->taken)) {
        board_plan_free(part);
        return true;
    }
    struct board_plan *const next = join(r, part);
    board_plan_free(part);
    if (next == NULL) {
        return false;
    }
    board_plan_free(r->plan);
    r->plan = next;
    return true;
}

bool board_repair(const struct board_job *job, int64_t effort, struct board_plan **plan) {
    struct repair r = {.job = job,
                       .plan = *plan,
                       .limited = board_has_limited(job),
                       .random = {.state = 2},
                       .effort = effort};
    const int patience = r.limited ? PATIENCE_LIMITED : PATIENCE;
    r.items = calloc(job->item_count + 1, sizeof *r.items);
    r.order = calloc(r.plan->piece_count + 1, sizeof *r.order); /* no board is without a part */
    bool held = r.items != NULL && r.order != NULL;
    if (held) {
        memcpy(r.items, job->items, job->item_count * sizeof *r.items);
    }
    for (int since = 0; held && since < patience && r.plan->board_count > 1 &&
                        r.plan->cost > r.plan->bound && r.spent < effort;) {
        const int64_t before = r.plan->cost;
        held = try_once(&r);
        since = r.plan->cost < before ? 0 : since + 1;
    }
    free(r.items);
    free(r.order);
    *plan = r.plan;
    return held;
}
