/* SPDX-License-Identifier: MIT */
#include "price/chance.h"

#include "base/int128.h"
#include "base/order.h"
#include "chance/spread.h"
#include "model/rate_group.h"
#include "price/chance_parts.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define HUNDREDTHS 100  /* of a percent */
#define TENTHS     1000 /* of a percent, in all */

/* What is drawn, and what each draw came to. */
struct drawing {
    const struct estimate *estimate;
    struct chance_figures figures;
    struct chance_source *sources; /* one an input that is drawn, in the order of chance.inputs */
    struct replay replay;
    size_t draws;
    int64_t *direct, *full;    /* money, as drawn */
    int64_t *amounts, *sorted; /* of one input; of one cost */
    double *cost_ranks, *ranks;
};

int chance_point_percent(enum chance_point point) {
    static const int percents[CHANCE_POINTS] = {10, 50, 80, 90};
    assert(point < CHANCE_POINTS);
    return percents[point];
}

/* The confidence of a request that does not name one, in hundredths of a percent: of the rates,
 * or 80 %. */
static int32_t chance_confidence(const struct rates *rates) {
    const struct value *const given = &rates->chance.confidence;
    int128 under = 1;
    if (!given->set) {
        return 80 * HUNDREDTHS;
    }
    for (uint8_t d = 0; d < given->decimals; d++) {
        under *= 10;
    }
    return (int32_t)int128_round((int128)given->amount * HUNDREDTHS, under);
}

/* Those drawn first, as the rates have them. false: out of memory. */
static bool find_inputs(struct chance *chance, struct drawing *d, const struct chance_ends *ends,
                        struct pool *pool) {
    const struct rates *const rates = d->estimate->rates;
    const struct rate_numbers *const numbers = &rates->numbers;
    chance->inputs = pool_take(pool, numbers->count, sizeof *chance->inputs);
    struct chance_input *const others = pool_take(pool, numbers->count, sizeof *others);
    d->sources = pool_take(pool, numbers->count, sizeof *d->sources);
    size_t other_count = 0;
    for (size_t i = 0; !pool_failed(pool) && i < numbers->count; i++) {
        struct chance_input input = {.number = &numbers->list[i],
                                     .group = rate_group_of(rates, &numbers->list[i])};
        struct chance_source *const source = &d->sources[chance->drawn];
        if (!rate_number_ranged(input.number)) {
            continue;
        }
        if (!chance_source_make(source, &input, d->estimate, &d->figures, &ends[i], pool)) {
            return false;
        }
        chance->held += input.state == CHANCE_HELD ? 1 : 0;
        if (input.state == CHANCE_DRAWN) {
            chance->planned += input.plan ? 1 : 0;
            chance_source_seed(source, &input, rates, chance->seed, pool);
            chance->inputs[chance->drawn++] = input;
        } else {
            others[other_count++] = input;
        }
    }
    if (pool_failed(pool)) {
        return false;
    }
    memcpy(chance->inputs + chance->drawn, others, other_count * sizeof *others);
    chance->count = chance->drawn + other_count;
    return true;
}

static enum estimate_result draw_all(struct drawing *d, size_t sources) {
    for (size_t i = 0; i < d->draws; i++) {
        for (size_t s = 0; s < sources; s++) {
            chance_set(&d->replay, &d->figures, &d->sources[s], chance_amount(&d->sources[s], i));
        }
        const enum tape_fault fault = replay_run(&d->replay);
        if (fault != TAPE_OK) {
            return fault == TAPE_MEMORY ? ESTIMATE_MEMORY : ESTIMATE_FAULT;
        }
        d->direct[i] = chance_direct(&d->replay, &d->figures);
        d->full[i] = d->direct[i] + chance_overhead(&d->replay, &d->figures);
    }
    return ESTIMATE_OK;
}

/* Points of one cost; leaves its draws in order in d->sorted. */
static void tell_cost(struct chance_cost *cost, const struct drawing *d, const int64_t *drawn,
                      int32_t confidence) {
    memcpy(d->sorted, drawn, d->draws * sizeof *drawn);
    spread_sort(d->sorted, d->draws);
    for (int p = 0; p < CHANCE_POINTS; p++) {
        cost->points[p] =
            spread_percentile(d->sorted, d->draws, chance_point_percent((enum chance_point)p));
    }
    cost->sure = spread_percentile(d->sorted, d->draws, (double)confidence / HUNDREDTHS);
    cost->least = d->sorted[0];
    cost->most = d->sorted[d->draws - 1];
}

/* Draws whose cost is more than money, in tenths of a percent. */
static int32_t above(const struct drawing *d, int64_t money) {
    const size_t draws = spread_above(d->sorted, d->draws, money);
    return (int32_t)int128_round((int128)draws * TENTHS, (int128)d->draws);
}

