/* SPDX-License-Identifier: MIT */
/* Published values, a file of rows each: what was printed, where, and how near we must come.
 *
 * Every file has the columns id, expected, tolerance, published, note and source. A row whose
 * `check` is `not checked` stays in the file so that nobody takes it for one; its note says why. */
#ifndef DOORCOST_TESTS_OUTSIDE_ROWS_H
#define DOORCOST_TESTS_OUTSIDE_ROWS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define ROWS_MOST_COLUMNS 20

struct rows {
    char **cells; /* heading first */
    size_t columns, count;
    const char *file;
    int wrong;
    size_t checked, passed_over;
};

/* Reads tests/outside/file; fails the test where it cannot. */
void rows_read(struct rows *rows, const char *file);
/* Prints how many rows were checked and fails the test where one was wrong or none was checked. */
void rows_done(struct rows *rows);

/* A cell by its heading; row from 0. */
const char *rows_cell(const struct rows *rows, size_t row, const char *column);
/* A number of at most 9 decimals as thousand-millionths; 0 where the cell is empty. */
int64_t rows_number(const struct rows *rows, size_t row, const char *column);
bool rows_check_is(const struct rows *rows, size_t row, const char *check);

/* Holds a value (thousand-millionths) against the row's expected one. */
void rows_expect(struct rows *rows, size_t row, int64_t value);
void rows_pass_over(struct rows *rows, size_t row);

#define ROWS_ONE ((int64_t)1000000000)

#endif
