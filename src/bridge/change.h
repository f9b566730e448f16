/* SPDX-License-Identifier: MIT */
/* What two jobs say otherwise: keys of rates and job, rows and their cells. */
#ifndef DOORCOST_BRIDGE_CHANGE_H
#define DOORCOST_BRIDGE_CHANGE_H

#include "base/pool.h"
#include "bridge/group.h"

struct job_pair;  /* bridge/mix.h */
struct job_texts; /* read/job/job_texts.h */

/* One key, one cell of a row, or a whole row or section that only one of the two has. */
struct bridge_change {
    enum bridge_group group;
    const char *where; /* `[lumber poplar]`, or the id of a row */
    const char *what;  /* the key or column; NULL: the whole row or section */
    /* As written; NULL: not there. Of a whole row: `2 of 17 1/4 x 22 3/4`; of a section: "". */
    const char *older, *newer;
    bool row;
};

struct bridge_changes {
    struct bridge_change *list;
    size_t count;
    size_t
        first[BRIDGE_GROUP_COUNT + 1]; /* where the changes of a group begin, and at last count */
};

/* Lists all changes, by group, within it in the order of the files. What names another file, the
 * rates, the list and the woods, is none: what stands in these is compared. All lives in pool and
 * in the pair. false: memory is out. */
bool changes_make(struct bridge_changes *changes, const struct job_pair *pair, struct pool *pool)
    __attribute__((warn_unused_result));

/* The same of their rates alone, with the table of woods. The texts are borrowed. */
bool rates_changes_make(struct bridge_changes *changes, const struct job_texts *older,
                        const struct job_texts *newer, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
