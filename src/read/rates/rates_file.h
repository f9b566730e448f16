/* SPDX-License-Identifier: MIT */
/* Reads a rates file with all that it names. */
#ifndef DOORCOST_READ_RATES_RATES_FILE_H
#define DOORCOST_READ_RATES_RATES_FILE_H

#include "model/rate_change.h"
#include "model/rates.h"
#include "read/file/ini.h"
#include "read/file/table.h"

/* Reads a rates file and the woods table that it names; every fault goes to problems.
 * path: as the user wrote it or as it stands in the job file, already resolved.  rates is always
 * left so that rates_clear may be called. false: out of memory; whether the file was right is asked
 * of problems. */
bool rates_read(struct rates *rates, const char *path, struct problems *problems)
    __attribute__((warn_unused_result));

/* What is read in place of a file as it stands. */
struct rates_instead {
    const struct ini *ini;              /* what the file holds; NULL: the file is read */
    const struct table *woods;          /* likewise of the table of woods */
    const struct table *rack;           /* likewise of what is on the rack */
    const struct rate_changes *changes; /* read as if the file had it so; NULL: nothing */
};

/* What was read, as texts; in the pool of problems. */
struct rates_texts {
    struct ini ini; /* not `open`: the file could not be read */
    struct table woods, rack;
};

/* As rates_read, where another file names the rates. asked: the place that names them. */
bool rates_read_from(struct rates *rates, const char *path, struct place asked,
                     struct rates_instead instead, struct rates_texts *texts,
                     struct problems *problems) __attribute__((warn_unused_result));

/* Frees all that was read; rates is empty after. */
void rates_clear(struct rates *rates);

#endif
