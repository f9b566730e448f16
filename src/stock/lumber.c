/* SPDX-License-Identifier: MIT */
#include "stock/lumber.h"

#include "model/limits.h"
#include "stock/order.h"

struct yard {
    struct tape *tape;
    const struct measures *m;
    const struct lumber *lumber;
    enum unit unit;
};

fig waste_applied(struct tape *tape, const struct measures *m, fig net, fig waste, enum waste_as as,
                  enum unit unit) {
    if (as == WASTE_ADDED) {
        const fig all = fig_plus(tape, "net and waste, percent of net", m->hundred, waste);
        return fig_ratio(tape, "with waste", unit, (figs){{net, all}}, (figs){{m->hundred}});
    }
    const fig left = fig_plus(tape, "used, percent of bought", m->hundred, fig_minus(waste));
    return fig_ratio(tape, "with waste", unit, (figs){{net, m->hundred}}, (figs){{left}});
}

fig waste_asked(struct tape *tape, const struct measures *m, fig net, fig bought,
                enum waste_as as) {
    const fig more = fig_plus(tape, "planned more than net", bought, fig_minus(net));
    return fig_ratio(tape,
                     as == WASTE_ADDED ? "waste that the plan asks for, of net"
                                       : "waste that the plan asks for, of what is bought",
                     UNIT_PERCENT, (figs){{more, m->hundred}},
                     (figs){{as == WASTE_ADDED ? net : bought}});
}

/* Up to what a yard sells: whole board feet, or thousandths of a cubic meter; at least its minimum.
 */
static fig needed_of(const struct yard *y, fig with_waste) {
    const fig step = tape_constant(y->tape, "sold in steps of", y->unit, y->unit == UNIT_BF ? 0 : 3,
                                   1, "common practice, no source");
    fig needed = fig_up(y->tape, "up to what is sold", with_waste, step);
    if (y->lumber->minimum.set) {
        const fig minimum = measures_given(y->tape, y->m, "yard's minimum", &y->lumber->minimum);
        needed = fig_larger(y->tape, "needed", needed, minimum);
    }
    return needed;
}

/* A break prices the whole lot.  At each break the lot is what is needed, or the break's own amount
 * where that is more; the cheapest lot is ordered, and of equal ones the larger. */
static void buy_at_breaks(const struct yard *y, struct lumber_way *b, fig base) {
    const struct steps *const breaks = &y->lumber->breaks;
    const size_t n = breaks->count;
    const fig nothing = tape_constant(y->tape, "from nothing", y->unit, 0, 0, "by definition");
    const fig free = tape_constant(y->tape, "no money", UNIT_MONEY, 0, 0, "by definition");
    fig limits[MOST_PRICE_BREAKS + 1] = {nothing};
    fig prices[MOST_PRICE_BREAKS + 1] = {base};
    for (size_t i = 0; i < n; i++) {
        limits[i + 1] = measures_given(y->tape, y->m, "price break from", &breaks->s[i].limit);
        prices[i + 1] = measures_given(y->tape, y->m, "price from the break", &breaks->s[i].value);
    }
    const fig price = fig_pick_from(y->tape, "price as needed", b->needed, limits, prices, n + 1);
    b->cost_as_needed =
        fig_ratio(y->tape, "cost as needed", UNIT_MONEY, (figs){{b->needed, price}}, (figs){{{0}}});
    b->bought = b->needed;
    b->cost = b->cost_as_needed;
    for (size_t i = 1; i <= n; i++) {
        const fig lot = fig_larger(y->tape, "lot at the break", b->needed, limits[i]);
        const fig cost = fig_ratio(y->tape, "cost of the lot", UNIT_MONEY, (figs){{lot, prices[i]}},
                                   (figs){{{0}}});
        b->bought = fig_pick_from(y->tape, "bought", b->cost, (fig[]){free, cost},
                                  (fig[]){b->bought, lot}, 2);
        b->cost = fig_smaller(y->tape, "lumber cost", b->cost, cost);
    }
    b->price = fig_pick_from(y->tape, "price of the lot", b->bought, limits, prices, n + 1);
}

/* Buys `w->needed` of a lumber whose net and rough are b's. */
static void buy_way(const struct yard *y, const struct lumber_buy *b, struct lumber_way *w) {
    const fig base = measures_given(y->tape, y->m, "price", &y->lumber->price);
    if (y->lumber->breaks.count > 0) {
        buy_at_breaks(y, w, base);
    } else {
        w->bought = w->needed;
        w->price = base;
        w->cost =
            fig_ratio(y->tape, "lumber cost", UNIT_MONEY, (figs){{w->bought, base}}, (figs){{{0}}});
    }
    w->factor =
        fig_ratio(y->tape, "bought over net", UNIT_FACTOR, (figs){{w->bought}}, (figs){{b->net}});
    const fig more = fig_plus(y->tape, "bought more than net", w->bought, fig_minus(b->net));
    w->waste_added = fig_ratio(y->tape, "waste added", UNIT_PERCENT, (figs){{more, y->m->hundred}},
                               (figs){{b->net}});
    w->yield = fig_ratio(y->tape, "yield", UNIT_PERCENT, (figs){{b->net, y->m->hundred}},
                         (figs){{w->bought}});
    w->rest =
        fig_plus(y->tape, "kerf, defects, offcuts, rounding up", w->bought, fig_minus(b->rough));
}

