/* SPDX-License-Identifier: MIT */
#include "door/arch.h"

/* The whole root of a square sum of lengths: of halves of a door's sides, so within 62 bits. */
static int64_t root(int64_t square) {
    int64_t low = 0;
    int64_t high = (int64_t)1 << 31;
    while (low < high) { /* low^2 <= square < (high + 1)^2 */
        const int64_t middle = (low + high + 1) / 2;
        if (middle <= square / middle) {
            low = middle;
        } else {
            high = middle - 1;
        }
    }
    return low;
}

length arch_length(length chord, length rise, enum length_unit unit) {
    const length half = chord / 2;
    const length side = root(half * half + rise * rise);
    return length_cut((8 * side - chord) / 3, unit);
}
