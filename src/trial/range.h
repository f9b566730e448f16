/* SPDX-License-Identifier: MIT */
/* Which rates move a job, and how far: each is moved by itself to its low and its high, all others
 * as they are, and the job estimated anew for each. Method: docs/method.md, "Rates moved".
 *
 * What moves the price most stands first; with bars for the swings this is known as a tornado
 * diagram. */
#ifndef DOORCOST_TRIAL_RANGE_H
#define DOORCOST_TRIAL_RANGE_H

#include "trial/trial.h"

/* To what the rates are moved. */
enum range_way {
    RANGE_ENDS,    /* each that has a range to the ends of it */
    RANGE_PERCENT, /* each that the job takes and that may differ, down and up by one part */
    RANGE_SET      /* those that the user names, to the value that he gives, which is the high */
};

/* The job with a rate moved. */
struct range_end {
    const char *text;    /* what the rate then is, `4.60 per bf`; NULL: it is not moved this way */
    struct outcome more; /* what the job then comes to, counted from the job as it stands */
    bool has;            /* else the job could not be estimated so */
    const char *why;     /* where not: what is wrong */
};

/* A rate that is moved. */
struct range_row {
    const struct rate_number *number; /* of the base's rates; NULL: it stands there as none */
    const char *section, *key;        /* `lumber poplar`, `price` */
    const char *lead;   /* of an item of a list, what stands before the number; else "" */
    const char *likely; /* as it stands in the file; NULL: it stands there as no number */
    const char *reason; /* the comment of its line; NULL: none */
    struct range_end low, high;
    int64_t swing; /* money: from the least to the most that the client pays, the job as it stands
                      among these; 0 or more */
};

struct ranges {
    enum range_way way;
    struct outcome job; /* as it stands */
    struct range_row *rows;
    size_t count;
    struct range_end together; /* RANGE_SET of two or more: all at once; else text is NULL */
    const char *percent;       /* RANGE_PERCENT: by how many, as the user has it */
    uint8_t money_decimals;
};

/* Moves each rate that has a range. base: the job as it stands, traced, with its purchase. Memory
 * of pool. false: out of memory. */
bool ranges_make(struct ranges *ranges, const struct estimate *base, const struct trial_job *job,
                 struct pool *pool) __attribute__((warn_unused_result));

/* By how many percent rates are moved: amount / 10^decimals, above 0 and at most 100, with at most
 * 4 decimals. */
struct range_percent {
    const char *text; /* as the user has it */
    int64_t amount;
    uint8_t decimals;
};

/* Moves each number that the job takes from the rates, and that may differ
 * (rate_number_may_differ), by so many percent, down and up. As ranges_make. */
bool ranges_by(struct ranges *ranges, const struct estimate *base, const struct trial_job *job,
               struct range_percent percent, struct pool *pool) __attribute__((warn_unused_result));

/* Moves each of the changes, and all at once. They were read at once without error. As ranges_make.
 */
bool ranges_set(struct ranges *ranges, const struct estimate *base, const struct trial_job *job,
                const struct rate_changes *changes, struct pool *pool)
    __attribute__((warn_unused_result));

/* The swing of a row whose ends are estimated, and rows put in order: what swings most first, equal
 * ones as they stood. */
void ranges_sort(struct range_row *rows, size_t count);

/* Whether the job is the same with the rate moved: in all that an outcome has. */
bool range_row_idle(const struct range_row *row);

#endif
