/* SPDX-License-Identifier: MIT */
#include "price/build_up.h"

#include <string.h>

struct till {
    struct tape *tape;
    const struct measures *m;
    const struct shop *shop;
    const struct value *markup; /* by cost group */
};

static fig percent_of(const struct till *t, const char *what, fig base, const char *rate_what,
                      const struct value *rate) {
    const fig percent = measures_given(t->tape, t->m, rate_what, rate);
    if (fig_none(percent)) {
        return (fig){0};
    }
    return fig_ratio(t->tape, what, UNIT_MONEY, (figs){{base, percent}}, (figs){{t->m->hundred}});
}

static void add_remakes(const struct till *t, struct build_up *p) {
    if (!t->shop->remakes.set) {
        return;
    }
    const fig before =
        fig_sum(t->tape, "direct cost before remakes", UNIT_MONEY, p->group, COST_GROUP_COUNT);
    p->group[COST_REMAKES] =
        percent_of(t, "remakes", before, "remakes, percent of doors", &t->shop->remakes);
}

static void add_overhead(const struct till *t, struct build_up *p, fig minutes) {
    if (!t->shop->overhead.set) {
        return;
    }
    if (t->shop->overhead_on.choice == OVERHEAD_OF_COST) {
        const fig base = fig_plus(t->tape, "direct and contingency", p->direct, p->contingency);
        p->overhead = percent_of(t, "overhead", base, "overhead, percent", &t->shop->overhead);
        return;
    }
    const fig rate = measures_given(t->tape, t->m, "overhead, an hour", &t->shop->overhead);
    if (!fig_none(minutes)) {
        p->overhead = fig_ratio(t->tape, "overhead", UNIT_MONEY, (figs){{minutes, rate}},
                                (figs){{t->m->sixty}});
    }
}

/* Profit on a base by the shop's own rule: markup is a percent of cost, margin one of the price. */
static fig profit_on(const struct till *t, const char *what, fig base) {
    if (!t->shop->profit.set) {
        return (fig){0};
    }
    if (t->shop->profit_as.choice == PROFIT_MARKUP) {
        return percent_of(t, what, base, "profit, markup on cost", &t->shop->profit);
    }
    const fig margin = measures_given(t->tape, t->m, "profit, margin of price", &t->shop->profit);
    const fig left = fig_plus(t->tape, "cost, percent of price", t->m->hundred, fig_minus(margin));
    return fig_ratio(t->tape, what, UNIT_MONEY, (figs){{base, margin}}, (figs){{left}});
}

/* The group whose markup a group takes: labor's holds for machines too. */
static const struct value *markup_of(const struct till *t, int group) {
    return &t->markup[group == COST_MACHINE ? COST_LABOR : group];
}

static bool has_markups(const struct till *t) {
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        if (t->markup[g].set) {
            return true;
        }
    }
    return false;
}

/* A group with a markup of its own takes it on its cost and on its part of contingency and
 * overhead; the rest takes the shop's profit. */
static void add_profit_by_group(const struct till *t, struct build_up *p) {
    fig profits[COST_GROUP_COUNT + 1];
    fig rest[COST_GROUP_COUNT + 1] = {p->full};
    size_t n = 0;
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        const struct value *const markup = markup_of(t, g);
        if (!markup->set || fig_none(p->group[g]) || tape_amount(t->tape, p->direct) == 0) {
            continue;
        }
        const fig full = fig_ratio(t->tape, "group with its overhead", UNIT_MONEY,
                                   (figs){{p->group[g], p->full}}, (figs){{p->direct}});
        profits[n] = percent_of(t, "profit on the group", full, "markup on the group", markup);
        rest[1 + n++] = fig_minus(full);
    }
    const fig base = fig_sum(t->tape, "cost that takes the shop's profit", UNIT_MONEY, rest, 1 + n);
    profits[n] = profit_on(t, "profit on the rest", base);
    p->profit = fig_sum(t->tape, "profit", UNIT_MONEY, profits, n + 1);
}

/* price = cost x (100 + markup) / 100, or cost x 100 / (100 - margin). */
static void add_profit(const struct till *t, struct build_up *p) {
    if (has_markups(t)) {
        add_profit_by_group(t, p);
    } else {
        p->profit = profit_on(t, "profit", p->full);
    }
    p->price =
        fig_none(p->profit) ? p->full : fig_plus(t->tape, "price by cost", p->full, p->profit);
}

void build_up_finish(struct build_up *pile, struct tape *tape, const struct measures *measures,
                     const struct rates *rates, fig minutes) {
    const struct shop *const shop = &rates->shop;
    const struct till t = {.tape = tape, .m = measures, .shop = shop, .markup = rates->markup};
    fig goods[COST_CONSUMABLES + 2];
    memcpy(goods, pile->group, (COST_CONSUMABLES + 1) * sizeof *goods);
    goods[COST_CONSUMABLES + 1] = pile->bought_doors;
    pile->materials = fig_sum(tape, "materials", UNIT_MONEY, goods, COST_CONSUMABLES + 2);
    pile->group[COST_PURCHASE_TAX] = percent_of(&t, "tax on purchases", pile->materials,
                                                "tax on purchases, percent", &shop->purchase_tax);
    add_remakes(&t, pile);
    pile->direct = fig_sum(tape, "direct cost", UNIT_MONEY, pile->group, COST_GROUP_COUNT);
    pile->contingency =
        percent_of(&t, "contingency", pile->direct, "contingency, percent", &shop->contingency);
    add_overhead(&t, pile, minutes);
    const fig terms[] = {pile->direct, pile->contingency, pile->overhead};
    pile->full = fig_sum(tape, "cost with overhead", UNIT_MONEY, terms, 3);
    add_profit(&t, pile);
}
