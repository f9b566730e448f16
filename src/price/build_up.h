/* SPDX-License-Identifier: MIT */
/* The steps from direct cost to price, the same for the job and for a door. */
#ifndef DOORCOST_PRICE_BUILD_UP_H
#define DOORCOST_PRICE_BUILD_UP_H

#include "price/cost.h"

/* Adds up materials, puts remakes on what stands before, then contingency, overhead and profit. The
 * groups but remakes must be set; minutes: the person-minutes that overhead by the hour goes by
 * (none: no labor). */
void build_up_finish(struct build_up *pile, struct tape *tape, const struct measures *measures,
                     const struct rates *rates, fig minutes);

#endif
