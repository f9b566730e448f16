/* SPDX-License-Identifier: MIT */
/* A look at the bytes of an XML part before a library parses them. A parser keeps a whole tag or
 * comment in memory and holds each attribute of a tag against all others: a few megabytes made for
 * that would cost it minutes. No spreadsheet writes such tags. */
#ifndef DOORCOST_READ_SHEET_TAG_GUARD_H
#define DOORCOST_READ_SHEET_TAG_GUARD_H

#include <stdbool.h>
#include <stddef.h>

/* All zero: the start of a part. */
struct tag_guard {
    enum { GUARD_TEXT, GUARD_NAME, GUARD_TAG, GUARD_OTHER } state;
    bool begun;    /* a byte of the part was seen */
    char quote;    /* of the value that is open; NUL: none is */
    char end[3];   /* the last bytes of a comment, CDATA or instruction */
    size_t size;   /* of the piece so far */
    size_t equals; /* signs of equality outside of quotes in the tag */
};

/* Looks at the next bytes of the part. false: a tag with more than 200 attributes, a piece of more
 * than 256 KB, a document type, a NUL byte or a start that is not that of UTF-8 text. */
bool tag_guard_pass(struct tag_guard *guard, const char *bytes, size_t size);

#endif
