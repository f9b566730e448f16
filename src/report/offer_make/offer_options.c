/* SPDX-License-Identifier: MIT */
/* The options of an offer: what each changes, what it does to the total, and what is then due. */
#include "base/text.h"
#include "report/offer_make/offer_maker.h"
#include "report/words/show.h"

/* `With it 3,151.48 USD are due on order (40 %), ...`; "": all is due on delivery anyway. */
static const char *payments_words(struct offer_maker *m, const struct estimate *e) {
    const struct sale_figures *const s = &e->sale;
    const struct sale *const given = &m->e->job->sale;
    const char *text = "";
    if (sale_asked(&e->tape, s->deposit_rate)) {
        text = pool_words(m->pool, "%s on order (%s), ", offer_money(m, e, s->deposit, false),
                          show_unit(e, s->deposit_rate).text);
    }
    for (size_t i = 0; i < s->stage_count; i++) {
        const char *const name = given->stages[i].name.s;
        text = pool_words(m->pool, "%s%s %s%s (%s), ", text, offer_money(m, e, s->stages[i], false),
                          name == NULL ? "as work goes on" : "when ", text_or_empty(name),
                          show_unit(e, s->stage_rates[i]).text);
    }
    return text[0] == '\0' || m->offer->estimate
               ? ""
               : pool_words(m->pool, "Due with it: %s%s on delivery.", text,
                            offer_money(m, e, s->balance, false));
}

/* What the client reads first is the total, or the difference where the option adds. */
static void say_price(struct offer_maker *m, struct offer_option *option, bool adds) {
    const bool less = option->difference < 0;
    const char *const total = offer_sum(m, option->total, false);
    const char *const size = offer_sum(m, less ? -option->difference : option->difference, false);
    if (!adds) {
        option->effect = "replaces the total above";
        option->first = pool_words(m->pool, "%s: %s %s", option->effect, total, m->offer->currency);
        option->second = pool_words(m->pool, "difference %s %s",
                                    offer_sum(m, option->difference, true), m->offer->currency);
    } else {
        option->effect = less ? "takes off the total above" : "adds to the total above";
        option->first = pool_words(
            m->pool, less ? "takes %s %s off the total above" : "adds %s %s to the total above",
            size, m->offer->currency);
        option->second = pool_words(m->pool, "total with it %s %s", total, m->offer->currency);
    }
}

bool offer_options(struct offer_maker *m, const struct estimate *options, size_t count) {
    const uint8_t decimals = m->e->rates->shop.money_decimals;
    const int64_t base = tape_scaled(&m->e->tape, m->e->sale.total, decimals);
    m->offer->options = pool_take(m->pool, count, sizeof *m->offer->options);
    if (m->offer->options == NULL) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        const struct option *const given = &m->e->job->options[options[i].option];
        const int64_t all = tape_scaled(&options[i].tape, options[i].sale.total, decimals);
        struct offer_option *const option = &m->offer->options[m->offer->option_count++];
        *option = (struct offer_option){
            .name = offer_capital(m, given->name.s),
            .words = offer_changes(m, &options[i]),
            .payments = payments_words(m, &options[i]),
            .total = all,
            .difference = all - base,
            .decimals = decimals,
        };
        say_price(m, option, given->price.choice == OPTION_ADDS);
    }
    return !pool_failed(m->pool);
}
