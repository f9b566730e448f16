/* SPDX-License-Identifier: MIT */
/* Rules of the shop: what it questions, the air its panels live in, markup by group of cost. */
#include "read/key/grammar.h"
#include "read/key/measure.h"
#include "read/rates/rates_keys.h"

#define LEAF_SIZE INCHES(6, 120)
/* a thousandth of a mil to a tenth of an inch */
#define FILM RANGE(NM_PER_UM, NM_PER_INCH / 10)

static const struct form humidity[] = {
    {"%", UNIT_PERCENT, 0, 5, 90},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form moisture[] = {
    {"%", UNIT_PERCENT, 0, 2, 25},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form markup[] = {
    {"%", UNIT_PERCENT, 0, 0, 1000},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

static const struct key limit_keys[] = {
    {.name = "widest leaf",
     .read = read_length,
     .at = offsetof(struct limits, widest_leaf),
     .range = LEAF_SIZE,
     .example = "24 in",
     .help = "a wider leaf is questioned: a pair, or a mid stile?"},
    {.name = "highest panel",
     .read = read_length,
     .at = offsetof(struct limits, highest_panel),
     .range = LEAF_SIZE,
     .example = "48 in",
     .help = "a higher panel is questioned: a mid rail?"},
    {.name = "dry film",
     .read = read_length,
     .at = offsetof(struct limits, dry_film),
     .range = FILM,
     .example = "5 mil",
     .other = "125 um",
     .help = "a finish that is thicker in all is questioned"},
};

const struct section_kind section_limits = {.name = "limits",
                                            .keys = limit_keys,
                                            .key_count = COUNT_OF(limit_keys),
                                            .at = offsetof(struct rates, limits),
                                            .help = "What the shop wants to be asked about."};

static const struct key climate_keys[] = {
    {.name = "driest",
     .read = read_measure,
     .at = offsetof(struct climate, driest),
     .forms = humidity,
     .example = "30 %",
     .help = "relative humidity of the driest season indoors, at 70 F"},
    {.name = "wettest",
     .read = read_measure,
     .at = offsetof(struct climate, wettest),
     .forms = humidity,
     .example = "60 %",
     .help = "relative humidity of the wettest season indoors, at 70 F"},
    {.name = "moisture",
     .read = read_measure,
     .at = offsetof(struct climate, moisture),
     .forms = moisture,
     .example = "7 %",
     .help = "moisture of the wood when panels are made up"},
};

static void check_climate(struct reader *reader, const struct ini_section *section, void *target) {
    (void)target;
    section_lacks(reader, section, "driest", "to tell how much a panel shrinks");
    section_lacks(reader, section, "wettest", "to tell how much a panel swells");
    section_lacks(reader, section, "moisture", "to tell from what it moves");
}

const struct section_kind section_climate = {.name = "climate",
                                             .keys = climate_keys,
                                             .key_count = COUNT_OF(climate_keys),
                                             .at = offsetof(struct rates, climate),
                                             .check = check_climate,
                                             .help = "The air that solid panels live in."};

#define GROUP(choice, group)                                                                       \
    {                                                                                              \
        .name = (choice), .read = read_measure, .at = (group) * sizeof(struct value),              \
        .forms = markup, .example = "15 %",                                                        \
        .help = "on this group and its part of contingency and overhead, in place of the shop's "  \
                "profit"                                                                           \
    }

static const struct key markup_keys[] = {
    GROUP("lumber", COST_LUMBER),       GROUP("sheets", COST_SHEETS),
    GROUP("glass", COST_GLASS),         GROUP("finish", COST_FINISH),
    GROUP("hardware", COST_HARDWARE),   GROUP("consumables", COST_CONSUMABLES),
    GROUP("bought in", COST_BOUGHT_IN), GROUP("labor", COST_LABOR),
};

const struct section_kind section_markup = {.name = "markup",
                                            .keys = markup_keys,
                                            .key_count = COUNT_OF(markup_keys),
                                            .at = offsetof(struct rates, markup),
                                            .help = "Profit by group of cost."};
