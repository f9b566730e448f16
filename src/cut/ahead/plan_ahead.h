/* SPDX-License-Identifier: MIT */
/* Plans that are made before they are asked for, several at once: the jobs are gathered, planned
 * on as many threads as there are processors, and each plan is handed to whoever asks for its job.
 *
 * A planner keeps no global and never asks the time, so that a plan is the same whichever thread
 * makes it and however many there are. Units, ranges and what a plan is: board_plan.h and
 * sheet_plan.h. */
#ifndef DOORCOST_CUT_AHEAD_PLAN_AHEAD_H
#define DOORCOST_CUT_AHEAD_PLAN_AHEAD_H

#include "cut/board/board_plan.h"
#include "cut/sheet/sheet_plan.h"

struct plan_ahead;

/* Nothing gathered yet. NULL: out of memory. Freed by plan_ahead_free. */
struct plan_ahead *plan_ahead_new(void) __attribute__((warn_unused_result));
/* Frees it, with the plans that nobody asked for; NULL is accepted. */
void plan_ahead_free(struct plan_ahead *ahead);

/* Makes all plans that were gathered, on `threads` threads at most, 1 or more, the caller's own
 * among them; where a thread cannot be had the others do its work. From now on jobs are answered
 * and no longer gathered. */
void plan_ahead_make(struct plan_ahead *ahead, size_t threads);
/* As many threads as this program may run at once, at least 1. */
size_t plan_ahead_threads(void);

/* As board_plan_make, which is what it does where `ahead` is NULL. While jobs are gathered the job
 * is copied and the answer is CUT_SHORT, without a plan: the plan is not made yet. Afterwards the
 * plan of the first equal job that was not given away; a job that was not gathered is planned now.
 */
enum cut_status plan_ahead_boards(struct plan_ahead *ahead, const struct board_job *job,
                                  int64_t effort, struct board_plan **plan)
    __attribute__((warn_unused_result));
/* The same of sheet_plan_make. */
enum cut_status plan_ahead_sheets(struct plan_ahead *ahead, const struct cut_job *job,
                                  struct offcut_rule keep, int64_t effort, struct sheet_plan **plan)
    __attribute__((warn_unused_result));

#endif
