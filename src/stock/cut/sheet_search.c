/* SPDX-License-Identifier: MIT */
/* Ruin and recreate toward a goal (after Gardeyn, Wauters 2022): the sheets may cost less than the
 * best plan, so some parts are left out. A step takes parts off a few sheets and fills anew; it is
 * kept when the parts left out are not larger than they were some steps ago (late acceptance,
 * Burke, Bykov 2017). Once none is left out, that is the best plan, and the goal is lowered. */
#include "sheet_search.h"

#include <stdlib.h>

/* Steps that late acceptance looks back. */
#define LATE_STEPS 300

struct walk {
    struct sheet_search *search;
    struct sheet_state now, trial;
    struct cut_random random;
    double late[LATE_STEPS];
    size_t step;
};

static const struct tree_taste tastes[] = {
    {1.0, 0.0, 0.0},
    {1.0, 0.3, 0.0},
    {1.0, 0.0, 0.3},
    {0.5, 1.0, 0.0},
    {0.5, 0.0, 1.0},
};
#define TASTES (sizeof tastes / sizeof tastes[0])

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

/* One plan a room, order and taste, from nothing. */
static bool start(struct walk *walk) {
    struct sheet_search *search = walk->search;
    struct sheet_fill fill = {.budget = INT64_MAX};
    size_t rooms = search->model->room_count;
    for (size_t r = 0; r <= rooms; r++) {
        for (size_t way = 0; way < SHEET_ORDERS * TASTES; way++) {
            if ((r > 0 && rooms == 1) || (search->found && search->spent > search->effort / 10)) {
                return true;
            }
            for (size_t s = 0; s < walk->trial.slot_count; s++) {
                sheet_state_empty(&walk->trial, s);
            }
            fill.room = r < rooms ? r : SIZE_MAX;
            fill.order = (int)(way % SHEET_ORDERS);
            fill.taste = tastes[way / SHEET_ORDERS];
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

/* Takes parts off one to three sheets: all of them, or some. */
static void ruin(struct walk *walk) {
    struct sheet_state *state = &walk->trial;
    size_t sheets = 1 + cut_random_below(&walk->random, 3);
    for (size_t n = 0; n < sheets; n++) {
        size_t slot = choose_slot(walk);
        if (slot == SIZE_MAX) {
            return;
        }
        if (cut_random_below(&walk->random, 3) == 0) {
            sheet_state_empty(state, slot);
            continue;
        }
        size_t parts = 1 + cut_random_below(&walk->random, (size_t)state->slots[slot].parts);
        for (size_t i = 0; i < parts && state->slots[slot].parts > 0; i++) {
            sheet_state_take_out(state, slot, choose_part(walk, &state->slots[slot]));
        }
    }
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
    struct sheet_fill fill = {.budget = budget, .room = SIZE_MAX, .taste = tastes[0]};
    if (!sheet_state_fill(&walk->trial, &fill, &walk->random, &walk->search->spent) ||
        !offer(walk->search, &walk->trial) || !sheet_state_copy(&walk->now, &walk->trial)) {
        return false;
    }
    for (size_t s = 0; s < walk->trial.slot_count; s++) {
        walk->trial.touched[s] = false;
    }
    for (size_t i = 0; i < LATE_STEPS; i++) {
        walk->late[i] = walk->now.out_area;
    }
    return true;
}

static bool one_step(struct walk *walk, int64_t budget) {
    struct sheet_state *trial = &walk->trial;
    struct sheet_fill fill = {
        .budget = budget,
        .order = (int)cut_random_below(&walk->random, SHEET_ORDERS),
        .shuffle = cut_random_share(&walk->random),
        .taste = tastes[cut_random_below(&walk->random, TASTES)],
        .noise = 0.1 * (double)cut_random_below(&walk->random, 3),
        .room = SIZE_MAX,
    };
    ruin(walk);
    if (!sheet_state_fill(trial, &fill, &walk->random, &walk->search->spent)) {
        return false;
    }
    double *late = &walk->late[walk->step++ % LATE_STEPS];
    bool keep = trial->out_area <= walk->now.out_area || trial->out_area <= *late;
    if (keep && !offer(walk->search, trial)) {
        return false;
    }
    bool ok = keep ? sheet_state_copy(&walk->now, trial) : sheet_state_copy(trial, &walk->now);
    for (size_t s = 0; s < trial->slot_count; s++) {
        trial->touched[s] = false;
    }
    *late = walk->now.out_area;
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
