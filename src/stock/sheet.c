/* SPDX-License-Identifier: MIT */
#include "stock/sheet.h"

#include "stock/lumber.h"
#include "stock/order.h"

#include <stddef.h>
#include <string.h>

struct rack {
    struct tape *tape;
    const struct measures *m;
    const struct sheet *sheet;
};

/* Area, cost and yield of so many sheets. */
static void buy_way(const struct rack *r, const struct sheet_buy *b, struct sheet_way *w) {
    const fig counts[] = {w->whole, w->half};
    w->bought =
        fig_total(r->tape, "area bought", r->m->area, counts, (fig[]){b->each, b->each_half}, 2);
    w->cost =
        fig_total(r->tape, "sheet cost", UNIT_MONEY, counts, (fig[]){b->price, b->half_price}, 2);
    w->factor =
        fig_ratio(r->tape, "bought over net", UNIT_FACTOR, (figs){{w->bought}}, (figs){{b->net}});
    const fig more = fig_plus(r->tape, "bought more than net", w->bought, fig_minus(b->net));
    w->waste_added = fig_ratio(r->tape, "waste added", UNIT_PERCENT, (figs){{more, r->m->hundred}},
                               (figs){{b->net}});
    w->yield = fig_ratio(r->tape, "yield", UNIT_PERCENT, (figs){{b->net, r->m->hundred}},
                         (figs){{w->bought}});
}

/* Whole sheets by area; then, where the need left for the last sheet is no more than half of one, a
 * half takes its place. */
static void count_sheets(const struct rack *r, const struct sheet_buy *b, struct sheet_way *w) {
    const fig by_area =
        fig_ratio(r->tape, "sheets by area", UNIT_FACTOR, (figs){{b->needed}}, (figs){{b->each}});
    w->whole = fig_up(r->tape, "whole sheets", by_area, r->m->one);
    if (fig_none(b->half_price)) {
        return;
    }
    const fig none = tape_constant(r->tape, "no half sheet", UNIT_COUNT, 0, 0, "by definition");
    const fig up = fig_ratio(r->tape, "area of whole sheets", r->m->area,
                             (figs){{w->whole, b->each}}, (figs){{{0}}});
    const fig terms[] = {b->needed, b->each, fig_minus(up)};
    const fig last = fig_sum(r->tape, "area needed of the last sheet", r->m->area, terms, 3);
    w->half = fig_pick_upto(r->tape, "half sheets", last, (fig[]){b->each_half, b->each},
                            (fig[]){r->m->one, none}, 2);
    w->whole = fig_plus(r->tape, "whole sheets beside the half", w->whole, fig_minus(w->half));
}

static void buy_by_factor(const struct rack *r, struct sheet_buy *b) {
    const fig along = measures_given(r->tape, r->m, "sheet length", &r->sheet->length);
    const fig across = measures_given(r->tape, r->m, "sheet width", &r->sheet->width);
    b->waste = measures_given(r->tape, r->m, "waste", &r->sheet->waste);
    b->needed = waste_applied(r->tape, r->m, b->net, b->waste,
                              (enum waste_as)r->sheet->waste_as.choice, r->m->area);
    b->each = fig_ratio(r->tape, "area of a sheet", r->m->area, (figs){{along, across}},
                        (figs){{r->m->length2_per_area}});
    b->price = measures_given(r->tape, r->m, "price", &r->sheet->price);
    if (r->sheet->half_price.set) {
        b->half_price =
            measures_given(r->tape, r->m, "price of a half sheet", &r->sheet->half_price);
        b->each_half = fig_ratio(r->tape, "area of a half sheet", r->m->area, (figs){{b->each}},
                                 (figs){{r->m->two}});
    }
    count_sheets(r, b, &b->by_factor);
    buy_way(r, b, &b->by_factor);
}

static void buy_by_plan(const struct rack *r, struct sheet_buy *b) {
    b->by_plan.whole = b->plan.counts[SHEET_WHOLE];
    b->by_plan.half = b->plan.counts[SHEET_HALF];
    buy_way(r, b, &b->by_plan);
    const fig terms[] = {b->by_plan.bought, fig_minus(b->net), fig_minus(b->plan.trim),
                         fig_minus(b->plan.kerf)};
    b->offcuts = fig_sum(r->tape, "offcuts", r->m->area, terms, 4);
    b->asks = waste_asked(r->tape, r->m, b->net, b->by_plan.bought,
                          (enum waste_as)r->sheet->waste_as.choice);
}

/* The way that prices the job, and what of it the job is charged. */
static void price_by(const struct rack *r, struct sheet_buy *b, const struct sheet_way *w,
                     enum charged charged) {
    b->whole = w->whole;
    b->half = w->half;
    b->bought = w->bought;
    b->cost = w->cost;
    b->factor = w->factor;
    b->waste_added = w->waste_added;
    b->yield = w->yield;
    const fig used = b->planned ? b->net : b->needed;
    b->charged = charged == CHARGED_BOUGHT
                     ? w->cost
                     : fig_ratio(r->tape, "sheet cost charged", UNIT_MONEY, (figs){{w->cost, used}},
                                 (figs){{w->bought}});
}

