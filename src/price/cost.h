/* SPDX-License-Identifier: MIT */
/* From quantities to cost, and from cost to a price: the job as a whole, and each door's share of
 * it.
 *
 * Direct cost by group; remakes on what stands before; then contingency, overhead and profit, each
 * on what stands before it. A door's share of a group goes by what it takes of it and is rounded to
 * the cent; what the shares leave is kept as a line. Method: docs/method.md, "Price". */
#ifndef DOORCOST_PRICE_COST_H
#define DOORCOST_PRICE_COST_H

#include "finish/finish.h"
#include "labor/labor.h"
#include "stock/banding.h"
#include "stock/hardware.h"
#include "stock/lumber.h"
#include "stock/sheet.h"

/* "lumber", "sheets", ...; static. */
const char *cost_group_name(enum cost_group group);

/* A pile of money on its way from cost to price: the job's, or a leaf's. */
struct build_up {
    fig group[COST_GROUP_COUNT]; /* none: nothing of it */
    fig bought_doors;            /* of the group bought in: doors, which are goods; none */
    fig materials; /* lumber to consumables and doors bought in, without purchase tax */
    fig direct;
    fig contingency;
    fig overhead;
    fig full; /* direct, contingency, overhead */
    fig profit;
    fig price; /* full and profit */
};

struct consumable_figures {
    int32_t consumable;
    fig quantity; /* doors, sprayed area or hours */
    fig price;
    fig cost;
};

struct door_price {
    struct build_up cost; /* of a leaf */
    fig priced;           /* price, after the minimum */
    fig extra;            /* the row's extra charge; none */
    fig unit;             /* price of a leaf, raised to `round price to` */
    fig amount;           /* leaves of the row x unit */
};

struct costs {
    struct build_up job;      /* of the doors */
    struct build_up *charges; /* one a charge, as charge_at has them: what its operation costs, and
                                 would be sold for; none figures without an operation */
    struct consumable_figures *consumables;
    size_t consumable_count;
    fig least; /* price that a door is sold for at the least; none without a minimum */
    fig unshared[COST_GROUP_COUNT]; /* a group's cost less all shares; none where nothing is shared
                                     */
    struct door_price *doors;       /* one a row */
    fig doors_total;                /* sum of the amounts */
    fig minimum;                    /* what the minimum by door adds; none without one */
    fig extra;                      /* extra charges of all rows; none when there are none */
    fig rounding; /* doors_total less the job's own price and these two: shares and rounding up */
};

struct cost_inputs {
    const struct lumber_list *lumber;
    const struct sheet_list *sheets;
    const struct glass_list *glass;
    const struct banding_list *banding;
    const struct finish_list *finish;
    const struct hardware_list *hardware;
    const struct labor *labor;
};

/* Puts cost and price of the job and of every door on the tape. Memory of calc's pool. false: out
 * of memory. */
bool costs_make(struct costs *costs, const struct calc *calc, const struct cost_inputs *inputs)
    __attribute__((warn_unused_result));

#endif
