/* SPDX-License-Identifier: MIT */
/* Patterns in one growing array, their parts in another. */
#include "cut/strip/strip_pool.h"

#include "base/pool.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

bool strip_pool_add(struct strip_pool *pool, size_t bin, const struct strip_part *parts,
                    size_t count, int64_t times) {
    bool failed = false;
    pool->patterns = array_grow(pool->patterns, &pool->pattern_room, pool->pattern_count + 1,
                                sizeof *pool->patterns, &failed);
    pool->parts = array_grow(pool->parts, &pool->part_room, pool->part_count + count,
                             sizeof *pool->parts, &failed);
    if (failed) {
        return false;
    }
    memcpy(&pool->parts[pool->part_count], parts, count * sizeof *parts);
    pool->patterns[pool->pattern_count++] =
        (struct strip_pattern){bin, pool->part_count, count, times};
    pool->part_count += count;
    return true;
}

bool strip_pool_append(struct strip_pool *pool, const struct strip_pool *other) {
    for (size_t p = 0; p < other->pattern_count; p++) {
        const struct strip_pattern *pattern = &other->patterns[p];
        if (!strip_pool_add(pool, pattern->bin, &other->parts[pattern->first], pattern->count,
                            pattern->times)) {
            return false;
        }
    }
    return true;
}

void strip_pool_cut(struct strip_pool *pool, size_t patterns) {
    if (patterns < pool->pattern_count) {
        pool->part_count = pool->patterns[patterns].first;
        pool->pattern_count = patterns;
    }
}

void strip_pool_clear(struct strip_pool *pool) {
    free(pool->patterns);
    free(pool->parts);
    *pool = (struct strip_pool){0};
}

int64_t strip_pool_cost(const struct strip_pool *pool, const struct cut_model *model) {
    int64_t cost = 0;
    for (size_t p = 0; p < pool->pattern_count; p++) {
        cost += model->bins[pool->patterns[p].bin].price * pool->patterns[p].times;
    }
    return cost;
}

bool strip_need_init(struct strip_need *need, const struct cut_model *model) {
    *need = (struct strip_need){0};
    need->pieces = calloc(model->kind_count + 1, sizeof *need->pieces);
    need->copies = calloc(model->bin_count + 1, sizeof *need->copies);
    if (need->pieces == NULL || need->copies == NULL) {
        strip_need_clear(need);
        return false;
    }
    strip_need_all(need, model);
    return true;
}

void strip_need_all(struct strip_need *need, const struct cut_model *model) {
    for (size_t k = 0; k < model->kind_count; k++) {
        need->pieces[k] = model->kinds[k].demand;
    }
    for (size_t r = 0; r < model->bin_count; r++) {
        need->copies[r] = model->bins[r].copies;
    }
    need->left = model->pieces;
}

void strip_need_clear(struct strip_need *need) {
    free(need->pieces);
    free(need->copies);
    *need = (struct strip_need){0};
}

void strip_need_copy(struct strip_need *to, const struct strip_need *from,
                     const struct cut_model *model) {
    memcpy(to->pieces, from->pieces, model->kind_count * sizeof *to->pieces);
    memcpy(to->copies, from->copies, model->bin_count * sizeof *to->copies);
    to->left = from->left;
}

int64_t strip_need_times(const struct strip_need *need, const struct strip_pool *pool,
                         const struct strip_pattern *pattern) {
    int64_t times = need->copies[pattern->bin];
    for (size_t i = 0; i < pattern->count; i++) {
        const struct strip_part *part = &pool->parts[pattern->first + i];
        int64_t whole = need->pieces[part->kind] / part->times;
        times = whole < times ? whole : times;
    }
    return times;
}

void strip_need_take(struct strip_need *need, const struct strip_pool *pool,
                     const struct strip_pattern *pattern, int64_t times) {
    need->copies[pattern->bin] -= times;
    for (size_t i = 0; i < pattern->count; i++) {
        const struct strip_part *part = &pool->parts[pattern->first + i];
        need->pieces[part->kind] -= part->times * times;
        need->left -= part->times * times;
        assert(need->pieces[part->kind] >= 0);
    }
}
