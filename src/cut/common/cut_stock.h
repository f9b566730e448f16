/* SPDX-License-Identifier: MIT */
/* What is to be cut from what: the input of the board planner (strip_plan.h), of the sheet
 * planner (sheet_plan.h) and of the checker (plan_check.h).
 *
 * True of all three:
 * - Sizes are integers of one unit, any unit (nanometers in a job). A kerf is taken between
 *   neighboring pieces and by every cut; a trim is taken off each end of a board, and off each
 *   of the four edges of a sheet that was not sawn before.
 * - Prices are integers of one unit (cents in a job, 1 to count pieces of stock).
 * - Nothing is printed, no global is kept, time is never asked: the same input and the same effort
 *   give the same plan on every machine with IEEE doubles.
 * - A job is borrowed, never changed, and need not outlive the call. A plan is owned by whoever
 *   asked for it and freed by its _free, which accepts NULL.
 * Method and measured results: docs/cutting.md. */
#ifndef DOORCOST_CUT_COMMON_CUT_STOCK_H
#define DOORCOST_CUT_COMMON_CUT_STOCK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Ranges that the planners accept; outside of them the answer is CUT_BAD_INPUT. */
#define CUT_SIZE_MAX   INT64_C(1000000000000) /* a kilometer in nanometers */
#define CUT_PRICE_MAX  INT64_C(1000000000000) /* for one piece of stock */
#define CUT_PIECES_MAX INT64_C(100000)        /* demands in all */
#define CUT_STOCKS_MAX ((size_t)128)

/* `copies` of a stock that never runs out. */
#define CUT_UNLIMITED INT64_C(-1)

/* Effort is counted in units of work, whatever the machine. So many take about a second on one
 * core of a server of 2022; it is also what is advised for one material of a job. */
#define CUT_EFFORT_SECOND INT64_C(1000000000)

enum cut_status {
    CUT_DONE,      /* the plan is complete */
    CUT_NO_MEMORY, /* an allocation failed; nothing is left behind */
    CUT_BAD_INPUT, /* a number is outside of its range */
    CUT_NO_ROOM,   /* an item fits none of the stocks, whichever way it may lie */
    CUT_SHORT      /* no plan was found within the limited copies of stock */
};

/* One size of board or sheet. */
struct cut_stock {
    int64_t length; /* 1 to CUT_SIZE_MAX */
    int64_t width;  /* the same; boards: not looked at */
    int64_t price;  /* of one piece, 0 to CUT_PRICE_MAX */
    int64_t copies; /* pieces at hand, or CUT_UNLIMITED */
};

/* One size of part. Items of equal size may be listed apart: they are planned as one. */
struct cut_item {
    int64_t length; /* 1 to CUT_SIZE_MAX, along the stock's length unless turned */
    int64_t width;  /* the same, along the stock's width; boards: not looked at */
    int64_t demand; /* pieces wanted, 0 or more */
    bool turn;      /* may be turned by 90 degrees; boards: not looked at */
};

struct cut_job {
    int64_t kerf; /* 0 to CUT_SIZE_MAX */
    int64_t trim; /* 0 to CUT_SIZE_MAX */
    size_t stock_count;
    const struct cut_stock *stocks;
    size_t item_count;
    const struct cut_item *items;
    size_t sawn_count; /* of the stocks the last so many are sheets with sawn edges, which are not
                          trimmed; boards: not looked at */
};

/* What is taken off each edge of a sheet of that stock. */
static inline int64_t cut_sheet_trim(const struct cut_job *job, size_t stock) {
    return stock + job->sawn_count < job->stock_count ? job->trim : 0;
}

#endif
