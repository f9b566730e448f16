/* SPDX-License-Identifier: MIT */
/* What the files of the board relaxation share: columns, their pricing, the program. For
 * board_columns.c, board_price.c and board_relax.c only. Functions that give bool: true, memory
 * held. */
#ifndef DOORCOST_CUT_BOARD_BOARD_PRICE_H
#define DOORCOST_CUT_BOARD_BOARD_PRICE_H

#include "cut/board/board_columns.h"

/* Room for knapsacks of kinds or of classes. */
struct board_sack {
    struct strip_fill_item *items;
    int64_t *counts;
    size_t *of;
};

/* Adds a strip of a class with counts[kind] parts; a board of a stock with the strips from `first`
 * on. */
bool board_columns_strip(struct board_columns *c, size_t class, const int64_t *counts);
bool board_columns_add(struct board_columns *c, size_t stock, size_t first);
/* The usable width of a stock, grown by a kerf. */
int64_t board_columns_room(const struct board_columns *c, size_t stock);

/* What strips of every class and length are worth at most at the present values. */
bool board_price_strips(struct board_columns *c, const struct board_sack *sack, const int64_t *left,
                        int64_t *counts, bool *exact);
/* The most valuable board of a stock; n: strips of each class. ratio, work: room, one a class and
 * one more. */
void board_best(struct board_columns *c, size_t stock, int64_t *n, double *ratio, int64_t *work,
                int64_t *value, bool *exact);
/* The board of a stock with n[w] strips of each class, as a column. */
bool board_add(struct board_columns *c, const struct board_sack *sack, size_t stock,
               const int64_t *n, const int64_t *left, int64_t *rest, int64_t *counts);

#endif
