/* SPDX-License-Identifier: MIT */
#include "price/sale.h"

#include "base/text.h"

#include <stdlib.h>

struct counter {
    struct sale_figures *f;
    struct tape *tape;
    const struct measures *m;
    const struct sale *sale;
    const struct costs *costs;
    fig *terms; /* room for charges and a few more, stages and a few more */
};

static fig percent_of(const struct counter *c, const char *what, fig base, fig percent) {
    return fig_ratio(c->tape, what, UNIT_MONEY, (figs){{base, percent}}, (figs){{c->m->hundred}});
}

static void sell(const struct counter *c, const struct shop *shop) {
    struct sale_figures *const f = c->f;
    f->doors = c->costs->doors_total;
    f->after_discount = f->doors;
    if (c->sale->discount.set) {
        f->discount_rate = measures_given(c->tape, c->m, "discount, percent", &c->sale->discount);
        f->discount = percent_of(c, "discount", f->doors, f->discount_rate);
        f->after_discount = fig_plus(c->tape, "after discount", f->doors, fig_minus(f->discount));
    }
    f->sold = f->after_discount;
    if (shop->minimum_job.set) {
        const fig least = measures_given(c->tape, c->m, "minimum job", &shop->minimum_job);
        const fig nothing = tape_constant(c->tape, "no money", UNIT_MONEY, 0, 0, "by definition");
        const fig missing =
            fig_plus(c->tape, "missing to the minimum", least, fig_minus(f->after_discount));
        f->minimum_line = fig_larger(c->tape, "job minimum", missing, nothing);
        f->sold = fig_plus(c->tape, "sold", f->after_discount, f->minimum_line);
    }
}

static void add_charges(const struct counter *c) {
    struct sale_figures *const f = c->f;
    size_t n = 0;
    c->terms[n++] = f->sold;
    for (size_t i = 0; i < c->sale->charge_count; i++) {
        f->charges[i] = measures_given(c->tape, c->m, "charge", &c->sale->charges[i].value);
        c->terms[n++] = f->charges[i];
    }
    f->charge_count = c->sale->charge_count;
    f->delivery = measures_given(c->tape, c->m, "delivery", &c->sale->delivery);
    c->terms[n++] = f->delivery;
    f->subtotal = fig_sum(c->tape, "before tax", UNIT_MONEY, c->terms, n);
}

