/* SPDX-License-Identifier: MIT */
/* The chooser of the sheets of a plan, for sheets_by_plan.c and a replay.  Its operands are read by
 * their places, its outputs by their numbers. */
#ifndef DOORCOST_STOCK_SHEET_CHOOSER_H
#define DOORCOST_STOCK_SHEET_CHOOSER_H

#include "cut/sheet/sheet_tally.h"
#include "model/limits.h"
#include "stock/plan_input.h"

/* The stocks of the planner's job that are sold: the whole sheet, then the half where one is sold
 * (half the length). Behind them stand those of the rack. */
enum { SHEET_WHOLE, SHEET_HALF, SHEET_STOCKS };

#define SHEET_PLAN_SIZES (SHEET_STOCKS + MOST_RACK_SIZES)

/* The planner's own operands: effort, kerf, trim, 1 where parts may be turned, least longer and
 * shorter side of an offcut worth keeping, sizes sold. What stands behind them: plan_input.h. */
#define SHEET_FIXED_OPERANDS 7

/* Outputs behind a count for each stock; the last one with the rack alone. */
enum {
    SHEET_OUT_CUTS,
    SHEET_OUT_TRIM,
    SHEET_OUT_KERF,
    SHEET_OUT_KEEP,
    SHEET_OUT_COUNT,
    SHEET_OUT_SOLD_PARTS = SHEET_OUT_COUNT, /* parts on sheets that are bought, in hundredths */
    SHEET_OUT_MOST
};

/* What a plan comes to: out has room for every stock and SHEET_OUT_MOST, zeros before. sold: the
 * stocks of the job that are not of the rack; fewer than all: the last output is given too. */
void sheet_outputs(const struct cut_job *job, const struct sheet_plan *plan,
                   struct offcut_rule keep, size_t sold, int64_t *out);

/* Without the rack, and with it. */
extern const struct chooser sheets_chooser, sheets_rack_chooser;

#endif
