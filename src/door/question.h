/* SPDX-License-Identifier: MIT */
/* What a craftsman would ask about a door list before the first cut: warnings with the numbers. */
#ifndef DOORCOST_DOOR_QUESTION_H
#define DOORCOST_DOOR_QUESTION_H

#include "door/quantity.h"

/* Questions a size more than three times the middle one of its use or under a third of it (where
 * five rows or more share the use), two rows of the same style that differ by no more than 1/8 in
 * (3 mm), a leaf wider and a panel higher than the shop's limits, and solid panels that have no
 * room to move. */
void doors_question(const struct quantities *quantities, const struct tape *tape,
                    const struct measures *measures, const struct rates *rates,
                    struct problems *problems);

#endif
