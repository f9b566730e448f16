/* SPDX-License-Identifier: MIT */
/* What many draws of one amount tell: percentiles, how often a limit is passed, what goes with
 * what. */
#ifndef DOORCOST_CHANCE_SPREAD_H
#define DOORCOST_CHANCE_SPREAD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Puts draws in order, the least first. */
void spread_sort(int64_t *draws, size_t count);

/* The least draw that percent of all do not pass. sorted: count of them, 1 or more; percent: above
 * 0, up to 100. */
int64_t spread_percentile(const int64_t *sorted, size_t count, double percent);

/* How many draws are more than limit. */
size_t spread_above(const int64_t *sorted, size_t count, int64_t limit);

/* The places of draws in their order, from 0 on, equal ones with the mean of theirs, into ranks.
 * false: out of memory. */
bool spread_ranks(const int64_t *draws, size_t count, double *ranks)
    __attribute__((warn_unused_result));

/* The correlation of two rows of numbers, -1 to 1: of ranks it is Spearman's. 0 where one of them
 * does not move. */
double spread_correlation(const double *a, const double *b, size_t count);

#endif
