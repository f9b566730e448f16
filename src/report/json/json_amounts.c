/* SPDX-License-Identifier: MIT */
/* Amounts: doors, materials, finish, labor. */
#include "report/json/json_parts.h"
#include "report/words/show.h"

#include <stddef.h>

/* --- doors --- */

static const struct json_row leaf_rows[] = {
    {"openings", offsetof(struct leaf_figures, openings)},
    {"leaves", offsetof(struct leaf_figures, leaves)},
    {"pieces", offsetof(struct leaf_figures, pieces)},
    {"width", offsetof(struct leaf_figures, width)},
    {"height", offsetof(struct leaf_figures, height)},
    {"thickness", offsetof(struct leaf_figures, thickness)},
    {"face area", offsetof(struct leaf_figures, face)},
    {"perimeter", offsetof(struct leaf_figures, perimeter)},
    {"outer edges", offsetof(struct leaf_figures, edges)},
    {"see through", offsetof(struct leaf_figures, see_through)},
    {"inner edges", offsetof(struct leaf_figures, inner_edges)},
    {"profile area", offsetof(struct leaf_figures, profile)},
    {"faces sprayed", offsetof(struct leaf_figures, faces)},
    {"sprayed", offsetof(struct leaf_figures, sprayed)},
    {"weight", offsetof(struct leaf_figures, weight)},
    {"hinges", offsetof(struct leaf_figures, hinges)},
    {"pulls", offsetof(struct leaf_figures, pulls)},
    {"banded edge", offsetof(struct leaf_figures, banded)},
    {"bought in", offsetof(struct leaf_figures, bought_in)},
    {"finish put out", offsetof(struct leaf_figures, put_out)},
};
static const struct json_row part_rows[] = {
    {"length", offsetof(struct part_figures, length)},
    {"width", offsetof(struct part_figures, width)},
    {"rough length", offsetof(struct part_figures, rough_length)},
    {"rough width", offsetof(struct part_figures, rough_width)},
    {"each door", offsetof(struct part_figures, count)},
    {"pieces", offsetof(struct part_figures, pieces)},
    {"net", offsetof(struct part_figures, net)},
    {"rough", offsetof(struct part_figures, rough)},
    {"area", offsetof(struct part_figures, area)},
    {"cost", offsetof(struct part_figures, cost)},
    {"stops", offsetof(struct part_figures, stops)},
    {"glue lines", offsetof(struct part_figures, glue)},
    {"raised edge", offsetof(struct part_figures, raised)},
    {"swells by", offsetof(struct part_figures, movement.swell)},
    {"shrinks by", offsetof(struct part_figures, movement.shrink)},
    {"room", offsetof(struct part_figures, movement.room)},
    {"hold", offsetof(struct part_figures, movement.hold)},
    {"weight", offsetof(struct part_figures, weight)},
};
static const struct json_row price_rows[] = {
    {"price by cost", offsetof(struct door_price, cost.price)},
    {"priced", offsetof(struct door_price, priced)},
    {"extra charge", offsetof(struct door_price, extra)},
    {"unit price", offsetof(struct door_price, unit)},
    {"amount", offsetof(struct door_price, amount)},
};

static json_t *part_object(struct json_maker *maker, const struct part *part,
                           const struct part_figures *figures) {
    json_t *const object = json_object();
    const struct rates *const rates = maker->e->rates;
    const char *material = NULL;
    if (part->material_kind == MATERIAL_LUMBER) {
        material = rates->lumber[part->material].name.s;
    } else if (part->material_kind == MATERIAL_SHEET) {
        material = rates->sheets[part->material].name.s;
    } else if (part->material_kind == MATERIAL_GLASS) {
        material = rates->glass[part->material].name.s;
    }
    json_put_text(maker, object, "part", part_kind_name(part->kind));
    json_put_text(maker, object, "material", material);
    PUT_FIGURES(maker, object, part_rows, figures);
    return object;
}

