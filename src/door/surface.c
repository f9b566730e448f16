/* SPDX-License-Identifier: MIT */
#include "door/surface.h"

#include "door/frame.h"

struct painter {
    struct tape *tape;
    const struct measures *m;
    const struct rates *rates;
};

static fig area(const struct painter *t, const char *what, fig a, fig b) {
    return fig_ratio(t->tape, what, t->m->area, (figs){{a, b}}, (figs){{t->m->length2_per_area}});
}

/* The faces that are sprayed; the part of a see-through leaf that is open is not there to be
 * sprayed. */
static fig sprayed_faces(const struct painter *t, const struct leaf_figures *leaf, int faces) {
    const fig open = fig_minus(leaf->see_through);
    const fig both[] = {leaf->face, leaf->face, open, open};
    if (faces == FACES_NONE) {
        return (fig){0};
    }
    if (faces == FACES_BOTH) {
        return fig_sum(t->tape, "faces sprayed", t->m->area, both, 4);
    }
    return fig_sum(t->tape, "faces sprayed", t->m->area, both + 1, 2);
}

static void take_openings(const struct painter *t, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    fig counts[2 * FRAME_MOST_ROWS];
    fig each[2 * FRAME_MOST_ROWS];
    for (size_t i = 0; i < door->opening_count; i++) {
        const struct opening *const o = &door->openings[i];
        const fig width =
            measures_length(t->tape, t->m, "opening width", o->width, door->row->place);
        const fig height =
            measures_length(t->tape, t->m, "opening height", o->height, door->row->place);
        counts[i] =
            tape_given(t->tape, "openings of this size", UNIT_COUNT, 0, o->count, door->row->place);
        each[i] = area(t, "opening area", width, height);
    }
    leaf->see_through =
        fig_total(t->tape, "open area, a door", t->m->area, counts, each, door->opening_count);
}

static void paint(const struct painter *t, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    const fig round[] = {leaf->width, leaf->width, leaf->height, leaf->height};
    leaf->face = area(t, "face area", leaf->width, leaf->height);
    leaf->perimeter = fig_sum(t->tape, "perimeter", t->m->length, round, 4);
    if (door->construction.finish.index < 0) {
        return;
    }
    const struct finish *const finish = &t->rates->finishes[door->construction.finish.index];
    fig stuck = {0};
    if (door->stuck_edge > 0 && (door_is_see_through(door) || door->style->profile_extra.set)) {
        stuck = measures_length(t->tape, t->m, "inner edge of the frame", door->stuck_edge,
                                door->row->place);
    }
    leaf->edges = area(t, "outer edges", leaf->perimeter, leaf->thickness);
    if (door_is_see_through(door) && door->opening_count > 0) { /* none: bought in as it is */
        take_openings(t, leaf);
        leaf->inner_edges = area(t, "inner edges", stuck, leaf->thickness);
    }
    if (!fig_none(stuck) && door->style->profile_extra.set) {
        const fig extra =
            measures_given(t->tape, t->m, "profile, developed extra", &door->style->profile_extra);
        leaf->profile = area(t, "profile area", stuck, extra);
    }
    leaf->faces = sprayed_faces(t, leaf, finish->faces.choice);
    const fig all[] = {leaf->faces, leaf->edges, leaf->inner_edges, leaf->profile};
    leaf->sprayed = fig_sum(t->tape, "sprayed area", t->m->area, all, 4);
}

void surface_make(struct leaf_figures *leaf, struct tape *tape, const struct measures *measures,
                  const struct rates *rates) {
    const struct painter painter = {.tape = tape, .m = measures, .rates = rates};
    paint(&painter, leaf);
}
