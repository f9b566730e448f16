/* SPDX-License-Identifier: MIT */
#include "stock/lumber.h"

#include "model/limits.h"
#include "stock/spares.h"

fig waste_applied(const struct calc *c, fig net, fig waste, enum waste_as as) {
    const enum unit unit = tape_unit(c->tape, net);
    const fig hundred = c->units->hundred;
    if (as == WASTE_ADDED) {
        const fig all = fig_plus(c->tape, "net and waste, percent of net", hundred, waste);
        return calc_percent(c, "with waste", unit, net, all);
    }
    const fig left = fig_plus(c->tape, "used, percent of bought", hundred, fig_minus(waste));
    return fig_ratio(c->tape, "with waste", unit, (figs){{net, hundred}}, (figs){{left}});
}

fig implied_waste(const struct calc *c, fig net, fig bought, fig keep, enum waste_as as) {
    const fig used =
        fig_plus(c->tape, "bought less offcuts worth keeping", bought, fig_minus(keep));
    const fig more = fig_plus(c->tape, "used up more than net", used, fig_minus(net));
    return fig_ratio(c->tape,
                     as == WASTE_ADDED ? "waste that the plan asks for, of net"
                                       : "waste that the plan asks for, of what is used up",
                     UNIT_PERCENT, (figs){{more, c->units->hundred}},
                     (figs){{as == WASTE_ADDED ? net : used}});
}

fig short_of_plan(const struct calc *c, fig by_factor, fig by_plan) {
    const enum unit unit = tape_unit(c->tape, by_plan);
    const fig more = fig_plus(c->tape, "plan less factor, bought", by_plan, fig_minus(by_factor));
    return fig_larger(c->tape, "plan needs more than the factor buys", more,
                      tape_constant(c->tape, "no more", unit, 0, 0, "by definition"));
}

static const struct lumber *lumber_of(const struct calc *c, const struct lumber_buy *b) {
    return &c->rates->lumber[b->material];
}

fig lumber_charged(const struct lumber_buy *b) {
    return fig_none(b->with_rack) ? b->priced.cost : b->with_rack;
}

static bool has_rack(const struct lumber_buy *b) {
    return !fig_none(b->plan.rack.amount);
}

/* At least the yard's minimum; the same where it has none, and nothing where the rack has all. */
static fig at_least_minimum(const struct calc *c, const char *what, fig needed,
                            const struct lumber_buy *b) {
    const struct lumber *const lumber = lumber_of(c, b);
    if (!lumber->minimum.set) {
        return needed;
    }
    const fig least = calc_given(c, "yard's minimum", &lumber->minimum);
    if (!has_rack(b)) {
        return fig_larger(c->tape, what, needed, least);
    }
    const fig nothing =
        tape_constant(c->tape, "nothing to buy", lumber_unit(lumber), 0, 0, "by definition");
    const fig some = fig_larger(c->tape, "needed where some is", needed, least);
    return fig_pick_upto(c->tape, what, needed, (fig[]){nothing, some}, (fig[]){nothing, some}, 2);
}

/* A break prices the whole lot.  At each break the lot is what is needed, or the break's own amount
 * where that is more; the cheapest lot is ordered, and of equal ones the larger. */
static void buy_at_breaks(const struct calc *c, const struct lumber *lumber, struct purchase_by *p,
                          fig base) {
    const size_t n = lumber->breaks.count;
    const fig nothing =
        tape_constant(c->tape, "from nothing", lumber_unit(lumber), 0, 0, "by definition");
    const fig free = tape_constant(c->tape, "no money", UNIT_MONEY, 0, 0, "by definition");
    fig limits[MOST_PRICE_BREAKS + 1] = {nothing};
    fig prices[MOST_PRICE_BREAKS + 1] = {base};
    for (size_t i = 0; i < n; i++) {
        limits[i + 1] = calc_given(c, "price break from", &lumber->breaks.s[i].limit);
        prices[i + 1] = calc_given(c, "price from the break", &lumber->breaks.s[i].value);
    }
    const fig price = fig_pick_from(c->tape, "price as needed", p->needed, limits, prices, n + 1);
    p->cost_as_needed = calc_product(c, "cost as needed", UNIT_MONEY, p->needed, price);
    p->bought = p->needed;
    p->cost = p->cost_as_needed;
    for (size_t i = 1; i <= n; i++) {
        const fig lot = fig_larger(c->tape, "lot at the break", p->needed, limits[i]);
        const fig cost = calc_product(c, "cost of the lot", UNIT_MONEY, lot, prices[i]);
        p->bought = fig_pick_from(c->tape, "bought", p->cost, (fig[]){free, cost},
                                  (fig[]){p->bought, lot}, 2);
        p->cost = fig_smaller(c->tape, "lumber cost", p->cost, cost);
    }
    p->price = fig_pick_from(c->tape, "price of the lot", p->bought, limits, prices, n + 1);
}

