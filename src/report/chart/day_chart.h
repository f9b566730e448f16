/* SPDX-License-Identifier: MIT */
/* The work by day as a chart on paper: a row for each person, machine and place, a column for each
 * working day, in it bars from when to when, named by what is done. */
#ifndef DOORCOST_REPORT_CHART_DAY_CHART_H
#define DOORCOST_REPORT_CHART_DAY_CHART_H

#include "days/work/day_rows.h"

/* Writes the plan to path as it stands (the caller has seen to a safe place). rows: of the plan.
 * *lacking: in pool, as pdf_close has it. false: not written, or out of memory. */
bool day_chart_write(const struct day_plan *plan, const struct day_rows *rows, const char *path,
                     struct pool *pool, const char **lacking) __attribute__((warn_unused_result));

#endif
