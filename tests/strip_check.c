/* SPDX-License-Identifier: MIT */
#include "strip_check.h"

#include <stdlib.h>

/* One board, `times` over; adds its pieces to counts. */
static enum plan_fault check_board(const struct cut_job *job, const struct strip_plan *plan,
                                   const struct strip_board *board, int64_t *counts) {
    if (board->stock >= job->stock_count || board->times < 1 || board->times > CUT_PIECES_MAX ||
        board->count < 1 || board->first > plan->piece_count ||
        board->count > plan->piece_count - board->first) {
        return PLAN_WRONG_INDEX;
    }
    int64_t used = 2 * job->trim;
    for (size_t i = 0; i < board->count; i++) {
        const size_t item = plan->pieces[board->first + i];
        if (item >= job->item_count) {
            return PLAN_WRONG_INDEX;
        }
        used += job->items[item].length + (i > 0 ? job->kerf : 0);
        counts[item] += board->times;
    }
    return used > job->stocks[board->stock].length ? PLAN_OUTSIDE : PLAN_GOOD;
}

/* The whole plan; counts: zeros, one an item. */
static enum plan_fault check(const struct cut_job *job, const struct strip_plan *plan,
                             int64_t *counts) {
    int64_t cost = 0;
    int64_t used[CUT_STOCKS_MAX] = {0};
    for (size_t b = 0; b < plan->board_count; b++) {
        const struct strip_board *const board = &plan->boards[b];
        const enum plan_fault fault = check_board(job, plan, board, counts);
        if (fault != PLAN_GOOD) {
            return fault;
        }
        used[board->stock] += board->times;
        cost += board->times * job->stocks[board->stock].price;
    }
    for (size_t i = 0; i < job->item_count; i++) {
        if (counts[i] != job->items[i].demand) {
            return PLAN_WRONG_COUNT;
        }
    }
    for (size_t s = 0; s < job->stock_count; s++) {
        if (job->stocks[s].copies != CUT_UNLIMITED && used[s] > job->stocks[s].copies) {
            return PLAN_TOO_MANY;
        }
    }
    if (cost != plan->cost) {
        return PLAN_WRONG_COST;
    }
    return plan->bound < 0 || plan->bound > cost ? PLAN_WRONG_BOUND : PLAN_GOOD;
}

enum plan_fault strip_check(const struct cut_job *job, const struct strip_plan *plan) {
    int64_t *const counts = calloc(job->item_count + 1, sizeof *counts);
    const enum plan_fault fault = counts != NULL ? check(job, plan, counts) : PLAN_NO_MEMORY;
    free(counts);
    return fault;
}
