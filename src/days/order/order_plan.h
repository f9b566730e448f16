/* SPDX-License-Identifier: MIT */
/* Work put in order: tasks that wait for each other and share what there is only so much of. Knows
 * nothing of doors; whole numbers alone, so that a plan is the same on every machine.
 *
 * A task takes minutes of work and may go on the next working day. From its beginning to its end it
 * holds what it asks of each resource; what it keeps it holds for `hold` minutes on the clock
 * longer (a clamp, while glue sets). One task begins no sooner than another has ended and a lag on
 * the clock has passed (drying).
 *
 * The plan is the best of a serial generation scheme over several rules of priority and of some
 * random ones (Kolisch 1996, "Serial and parallel resource-constrained project scheduling methods
 * revisited"): task by task, each as early as what was placed before it leaves room. That gives
 * active plans, among which one of the shortest is. Beside it stands a bound that no plan beats. */
#ifndef DOORCOST_DAYS_ORDER_ORDER_PLAN_H
#define DOORCOST_DAYS_ORDER_ORDER_PLAN_H

#include "days/order/work_time.h"

#define MOST_TASKS 4000 /* of a plan: its time grows with the square of it */

struct order_demand {
    int32_t resource;
    int32_t amount; /* 1 or more, at most the resource's capacity */
    bool kept;      /* beyond the end of the task, for its hold */
};

struct order_link {
    int32_t before; /* a task; less than the one that waits for it */
    int64_t lag;    /* minutes on the clock, 0 or more */
};

struct order_task {
    int64_t minutes;                   /* of work, 0 or more */
    int64_t hold;                      /* minutes on the clock, 0 or more */
    int64_t ready;                     /* minute on the clock before which it does not begin */
    size_t first_demand, demand_count; /* among those of the work */
    size_t first_link, link_count;     /* likewise */
};

/* What is to be put in order. All is borrowed. */
struct order_work {
    const struct work_time *time;
    const struct order_task *tasks;
    size_t task_count; /* at most MOST_TASKS */
    const struct order_demand *demands;
    const struct order_link *links;
    const int32_t *capacity; /* of each resource, 1 or more */
    size_t resource_count;
};

struct order_plan {
    int64_t *begins;      /* of each task, minute of work */
    int64_t end;          /* minute on the clock: all done, and nothing held any more */
    int64_t bound;        /* minute on the clock: no plan ends sooner */
    int64_t path;         /* the bound by what waits for what alone */
    int64_t *by_resource; /* the bound by each resource alone */
};

/* Puts the work in order, by so many random priorities beside the rules. Memory of pool. false: out
 * of memory. */
bool order_make(struct order_plan *plan, const struct order_work *work, int32_t tries,
                struct pool *pool) __attribute__((warn_unused_result));

/* The minute on the clock until which a task that begins at a minute of work holds what it keeps:
 * its end and its hold. */
int64_t order_held_until(const struct order_work *work, size_t task, int64_t begins);

#endif
