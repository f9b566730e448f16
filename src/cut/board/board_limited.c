/* SPDX-License-Identifier: MIT */
#include "cut/board/board_limited.h"

#include "cut/board/board_columns.h"
#include "cut/board/board_repair.h"
#include "cut/board/board_strips.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

bool board_has_limited(const struct board_job *job) {
    bool limited = false;
    for (size_t s = 0; s < job->stock_count; s++) {
        limited = limited || job->stocks[s].copies != CUT_UNLIMITED;
    }
    return limited;
}

static double area_of(const struct cut_stock *stock) {
    return (double)stock->length * (double)stock->width;
}

/* --- filled first --- */

/* Values of parts: the largest area is worth so much, and a part that only limited stocks hold so
 * many times what its area is. */
#define AREA_WORTH 1e6
#define ONLY_TIMES 1024

struct filling {
    const struct board_job *job;
    struct board_columns c;
    int64_t *left;         /* of each kind */
    bool *only;            /* of each kind: no stock that never runs out holds it */
    double saves;          /* what a unit of value costs where it is bought */
    size_t *taken, *order; /* columns; limited stocks, the smallest first */
    size_t taken_count, order_count;
};

/* Whether a stock holds a part of a kind. */
static bool holds(const struct board_columns *c, size_t stock, const struct board_kind *kind) {
    return c->length_of[stock] != SIZE_MAX && kind->length <= c->lengths[c->length_of[stock]] &&
           kind->width <= board_columns_room(c, stock);
}

/* The cheapest area of the stocks that never run out, in money for a square of the job's unit. */
static double area_price(const struct filling *f) {
    double best = -1;
    for (size_t s = 0; s < f->job->stock_count; s++) {
        if (f->job->stocks[s].copies == CUT_UNLIMITED && f->c.length_of[s] != SIZE_MAX) {
            const double price =
                (double)f->job->stocks[s].price /
                ((double)f->c.lengths[f->c.length_of[s]] * (double)board_columns_room(&f->c, s));
            best = best < 0 || price < best ? price : best;
        }
    }
    return best < 0 ? 0 : best;
}

static void set_values(struct filling *f) {
    struct board_columns *const c = &f->c;
    double most = 1;
    for (size_t k = 0; k < c->kind_count; k++) {
        const double area = (double)c->kinds[k].length * (double)c->kinds[k].width;
        most = area > most ? area : most;
    }
    for (size_t k = 0; k < c->kind_count; k++) {
        const double area = (double)c->kinds[k].length * (double)c->kinds[k].width;
        f->only[k] = true;
        for (size_t s = 0; s < f->job->stock_count; s++) {
            f->only[k] = f->only[k] &&
                         (f->job->stocks[s].copies != CUT_UNLIMITED || !holds(c, s, &c->kinds[k]));
        }
        c->values[k] = ((int64_t)(area / most * AREA_WORTH) + 1) * (f->only[k] ? ONLY_TIMES : 1);
    }
    f->saves = area_price(f) * most / AREA_WORTH;
}

static void set_order(struct filling *f) {
    const struct cut_stock *const stocks = f->job->stocks;
    for (size_t s = 0; s < f->job->stock_count; s++) {
        if (stocks[s].copies == CUT_UNLIMITED || f->c.length_of[s] == SIZE_MAX) {
            continue;
        }
        size_t at = f->order_count++;
        for (; at > 0 && area_of(&stocks[f->order[at - 1]]) > area_of(&stocks[s]); at--) {
            f->order[at] = f->order[at - 1];
        }
        f->order[at] = s;
    }
}

/* Fills one board of a stock. *some: it is worth its price, and was filled. */
static bool fill_board(struct filling *f, size_t stock, bool *some) {
    struct board_columns *const c = &f->c;
    const size_t column = c->column_count;
    bool exact = true;
    *some = false;
    if (!board_price_length(c, stock, f->left, &exact)) {
        return false;
    }
    const int64_t value = board_price_best(c, stock, &exact);
    if (value <= 0 || (double)f->job->stocks[stock].price > f->saves * (double)value) {
        return true;
    }
    if (!board_price_add(c, stock, f->left)) {
        return false;
    }
    *some = c->column_count > column;
    if (*some) {
        const struct column *const added = &c->columns[column];
        for (size_t i = added->first; i < added->first + added->count; i++) {
            f->left[c->parts[i].kind] -= c->parts[i].times;
        }
        f->taken[f->taken_count++] = column;
    }
    return true;
}

