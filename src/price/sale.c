/* SPDX-License-Identifier: MIT */
#include "price/sale.h"

#include "base/order.h"
#include "base/text.h"
#include "model/charge.h"
#include "model/limits.h"

#include <stdlib.h>

static fig percent_of(const struct calc *c, const char *what, fig base, fig percent) {
    return calc_percent(c, what, UNIT_MONEY, base, percent);
}

/* The percent off for so many doors and fronts: nothing below the first step. */
static fig discount_by_count(const struct calc *c) {
    const struct steps *const steps = &c->job->sale.discounts;
    fig limits[MOST_DISCOUNTS + 1] = {
        tape_constant(c->tape, "from nothing", UNIT_COUNT, 0, 0, "by definition")};
    fig values[MOST_DISCOUNTS + 1] = {
        tape_constant(c->tape, "no discount", UNIT_PERCENT, 0, 0, "by definition")};
    for (size_t i = 0; i < steps->count; i++) {
        limits[i + 1] = calc_given(c, "discount from", &steps->s[i].limit);
        values[i + 1] = calc_given(c, "discount from there on", &steps->s[i].value);
    }
    return fig_pick_from(c->tape, "discount by count", c->quantities->all_leaves, limits, values,
                         steps->count + 1);
}

static void sell(const struct calc *c, struct sale_figures *f, fig doors) {
    const struct value *const minimum = &c->rates->shop.minimum_job;
    const struct sale *const sale = &c->job->sale;
    f->doors = doors;
    f->after_discount = f->doors;
    if (sale->discount.set || sale->discounts.count > 0) {
        f->discount_rate = sale->discount.set ? calc_given(c, "discount, percent", &sale->discount)
                                              : discount_by_count(c);
        f->discount = percent_of(c, "discount", f->doors, f->discount_rate);
        f->after_discount = fig_plus(c->tape, "after discount", f->doors, fig_minus(f->discount));
    }
    f->sold = f->after_discount;
    if (minimum->set) {
        const fig least = calc_given(c, "minimum job", minimum);
        const fig nothing = tape_constant(c->tape, "no money", UNIT_MONEY, 0, 0, "by definition");
        const fig missing =
            fig_plus(c->tape, "missing to the minimum", least, fig_minus(f->after_discount));
        f->minimum_line = fig_larger(c->tape, "job minimum", missing, nothing);
        f->sold = fig_plus(c->tape, "sold", f->after_discount, f->minimum_line);
    }
}

/* What charge i of the job comes to: as given, a percent of what is sold, or the price of its
 * operation; none where that has nothing to do. */
static fig charge_amount(const struct calc *c, const struct sale_figures *f,
                         const struct costs *costs, size_t i, const char *what) {
    const struct value *const value = &charge_at(c->job, i)->value;
    if (!value->set) {
        return costs->charges[i].price;
    }
    const fig given = calc_given(c, what, value);
    return value->unit == UNIT_PERCENT ? percent_of(c, "charge by percent", f->sold, given) : given;
}

static void add_charges(const struct calc *c, struct sale_figures *f, const struct costs *costs,
                        fig *terms) {
    const struct sale *const sale = &c->job->sale;
    size_t n = 0;
    terms[n++] = f->sold;
    f->charge_count = sale->charge_count;
    for (size_t i = 0; i < sale->charge_count; i++) {
        f->charges[i] = charge_amount(c, f, costs, i, "charge");
        terms[n++] = f->charges[i];
    }
    if (sale->delivery.given) {
        f->delivery = charge_amount(c, f, costs, sale->charge_count, "delivery");
        terms[n++] = f->delivery;
    }
    f->subtotal = fig_sum(c->tape, "before tax", UNIT_MONEY, terms, n);
}

/* The amount that tax is on; none for no tax. */
static fig taxable(const struct calc *c, const struct sale_figures *f, const struct build_up *job) {
    fig base = {0};
    switch ((enum tax_on)c->job->sale.tax_on.choice) {
    case TAX_ON_SELLING_PRICE:
        if (fig_none(f->delivery) || c->job->sale.tax_delivery.choice) {
            return f->subtotal;
        }
        return fig_plus(c->tape, "taxed", f->subtotal, fig_minus(f->delivery));
    case TAX_ON_MATERIALS_SOLD:
        if (tape_amount(c->tape, job->direct) > 0) {
            base = fig_ratio(c->tape, "materials at selling price", UNIT_MONEY,
                             (figs){{f->sold, job->materials}}, (figs){{job->direct}});
        }
        break;
    case TAX_ON_MATERIALS_COST:
        base = job->materials;
        break;
    case TAX_ON_NOTHING:
        return (fig){0};
    }
    if (!fig_none(base) && !fig_none(f->delivery) && c->job->sale.tax_delivery.choice) {
        return fig_plus(c->tape, "taxed", base, f->delivery);
    }
    return base;
}

