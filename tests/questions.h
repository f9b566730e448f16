/* SPDX-License-Identifier: MIT */
/* Tables of what is asked about a job and what is not, on the bench of support.h. */
#ifndef DOORCOST_TESTS_QUESTIONS_H
#define DOORCOST_TESTS_QUESTIONS_H

#include "support.h"

/* edits and doors as in struct bench_case. */
struct question_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *id;
    bool asked;
};

/* Estimates the job of each case; fails the test where a question is asked that should not be, or
 * is not. */
void questions_run(const struct question_case *cases, size_t count);

#endif
