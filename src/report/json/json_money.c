/* SPDX-License-Identifier: MIT */
/* Finish, labor and money. */
#include "report/json/json_parts.h"
#include "report/words/show.h"

#include <stddef.h>

/* --- finish --- */

static const struct json_row coat_rows[] = {
    {"coats", offsetof(struct coat_figures, times)},
    {"wet film", offsetof(struct coat_figures, film)},
    {"dry film", offsetof(struct coat_figures, dry_film)},
    {"theoretical", offsetof(struct coat_figures, theoretical)},
    {"sprayed", offsetof(struct coat_figures, sprayed)},
    {"mixes", offsetof(struct coat_figures, mixes)},
    {"mix", offsetof(struct coat_figures, mix)},
    {"coating volume", offsetof(struct coat_figures, coating_volume)},
    {"reducer", offsetof(struct coat_figures, reducer)},
    {"catalyst", offsetof(struct coat_figures, catalyst)},
    {"cost", offsetof(struct coat_figures, cost)},
};
static const struct json_row batch_rows[] = {
    {"sprayed area", offsetof(struct batch, area)},
    {"dry film", offsetof(struct batch, dry_film)},
    {"drying", offsetof(struct batch, dry_hours)},
    {"cost", offsetof(struct batch, cost)},
};
static const struct json_row product_rows[] = {
    {"need", offsetof(struct product, need)},
    {"bought", offsetof(struct product, bought)},
    {"left over", offsetof(struct product, left_over)},
    {"cost", offsetof(struct product, cost)},
    {"charged", offsetof(struct product, charged)},
};