static void price_by(struct lumber_buy *b, const struct lumber_way *w) {
    b->needed = w->needed;
    b->bought = w->bought;
    b->price = w->price;
    b->cost = w->cost;
    b->cost_as_needed = w->cost_as_needed;
    b->factor = w->factor;
    b->waste_added = w->waste_added;
    b->yield = w->yield;
    b->rest = w->rest;
}

static void buy_by_factor(const struct yard *y, struct lumber_buy *b) {
    b->waste = measures_given(y->tape, y->m, "waste", &y->lumber->waste);
    b->with_waste = waste_applied(y->tape, y->m, b->net, b->waste,
                                  (enum waste_as)y->lumber->waste_as.choice, y->unit);
    b->allowances = fig_plus(y->tape, "end and edge allowance", b->rough, fig_minus(b->net));
    b->by_factor.needed = needed_of(y, b->with_waste);
    buy_way(y, b, &b->by_factor);
    price_by(b, &b->by_factor);
}

static void buy_by_plan(const struct yard *y, struct lumber_buy *b) {
    b->by_plan.needed = b->plan.bought;
    if (y->lumber->minimum.set) {
        const fig minimum = measures_given(y->tape, y->m, "yard's minimum", &y->lumber->minimum);
        b->by_plan.needed = fig_larger(y->tape, "needed by plan", b->plan.bought, minimum);
    }
    buy_way(y, b, &b->by_plan);
    b->beyond =
        fig_plus(y->tape, "bought beyond the plan", b->by_plan.bought, fig_minus(b->plan.bought));
    b->asks = waste_asked(y->tape, y->m, b->net, b->plan.bought,
                          (enum waste_as)y->lumber->waste_as.choice);
}

static bool plan_lumber(const struct yard *y, struct lumber_buy *b, const struct order *o) {
    const bool wanted = o->rates->shop.lumber_by.choice == PRICED_BY_PLAN;
    const struct operation *const counted = o->wish.lumber_for;
    if (!o->wish.always && !wanted && counted == NULL) {
        b->plan.missing = "no plan was asked for";
        return true;
    }
    if (!lumber_plan_make(&b->plan, o->pool, y->tape, y->m, o->rates, b->material, o->quantities,
                          b->net, o->wish.effort)) {
        return false;
    }
    if (b->plan.missing == NULL) {
        buy_by_plan(y, b);
    }
    if (wanted && b->plan.missing != NULL) {
        problem_add(o->problems, SEVERITY_ERROR, "no-plan", y->lumber->name.place,
                    "lumber '%s' is priced by plan and has none: %s; stock boards for it, or price "
                    "by factor",
                    problem_quote(o->problems, y->lumber->name.s), b->plan.missing);
    } else if (b->plan.missing != NULL && counted != NULL) {
        problem_add(o->problems, SEVERITY_ERROR, "no-plan", counted->name.place,
                    "operation '%s' is counted by what the cutting plan of lumber '%s' has, and "
                    "there is none: %s; stock boards for it, or count by something else",
                    problem_quote(o->problems, counted->name.s),
                    problem_quote(o->problems, y->lumber->name.s), b->plan.missing);
    } else if (wanted) {
        b->planned = true;
        price_by(b, &b->by_plan);
    }
    return true;
}

void lumber_clear(struct lumber_list *list) {
    for (size_t i = 0; i < list->count; i++) {
        board_plan_free(list->buys[i].plan.plan);
    }
    *list = (struct lumber_list){0};
}

bool lumber_make(struct lumber_list *list, struct pool *pool, struct tape *tape,
                 const struct measures *measures, const struct rates *rates,
                 const struct quantities *quantities, struct plan_wish wish,
                 struct problems *problems) {
    const struct order order = {
        .pool = pool, .rates = rates, .quantities = quantities, .problems = problems, .wish = wish};
    *list = (struct lumber_list){0};
    list->buys = pool_take(pool, rates->lumber_count, sizeof *list->buys);
    if (list->buys == NULL) {
        return false;
    }
    for (size_t i = 0; i < rates->lumber_count; i++) {
        const struct lumber *const lumber = &rates->lumber[i];
        tape_about(tape, lumber->name.s);
        const fig net =
            quantities_total(quantities, tape, "lumber net", MATERIAL_LUMBER, (int32_t)i, false);
        if (fig_none(net) || tape_amount(tape, net) == 0) {
            continue;
        }
        const struct yard yard = {
            .tape = tape, .m = measures, .lumber = lumber, .unit = lumber_unit(lumber)};
        struct lumber_buy *const b = &list->buys[list->count++];
        b->material = (int32_t)i;
        b->net = net;
        b->rough =
            quantities_total(quantities, tape, "lumber rough", MATERIAL_LUMBER, (int32_t)i, true);
        buy_by_factor(&yard, b);
        if (!plan_lumber(&yard, b, &order)) {
            return false;
        }
    }
    tape_about_again(tape, 0);
    return true;
}
