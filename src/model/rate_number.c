/* SPDX-License-Identifier: MIT */
#include "model/rate_number.h"

#include "base/date.h"
#include "base/int128.h"
#include "base/text.h"
#include "figure/tape.h"

#include <string.h>

bool rate_number_may_differ(const struct rate_number *number) {
    switch (number->value.unit) {
    case UNIT_COUNT:
        return false;
    case UNIT_NM:
        return text_same(number->section, "saw") || text_same(number->key, "wet film");
    default:
        return true;
    }
}

const struct rate_number *rate_number_at(const struct rate_numbers *numbers, struct place place) {
    for (size_t i = 0; i < numbers->count; i++) {
        if (place_order(numbers->list[i].value.place, place) == 0) {
            return &numbers->list[i];
        }
    }
    return NULL;
}

const char *rate_number_learned(const struct rate_number *number, const char *text, int32_t day,
                                struct pool *pool) {
    char date[16];
    return pool_words(pool, "%s%s (on %s%s)%s", number->before, text,
                      date_text(date_of_number(day), date, sizeof date), number->rise,
                      number->behind);
}

const char *rate_number_with(const struct rate_number *number, const char *text,
                             struct pool *pool) {
    return number->on.set ? rate_number_learned(number, text, (int32_t)number->on.amount, pool)
                          : pool_words(pool, "%s%s%s", number->before, text, number->behind);
}

const char *rate_number_text(const struct rate_number *number, int64_t amount, uint8_t decimals,
                             struct pool *pool) {
    struct value shown = {.amount = amount, .decimals = decimals};
    char text[32];

    if (number->value.unit == UNIT_NM) {
        const bool inches = strcmp(number->unit, RATE_INCHES) == 0;
        amount = inches ? (int64_t)int128_round((int128)amount * 10, NM_PER_INCH / 100000) : amount;
        shown.decimals = 6; /* a millimeter has a million nm */
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
