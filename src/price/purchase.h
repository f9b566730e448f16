/* SPDX-License-Identifier: MIT */
/* What buying for a job comes to: the money that is spent, group by group, and the amounts.  An
 * estimate charges a job for what it uses where the rates say so; this is the cash spent.
 * Method: docs/method.md, "Direct cost". */
#ifndef DOORCOST_PRICE_PURCHASE_H
#define DOORCOST_PRICE_PURCHASE_H

#include "price/cost.h"

struct purchase {
    fig spent[COST_BOUGHT_IN + 1]; /* money; none: nothing of it */
    fig total;                     /* money */
    fig charged;                   /* money that the job is charged for the same groups */
    fig board_feet, cubic_meters;  /* lumber bought, by the unit it is sold in; none */
    fig sheets, half_sheets;       /* whole and half ones bought; none */
    fig finish;                    /* volume needed of all products; none */
};

/* Puts the purchase on the tape, behind all that is there; job: the build-up that the inputs came
 * to. false: out of memory. */
bool purchase_make(struct purchase *purchase, const struct calc *calc,
                   const struct cost_inputs *inputs, const struct build_up *job)
    __attribute__((warn_unused_result));

#endif
