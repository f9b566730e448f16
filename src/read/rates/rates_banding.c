/* SPDX-License-Identifier: MIT */
/* Edge banding: by the roll or by the length. */
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

static const struct unit_form banding_price[] = {
    {"per roll", UNIT_MONEY_EACH, 0, 0, NO_LIMIT},
    {"per ft", UNIT_MONEY_PER_FT, 0, 0, NO_LIMIT},
    {"per m", UNIT_MONEY_PER_M, 0, 0, NO_LIMIT},
    {0},
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
    {"price", AS_QUANTITY(banding_price), FIELD(banding, price), "38.00 per roll", "0.22 per ft",
     .needed = true, .help = "of a roll, or by the length"},
    {"roll", AS_LENGTH(RANGE(NM_PER_FOOT, 10000 * NM_PER_FOOT)), FIELD(banding, roll), "250 ft",
     .help = "length of a roll; whole rolls are bought"},
    {"waste", AS_PERCENT(0, 100), FIELD(banding, waste), "10 %",
     .help = "added to the length of the edges; absent: none"},
};

const struct section_kind section_banding = {"banding",
                                             banding_keys,
                                             COUNT_OF(banding_keys),
                                             SECTIONS(rates, bandings, banding_count, banding),
                                             .check = check_banding,
                                             .help = "Edge banding for slabs."};
