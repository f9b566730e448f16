/* SPDX-License-Identifier: MIT */
/* The checker of board plans: counts and adds by itself, and believes nothing that the planner
 * says. */
#include "cut/board/board_plan.h"

#include <stdlib.h>

static const char *check_strip(const struct board_job *job, const struct board_plan *plan,
                               const struct board_strip *strip, int64_t room, int64_t *counts) {
    int64_t used = 0;
    if (strip->first > plan->piece_count || strip->count > plan->piece_count - strip->first ||
        strip->count == 0) {
        return "a strip's parts do not exist";
    }
    for (size_t i = 0; i < strip->count; i++) {
        const size_t item = plan->pieces[strip->first + i];
        if (item >= job->item_count) {
            return "a part does not exist";
        }
        const struct cut_item *const part = &job->items[item];
        if (strip->width != (job->crosscut_first ? part->length : part->width)) {
            return job->crosscut_first ? "a part is not as long as its segment"
                                       : "a part is not as wide as its strip";
        }
        used += (job->crosscut_first ? part->width : part->length) + (i > 0 ? job->kerf : 0);
        counts[item]++;
    }
    if (used > room) {
        return job->crosscut_first ? "a segment's parts are wider than their board"
                                   : "a strip is longer than its board";
    }
    return NULL;
}

static const char *check_board(const struct board_job *job, const struct board_plan *plan,
                               const struct board_use *board, int64_t *counts) {
    if (board->stock >= job->stock_count) {
        return "a board does not exist";
    }
    if (board->first > plan->strip_count || board->count > plan->strip_count - board->first) {
        return "a board's strips do not exist";
    }
    const int64_t along = board_usable_length(job, board->stock);
    const int64_t across = board_usable_width(job, board->stock);
    int64_t used = 0;
    for (size_t s = 0; s < board->count; s++) {
        const struct board_strip *const strip = &plan->strips[board->first + s];
        const char *const fault =
            check_strip(job, plan, strip, job->crosscut_first ? across : along, counts);
        if (fault != NULL) {
            return fault;
        }
        used += strip->width + (s > 0 ? job->kerf : 0);
    }
    if (used > (job->crosscut_first ? along : across)) {
        return job->crosscut_first ? "the segments are longer than their board"
                                   : "the strips are wider than their board";
    }
    return NULL;
}

/* Whether so many boards of each stock are there. */
static const char *check_copies(const struct board_job *job, const struct board_plan *plan) {
    for (size_t s = 0; s < job->stock_count; s++) {
        int64_t used = 0;
        for (size_t b = 0; b < plan->board_count; b++) {
            used += plan->boards[b].stock == s ? 1 : 0;
        }
        if (job->stocks[s].copies != CUT_UNLIMITED && used > job->stocks[s].copies) {
            return "more boards of a size are cut than there are";
        }
    }
    return NULL;
}

const char *board_plan_check(const struct board_job *job, const struct board_plan *plan) {
    int64_t *const counts = calloc(job->item_count + 1, sizeof *counts);
    const char *fault = counts == NULL ? "out of memory" : NULL;
    int64_t cost = 0;
    size_t strips = 0;
    for (size_t b = 0; fault == NULL && b < plan->board_count; b++) {
        fault = plan->boards[b].first == strips ? check_board(job, plan, &plan->boards[b], counts)
                                                : "two boards share a strip, or one has none";
        strips += plan->boards[b].count;
        if (fault == NULL) {
            cost += job->stocks[plan->boards[b].stock].price;
        }
    }
    for (size_t i = 0; fault == NULL && i < job->item_count; i++) {
        if (counts[i] != job->items[i].demand) {
            fault = "a part is there more or less often than wanted";
        }
    }
    if (fault == NULL) {
        fault = check_copies(job, plan);
    }
    if (fault == NULL && cost != plan->cost) {
        fault = "the cost is not the sum of the prices";
    }
    if (fault == NULL && (plan->bound > plan->cost || plan->bound < 0)) {
        fault = "the bound is above the cost";
    }
    free(counts);
    return fault;
}
