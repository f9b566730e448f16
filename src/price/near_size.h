/* SPDX-License-Identifier: MIT */
/* Sizes of leaves that are nearly one: doors of a style whose widths, or heights, differ by so
 * little that one size might do for both. */
#ifndef DOORCOST_PRICE_NEAR_SIZE_H
#define DOORCOST_PRICE_NEAR_SIZE_H

#include "door/door.h"

/* Two neighboring sizes of leaves of one kind, the smaller first. */
struct near_size {
    bool width;                   /* else heights */
    length size[2];               /* nm */
    const struct door *leaves[2]; /* the first of each size */
};

struct near_sizes {
    struct near_size *list;
    size_t count;
};

/* Whether both leaves could be of one width (or height): of one style, used and divided alike, laid
 * over their openings, so that the overlay gives way, and straight. What folds, arches, is bought
 * in, or has rails at given heights is left alone, as another size of it may not be makeable. */
bool near_size_kind_same(const struct door *a, const struct door *b, bool width);

/* Finds all pairs of sizes next to each other among leaves of one kind that differ by no more than
 * 1/4 in (6 mm, in a job in mm). Memory of pool; false: out of memory. */
bool near_sizes_find(struct near_sizes *near, const struct doors *doors, enum length_unit unit,
                     struct pool *pool) __attribute__((warn_unused_result));

#endif
