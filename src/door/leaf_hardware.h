/* SPDX-License-Identifier: MIT */
/* What is screwed to a leaf: its hinges, its pulls, and what `hardware` lists beside them. */
#ifndef DOORCOST_DOOR_LEAF_HARDWARE_H
#define DOORCOST_DOOR_LEAF_HARDWARE_H

#include "door/quantity.h"

/* Puts hinges, pulls and the pieces of other hardware of the leaf on the tape, all of one leaf.
 * Width, height and weight of the leaf must be set, and the weight of the one that folds on it,
 * which follows it.  Hinges, where one is named: as the row says, else the larger count of the
 * rules of [hinges], else 2; between leaves that fold never as the row says; and where they are, as
 * the row or else `from the ends` of [hinges] says.  Pulls: as the row
 * says, else 1; of an end panel only what its own row asks for.  Other hardware: row_hardware.  Of
 * leaves that fold only the one that hangs on the other has pulls and other hardware.  Memory of
 * calc's pool, whose failure tells of want of it.  Method: docs/method.md, "Hinges", "Hardware". */
void leaf_hardware_make(struct leaf_figures *leaf, const struct calc *calc);

/* Puts the rules of [hinges] on the tape under their own name, not under the first door that asks.
 */
void hinge_rules_file(const struct calc *calc);

#endif
