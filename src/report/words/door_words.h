/* SPDX-License-Identifier: MIT */
/* What a leaf and an opening are called on all papers, by their use and how they open. */
#ifndef DOORCOST_REPORT_WORDS_DOOR_WORDS_H
#define DOORCOST_REPORT_WORDS_DOOR_WORDS_H

#include "door/door.h"

/* "door", "drawer front", ...; static. */
const char *show_use(enum use use);

/* "door", "drawer front", "lift-up door", "tilt-out front", "bi-fold pair, hung leaf"; static. */
const char *show_door(const struct door *door);

/* What closes an opening, of one leaf or several: "door", "pair of lift-up doors", "bi-fold pair of
 * doors". In pool; "" when memory is out. */
const char *show_opening(struct pool *pool, const struct door *door);

/* `17 3/4 x 23 3/4`: of a leaf; of two that fold and differ in width, the left one first: `11 and
 * 12 1/2 x 23 3/4`. door: the one that is drawn. In pool; NULL when memory is out. */
const char *show_leaf_sizes(struct pool *pool, const struct door *door, enum length_unit unit);

/* What is noted of the row, once a row: of leaves that fold the one that is hung has it; "":
 * nothing. The row's. */
const char *show_note(const struct door *door);
/* The same of what is noted for the shop alone. */
const char *show_remark(const struct door *door);

/* "hinged", "lift up", ...; static. */
const char *show_opens(enum opens opens);

/* "hung leaf", "folding leaf"; static. NULL: not of leaves that fold. */
const char *show_leaf(const struct door *door);

/* Where a leaf hangs: "left", "pair", "top", "bottom", "hung leaf"; static. NULL: not said, or it
 * has no hinges. */
const char *show_hung(const struct door *door);

#endif
