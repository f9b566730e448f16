/* SPDX-License-Identifier: MIT */
#include "model/price_age.h"

const struct rate_number *price_age_of(const struct price_ages *ages, const struct value *price) {
    const struct rate_number *const number =
        ages->numbers == NULL ? NULL : rate_number_at(ages->numbers, price->place);
    if (number != NULL && ages->used != NULL) {
        ages->used[number - ages->numbers->list] = true;
    }
    return number;
}

int32_t price_age_days(const struct price_ages *ages, const struct rate_number *number) {
    const int32_t on = (int32_t)number->on.amount;
    return ages->quoted > on ? ages->quoted - on : 0;
}

fig price_aged(struct tape *tape, const char *what, const struct rate_number *number, int32_t days,
               fig hundred) {
    const struct value *const price = &number->value;
    const enum unit unit = (enum unit)price->unit;
    const fig learned = tape_given(tape, "price when it was learned", unit, price->decimals,
                                   price->amount, price->place);
    const fig since =
        tape_given(tape, "days since it was learned", UNIT_DAY, 0, days, number->on.place);
    const fig yearly =
        tape_given(tape, "rise of the price a year", UNIT_PERCENT, number->yearly.decimals,
                   number->yearly.amount, number->yearly.place);
    const fig year = tape_constant(tape, "days of a year", UNIT_DAY, 0, 365, "common year");
    const fig percent = fig_ratio(tape, "rise since it was learned", UNIT_PERCENT,
                                  (figs){{yearly, since}}, (figs){{year}});
    const fig rise =
        fig_ratio(tape, "rise of the price", unit, (figs){{learned, percent}}, (figs){{hundred}});
    return fig_sum(tape, what, unit, (fig[]){learned, rise}, 2);
}
