/* SPDX-License-Identifier: MIT */
#include "door/surface.h"

#include "door/frame.h"

/* The faces that are sprayed; the part of a see-through leaf that is open is not there to be
 * sprayed. */
static fig sprayed_faces(const struct calc *c, const struct leaf_figures *leaf, int faces) {
    const fig open = fig_minus(leaf->see_through);
    const fig both[] = {leaf->face, leaf->face, open, open};
    if (faces == FACES_NONE) {
        return (fig){0};
    }
    if (faces == FACES_BOTH) {
        return fig_sum(c->tape, "faces sprayed", c->units->area, both, 4);
    }
    return fig_sum(c->tape, "faces sprayed", c->units->area, both + 1, 2);
}

static void take_openings(const struct calc *c, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    fig counts[2 * FRAME_MOST_ROWS];
    fig each[2 * FRAME_MOST_ROWS];
    for (size_t i = 0; i < door->opening_count; i++) {
        const struct opening *const o = &door->openings[i];
        const fig width = calc_length(c, "opening width", o->width, door->row->place);
        const fig height = calc_length(c, "opening height", o->height, door->row->place);
        counts[i] =
            tape_given(c->tape, "openings of this size", UNIT_COUNT, 0, o->count, door->row->place);
        each[i] = calc_area(c, "opening area", width, height);
    }
    leaf->see_through =
        fig_total(c->tape, "open area, a door", c->units->area, counts, each, door->opening_count);
}

void surface_make(struct leaf_figures *leaf, const struct calc *c) {
    const struct door *const door = leaf->door;
    const fig round[] = {leaf->width, leaf->width, leaf->height, leaf->height};
    leaf->face = calc_area(c, "face area", leaf->width, leaf->height);
    leaf->perimeter = fig_sum(c->tape, "perimeter", c->units->length, round, 4);
    if (door->construction->finish.index < 0) {
        return;
    }
    const struct finish *const finish = &c->rates->finishes[door->construction->finish.index];
    fig stuck = {0};
    if (door->stuck_edge > 0 && (door_is_see_through(door) || door->style->profile_extra.set)) {
        stuck = calc_length(c, "inner edge of the frame", door->stuck_edge, door->row->place);
    }
    leaf->edges = calc_area(c, "outer edges", leaf->perimeter, leaf->thickness);
    if (door_is_see_through(door) && door->opening_count > 0) { /* none: bought in as it is */
        take_openings(c, leaf);
        leaf->inner_edges = calc_area(c, "inner edges", stuck, leaf->thickness);
    }
    if (!fig_none(stuck) && door->style->profile_extra.set) {
        const fig extra = calc_given(c, "profile, developed extra", &door->style->profile_extra);
        leaf->profile = calc_area(c, "profile area", stuck, extra);
    }
    leaf->faces = sprayed_faces(c, leaf, finish->faces.choice);
    const fig all[] = {leaf->faces, leaf->edges, leaf->inner_edges, leaf->profile};
    leaf->sprayed = fig_sum(c->tape, "sprayed area", c->units->area, all, 4);
}
