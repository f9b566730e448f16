/* SPDX-License-Identifier: MIT */
#include "stock/board_columns.h"

#include "base/pool.h"
#include "stock/cut/cut_cover.h"
#include "stock/cut/cut_lp.h"
#include "stock/cut/strip_fill.h"

#include <stdlib.h>
#include <string.h>

#define SCALE ((double)(1 << 30)) /* of a value of 1 */

/* --- the job made plain --- */

static size_t find_size(int64_t *sizes, size_t *count, int64_t size) {
    size_t i = 0;
    while (i < *count && sizes[i] != size) {
        i++;
    }
    if (i == *count) {
        sizes[(*count)++] = size;
    }
    return i;
}

static void take_items(struct board_columns *c) {
    const struct board_job *const job = c->job;
    for (size_t i = 0; i < job->item_count; i++) {
        const struct cut_item *const item = &job->items[i];
        c->kind_of[i] = SIZE_MAX;
        if (item->demand == 0) {
            continue;
        }
        const int64_t along = item->length + job->kerf;
        const int64_t across = item->width + job->kerf;
        size_t k = 0;
        while (k < c->kind_count && (c->kinds[k].length != along || c->kinds[k].width != across)) {
            k++;
        }
        if (k == c->kind_count) {
            c->kinds[c->kind_count++] =
                (struct board_kind){.length = along,
                                    .width = across,
                                    .class = find_size(c->widths, &c->class_count, across)};
        }
        c->kinds[k].demand += item->demand;
        c->kind_of[i] = k;
    }
}

static void take_stocks(struct board_columns *c) {
    const struct board_job *const job = c->job;
    double sum = 0;
    for (size_t s = 0; s < job->stock_count; s++) {
        const int64_t along = board_usable_length(job, s);
        const bool holds = along > 0 && board_usable_width(job, s) > 0;
        c->length_of[s] =
            holds ? find_size(c->lengths, &c->length_count, along + job->kerf) : SIZE_MAX;
        sum += (double)job->stocks[s].price;
    }
    c->unit = sum / (double)job->stock_count;
    for (size_t w = 0; w < c->class_count; w++) {
        for (size_t s = 0; s < job->stock_count; s++) {
            const int64_t fit = (board_usable_width(job, s) + job->kerf) / c->widths[w];
            c->most_strips[w] = fit > c->most_strips[w] ? fit : c->most_strips[w];
        }
    }
}

/* --- columns --- */

static bool add_strip(struct board_columns *c, size_t class, const int64_t *counts) {
    if (!array_grow((void **)&c->strips, &c->strip_room, c->strip_count + 1, sizeof *c->strips) ||
        !array_grow((void **)&c->parts, &c->part_room, c->part_count + c->kind_count,
                    sizeof *c->parts)) {
        return false;
    }
    struct column_strip *const strip = &c->strips[c->strip_count++];
    *strip = (struct column_strip){.class = class, .first = c->part_count};
    for (size_t k = 0; k < c->kind_count; k++) {
        if (c->kinds[k].class == class && counts[k] > 0) {
            c->parts[c->part_count++] = (struct column_part){.kind = k, .times = counts[k]};
            strip->count++;
        }
    }
    return true;
}

/* A column of the last strips added, from number `first` on. */
static bool add_column(struct board_columns *c, size_t stock, size_t first) {
    if (!array_grow((void **)&c->columns, &c->column_room, c->column_count + 1,
                    sizeof *c->columns)) {
        return false;
    }
    c->columns[c->column_count++] =
        (struct column){.stock = stock, .first = first, .count = c->strip_count - first};
    return true;
}

static int64_t room_across(const struct board_columns *c, size_t stock) {
    return board_usable_width(c->job, stock) + c->job->kerf;
}

/* A board of nothing but one kind, from each stock that holds it, so that any need can be met. */
static bool add_singles(struct board_columns *c) {
    int64_t *const counts = calloc(c->kind_count + 1, sizeof *counts);
    bool held = counts != NULL;
    for (size_t k = 0; held && k < c->kind_count; k++) {
        const struct board_kind *const kind = &c->kinds[k];
        for (size_t s = 0; held && s < c->job->stock_count; s++) {
            if (c->length_of[s] == SIZE_MAX || room_across(c, s) < kind->width ||
                c->lengths[c->length_of[s]] < kind->length) {
                continue;
            }
            const size_t first = c->strip_count;
            const int64_t fit = c->lengths[c->length_of[s]] / kind->length;
            int64_t left = kind->demand;
            for (int64_t n = room_across(c, s) / kind->width; held && n > 0 && left > 0; n--) {
                counts[k] = fit < left ? fit : left;
                left -= counts[k];
                held = add_strip(c, kind->class, counts);
            }
            counts[k] = 0;
            held = held && add_column(c, s, first);
        }
    }
    free(counts);
    return held;
}

