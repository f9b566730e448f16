/* SPDX-License-Identifier: MIT */
/* Which section and key of a file a value was given by: with its line, the origin of a given as
 * people name it, `[lumber poplar] price`.
 *
 * A value carries its place alone, as there are many of them; the settings of its file tell the
 * rest. */
#ifndef DOORCOST_MODEL_SETTING_H
#define DOORCOST_MODEL_SETTING_H

#include "base/problem.h"

struct setting {
    const char *kind;    /* of its section: `lumber` */
    const char *title;   /* of its section: `lumber poplar` */
    const char *section; /* in its brackets: `[lumber poplar]` */
    const char *key;     /* as written, blanks between words reduced to one */
    uint32_t line;       /* of its value */
};

/* Of one file; all texts and the list live in the pool of the struct that holds them. */
struct settings {
    const char *file_name; /* by which the user knows the file */
    uint16_t file;         /* as in struct place; 0: nothing was read */
    struct setting *list;  /* lines ascend */
    size_t count;
};

/* The setting whose value stands in that line; NULL: it is of another file, or no key is there.
 * Borrowed. */
const struct setting *setting_at(const struct settings *settings, struct place place);

/* Whether a name is of the setting: its section (`lumber poplar`, `saw`), the kind of it
 * (`lumber`), or, of [shop], its key (`labor rate`). */
bool setting_named(const struct setting *setting, const char *name);

#endif
