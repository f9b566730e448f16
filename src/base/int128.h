/* SPDX-License-Identifier: MIT */
/* Integers of 128 bits: products of two or three numbers of 64 bits that would not fit in 64, such
 * as an area in square nanometers times a price. GCC and Clang have them, ISO C has not. */
#ifndef DOORCOST_BASE_INT128_H
#define DOORCOST_BASE_INT128_H

#include <stdint.h>

__extension__ typedef __int128 int128;

/* over / under to the nearest whole number, a half away from zero. under is above 0; over is
 * anything but the least number there is. Nothing overflows on the way. */
static inline int128 int128_round(int128 over, int128 under) {
    const int128 size = over < 0 ? -over : over;
    int128 whole;
    if (size <= INT64_MAX && under <= INT64_MAX) { /* nearly always, and several times as fast */
        whole = (int64_t)size / (int64_t)under;
    } else {
        whole = size / under;
    }
    const int128 rest = size - whole * under;
    whole += rest >= under - rest ? 1 : 0;
    return over < 0 ? -whole : whole;
}

/* over / under, up to the next whole number. over is 0 or more, under above 0. */
static inline int128 int128_up(int128 over, int128 under) {
    return over / under + (over % under != 0 ? 1 : 0);
}

#endif
