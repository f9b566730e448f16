/* SPDX-License-Identifier: MIT */
/* A CSV file as rows of cells under a heading, each cell with its place.
 *
 * The heading tells the separator: comma, semicolon or tab.  Cells may be quoted the CSV way; a
 * cell that does not begin with a quote may hold inch marks. A quoted cell may go over several
 * lines, it then reads as one. Rows in which nothing stands are skipped. */
#ifndef DOORCOST_READ_FILE_TABLE_H
#define DOORCOST_READ_FILE_TABLE_H

#include "base/problem.h"

#include <stdbool.h>
#include <stddef.h>

struct cell {
    const char *text; /* trimmed; "" where nothing stands */
    struct place place;
};

struct table_row {
    struct cell *cells; /* as many as the heading has */
    struct place place; /* of the row */
};

struct table {
    struct cell *heading;
    size_t columns; /* 0: there is no heading, which was reported */
    struct table_row *rows;
    size_t count;
    uint16_t file;
    bool open; /* the file could be read */
    bool over; /* it has more rows than it may have; reported */
};

/* Reads the file at path; all that table holds lives in the pool of problems. asked: as for
 * source_read. most: rows below the heading; one more is an error, and the rest is not read. Rows
 * that were reported are left out. false: memory is out. */
bool table_read(struct table *table, const char *path, struct place asked, size_t most,
                struct problems *problems) __attribute__((warn_unused_result));

#endif
