/* SPDX-License-Identifier: MIT */
#include "door/question.h"

#include "door/movement.h"

#include <stdlib.h>

/* Fewer rows have no middle worth the name. */
#define LEAST_ROWS 5
#define FAR_TIMES  3
#define NEAR_INCH  (NM_PER_INCH / 8)
#define NEAR_MM    (3 * NM_PER_MM)
/* common practice, no source */
#define LEAST_OPENING_INCH NM_PER_INCH
#define LEAST_OPENING_MM   (25 * NM_PER_MM)

struct asker {
    const struct quantities *q;
    const struct tape *tape;
    const struct measures *m;
    const struct rates *rates;
    struct problems *problems;
};

static const char *id_of(const struct asker *a, const struct door *door) {
    return problem_quote(a->problems, door->row->id.s);
}

static int by_length(const void *x, const void *y) {
    const length a = *(const length *)x;
    const length b = *(const length *)y;
    return a < b ? -1 : (a > b ? 1 : 0);
}

static length side_of(const struct door *door, bool width) {
    return width ? door->width : door->height;
}

/* The middle size of the rows of a use; 0 when they are too few. room: as many lengths as rows. */
static length middle(const struct asker *a, int use, bool width, length *room) {
    size_t n = 0;
    for (size_t r = 0; r < a->q->count; r++) {
        const struct door *const door = a->q->leaves[r].door;
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

static void ask_far(const struct asker *a, int use, bool width, length *room) {
    const length usual = middle(a, use, width, room);
    for (size_t r = 0; usual > 0 && r < a->q->count; r++) {
        const struct door *const door = a->q->leaves[r].door;
        const length side = side_of(door, width);
        char size[32];
        char other[32];
        if (door->row->use.choice != use ||
            (side <= FAR_TIMES * usual && FAR_TIMES * side >= usual)) {
            continue;
        }
        problem_add(
            a->problems, SEVERITY_WARNING, "size-far-from-rest",
            width ? door->row->width.place : door->row->height.place,
            "door '%s' is %s %s, the middle one of its kind %s; is that so, or a slip of the pen?",
            id_of(a, door), length_show(side, a->m->lengths, size, sizeof size),
            width ? "wide" : "high", length_show(usual, a->m->lengths, other, sizeof other));
    }
}

static length apart(length a, length b) {
    return a < b ? b - a : a - b;
}

/* Two rows that differ by less than a saw kerf are mostly one size, measured twice. */
static void ask_alike(const struct asker *a, size_t row) {
    const struct door *const door = a->q->leaves[row].door;
    const length near = a->m->lengths == LENGTH_MM ? NEAR_MM : NEAR_INCH;
    for (size_t r = 0; r < row; r++) {
        const struct door *const other = a->q->leaves[r].door;
        const length wide = apart(door->width, other->width);
        const length high = apart(door->height, other->height);
        char size[2][32];
        if (wide + high == 0 || wide > near || high > near || door->style != other->style ||
            door->row->use.choice != other->row->use.choice) {
            continue;
        }
        const bool width = wide > 0;
        problem_add(a->problems, SEVERITY_WARNING, "nearly-alike", door->row->place,
                    "door '%s' is %s %s and door '%s' %s; one size, or two?", id_of(a, door),
                    length_show(side_of(door, width), a->m->lengths, size[0], sizeof size[0]),
                    width ? "wide" : "high", id_of(a, other),
                    length_show(side_of(other, width), a->m->lengths, size[1], sizeof size[1]));
        return; /* one question a row is enough */
    }
}

static void ask_wide(const struct asker *a, const struct door *door) {
    const struct limits *const limits = &a->rates->limits;
    char size[32];
    char most[32];
    if (limits->widest_leaf.set && door->row->use.choice == USE_DOOR &&
        door->row->mid_stiles.amount == 0 && door->form != FORM_SLAB &&
        door->width > limits->widest_leaf.amount) {
        problem_add(
            a->problems, SEVERITY_WARNING, "leaf-wide", door->row->width.place,
            "door '%s' is %s wide, more than the shop's %s for one leaf; a pair, or a mid stile?",
            id_of(a, door), length_show(door->width, a->m->lengths, size, sizeof size),
            length_show(limits->widest_leaf.amount, a->m->lengths, most, sizeof most));
    }
    for (size_t i = 0; limits->highest_panel.set && i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        if ((part->kind == PART_PANEL || part->kind == PART_PANE) &&
            part->shown_height > limits->highest_panel.amount) {
            problem_add(
                a->problems, SEVERITY_WARNING, "panel-high", door->row->height.place,
                "the panel of door '%s' is %s high, more than the shop's %s; a mid rail?",
                id_of(a, door), length_show(part->shown_height, a->m->lengths, size, sizeof size),
                length_show(limits->highest_panel.amount, a->m->lengths, most, sizeof most));
            return;
        }
    }
}

/* A slit that a panel hardly shows in. */
static void ask_slit(const struct asker *a, const struct door *door) {
    const length least = a->m->lengths == LENGTH_MM ? LEAST_OPENING_MM : LEAST_OPENING_INCH;
    for (size_t i = 0; i < door->opening_count; i++) {
        const struct opening *const opening = &door->openings[i];
        const bool low = opening->height < least;
        char size[32];
        if (!low && opening->width >= least) {
            continue;
        }
        problem_add(
            a->problems, SEVERITY_WARNING, "opening-slit",
            low ? door->row->height.place : door->row->width.place,
            "door '%s' has only %s between its %s; narrower ones, or a slab?", id_of(a, door),
            length_show(low ? opening->height : opening->width, a->m->lengths, size, sizeof size),
            low ? "rails" : "stiles");
        return;
    }
}

static void ask_movement(const struct asker *a, const struct leaf_figures *leaf) {
    for (size_t i = 0; i < leaf->door->part_count; i++) {
        movement_question(a->tape, a->m, leaf->door, &leaf->door->parts[i],
                          &leaf->parts[i].movement, a->problems);
    }
}

void doors_question(const struct quantities *q, const struct tape *tape, const struct measures *m,
                    const struct rates *rates, struct problems *problems) {
    const struct asker asker = {.q = q, .tape = tape, .m = m, .rates = rates, .problems = problems};
    length *const room = calloc(q->count + 1, sizeof *room);
    if (room == NULL) {
        problems->failed = true;
        return;
    }
    for (int use = USE_DOOR; use <= USE_END_PANEL; use++) {
        ask_far(&asker, use, true, room);
        ask_far(&asker, use, false, room);
    }
    free(room);
    for (size_t r = 0; r < q->count; r++) {
        ask_alike(&asker, r);
        ask_wide(&asker, q->leaves[r].door);
        ask_slit(&asker, q->leaves[r].door);
        ask_movement(&asker, &q->leaves[r]);
    }
}
