/* SPDX-License-Identifier: MIT */
#include "price/cost.h"

#include "model/charge.h"
#include "price/build_up.h"
#include "price/charge_cost.h"

#include <assert.h>
#include <string.h>

/* What the job and its doors are costed with. */
struct costing {
    const struct calc *calc;
    const struct cost_inputs *in;
    struct costs *costs;
    fig *terms; /* room for as many as rows and things bought */
};

const char *cost_group_name(enum cost_group group) {
    static const char *const names[COST_GROUP_COUNT] = {
        "lumber",    "sheets",           "glass", "finish",  "hardware", "consumables",
        "bought in", "tax on purchases", "labor", "machine", "remakes",
    };
    assert(group < COST_GROUP_COUNT);
    return names[group];
}

/* The total over the rows of pieces x a figure of each door, of which some may be none; none where
 * all are. at: where it stands in struct door_price. */
static fig doors_total(const struct costing *k, const char *what, size_t at) {
    const struct quantities *const q = k->calc->quantities;
    bool some = false;
    for (size_t r = 0; r < q->count; r++) {
        memcpy(&k->terms[r], (const char *)&k->costs->doors[r] + at, sizeof *k->terms);
        some = some || !fig_none(k->terms[r]);
    }
    if (!some) {
        return (fig){0};
    }
    return fig_total(k->calc->tape, what, UNIT_MONEY, q->pieces, k->terms, q->count);
}

/* --- the job's groups ------------------------------------------------------------------------- */

/* One share or the sum of several. */
static fig sum_shares(const struct calc *c, const char *what, const fig *terms, size_t n) {
    size_t set = 0;
    fig last = {0};
    for (size_t i = 0; i < n; i++) {
        if (!fig_none(terms[i])) {
            last = terms[i];
            set++;
        }
    }
    return set < 2 ? last : fig_sum(c->tape, what, UNIT_MONEY, terms, n);
}

/* What is sprayed here; a finish sent out takes nothing of the shop's. */
static fig finish_area(const struct costing *k) {
    size_t n = 0;
    for (size_t i = 0; i < k->in->finish->batch_count; i++) { /* never more than rows */
        if (k->in->finish->batches[i].coat_count > 0) {
            k->terms[n++] = k->in->finish->batches[i].area;
        }
    }
    return calc_sum(k->calc, "sprayed area in all", k->calc->units->area, k->terms, n);
}

/* What a consumable is counted by: doors, sprayed area (sq ft, m2), hinges or hours of labor, of
 * several jobs their own. */
static fig consumed(const struct costing *k, const struct consumable *consumable, fig area) {
    switch ((enum unit)consumable->price.unit) {
    case UNIT_MONEY_PER_DOOR:
        return k->calc->quantities->all_leaves;
    case UNIT_MONEY_PER_SQFT:
    case UNIT_MONEY_PER_M2:
        return area;
    case UNIT_MONEY_PER_HINGE:
        return k->calc->quantities->hinges;
    default:
        return k->calc->job->joined == NULL
                   ? k->in->labor->hours
                   : calc_given(k->calc, "person-hours of all jobs", &k->calc->job->joined->hours);
    }
}

static fig cost_consumables(const struct costing *k) {
    const struct calc *const c = k->calc;
    struct costs *const costs = k->costs;
    const fig area = finish_area(k);
    for (size_t i = 0; i < c->rates->consumable_count; i++) {
        const struct consumable *const consumable = &c->rates->consumables[i];
        struct consumable_figures f = {.consumable = (int32_t)i,
                                       .quantity = consumed(k, consumable, area)};
        if (fig_none(f.quantity)) {
            continue;
        }
        tape_about(c->tape, consumable->name.s);
        f.price = calc_given(c, "price", &consumable->price);
        f.cost = calc_product(c, "consumable cost", UNIT_MONEY, f.quantity, f.price);
        k->terms[costs->consumable_count] = f.cost;
        costs->consumables[costs->consumable_count++] = f;
    }
    tape_about_job(c->tape);
    return calc_sum(c, "consumables, cost", UNIT_MONEY, k->terms, costs->consumable_count);
}