static bool fill_all(struct filling *f) {
    for (size_t i = 0; i < f->order_count; i++) {
        bool some = true;
        for (int64_t n = 0; some && n < f->job->stocks[f->order[i]].copies; n++) {
            if (!fill_board(f, f->order[i], &some)) {
                return false;
            }
        }
    }
    return true;
}

/* The limited boards as a plan, and the job of the rest. NULL: out of memory. */
static struct board_plan *fill(const struct board_job *job, struct cut_item *rest) {
    struct filling f = {.job = job};
    struct board_plan *plan = NULL;
    size_t parts = 0;
    for (size_t i = 0; i < job->item_count; i++) {
        parts += (size_t)job->items[i].demand;
    }
    if (board_columns_open(&f.c, job)) {
        struct pool *const pool = &f.c.pool;
        f.left = pool_take(pool, f.c.kind_count, sizeof *f.left);
        f.only = pool_take(pool, f.c.kind_count, sizeof *f.only);
        f.taken = pool_take(pool, parts, sizeof *f.taken); /* no board is without a part */
        f.order = pool_take(pool, job->stock_count, sizeof *f.order);
        if (!pool_failed(pool)) {
            board_columns_want_all(&f.c, f.left);
            set_values(&f);
            set_order(&f);
            plan = fill_all(&f) ? board_columns_write(&f.c, f.taken, f.taken_count, rest) : NULL;
        }
    }
    board_columns_close(&f.c);
    return plan;
}

static bool any_wanted(const struct board_job *job) {
    bool any = false;
    for (size_t i = 0; i < job->item_count; i++) {
        any = any || job->items[i].demand > 0;
    }
    return any;
}

enum cut_status board_limited_first(const struct board_job *job, int64_t effort,
                                    struct board_plan **plan) {
    struct board_job bought = *job;
    struct board_plan *more = NULL;
    struct cut_item *const rest = calloc(job->item_count + 1, sizeof *rest);
    enum cut_status status = CUT_NO_MEMORY;
    *plan = rest == NULL ? NULL : fill(job, rest);
    if (*plan != NULL) {
        bought.items = rest;
        status = any_wanted(&bought) ? board_by_strips(&bought, effort, &more) : CUT_DONE;
    }
    for (size_t b = 0; more != NULL && b < more->board_count; b++) {
        board_plan_add(job, *plan, more, b);
    }
    if (status == CUT_DONE) {
        board_settle(job, *plan);
    } else {
        board_plan_free(*plan);
        *plan = NULL;
    }
    board_plan_free(more);
    free(rest);
    return status;
}

/* --- less of them --- */

/* What the largest limited board counts beside its price. */
#define AREA_COUNTS 100

/* Prices that tell plans which cost the same apart: so many times their own that areas of all
 * boards, of which there are no more than parts, count less than one. false: they are too high. */
static bool scale_prices(const struct board_job *job, struct cut_stock *stocks) {
    double most = 1;
    int64_t parts = 0;
    for (size_t i = 0; i < job->item_count; i++) {
        parts += job->items[i].demand;
    }
    const int64_t times = AREA_COUNTS * parts + 1;
    for (size_t s = 0; s < job->stock_count; s++) {
        const struct cut_stock *const stock = &job->stocks[s];
        most = stock->copies != CUT_UNLIMITED && area_of(stock) > most ? area_of(stock) : most;
    }
    for (size_t s = 0; s < job->stock_count; s++) {
        const bool limited = job->stocks[s].copies != CUT_UNLIMITED;
        if ((int128)job->stocks[s].price * times * (parts + 1) >= INT64_MAX / 2) {
            return false;
        }
        stocks[s] = job->stocks[s];
        stocks[s].price = stocks[s].price * times +
                          (limited ? (int64_t)(area_of(&stocks[s]) / most * AREA_COUNTS) : 0);
    }
    return true;
}

