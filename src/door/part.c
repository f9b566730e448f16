/* SPDX-License-Identifier: MIT */
/* The figures of a part: what a piece takes of its material, its weight, and what work on it goes
 * by. */
#include "door/part.h"

#include "door/blank.h"
#include "door/frame.h"

#include <assert.h>
#include <string.h>

/* The blanks that a short part is milled in, and how long they are in all. */
static fig take_blanks(const struct calc *c, const struct blanks *blanks, struct part_figures *f,
                       struct place place) {
    for (size_t i = 0; i < blanks->kinds; i++) {
        const struct blank *const blank = &blanks->kind[i];
        f->blank[i] = calc_length(c, "rough length of a blank", blank->length, place);
        f->blanks[i] = calc_count(c, "blanks", blank->count, place);
        f->blank_holds[i] = calc_count(c, "parts in a blank", blank->holds, place);
    }
    return fig_total(c->tape, "length of the blanks", c->units->length, f->blanks, f->blank,
                     blanks->kinds);
}

static void take_lumber(struct materials *m, const struct door *door, const struct part *part,
                        struct part_figures *f) {
    const struct calc *const c = m->calc;
    const struct place place = door->row->place;
    const struct lumber *const lumber = &c->rates->lumber[part->material];
    const enum unit unit = lumber_unit(lumber);
    const fig thickness = material_thickness(m, part->material);
    const fig length3 = unit == UNIT_BF ? c->units->length3_per_bf : c->units->length3_per_m3;
    const figs under = {{length3}};
    const struct blanks blanks = blanks_of(c, door, part);
    f->rough_width = calc_length(c, "rough width", part->rough_width, place);
    f->net = fig_ratio(c->tape, "lumber net, each", unit, (figs){{thickness, f->width, f->length}},
                       under);
    if (blanks.kinds == 0) {
        f->rough_length = calc_length(c, "rough length", part->rough_length, place);
        f->rough = fig_ratio(c->tape, "lumber rough, each", unit,
                             (figs){{thickness, f->rough_width, f->rough_length}}, under);
        return;
    }
    const fig all = take_blanks(c, &blanks, f, place);
    const fig pieces = calc_count(c, "pieces in blanks", blanks.pieces, place);
    f->rough = fig_ratio(c->tape, "lumber rough, each, of its blank", unit,
                         (figs){{thickness, f->rough_width, all}}, (figs){{pieces, length3}});
    if (&door->parts[blanks.first] != part) {
        for (size_t i = 0; i < blanks.kinds; i++) { /* they stand with the first */
            f->blank[i] = f->blanks[i] = f->blank_holds[i] = (fig){0};
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
    if (part_is_frame(part->kind)) {
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
    f->count = calc_count(c, "pieces a door", part->count, place);
    f->pieces = calc_product(c, "pieces", UNIT_COUNT, f->count, leaf->pieces);
    if (part->material_kind == MATERIAL_LUMBER) {
        take_lumber(m, leaf->door, part, f);
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
