/* SPDX-License-Identifier: MIT */
/* As many blanks as are long enough; the pieces shared out among them as evenly as they go. */
#include "door/blank.h"

#include "door/driver.h"

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

static void add(const struct calc *c, const struct door *door, const struct part *part,
                struct blanks *blanks, int64_t holds, int64_t count, length shortest) {
    const length along = length_of(c, door, part, holds);
    if (count > 0) {
        blanks->kind[blanks->kinds++] =
            (struct blank){holds, count, along > shortest ? along : shortest};
    }
}

struct blanks blanks_of(const struct calc *c, const struct door *door, const struct part *part) {
    struct blanks blanks = {.kinds = 0};
    const length shortest = part_is_frame(part->kind) ? shortest_of(c, door, part) : 0;
    if (part->rough_length >= shortest) {
        return blanks;
    }
    blanks.first = door->part_count;
    for (size_t i = 0; i < door->part_count; i++) {
        if (shares(part, &door->parts[i])) {
            blanks.first = i < blanks.first ? i : blanks.first;
            blanks.pieces += door->parts[i].count * door->row->count.amount * door->leaves;
        }
    }
    int64_t least = 1; /* pieces that make a blank long enough */
    while (length_of(c, door, part, least) < shortest) {
        least++;
    }
    const int64_t count = blanks.pieces < least ? 1 : blanks.pieces / least;
    const int64_t holds = blanks.pieces / count;
    const int64_t more = blanks.pieces % count;
    add(c, door, part, &blanks, holds + 1, more, shortest);
    add(c, door, part, &blanks, holds, count - more, shortest);
    return blanks;
}

int64_t blanks_handled(const struct calc *c, const struct operation *op, const struct door *door) {
    const int64_t leaves = door->row->count.amount * door->leaves;
    int64_t things = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if (!driver_works_on((enum driver)op->per.choice, part)) {
            continue;
        }
        const struct blanks blanks =
            calls_for(c, op, part) ? blanks_of(c, door, part) : (struct blanks){.kinds = 0};
        if (blanks.kinds == 0) {
            things += part->count * leaves;
        }
        for (size_t k = 0; k < blanks.kinds && blanks.first == i; k++) {
            things += blanks.kind[k].count;
        }
    }
    return things;
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
