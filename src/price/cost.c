/* SPDX-License-Identifier: MIT */
#include "price/cost.h"

#include "price/build_up.h"

#include <assert.h>
#include <string.h>

struct desk {
    const struct cost_inputs *in;
    struct costs *costs;
    struct tape *tape;
    fig *pieces, *each; /* room for terms: as many as rows; rows and things bought */
    size_t rows;
};

const char *cost_group_name(enum cost_group group) {
    static const char *const names[COST_GROUP_COUNT] = {
        "lumber",    "sheets",           "glass", "finish",  "hardware", "consumables",
        "bought in", "tax on purchases", "labor", "machine", "remakes",
    };
    assert(group < COST_GROUP_COUNT);
    return names[group];
}

static fig ratio(const struct desk *d, const char *what, figs over, figs under) {
    return fig_ratio(d->tape, what, UNIT_MONEY, over, under);
}

/* --- the job's groups
 * ------------------------------------------------------------------------------------------------------
 */

/* One share or the sum of several. */
static fig sum_shares(const struct desk *d, const char *what, const fig *terms, size_t n) {
    size_t set = 0;
    fig last = {0};
    for (size_t i = 0; i < n; i++) {
        if (!fig_none(terms[i])) {
            last = terms[i];
            set++;
        }
    }
    return set < 2 ? last : fig_sum(d->tape, what, UNIT_MONEY, terms, n);
}

static fig sum_or_none(const struct desk *d, const char *what, const fig *terms, size_t count) {
    return count == 0 ? (fig){0} : fig_sum(d->tape, what, UNIT_MONEY, terms, count);
}

/* What is sprayed here; a finish put out takes nothing of the shop's. */
static fig finish_area(const struct desk *d) {
    size_t n = 0;
    for (size_t i = 0; i < d->in->finish->batch_count; i++) { /* never more than rows */
        if (d->in->finish->batches[i].coat_count > 0) {
            d->pieces[n++] = d->in->finish->batches[i].area;
        }
    }
    return n == 0 ? (fig){0}
                  : fig_sum(d->tape, "sprayed area in all", d->in->measures->area, d->pieces, n);
}

static void cost_consumables(const struct desk *d, fig *terms, size_t *n) {
    const fig area = finish_area(d);
    const fig hinges = d->in->quantities->hinges;
    for (size_t i = 0; i < d->in->rates->consumable_count; i++) {
        const struct consumable *const c = &d->in->rates->consumables[i];
        fig quantity = d->in->labor->hours;
        if (c->price.unit == UNIT_MONEY_PER_DOOR) {
            quantity = d->in->quantities->all_leaves;
        } else if (c->price.unit == UNIT_MONEY_PER_SQFT || c->price.unit == UNIT_MONEY_PER_M2) {
            quantity = area;
        } else if (c->price.unit == UNIT_MONEY_PER_HINGE) {
            quantity = hinges;
        }
        if (fig_none(quantity)) {
            continue;
        }
        tape_about(d->tape, c->name.s);
        const fig price = measures_given(d->tape, d->in->measures, "price", &c->price);
        const fig cost = ratio(d, "consumable cost", (figs){{quantity, price}}, (figs){{{0}}});
        d->costs->consumables[d->costs->consumable_count++] = (struct consumable_figures){
            .consumable = (int32_t)i, .quantity = quantity, .price = price, .cost = cost};
        terms[(*n)++] = cost;
    }
    tape_about_again(d->tape, 0);
}

/* What others make of a leaf: the door as it is bought, its finish. */
static fig leaf_bought_in(const struct desk *d, const struct leaf_figures *leaf) {
    const fig parts[] = {leaf->bought_in, leaf->put_out};
    return sum_shares(d, "bought in, a door", parts, 2);
}

/* The total over the rows of one figure each, of which some may be none. */
static fig rows_total(const struct desk *d, const char *what, size_t at) {
    for (size_t r = 0; r < d->rows; r++) {
        d->pieces[r] = d->in->quantities->leaves[r].pieces;
        memcpy(&d->each[r], (const char *)&d->costs->doors[r] + at, sizeof *d->each);
    }
    return fig_total(d->tape, what, UNIT_MONEY, d->pieces, d->each, d->rows);
}

