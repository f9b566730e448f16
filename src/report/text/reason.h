/* SPDX-License-Identifier: MIT */
/* How a figure came about, in the numbers that stand on the paper: `0.7758 x 2 x 100 / 65`. */
#ifndef DOORCOST_REPORT_TEXT_REASON_H
#define DOORCOST_REPORT_TEXT_REASON_H

#include "figure/tape.h"
#include "report/text/grid.h"

/* Puts on the table, as rows of three cells (label, formula, value with unit), every worked-out
 * figure that leads to any of `ends`, in the order in which they were made; those at or behind
 * `start`, and those of another subject that are no end, are taken as known. */
void reason_chain(struct grid *grid, const struct tape *tape, fig start, const fig *ends,
                  size_t count);

#endif
