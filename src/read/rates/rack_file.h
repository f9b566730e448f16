/* SPDX-License-Identifier: MIT */
/* What is on the rack: a CSV file that the rates name. */
#ifndef DOORCOST_READ_RATES_RACK_FILE_H
#define DOORCOST_READ_RATES_RACK_FILE_H

#include "read/file/table.h"
#include "read/key/key.h"

/* Reads the table at path. asked: the place that names it. All lives in the pool of problems.
 * false: memory is out. */
bool rack_table(struct table *table, const char *path, struct place asked,
                struct problems *problems) __attribute__((warn_unused_result));

/* Takes what is on the rack from the table, which is not `open` where there is none; after all
 * sections of the rates were read. false: memory is out. */
bool rack_read(struct reader *reader, struct rates *rates, const struct table *table)
    __attribute__((warn_unused_result));

/* The columns, for the docs. */
extern const struct key rack_columns[];
extern const size_t rack_column_count;

#endif
