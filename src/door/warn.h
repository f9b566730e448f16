/* SPDX-License-Identifier: MIT */
/* What a craftsman would ask about a door list before the first cut: warnings with the numbers. */
#ifndef DOORCOST_DOOR_WARN_H
#define DOORCOST_DOOR_WARN_H

#include "model/calc.h"

/* Adds warnings to calc's problems: a size more than three times the middle one of its use or under
 * a third of it (where five rows or more share the use), two sizes of one style that differ by no
 * more than 1/8 in (3 mm), the one front of the list that is higher than wide, a leaf wider and a
 * panel higher than the shop's limits, an opening under 1 in (25 mm), solid panels that have no
 * room to move, and what warn_note.h and warn_hardware.h ask. */
void doors_warn(const struct calc *calc);

#endif