bool board_columns_open(struct board_columns *c, const struct board_job *job) {
    const size_t items = job->item_count + 1;
    const size_t stocks = job->stock_count + 1;
    *c = (struct board_columns){.job = job};
    c->kinds = calloc(items, sizeof *c->kinds);
    c->kind_of = calloc(items, sizeof *c->kind_of);
    c->widths = calloc(items, sizeof *c->widths);
    c->most_strips = calloc(items, sizeof *c->most_strips);
    c->lengths = calloc(stocks, sizeof *c->lengths);
    c->length_of = calloc(stocks, sizeof *c->length_of);
    if (c->kinds == NULL || c->kind_of == NULL || c->widths == NULL || c->most_strips == NULL ||
        c->lengths == NULL || c->length_of == NULL) {
        return false;
    }
    take_items(c);
    take_stocks(c);
    const size_t fills = c->length_count * c->class_count + 1;
    c->values = calloc(c->kind_count + 1, sizeof *c->values);
    c->strip_value = calloc(fills * COLUMN_MOST_STRIPS, sizeof *c->strip_value);
    c->fill = calloc(fills * (c->kind_count + 1), sizeof *c->fill);
    return c->values != NULL && c->strip_value != NULL && c->fill != NULL && add_singles(c);
}

void board_columns_close(struct board_columns *c) {
    free(c->kinds);
    free(c->kind_of);
    free(c->widths);
    free(c->most_strips);
    free(c->lengths);
    free(c->length_of);
    free(c->columns);
    free(c->strips);
    free(c->parts);
    free(c->shares);
    free(c->values);
    free(c->strip_value);
    free(c->fill);
    *c = (struct board_columns){0};
}

/* --- pricing --- */

/* Room for knapsacks of kinds or of classes. */
struct sack {
    struct strip_fill_item *items;
    int64_t *counts;
    size_t *of;
};

/* The most valuable strip of a class in a length from `left`; counts one a kind. */
static bool best_strip(struct board_columns *c, const struct sack *sack, size_t class,
                       int64_t along, const int64_t *left, int64_t *counts, int64_t *value,
                       bool *exact) {
    size_t n = 0;
    memset(counts, 0, c->kind_count * sizeof *counts);
    for (size_t k = 0; k < c->kind_count; k++) {
        if (c->kinds[k].class == class && c->values[k] > 0 && left[k] > 0 &&
            c->kinds[k].length <= along) {
            sack->items[n] = (struct strip_fill_item){
                .size = c->kinds[k].length, .value = c->values[k], .most = left[k]};
            sack->of[n++] = k;
        }
    }
    struct strip_fill_result result = {.exact = true};
    if (n > 0 && !strip_fill_best(sack->items, n, along, 0, sack->counts, &result, &c->spent)) {
        return false;
    }
    for (size_t i = 0; result.found && i < n; i++) {
        counts[sack->of[i]] = sack->counts[i];
    }
    *value = result.found ? result.value : 0;
    *exact = *exact && result.exact;
    return true;
}

/* Whether n strips cut as `counts` are within what is left. */
static bool is_left(const struct board_columns *c, const int64_t *counts, int64_t n,
                    const int64_t *left) {
    for (size_t k = 0; k < c->kind_count; k++) {
        if (counts[k] * n > left[k]) {
            return false;
        }
    }
    return true;
}

/* What 1, 2, ... strips of a class in a length are worth at most. */
static bool price_class(struct board_columns *c, const struct sack *sack, size_t l, size_t w,
                        const int64_t *left, int64_t *counts, bool *exact) {
    const size_t at = l * c->class_count + w;
    int64_t *const value = &c->strip_value[at * COLUMN_MOST_STRIPS];
    int64_t *const first = &c->fill[at * c->kind_count];
    if (!best_strip(c, sack, w, c->lengths[l], left, first, &value[0], exact)) {
        return false;
    }
    for (int64_t n = 2; n <= COLUMN_MOST_STRIPS; n++) {
        value[n - 1] = value[0] * n;
        if (value[0] == 0 || n > c->most_strips[w] || is_left(c, first, n, left)) {
            continue;
        }
        int64_t joined = 0;
        if (!best_strip(c, sack, w, c->lengths[l] * n, left, counts, &joined, exact)) {
            return false;
        }
        value[n - 1] = joined < value[n - 1] ? joined : value[n - 1];
    }
    return true;
}

static bool price_strips(struct board_columns *c, const struct sack *sack, const int64_t *left,
                         int64_t *counts, bool *exact) {
    for (size_t l = 0; l < c->length_count; l++) {
        for (size_t w = 0; w < c->class_count; w++) {
            if (!price_class(c, sack, l, w, left, counts, exact)) {
                return false;
            }
        }
    }
    return true;
}

/* The board of a stock with n[w] strips of each class, as a column.  Strips after the first take
 * only what the ones before left over; where nothing is, they are not cut. */
static bool add_board(struct board_columns *c, const struct sack *sack, size_t stock,
                      const int64_t *n, const int64_t *left, int64_t *rest, int64_t *counts) {
    const size_t l = c->length_of[stock];
    const size_t first = c->strip_count;
    memcpy(rest, left, c->kind_count * sizeof *rest);
    for (size_t w = 0; w < c->class_count; w++) {
        for (int64_t i = 0; i < n[w]; i++) {
            int64_t value = 0;
            bool exact = true;
            if (!best_strip(c, sack, w, c->lengths[l], rest, counts, &value, &exact)) {
                return false;
            }
            if (value == 0) {
                break;
            }
            for (size_t k = 0; k < c->kind_count; k++) {
                rest[k] -= counts[k];
            }
            if (!add_strip(c, w, counts)) {
                return false;
            }
        }
    }
    return c->strip_count == first || add_column(c, stock, first);
}

