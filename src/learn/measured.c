/* SPDX-License-Identifier: MIT */
#include "learn/measured.h"

#include "base/int128.h"

/* One over the square of a spread, scaled so that a spread of 1 has weight 1,000,000. */
static int64_t weight_of(int64_t spread) {
    const int128 one = (int128)MEASURED_ONE * MEASURED_ONE * MEASURED_ONE;
    return (int64_t)int128_round(one, (int128)spread * spread);
}

struct measured measured_start(int64_t value, int64_t spread) {
    struct measured measured = {0, 0};
    measured_add(&measured, value, spread);
    return measured;
}

void measured_add(struct measured *measured, int64_t value, int64_t spread) {
    const int64_t weight = weight_of(spread);
    measured->weight += weight;
    measured->weighted += (int64_t)int128_round((int128)weight * value, MEASURED_ONE);
}

int64_t measured_likely(const struct measured *measured) {
    return (int64_t)int128_round((int128)measured->weighted * MEASURED_ONE, measured->weight);
}

/* The largest whole number whose square is not more. */
static int64_t root_of(int64_t square) {
    int64_t low = 0;
    int64_t high = INT64_C(3037000499);
    while (low < high) {
        const int64_t middle = low + (high - low + 1) / 2;
        if (middle * middle <= square) {
            low = middle;
        } else {
            high = middle - 1;
        }
    }
    return low;
}

struct measured_range measured_range(const struct measured *measured) {
    const int128 one = (int128)MEASURED_ONE * MEASURED_ONE * MEASURED_ONE;
    const int64_t spread = root_of((int64_t)int128_round(one, measured->weight));
    const int64_t reach = (int64_t)int128_round((int128)spread * 1645, 1000);
    struct measured_range range = {.likely = measured_likely(measured)};
    range.low = range.likely - reach;
    range.high = range.likely + reach;
    range.low = range.low < range.likely / 10 ? range.likely / 10 : range.low;
    return range;
}

struct measured_range measured_inverse(struct measured_range range) {
    const int128 one = (int128)MEASURED_ONE * MEASURED_ONE;
    return (struct measured_range){.low = (int64_t)int128_round(one, range.high),
                                   .likely = (int64_t)int128_round(one, range.likely),
                                   .high = (int64_t)int128_round(one, range.low)};
}

int64_t measured_share_spread(int64_t share, int64_t count) {
    const int64_t least = MEASURED_ONE / 1000;
    const int64_t most = MEASURED_ONE * 1000;
    const int128 over = (int128)(MEASURED_ONE - share) * MEASURED_ONE * MEASURED_ONE;
    const int128 square = int128_round(over, (int128)share * count);
    const int64_t spread = square > (int128)most * most ? most : root_of((int64_t)square);
    return spread < least ? least : spread;
}