static void cost_bought_in(const struct desk *d) {
    for (size_t r = 0; r < d->rows; r++) {
        const struct leaf_figures *const leaf = &d->in->quantities->leaves[r];
        tape_about_again(d->tape, leaf->subject);
        d->costs->doors[r].cost.bought_doors = leaf->bought_in;
        d->costs->doors[r].cost.group[COST_BOUGHT_IN] = leaf_bought_in(d, leaf);
    }
    tape_about_again(d->tape, 0);
    d->costs->job.bought_doors =
        rows_total(d, "doors bought in, cost", offsetof(struct door_price, cost.bought_doors));
    d->costs->job.group[COST_BOUGHT_IN] =
        rows_total(d, "bought in, cost", offsetof(struct door_price, cost.group[COST_BOUGHT_IN]));
}

/* The minutes that overhead by the hour goes by. */
static fig overhead_minutes(const struct cost_inputs *in, fig all, fig at_bench) {
    return in->rates->shop.overhead_on.choice == OVERHEAD_PER_BENCH_HOUR ? at_bench : all;
}

static void cost_job(const struct desk *d, fig *terms) {
    fig *const group = d->costs->job.group;
    const struct cost_inputs *const in = d->in;
    tape_about_again(d->tape, 0);
    size_t n = 0;
    for (size_t i = 0; i < in->lumber->count; i++) {
        terms[n++] = in->lumber->buys[i].cost;
    }
    group[COST_LUMBER] = sum_or_none(d, "lumber, cost", terms, n);
    n = 0;
    for (size_t i = 0; i < in->sheets->count; i++) {
        terms[n++] = in->sheets->buys[i].charged;
    }
    for (size_t i = 0; i < in->banding->count; i++) {
        terms[n++] = in->banding->buys[i].charged;
    }
    group[COST_SHEETS] = sum_or_none(d, "sheets and banding, cost", terms, n);
    n = 0;
    for (size_t i = 0; i < in->glass->count; i++) {
        terms[n++] = in->glass->buys[i].cost;
    }
    group[COST_GLASS] = sum_or_none(d, "glass, cost", terms, n);
    n = 0;
    for (size_t i = 0; i < in->finish->product_count; i++) {
        terms[n++] = in->finish->products[i].charged;
    }
    group[COST_FINISH] = sum_or_none(d, "finish, cost", terms, n);
    n = 0;
    for (size_t i = 0; i < in->hardware->count; i++) {
        if (!in->hardware->buys[i].by_others) {
            terms[n++] = in->hardware->buys[i].charged;
        }
    }
    group[COST_HARDWARE] = sum_or_none(d, "hardware, cost", terms, n);
    n = 0;
    cost_consumables(d, terms, &n);
    group[COST_CONSUMABLES] = sum_or_none(d, "consumables, cost", terms, n);
    cost_bought_in(d);
    group[COST_LABOR] = in->labor->labor;
    group[COST_MACHINE] = in->labor->machine;
    build_up_finish(&d->costs->job, d->tape, in->measures, in->rates,
                    overhead_minutes(in, in->labor->person_minutes, in->labor->bench_minutes));
}

/* --- the doors' shares
 * ------------------------------------------------------------------------------------------------------
 */

/* cost x basis / all: what a leaf carries of a cost that the job has as a whole. */
static fig share(const struct desk *d, const char *what, fig cost, fig basis, fig all) {
    if (fig_none(cost) || fig_none(basis) || fig_none(all)) {
        return (fig){0};
    }
    return ratio(d, what, (figs){{cost, basis}}, (figs){{all}});
}

static void share_materials(const struct desk *d, const struct leaf_figures *leaf,
                            struct build_up *p) {
    fig wood[MOST_USES];
    fig board[MOST_USES + 1];
    fig glass[MOST_USES];
    size_t woods = 0;
    size_t boards = 0;
    size_t panes = 0;
    for (size_t u = 0; u < leaf->use_count; u++) {
        const struct material_use *const use = &leaf->uses[u];
        for (size_t i = 0; use->material_kind == MATERIAL_LUMBER && i < d->in->lumber->count; i++) {
            const struct lumber_buy *const b = &d->in->lumber->buys[i];
            if (b->material == use->material) {
                wood[woods++] = share(d, "lumber, share", b->cost, use->net, b->net);
            }
        }
        for (size_t i = 0; use->material_kind == MATERIAL_SHEET && i < d->in->sheets->count; i++) {
            const struct sheet_buy *const b = &d->in->sheets->buys[i];
            if (b->material == use->material) {
                board[boards++] = share(d, "sheets, share", b->charged, use->net, b->net);
            }
        }
        if (use->material_kind == MATERIAL_GLASS) {
            glass[panes++] = use->cost;
        }
    }
    for (size_t i = 0; i < d->in->banding->count; i++) {
        const struct banding_buy *const b = &d->in->banding->buys[i];
        if (b->banding == leaf->banding) {
            board[boards++] = share(d, "banding, share", b->charged, leaf->banded, b->net);
        }
    }
    p->group[COST_LUMBER] = sum_shares(d, "lumber, a door", wood, woods);
    p->group[COST_SHEETS] = sum_shares(d, "sheets, a door", board, boards);
    p->group[COST_GLASS] = sum_shares(d, "glass, a door", glass, panes);
}

