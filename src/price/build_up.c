/* SPDX-License-Identifier: MIT */
#include "price/build_up.h"

#include <string.h>

static fig percent_of(const struct calc *c, const char *what, fig base, const char *rate_what,
                      const struct value *rate) {
    const fig percent = calc_given(c, rate_what, rate);
    if (fig_none(percent)) {
        return (fig){0};
    }
    return calc_percent(c, what, UNIT_MONEY, base, percent);
}

static void add_remakes(const struct calc *c, struct build_up *p) {
    if (!c->rates->shop.remakes.set) {
        return;
    }
    const fig before =
        fig_sum(c->tape, "direct cost before remakes", UNIT_MONEY, p->group, COST_GROUP_COUNT);
    p->group[COST_REMAKES] =
        percent_of(c, "remakes", before, "remakes, percent of doors", &c->rates->shop.remakes);
}

static void add_overhead(const struct calc *c, struct build_up *p, fig minutes) {
    if (!c->rates->shop.overhead.set) {
        return;
    }
    if (c->rates->shop.overhead_on.choice == OVERHEAD_OF_COST) {
        const fig base = fig_plus(c->tape, "direct and contingency", p->direct, p->contingency);
        p->overhead =
            percent_of(c, "overhead", base, "overhead, percent", &c->rates->shop.overhead);
        return;
    }
    const fig rate = calc_given(c, "overhead, an hour", &c->rates->shop.overhead);
    if (!fig_none(minutes)) {
        p->overhead = fig_ratio(c->tape, "overhead", UNIT_MONEY, (figs){{minutes, rate}},
                                (figs){{c->units->sixty}});
    }
}

/* Profit on a base by the shop's own rule: markup is a percent of cost, margin one of the price. */
static fig profit_on(const struct calc *c, const char *what, fig base) {
    if (!c->rates->shop.profit.set) {
        return (fig){0};
    }
    if (c->rates->shop.profit_as.choice == PROFIT_MARKUP) {
        return percent_of(c, what, base, "profit, markup on cost", &c->rates->shop.profit);
    }
    const fig margin = calc_given(c, "profit, margin of price", &c->rates->shop.profit);
    const fig left =
        fig_plus(c->tape, "cost, percent of price", c->units->hundred, fig_minus(margin));
    return fig_ratio(c->tape, what, UNIT_MONEY, (figs){{base, margin}}, (figs){{left}});
}

/* The group whose markup a group takes: labor's holds for machines too. */
static const struct value *markup_of(const struct calc *c, int group) {
    return &c->rates->markup[group == COST_MACHINE ? COST_LABOR : group];
}

static bool has_markups(const struct calc *c) {
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        if (c->rates->markup[g].set) {
            return true;
        }
    }
    return false;
}

/* A group with a markup of its own takes it on its cost and on its part of contingency and
 * overhead; the rest takes the shop's profit. */
static void add_profit_by_group(const struct calc *c, struct build_up *p) {
    fig profits[COST_GROUP_COUNT + 1];
    fig rest[COST_GROUP_COUNT + 1] = {p->full};
    size_t n = 0;
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        const struct value *const markup = markup_of(c, g);
        if (!markup->set || fig_none(p->group[g]) || tape_amount(c->tape, p->direct) == 0) {
            continue;
        }
        const fig full = fig_ratio(c->tape, "group with its overhead", UNIT_MONEY,
                                   (figs){{p->group[g], p->full}}, (figs){{p->direct}});
        profits[n] = percent_of(c, "profit on the group", full, "markup on the group", markup);
        rest[1 + n++] = fig_minus(full);
    }
    const fig base = fig_sum(c->tape, "cost that takes the shop's profit", UNIT_MONEY, rest, 1 + n);
    profits[n] = profit_on(c, "profit on the rest", base);
    p->profit = fig_sum(c->tape, "profit", UNIT_MONEY, profits, n + 1);
}

/* price = cost x (100 + markup) / 100, or cost x 100 / (100 - margin). */
static void add_profit(const struct calc *c, struct build_up *p) {
    if (has_markups(c)) {
        add_profit_by_group(c, p);
    } else {
        p->profit = profit_on(c, "profit", p->full);
    }
    p->price =
        fig_none(p->profit) ? p->full : fig_plus(c->tape, "price by cost", p->full, p->profit);
}

void build_up_price(struct build_up *pile, const struct calc *c, fig minutes, bool remade) {
    const struct shop *const shop = &c->rates->shop;
    fig goods[COST_CONSUMABLES + 2];
    memcpy(goods, pile->group, (COST_CONSUMABLES + 1) * sizeof *goods);
    goods[COST_CONSUMABLES + 1] = pile->bought_doors;
    pile->materials = fig_sum(c->tape, "materials", UNIT_MONEY, goods, COST_CONSUMABLES + 2);
    pile->group[COST_PURCHASE_TAX] = percent_of(c, "tax on purchases", pile->materials,
                                                "tax on purchases, percent", &shop->purchase_tax);
    if (remade) {
        add_remakes(c, pile);
    }
    pile->direct = fig_sum(c->tape, "direct cost", UNIT_MONEY, pile->group, COST_GROUP_COUNT);
    pile->contingency =
        percent_of(c, "contingency", pile->direct, "contingency, percent", &shop->contingency);
    add_overhead(c, pile, minutes);
    const fig terms[] = {pile->direct, pile->contingency, pile->overhead};
    pile->full = fig_sum(c->tape, "cost with overhead", UNIT_MONEY, terms, 3);
    add_profit(c, pile);
}

fig build_up_minutes(const struct calc *c, fig all, fig at_bench) {
    return c->rates->shop.overhead_on.choice == OVERHEAD_PER_BENCH_HOUR ? at_bench : all;
}
