/* SPDX-License-Identifier: MIT */
/* A step takes a few parts off a few sheets and fills anew for the same money; where all parts have
 * found a place, cuts are counted, and where these are few enough, the sheets that changed are
 * drawn for their offcuts. */
#include "cut/sheet/sheet_tidy.h"

#include "cut/sheet/sheet_layout.h"
#include "cut/sheet/sheet_ruin.h"
#include "cut/sheet/sheet_tally.h"

#include <math.h>
#include <stdlib.h>

/* Steps that late acceptance looks back. */
#define LATE_STEPS ((size_t)50)

/* Steps without news that end the search: so many, and so many more for each part. */
#define PATIENCE          ((size_t)1000)
#define PATIENCE_PER_PART ((size_t)10)

/* What a sheet comes to, or all of them. */
struct neat {
    int64_t cuts;
    double offcut; /* area of the largest worth keeping */
};

struct tidy {
    struct sheet_search *search;
    struct sheet_state now, trial;
    struct neat *now_neat, *trial_neat; /* one a slot; nothing where none is bought */
    size_t room;
    struct sheet_plan drawn; /* scratch: one sheet */
    struct neat best;
    double whole; /* area of the largest sheet: no offcut is larger */
    double worth, late[LATE_STEPS];
    struct cut_random random;
};

/* The largest offcut of a sheet as it is drawn. */
static bool measure_offcut(struct tidy *tidy, const struct sheet_tree *tree, struct neat *neat) {
    struct sheet_search *const search = tidy->search;
    tidy->drawn.sheet_count = 0;
    tidy->drawn.node_count = 0;
    tidy->drawn.part_count = 0;
    if (!sheet_layout_add(&tidy->drawn, search->model, search->job, search->keep, tree)) {
        return false;
    }
    for (size_t i = 0; i < tidy->drawn.node_count; i++) {
        const struct sheet_node *const n = &tidy->drawn.nodes[i];
        const double area = (double)n->length * (double)n->width;
        if (n->use == SHEET_OFFCUT && area > neat->offcut &&
            sheet_keeps(search->keep, n->length, n->width)) {
            neat->offcut = area;
        }
    }
    cut_spend(&search->spent, 20 * (int64_t)tidy->drawn.node_count);
    return true;
}

static bool grow(struct tidy *tidy) {
    const size_t slots = tidy->trial.slot_count;
    if (slots <= tidy->room) {
        return true;
    }
    const size_t room = 2 * slots;
    struct neat *const now = realloc(tidy->now_neat, room * sizeof *now);
    tidy->now_neat = now != NULL ? now : tidy->now_neat;
    struct neat *const trial = realloc(tidy->trial_neat, room * sizeof *trial);
    tidy->trial_neat = trial != NULL ? trial : tidy->trial_neat;
    if (now == NULL || trial == NULL) {
        return false;
    }
    for (size_t s = tidy->room; s < room; s++) {
        now[s] = (struct neat){0, 0.0};
    }
    tidy->room = room;
    return true;
}

/* What the sheets of the trial come to. Those that changed are drawn, where offcuts can make it
 * worth less than `most`; *drawn: they were. */
static bool measure(struct tidy *tidy, double most, struct neat *all, bool *drawn) {
    const struct sheet_search *const search = tidy->search;
    const struct sheet_state *const trial = &tidy->trial;
    *all = (struct neat){0, 0.0};
    if (!grow(tidy)) {
        return false;
    }
    for (size_t s = 0; s < trial->slot_count; s++) {
        const struct sheet_tree *const tree = &trial->slots[s];
        struct neat *const neat = &tidy->trial_neat[s];
        *neat = tidy->now_neat[s];
        if (trial->touched[s]) {
            *neat = (struct neat){0, 0.0};
            neat->cuts = tree->parts > 0 ? sheet_layout_cuts(search->model, search->job, tree) : 0;
        }
        all->cuts += neat->cuts;
    }
    *drawn = (double)(all->cuts - 1) < most;
    for (size_t s = 0; s < trial->slot_count && *drawn; s++) {
        struct neat *const neat = &tidy->trial_neat[s];
        if (trial->touched[s] && trial->slots[s].parts > 0 &&
            !measure_offcut(tidy, &trial->slots[s], neat)) {
            return false;
        }
        all->offcut = neat->offcut > all->offcut ? neat->offcut : all->offcut;
    }
    return true;
}

/* Lower is better: cuts, and less than one for the offcut. */
static double worth_of(const struct tidy *tidy, const struct neat *neat) {
    return (double)neat->cuts - neat->offcut / (tidy->whole * (1.0 + 1e-9));
}

