/* SPDX-License-Identifier: MIT */
/* A cutting plan for the boards of one lumber: which boards to buy, the strips to rip from each,
 * and the parts to crosscut from each strip.
 *
 * A board loses its end trim at both ends, a share of its length to defects, and an edge at both
 * sides when it is straightened; what is left is ripped into strips as wide as the rough parts, and
 * every strip is crosscut into parts of that width.  Or it is crosscut first: into segments as long
 * as the rough parts, and every segment is ripped into parts of that length. A segment is then what
 * is called a strip here: it lies across the board.  Sizes are integers of one unit, any unit;
 * prices integers of one unit. Of a stock with copies there are only so many, as on a rack.
 *
 * The plan is the cheapest of several: for each board length by itself and for all lengths
 * together, the strips of each width are planned by column generation (cut/strip_plan.h), then the
 * strips of each length are planned into boards of the stocked widths the same way; and dives
 * through a relaxation of whole boards (board_columns.h). The bound holds for every plan of this
 * kind. Method: docs/cutting.md. */
#ifndef DOORCOST_CUT_BOARD_BOARD_PLAN_H
#define DOORCOST_CUT_BOARD_BOARD_PLAN_H

#include "base/int128.h"
#include "cut/common/cut_stock.h"

struct board_job {
    int64_t kerf;                   /* 0 or more */
    int64_t end_trim;               /* of each end */
    int64_t edge;                   /* taken off each side when the board is straightened */
    int64_t defects;                /* share of the length, in millionths, 0 to 900 000 */
    bool crosscut_first;            /* into segments, which are ripped; else ripped into strips */
    const struct cut_stock *stocks; /* boards: length, width, price, copies */
    size_t stock_count;
    size_t sawn_count;            /* of the stocks the last so many give all of their size: neither
                                     ends nor edges nor defects come off them */
    const struct cut_item *items; /* rough parts: length, width, demand; `turn` is not looked at */
    size_t item_count;
};

/* A strip of a board: its parts are plan->pieces[first ... first + count - 1], items of the job, in
 * the order of the cuts. */
struct board_strip {
    int64_t width; /* of a segment: its length, along the board */
    size_t first, count;
};

/* A board: its strips are plan->strips[first ... first + count - 1], in the order of its cuts. */
struct board_use {
    size_t stock;
    size_t first, count;
};

struct board_plan {
    struct board_use *boards;
    size_t board_count;
    struct board_strip *strips;
    size_t strip_count;
    size_t *pieces;
    size_t piece_count;
    int64_t cost, bound;
};

/* An empty plan with room for all that the job wants, each part on a board of its own. Demands add
 * up to CUT_PIECES_MAX at most. NULL: out of memory. */
struct board_plan *board_plan_new(const struct board_job *job) __attribute__((warn_unused_result));

/* Adds a copy of a board of another plan of the same stocks and items, and its price. */
void board_plan_add(const struct board_job *job, struct board_plan *to,
                    const struct board_plan *from, size_t board);

/* What comes off each end of a board of that stock, in the unit of the job: nothing where it is
 * sawn. */
int64_t board_end_trim(const struct board_job *job, size_t stock);
/* The same off each of its edges. */
int64_t board_edge(const struct board_job *job, size_t stock);

/* What a stock (its place in job->stocks) leaves along it, in the unit of the job: its length
 * without end trims and defects. 0: nothing. */
int64_t board_usable_length(const struct board_job *job, size_t stock);
/* The same across it: its width without the straightened edges. */
int64_t board_usable_width(const struct board_job *job, size_t stock);

/* Plans the boards. effort: units of work, see cut_stock.h. Gives CUT_DONE and *plan (owned);
 * CUT_BAD_INPUT where there are no stocks, more than CUT_STOCKS_MAX, or more than CUT_PIECES_MAX
 * parts in all; CUT_NO_ROOM where a part fits no stock; CUT_SHORT where one fits limited stocks
 * alone and no plan with so few of them was found; CUT_NO_MEMORY. *plan is NULL then. */
enum cut_status board_plan_make(const struct board_job *job, int64_t effort,
                                struct board_plan **plan) __attribute__((warn_unused_result));
/* Frees a plan with all that it holds; NULL is accepted. */
void board_plan_free(struct board_plan *plan);

/* A cost that no plan of the job comes under: all parts with a kerf each way against the room of
 * the boards, at the cheapest room there is. */
int64_t board_plan_bound(const struct board_job *job);

/* The least that boards cost which hold `need` in all, each `room` of its stock, fractions of a
 * board allowed and no more of one than there are: up to a whole price. room: one a stock, 0 or
 * more, below 2^126 times any price. *known: whether all boards hold that much. */
int128 board_cover_least(const struct board_job *job, const int128 *room, int128 need, bool *known);

/* Looks at a plan by itself: every part present as often as wanted, of its strip's width and within
 * its length (crosscut first: of its segment's length, within its width), every strip within its
 * board, kerfs kept, no more boards of a stock than there are, the cost the sum of the prices, the
 * bound not above it. NULL: good; else the
 * fault, static. */
const char *board_plan_check(const struct board_job *job, const struct board_plan *plan);

#endif
