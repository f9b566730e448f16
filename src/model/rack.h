/* SPDX-License-Identifier: MIT */
/* What is on the rack of the shop: boards, sheets and their offcuts, pieces of hardware, and what
 * is left in opened cans. */
#ifndef DOORCOST_MODEL_RACK_H
#define DOORCOST_MODEL_RACK_H

#include "model/value.h"

/* A row of the file that `stock` of [shop] names. */
struct rack_item {
    struct place place;
    struct text what, color, note;
    int kind; /* enum name_kind: lumber, sheet, hardware, coating or additive; -1: it was reported
               */
    int32_t index;              /* into the rates' array of it */
    struct value thickness;     /* of lumber, that of the rates; unset: it was not told */
    struct text thickness_text; /* as written */
    struct value width, length; /* length along the grain; of lumber; of a sheet's offcut, unset:
                                   whole ones */
    bool sawn; /* an offcut: all of it is of use; else as what is bought, ends or edges come off */
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

/* The first row from `from` on of that kind and index, in whatever size or color; rack->count:
 * there is none. */
size_t rack_next(const struct rack *rack, int kind, int32_t index, size_t from);

/* Whether something is left of that kind and index, in whatever size or color. */
bool rack_has(const struct rack *rack, int kind, int32_t index);

/* The row that is about the same as item: in color and size too; NULL: none. */
const struct rack_item *rack_same(const struct rack *rack, const struct rack_item *item);

#endif
