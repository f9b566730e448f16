/* SPDX-License-Identifier: MIT */
#include "door/warn_hardware.h"

#include "base/pool.h"
#include "door/leaf.h"
#include "door/quantity.h"
#include "model/construction.h"

#include <assert.h>

static const char *id_of(const struct calc *c, const struct door *door) {
    return problem_quote(c->problems, door->row->id.s);
}

/* --- how many hinges --- */

/* Fewer than the rules give let a door sag; more than twice as many are a slip of the hand. */
static void ask_count(const struct calc *c, const struct leaf_figures *leaf) {
    const struct value *const given = &leaf->door->row->hinges;
    if (!given->set || fig_none(leaf->hinges_by_rule) || leaf->door->role == LEAF_FOLDING) {
        return;
    }
    const int64_t rule = tape_amount(c->tape, leaf->hinges_by_rule);
    if (given->amount > 2 * rule) {
        problem_add(c->problems, SEVERITY_WARNING, "hinges-many", given->place,
                    "door '%s' gets %d hinges a leaf, the rules of [hinges] give %d; is that so, "
                    "or a slip of the pen?",
                    id_of(c, leaf->door), (int)given->amount, (int)rule);
    }
    if (given->amount >= rule) {
        return;
    }
    problem_add(c->problems, SEVERITY_WARNING, "hinges-few", given->place,
                "door '%s' gets %d hinge%s a leaf, the rules of [hinges] give %d; ask the maker of "
                "the hinge",
                id_of(c, leaf->door), (int)given->amount, given->amount == 1 ? "" : "s", (int)rule);
}

/* Beyond the last rule its count is taken, which no chart says is enough; a row may say its own. */
static void ask_chart(const struct calc *c, const struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const struct steps *const rule = &c->rates->hinges.by_height;
    const length edge = door_hinged_edge(door);
    char size[32];
    char most[32];
    const bool counted = door->row->hinges.set && door->role != LEAF_FOLDING;
    if (fig_none(leaf->hinges) || rule->count == 0 || counted ||
        edge <= rule->s[rule->count - 1].limit.amount) {
        return;
    }
    problem_add(
        c->problems, SEVERITY_WARNING, "hinges-beyond-chart", door->row->place,
        "the hinged edge of door '%s' is %s, the chart of [hinges] ends at %s: its last "
        "count is taken; ask the maker of the hinge",
        id_of(c, door), length_show(edge, c->units->lengths, size, sizeof size),
        length_show(rule->s[rule->count - 1].limit.amount, c->units->lengths, most, sizeof most));
}

/* --- where they are --- */

/* What is wrong with bores, and what may be changed; NULL: nothing. */
struct bore_fault {
    const char *what, *mend;
};

#define OR_RULE      ", or change 'from the ends' of [hinges]"
#define OTHER_PLACES "give the row other places in the column 'hinges at'"

/* Of a leaf; a hinge without a cup is a point. by_row: the row gives the places. */
static struct bore_fault bores_wrong(const struct calc *c, const struct leaf_figures *leaf,
                                     bool by_row) {
    const struct door *const door = leaf->door;
    const struct hardware *const hinge = &c->rates->hardware[door_hinge(door)->index];
    const length cup = hinge->cup.set ? hinge->cup.amount : 0;
    const length edge = door_hinged_edge(door);
    const length across = door->width + door->height - edge;
    const int64_t count = tape_amount(c->tape, leaf->hinges);
    if (hinge->cup.set &&
        (hinge->cup_center.amount < cup / 2 || hinge->cup_center.amount + cup / 2 > across)) {
        return (struct bore_fault){"run off the door across its hinged edge",
                                   "change 'cup' or 'cup center' of the hinge, or its width"};
    }
    for (int64_t i = 0; i < count; i++) {
        if (leaf->hinge_at[i] < cup / 2 || leaf->hinge_at[i] + cup / 2 > edge) {
            return (struct bore_fault){"run off the ends of its hinged edge",
                                       by_row ? OTHER_PLACES : OTHER_PLACES OR_RULE};
        }
        if (by_row && i > 0 && leaf->hinge_at[i] < leaf->hinge_at[i - 1]) {
            return (struct bore_fault){"are not in order",
                                       "list them from the upper or left end on"};
        }
        if (i > 0 && leaf->hinge_at[i] - leaf->hinge_at[i - 1] <= cup) {
            return (struct bore_fault){"run into each other",
                                       by_row ? OTHER_PLACES : OTHER_PLACES OR_RULE};
        }
    }
    return (struct bore_fault){NULL, NULL};
}

