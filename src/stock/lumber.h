/* SPDX-License-Identifier: MIT */
/* The lumber to buy: net, rough and to buy, by waste factor or plan, at the yard's prices.
 *
 * Three figures that are never mixed up: net (finished parts), rough (with allowances), to buy (net
 * and the waste factor, up to a whole board foot, at least the yard's minimum, up to a price break
 * where that is cheaper). Of what is on the rack the plan tells which parts are cut of it; those
 * are not bought, by plan or factor. Method: docs/method.md, "Lumber", "From the rack"; waste in
 * its two readings: "Waste". */
#ifndef DOORCOST_STOCK_LUMBER_H
#define DOORCOST_STOCK_LUMBER_H

#include "model/plan_request.h"
#include "stock/lumber_plan.h"

/* How much is bought by one reckoning, factor or plan, and what that costs at the yard. */
struct purchase_by {
    fig as_sold;   /* board feet or m3 in the yard's steps */
    fig needed;    /* the same, at least the yard's minimum */
    fig bought;    /* what is ordered: needed, or up to a price break where the whole lot is then
                      cheaper */
    fig from_rack; /* the same of boards of the rack; none: nothing is there */
    fig cut;       /* bought, and from the rack; none: nothing is there */
    fig price;     /* money per unit for that lot */
    fig cost;      /* money */
    fig cost_as_needed; /* money for `needed` at its own price; none without price breaks */
    fig factor;         /* bought, or cut where the rack has some, / net */
    fig waste_added;    /* percent, that - 1 */
    fig yield;          /* percent, net / bought or cut */
    fig rest;           /* bought or cut - rough: kerf, defects, offcuts, rounding up */
};

struct lumber_buy {
    int32_t material; /* index into rates.lumber */
    fig net, rough;   /* of the job, board feet or m3; rough: spare rails among it */
    fig spares;       /* net, of spare rails; none without */
    fig milled;       /* net with these; net without */
    fig allowances;   /* rough - milled: end and edge allowance */
    fig waste;        /* percent as the file has it */
    fig on_rack;      /* of milled: the parts on boards of the rack; none: nothing is there */
    fig with_waste;   /* milled, less what is on the rack, with waste */
    struct purchase_by by_factor;
    struct purchase_by by_plan; /* all none without a plan */
    struct purchase_by priced;  /* the one of these two that prices the job */
    bool planned;               /* by_plan prices the job */
    struct lumber_plan plan;
    fig implied_waste; /* percent: the waste that comes to the plan, in the file's reading of it */
    fig over_plan;     /* by_plan.bought - plan.bought: the yard's minimum, a price break */
    fig short_of_plan; /* by_plan.bought - by_factor.bought; 0: the factor buys enough for the plan
                        */
    fig less_rack;     /* taken from the rack, below 0; none: nothing is there */
    fig with_rack; /* money: priced.cost, and what the boards from the rack are worth; none: nothing
                      is there */
};

struct lumber_list {
    struct lumber_buy *buys;
    size_t count;
};

/* Puts the lumber of the job on the tape, a buy for each lumber that a part takes, in the order of
 * the rates file.  A plan is made where request asks for it, or where the rates price lumber by
 * plan or count work by it; in these two a lumber that has none is an error of calc's problems.
 * Memory of calc's pool, but for the plans, which lumber_clear frees.  false: out of memory. */
bool lumber_make(struct lumber_list *list, const struct calc *calc, struct plan_request request)
    __attribute__((warn_unused_result));
/* Frees the plans. */
void lumber_clear(struct lumber_list *list);

/* Money that the job is charged: what is bought, and what is taken from the rack at its worth. */
fig lumber_charged(const struct lumber_buy *buy);

/* Net with waste in the unit of net: net x (100 + waste) / 100 where waste is added, net x 100 /
 * (100 - waste) where it is lost of what is bought. waste: percent; lost: under 100. */
fig waste_applied(const struct calc *calc, fig net, fig waste, enum waste_as as);

/* The waste that would have led to what is used up, in percent: (used up - net) / net where waste
 * is added, / used up where it is lost. Used up is what is bought less the offcuts worth keeping
 * (none: nothing is kept), which are there for the next job. */
fig implied_waste(const struct calc *calc, fig net, fig bought, fig keep, enum waste_as as);

/* How much more the plan needs than the factor buys, in their unit; 0 where it needs no more. */
fig short_of_plan(const struct calc *calc, fig by_factor, fig by_plan);

#endif
