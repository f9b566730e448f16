/* SPDX-License-Identifier: MIT */
/* Edge banding: by the roll or by the length. */
#include "read/key/grammar.h"
#include "read/key/measure.h"
#include "read/rates/rates_keys.h"

static const struct form banding_price[] = {
    {"per roll", UNIT_MONEY_EACH, 0, 0, NO_LIMIT},
    {"per ft", UNIT_MONEY_PER_FT, 0, 0, NO_LIMIT},
    {"per m", UNIT_MONEY_PER_M, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

static void check_banding(struct reader *reader, const struct ini_section *section, void *target) {
    const struct banding *banding = target;

    if (banding->price.set && banding->price.unit == UNIT_MONEY_EACH) {
        section_lacks(reader, section, "roll", "for a price per roll");
    } else if (banding->roll.set) {
        problem_add(
            reader->problems, SEVERITY_ERROR, "wrong-unit", banding->price.place,
            "a roll is given, but the price is by the length; expected one like '38.00 per roll'");
    }
}

static const struct key banding_keys[] = {
    {.name = "price",
     .read = read_measure,
     .at = offsetof(struct banding, price),
     .forms = banding_price,
     .needed = true,
     .example = "38.00 per roll",
     .other = "0.22 per ft",
     .help = "of a roll, or by the length"},
    {.name = "roll",
     .read = read_length,
     .at = offsetof(struct banding, roll),
     .range = RANGE(NM_PER_FOOT, 10000 * NM_PER_FOOT),
     .example = "250 ft",
     .help = "length of a roll; whole rolls are bought"},
    {.name = "waste",
     .read = read_measure,
     .at = offsetof(struct banding, waste),
     .forms = forms_percent,
     .example = "10 %",
     .help = "added to the length of the edges; absent: none"},
};

const struct section_kind section_banding = {.name = "banding",
                                             .keys = banding_keys,
                                             .key_count = COUNT_OF(banding_keys),
                                             .named = true,
                                             .at = offsetof(struct rates, bandings),
                                             .count_at = offsetof(struct rates, banding_count),
                                             .size = sizeof(struct banding),
                                             .check = check_banding,
                                             .help = "Edge banding for slabs."};
