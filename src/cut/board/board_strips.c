/* SPDX-License-Identifier: MIT */
/* First the parts into strips, then the strips into boards. Stocks of which there are only so many
 * are not looked at. */
#include "cut/board/board_strips.h"

#include "base/order.h"
#include "base/pool.h"
#include "cut/strip/strip_plan.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define MILLION 1000000

/* --- widths and lengths --- */

/* Distinct values, ascending. */
struct sizes {
    int64_t *v;
    size_t count;
};

static int by_value(const void *a, const void *b) {
    return order_by_number(*(const int64_t *)a, *(const int64_t *)b);
}

static void keep_distinct(struct sizes *s) {
    size_t kept = 0;
    if (s->count > 0) {
        qsort(s->v, s->count, sizeof *s->v, by_value);
    }
    for (size_t i = 0; i < s->count; i++) {
        if (kept == 0 || s->v[i] != s->v[kept - 1]) {
            s->v[kept++] = s->v[i];
        }
    }
    s->count = kept;
}

/* A strip planned but not yet in a board: parts of one width class, of a board length. */
struct loose {
    size_t class, length; /* into widths, lengths */
    size_t first, count;  /* into the workshop's pieces */
    bool used;
};

struct workshop {
    const struct board_job *job;
    struct pool pool;     /* holds all arrays */
    int64_t effort;       /* of one plan of lengths */
    struct sizes widths;  /* of parts: the classes of strips */
    struct sizes lengths; /* of boards */
    struct loose *loose;  /* room for every part on a strip of its own */
    size_t loose_count;
    size_t *pieces;
    size_t piece_count;
    struct cut_item *items;   /* room for the largest sub-job */
    struct cut_stock *stocks; /* the same */
    size_t *of;               /* items or stocks of the job behind them */
};

static bool is_of_length(const struct workshop *w, size_t stock, size_t length) {
    const struct cut_stock *const s = &w->job->stocks[stock];
    return s->copies == CUT_UNLIMITED && s->length == w->lengths.v[length];
}

/* The stock whose length is lengths[i]; any of them, for its usable length. */
static size_t stock_of_length(const struct workshop *w, size_t length) {
    size_t i = 0;
    while (!is_of_length(w, i, length)) {
        i++;
    }
    return i;
}

/* --- first level: parts into strips --- */

static void keep_strips(struct workshop *w, size_t class, const struct strip_plan *plan,
                        const size_t *length_of) {
    for (size_t b = 0; b < plan->board_count; b++) {
        const struct strip_board *const board = &plan->boards[b];
        const size_t first = w->piece_count;
        for (size_t i = 0; i < board->count; i++) {
            w->pieces[w->piece_count++] = w->of[plan->pieces[board->first + i]];
        }
        for (int64_t t = 0; t < board->times; t++) {
            w->loose[w->loose_count++] = (struct loose){.class = class,
                                                        .length = length_of[board->stock],
                                                        .first = first,
                                                        .count = board->count};
        }
    }
}

/* Plans the strips of one width from boards of length `only` (SIZE_MAX: of all). */
static enum cut_status plan_strips(struct workshop *w, size_t class, size_t only) {
    size_t length_of[CUT_STOCKS_MAX];
    size_t stocks = 0;
    size_t items = 0;
    for (size_t i = 0; i < w->job->item_count; i++) {
        if (w->job->items[i].width == w->widths.v[class] && w->job->items[i].demand > 0) {
            w->items[items] = w->job->items[i];
            w->of[items++] = i;
        }
    }
    for (size_t i = 0; i < w->lengths.count && stocks < CUT_STOCKS_MAX; i++) {
        const int64_t usable = board_usable_length(w->job, stock_of_length(w, i));
        if ((only == SIZE_MAX || only == i) && usable > 0) {
            w->stocks[stocks] = (struct cut_stock){.length = usable,
                                                   .width = 1,
                                                   .price = w->lengths.v[i] / MILLION + 1,
                                                   .copies = CUT_UNLIMITED};
            length_of[stocks++] = i;
        }
    }
    if (stocks == 0) {
        return CUT_NO_ROOM;
    }
    const struct cut_job job = {.kerf = w->job->kerf,
                                .stock_count = stocks,
                                .stocks = w->stocks,
                                .item_count = items,
                                .items = w->items};
    struct strip_plan *plan = NULL;
    const enum cut_status status = strip_plan_make(&job, w->effort, &plan);
    if (status == CUT_DONE) {
        keep_strips(w, class, plan, length_of);
    }
    strip_plan_free(plan);
    return status;
}

