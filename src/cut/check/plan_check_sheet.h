/* SPDX-License-Identifier: MIT */
/* Geometry of one sheet, for plan_check.c. */
#ifndef DOORCOST_CUT_CHECK_PLAN_CHECK_SHEET_H
#define DOORCOST_CUT_CHECK_PLAN_CHECK_SHEET_H

#include "cut/check/plan_check.h"

/* Checks the places of a sheet's parts and its tree of cuts. Indexes of the sheet and of its parts'
 * items are valid already. */
enum plan_fault plan_check_layout(const struct cut_job *job, const struct sheet_plan *plan,
                                  const struct sheet_sheet *sheet);

#endif
