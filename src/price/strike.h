/* SPDX-License-Identifier: MIT */
/* What a row really saves if it is struck, and what one more of it really costs.
 *
 * A row is listed at its share of the job. Struck, it takes less or more with it: sheets are bought
 * whole, set-ups stay while another row needs them, a minimum is met or no longer met, prices break
 * at amounts. So the job is estimated as a whole without the row, and with one more of it, and each
 * is held against the job as it stands; so are nearly equal sizes made one.
 * Method: docs/method.md, "Rows struck and added". */
#ifndef DOORCOST_PRICE_STRIKE_H
#define DOORCOST_PRICE_STRIKE_H

#include "price/outcome.h"

/* A row of the door list; `less` and `more` are counted from the job as it stands. */
struct strike_row {
    const struct row *row;
    int64_t listed;          /* money: its line on the quote, before discount and tax */
    int64_t listed_one;      /* money: one opening or door of it */
    struct outcome less;     /* what falls away with the row */
    struct outcome more;     /* what one more of it adds */
    bool has_less, has_more; /* else the job could not be estimated so */
};

/* A size of some leaves that is nearly another's, and what falls away once it is made the same. */
struct strike_size {
    const struct row **rows; /* whose leaves change */
    size_t row_count;
    const struct row *other; /* the first that has the size already */
    bool width;              /* else the height */
    length from, to;         /* nm, of a leaf; each of several leaves changes by as much */
    struct outcome less;
};

struct strike {
    struct outcome job;
    struct strike_row *rows;
    size_t row_count;
    struct outcome together;   /* what falls away with all of the rows at once */
    bool has_together;         /* two rows or more were asked for and could be struck at once */
    struct strike_size *sizes; /* what saves most first */
    size_t size_count;
    uint8_t money_decimals;
};

/* Estimates the job of base anew for each row of it whose index is among `rows` (count of them,
 * ascending; count 0: for every row, and for nearly equal sizes). base: an estimate with its
 * purchase, made with the same plans. Memory of pool. Takes twice as many estimates as rows. false:
 * out of memory. */
bool strike_make(struct strike *strike, const struct estimate *base, struct plan_request plans,
                 const size_t *rows, size_t count, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
