/* SPDX-License-Identifier: MIT */
/* The price of an offer: the figures of the sale under the client's words.  Where tax is on
 * materials, neither the amount that it is on nor its percent is said: both would tell what the
 * materials cost. */
#include "report/offer_parts.h"
#include "report/show.h"

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

const char *offer_money(struct offer *offer, fig amount, bool less) {
    const struct shown shown = show_money(offer->e, amount);
    const bool minus = shown.text[0] == '-' && shown.text[1] != '\0';
    return separate(&offer->pool, shown.text + (minus ? 1 : 0), minus != less ? "-" : "");
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
    const bool on_price = given->tax_on.word == TAX_ON_SELLING_PRICE;
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

/* The sum that the fee is of is the first operand of the total. */
static void card_fee(struct offer *o) {
    const struct sale_figures *const s = &o->e->sale;
    if (!sale_asked(&o->e->tape, s->card_rate)) {
        return;
    }
    const struct offer_line before = {
        .kind = OFFER_BEFORE_CARD,
        .label = "Without card fee",
        .amount = tape_operand(&o->e->tape, s->total, 0).f,
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
    const char *label = pool_format(&o->pool, "Total, %s", o->currency);
    if (fig_none(o->e->sale.tax) && exempt != NULL && exempt[0] != '\0') {
        label =
            pool_format(&o->pool, "Total, %s; no tax: exempt, certificate %s", o->currency, exempt);
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
    o->total_words = offer_or_nothing(
        pool_format(&o->pool, "%s %s", offer_money(o, s->total, false), o->currency));
    o->pay_words = offer_or_nothing(
        !sale_asked(&o->e->tape, s->deposit_rate)
            ? pool_format(&o->pool, "%s %s on delivery", offer_money(o, s->balance, false),
                          o->currency)
            : pool_format(&o->pool, "%s %s (%s)", offer_money(o, s->deposit, false), o->currency,
                          offer_percent(o, s->deposit_rate)));
}

/* --- options --- */

/* What an option changes: `wood: hard maple; finish: clear, satin`. */
static const char *option_words(struct offer *o, const struct option *option) {
    const struct make *const c = &option->changes;
    const struct rates *const rates = o->e->rates;
    enum { STUFFS = 4 };
    const struct stuff_reference *const stuffs[STUFFS] = {&c->frame, &c->panel, &c->slab,
                                                          &c->glass};
    static const char *const names[STUFFS] = {"frames", "panels", "slabs", "glass"};
    const char *text = "";
    for (size_t i = 0; i < STUFFS; i++) {
        if (stuffs[i]->name.s != NULL && stuffs[i]->index >= 0) {
            text = offer_or_nothing(
                pool_format(&o->pool, "%s%s%s: %s", text, text[0] == '\0' ? "" : "; ", names[i],
                            offer_material(rates, stuffs[i]->kind, stuffs[i]->index)));
        }
    }
    if (c->style.name.s != NULL && c->style.index >= 0) {
        const struct style *const style = &rates->styles[c->style.index];
        text = offer_or_nothing(
            pool_format(&o->pool, "%s%sstyle: %s", text, text[0] == '\0' ? "" : "; ",
                        style->words.s != NULL ? style->words.s : style->name.s));
    }
    if (c->finish.name.s != NULL) {
        const struct finish *const finish =
            c->finish.index < 0 ? NULL : &rates->finishes[c->finish.index];
        const char *const words = finish == NULL            ? "none"
                                  : finish->words.s != NULL ? finish->words.s
                                                            : finish->name.s;
        text = offer_or_nothing(
            pool_format(&o->pool, "%s%sfinish: %s%s%s", text, text[0] == '\0' ? "" : "; ", words,
                        c->color.s == NULL ? "" : ", ", offer_or_nothing(c->color.s)));
    }
    return text;
}

static bool put_options(struct offer *o, const struct estimate *options, size_t count) {
    const int64_t base = tape_scaled(&o->e->tape, o->e->sale.total, 2);
    o->options = pool_take(&o->pool, count, sizeof *o->options);
    if (o->options == NULL) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        const struct option *const option = &o->e->job->options[options[i].option];
        const int64_t all = tape_scaled(&options[i].tape, options[i].sale.total, 2);
        o->options[o->option_count++] = (struct offer_option){
            .name = offer_capital(o, option->name.s),
            .words = option_words(o, option),
            .adds = option->price.word == OPTION_ADDS,
            .total = all,
            .difference = all - base,
        };
    }
    return true;
}

bool offer_price(struct offer *o, const struct estimate *options, size_t option_count) {
    const struct sale_figures *const s = &o->e->sale;
    o->lines = pool_take(&o->pool, s->charge_count + 12, sizeof *o->lines);
    o->payments = pool_take(&o->pool, s->stage_count + 3, sizeof *o->payments);
    if (o->lines == NULL || o->payments == NULL || !put_options(o, options, option_count)) {
        return false;
    }
    sell(o);
    tax(o);
    card_fee(o);
    total(o);
    pay(o);
    return !pool_failed(&o->pool);
}
