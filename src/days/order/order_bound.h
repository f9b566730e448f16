/* SPDX-License-Identifier: MIT */
/* How soon any plan could end. For src/days/order only. */
#ifndef DOORCOST_DAYS_ORDER_ORDER_BOUND_H
#define DOORCOST_DAYS_ORDER_ORDER_BOUND_H

#include "days/order/order_plan.h"

/* Of each task: the first minute of work at which it may begin if nothing is scarce, and the least
 * minutes from its beginning to the end of all that waits for it, lags included where they are on
 * the clock as well (for priorities; no bound). */
struct order_ends {
    int64_t *heads, *tails;
};

/* Fills in ends. Memory of pool. false: out of memory. */
bool ends_make(struct order_ends *ends, const struct order_work *work, struct pool *pool)
    __attribute__((warn_unused_result));

/* Fills in the bounds of a plan.
 *
 * By the path: the longest chain of tasks and lags. By a resource: tasks of which none begins
 * before a head and behind each of which a tail is still to be done share it, so the last of them
 * ends no sooner than head + their work / capacity + tail; the largest over all heads and tails
 * (for one machine that is Jackson's preemptive plan: Carlier 1982, "The one-machine sequencing
 * problem"). A tail is minutes of work alone, as a lag may pass at night. What is kept is held on
 * the clock: first opening + (minutes + hold) / capacity. Memory of pool. false: out of memory. */
bool bounds_make(struct order_plan *plan, const struct order_work *work,
                 const struct order_ends *ends, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
