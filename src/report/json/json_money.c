/* SPDX-License-Identifier: MIT */
/* Finish, labor and money. */
#include "report/json/json_parts.h"
#include "report/words/buy_list.h"

/* --- finish --- */

static json_t *batch_object(struct json_maker *maker, const struct batch *batch) {
    json_t *const object = json_object();
    json_t *const coats = json_array();
    json_put_text(maker, object, "finish", maker->e->rates->finishes[batch->finish].name.s);
    json_put_text(maker, object, "color", batch->color);
    json_put_fields(maker, object, &fields_batch, batch);
    for (size_t i = 0; i < batch->coat_count; i++) {
        json_t *const coat = json_object();
        json_put_text(maker, coat, "coating",
                      maker->e->rates->coatings[batch->coats[i].coating].name.s);
        json_put_fields(maker, coat, &fields_coat, &batch->coats[i]);
        json_add(maker, coats, coat);
    }
    json_put(maker, object, "coats", coats);
    return object;
}

static json_t *product_object(struct json_maker *maker, const struct product *product) {
    json_t *const object = json_object();
    json_t *const containers = json_array();
    json_put_text(maker, object, "name", product->name);
    json_put_text(maker, object, "color", product->color);
    json_put_fields(maker, object, &fields_product, product);
    for (size_t i = 0; i < product->size_count; i++) {
        json_t *const size = json_object();
        json_put_text(maker, size, "size", product->sizes->s[i].words);
        json_put_figure(maker, size, "count", product->counts[i]);
        json_put_figure(maker, size, "volume", product->volumes[i]);
        json_put_figure(maker, size, "price", product->prices[i]);
        json_add(maker, containers, size);
    }
    json_put(maker, object, "containers", containers);
    return object;
}

json_t *json_finish(struct json_maker *maker) {
    json_t *const object = json_object();
    json_t *const batches = json_array();
    json_t *const products = json_array();
    for (size_t i = 0; i < maker->e->finish.batch_count; i++) {
        json_add(maker, batches, batch_object(maker, &maker->e->finish.batches[i]));
    }
    for (size_t i = 0; i < maker->e->finish.product_count; i++) {
        json_add(maker, products, product_object(maker, &maker->e->finish.products[i]));
    }
    json_put(maker, object, "batches", batches);
    json_put(maker, object, "products", products);
    return object;
}

/* --- labor --- */

json_t *json_labor(struct json_maker *maker) {
    const struct labor *const labor = &maker->e->labor;
    const struct rates *const rates = maker->e->rates;
    json_t *const object = json_object();
    json_t *const operations = json_array();
    json_t *const machines = json_array();
    json_put_fields(maker, object, &fields_labor, labor);
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        const struct operation *const given = &rates->operations[o->operation];
        json_t *const operation = json_object();
        json_put_text(maker, operation, "name", given->name.s);
        json_put_text(maker, operation, "at",
                      given->machine < 0 ? NULL : rates->machines[given->machine].name.s);
        json_put_fields(maker, operation, &fields_operation, o);
        json_add(maker, operations, operation);
    }
    for (size_t i = 0; i < labor->machine_count; i++) {
        const struct machine_figures *const m = &labor->machines[i];
        json_t *const machine = json_object();
        json_put_text(maker, machine, "name",
                      m->machine < 0 ? NULL : rates->machines[m->machine].name.s);
        json_put_figure(maker, machine, "minutes", m->minutes);
        json_put_figure(maker, machine, "cost", m->cost);
        json_add(maker, machines, machine);
    }
    json_put(maker, object, "operations", operations);
    json_put(maker, object, "machines", machines);
    return object;
}

/* --- money --- */

