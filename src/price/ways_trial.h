/* SPDX-License-Identifier: MIT */
/* A job with some of its rows going another way, estimated whole. */
#ifndef DOORCOST_PRICE_WAYS_TRIAL_H
#define DOORCOST_PRICE_WAYS_TRIAL_H

#include "price/ways.h"

struct ways_trial {
    const struct estimate *base; /* borrowed */
    struct plan_request plans;
    struct row *rows;   /* of the job that is tried */
    struct make *makes; /* of those of them that go another way, by row of the list */
    bool memory;        /* false: out of memory, for good */
};

/* Room for the job of base, of pool. false: out of memory. */
bool ways_trial_init(struct ways_trial *trial, const struct estimate *base,
                     struct plan_request plans, struct pool *pool)
    __attribute__((warn_unused_result));

/* What the job comes to with rows[i] on its way picked[i], for all i < count, and all other rows
 * as listed. false: it could not be estimated so, or out of memory. */
bool ways_trial_run(struct ways_trial *trial, const struct ways_row *rows, const size_t *picked,
                    size_t count, struct outcome *outcome) __attribute__((warn_unused_result));

/* The same without the row of that place in the list, all others as listed. */
bool ways_trial_without(struct ways_trial *trial, size_t place, struct outcome *outcome)
    __attribute__((warn_unused_result));

/* choice->picked is given; the rest of it is made: what changes, their sum, the whole. */
void ways_trial_choice(struct ways_trial *trial, const struct ways *ways,
                       struct ways_choice *choice);

#endif
