/* SPDX-License-Identifier: MIT */
/* Each row made here, bought in, its finish sent out: what each way costs, in money that is spent
 * and in hours at the bench, and which ways keep the job within the hours that there are.
 *
 * A row has the ways that the rates know: `bought as` of its style, `put out as` of its finish. A
 * row that goes another way is the row with that style, that finish in its cells. Set-ups are
 * shared, sheets are bought whole, minimums are met or not: so a way is a whole estimate of the job
 * with one row changed, and a choice for all rows is a whole estimate of its own, beside what the
 * single changes add up to. Method: docs/method.md, "Made here, bought in, sent out". */
#ifndef DOORCOST_PRICE_WAYS_H
#define DOORCOST_PRICE_WAYS_H

#include "price/outcome.h"

enum way_kind { WAY_LISTED, WAY_BOUGHT, WAY_SENT, WAY_BOUGHT_SENT, WAY_KINDS };

/* Choices of as many as there are combined are all estimated; more are searched. */
#define WAYS_MOST_WHOLE 1024

struct way {
    enum way_kind kind;
    const struct reference *style;  /* what the row then names; NULL: as listed */
    const struct reference *finish; /* likewise */
    struct outcome whole;           /* the job with this row so, the others as listed */
    struct outcome row;             /* that, less the job without the row */
};

struct ways_row {
    const struct row *row;
    size_t place;               /* of the row in the list */
    bool made_here;             /* as listed it is neither bought in nor sent out */
    struct way ways[WAY_KINDS]; /* the first: as listed */
    size_t count;               /* 2 or more, of those that could be estimated */
};

/* A way for each row. */
struct ways_choice {
    size_t *picked;      /* by row of struct ways: its way */
    size_t changed;      /* rows that do not stay as listed */
    struct outcome sum;  /* the job, and what the single changes add up to */
    struct outcome real; /* the job with all of them, estimated whole */
    bool made;           /* false: it could not be estimated so */
};

enum ways_all { WAYS_LEAST_DIRECT, WAYS_ALL_BOUGHT, WAYS_ALL_SENT, WAYS_ALL_OUT, WAYS_ALL_COUNT };

/* What hours are limited to, and what then is chosen: the least money spent within them. */
struct ways_within {
    int64_t limit;              /* hours at the bench in hundredths; < 0: none, nothing below */
    struct ways_choice by_sums; /* exact for the sums of single changes */
    struct ways_choice best;    /* of all that were estimated whole */
    size_t tried;               /* whole estimates that were compared */
    bool all;                   /* these are all that there are */
    bool within;                /* false: best has the fewest hours that were found, over limit */
};

struct ways {
    struct outcome job; /* as listed */
    struct ways_row *rows;
    size_t row_count;
    size_t other_rows; /* that have one way alone */
    struct ways_choice all[WAYS_ALL_COUNT];
    struct ways_within within;
    uint8_t money_decimals;
};

/* Whether choice `all` (enum ways_all) changes a row, in another manner than those before it, and
 * could be estimated. */
bool ways_choice_new(const struct ways *ways, int all);

enum ways_result { WAYS_OK, WAYS_TOO_MANY, WAYS_MEMORY };

/* Estimates the job of base anew for each way of each row whose index is among `rows` (count of
 * them, ascending; count 0: of every row), and for choices of all of them. limit: hours at the
 * bench in hundredths; < 0: none. base: an estimate with its purchase, made with the same plans;
 * its job, rates and memory must live as long as *ways, the rest is of pool. WAYS_TOO_MANY: a
 * choice within the limit among so many rows and hours takes too much memory. */
enum ways_result ways_make(struct ways *ways, const struct estimate *base,
                           struct plan_request plans, const size_t *rows, size_t count,
                           int64_t limit, struct pool *pool) __attribute__((warn_unused_result));

#endif
