/* SPDX-License-Identifier: MIT */
/* Which boards to buy and how to crosscut each: least cost, with a proven lower bound.
 * Units, ranges and ownership: cut_stock.h. Method: docs/cutting.md. */
#ifndef DOORCOST_CUT_STRIP_STRIP_PLAN_H
#define DOORCOST_CUT_STRIP_STRIP_PLAN_H

#include "cut/common/cut_stock.h"

/* One way of cutting a board, used `times` times. Its pieces, in order from one end, are
 * plan->pieces[first ... first + count - 1]; a plan tells each board's pieces apart only by their
 * size, so items of equal size are handed out in the order of the job: all boards of a pattern hold
 * the same items. */
struct strip_board {
    size_t stock; /* in the job's list */
    int64_t times;
    size_t first, count;
};

struct strip_plan {
    size_t board_count;
    struct strip_board *boards;
    size_t piece_count;
    size_t *pieces; /* items of the job, longest first on each board */
    int64_t cost;   /* prices of all boards */
    int64_t bound;  /* no plan costs less; cost == bound: none is better */
    int64_t spent;  /* effort used */
};

/* Plans the boards of a job. effort: units of work to spend at most, 0 or more; the quickest plan
 * is always made, and a plan that reaches its bound ends the search. Gives CUT_DONE and *plan
 * (owned), or another status and *plan NULL. Widths and `turn` are not looked at. No demand at all:
 * an empty plan. */
__attribute__((warn_unused_result)) enum cut_status
strip_plan_make(const struct cut_job *job, int64_t effort, struct strip_plan **plan);

/* Frees a plan with all that it holds; NULL is accepted. */
void strip_plan_free(struct strip_plan *plan);

#endif
