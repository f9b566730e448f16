/* SPDX-License-Identifier: MIT */
/* Rows of the program: the kinds still wanted, then the bins whose copies are limited. */
#include "cut/strip/strip_relax.h"

#include "base/int128.h"
#include "base/pool.h"
#include "cut/common/cut_lp.h"
#include "cut/strip/strip_fill.h"

#include <stdlib.h>

/* Values are scaled so that the highest price is about so much: fine enough for any bound, small
 * enough for products in 128 bits. */
#define VALUE_SCALE (INT64_C(1) << 40)

/* Share of the duals of the best bound in those that are priced (Wentges 1997). */
#define CENTER_SHARE 0.85

struct relax {
    struct pool pool; /* holds all arrays */
    const struct cut_model *model;
    const struct strip_need *need;
    size_t *row;     /* of each kind, SIZE_MAX when none is wanted */
    size_t *kind;    /* of each row */
    size_t *bin_row; /* of each bin, SIZE_MAX when unlimited */
    size_t kind_rows, rows;
    int64_t price_most, scale;
    struct cut_lp *lp;
    double *rhs, *duals;
    double *center; /* duals of the best bound so far */
    double center_bound;
    double mix;      /* share of the center in the duals that are priced */
    int64_t *values; /* the duals in integers, one a row */
    struct strip_fill_item *items;
    int64_t *counts;
    struct strip_part *parts;
    struct cut_lp_entry *entries;
    int64_t *best; /* the most that a pattern of each bin is worth */
};

static bool relax_allocate(struct relax *relax) {
    struct pool *const pool = &relax->pool;
    const size_t kinds = relax->model->kind_count;
    const size_t bins = relax->model->bin_count;
    pool_init(pool);
    relax->row = pool_take(pool, kinds, sizeof *relax->row);
    relax->kind = pool_take(pool, kinds, sizeof *relax->kind);
    relax->bin_row = pool_take(pool, bins, sizeof *relax->bin_row);
    relax->rhs = pool_take(pool, kinds + bins, sizeof *relax->rhs);
    relax->duals = pool_take(pool, kinds + bins, sizeof *relax->duals);
    relax->center = pool_take(pool, kinds + bins, sizeof *relax->center);
    relax->values = pool_take(pool, kinds + bins, sizeof *relax->values);
    relax->items = pool_take(pool, kinds, sizeof *relax->items);
    relax->counts = pool_take(pool, kinds, sizeof *relax->counts);
    relax->parts = pool_take(pool, kinds, sizeof *relax->parts);
    relax->entries = pool_take(pool, kinds + 1, sizeof *relax->entries);
    relax->best = pool_take(pool, bins, sizeof *relax->best);
    return !pool_failed(pool);
}

/* A little is added to each demand, so that few steps of the simplex are in vain; the bound does
 * not see it. */
static double loosened(int64_t demand, size_t row) {
    return (double)demand + 1e-7 * (double)(1 + (row * 7919) % 101) / 100.0;
}

static bool relax_start(struct relax *relax) {
    const struct cut_model *model = relax->model;
    for (size_t k = 0; k < model->kind_count; k++) {
        relax->row[k] = SIZE_MAX;
        if (relax->need->pieces[k] > 0) {
            relax->rhs[relax->rows] = loosened(relax->need->pieces[k], relax->rows);
            relax->kind[relax->rows] = k;
            relax->row[k] = relax->rows++;
        }
    }
    relax->kind_rows = relax->rows;
    for (size_t r = 0; r < model->bin_count; r++) {
        relax->bin_row[r] = SIZE_MAX;
        if (model->bins[r].limited) {
            relax->rhs[relax->rows] = (double)relax->need->copies[r];
            relax->bin_row[r] = relax->rows++;
        }
        if (model->bins[r].price > relax->price_most) {
            relax->price_most = model->bins[r].price;
        }
    }
    relax->price_most = relax->price_most > 0 ? relax->price_most : 1;
    relax->scale = VALUE_SCALE / relax->price_most;
    relax->scale = relax->scale > 0 ? relax->scale : 1;
    relax->lp = cut_lp_new(relax->rows, relax->rhs, relax->kind_rows);
    return relax->lp != NULL;
}

/* Adds a pattern to the pool and to the program. */
static bool add_pattern(struct relax *relax, struct strip_pool *pool, size_t bin,
                        const struct strip_part *parts, size_t count) {
    size_t entries = 0;
    for (size_t i = 0; i < count; i++) {
        relax->entries[entries++] =
            (struct cut_lp_entry){relax->row[parts[i].kind], (double)parts[i].times};
    }
    if (relax->bin_row[bin] != SIZE_MAX) {
        relax->entries[entries++] = (struct cut_lp_entry){relax->bin_row[bin], 1.0};
    }
    double cost = (double)relax->model->bins[bin].price / (double)relax->price_most;
    return strip_pool_add(pool, bin, parts, count, 1) &&
           cut_lp_add(relax->lp, relax->entries, entries, cost);
}

