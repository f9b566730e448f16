/* SPDX-License-Identifier: MIT */
#include "price/purchase.h"

static fig lumber_in(const struct calc *c, const struct lumber_list *lumber, enum unit unit,
                     fig *terms) {
    size_t n = 0;
    for (size_t i = 0; i < lumber->count; i++) {
        const struct lumber_buy *const b = &lumber->buys[i];
        if (lumber_unit(&c->rates->lumber[b->material]) == unit) {
            terms[n++] = b->priced.bought;
        }
    }
    return calc_sum(c, unit == UNIT_BF ? "board feet bought" : "cubic meters bought", unit, terms,
                    n);
}

/* What leaves the till: without what is on the rack it is what the job is charged. */
static void buy_lumber(const struct calc *c, struct purchase *p, const struct lumber_list *lumber,
                       fig charged, fig *terms) {
    bool rack = false;
    for (size_t i = 0; i < lumber->count; i++) {
        terms[i] = lumber->buys[i].priced.cost;
        rack = rack || !fig_none(lumber->buys[i].with_rack);
    }
    p->spent[COST_LUMBER] =
        rack ? calc_sum(c, "lumber, spent", UNIT_MONEY, terms, lumber->count) : charged;
}

static void buy_sheets(const struct calc *c, struct purchase *p, const struct cost_inputs *in,
                       fig *terms) {
    size_t n = 0;
    for (size_t i = 0; i < in->sheets->count; i++) {
        terms[n++] = in->sheets->buys[i].priced.cost;
    }
    for (size_t i = 0; i < in->banding->count; i++) {
        terms[n++] = in->banding->buys[i].cost;
    }
    p->spent[COST_SHEETS] = calc_sum(c, "sheets and banding, spent", UNIT_MONEY, terms, n);
    for (size_t i = 0; i < in->sheets->count; i++) {
        terms[i] = in->sheets->buys[i].priced.whole;
    }
    p->sheets = calc_sum(c, "whole sheets bought", UNIT_COUNT, terms, in->sheets->count);
    n = 0;
    for (size_t i = 0; i < in->sheets->count; i++) {
        terms[n] = in->sheets->buys[i].priced.half;
        n += fig_none(terms[n]) ? 0 : 1;
    }
    p->half_sheets = calc_sum(c, "half sheets bought", UNIT_COUNT, terms, n);
}

static void buy_finish(const struct calc *c, struct purchase *p, const struct finish_list *finish,
                       fig *terms) {
    const size_t n = finish->product_count;
    for (size_t i = 0; i < n; i++) {
        terms[i] = finish->products[i].cost;
    }
    p->spent[COST_FINISH] = calc_sum(c, "finish, spent", UNIT_MONEY, terms, n);
    for (size_t i = 0; i < n; i++) {
        terms[i] = finish->products[i].need;
    }
    p->finish = calc_sum(c, "finish needed, all products", c->units->volume, terms, n);
}

static void buy_hardware(const struct calc *c, struct purchase *p,
                         const struct hardware_list *hardware, fig *terms) {
    size_t n = 0;
    for (size_t i = 0; i < hardware->count; i++) {
        if (!hardware->buys[i].by_others) {
            terms[n++] = hardware->buys[i].cost;
        }
    }
    p->spent[COST_HARDWARE] = calc_sum(c, "hardware, spent", UNIT_MONEY, terms, n);
}

bool purchase_make(struct purchase *p, const struct calc *c, const struct cost_inputs *in,
                   const struct build_up *job) {
    const size_t most = in->lumber->count + in->sheets->count + in->banding->count +
                        in->finish->product_count + in->hardware->count;
    fig *const terms = pool_take(c->pool, most, sizeof *terms);
    *p = (struct purchase){0};
    if (terms == NULL) {
        return false;
    }
    tape_about_job(c->tape);
    buy_lumber(c, p, in->lumber, job->group[COST_LUMBER], terms);
    p->spent[COST_GLASS] = job->group[COST_GLASS];
    p->spent[COST_CONSUMABLES] = job->group[COST_CONSUMABLES];
    p->spent[COST_BOUGHT_IN] = job->group[COST_BOUGHT_IN];
    buy_sheets(c, p, in, terms);
    buy_finish(c, p, in->finish, terms);
    buy_hardware(c, p, in->hardware, terms);
    p->board_feet = lumber_in(c, in->lumber, UNIT_BF, terms);
    p->cubic_meters = lumber_in(c, in->lumber, UNIT_M3, terms);
    p->total = fig_sum(c->tape, "spent when buying", UNIT_MONEY, p->spent, COST_BOUGHT_IN + 1);
    p->charged =
        fig_sum(c->tape, "charged for what is bought", UNIT_MONEY, job->group, COST_BOUGHT_IN + 1);
    return true;
}