/* Steps of 1, 2 or 5 times a power of ten, so that some sixteen of them hold all draws. */
static void tell_bins(struct chance *chance, const struct drawing *d) {
    const int64_t spread = chance->full.most - chance->full.least;
    int64_t step = 1;
    for (int64_t power = 1; step * 16 < spread; power *= 10) {
        for (int times = 1; times <= 5 && step * 16 < spread; times = times == 2 ? 5 : 2 * times) {
            step = times * power;
        }
    }
    const int64_t over = chance->full.least % step;
    chance->bin_step = step;
    chance->bin_from = chance->full.least - over;
    for (size_t i = 0; i < d->draws; i++) {
        const size_t bin = (size_t)((d->full[i] - chance->bin_from) / step);
        assert(bin < CHANCE_BINS);
        chance->bins[bin]++;
        chance->bin_count = bin >= chance->bin_count ? bin + 1 : chance->bin_count;
    }
}

static void tell(struct chance *chance, const struct drawing *d) {
    tell_cost(&chance->direct, d, d->direct, chance->confidence);
    chance->under_direct = above(d, chance->price);
    chance->contingency = chance->direct.sure - chance->direct.figured;
    if (chance->direct.figured > 0) {
        chance->contingency_rate =
            (int32_t)int128_round((int128)chance->contingency * TENTHS, chance->direct.figured);
    }
    tell_cost(&chance->full, d, d->full, chance->confidence);
    chance->under_full = above(d, chance->price);
    chance->under_wanted = above(d, chance->price - chance->wanted);
    tell_bins(chance, d);
}

static int by_share(const void *left, const void *right) {
    const struct chance_input *const a = left;
    const struct chance_input *const b = right;
    const int order = order_by_number(b->share, a->share);
    return order != 0 ? order : (a->number > b->number) - (a->number < b->number);
}

/* Squared rank correlation of each input with the cost, as a share of all of theirs. false: out of
 * memory. */
static bool tell_shares(struct chance *chance, const struct drawing *d, struct pool *pool) {
    double all = 0;
    double *const squares = pool_take(pool, chance->drawn, sizeof *squares);
    if (squares == NULL || !spread_ranks(d->full, d->draws, d->cost_ranks)) {
        return false;
    }
    for (size_t s = 0; s < chance->drawn; s++) {
        for (size_t i = 0; i < d->draws; i++) {
            d->amounts[i] = chance_amount(&d->sources[s], i);
        }
        if (!spread_ranks(d->amounts, d->draws, d->ranks)) {
            return false;
        }
        const double r = spread_correlation(d->ranks, d->cost_ranks, d->draws);
        squares[s] = r * r;
        all += squares[s];
    }
    for (size_t s = 0; all > 0 && s < chance->drawn; s++) {
        chance->inputs[s].share = (int32_t)(squares[s] / all * TENTHS + 0.5);
    }
    qsort(chance->inputs, chance->drawn, sizeof *chance->inputs, by_share);
    return true;
}

/* Room for what draws come to; false: out of memory. */
static bool take_room(struct drawing *d, struct pool *pool) {
    d->direct = pool_take(pool, d->draws, sizeof *d->direct);
    d->full = pool_take(pool, d->draws, sizeof *d->full);
    d->amounts = pool_take(pool, d->draws, sizeof *d->amounts);
    d->sorted = pool_take(pool, d->draws, sizeof *d->sorted);
    d->cost_ranks = pool_take(pool, d->draws, sizeof *d->cost_ranks);
    d->ranks = pool_take(pool, d->draws, sizeof *d->ranks);
    return !pool_failed(pool);
}

/* What the estimate itself says: cost, price, profit wanted. */
static void tell_figured(struct chance *chance, const struct drawing *d) {
    const struct estimate *const e = d->estimate;
    const uint8_t decimals = d->figures.decimals;
    chance->direct.figured = chance_direct(&d->replay, &d->figures);
    chance->full.figured = chance->direct.figured + chance_overhead(&d->replay, &d->figures);
    chance->price = tape_scaled(&e->tape, e->sale.worked, decimals);
    chance->wanted = tape_scaled(&e->tape, e->costs.job.profit, decimals);
    for (size_t i = 0; i + 1 < d->figures.count; i++) {
        chance->wanted += tape_scaled(&e->tape, e->costs.charges[i].profit, decimals);
    }
}

enum estimate_result chance_make(struct chance *chance, const struct estimate *e,
                                 struct chance_request request, struct pool *pool) {
    assert(request.draws >= CHANCE_LEAST_DRAWS && request.draws <= CHANCE_MOST_DRAWS);
    struct drawing d = {
        .estimate = e, .figures = chance_figures_of(e, pool), .draws = request.draws};
    *chance = (struct chance){
        .draws = request.draws,
        .seed = request.seed,
        .confidence = request.confidence > 0 ? request.confidence : chance_confidence(e->rates),
        .shape = (enum chance_shape)e->rates->chance.shape.choice,
    };
    if (pool_failed(pool) || !take_room(&d, pool) || !find_inputs(chance, &d, request.ends, pool)) {
        return ESTIMATE_MEMORY;
    }
    enum estimate_result result = ESTIMATE_MEMORY;
    if (chance_replay(&d.replay, e, &d.figures, d.sources, chance->drawn)) {
        tell_figured(chance, &d);
        result = draw_all(&d, chance->drawn);
    }
    if (result == ESTIMATE_OK) {
        tell(chance, &d);
        result = tell_shares(chance, &d, pool) ? ESTIMATE_OK : ESTIMATE_MEMORY;
    }
    replay_clear(&d.replay);
    return result;
}
