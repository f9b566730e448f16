/* SPDX-License-Identifier: MIT */
/* Of sheet plans that cost the same: the fewest cuts, then the largest offcut worth keeping. Held
 * against every way of cutting one sheet, tried one by one. */
#include "cmocka_all.h"
#include "cut/check/plan_check.h"
#include "cut/common/cut_random.h"
#include "cut/sheet/sheet_tally.h"

#include <stdlib.h>
#include <string.h>

#define EFFORT (CUT_EFFORT_SECOND / 10)

/* Sheets of the trial of every way: sides and parts up to these. */
enum { SIDE = 16, PARTS = 4, NEVER = 1000 };

struct neat {
    int64_t cuts, offcut;
};

/* Fewer cuts, then the larger offcut. */
static bool is_neater(struct neat a, struct neat b) {
    return a.cuts < b.cuts || (a.cuts == b.cuts && a.offcut > b.offcut);
}

/* --- every way --- */

struct ways {
    int64_t kerf;
    struct offcut_rule keep;
    struct cut_item parts[PARTS]; /* one piece each */
    bool known[SIDE + 1][SIDE + 1][1 << PARTS];
    struct neat best[SIDE + 1][SIDE + 1][1 << PARTS];
};

static bool is_part(const struct ways *w, int64_t along, int64_t across, unsigned parts) {
    for (size_t i = 0; i < PARTS; i++) {
        const struct cut_item *const p = &w->parts[i];
        if (parts == 1U << i) {
            return (p->length == along && p->width == across) ||
                   (p->turn && p->width == along && p->length == across);
        }
    }
    return false;
}

/* The neatest way to cut just these parts from a region; NEVER cuts: there is none. */
static struct neat cut_all_ways(struct ways *w, int64_t along, int64_t across, unsigned parts);

/* Every cut of the region one way. */
static void try_cuts(struct ways *w, int64_t along, int64_t across, unsigned parts, bool lengthwise,
                     struct neat *best) {
    const int64_t size = lengthwise ? along : across;
    for (int64_t at = 1; at < size; at++) {
        const int64_t rest = size - at - w->kerf > 0 ? size - at - w->kerf : 0;
        for (unsigned near = 0; near <= parts; near++) {
            const unsigned far = parts & ~near;
            if ((near & ~parts) != 0 || (rest == 0 && far != 0)) {
                continue;
            }
            const struct neat a =
                lengthwise ? cut_all_ways(w, at, across, near) : cut_all_ways(w, along, at, near);
            struct neat b = {0, 0};
            if (rest > 0) {
                b = lengthwise ? cut_all_ways(w, rest, across, far)
                               : cut_all_ways(w, along, rest, far);
            }
            const struct neat both = {1 + a.cuts + b.cuts,
                                      a.offcut > b.offcut ? a.offcut : b.offcut};
            *best = is_neater(both, *best) ? both : *best;
        }
    }
}

static struct neat cut_all_ways(struct ways *w, int64_t along, int64_t across, unsigned parts) {
    struct neat *const best = &w->best[along][across][parts];
    if (w->known[along][across][parts]) {
        return *best;
    }
    struct neat found = {NEVER, 0};
    if (parts == 0) {
        found.cuts = 0;
        found.offcut = sheet_keeps(w->keep, along, across) ? along * across : 0;
    } else if (is_part(w, along, across, parts)) {
        found.cuts = 0;
    } else {
        try_cuts(w, along, across, parts, true, &found);
        try_cuts(w, along, across, parts, false, &found);
    }
    w->known[along][across][parts] = true;
    *best = found;
    return found;
}

/* --- the planner --- */

static struct neat neat_of(const struct sheet_plan *plan, struct offcut_rule keep) {
    struct neat neat = {0, 0};
    for (size_t i = 0; i < plan->node_count; i++) {
        const struct sheet_node *const n = &plan->nodes[i];
        const int64_t area = n->length * n->width;
        neat.cuts += n->use == SHEET_CUT_X || n->use == SHEET_CUT_Y;
        if (n->use == SHEET_OFFCUT && sheet_keeps(keep, n->length, n->width) &&
            area > neat.offcut) {
            neat.offcut = area;
        }
    }
    return neat;
}

static struct sheet_plan *planned(const struct cut_job *job, struct offcut_rule keep) {
    struct sheet_plan *plan = NULL;
    assert_int_equal(sheet_plan_make(job, keep, EFFORT, &plan), CUT_DONE);
    assert_string_equal(plan_fault_text(sheet_plan_check(job, plan).fault),
                        plan_fault_text(PLAN_GOOD));
    return plan;
}

/* --- cases --- */

