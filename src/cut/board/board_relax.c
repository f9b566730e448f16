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

/* least: what boards that are worth V in all cost at least. */
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

static double price_of(const struct board_columns *c, const struct column *column) {
    return c->guide[column->stock];
}

/* Whether a column may be cut once more. */
static bool is_there(const struct board_columns *c, const struct column *column) {
    return c->copies[column->stock] != 0;
}

/* Puts a column into the program; no more of a part than is left counts. */
static bool put_column(struct relaxing *r, struct column *column) {
    const struct board_columns *const c = r->c;
    size_t entries = 0;
    if (column->place != SIZE_MAX) {
        return true;
    }
    for (size_t i = column->cover_first; i < column->cover_first + column->cover_count; i++) {
        const struct column_cover *const cover = &c->covers[i];
        const int64_t left = r->left[cover->kind];
        if (left > 0) {
            c->entries[entries++] = (struct cut_lp_entry){
                c->row[cover->kind], (double)(cover->times < left ? cover->times : left)};
        }
    }
    if (c->limit_row[column->stock] != SIZE_MAX) {
        c->entries[entries++] = (struct cut_lp_entry){c->limit_row[column->stock], 1};
    }
    column->place = r->in_lp++;
    return cut_lp_add(r->lp, c->entries, entries, price_of(c, column));
}

/* What a column is worth at the values of the last program, for what is left. */
static double worth_of(const struct board_columns *c, const struct column *column) {
    double worth = 0;
    for (size_t i = column->cover_first; i < column->cover_first + column->cover_count; i++) {
        const struct column_cover *const cover = &c->covers[i];
        const struct board_want *const want = &c->wants[cover->kind];
        const double times = (double)cover->times;
        worth += want->value * (times < want->left ? times : want->left);
    }
    return worth + c->limit_duals[column->stock];
}

/* Puts all columns into the program that are worth more than `least` of what they cost. *some:
 * there was one. */
static bool put_worthy(struct relaxing *r, double least, bool *some) {
    struct board_columns *const c = r->c;
    *some = false;
    for (size_t k = 0; k < c->kind_count; k++) {
        c->wants[k] = (struct board_want){(double)c->duals[k] / SCALE, (double)r->left[k]};
    }
    for (size_t i = 0; i < c->column_count; i++) {
        struct column *const column = &c->columns[i];
        if (column->place == SIZE_MAX && is_there(c, column) &&
            worth_of(c, column) > least * price_of(c, column)) {
            *some = true;
            if (!put_column(r, column)) {
                return false;
            }
        }
    }
    cut_spend(&c->spent, (int64_t)c->cover_count);
    return true;
}

/* For each kind that is left the board of nothing else that costs least a part, of those that never
 * run out: so there is always a way, but for parts that fit none of these. */
static bool put_singles(struct relaxing *r) {
    struct board_columns *const c = r->c;
    for (size_t i = 0; i < c->single_count;) {
        const size_t kind = c->covers[c->columns[i].cover_first].kind;
        size_t best = SIZE_MAX;
        double best_price = 0;
        for (; i < c->single_count && c->covers[c->columns[i].cover_first].kind == kind; i++) {
            const int64_t times = c->covers[c->columns[i].cover_first].times;
            const int64_t left = r->left[kind];
            const double price =
                price_of(c, &c->columns[i]) / (double)(times < left ? times : left);
            const bool never_out = c->copies[c->columns[i].stock] == CUT_UNLIMITED;
            if (left > 0 && never_out && (best == SIZE_MAX || price < best_price)) {
                best = i;
                best_price = price;
            }
        }
        if (best != SIZE_MAX && !put_column(r, &c->columns[best])) {
            return false;
        }
    }
    return true;
}

/* Whether a board of so much value, less that of its stock, is worth more than its stock costs. */
static bool improves(const struct board_columns *c, size_t stock, double value) {
    return value > c->guide[stock] * (1 + 1e-7);
}

