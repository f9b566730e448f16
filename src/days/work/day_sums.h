/* SPDX-License-Identifier: MIT */
/* What a plan comes to by day and by job: for src/days/work only. */
#ifndef DOORCOST_DAYS_WORK_DAY_SUMS_H
#define DOORCOST_DAYS_WORK_DAY_SUMS_H

#include "days/work/day_plan.h"

/* The date_number of a minute on the clock: of the working day that it is of or, at night and on
 * days off, of the next one. start: date_number of day 0. */
int32_t day_of_clock(const struct work_time *time, int32_t start, int64_t clock);

/* Fills in the lines, and of each job begin, end and minutes. The steps have their begins. Memory
 * of pool. false: out of memory. */
bool day_sums_make(struct day_plan *plan, const struct work_time *time, int32_t start,
                   const struct order_work *work, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
