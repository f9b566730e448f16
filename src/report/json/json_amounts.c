/* SPDX-License-Identifier: MIT */
/* Amounts: doors, materials, finish, labor. */
#include "report/json/json_parts.h"
#include "report/words/door_words.h"
#include "report/words/planned.h"
#include "report/words/show.h"

/* --- doors --- */

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
    json_put_text(maker, object, "part", part_full_name(part));
    json_put_text(maker, object, "material", material);
    json_put_fields(maker, object, &fields_part, figures);
    return object;
}

/* Where a leaf is bored for its hinges, where that is said. */
static void put_bores(struct json_maker *maker, json_t *object, const struct leaf_figures *leaf,
                      const struct hardware *hinge) {
    const enum length_unit unit = maker->e->job->unit;
    char text[32];
    if (leaf->hinge_at != NULL) {
        json_t *const at = json_array();
        for (int64_t i = 0; i < tape_amount(&maker->e->tape, leaf->hinges); i++) {
            json_add(maker, at,
                     json_string(length_show(leaf->hinge_at[i], unit, text, sizeof text)));
        }
        json_put(maker, object, "at", at);
        json_put_text(maker, object, "from", row_hangs_level(leaf->door->row) ? "left" : "top");
    }
    if (hinge->cup.set) {
        json_put_text(maker, object, "cup, mm",
                      length_show(hinge->cup.amount, LENGTH_MM, text, sizeof text));
        json_put_text(maker, object, "cup center, mm",
                      length_show(hinge->cup_center.amount, LENGTH_MM, text, sizeof text));
    }
}

/* What hangs on a leaf, its hinges and pulls among it. */
static json_t *leaf_hardware(struct json_maker *maker, const struct leaf_figures *leaf) {
    const struct hardware_list *const list = &maker->e->hardware;
    json_t *const all = json_array();
    for (size_t i = 0; i < list->count; i++) {
        const fig pieces = hardware_on_leaf(&list->buys[i], leaf);
        if (!fig_none(pieces)) {
            json_t *const object = json_object();
            json_put_text(maker, object, "name",
                          maker->e->rates->hardware[list->buys[i].hardware].name.s);
            json_put_text(maker, object, "as", show_role(list->buys[i].role));
            json_put_figure(maker, object, "pieces", pieces);
            if (list->buys[i].role == ROLE_HINGE) {
                put_bores(maker, object, leaf, &maker->e->rates->hardware[list->buys[i].hardware]);
            }
            json_add(maker, all, object);
        }
    }
    return all;
}