static void untouch(struct sheet_state *state, bool touched) {
    for (size_t s = 0; s < state->slot_count; s++) {
        state->touched[s] = touched;
    }
}

/* Makes the trial the state now. */
static bool accept(struct tidy *tidy, const struct neat *all) {
    tidy->worth = worth_of(tidy, all);
    for (size_t s = 0; s < tidy->trial.slot_count; s++) {
        tidy->now_neat[s] = tidy->trial_neat[s];
    }
    return sheet_state_copy(&tidy->now, &tidy->trial);
}

/* Keeps the trial where it is neater than the best, or cheaper. */
static bool offer(struct tidy *tidy, const struct neat *all, bool *news) {
    struct sheet_state *const best = &tidy->search->best;
    const bool cheaper = tidy->trial.cost < best->cost;
    *news = cheaper || worth_of(tidy, all) < worth_of(tidy, &tidy->best);
    if (!*news) {
        return true;
    }
    tidy->best = *all;
    untouch(best, true);
    return sheet_state_copy(best, &tidy->trial);
}

static const double noises[] = {0.0, 0.1, 1.0, 10.0};

static bool one_step(struct tidy *tidy, size_t step, bool *news) {
    struct sheet_state *const trial = &tidy->trial;
    struct cut_random *const random = &tidy->random;
    const struct sheet_fill fill = {
        .budget = tidy->search->best.cost,
        .order = (int)cut_random_below(random, SHEET_ORDERS),
        .shuffle = cut_random_share(random),
        .weights = sheet_weightings[cut_random_below(random, SHEET_WEIGHTINGS)],
        .noise = noises[cut_random_below(random, 4)],
        .bin = SIZE_MAX,
    };
    struct neat all = {0, 0.0};
    double *const late = &tidy->late[step % LATE_STEPS];
    *news = false;
    sheet_ruin(trial, random);
    if (!sheet_state_fill(trial, &fill, random, &tidy->search->spent)) {
        return false;
    }
    const double most = trial->cost < tidy->now.cost ? INFINITY
                        : *late > tidy->worth        ? *late
                                                     : tidy->worth;
    bool keep = trial->out_area <= 0.0;
    bool ok = !keep || measure(tidy, most, &all, &keep);
    keep = keep && ok && worth_of(tidy, &all) <= most;
    if (keep) {
        ok = offer(tidy, &all, news) && accept(tidy, &all);
    } else {
        ok = ok && sheet_state_copy(trial, &tidy->now);
    }
    untouch(trial, false);
    *late = tidy->worth;
    return ok;
}

/* The best plan of the search as the state now and the trial, measured. */
static bool begin(struct tidy *tidy) {
    const struct cut_model *const model = tidy->search->model;
    struct sheet_state *const best = &tidy->search->best;
    for (size_t r = 0; r < model->bin_count; r++) {
        const struct cut_stock *const stock = &tidy->search->job->stocks[model->bins[r].stock];
        const double area = (double)stock->length * (double)stock->width;
        tidy->whole = area > tidy->whole ? area : tidy->whole;
    }
    untouch(best, true);
    if (!sheet_state_init(&tidy->now, model) || !sheet_state_init(&tidy->trial, model) ||
        !sheet_state_copy(&tidy->trial, best)) {
        return false;
    }
    untouch(&tidy->trial, true);
    bool drawn = false;
    if (!measure(tidy, INFINITY, &tidy->best, &drawn) || !accept(tidy, &tidy->best)) {
        return false;
    }
    untouch(&tidy->trial, false);
    for (size_t i = 0; i < LATE_STEPS; i++) {
        tidy->late[i] = tidy->worth;
    }
    return true;
}

bool sheet_tidy(struct sheet_search *search, int64_t effort) {
    struct tidy tidy = {.search = search, .random = {UINT64_C(2685821657736338717)}};
    const int64_t limit = search->spent + effort;
    size_t patience = PATIENCE;
    if (search->best.slot_count == 0) {
        return true;
    }
    size_t since = 0;
    for (size_t k = 0; k < search->model->kind_count; k++) {
        patience += PATIENCE_PER_PART * (size_t)search->model->kinds[k].demand;
    }
    bool ok = begin(&tidy);
    for (size_t step = 0; ok && since < patience && search->spent < limit; step++) {
        bool news = false;
        ok = one_step(&tidy, step, &news);
        since = news ? 0 : since + 1;
    }
    sheet_state_clear(&tidy.now);
    sheet_state_clear(&tidy.trial);
    free(tidy.now_neat);
    free(tidy.trial_neat);
    free(tidy.drawn.nodes);
    free(tidy.drawn.parts);
    free(tidy.drawn.sheets);
    return ok;
}
