/* SPDX-License-Identifier: MIT */
/* Pricing: the most valuable strip, the most valuable board. */
#include "cut/board/board_columns.h"

#include <string.h>

/* The most valuable strip of a class in a length from `left`; counts one a kind. */
static bool best_strip(struct board_columns *c, size_t class, int64_t along, const int64_t *left,
                       int64_t *counts, int64_t *value, bool *exact) {
    size_t n = 0;
    memset(counts, 0, c->kind_count * sizeof *counts);
    for (size_t k = 0; k < c->kind_count; k++) {
        if (c->kinds[k].class == class && c->values[k] > 0 && left[k] > 0 &&
            c->kinds[k].length <= along) {
            c->sack[n] = (struct strip_fill_item){
                .size = c->kinds[k].length, .value = c->values[k], .most = left[k]};
            c->sack_kind[n++] = k;
        }
    }
    struct strip_fill_result result = {.exact = true};
    if (n > 0 && !strip_fill_best(c->sack, n, along, 0, c->sack_counts, &result, &c->spent)) {
        return false;
    }
    for (size_t i = 0; result.found && i < n; i++) {
        counts[c->sack_kind[i]] = c->sack_counts[i];
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

/* More than or as much as the best filling of a length that holds many parts is worth: the parts of
 * the most value a length go in, the last one in part. */
static int64_t most_joined(struct board_columns *c, size_t class, int64_t along,
                           const int64_t *left) {
    double value = 0;
    double room = (double)along;
    size_t n = 0;
    for (size_t k = 0; k < c->kind_count; k++) {
        if (c->kinds[k].class == class && c->values[k] > 0 && left[k] > 0) {
            size_t at = n++;
            const double each = (double)c->values[k] / (double)c->kinds[k].length;
            for (; at > 0 && (double)c->values[c->sack_kind[at - 1]] <
                                 each * (double)c->kinds[c->sack_kind[at - 1]].length;
                 at--) {
                c->sack_kind[at] = c->sack_kind[at - 1];
            }
            c->sack_kind[at] = k;
        }
    }
    for (size_t i = 0; i < n && room > 0; i++) {
        const size_t k = c->sack_kind[i];
        const double all = (double)c->kinds[k].length * (double)left[k];
        const double used = all < room ? all : room;
        value += used * (double)c->values[k] / (double)c->kinds[k].length;
        room -= used;
    }
    cut_spend(&c->spent, 20 * (int64_t)n);
    return (int64_t)(value * (1 + 1e-12)) + 1;
}

/* What 1, 2, ... strips of a class in a length are worth at most. */
static bool price_class(struct board_columns *c, size_t l, size_t w, const int64_t *left,
                        bool closely, bool *exact) {
    const size_t at = l * c->class_count + w;
    int64_t *const value = &c->strip_value[at * COLUMN_MOST_STRIPS];
    int64_t *const first = &c->fill[at * c->kind_count];
    if (!best_strip(c, w, c->lengths[l], left, first, &value[0], exact)) {
        return false;
    }
    for (int64_t n = 2; n <= COLUMN_MOST_STRIPS; n++) {
        value[n - 1] = value[0] * n;
        if (value[0] == 0 || n > c->most_strips[w] || is_left(c, first, n, left)) {
            continue;
        }
        int64_t joined = most_joined(c, w, c->lengths[l] * n, left);
        if (closely && !best_strip(c, w, c->lengths[l] * n, left, c->counts, &joined, exact)) {
            return false;
        }
        value[n - 1] = joined < value[n - 1] ? joined : value[n - 1];
    }
    return true;
}

bool board_price_strips(struct board_columns *c, const int64_t *left, bool closely, bool *exact) {
    for (size_t l = 0; l < c->length_count; l++) {
        for (size_t w = 0; w < c->class_count; w++) {
            if (!price_class(c, l, w, left, closely, exact)) {
                return false;
            }
        }
    }
    return true;
}

bool board_price_length(struct board_columns *c, size_t stock, const int64_t *left, bool *exact) {
    bool held = true;
    for (size_t w = 0; held && w < c->class_count; w++) {
        held = price_class(c, c->length_of[stock], w, left, false, exact);
    }
    return held;
}

/* Strips after the first take only what the ones before left over; where nothing is, they are not
 * cut. */
bool board_price_add(struct board_columns *c, size_t stock, const int64_t *left) {
    const int64_t along = c->lengths[c->length_of[stock]];
    const size_t first = c->part_count;
    size_t strip = 0;
    memcpy(c->rest, left, c->kind_count * sizeof *left);
    for (size_t w = 0; w < c->class_count; w++) {
        for (int64_t i = 0; i < c->best[w]; i++) {
            int64_t value = 0;
            bool exact = true;
            if (!best_strip(c, w, along, c->rest, c->counts, &value, &exact)) {
                return false;
            }
            if (value == 0) {
                break;
            }
            for (size_t k = 0; k < c->kind_count; k++) {
                c->rest[k] -= c->counts[k];
                if (c->counts[k] > 0 &&
                    !board_columns_part(c, (struct column_part){k, c->counts[k], strip})) {
                    return false;
                }
            }
            strip++;
        }
    }
    return strip == 0 || board_columns_add(c, stock, first);
}

/* A search for the most valuable board of a stock: n strips of each class in turn, those first of
 * which a unit of width is worth most. */
struct chooser_of_strips {
    const struct board_columns *c;
    const int64_t *value; /* of the stock's length: [class][n - 1] */
    const size_t *order;  /* classes that are worth something */
    const double *ratio;  /* of each class: what a unit of its width is worth at most */
    size_t classes;
    int64_t *n, *best_n; /* strips of each class */
    int64_t best, steps;
};

#define MOST_STEPS INT64_C(200000)

static int64_t worth_of(const int64_t *value, int64_t n) {
    if (n <= COLUMN_MOST_STRIPS) {
        return n == 0 ? 0 : value[n - 1];
    }
    return value[COLUMN_MOST_STRIPS - 1] + (n - COLUMN_MOST_STRIPS) * value[0];
}

static void choose_strips(struct chooser_of_strips *s, size_t at, int64_t room, int64_t worth) {
    if (worth > s->best) {
        s->best = worth;
        memcpy(s->best_n, s->n, s->c->class_count * sizeof *s->n);
    }
    if (++s->steps > MOST_STEPS) {
        return;
    }
    for (; at < s->classes; at++) {
        const size_t w = s->order[at];
        /* a hair more than the ratio, so that rounding never cuts off what is better */
        if ((double)worth + (double)room * s->ratio[w] * (1 + 1e-9) <= (double)s->best) {
            return;
        }
        for (int64_t n = room / s->c->widths[w]; n > 0; n--) {
            s->n[w] = n;
            choose_strips(s, at + 1, room - n * s->c->widths[w],
                          worth + worth_of(&s->value[w * COLUMN_MOST_STRIPS], n));
        }
        s->n[w] = 0;
    }
}

int64_t board_price_best(struct board_columns *c, size_t stock, bool *exact) {
    struct chooser_of_strips s = {
        .c = c,
        .value = &c->strip_value[c->length_of[stock] * c->class_count * COLUMN_MOST_STRIPS],
        .order = c->order,
        .ratio = c->ratio,
        .n = c->tried,
        .best_n = c->best};
    memset(c->best, 0, c->class_count * sizeof *c->best);
    memset(c->tried, 0, c->class_count * sizeof *c->tried);
    for (size_t w = 0; w < c->class_count; w++) {
        /* one strip is worth the most by its width */
        c->ratio[w] = (double)s.value[w * COLUMN_MOST_STRIPS] / (double)c->widths[w];
        if (c->ratio[w] > 0) {
            size_t at = s.classes++;
            for (; at > 0 && c->ratio[c->order[at - 1]] < c->ratio[w]; at--) {
                c->order[at] = c->order[at - 1];
            }
            c->order[at] = w;
        }
    }
    choose_strips(&s, 0, board_columns_room(c, stock), 0);
    cut_spend(&c->spent, s.steps);
    *exact = *exact && s.steps <= MOST_STEPS;
    return s.best;
}
