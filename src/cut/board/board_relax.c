/* SPDX-License-Identifier: MIT */
/* The relaxation over whole boards, and the bound that it proves. */
#include "cut/board/board_price.h"

#include "base/int128.h"
#include "base/pool.h"
#include "cut/common/cut_lp.h"
#include "cut/strip/strip_fill.h"

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
    int64_t *duals;  /* values of the program now; those priced may be nearer to the center */
    int64_t *center; /* values that gave the best bound of this relaxation */
    int128 least;    /* that bound, not rounded; 0: none yet */
    struct cut_lp *lp;
    size_t *row; /* of a kind, SIZE_MAX: none left */
    double *numbers;
    struct cut_lp_entry *entries;
    double *cover; /* of a kind, for one column */
    struct board_sack sack;
    int64_t *n, *rest, *counts, *work;
    double *ratio;
    size_t rows, in_lp;
};

static bool put_column(struct relaxing *r, size_t column) {
    const struct board_columns *const c = r->c;
    const struct column *const col = &c->columns[column];
    size_t entries = 0;
    memset(r->cover, 0, c->kind_count * sizeof *r->cover);
    for (size_t s = 0; s < col->count; s++) {
        const struct column_strip *const strip = &c->strips[col->first + s];
        for (size_t i = 0; i < strip->count; i++) {
            r->cover[c->parts[strip->first + i].kind] += (double)c->parts[strip->first + i].times;
        }
    }
    for (size_t k = 0; k < c->kind_count; k++) {
        if (r->cover[k] > 0 && r->row[k] != SIZE_MAX) {
            const double most = (double)r->left[k];
            r->entries[entries++] =
                (struct cut_lp_entry){r->row[k], r->cover[k] < most ? r->cover[k] : most};
        }
    }
    return cut_lp_add(r->lp, r->entries, entries,
                      (double)c->job->stocks[col->stock].price / c->unit);
}

static bool put_new_columns(struct relaxing *r) {
    for (; r->in_lp < r->c->column_count; r->in_lp++) {
        if (!put_column(r, r->in_lp)) {
            return false;
        }
    }
    return true;
}

/* Whether a column is worth more than it costs at the program's values. */
static bool improves(const struct relaxing *r, size_t column) {
    const struct board_columns *const c = r->c;
    const struct column *const col = &c->columns[column];
    double worth = 0;
    for (size_t s = 0; s < col->count; s++) {
        const struct column_strip *const strip = &c->strips[col->first + s];
        for (size_t i = 0; i < strip->count; i++) {
            const struct column_part *const part = &c->parts[strip->first + i];
            worth += (double)r->duals[part->kind] * (double)part->times;
        }
    }
    return worth > (double)c->job->stocks[col->stock].price / c->unit * SCALE * (1 + 1e-7);
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
    if (!board_price_strips(c, &r->sack, r->left, r->counts, &exact)) {
        return false;
    }
    for (size_t s = 0; s < c->job->stock_count; s++) {
        int64_t value = 0;
        if (c->length_of[s] == SIZE_MAX) {
            continue;
        }
        board_best(c, s, r->n, r->ratio, r->work, &value, &exact);
        const int64_t price = c->job->stocks[s].price;
        if (value > 0) {
            const int128 cost = int128_up(total * price, value);
            least = !known || cost < least ? cost : least;
            known = true;
        }
        if ((double)value > (double)price / c->unit * SCALE * (1 + 1e-7)) {
            const size_t before = c->column_count;
            if (!board_add(c, &r->sack, s, r->n, r->left, r->rest, r->counts)) {
                return false;
            }
            *added = *added || (c->column_count > before && improves(r, before));
        }
    }
    if (exact && known && least > r->least) {
        r->least = least;
        memcpy(r->center, c->values, c->kind_count * sizeof *r->center);
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
            c->values[k] = (r->center[k] + r->duals[k]) / 2;
        }
        if (!price_boards(r, all, added)) {
            return false;
        }
        if (*added) {
            return true;
        }
    }
    memcpy(c->values, r->duals, c->kind_count * sizeof *c->values);
    return price_boards(r, all, added);
}

static bool open_relaxing(struct relaxing *r) {
    const struct board_columns *const c = r->c;
    const size_t kinds = c->kind_count + 1;
    const size_t wide = kinds > c->class_count ? kinds : c->class_count + 1;
    r->row = calloc(kinds, sizeof *r->row);
    r->numbers = calloc(kinds, sizeof *r->numbers);
    r->entries = calloc(kinds, sizeof *r->entries);
    r->cover = calloc(kinds, sizeof *r->cover);
    r->sack.items = calloc(wide, sizeof *r->sack.items);
    r->sack.counts = calloc(wide, sizeof *r->sack.counts);
    r->sack.of = calloc(wide, sizeof *r->sack.of);
    r->n = calloc(wide, sizeof *r->n);
    r->rest = calloc(kinds, sizeof *r->rest);
    r->counts = calloc(kinds, sizeof *r->counts);
    r->duals = calloc(kinds, sizeof *r->duals);
    r->work = calloc(wide, sizeof *r->work);
    r->ratio = calloc(wide + 1, sizeof *r->ratio);
    r->center = calloc(kinds, sizeof *r->center);
    if (r->work == NULL || r->ratio == NULL || r->duals == NULL || r->center == NULL ||
        r->row == NULL || r->numbers == NULL || r->entries == NULL || r->cover == NULL ||
        r->sack.items == NULL || r->sack.counts == NULL || r->sack.of == NULL || r->n == NULL ||
        r->rest == NULL || r->counts == NULL) {
        return false;
    }
    for (size_t k = 0; k < c->kind_count; k++) {
        r->row[k] = r->left[k] > 0 ? r->rows : SIZE_MAX;
        if (r->left[k] > 0) {
            r->numbers[r->rows++] = (double)r->left[k];
        }
    }
    r->lp = cut_lp_new(r->rows, r->numbers, r->rows);
    return r->lp != NULL && put_new_columns(r);
}

static void close_relaxing(struct relaxing *r) {
    cut_lp_free(r->lp);
    free(r->row);
    free(r->numbers);
    free(r->entries);
    free(r->cover);
    free(r->sack.items);
    free(r->sack.counts);
    free(r->sack.of);
    free(r->n);
    free(r->rest);
    free(r->duals);
    free(r->work);
    free(r->ratio);
    free(r->center);
    free(r->counts);
}

/* What the program costs, up to a price that boards can add up to. */
static int64_t cost_of(const struct relaxing *r) {
    double sum = 0;
    for (size_t k = 0; k < r->c->kind_count; k++) {
        sum += (double)r->duals[k] / SCALE * (double)r->left[k];
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
        cut_lp_duals(r.lp, r.numbers);
        for (size_t k = 0; k < c->kind_count; k++) {
            const double dual = r.row[k] == SIZE_MAX ? 0 : r.numbers[r.row[k]];
            r.duals[k] = dual > 0 ? (int64_t)(dual * SCALE + 0.5) : 0;
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
    held = held &&
           array_grow((void **)&c->shares, &c->share_room, c->column_count + 1, sizeof *c->shares);
    if (held) {
        cut_lp_values(r.lp, c->shares);
    }
    close_relaxing(&r);
    return held;
}