/* Four parts of a sheet of 100 x 60, kerf 1: three of 30 x 20 side by side, one of 40 x 20. */
static void fewest_cuts_come_first(void **state) {
    (void)state;
    const struct cut_stock sheet = {100, 60, 10, CUT_UNLIMITED};
    const struct cut_item items[] = {{30, 20, 3, false}, {40, 20, 1, false}};
    const struct cut_job job = {
        .kerf = 1, .stocks = &sheet, .stock_count = 1, .items = items, .item_count = 2};
    const struct offcut_rule keep = {.length = 30, .sheet_width = 15};
    struct sheet_plan *const plan = planned(&job, keep);
    const struct neat neat = neat_of(plan, keep);
    assert_int_equal(plan->cost, 10);
    /* 3 x 30 with two kerfs are 92 long, too long for 40 more beside them: rip 20, crosscut three
     * and an end; cut 40 off the other 100 x 39, and 20 of that. */
    assert_int_equal(neat.cuts, 6);
    /* what is beside the part of 40 in the 100 x 39 below the strip of three */
    assert_int_equal(neat.offcut, 59 * 39);
    sheet_plan_free(plan);
}

/* Three parts of half a sheet: one sheet is filled, of the other a half is left. */
static void the_rule_says_what_is_kept(void **state) {
    (void)state;
    const struct cut_stock sheet = {101, 60, 10, CUT_UNLIMITED};
    const struct cut_item items[] = {{50, 60, 3, false}};
    const struct cut_job job = {
        .kerf = 1, .stocks = &sheet, .stock_count = 1, .items = items, .item_count = 1};
    const struct offcut_rule any = {.length = 50, .sheet_width = 50};
    const struct offcut_rule none = {.length = 61, .sheet_width = 50};
    struct sheet_plan *const plan = planned(&job, any);
    assert_int_equal(plan->cost, 20);
    assert_int_equal(neat_of(plan, any).cuts, 2);
    assert_int_equal(neat_of(plan, any).offcut, 50 * 60);
    assert_int_equal(neat_of(plan, none).offcut, 0);
    sheet_plan_free(plan);
}

/* Four parts and one sheet that holds them, three hundred times. */
static void no_way_of_cutting_is_neater(void **state) {
    (void)state;
    struct ways *const w = calloc(1, sizeof *w);
    struct cut_random random = {7};
    int tried = 0;
    int kept = 0;
    int largest = 0;
    assert_non_null(w);
    while (tried < 300) {
        const struct cut_stock sheet = {
            .length = 8 + (int64_t)cut_random_below(&random, SIDE - 7),
            .width = 6 + (int64_t)cut_random_below(&random, SIDE - 5),
            .price = 1,
            .copies = CUT_UNLIMITED,
        };
        memset(w, 0, sizeof *w);
        w->kerf = (int64_t)cut_random_below(&random, 2);
        w->keep = (struct offcut_rule){.length = 4, .sheet_width = 2};
        const bool turn = cut_random_below(&random, 2) == 0;
        for (size_t i = 0; i < PARTS; i++) {
            w->parts[i] = (struct cut_item){.length = 1 + (int64_t)cut_random_below(&random, 7),
                                            .width = 1 + (int64_t)cut_random_below(&random, 6),
                                            .demand = 1,
                                            .turn = turn};
        }
        const struct neat best = cut_all_ways(w, sheet.length, sheet.width, (1U << PARTS) - 1);
        if (best.cuts >= NEVER) {
            continue;
        }
        tried++;
        const struct cut_job job = {.kerf = w->kerf,
                                    .stocks = &sheet,
                                    .stock_count = 1,
                                    .items = w->parts,
                                    .item_count = PARTS};
        struct sheet_plan *const plan = planned(&job, w->keep);
        const struct neat neat = neat_of(plan, w->keep);
        if (plan->cost != 1 || neat.cuts != best.cuts || neat.offcut > best.offcut) {
            fail_msg("try %d: cost %lld, cuts %lld of %lld, offcut %lld of %lld", tried,
                     (long long)plan->cost, (long long)neat.cuts, (long long)best.cuts,
                     (long long)neat.offcut, (long long)best.offcut);
        }
        kept += best.offcut > 0;
        largest += best.offcut > 0 && neat.offcut == best.offcut;
        sheet_plan_free(plan);
    }
    /* The search is by chance: the fewest cuts it finds in all of these, the largest offcut that
     * goes with them in nearly all. */
    assert_true(kept > 200);
    assert_true(100 * largest >= 95 * kept);
    free(w);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(fewest_cuts_come_first),
        cmocka_unit_test(the_rule_says_what_is_kept),
        cmocka_unit_test(no_way_of_cutting_is_neater),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
