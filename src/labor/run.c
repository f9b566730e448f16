/* SPDX-License-Identifier: MIT */
#include "labor/run.h"

#include "labor/setup.h"

struct runner {
    struct tape *tape;
    const struct measures *m;
    const struct rates *rates;
    struct problems *problems;
};

static fig ratio(const struct runner *f, const char *what, enum unit unit, figs over, figs under) {
    return fig_ratio(f->tape, what, unit, over, under);
}

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

/* Passes of a row: what the file says, twice that for what is wider than the machine. none: one. */
static fig passes_of(const struct runner *f, const struct operation *op, const struct door *door) {
    const fig passes = measures_given(f->tape, f->m, "passes", &op->passes);
    const length wide = across(op, door);
    if (!op->capacity.set || wide <= op->capacity.amount) {
        return passes;
    }
    if (!op->one_side_open || wide > 2 * op->capacity.amount) {
        char size[32];
        char most[32];
        const length limit = op->one_side_open ? 2 * op->capacity.amount : op->capacity.amount;
        problem_add(f->problems, SEVERITY_WARNING, "too-wide-for-machine", door->row->place,
                    "door '%s' is %s across and operation '%s' takes at most %s; its minutes are "
                    "counted as two passes, plan another "
                    "way for it",
                    problem_quote(f->problems, door->row->id.s),
                    length_show(wide, f->m->lengths, size, sizeof size),
                    problem_quote(f->problems, op->name.s),
                    length_show(limit, f->m->lengths, most, sizeof most));
    }
    if (fig_none(passes)) {
        return f->m->two;
    }
    return ratio(f, "passes over a narrower machine", UNIT_COUNT, (figs){{passes, f->m->two}},
                 (figs){{{0}}});
}

/* What is handled each pass: of `part` only the parts that the operation works on. */
static fig handled_of(const struct runner *f, const struct operation *op,
                      const struct leaf_figures *leaf) {
    if (op->handling_per.choice != DRIVER_PART) {
        return leaf->driver[op->handling_per.choice];
    }
    int64_t parts = 0;
    for (size_t i = 0; i < leaf->door->part_count; i++) {
        const struct part *const part = &leaf->door->parts[i];
        parts += driver_works_on((enum driver)op->per.choice, part) ? part->count : 0;
    }
    return parts == 0
               ? (fig){0}
               : tape_given(f->tape, "parts handled", UNIT_COUNT, 0, parts, leaf->door->row->place);
}

/* Minutes in the wood that is worked on, of the first part that is lumber. */
static fig harder(const struct runner *f, const struct operation *op, const struct door *door,
                  fig minutes) {
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if (part->material_kind != MATERIAL_LUMBER ||
            !driver_works_on((enum driver)op->per.choice, part)) {
            continue;
        }
        const fig work = measures_given(f->tape, f->m, "work in this wood, percent",
                                        &f->rates->lumber[part->material].work);
        return fig_none(work) ? minutes
                              : ratio(f, "run minutes in this wood", UNIT_MIN,
                                      (figs){{minutes, work}}, (figs){{f->m->hundred}});
    }
    return minutes;
}

static void run(const struct runner *f, const struct operation *op, const struct leaf_figures *leaf,
                struct operation_share *s) {
    const fig passes = passes_of(f, op, leaf->door);
    const fig together = measures_given(f->tape, f->m, "worked on at once", &op->together);
    fig parts[2] = {{0}, {0}};
    if (op->feed.set) {
        const fig feed = measures_given(f->tape, f->m, "feed", &op->feed);
        parts[0] =
            ratio(f, "feeding", UNIT_MIN, (figs){{s->count, passes}}, (figs){{feed, together}});
    } else if (op->minutes.set) {
        const fig minutes = measures_given(f->tape, f->m, "minutes each", &op->minutes);
        parts[0] =
            ratio(f, "running", UNIT_MIN, (figs){{s->count, minutes, passes}}, (figs){{together}});
    }
    const fig handled = op->handling.set ? handled_of(f, op, leaf) : (fig){0};
    if (!fig_none(handled)) {
        const fig handling = measures_given(f->tape, f->m, "handling each", &op->handling);
        parts[1] =
            ratio(f, "handling", UNIT_MIN, (figs){{handled, handling, passes}}, (figs){{{0}}});
    }
    if (fig_none(parts[0]) || fig_none(parts[1])) {
        s->run = fig_none(parts[0]) ? parts[1] : parts[0];
    } else {
        s->run = fig_sum(f->tape, "run minutes", UNIT_MIN, parts, 2);
    }
    if (op->by_wood) {
        s->run = harder(f, op, leaf->door, s->run);
    }
    s->basis = s->run;
}

void run_rates(struct tape *tape, const struct measures *m, const struct operation *op) {
    measures_given(tape, m, "passes", &op->passes);
    measures_given(tape, m, "worked on at once", &op->together);
    measures_given(tape, m, "feed", &op->feed);
    measures_given(tape, m, "minutes each", &op->minutes);
    measures_given(tape, m, "handling each", &op->handling);
}

void run_leaf(struct operation_share *share, struct tape *tape, const struct measures *measures,
              const struct rates *rates, const struct operation *operation,
              const struct leaf_figures *leaf, struct problems *problems) {
    const struct runner runner = {
        .tape = tape, .m = measures, .rates = rates, .problems = problems};
    run(&runner, operation, leaf, share);
}
