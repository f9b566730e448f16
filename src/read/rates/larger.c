/* SPDX-License-Identifier: MIT */
/* Prices that grow as the amount does: who buys more at once pays no more apiece. Where he does,
 * two prices are mostly swapped, or one has lost a digit. */
#include "base/int128.h"
#include "read/key/quantity.h"
#include "read/rates/plausible.h"

static void ask_sizes(struct reader *reader, const struct steps *sizes) {
    for (size_t i = 1; i < sizes->count; i++) {
        const struct step *const small = &sizes->s[i - 1];
        const struct step *const large = &sizes->s[i];
        int64_t volumes[2];
        int64_t prices[2];
        value_even(&small->limit, &large->limit, &volumes[0], &volumes[1]);
        value_even(&small->value, &large->value, &prices[0], &prices[1]);
        const bool less = prices[1] < prices[0];
        if (!less && (int128)prices[1] * volumes[0] <= (int128)prices[0] * volumes[1]) {
            continue;
        }
        problem_add(reader->problems, SEVERITY_WARNING, "larger-dearer", large->value.place,
                    less ? "%s costs %s, less than %s at %s; are the prices swapped?"
                         : "%s costs %s, more than as much in cans of %s at %s; is that so?",
                    large->words, quantity_text(reader, &large->value), small->words,
                    quantity_text(reader, &small->value));
    }
}

static void ask_breaks(struct reader *reader, const struct lumber *lumber) {
    const struct value *before = &lumber->price;
    for (size_t i = 0; before->set && i < lumber->breaks.count; i++) {
        const struct step *const step = &lumber->breaks.s[i];
        if (value_above(&step->value, before)) {
            problem_add(reader->problems, SEVERITY_WARNING, "larger-dearer", step->value.place,
                        "from %s on the price is %s, and %s for less; is that so?",
                        step->words == NULL ? "the break" : step->words,
                        quantity_text(reader, &step->value), quantity_text(reader, before));
        }
        before = &step->value;
    }
}

static void ask_half(struct reader *reader, const struct sheet *sheet) {
    struct value two = sheet->half_price;
    two.amount *= 2;
    if (!sheet->half_price.set || !sheet->price.set) {
        return;
    }
    if (value_above(&sheet->half_price, &sheet->price)) {
        problem_add(reader->problems, SEVERITY_WARNING, "larger-dearer", sheet->half_price.place,
                    "half a sheet costs %s and a whole one %s; are the prices swapped?",
                    quantity_text(reader, &sheet->half_price),
                    quantity_text(reader, &sheet->price));
    } else if (value_above(&sheet->price, &two)) {
        problem_add(reader->problems, SEVERITY_WARNING, "larger-dearer", sheet->half_price.place,
                    "a whole sheet costs %s, more than two halves at %s; is that so?",
                    quantity_text(reader, &sheet->price),
                    quantity_text(reader, &sheet->half_price));
    }
}

void larger_check(struct reader *reader, const struct rates *rates) {
    for (size_t i = 0; i < rates->lumber_count; i++) {
        ask_breaks(reader, &rates->lumber[i]);
    }
    for (size_t i = 0; i < rates->sheet_count; i++) {
        ask_half(reader, &rates->sheets[i]);
    }
    for (size_t i = 0; i < rates->coating_count; i++) {
        ask_sizes(reader, &rates->coatings[i].sizes);
    }
    for (size_t i = 0; i < rates->additive_count; i++) {
        ask_sizes(reader, &rates->additives[i].sizes);
    }
}
