/* SPDX-License-Identifier: MIT */
/* Doors that something is cut or bored for, named in one cell of a list. */
#ifndef DOORCOST_REPORT_WORDS_DOOR_NAMES_H
#define DOORCOST_REPORT_WORDS_DOOR_NAMES_H

#include "base/pool.h"

#include <stddef.h>
#include <stdint.h>

/* Begins as {0}. */
struct door_names {
    const char *words; /* of pool; NULL: none yet, or memory is out */
    size_t count;      /* doors, also those that are not named */
};

/* Names one more door, `D1 2`, with how many of it; the first sixteen alone are named, as a cell is
 * to be read. pool: for the words; it tells whether memory is out. */
void door_names_add(struct door_names *names, struct pool *pool, const char *door, int64_t count);

/* All that was named: `D1 2, D2 1, 4 more`; in pool. */
const char *door_names_end(const struct door_names *names, struct pool *pool);

#endif