static void ask_bores(const struct calc *c, const struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const struct values *const given = &door->row->hinge_at;
    const bool by_row = given->count > 0 && door->role != LEAF_FOLDING;
    const struct bore_fault wrong =
        leaf->hinge_at == NULL ? (struct bore_fault){NULL, NULL} : bores_wrong(c, leaf, by_row);
    const bool front = !by_row && !door->row->use.set && door->width > door->height;
    const char *places = "";
    char size[64];
    if (wrong.what == NULL) {
        return;
    }
    for (int64_t i = 0; i < tape_amount(c->tape, leaf->hinges); i++) {
        places = pool_words(&c->problems->pool, "%s%s%s", places, i == 0 ? "" : " | ",
                            length_show(leaf->hinge_at[i], c->units->lengths, size, sizeof size));
    }
    problem_add(
        c->problems, SEVERITY_ERROR, "hinge-bores", by_row ? given->v[0].place : door->row->place,
        "the hinges of door '%s', at %s of %s, %s; %s%s", id_of(c, door), places,
        length_show(door_hinged_edge(door), c->units->lengths, size, sizeof size), wrong.what,
        wrong.mend, front ? "; 'use' tells of a drawer front, which has none" : "");
}

/* --- what the hinge is made for --- */

static const char *const side_names[SIDE_COUNT] = {
    [SIDE_LEFT] = "left", [SIDE_RIGHT] = "right", [SIDE_TOP] = "top", [SIDE_BOTTOM] = "bottom"};

static bool fits(const struct hardware *hinge, const struct value *overlay) {
    return overlay->amount >= hinge->overlay.low.amount &&
           overlay->amount <= hinge->overlay.high.amount;
}

/* The hinged side whose overlay the hinge is not for; SIDE_COUNT: there is none. Where the side is
 * not said yet, one of the two that fits is enough. */
static enum side wrong_side(const struct hardware *hinge, const struct door *door) {
    const struct value *const overlay = door->construction->overlay;
    const struct row *const row = door->row;
    const bool left = fits(hinge, &overlay[SIDE_LEFT]);
    const bool right = fits(hinge, &overlay[SIDE_RIGHT]);
    if (row_hangs_level(row)) {
        const enum side side = row->opens.choice == OPENS_LIFT_UP ? SIDE_TOP : SIDE_BOTTOM;
        return fits(hinge, &overlay[side]) ? SIDE_COUNT : side;
    }
    if (door->leaves > 1) {
        return !left ? SIDE_LEFT : !right ? SIDE_RIGHT : SIDE_COUNT;
    }
    if (row->hinge_side.choice == HINGE_SIDE_OPEN) {
        return left || right ? SIDE_COUNT : SIDE_LEFT;
    }
    if (row->hinge_side.choice == HINGE_SIDE_RIGHT) {
        return right ? SIDE_COUNT : SIDE_RIGHT;
    }
    return left ? SIDE_COUNT : SIDE_LEFT;
}

/* `an overlay of 3/8 to 5/8`, `inset doors`. */
static const char *made_for(const struct calc *c, const struct hardware *hinge) {
    char low[32];
    char high[32];
    if (hinge->inset) {
        return "inset doors";
    }
    const char *const text = pool_format(
        &c->problems->pool, "an overlay of %s%s%s",
        length_show(hinge->overlay.low.amount, c->units->lengths, low, sizeof low),
        hinge->overlay.low.amount == hinge->overlay.high.amount ? "" : " to ",
        hinge->overlay.low.amount == hinge->overlay.high.amount
            ? ""
            : length_show(hinge->overlay.high.amount, c->units->lengths, high, sizeof high));
    return text == NULL ? "" : text;
}

/* Of a door that is measured itself nobody knows how it lies. true: it is asked about. */
static bool ask_overlay(const struct calc *c, const struct door *door) {
    const struct construction *const construction = door->construction;
    const struct hardware *const hinge = &c->rates->hardware[construction->hinge.index];
    const bool door_inset = construction->fit.choice == FIT_INSET;
    enum side side = SIDE_COUNT;
    char is[32];
    if (construction->size_is.choice != MEASURE_OPENING || !construction->fit.set ||
        (!hinge->inset && !hinge->overlay.set) || (hinge->inset && door_inset)) {
        return false;
    }
    if (!hinge->inset && !door_inset) {
        side = wrong_side(hinge, door);
        if (side == SIDE_COUNT) {
            return false;
        }
    }
    const char *const lies = door_inset ? "is inset"
                             : side == SIDE_COUNT
                                 ? "lies over its opening"
                                 : pool_format(&c->problems->pool, "has %s on its %s",
                                               length_show(construction->overlay[side].amount,
                                                           c->units->lengths, is, sizeof is),
                                               side_names[side]);
    problem_add(c->problems, SEVERITY_WARNING, "hinge-and-overlay", door->row->place,
                "hinge '%s' is for %s, and door '%s' %s; another hinge, or another overlay?",
                problem_quote(c->problems, hinge->name.s), made_for(c, hinge), id_of(c, door),
                lies == NULL ? "" : lies);
    return true;
}