/* The amount that tax is on; none for no tax. */
static fig taxable(const struct counter *c) {
    const struct sale_figures *const f = c->f;
    const struct build_up *const job = &c->costs->job;
    fig base = {0};
    switch ((enum tax_on)c->sale->tax_on.choice) {
    case TAX_ON_SELLING_PRICE:
        if (fig_none(f->delivery) || c->sale->tax_delivery.choice) {
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
    if (!fig_none(base) && !fig_none(f->delivery) && c->sale->tax_delivery.choice) {
        return fig_plus(c->tape, "taxed", base, f->delivery);
    }
    return base;
}

static void add_tax(const struct counter *c) {
    struct sale_figures *const f = c->f;
    f->total = f->subtotal;
    const bool exempt = c->sale->exempt.s != NULL && c->sale->exempt.s[0] != '\0';
    if (!c->sale->tax.set || exempt) {
        return;
    }
    f->taxable = taxable(c);
    if (fig_none(f->taxable)) {
        return;
    }
    f->tax_rate = measures_given(c->tape, c->m, "tax, percent", &c->sale->tax);
    f->tax = percent_of(c, "tax", f->taxable, f->tax_rate);
    f->total = fig_plus(c->tape, "total", f->subtotal, f->tax);
}

/* Paying by card costs a part of all that is paid. */
static void add_card_fee(const struct counter *c) {
    struct sale_figures *const f = c->f;
    if (!c->sale->card_fee.set) {
        return;
    }
    f->card_rate = measures_given(c->tape, c->m, "card fee, percent", &c->sale->card_fee);
    f->before_fee = f->total;
    f->card_fee = percent_of(c, "card fee", f->total, f->card_rate);
    f->total = fig_plus(c->tape, "total with card fee", f->total, f->card_fee);
}

static void add_payments(const struct counter *c) {
    struct sale_figures *const f = c->f;
    size_t n = 0;
    c->terms[n++] = f->total;
    if (c->sale->deposit.set) {
        f->deposit_rate = measures_given(c->tape, c->m, "deposit, percent", &c->sale->deposit);
        f->deposit = percent_of(c, "deposit", f->total, f->deposit_rate);
        c->terms[n++] = fig_minus(f->deposit);
    }
    f->stage_count = c->sale->stage_count;
    for (size_t i = 0; i < f->stage_count; i++) {
        f->stage_rates[i] =
            measures_given(c->tape, c->m, "stage, percent", &c->sale->stages[i].value);
        f->stages[i] = percent_of(c, "stage", f->total, f->stage_rates[i]);
        c->terms[n++] = fig_minus(f->stages[i]);
    }
    f->balance = fig_sum(c->tape, "balance", UNIT_MONEY, c->terms, n);
}

static void look_back(const struct counter *c) {
    struct sale_figures *const f = c->f;
    f->profit_left = fig_plus(c->tape, "profit left", f->sold, fig_minus(c->costs->job.full));
    if (tape_amount(c->tape, f->sold) > 0) {
        f->margin_left = fig_ratio(c->tape, "margin left", UNIT_PERCENT,
                                   (figs){{f->profit_left, c->m->hundred}}, (figs){{f->sold}});
    }
}

bool sale_make(struct sale_figures *figures, struct pool *pool, struct tape *tape,
               const struct measures *measures, const struct rates *rates, const struct sale *sale,
               const struct costs *costs) {
    *figures = (struct sale_figures){0};
    const struct counter c = {
        .f = figures,
        .tape = tape,
        .m = measures,
        .sale = sale,
        .costs = costs,
        .terms = pool_take(pool, sale->charge_count + sale->stage_count + 4, sizeof(fig)),
    };
    figures->charges = pool_take(pool, sale->charge_count, sizeof(fig));
    figures->stages = pool_take(pool, sale->stage_count, sizeof(fig));
    figures->stage_rates = pool_take(pool, sale->stage_count, sizeof(fig));
    if (pool_failed(pool)) {
        return false;
    }
    tape_about_again(tape, 0);
    sell(&c, &rates->shop);
    add_charges(&c);
    add_tax(&c);
    add_card_fee(&c);
    add_payments(&c);
    look_back(&c);
    return true;
}

bool sale_asked(const struct tape *tape, fig percent) {
    return !fig_none(percent) && tape_amount(tape, percent) != 0;
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
    return order != 0 ? order : (a->row < b->row ? -1 : (a->row > b->row ? 1 : 0));
}

static int by_first(const void *left, const void *right) {
    const struct placed *const a = left;
    const struct placed *const b = right;
    if (a->first != b->first) {
        return a->first < b->first ? -1 : 1;
    }
    return a->row < b->row ? -1 : (a->row > b->row ? 1 : 0);
}

/* Finds the rooms. Sorted, because lists may be long. */
static bool find_rooms(struct sale_figures *f, struct pool *pool, const struct quantities *q) {
    struct placed *const list = calloc(q->count + 1, sizeof *list);
    f->rooms = pool_take(pool, q->count, sizeof *f->rooms);
    f->by_room = pool_take(pool, q->count, sizeof *f->by_room);
    if (list == NULL || pool_failed(pool)) {
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

bool sale_rooms(struct sale_figures *f, struct pool *pool, struct tape *tape,
                const struct quantities *quantities, const struct costs *costs) {
    const size_t rows = quantities->count;
    fig *const leaves = pool_take(pool, rows, sizeof *leaves);
    fig *const amounts = pool_take(pool, rows, sizeof *amounts);
    if (pool_failed(pool) || !find_rooms(f, pool, quantities)) {
        return false;
    }
    for (size_t i = 0; i < f->room_count; i++) {
        struct room_sum *const room = &f->rooms[i];
        for (size_t n = 0; n < room->count; n++) {
            const size_t r = f->by_room[room->first + n];
            leaves[n] = quantities->leaves[r].pieces;
            amounts[n] = costs->doors[r].amount;
        }
        tape_about(tape, room->room);
        room->leaves = fig_sum(tape, "doors and fronts of a room", UNIT_COUNT, leaves, room->count);
        room->amount = fig_sum(tape, "amount of a room", UNIT_MONEY, amounts, room->count);
    }
    tape_about_again(tape, 0);
    return true;
}
