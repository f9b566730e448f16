/* SPDX-License-Identifier: MIT */
#include "price/build_up.h"

struct till {
    struct tape *tape;
    const struct measures *m;
    const struct shop *shop;
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
    if (t->shop->overhead_on.word == OVERHEAD_OF_COST) {
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

/* Markup is a percent of cost; margin one of the price: price = cost x 100 / (100 - margin). */
static void add_profit(const struct till *t, struct build_up *p) {
    if (!t->shop->profit.set) {
        p->price = p->full;
        return;
    }
    if (t->shop->profit_as.word == PROFIT_MARKUP) {
        p->profit = percent_of(t, "profit", p->full, "profit, markup on cost", &t->shop->profit);
        p->price = fig_plus(t->tape, "price by cost", p->full, p->profit);
        return;
    }
    const fig margin = measures_given(t->tape, t->m, "profit, margin of price", &t->shop->profit);
    const fig left = fig_plus(t->tape, "cost, percent of price", t->m->hundred, fig_minus(margin));
    p->price = fig_ratio(t->tape, "price by cost", UNIT_MONEY, (figs){{p->full, t->m->hundred}},
                         (figs){{left}});
    p->profit = fig_plus(t->tape, "profit", p->price, fig_minus(p->full));
}

void build_up_finish(struct build_up *pile, struct tape *tape, const struct measures *measures,
                     const struct shop *shop, fig minutes) {
    const struct till t = {.tape = tape, .m = measures, .shop = shop};
    pile->materials = fig_sum(tape, "materials", UNIT_MONEY, pile->group, COST_CONSUMABLES + 1);
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
