/* SPDX-License-Identifier: MIT */
/* One quantity measured several times, each time with a spread (a standard deviation): the likely
 * value is the mean weighted by one over the square of each spread, and its own spread the root of
 * one over the sum of the weights (inverse variance weighting; NIST/SEMATECH e-Handbook of
 * Statistical Methods, weighted means, from memory). In integers, so that it is the same on every
 * machine. */
#ifndef DOORCOST_LEARN_MEASURED_H
#define DOORCOST_LEARN_MEASURED_H

#include <stddef.h>
#include <stdint.h>

/* 1 in the decimals of factors. */
#define MEASURED_ONE INT64_C(1000000)

struct measured {
    int64_t weight;   /* sum of weights */
    int64_t weighted; /* sum of weight x value / MEASURED_ONE */
};

/* Between which it lies nine times out of ten, and what is likely. */
struct measured_range {
    int64_t low, likely, high;
};

/* A first measurement. value, spread: of MEASURED_ONE; spread from MEASURED_ONE / 1000 on. */
struct measured measured_start(int64_t value, int64_t spread);

/* A further one. */
void measured_add(struct measured *measured, int64_t value, int64_t spread);

/* How a share that is counted scatters, of what it is: of `count` things each fails with the chance
 * `share` (of MEASURED_ONE, above 0 and up to it), so the share that failed has the spread sqrt(p
 * (1 - p) / n) (binomial distribution; NIST/SEMATECH e-Handbook of Statistical Methods, from
 * memory). count: 1 or more. At least MEASURED_ONE / 1000, at most a thousand times MEASURED_ONE.
 */
int64_t measured_share_spread(int64_t share, int64_t count);

/* The weighted mean. */
int64_t measured_likely(const struct measured *measured);

/* The mean, and 1.645 spreads to either side: 90 % of a normal distribution. low is at least a
 * tenth of what is likely. */
struct measured_range measured_range(const struct measured *measured);

/* The range of one over it. All above 0. */
struct measured_range measured_inverse(struct measured_range range);

#endif
