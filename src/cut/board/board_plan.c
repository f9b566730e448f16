/* SPDX-License-Identifier: MIT */
#include "cut/board/board_plan.h"

#include "cut/board/board_coarse.h"
#include "cut/board/board_columns.h"
#include "cut/board/board_limited.h"
#include "cut/board/board_repair.h"
#include "cut/board/board_search.h"
#include "cut/board/board_strips.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* SIZE_MAX: more than the planner takes. */
static size_t parts_wanted(const struct board_job *job) {
    int64_t parts = 0;
    for (size_t i = 0; i < job->item_count; i++) {
        const int64_t demand = job->items[i].demand;
        if (demand < 0 || demand > CUT_PIECES_MAX - parts) {
            return SIZE_MAX;
        }
        parts += demand;
    }
    return (size_t)parts;
}

struct board_plan *board_plan_new(const struct board_job *job) {
    const size_t parts = parts_wanted(job);
    struct board_plan *const plan = calloc(1, sizeof *plan);
    assert(parts != SIZE_MAX);
    if (plan == NULL) {
        return NULL;
    }
    plan->boards = calloc(parts + 1, sizeof *plan->boards);
    plan->strips = calloc(parts + 1, sizeof *plan->strips);
    plan->pieces = calloc(parts + 1, sizeof *plan->pieces);
    if (plan->boards == NULL || plan->strips == NULL || plan->pieces == NULL) {
        board_plan_free(plan);
        return NULL;
    }
    return plan;
}

void board_plan_free(struct board_plan *plan) {
    if (plan != NULL) {
        free(plan->boards);
        free(plan->strips);
        free(plan->pieces);
        free(plan);
    }
}

void board_plan_add(const struct board_job *job, struct board_plan *to,
                    const struct board_plan *from, size_t board) {
    struct board_use use = from->boards[board];
    for (size_t s = 0; s < use.count; s++) {
        struct board_strip strip = from->strips[use.first + s];
        memcpy(to->pieces + to->piece_count, from->pieces + strip.first,
               strip.count * sizeof *to->pieces);
        strip.first = to->piece_count;
        to->piece_count += strip.count;
        to->strips[to->strip_count + s] = strip;
    }
    use.first = to->strip_count;
    to->strip_count += use.count;
    to->boards[to->board_count++] = use;
    to->cost += job->stocks[use.stock].price;
}

/* Whether a board that never runs out costs nothing. */
static bool has_free_board(const struct board_job *job) {
    for (size_t s = 0; s < job->stock_count; s++) {
        if (job->stocks[s].copies == CUT_UNLIMITED && job->stocks[s].price <= 0) {
            return true;
        }
    }
    return false;
}

/* Whole boards as columns: a tighter bound, and a plan that may be cheaper; of a job with many
 * sizes by way of a simpler one. */
static bool dive(const struct board_job *job, const struct board_coarse *coarse, int64_t effort,
                 struct board_plan **plan) {
    struct board_job simple = *job;
    struct board_plan *next = NULL;
    int64_t bound = 0;
    int64_t of_greatest = 0;
    int64_t spent = 0;
    if (coarse->simpler) {
        simple.items = coarse->least;
        if (!board_relaxed_bound(&simple, effort, &bound, &spent)) {
            return false;
        }
    }
    simple.items = coarse->greatest;
    const int64_t rest = spent < effort / 2 ? effort - spent : effort / 2;
    const int64_t known = *plan == NULL ? INT64_MAX : (*plan)->cost;
    const int64_t least = board_plan_bound(job);
    if (!board_dive(&simple, rest, known, NULL, &next, &of_greatest, &spent)) {
        return false;
    }
    bound = coarse->simpler ? bound : of_greatest;
    if (next != NULL) {
        board_plan_free(*plan);
        *plan = next;
    }
    if (*plan != NULL) {
        (*plan)->bound = bound > least ? bound : least;
    }
    return true;
}

/* Betters the plan by whole boards, all of them and then a few at a time; or finds one. Where a
 * board costs nothing that has no scale, and the bound of the room is all there is. */
static bool dive_further(const struct board_job *job, int64_t effort, struct board_plan **plan) {
    struct board_coarse coarse = {0};
    if (has_free_board(job)) {
        if (*plan != NULL) {
            (*plan)->bound = board_plan_bound(job);
        }
        return true;
    }
    const bool held =
        board_coarse_make(&coarse, job) && dive(job, &coarse, effort / 2, plan) &&
        (*plan == NULL ||
         ((board_has_limited(job) || board_search(job, effort / 8, plan)) &&
          board_repair(job, effort / 4, plan) && board_cut_less(job, effort / 4, plan)));
    board_coarse_clear(&coarse);
    return held;
}