static json_t *door_object(struct json_maker *maker, size_t row) {
    const struct leaf_figures *const leaf = &maker->e->quantities.leaves[row];
    const struct door *const door = leaf->door;
    const enum length_unit unit = maker->e->job->unit;
    json_t *const object = json_object();
    json_put_text(maker, object, "id", door->row->id.s);
    json_put_text(maker, object, "room", door->row->room.s);
    json_put_text(maker, object, "use", show_use((enum use)door->row->use.choice));
    json_put_text(maker, object, "style", door->style->name.s);
    json_put_text(maker, object, "made as", show_style(door));
    json_put_text(maker, object, "size", show_size(door->width, door->height, unit).text);
    json_put_text(maker, object, "measured",
                  door->construction->measure.choice == MEASURE_OPENING ? "opening" : "door");
    json_put_text(maker, object, "as measured",
                  show_size(door->row->width.amount, door->row->height.amount, unit).text);
    json_put_text(maker, object, "hinge side",
                  show_hinge_side((enum hinge_side)door->row->hinge_side.choice));
    json_put_text(maker, object, "note", door->row->note.s);
    json_put_count(maker, object, "line", door->row->place.line);
    PUT_FIGURES(maker, object, leaf_rows, leaf);
    json_put_figure(maker, object, "person-minutes", maker->e->labor.leaf_minutes[row]);
    PUT_FIGURES(maker, object, price_rows, &maker->e->costs.doors[row]);
    json_t *const parts = json_array();
    for (size_t i = 0; i < door->part_count; i++) {
        json_add(maker, parts, part_object(maker, &door->parts[i], &leaf->parts[i]));
    }
    json_put(maker, object, "parts", parts);
    return object;
}

void json_doors(struct json_maker *maker) {
    json_open(&maker->stream, "doors", '[');
    for (size_t i = 0; i < maker->e->quantities.count; i++) {
        json_send(&maker->stream, NULL, door_object(maker, i));
    }
    json_close(&maker->stream, ']');
}

/* --- materials --- */

static const struct json_row lumber_rows[] = {
    {"net", offsetof(struct lumber_buy, net)},
    {"rough", offsetof(struct lumber_buy, rough)},
    {"waste, percent", offsetof(struct lumber_buy, waste)},
    {"with waste", offsetof(struct lumber_buy, with_waste)},
    {"needed", offsetof(struct lumber_buy, priced.needed)},
    {"bought", offsetof(struct lumber_buy, priced.bought)},
    {"price", offsetof(struct lumber_buy, priced.price)},
    {"cost", offsetof(struct lumber_buy, priced.cost)},
    {"cost as needed", offsetof(struct lumber_buy, priced.cost_as_needed)},
    {"bought over net", offsetof(struct lumber_buy, priced.factor)},
    {"waste added", offsetof(struct lumber_buy, priced.waste_added)},
    {"yield", offsetof(struct lumber_buy, priced.yield)},
    {"allowances", offsetof(struct lumber_buy, allowances)},
    {"kerf, defects, offcuts", offsetof(struct lumber_buy, priced.rest)},
};
static const struct json_row sheet_rows[] = {
    {"net", offsetof(struct sheet_buy, net)},
    {"waste, percent", offsetof(struct sheet_buy, waste)},
    {"with waste", offsetof(struct sheet_buy, needed)},
    {"sheet area", offsetof(struct sheet_buy, each)},
    {"whole sheets", offsetof(struct sheet_buy, priced.whole)},
    {"half sheets", offsetof(struct sheet_buy, priced.half)},
    {"price", offsetof(struct sheet_buy, price)},
    {"half price", offsetof(struct sheet_buy, half_price)},
    {"bought", offsetof(struct sheet_buy, priced.bought)},
    {"cost", offsetof(struct sheet_buy, priced.cost)},
    {"charged", offsetof(struct sheet_buy, charged)},
    {"bought over net", offsetof(struct sheet_buy, priced.factor)},
    {"waste added", offsetof(struct sheet_buy, priced.waste_added)},
    {"yield", offsetof(struct sheet_buy, priced.yield)},
};
static const struct json_row lumber_way_rows[] = {
    {"needed", offsetof(struct purchase_by, needed)},
    {"bought", offsetof(struct purchase_by, bought)},
    {"price", offsetof(struct purchase_by, price)},
    {"cost", offsetof(struct purchase_by, cost)},
    {"bought over net", offsetof(struct purchase_by, factor)},
    {"waste added", offsetof(struct purchase_by, waste_added)},
    {"yield", offsetof(struct purchase_by, yield)},
};
static const struct json_row sheet_way_rows[] = {
    {"whole sheets", offsetof(struct sheet_purchase_by, whole)},
    {"half sheets", offsetof(struct sheet_purchase_by, half)},
    {"bought", offsetof(struct sheet_purchase_by, bought)},
    {"cost", offsetof(struct sheet_purchase_by, cost)},
    {"bought over net", offsetof(struct sheet_purchase_by, factor)},
    {"waste added", offsetof(struct sheet_purchase_by, waste_added)},
    {"yield", offsetof(struct sheet_purchase_by, yield)},
};
static const struct json_row glass_rows[] = {
    {"area charged", offsetof(struct glass_buy, area)},
    {"stops", offsetof(struct glass_buy, stops)},
    {"cost", offsetof(struct glass_buy, cost)},
};
static const struct json_row banding_rows[] = {
    {"net", offsetof(struct banding_buy, net)},
    {"with waste", offsetof(struct banding_buy, needed)},
    {"rolls", offsetof(struct banding_buy, rolls)},
    {"price", offsetof(struct banding_buy, price)},
    {"cost", offsetof(struct banding_buy, cost)},
    {"charged", offsetof(struct banding_buy, charged)},
};
static const struct json_row hardware_rows[] = {
    {"needed", offsetof(struct hardware_buy, needed)},
    {"with spares", offsetof(struct hardware_buy, with_spares)},
    {"packs", offsetof(struct hardware_buy, packs)},
    {"bought", offsetof(struct hardware_buy, bought)},
    {"price", offsetof(struct hardware_buy, price)},
    {"cost", offsetof(struct hardware_buy, cost)},
    {"charged", offsetof(struct hardware_buy, charged)},
};
static const struct json_row consumable_rows[] = {
    {"quantity", offsetof(struct consumable_figures, quantity)},
    {"price", offsetof(struct consumable_figures, price)},
    {"cost", offsetof(struct consumable_figures, cost)},
};

