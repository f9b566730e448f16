/* SPDX-License-Identifier: MIT */
/* One of several ways for each of many things, so that the hours of all stay within a limit and
 * their money is least: a knapsack with multiple choice, in integers, exact.
 *
 * Thing by thing, those sums of hours and money are kept that no other one betters in both: what is
 * thrown away cannot be part of a best pick, whatever is still to come. */
#ifndef DOORCOST_PRICE_PICK_H
#define DOORCOST_PRICE_PICK_H

#include <stddef.h>
#include <stdint.h>

/* What a way takes; of any sign, sums of all things within 64 bits. */
struct pick_way {
    int64_t hours, money;
};

struct pick_thing {
    const struct pick_way *ways; /* borrowed */
    size_t count;                /* 1 or more */
};

enum pick_result {
    PICK_WITHIN,   /* the least money within the limit; of equal money the fewest hours */
    PICK_OVER,     /* no pick is within: the fewest hours; of equal hours the least money */
    PICK_TOO_MANY, /* more sums than PICK_MOST_SUMS; nothing was picked */
    PICK_MEMORY,
};

/* Sums that are kept in all, 24 bytes each. */
#define PICK_MOST_SUMS 4000000

/* picked[i]: the place of the way of things[i]; where picks are equal, always the same one. count:
 * of things. limit: hours, of all things together. */
enum pick_result pick_make(const struct pick_thing *things, size_t count, int64_t limit,
                           size_t *picked) __attribute__((warn_unused_result));

#endif