static bool plan_sheets(const struct rack *r, struct sheet_buy *b, const struct order *o) {
    const bool wanted = o->rates->shop.sheets_by.choice == PRICED_BY_PLAN;
    const struct operation *const counted = o->wish.sheets_for;
    if (!o->wish.always && !wanted && counted == NULL) {
        b->plan.missing = "no plan was asked for";
        return true;
    }
    if (!sheets_plan_make(&b->plan, o->pool, r->tape, r->m, o->rates, b->material, o->quantities,
                          o->wish.effort)) {
        return false;
    }
    if (b->plan.missing == NULL) {
        buy_by_plan(r, b);
        b->planned = wanted;
    } else if (wanted) {
        problem_add(o->problems, SEVERITY_ERROR, "no-plan", r->sheet->name.place,
                    "sheet '%s' is priced by plan and has none: %s; name a larger sheet, or price "
                    "by factor",
                    problem_quote(o->problems, r->sheet->name.s), b->plan.missing);
    } else if (counted != NULL) {
        problem_add(o->problems, SEVERITY_ERROR, "no-plan", counted->name.place,
                    "operation '%s' is counted by the cuts of sheet '%s', and there is no plan: "
                    "%s; name a larger sheet, or count by something else",
                    problem_quote(o->problems, counted->name.s),
                    problem_quote(o->problems, r->sheet->name.s), b->plan.missing);
    }
    return true;
}

void sheets_clear(struct sheet_list *list) {
    for (size_t i = 0; i < list->count; i++) {
        sheet_plan_free(list->buys[i].plan.plan);
    }
    *list = (struct sheet_list){0};
}

bool sheets_make(struct sheet_list *list, struct pool *pool, struct tape *tape,
                 const struct measures *measures, const struct rates *rates,
                 const struct quantities *quantities, struct plan_wish wish,
                 struct problems *problems) {
    const struct order order = {
        .pool = pool, .rates = rates, .quantities = quantities, .problems = problems, .wish = wish};
    *list = (struct sheet_list){0};
    list->buys = pool_take(pool, rates->sheet_count, sizeof *list->buys);
    if (list->buys == NULL) {
        return false;
    }
    for (size_t i = 0; i < rates->sheet_count; i++) {
        tape_about(tape, rates->sheets[i].name.s);
        const fig net =
            quantities_total(quantities, tape, "sheet area net", MATERIAL_SHEET, (int32_t)i, false);
        if (fig_none(net) || tape_amount(tape, net) == 0) {
            continue;
        }
        const struct rack rack = {.tape = tape, .m = measures, .sheet = &rates->sheets[i]};
        struct sheet_buy *const b = &list->buys[list->count++];
        b->material = (int32_t)i;
        b->net = net;
        buy_by_factor(&rack, b);
        if (!plan_sheets(&rack, b, &order)) {
            return false;
        }
        price_by(&rack, b, b->planned ? &b->by_plan : &b->by_factor,
                 (enum charged)rates->shop.charge_sheets.choice);
    }
    tape_about_again(tape, 0);
    return true;
}

/* Sum over the rows of a figure of the glass that they take; none when no row has it. offset: where
 * the figure stands in struct material_use. terms: room for two figures a row. */
static fig glass_total(struct tape *tape, const struct quantities *q, int32_t glass,
                       const char *what, size_t offset, fig *terms) {
    fig *const each = terms + q->count;
    size_t n = 0;
    for (size_t r = 0; r < q->count; r++) {
        const struct leaf_figures *const leaf = &q->leaves[r];
        for (size_t u = 0; u < leaf->use_count; u++) {
            if (leaf->uses[u].material_kind == MATERIAL_GLASS && leaf->uses[u].material == glass) {
                terms[n] = leaf->pieces;
                memcpy(&each[n], (const char *)&leaf->uses[u] + offset, sizeof *each);
                n += fig_none(each[n]) ? 0 : 1;
            }
        }
    }
    return n == 0 ? (fig){0} : fig_total(tape, what, UNIT_MONEY, terms, each, n);
}

bool glass_make(struct glass_list *list, struct pool *pool, struct tape *tape,
                const struct rates *rates, const struct quantities *quantities) {
    *list = (struct glass_list){0};
    list->buys = pool_take(pool, rates->glass_count, sizeof *list->buys);
    fig *const terms = pool_take(pool, 2 * quantities->count, sizeof *terms);
    if (pool_failed(pool)) {
        return false;
    }
    for (size_t i = 0; i < rates->glass_count; i++) {
        tape_about(tape, rates->glass[i].name.s);
        const fig cost = glass_total(tape, quantities, (int32_t)i, "glass cost",
                                     offsetof(struct material_use, cost), terms);
        if (fig_none(cost)) {
            continue;
        }
        list->buys[list->count++] = (struct glass_buy){
            .material = (int32_t)i,
            .area = quantities_total(quantities, tape, "glass area charged", MATERIAL_GLASS,
                                     (int32_t)i, false),
            .stops = glass_total(tape, quantities, (int32_t)i, "stops",
                                 offsetof(struct material_use, stops), terms),
            .cost = cost,
        };
    }
    tape_about_again(tape, 0);
    return true;
}