/* Which way prices the job, and why there is no plan. */
static void put_ways(struct json_maker *maker, json_t *object, bool planned, const char *missing) {
    json_put_text(maker, object, "priced by", planned ? "plan" : "factor");
    json_put_text(maker, object, "no plan", missing);
}

static json_t *lumber_list(struct json_maker *maker) {
    json_t *const list = json_array();
    for (size_t i = 0; i < maker->e->lumber.count; i++) {
        const struct lumber_buy *const b = &maker->e->lumber.buys[i];
        const struct lumber *const l = &maker->e->rates->lumber[b->material];
        json_t *const object = json_object();
        json_put_text(maker, object, "name", l->name.s);
        json_put_text(maker, object, "thickness", l->thickness_text.s);
        json_put_text(maker, object, "waste",
                      show_waste(&l->waste, (enum waste_as)l->waste_as.choice).text);
        PUT_FIGURES(maker, object, lumber_rows, b);
        put_ways(maker, object, b->planned, b->plan.no_plan_reason);
        json_t *const factor = json_object();
        PUT_FIGURES(maker, factor, lumber_way_rows, &b->by_factor);
        json_put(maker, object, "by factor", factor);
        json_t *const plan = json_object();
        PUT_FIGURES(maker, plan, lumber_way_rows, &b->by_plan);
        json_put(maker, object, "by plan", plan);
        json_put_figure(maker, object, "waste asked for", b->implied_waste);
        json_add(maker, list, object);
    }
    return list;
}

static json_t *sheet_list(struct json_maker *maker) {
    json_t *const list = json_array();
    for (size_t i = 0; i < maker->e->sheets.count; i++) {
        const struct sheet_buy *const b = &maker->e->sheets.buys[i];
        const struct sheet *const s = &maker->e->rates->sheets[b->material];
        json_t *const object = json_object();
        json_put_text(maker, object, "name", s->name.s);
        json_put_text(maker, object, "waste",
                      show_waste(&s->waste, (enum waste_as)s->waste_as.choice).text);
        PUT_FIGURES(maker, object, sheet_rows, b);
        put_ways(maker, object, b->planned, b->plan.no_plan_reason);
        json_t *const factor = json_object();
        PUT_FIGURES(maker, factor, sheet_way_rows, &b->by_factor);
        json_put(maker, object, "by factor", factor);
        json_t *const plan = json_object();
        PUT_FIGURES(maker, plan, sheet_way_rows, &b->by_plan);
        json_put(maker, object, "by plan", plan);
        json_put_figure(maker, object, "waste asked for", b->implied_waste);
        json_add(maker, list, object);
    }
    return list;
}

