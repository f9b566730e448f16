/* SPDX-License-Identifier: MIT */
/* An INI file as sections and their keys, each with its place.
 *
 * Our own scan finds the sections, keys and lines and everything that is wrong with them; iniparser
 * then reads the values from a copy in memory that holds only the heads and keys found good, so
 * that it never meets what it would refuse as a whole or misread. */
#ifndef DOORCOST_READ_FILE_INI_H
#define DOORCOST_READ_FILE_INI_H

#include "base/problem.h"

#include <stdbool.h>
#include <stddef.h>

/* iniparser's load is quadratic: this many lines still take well under a second. */
#define INI_MOST_LINES   20000
#define INI_LONGEST_LINE ((size_t)1000) /* bytes */

struct ini_key {
    const char *name;   /* as written, blanks between words reduced to one */
    const char *value;  /* without comment and outer blanks, not empty; NULL: it was reported */
    struct place place; /* of the name */
    struct place value_place;
    const char
        *comment; /* behind the value in its line, without ';' and outer blanks; NULL: none */
    bool cut;     /* a ';' right behind the value, no blank between, ended it */
};

struct ini_section {
    const char *kind; /* `lumber` of [lumber poplar] */
    const char *name; /* `poplar`; "" for a section without a name */
    struct place place;
    struct ini_key *keys; /* in the order of the file; those without a value are left out */
    size_t count;
};

struct ini {
    struct ini_section *sections;
    size_t count;
    uint16_t file;
    bool open;  /* the file could be read */
    bool stray; /* a line that is no head stands before any section, which was reported */
};

/* Reads the file at path; all that ini holds lives in the pool of problems. asked: as for
 * source_read. false: memory is out. */
bool ini_read(struct ini *ini, const char *path, struct place asked, struct problems *problems)
    __attribute__((warn_unused_result));

/* The same of lines that were read. source: its lines are borrowed. */
struct source;
bool ini_read_lines(struct ini *ini, const struct source *source, struct problems *problems)
    __attribute__((warn_unused_result));

/* The key of that name, ASCII case ignored; NULL: the section has none. */
const struct ini_key *ini_key_find(const struct ini_section *section, const char *name);

#endif
