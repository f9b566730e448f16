/* SPDX-License-Identifier: MIT */
/* The price of an offer: the figures of the sale under the client's words.  Where tax is on
 * materials, neither the amount that it is on nor its percent is said: both would tell what the
 * materials cost. */
#include "base/text.h"
#include "report/offer_make/offer_maker.h"

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

/* --- to the total --- */

static void add_line(struct offer_maker *m, enum offer_line_kind kind, const char *label,
                     fig percent, fig amount) {
    if (!fig_none(amount)) {
        m->offer->lines[m->offer->line_count++] = make_line(m, kind, label, percent, amount);
    }
}

static void sell(struct offer_maker *m) {
    const struct sale_figures *const s = &m->e->sale;
    const struct sale *const given = &m->e->job->sale;
    add_line(m, OFFER_DOORS, "Doors and fronts", no_percent, s->doors);
    if (sale_asked(&m->e->tape, s->discount_rate)) {
        add_line(m, OFFER_DISCOUNT, "Less discount", s->discount_rate, s->discount);
        add_line(m, OFFER_AFTER, "After discount", no_percent, s->after_discount);
    }
    if (!fig_none(s->minimum_line) && tape_amount(&m->e->tape, s->minimum_line) > 0) {
        add_line(m, OFFER_MINIMUM, "Up to the least that a job is done for", no_percent,
                 s->minimum_line);
    }
    for (size_t i = 0; i < s->charge_count; i++) {
        const char *const name = given->charges[i].name.s;
        add_line(m, OFFER_CHARGE, name == NULL ? "Other charge" : offer_capital(m, name),
                 no_percent, s->charges[i]);
    }
    add_line(m, OFFER_DELIVERY, "Delivery", no_percent, s->delivery);
}

static const char *tax_name(const struct offer_maker *m) {
    const char *const named = m->e->job->sale.tax_name.s;
    return named == NULL ? "tax" : named;
}

static void tax(struct offer_maker *m) {
    const struct sale_figures *const s = &m->e->sale;
    const bool on_price = m->e->job->sale.tax_on.choice == TAX_ON_SELLING_PRICE;
    const char *const head = offer_capital(m, tax_name(m));
    if (!sale_asked(&m->e->tape, s->tax_rate)) {
        return;
    }
    add_line(m, OFFER_BEFORE_TAX, pool_words(m->pool, "Before %s", tax_name(m)), no_percent,
             s->subtotal);
    if (!on_price) {
        add_line(m, OFFER_TAX, pool_words(m->pool, "%s on materials", head), no_percent, s->tax);
        return;
    }
    if (s->taxable.id != s->subtotal.id) {
        add_line(m, OFFER_TAXED, "(of this taxed: all but delivery)", no_percent, s->taxable);
    }
    add_line(m, OFFER_TAX, head, s->tax_rate, s->tax);
}

static void card_fee(struct offer_maker *m) {
    const struct sale_figures *const s = &m->e->sale;
    if (sale_asked(&m->e->tape, s->card_rate)) {
        const bool of_paid = m->e->job->sale.card_fee_of.choice == CARD_FEE_OF_PAID;
        add_line(m, OFFER_BEFORE_CARD, "In all, not paid by card", no_percent, s->before_fee);
        add_line(m, of_paid ? OFFER_CARD_OF_PAID : OFFER_CARD,
                 of_paid ? "Card fee, of what the card takes" : "Card fee", s->card_rate,
                 s->card_fee);
    }
}

static void total(struct offer_maker *m) {
    const char *const exempt = text_or_empty(m->e->job->sale.exempt.s);
    const char *const what = m->offer->estimate ? "Estimated total" : "Total";
    const bool untaxed = fig_none(m->e->sale.tax) && exempt[0] != '\0';
    const char *const label = untaxed
                                  ? pool_words(m->pool, "%s, %s; no tax: exempt, certificate %s",
                                               what, m->offer->currency, exempt)
                                  : pool_words(m->pool, "%s, %s", what, m->offer->currency);
    add_line(m, OFFER_TOTAL, label, no_percent, m->e->sale.total);
}

/* --- payments --- */

static void add_payment(struct offer_maker *m, enum offer_line_kind kind, const char *label,
                        fig percent, fig amount) {
    m->offer->payments[m->offer->payment_count++] = make_line(m, kind, label, percent, amount);
}

static void pay(struct offer_maker *m) {
    const struct sale_figures *const s = &m->e->sale;
    struct offer *const o = m->offer;
    const struct sale *const given = &m->e->job->sale;
    if (sale_asked(&m->e->tape, s->deposit_rate)) {
        add_payment(m, OFFER_DEPOSIT, "Deposit, on order", s->deposit_rate, s->deposit);
    }
    for (size_t i = 0; i < s->stage_count; i++) {
        const char *const name = given->stages[i].name.s;
        add_payment(m, OFFER_STAGE,
                    name == NULL ? "As work goes on" : pool_words(m->pool, "When %s", name),
                    s->stage_rates[i], s->stages[i]);
    }
    const bool parted = o->payment_count > 0;
    add_payment(m, OFFER_BALANCE, parted ? "Balance, on delivery" : "Due on delivery", no_percent,
                s->balance);
    o->payments_head = o->estimate ? "What would fall due, were it ordered at this price" : "";
    o->other_payer = "";
    if (sale_asked(&m->e->tape, s->card_rate)) {
        o->other_payer =
            pool_words(m->pool, "The total%s the card fee. Who pays otherwise owes %s %s in all%s.",
                       parted ? " and the payments include" : " includes",
                       offer_money(m, m->e, s->before_fee, false), o->currency,
                       parted ? ", and the same percentages of that" : "");
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
                                taxed || card ? ", " : "", taxed ? tax_name(m) : "",
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
    const struct sale_figures *const s = &m->e->sale;
    struct offer *const o = m->offer;
    o->lines = pool_take(m->pool, s->charge_count + 12, sizeof *o->lines);
    o->payments = pool_take(m->pool, s->stage_count + 3, sizeof *o->payments);
    if (o->lines == NULL || o->payments == NULL) {
        return false;
    }
    sell(m);
    tax(m);
    card_fee(m);
    total(m);
    pay(m);
    head(m);
    return !pool_failed(m->pool);
}
