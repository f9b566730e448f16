/* SPDX-License-Identifier: MIT */
/* As many blanks as are long enough; the pieces shared out among them as evenly as they go. */
#include "door/blank.h"

#include "door/driver.h"
#include "door/frame.h"

#include <assert.h>

static bool shares(const struct part *a, const struct part *b) {
    return part_is_frame(a->kind) && part_is_frame(b->kind) &&
           part_is_rail(a->kind) == part_is_rail(b->kind) && a->material == b->material &&
           a->length == b->length && a->rough_width == b->rough_width;
}

/* Whether an operation works on the part by itself, on a machine that has a `shortest`. */
static bool calls_for(const struct calc *c, const struct operation *op, const struct part *part) {
    const enum driver driver = (enum driver)op->per.choice;
    return op->machine >= 0 && c->rates->machines[op->machine].shortest.set &&
           !driver_is_whole_door(driver) && driver != DRIVER_JOB && driver_works_on(driver, part);
}

/* Whether the part is shorter than any machine of the shop takes: most are not, and which machines
 * they pass need not be asked. */
static bool short_for_any(const struct calc *c, const struct part *part) {
    for (size_t i = 0; i < c->rates->machine_count; i++) {
        const struct value *const shortest = &c->rates->machines[i].shortest;
        if (shortest->set && part->rough_length < shortest->amount) {
            return true;
        }
    }
    return false;
}

/* The longest `shortest` of the machines that the part passes; 0: none. */
static length shortest_of(const struct calc *c, const struct door *door, const struct part *part) {
    const struct references *const list = &door->style->operations;
    length most = 0;
    for (size_t i = 0; i < list->count; i++) {
        const struct operation *const op = &c->rates->operations[list->r[i].index];
        if (calls_for(c, op, part)) {
            const length shortest = c->rates->machines[op->machine].shortest.amount;
            most = shortest > most ? shortest : most;
        }
    }
    return most;
}

/* The rough length of a blank of so many pieces: a kerf between them, one allowance. */
static length length_of(const struct calc *c, const struct door *door, const struct part *part,
                        int64_t holds) {
    const struct saw *const saw = &c->rates->saw;
    return size_up(door->step, holds * part->length + (holds - 1) * saw->kerf.amount +
                                   saw->length_allowance.amount);
}

struct short_part blank_need(const struct calc *c, const struct door *door,
                             const struct part *part) {
    struct short_part need = {.least = 2}; /* one by itself is too short */
    const length shortest =
        part_is_frame(part->kind) && short_for_any(c, part) ? shortest_of(c, door, part) : 0;
    if (part->rough_length >= shortest) {
        return need;
    }
    need.shortest = shortest;
    while (length_of(c, door, part, need.least) < shortest) {
        need.least++;
    }
    while (!shares(part, &door->parts[need.first])) {
        need.first++;
    }
    return need;
}

/* a / b, down to a whole number; both counts. */
static fig whole_part(const struct calc *c, const char *what, fig a, fig b) {
    const fig more = fig_plus(c->tape, "one more", a, c->units->one);
    const fig share = fig_ratio(c->tape, "shared out", UNIT_FACTOR, (figs){{more}}, (figs){{b}});
    const fig up = fig_up(c->tape, "up to a whole", share, c->units->one);
    const fig down = fig_plus(c->tape, "down to a whole", up, fig_minus(c->units->one));
    return fig_ratio(c->tape, what, UNIT_COUNT, (figs){{down}}, (figs){{c->units->one}});
}

/* The rough length of a blank of so many parts, as length_of has it, at least `shortest`. */
static fig long_enough(const struct calc *c, const struct leaf_figures *leaf, fig holds,
                       fig part_length, length shortest) {
    const struct saw *const saw = &c->rates->saw;
    const struct place place = leaf->door->row->place;
    const fig kerf = calc_given(c, "saw kerf", &saw->kerf);
    const fig each = fig_plus(c->tape, "part and kerf", part_length, kerf);
    const fig all = calc_product(c, "parts and kerfs", c->units->length, holds, each);
    const fig terms[] = {all, fig_minus(kerf),
                         calc_given(c, "length allowance", &saw->length_allowance)};
    fig rough = fig_sum(c->tape, "parts, kerfs and allowance", c->units->length, terms, 3);
    if (leaf->door->step.step > 0) {
        rough = fig_up(c->tape, "up to the step", rough,
                       calc_length(c, "step of sizes", leaf->door->step.step, place));
    }
    return fig_larger(c->tape, "rough length of a blank", rough,
                      calc_length(c, "shortest that the machine takes", shortest, place));
}

