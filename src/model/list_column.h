/* SPDX-License-Identifier: MIT */
/* The columns of a list to fill in, on paper or in a workbook: those of the door list that a shop
 * needs at a visit. What it has only one of needs no column. */
#ifndef DOORCOST_MODEL_LIST_COLUMN_H
#define DOORCOST_MODEL_LIST_COLUMN_H

#include "model/rates.h"

/* The id and the note of the row that shows how, with which a list to fill in begins. */
#define LIST_EXAMPLE_ID   "example"
#define LIST_EXAMPLE_NOTE "shows how, is not read"

struct list_column {
    const char *name;
    bool size;                                 /* a length, in the unit of the list */
    bool (*wanted)(const struct rates *rates); /* NULL: always */
};

/* All columns but the note, which comes last, in their order; *count: how many. Static. */
const struct list_column *list_columns(size_t *count);

/* Whether a shop chooses among several styles; rates NULL: not known, it may. */
bool list_has_style(const struct rates *rates);
/* The same of finishes; rates NULL: no. */
bool list_has_finish(const struct rates *rates);
/* The same of glass. */
bool list_has_glass(const struct rates *rates);

#endif