static void add_tax(const struct calc *c, struct sale_figures *f, const struct build_up *job) {
    f->total = f->subtotal;
    const bool exempt = text_or_empty(c->job->sale.exempt.s)[0] != '\0';
    if (!c->job->sale.tax.set || exempt) {
        return;
    }
    f->taxable = taxable(c, f, job);
    if (fig_none(f->taxable)) {
        return;
    }
    f->tax_rate = calc_given(c, "tax, percent", &c->job->sale.tax);
    f->tax = percent_of(c, "tax", f->taxable, f->tax_rate);
    f->total = fig_plus(c->tape, c->job->sale.card_fee.set ? SALE_BEFORE_FEE : "total", f->subtotal,
                        f->tax);
}

/* Paying by card costs a part of the total, or of all that the card takes, which is the total with
 * the fee: fee = total x rate / (100 - rate). */
static void add_card_fee(const struct calc *c, struct sale_figures *f) {
    if (!c->job->sale.card_fee.set) {
        return;
    }
    f->card_rate = calc_given(c, "card fee, percent", &c->job->sale.card_fee);
    f->before_fee = f->total;
    if (c->job->sale.card_fee_of.choice == CARD_FEE_OF_PAID) {
        const fig left = fig_plus(c->tape, "left of what the card takes, percent",
                                  c->units->hundred, fig_minus(f->card_rate));
        f->card_fee = fig_ratio(c->tape, "card fee", UNIT_MONEY, (figs){{f->total, f->card_rate}},
                                (figs){{left}});
    } else {
        f->card_fee = percent_of(c, "card fee", f->total, f->card_rate);
    }
    f->total = fig_plus(c->tape, "total", f->total, f->card_fee);
}

static void add_payments(const struct calc *c, struct sale_figures *f, fig *terms) {
    size_t n = 0;
    terms[n++] = f->total;
    if (c->job->sale.deposit.set) {
        f->deposit_rate = calc_given(c, "deposit, percent", &c->job->sale.deposit);
        f->deposit = percent_of(c, "deposit", f->total, f->deposit_rate);
        terms[n++] = fig_minus(f->deposit);
    }
    f->stage_count = c->job->sale.stage_count;
    for (size_t i = 0; i < f->stage_count; i++) {
        f->stage_rates[i] = calc_given(c, "stage, percent", &c->job->sale.stages[i].value);
        f->stages[i] = percent_of(c, "stage", f->total, f->stage_rates[i]);
        terms[n++] = fig_minus(f->stages[i]);
    }
    f->balance = fig_sum(c->tape, "balance", UNIT_MONEY, terms, n);
}

/* What is left of the doors, and of the charges whose cost is known because an operation does them.
 * terms: room for two figures a charge, and four. */
static void look_back(const struct calc *c, struct sale_figures *f, const struct costs *costs,
                      fig *terms) {
    size_t n = 0;
    fig income = f->sold;
    fig *const incomes = terms + charge_count(c->job) + 2;
    terms[n] = costs->job.full;
    incomes[n++] = f->sold;
    for (size_t i = 0; i < charge_count(c->job); i++) {
        if (!fig_none(costs->charges[i].full)) {
            terms[n] = costs->charges[i].full;
            incomes[n++] = sale_charged(f, i);
        }
    }
    f->worked_cost = costs->job.full;
    if (n > 1) {
        income =
            fig_sum(c->tape, "sold, with the charges that are worked for", UNIT_MONEY, incomes, n);
        f->worked_cost = fig_sum(c->tape, "cost, with that of these charges", UNIT_MONEY, terms, n);
    }
    f->worked = income;
    f->profit_left = fig_plus(c->tape, "profit left", income, fig_minus(f->worked_cost));
    if (tape_amount(c->tape, income) > 0) {
        f->margin_left = fig_ratio(c->tape, "margin left", UNIT_PERCENT,
                                   (figs){{f->profit_left, c->units->hundred}}, (figs){{income}});
    }
}

/* --- rooms --- */

