/* SPDX-License-Identifier: MIT */
/* One board after the other. The largest piece still wanted goes on the next board, so none is
 * left over at the end with no company; each bin that can hold it is tried. */
#include "cut/strip/strip_greedy.h"

#include "base/pool.h"
#include "cut/strip/strip_fill.h"

#include <string.h>

/* A board being filled: counts of each kind. */
struct board {
    int64_t *counts;
    int64_t used;
    size_t bin;
};

struct greedy {
    const struct cut_model *model;
    struct strip_need *need;
    struct board board, best;
    struct strip_fill_item *items;
    struct strip_part *parts;
    int64_t *spent;
};

static void fill_first_fit(struct greedy *greedy) {
    const struct cut_model *model = greedy->model;
    struct board *board = &greedy->board;
    int64_t left = model->bins[board->bin].length;
    for (size_t k = 0; k < model->kind_count; k++) {
        int64_t fits = left / model->kinds[k].length;
        board->counts[k] = fits < greedy->need->pieces[k] ? fits : greedy->need->pieces[k];
        left -= board->counts[k] * model->kinds[k].length;
    }
    board->used = model->bins[board->bin].length - left;
    cut_spend(greedy->spent, 4 * (int64_t)model->kind_count);
}

static bool fill_fullest(struct greedy *greedy, size_t largest) {
    const struct cut_model *model = greedy->model;
    struct board *board = &greedy->board;
    int64_t left = model->bins[board->bin].length - model->kinds[largest].length;
    for (size_t k = 0; k < model->kind_count; k++) {
        int64_t size = model->kinds[k].length;
        greedy->items[k] =
            (struct strip_fill_item){size, size, greedy->need->pieces[k] - (k == largest)};
    }
    struct strip_fill_result result;
    memset(board->counts, 0, model->kind_count * sizeof *board->counts);
    if (!strip_fill_best(greedy->items, model->kind_count, left, 0, board->counts, &result,
                         greedy->spent)) {
        return false;
    }
    board->counts[largest]++;
    board->used = model->kinds[largest].length + (result.found ? result.value : 0);
    return true;
}

/* Whether the board just filled costs less a length than the best so far. */
static bool cheaper(const struct greedy *greedy) {
    const struct cut_bin *bins = greedy->model->bins;
    double now = (double)bins[greedy->board.bin].price * (double)greedy->best.used;
    double before = (double)bins[greedy->best.bin].price * (double)greedy->board.used;
    return now < before;
}

/* Fills a board with the largest kind; *found false: no stock holds it. */
static bool next_board(struct greedy *greedy, enum strip_greedy_rule rule, size_t largest,
                       bool *found) {
    const struct cut_model *model = greedy->model;
    *found = false;
    for (size_t r = 0; r < model->bin_count; r++) {
        if (greedy->need->copies[r] == 0 || model->bins[r].length < model->kinds[largest].length) {
            continue;
        }
        greedy->board.bin = r;
        if (rule == STRIP_FIRST_FIT) {
            fill_first_fit(greedy);
        } else if (!fill_fullest(greedy, largest)) {
            return false;
        }
        if (!*found || cheaper(greedy)) {
            struct board held = greedy->best;
            greedy->best = greedy->board;
            greedy->board = held;
            *found = true;
        }
    }
    return true;
}

static bool take_board(struct greedy *greedy, struct strip_pool *pool) {
    size_t count = 0;
    for (size_t k = 0; k < greedy->model->kind_count; k++) {
        if (greedy->best.counts[k] > 0) {
            greedy->parts[count++] = (struct strip_part){k, greedy->best.counts[k]};
        }
    }
    if (!strip_pool_add(pool, greedy->best.bin, greedy->parts, count, 1)) {
        return false;
    }
    struct strip_pattern *pattern = &pool->patterns[pool->pattern_count - 1];
    pattern->times = strip_need_times(greedy->need, pool, pattern);
    strip_need_take(greedy->need, pool, pattern, pattern->times);
    return true;
}

bool strip_greedy_cut(const struct cut_model *model, enum strip_greedy_rule rule,
                      struct strip_need *need, struct strip_pool *boards, int64_t *spent) {
    struct pool pool;
    pool_init(&pool);
    struct greedy greedy = {
        .model = model,
        .need = need,
        .board = {.counts = pool_take(&pool, model->kind_count, sizeof(int64_t))},
        .best = {.counts = pool_take(&pool, model->kind_count, sizeof(int64_t))},
        .items = pool_take(&pool, model->kind_count, sizeof *greedy.items),
        .parts = pool_take(&pool, model->kind_count, sizeof *greedy.parts)};
    greedy.spent = spent;
    bool ok = !pool_failed(&pool);
    bool found = true;
    for (size_t k = 0; k < model->kind_count && ok && found; k++) {
        while (ok && found && need->pieces[k] > 0) {
            ok = next_board(&greedy, rule, k, &found) && (!found || take_board(&greedy, boards));
        }
    }
    pool_clear(&pool);
    return ok;
}
