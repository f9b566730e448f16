/* SPDX-License-Identifier: MIT */
/* The numbers of a rates or job file as they are written, so that the value of a key can be written
 * anew with another number in its place, and what is said of each: the range behind it, `4.10 per
 * bf (3.80 to 4.60)`, when a price was learned, `4.10 per bf (on 2026-01-10)`, and the comment of
 * its line. */
#ifndef DOORCOST_MODEL_RATE_NUMBER_H
#define DOORCOST_MODEL_RATE_NUMBER_H

#include "base/pool.h"
#include "model/value.h"

/* One number of the value of a key, which may be a list of several. All texts live in the pool of
 * the rates. */
struct rate_number {
    struct value value;          /* the likely one; of a liquid in the unit that is written, as unit
                                    UNIT_NUMBER */
    struct value low, high;      /* low <= value <= high, of its unit; set where it has a range */
    const char *section;         /* without its brackets: `lumber poplar` */
    const char *key;             /* `price` */
    const char *before, *behind; /* what stands around it in the value of its key, other ranges
                                    and dates included; not its own */
    const char *lead;            /* the part of before that is of the same item: `1 gal at ` */
    const char *likely;          /* as written, with its unit, without its range: `4.10 per bf` */
    const char *low_text, *high_text; /* likewise, the unit added; NULL where it has no range */
    struct value on;       /* when a price was learned, of date_number; unset: not said */
    struct value yearly;   /* percent by which it rises a year from then on; unset: it does not */
    const char *rise;      /* that as written, `, 4 % a year`; "" where it does not */
    const char *unit;      /* what follows the number, ` per bf`; of a length ` in`, ` mm` */
    const char *reason;    /* the comment of its line; NULL: none */
    uint8_t most_decimals; /* that may be written */
    int32_t least, most;   /* that its key takes, in its unit; of a length 0 and RATE_NO_LIMIT, as
                          others   tell that */
};

/* What follows a length that is written anew. */
#define RATE_INCHES      " in"
#define RATE_MILLIMETERS " mm"

/* Of the most that a key takes: any. */
#define RATE_NO_LIMIT INT32_MAX

struct rate_numbers {
    struct rate_number *list; /* in the order in which they were read */
    size_t count, room;
};

/* Whether a range stands behind the number. */
static inline bool rate_number_ranged(const struct rate_number *number) {
    return number->low.set;
}

/* Whether it is a number that may turn out otherwise: no whole count, and no length but those of
 * [saw] and the film of a [coating], as sizes of doors and of what is bought are chosen. */
bool rate_number_may_differ(const struct rate_number *number);

/* Which of the numbers stands at that place; NULL: none. Borrowed. */
const struct rate_number *rate_number_at(const struct rate_numbers *numbers, struct place place);

/* The value of the key with that text, number and unit, in place of the number and its range; other
 * ranges of a list stay, and so does when a price was learned. In pool; "" when memory is out. */
const char *rate_number_with(const struct rate_number *number, const char *text, struct pool *pool);

/* The same for a price that was learned anew, on that day (of date_number). */
const char *rate_number_learned(const struct rate_number *number, const char *text, int32_t day,
                                struct pool *pool);

/* An amount of the number's unit, at that many decimals, as it would be written there, with its
 * unit: rounded, half away from zero, to most_decimals; of a length the amount is in nm (decimals
 * 0), and its text in inches or mm as the file is. |amount| below 10^15. In pool; "" when memory is
 * out. */
const char *rate_number_text(const struct rate_number *number, int64_t amount, uint8_t decimals,
                             struct pool *pool);

#endif