static const char *room_name(const struct row *row) {
    return row->room.s == NULL ? "" : row->room.s;
}

struct placed {
    const char *room;
    size_t row, first; /* first: the first row of the same room */
};

static int by_name(const void *left, const void *right) {
    const struct placed *const a = left;
    const struct placed *const b = right;
    const int order = text_order(a->room, b->room);
    return order != 0 ? order : order_by_number((int64_t)a->row, (int64_t)b->row);
}

static int by_first(const void *left, const void *right) {
    const struct placed *const a = left;
    const struct placed *const b = right;
    const int order = order_by_number((int64_t)a->first, (int64_t)b->first);
    return order != 0 ? order : order_by_number((int64_t)a->row, (int64_t)b->row);
}

/* Finds the rooms. Sorted, because lists may be long. false: out of memory. */
static bool find_rooms(const struct calc *c, struct sale_figures *f) {
    const struct quantities *const q = c->quantities;
    struct placed *const list = calloc(q->count + 1, sizeof *list);
    f->rooms = pool_take(c->pool, q->count, sizeof *f->rooms);
    f->by_room = pool_take(c->pool, q->count, sizeof *f->by_room);
    if (list == NULL || pool_failed(c->pool)) {
        free(list);
        return false;
    }
    for (size_t r = 0; r < q->count; r++) {
        list[r] = (struct placed){.room = room_name(q->leaves[r].door->row), .row = r};
    }
    qsort(list, q->count, sizeof *list, by_name);
    for (size_t i = 0; i < q->count; i++) {
        const bool same = i > 0 && text_same(list[i - 1].room, list[i].room);
        list[i].first = same ? list[i - 1].first : list[i].row;
    }
    qsort(list, q->count, sizeof *list, by_first);
    for (size_t i = 0; i < q->count; i++) {
        f->by_room[i] = list[i].row;
        if (list[i].row == list[i].first) {
            f->rooms[f->room_count++] = (struct room_sum){.room = list[i].room, .first = i};
        }
        f->rooms[f->room_count - 1].count++;
    }
    free(list);
    return true;
}

/* false: out of memory. */
static bool sum_rooms(const struct calc *c, struct sale_figures *f,
                      const struct door_price *doors) {
    const size_t rows = c->quantities->count;
    fig *const leaves = pool_take(c->pool, rows, sizeof *leaves);
    fig *const amounts = pool_take(c->pool, rows, sizeof *amounts);
    if (pool_failed(c->pool) || !find_rooms(c, f)) {
        return false;
    }
    for (size_t i = 0; i < f->room_count; i++) {
        struct room_sum *const room = &f->rooms[i];
        for (size_t n = 0; n < room->count; n++) {
            const size_t r = f->by_room[room->first + n];
            leaves[n] = c->quantities->pieces[r];
            amounts[n] = doors[r].amount;
        }
        tape_about(c->tape, room->room);
        room->leaves =
            fig_sum(c->tape, "doors and fronts of a room", UNIT_COUNT, leaves, room->count);
        room->amount = fig_sum(c->tape, "amount of a room", UNIT_MONEY, amounts, room->count);
    }
    tape_about_job(c->tape);
    return true;
}

bool sale_make(struct sale_figures *f, const struct calc *c, const struct costs *costs) {
    const struct sale *const sale = &c->job->sale;
    fig *const terms =
        pool_take(c->pool, 2 * sale->charge_count + sale->stage_count + 8, sizeof(fig));
    *f = (struct sale_figures){
        .charges = pool_take(c->pool, sale->charge_count, sizeof(fig)),
        .stages = pool_take(c->pool, sale->stage_count, sizeof(fig)),
        .stage_rates = pool_take(c->pool, sale->stage_count, sizeof(fig)),
    };
    if (pool_failed(c->pool)) {
        return false;
    }
    tape_about_job(c->tape);
    sell(c, f, costs->doors_total);
    add_charges(c, f, costs, terms);
    add_tax(c, f, &costs->job);
    add_card_fee(c, f);
    add_payments(c, f, terms);
    look_back(c, f, costs, terms);
    return sum_rooms(c, f, costs->doors);
}

fig sale_charged(const struct sale_figures *f, size_t index) {
    return index < f->charge_count ? f->charges[index] : f->delivery;
}

bool sale_asked(const struct tape *tape, fig percent) {
    return !fig_none(percent) && tape_amount(tape, percent) != 0;
}
