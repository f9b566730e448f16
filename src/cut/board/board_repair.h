/* SPDX-License-Identifier: MIT */
/* A plan made cheaper a few boards at a time. For board_plan.c only. */
#ifndef DOORCOST_CUT_BOARD_BOARD_REPAIR_H
#define DOORCOST_CUT_BOARD_BOARD_REPAIR_H

#include "cut/board/board_plan.h"

/* Takes a few boards of the plan at a time and plans their parts anew by dives (board_columns.h);
 * what costs no more takes their place. Stops at plan->bound, or when effort (units of work:
 * cut_stock.h) is spent. Every price must be above 0. *plan is replaced where it is bettered, and
 * still owned by the caller. false: out of memory, *plan is as good as it was. */
bool board_repair(const struct board_job *job, int64_t effort, struct board_plan **plan)
    __attribute__((warn_unused_result));

#endif
