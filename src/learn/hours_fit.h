/* SPDX-License-Identifier: MIT */
/* A second look at the hours of past jobs, which knows nothing of operations: hours by doors, area
 * and coats, fitted by least squares. Where it is far from the estimate, one of them is wrong.
 * Method: docs/method.md, "Hours of past jobs". */
#ifndef DOORCOST_LEARN_HOURS_FIT_H
#define DOORCOST_LEARN_HOURS_FIT_H

#include "learn/proposal.h"

/* Fewer jobs fit four numbers to whatever they are. */
#define HOURS_FIT_LEAST_JOBS 8

/* What hours are fitted by: once a job, each door, a unit of area of a face, a unit of area of a
 * coat. */
enum { HOURS_FIT_BY = 4 };

struct hours_fit {
    const char *lacks;        /* why there is none, static; NULL: there is one */
    int64_t by[HOURS_FIT_BY]; /* hours in millionths for one of each */
    int64_t spread;           /* hours in hundredths: of what is left of a job */
    int64_t *noted, *fitted;  /* of each job, hours in hundredths */
    size_t count;
};

/* Fits the jobs (count of them) in which all work was noted. Memory of pool. false: out of memory.
 */
bool hours_fit_make(struct hours_fit *fit, const struct learned_job *jobs, size_t count,
                    struct pool *pool) __attribute__((warn_unused_result));

#endif
