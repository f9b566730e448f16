/* SPDX-License-Identifier: MIT */
/* The lumber to buy: net, rough and to buy, by waste factor, at the yard's prices.
 *
 * Three figures that are never mixed up: net (finished parts), rough (with allowances), to buy (net
 * and the waste factor, up to a whole board foot, at least the yard's minimum, up to a price break
 * where that is cheaper). Method: docs/method.md, "Lumber"; waste in its two readings: "Waste". */
#ifndef DOORCOST_STOCK_LUMBER_H
#define DOORCOST_STOCK_LUMBER_H

#include "stock/lumber_plan.h"

/* One way of saying how much is bought, and what that costs at the yard. */
struct lumber_way {
    fig needed; /* board feet or m3 as they are sold, at least the yard's minimum */
    fig bought; /* what is ordered: needed, or up to a price break where the whole lot is then
                   cheaper */
    fig price;  /* money per unit for that lot */
    fig cost;   /* money */
    fig cost_as_needed; /* money for `needed` at its own price; none without price breaks */
    fig factor;         /* bought / net */
    fig waste_added;    /* percent, bought / net - 1 */
    fig yield;          /* percent, net / bought */
    fig rest;           /* bought - rough: kerf, defects, offcuts, rounding up */
};

struct lumber_buy {
    int32_t material;                     /* index into rates.lumber */
    fig net, rough;                       /* of the job, board feet or m3 */
    fig allowances;                       /* rough - net: end and edge allowance */
    fig waste;                            /* percent as the file has it */
    fig with_waste;                       /* net with waste */
    struct lumber_way by_factor, by_plan; /* by_plan: all none without a plan */
    struct lumber_plan plan;
    fig asks;     /* percent: the waste that the plan asks for, in the file's reading of it */
    fig beyond;   /* by_plan.bought - plan.bought: the yard's minimum, a price break */
    bool planned; /* by_plan prices the job, else by_factor */
    /* of the way that prices the job */
    fig needed, bought, price, cost, cost_as_needed, factor, waste_added, yield, rest;
};

struct lumber_list {
    struct lumber_buy *buys;
    size_t count;
};

/* Puts the lumber of the job on the tape, a buy for each lumber that a part takes, in the order of
 * the rates file.  effort: units of work for each cutting plan; below 0: no plans, unless the rates
 * price by plan (then the quickest).  A lumber priced by plan that has none is an error of
 * problems.  Memory comes from pool, the plans are freed by lumber_clear. true: memory held. */
bool lumber_make(struct lumber_list *list, struct pool *pool, struct tape *tape,
                 const struct measures *measures, const struct rates *rates,
                 const struct quantities *quantities, struct plan_wish wish,
                 struct problems *problems) __attribute__((warn_unused_result));
void lumber_clear(struct lumber_list *list);

/* Net with waste: net x (100 + A) / 100 where waste is added, net x 100 / (100 - L) where it is
 * lost of what is bought. */
fig waste_applied(struct tape *tape, const struct measures *measures, fig net, fig waste,
                  enum waste_as as, enum unit unit);

/* The waste that would have led to what is bought, in percent: (bought - net) / net where waste is
 * added, / bought where it is lost. */
fig waste_asked(struct tape *tape, const struct measures *measures, fig net, fig bought,
                enum waste_as as);

#endif
