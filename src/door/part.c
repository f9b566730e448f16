/* SPDX-License-Identifier: MIT */
/* The figures of a part: what a piece takes of its material, its weight, and what work on it goes
 * by. */
#include "door/frame.h"
#include "door/taker.h"

#include <assert.h>
#include <string.h>

fig taker_count(const struct taker *t, const char *what, int64_t count, struct place place) {
    return count == 0 ? (fig){0} : tape_given(t->tape, what, UNIT_COUNT, 0, count, place);
}

fig taker_product(const struct taker *t, const char *what, enum unit unit, fig a, fig b) {
    return fig_ratio(t->tape, what, unit, (figs){{a, b}}, (figs){{{0}}});
}

fig taker_area(const struct taker *t, const char *what, fig a, fig b) {
    return fig_ratio(t->tape, what, t->m->area, (figs){{a, b}}, (figs){{t->m->length2_per_area}});
}

static void take_lumber(const struct taker *t, const struct part *part, struct part_figures *f,
                        struct place place) {
    const struct lumber *const lumber = &t->rates->lumber[part->material];
    const enum unit unit = lumber_unit(lumber);
    const fig thickness = material_thickness(t->materials, part->material);
    const figs under = {{unit == UNIT_BF ? t->m->length3_per_bf : t->m->length3_per_m3}};
    f->rough_length = measures_length(t->tape, t->m, "rough length", part->rough_length, place);
    f->rough_width = measures_length(t->tape, t->m, "rough width", part->rough_width, place);
    f->net = fig_ratio(t->tape, "lumber net, each", unit, (figs){{thickness, f->width, f->length}},
                       under);
    f->rough = fig_ratio(t->tape, "lumber rough, each", unit,
                         (figs){{thickness, f->rough_width, f->rough_length}}, under);
}

/* What is cut from a board: the rough part, or the staves that it is glued up of. */
static void take_staves(const struct taker *t, const struct part *part, struct part_figures *f,
                        struct place place) {
    f->stave_width = f->rough_width;
    f->staves = f->pieces;
    if (part->staves > 1) {
        const length edges = 2 * t->rates->saw.edge_allowance.amount;
        const length each =
            length_cut((part->width + part->staves - 1) / part->staves, t->m->lengths) + edges;
        f->stave_width = measures_length(t->tape, t->m, "rough width of a stave", each, place);
        f->staves = taker_product(t, "staves", UNIT_COUNT, f->pieces,
                                  taker_count(t, "staves a panel", part->staves, place));
    }
}

/* What gluing up, planing and raising go by. */
static void take_solid(const struct taker *t, const struct door *door, const struct part *part,
                       struct part_figures *f) {
    if (part_is_frame(part->kind)) {
        return;
    }
    f->solid = taker_area(t, "solid panel area, each", f->width, f->length);
    if (part->staves > 1) {
        const fig lines = taker_count(t, "glue lines", part->staves - 1, door->row->place);
        f->glue = fig_ratio(t->tape, "glue lines, each", t->m->run, (figs){{f->length, lines}},
                            (figs){{t->m->length_per_run}});
    }
    if (part->raised) {
        const fig round[] = {f->width, f->width, f->length, f->length};
        const fig edge = fig_sum(t->tape, "panel edge", t->m->length, round, 4);
        f->raised = fig_ratio(t->tape, "raised edge, each", t->m->run, (figs){{edge}},
                              (figs){{t->m->length_per_run}});
    }
    f->movement = movement_make(t->tape, t->m, t->rates, door, part, f->width);
}

void part_take(const struct taker *t, const struct leaf_figures *leaf, const struct part *part,
               struct part_figures *f) {
    const struct place place = leaf->door->row->place;
    f->length = measures_length(t->tape, t->m, "length", part->length, place);
    f->width = measures_length(t->tape, t->m, "width", part->width, place);
    f->count = taker_count(t, "pieces a door", part->count, place);
    f->pieces = taker_product(t, "pieces", UNIT_COUNT, f->count, leaf->pieces);
    if (part->material_kind == MATERIAL_LUMBER) {
        take_lumber(t, part, f, place);
        take_staves(t, part, f, place);
        take_solid(t, leaf->door, part, f);
    } else if (part->material_kind == MATERIAL_SHEET) {
        f->area = taker_area(t, "sheet area, each", f->width, f->length);
    } else {
        f->cost =
            material_pane(t->materials, part->material, f->width, f->length, &f->area, &f->stops);
    }
    const fig weight =
        material_weight(t->materials, part->material_kind, part->material, part->weigh_as);
    if (!fig_none(weight)) {
        f->weight =
            fig_ratio(t->tape, "weight, each", t->m->weight, (figs){{f->width, f->length, weight}},
                      (figs){{t->m->length2_per_area}});
    }
}

static bool is_chosen(const struct part *part, struct part_choice choice) {
    if (choice.frame_only) {
        return part_is_frame(part->kind);
    }
    return choice.material_kind == MATERIAL_NONE ||
           (part->material_kind == choice.material_kind && part->material == choice.material);
}

fig part_total(const struct taker *t, const struct leaf_figures *leaf, const char *what,
               enum unit unit, struct part_choice choice, size_t offset) {
    fig counts[FRAME_MOST_PARTS];
    fig each[FRAME_MOST_PARTS];
    size_t n = 0;
    const struct door *const door = leaf->door;
    assert(door->part_count <= FRAME_MOST_PARTS);
    for (size_t i = 0; i < door->part_count; i++) {
        if (!is_chosen(&door->parts[i], choice)) {
            continue;
        }
        memcpy(&each[n], (const char *)&leaf->parts[i] + offset, sizeof each[n]);
        counts[n] = leaf->parts[i].count;
        n += fig_none(each[n]) ? 0 : 1;
    }
    return n == 0 ? (fig){0} : fig_total(t->tape, what, unit, counts, each, n);
}
