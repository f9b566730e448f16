/* SPDX-License-Identifier: MIT */
/* Where a number of the rates stands on the tape: what is set there when the number is moved and
 * the tape made again. */
#ifndef DOORCOST_PRICE_RATE_GIVENS_H
#define DOORCOST_PRICE_RATE_GIVENS_H

#include "price/estimate.h"

/* How an amount of the number becomes that of its givens. */
enum rate_way {
    RATE_AS_IT_IS,
    RATE_AS_LENGTH, /* nm to the job's unit */
    RATE_AS_FILM    /* nm to mil or um */
};

struct rate_givens {
    fig *list;
    size_t count;
    enum rate_way way;
    bool as_written; /* each given is the number as it is written; else the tape can't be made again
                        from these alone, and `list` means nothing */
};

/* Finds the givens of a number on the traced tape of an estimate; ends of its range, which stand
 * there too where papers tell what they come to, are none. Memory of pool. false: out of memory. */
bool rate_givens_find(struct rate_givens *givens, const struct estimate *estimate,
                      const struct rate_number *number, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
