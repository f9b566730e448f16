/* SPDX-License-Identifier: MIT */
#include "door/warn.h"

#include "base/order.h"
#include "door/blank.h"
#include "door/leaf.h"
#include "door/quantity.h"
#include "door/warn_hardware.h"
#include "door/warn_note.h"

#include <stdlib.h>

/* Fewer rows have no middle worth the name. */
#define LEAST_ROWS 5
#define FAR_TIMES  3
#define NEAR_INCH  (NM_PER_INCH / 16)
#define NEAR_MM    (2 * NM_PER_MM)
/* So many pairs of nearly equal sizes are named. */
#define MOST_ALIKE ((size_t)20)
/* common practice, no source */
#define LEAST_OPENING_INCH NM_PER_INCH
#define LEAST_OPENING_MM   (25 * NM_PER_MM)

static const char *id_of(const struct calc *c, const struct door *door) {
    return problem_quote(c->problems, door->name);
}

static int by_length(const void *x, const void *y) {
    const length a = *(const length *)x;
    const length b = *(const length *)y;
    return order_by_number(a, b);
}

static length side_of(const struct door *door, bool width) {
    return width ? door->width : door->height;
}

/* The middle size of the rows of a use; 0 when they are too few. room: as many lengths as rows. */
static length middle(const struct calc *c, int use, bool width, length *room) {
    size_t n = 0;
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct door *const door = c->quantities->leaves[r].door;
        if (door->row->use.choice == use) {
            room[n++] = side_of(door, width);
        }
    }
    if (n < LEAST_ROWS) {
        return 0;
    }
    qsort(room, n, sizeof *room, by_length);
    return room[n / 2];
}

static void ask_far(const struct calc *c, int use, bool width, length *room) {
    const length usual = middle(c, use, width, room);
    for (size_t r = 0; usual > 0 && r < c->quantities->count; r++) {
        const struct door *const door = c->quantities->leaves[r].door;
        const length side = side_of(door, width);
        char size[32];
        char other[32];
        if (door->row->use.choice != use ||
            (side <= FAR_TIMES * usual && FAR_TIMES * side >= usual)) {
            continue;
        }
        problem_add(
            c->problems, SEVERITY_WARNING, "size-far-from-rest",
            width ? leaf_measured(door->row, door->role)->place : door->row->height.place,
            "door '%s' is %s %s, the middle one of its kind %s; is that so, or a slip of the pen?",
            id_of(c, door), length_show(side, c->units->lengths, size, sizeof size),
            width ? "wide" : "high", length_show(usual, c->units->lengths, other, sizeof other));
    }
}

/* A false front that hides a machine: no side under 16 in (common practice, no source). */
static bool hides_machine(const struct door *door) {
    const length least = 16 * NM_PER_INCH;
    return door->row->use.choice == USE_FALSE_FRONT && door->width >= least &&
           door->height >= least;
}

/* Drawer fronts and false fronts are wider than high: where one alone is not, its cells may be
 * swapped. */
static void ask_high_front(const struct calc *c) {
    const struct door *high = NULL;
    size_t fronts = 0;
    size_t high_fronts = 0;
    char size[2][32];
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct door *const door = c->quantities->leaves[r].door;
        if (leaf_is_front(door->row) && !hides_machine(door)) {
            fronts++;
            if (door->height > door->width) {
                high_fronts++;
                high = door;
            }
        }
    }
    if (high_fronts != 1 || fronts == 1) {
        return;
    }
    problem_add(c->problems, SEVERITY_WARNING, "front-high", high->row->height.place,
                "front '%s' is %s wide and %s high, all other fronts are wider than high; check "
                "that width and height are not swapped",
                id_of(c, high),
                length_show(high->width, c->units->lengths, size[0], sizeof size[0]),
                length_show(high->height, c->units->lengths, size[1], sizeof size[1]));
}

static length apart(length a, length b) {
    return llabs(a - b);
}

/* Doors of one use, style and size, by their first row. */
struct sort_of_door {
    const struct door *door;
    size_t row;
};

/* By use, style, width, height, then row. */
static int by_sort(const void *left, const void *right) {
    const struct sort_of_door *const a = left;
    const struct sort_of_door *const b = right;
    const int order[] = {
        order_by_number(a->door->row->use.choice, b->door->row->use.choice),
        order_by_number(a->door->construction->style.index, b->door->construction->style.index),
        order_by_number(a->door->width, b->door->width),
        order_by_number(a->door->height, b->door->height),
        order_by_number((int64_t)a->row, (int64_t)b->row),
    };
    for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
        if (order[i] != 0) {
            return order[i];
        }
    }
    return 0;
}

