/* SPDX-License-Identifier: MIT */
/* Ruin and recreate toward a goal (after Gardeyn, Wauters 2022): the sheets may cost less than the
 * best plan, so some parts are left out. A step takes a few parts off a few sheets and fills anew;
 * it is kept when it is not worse than the state was some steps ago (late acceptance, Burke, Bykov
 * 2017). Worse means: larger parts left out, or free room spread over more sheets. Once no part is
 * left out, that is the best plan, and the goal is lowered. */
#include "cut/sheet/sheet_search.h"

#include <stdlib.h>

/* Steps that late acceptance looks back. The numbers here were found by trying them on open
 * instances (docs/cutting.md); none is critical. */
#define LATE_STEPS 100

/* A step ruins up to so many sheets, each up to so many times. */
#define RUIN_SHEETS 3
#define RUIN_TIMES  2

/* The most parts taken off with a group. */
#define RUIN_PARTS ((size_t)64)

/* Chance that a ruined sheet is emptied. */
#define RUIN_ALL 0.02

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

static const struct tree_weights weights[] = {
    {1.0, 0.0, 0.0}, {1.0, 0.3, 0.0}, {1.0, 0.0, 0.3}, {0.5, 1.0, 0.0}, {0.5, 0.0, 1.0},
};
#define WEIGHTINGS (sizeof weights / sizeof weights[0])

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
        for (size_t way = 0; way < SHEET_ORDERS * WEIGHTINGS; way++) {
            if ((r > 0 && bins == 1) || (search->found && search->spent > search->effort / 10)) {
                return true;
            }
            for (size_t s = 0; s < walk->trial.slot_count; s++) {
                sheet_state_empty(&walk->trial, s);
            }
            fill.bin = r < bins ? r : SIZE_MAX;
            fill.order = (int)(way % SHEET_ORDERS);
            fill.weights = weights[way / SHEET_ORDERS];
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

/* A bought sheet by chance. */
static size_t choose_slot(struct walk *walk) {
    struct sheet_state *state = &walk->trial;
    for (int tries = 0; tries < 50; tries++) {
        size_t slot = cut_random_below(&walk->random, state->slot_count);
        if (state->slots[slot].parts > 0) {
            return slot;
        }
    }
    return SIZE_MAX;
}

/* A part of a tree, going down by chance. */
static int32_t choose_part(struct walk *walk, const struct sheet_tree *tree) {
    int32_t at = tree->root;
    while (tree->nodes[at].kind == TREE_GROUP) {
        size_t members = 0;
        for (int32_t m = tree->nodes[at].child; m != TREE_NONE; m = tree->nodes[m].next) {
            members++;
        }
        size_t skip = cut_random_below(&walk->random, members);
        at = tree->nodes[at].child;
        while (skip-- > 0) {
            at = tree->nodes[at].next;
        }
    }
    return at;
}

/* Lists the parts of a tree below a node, up to RUIN_PARTS; parts keep their numbers when others
 * are taken off. */
static size_t list_parts(const struct sheet_tree *tree, int32_t node, int32_t *parts,
                         size_t count) {
    if (tree->nodes[node].kind != TREE_GROUP) {
        parts[count] = node;
        return count + 1;
    }
    for (int32_t at = tree->nodes[node].child; at != TREE_NONE && count < RUIN_PARTS;
         at = tree->nodes[at].next) {
        count = list_parts(tree, at, parts, count);
    }
    return count;
}

/* Takes a part off a sheet with all of its group. */
static void take_group(struct sheet_state *state, size_t slot, int32_t part) {
    const struct sheet_tree *tree = &state->slots[slot];
    int32_t group = tree->nodes[part].parent;
    int32_t parts[RUIN_PARTS];
    size_t count = list_parts(tree, group != TREE_NONE ? group : part, parts, 0);
    for (size_t i = 0; i < count; i++) {
        sheet_state_take_out(state, slot, parts[i]);
    }
}

/* Takes parts off one to three sheets: single ones, a part with its neighbors, rarely all. */
static void ruin(struct walk *walk) {
    struct sheet_state *state = &walk->trial;
    size_t sheets = 1 + cut_random_below(&walk->random, RUIN_SHEETS);
    for (size_t n = 0; n < sheets; n++) {
        size_t slot = choose_slot(walk);
        if (slot == SIZE_MAX) {
            return;
        }
        if (cut_random_share(&walk->random) < RUIN_ALL) {
            sheet_state_empty(state, slot);
            continue;
        }
        bool groups = cut_random_below(&walk->random, 2) == 0;
        size_t times = 1 + cut_random_below(&walk->random, RUIN_TIMES);
        for (size_t i = 0; i < times && state->slots[slot].parts > 0; i++) {
            int32_t part = choose_part(walk, &state->slots[slot]);
            if (groups && cut_random_below(&walk->random, 2) == 0) {
                take_group(state, slot, part);
            } else {
                sheet_state_take_out(state, slot, part);
            }
        }
    }
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
        size_t slot = choose_slot(walk);
        if (slot == SIZE_MAX) {
            break;
        }
        sheet_state_empty(&walk->trial, slot);
    }
    struct sheet_fill fill = {.budget = budget, .bin = SIZE_MAX, .weights = weights[0]};
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
        .weights = weights[cut_random_below(&walk->random, WEIGHTINGS)],
        .noise = 0.1 * (double)cut_random_below(&walk->random, 2),
        .bin = SIZE_MAX,
    };
    ruin(walk);
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

bool sheet_search_run(struct sheet_search *search) {
    struct walk walk = {.search = search, .random = {UINT64_C(88172645463325252)}};
    bool ok = sheet_state_init(&search->best, search->model) &&
              sheet_state_init(&walk.now, search->model) &&
              sheet_state_init(&walk.trial, search->model) && start(&walk);
    int64_t goal = INT64_MAX;
    while (ok && search->found && search->best.cost > search->bound &&
           search->spent < search->effort) {
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
    return ok;
}

void sheet_search_clear(struct sheet_search *search) {
    sheet_state_clear(&search->best);
}
