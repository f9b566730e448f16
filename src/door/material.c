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

bool materials_init(struct materials *m, struct tape *tape, const struct measures *measures,
                    const struct rates *rates) {
    *m = (struct materials){.tape = tape, .measures = measures, .rates = rates};
    m->thickness = calloc(rates->lumber_count + 1, sizeof *m->thickness);
    m->glass = calloc(rates->glass_count + 1, sizeof *m->glass);
    return m->thickness != NULL && m->glass != NULL;
}

void materials_clear(struct materials *m) {
    free(m->thickness);
    free(m->glass);
    free(m->weights);
    *m = (struct materials){0};
}

/* Runs make under the material's own subject, so that a shared fact is not filed under the door
 * that first asked. */
static uint32_t about_material(struct materials *m, const char *name) {
    const uint32_t before = m->tape->about;
    tape_about(m->tape, name);
    return before;
}

fig material_thickness(struct materials *m, int32_t lumber) {
    fig *const known = &m->thickness[lumber];
    if (fig_none(*known)) {
        const struct lumber *const wood = &m->rates->lumber[lumber];
        const uint32_t before = about_material(m, wood->name.s);
        *known = measures_given(m->tape, m->measures, "thickness, nominal", &wood->thickness);
        if (wood->price.unit == UNIT_MONEY_PER_BF) {
            *known = fig_larger(m->tape, "thickness counted", *known, m->measures->inch);
        }
        tape_about_again(m->tape, before);
    }
    return *known;
}

static fig density(struct materials *m, enum material_kind material_kind, int32_t material) {
    if (material_kind == MATERIAL_LUMBER) {
        const int32_t wood = m->rates->lumber[material].wood;
        return wood < 0 ? (fig){0}
                        : measures_wood_density(m->tape, m->measures, &m->rates->woods[wood].sg_12);
    }
    const struct value *const given = material_kind == MATERIAL_SHEET
                                          ? &m->rates->sheets[material].density
                                          : &m->rates->glass[material].density;
    return measures_density(m->tape, m->measures, given);
}

static struct place thickness_place(const struct materials *m, enum material_kind material_kind,
                                    int32_t material) {
    if (material_kind == MATERIAL_LUMBER) {
        return m->rates->lumber[material].thickness.place;
    }
    return material_kind == MATERIAL_SHEET ? m->rates->sheets[material].thickness.place
                                           : m->rates->glass[material].thickness.place;
}

fig material_weight(struct materials *m, enum material_kind material_kind, int32_t material,
                    length thickness) {
    for (size_t i = 0; i < m->weight_count; i++) {
        const struct area_weight *const w = &m->weights[i];
        if (w->material_kind == material_kind && w->material == material &&
            w->thickness == thickness) {
            return w->figure;
        }
    }
    bool failed = false;
    m->weights =
        array_grow(m->weights, &m->weight_room, m->weight_count + 1, sizeof *m->weights, &failed);
    if (failed) {
        m->tape->fault = TAPE_MEMORY;
        return (fig){0};
    }
    const uint32_t before = about_material(m, material_name(m->rates, material_kind, material));
    fig weight = density(m, material_kind, material);
    if (!fig_none(weight)) {
        const fig thick = measures_length(m->tape, m->measures, "thickness, finished", thickness,
                                          thickness_place(m, material_kind, material));
        weight = fig_ratio(m->tape, "weight by area", m->measures->area_weight,
                           (figs){{weight, thick}}, (figs){{m->measures->length_per_thick}});
    }
    tape_about_again(m->tape, before);
    m->weights[m->weight_count++] = (struct area_weight){.material_kind = material_kind,
                                                         .material = material,
                                                         .thickness = thickness,
                                                         .figure = weight};
    return weight;
}

/* What holds the pane: charged by the length round it. */
static fig pane_stops(struct materials *m, int32_t glass, fig width, fig height) {
    const fig round[] = {width, width, height, height};
    const fig around = fig_sum(m->tape, "round the pane", m->measures->length, round, 4);
    return fig_ratio(m->tape, "stops", UNIT_MONEY, (figs){{around, m->glass[glass].stops}},
                     (figs){{m->measures->length_per_run}});
}

fig material_pane(struct materials *m, int32_t glass, fig width, fig height, fig *area,
                  fig *stops) {
    const struct glass *const kind = &m->rates->glass[glass];
    if (fig_none(m->glass[glass].price)) {
        const uint32_t before = about_material(m, kind->name.s);
        m->glass[glass].price = measures_given(m->tape, m->measures, "glass price", &kind->price);
        m->glass[glass].minimum =
            measures_given(m->tape, m->measures, "least area charged", &kind->minimum);
        m->glass[glass].stops =
            measures_given(m->tape, m->measures, "stops, by length", &kind->stops);
        m->glass[glass].step =
            measures_given(m->tape, m->measures, "side rounded up to", &kind->round_up);
        tape_about_again(m->tape, before);
    }
    *stops = fig_none(m->glass[glass].stops) ? (fig){0} : pane_stops(m, glass, width, height);
    if (!fig_none(m->glass[glass].step)) {
        width = fig_up(m->tape, "pane width charged", width, m->glass[glass].step);
        height = fig_up(m->tape, "pane height charged", height, m->glass[glass].step);
    }
    *area = fig_ratio(m->tape, "pane area", m->measures->area, (figs){{width, height}},
                      (figs){{m->measures->length2_per_area}});
    if (!fig_none(m->glass[glass].minimum)) {
        *area = fig_larger(m->tape, "pane area charged", *area, m->glass[glass].minimum);
    }
    const fig cost = fig_ratio(m->tape, "pane cost", UNIT_MONEY,
                               (figs){{*area, m->glass[glass].price}}, (figs){{{0}}});
    return fig_none(*stops) ? cost : fig_plus(m->tape, "pane and stops", cost, *stops);
}
