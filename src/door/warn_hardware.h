/* SPDX-License-Identifier: MIT */
/* What a craftsman would ask about hinges and other hardware before he bores for them. */
#ifndef DOORCOST_DOOR_WARN_HARDWARE_H
#define DOORCOST_DOOR_WARN_HARDWARE_H

#include "model/calc.h"

/* Adds to calc's problems: warnings of a hinged edge past the chart of hinges, of fewer hinges than
 * it gives or more than twice as many, of a hinge that is not for the overlay of its side or for an
 * inset door, and of hardware that is listed beside itself as hinge or pull, the last two once for
 * all rows that are made and hung alike, and of a cup of what is no hinge; errors where bores of
 * hinges run off the door or into each other. */
void hardware_warn(const struct calc *calc);

#endif
