/* SPDX-License-Identifier: MIT */
/* A plan in two steps. For board_plan.c only. */
#ifndef DOORCOST_CUT_BOARD_BOARD_STRIPS_H
#define DOORCOST_CUT_BOARD_BOARD_STRIPS_H

#include "cut/board/board_plan.h"

/* For each board length by itself and for all together, the strips of each width are planned by
 * column generation (cut/strip_plan.h), then the strips of each length into boards of the stocked
 * widths; the cheapest of these plans. Of stocks that never run out alone. Status and owner as of
 * board_plan_make; no bound. */
enum cut_status board_by_strips(const struct board_job *job, int64_t effort,
                                struct board_plan **plan) __attribute__((warn_unused_result));

#endif
