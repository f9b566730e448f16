/* SPDX-License-Identifier: MIT */
/* What the files of price/chance.h share. */
#ifndef DOORCOST_PRICE_CHANCE_PARTS_H
#define DOORCOST_PRICE_CHANCE_PARTS_H

#include "chance/shape.h"
#include "figure/replay.h"
#include "price/chance.h"
#include "price/rate_givens.h"

/* A range as it is drawn. */
struct chance_source {
    struct rate_givens givens;
    int64_t low, likely, high; /* at `decimals`; of lengths in nm */
    uint8_t decimals;
    struct shape *shape;
    uint64_t own, shared; /* seeds */
    double together;      /* correlation with those of its group; 0: by itself */
};

/* What is asked of every draw, of the tape of an estimate. */
struct chance_figures {
    const struct units *units;
    fig *direct, *overhead; /* of the doors, then of each charge */
    size_t count;
    fig *all;         /* both */
    uint8_t decimals; /* of money */
};

/* In pool, which tells of want of memory. */
struct chance_figures chance_figures_of(const struct estimate *estimate, struct pool *pool);

/* What a replay has come to, in money: the direct cost. */
int64_t chance_direct(const struct replay *replay, const struct chance_figures *figures);
/* The overhead, likewise. */
int64_t chance_overhead(const struct replay *replay, const struct chance_figures *figures);

/* Gives the number an amount of the source. */
void chance_set(struct replay *replay, const struct chance_figures *figures,
                const struct chance_source *source, int64_t amount);

/* Finds how a range is drawn, and whether; sets state and plan of input, whose number is set. ends:
 * of that number. false: out of memory. */
bool chance_source_make(struct chance_source *source, struct chance_input *input,
                        const struct estimate *estimate, const struct chance_figures *figures,
                        const struct chance_ends *ends, struct pool *pool)
    __attribute__((warn_unused_result));

/* Shape and seeds of a source that is drawn. */
void chance_source_seed(struct chance_source *source, const struct chance_input *input,
                        const struct rates *rates, uint64_t seed, struct pool *pool);

/* The amount of draw i, from 0 on. */
int64_t chance_amount(const struct chance_source *source, size_t i);

/* A replay of all sources; replay_clear it whatever the result. false: out of memory. */
bool chance_replay(struct replay *replay, const struct estimate *estimate,
                   const struct chance_figures *figures, const struct chance_source *sources,
                   size_t count) __attribute__((warn_unused_result));

#endif