static int by_row(const void *left, const void *right) {
    const struct sort_of_door *const a = left;
    const struct sort_of_door *const b = right;
    return order_by_number((int64_t)a->row, (int64_t)b->row);
}

/* Sorted, the first row of each; how many they are. */
static size_t sort_doors(const struct calc *c, struct sort_of_door *sorts) {
    size_t kept = 0;
    for (size_t r = 0; r < c->quantities->count; r++) {
        sorts[r] = (struct sort_of_door){.door = c->quantities->leaves[r].door, .row = r};
    }
    qsort(sorts, c->quantities->count, sizeof *sorts, by_sort);
    for (size_t i = 0; i < c->quantities->count; i++) {
        struct sort_of_door before = kept > 0 ? sorts[kept - 1] : (struct sort_of_door){0};
        if (kept > 0) {
            before.row = sorts[i].row;
        }
        if (kept == 0 || by_sort(&before, &sorts[i]) != 0) {
            sorts[kept++] = sorts[i];
        }
    }
    return kept;
}

/* Of the sorts that are nearly as large as sorts[at], the one of the first row before its own;
 * NULL: there is none. Only those whose width is within `near` are looked at. */
static const struct door *first_alike(const struct sort_of_door *sorts, size_t count, size_t at,
                                      length near) {
    const struct door *const door = sorts[at].door;
    const struct sort_of_door *first = NULL;
    for (int step = -1; step <= 1; step += 2) {
        for (size_t i = at + (size_t)step; i < count; i += (size_t)step) { /* wraps below 0 */
            const struct door *const other = sorts[i].door;
            if (other->row->use.choice != door->row->use.choice || other->style != door->style ||
                apart(door->width, other->width) > near) {
                break;
            }
            if (apart(door->height, other->height) <= near && sorts[i].row < sorts[at].row &&
                (first == NULL || sorts[i].row < first->row)) {
                first = &sorts[i];
            }
        }
    }
    return first == NULL ? NULL : first->door;
}

/* What was typed of a side. */
static const struct value *typed_side(const struct door *door, bool width) {
    return width ? leaf_measured(door->row, door->role) : &door->row->height;
}

/* Told as they were typed, so that they are found in the list; as made where it is not the list
 * that makes them two. */
static void say_alike(const struct calc *c, const struct door *door, const struct door *other) {
    const bool width = door->width != other->width;
    const struct value *const one = typed_side(door, width);
    const struct value *const two = typed_side(other, width);
    const bool typed =
        one->amount != two->amount && door->row->leaves.amount == other->row->leaves.amount;
    char size[2][32];
    problem_add(c->problems, SEVERITY_WARNING, "nearly-alike",
                typed ? one->place : door->row->place,
                "door '%s' is %s%s %s and door '%s' %s; one size, or two?", id_of(c, door),
                typed ? "" : "made ",
                length_show(typed ? one->amount : side_of(door, width), c->units->lengths, size[0],
                            sizeof size[0]),
                width ? "wide" : "high", id_of(c, other),
                length_show(typed ? two->amount : side_of(other, width), c->units->lengths, size[1],
                            sizeof size[1]));
}

/* Two sizes that differ by less than a saw kerf are mostly one size, measured twice. In a long list
 * of many sizes some are always near to others: it is said how many. */
static bool ask_alike(const struct calc *c) {
    const length near = c->units->lengths == LENGTH_MM ? NEAR_MM : NEAR_INCH;
    struct sort_of_door *const sorts = calloc(2 * c->quantities->count + 1, sizeof *sorts);
    if (sorts == NULL) {
        return false;
    }
    struct sort_of_door *const alike = sorts + c->quantities->count;
    const size_t count = sort_doors(c, sorts);
    size_t found = 0;
    for (size_t i = 0; i < count; i++) {
        const struct door *const other = first_alike(sorts, count, i, near);
        if (other != NULL) {
            alike[found++] = (struct sort_of_door){.door = other, .row = sorts[i].row};
        }
    }
    qsort(alike, found, sizeof *alike, by_row);
    for (size_t i = 0; i < found && i < MOST_ALIKE; i++) {
        say_alike(c, c->quantities->leaves[alike[i].row].door, alike[i].door);
    }
    if (found > MOST_ALIKE) {
        problem_add(c->problems, SEVERITY_WARNING, "nearly-alike",
                    c->quantities->leaves[alike[MOST_ALIKE].row].door->row->place,
                    found == MOST_ALIKE + 1
                        ? "%zu more size is nearly as large as another; sort the list by size to "
                          "see them"
                        : "%zu more sizes are nearly as large as others; sort the list by size to "
                          "see them",
                    found - MOST_ALIKE);
    }
    free(sorts);
    return true;
}

