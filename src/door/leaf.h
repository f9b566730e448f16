/* SPDX-License-Identifier: MIT */
/* The size of a leaf from what was measured. */
#ifndef DOORCOST_DOOR_LEAF_H
#define DOORCOST_DOOR_LEAF_H

#include "model/job.h"
#include "model/size_step.h"

struct leaf {
    length width, height; /* nm, cut sizes; may come out at or under zero for an absurd row */
};

/* Of leaves that fold one hangs on the cabinet and the other on it; all other leaves hang. */
enum leaf_role { LEAF_HUNG, LEAF_FOLDING };

/* Whether a row's leaves are hinged to each other, two by two: a bi-fold or a pie-cut pair. */
bool row_folds(const struct row *row);

/* Whether a row hangs at its upper or lower edge, so that the hinged edge is its width. */
bool row_hangs_level(const struct row *row);

/* Whether a row has hinges where one is named: a door, or a false front that tilts out, lifts up or
 * drops down. */
bool row_is_hinged(const struct row *row);

/* The cell that a leaf's width comes from: the second width for that leaf of a pie-cut pair which
 * closes the right face. */
const struct value *leaf_measured(const struct row *row, enum leaf_role role);

/* From a measured opening: an overlay door is the opening and the overlay of each side, an inset
 * one the opening less the reveal of each side, and leaves share the width, less the gaps between
 * them. Each leaf of a pie-cut pair is its own opening with the overlay (less the reveal) of its
 * outer side, less `corner` at the other. A row with `measure = door` is the size of one leaf as it
 * stands, and so is an end panel (model/construction.h).  Each size is
 * rounded down to the step.  Method: docs/method.md, "From opening to door". */
struct leaf leaf_size(const struct row *row, const struct construction *construction,
                      enum leaf_role role, struct size_step step);

/* Whether a row is made like a drawer front: it is one, or a false front, which stands among them
 * and looks like them. */
bool leaf_is_front(const struct row *row);

/* The style by which a row is made that names `style`: the style itself, or its `slab style` where
 * the row is such a front lower than its `slab below`. height: of the leaf. Borrowed from rates. */
const struct style *leaf_style(const struct rates *rates, const struct style *style,
                               const struct row *row, length height);

#endif
