/* SPDX-License-Identifier: MIT */
/* Stocks of which there are only so many boards, as on a rack. For the files of this folder only.
 */
#ifndef DOORCOST_CUT_BOARD_BOARD_LIMITED_H
#define DOORCOST_CUT_BOARD_BOARD_LIMITED_H

#include "cut/board/board_plan.h"

/* Whether there is such a stock in the job. */
bool board_has_limited(const struct board_job *job);

/* A plan that fills limited boards first, the smallest first, each with the parts of the most area,
 * where they save what they cost or hold what no other stock does; the rest is planned by strips
 * within effort. Status and owner as of board_plan_make; no bound. */
enum cut_status board_limited_first(const struct board_job *job, int64_t effort,
                                    struct board_plan **plan) __attribute__((warn_unused_result));

/* Betters a plan, within effort, so that it cuts up less of the limited stocks, by area, and costs
 * no more. Its bound stays. *plan may become another. false: out of memory. */
bool board_cut_less(const struct board_job *job, int64_t effort, struct board_plan **plan)
    __attribute__((warn_unused_result));

/* Puts each board of a plan on the cheapest limited stock that holds its strips and has a board
 * left, where that is cheaper, or as cheap and smaller than a limited one that it is on. */
void board_settle(const struct board_job *job, struct board_plan *plan);

#endif