static void share_hardware(const struct desk *d, const struct leaf_figures *leaf,
                           struct build_up *p) {
    fig *const terms = d->each;
    size_t n = 0;
    for (size_t i = 0; i < d->in->hardware->count; i++) {
        const struct hardware_buy *const b = &d->in->hardware->buys[i];
        if (!b->by_others) {
            terms[n++] =
                share(d, "hardware, share", b->charged, hardware_on_leaf(b, leaf), b->needed);
        }
    }
    p->group[COST_HARDWARE] = sum_shares(d, "hardware, a door", terms, n);
}

static void share_consumables(const struct desk *d, size_t row, struct build_up *p) {
    const struct leaf_figures *const leaf = &d->in->quantities->leaves[row];
    fig *const terms = d->each;
    size_t n = 0;
    for (size_t i = 0; i < d->costs->consumable_count; i++) {
        const struct consumable_figures *const c = &d->costs->consumables[i];
        const enum unit unit = (enum unit)tape_figure(d->tape, c->price)->unit;
        fig basis = d->in->labor->leaf_minutes[row];
        fig all = d->in->labor->person_minutes;
        if (unit == UNIT_MONEY_PER_DOOR) {
            basis = d->in->measures->one;
            all = c->quantity;
        } else if (unit == UNIT_MONEY_PER_HINGE) {
            basis = leaf->hinges;
            all = c->quantity;
        } else if (unit != UNIT_MONEY_PER_HOUR) {
            basis = fig_none(leaf->put_out) ? leaf->sprayed : (fig){0};
            all = c->quantity;
        }
        terms[n++] = share(d, "consumables, share", c->cost, basis, all);
    }
    p->group[COST_CONSUMABLES] = sum_shares(d, "consumables, a door", terms, n);
}

/* --- the doors' prices
 * ------------------------------------------------------------------------------------------------------
 */

/* What a door is sold for at the least: an amount, or that area at the job's own price by area. (To
 * scale a small door's own price by area would make it dearer than a larger one, for its labor
 * hardly shrinks.) none: no minimum. */
static fig least_price(const struct desk *d) {
    const struct value *const minimum = &d->in->rates->shop.minimum_door;
    const fig least = measures_given(d->tape, d->in->measures, "minimum door", minimum);
    if (fig_none(least) || minimum->unit == UNIT_MONEY) {
        return least;
    }
    for (size_t r = 0; r < d->rows; r++) {
        d->pieces[r] = d->in->quantities->leaves[r].pieces;
        d->each[r] = d->in->quantities->leaves[r].face;
    }
    const fig area =
        fig_total(d->tape, "face area in all", d->in->measures->area, d->pieces, d->each, d->rows);
    return ratio(d, "least price of a door", (figs){{d->costs->job.price, least}}, (figs){{area}});
}

static void price_door(const struct desk *d, size_t row) {
    const struct leaf_figures *const leaf = &d->in->quantities->leaves[row];
    const struct row *const given = leaf->door->row;
    struct door_price *const p = &d->costs->doors[row];
    tape_about_again(d->tape, leaf->subject);
    share_materials(d, leaf, &p->cost);
    const size_t batch = d->in->finish->batch_of[row];
    if (batch != SIZE_MAX) {
        const struct batch *const b = &d->in->finish->batches[batch];
        p->cost.group[COST_FINISH] = share(d, "finish, a door", b->cost, leaf->sprayed, b->area);
    }
    share_hardware(d, leaf, &p->cost);
    share_consumables(d, row, &p->cost);
    p->cost.group[COST_LABOR] = d->in->labor->leaf_cost[row];
    build_up_finish(&p->cost, d->tape, d->in->measures, d->in->rates,
                    overhead_minutes(d->in, d->in->labor->leaf_minutes[row],
                                     d->in->labor->leaf_bench_minutes[row]));
    p->priced = fig_none(d->costs->least) ? p->cost.price
                                          : fig_larger(d->tape, "price, at least the minimum",
                                                       p->cost.price, d->costs->least);
    fig price = p->priced;
    p->extra = measures_given(d->tape, d->in->measures, "extra charge", &given->extra_charge);
    if (!fig_none(p->extra)) {
        price = fig_plus(d->tape, "price and extra charge", price, p->extra);
    }
    const fig step = measures_given(d->tape, d->in->measures, "round price to",
                                    &d->in->rates->shop.round_price_to);
    p->unit = fig_none(step) ? price : fig_up(d->tape, "unit price", price, step);
    p->amount = ratio(d, "amount", (figs){{leaf->pieces, p->unit}}, (figs){{{0}}});
}

