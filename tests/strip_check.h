/* SPDX-License-Identifier: MIT */
/* Looks at a plan of lengths. The program checks whole boards (board_plan.h), so only tests and the
 * benchmark need this. */
#ifndef STRIP_CHECK_H
#define STRIP_CHECK_H

#include "cut/check/plan_check.h"
#include "cut/strip/strip_plan.h"

/* The first fault found, or PLAN_GOOD. The job is one that the planner accepts. */
enum plan_fault strip_check(const struct cut_job *job, const struct strip_plan *plan);

#endif
