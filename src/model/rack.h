/* SPDX-License-Identifier: MIT */
/* What is on the rack of the shop: pieces of hardware, and what is left in opened cans. */
#ifndef DOORCOST_MODEL_RACK_H
#define DOORCOST_MODEL_RACK_H

#include "model/value.h"

/* A row of the file that `stock` of [shop] names. */
struct rack_item {
    struct place place;
    struct text what, color, note;
    int kind;           /* enum name_kind: hardware, coating or additive; -1: it was reported */
    int32_t index;      /* into the rates' array of it */
    struct value left;  /* pieces, or a volume in gal or L; 0 allowed */
    struct value worth; /* money that a job is charged for all of it; unset: nothing */
};

struct rack {
    struct rack_item *items;
    size_t count;
};

/* What is on the rack of hardware, a coating (in that color; NULL: in none) or an additive; NULL:
 * nothing. kind: enum name_kind. */
const struct rack_item *rack_find(const struct rack *rack, int kind, int32_t index,
                                  const char *color);

#endif
