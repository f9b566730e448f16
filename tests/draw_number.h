/* SPDX-License-Identifier: MIT */
/* Random numbers that are the same on every machine. */
#ifndef DOORCOST_TESTS_DRAW_NUMBER_H
#define DOORCOST_TESTS_DRAW_NUMBER_H

#include <stdint.h>

/* The next number from low to high. Multiplier and increment: D. E. Knuth's MMIX, from memory. */
static inline int64_t draw_from_to(uint64_t *seed, int64_t low, int64_t high) {
    *seed = *seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return low + (int64_t)((*seed >> 33) % (uint64_t)(high - low + 1));
}

#endif
