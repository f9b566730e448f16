/* SPDX-License-Identifier: MIT */
#include "door/leaf_hardware.h"

#include "model/construction.h"
#include "model/limits.h"

#include <assert.h>

/* --- hinges --- */

static fig pick_hinges(const struct calc *c, const char *what, const struct steps *rule, fig by) {
    fig limits[MOST_HINGE_RULES];
    fig counts[MOST_HINGE_RULES];
    const size_t n = rule->count;
    assert(n <= MOST_HINGE_RULES);
    for (size_t i = 0; i < n; i++) {
        limits[i] = calc_given(c, "hinge rule, up to", &rule->s[i].limit);
        counts[i] = calc_given(c, "hinge rule, hinges", &rule->s[i].value);
    }
    return fig_pick_upto(c->tape, what, by, limits, counts, n);
}

/* What the hinges of a leaf carry: the leaf, and the one that hangs on it, whose figures are made
 * before. None where a density is not known. */
static fig carried(const struct calc *c, const struct leaf_figures *leaf) {
    if (leaf->door->beside == NULL || leaf->door->role == LEAF_FOLDING) {
        return leaf->weight;
    }
    return fig_none(leaf->weight) /* so is the other's, of the same materials */
               ? leaf->weight
               : fig_plus(c->tape, "weight, both leaves", leaf->weight, leaf[1].weight);
}

/* The larger of what the hinged edge and the weight ask for; none: there is no rule. */
static fig hinges_by_rule(const struct calc *c, const struct leaf_figures *leaf) {
    const struct hinge_rules *const rules = &c->rates->hinges;
    const fig weight = rules->by_weight.count > 0 ? carried(c, leaf) : (fig){0};
    fig by_height = {0};
    fig by_weight = {0};
    if (rules->by_height.count > 0) {
        by_height = pick_hinges(c, "hinges by height", &rules->by_height,
                                row_hangs_level(leaf->door->row) ? leaf->width : leaf->height);
    }
    if (!fig_none(weight)) {
        by_weight = pick_hinges(c, "hinges by weight", &rules->by_weight, weight);
    }
    if (!fig_none(by_height) && !fig_none(by_weight)) {
        return fig_larger(c->tape, "hinges", by_height, by_weight);
    }
    return fig_none(by_height) ? by_weight : by_height;
}

/* The row's number is of the hinge, not of what is between leaves that fold. */
static void take_hinges(const struct calc *c, struct leaf_figures *leaf) {
    const struct row *const row = leaf->door->row;
    if (!row_is_hinged(row) || door_hinge(leaf->door)->index < 0) {
        return;
    }
    leaf->hinges_by_rule = hinges_by_rule(c, leaf);
    if (row->hinges.set && leaf->door->role != LEAF_FOLDING) {
        leaf->hinges = calc_given(c, "hinges", &row->hinges);
    } else if (fig_none(leaf->hinges_by_rule)) {
        leaf->hinges = calc_count(c, "hinges", 2, row->place); /* no rule: a door hangs on two */
    } else {
        leaf->hinges = leaf->hinges_by_rule;
    }
}

/* The middle of hinge i of so many by the shop's rule: the first and the last so far from the ends,
 * the others evenly between, to what a tape has; one alone in the middle. */
static length hinge_by_rule(const struct door *door, length ends, int64_t count, int64_t i) {
    const length edge = door_hinged_edge(door);
    if (count == 1) {
        return size_nearest(door->step, edge / 2);
    }
    if (i == 0 || i == count - 1) {
        return i == 0 ? ends : edge - ends;
    }
    return size_nearest(door->step, ends + (edge - 2 * ends) * i / (count - 1));
}

static void place_hinges(const struct calc *c, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const struct values *const given = &door->row->hinge_at;
    const struct value *const ends = &c->rates->hinges.from_ends;
    const bool by_row = given->count > 0 && door->role != LEAF_FOLDING;
    if (fig_none(leaf->hinges) || (!by_row && !ends->set)) {
        return;
    }
    const int64_t count = tape_amount(c->tape, leaf->hinges);
    length *const at = pool_take(c->pool, (size_t)count, sizeof *at);
    for (int64_t i = 0; at != NULL && i < count; i++) {
        at[i] = by_row ? given->v[i].amount : hinge_by_rule(door, ends->amount, count, i);
    }
    leaf->hinge_at = at;
}

void hinge_rules_file(const struct calc *c) {
    const struct hinge_rules *const rules = &c->rates->hinges;
    const struct steps *const lists[] = {&rules->by_height, &rules->by_weight};
    tape_about(c->tape, "hinges");
    for (size_t l = 0; l < 2; l++) {
        for (size_t i = 0; i < lists[l]->count; i++) {
            calc_given(c, "hinge rule, up to", &lists[l]->s[i].limit);
            calc_given(c, "hinge rule, hinges", &lists[l]->s[i].value);
        }
    }
}

/* --- pulls --- */

/* Of leaves that fold the one that hangs on the other is pulled, and caught. */
static bool is_pulled(const struct door *door) {
    return door->beside == NULL || door->role == LEAF_FOLDING;
}

/* An end panel opens nothing: what the job says of pulls is not meant for it. */
static void take_pulls(const struct calc *c, struct leaf_figures *leaf) {
    const struct row *const row = leaf->door->row;
    const bool asked = row->pulls.set || row->make->own.pull.index >= 0;
    if (leaf->door->construction->pull.index >= 0 && is_pulled(leaf->door) &&
        (row->use.choice != USE_END_PANEL || asked)) {
        leaf->pulls = row->pulls.set && row->pulls.amount > 0
                          ? calc_given(c, "pulls", &row->pulls)
                          : calc_count(c, "pulls", row->pulls.amount, row->place);
    }
}

/* --- other hardware --- */

/* The pieces on a leaf; of those that the leaves of a pair share, its part. */
static fig take_item(const struct calc *c, const struct leaf_figures *leaf,
                     const struct hardware_item *item) {
    const fig count = calc_given(c, "pieces", &item->count);
    if (!item->per_opening || leaf->door->leaves == 1) {
        return count;
    }
    return fig_ratio_to(c->tape, "pieces, of the opening's", UNIT_COUNT, 2, (figs){{count}},
                        (figs){{leaf->leaves}});
}

static void take_items(const struct calc *c, struct leaf_figures *leaf) {
    const struct hardware_items *const items =
        row_hardware(leaf->door->row, leaf->door->construction);
    fig *const pieces = pool_take(c->pool, items->count, sizeof *pieces);
    leaf->pieces_of = pieces; /* all none, until they are taken */
    if (items->count == 0 || pieces == NULL || !is_pulled(leaf->door)) {
        return;
    }
    for (size_t i = 0; i < items->count; i++) {
        pieces[i] = take_item(c, leaf, &items->list[i]);
    }
    leaf->other_hardware = fig_sum(c->tape, "other hardware", UNIT_COUNT, pieces, items->count);
}

void leaf_hardware_make(struct leaf_figures *leaf, const struct calc *c) {
    take_hinges(c, leaf);
    place_hinges(c, leaf);
    take_pulls(c, leaf);
    take_items(c, leaf);
}
