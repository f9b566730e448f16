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

/* edits and doors as in struct bench_case. text: of the first problem of that id; NULL: there is
 * none. */
struct asked_case {
    const char *name;
    enum bench_unit unit;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *id, *text;
};
/* Runs all cases, whose files are without errors, and fails the test when one of them is wrong. */
void asked_run(const struct asked_case *cases, size_t count);

#endif
