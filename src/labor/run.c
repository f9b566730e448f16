/* SPDX-License-Identifier: MIT */
#include "labor/run.h"

#include "door/blank.h"
#include "labor/setup.h"

/* How wide the widest thing is that has to go through the machine: of a door its smaller side, else
 * the part's width. */
static length across(const struct operation *op, const struct door *door) {
    const enum driver driver = (enum driver)op->per.choice;
    if (driver_is_whole_door(driver)) {
        return door->width < door->height ? door->width : door->height;
    }
    length widest = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        const length side = part->width < part->length ? part->width : part->length;
        if (driver_works_on(driver, part) && side > widest) {
            widest = side;
        }
    }
    return widest;
}

bool run_is_wide(const struct operation *op, const struct door *door) {
    return op->capacity.set && across(op, door) > op->capacity.amount;
}

/* Passes of a row: what the file says, twice that for what is wider than the machine. none: one. */
static fig passes_of(const struct calc *c, const struct operation *op, fig passes,
                     const struct door *door) {
    if (!run_is_wide(op, door)) {
        return passes;
    }
    const length wide = across(op, door);
    if ((!op->one_side_open || wide > 2 * op->capacity.amount) && !door_is_twin(door)) {
        char size[32];
        char most[32];
        const length limit = op->one_side_open ? 2 * op->capacity.amount : op->capacity.amount;
        problem_add(c->problems, SEVERITY_WARNING, "too-wide-for-machine", door->row->place,
                    "door '%s' is %s across and operation '%s' takes at most %s; its minutes are "
                    "counted as two passes, plan another "
                    "way for it",
                    problem_quote(c->problems, door->name),
                    length_show(wide, c->units->lengths, size, sizeof size),
                    problem_quote(c->problems, op->name.s),
                    length_show(limit, c->units->lengths, most, sizeof most));
    }
    if (fig_none(passes)) {
        return c->units->two;
    }
    return fig_ratio(c->tape, "passes over a narrower machine", UNIT_COUNT,
                     (figs){{passes, c->units->two}}, (figs){{{0}}});
}

/* What is handled each pass: of `part` only the parts that the operation works on, those milled in
 * blanks as blanks. */
static fig handled_of(const struct calc *c, const struct operation *op,
                      const struct leaf_figures *leaf) {
    if (op->handling_per.choice != DRIVER_PART) {
        return leaf->driver[op->handling_per.choice];
    }
    const fig things = blanks_handled(c, op, leaf);
    if (!fig_none(things)) {
        return fig_ratio(c->tape, "parts and blanks handled, a door", UNIT_FACTOR, (figs){{things}},
                         (figs){{leaf->pieces}});
    }
    int64_t parts = 0;
    for (size_t i = 0; i < leaf->door->part_count; i++) {
        const struct part *const part = &leaf->door->parts[i];
        parts += driver_works_on((enum driver)op->per.choice, part) ? part->count : 0;
    }
    return calc_count(c, "parts handled", parts, leaf->door->row->place);
}

/* Minutes in the wood that is worked on, of the first part that is lumber. */
static fig harder(const struct calc *c, const struct operation *op, const struct door *door,
                  fig minutes) {
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if (part->material_kind != MATERIAL_LUMBER ||
            !driver_works_on((enum driver)op->per.choice, part)) {
            continue;
        }
        const fig work =
            calc_given(c, "work in this wood, percent", &c->rates->lumber[part->material].work);
        return fig_none(work) ? minutes
                              : fig_ratio(c->tape, "run minutes in this wood", UNIT_MIN,
                                          (figs){{minutes, work}}, (figs){{c->units->hundred}});
    }
    return minutes;
}

void run_leaf(struct operation_share *s, const struct calc *c, const struct operation *op,
              const struct run_rates *rates, const struct leaf_figures *leaf) {
    const fig passes = passes_of(c, op, rates->passes, leaf->door);
    const fig together = rates->together;
    fig parts[2] = {{0}, {0}};
    if (op->feed.set) {
        parts[0] = fig_ratio(c->tape, "feeding", UNIT_MIN, (figs){{s->count, passes}},
                             (figs){{rates->feed, together}});
    } else if (op->minutes.set) {
        parts[0] = fig_ratio(c->tape, "running", UNIT_MIN,
                             (figs){{s->count, rates->minutes, passes}}, (figs){{together}});
    }
    const fig handled = op->handling.set ? handled_of(c, op, leaf) : (fig){0};
    if (!fig_none(handled)) {
        parts[1] = fig_ratio(c->tape, "handling", UNIT_MIN,
                             (figs){{handled, rates->handling, passes}}, (figs){{{0}}});
    }
    if (fig_none(parts[0]) || fig_none(parts[1])) {
        s->run = fig_none(parts[0]) ? parts[1] : parts[0];
    } else {
        s->run = fig_sum(c->tape, "run minutes", UNIT_MIN, parts, 2);
    }
    if (op->by_wood) {
        s->run = harder(c, op, leaf->door, s->run);
    }
}

struct run_rates run_rates_given(const struct calc *c, const struct operation *op) {
    struct run_rates rates = {.passes = calc_given(c, "passes", &op->passes)};
    rates.together = calc_given(c, "worked on at once", &op->together);
    rates.feed = calc_given(c, "feed", &op->feed);
    rates.minutes = calc_given(c, "minutes each", &op->minutes);
    rates.handling = calc_given(c, "handling each", &op->handling);
    return rates;
}
