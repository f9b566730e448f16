/* SPDX-License-Identifier: MIT */
/* The table of woods: weight, shrinkage and movement by species, a CSV file that the rates name. */
#ifndef DOORCOST_READ_RATES_WOODS_H
#define DOORCOST_READ_RATES_WOODS_H

#include "read/file/table.h"
#include "read/key/key.h"

/* Reads the table that the shop names (named: its path; NULL: it names none), or else `woods.csv`
 * beside the rates file at `rates` where that exists. Where there is none, table has no file.
 * asked: the place of the name. All lives in the pool of problems. false: memory is out. */
bool woods_table(struct table *table, const char *named, struct place asked, const char *rates,
                 struct problems *problems) __attribute__((warn_unused_result));

/* Takes the woods from the table, and finds the wood of each lumber's species. false: memory is
 * out. */
bool woods_read(struct reader *reader, struct rates *rates, const struct table *table)
    __attribute__((warn_unused_result));

/* The columns, for the docs. */
extern const struct key wood_columns[];
extern const size_t wood_column_count;

#endif
