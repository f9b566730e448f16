/* SPDX-License-Identifier: MIT */
#include "cut/board/board_columns.h"

#include "base/pool.h"
#include "cut/board/board_price.h"

#include <stdlib.h>
#include <string.h>

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
        sum += (double)job->stocks[s].price;
    }
    c->unit = sum / (double)job->stock_count;
    for (size_t w = 0; w < c->class_count; w++) {
        for (size_t s = 0; s < job->stock_count; s++) {
            const int64_t fit = fits(board_usable_width(job, s) + job->kerf, c->widths[w]);
            c->most_strips[w] = fit > c->most_strips[w] ? fit : c->most_strips[w];
        }
    }
}

/* --- columns --- */

bool board_columns_strip(struct board_columns *c, size_t class, const int64_t *counts) {
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
bool board_columns_add(struct board_columns *c, size_t stock, size_t first) {
    if (!array_grow((void **)&c->columns, &c->column_room, c->column_count + 1,
                    sizeof *c->columns)) {
        return false;
    }
    c->columns[c->column_count++] =
        (struct column){.stock = stock, .first = first, .count = c->strip_count - first};
    return true;
}

int64_t board_columns_room(const struct board_columns *c, size_t stock) {
    return board_usable_width(c->job, stock) + c->job->kerf;
}

/* A board of nothing but one kind, from each stock that holds it, so that any need can be met. */
static bool add_singles(struct board_columns *c) {
    int64_t *const counts = calloc(c->kind_count + 1, sizeof *counts);
    bool held = counts != NULL;
    for (size_t k = 0; held && k < c->kind_count; k++) {
        const struct board_kind *const kind = &c->kinds[k];
        for (size_t s = 0; held && s < c->job->stock_count; s++) {
            if (c->length_of[s] == SIZE_MAX || board_columns_room(c, s) < kind->width ||
                c->lengths[c->length_of[s]] < kind->length) {
                continue;
            }
            const size_t first = c->strip_count;
            const int64_t fit = fits(c->lengths[c->length_of[s]], kind->length);
            int64_t left = kind->demand;
            for (int64_t n = fits(board_columns_room(c, s), kind->width); held && n > 0 && left > 0;
                 n--) {
                counts[k] = fit < left ? fit : left;
                left -= counts[k];
                held = board_columns_strip(c, kind->class, counts);
            }
            counts[k] = 0;
            held = held && board_columns_add(c, s, first);
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
