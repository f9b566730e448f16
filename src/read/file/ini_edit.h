/* SPDX-License-Identifier: MIT */
/* The lines of an INI file with values changed, put in or taken out: all other lines stay, comments
 * with them. It goes by the rules of ini_scan.c, of files that these have found good. */
#ifndef DOORCOST_READ_FILE_INI_EDIT_H
#define DOORCOST_READ_FILE_INI_EDIT_H

#include "base/pool.h"
#include "read/file/source.h"

#include <stdbool.h>
#include <stddef.h>

/* Lines of a file, without line feeds. What they point to is borrowed, or in the pool that they
 * were changed with. */
struct ini_lines {
    const char **list; /* in that pool */
    size_t count;
};

/* The lines of a file that was read, to be changed; list NULL: out of memory. */
struct ini_lines ini_lines_of(const struct source *source, struct pool *pool);

/* One change. Names as in struct ini_section and struct ini_key, all texts without line ends. */
struct ini_change {
    const char *section; /* what stands between its brackets: `lumber poplar` */
    const char *key;
    const char *value;   /* as it stands behind the `=`: ini_value; NULL: the line is taken out */
    const char *comment; /* behind the value of a line that is put in; NULL: none */
    const char *about;   /* a comment above a section that is put in; NULL: none */
};

/* Makes the change. A key that is not there is put in behind the last of its section, a section at
 * the end. false: the pool's memory is out. */
bool ini_edit(struct ini_lines *lines, const struct ini_change *change, struct pool *pool)
    __attribute__((warn_unused_result));

/* How text has to stand behind a `=`: in quotes where it would not be read as it is, trimmed. In
 * pool. NULL: no line can hold it (a line end, quotes of both kinds, too long), or memory is out.
 */
const char *ini_value(const char *text, struct pool *pool);

/* line with value in place of what stands between `=` and its comment, which stays in its column
 * where there is room; more: words to put at the end of the comment; NULL: none. line itself where
 * it has no `=`. In pool, "" where its memory is out. */
const char *ini_line_with(const char *line, const char *value, const char *more, struct pool *pool);

/* All lines as one text, each with a line feed. In pool; NULL when its memory is out. */
const char *ini_text(const struct ini_lines *lines, struct pool *pool);

#endif
