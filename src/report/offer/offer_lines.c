/* SPDX-License-Identifier: MIT */
/* The price of an offer: the figures of the sale under the client's words.  Where tax is on
 * materials, neither the amount that it is on nor its percent is said: both would tell what the
 * materials cost. */
#include "report/offer/offer_parts.h"
#include "report/words/show.h"

#include <stdio.h>
#include <string.h>

/* --- money as text --- */

/* Puts a comma between thousands. */
static const char *separate(struct pool *pool, const char *plain, const char *sign) {
    const size_t whole = strcspn(plain, ".");
    char *const text = pool_take(pool, 2 * strlen(plain) + 4, 1);
    size_t used = 0;
    if (text == NULL) {
        return "";
    }
    for (; *sign != '\0'; sign++) {
        text[used++] = *sign;
    }
    for (size_t i = 0; plain[i] != '\0'; i++) {
        if (i > 0 && i < whole && (whole - i) % 3 == 0) {
            text[used++] = ',';
        }
        text[used++] = plain[i];
    }
    return text;
}

const char *offer_money_of(struct offer *offer, const struct estimate *e, fig amount, bool less) {
    const struct shown shown = show_money(e, amount);
    const bool minus = shown.text[0] == '-' && shown.text[1] != '\0';
    return separate(&offer->pool, shown.text + (minus ? 1 : 0), minus != less ? "-" : "");
}

const char *offer_money(struct offer *offer, fig amount, bool less) {
    return offer_money_of(offer, offer->e, amount, less);
}

const char *offer_hundredths(struct offer *offer, int64_t amount, bool plus) {
    const int64_t size = amount < 0 ? -amount : amount;
    return separate(&offer->pool, show_number(size, 2).text,
                    amount < 0 ? "-" : (plus && amount > 0 ? "+" : ""));
}

const char *offer_percent(struct offer *offer, fig percent) {
    return offer_or_nothing(pool_format(&offer->pool, "%s %%", show(offer->e, percent).text));
}

/* --- lines --- */

static void add_line(struct offer *offer, struct offer_line line) {
    if (!fig_none(line.amount)) {
        offer->lines[offer->line_count++] = line;
    }
}

static void sell(struct offer *o) {
    const struct sale_figures *const s = &o->e->sale;
    const struct sale *const given = &o->e->job->sale;
    add_line(o, (struct offer_line){
                    .kind = OFFER_DOORS, .label = "Doors and fronts", .amount = s->doors});
    if (sale_asked(&o->e->tape, s->discount_rate)) {
        add_line(o, (struct offer_line){.kind = OFFER_DISCOUNT,
                                        .label = "Less discount",
                                        .percent = s->discount_rate,
                                        .amount = s->discount,
                                        .less = true});
        add_line(o, (struct offer_line){.kind = OFFER_AFTER,
                                        .label = "After discount",
                                        .amount = s->after_discount});
    }
    if (!fig_none(s->minimum_line) && tape_amount(&o->e->tape, s->minimum_line) > 0) {
        add_line(o, (struct offer_line){.kind = OFFER_MINIMUM,
                                        .label = "Up to the least that a job is done for",
                                        .amount = s->minimum_line});
    }
    for (size_t i = 0; i < s->charge_count; i++) {
        const char *const name = given->charges[i].name.s;
        add_line(
            o, (struct offer_line){.kind = OFFER_CHARGE,
                                   .label = name == NULL ? "Other charge" : offer_capital(o, name),
                                   .amount = s->charges[i]});
    }
    add_line(
        o, (struct offer_line){.kind = OFFER_DELIVERY, .label = "Delivery", .amount = s->delivery});
}

static void tax(struct offer *o) {
    const struct sale_figures *const s = &o->e->sale;
    const struct sale *const given = &o->e->job->sale;
    const char *const name = given->tax_name.s == NULL ? "tax" : given->tax_name.s;
    const char *const head = offer_capital(o, name);
    if (!sale_asked(&o->e->tape, s->tax_rate)) {
        return;
    }
    const bool on_price = given->tax_on.choice == TAX_ON_SELLING_PRICE;
    const struct offer_line before = {
        .kind = OFFER_BEFORE_TAX,
        .label = offer_or_nothing(pool_format(&o->pool, "Before %s", name)),
        .amount = s->subtotal,
    };
    const struct offer_line taxed = {
        .kind = OFFER_TAXED,
        .label = "(of this taxed: all but delivery)",
        .amount = s->taxable,
    };
    const struct offer_line line = {
        .kind = OFFER_TAX,
        .label = on_price ? head : offer_or_nothing(pool_format(&o->pool, "%s on materials", head)),
        .percent = on_price ? s->tax_rate : (fig){0},
        .amount = s->tax,
    };
    add_line(o, before);
    if (on_price && s->taxable.id != s->subtotal.id) {
        add_line(o, taxed);
    }
    add_line(o, line);
}