/* What is cut up: all that is bought, and what is taken from the rack. */
static fig all_cut(const struct purchase_by *p) {
    return fig_none(p->cut) ? p->bought : p->cut;
}

/* Buys p->needed of a lumber whose net and rough are b's. */
static void buy(const struct calc *c, const struct lumber_buy *b, struct purchase_by *p) {
    const struct lumber *const lumber = lumber_of(c, b);
    const fig hundred = c->units->hundred;
    const fig base = calc_given(c, "price", &lumber->price);
    if (lumber->breaks.count > 0) {
        buy_at_breaks(c, lumber, p, base);
    } else {
        p->bought = p->needed;
        p->price = base;
        p->cost = calc_product(c, "lumber cost", UNIT_MONEY, p->bought, base);
    }
    if (has_rack(b)) {
        p->from_rack = b->plan.rack.amount;
        p->cut = fig_plus(c->tape, "bought and from the rack", p->bought, p->from_rack);
    }
    const fig cut = all_cut(p);
    p->factor = fig_ratio(c->tape, "bought over net", UNIT_FACTOR, (figs){{cut}}, (figs){{b->net}});
    const fig more = fig_plus(c->tape, "bought more than net", cut, fig_minus(b->net));
    p->waste_added =
        fig_ratio(c->tape, "waste added", UNIT_PERCENT, (figs){{more, hundred}}, (figs){{b->net}});
    p->yield = fig_ratio(c->tape, "yield", UNIT_PERCENT, (figs){{b->net, hundred}}, (figs){{cut}});
    p->rest = fig_plus(c->tape, "kerf, defects, offcuts, rounding up", cut, fig_minus(b->rough));
}

/* Net of the parts that are to be bought: the plan tells which are cut of the rack. */
static fig milled_to_buy(const struct calc *c, struct lumber_buy *b) {
    const enum unit unit = lumber_unit(lumber_of(c, b));
    if (!has_rack(b)) {
        return b->milled;
    }
    const fig to_buy = fig_ratio(c->tape, "net, of the parts on boards that are bought", unit,
                                 (figs){{b->milled, b->plan.sold_parts}}, (figs){{b->plan.rough}});
    b->on_rack =
        fig_plus(c->tape, "net, of the parts on boards of the rack", b->milled, fig_minus(to_buy));
    return to_buy;
}

/* Up to what a yard sells: whole board feet, or thousandths of a cubic meter; at least its minimum.
 */
static void buy_by_factor(const struct calc *c, struct lumber_buy *b) {
    const struct lumber *const lumber = lumber_of(c, b);
    const enum unit unit = lumber_unit(lumber);
    b->waste = calc_given(c, "waste", &lumber->waste);
    b->with_waste =
        waste_applied(c, milled_to_buy(c, b), b->waste, (enum waste_as)lumber->waste_as.choice);
    b->allowances = fig_plus(c->tape, "end and edge allowance", b->rough, fig_minus(b->milled));
    const fig step = tape_constant(c->tape, "sold in steps of", unit, unit == UNIT_BF ? 0 : 3, 1,
                                   "common practice, no source");
    b->by_factor.as_sold = fig_up(c->tape, "up to what is sold", b->with_waste, step);
    b->by_factor.needed = at_least_minimum(c, "needed", b->by_factor.as_sold, b);
    buy(c, b, &b->by_factor);
}

static void buy_by_plan(const struct calc *c, struct lumber_buy *b) {
    const struct lumber *const lumber = lumber_of(c, b);
    b->by_plan.as_sold = b->plan.bought;
    b->by_plan.needed = at_least_minimum(c, "needed by plan", b->plan.bought, b);
    buy(c, b, &b->by_plan);
    fig used = b->plan.bought;
    if (has_rack(b)) {
        used = fig_plus(c->tape, "bought by plan and from the rack", used, b->plan.rack.amount);
        b->less_rack = fig_sum(c->tape, "less: from the rack", lumber_unit(lumber),
                               (fig[]){fig_minus(b->plan.rack.amount)}, 1);
    }
    b->over_plan =
        fig_plus(c->tape, "bought beyond the plan", b->by_plan.bought, fig_minus(b->plan.bought));
    b->implied_waste = implied_waste(c, b->milled, used, b->plan.keep_worth,
                                     (enum waste_as)lumber->waste_as.choice);
    b->short_of_plan = short_of_plan(c, b->by_factor.bought, b->by_plan.bought);
}