/* A plan to begin with: of bought boards alone, or of limited ones first. *plan: NULL where neither
 * has room for all. */
static enum cut_status begin(const struct board_job *job, int64_t effort,
                             struct board_plan **plan) {
    struct board_plan *first = NULL;
    const bool limited = board_has_limited(job);
    enum cut_status status = board_by_strips(job, limited ? effort / 2 : effort, plan);
    if (!limited || status == CUT_NO_MEMORY || status == CUT_BAD_INPUT) {
        return status;
    }
    const enum cut_status of_limited = board_limited_first(job, effort / 2, &first);
    if (of_limited == CUT_NO_MEMORY) {
        return of_limited;
    }
    if (first != NULL && (*plan == NULL || first->cost < (*plan)->cost)) {
        board_plan_free(*plan);
        *plan = first;
        return CUT_DONE;
    }
    board_plan_free(first);
    return CUT_DONE;
}

/* Whether each part fits a stock. */
static bool is_room(const struct board_job *job) {
    for (size_t i = 0; i < job->item_count; i++) {
        bool fits = job->items[i].demand == 0;
        for (size_t s = 0; !fits && s < job->stock_count; s++) {
            fits = job->stocks[s].copies != 0 &&
                   board_usable_length(job, s) >= job->items[i].length &&
                   board_usable_width(job, s) >= job->items[i].width;
        }
        if (!fits) {
            return false;
        }
    }
    return true;
}

/* Jobs of so few parts need no more than half of what is granted, where that is much
 * (docs/cutting.md). */
#define FEW_PARTS   300
#define MUCH_EFFORT (CUT_EFFORT_SECOND / 5)

/* More work than this on strips alone betters nothing that the dives do not better. */
#define BEGIN_MOST (CUT_EFFORT_SECOND / 32)

/* A plan of boards that are ripped first. */
static enum cut_status plan_strips(const struct board_job *job, int64_t granted,
                                   struct board_plan **plan) {
    const bool halved = granted > MUCH_EFFORT && parts_wanted(job) <= FEW_PARTS;
    const int64_t effort = halved ? granted / 2 : granted;
    if (!is_room(job)) {
        return CUT_NO_ROOM;
    }
    const bool alone = has_free_board(job) || board_has_limited(job) || effort / 4 < BEGIN_MOST;
    const enum cut_status status = begin(job, alone ? effort / 4 : BEGIN_MOST, plan);
    if (status == CUT_DONE && dive_further(job, effort, plan)) {
        return *plan == NULL ? CUT_SHORT : CUT_DONE;
    }
    board_plan_free(*plan);
    *plan = NULL;
    return status == CUT_DONE ? CUT_NO_MEMORY : status;
}

/* Crosscut first is ripped first with along and across exchanged: segments become strips. What the
 * boards lose is taken off before, since ends and defects stay where they are. */
static enum cut_status plan_segments(const struct board_job *job, int64_t effort,
                                     struct board_plan **plan) {
    struct cut_stock stocks[CUT_STOCKS_MAX];
    struct cut_item *const items = calloc(job->item_count + 1, sizeof *items);
    if (items == NULL) {
        return CUT_NO_MEMORY;
    }
    for (size_t s = 0; s < job->stock_count; s++) {
        stocks[s] = job->stocks[s];
        stocks[s].length = board_usable_width(job, s);
        stocks[s].width = board_usable_length(job, s);
    }
    for (size_t i = 0; i < job->item_count; i++) {
        items[i] = job->items[i];
        items[i].length = job->items[i].width;
        items[i].width = job->items[i].length;
    }
    const struct board_job exchanged = {.kerf = job->kerf,
                                        .stocks = stocks,
                                        .stock_count = job->stock_count,
                                        .items = items,
                                        .item_count = job->item_count};
    const enum cut_status status = plan_strips(&exchanged, effort, plan);
    free(items);
    return status;
}

enum cut_status board_plan_make(const struct board_job *job, int64_t effort,
                                struct board_plan **plan) {
    *plan = NULL;
    if (job->stock_count == 0 || job->stock_count > CUT_STOCKS_MAX ||
        parts_wanted(job) == SIZE_MAX) {
        return CUT_BAD_INPUT;
    }
    return job->crosscut_first ? plan_segments(job, effort, plan) : plan_strips(job, effort, plan);
}
