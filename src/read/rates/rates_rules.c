/* SPDX-License-Identifier: MIT */
/* Rules of the shop: what it questions, the air its panels live in, markup by group of cost. */
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#define LEAF_SIZE INCHES(6, 120)
/* a thousandth of a mil to a tenth of an inch */
#define FILM RANGE(NM_PER_UM, NM_PER_INCH / 10)

static const struct unit_form days[] = {
    {"day", UNIT_DAY, 0, 1, 3650},
    {"", UNIT_DAY, 0, 1, 3650},
    {0},
};

static const struct key limit_keys[] = {
    {"widest leaf", AS_LENGTH(LEAF_SIZE), FIELD(limits, widest_leaf), "24 in",
     .help = "a wider leaf is questioned: a pair, or a mid stile?"},
    {"highest panel", AS_LENGTH(LEAF_SIZE), FIELD(limits, highest_panel), "48 in",
     .help = "a higher panel is questioned: a mid rail?"},
    {"dry film", AS_LENGTH(FILM), FIELD(limits, dry_film), "5 mil", "125 um",
     .help = "a finish that is thicker in all is questioned"},
    {"price age", AS_QUANTITY(days), FIELD(limits, price_age), "180 days",
     .help = "a price that was learned so much longer before the quote is questioned"},
};

const struct section_kind section_limits = {"limits", limit_keys, COUNT_OF(limit_keys),
                                            SECTION(rates, limits),
                                            .help = "What the shop wants to be asked about."};

static const struct key climate_keys[] = {
    {"driest", AS_PERCENT(5, 90), FIELD(climate, driest), "30 %",
     .help = "relative humidity of the driest season indoors, at 70 F"},
    {"wettest", AS_PERCENT(5, 90), FIELD(climate, wettest), "60 %",
     .help = "relative humidity of the wettest season indoors, at 70 F"},
    {"moisture", AS_PERCENT(2, 25), FIELD(climate, moisture), "7 %",
     .help = "moisture of the wood when panels are made up"},
};

static void check_climate(struct reader *reader, const struct ini_section *section, void *target) {
    (void)target;
    section_lacks(reader, section, "driest", "to tell how much a panel shrinks");
    section_lacks(reader, section, "wettest", "to tell how much a panel swells");
    section_lacks(reader, section, "moisture", "to tell from what it moves");
}

const struct section_kind section_climate = {"climate",
                                             climate_keys,
                                             COUNT_OF(climate_keys),
                                             SECTION(rates, climate),
                                             .check = check_climate,
                                             .help = "The air that solid panels live in."};

#define GROUP(group)                                                                               \
    AS_PERCENT(0, 1000), {(group) * sizeof(struct value), 0}, "15 %", .help = MARKUP_HELP
#define MARKUP_HELP                                                                                \
    "on this group and its part of contingency and overhead, in place of the shop's profit"

static const struct key markup_keys[] = {
    {"lumber", GROUP(COST_LUMBER)},       {"sheets", GROUP(COST_SHEETS)},
    {"glass", GROUP(COST_GLASS)},         {"finish", GROUP(COST_FINISH)},
    {"hardware", GROUP(COST_HARDWARE)},   {"consumables", GROUP(COST_CONSUMABLES)},
    {"bought in", GROUP(COST_BOUGHT_IN)}, {"labor", GROUP(COST_LABOR)},
};

const struct section_kind section_markup = {"markup", markup_keys, COUNT_OF(markup_keys),
                                            SECTION(rates, markup),
                                            .help = "Profit by group of cost."};
