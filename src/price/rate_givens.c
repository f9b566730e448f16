/* SPDX-License-Identifier: MIT */
#include "price/rate_givens.h"

/* How a value becomes that given; false: in some other way, or not at all. */
static bool way_of(const struct tape *tape, fig given, const struct units *units,
                   const struct value *value, enum rate_way *way) {
    const enum unit unit = tape_unit(tape, given);
    const int64_t amount = tape_amount(tape, given);
    uint8_t decimals;
    if (value->unit != UNIT_NM) {
        *way = RATE_AS_IT_IS;
        return unit == (enum unit)value->unit && tape_scaled(tape, given, 6) == value_at(value, 6);
    }
    if (unit == units->film && amount == units_film_amount(units, value->amount, &decimals)) {
        *way = RATE_AS_FILM;
        return true;
    }
    *way = RATE_AS_LENGTH;
    return unit == units->length && amount == length_millionths(value->amount, units->lengths);
}

static bool is_given_of(const struct tape *tape, fig f, struct place place) {
    return tape_op(tape, f) == OP_GIVEN && place_order(tape_origin(tape, f).place, place) == 0;
}

/* The ends of a range stand on the tape too where papers tell what they come to. */
static bool is_end(const struct tape *tape, fig given, const struct units *units,
                   const struct rate_number *number) {
    enum rate_way way;
    return way_of(tape, given, units, &number->low, &way) ||
           way_of(tape, given, units, &number->high, &way);
}

/* Counts the givens, and lists them where there is a list. */
static void take_givens(struct rate_givens *givens, const struct estimate *e,
                        const struct rate_number *number) {
    const struct tape *const tape = &e->tape;
    givens->count = 0;
    givens->as_written = true;
    for (uint32_t i = 1; i < tape->count; i++) {
        const fig f = {i};
        enum rate_way way;
        if (!is_given_of(tape, f, number->value.place)) {
            continue;
        }
        if (!way_of(tape, f, &e->units, &number->value, &way)) {
            givens->as_written = givens->as_written && is_end(tape, f, &e->units, number);
            continue;
        }
        givens->as_written = givens->as_written && (givens->count == 0 || givens->way == way);
        givens->way = way;
        if (givens->list != NULL) {
            givens->list[givens->count] = f;
        }
        givens->count++;
    }
}

bool rate_givens_find(struct rate_givens *givens, const struct estimate *e,
                      const struct rate_number *number, struct pool *pool) {
    *givens = (struct rate_givens){0};
    take_givens(givens, e, number);
    givens->list = pool_take(pool, givens->count, sizeof *givens->list);
    if (givens->list != NULL) {
        take_givens(givens, e, number);
    }
    return givens->list != NULL;
}
