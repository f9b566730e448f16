/* SPDX-License-Identifier: MIT */
/* The day on which a job is ready, for a quote that promises it by the plan: `ready = planned`. */
#ifndef DOORCOST_DAYS_WORK_DAY_READY_H
#define DOORCOST_DAYS_WORK_DAY_READY_H

#include "price/estimate.h"

/* Plans the work of the estimate alone, where its job asks for that, and puts the day into it. What
 * a plan would need to be held to, or can't hold, goes to problems as an error. false: out of
 * memory. */
bool day_ready_make(struct estimate *estimate, struct problems *problems)
    __attribute__((warn_unused_result));

#endif
