/* SPDX-License-Identifier: MIT */
#include "stock/sheet.h"

#include "stock/lumber.h"

static const struct sheet *sheet_of(const struct calc *c, const struct sheet_buy *b) {
    return &c->rates->sheets[b->material];
}

/* What is cut up: all that is bought, and what is taken from the rack. */
static fig area_cut(const struct sheet_purchase_by *p) {
    return fig_none(p->cut) ? p->bought : p->cut;
}

/* Area, cost and yield of so many sheets. */
static void buy(const struct calc *c, const struct sheet_buy *b, struct sheet_purchase_by *p) {
    const fig counts[] = {p->whole, p->half};
    p->bought = fig_total(c->tape, "area bought", c->units->area, counts,
                          (fig[]){b->each, b->each_half}, 2);
    p->cost =
        fig_total(c->tape, "sheet cost", UNIT_MONEY, counts, (fig[]){b->price, b->half_price}, 2);
    if (!fig_none(p->from_rack)) {
        p->cut = fig_plus(c->tape, "area bought and from the rack", p->bought, b->plan.rack.amount);
    }
    const fig cut = area_cut(p);
    p->factor = fig_ratio(c->tape, "bought over net", UNIT_FACTOR, (figs){{cut}}, (figs){{b->net}});
    const fig more = fig_plus(c->tape, "bought more than net", cut, fig_minus(b->net));
    p->waste_added = fig_ratio(c->tape, "waste added", UNIT_PERCENT,
                               (figs){{more, c->units->hundred}}, (figs){{b->net}});
    p->yield = fig_ratio(c->tape, "yield", UNIT_PERCENT, (figs){{b->net, c->units->hundred}},
                         (figs){{cut}});
}

/* Whole sheets by area; then, where the need left for the last sheet is no more than half of one, a
 * half takes its place. */
static void count_sheets(const struct calc *c, const struct sheet_buy *b,
                         struct sheet_purchase_by *p) {
    const fig by_area =
        fig_ratio(c->tape, "sheets by area", UNIT_FACTOR, (figs){{b->needed}}, (figs){{b->each}});
    p->whole = fig_up(c->tape, "whole sheets", by_area, c->units->one);
    if (fig_none(b->half_price)) {
        return;
    }
    const fig none = tape_constant(c->tape, "no half sheet", UNIT_COUNT, 0, 0, "by definition");
    const fig up = fig_ratio(c->tape, "area of whole sheets", c->units->area,
                             (figs){{p->whole, b->each}}, (figs){{{0}}});
    const fig terms[] = {b->needed, b->each, fig_minus(up)};
    const fig last = fig_sum(c->tape, "area needed of the last sheet", c->units->area, terms, 3);
    p->half = fig_pick_upto(c->tape, "half sheets", last, (fig[]){b->each_half, b->each},
                            (fig[]){c->units->one, none}, 2);
    p->whole = fig_plus(c->tape, "whole sheets beside the half", p->whole, fig_minus(p->half));
}

static fig sheet_weight(const struct calc *c, const struct sheet *sheet, fig area) {
    const fig density = units_density(c->tape, c->units, &sheet->density);
    if (fig_none(density)) {
        return density;
    }
    const fig thick = calc_given(c, "thickness", &sheet->thickness);
    return fig_ratio(c->tape, "weight of a sheet", c->units->weight, (figs){{density, thick, area}},
                     (figs){{c->units->length_per_thick}});
}

static void buy_by_factor(const struct calc *c, struct sheet_buy *b) {
    const struct sheet *const sheet = sheet_of(c, b);
    const fig along = calc_given(c, "sheet length", &sheet->length);
    const fig across = calc_given(c, "sheet width", &sheet->width);
    b->waste = calc_given(c, "waste", &sheet->waste);
    b->needed = waste_applied(c, b->net, b->waste, (enum waste_as)sheet->waste_as.choice);
    b->each = calc_area(c, "area of a sheet", along, across);
    b->weight = sheet_weight(c, sheet, b->each);
    b->price = calc_given(c, "price", &sheet->price);
    if (sheet->half_price.set) {
        b->half_price = calc_given(c, "price of a half sheet", &sheet->half_price);
        b->each_half = fig_ratio(c->tape, "area of a half sheet", c->units->area, (figs){{b->each}},
                                 (figs){{c->units->two}});
    }
    count_sheets(c, b, &b->by_factor);
    buy(c, b, &b->by_factor);
}

static void buy_by_plan(const struct calc *c, struct sheet_buy *b) {
    b->by_plan.whole = b->plan.counts[SHEET_WHOLE];
    b->by_plan.half = b->plan.counts[SHEET_HALF];
    b->by_plan.from_rack = b->plan.rack.pieces;
    buy(c, b, &b->by_plan);
    if (!fig_none(b->plan.rack.amount)) {
        b->less_rack = fig_sum(c->tape, "less: from the rack", c->units->area,
                               (fig[]){fig_minus(b->plan.rack.amount)}, 1);
    }
    const fig terms[] = {area_cut(&b->by_plan), fig_minus(b->net), fig_minus(b->plan.trim),
                         fig_minus(b->plan.kerf)};
    b->offcuts = fig_sum(c->tape, "offcuts", c->units->area, terms, 4);
    b->implied_waste = implied_waste(c, b->net, area_cut(&b->by_plan), b->plan.keep_worth,
                                     (enum waste_as)sheet_of(c, b)->waste_as.choice);
    b->short_of_plan = short_of_plan(c, b->by_factor.bought, b->by_plan.bought);
}

