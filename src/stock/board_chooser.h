/* SPDX-License-Identifier: MIT */
/* Boards as choosers of the tape: a replay asks them again from the figures alone. */
#ifndef DOORCOST_STOCK_BOARD_CHOOSER_H
#define DOORCOST_STOCK_BOARD_CHOOSER_H

#include "stock/lumber_plan.h"

/* The planner's own operands of the boards chooser: effort, kerf, end trim, edge, defects, least
 * length and width of an offcut worth keeping, 1 where boards are crosscut first, stocks that are
 * sold. What stands behind them: plan_input.h. */
#define BOARD_FIXED_OPERANDS 9

/* Its outputs behind a count for each stock; the last one with the rack alone. */
enum {
    BOARD_OUT_CUTS,
    BOARD_OUT_TRIM,
    BOARD_OUT_KERF,
    BOARD_OUT_DEFECTS,
    BOARD_OUT_KEEP,
    BOARD_OUT_COUNT,
    BOARD_OUT_SOLD_PARTS = BOARD_OUT_COUNT, /* parts on boards that are bought, in hundredths */
    BOARD_OUT_MOST
};

/* What the boards chooser gives for a plan: boards of each stock, then the outputs above.  out:
 * zeros before. sold: the stocks of the job that are not of the rack; fewer than all: the last
 * output is given too. false: out of memory. */
bool board_outputs(const struct board_job *job, const struct board_plan *plan,
                   struct offcut_rule keep, size_t sold, int64_t *out)
    __attribute__((warn_unused_result));

/* Boards by board_plan_make, without the rack and with it; surface measure of one board (an inch,
 * width, length); of all boards of a plan (an inch, then count, width, length of each size). */
extern const struct chooser boards_chooser, boards_rack_chooser, surface_chooser, tally_chooser;

#endif
