/* SPDX-License-Identifier: MIT */
#include "door/material.h"

#include "model/name.h"

#include <stdlib.h>

struct area_weight {
    enum material_kind material_kind;
    int32_t material;
    length thickness;
    fig figure;
};

bool materials_init(struct materials *m, const struct calc *calc) {
    *m = (struct materials){.calc = calc};
    m->thickness = pool_take(calc->pool, calc->rates->lumber_count, sizeof *m->thickness);
    m->glass = pool_take(calc->pool, calc->rates->glass_count, sizeof *m->glass);
    return m->thickness != NULL && m->glass != NULL;
}

void materials_clear(struct materials *m) {
    free(m->weights);
    *m = (struct materials){0};
}

/* Runs make under the material's own subject, so that a shared fact is not filed under the door
 * that first asked. */
static uint32_t about_material(const struct calc *c, const char *name) {
    const uint32_t before = c->tape->about;
    tape_about(c->tape, name);
    return before;
}

fig material_thickness(struct materials *m, int32_t lumber) {
    const struct calc *const c = m->calc;
    fig *const known = &m->thickness[lumber];
    if (fig_none(*known)) {
        const struct lumber *const wood = &c->rates->lumber[lumber];
        const uint32_t before = about_material(c, wood->name.s);
        *known = calc_given(c, "thickness, nominal", &wood->thickness);
        if (wood->price.unit == UNIT_MONEY_PER_BF) {
            *known = fig_larger(c->tape, "thickness counted", *known, c->units->inch);
        }
        tape_about_again(c->tape, before);
    }
    return *known;
}

static fig density(const struct calc *c, enum material_kind kind, int32_t material) {
    if (kind == MATERIAL_LUMBER) {
        const int32_t wood = c->rates->lumber[material].wood;
        return wood < 0 ? (fig){0}
                        : units_wood_density(c->tape, c->units, &c->rates->woods[wood].sg_12);
    }
    return units_density(c->tape, c->units,
                         kind == MATERIAL_SHEET ? &c->rates->sheets[material].density
                                                : &c->rates->glass[material].density);
}

static struct place thickness_place(const struct rates *rates, enum material_kind kind,
                                    int32_t material) {
    if (kind == MATERIAL_LUMBER) {
        return rates->lumber[material].thickness.place;
    }
    return kind == MATERIAL_SHEET ? rates->sheets[material].thickness.place
                                  : rates->glass[material].thickness.place;
}

fig material_weight(struct materials *m, const struct part *part) {
    const struct calc *const c = m->calc;
    const enum material_kind kind = part->material_kind;
    for (size_t i = 0; i < m->weight_count; i++) {
        const struct area_weight *const w = &m->weights[i];
        if (w->material_kind == kind && w->material == part->material &&
            w->thickness == part->weight_thickness) {
            return w->figure;
        }
    }
    bool failed = false;
    m->weights =
        array_grow(m->weights, &m->weight_room, m->weight_count + 1, sizeof *m->weights, &failed);
    if (failed) {
        c->tape->fault = TAPE_MEMORY;
        return (fig){0};
    }
    const uint32_t before = about_material(c, material_name(c->rates, kind, part->material));
    fig weight = density(c, kind, part->material);
    if (!fig_none(weight)) {
        const fig thick =
            units_length(c->tape, c->units, "thickness, finished", part->weight_thickness,
                         thickness_place(c->rates, kind, part->material));
        weight = fig_ratio(c->tape, "weight by area", c->units->area_weight,
                           (figs){{weight, thick}}, (figs){{c->units->length_per_thick}});
    }
    tape_about_again(c->tape, before);
    m->weights[m->weight_count++] = (struct area_weight){.material_kind = kind,
                                                         .material = part->material,
                                                         .thickness = part->weight_thickness,
                                                         .figure = weight};
    return weight;
}

/* What holds the pane: charged by the length round it. */
static fig pane_stops(const struct calc *c, fig price, fig width, fig height) {
    const fig round[] = {width, width, height, height};
    const fig around = fig_sum(c->tape, "round the pane", c->units->length, round, 4);
    return fig_ratio(c->tape, "stops", UNIT_MONEY, (figs){{around, price}},
                     (figs){{c->units->length_per_run}});
}

fig material_pane(struct materials *m, int32_t glass, fig width, fig height, fig *area,
                  fig *stops) {
    const struct calc *const c = m->calc;
    const struct glass *const kind = &c->rates->glass[glass];
    struct glass_rates *const rates = &m->glass[glass];
    if (fig_none(rates->price)) {
        const uint32_t before = about_material(c, kind->name.s);
        rates->price = calc_given(c, "glass price", &kind->price);
        rates->minimum = calc_given(c, "least area charged", &kind->minimum);
        rates->stops = calc_given(c, "stops, by length", &kind->stops);
        rates->step = calc_given(c, "side rounded up to", &kind->round_up);
        tape_about_again(c->tape, before);
    }
    *stops = fig_none(rates->stops) ? (fig){0} : pane_stops(c, rates->stops, width, height);
    if (!fig_none(rates->step)) {
        width = fig_up(c->tape, "pane width charged", width, rates->step);
        height = fig_up(c->tape, "pane height charged", height, rates->step);
    }
    *area = calc_area(c, "pane area", width, height);
    if (!fig_none(rates->minimum)) {
        *area = fig_larger(c->tape, "pane area charged", *area, rates->minimum);
    }
    const fig cost = calc_product(c, "pane cost", UNIT_MONEY, *area, rates->price);
    return fig_none(*stops) ? cost : fig_plus(c->tape, "pane and stops", cost, *stops);
}
