/* SPDX-License-Identifier: MIT */
/* What the sheets of a plan come to: cuts, and areas by what becomes of them. */
#ifndef DOORCOST_CUT_SHEET_SHEET_TALLY_H
#define DOORCOST_CUT_SHEET_SHEET_TALLY_H

#include "cut/common/offcut_rule.h"
#include "cut/sheet/sheet_plan.h"

/* Counts, and areas in hundredths of the square of a unit of which the job's sizes are millionths.
 * Parts, trim, kerf and offcuts add up to the sheets but for the rounding of each. */
struct sheet_totals {
    int64_t cuts; /* with those that trim the edges */
    int64_t parts, trim, kerf, offcuts, keep;
};

/* Adds up all sheets of a plan that was checked; keep: which offcuts are worth a place. */
void sheet_totals_make(struct sheet_totals *totals, const struct cut_job *job,
                       const struct sheet_plan *plan, struct offcut_rule keep);

/* Cuts that trim the edges of a sheet of that stock of the job. */
size_t sheet_trims(const struct cut_job *job, size_t stock);

/* How wide the blade's way of a cut is: the kerf, or less where it takes all that is left. */
int64_t sheet_kerf(const struct cut_job *job, const struct sheet_node *cut);

/* Whether an offcut of these sides is worth keeping. */
bool sheet_keeps(struct offcut_rule keep, int64_t along, int64_t across);

/* The nodes of a sheet in the order in which they are cut: each region to its end, the first side
 * of a cut before the second.  order: room for node_count of the sheet; gets places in plan->nodes.
 * work: room for as many. */
void sheet_order(const struct sheet_plan *plan, size_t sheet, size_t *order, size_t *work);

/* Whether two sheets of a plan are cut alike into the same items. */
bool sheet_same(const struct sheet_plan *plan, size_t a, size_t b);

#endif
