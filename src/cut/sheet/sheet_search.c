/* SPDX-License-Identifier: MIT */
/* Ruin and recreate toward a goal (after Gardeyn, Wauters 2022): the sheets may cost less than the
 * best plan, so some parts are left out. A step takes a few parts off a few sheets and fills anew;
 * it is kept when it is not worse than the state was some steps ago (late acceptance, Burke, Bykov
 * 2017). Worse means: larger parts left out, or free room spread over more sheets. Once no part is
 * left out, that is the best plan, and the goal is lowered. */
#include "cut/sheet/sheet_search.h"

#include "cut/sheet/sheet_ruin.h"
#include "cut/sheet/sheet_tidy.h"

#include <stdlib.h>

/* Steps that late acceptance looks back. The numbers here were found by trying them on open
 * instances (docs/cutting.md); none is critical. */
#define LATE_STEPS 100

/* The part of the effort that is spent beyond it, on making the cheapest plan neat, and its least:
 * about a millisecond. */
#define TIDY_SHARE 25
#define TIDY_LEAST (CUT_EFFORT_SECOND / 1000)

/* What the search spends of an effort of more than a fifth of a second: of many parts less, which
 * finds what all of it found when a step took several times as long. */
#define FEW_PARTS_SHARE  50 /* percent */
#define MANY_PARTS_SHARE 25
#define MANY_PARTS       500

/* What the square of a sheet's free share is worth, in sheets of parts left out. */
#define FREE_WORTH 0.5

struct walk {
    struct sheet_search *search;
    struct sheet_state now, trial;
    struct cut_random random;
    double worth; /* of `now`, lower is better */
    double late[LATE_STEPS];
    size_t step;
};

const struct tree_weights sheet_weightings[SHEET_WEIGHTINGS] = {
    {1.0, 0.0, 0.0}, {1.0, 0.3, 0.0}, {1.0, 0.0, 0.3}, {0.5, 1.0, 0.0}, {0.5, 0.0, 1.0},
};

/* Keeps a state without parts left out when it is the cheapest. */
static bool offer(struct sheet_search *search, const struct sheet_state *state) {
    if (state->out_area > 0.0 || (search->found && state->cost >= search->best.cost)) {
        return true;
    }
    search->found = true;
    for (size_t s = 0; s < search->best.slot_count; s++) {
        search->best.touched[s] = true;
    }
    return sheet_state_copy(&search->best, state);
}

/* One plan a bin, order and weighting, from nothing. */
static bool start(struct walk *walk) {
    struct sheet_search *search = walk->search;
    struct sheet_fill fill = {.budget = INT64_MAX};
    size_t bins = search->model->bin_count;
    for (size_t r = 0; r <= bins; r++) {
        for (size_t way = 0; way < SHEET_ORDERS * SHEET_WEIGHTINGS; way++) {
            if ((r > 0 && bins == 1) || (search->found && search->spent > search->effort / 10)) {
                return true;
            }
            for (size_t s = 0; s < walk->trial.slot_count; s++) {
                sheet_state_empty(&walk->trial, s);
            }
            fill.bin = r < bins ? r : SIZE_MAX;
            fill.order = (int)(way % SHEET_ORDERS);
            fill.weights = sheet_weightings[way / SHEET_ORDERS];
            if (!sheet_state_fill(&walk->trial, &fill, &walk->random, &search->spent) ||
                !offer(search, &walk->trial)) {
                return false;
            }
            if (search->found && search->best.cost <= search->bound) {
                return true;
            }
        }
    }
    return true;
}

/* The area left out, less a share of the free room where much of it is together. */
static double worth_of(const struct sheet_state *state) {
    double worth = state->out_area;
    for (size_t s = 0; s < state->slot_count; s++) {
        const struct sheet_tree *tree = &state->slots[s];
        if (tree->parts > 0) {
            double whole = (double)tree->length * (double)tree->width;
            double spare = whole - tree->area;
            worth -= FREE_WORTH * spare * spare / whole;
        }
    }
    return worth;
}

