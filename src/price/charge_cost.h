/* SPDX-License-Identifier: MIT */
/* What the operations cost that charges pay. */
#ifndef DOORCOST_PRICE_CHARGE_COST_H
#define DOORCOST_PRICE_CHARGE_COST_H

#include "price/cost.h"

/* Sets costs->charges, which has room for charge_count of calc's job: of each charge whose
 * operation does something, labor and machine, the cost with overhead, and what it would be sold
 * for, marked up as the doors are (money). Method: docs/method.md, "Charges that are worked for".
 */
void charges_cost(struct costs *costs, const struct calc *calc, const struct labor *labor);

#endif
