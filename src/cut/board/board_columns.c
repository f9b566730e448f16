/* SPDX-License-Identifier: MIT */
#include "cut/board/board_columns.h"

#include <stdlib.h>

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

/* How many of a size a room holds. */
static int64_t fits(int64_t room, int64_t size) {
    return size > 0 ? room / size : 0;
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
        const bool limited = job->stocks[s].copies != CUT_UNLIMITED;
        c->limited += limited ? 1 : 0;
        sum += limited ? 0 : (double)job->stocks[s].price;
    }
    c->unit = c->limited < job->stock_count && sum > 0
                  ? sum / (double)(job->stock_count - c->limited)
                  : 1;
    for (size_t w = 0; w < c->class_count; w++) {
        for (size_t s = 0; s < job->stock_count; s++) {
            const int64_t fit = fits(board_usable_width(job, s) + job->kerf, c->widths[w]);
            c->most_strips[w] = fit > c->most_strips[w] ? fit : c->most_strips[w];
        }
    }
}

/* The largest area of a limited stock adds so much to its price, in the unit of the program. */
#define AREA_SHARE 1e-5

static void take_prices(struct board_columns *c) {
    const struct board_job *const job = c->job;
    double most = 0;
    int64_t parts = 0;
    for (size_t k = 0; k < c->kind_count; k++) {
        parts += c->kinds[k].demand;
    }
    for (size_t s = 0; s < job->stock_count; s++) {
        const double area = (double)job->stocks[s].length * (double)job->stocks[s].width;
        c->guide[s] = job->stocks[s].copies == CUT_UNLIMITED ? 0 : area;
        most = c->guide[s] > most ? c->guide[s] : most;
    }
    for (size_t s = 0; s < job->stock_count; s++) {
        const double more = most > 0 ? c->guide[s] / most * AREA_SHARE : 0;
        const int64_t copies = job->stocks[s].copies;
        c->guide[s] = (double)job->stocks[s].price / c->unit + more;
        c->slack += more * (double)(copies < parts ? copies : parts) * c->unit;
    }
}

/* --- columns --- */

bool board_columns_part(struct board_columns *c, struct column_part part) {
    bool failed = false;
    c->parts = array_grow(c->parts, &c->part_room, c->part_count + 1, sizeof *c->parts, &failed);
    if (!failed) {
        c->parts[c->part_count++] = part;
    }
    return !failed;
}

/* Adds up the parts of a column by kind. */
static void add_covers(struct board_columns *c, const struct column *column) {
    for (size_t i = column->first; i < column->first + column->count; i++) {
        size_t at = column->cover_first;
        while (at < c->cover_count && c->covers[at].kind != c->parts[i].kind) {
            at++;
        }
        if (at == c->cover_count) {
            c->covers[c->cover_count++] = (struct column_cover){.kind = c->parts[i].kind};
        }
        c->covers[at].times += c->parts[i].times;
    }
}

bool board_columns_add(struct board_columns *c, size_t stock, size_t first) {
    struct column column = {.stock = stock,
                            .first = first,
                            .count = c->part_count - first,
                            .cover_first = c->cover_count,
                            .place = SIZE_MAX};
    bool failed = false;
    c->columns =
        array_grow(c->columns, &c->column_room, c->column_count + 1, sizeof *c->columns, &failed);
    c->covers = array_grow(c->covers, &c->cover_room, c->cover_count + column.count,
                           sizeof *c->covers, &failed);
    if (failed) {
        return false;
    }
    add_covers(c, &column);
    column.cover_count = c->cover_count - column.cover_first;
    c->columns[c->column_count++] = column;
    return true;
}

int64_t board_columns_room(const struct board_columns *c, size_t stock) {
    return board_usable_width(c->job, stock) + c->job->kerf;
}

void board_columns_want_all(struct board_columns *c, int64_t *left) {
    for (size_t s = 0; s < c->job->stock_count; s++) {
        c->copies[s] = c->job->stocks[s].copies;
    }
    for (size_t k = 0; k < c->kind_count; k++) {
        left[k] = c->kinds[k].demand;
    }
}