/* --- second level: strips into boards --- */

static size_t take_loose(struct workshop *w, size_t class, size_t length) {
    size_t i = 0;
    while (w->loose[i].used || w->loose[i].class != class || w->loose[i].length != length) {
        i++;
        assert(i < w->loose_count);
    }
    w->loose[i].used = true;
    return i;
}

/* A board of the stock with strips of the classes that `board` says. */
static void fill_board(struct workshop *w, struct board_plan *to, size_t stock,
                       const struct strip_plan *plan, const struct strip_board *board,
                       size_t length) {
    to->boards[to->board_count++] =
        (struct board_use){.stock = stock, .first = to->strip_count, .count = board->count};
    to->cost += w->job->stocks[stock].price;
    for (size_t s = 0; s < board->count; s++) {
        const size_t class = w->of[plan->pieces[board->first + s]];
        const struct loose *const loose = &w->loose[take_loose(w, class, length)];
        to->strips[to->strip_count++] = (struct board_strip){
            .width = w->widths.v[class], .first = to->piece_count, .count = loose->count};
        memcpy(&to->pieces[to->piece_count], &w->pieces[loose->first],
               loose->count * sizeof *to->pieces);
        to->piece_count += loose->count;
    }
}

/* Plans the loose strips of one length into boards of the widths stocked in that length. */
static enum cut_status plan_boards(struct workshop *w, struct board_plan *to, size_t length) {
    size_t stock_of[CUT_STOCKS_MAX];
    size_t stocks = 0;
    size_t items = 0;
    for (size_t c = 0; c < w->widths.count; c++) {
        int64_t demand = 0;
        for (size_t i = 0; i < w->loose_count; i++) {
            demand += w->loose[i].class == c && w->loose[i].length == length ? 1 : 0;
        }
        if (demand > 0) {
            w->items[items] =
                (struct cut_item){.length = w->widths.v[c], .width = 1, .demand = demand};
            w->of[items++] = c;
        }
    }
    if (items == 0) {
        return CUT_DONE;
    }
    for (size_t s = 0; s < w->job->stock_count && stocks < CUT_STOCKS_MAX; s++) {
        const int64_t usable = board_usable_width(w->job, s);
        if (is_of_length(w, s, length) && usable > 0) {
            w->stocks[stocks] = (struct cut_stock){.length = usable,
                                                   .width = 1,
                                                   .price = w->job->stocks[s].price,
                                                   .copies = CUT_UNLIMITED};
            stock_of[stocks++] = s;
        }
    }
    const struct cut_job job = {.kerf = w->job->kerf,
                                .stock_count = stocks,
                                .stocks = w->stocks,
                                .item_count = items,
                                .items = w->items};
    struct strip_plan *plan = NULL;
    const enum cut_status status =
        stocks == 0 ? CUT_NO_ROOM : strip_plan_make(&job, w->effort, &plan);
    for (size_t b = 0; status == CUT_DONE && b < plan->board_count; b++) {
        for (int64_t t = 0; t < plan->boards[b].times; t++) {
            fill_board(w, to, stock_of[plan->boards[b].stock], plan, &plan->boards[b], length);
        }
    }
    strip_plan_free(plan);
    return status;
}

/* --- one way, and the best of them --- */

