/* SPDX-License-Identifier: MIT */
/* What doors are made of, and how it is sawn. */
#include "read/key/grammar.h"
#include "read/key/measure.h"
#include "read/rates/rates_keys.h"

#include <string.h>

const struct form forms_density[] = {
    {"", UNIT_G_PER_CM3, 0, 0, 3},
    {"g per cm3", UNIT_G_PER_CM3, 0, 0, 3},
    {"kg per m3", UNIT_KG_PER_M3, 0, 50, 3000},
    {"lb per cuft", UNIT_LB_PER_CUFT, 0, 3, 200},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct form forms_area[] = {
    {"sqft", UNIT_SQFT, 0, 0, 100},
    {"m2", UNIT_M2, 0, 0, 10},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct form forms_per_area[] = {
    {"per sqft", UNIT_MONEY_PER_SQFT, 0, 0, NO_LIMIT},
    {"per m2", UNIT_MONEY_PER_M2, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct form forms_per_run[] = {
    {"per ft", UNIT_MONEY_PER_FT, 0, 0, NO_LIMIT},
    {"per m", UNIT_MONEY_PER_M, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct form forms_waste[] = {
    {"% added", UNIT_PERCENT, WASTE_ADDED, 0, 1000},
    {"% lost of what is bought", UNIT_PERCENT, WASTE_LOST, 0, 95},
    {"% lost", UNIT_PERCENT, WASTE_LOST, 0, 95},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

static const struct form lumber_price[] = {
    {"per bf", UNIT_MONEY_PER_BF, 0, 0, NO_LIMIT},
    {"per m3", UNIT_MONEY_PER_M3, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form lumber_amount[] = {
    {"bf", UNIT_BF, 0, 0, 1000000},
    {"m3", UNIT_M3, 0, 0, 10000},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form defects[] = {
    {"%", UNIT_PERCENT, 0, 0, 95},
    {NULL, UNIT_MONEY, 0, 0, 0},
};

static const struct key lumber_keys[] = {
    {.name = "words",
     .read = read_text,
     .at = offsetof(struct lumber, client_name),
     .example = "poplar",
     .help = "how the client reads it; absent: the common name of the wood"},
    {.name = "species",
     .read = read_text,
     .at = offsetof(struct lumber, species),
     .example = "yellow-poplar",
     .help = "the wood, a name of the table of woods: for weight and movement"},
    {.name = "thickness",
     .read = read_quarters,
     .at = offsetof(struct lumber, thickness),
     .choice_at = offsetof(struct lumber, thickness_text),
     .range = RANGE(NM_PER_64TH, 6 * NM_PER_INCH),
     .needed = true,
     .example = "4/4",
     .other = "27 mm",
     .help = "as bought, in quarters of an inch or a length"},
    {.name = "price",
     .read = read_measure,
     .at = offsetof(struct lumber, price),
     .forms = lumber_price,
     .needed = true,
     .example = "4.10 per bf",
     .other = "1800 per m3",
     .help = "of the lot, below the first price break"},
    {.name = "price from",
     .read = read_breaks,
     .at = offsetof(struct lumber, breaks),
     .forms = lumber_price,
     .limit_forms = lumber_amount,
     .example = "100 bf at 3.75 per bf",
     .help = "price breaks: from which amount the whole lot has which price"},
    {.name = "waste",
     .read = read_measure,
     .at = offsetof(struct lumber, waste),
     .choice_at = offsetof(struct lumber, waste_as),
     .forms = forms_waste,
     .needed = true,
     .example = "50 % added",
     .other = "33 % lost of what is bought",
     .help = "from finished parts to what is bought, defects included"},
    {.name = "board widths",
     .read = read_lengths,
     .at = offsetof(struct lumber, board_widths),
     .range = INCHES(1, 60),
     .example = "5 in, 6 in, 8 in",
     .help = "that the yard stocks, for the plan"},
    {.name = "board lengths",
     .read = read_lengths,
     .at = offsetof(struct lumber, board_lengths),
     .range = INCHES(12, 480),
     .example = "8 ft, 10 ft, 12 ft",
     .help = "that the yard stocks"},
    {.name = "end trim",
     .read = read_length,
     .at = offsetof(struct lumber, end_trim),
     .range = INCHES(0, 24),
     .example = "2 in",
     .help = "cut off each end of a board"},
    {.name = "defects",
     .read = read_measure,
     .at = offsetof(struct lumber, defects),
     .forms = defects,
     .example = "12 %",
     .help = "of each board; used by the plan, the waste factor includes it"},
    {.name = "minimum",
     .read = read_measure,
     .at = offsetof(struct lumber, minimum),
     .forms = lumber_amount,
     .example = "20 bf",
     .help = "the least that the yard sells"},
};

/* What is bought and what is priced must be counted alike. */
static void check_amount(struct reader *reader, const struct lumber *lumber, const char *key,
                         const struct value *amount) {
    enum unit expected = lumber->price.unit == UNIT_MONEY_PER_BF ? UNIT_BF : UNIT_M3;

    if (lumber->price.set && amount->set && amount->unit != expected) {
        problem_add(reader->problems, SEVERITY_ERROR, "wrong-unit", amount->place,
                    "%s is in %s but the price is %s; expected both in the same unit", key,
                    unit_name((enum unit)amount->unit), unit_name((enum unit)lumber->price.unit));
    }
}

static void check_lumber(struct reader *reader, const struct ini_section *section, void *target) {
    struct lumber *lumber = target;

    (void)section;
    check_amount(reader, lumber, "minimum", &lumber->minimum);
    for (size_t i = 0; i < lumber->breaks.count; i++) {
        const struct step *step = &lumber->breaks.s[i];

        check_amount(reader, lumber, "price from", &step->limit);
        if (lumber->price.set && step->value.unit != lumber->price.unit) {
            problem_add(reader->problems, SEVERITY_ERROR, "wrong-unit", step->value.place,
                        "price from is %s but the price is %s; expected both in the same unit",
                        unit_name((enum unit)step->value.unit),
                        unit_name((enum unit)lumber->price.unit));
        }
    }
}

const struct section_kind section_lumber = {.name = "lumber",
                                            .keys = lumber_keys,
                                            .key_count = COUNT_OF(lumber_keys),
                                            .named = true,
                                            .at = offsetof(struct rates, lumber),
                                            .count_at = offsetof(struct rates, lumber_count),
                                            .size = sizeof(struct lumber),
                                            .check = check_lumber,
                                            .help = "A solid wood, by thickness."};

static const struct form sheet_price[] = {
    {"per sheet", UNIT_MONEY_PER_SHEET, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form half_price[] = {
    {"", UNIT_MONEY_PER_SHEET, 0, 0, NO_LIMIT},
    {"per half sheet", UNIT_MONEY_PER_SHEET, 0, 0, NO_LIMIT},
    {"each", UNIT_MONEY_PER_SHEET, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct spelling grains[] = {{"length", 1}, {"none", 0}, {NULL, 0}};

/* `48 in x 96 in`: the grain goes along the longer side. */
static void read_size(struct reader *reader, const struct key *key, const struct entry *entry,
                      void *target) {
    struct sheet *sheet = target;
    const char *cross = strpbrk(entry->text, "xX");
    struct entry first;
    struct entry second;

    if (cross == NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "size '%s' is not two lengths; expected '%s'",
                    problem_quote(reader->problems, entry->text), key->example);
        return;
    }
    first = entry_part(reader, entry, entry->text, cross);
    second = entry_part(reader, entry, cross + 1, entry->text + strlen(entry->text));
    if (length_value(reader, key, &first, key->range, &sheet->width) &&
        length_value(reader, key, &second, key->range, &sheet->length) &&
        sheet->length.amount < sheet->width.amount) {
        struct value longer = sheet->width;

        sheet->width = sheet->length;
        sheet->length = longer;
    }
}

static const struct key sheet_keys[] = {
    {.name = "words",
     .read = read_text,
     .at = offsetof(struct sheet, client_name),
     .example = "MDF board",
     .help = "how the client reads it; absent: the name"},
    {.name = "thickness",
     .read = read_length,
     .at = offsetof(struct sheet, thickness),
     .range = RANGE(NM_PER_64TH, 4 * NM_PER_INCH),
     .needed = true,
     .example = "1/4 in",
     .help = "as sold"},
    {.name = "size",
     .read = read_size,
     .range = INCHES(6, 240),
     .needed = true,
     .example = "48 in x 96 in",
     .help = "of a whole sheet; the grain goes along the longer side"},
    {.name = "price",
     .read = read_measure,
     .at = offsetof(struct sheet, price),
     .forms = sheet_price,
     .needed = true,
     .example = "58.00 per sheet",
     .help = "of a whole sheet"},
    {.name = "half sheet",
     .read = read_measure,
     .at = offsetof(struct sheet, half_price),
     .forms = half_price,
     .example = "33.00",
     .help = "price of half a sheet; absent: only whole ones are sold"},
    {.name = "grain",
     .read = read_flag,
     .at = offsetof(struct sheet, grain),
     .choices = grains,
     .example = "length",
     .other = "none",
     .help = "along the length, or none: parts may be turned; absent: none"},
    {.name = "edge trim",
     .read = read_length,
     .at = offsetof(struct sheet, edge_trim),
     .range = INCHES(0, 6),
     .example = "1/4 in",
     .help = "cut off each edge of a sheet"},
    {.name = "waste",
     .read = read_measure,
     .at = offsetof(struct sheet, waste),
     .choice_at = offsetof(struct sheet, waste_as),
     .forms = forms_waste,
     .needed = true,
     .example = "20 % added",
     .other = "17 % lost of what is bought",
     .help = "from finished parts to what is bought"},
    {.name = "density",
     .read = read_measure,
     .at = offsetof(struct sheet, density),
     .forms = forms_density,
     .example = "0.60",
     .other = "38 lb/cuft",
     .help = "for weight; a bare number is in g/cm3"},
    {.name = "banding",
     .read = read_index,
     .at = offsetof(struct sheet, banding),
     .names = NAME_BANDING,
     .example = "birch tape",
     .help = "a [banding NAME] that goes round every slab of this sheet; absent: bare edges"},
};

const struct section_kind section_sheet = {.name = "sheet",
                                           .keys = sheet_keys,
                                           .key_count = COUNT_OF(sheet_keys),
                                           .named = true,
                                           .at = offsetof(struct rates, sheets),
                                           .count_at = offsetof(struct rates, sheet_count),
                                           .size = sizeof(struct sheet),
                                           .help = "Plywood, board or another sheet."};

static const struct key glass_keys[] = {
    {.name = "words",
     .read = read_text,
     .at = offsetof(struct glass, client_name),
     .example = "clear glass",
     .help = "how the client reads it; absent: the name"},
    {.name = "thickness",
     .read = read_length,
     .at = offsetof(struct glass, thickness),
     .range = RANGE(NM_PER_64TH, 2 * NM_PER_INCH),
     .needed = true,
     .example = "1/8 in",
     .help = "of the pane"},
    {.name = "price",
     .read = read_measure,
     .at = offsetof(struct glass, price),
     .forms = forms_per_area,
     .needed = true,
     .example = "9.50 per sqft",
     .other = "95.00 per m2",
     .help = "by area"},
    {.name = "minimum",
     .read = read_measure,
     .at = offsetof(struct glass, minimum),
     .forms = forms_area,
     .example = "1.5 sqft",
     .other = "0.15 m2",
     .help = "a smaller pane is charged as this"},
    {.name = "round up",
     .read = read_length,
     .at = offsetof(struct glass, round_up),
     .range = RANGE(NM_PER_64TH, 24 * NM_PER_INCH),
     .example = "2 in",
     .help = "each side is charged rounded up to a multiple of this"},
    {.name = "density",
     .read = read_measure,
     .at = offsetof(struct glass, density),
     .forms = forms_density,
     .example = "2.5",
     .other = "156 lb/cuft",
     .help = "for weight; a bare number is in g/cm3"},
    {.name = "stops",
     .read = read_measure,
     .at = offsetof(struct glass, stops),
     .forms = forms_per_run,
     .example = "0.45 per ft",
     .other = "1.20 per m",
     .help = "what holds a pane, by the length round it; absent: none"},
};

const struct section_kind section_glass = {.name = "glass",
                                           .keys = glass_keys,
                                           .key_count = COUNT_OF(glass_keys),
                                           .named = true,
                                           .at = offsetof(struct rates, glass),
                                           .count_at = offsetof(struct rates, glass_count),
                                           .size = sizeof(struct glass),
                                           .help = "Glass for frames, bought cut to size."};

static const struct key saw_keys[] = {
    {.name = "kerf",
     .read = read_length,
     .at = offsetof(struct saw, kerf),
     .range = INCHES(0, 1),
     .needed = true,
     .example = "1/8 in",
     .help = "lost by each cut"},
    {.name = "length allowance",
     .read = read_length,
     .at = offsetof(struct saw, length_allowance),
     .range = INCHES(0, 12),
     .needed = true,
     .example = "1 in",
     .help = "rough length over finished length"},
    {.name = "edge allowance",
     .read = read_length,
     .at = offsetof(struct saw, edge_allowance),
     .range = INCHES(0, 2),
     .needed = true,
     .example = "1/32 in",
     .help = "rough width over finished width, each edge"},
    {.name = "straighten",
     .read = read_length,
     .at = offsetof(struct saw, straighten),
     .range = INCHES(0, 2),
     .example = "1/4 in",
     .help = "taken off each side of a board before it is ripped; used by plan; absent: none"},
};

const struct section_kind section_saw = {.name = "saw",
                                         .keys = saw_keys,
                                         .key_count = COUNT_OF(saw_keys),
                                         .needed = true,
                                         .at = offsetof(struct rates, saw),
                                         .help = "What sawing and milling take."};
