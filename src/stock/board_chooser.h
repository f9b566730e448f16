/* SPDX-License-Identifier: MIT */
/* Boards as choosers of the tape: a replay asks them again from the figures alone. */
#ifndef DOORCOST_STOCK_BOARD_CHOOSER_H
#define DOORCOST_STOCK_BOARD_CHOOSER_H

#include "stock/lumber_plan.h"

/* Operands of the boards chooser before the stocks: effort, kerf, end trim, edge, defects, least
 * length and width of an offcut worth keeping, 1 where boards are crosscut first, stocks. */
#define BOARD_FIXED_OPERANDS 9

/* Its outputs behind a count for each stock. */
enum {
    BOARD_OUT_CUTS,
    BOARD_OUT_TRIM,
    BOARD_OUT_KERF,
    BOARD_OUT_DEFECTS,
    BOARD_OUT_KEEP,
    BOARD_OUT_COUNT
};

/* What the boards chooser gives for a plan: boards of each stock, then the outputs above.  out:
 * zeros before. false: out of memory. */
bool board_outputs(const struct board_job *job, const struct board_plan *plan,
                   struct offcut_rule keep, int64_t *out) __attribute__((warn_unused_result));

/* Boards by board_plan_make; surface measure of one board (an inch, width, length); of all boards
 * of a plan (an inch, then count, width, length of each size). */
extern const struct chooser boards_chooser, surface_chooser, tally_chooser;

#endif
