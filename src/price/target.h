/* SPDX-License-Identifier: MIT */
/* What would have to be true for the client to pay a wanted total: the profit, the discount, the
 * hours of work, or the rows that are left out, each alone and all else as it stands.
 *
 * Every answer is a whole estimate of the job so changed. The total follows each of the first three
 * one way, so that halving the steps between the job and the end of what the files allow finds the
 * smallest change that reaches it; rows are tried set by set. Method: docs/method.md, "A wanted
 * total". */
#ifndef DOORCOST_PRICE_TARGET_H
#define DOORCOST_PRICE_TARGET_H

#include "price/outcome.h"

/* What is turned to reach the total. */
enum lever {
    LEVER_PROFIT,   /* percent, as the rates have it: of cost, or of the price */
    LEVER_DISCOUNT, /* percent off the doors, in place of a discount by count */
    LEVER_HOURS,    /* how long all work takes, in percent of what the rates say: minutes, handling,
                       set-ups, and feeds the other way round */
    LEVER_COUNT
};

/* Decimals of what levers are set to: they go in hundredths of a percent. */
#define LEVER_DECIMALS 2

/* The smallest change of a lever that reaches the total. Where none does: the end of its range. */
struct lever_answer {
    int64_t now;  /* hundredths of a percent, rounded */
    int64_t then; /* hundredths of a percent */
    bool reaches;
    bool has; /* false: the job could not be estimated so, and the outcome is 0 */
    struct outcome outcome;
};

/* The rows without which the total is reached: of the smallest sets that do the one that comes
 * nearest to it. Where none does: the set that comes nearest. */
struct rows_answer {
    const struct row **rows;
    size_t count;      /* 0: none was tried, or none helps */
    size_t most_tried; /* all sets of up to so many rows were tried */
    bool reaches;
    struct outcome outcome;
};

struct target {
    int64_t wanted; /* money: what the client is to pay, with tax; given */
    struct outcome job;
    struct lever_answer levers[LEVER_COUNT];
    struct rows_answer rows;
    uint8_t money_decimals;
};

/* Fills in what reaches target->wanted, 0 or more. base: an estimate with its purchase, made with
 * the same plans. Where the wanted total is lower, an answer comes to it or to less, where it is
 * higher to it or to more. Memory of pool. false: out of memory. */
bool target_make(struct target *target, const struct estimate *base, struct plan_request plans,
                 struct pool *pool) __attribute__((warn_unused_result));

#endif
