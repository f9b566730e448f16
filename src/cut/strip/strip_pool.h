/* SPDX-License-Identifier: MIT */
/* A list of cutting patterns for boards: candidates of a search, or the boards of a plan. */
#ifndef DOORCOST_CUT_STRIP_STRIP_POOL_H
#define DOORCOST_CUT_STRIP_STRIP_POOL_H

#include "cut/common/cut_model.h"

/* So many pieces of one kind. */
struct strip_part {
    size_t kind;
    int64_t times;
};

/* One board cut so, `times` times over. Its parts: pool->parts[first ... first + count - 1]. */
struct strip_pattern {
    size_t bin;
    size_t first, count;
    int64_t times;
};

/* Empty when all zero. */
struct strip_pool {
    size_t pattern_count, pattern_room;
    struct strip_pattern *patterns;
    size_t part_count, part_room;
    struct strip_part *parts;
};

/* Appends a pattern and copies its parts. false: an allocation failed. */
__attribute__((warn_unused_result)) bool strip_pool_add(struct strip_pool *pool, size_t bin,
                                                        const struct strip_part *parts,
                                                        size_t count, int64_t times);

/* Appends all patterns of another pool. false: an allocation failed, some may be there. */
__attribute__((warn_unused_result)) bool strip_pool_append(struct strip_pool *pool,
                                                           const struct strip_pool *other);

/* Forgets patterns beyond the first `patterns`. */
void strip_pool_cut(struct strip_pool *pool, size_t patterns);

/* Frees what a pool owns and empties it. */
void strip_pool_clear(struct strip_pool *pool);

/* What all boards cost: the price of each pattern times how often it is cut. */
int64_t strip_pool_cost(const struct strip_pool *pool, const struct cut_model *model);

/* What is still wanted and what stock is left, while a plan is being made. */
struct strip_need {
    int64_t *pieces; /* one a kind */
    int64_t *copies; /* one a bin */
    int64_t left;    /* pieces in all */
};

/* All of the model's demands and stock. false: an allocation failed, the need is empty. */
__attribute__((warn_unused_result)) bool strip_need_init(struct strip_need *need,
                                                         const struct cut_model *model);
/* Frees what a need owns and empties it. */
void strip_need_clear(struct strip_need *need);
/* All of the model's demands and stock again. */
void strip_need_all(struct strip_need *need, const struct cut_model *model);
/* Makes *to like *from; both are of the model. */
void strip_need_copy(struct strip_need *to, const struct strip_need *from,
                     const struct cut_model *model);

/* How many times a pattern may be cut whole: pieces all wanted, boards at hand. */
int64_t strip_need_times(const struct strip_need *need, const struct strip_pool *pool,
                         const struct strip_pattern *pattern);

/* Takes a pattern `times` times off the need; times must be possible. */
void strip_need_take(struct strip_need *need, const struct strip_pool *pool,
                     const struct strip_pattern *pattern, int64_t times);

#endif
