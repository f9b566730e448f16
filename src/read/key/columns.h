/* SPDX-License-Identifier: MIT */
/* Columns of a CSV file: which key each stands for, and reading a row by them. */
#ifndef DOORCOST_READ_KEY_COLUMNS_H
#define DOORCOST_READ_KEY_COLUMNS_H

#include "read/file/table.h"
#include "read/key/key.h"

/* A set of keys and the place of their struct in the row's. */
struct column_set {
    const struct key *keys;
    size_t count;
    size_t at;
};

/* What a column of the table is; key NULL: not known, it was reported. */
struct column {
    const struct key *key;
    size_t at; /* of the key's struct in the row's */
};

/* Reads the list at path (table_read), whose heading is known by the names of its columns. most:
 * rows. false: memory is out. */
bool columns_table(struct table *table, const char *path, struct place asked, size_t most,
                   const struct column_set *sets, size_t count, struct problems *problems)
    __attribute__((warn_unused_result));

/* Finds the key of every column of the heading; reports unknown and repeated columns, and needed
 * ones that are not there. An array of table->columns in the problems' pool; NULL when memory is
 * out. */
struct column *columns_find(struct reader *reader, const struct table *table,
                            const struct column_set *sets, size_t count);

/* Reads a row into target; what the keys preset is set first; needed cells that are empty are
 * reported. */
void columns_read(struct reader *reader, const struct column *columns, const struct table *table,
                  const struct table_row *row, const struct column_set *sets, size_t count,
                  void *target);

#endif