json_t *json_costs(struct json_maker *maker) {
    const struct costs *const costs = &maker->e->costs;
    json_t *const object = json_object();
    json_t *const groups = json_object();
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        json_put_figure(maker, groups, cost_group_name((enum cost_group)g), costs->job.group[g]);
    }
    json_put(maker, object, "groups", groups);
    json_put_fields(maker, object, &fields_build_up, &costs->job);
    json_put_fields(maker, object, &fields_costs, costs);
    json_t *const unshared = json_object();
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        json_put_figure(maker, unshared, cost_group_name((enum cost_group)g), costs->unshared[g]);
    }
    json_put(maker, object, "left by rounding the shares", unshared);
    return object;
}

json_t *json_sale(struct json_maker *maker) {
    const struct sale_figures *const sale = &maker->e->sale;
    const struct sale *const given = &maker->e->job->sale;
    json_t *const object = json_object();
    json_t *const charges = json_array();
    json_t *const stages = json_array();
    json_put_text(maker, object, "tax name", given->tax_name.s);
    json_put_fields(maker, object, &fields_sale, sale);
    for (size_t i = 0; i < sale->charge_count; i++) {
        json_t *const charge = json_object();
        json_put_text(maker, charge, "name", given->charges[i].name.s);
        json_put_figure(maker, charge, "money", sale->charges[i]);
        json_put_figure(maker, charge, "cost with overhead", maker->e->costs.charges[i].full);
        json_add(maker, charges, charge);
    }
    for (size_t i = 0; i < sale->stage_count; i++) {
        json_t *const stage = json_object();
        json_put_text(maker, stage, "name", given->stages[i].name.s);
        json_put_figure(maker, stage, "percent", sale->stage_rates[i]);
        json_put_figure(maker, stage, "money", sale->stages[i]);
        json_add(maker, stages, stage);
    }
    json_put(maker, object, "charges", charges);
    json_put_figure(maker, object, "delivery, cost with overhead",
                    given->delivery.given ? maker->e->costs.charges[sale->charge_count].full
                                          : (fig){0});
    json_put(maker, object, "stages", stages);
    return object;
}

static json_t *buy_line_object(struct json_maker *maker, const struct buy_line *line) {
    json_t *const object = json_object();
    json_put_text(maker, object, "what", line->what);
    json_put_text(maker, object, "size", line->size);
    json_put_text(maker, object, "how many", line->how_many);
    json_put_figure(maker, object, "count", line->count);
    json_put_figure(maker, object, "price", line->price);
    json_put_figure(maker, object, "cost", line->cost);
    json_put_text(maker, object, "note", line->note);
    json_put_text(maker, object, "ordered as", line->ordered);
    json_put_text(maker, object, "how many ordered", line->ordered_many);
    json_put(maker, object, "part of the line above", json_boolean(line->part));
    return object;
}

/* The list by supplier; NULL where memory is out. */
static json_t *buy_list_array(struct json_maker *maker) {
    struct buy_list list;
    struct pool pool;
    json_t *const array = json_array();
    pool_init(&pool);
    maker->failed = !buy_list_make(&list, &pool, maker->e) || maker->failed;
    for (size_t g = 0; g < list.group_count; g++) {
        const struct buy_group *const group = &list.groups[g];
        json_t *const object = json_object();
        json_t *const lines = json_array();
        json_put_text(maker, object, "supplier", group->title);
        json_put_figure(maker, object, "spent", group->total);
        for (size_t i = 0; i < group->count; i++) {
            json_add(maker, lines, buy_line_object(maker, &list.lines[group->first + i]));
        }
        json_put(maker, object, "lines", lines);
        json_add(maker, array, object);
    }
    buy_list_clear(&list);
    pool_clear(&pool);
    return array;
}

json_t *json_purchase(struct json_maker *maker, const struct purchase *purchase) {
    json_t *const object = json_object();
    json_t *const spent = json_object();
    for (int g = 0; g <= COST_BOUGHT_IN; g++) {
        json_put_figure(maker, spent, cost_group_name((enum cost_group)g), purchase->spent[g]);
    }
    json_put(maker, object, "spent", spent);
    json_put_fields(maker, object, &fields_purchase, purchase);
    json_put(maker, object, "list", buy_list_array(maker));
    return object;
}