/* Known patterns without the pieces that are no longer wanted. */
static bool add_seed(struct relax *relax, struct strip_pool *pool, const struct strip_pool *seed) {
    for (size_t p = 0; p < seed->pattern_count; p++) {
        const struct strip_pattern *pattern = &seed->patterns[p];
        size_t count = 0;
        for (size_t i = 0; i < pattern->count; i++) {
            struct strip_part part = seed->parts[pattern->first + i];
            int64_t wanted = relax->need->pieces[part.kind];
            part.times = part.times < wanted ? part.times : wanted;
            if (part.times > 0) {
                relax->parts[count++] = part;
            }
        }
        if (count > 0 && relax->need->copies[pattern->bin] > 0 &&
            !add_pattern(relax, pool, pattern->bin, relax->parts, count)) {
            return false;
        }
    }
    return true;
}

/* Boards of one kind each: with them every demand can be met, where stock is not limited. */
static bool add_singles(struct relax *relax, struct strip_pool *pool) {
    for (size_t row = 0; row < relax->kind_rows; row++) {
        size_t kind = relax->kind[row];
        for (size_t r = 0; r < relax->model->bin_count; r++) {
            int64_t times = relax->model->bins[r].length / relax->model->kinds[kind].length;
            int64_t wanted = relax->need->pieces[kind];
            struct strip_part part = {kind, times < wanted ? times : wanted};
            if (times > 0 && relax->need->copies[r] > 0 && !add_pattern(relax, pool, r, &part, 1)) {
                return false;
            }
        }
    }
    return true;
}

/* The first center: pieces worth what their length costs at the best price. */
static void start_center(struct relax *relax) {
    const struct cut_model *model = relax->model;
    double price = -1.0;
    for (size_t r = 0; r < model->bin_count; r++) {
        double now = (double)model->bins[r].price / (double)model->bins[r].length;
        price = price < 0.0 || now < price ? now : price;
    }
    price /= (double)relax->price_most;
    for (size_t row = 0; row < relax->kind_rows; row++) {
        relax->center[row] = price * (double)model->kinds[relax->kind[row]].length;
    }
    relax->mix = 1.0;
}

/* The duals to price, to integers; none may be so large that sums overflow. */
static void round_duals(struct relax *relax) {
    cut_lp_duals(relax->lp, relax->duals);
    double unit = (double)relax->price_most * (double)relax->scale;
    for (size_t row = 0; row < relax->rows; row++) {
        double dual = row < relax->kind_rows ? relax->duals[row] : -relax->duals[row];
        dual = dual > 0.0 ? dual : 0.0;
        dual = unit * (relax->mix * relax->center[row] + (1.0 - relax->mix) * dual);
        dual = dual < 4.0 * (double)VALUE_SCALE ? dual : 4.0 * (double)VALUE_SCALE;
        relax->values[row] = (int64_t)dual;
    }
    for (size_t row = 0; row < relax->kind_rows; row++) {
        size_t kind = relax->kind[row];
        relax->items[row] = (struct strip_fill_item){relax->model->kinds[kind].length,
                                                     relax->values[row], relax->need->pieces[kind]};
    }
}

/* Whether the counts, as a pattern of the bin, are worth more than it costs at the program's own
 * duals. */
static bool improves(const struct relax *relax, size_t bin) {
    double worth = -(double)relax->model->bins[bin].price / (double)relax->price_most;
    if (relax->bin_row[bin] != SIZE_MAX) {
        worth += relax->duals[relax->bin_row[bin]];
    }
    for (size_t row = 0; row < relax->kind_rows; row++) {
        worth += relax->duals[row] * (double)relax->counts[row];
    }
    return worth > 1e-9;
}

/* Finds the best pattern of each bin; those worth more than they cost are added. */
static bool price_bins(struct relax *relax, struct strip_pool *pool, struct strip_pool *seed,
                       int64_t *spent, bool *added, bool *exact) {
    *added = false;
    *exact = true;
    for (size_t r = 0; r < relax->model->bin_count; r++) {
        const struct cut_bin *bin = &relax->model->bins[r];
        int64_t floor = bin->price * relax->scale;
        floor += relax->bin_row[r] != SIZE_MAX ? relax->values[relax->bin_row[r]] : 0;
        floor = relax->mix > 0.0 ? 0 : floor;
        relax->best[r] = floor;
        if (relax->need->copies[r] == 0) {
            continue;
        }
        struct strip_fill_result result;
        if (!strip_fill_best(relax->items, relax->kind_rows, bin->length, floor, relax->counts,
                             &result, spent)) {
            return false;
        }
        *exact = *exact && result.exact;
        relax->best[r] = result.value;
        if (!result.found || !improves(relax, r)) {
            continue;
        }
        size_t count = 0;
        for (size_t row = 0; row < relax->kind_rows; row++) {
            if (relax->counts[row] > 0) {
                relax->parts[count++] = (struct strip_part){relax->kind[row], relax->counts[row]};
            }
        }
        if (!add_pattern(relax, pool, r, relax->parts, count) ||
            !strip_pool_add(seed, r, relax->parts, count, 1)) {
            return false;
        }
        *added = true;
    }
    return true;
}

