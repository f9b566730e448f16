/* SPDX-License-Identifier: MIT */
/* Whole boards as columns of a linear program: each is a stock ripped into strips, each strip
 * crosscut into parts. For board_plan.c and board_dive.c only.
 *
 * Method: column generation in two levels (Gilmore, Gomory 1965). Given a value for each part, the
 * most valuable strip of each width and board length is a knapsack of lengths. n strips of a width
 * are worth n times that at most, and no more than the best filling of one strip n times as long
 * with parts that are wanted (the strips end to end are one such filling). The most valuable board
 * is then a choice of n for each width; all are solved exactly, in integers, so that no board is
 * worth more.
 *
 * Bound (Farley 1990). Let v be any values of the parts, B(s) the value of the most valuable board
 * of stock s, p(s) its price.  A plan buys boards worth at least V, the value of all parts; a board
 * of stock s is worth B(s) at most and costs p(s), so a plan costs V x min p(s) / B(s) at least.
 * It holds whatever v is: rounding and an unfinished search make it weaker, never wrong. It is
 * rounded up to a multiple of the common divisor of the prices. */
#ifndef DOORCOST_CUT_BOARD_BOARD_COLUMNS_H
#define DOORCOST_CUT_BOARD_BOARD_COLUMNS_H

#include "cut/board/board_plan.h"

/* More strips of one width than these are valued by the first ones. */
enum { COLUMN_MOST_STRIPS = 8 };

/* Parts of one size. Sizes are grown by a kerf, as are the usable sizes of the stocks. */
struct board_kind {
    int64_t length, width, demand;
    size_t class; /* of its width */
};

/* So many parts of one kind. */
struct column_part {
    size_t kind;
    int64_t times;
};

struct column_strip {
    size_t class;
    size_t first, count; /* into parts */
};

struct column {
    size_t stock;
    size_t first, count; /* into strips */
};

struct board_columns {
    const struct board_job *job;
    struct board_kind *kinds;
    size_t kind_count;
    size_t *kind_of;      /* of an item; SIZE_MAX: none wanted */
    int64_t *widths;      /* of the classes, grown */
    int64_t *most_strips; /* of a class that any stock holds side by side */
    size_t class_count;
    int64_t *lengths; /* distinct usable lengths, grown */
    size_t length_count;
    size_t *length_of; /* of a stock; SIZE_MAX: it holds nothing */
    struct column *columns;
    size_t column_count, column_room;
    struct column_strip *strips;
    size_t strip_count, strip_room;
    struct column_part *parts;
    size_t part_count, part_room;
    double *shares; /* how often each column is cut in the last relaxation */
    size_t share_room;
    double unit; /* the price that counts as 1 in the program */
    int64_t spent;
    int64_t bound; /* proven so far */
    /* the last pricing */
    int64_t *values;      /* of the kinds */
    int64_t *strip_value; /* [length][class][n - 1]: what n strips are worth at most */
    int64_t *fill;        /* [length][class][kind]: the parts of that strip */
};

/* Fills *c, an empty one. Every price must be above 0. It is cleared by its owner, also after a
 * failure. true: memory held. */
bool board_columns_open(struct board_columns *c, const struct board_job *job)
    __attribute__((warn_unused_result));
void board_columns_close(struct board_columns *c);

/* Solves the relaxation for `left` parts of each kind, adding columns until none is worth more than
 * it costs, or spent passes limit; sets shares. all: left is all that is wanted, so that the bound
 * may be raised. true: memory held. */
bool board_columns_relax(struct board_columns *c, const int64_t *left, bool all, int64_t limit)
    __attribute__((warn_unused_result));

/* The bound alone. Method and errors as of board_dive. */
bool board_relaxed_bound(const struct board_job *job, int64_t effort, int64_t *bound,
                         int64_t *spent) __attribute__((warn_unused_result));

/* The best plan found by dives through the relaxation within effort, and its bound. known: what a
 * plan at hand costs; the search ends at the bound. *plan: NULL where none was found. *spent: the
 * work done. true: memory held. */
bool board_dive(const struct board_job *job, int64_t effort, int64_t known,
                struct board_plan **plan, int64_t *bound, int64_t *spent)
    __attribute__((warn_unused_result));

#endif
