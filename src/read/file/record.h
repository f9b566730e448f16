/* SPDX-License-Identifier: MIT */
/* One record of a CSV file: the lines it takes, and its cells. */
#ifndef DOORCOST_READ_FILE_RECORD_H
#define DOORCOST_READ_FILE_RECORD_H

#include "read/file/source.h"
#include "read/file/table.h"

/* What stands in the lines of one record. */
struct record {
    struct cell *cells; /* in the pool of the problems */
    size_t count;
    size_t lines; /* how many lines it takes, at least 1 */
    bool good;    /* false: it was reported */
};

/* The separator that stands most often outside quotes in a heading. */
char record_separator(const char *heading);

/* The separator of a sheet's cells: what no cell of a file could hold. */
#define RECORD_CELLS '\0'
/* What parts the cells of the line `at` of source (from 0): RECORD_CELLS, or as record_separator.
 */
char record_separator_of(const struct source *source, size_t at);

/* What tells whether a cell of a heading names a column. */
typedef bool record_names(const void *context, const char *text);

/* What a cell of a line may be to a heading. */
enum record_cell { RECORD_BLANK, RECORD_TEXT, RECORD_NAME };
/* So many of them are looked at. */
#define RECORD_MOST_LOOKED ((size_t)256)

/* A line as a heading. */
struct record_looks {
    unsigned char cells[RECORD_MOST_LOOKED]; /* enum record_cell */
    size_t count;
    size_t used;  /* how many hold anything */
    size_t names; /* how many name a column */
    size_t lines; /* that it is, as a cell in quotes may hold line ends */
};

/* Looks at the record that starts at line `at` of source (from 0). pool: of lines put together;
 * where its memory is out, the first is looked at alone. */
void record_look(struct record_looks *looks, const struct source *source, size_t at,
                 record_names *names, const void *context, struct pool *pool);

/* Reads the record that starts at line `at` of source (from 0).
 * expected: how many cells a record has, 0: not known yet; a quoted cell goes over line ends only
 * where that gives as many. false: memory is out. */
bool record_read(struct record *record, const struct source *source, size_t at, char separator,
                 size_t expected, struct problems *problems) __attribute__((warn_unused_result));

#endif
