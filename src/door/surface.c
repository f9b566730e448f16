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

/* What an arch leaves of its opening's rectangle above itself, width x rise less the segment. The
 * segment of a circle is width x rise x 2 / 3 + rise^3 / (2 x width), to 0.8 % at a half circle and
 * 0.2 % where the rise is a quarter of the width. */
static fig opening_area(const struct calc *c, const struct opening *o, struct place place) {
    const fig width = calc_length(c, "opening width", o->width, place);
    const fig height = calc_length(c, "opening height", o->height, place);
    const fig whole = calc_area(c, "opening area", width, height);
    if (o->rise == 0) {
        return whole;
    }
    const enum unit unit = c->units->area;
    const fig rise = calc_length(c, "rise of the arch", o->rise, place);
    const fig three = tape_constant(c->tape, "three", UNIT_COUNT, 0, 3, "docs/method.md, arches");
    const fig third = fig_ratio(c->tape, "a third of arch width x rise", unit,
                                (figs){{width, rise}}, (figs){{three, c->units->length2_per_area}});
    const fig round =
        fig_ratio(c->tape, "rise cubed by twice the arch width", unit, (figs){{rise, rise, rise}},
                  (figs){{width, c->units->two, c->units->length2_per_area}});
    const fig terms[] = {whole, fig_minus(third), round};
    return fig_sum(c->tape, "opening area below the arch", unit, terms, 3);
}

static void take_openings(const struct calc *c, struct leaf_figures *leaf) {
    const struct door *const door = leaf->door;
    fig counts[2 * FRAME_MOST_ROWS];
    fig each[2 * FRAME_MOST_ROWS];
    for (size_t i = 0; i < door->opening_count; i++) {
        const struct opening *const o = &door->openings[i];
        counts[i] =
            tape_given(c->tape, "openings of this size", UNIT_COUNT, 0, o->count, door->row->place);
        each[i] = opening_area(c, o, door->row->place);
    }
    leaf->see_through =
        fig_total(c->tape, "open area, a door", c->units->area, counts, each, door->opening_count);
}

/* The bars of the faces that are sprayed: their face and both sides. */
static fig bar_area(const struct calc *c, const struct leaf_figures *leaf, int faces) {
    const struct style *const style = leaf->door->style;
    const bool both = style->bars_on.choice == BARS_ON_BOTH;
    if (fig_none(leaf->bars) || faces == FACES_NONE || (faces == FACES_BACK && !both)) {
        return (fig){0};
    }
    const fig wide = calc_given(c, "bar width", &style->bar_width);
    const fig side = calc_given(c, "bar thickness", &style->bar_thickness);
    const fig terms[] = {wide, side, side};
    const fig around = fig_sum(c->tape, "face and sides of a bar", c->units->length, terms, 3);
    const fig half = both && faces != FACES_BOTH ? c->units->two : (fig){0};
    return fig_ratio(c->tape, "bars, area", c->units->area, (figs){{leaf->bars, around}},
                     (figs){{c->units->length2_per_area, half}});
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
    leaf->bar_area = bar_area(c, leaf, finish->faces.choice);
    const fig all[] = {leaf->faces, leaf->edges, leaf->inner_edges, leaf->profile, leaf->bar_area};
    leaf->sprayed = fig_sum(c->tape, "sprayed area", c->units->area, all, 5);
}
