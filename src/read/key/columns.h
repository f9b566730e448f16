/* SPDX-License-Identifier: MIT */
/* Columns of a CSV file: which key each stands for, and reading a row by them. */
#ifndef DOORCOST_READ_KEY_COLUMNS_H
#define DOORCOST_READ_KEY_COLUMNS_H

#include "read/file/table.h"
#include "read/key/heading.h"

/* Reads the list at path (table_read), whose heading is known by the names of its columns. most:
 * rows. false: memory is out. */
bool columns_table(struct table *table, const char *path, struct place asked, size_t most,
                   const struct column_set *sets, size_t count, struct problems *problems)
    __attribute__((warn_unused_result));

/* What each column means by its heading and the cells below it: the one way to tell. An array of
 * table->columns in pool; NULL when memory is out. */
struct heading *columns_mean(const struct table *table, const struct column_set *sets, size_t count,
                             struct pool *pool);

/* Finds the key of every column of the heading; reports unknown and repeated columns, names that
 * stand above the heading alone, and needed ones that are not there. What each column means (key
 * NULL: not known, reported, or without a heading), an array of table->columns in the problems'
 * pool; NULL when memory is out. */
struct heading *columns_find(struct reader *reader, const struct table *table,
                             const struct column_set *sets, size_t count);

/* Reads a row into target; what the keys preset is set first; needed cells that are empty are
 * reported. */
void columns_read(struct reader *reader, const struct heading *columns, const struct table *table,
                  const struct table_row *row, const struct column_set *sets, size_t count,
                  void *target);

#endif
