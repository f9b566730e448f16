/* SPDX-License-Identifier: MIT */
/* What the operations come to together: minutes, hours and money of the job, of each machine and of
 * each row, and minutes a door by sort of work. For src/labor only. */
#ifndef DOORCOST_LABOR_SUMS_H
#define DOORCOST_LABOR_SUMS_H

#include "labor/labor.h"

/* Fills in all of labor that follows from its operations, and the drying time. terms: room for two
 * figures an operation. */
void sums_make(struct labor *labor, const struct calc *calc, const struct finish_list *finish,
               fig *terms);

#endif
