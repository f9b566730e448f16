/* SPDX-License-Identifier: MIT */
/* Which numbers of invented rates a job still takes: those that are not yet the shop's own. A
 * number is a line of the rates file that a figure of the estimate was made of. */
#ifndef DOORCOST_REPORT_WORDS_SHIPPED_H
#define DOORCOST_REPORT_WORDS_SHIPPED_H

#include "price/estimate.h"

struct shipped_group {
    const char *kind;  /* of section: `lumber` */
    const char *names; /* of its sections, or keys of a section without a name: `poplar, oak` */
};

struct shipped {
    size_t used, left;            /* numbers of the rates that the job takes; of these as shipped */
    struct shipped_group *groups; /* of those left, as the file has them; of the pool */
    size_t group_count;
};

/* Whether the client's prices are examples. */
bool shipped_example(const struct estimate *estimate);
/* What is said then. */
#define SHIPPED_EXAMPLE_WORDS "example prices: the rates are invented"

/* Whether a setting of the rates is still as shipped. */
bool shipped_still(const struct rates *rates, const struct setting *setting);

/* Of an estimate that is traced, whose rates say that they are invented. All in pool, which tells
 * of want of memory. */
struct shipped shipped_of(const struct estimate *estimate, struct pool *pool);

/* `Still as shipped: 9 of the 12 numbers that this job takes from the rates`. Of the pool. */
const char *shipped_words(const struct shipped *shipped, struct pool *pool);

#endif