/* Gives up sheets until the rest is within the budget. */
static bool lower_goal(struct walk *walk, int64_t budget) {
    while (walk->trial.cost > budget) {
        size_t slot = sheet_ruin_slot(&walk->trial, &walk->random);
        if (slot == SIZE_MAX) {
            break;
        }
        sheet_state_empty(&walk->trial, slot);
    }
    struct sheet_fill fill = {.budget = budget, .bin = SIZE_MAX, .weights = sheet_weightings[0]};
    if (!sheet_state_fill(&walk->trial, &fill, &walk->random, &walk->search->spent) ||
        !offer(walk->search, &walk->trial) || !sheet_state_copy(&walk->now, &walk->trial)) {
        return false;
    }
    for (size_t s = 0; s < walk->trial.slot_count; s++) {
        walk->trial.touched[s] = false;
    }
    walk->worth = worth_of(&walk->now);
    for (size_t i = 0; i < LATE_STEPS; i++) {
        walk->late[i] = walk->worth;
    }
    return true;
}

static bool one_step(struct walk *walk, int64_t budget) {
    struct sheet_state *trial = &walk->trial;
    struct sheet_fill fill = {
        .budget = budget,
        .order = (int)cut_random_below(&walk->random, SHEET_ORDERS),
        .shuffle = cut_random_share(&walk->random),
        .weights = sheet_weightings[cut_random_below(&walk->random, SHEET_WEIGHTINGS)],
        .noise = 0.1 * (double)cut_random_below(&walk->random, 2),
        .bin = SIZE_MAX,
    };
    sheet_ruin(trial, &walk->random);
    if (!sheet_state_fill(trial, &fill, &walk->random, &walk->search->spent)) {
        return false;
    }
    double *late = &walk->late[walk->step++ % LATE_STEPS];
    double worth = worth_of(trial);
    bool keep = worth <= walk->worth || worth <= *late;
    walk->worth = keep ? worth : walk->worth;
    if (keep && !offer(walk->search, trial)) {
        return false;
    }
    bool ok = keep ? sheet_state_copy(&walk->now, trial) : sheet_state_copy(trial, &walk->now);
    for (size_t s = 0; s < trial->slot_count; s++) {
        trial->touched[s] = false;
    }
    *late = walk->worth;
    return ok;
}

static int64_t effort_of(const struct sheet_search *search) {
    const int64_t all = search->effort;
    const int64_t share =
        all / 100 * (search->model->pieces > MANY_PARTS ? MANY_PARTS_SHARE : FEW_PARTS_SHARE);
    const int64_t least = CUT_EFFORT_SECOND / 5 < all ? CUT_EFFORT_SECOND / 5 : all;
    return share > least ? share : least;
}

bool sheet_search_run(struct sheet_search *search) {
    struct walk walk = {.search = search, .random = {UINT64_C(88172645463325252)}};
    bool ok = sheet_state_init(&search->best, search->model) &&
              sheet_state_init(&walk.now, search->model) &&
              sheet_state_init(&walk.trial, search->model) && start(&walk);
    const int64_t effort = effort_of(search);
    int64_t goal = INT64_MAX;
    while (ok && search->found && search->best.cost > search->bound && search->spent < effort) {
        if (search->best.cost - 1 < goal) {
            goal = search->best.cost - 1;
            for (size_t s = 0; s < walk.trial.slot_room; s++) {
                walk.trial.touched[s] = true;
            }
            ok = sheet_state_copy(&walk.trial, &search->best);
            for (size_t s = 0; s < walk.trial.slot_room; s++) {
                walk.trial.touched[s] = true;
            }
            ok = ok && lower_goal(&walk, goal);
        } else {
            ok = one_step(&walk, goal);
        }
    }
    sheet_state_clear(&walk.now);
    sheet_state_clear(&walk.trial);
    const int64_t share = search->effort / TIDY_SHARE;
    return ok && (!search->found || sheet_tidy(search, share > TIDY_LEAST ? share : TIDY_LEAST));
}

void sheet_search_clear(struct sheet_search *search) {
    sheet_state_clear(&search->best);
}
