/* SPDX-License-Identifier: MIT */
/* A job on the way from one to another: the texts of the older with those groups of keys and rows
 * that were taken from the newer. */
#ifndef DOORCOST_BRIDGE_MIX_H
#define DOORCOST_BRIDGE_MIX_H

#include "bridge/group.h"
#include "read/job/job_texts.h"

#include <stdint.h>

#define NO_ROW SIZE_MAX

/* Two jobs as texts, both without errors, and which rows of theirs have the same id. */
struct job_pair {
    const struct job_texts *older, *newer;
    size_t *newer_of; /* of each row of the older, its place in the newer list; or NO_ROW */
    size_t *older_of; /* likewise */
};

/* Finds the rows of the same id. Borrows both; memory of pool. false: memory is out. */
bool pair_make(struct job_pair *pair, const struct job_texts *older, const struct job_texts *newer,
               struct pool *pool) __attribute__((warn_unused_result));

/* Fills mix with the older job's texts, and the newer's for each group g whose bit 1 << g is in
 * taken. With all bits it says what the newer says, but that sections may stand in another order.
 * What mix points to lives in pool and in the pair. false: memory is out. */
bool mix_make(struct job_texts *mix, const struct job_pair *pair, unsigned taken, struct pool *pool)
    __attribute__((warn_unused_result));

/* The section of ini that another file has too; NULL: it has none. */
const struct ini_section *mix_section(const struct ini *ini, const struct ini_section *like);

/* The key of that name of a section, which may be NULL; NULL: none. */
const struct ini_key *mix_key(const struct ini_section *section, const char *name);

/* The column of that heading; -1: the list has none. */
long mix_column(const struct table *list, const char *heading);

/* The text of a row in a column, which may be -1; "": nothing. */
const char *mix_cell(const struct table_row *row, long column);

#endif