static json_t *door_object(struct json_maker *maker, size_t row) {
    const struct leaf_figures *const leaf = &maker->e->quantities.leaves[row];
    const struct door *const door = leaf->door;
    const enum length_unit unit = maker->e->job->unit;
    json_t *const object = json_object();
    json_put_text(maker, object, "id", door->row->id.s);
    json_put_text(maker, object, "room", door->row->room.s);
    json_put_text(maker, object, "use", show_use((enum use)door->row->use.choice));
    json_put_text(maker, object, "opens", show_opens((enum opens)door->row->opens.choice));
    json_put_text(maker, object, "leaf", show_leaf(door));
    json_put_text(maker, object, "style",
                  maker->e->rates->styles[door->construction->style.index].name.s);
    json_put_text(maker, object, "made as", show_style(door));
    json_put_text(maker, object, "grain", show_grain(maker->e->rates, door));
    json_put_text(maker, object, "size", show_size(door->width, door->height, unit).text);
    json_put_text(maker, object, "measured",
                  door->construction->size_is.choice == MEASURE_OPENING ? "opening" : "door");
    json_put_text(
        maker, object, "as measured",
        show_size(leaf_measured(door->row, door->role)->amount, door->row->height.amount, unit)
            .text);
    json_put_text(maker, object, "hinge side", show_hung(door));
    json_put_text(maker, object, "note", door->row->note.s);
    json_put_text(maker, object, "remark", door->row->remark.s);
    json_put_count(maker, object, "line", door->row->place.line);
    json_put_fields(maker, object, &fields_leaf, leaf);
    json_put_figure(maker, object, "person-minutes", maker->e->labor.leaf_minutes[row]);
    json_put_figure(maker, object, "price by cost", maker->e->costs.doors[row].cost.price);
    json_put_fields(maker, object, &fields_door_price, &maker->e->costs.doors[row]);
    json_t *const parts = json_array();
    for (size_t i = 0; i < door->part_count; i++) {
        json_add(maker, parts, part_object(maker, &door->parts[i], &leaf->parts[i]));
    }
    json_put(maker, object, "parts", parts);
    json_put(maker, object, "hardware", leaf_hardware(maker, leaf));
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

static json_t *way_object(struct json_maker *maker, const struct planned *p, const void *way) {
    json_t *const object = json_object();
    json_put_fields(maker, object, p->way, way);
    return object;
}

static json_t *planned_object(struct json_maker *maker, const struct planned *p) {
    json_t *const object = json_object();
    json_put_text(maker, object, "name", p->name);
    if (p->thickness != NULL) {
        json_put_text(maker, object, "thickness", p->thickness);
    }
    json_put_text(maker, object, "waste", show_waste(p->waste, p->waste_as).text);
    json_put_fields(maker, object, p->needs, p->buy);
    json_put_fields(maker, object, p->way, p->priced);
    json_put_fields(maker, object, p->job, p->buy);
    json_put_text(maker, object, "priced by", p->planned ? "plan" : "factor");
    json_put_text(maker, object, "no plan", p->no_plan_reason);
    json_put(maker, object, "by factor", way_object(maker, p, p->by_factor));
    json_put(maker, object, "by plan", way_object(maker, p, p->by_plan));
    json_put_figure(maker, object, "waste asked for", p->implied_waste);
    json_put_figure(maker, object, "plan more than the factor buys", p->short_of_plan);
    return object;
}

static json_t *planned_list(struct json_maker *maker, size_t count,
                            struct planned (*of)(const struct estimate *, size_t)) {
    json_t *const list = json_array();
    for (size_t i = 0; i < count; i++) {
        const struct planned p = of(maker->e, i);
        json_add(maker, list, planned_object(maker, &p));
    }
    return list;
}

static json_t *spare_list(struct json_maker *maker) {
    json_t *const list = json_array();
    for (size_t i = 0; i < maker->e->spares.count; i++) {
        const struct spare_rails *const s = &maker->e->spares.rails[i];
        const struct part *const part = &s->leaf->door->parts[s->part];
        json_t *const object = json_object();
        json_put_text(maker, object, "lumber", maker->e->rates->lumber[part->material].name.s);
        json_put_text(maker, object, "size",
                      show_size(part->width, part->length, maker->e->job->unit).text);
        json_put_text(maker, object, "as", s->leaf->door->name);
        json_put_fields(maker, object, &fields_spare, s);
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
        json_put_fields(maker, object, &fields_banding, b);
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
        json_put_text(maker, object, "door", door->name);
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
        json_put_fields(maker, object, &fields_glass, b);
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
        json_put_text(maker, object, "as", show_role(b->role));
        json_put(maker, object, "by others", json_boolean(b->by_others));
        json_put_fields(maker, object, &fields_hardware, b);
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
        json_put_fields(maker, object, &fields_consumable, c);
        json_add(maker, list, object);
    }
    return list;
}

json_t *json_materials(struct json_maker *maker) {
    json_t *const object = json_object();
    json_put(maker, object, "lumber", planned_list(maker, maker->e->lumber.count, planned_lumber));
    json_put(maker, object, "spare rails", spare_list(maker));
    json_put(maker, object, "sheets", planned_list(maker, maker->e->sheets.count, planned_sheet));
    json_put(maker, object, "banding", banding_list(maker));
    json_put(maker, object, "glass", glass_list(maker));
    json_put(maker, object, "hardware", hardware_list(maker));
    json_put(maker, object, "consumables", consumable_list(maker));
    json_put(maker, object, "bought in", bought_in_list(maker));
    return object;
}
