/* SPDX-License-Identifier: MIT */
/* The price of an offer: the figures of the sale under the client's words.  Where tax is on
 * materials, neither the amount that it is on nor its percent is said: both would tell what the
 * materials cost. */
#include "base/text.h"
#include "report/offer_make/offer_maker.h"
#include "report/words/sale_line.h"

static const fig no_percent = {0};

/* A line of the offer; percent: that makes the amount, none where nothing does. */
static struct offer_line make_line(struct offer_maker *m, enum offer_line_kind kind,
                                   const char *label, fig percent, fig amount) {
    struct offer_line line = {.kind = kind, .label = label, .words = label};
    line.amount = kind == OFFER_DISCOUNT ? offer_amount_less(m, amount) : offer_amount(m, amount);
    if (!fig_none(percent)) {
        line.by_percent = true;
        line.percent = offer_amount(m, percent);
        line.words = pool_words(m->pool, "%s, %s", label, offer_percent(m, percent));
    }
    return line;
}

/* What each line of the sale is to the client's papers. */
static const struct {
    size_t offset;
    enum offer_line_kind kind;
} kinds[] = {
    {offsetof(struct sale_figures, doors), OFFER_DOORS},
    {offsetof(struct sale_figures, discount), OFFER_DISCOUNT},
    {offsetof(struct sale_figures, after_discount), OFFER_AFTER},
    {offsetof(struct sale_figures, minimum_line), OFFER_MINIMUM},
    {offsetof(struct sale_figures, delivery), OFFER_DELIVERY},
    {offsetof(struct sale_figures, subtotal), OFFER_BEFORE_TAX},
    {offsetof(struct sale_figures, taxable), OFFER_TAXED},
    {offsetof(struct sale_figures, tax), OFFER_TAX},
    {offsetof(struct sale_figures, before_fee), OFFER_BEFORE_CARD},
    {offsetof(struct sale_figures, total), OFFER_TOTAL},
    {offsetof(struct sale_figures, deposit), OFFER_DEPOSIT},
    {offsetof(struct sale_figures, balance), OFFER_BALANCE},
};

static enum offer_line_kind kind_of(const struct job *job, const struct sale_line *line) {
    if (sale_line_is(line, offsetof(struct sale_figures, card_fee))) {
        return job->sale.card_fee_of.choice == CARD_FEE_OF_PAID ? OFFER_CARD_OF_PAID : OFFER_CARD;
    }
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        if (sale_line_is(line, kinds[i].offset)) {
            return kinds[i].kind;
        }
    }
    return line->payment ? OFFER_STAGE : OFFER_CHARGE;
}

static const char *total_label(struct offer_maker *m, const struct sale_line *line) {
    const char *const exempt = sale_exempt(m->pool, m->e);
    return pool_words(m->pool, "%s%s%s%s", m->offer->estimate ? "Estimated " : "",
                      m->offer->estimate ? line->label : offer_capital(m, line->label),
                      exempt == NULL ? "" : "; ", text_or_empty(exempt));
}

/* A line as the client reads it; false: it is not for the client. */
static bool client_line(struct offer_maker *m, const struct sale_line *line,
                        struct offer_line *made) {
    const enum offer_line_kind kind = kind_of(m->e->job, line);
    const bool on_materials = m->e->job->sale.tax_on.choice != TAX_ON_SELLING_PRICE;
    if (!line->asked || (kind == OFFER_TAXED && on_materials)) {
        return false;
    }
    const char *const label = offer_capital(m, line->label);
    if (kind == OFFER_TAX && on_materials) {
        *made = make_line(m, kind, pool_words(m->pool, "%s on materials", label), no_percent,
                          line->money);
    } else {
        *made = make_line(m, kind, kind == OFFER_TOTAL ? total_label(m, line) : label, line->rate,
                          line->money);
    }
    return true;
}

/* The lines to the total, and the payments. */
static void sell(struct offer_maker *m, const struct sale_lines *sale) {
    struct offer *const o = m->offer;
    for (size_t i = 0; i < sale->count; i++) {
        const struct sale_line *const line = &sale->lines[i];
        struct offer_line made;
        if (!client_line(m, line, &made)) {
            continue;
        }
        if (line->payment) {
            o->payments[o->payment_count++] = made;
        } else {
            o->lines[o->line_count++] = made;
        }
    }
}

static void pay(struct offer_maker *m) {
    const struct sale_figures *const s = &m->e->sale;
    struct offer *const o = m->offer;
    const bool parted = o->payment_count > 0;
    const char *const how = m->e->rates->shop.payment.s;
    if (!parted) {
        o->payments[o->payment_count++] =
            make_line(m, OFFER_BALANCE, "Due on delivery", no_percent, s->balance);
    }
    o->payments_head = o->estimate ? "What would fall due, were it ordered at this price" : "";
    if (sale_asked(&m->e->tape, s->card_rate)) {
        offer_add(&o->pay_notes,
                  pool_words(m->pool,
                             "The total%s the card fee. Who pays otherwise owes %s %s in all%s.",
                             parted ? " and the payments include" : " includes",
                             offer_money(m, m->e, s->before_fee, false), o->currency,
                             parted ? ", and the same percentages of that" : ""));
    }
    if (how != NULL) {
        offer_add(&o->pay_notes, pool_words(m->pool, "How to pay: %s.", how));
    }
}

/* --- the head of the paper --- */

static void head(struct offer_maker *m) {
    const struct sale_figures *const s = &m->e->sale;
    struct offer *const o = m->offer;
    const bool taxed = sale_asked(&m->e->tape, s->tax_rate);
    const bool card = sale_asked(&m->e->tape, s->card_rate);
    const bool deposit = sale_asked(&m->e->tape, s->deposit_rate);
    o->total_words =
        pool_words(m->pool, "%s %s", offer_money(m, m->e, s->total, false), o->currency);
    o->total_label = pool_words(m->pool, "%s%s%s%s%s%s", o->estimate ? "Estimated total" : "Total",
                                taxed || card ? ", " : "", taxed ? sale_tax_name(m->e->job) : "",
                                taxed && card ? " and " : "", card ? "card fee" : "",
                                taxed || card ? " included" : "");
    o->other_total = card ? pool_words(m->pool, "not paid by card: %s %s",
                                       offer_money(m, m->e, s->before_fee, false), o->currency)
                          : "";
    if (o->estimate) {
        o->pay_label = "To order";
        o->pay_words = "please ask for a quote";
        return;
    }
    o->pay_label = deposit ? "Deposit, on order" : "Due";
    o->pay_words = deposit
                       ? pool_words(m->pool, "%s %s (%s)", offer_money(m, m->e, s->deposit, false),
                                    o->currency, offer_percent(m, s->deposit_rate))
                       : pool_words(m->pool, "%s %s on delivery",
                                    offer_money(m, m->e, s->balance, false), o->currency);
}

bool offer_price(struct offer_maker *m) {
    struct offer *const o = m->offer;
    const struct sale_lines sale = sale_lines_make(m->pool, m->e);
    o->lines = pool_take(m->pool, sale.count + 1, sizeof *o->lines);
    o->payments = pool_take(m->pool, sale.count + 1, sizeof *o->payments);
    if (o->lines == NULL || o->payments == NULL) {
        return false;
    }
    sell(m, &sale);
    pay(m);
    head(m);
    return !pool_failed(m->pool);
}
