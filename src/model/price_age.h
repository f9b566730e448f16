/* SPDX-License-Identifier: MIT */
/* When prices were learned: `4.10 per bf (on 2026-01-10)`, and by how much one rises from then on,
 * `(on 2026-01-10, 4 % a year)`.
 *
 * A price carries no more than that it is dated (struct value); its number in the rates tells the
 * rest. Ages are counted to the day of the quote, never to today: a quote made again is the same.
 */
#ifndef DOORCOST_MODEL_PRICE_AGE_H
#define DOORCOST_MODEL_PRICE_AGE_H

#include "base/date.h"
#include "figure/tape.h"
#include "model/rate_number.h"

struct price_ages {
    const struct rate_numbers *numbers; /* borrowed; NULL: no price is dated */
    int32_t quoted;                     /* day of the quote, of date_number */
    bool *used;                         /* by number: whether a stage asked for it; borrowed */
};

/* The number of a dated price, which is marked as used; NULL: it is none of the rates. */
const struct rate_number *price_age_of(const struct price_ages *ages, const struct value *price);

/* Whole days from the day a price was learned to that of the quote; 0 where it was learned later.
 */
int32_t price_age_days(const struct price_ages *ages, const struct rate_number *number);

/* A price that rises, as it is so many days after it was learned: price x (1 + yearly percent x
 * days / 365), the rise in proportion to the days (simple, not compounded; docs/method.md, "Prices
 * and their age"). hundred: the constant of struct units. */
fig price_aged(struct tape *tape, const char *what, const struct rate_number *number, int32_t days,
               fig hundred);

#endif
