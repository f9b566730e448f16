/* SPDX-License-Identifier: MIT */
/* What a craftsman would ask about hinges and other hardware before he bores for them. */
#ifndef DOORCOST_DOOR_WARN_HARDWARE_H
#define DOORCOST_DOOR_WARN_HARDWARE_H

#include "model/calc.h"

/* Adds warnings to calc's problems: a hinged edge past the chart of hinges, fewer hinges than it
 * gives or more than twice as many, a hinge that is not for the overlay of its side or for an inset
 * door, and hardware that is listed beside itself as hinge or pull.  The last two are asked once
 * for all rows that are made and hung alike. */
void hardware_warn(const struct calc *calc);

#endif
