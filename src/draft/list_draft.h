/* SPDX-License-Identifier: MIT */
/* A list of doors to fill in: the columns that a shop uses, and what each cell may hold, as the
 * reader's tables have it. */
#ifndef DOORCOST_DRAFT_LIST_DRAFT_H
#define DOORCOST_DRAFT_LIST_DRAFT_H

#include "base/pool.h"
#include "model/rates.h"

enum list_cell { LIST_WORDS, LIST_SIZE, LIST_COUNT, LIST_CHOICE };

#define LIST_MOST_COLUMNS ((size_t)16)

/* Texts are borrowed from the reader's tables or the rates. */
struct list_draft_column {
    const char *name, *help;
    enum list_cell kind;
    int64_t low, high;          /* of a size, in nm, or of a count */
    const char *const *choices; /* of a choice */
    size_t choice_count;
    const char *example; /* what the row that shows how has; "": nothing */
};

struct list_draft {
    enum length_unit unit;
    struct list_draft_column columns[LIST_MOST_COLUMNS];
    size_t count;
};

/* Makes a list for a shop of these rates, which are borrowed, in that unit. Memory of pool. false:
 * it is out. */
bool list_draft_make(struct list_draft *list, const struct rates *rates, enum length_unit unit,
                     struct pool *pool) __attribute__((warn_unused_result));

/* The list as comma-separated values. In pool; NULL when memory is out. */
const char *list_draft_csv(const struct list_draft *list, struct pool *pool);

#endif
