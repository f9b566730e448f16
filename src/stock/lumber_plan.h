/* SPDX-License-Identifier: MIT */
/* The boards of one lumber by cutting plan: the plan itself, and what it comes to on the tape.
 * Method: docs/method.md, "By plan"; docs/cutting.md. */
#ifndef DOORCOST_STOCK_LUMBER_PLAN_H
#define DOORCOST_STOCK_LUMBER_PLAN_H

#include "cut/board/board_layout.h"
#include "model/plan_request.h"
#include "stock/plan_input.h"
#include "stock/rack_stock.h"

struct lumber_plan {
    const char *no_plan_reason; /* why there is no plan; NULL: there is one */
    struct board_job job;       /* sizes in millionths of the job's length unit */
    uint8_t price_decimals;     /* of the prices of the job, which are money */
    struct board_plan *plan;    /* owned by the list that holds this; NULL where there is no plan */
    struct plan_part *parts;    /* one an item of the job */
    size_t sold;                /* stocks of the job that are sold; the others are of the rack */
    struct rack_stock rack;     /* those, in their order; sizes are board feet or m3 */
    fig *counts;                /* boards to buy, one a stock that is sold */
    fig *footage;   /* of such a board, board feet or m3, before any rounding on the pack */
    fig boards;     /* boards in all, of the rack too */
    fig cuts;       /* ends, edges, rips and crosscuts of all boards */
    fig bought;     /* board feet as a yard tallies them; m3 */
    fig bound;      /* money: no plan costs less than this at the price of a small lot */
    fig at_price;   /* money: the plan's boards at that same price, of the rack at their worth */
    fig gap;        /* money: at_price - bound; nothing: no plan costs less */
    fig sold_parts; /* parts as they are cut, on boards that are bought; none where the rack is
                       empty */
    struct offcut_rule keep;
    /* What becomes of them, board feet or m3: net, allowances, trim, kerf, defects, offcuts and
     * tally add up to what is bought and taken from the rack. */
    fig measured;   /* the boards by their sizes, of the rack too */
    fig rough;      /* the parts as they are cut, rough */
    fig allowances; /* rough - net */
    fig trim;       /* ends and straightened edges */
    fig kerf;
    fig defects; /* the share kept for them */
    fig offcuts;
    fig keep_worth; /* of the offcuts: those worth keeping */
    fig tally; /* bought less the bought boards by their sizes: whole feet of surface; m3: none */
};

/* A board that is bought is one of so many sizes at most: the chooser gives a count for each, for
 * each row of the rack, and what the plan comes to. */
enum { LUMBER_PLAN_SIZES = 56 };

/* Plans the boards of a lumber (index into rates.lumber), or takes the plan made ahead; net: board
 * feet or m3 of its finished parts.  plan->plan is owned by the caller and freed by
 * board_plan_free, the rest is calc's pool's.  A plan is checked before it is used; one that fails
 * its check is none.  false: out of memory. */
bool lumber_plan_make(struct lumber_plan *plan, const struct calc *calc, int32_t material, fig net,
                      struct plan_request request) __attribute__((warn_unused_result));

#endif
