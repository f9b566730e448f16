/* SPDX-License-Identifier: MIT */
/* The figures of a part: what a piece takes of its material, its weight, and what work on it goes
 * by. */
#include "door/part.h"

#include "door/blank.h"
#include "door/frame.h"

#include <assert.h>
#include <string.h>

static void take_lumber(struct materials *m, const struct leaf_figures *leaf,
                        const struct part *part, struct part_figures *f) {
    const struct calc *const c = m->calc;
    const struct door *const door = leaf->door;
    const struct place place = door->row->place;
    const struct lumber *const lumber = &c->rates->lumber[part->material];
    const enum unit unit = lumber_unit(lumber);
    const fig thickness = material_thickness(m, part->material);
    const fig length3 = unit == UNIT_BF ? c->units->length3_per_bf : c->units->length3_per_m3;
    const figs under = {{length3}};
    const struct short_part need = blank_need(c, door, part);
    f->rough_width = calc_length(c, "rough width", part->rough_width, place);
    f->net = fig_ratio(c->tape, "lumber net, each", unit, (figs){{thickness, f->width, f->length}},
                       under);
    if (need.shortest == 0) {
        f->rough_length = calc_length(c, "rough length", part->rough_length, place);
        f->rough = fig_ratio(c->tape, "lumber rough, each", unit,
                             (figs){{thickness, f->rough_width, f->rough_length}}, under);
        return;
    }
    fig pieces;
    const fig all = blanks_make(c, leaf, part, f, &pieces);
    f->rough = fig_ratio(c->tape, "lumber rough, each, of its blank", unit,
                         (figs){{thickness, f->rough_width, all}}, (figs){{pieces, length3}});
    if (&door->parts[need.first] != part) { /* they stand with the first */
        for (size_t k = 0; k < 2; k++) {
            f->blank[k] = f->blanks[k] = f->blank_holds[k] = (fig){0};
        }
    }
}

/* What is cut from a board: the rough part, or the staves that it is glued up of. */
static void take_staves(const struct calc *c, const struct door *door, const struct part *part,
                        struct part_figures *f) {
    const struct place place = door->row->place;
    f->stave_width = f->rough_width;
    f->staves = f->pieces;
    if (part->staves > 1) {
        const length edges = 2 * c->rates->saw.edge_allowance.amount;
        const length each =
            size_up(door->step, (part->width + part->staves - 1) / part->staves + edges);
        f->stave_width = calc_length(c, "rough width of a stave", each, place);
        f->staves = calc_product(c, "staves", UNIT_COUNT, f->pieces,
                                 calc_count(c, "staves a panel", part->staves, place));
    }
}

/* What gluing up, planing and raising go by. */
static void take_solid(const struct calc *c, const struct door *door, const struct part *part,
                       struct part_figures *f) {
    if (!part_is_field(part->kind)) {
        return;
    }
    f->solid = calc_area(c, "solid panel area, each", f->width, f->length);
    if (part->staves > 1) {
        const fig lines = calc_count(c, "glue lines", part->staves - 1, door->row->place);
        f->glue = fig_ratio(c->tape, "glue lines, each", c->units->run, (figs){{f->length, lines}},
                            (figs){{c->units->length_per_run}});
    }
    if (part->raised) {
        const fig round[] = {f->width, f->width, f->length, f->length};
        const fig edge = fig_sum(c->tape, "panel edge", c->units->length, round, 4);
        f->raised = calc_run(c, "raised edge, each", edge);
    }
    f->movement = movement_make(c, door, part, f->width);
}

void part_figures_make(struct materials *m, const struct leaf_figures *leaf,
                       const struct part *part, struct part_figures *f) {
    const struct calc *const c = m->calc;
    const struct place place = leaf->door->row->place;
    f->length = calc_length(c, "length", part->length, place);
    f->width = calc_length(c, "width", part->width, place);
    f->rise = part->rise == 0 ? (fig){0} : calc_length(c, "rise of the arch", part->rise, place);
    f->count = calc_count(c, "pieces a door", part->count, place);
    f->pieces = calc_product(c, "pieces", UNIT_COUNT, f->count, leaf->pieces);
    if (part->material_kind == MATERIAL_LUMBER) {
        take_lumber(m, leaf, part, f);
        take_staves(c, leaf->door, part, f);
        take_solid(c, leaf->door, part, f);
    } else if (part->material_kind == MATERIAL_SHEET) {
        f->area = calc_area(c, "sheet area, each", f->width, f->length);
    } else {
        f->cost = material_pane(m, part->material, f->width, f->length, &f->area, &f->stops);
    }
    const fig weight = material_weight(m, part);
    if (!fig_none(weight)) {
        f->weight =
            fig_ratio(c->tape, "weight, each", c->units->weight,
                      (figs){{f->width, f->length, weight}}, (figs){{c->units->length2_per_area}});
    }
}

static bool is_chosen(const struct part *part, struct part_choice choice) {
    if (choice.frame_only) {
        return part_is_frame(part->kind);
    }
    if (choice.bars_only) {
        return part->kind == PART_BAR;
    }
    return choice.material_kind == MATERIAL_NONE ||
           (part->material_kind == choice.material_kind && part->material == choice.material);
}

fig part_total(const struct calc *c, const struct leaf_figures *leaf, const char *what,
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
    return n == 0 ? (fig){0} : fig_total(c->tape, what, unit, counts, each, n);
}
