/* SPDX-License-Identifier: MIT */
/* Short parts of a frame that cannot pass a machine by themselves: several of one row and size are
 * milled as one longer blank, and cut to length after it. Method: docs/method.md, "Short parts". */
#ifndef DOORCOST_DOOR_BLANK_H
#define DOORCOST_DOOR_BLANK_H

#include "door/door.h"

struct blank {
    int64_t holds, count; /* pieces in one; blanks of the row */
    length length;        /* rough */
};

struct blanks {
    size_t kinds;         /* 0: the part is milled by itself */
    struct blank kind[2]; /* they differ by a piece, those that hold more first */
    int64_t pieces;       /* in all of them */
    size_t first;         /* the first part of the door that shares them */
};

/* The blanks that a part of the door is milled in, together with the parts of its row that have its
 * lumber, length, rough width and sort (stiles with stiles, rails with rails). A machine of an
 * operation of the door's style calls for them where its `shortest` is over the rough length. */
struct blanks blanks_of(const struct calc *calc, const struct door *door, const struct part *part);

/* How many things the operation handles of all leaves of a row that it works on: parts, and blanks
 * where its own machine has a `shortest`. */
int64_t blanks_handled(const struct calc *calc, const struct operation *operation,
                       const struct door *door);

/* Asks about each `shortest` of a machine that no operation works on frame parts with: it has no
 * effect. */
void blanks_warn(const struct calc *calc);

#endif
