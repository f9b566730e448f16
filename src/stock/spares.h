/* SPDX-License-Identifier: MIT */
/* Spare rails: how many of each width to mill beside those that the doors need, where the rates ask
 * for it.
 *
 * Rails of one lumber, thickness and width are milled in one set-up. Each comes out spoiled with
 * the chance that `remakes` gives; where more are spoiled than there are spares, all is set up once
 * more. The spares that cost least are milled, as long as the longest of these rails, from which
 * any other can be cut. Method: docs/method.md, "Spare rails". Arched rails and those milled in
 * blanks have none. */
#ifndef DOORCOST_STOCK_SPARES_H
#define DOORCOST_STOCK_SPARES_H

#include "door/quantity.h"

struct spare_rails {
    const struct leaf_figures *leaf; /* of the longest of them, of equal ones the first */
    size_t part;                     /* which of its parts */
    int64_t count;                   /* spare ones; 0: none pays */
    fig pieces;                      /* rails of that width that the doors need */
    fig setup_minutes;             /* machine minutes of all set-ups that one more rail asks for */
    fig setup_cost;                /* money */
    fig each;                      /* money: lumber of a spare, with waste */
    fig spoiled;                   /* percent: remakes */
    fig spares;                    /* the count */
    fig short_without, short_with; /* percent: chance to set up once more */
};

struct spare_list {
    struct spare_rails
        *rails;   /* by lumber, as the rates have it, then the thickest and widest first */
    size_t count; /* of groups for which spares were asked */
};

/* Puts the spare rails of the job on the tape; none where the rates do not ask for any, and where a
 * width takes no set-up. More rails of a width than MOST_SPARED are an error of calc's problems.
 * Uses calc without spares. Memory of calc's pool; false: out of memory. */
bool spares_make(struct spare_list *list, const struct calc *calc)
    __attribute__((warn_unused_result));

/* How many spares are cut as part i of the leaf is. */
int64_t spares_count(const struct spare_list *list, const struct leaf_figures *leaf, size_t i);

/* The figure of that; none where there are none. */
fig spares_of(const struct calc *calc, const struct leaf_figures *leaf, size_t i);

/* Spares x a figure of their parts, in unit, of a lumber; offset: where the figure stands in struct
 * part_figures. none where it has no spares. */
fig spares_total(const struct calc *calc, const char *what, enum unit unit, int32_t lumber,
                 size_t offset);

#endif
