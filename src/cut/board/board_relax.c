/* SPDX-License-Identifier: MIT */
/* The relaxation over whole boards, and the bound that it proves. */
#include "cut/board/board_columns.h"

#include "base/int128.h"

#include <stdlib.h>
#include <string.h>

#define SCALE ((double)(1 << 30)) /* of a value of 1 */

/* --- the bound --- */

static int64_t divisor_of_prices(const struct board_job *job) {
    int64_t divisor = 0;
    for (size_t s = 0; s < job->stock_count; s++) {
        divisor = cut_common_divisor(divisor, job->stocks[s].price);
    }
    return divisor > 0 ? divisor : 1;
}

/* least: V x p / B of the stock where that is least, rounded up. */
static void raise_bound(struct board_columns *c, int128 least) {
    const int128 step = divisor_of_prices(c->job);
    const int128 up = int128_up(least, step) * step;
    if (up > c->bound && up < INT64_MAX) {
        c->bound = (int64_t)up;
    }
}

/* --- the relaxation --- */

struct relaxing {
    struct board_columns *c;
    const int64_t *left;
    int128 least; /* the best bound, not rounded; 0: none yet */
    struct cut_lp *lp;
    size_t in_lp; /* columns that the program has */
};

static bool put_column(struct relaxing *r, const struct column *column) {
    const struct board_columns *const c = r->c;
    size_t entries = 0;
    memset(c->cover, 0, c->kind_count * sizeof *c->cover);
    for (size_t i = column->first; i < column->first + column->count; i++) {
        c->cover[c->parts[i].kind] += (double)c->parts[i].times;
    }
    for (size_t k = 0; k < c->kind_count; k++) {
        if (c->cover[k] > 0 && c->row[k] != SIZE_MAX) {
            const double most = (double)r->left[k];
            c->entries[entries++] =
                (struct cut_lp_entry){c->row[k], c->cover[k] < most ? c->cover[k] : most};
        }
    }
    return cut_lp_add(r->lp, c->entries, entries,
                      (double)c->job->stocks[column->stock].price / c->unit);
}

static bool put_new_columns(struct relaxing *r) {
    for (; r->in_lp < r->c->column_count; r->in_lp++) {
        if (!put_column(r, &r->c->columns[r->in_lp])) {
            return false;
        }
    }
    return true;
}

/* Whether a board of so much value is worth more than its stock costs. */
static bool improves(const struct board_columns *c, size_t stock, double value) {
    return value > (double)c->job->stocks[stock].price / c->unit * SCALE * (1 + 1e-7);
}

/* What a column is worth at the program's own values. */
static double worth_of(const struct board_columns *c, const struct column *column) {
    double worth = 0;
    for (size_t i = column->first; i < column->first + column->count; i++) {
        worth += (double)c->duals[c->parts[i].kind] * (double)c->parts[i].times;
    }
    return worth;
}

/* Adds the boards that are worth more than they cost at the values priced; added: one of them is
 * at the program's own as well. */
static bool price_boards(struct relaxing *r, bool all, bool *added) {
    struct board_columns *const c = r->c;
    bool exact = true;
    bool known = false;
    int128 total = 0;
    int128 least = 0;
    *added = false;
    for (size_t k = 0; k < c->kind_count; k++) {
        total += (int128)c->values[k] * r->left[k];
    }
    if (!board_price_strips(c, r->left, &exact)) {
        return false;
    }
    for (size_t s = 0; s < c->job->stock_count; s++) {
        if (c->length_of[s] == SIZE_MAX) {
            continue;
        }
        const int64_t value = board_price_best(c, s, &exact);
        const int64_t price = c->job->stocks[s].price;
        if (value > 0) {
            const int128 cost = int128_up(total * price, value);
            least = !known || cost < least ? cost : least;
            known = true;
        }
        if (improves(c, s, (double)value)) {
            const size_t before = c->column_count;
            if (!board_price_add(c, s, r->left)) {
                return false;
            }
            *added = *added ||
                     (c->column_count > before && improves(c, s, worth_of(c, &c->columns[before])));
        }
    }
    if (exact && known && least > r->least) {
        r->least = least;
        memcpy(c->center, c->values, c->kind_count * sizeof *c->center);
        if (all) {
            raise_bound(c, least);
        }
    }
    return true;
}

/* Prices between the center and the values of now, and where that finds nothing, at those of now:
 * far fewer rounds than without (Wentges 1997). */
static bool price_round(struct relaxing *r, bool all, bool *added) {
    struct board_columns *const c = r->c;
    if (r->least > 0) {
        for (size_t k = 0; k < c->kind_count; k++) {
            c->values[k] = (c->center[k] + c->duals[k]) / 2;
        }
        if (!price_boards(r, all, added)) {
            return false;
        }
        if (*added) {
            return true;
        }
    }
    memcpy(c->values, c->duals, c->kind_count * sizeof *c->values);
    return price_boards(r, all, added);
}

static bool open_relaxing(struct relaxing *r) {
    const struct board_columns *const c = r->c;
    size_t rows = 0;
    for (size_t k = 0; k < c->kind_count; k++) {
        c->row[k] = r->left[k] > 0 ? rows : SIZE_MAX;
        if (r->left[k] > 0) {
            c->numbers[rows++] = (double)r->left[k];
        }
    }
    r->lp = cut_lp_new(rows, c->numbers, rows);
    return r->lp != NULL && put_new_columns(r);
}

/* What the program costs, up to a price that boards can add up to. */
static int64_t cost_of(const struct relaxing *r) {
    double sum = 0;
    for (size_t k = 0; k < r->c->kind_count; k++) {
        sum += (double)r->c->duals[k] / SCALE * (double)r->left[k];
    }
    const int64_t step = divisor_of_prices(r->c->job);
    const int64_t cost = (int64_t)(sum * r->c->unit);
    return (cost + step - 1) / step * step;
}

/* Rounds of pricing for what a dive has left; all that is wanted gets as many as it takes. */
#define MOST_ROUNDS 4

bool board_columns_relax(struct board_columns *c, const int64_t *left, bool all, int64_t limit) {
    struct relaxing r = {.c = c, .left = left};
    bool held = open_relaxing(&r);
    bool added = true;
    bool solved = true;
    for (int round = 0; held && added && solved && (all || round < MOST_ROUNDS); round++) {
        solved = cut_lp_solve(r.lp, limit > c->spent ? limit - c->spent : 0, &c->spent);
        cut_lp_duals(r.lp, c->numbers);
        for (size_t k = 0; k < c->kind_count; k++) {
            const double dual = c->row[k] == SIZE_MAX ? 0 : c->numbers[c->row[k]];
            c->duals[k] = dual > 0 ? (int64_t)(dual * SCALE + 0.5) : 0;
        }
        if (all && solved && cost_of(&r) <= c->bound) {
            break; /* more columns would not raise the bound */
        }
        held = price_round(&r, all, &added) && put_new_columns(&r);
        solved = solved && c->spent < limit;
    }
    if (held && solved && added) {
        (void)cut_lp_solve(r.lp, limit > c->spent ? limit - c->spent : 0, &c->spent);
    }
    bool failed = !held;
    c->shares =
        array_grow(c->shares, &c->share_room, c->column_count + 1, sizeof *c->shares, &failed);
    if (!failed) {
        cut_lp_values(r.lp, c->shares);
    }
    cut_lp_free(r.lp);
    return !failed;
}
