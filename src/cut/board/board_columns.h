/* SPDX-License-Identifier: MIT */
/* Whole boards as columns of a linear program: each is a stock ripped into strips, each strip
 * crosscut into parts. For the files of this folder only.
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
 * It holds whatever v is: rounding and an unfinished search make it weaker, never wrong. Where
 * there are only so many boards of a stock, V is covered by the boards of the least p(s) / B(s)
 * first, no more than there are (board_cover_least). It is rounded up to a multiple of the common
 * divisor of the prices.
 *
 * Stocks of which there are only so many have a row of the program each, whose value is what one
 * board more would save. What one of them costs is taken a hair more than it does, by its area, so
 * that of plans which cost the same the one that cuts up less of them is liked.
 *
 * Functions that give bool: false: out of memory. */
#ifndef DOORCOST_CUT_BOARD_BOARD_COLUMNS_H
#define DOORCOST_CUT_BOARD_BOARD_COLUMNS_H

#include "base/pool.h"
#include "cut/board/board_plan.h"
#include "cut/common/cut_lp.h"
#include "cut/strip/strip_fill.h"

/* More strips of one width than these are valued by the first ones. */
enum { COLUMN_MOST_STRIPS = 8 };

/* Parts of one size. Sizes are grown by a kerf, as are the usable sizes of the stocks. */
struct board_kind {
    int64_t length, width, demand;
    size_t class; /* of its width */
};

/* So many parts of one kind, on one strip of the board. */
struct column_part {
    size_t kind;
    int64_t times; /* above 0 */
    size_t strip;  /* of the board, from 0 */
};

/* So many parts of one kind, on all strips of a board. */
struct column_cover {
    size_t kind;
    int64_t times; /* above 0 */
};

/* A board: its parts are board_columns.parts[first ... first + count - 1], strip by strip; kind by
 * kind they are board_columns.covers[cover_first ... cover_first + cover_count - 1]. */
struct column {
    size_t stock;
    size_t first, count;
    size_t cover_first, cover_count;
    size_t place; /* in the linear program under way; SIZE_MAX: not in it */
};

/* What a part of a kind is worth to the program now, and how many are left. */
struct board_want {
    double value, left;
};

struct board_columns {
    const struct board_job *job;
    struct pool pool; /* holds all arrays but columns, parts and shares */
    struct board_kind *kinds;
    size_t kind_count;
    size_t *kind_of;      /* of an item; SIZE_MAX: none wanted */
    int64_t *widths;      /* of the classes, grown */
    int64_t *most_strips; /* of a class that any stock holds side by side */
    size_t class_count;
    int64_t *lengths; /* distinct usable lengths, grown */
    size_t length_count;
    size_t *length_of; /* of a stock; SIZE_MAX: it holds nothing */
    int64_t *copies;   /* of a stock: boards that are not taken yet, or CUT_UNLIMITED */
    double *guide;     /* of a stock: its price in the program */
    double slack;      /* so much in all may the program's prices be too high */
    size_t limited;    /* stocks with copies */
    struct column *columns;
    size_t column_count, column_room;
    size_t single_count; /* the first ones, kind by kind: boards of one kind */
    struct column_part *parts;
    size_t part_count, part_room;
    struct column_cover *covers;
    size_t cover_count, cover_room;
    double *shares; /* how often each column is cut in the last relaxation, */
    double *top;    /* and in that of all that is wanted */
    size_t share_room, top_room;
    size_t top_count; /* columns that there were then; 0: not solved yet */
    double value;     /* what the last relaxation costs, */
    double top_value; /* and that one, */
    int64_t least;    /* up to a sum of prices */
    double unit;      /* the price that counts as 1 in the program: the mean of all */
    int64_t spent;    /* units of work */
    int64_t bound;    /* proven so far */
    int64_t stop;     /* a bound that ends the relaxation of all; INT64_MAX: it is proven in full */

    /* the last pricing */
    int64_t *values;      /* of the kinds */
    int64_t *strip_value; /* [length][class][n - 1]: what n strips are worth at most */
    int64_t *fill;        /* [length][class][kind]: the parts of that strip */
    int64_t *best;        /* [class]: strips of the most valuable board */

    /* the relaxation under way, all but numbers and entries one a kind */
    int64_t *duals;     /* values of the program now; those priced may be nearer to the center */
    int64_t *top_duals; /* those of the relaxation of all that is wanted */
    double *limit_duals,
        *top_limit_duals;     /* the same of the stocks: what one more saves, below 0 */
    size_t *limit_row;        /* of a stock; SIZE_MAX: it never runs out, or has */
    int64_t *center;          /* values that gave the best bound of this relaxation */
    struct board_want *wants; /* with the values of now */
    size_t *row;              /* of the program; SIZE_MAX: none of the kind is left */
    double *numbers;          /* one a row: demands and limits, then duals */
    struct cut_lp_entry *entries;

