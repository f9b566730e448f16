/* SPDX-License-Identifier: MIT */
/* From the doors' prices to what the client pays: discount, job minimum, charges, delivery, tax,
 * deposit and stages.
 *
 * Tax is rounded once, half up, on the amount that the law names; which that is the job file says
 * and nobody here knows: the quote tells its reader to check.  Method: docs/method.md, "Tax". */
#ifndef DOORCOST_PRICE_SALE_H
#define DOORCOST_PRICE_SALE_H

#include "price/cost.h"

/* What a total is called that a card fee is still to come on: `total` is what is paid in the end.
 */
#define SALE_BEFORE_FEE "in all, not paid by card"

/* What the doors of a room come to. */
struct room_sum {
    const char *room;    /* as the list first spells it; "": rows without a room */
    size_t first, count; /* its rows in by_room */
    fig leaves;          /* doors and fronts */
    fig amount;
};

struct sale_figures {
    fig doors;                   /* all doors and fronts */
    fig discount_rate, discount; /* none: no discount */
    fig after_discount;
    fig minimum_line; /* what is missing to the shop's minimum; none without one, 0 when reached */
    fig sold;         /* doors less discount, with the minimum */
    fig *charges;     /* as many as sale.charge_count */
    size_t charge_count;
    fig delivery;      /* none */
    fig subtotal;      /* before tax */
    fig taxable;       /* none: nothing is taxed */
    fig tax_rate, tax; /* none: no tax */
    fig before_fee;    /* the total without card fee; none: no card fee */
    fig card_rate, card_fee;
    fig total;
    fig deposit_rate, deposit; /* none: no deposit */
    fig *stage_rates, *stages; /* as many as sale.stage_count */
    size_t stage_count;
    fig balance;            /* total less deposit and stages */
    struct room_sum *rooms; /* in the order in which the list first names them */
    size_t room_count;
    size_t *by_room;         /* the rows, by room */
    fig worked, worked_cost; /* sold, and its cost with overhead; both with the charges that an
                                operation is done for */
    fig profit_left;         /* worked less worked_cost */
    fig margin_left;         /* percent of worked; none when nothing is sold */
};

/* Puts on the tape what the client pays for doors of these costs, by calc's job, and what the rows
 * of each room come to. Two names are one room where they differ in ASCII case only; it is called
 * as the list first writes it. Every paper lists the doors by these rooms. Memory of calc's pool.
 * false: out of memory. */
bool sale_make(struct sale_figures *figures, const struct calc *calc, const struct costs *costs)
    __attribute__((warn_unused_result));

/* What the charge of that index, as charge_at has it, comes to; none where its operation has
 * nothing to do. */
fig sale_charged(const struct sale_figures *figures, size_t index);

/* Whether a percent of the sale is given and more than nothing: papers leave out lines that come to
 * nothing, the shop's workbook keeps them, so that the percent can be raised there. */
bool sale_asked(const struct tape *tape, fig percent);

#endif
