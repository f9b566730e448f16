/* SPDX-License-Identifier: MIT */
/* What the readers of the two formats share. */
#ifndef DOORCOST_READ_SHEET_SHEET_PARTS_H
#define DOORCOST_READ_SHEET_SHEET_PARTS_H

#include "read/sheet/archive.h"
#include "read/sheet/cell_grid.h"

/* A text that comes in pieces; on the heap. One of more bytes than a row may have is not kept
 * whole, but keeps too many bytes for a row. */
struct gathered {
    char *text;
    size_t size, room;
};

struct sheet_reading {
    struct archive archive;
    struct cell_grid grid;
    struct problems *problems;
    const char *path;  /* of the file */
    const char *named; /* the sheet that is wanted; NULL: the first that is not hidden */
    const char *names; /* of all sheets so far, as a message lists them */
    size_t name_count;
    bool found;
    struct gathered cell;
};

/* Adds bytes to a text; false: memory is out. */
bool gather(struct gathered *gathered, const char *text, size_t size)
    __attribute__((warn_unused_result));

/* Notes a sheet; true: it is the one that is wanted, and its cells may be read from now on. */
bool sheet_take(struct sheet_reading *reading, const char *name, bool hidden);

/* Reads all of the wanted sheet of an .xlsx, whose parts hang on the part `workbook`. false: a
 * fault of archive or grid, or that there is no such sheet (not `found`). */
bool xlsx_read(struct sheet_reading *reading, const char *workbook)
    __attribute__((warn_unused_result));
/* The same of an .ods. */
bool ods_read(struct sheet_reading *reading) __attribute__((warn_unused_result));

/* The part of an .xlsx that its other parts hang on, in the pool of the problems; NULL: there is
 * none, or a fault. */
const char *xlsx_workbook(struct sheet_reading *reading);

#endif