static json_t *batch_object(struct json_maker *maker, const struct batch *batch) {
    json_t *const object = json_object();
    json_t *const coats = json_array();
    json_put_text(maker, object, "finish", maker->e->rates->finishes[batch->finish].name.s);
    json_put_text(maker, object, "color", batch->color);
    PUT_FIGURES(maker, object, batch_rows, batch);
    for (size_t i = 0; i < batch->coat_count; i++) {
        json_t *const coat = json_object();
        json_put_text(maker, coat, "coating",
                      maker->e->rates->coatings[batch->coats[i].coating].name.s);
        PUT_FIGURES(maker, coat, coat_rows, &batch->coats[i]);
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
    PUT_FIGURES(maker, object, product_rows, product);
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

static const struct json_row operation_rows[] = {
    {"job count", offsetof(struct operation_figures, job_count)},
    {"run minutes", offsetof(struct operation_figures, run)},
    {"set-ups", offsetof(struct operation_figures, setups)},
    {"set-up minutes", offsetof(struct operation_figures, setup_minutes)},
    {"machine minutes", offsetof(struct operation_figures, machine_minutes)},
    {"person-minutes", offsetof(struct operation_figures, person_minutes)},
    {"labor", offsetof(struct operation_figures, labor)},
    {"machine", offsetof(struct operation_figures, machine)},
    {"cost", offsetof(struct operation_figures, cost)},
};
static const struct json_row labor_rows[] = {
    {"person-minutes", offsetof(struct labor, person_minutes)},
    {"hours", offsetof(struct labor, hours)},
    {"bench hours", offsetof(struct labor, bench_hours)},
    {"labor", offsetof(struct labor, labor)},
    {"machine", offsetof(struct labor, machine)},
    {"minutes a door", offsetof(struct labor, minutes_a_door)},
    {"making, minutes a door", offsetof(struct labor, making)},
    {"finishing, minutes a door", offsetof(struct labor, finishing)},
    {"around it, minutes a door", offsetof(struct labor, general_minutes)},
    {"working days", offsetof(struct labor, work_days)},
    {"drying", offsetof(struct labor, dry_hours)},
};

json_t *json_labor(struct json_maker *maker) {
    const struct labor *const labor = &maker->e->labor;
    const struct rates *const rates = maker->e->rates;
    json_t *const object = json_object();
    json_t *const operations = json_array();
    json_t *const machines = json_array();
    PUT_FIGURES(maker, object, labor_rows, labor);
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        const struct operation *const given = &rates->operations[o->operation];
        json_t *const operation = json_object();
        json_put_text(maker, operation, "name", given->name.s);
        json_put_text(maker, operation, "at",
                      given->machine < 0 ? NULL : rates->machines[given->machine].name.s);
        PUT_FIGURES(maker, operation, operation_rows, o);
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

static const struct json_row build_up_rows[] = {
    {"materials", offsetof(struct build_up, materials)},
    {"direct cost", offsetof(struct build_up, direct)},
    {"contingency", offsetof(struct build_up, contingency)},
    {"overhead", offsetof(struct build_up, overhead)},
    {"cost with overhead", offsetof(struct build_up, full)},
    {"profit", offsetof(struct build_up, profit)},
    {"price by cost", offsetof(struct build_up, price)},
};
static const struct json_row sale_rows[] = {
    {"doors and fronts", offsetof(struct sale_figures, doors)},
    {"discount, percent", offsetof(struct sale_figures, discount_rate)},
    {"discount", offsetof(struct sale_figures, discount)},
    {"after discount", offsetof(struct sale_figures, after_discount)},
    {"job minimum", offsetof(struct sale_figures, minimum_line)},
    {"sold", offsetof(struct sale_figures, sold)},
    {"delivery", offsetof(struct sale_figures, delivery)},
    {"before tax", offsetof(struct sale_figures, subtotal)},
    {"taxable", offsetof(struct sale_figures, taxable)},
    {"tax, percent", offsetof(struct sale_figures, tax_rate)},
    {"tax", offsetof(struct sale_figures, tax)},
    {"total before card fee", offsetof(struct sale_figures, before_fee)},
    {"card fee, percent", offsetof(struct sale_figures, card_rate)},
    {"card fee", offsetof(struct sale_figures, card_fee)},
    {"total", offsetof(struct sale_figures, total)},
    {"deposit, percent", offsetof(struct sale_figures, deposit_rate)},
    {"deposit", offsetof(struct sale_figures, deposit)},
    {"balance", offsetof(struct sale_figures, balance)},
    {"profit left", offsetof(struct sale_figures, profit_left)},
    {"margin left", offsetof(struct sale_figures, margin_left)},
};

json_t *json_costs(struct json_maker *maker) {
    const struct costs *const costs = &maker->e->costs;
    json_t *const object = json_object();
    json_t *const groups = json_object();
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        json_put_figure(maker, groups, cost_group_name((enum cost_group)g), costs->job.group[g]);
    }
    json_put(maker, object, "groups", groups);
    PUT_FIGURES(maker, object, build_up_rows, &costs->job);
    json_put_figure(maker, object, "doors as quoted", costs->doors_total);
    json_put_figure(maker, object, "least price of a door", costs->least);
    json_put_figure(maker, object, "added by the minimum door", costs->minimum);
    json_put_figure(maker, object, "extra charges", costs->extra);
    json_put_figure(maker, object, "rounding", costs->rounding);
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
    PUT_FIGURES(maker, object, sale_rows, sale);
    for (size_t i = 0; i < sale->charge_count; i++) {
        json_t *const charge = json_object();
        json_put_text(maker, charge, "name", given->charges[i].name.s);
        json_put_figure(maker, charge, "money", sale->charges[i]);
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
    json_put(maker, object, "stages", stages);
    return object;
}

json_t *json_purchase(struct json_maker *maker, const struct purchase *purchase) {
    json_t *const object = json_object();
    json_t *const spent = json_object();
    for (int g = 0; g <= COST_BOUGHT_IN; g++) {
        json_put_figure(maker, spent, cost_group_name((enum cost_group)g), purchase->spent[g]);
    }
    json_put(maker, object, "spent", spent);
    json_put_figure(maker, object, "spent in all", purchase->total);
    json_put_figure(maker, object, "charged", purchase->charged);
    json_put_figure(maker, object, "board feet", purchase->board_feet);
    json_put_figure(maker, object, "cubic meters", purchase->cubic_meters);
    json_put_figure(maker, object, "sheets", purchase->sheets);
    json_put_figure(maker, object, "half sheets", purchase->half_sheets);
    json_put_figure(maker, object, "finish", purchase->finish);
    return object;
}
