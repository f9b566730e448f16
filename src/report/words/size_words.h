/* SPDX-License-Identifier: MIT */
/* What the prices by size are called, the same on every paper. */
#ifndef DOORCOST_REPORT_WORDS_SIZE_WORDS_H
#define DOORCOST_REPORT_WORDS_SIZE_WORDS_H

#include "base/pool.h"
#include "price/size_table.h"

/* "added to this job", "alone"; static. */
const char *size_way_name(enum size_way way);
/* "bears it", "earns less", "loses money": what a flat price by area does; static. */
const char *flat_does_name(enum flat_does does);
/* "", "< ", "! ": the same before a price; static. */
const char *flat_does_mark(enum flat_does does);
/* "sq ft" or "m2": in which the rates count areas; static. */
const char *size_area_name(const struct estimate *estimate);
/* A sentence: from what the flat price of a style of the table comes. In pool. */
const char *size_flat_words(const struct estimate *estimate, const struct size_table *table,
                            const struct size_style *style, struct pool *pool);

/* What the columns and the two ways are. */
#define SIZE_TERMS_WORDS                                                                           \
    "Sizes are as the job measures. Direct: materials, labor and what is bought in. Price: "       \
    "before tax, with discounts. By area: what the flat price would ask. It bears the shop's "     \
    "price; or earns less (<); or loses money (!), as it does not even pay what is direct."
#define SIZE_WAYS_WORDS                                                                            \
    "Added: the job is estimated anew with such a row at the end of its list, made as [make] "     \
    "says. Alone: a job of that row only, with the shop's minimum and set-ups, without this "      \
    "job's charges and delivery."

#endif