/* Adds the boards that are worth more than they cost at the values priced; added: one of them is
 * at the program's own as well.  closely: for the bound alone, which several strips of one width
 * then raise further. */
static bool price_boards(struct relaxing *r, bool all, bool closely, bool *added) {
    struct board_columns *const c = r->c;
    bool exact = true;
    bool known = false;
    int128 total = 0;
    int128 worth[CUT_STOCKS_MAX] = {0};
    *added = false;
    for (size_t k = 0; k < c->kind_count; k++) {
        total += (int128)c->values[k] * r->left[k];
    }
    if (!board_price_strips(c, r->left, closely, &exact)) {
        return false;
    }
    for (size_t s = 0; s < c->job->stock_count; s++) {
        if (c->length_of[s] == SIZE_MAX || c->copies[s] == 0) {
            continue;
        }
        const int64_t value = board_price_best(c, s, &exact);
        worth[s] = value;
        if (!closely && improves(c, s, (double)value / SCALE + c->limit_duals[s])) {
            const size_t before = c->column_count;
            if (!board_price_add(c, s, r->left)) {
                return false;
            }
            if (c->column_count > before) {
                *added = *added || improves(c, s, worth_of(c, &c->columns[before]));
                if (!put_column(r, &c->columns[before])) {
                    return false;
                }
            }
        }
    }
    const int128 least = board_cover_least(c->job, worth, total, &known);
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
        if (!price_boards(r, all, false, added)) {
            return false;
        }
        if (*added) {
            return true;
        }
    }
    memcpy(c->values, c->duals, c->kind_count * sizeof *c->values);
    return price_boards(r, all, false, added);
}

/* A program with a few columns that are likely to be of use, by the values of the last one; without
 * one, with all. */
static bool open_relaxing(struct relaxing *r) {
    struct board_columns *const c = r->c;
    size_t rows = 0;
    bool some = false;
    for (size_t k = 0; k < c->kind_count; k++) {
        c->row[k] = r->left[k] > 0 ? rows : SIZE_MAX;
        if (r->left[k] > 0) {
            c->numbers[rows++] = (double)r->left[k];
        }
    }
    for (size_t i = 0; i < c->column_count; i++) {
        c->columns[i].place = SIZE_MAX;
    }
    const size_t at_most = rows;
    for (size_t s = 0; s < c->job->stock_count; s++) {
        const bool limited = c->copies[s] > 0 && c->length_of[s] != SIZE_MAX;
        c->limit_row[s] = limited ? rows : SIZE_MAX;
        if (limited) {
            c->numbers[rows++] = (double)c->copies[s];
        }
    }
    r->lp = cut_lp_new(rows, c->numbers, at_most);
    return r->lp != NULL && put_singles(r) && put_worthy(r, 0.97, &some);
}

static void take_duals(struct relaxing *r) {
    struct board_columns *const c = r->c;
    double sum = 0;
    cut_lp_duals(r->lp, c->numbers);
    for (size_t k = 0; k < c->kind_count; k++) {
        const double dual = c->row[k] == SIZE_MAX ? 0 : c->numbers[c->row[k]];
        c->duals[k] = dual > 0 ? (int64_t)(dual * SCALE + 0.5) : 0;
        sum += (double)c->duals[k] / SCALE * (double)r->left[k];
    }
    for (size_t s = 0; s < c->job->stock_count; s++) {
        const double dual = c->limit_row[s] == SIZE_MAX ? 0 : c->numbers[c->limit_row[s]];
        c->limit_duals[s] = dual < 0 ? dual : 0;
        sum += c->limit_row[s] == SIZE_MAX ? 0 : c->limit_duals[s] * (double)c->copies[s];
    }
    c->value = sum * c->unit;
}

/* Solves the program, and again with columns that it lacks, until it wants none of those known.
 * *solved: that is so, within the limit. */
static bool solve(struct relaxing *r, int64_t limit, bool *solved) {
    struct board_columns *const c = r->c;
    bool some = true;
    *solved = true;
    while (some && *solved) {
        *solved = cut_lp_solve(r->lp, limit > c->spent ? limit - c->spent : 0, &c->spent);
        take_duals(r);
        if (!put_worthy(r, 1 + 1e-7, &some)) {
            return false;
        }
    }
    return true;
}

