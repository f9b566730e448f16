/* SPDX-License-Identifier: MIT */
/* Edge banding to buy: the edges of all banded slabs with waste, in whole rolls where it is sold
 * so. Method: docs/method.md, "Banding". */
#ifndef DOORCOST_STOCK_BANDING_H
#define DOORCOST_STOCK_BANDING_H

#include "door/quantity.h"

struct banding_buy {
    int32_t banding; /* index into rates.bandings */
    fig net;         /* run of the edges, ft or m */
    fig needed;      /* with waste */
    fig rolls;       /* none where sold by the length */
    fig price;       /* of a roll, or by the length */
    fig cost;        /* for what is bought */
    fig charged;     /* to the job: all of it, or of whole rolls what is used, as of sheets */
};

struct banding_list {
    struct banding_buy *buys;
    size_t count;
};

/* A buy for each banding that a slab takes, in the order of the rates file. Memory of calc's pool.
 * false: out of memory. */
bool banding_make(struct banding_list *list, const struct calc *calc)
    __attribute__((warn_unused_result));

#endif