    /* room to work in */
    struct strip_fill_item *sack; /* the knapsack of a strip, */
    int64_t *sack_counts;         /* what goes into it, */
    size_t *sack_kind;            /* and the kind of each item */
    int64_t *counts, *rest;       /* of the kinds: parts of a strip, parts left for the next */
    int64_t *tried;               /* [class]: strips of the board looked at */
    size_t *order;                /* classes, most valuable first */
    double *ratio;                /* [class]: what a unit of its width is worth at most */
};

/* Fills *c, an empty one, with the job and a column for each kind by itself. The job is borrowed
 * until c is closed; every price must be above 0. Closed by its owner, also after a failure. */
bool board_columns_open(struct board_columns *c, const struct board_job *job)
    __attribute__((warn_unused_result));
/* Frees what the columns hold. */
void board_columns_close(struct board_columns *c);

/* The usable width of a stock, grown by a kerf. */
int64_t board_columns_room(const struct board_columns *c, size_t stock);

/* Adds a part of the column to come. */
bool board_columns_part(struct board_columns *c, struct column_part part)
    __attribute__((warn_unused_result));
/* Adds the column of stock whose parts are those from number `first` on. */
bool board_columns_add(struct board_columns *c, size_t stock, size_t first)
    __attribute__((warn_unused_result));

/* The demand of each kind, and all boards there to be taken. left: one a kind. */
void board_columns_want_all(struct board_columns *c, int64_t *left);

/* What strips of every class and length are worth at most at c->values, cut from `left` parts of
 * each kind; closely: several strips of one width in full, which takes longer. *exact becomes false
 * where a search was cut short. */
bool board_price_strips(struct board_columns *c, const int64_t *left, bool closely, bool *exact)
    __attribute__((warn_unused_result));
/* The same for the length of one stock. */
bool board_price_length(struct board_columns *c, size_t stock, const int64_t *left, bool *exact)
    __attribute__((warn_unused_result));

/* The most valuable board of a stock, its strips in c->best; its value. *exact as above. */
int64_t board_price_best(struct board_columns *c, size_t stock, bool *exact);

/* Adds the board of a stock with the strips c->best, cut from `left`, as a column; none where it
 * would hold nothing. */
bool board_price_add(struct board_columns *c, size_t stock, const int64_t *left)
    __attribute__((warn_unused_result));

/* The columns taken, in order, as a plan without a bound; parts that are no longer wanted are not
 * cut. rest: one an item of the job, gets those that the plan has not; NULL: all are in it. Owned
 * by the caller; NULL: out of memory. */
struct board_plan *board_columns_write(const struct board_columns *c, const size_t *taken,
                                       size_t count, struct cut_item *rest)
    __attribute__((warn_unused_result));

/* Solves the relaxation for `left` parts of each kind, adding columns until none is worth more than
 * it costs, or spent passes limit; sets shares. all: left is all that is wanted, so that the bound
 * may be raised. */
bool board_columns_relax(struct board_columns *c, const int64_t *left, bool all, int64_t limit)
    __attribute__((warn_unused_result));

/* What the last relaxation costs, up to a price that boards can add up to: about the least that the
 * boards still to be taken cost. */
int64_t board_columns_least(const struct board_columns *c);

/* The bound of the job's plans alone, within effort units of work; *spent: the work done. */
bool board_relaxed_bound(const struct board_job *job, int64_t effort, int64_t *bound,
                         int64_t *spent) __attribute__((warn_unused_result));

/* Boards of a plan, which hold just what a job wants. */
struct board_part {
    const struct board_plan *plan;
    const size_t *boards; /* numbers in the plan */
    size_t count;
    int64_t cost;
};

/* The best plan found by dives through the relaxation within effort, and its bound. known: what a
 * plan at hand costs; the search ends at the bound. part: boards of a plan at hand, or NULL; where
 * the relaxation finds nothing cheaper than they are there is one dive, and the bound may be lower
 * than it could be. *plan: owned; NULL where none cheaper than known was found. *spent: the work
 * done. */
bool board_dive(const struct board_job *job, int64_t effort, int64_t known,
                const struct board_part *part, struct board_plan **plan, int64_t *bound,
                int64_t *spent) __attribute__((warn_unused_result));

#endif
