/* SPDX-License-Identifier: MIT */
/* Which numbers of the rates move the total of a job, and by how much: what to measure first, and
 * what to put in first where the rates are invented. Method: docs/method.md, "What moves the
 * total". */
#ifndef DOORCOST_REPORT_WORDS_MOVES_H
#define DOORCOST_REPORT_WORDS_MOVES_H

#include "price/estimate.h"

struct move {
    const struct setting *setting; /* of the rates */
    double adds;  /* money that a tenth more of it adds to the total, roundings and choices left as
                     they are; less than 0: takes off */
    bool shipped; /* it is still as shipped */
};

struct moves {
    struct move *list; /* what moves most stands first; of the pool */
    size_t count;
};

/* Of a traced estimate. All in pool, which tells of want of memory. */
struct moves moves_of(const struct estimate *estimate, struct pool *pool);

/* Those of them that lack a range: lines of the rates with a number that may differ
 * (rate_number_may_differ), none of them with a range. */
struct moves moves_without_range(const struct estimate *estimate, struct pool *pool);

#endif
