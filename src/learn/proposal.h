/* SPDX-License-Identifier: MIT */
/* New rates from what was noted of one or several jobs.
 *
 * A rate that was measured is moved as far as the evidence goes: what the file has counts as a
 * measurement of its own, whose spread is its range, or a usual one. Method: docs/method.md, "New
 * rates": weights are one over the square of a spread (inverse variance, as two measurements of one
 * thing are put together). */
#ifndef DOORCOST_LEARN_PROPOSAL_H
#define DOORCOST_LEARN_PROPOSAL_H

#include "learn/learned.h"

/* One job and what was learned of it. All jobs of a list have rates of one file. */
struct learned_job {
    const struct estimate *estimate;
    const struct learned *learned;
};

/* A number of the rates, and what it should be. */
struct proposal {
    const struct rate_number *number; /* of the rates of the first job */
    const char *text;       /* the new number with its unit and its range: `1.85 (1.52 to 2.18)` */
    const char *alone;      /* the number alone */
    int32_t paid_on;        /* of a price that was paid: day of its job's quote, of date_number */
    const char *low, *high; /* likewise, of its range; NULL: a price that was paid */
    bool small;             /* it moves by less than 5 % */
    const char *why;        /* `sand, 5.50 h for 3.31 h in 1 job` */
};

/* What was measured and changes no rate. */
struct unmoved {
    const char *what; /* `poplar, price`, or a rate, `shop remakes` */
    const char *why;  /* `less of it is noted as used than is in the doors` */
    bool as_is;       /* a rate that would be written as it is */
};

struct proposals {
    struct proposal *list; /* in the order of the rates */
    size_t count;
    struct unmoved *unmoved;
    size_t unmoved_count;
};

/* What the rates of the jobs (count of them, 1 or more) should be. Memory of pool. false: out of
 * memory. */
bool proposals_make(struct proposals *proposals, const struct learned_job *jobs, size_t count,
                    struct pool *pool) __attribute__((warn_unused_result));

/* The text of a rates file with the proposals in it: lines (count of them) are its own, with no
 * line feeds. Each changed line has the new number in place of the old one, and behind its comment
 * what it was and why; all other lines stay. In pool; NULL: out of memory. */
const char *proposals_write(const struct proposals *proposals, const char *const *lines,
                            size_t count, struct pool *pool);

#endif
