/* SPDX-License-Identifier: MIT */
/* Rates changed for one reading: the values that keys of the rates file have in place of those that
 * stand there. The reader takes them as if the file were edited so, with all its checks. */
#ifndef DOORCOST_MODEL_RATE_CHANGE_H
#define DOORCOST_MODEL_RATE_CHANGE_H

#include <stddef.h>
#include <stdint.h>

struct rate_change {
    const char *section; /* without its brackets: `lumber poplar`; one that the file has */
    const char *key;     /* one that the section has, or else may have */
    const char *value;   /* as it would stand behind the `=`, without a comment; not empty */
    uint16_t column;     /* of the value in its line of `lines`, from 1; 0 without these */
};

/* Of different keys. All is borrowed. */
struct rate_changes {
    const struct rate_change *list;
    size_t count;
    /* What the user wrote, a line a change, and what it is called in messages, `--set`; NULL: the
     * changes are the program's, and messages show where the key stands in the file. */
    const char *const *lines;
    const char *lines_name;
};

#endif