/* What others make of a door: the door as it is bought, its finish. */
static void cost_bought_in(const struct costing *k) {
    const struct calc *const c = k->calc;
    for (size_t r = 0; r < c->quantities->count; r++) {
        const struct leaf_figures *const leaf = &c->quantities->leaves[r];
        struct build_up *const cost = &k->costs->doors[r].cost;
        const fig parts[] = {leaf->bought_in, leaf->put_out};
        tape_about_again(c->tape, leaf->subject);
        cost->bought_doors = leaf->bought_in;
        cost->group[COST_BOUGHT_IN] = sum_shares(c, "bought in, a door", parts, 2);
    }
    tape_about_job(c->tape);
    k->costs->job.bought_doors =
        doors_total(k, "doors bought in, cost", offsetof(struct door_price, cost.bought_doors));
    k->costs->job.group[COST_BOUGHT_IN] =
        doors_total(k, "bought in, cost", offsetof(struct door_price, cost.group[COST_BOUGHT_IN]));
}

static void cost_job(const struct costing *k) {
    const struct calc *const c = k->calc;
    const struct cost_inputs *const in = k->in;
    fig *const group = k->costs->job.group;
    fig *const terms = k->terms;
    size_t n = 0;
    tape_about_job(c->tape);
    for (size_t i = 0; i < in->lumber->count; i++) {
        terms[n++] = lumber_charged(&in->lumber->buys[i]);
    }
    group[COST_LUMBER] = calc_sum(c, "lumber, cost", UNIT_MONEY, terms, n);
    n = 0;
    for (size_t i = 0; i < in->sheets->count; i++) {
        terms[n++] = in->sheets->buys[i].charged;
    }
    for (size_t i = 0; i < in->banding->count; i++) {
        terms[n++] = in->banding->buys[i].charged;
    }
    group[COST_SHEETS] = calc_sum(c, "sheets and banding, cost", UNIT_MONEY, terms, n);
    n = 0;
    for (size_t i = 0; i < in->glass->count; i++) {
        terms[n++] = in->glass->buys[i].cost;
    }
    group[COST_GLASS] = calc_sum(c, "glass, cost", UNIT_MONEY, terms, n);
    n = 0;
    for (size_t i = 0; i < in->finish->product_count; i++) {
        terms[n++] = in->finish->products[i].charged;
    }
    group[COST_FINISH] = calc_sum(c, "finish, cost", UNIT_MONEY, terms, n);
    n = 0;
    for (size_t i = 0; i < in->hardware->count; i++) {
        if (!in->hardware->buys[i].by_others) {
            terms[n++] = in->hardware->buys[i].charged;
        }
    }
    group[COST_HARDWARE] = calc_sum(c, "hardware, cost", UNIT_MONEY, terms, n);
    group[COST_CONSUMABLES] = cost_consumables(k);
    cost_bought_in(k);
    group[COST_LABOR] = in->labor->labor;
    group[COST_MACHINE] = in->labor->machine;
    build_up_price(&k->costs->job, c,
                   build_up_minutes(c, in->labor->door_minutes, in->labor->door_bench_minutes),
                   true);
}

/* --- the doors' shares ------------------------------------------------------------------------ */

/* cost x basis / all: what a leaf carries of a cost that the job has as a whole; none where there
 * is none, as of a finish sent out, or the leaf has nothing of the basis. */
static fig share(const struct calc *c, const char *what, fig cost, fig basis, fig all) {
    if (fig_none(cost) || fig_none(basis)) {
        return (fig){0};
    }
    return fig_ratio(c->tape, what, UNIT_MONEY, (figs){{cost, basis}}, (figs){{all}});
}

/* What a leaf carries of what is bought of one material. */
static fig share_material(const struct costing *k, const struct material_use *use) {
    for (size_t i = 0; use->material_kind == MATERIAL_LUMBER && i < k->in->lumber->count; i++) {
        const struct lumber_buy *const b = &k->in->lumber->buys[i];
        if (b->material == use->material) {
            return share(k->calc, "lumber, share", lumber_charged(b), use->net, b->net);
        }
    }
    for (size_t i = 0; use->material_kind == MATERIAL_SHEET && i < k->in->sheets->count; i++) {
        const struct sheet_buy *const b = &k->in->sheets->buys[i];
        if (b->material == use->material) {
            return share(k->calc, "sheets, share", b->charged, use->net, b->net);
        }
    }
    return use->material_kind == MATERIAL_GLASS ? use->cost : (fig){0};
}

