/* SPDX-License-Identifier: MIT */
/* A buying list while it is made; for the files of buy_list alone. */
#ifndef DOORCOST_REPORT_WORDS_BUY_LISTER_H
#define DOORCOST_REPORT_WORDS_BUY_LISTER_H

#include "base/pool.h"
#include "report/words/buy_list.h"

struct lister {
    struct buy_list *list;
    struct pool
        *pool; /* of all texts; where it fails they are empty, and so is the list's maker told */
    const struct estimate *e;
};

/* Adds a line, whose texts may be NULL for none; what can be told of its figures is made here:
 * `unit` in the singular, `how_many`, `note`. Out of memory: the list has failed. */
void lister_add(struct lister *lister, struct buy_line line);
/* A text in the pool. */
const char *lister_keep(struct lister *lister, struct shown shown);
/* `4 thick`: of what no width and length stand beside. */
const char *lister_thick(struct lister *lister, const char *thickness);
/* Whether a figure is there and not 0. */
bool lister_some(const struct lister *lister, fig f);

/* The lumber, each with the boards that its plan has. */
void lister_add_lumber(struct lister *lister);
/* Sheets, and the banding of their edges. */
void lister_add_sheets(struct lister *lister);

#endif
