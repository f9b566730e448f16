/* SPDX-License-Identifier: MIT */
/* One sheet of a workbook (.xlsx, .ods) as lines, so that a list reads the same from it as from a
 * text file: line 1 is row 1, its cells are parted by tabs, and a blank row is "".
 *
 * A cell gives its value, not how it is shown: a number has its decimals, and is a fraction where
 * its format shows one and it is so many 64ths; a unit that the format puts behind it stays; a date
 * is YYYY-MM-DD. A line end or tab within a cell reads as a blank. What a cell over several rows
 * holds stands in each of these rows that has other cells. */
#ifndef DOORCOST_READ_SHEET_SHEET_H
#define DOORCOST_READ_SHEET_SHEET_H

#include "base/problem.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <sys/types.h>

/* What a workbook may come to, so that none takes over a second or 200 MB: a zip archive says in a
 * few bytes what fills a disk. */
#define SHEET_LARGEST_FILE  ((off_t)16 * 1024 * 1024)  /* names of parts take memory too */
#define SHEET_MOST_UNPACKED ((size_t)48 * 1024 * 1024) /* bytes of all parts that are read */
#define SHEET_MOST_TEXT     ((size_t)32 * 1024 * 1024) /* bytes of its lines */
#define SHEET_LARGE_TEXT    "over 32 MB of text"
#define SHEET_MOST_ROWS     1048576u /* what both formats have at most */
#define SHEET_MOST_COLUMNS  16384u
#define SHEET_LONGEST_LINE  ((size_t)20000) /* bytes of a row */

struct sheet {
    const char *const *lines; /* in the pool of the problems */
    bool *bad;                /* a line with a fault that was reported, not to be read further */
    size_t count;
    uint16_t file; /* `doors.xlsx:Kitchen` among the problems' files */
    bool open;     /* the sheet could be read */
};

/* Where in path the name of a sheet begins, as in `doors.xlsx:Kitchen`; NULL: it has none. */
const char *sheet_named(const char *path);

/* Whether bytes that a file begins with are those of a workbook, of a form that is read or not. */
bool sheet_is(const char *bytes, size_t size);

/* Reads a sheet of the workbook that is open as handle, from its start: the one of that name (case
 * ignored), or where `named` is NULL the first that is not hidden. path: of the file, without the
 * name of the sheet. What is wrong goes to problems. false: memory is out. */
bool sheet_read(struct sheet *sheet, int handle, const char *path, const char *named,
                struct problems *problems) __attribute__((warn_unused_result));

#endif
