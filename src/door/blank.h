/* SPDX-License-Identifier: MIT */
/* Short parts of a frame that cannot pass a machine by themselves: several of one row and size are
 * milled as one longer blank, and cut to length after it. Method: docs/method.md, "Short parts". */
#ifndef DOORCOST_DOOR_BLANK_H
#define DOORCOST_DOOR_BLANK_H

#include "door/quantity.h"

/* What a short part needs. */
struct short_part {
    length shortest; /* that its machines ask for, rough; 0: it is milled by itself */
    int64_t least;   /* parts that make a blank so long, from 2 on */
    size_t first;    /* of the door's parts, the first that shares its blanks */
};

/* What a part of the door needs. A machine of an operation of the door's style that works on the
 * part asks for blanks where its `shortest` is over the rough length. Blanks are shared by the
 * parts of the row that have its lumber, length, rough width and sort (stiles with stiles, rails
 * with rails). */
struct short_part blank_need(const struct calc *calc, const struct door *door,
                             const struct part *part);

/* Puts the blanks of a short part on the tape, into *figures: of leaf->door, which has figures of
 * all parts before it. Returns the length of all blanks, and with *pieces the parts in them. */
fig blanks_make(const struct calc *calc, const struct leaf_figures *leaf, const struct part *part,
                struct part_figures *figures, fig *pieces);

/* How many things an operation that works on a leaf's parts handles of all leaves of the row:
 * parts, and blanks where its own machine has a `shortest`; none: it has none, or works on whole
 * doors. */
fig blanks_handled(const struct calc *calc, const struct operation *operation,
                   const struct leaf_figures *leaf);

/* Asks about each `shortest` of a machine that no operation works on frame parts with: it has no
 * effect. */
void blanks_warn(const struct calc *calc);

#endif
