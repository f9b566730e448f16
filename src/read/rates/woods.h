/* SPDX-License-Identifier: MIT */
/* The table of woods: weight, shrinkage and movement by species, a CSV file that the rates name. */
#ifndef DOORCOST_READ_RATES_WOODS_H
#define DOORCOST_READ_RATES_WOODS_H

#include "read/key/key.h"

/* Reads the table that the shop names, or `woods.csv` beside the rates file where that exists, and
 * finds the wood of each lumber's species. false: memory is out. */
bool woods_read(struct reader *reader, struct rates *rates) __attribute__((warn_unused_result));

/* The columns, for the docs. */
extern const struct key wood_columns[];
extern const size_t wood_column_count;

#endif