/* --- hardware that is named twice --- */

static bool ask_twice(const struct calc *c, const struct leaf_figures *leaf) {
    const struct construction *const construction = leaf->door->construction;
    const struct hardware_items *const items = row_hardware(leaf->door->row, construction);
    bool asked = false;
    for (size_t i = 0; i < items->count; i++) {
        const int32_t index = items->list[i].hardware.index;
        const bool hinge = row_is_hinged(leaf->door->row) && index == construction->hinge.index;
        if (fig_none(leaf->pieces_of[i])) {
            continue;
        }
        if (!hinge && (fig_none(leaf->pulls) || index != construction->pull.index)) {
            continue;
        }
        problem_add(c->problems, SEVERITY_WARNING, "hardware-twice", leaf->door->row->place,
                    "'%s' is listed in hardware and is the %s of door '%s' too, so that both are "
                    "counted; take it out of the list, or give all of them in the column '%ss'",
                    problem_quote(c->problems, items->list[i].hardware.name.s),
                    hinge ? "hinge" : "pull", id_of(c, leaf->door), hinge ? "hinge" : "pull");
        asked = true;
    }
    return asked;
}

/* --- what is bored for it --- */

static bool is_listed(const struct leaf_figures *leaf, int32_t hardware) {
    const struct construction *const construction = leaf->door->construction;
    const struct hardware_items *const items = row_hardware(leaf->door->row, construction);
    bool listed = !fig_none(leaf->pulls) && construction->pull.index == hardware;
    for (size_t i = 0; i < items->count; i++) {
        listed = listed || items->list[i].hardware.index == hardware;
    }
    return listed;
}

/* A cup is of a hinge: of what the job has as other hardware alone, none is bored. */
static void ask_cup(const struct calc *c, int32_t index) {
    const struct hardware *const hardware = &c->rates->hardware[index];
    bool listed = false;
    for (size_t i = 0; i < c->quantities->count; i++) {
        const struct leaf_figures *const leaf = &c->quantities->leaves[i];
        if (!fig_none(leaf->hinges) && door_hinge(leaf->door)->index == index) {
            return;
        }
        listed = listed || is_listed(leaf, index);
    }
    if (listed) {
        problem_add(c->problems, SEVERITY_WARNING, "without-effect", hardware->cup.place,
                    "'cup' has no effect: '%s' is the hinge of no door, and nothing else is bored "
                    "for; take it away, or name it as 'hinge'",
                    problem_quote(c->problems, hardware->name.s));
    }
}

/* Rows of one make and use that hang alike and are as many leaves. */
enum {
    HUNG_WAYS = (OPENS_PIE_CUT + 1) * (HINGE_SIDE_PAIR + 1),
    ALIKE_WAYS = 2 * HUNG_WAYS * (USE_END_PANEL + 1),
};

static size_t way_of(const struct door *door) {
    const struct row *const row = door->row;
    const size_t hung =
        (size_t)row->opens.choice * (HINGE_SIDE_PAIR + 1) + (size_t)row->hinge_side.choice;
    return row->make->number * ALIKE_WAYS + ((size_t)row->use.choice * HUNG_WAYS + hung) * 2 +
           (door->leaves > 1 ? 1 : 0);
}

void hardware_warn(const struct calc *c) {
    const struct quantities *const q = c->quantities;
    const size_t ways = c->job->make_count * ALIKE_WAYS;
    bool *const overlay = pool_take(c->pool, ways, sizeof *overlay);
    bool *const twice = pool_take(c->pool, ways, sizeof *twice);
    for (size_t r = 0; overlay != NULL && twice != NULL && r < q->count; r++) {
        const struct leaf_figures *const leaf = &q->leaves[r];
        const size_t way = way_of(leaf->door);
        assert(way < ways);
        ask_count(c, leaf);
        ask_chart(c, leaf);
        ask_bores(c, leaf);
        const bool on_cabinet = !fig_none(leaf->hinges) && leaf->door->role == LEAF_HUNG;
        overlay[way] = overlay[way] || (on_cabinet && ask_overlay(c, leaf->door));
        twice[way] = twice[way] || ask_twice(c, leaf);
    }
    for (size_t h = 0; h < c->rates->hardware_count; h++) {
        if (c->rates->hardware[h].cup.set) {
            ask_cup(c, (int32_t)h);
        }
    }
}