/* What the shares of a group leave of its cost. */
static void leave_rest(const struct desk *d, enum cost_group group) {
    const fig cost = d->costs->job.group[group];
    if (fig_none(cost)) {
        return;
    }
    for (size_t r = 0; r < d->rows; r++) {
        d->pieces[r] = d->in->quantities->leaves[r].pieces;
        d->each[r] = d->costs->doors[r].cost.group[group];
    }
    const fig shared =
        fig_total(d->tape, "shared among the doors", UNIT_MONEY, d->pieces, d->each, d->rows);
    const fig terms[] = {cost, group == COST_LABOR ? d->costs->job.group[COST_MACHINE] : (fig){0},
                         fig_minus(shared)};
    d->costs->unshared[group] =
        fig_sum(d->tape, "left by rounding the shares", UNIT_MONEY, terms, 3);
}

static fig priced_of(const struct door_price *p) {
    return p->priced;
}
static fig by_cost_of(const struct door_price *p) {
    return p->cost.price;
}
static fig extra_of(const struct door_price *p) {
    return p->extra;
}

static fig doors_sum(const struct desk *d, const char *what,
                     fig (*pick)(const struct door_price *)) {
    for (size_t r = 0; r < d->rows; r++) {
        d->pieces[r] = d->in->quantities->leaves[r].pieces;
        d->each[r] = pick(&d->costs->doors[r]);
    }
    return fig_total(d->tape, what, UNIT_MONEY, d->pieces, d->each, d->rows);
}

/* Why the doors as priced are not the job's own price: the minimum by door, extra charges, and
 * rounding. */
static void explain_total(const struct desk *d) {
    struct costs *const costs = d->costs;
    bool extra = false;
    for (size_t r = 0; r < d->rows; r++) {
        extra = extra || !fig_none(costs->doors[r].extra);
    }
    if (d->in->rates->shop.minimum_door.set) {
        const fig by_cost = doors_sum(d, "all doors by cost", by_cost_of);
        const fig priced = doors_sum(d, "all doors, at least the minimum", priced_of);
        costs->minimum = fig_plus(d->tape, "added by the minimum door", priced, fig_minus(by_cost));
    }
    if (extra) {
        costs->extra = doors_sum(d, "extra charges", extra_of);
    }
    const fig terms[] = {costs->doors_total, fig_minus(costs->job.price), fig_minus(costs->minimum),
                         fig_minus(costs->extra)};
    costs->rounding = fig_sum(d->tape, "rounding of shares and prices", UNIT_MONEY, terms, 4);
}

bool costs_make(struct costs *costs, struct pool *pool, const struct cost_inputs *in) {
    *costs = (struct costs){0};
    const size_t rows = in->quantities->count;
    struct desk desk = {.in = in, .costs = costs, .tape = in->tape, .rows = rows};
    const size_t most = in->lumber->count + in->sheets->count + in->banding->count +
                        in->glass->count + in->finish->product_count + in->hardware->count +
                        in->rates->consumable_count + rows;
    costs->consumables = pool_take(pool, in->rates->consumable_count, sizeof *costs->consumables);
    costs->doors = pool_take(pool, rows, sizeof *costs->doors);
    desk.pieces = pool_take(pool, rows, sizeof(fig));
    desk.each = pool_take(pool, most, sizeof(fig));
    if (pool_failed(pool)) {
        return false;
    }
    cost_job(&desk, desk.each);
    costs->least = least_price(&desk);
    /* asked for by every door: filed under the job */
    measures_given(in->tape, in->measures, "round price to", &in->rates->shop.round_price_to);
    for (size_t r = 0; r < rows; r++) {
        price_door(&desk, r);
    }
    tape_about_again(in->tape, 0);
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        if (g != COST_MACHINE) {
            leave_rest(&desk, (enum cost_group)g);
        }
    }
    for (size_t r = 0; r < rows; r++) {
        desk.each[r] = costs->doors[r].amount;
    }
    costs->doors_total = fig_sum(in->tape, "doors and fronts", UNIT_MONEY, desk.each, rows);
    explain_total(&desk);
    return true;
}
