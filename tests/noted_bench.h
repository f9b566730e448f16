/* SPDX-License-Identifier: MIT */
/* A job on the bench of support.h with what was noted of it, once or twice, and what is learned. */
#ifndef DOORCOST_TESTS_NOTED_BENCH_H
#define DOORCOST_TESTS_NOTED_BENCH_H

#include "support.h"

#include "learn/proposal.h"

#define MOST_JOBS 2

/* One job or two, of one estimate, with what was noted of each. */
struct noted {
    struct bench bench; /* opened by the test */
    struct actuals actuals[MOST_JOBS];
    struct learned learned[MOST_JOBS];
    struct learned_job jobs[MOST_JOBS];
    struct pool pool;
    struct proposals made;
};

/* Reads each table of notes, up to a NULL: rows without a heading, whose columns are what, hours,
 * minutes, people, bought, paid, taken, left, remade. Learns from them and makes proposals. */
void note(struct noted *noted, const char *const *notes);
/* Frees all; what went wrong. */
int noted_close(struct noted *noted);

#endif