static void card_fee(struct offer *o) {
    const struct sale_figures *const s = &o->e->sale;
    if (!sale_asked(&o->e->tape, s->card_rate)) {
        return;
    }
    const struct offer_line before = {
        .kind = OFFER_BEFORE_CARD,
        .label = "In all, not paid by card",
        .amount = s->before_fee,
    };
    const struct offer_line line = {
        .kind = OFFER_CARD,
        .label = "Card fee",
        .percent = s->card_rate,
        .amount = s->card_fee,
    };
    add_line(o, before);
    add_line(o, line);
}

static void total(struct offer *o) {
    const char *const exempt = o->e->job->sale.exempt.s;
    const char *const what = o->estimate ? "Estimated total" : "Total";
    const char *label = pool_format(&o->pool, "%s, %s", what, o->currency);
    if (fig_none(o->e->sale.tax) && exempt != NULL && exempt[0] != '\0') {
        label = pool_format(&o->pool, "%s, %s; no tax: exempt, certificate %s", what, o->currency,
                            exempt);
    }
    add_line(o, (struct offer_line){.kind = OFFER_TOTAL,
                                    .label = offer_or_nothing(label),
                                    .amount = o->e->sale.total});
}

/* --- payments --- */

static void add_payment(struct offer *offer, enum offer_line_kind kind, const char *label,
                        fig percent, fig amount) {
    offer->payments[offer->payment_count++] = (struct offer_line){
        .kind = kind, .label = offer_or_nothing(label), .percent = percent, .amount = amount};
}

static void pay(struct offer *o) {
    const struct sale_figures *const s = &o->e->sale;
    const struct sale *const given = &o->e->job->sale;
    if (sale_asked(&o->e->tape, s->deposit_rate)) {
        add_payment(o, OFFER_DEPOSIT, "Deposit, on order", s->deposit_rate, s->deposit);
    }
    for (size_t i = 0; i < s->stage_count; i++) {
        const char *const name = given->stages[i].name.s;
        add_payment(o, OFFER_STAGE,
                    name == NULL ? "As work goes on" : pool_format(&o->pool, "When %s", name),
                    s->stage_rates[i], s->stages[i]);
    }
    const bool parted = o->payment_count > 0;
    add_payment(o, OFFER_BALANCE, parted ? "Balance, on delivery" : "Due on delivery", (fig){0},
                s->balance);
    o->payments_head = o->estimate ? "What would fall due, were it ordered at this price" : "";
    o->other_payer = "";
    if (sale_asked(&o->e->tape, s->card_rate)) {
        o->other_payer = offer_or_nothing(pool_format(
            &o->pool, "The total%s the card fee. Who pays otherwise owes %s %s in all%s.",
            parted ? " and the payments include" : " includes",
            offer_money(o, s->before_fee, false), o->currency,
            parted ? ", and the same percentages of that" : ""));
    }
}

/* --- the head of the paper --- */

static void head(struct offer *o) {
    const struct sale_figures *const s = &o->e->sale;
    const char *const named = o->e->job->sale.tax_name.s;
    const char *const tax_name = named == NULL ? "tax" : named;
    const bool taxed = sale_asked(&o->e->tape, s->tax_rate);
    const bool card = sale_asked(&o->e->tape, s->card_rate);
    const bool deposit = sale_asked(&o->e->tape, s->deposit_rate);
    o->total_words = offer_or_nothing(
        pool_format(&o->pool, "%s %s", offer_money(o, s->total, false), o->currency));
    o->total_label = offer_or_nothing(
        pool_format(&o->pool, "%s%s%s%s%s%s", o->estimate ? "Estimated total" : "Total",
                    taxed || card ? ", " : "", taxed ? tax_name : "", taxed && card ? " and " : "",
                    card ? "card fee" : "", taxed || card ? " included" : ""));
    if (o->estimate) {
        o->pay_label = "To order";
        o->pay_words = "please ask for a quote";
        return;
    }
    o->pay_label = deposit ? "Deposit, on order" : "Due";
    o->pay_words = offer_or_nothing(
        deposit ? pool_format(&o->pool, "%s %s (%s)", offer_money(o, s->deposit, false),
                              o->currency, offer_percent(o, s->deposit_rate))
                : pool_format(&o->pool, "%s %s on delivery", offer_money(o, s->balance, false),
                              o->currency));
}

bool offer_price(struct offer *o) {
    const struct sale_figures *const s = &o->e->sale;
    o->lines = pool_take(&o->pool, s->charge_count + 12, sizeof *o->lines);
    o->payments = pool_take(&o->pool, s->stage_count + 3, sizeof *o->payments);
    if (o->lines == NULL || o->payments == NULL) {
        return false;
    }
    sell(o);
    tax(o);
    card_fee(o);
    total(o);
    pay(o);
    head(o);
    return !pool_failed(&o->pool);
}
