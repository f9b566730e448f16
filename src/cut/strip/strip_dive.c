/* SPDX-License-Identifier: MIT */
/* A dive fixes the patterns that the relaxation cuts whole times, or else the one it likes best,
 * solves the relaxation again for what remains, and so on. After each step the rest is also cut
 * quickly, which gives a plan. Later dives choose with some chance, to see other plans. */
#include "cut/strip/strip_dive.h"

#include "cut/common/cut_cover.h"
#include "cut/common/cut_random.h"
#include "cut/strip/strip_greedy.h"
#include "cut/strip/strip_relax.h"

#include <stdlib.h>

/* What the relaxation says is taken for whole within this. */
#define SHARE_TOLERANCE 1e-5

struct dive {
    struct strip_search *search;
    struct strip_need need, rest;
    struct strip_pool boards; /* fixed so far */
    struct cut_random random;
    double noise; /* 0: no chance */
};

/* Keeps a complete plan if it is the cheapest. */
static bool offer(struct strip_search *search, const struct strip_pool *boards) {
    int64_t cost = strip_pool_cost(boards, search->model);
    if (cost >= search->cost) {
        return true;
    }
    strip_pool_cut(&search->best, 0);
    search->cost = cost;
    return strip_pool_append(&search->best, boards);
}

/* Completes the fixed boards quickly, both ways. */
static bool complete(struct dive *dive) {
    const struct cut_model *model = dive->search->model;
    for (int rule = STRIP_FIRST_FIT; rule <= STRIP_FULLEST; rule++) {
        size_t fixed = dive->boards.pattern_count;
        strip_need_copy(&dive->rest, &dive->need, model);
        if (!strip_greedy_cut(model, (enum strip_greedy_rule)rule, &dive->rest, &dive->boards,
                              &dive->search->spent)) {
            return false;
        }
        if (dive->rest.left == 0 && !offer(dive->search, &dive->boards)) {
            return false;
        }
        strip_pool_cut(&dive->boards, fixed);
    }
    return true;
}

/* Fixes a pattern of the relaxation; how often it was possible. */
static bool fix(struct dive *dive, const struct strip_pool *pool, size_t p, int64_t times,
                int64_t *fixed) {
    const struct strip_pattern *pattern = &pool->patterns[p];
    int64_t most = strip_need_times(&dive->need, pool, pattern);
    times = times < most ? times : most;
    if (times <= 0) {
        return true;
    }
    *fixed += times;
    strip_need_take(&dive->need, pool, pattern, times);
    return strip_pool_add(&dive->boards, pattern->bin, &pool->parts[pattern->first], pattern->count,
                          times);
}

/* The pattern cut most often, with some chance; SIZE_MAX: none can be cut. */
static size_t choose(struct dive *dive, const struct strip_relaxed *relaxed) {
    size_t best = SIZE_MAX;
    double best_share = 0.0;
    for (size_t p = 0; p < relaxed->pool.pattern_count; p++) {
        double share = relaxed->shares[p];
        if (share <= SHARE_TOLERANCE) {
            continue;
        }
        share += dive->noise * cut_random_share(&dive->random);
        if (share > best_share &&
            strip_need_times(&dive->need, &relaxed->pool, &relaxed->pool.patterns[p]) > 0) {
            best = p;
            best_share = share;
        }
    }
    return best;
}

/* Fixes what is whole, or one pattern; *fixed 0: nothing can be fixed. */
static bool round_shares(struct dive *dive, const struct strip_relaxed *relaxed, int64_t *fixed) {
    for (size_t p = 0; p < relaxed->pool.pattern_count; p++) {
        int64_t whole = (int64_t)(relaxed->shares[p] + SHARE_TOLERANCE);
        if (whole > 0 && !fix(dive, &relaxed->pool, p, whole, fixed)) {
            return false;
        }
    }
    if (*fixed > 0) {
        return true;
    }
    size_t best = choose(dive, relaxed);
    return best == SIZE_MAX || fix(dive, &relaxed->pool, best, 1, fixed);
}

/* A bound for the whole job, up to the next sum of prices that buys enough length. */
static bool raise_bound(struct strip_search *search, int64_t bound) {
    const struct cut_model *model = search->model;
    int128 capacity[CUT_STOCKS_MAX];
    int128 need = 0;
    for (size_t r = 0; r < model->bin_count; r++) {
        capacity[r] = model->bins[r].length;
    }
    for (size_t k = 0; k < model->kind_count; k++) {
        need += (int128)model->kinds[k].length * model->kinds[k].demand;
    }
    int64_t least = 0;
    if (!cut_cover_least(model, capacity, need, bound, &least)) {
        return false;
    }
    search->bound = least > search->bound ? least : search->bound;
    return true;
}

/* One step; *going false: the dive is at its end, or hopeless. */
static bool step(struct dive *dive, bool first, bool *going) {
    struct strip_search *search = dive->search;
    struct strip_relaxed relaxed;
    int64_t fixed = 0;
    bool ok = strip_relax(search->model, &dive->need, &search->seed, search->effort, &search->spent,
                          &relaxed);
    /* The next sum from a bound that the last sum covers is that sum again, and each costs a walk
     * through all sums of prices: once a dive it was most of the time. */
    if (ok && first && relaxed.bound > search->bound) {
        ok = raise_bound(search, relaxed.bound);
    }
    int64_t so_far = strip_pool_cost(&dive->boards, search->model);
    *going = ok && relaxed.solved && search->cost > search->bound &&
             so_far + relaxed.bound < search->cost;
    if (*going) {
        ok = round_shares(dive, &relaxed, &fixed) && complete(dive);
        *going = ok && fixed > 0 && dive->need.left > 0 && search->cost > search->bound &&
                 search->spent < search->effort;
    }
    strip_relaxed_clear(&relaxed);
    return ok;
}

static bool dive_down(struct dive *dive) {
    strip_need_all(&dive->need, dive->search->model);
    strip_pool_cut(&dive->boards, 0);
    bool going = true;
    for (bool first = true; going; first = false) {
        if (!step(dive, first, &going)) {
            return false;
        }
    }
    return true;
}

bool strip_search_run(struct strip_search *search) {
    struct dive dive = {.search = search, .random = {1}};
    search->cost = INT64_MAX;
    bool ok = strip_need_init(&dive.need, search->model) &&
              strip_need_init(&dive.rest, search->model) && raise_bound(search, 0) &&
              complete(&dive) && strip_pool_append(&search->seed, &search->best);
    for (int round = 0; ok && search->cost > search->bound && search->spent < search->effort;
         round++) {
        dive.noise = round == 0 ? 0.0 : 0.3;
        ok = dive_down(&dive);
    }
    strip_need_clear(&dive.need);
    strip_need_clear(&dive.rest);
    strip_pool_clear(&dive.boards);
    return ok;
}

void strip_search_clear(struct strip_search *search) {
    strip_pool_clear(&search->seed);
    strip_pool_clear(&search->best);
}
