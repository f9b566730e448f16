/* SPDX-License-Identifier: MIT */
/* Lower bounds for sheets that take no search: areas, plain and seen through dual feasible
 * functions. They hold for any way of cutting. */
#ifndef DOORCOST_CUT_SHEET_SHEET_BOUND_H
#define DOORCOST_CUT_SHEET_SHEET_BOUND_H

#include "cut/common/cut_model.h"

/* The best bound found, a sum of prices. Work is added to *spent; above `limit` fewer functions are
 * tried. false: an allocation failed.
 * Method: a function f of lengths that adds up (f(a) + f(b) <= f(a + b)) keeps every row of parts
 * within f(sheet length); with g for widths the products f(length) g(width) of the parts on a sheet
 * are at most f(sheet length) g(sheet width). Functions: Fekete, Schepers 2001; Carlier,
 * Clautiaux, Moukrim 2007. */
__attribute__((warn_unused_result)) bool sheet_bound(const struct cut_model *model, int64_t limit,
                                                     int64_t *spent, int64_t *bound);

#endif
