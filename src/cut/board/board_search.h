/* SPDX-License-Identifier: MIT */
/* A plan made cheaper a few parts at a time. For board_plan.c only. */
#ifndef DOORCOST_CUT_BOARD_BOARD_SEARCH_H
#define DOORCOST_CUT_BOARD_BOARD_SEARCH_H

#include "cut/board/board_plan.h"

/* Takes a few parts off the plan's boards at a time and puts them back where that costs least. No
 * stock of the job is limited. Stops at plan->bound, or when effort (units of work: cut_stock.h) is
 * spent, or so much that more is of little use. *plan is replaced where it is bettered, and still
 * owned by the caller. false: out of memory, *plan is as good as it was. */
bool board_search(const struct board_job *job, int64_t effort, struct board_plan **plan)
    __attribute__((warn_unused_result));

#endif
