/* SPDX-License-Identifier: MIT */
/* Whether the stock that the rates name can hold the parts: warnings with the numbers. */
#ifndef DOORCOST_STOCK_WARN_H
#define DOORCOST_STOCK_WARN_H

#include "door/door.h"

/* Warns of a part longer, trimmed, than any board stocked, a part (no glued-up panel) wider than
 * any board, a part thicker than its lumber, and a panel or slab that no sheet holds within its
 * trims, its grain kept. Uses calc's rates, measures and problems. */
void stock_warn(const struct calc *calc, const struct doors *doors);

#endif
