/* SPDX-License-Identifier: MIT */
/* What the files that take quantities off a door share; for src/door only. */
#ifndef DOORCOST_DOOR_TAKER_H
#define DOORCOST_DOOR_TAKER_H

#include "door/material.h"
#include "door/quantity.h"

struct taker {
    struct tape *tape;
    const struct measures *m;
    const struct rates *rates;
    struct materials *materials;
};

/* A count of the drawing as a given; none for 0. */
fig taker_count(const struct taker *taker, const char *what, int64_t count, struct place place);
fig taker_product(const struct taker *taker, const char *what, enum unit unit, fig a, fig b);
/* Two lengths as an area. */
fig taker_area(const struct taker *taker, const char *what, fig a, fig b);

/* Puts the figures of a part on the tape; the leaf's pieces must be set. */
void part_take(const struct taker *taker, const struct leaf_figures *leaf, const struct part *part,
               struct part_figures *figures);

/* Which parts of a leaf a total goes over. */
struct part_choice {
    enum material_kind material_kind; /* STUFF_NONE: all */
    int32_t material;                 /* of that kind */
    bool frame_only;
};

/* count x a figure of each chosen part; offset: where the figure stands in struct part_figures.
 * Parts that lack it are passed over; none when all do. */
fig part_total(const struct taker *taker, const struct leaf_figures *leaf, const char *what,
               enum unit unit, struct part_choice choice, size_t offset);

#endif