int64_t board_columns_least(const struct board_columns *c) {
    const int64_t step = divisor_of_prices(c->job);
    /* a hair less, as the program is solved in floating point */
    const int64_t cost = (int64_t)(c->value * (1 - 1e-7) - c->slack);
    return (cost + step - 1) / step * step;
}

/* How often the program cuts each column. */
static bool take_shares(struct relaxing *r) {
    struct board_columns *const c = r->c;
    bool failed = false;
    double *const values = calloc(r->in_lp + 1, sizeof *values);
    c->shares =
        array_grow(c->shares, &c->share_room, c->column_count + 1, sizeof *c->shares, &failed);
    if (values == NULL || failed) {
        free(values);
        return false;
    }
    cut_lp_values(r->lp, values);
    for (size_t i = 0; i < c->column_count; i++) {
        c->shares[i] = c->columns[i].place == SIZE_MAX ? 0 : values[c->columns[i].place];
    }
    free(values);
    return true;
}

/* Rounds of pricing for what a dive has left; all that is wanted gets as many as it takes. */
#define MOST_ROUNDS 4

static bool relax(struct relaxing *r, bool all, int64_t limit) {
    struct board_columns *const c = r->c;
    bool added = true;
    bool solved = true;
    bool ignored = false;
    bool held = open_relaxing(r) && solve(r, limit, &solved);
    for (int round = 0; held && added && solved && (all || round < MOST_ROUNDS); round++) {
        if (all && (board_columns_least(c) <= c->bound || c->bound >= c->stop)) {
            break; /* more columns would not raise the bound, or it is as high as it need be */
        }
        held = price_round(r, all, &added) && (!added || solve(r, limit, &solved));
        solved = solved && c->spent < limit;
    }
    if (held && all && c->stop == INT64_MAX && board_columns_least(c) > c->bound) {
        memcpy(c->values, r->least > 0 && added ? c->center : c->duals,
               c->kind_count * sizeof *c->values);
        held = price_boards(r, true, true, &ignored);
    }
    return held && take_shares(r);
}

/* The relaxation of all that is wanted, kept for later dives: columns found since change nothing of
 * it. */
static bool keep_top(struct board_columns *c) {
    bool failed = false;
    c->top = array_grow(c->top, &c->top_room, c->column_count + 1, sizeof *c->top, &failed);
    if (failed) {
        return false;
    }
    c->top_count = c->column_count;
    c->top_value = c->value;
    c->least = board_columns_least(c);
    memcpy(c->top, c->shares, c->column_count * sizeof *c->top);
    memcpy(c->top_duals, c->duals, c->kind_count * sizeof *c->top_duals);
    memcpy(c->top_limit_duals, c->limit_duals, c->job->stock_count * sizeof *c->top_limit_duals);
    return true;
}

static bool give_top(struct board_columns *c) {
    bool failed = false;
    c->shares =
        array_grow(c->shares, &c->share_room, c->column_count + 1, sizeof *c->shares, &failed);
    if (failed) {
        return false;
    }
    c->value = c->top_value;
    memset(c->shares, 0, c->column_count * sizeof *c->shares);
    memcpy(c->shares, c->top, c->top_count * sizeof *c->shares);
    memcpy(c->duals, c->top_duals, c->kind_count * sizeof *c->duals);
    memcpy(c->limit_duals, c->top_limit_duals, c->job->stock_count * sizeof *c->limit_duals);
    return true;
}

bool board_columns_relax(struct board_columns *c, const int64_t *left, bool all, int64_t limit) {
    struct relaxing r = {.c = c, .left = left};
    if (all && c->top_count > 0) {
        return give_top(c);
    }
    const bool held = relax(&r, all, limit);
    cut_lp_free(r.lp);
    return held && (!all || keep_top(c));
}