static void ask_wide(const struct calc *c, const struct door *door) {
    const struct limits *const limits = &c->rates->limits;
    char size[32];
    char most[32];
    if (limits->widest_leaf.set && door->row->use.choice == USE_DOOR &&
        !row_hangs_level(door->row) && door->row->mid_stiles.amount == 0 &&
        door->form != FORM_SLAB && door->width > limits->widest_leaf.amount) {
        const bool each =
            door->row->leaves.amount > 1 && door->construction->size_is.choice == MEASURE_DOOR;
        problem_add(
            c->problems, SEVERITY_WARNING, "leaf-wide", leaf_measured(door->row, door->role)->place,
            each ? "the leaves of door '%s' are %s wide each, more than the shop's %s for one; the "
                   "width is of one leaf, as sizes are of finished doors"
                 : "door '%s' is %s wide, more than the shop's %s for one leaf; a pair, or a mid "
                   "stile?",
            id_of(c, door), length_show(door->width, c->units->lengths, size, sizeof size),
            length_show(limits->widest_leaf.amount, c->units->lengths, most, sizeof most));
    }
    for (size_t i = 0; limits->highest_panel.set && i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if ((part->kind == PART_PANEL || part->kind == PART_PANE) &&
            part->shown_height > limits->highest_panel.amount) {
            problem_add(
                c->problems, SEVERITY_WARNING, "panel-high", door->row->height.place,
                "the panel of door '%s' is %s high, more than the shop's %s; a mid rail?",
                id_of(c, door),
                length_show(part->shown_height, c->units->lengths, size, sizeof size),
                length_show(limits->highest_panel.amount, c->units->lengths, most, sizeof most));
            return;
        }
    }
}

/* A slit that a panel hardly shows in. */
static void ask_slit(const struct calc *c, const struct door *door) {
    const length least = c->units->lengths == LENGTH_MM ? LEAST_OPENING_MM : LEAST_OPENING_INCH;
    for (size_t i = 0; i < door->opening_count; i++) {
        const struct opening *const opening = &door->openings[i];
        const bool low = opening->height < least;
        char size[32];
        if (!low && opening->width >= least) {
            continue;
        }
        problem_add(c->problems, SEVERITY_WARNING, "opening-slit",
                    low ? door->row->height.place : leaf_measured(door->row, door->role)->place,
                    "door '%s' has only %s between its %s; narrower ones, or a slab?",
                    id_of(c, door),
                    length_show(low ? opening->height : opening->width, c->units->lengths, size,
                                sizeof size),
                    low ? "rails" : "stiles");
        return;
    }
}

static void ask_movement(const struct calc *c, const struct leaf_figures *leaf) {
    for (size_t i = 0; i < leaf->door->part_count; i++) {
        movement_warn(c, leaf->door, &leaf->door->parts[i], &leaf->parts[i].movement);
    }
}

void doors_warn(const struct calc *c) {
    const struct quantities *const q = c->quantities;
    length *const room = calloc(q->count + 1, sizeof *room);
    if (room == NULL) {
        c->problems->failed = true;
        return;
    }
    for (int use = USE_DOOR; use <= USE_END_PANEL; use++) {
        ask_far(c, use, true, room);
        ask_far(c, use, false, room);
    }
    free(room);
    ask_high_front(c);
    blanks_warn(c);
    if (!ask_alike(c)) {
        c->problems->failed = true;
    }
    for (size_t r = 0; r < q->count; r++) {
        const struct door *const door = q->leaves[r].door;
        if (door->beside == NULL) {
            note_warn(c, door);
        }
        if (door_is_twin(door)) {
            continue;
        }
        ask_wide(c, door);
        ask_slit(c, door);
        ask_movement(c, &q->leaves[r]);
    }
    hardware_warn(c);
}
