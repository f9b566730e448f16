/* SPDX-License-Identifier: MIT */
/* The figures of a part, and totals of them over a leaf; for src/door only. */
#ifndef DOORCOST_DOOR_PART_H
#define DOORCOST_DOOR_PART_H

#include "door/material.h"
#include "door/quantity.h"

/* Puts the figures of a part on the tape: sizes, what a piece takes of its material, weight, and
 * what work on it goes by. The leaf's pieces must be set. */
void part_figures_make(struct materials *materials, const struct leaf_figures *leaf,
                       const struct part *part, struct part_figures *figures);

/* Which parts of a leaf a total goes over. */
struct part_choice {
    enum material_kind material_kind; /* MATERIAL_NONE: all */
    int32_t material;                 /* of that kind */
    bool frame_only;
    bool bars_only;
};

/* count x a figure of each chosen part, in unit; offset: where the figure stands in struct
 * part_figures. Parts that lack it are passed over; none when all do. */
fig part_total(const struct calc *calc, const struct leaf_figures *leaf, const char *what,
               enum unit unit, struct part_choice choice, size_t offset);

#endif