fig blanks_make(const struct calc *c, const struct leaf_figures *leaf, const struct part *part,
                struct part_figures *f, fig *pieces) {
    const struct door *const door = leaf->door;
    const struct short_part need = blank_need(c, door, part);
    const struct place place = door->row->place;
    int64_t count = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        count += shares(part, &door->parts[i]) ? door->parts[i].count : 0;
    }
    *pieces = calc_product(c, "parts milled in blanks", UNIT_COUNT, leaf->pieces,
                           calc_count(c, "parts milled in blanks, a door", count, place));
    const fig least = calc_count(c, "parts that make a blank long enough", need.least, place);
    const fig blanks =
        fig_larger(c->tape, "blanks in all", whole_part(c, "blanks long enough", *pieces, least),
                   c->units->one);
    const fig holds = whole_part(c, "parts in a blank", *pieces, blanks);
    const fig even = calc_product(c, "shared out evenly", UNIT_COUNT, holds, blanks);
    f->blank_holds[0] = holds;
    f->blank_holds[1] = fig_plus(c->tape, "parts in a longer one", holds, c->units->one);
    f->blanks[1] = fig_plus(c->tape, "longer blanks", *pieces, fig_minus(even));
    f->blanks[0] = fig_plus(c->tape, "blanks", blanks, fig_minus(f->blanks[1]));
    for (size_t k = 0; k < 2; k++) {
        f->blank[k] = long_enough(c, leaf, f->blank_holds[k], f->length, need.shortest);
    }
    return fig_total(c->tape, "length of the blanks", c->units->length, f->blanks, f->blank, 2);
}

fig blanks_handled(const struct calc *c, const struct operation *op,
                   const struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    fig terms[2 * FRAME_MOST_PARTS];
    size_t n = 0;
    if (op->machine < 0 || !c->rates->machines[op->machine].shortest.set ||
        driver_is_whole_door((enum driver)op->per.choice)) {
        return (fig){0};
    }
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part_figures *const f = &leaf->parts[i];
        const bool blank =
            calls_for(c, op, &door->parts[i]) && blank_need(c, door, &door->parts[i]).shortest > 0;
        if (!driver_works_on((enum driver)op->per.choice, &door->parts[i])) {
            continue;
        }
        if (!blank) {
            terms[n++] = f->pieces;
        } else if (!fig_none(f->blanks[0])) {
            terms[n++] = f->blanks[0];
            terms[n++] = f->blanks[1];
        }
    }
    assert(n > 0); /* an operation runs over what it works on */
    return fig_sum(c->tape, "parts and blanks handled", UNIT_COUNT, terms, n);
}

void blanks_warn(const struct calc *c) {
    static const struct part frame[] = {{.kind = PART_STILE}, {.kind = PART_TOP_RAIL}};
    for (int32_t m = 0; m < (int32_t)c->rates->machine_count; m++) {
        const struct machine *const machine = &c->rates->machines[m];
        bool asks = false;
        for (size_t i = 0; i < c->rates->operation_count; i++) {
            const struct operation *const op = &c->rates->operations[i];
            asks = asks || (op->machine == m &&
                            (calls_for(c, op, &frame[0]) || calls_for(c, op, &frame[1])));
        }
        if (machine->shortest.set && !asks) {
            problem_add(c->problems, SEVERITY_WARNING, "without-effect", machine->shortest.place,
                        "shortest has no effect: no operation works on parts of frames with "
                        "machine '%s'; take it away, or check the operations",
                        problem_quote(c->problems, machine->name.s));
        }
    }
}
