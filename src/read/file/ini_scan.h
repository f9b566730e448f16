/* SPDX-License-Identifier: MIT */
/* The scan of an INI file: sections and keys with their places, and every line that is neither. */
#ifndef DOORCOST_READ_FILE_INI_SCAN_H
#define DOORCOST_READ_FILE_INI_SCAN_H

#include "read/file/ini.h"
#include "read/file/source.h"

/* A growing list of sections on the heap; each has its keys on the heap too. Only the arrays are
 * owned, all texts live in the pool of the problems. */
struct ini_scan {
    struct ini_section *sections;
    size_t count, room;
    size_t key_room; /* of the last section's keys */
    bool skipping;   /* below a head that was refused: its keys are not looked at */
    bool stray;      /* a line that is no head stood before any section */
};

/* Scans all lines of source. Values are raw: as they stand, quotes included, comment cut off.
 * false: memory is out. */
bool ini_scan(struct ini_scan *scan, const struct source *source, struct problems *problems)
    __attribute__((warn_unused_result));

/* Frees the arrays; a scan that was only set to zero is accepted. */
void ini_scan_clear(struct ini_scan *scan);

#endif
