/* SPDX-License-Identifier: MIT */
/* A workbook's file: a zip archive of XML parts, each read as a stream of tags and texts.
 *
 * Nothing in the file can make it cost more than its limits: what is unpacked is counted as it
 * comes, whatever the archive says of itself; a document type, and with it every entity but the
 * five of XML, is refused; nothing outside the archive is ever opened. */
#ifndef DOORCOST_READ_SHEET_ARCHIVE_H
#define DOORCOST_READ_SHEET_ARCHIVE_H

#include "base/pool.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* What is wrong with a workbook as a whole. */
enum archive_fault {
    ARCHIVE_GOOD,
    ARCHIVE_MEMORY,  /* memory is out */
    ARCHIVE_DAMAGED, /* no zip archive, or a part that is not what it should be */
    ARCHIVE_LOCKED,  /* encrypted */
    ARCHIVE_LARGE    /* over a limit of sheet.h */
};

struct archive {
    struct zip *zip;
    size_t left; /* bytes that may still be unpacked */
    enum archive_fault fault;
    const char *part; /* the part in which it was found; borrowed */
};

/* A tag as it opens; valid in the call that it is given to. */
struct tag {
    const char *prefix; /* of its name as written, "" where none */
    const char *name;
    const unsigned char **attributes; /* five pointers each, as libxml2 has them */
    int count;
};

/* Who takes what stands in a part. Each returns whether to go on; false is no fault by itself. */
struct part_reader {
    bool (*open)(void *context, const struct tag *tag);
    bool (*close)(void *context, const char *name); /* without prefix */
    bool (*text)(void *context, const char *text, size_t size);
    void *context;
};

/* Opens the file that handle is open on, whose place is at its start; handle stays the caller's.
 * false: the fault says why. Either way archive_close may be called. */
bool archive_open(struct archive *archive, int handle) __attribute__((warn_unused_result));
/* Frees what the archive holds. */
void archive_close(struct archive *archive);

/* Whether it has a part of that name. */
bool archive_has(const struct archive *archive, const char *name);

/* Reads a part. false: the fault says why; a part that is not there is ARCHIVE_DAMAGED. */
bool archive_read(struct archive *archive, const char *name, const struct part_reader *reader)
    __attribute__((warn_unused_result));

/* The attribute of that name; prefix NULL: any. *size: its bytes; NULL: the tag has none such.
 * Borrowed; '&' stands as "&#38;". */
const char *attribute_value(const struct tag *tag, const char *prefix, const char *name,
                            size_t *size);
/* Whether the attribute has that value. */
bool attribute_says(const struct tag *tag, const char *prefix, const char *name, const char *value);
/* Its value as a text of its own in pool; NULL: it has none, or memory is out (pool_failed). */
const char *attribute_text(const struct tag *tag, const char *prefix, const char *name,
                           struct pool *pool);
/* Its value as a whole number from 0 to most; `otherwise` where it has none, or no number; where it
 * is more than most, most + 1 (UINT32_MAX at the most), which no part of a sheet may have. */
uint32_t attribute_number(const struct tag *tag, const char *prefix, const char *name,
                          uint32_t most, uint32_t otherwise);

#endif
