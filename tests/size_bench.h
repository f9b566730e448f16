/* SPDX-License-Identifier: MIT */
/* Prices by size of two styles of the plain shop, of which one size of the first can't be made. */
#ifndef DOORCOST_TESTS_SIZE_BENCH_H
#define DOORCOST_TESTS_SIZE_BENCH_H

#include "support.h"

#include "price/size_table.h"

#define SIZE_BENCH_STYLES 2
#define SIZE_BENCH_LINES  3
#define SIZE_BENCH_REASON "too narrow, \"by far\""

/* Makes the table of that estimate for these counts, which are borrowed. Memory of pool. */
void size_bench_make(struct size_table *table, const struct bench *bench, const int64_t *counts,
                     size_t count, struct pool *pool);

#endif