static void share_materials(const struct costing *k, const struct leaf_figures *leaf,
                            struct build_up *p) {
    static const struct {
        enum material_kind kind;
        enum cost_group group;
        const char *what;
    } kinds[] = {{MATERIAL_LUMBER, COST_LUMBER, "lumber, a door"},
                 {MATERIAL_SHEET, COST_SHEETS, "sheets, a door"},
                 {MATERIAL_GLASS, COST_GLASS, "glass, a door"}};
    fig shares[MOST_USES];
    fig banding = {0};
    for (size_t u = 0; u < leaf->use_count; u++) {
        shares[u] = share_material(k, &leaf->uses[u]);
    }
    for (size_t i = 0; i < k->in->banding->count; i++) {
        const struct banding_buy *const b = &k->in->banding->buys[i];
        if (b->banding == leaf->banding) {
            banding = share(k->calc, "banding, share", b->charged, leaf->banded, b->net);
        }
    }
    for (size_t g = 0; g < sizeof kinds / sizeof *kinds; g++) {
        fig terms[MOST_USES + 1];
        size_t n = 0;
        for (size_t u = 0; u < leaf->use_count; u++) {
            terms[n] = shares[u];
            n += leaf->uses[u].material_kind == kinds[g].kind ? 1 : 0;
        }
        terms[n++] = kinds[g].kind == MATERIAL_SHEET ? banding : (fig){0};
        p->group[kinds[g].group] = sum_shares(k->calc, kinds[g].what, terms, n);
    }
}

static fig share_hardware(const struct costing *k, const struct leaf_figures *leaf) {
    size_t n = 0;
    for (size_t i = 0; i < k->in->hardware->count; i++) {
        const struct hardware_buy *const b = &k->in->hardware->buys[i];
        if (!b->by_others) {
            k->terms[n++] =
                share(k->calc, "hardware, share", b->charged, hardware_on_leaf(b, leaf), b->needed);
        }
    }
    return sum_shares(k->calc, "hardware, a door", k->terms, n);
}

static fig share_consumables(const struct costing *k, size_t row) {
    const struct calc *const c = k->calc;
    const struct leaf_figures *const leaf = &c->quantities->leaves[row];
    for (size_t i = 0; i < k->costs->consumable_count; i++) {
        const struct consumable_figures *const f = &k->costs->consumables[i];
        const enum unit unit = tape_unit(c->tape, f->price);
        fig basis = fig_none(leaf->put_out) ? leaf->sprayed : (fig){0};
        fig all = f->quantity;
        if (unit == UNIT_MONEY_PER_DOOR) {
            basis = c->units->one;
        } else if (unit == UNIT_MONEY_PER_HINGE) {
            basis = leaf->hinges;
        } else if (unit == UNIT_MONEY_PER_HOUR) {
            basis = k->in->labor->leaf_minutes[row];
            all = k->in->labor->person_minutes;
        }
        k->terms[i] = share(c, "consumables, share", f->cost, basis, all);
    }
    return sum_shares(c, "consumables, a door", k->terms, k->costs->consumable_count);
}

/* --- the doors' prices ------------------------------------------------------------------------ */

/* What a door is sold for at the least: an amount, or that area at the job's own price by area. (To
 * scale a small door's own price by area would make it dearer than a larger one, for its labor
 * hardly shrinks.) none: no minimum. */
static fig least_price(const struct costing *k) {
    const struct calc *const c = k->calc;
    const struct value *const minimum = &c->rates->shop.minimum_door;
    const fig least = calc_given(c, "minimum door", minimum);
    if (fig_none(least) || minimum->unit == UNIT_MONEY) {
        return least;
    }
    for (size_t r = 0; r < c->quantities->count; r++) {
        k->terms[r] = c->quantities->leaves[r].face;
    }
    const fig area = fig_total(c->tape, "face area in all", c->units->area, c->quantities->pieces,
                               k->terms, c->quantities->count);
    return fig_ratio(c->tape, "least price of a door", UNIT_MONEY,
                     (figs){{k->costs->job.price, least}}, (figs){{area}});
}

static void cost_door(const struct costing *k, size_t row) {
    const struct calc *const c = k->calc;
    const struct labor *const labor = k->in->labor;
    const struct leaf_figures *const leaf = &c->quantities->leaves[row];
    const size_t batch = k->in->finish->batch_of[row];
    struct build_up *const p = &k->costs->doors[row].cost;
    share_materials(k, leaf, p);
    if (batch != SIZE_MAX) {
        const struct batch *const b = &k->in->finish->batches[batch];
        p->group[COST_FINISH] = share(c, "finish, a door", b->cost, leaf->sprayed, b->area);
    }
    p->group[COST_HARDWARE] = share_hardware(k, leaf);
    p->group[COST_CONSUMABLES] = share_consumables(k, row);
    p->group[COST_LABOR] = labor->leaf_cost[row];
    build_up_price(
        p, c, build_up_minutes(c, labor->leaf_minutes[row], labor->leaf_bench_minutes[row]), true);
}

