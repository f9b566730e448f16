/* SPDX-License-Identifier: MIT */
/* The options of an offer: what each changes, what it does to the total, and what is then due. */
#include "report/offer/offer_parts.h"
#include "report/words/show.h"

/* `With it 3,151.48 USD are due on order (40 %), ...`; "": all is due on delivery anyway. */
static const char *payments_words(struct offer *o, const struct estimate *e) {
    const struct sale_figures *const s = &e->sale;
    const struct sale *const given = &o->e->job->sale;
    const char *text = "";
    if (sale_asked(&e->tape, s->deposit_rate)) {
        text = offer_or_nothing(pool_format(&o->pool, "%s on order (%s), ",
                                            offer_money_of(o, e, s->deposit, false),
                                            show_unit(e, s->deposit_rate).text));
    }
    for (size_t i = 0; i < s->stage_count; i++) {
        const char *const name = given->stages[i].name.s;
        text = offer_or_nothing(pool_format(
            &o->pool, "%s%s %s%s (%s), ", text, offer_money_of(o, e, s->stages[i], false),
            name == NULL ? "as work goes on" : "when ", offer_or_nothing(name),
            show_unit(e, s->stage_rates[i]).text));
    }
    return text[0] == '\0' || o->estimate
               ? ""
               : offer_or_nothing(pool_format(&o->pool, "Due with it: %s%s on delivery.", text,
                                              offer_money_of(o, e, s->balance, false)));
}

/* What the client reads first is the total, or the difference where the option adds. */
static void say_price(struct offer *o, struct offer_option *option, bool adds) {
    const bool less = option->difference < 0;
    const char *const total = offer_hundredths(o, option->total, false);
    const char *const size =
        offer_hundredths(o, less ? -option->difference : option->difference, false);
    if (!adds) {
        option->effect = "replaces the total above";
        option->first = pool_format(&o->pool, "%s: %s %s", option->effect, total, o->currency);
        option->second = pool_format(&o->pool, "difference %s %s",
                                     offer_hundredths(o, option->difference, true), o->currency);
    } else {
        option->effect = less ? "takes off the total above" : "adds to the total above";
        option->first = pool_format(
            &o->pool, less ? "takes %s %s off the total above" : "adds %s %s to the total above",
            size, o->currency);
        option->second = pool_format(&o->pool, "total with it %s %s", total, o->currency);
    }
    option->first = offer_or_nothing(option->first);
    option->second = offer_or_nothing(option->second);
}

bool offer_options(struct offer *o, const struct estimate *options, size_t count) {
    const int64_t base = tape_scaled(&o->e->tape, o->e->sale.total, 2);
    o->options = pool_take(&o->pool, count, sizeof *o->options);
    if (o->options == NULL) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        const struct option *const given = &o->e->job->options[options[i].option];
        const int64_t all = tape_scaled(&options[i].tape, options[i].sale.total, 2);
        struct offer_option *const option = &o->options[o->option_count++];
        *option = (struct offer_option){
            .name = offer_capital(o, given->name.s),
            .words = offer_changes(o, &options[i]),
            .payments = payments_words(o, &options[i]),
            .total = all,
            .difference = all - base,
        };
        say_price(o, option, given->price.choice == OPTION_ADDS);
    }
    return !pool_failed(&o->pool);
}
