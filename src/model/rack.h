/* SPDX-License-Identifier: MIT */
/* What is on the rack of the shop: pieces of hardware, what is left in opened cans, and sheets with
 * their offcuts. */
#ifndef DOORCOST_MODEL_RACK_H
#define DOORCOST_MODEL_RACK_H

#include "model/value.h"

/* A row of the file that `stock` of [shop] names. */
struct rack_item {
    struct place place;
    struct text what, color, note;
    int kind;      /* enum name_kind: hardware, coating, additive or sheet; -1: it was reported */
    int32_t index; /* into the rates' array of it */
    struct value width, length; /* of a sheet's offcut, length along the grain; unset: whole ones */
    struct value left;          /* pieces, or a volume in gal or L; 0 allowed */
    struct value worth;         /* money that a job is charged for all of it; unset: nothing */
};

struct rack {
    struct rack_item *items;
    size_t count;
};

/* What is on the rack of hardware, a coating (in that color; NULL: in none) or an additive; NULL:
 * nothing. kind: enum name_kind. */
const struct rack_item *rack_find(const struct rack *rack, int kind, int32_t index,
                                  const char *color);

/* The first row from `from` on of that kind and index, in whatever size or color; rack->count:
 * there is none. */
size_t rack_next(const struct rack *rack, int kind, int32_t index, size_t from);

/* The row that is about the same as item: in color and size too; NULL: none. */
const struct rack_item *rack_same(const struct rack *rack, const struct rack_item *item);

#endif