static void price_door(const struct costing *k, size_t row) {
    const struct calc *const c = k->calc;
    const struct leaf_figures *const leaf = &c->quantities->leaves[row];
    struct door_price *const p = &k->costs->doors[row];
    tape_about_again(c->tape, leaf->subject);
    cost_door(k, row);
    p->priced = fig_none(k->costs->least) ? p->cost.price
                                          : fig_larger(c->tape, "price, at least the minimum",
                                                       p->cost.price, k->costs->least);
    fig price = p->priced;
    p->extra = calc_given(c, "extra charge", &leaf->door->row->extra_charge);
    if (!fig_none(p->extra)) {
        price = fig_plus(c->tape, "price and extra charge", price, p->extra);
    }
    const fig step = calc_given(c, "round price to", &c->rates->shop.round_price_to);
    p->unit = fig_none(step) ? price : fig_up(c->tape, "unit price", price, step);
    p->amount = calc_product(c, "amount", UNIT_MONEY, leaf->pieces, p->unit);
}

/* What the shares of a group leave of its cost. */
static void leave_rest(const struct costing *k, enum cost_group group) {
    const fig cost = k->costs->job.group[group];
    if (fig_none(cost)) {
        return;
    }
    const fig shared = doors_total(k, "shared among the doors",
                                   offsetof(struct door_price, cost.group) + group * sizeof(fig));
    const fig terms[] = {cost, group == COST_LABOR ? k->costs->job.group[COST_MACHINE] : (fig){0},
                         fig_minus(shared)};
    k->costs->unshared[group] =
        fig_sum(k->calc->tape, "left by rounding the shares", UNIT_MONEY, terms, 3);
}

/* Why the doors as priced are not the job's own price: the minimum by door, extra charges, and
 * rounding. */
static void explain_total(const struct costing *k) {
    const struct calc *const c = k->calc;
    struct costs *const costs = k->costs;
    bool extra = false;
    for (size_t r = 0; r < c->quantities->count; r++) {
        extra = extra || !fig_none(costs->doors[r].extra);
    }
    if (c->rates->shop.minimum_door.set) {
        const fig by_cost =
            doors_total(k, "all doors by cost", offsetof(struct door_price, cost.price));
        const fig priced =
            doors_total(k, "all doors, at least the minimum", offsetof(struct door_price, priced));
        costs->minimum = fig_plus(c->tape, "added by the minimum door", priced, fig_minus(by_cost));
    }
    if (extra) {
        costs->extra = doors_total(k, "extra charges", offsetof(struct door_price, extra));
    }
    const fig terms[] = {costs->doors_total, fig_minus(costs->job.price), fig_minus(costs->minimum),
                         fig_minus(costs->extra)};
    costs->rounding = fig_sum(c->tape, "rounding of shares and prices", UNIT_MONEY, terms, 4);
}

bool costs_make(struct costs *costs, const struct calc *c, const struct cost_inputs *in) {
    const size_t rows = c->quantities->count;
    const size_t most = in->lumber->count + in->sheets->count + in->banding->count +
                        in->glass->count + in->finish->product_count + in->hardware->count +
                        c->rates->consumable_count + rows;
    const struct costing costing = {
        .calc = c, .in = in, .costs = costs, .terms = pool_take(c->pool, most, sizeof(fig))};
    *costs = (struct costs){0};
    costs->consumables = pool_take(c->pool, c->rates->consumable_count, sizeof *costs->consumables);
    costs->doors = pool_take(c->pool, rows, sizeof *costs->doors);
    costs->charges = pool_take(c->pool, charge_count(c->job), sizeof *costs->charges);
    if (pool_failed(c->pool)) {
        return false;
    }
    cost_job(&costing);
    charges_cost(costs, c, in->labor);
    costs->least = least_price(&costing);
    /* asked for by every door: filed under the job */
    calc_given(c, "round price to", &c->rates->shop.round_price_to);
    for (size_t r = 0; r < rows; r++) {
        price_door(&costing, r);
    }
    tape_about_job(c->tape);
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        if (g != COST_MACHINE) {
            leave_rest(&costing, (enum cost_group)g);
        }
    }
    for (size_t r = 0; r < rows; r++) {
        costing.terms[r] = costs->doors[r].amount;
    }
    costs->doors_total = fig_sum(c->tape, "doors and fronts", UNIT_MONEY, costing.terms, rows);
    explain_total(&costing);
    return true;
}
