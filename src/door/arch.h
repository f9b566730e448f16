/* SPDX-License-Identifier: MIT */
/* An arch of a top rail: a circle's segment over an opening, as wide as it. Lengths in nm.
 *
 * Method: docs/method.md, "Arched tops". */
#ifndef DOORCOST_DOOR_ARCH_H
#define DOORCOST_DOOR_ARCH_H

#include "base/length.h"

/* The length along an arch that spans `chord` (over 0) and rises by `rise` (0 to half the chord),
 * cut to unit's step: Huygens' rule, (8 x chord of half the arch - chord) / 3; short by 1.2 % at a
 * half circle, by 0.2 % where the rise is a quarter of the chord. */
length arch_length(length chord, length rise, enum length_unit unit);

#endif