/* The plan, where one is wanted; false: out of memory. */
static bool plan_lumber(const struct calc *c, struct lumber_buy *b, struct plan_request request) {
    if (!plan_wanted(c->rates, MATERIAL_LUMBER, b->material, request)) {
        b->plan.no_plan_reason = "no plan was asked for";
        return true;
    }
    return lumber_plan_make(&b->plan, c, b->material, b->milled, request);
}

/* What is wanted of a plan that there is not. */
static void report_no_plan(const struct calc *c, const struct lumber_buy *b) {
    const struct lumber *const lumber = lumber_of(c, b);
    const struct operation *const counted = plan_counted_by(c->rates, MATERIAL_LUMBER);
    if (c->rates->shop.lumber_by.choice == PRICED_BY_PLAN) {
        problem_add(c->problems, SEVERITY_ERROR, "no-plan", lumber->name.place,
                    "lumber '%s' is priced by plan and has none: %s; stock boards for it, or price "
                    "by factor",
                    problem_quote(c->problems, lumber->name.s), b->plan.no_plan_reason);
    } else if (counted != NULL) {
        problem_add(c->problems, SEVERITY_ERROR, "no-plan", counted->name.place,
                    "operation '%s' is counted by what the cutting plan of lumber '%s' has, and "
                    "there is none: %s; stock boards for it, or count by something else",
                    problem_quote(c->problems, counted->name.s),
                    problem_quote(c->problems, lumber->name.s), b->plan.no_plan_reason);
    }
}

static bool buy_lumber(const struct calc *c, struct lumber_buy *b, struct plan_request request) {
    if (!plan_lumber(c, b, request)) {
        return false;
    }
    buy_by_factor(c, b);
    b->priced = b->by_factor;
    if (b->plan.no_plan_reason == NULL) {
        buy_by_plan(c, b);
        b->planned = c->rates->shop.lumber_by.choice == PRICED_BY_PLAN;
        b->priced = b->planned ? b->by_plan : b->by_factor;
    } else if (plan_wanted(c->rates, MATERIAL_LUMBER, b->material, request)) {
        report_no_plan(c, b);
    }
    if (has_rack(b)) {
        b->with_rack =
            fig_plus(c->tape, "lumber cost, with the rack", b->priced.cost, b->plan.rack.charged);
    }
    return true;
}

/* Spare rails are milled from the same boards. */
static void add_spares(const struct calc *c, struct lumber_buy *b) {
    const enum unit unit = lumber_unit(lumber_of(c, b));
    b->spares =
        spares_total(c, "spare rails, net", unit, b->material, offsetof(struct part_figures, net));
    if (fig_none(b->spares)) {
        return;
    }
    b->milled = fig_plus(c->tape, "net, with spare rails", b->net, b->spares);
    b->rough = fig_plus(c->tape, "rough, with spare rails", b->rough,
                        spares_total(c, "spare rails, rough", unit, b->material,
                                     offsetof(struct part_figures, rough)));
}

void lumber_clear(struct lumber_list *list) {
    for (size_t i = 0; i < list->count; i++) {
        board_plan_free(list->buys[i].plan.plan);
    }
    *list = (struct lumber_list){0};
}

bool lumber_make(struct lumber_list *list, const struct calc *c, struct plan_request request) {
    *list = (struct lumber_list){0};
    list->buys = pool_take(c->pool, c->rates->lumber_count, sizeof *list->buys);
    if (list->buys == NULL) {
        return false;
    }
    for (int32_t i = 0; i < (int32_t)c->rates->lumber_count; i++) {
        tape_about(c->tape, c->rates->lumber[i].name.s);
        const fig net = quantities_total(c, "lumber net", MATERIAL_LUMBER, i,
                                         offsetof(struct material_use, net));
        if (tape_amount(c->tape, net) == 0) { /* nor of none */
            continue;
        }
        struct lumber_buy *const b = &list->buys[list->count++];
        b->material = i;
        b->net = net;
        b->rough = quantities_total(c, "lumber rough", MATERIAL_LUMBER, i,
                                    offsetof(struct material_use, rough));
        b->milled = b->net;
        add_spares(c, b);
        if (!buy_lumber(c, b, request)) {
            return false;
        }
    }
    tape_about_job(c->tape);
    return true;
}