/* A whole plan whose strips come from boards of length `only` (SIZE_MAX: of all lengths). */
static enum cut_status plan_one_way(struct workshop *w, size_t only, struct board_plan **out) {
    struct board_plan *plan = board_plan_new(w->job);
    enum cut_status status = plan == NULL ? CUT_NO_MEMORY : CUT_DONE;
    w->loose_count = 0;
    w->piece_count = 0;
    for (size_t c = 0; status == CUT_DONE && c < w->widths.count; c++) {
        status = plan_strips(w, c, only);
    }
    for (size_t l = 0; status == CUT_DONE && l < w->lengths.count; l++) {
        status = plan_boards(w, plan, l);
    }
    if (status != CUT_DONE) {
        board_plan_free(plan);
        plan = NULL;
    }
    *out = plan;
    return status;
}

static bool workshop_open(struct workshop *w, const struct board_job *job) {
    size_t parts = 0;
    for (size_t i = 0; i < job->item_count; i++) {
        parts += (size_t)job->items[i].demand;
    }
    pool_init(&w->pool);
    w->widths.v = pool_take(&w->pool, job->item_count, sizeof *w->widths.v);
    w->lengths.v = pool_take(&w->pool, job->stock_count, sizeof *w->lengths.v);
    w->loose = pool_take(&w->pool, parts, sizeof *w->loose);
    w->pieces = pool_take(&w->pool, parts, sizeof *w->pieces);
    w->items = pool_take(&w->pool, job->item_count, sizeof *w->items);
    w->stocks = pool_take(&w->pool, job->stock_count, sizeof *w->stocks);
    w->of = pool_take(&w->pool, job->item_count, sizeof *w->of);
    if (pool_failed(&w->pool)) {
        return false;
    }
    for (size_t i = 0; i < job->item_count; i++) {
        if (job->items[i].demand > 0) {
            w->widths.v[w->widths.count++] = job->items[i].width;
        }
    }
    for (size_t s = 0; s < job->stock_count; s++) {
        if (job->stocks[s].copies == CUT_UNLIMITED) {
            w->lengths.v[w->lengths.count++] = job->stocks[s].length;
        }
    }
    keep_distinct(&w->widths);
    keep_distinct(&w->lengths);
    return true;
}

/* A way that is worse or has no room is passed over; the fault of the last is told when none
 * works. */
static enum cut_status take_better(struct board_plan **best, struct board_plan *next,
                                   enum cut_status status) {
    if (status != CUT_DONE) {
        return *best != NULL && status != CUT_NO_MEMORY ? CUT_DONE : status;
    }
    if (*best == NULL || next->cost < (*best)->cost ||
        (next->cost == (*best)->cost && next->board_count < (*best)->board_count)) {
        board_plan_free(*best);
        *best = next;
    } else {
        board_plan_free(next);
    }
    return CUT_DONE;
}

enum cut_status board_by_strips(const struct board_job *job, int64_t effort,
                                struct board_plan **plan) {
    struct workshop w = {.job = job};
    enum cut_status status = CUT_NO_MEMORY;
    *plan = NULL;
    if (workshop_open(&w, job)) {
        const size_t ways = w.lengths.count + (w.lengths.count > 1 ? 1 : 0);
        w.effort = effort / (int64_t)(ways * (w.widths.count + 1) + 1);
        enum cut_status last = CUT_NO_ROOM;
        for (size_t way = 0; way < ways; way++) {
            struct board_plan *next = NULL;
            last = plan_one_way(&w, way < w.lengths.count ? way : SIZE_MAX, &next);
            last = take_better(plan, next, last);
            if (last == CUT_NO_MEMORY) {
                break;
            }
        }
        status = *plan != NULL && last != CUT_NO_MEMORY ? CUT_DONE : last;
    }
    pool_clear(&w.pool);
    if (status != CUT_DONE) {
        board_plan_free(*plan);
        *plan = NULL;
    }
    return status;
}