/* The bound that the integer values prove, see strip_relax.h. Scaled by over / under, no pattern of
 * an unlimited bin is worth more than its price; limited bins pay for what remains. */
static int64_t proven_bound(struct relax *relax, double *exactly) {
    int128 over = 0;
    int128 under = 0;
    for (size_t r = 0; r < relax->model->bin_count; r++) {
        int128 price = (int128)relax->model->bins[r].price * relax->scale;
        if (relax->bin_row[r] == SIZE_MAX && relax->best[r] > 0 &&
            (under == 0 || price * under < over * relax->best[r])) {
            over = price;
            under = relax->best[r];
        }
    }
    over = under == 0 ? 1 : over;
    under = under == 0 ? 1 : under;
    int128 sum = 0;
    for (size_t row = 0; row < relax->kind_rows; row++) {
        sum += (int128)relax->values[row] * relax->need->pieces[relax->kind[row]];
    }
    sum *= over;
    for (size_t r = 0; r < relax->model->bin_count; r++) {
        int128 price = (int128)relax->model->bins[r].price * relax->scale;
        int128 excess = over * relax->best[r] - under * price;
        if (relax->bin_row[r] != SIZE_MAX && excess > 0) {
            sum -= excess * relax->need->copies[r];
        }
    }
    int128 whole = under * relax->scale;
    *exactly = (double)sum / (double)whole;
    return sum > 0 ? (int64_t)(int128_up(sum, whole)) : 0;
}

/* Bounds by what was just priced; duals that prove more than before become the center. */
static void take_bound(struct relax *relax, struct strip_relaxed *relaxed) {
    double exactly = 0.0;
    int64_t bound = proven_bound(relax, &exactly);
    relaxed->bound = bound > relaxed->bound ? bound : relaxed->bound;
    if (exactly > relax->center_bound) {
        double unit = (double)relax->price_most * (double)relax->scale;
        relax->center_bound = exactly;
        for (size_t row = 0; row < relax->rows; row++) {
            relax->center[row] = (double)relax->values[row] / unit;
        }
    }
}

/* Prices duals between the center and the program's own, which keeps them from swinging; when that
 * finds nothing, the program's own alone. */
static bool generate(struct relax *relax, struct strip_pool *seed, int64_t limit, int64_t *spent,
                     struct strip_relaxed *relaxed) {
    start_center(relax);
    while (!relaxed->solved && *spent < limit) {
        bool exact = false;
        bool added = false;
        if (!cut_lp_solve(relax->lp, limit - *spent, spent)) {
            return true;
        }
        round_duals(relax);
        if (!price_bins(relax, &relaxed->pool, seed, spent, &added, &exact)) {
            return false;
        }
        if (exact) {
            take_bound(relax, relaxed);
        }
        relaxed->solved = !added && relax->mix <= 0.0;
        relax->mix = added ? CENTER_SHARE : 0.0;
    }
    return true;
}

bool strip_relax(const struct cut_model *model, const struct strip_need *need,
                 struct strip_pool *seed, int64_t limit, int64_t *spent,
                 struct strip_relaxed *relaxed) {
    struct relax relax = {.model = model, .need = need};
    *relaxed = (struct strip_relaxed){0};
    bool ok = relax_allocate(&relax) && relax_start(&relax) &&
              add_seed(&relax, &relaxed->pool, seed) && add_singles(&relax, &relaxed->pool) &&
              generate(&relax, seed, limit, spent, relaxed);
    if (ok) {
        relaxed->shares = calloc(relaxed->pool.pattern_count + 1, sizeof *relaxed->shares);
        ok = relaxed->shares != NULL;
    }
    if (ok) {
        cut_lp_values(relax.lp, relaxed->shares);
    }
    cut_lp_free(relax.lp);
    pool_clear(&relax.pool);
    return ok;
}

void strip_relaxed_clear(struct strip_relaxed *relaxed) {
    strip_pool_clear(&relaxed->pool);
    free(relaxed->shares);
    *relaxed = (struct strip_relaxed){0};
}
