/* SPDX-License-Identifier: MIT */
/* A small generator of numbers that only look random: the same seed, the same numbers on every
 * machine. The step is SplitMix64 (Steele, Lea, Flood 2014, "Fast splittable pseudorandom number
 * generators"). */
#ifndef DOORCOST_CUT_COMMON_CUT_RANDOM_H
#define DOORCOST_CUT_COMMON_CUT_RANDOM_H

#include <stddef.h>
#include <stdint.h>

struct cut_random {
    uint64_t state;
};

/* The next 64 bits. Cannot fail. */
static inline uint64_t cut_random_next(struct cut_random *random) {
    random->state += UINT64_C(0x9E3779B97F4A7C15);
    uint64_t z = random->state;
    z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
    return z ^ (z >> 31);
}

/* A number from 0 to below - 1; below is 1 to 2^32. Its bias is below 2^-32, which is negligible.
 */
static inline size_t cut_random_below(struct cut_random *random, size_t below) {
    return (size_t)(((cut_random_next(random) >> 32) * (uint64_t)below) >> 32);
}

/* A number from 0 to below 1, of 53 bits. */
static inline double cut_random_share(struct cut_random *random) {
    return (double)(cut_random_next(random) >> 11) * 0x1p-53;
}

#endif
