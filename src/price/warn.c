/* SPDX-License-Identifier: MIT */
#include "price/warn.h"

void prices_warn(const struct calc *c) {
    const struct price_ages *const ages = &c->units->ages;
    const struct value *const most = &c->rates->limits.price_age;
    for (size_t i = 0; ages->used != NULL && i < ages->numbers->count; i++) {
        const struct rate_number *const number = &ages->numbers->list[i];
        if (!ages->used[i]) {
            continue;
        }
        if (most->set && price_age_days(ages, number) > most->amount) {
            problem_add(c->problems, SEVERITY_WARNING, "price-old", number->value.place,
                        "the price was learned more than %lld days before the quote of %s; ask for "
                        "it anew and write it with that day",
                        (long long)most->amount, c->job->date.s);
        } else if (number->on.amount > ages->quoted) {
            problem_add(c->problems, SEVERITY_WARNING, "price-later", number->value.place,
                        "the price was learned after the day of the quote, %s; look at both dates",
                        c->job->date.s);
        }
    }
}