/* What the job is charged of what it is priced by: all, or the part that it uses. */
static void charge(const struct calc *c, struct sheet_buy *b) {
    const bool rack = b->planned && !fig_none(b->plan.rack.pieces);
    const fig used = rack ? b->plan.sold_parts : b->planned ? b->net : b->needed;
    b->priced = b->planned ? b->by_plan : b->by_factor;
    b->charged = b->priced.cost;
    if (c->rates->shop.charge_sheets.choice != CHARGED_BOUGHT) {
        b->charged = fig_ratio(c->tape, "sheet cost charged", UNIT_MONEY,
                               (figs){{b->priced.cost, used}}, (figs){{b->priced.bought}});
    }
    if (rack) {
        b->charged = fig_plus(c->tape, "sheet cost charged, with the rack", b->charged,
                              b->plan.rack.charged);
    }
}

static bool plan_sheets(const struct calc *c, struct sheet_buy *b, struct plan_request request) {
    const struct sheet *const sheet = sheet_of(c, b);
    const bool wanted = c->rates->shop.sheets_by.choice == PRICED_BY_PLAN;
    if (!plan_wanted(c->rates, MATERIAL_SHEET, b->material, request)) {
        b->plan.no_plan_reason = "no plan was asked for";
        return true;
    }
    if (!sheets_plan_make(&b->plan, c, b->material, request)) {
        return false;
    }
    if (b->plan.no_plan_reason == NULL) {
        buy_by_plan(c, b);
        b->planned = wanted;
        return true;
    }
    const struct operation *const counted = plan_counted_by(c->rates, MATERIAL_SHEET);
    if (wanted) {
        problem_add(c->problems, SEVERITY_ERROR, "no-plan", sheet->name.place,
                    "sheet '%s' is priced by plan and has none: %s; name a larger sheet, or price "
                    "by factor",
                    problem_quote(c->problems, sheet->name.s), b->plan.no_plan_reason);
    } else if (counted != NULL) {
        problem_add(c->problems, SEVERITY_ERROR, "no-plan", counted->name.place,
                    "operation '%s' is counted by the cuts of sheet '%s', and there is no plan: "
                    "%s; name a larger sheet, or count by something else",
                    problem_quote(c->problems, counted->name.s),
                    problem_quote(c->problems, sheet->name.s), b->plan.no_plan_reason);
    }
    return true;
}

void sheets_clear(struct sheet_list *list) {
    for (size_t i = 0; i < list->count; i++) {
        sheet_plan_free(list->buys[i].plan.plan);
    }
    *list = (struct sheet_list){0};
}

bool sheets_make(struct sheet_list *list, const struct calc *c, struct plan_request request) {
    *list = (struct sheet_list){0};
    list->buys = pool_take(c->pool, c->rates->sheet_count, sizeof *list->buys);
    if (list->buys == NULL) {
        return false;
    }
    for (int32_t i = 0; i < (int32_t)c->rates->sheet_count; i++) {
        tape_about(c->tape, c->rates->sheets[i].name.s);
        const fig net = quantities_total(c, "sheet area net", MATERIAL_SHEET, i,
                                         offsetof(struct material_use, net));
        if (fig_none(net) || tape_amount(c->tape, net) == 0) {
            continue;
        }
        struct sheet_buy *const b = &list->buys[list->count++];
        b->material = i;
        b->net = net;
        buy_by_factor(c, b);
        if (!plan_sheets(c, b, request)) {
            return false;
        }
        charge(c, b);
    }
    tape_about_job(c->tape);
    return true;
}

bool glass_make(struct glass_list *list, const struct calc *c) {
    *list = (struct glass_list){0};
    list->buys = pool_take(c->pool, c->rates->glass_count, sizeof *list->buys);
    if (list->buys == NULL) {
        return false;
    }
    for (int32_t i = 0; i < (int32_t)c->rates->glass_count; i++) {
        tape_about(c->tape, c->rates->glass[i].name.s);
        const fig cost = quantities_total(c, "glass cost", MATERIAL_GLASS, i,
                                          offsetof(struct material_use, cost));
        if (fig_none(cost)) {
            continue;
        }
        list->buys[list->count++] = (struct glass_buy){
            .material = i,
            .area = quantities_total(c, "glass area charged", MATERIAL_GLASS, i,
                                     offsetof(struct material_use, net)),
            .stops = quantities_total(c, "stops", MATERIAL_GLASS, i,
                                      offsetof(struct material_use, stops)),
            .cost = cost,
        };
    }
    tape_about_job(c->tape);
    return true;
}
