/* SPDX-License-Identifier: MIT */
/* How rows of a file become jobs: files of the bench with the row's cells in them, read by the real
 * reader and estimated by the real stages, and which figure of the estimate answers the row. A test
 * is a table of ways; whatever the program does between file and figure can fail it. */
#ifndef DOORCOST_TESTS_WAYS_H
#define DOORCOST_TESTS_WAYS_H

#include "rows.h"
#include "support.h"

/* {COLUMN} in a text stands for the row's cell of that column. A line of an edit that names an
 * empty cell is left out. */
struct way {
    const char *check; /* of the rows that go this way */
    enum bench_unit unit;
    const char *edits[BENCH_MOST_EDITS - 1]; /* as struct bench_case has them */
    const char *woods;                       /* a table of woods of the row's own; NULL: ours */
    const char *doors;
    struct want answer; /* its value is not looked at */
    const char *figure; /* instead: the first figure of that name */
    /* instead of both: what is worked out of the estimate, in thousand-millionths */
    int64_t (*ask)(const struct bench *bench, const struct rows *rows, size_t row);
};

/* Runs every row of a file the way that its check names and fails the test where one is wrong. */
void ways_run(const char *file, const struct way *ways, size_t count);

/* A figure of an estimate in thousand-millionths; fails the test where it is none. */
int64_t ways_value(const struct bench *bench, const struct want *want);

#endif
