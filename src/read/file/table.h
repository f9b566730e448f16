/* SPDX-License-Identifier: MIT */
/* A list, from a CSV file or a sheet of a workbook, as rows of cells under a heading, each cell
 * with its place. What stands above the heading is a title, and not read. Rows in which nothing
 * stands are skipped.
 *
 * Of a CSV file the heading tells the separator: comma, semicolon or tab. Cells may be quoted the
 * CSV way; a cell that does not begin with a quote may hold inch marks. A quoted cell may go over
 * several lines, it then reads as one. */
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
    /* The line above the heading: a title, groups of columns, or names of columns that the heading
     * has taken. NULL: there is none. */
    struct cell *above;
    size_t above_count;
    struct table_row *rows;
    size_t count;
    uint16_t file;
    bool open; /* the file could be read */
    bool over; /* it has more rows than it may have; reported */
};

/* Whether anything stands in a column below its heading. column: from 0, below table->columns. */
bool table_has_cells(const struct table *table, size_t column);

/* What a list may be. */
struct table_wanted {
    size_t most; /* rows below the heading; one more is an error, and the rest is not read */
    /* Whether a cell names a column; the heading is the one of the first 20 lines that has most
     * such cells, at least two, or one among three; of equal ones the first. It is two lines where
     * columns are named in the upper one over what the lower one leaves blank; what else the upper
     * one has there is no heading where nothing stands below. NULL, and where none has: the first
     * in which anything stands. */
    bool (*names)(const void *context, const char *text);
    const void *context;
};

/* Reads the list at path, of a workbook as source_read_list has it; all that table holds lives in
 * the pool of problems. asked: as for source_read. Rows that were reported are left out. false:
 * memory is out. */
bool table_read(struct table *table, const char *path, struct place asked,
                struct table_wanted wanted, struct problems *problems)
    __attribute__((warn_unused_result));

#endif
