/* SPDX-License-Identifier: MIT */
/* The size of a leaf from what was measured. */
#ifndef DOORCOST_DOOR_LEAF_H
#define DOORCOST_DOOR_LEAF_H

#include "model/job.h"

struct leaf {
    length width, height; /* nm, cut sizes; may come out at or under zero for an absurd row */
};

/* From a measured opening: an overlay door is the opening and the overlay of each side, an inset
 * one the opening less the reveal of each side, and a pair shares the width, less the gap between
 * the leaves. A row with `measure = door` is the size of one leaf as it stands, and so is an end
 * panel (model/construction.h).  Each size is
 * rounded to unit's step.  Method: docs/method.md, "From opening to door". */
struct leaf leaf_size(const struct row *row, const struct construction *construction,
                      enum length_unit unit);

/* Whether a row is made like a drawer front: it is one, or a false front, which stands among them
 * and looks like them. */
bool leaf_is_front(const struct row *row);

/* The style by which a row is made that names `style`: the style itself, or its `slab style` where
 * the row is such a front lower than its `slab below`. height: of the leaf. Borrowed from rates. */
const struct style *leaf_style(const struct rates *rates, const struct style *style,
                               const struct row *row, length height);

#endif
