/* SPDX-License-Identifier: MIT */
/* What a job may come to when the ranged numbers of the rates are drawn, thousands of times: how
 * far its cost spreads, and how likely its price does not cover it.
 *
 * Each draw gives every range a value and makes again what of the cost moves with them, so all
 * doors take the same price at once. Cutting plans stay as planned. Direct cost is that of the
 * doors and of the charges that are worked for, as in price/outcome.h; the cost with overhead has
 * overhead on top, without the contingency, which is what draws use up. Method: docs/method.md,
 * "Chance". */
#ifndef DOORCOST_PRICE_CHANCE_H
#define DOORCOST_PRICE_CHANCE_H

#include "price/estimate.h"

enum chance_state {
    CHANCE_DRAWN,
    CHANCE_NO_EFFECT, /* nothing of the job's cost rests on it */
    CHANCE_HELD       /* at its likely value: what it changes is not all figured on the tape */
};

/* What whole estimates with a number at the ends of its range came to. */
struct chance_ends {
    bool known;
    int64_t low, high; /* money: direct cost, as in struct outcome */
};

struct chance_input {
    const struct rate_number *number;
    enum chance_state state;
    bool plan;     /* it moves a cutting plan, which is held */
    int32_t group; /* into rates->chance.together, -1: it moves by itself */
    int32_t share; /* tenths of a percent: its squared rank correlation with the cost with overhead,
                      as a part of those of all */
};

/* The points that papers show. */
enum chance_point { CHANCE_P10, CHANCE_P50, CHANCE_P80, CHANCE_P90, CHANCE_POINTS };
/* 10, 50, 80, 90. */
int chance_point_percent(enum chance_point point);

/* Money: of what is not passed by so many percent of the draws. */
struct chance_cost {
    int64_t figured; /* with the likely values */
    int64_t points[CHANCE_POINTS];
    int64_t sure; /* not passed with the confidence that was asked for */
    int64_t least, most;
};

#define CHANCE_BINS 24

struct chance_request {
    size_t draws; /* CHANCE_LEAST_DRAWS to CHANCE_MOST_DRAWS */
    uint64_t seed;
    int32_t confidence;             /* hundredths of a percent; 0: as the rates say */
    const struct chance_ends *ends; /* one a number of the rates */
};

#define CHANCE_DRAWS       10000
#define CHANCE_LEAST_DRAWS 100
#define CHANCE_MOST_DRAWS  100000

struct chance {
    struct chance_input *inputs; /* one a range of the rates; those drawn first, largest share
                                    first */
    size_t count, drawn, held, planned; /* planned: drawn with a plan held */
    size_t draws;
    uint64_t seed;
    int32_t confidence; /* hundredths of a percent */
    enum chance_shape shape;
    struct chance_cost direct, full;
    int64_t price;            /* money, before tax: sold, with the charges worked for */
    int64_t wanted;           /* money: profit */
    int64_t contingency;      /* money: direct.sure less direct.figured */
    int32_t contingency_rate; /* tenths of a percent of direct.figured */
    /* tenths of a percent of the draws: */
    int32_t under_direct;       /* the price is less than the direct cost */
    int32_t under_full;         /* than the cost with overhead: the job loses money */
    int32_t under_wanted;       /* what is left of it is less than the profit wanted */
    int64_t bin_from, bin_step; /* money: bin i holds costs with overhead from bin_from + i x
                                   bin_step on, below the next; the last may be at its end */
    size_t bins[CHANCE_BINS];   /* draws */
    size_t bin_count;
};

/* Draws. estimate: traced, made without fault. All in pool. Without ranges that are drawn, drawn is
 * 0 and all draws are alike. ESTIMATE_FAULT: a draw came to something that cannot be figured. */
enum estimate_result chance_make(struct chance *chance, const struct estimate *estimate,
                                 struct chance_request request, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