static json_t *banding_list(struct json_maker *maker) {
    json_t *const list = json_array();
    for (size_t i = 0; i < maker->e->banding.count; i++) {
        const struct banding_buy *const b = &maker->e->banding.buys[i];
        json_t *const object = json_object();
        json_put_text(maker, object, "name", maker->e->rates->bandings[b->banding].name.s);
        PUT_FIGURES(maker, object, banding_rows, b);
        json_add(maker, list, object);
    }
    return list;
}

/* What others make: a door as it is bought, its finish put out. */
static json_t *bought_in_list(struct json_maker *maker) {
    json_t *const list = json_array();
    for (size_t i = 0; i < maker->e->quantities.count; i++) {
        const struct leaf_figures *const leaf = &maker->e->quantities.leaves[i];
        const struct door *const door = leaf->door;
        if (fig_none(leaf->bought_in) && fig_none(leaf->put_out)) {
            continue;
        }
        json_t *const object = json_object();
        json_put_text(maker, object, "door", door->row->id.s);
        json_put_text(maker, object, "style", door->bought_in ? door->style->name.s : NULL);
        json_put_text(maker, object, "finish",
                      fig_none(leaf->put_out)
                          ? NULL
                          : maker->e->rates->finishes[door->construction->finish.index].name.s);
        json_put_figure(maker, object, "pieces", leaf->pieces);
        json_put_figure(maker, object, "door, each", leaf->bought_in);
        json_put_figure(maker, object, "finish, each", leaf->put_out);
        json_add(maker, list, object);
    }
    return list;
}

static json_t *glass_list(struct json_maker *maker) {
    json_t *const list = json_array();
    for (size_t i = 0; i < maker->e->glass.count; i++) {
        const struct glass_buy *const b = &maker->e->glass.buys[i];
        json_t *const object = json_object();
        json_put_text(maker, object, "name", maker->e->rates->glass[b->material].name.s);
        PUT_FIGURES(maker, object, glass_rows, b);
        json_add(maker, list, object);
    }
    return list;
}

static json_t *hardware_list(struct json_maker *maker) {
    json_t *const list = json_array();
    for (size_t i = 0; i < maker->e->hardware.count; i++) {
        const struct hardware_buy *const b = &maker->e->hardware.buys[i];
        json_t *const object = json_object();
        json_put_text(maker, object, "name", maker->e->rates->hardware[b->hardware].name.s);
        json_put_text(maker, object, "as", b->role == ROLE_HINGE ? "hinge" : "pull");
        json_put(maker, object, "by others", json_boolean(b->by_others));
        PUT_FIGURES(maker, object, hardware_rows, b);
        json_add(maker, list, object);
    }
    return list;
}

static json_t *consumable_list(struct json_maker *maker) {
    json_t *const list = json_array();
    for (size_t i = 0; i < maker->e->costs.consumable_count; i++) {
        const struct consumable_figures *const c = &maker->e->costs.consumables[i];
        json_t *const object = json_object();
        json_put_text(maker, object, "name", maker->e->rates->consumables[c->consumable].name.s);
        PUT_FIGURES(maker, object, consumable_rows, c);
        json_add(maker, list, object);
    }
    return list;
}

json_t *json_materials(struct json_maker *maker) {
    json_t *const object = json_object();
    json_put(maker, object, "lumber", lumber_list(maker));
    json_put(maker, object, "sheets", sheet_list(maker));
    json_put(maker, object, "banding", banding_list(maker));
    json_put(maker, object, "glass", glass_list(maker));
    json_put(maker, object, "hardware", hardware_list(maker));
    json_put(maker, object, "consumables", consumable_list(maker));
    json_put(maker, object, "bought in", bought_in_list(maker));
    return object;
}
