/* SPDX-License-Identifier: MIT */
/* Which way each row goes so that the hours at the bench suffice and the least money is spent. */
#ifndef DOORCOST_PRICE_WAYS_WITHIN_H
#define DOORCOST_PRICE_WAYS_WITHIN_H

#include "price/ways_trial.h"

/* Makes ways->within, whose limit is set, once all else of *ways is made. Memory of pool. Up to
 * WAYS_MOST_WHOLE choices are all estimated whole. Of more, a choice is bettered until neither one
 * row more on another way nor what the sums of such changes advise betters it. */
enum ways_result ways_within_make(struct ways_trial *trial, struct ways *ways, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
