/* SPDX-License-Identifier: MIT */
#include "price/purchase.h"

struct clerk {
    struct estimate *e;
    fig *terms;
};

static fig sum(const struct clerk *c, const char *what, enum unit unit, size_t count) {
    return count == 0 ? (fig){0} : fig_sum(&c->e->tape, what, unit, c->terms, count);
}

static fig lumber_in(const struct clerk *c, const char *what, enum unit unit) {
    size_t n = 0;
    for (size_t i = 0; i < c->e->lumber.count; i++) {
        const struct lumber_buy *const b = &c->e->lumber.buys[i];
        if (lumber_unit(&c->e->rates->lumber[b->material]) == unit) {
            c->terms[n++] = b->bought;
        }
    }
    return sum(c, what, unit, n);
}

static void buy_sheets(const struct clerk *c, struct purchase *p) {
    size_t n = 0;
    for (size_t i = 0; i < c->e->sheets.count; i++) {
        c->terms[n++] = c->e->sheets.buys[i].cost;
    }
    for (size_t i = 0; i < c->e->banding.count; i++) {
        c->terms[n++] = c->e->banding.buys[i].cost;
    }
    p->spent[COST_SHEETS] = sum(c, "sheets and banding, spent", UNIT_MONEY, n);
    n = 0;
    for (size_t i = 0; i < c->e->sheets.count; i++) {
        c->terms[n++] = c->e->sheets.buys[i].whole;
    }
    p->sheets = sum(c, "whole sheets bought", UNIT_COUNT, n);
    n = 0;
    for (size_t i = 0; i < c->e->sheets.count; i++) {
        c->terms[n] = c->e->sheets.buys[i].half;
        n += fig_none(c->terms[n]) ? 0 : 1;
    }
    p->half_sheets = sum(c, "half sheets bought", UNIT_COUNT, n);
}

static void buy_finish(const struct clerk *c, struct purchase *p) {
    const size_t n = c->e->finish.product_count;
    for (size_t i = 0; i < n; i++) {
        c->terms[i] = c->e->finish.products[i].cost;
    }
    p->spent[COST_FINISH] = sum(c, "finish, spent", UNIT_MONEY, n);
    for (size_t i = 0; i < n; i++) {
        c->terms[i] = c->e->finish.products[i].need;
    }
    p->finish = sum(c, "finish needed, all products", c->e->measures.volume, n);
}

static void buy_hardware(const struct clerk *c, struct purchase *p) {
    size_t n = 0;
    for (size_t i = 0; i < c->e->hardware.count; i++) {
        if (!c->e->hardware.buys[i].by_others) {
            c->terms[n++] = c->e->hardware.buys[i].cost;
        }
    }
    p->spent[COST_HARDWARE] = sum(c, "hardware, spent", UNIT_MONEY, n);
}

bool purchase_make(struct purchase *p, struct estimate *e) {
    *p = (struct purchase){0};
    const size_t most = e->lumber.count + 2 * e->sheets.count + e->banding.count +
                        e->finish.product_count + e->hardware.count + COST_GROUP_COUNT;
    const struct clerk c = {.e = e, .terms = pool_take(&e->pool, most, sizeof(fig))};
    if (c.terms == NULL) {
        return false;
    }
    tape_about_again(&e->tape, 0);
    p->spent[COST_LUMBER] = e->costs.job.group[COST_LUMBER];
    p->spent[COST_GLASS] = e->costs.job.group[COST_GLASS];
    p->spent[COST_CONSUMABLES] = e->costs.job.group[COST_CONSUMABLES];
    p->spent[COST_BOUGHT_IN] = e->costs.job.group[COST_BOUGHT_IN];
    buy_sheets(&c, p);
    buy_finish(&c, p);
    buy_hardware(&c, p);
    p->board_feet = lumber_in(&c, "board feet bought", UNIT_BF);
    p->cubic_meters = lumber_in(&c, "cubic meters bought", UNIT_M3);
    p->total = fig_sum(&e->tape, "spent when buying", UNIT_MONEY, p->spent, COST_BOUGHT_IN + 1);
    p->charged = fig_sum(&e->tape, "charged for what is bought", UNIT_MONEY, e->costs.job.group,
                         COST_BOUGHT_IN + 1);
    return true;
}
