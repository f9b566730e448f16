/* SPDX-License-Identifier: MIT */
/* The steps from direct cost to price, the same for the job and for a door. */
#ifndef DOORCOST_PRICE_BUILD_UP_H
#define DOORCOST_PRICE_BUILD_UP_H

#include "price/cost.h"

/* Sets all of pile, money, that follows from its groups, in this order: materials and the tax on
 * them, remakes on what stands before, direct cost, contingency, overhead, profit.  The groups but
 * tax on purchases and remakes must be set; minutes: the person-minutes that overhead by the hour
 * goes by (none: no labor); remade: whether remakes are made of it, as of doors. Method:
 * docs/method.md, "Price". */
void build_up_price(struct build_up *pile, const struct calc *calc, fig minutes, bool remade);

/* The person-minutes that overhead by the hour goes by: all, or those at the bench, as the rates
 * say. */
fig build_up_minutes(const struct calc *calc, fig all, fig at_bench);

#endif
