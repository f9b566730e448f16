/* SPDX-License-Identifier: MIT */
/* What the operations come to together: minutes, hours and money of the job, of each machine and of
 * each row, and minutes a door by sort of work. For src/labor only. */
#ifndef DOORCOST_LABOR_SUMS_H
#define DOORCOST_LABOR_SUMS_H

#include "labor/labor.h"

struct sums_inputs {
    struct tape *tape;
    const struct measures *measures;
    const struct rates *rates;
    const struct quantities *quantities;
    const struct finish_list *finish;
};

/* Whether a list of operations holds that one. */
bool sums_listed(const struct references *list, int32_t operation);

/* Fills in all of labor that follows from its operations. terms, more: room for as many figures as
 * there are operations each. */
void sums_make(struct labor *labor, const struct sums_inputs *inputs, fig *terms, fig *more);

#endif
