/* SPDX-License-Identifier: MIT */
/* Whether the stock that the rates name can hold the parts: warnings with the numbers. */
#ifndef DOORCOST_STOCK_WARN_H
#define DOORCOST_STOCK_WARN_H

#include "door/door.h"
#include "stock/lumber.h"
#include "stock/sheet.h"

/* Warns of a part longer, trimmed, than any board stocked, a part (no glued-up panel) wider than
 * any board, unless a plan has all parts on boards of the rack and these, a part thicker than its
 * lumber, and a panel or slab that no sheet holds within its
 * trims, its grain kept, unless the plan that prices the sheet has it on an offcut of the rack.
 * Uses calc's rates, units and problems. */
void stock_warn(const struct calc *calc, const struct doors *doors,
                const struct lumber_list *lumber, const struct sheet_list *sheets);

/* Asks about each material that is priced by its waste factor while its plan, where one was made,
 * needs more than the factor buys: who buys that list cannot cut the plan. And about lumber and
 * sheets of the rack that no plan is there to use. */
void plan_warn(const struct calc *calc, const struct lumber_list *lumber,
               const struct sheet_list *sheets);

#endif