static int64_t cost_of(const struct board_job *job, const struct board_plan *plan) {
    int64_t cost = 0;
    for (size_t b = 0; b < plan->board_count; b++) {
        cost += job->stocks[plan->boards[b].stock].price;
    }
    return cost;
}

bool board_cut_less(const struct board_job *job, int64_t effort, struct board_plan **plan) {
    struct cut_stock stocks[CUT_STOCKS_MAX];
    struct board_job scaled = *job;
    struct board_plan *next = NULL;
    const int64_t bound = (*plan)->bound;
    int64_t ignored = 0;
    int64_t spent = 0;
    scaled.stocks = stocks;
    if (!board_has_limited(job) || !scale_prices(job, stocks)) {
        return true;
    }
    (*plan)->cost = cost_of(&scaled, *plan);
    (*plan)->bound = 0;
    bool held = board_dive(&scaled, effort / 2, (*plan)->cost, NULL, &next, &ignored, &spent);
    if (held && next != NULL) {
        board_plan_free(*plan);
        *plan = next;
        next->bound = 0;
    }
    held = held && board_repair(&scaled, effort / 2, plan);
    (*plan)->cost = cost_of(job, *plan);
    (*plan)->bound = bound;
    return held;
}

/* --- settled --- */

/* How long and wide a board has to be for its strips. */
static void needed(const struct board_job *job, const struct board_plan *plan,
                   const struct board_use *board, int64_t *along, int64_t *across) {
    *along = 0;
    *across = -job->kerf;
    for (size_t s = board->first; s < board->first + board->count; s++) {
        const struct board_strip *const strip = &plan->strips[s];
        int64_t used = -job->kerf;
        for (size_t i = 0; i < strip->count; i++) {
            used += job->items[plan->pieces[strip->first + i]].length + job->kerf;
        }
        *along = used > *along ? used : *along;
        *across += strip->width + job->kerf;
    }
}

/* Whether stock a is to be cut up rather than b. */
static bool is_better(const struct board_job *job, size_t a, size_t b) {
    const struct cut_stock *const x = &job->stocks[a];
    const struct cut_stock *const y = &job->stocks[b];
    return x->price != y->price ? x->price < y->price
                                : y->copies != CUT_UNLIMITED && area_of(x) < area_of(y);
}

/* Puts one board on a better stock; whether there was one. */
static bool settle_board(const struct board_job *job, struct board_plan *plan, size_t board,
                         int64_t *copies) {
    struct board_use *const use = &plan->boards[board];
    size_t best = use->stock;
    int64_t along;
    int64_t across;
    needed(job, plan, use, &along, &across);
    for (size_t s = 0; s < job->stock_count; s++) {
        if (copies[s] > 0 && board_usable_length(job, s) >= along &&
            board_usable_width(job, s) >= across && is_better(job, s, best)) {
            best = s;
        }
    }
    if (best == use->stock) {
        return false;
    }
    copies[use->stock] += copies[use->stock] >= 0 ? 1 : 0;
    copies[best]--;
    plan->cost += job->stocks[best].price - job->stocks[use->stock].price;
    use->stock = best;
    return true;
}

void board_settle(const struct board_job *job, struct board_plan *plan) {
    int64_t copies[CUT_STOCKS_MAX];
    bool moved = board_has_limited(job);
    assert(!job->crosscut_first);
    for (size_t s = 0; s < job->stock_count; s++) {
        copies[s] = job->stocks[s].copies;
    }
    for (size_t b = 0; b < plan->board_count; b++) {
        int64_t *const left = &copies[plan->boards[b].stock];
        *left -= *left > 0 ? 1 : 0;
    }
    while (moved) { /* a board that moves may make room for another */
        moved = false;
        for (size_t b = 0; b < plan->board_count; b++) {
            moved = settle_board(job, plan, b, copies) || moved;
        }
    }
}
