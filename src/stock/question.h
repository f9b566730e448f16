/* SPDX-License-Identifier: MIT */
/* Whether the stock that the rates name can hold the parts: warnings with the numbers. */
#ifndef DOORCOST_STOCK_QUESTION_H
#define DOORCOST_STOCK_QUESTION_H

#include "door/door.h"

/* Questions a part longer, trimmed, than any board stocked, a part (no glued-up panel) wider than
 * any board, a part thicker than its lumber, and a panel or slab that no sheet holds within its
 * trims, its grain kept. */
void stock_question(const struct doors *doors, const struct rates *rates, enum length_unit unit,
                    struct problems *problems);

#endif
