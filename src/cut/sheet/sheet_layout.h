/* SPDX-License-Identifier: MIT */
/* Draws a tree of parts on its sheet: cuts, places and offcuts, in sizes of the job. */
#ifndef DOORCOST_CUT_SHEET_SHEET_LAYOUT_H
#define DOORCOST_CUT_SHEET_SHEET_LAYOUT_H

#include "cut/common/offcut_rule.h"
#include "cut/sheet/sheet_plan.h"
#include "cut/sheet/sheet_tree.h"

/* Appends a sheet to the plan: its nodes and its parts. Of each part, `item` is the number of its
 * kind, for the caller to replace. keep: which offcuts are worth a place; of orders of cuts that
 * are as many, one is taken that leaves the largest of these. false: an allocation failed. */
__attribute__((warn_unused_result)) bool
sheet_layout_add(struct sheet_plan *plan, const struct cut_model *model, const struct cut_job *job,
                 struct offcut_rule keep, const struct sheet_tree *tree);

/* How many cuts that takes, which hangs on nothing but the tree. */
int64_t sheet_layout_cuts(const struct cut_model *model, const struct cut_job *job,
                          const struct sheet_tree *tree);

#endif
