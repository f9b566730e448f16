/* SPDX-License-Identifier: MIT */
/* A text file as its lines, checked byte by byte before anything else looks at it: a regular file,
 * not too large, UTF-8, no NUL.  A byte order mark is dropped; lines end with LF, CRLF or CR. */
#ifndef DOORCOST_READ_FILE_SOURCE_H
#define DOORCOST_READ_FILE_SOURCE_H

#include "base/pool.h"
#include "base/problem.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct source {
    const char *const *lines; /* without their ends; in the pool of the problems */
    bool *bad;                /* a line that was reported and must not be read further */
    size_t count;
    uint16_t file; /* its number among the problems' files */
    bool open;     /* the file could be read */
    bool cells;    /* a sheet of a workbook (read/sheet/sheet.h): cells are parted by tabs alone */
};

/* Reads the file at path.  Whatever is wrong goes to problems; then source has no lines, or lines
 * marked bad.  What source points to lives in the pool of problems.
 * asked: the place that names the file (the key of the job file), for "no such file"; file 0: the
 * command line, then the problem stands at the file itself.
 * false: memory is out. */
bool source_read(struct source *source, const char *path, struct place asked,
                 struct problems *problems) __attribute__((warn_unused_result));

/* The same of a text of the program, as if it stood in a file of that name. */
bool source_text(struct source *source, const char *name, const char *text,
                 struct problems *problems) __attribute__((warn_unused_result));

/* The same of a list, which may also be a sheet of a workbook: the first that is shown, or the one
 * whose name stands behind that of the file, `doors.xlsx:Kitchen`. */
bool source_read_list(struct source *source, const char *path, struct place asked,
                      struct problems *problems) __attribute__((warn_unused_result));

/* The name of the file that a list is in: path without the name of a sheet. In pool; NULL when
 * memory is out. */
const char *source_list_file(struct pool *pool, const char *path);

/* Whether the first byte of the file at path that is no blank is `first`; false too where it cannot
 * be read, which source_read says. */
bool source_begins(const char *path, char first);

/* Whether a text has neither a line end nor another byte that source_read refuses in a line. */
bool source_line_good(const char *text);

/* The name of a file that another file names: name itself where absolute, else in the folder of the
 * file at path. In pool; NULL when memory is out. */
char *source_beside(struct pool *pool, const char *path, const char *name);

#endif
