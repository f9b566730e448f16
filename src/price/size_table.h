/* SPDX-License-Identifier: MIT */
/* What one more door of a style comes to by its size and by how many are ordered: added to the job
 * as it stands, and alone.
 *
 * Every amount is that of a whole estimate: the job with the row at the end of its list, less the
 * job as it stands; or a job of that row alone, which meets the shop's minimum and pays all of its
 * set-ups, and has none of this job's charges, delivery and operations of [job]. Discount, tax and
 * card fee stay as [sale] has them. Beside it stands what a flat price by area would bring in: what
 * the job's own doors of the style are sold for over their area. Method: docs/method.md, "Prices by
 * size". */
#ifndef DOORCOST_PRICE_SIZE_TABLE_H
#define DOORCOST_PRICE_SIZE_TABLE_H

#include "price/outcome.h"

/* Of areas: sq ft or m2, one face. */
#define SIZE_AREA_DECIMALS 4

/* What a flat price by area does at a size. */
enum flat_does {
    FLAT_BEARS, /* brings in the shop's price or more */
    FLAT_LESS,  /* brings in less than that */
    FLAT_LOSES, /* does not even pay the direct cost */
};

/* What so many of a size come to. Money as of struct outcome; price: before tax. */
struct size_price {
    bool has; /* else the job could not be estimated so, and all is 0 */
    struct outcome outcome;
    int64_t each;     /* money: price of one, rounded */
    int64_t per_area; /* money: price of a sq ft or m2, rounded */
    int64_t flat;     /* money: what the flat price asks for all of them */
    enum flat_does flat_does;
};

/* Whether they are added to the job, or are a job of their own. */
enum size_way { SIZE_ADDED, SIZE_ALONE, SIZE_WAY_COUNT };

/* A size of a style. row and reason are given. */
struct size_line {
    struct row row;
    const char *reason; /* why it cannot be made; NULL: it can, and has prices */
    int64_t area;       /* of one door; 0 where it cannot be made */
    struct size_price *prices[SIZE_WAY_COUNT]; /* one a count */
};

/* A style, given with its lines. */
struct size_style {
    const char *name;
    int32_t style; /* index into rates.styles */
    struct make make;
    struct size_line *lines;
    size_t line_count;
    /* A flat price by area: what the doors of the job that are of this style are listed at, less
     * discount, over their area; of all that it has where it has no such
     * doors. */
    struct size_flat {
        int64_t sold, area;
        int64_t rate; /* money a sq ft or m2, rounded */
        bool own;     /* of doors of this style */
    } flat;
};

struct size_table {
    struct size_style *styles; /* given, as the counts are */
    size_t style_count;
    const int64_t *counts; /* of openings or doors, each 1 to MOST_OF_ROW */
    size_t count_count;
    struct outcome job; /* as it stands */
    uint8_t money_decimals;
};

/* Fills in the table, whose styles, lines and counts are given. base: an estimate with its
 * purchase, made with the same plans. Memory of pool. Takes two estimates for each line and count.
 * false: out of memory. */
bool size_table_make(struct size_table *table, const struct estimate *base,
                     struct plan_request plans, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
