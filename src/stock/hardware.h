/* SPDX-License-Identifier: MIT */
/* Hinges, pulls, other hardware and small things: how many with spares, in whole packs where they
 * are sold so, and consumables by the door, the sprayed area or the hour.  Method: docs/method.md,
 * "Hardware", "Consumables". */
#ifndef DOORCOST_STOCK_HARDWARE_H
#define DOORCOST_STOCK_HARDWARE_H

#include "door/quantity.h"

/* What a piece is on a door as; ROLE_OTHER: what `hardware` lists. */
enum hardware_role { ROLE_HINGE, ROLE_PULL, ROLE_OTHER, ROLE_COUNT };

struct hardware_buy {
    int32_t hardware; /* index into rates.hardware */
    enum hardware_role role;
    bool by_others;  /* named, not sold: only `needed` is set */
    fig needed;      /* pieces on the doors */
    fig with_spares; /* pieces, spares included, whole */
    fig from_rack;   /* of these, pieces that are on the rack; none: nothing is there */
    fig to_buy;      /* pieces: with_spares less these */
    fig packs;       /* none where sold singly */
    fig bought;      /* pieces */
    fig price;       /* of a piece, or of a pack */
    fig cost;        /* for what is bought */
    fig charged;
};

struct hardware_list {
    struct hardware_buy *buys;
    size_t count;
};

/* A buy for each hardware that a door takes, in each of its roles apart, in the order of the rates
 * file. Memory of calc's pool. false: out of memory. */
bool hardware_make(struct hardware_list *list, const struct calc *calc)
    __attribute__((warn_unused_result));

/* The pieces of a buy that a leaf takes; none when it takes none. */
fig hardware_on_leaf(const struct hardware_buy *buy, const struct leaf_figures *leaf);

#endif
