/* SPDX-License-Identifier: MIT */
#include "model/rate_number.h"

#include "base/int128.h"
#include "figure/tape.h"

const char *rate_number_with(const struct rate_number *number, const char *text,
                             struct pool *pool) {
    return pool_words(pool, "%s%s%s", number->before, text, number->behind);
}

const char *rate_number_text(const struct rate_number *number, int64_t amount, uint8_t decimals,
                             struct pool *pool) {
    struct value shown = {.amount = amount, .decimals = decimals};
    char text[32];

    if (number->value.unit == UNIT_NM) {
        shown.decimals = 6; /* a millimeter has a million of them */
    }
    int128 under = 1;
    for (; shown.decimals > number->most_decimals; shown.decimals--) {
        under *= 10;
    }
    shown.amount = (int64_t)int128_round(amount, under);
    value_drop_zeros(&shown, 0);
    return pool_words(pool, "%s%s", figure_text(shown.amount, shown.decimals, text, sizeof text),
                      number->unit);
}