/* A search for the most valuable board of a stock: n strips of each class in turn. */
struct chooser_of_strips {
    const struct board_columns *c;
    const int64_t *value; /* of the stock's length: [class][n - 1] */
    const double *ratio;  /* of a class on: the most that a unit of width is worth */
    int64_t *n, *best_n;
    int64_t best, steps;
};

#define MOST_STEPS INT64_C(200000)

static int64_t worth_of(const int64_t *value, int64_t n) {
    if (n <= COLUMN_MOST_STRIPS) {
        return n == 0 ? 0 : value[n - 1];
    }
    return value[COLUMN_MOST_STRIPS - 1] + (n - COLUMN_MOST_STRIPS) * value[0];
}

static void choose_strips(struct chooser_of_strips *s, size_t w, int64_t room, int64_t worth) {
    if (worth > s->best) {
        s->best = worth;
        memcpy(s->best_n, s->n, s->c->class_count * sizeof *s->n);
    }
    /* a hair more than the ratio, so that rounding never cuts off what is better */
    if (w == s->c->class_count || ++s->steps > MOST_STEPS ||
        (double)worth + (double)room * s->ratio[w] * (1 + 1e-9) <= (double)s->best) {
        return;
    }
    const int64_t *const value = &s->value[w * COLUMN_MOST_STRIPS];
    for (int64_t n = value[0] > 0 ? room / s->c->widths[w] : 0; n >= 0; n--) {
        s->n[w] = n;
        choose_strips(s, w + 1, room - n * s->c->widths[w], worth + worth_of(value, n));
    }
    s->n[w] = 0;
}

/* The most valuable board of a stock; n: strips of each class. ratio, work: room, one a class and
 * one more. */
static void best_board(struct board_columns *c, size_t stock, int64_t *n, double *ratio,
                       int64_t *work, int64_t *value, bool *exact) {
    struct chooser_of_strips s = {
        .c = c,
        .value = &c->strip_value[c->length_of[stock] * c->class_count * COLUMN_MOST_STRIPS],
        .ratio = ratio,
        .n = work,
        .best_n = n};
    memset(n, 0, c->class_count * sizeof *n);
    memset(work, 0, c->class_count * sizeof *work);
    ratio[c->class_count] = 0;
    for (size_t w = c->class_count; w-- > 0;) {
        /* one strip is worth the most by its width */
        const double one = (double)s.value[w * COLUMN_MOST_STRIPS] / (double)c->widths[w];
        ratio[w] = one > ratio[w + 1] ? one : ratio[w + 1];
    }
    choose_strips(&s, 0, room_across(c, stock), 0);
    cut_spend(&c->spent, s.steps);
    *value = s.best;
    *exact = *exact && s.steps <= MOST_STEPS;
}

/* --- the bound --- */

static int64_t divisor_of_prices(const struct board_job *job) {
    int64_t a = 0;
    for (size_t s = 0; s < job->stock_count; s++) {
        int64_t b = job->stocks[s].price;
        while (b != 0) {
            const int64_t rest = a % b;
            a = b;
            b = rest;
        }
    }
    return a > 0 ? a : 1;
}

/* least: V x p / B of the stock where that is least, rounded up. */
static void raise_bound(struct board_columns *c, cut_wide least) {
    const cut_wide step = divisor_of_prices(c->job);
    const cut_wide up = (least + step - 1) / step * step;
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
    cut_wide least;  /* that bound, not rounded; 0: none yet */
    struct cut_lp *lp;
    size_t *row; /* of a kind, SIZE_MAX: none left */
    double *numbers;
    struct cut_lp_entry *entries;
    double *cover; /* of a kind, for one column */
    struct sack sack;
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
    cut_wide total = 0;
    cut_wide least = 0;
    *added = false;
    for (size_t k = 0; k < c->kind_count; k++) {
        total += (cut_wide)c->values[k] * r->left[k];
    }
    if (!price_strips(c, &r->sack, r->left, r->counts, &exact)) {
        return false;
    }
    for (size_t s = 0; s < c->job->stock_count; s++) {
        int64_t value = 0;
        if (c->length_of[s] == SIZE_MAX) {
            continue;
        }
        best_board(c, s, r->n, r->ratio, r->work, &value, &exact);
        const int64_t price = c->job->stocks[s].price;
        if (value > 0) {
            const cut_wide cost = (total * price + value - 1) / value;
            least = !known || cost < least ? cost : least;
            known = true;
        }
        if ((double)value > (double)price / c->unit * SCALE * (1 + 1e-7)) {
            const size_t before = c->column_count;
            if (!add_board(c, &r->sack, s, r->n, r->left, r->rest, r->counts)) {
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
#define MOST_ROUNDS 12

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