/* A board of nothing but one kind; none from a stock that does not hold it. */
static bool add_single(struct board_columns *c, size_t kind, size_t stock) {
    const struct board_kind *const k = &c->kinds[kind];
    const size_t first = c->part_count;
    const int64_t along =
        c->length_of[stock] == SIZE_MAX ? 0 : fits(c->lengths[c->length_of[stock]], k->length);
    const int64_t across = fits(board_columns_room(c, stock), k->width);
    int64_t left = k->demand;
    if (along == 0 || across == 0) {
        return true;
    }
    for (int64_t n = 0; n < across && left > 0; n++) {
        const int64_t times = along < left ? along : left;
        left -= times;
        if (!board_columns_part(c, (struct column_part){kind, times, (size_t)n})) {
            return false;
        }
    }
    return board_columns_add(c, stock, first);
}

/* From each stock that holds it, so that any need can be met. */
static bool add_singles(struct board_columns *c) {
    for (size_t k = 0; k < c->kind_count; k++) {
        for (size_t s = 0; s < c->job->stock_count; s++) {
            if (!add_single(c, k, s)) {
                return false;
            }
        }
    }
    c->single_count = c->column_count;
    return true;
}

static void take_room(struct board_columns *c) {
    struct pool *const pool = &c->pool;
    const size_t kinds = c->kind_count;
    const size_t classes = c->class_count;
    const size_t fills = c->length_count * classes;
    c->values = pool_take(pool, kinds, sizeof *c->values);
    c->strip_value = pool_take(pool, fills * COLUMN_MOST_STRIPS, sizeof *c->strip_value);
    c->fill = pool_take(pool, fills * kinds, sizeof *c->fill);
    c->best = pool_take(pool, classes, sizeof *c->best);
    c->duals = pool_take(pool, kinds, sizeof *c->duals);
    c->top_duals = pool_take(pool, kinds, sizeof *c->top_duals);
    c->center = pool_take(pool, kinds, sizeof *c->center);
    c->wants = pool_take(pool, kinds, sizeof *c->wants);
    c->row = pool_take(pool, kinds, sizeof *c->row);
    c->numbers = pool_take(pool, kinds + c->limited, sizeof *c->numbers);
    c->entries = pool_take(pool, kinds + 1, sizeof *c->entries);
    c->sack = pool_take(pool, kinds, sizeof *c->sack);
    c->sack_counts = pool_take(pool, kinds, sizeof *c->sack_counts);
    c->sack_kind = pool_take(pool, kinds, sizeof *c->sack_kind);
    c->counts = pool_take(pool, kinds, sizeof *c->counts);
    c->rest = pool_take(pool, kinds, sizeof *c->rest);
    c->tried = pool_take(pool, classes, sizeof *c->tried);
    c->order = pool_take(pool, classes, sizeof *c->order);
    c->ratio = pool_take(pool, classes, sizeof *c->ratio);
}

bool board_columns_open(struct board_columns *c, const struct board_job *job) {
    *c = (struct board_columns){.job = job, .stop = INT64_MAX};
    pool_init(&c->pool);
    c->kinds = pool_take(&c->pool, job->item_count, sizeof *c->kinds);
    c->kind_of = pool_take(&c->pool, job->item_count, sizeof *c->kind_of);
    c->widths = pool_take(&c->pool, job->item_count, sizeof *c->widths);
    c->most_strips = pool_take(&c->pool, job->item_count, sizeof *c->most_strips);
    c->lengths = pool_take(&c->pool, job->stock_count, sizeof *c->lengths);
    c->length_of = pool_take(&c->pool, job->stock_count, sizeof *c->length_of);
    c->copies = pool_take(&c->pool, job->stock_count, sizeof *c->copies);
    c->guide = pool_take(&c->pool, job->stock_count, sizeof *c->guide);
    c->limit_duals = pool_take(&c->pool, job->stock_count, sizeof *c->limit_duals);
    c->top_limit_duals = pool_take(&c->pool, job->stock_count, sizeof *c->top_limit_duals);
    c->limit_row = pool_take(&c->pool, job->stock_count, sizeof *c->limit_row);
    if (pool_failed(&c->pool)) {
        return false;
    }
    take_items(c);
    take_stocks(c);
    take_prices(c);
    take_room(c);
    return !pool_failed(&c->pool) && add_singles(c);
}

void board_columns_close(struct board_columns *c) {
    pool_clear(&c->pool);
    free(c->columns);
    free(c->parts);
    free(c->covers);
    free(c->shares);
    free(c->top);
    *c = (struct board_columns){0};
}
