/* SPDX-License-Identifier: MIT */
/* Files of a test's own bytes, and problems written down so that they can be compared. */
#ifndef DOORCOST_TESTS_FILE_BENCH_H
#define DOORCOST_TESTS_FILE_BENCH_H

#include "base/problem.h"

#include <stddef.h>

/* Bytes of a literal, a NUL among them too. */
#define BYTES(literal) (literal), sizeof(literal) - 1

/* Makes the file; fails the test where that cannot be. */
void file_bench_write(const char *path, const char *bytes, size_t size);

/* Text that grows; failing the test where it is full. */
struct dump {
    char text[16384];
    size_t used;
};
void dump_add(struct dump *dump, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* ` id@line:column+width` of each problem, in their order; a warning as `id?`. */
void dump_problems(struct dump *dump, const struct problems *problems);
/* Says where two texts part and counts it; the number of them so far is returned. */
int dump_compare(const struct dump *dump, const char *expected, const char *name, int wrong);

#endif
