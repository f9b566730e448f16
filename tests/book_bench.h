/* SPDX-License-Identifier: MIT */
/* Books for tests: written to a file and found again in what was read back from it. */
#ifndef DOORCOST_TESTS_BOOK_BENCH_H
#define DOORCOST_TESTS_BOOK_BENCH_H

#include "report/xlsx/book.h"
#include "xlsx_read.h"

/* Settles the book and writes it, on letter paper; fails the test where that fails. */
void book_bench_write(struct book *book, const char *path);
/* The same and reads it back; to be cleared. */
void book_bench_read(struct book *book, const char *path, struct xlsx *read);
/* What stands in the file where a cell of the book stands. Fails the test unless there is one. */
struct xlsx_cell *book_bench_cell(const struct xlsx *read, const struct home *cell);

/* Whether a double is value / 10^decimals, to less than a thousandth of its last place. */
bool book_bench_same(double found, int64_t value, uint8_t decimals);

#endif
