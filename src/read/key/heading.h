/* SPDX-License-Identifier: MIT */
/* What the headings of people's own lists mean: `Qty.`, `Door #`, `Width (in)`. One table has what
 * else a column may be called, and what may mean several columns. */
#ifndef DOORCOST_READ_KEY_HEADING_H
#define DOORCOST_READ_KEY_HEADING_H

#include "read/key/key.h"

/* A set of keys and the place of their struct in the row's. */
struct column_set {
    const struct key *keys;
    size_t count;
    size_t at;
    const char *page; /* of the manual that tells of them (manual_name) */
};

/* One other way to say a column, in the plain spelling: small letters, one blank between words, no
 * points. */
struct heading_word {
    const char *written;
    const char *column;   /* that it means; NULL: none alone */
    const char *measure;  /* what it says that sizes are of, `opening` or `door`; NULL: nothing */
    const char *advice;   /* of one that means no column alone: what to write */
    const char *by_cells; /* the column of words that it means where all cells below are such words;
                             NULL: none */
    const char *second;   /* the column that it means where another is called what it means, and
                             none is called this; NULL: none */
};

/* All of them; *count: how many. Static. Common practice, no source. */
const struct heading_word *heading_words(size_t *count);

/* What a heading means. */
struct heading {
    const struct key *key; /* NULL: no column, or several */
    size_t at;             /* of the key's struct in the row's */
    const char *measure;   /* as above */
    bool has_unit;         /* of bare lengths below it; else they are in the file's */
    enum length_unit unit;
    const char
        *advice; /* what to write instead, of a key where its unit is not taken; NULL: none */
    const char *by_cells; /* as above */
    const char *second;   /* as above */
};

/* What text means among the columns of a list: a name of theirs, case, hyphens, points and the like
 * ignored, or what else it is called; of a column of lengths with its unit behind it. */
struct heading heading_read(const char *text, const struct column_set *sets, size_t count);

/* The one column of the list that is being read whose word or name text is, where it is none of
 * key's; NULL: none, or several. */
const struct key *heading_elsewhere(const struct reader *reader, const struct key *key,
                                    const char *text);

/* What sizes are of that stand below text, which heads several columns of them: `opening` or
 * `door`; NULL: it does not say. */
const char *heading_measure(const char *text);

#endif
