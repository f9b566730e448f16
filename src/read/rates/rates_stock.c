/* SPDX-License-Identifier: MIT */
/* What doors are made of, and how it is sawn. */
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static const struct unit_form density[] = {
    {"", UNIT_G_PER_CM3, 0, 0, 3},
    {"g per cm3", UNIT_G_PER_CM3, 0, 0, 3},
    {"kg per m3", UNIT_KG_PER_M3, 0, 50, 3000},
    {"lb per cuft", UNIT_LB_PER_CUFT, 0, 3, 200},
    {0},
};
static const struct unit_form area[] = {
    {"sqft", UNIT_SQFT, 0, 0, 100},
    {"m2", UNIT_M2, 0, 0, 10},
    {0},
};
const struct unit_form forms_per_area[] = {
    {"per sqft", UNIT_MONEY_PER_SQFT, 0, 0, NO_LIMIT},
    {"per m2", UNIT_MONEY_PER_M2, 0, 0, NO_LIMIT},
    {0},
};
static const struct unit_form per_run[] = {
    {"per ft", UNIT_MONEY_PER_FT, 0, 0, NO_LIMIT},
    {"per m", UNIT_MONEY_PER_M, 0, 0, NO_LIMIT},
    {0},
};
static const struct unit_form waste[] = {
    {"% added", UNIT_PERCENT, WASTE_ADDED, 0, 1000},
    {"% lost of what is bought", UNIT_PERCENT, WASTE_LOST, 0, 95},
    {"% lost", UNIT_PERCENT, WASTE_LOST, 0, 95},
    {0},
};

const struct unit_form forms_lumber_price[] = {
    {"per bf", UNIT_MONEY_PER_BF, 0, 0, NO_LIMIT},
    {"per m3", UNIT_MONEY_PER_M3, 0, 0, NO_LIMIT},
    {0},
};
static const struct unit_form lumber_amount[] = {
    {"bf", UNIT_BF, 0, 0, 1000000},
    {"m3", UNIT_M3, 0, 0, 10000},
    {0},
};

static const struct key lumber_keys[] = {
    {"words", AS_TEXT, FIELD(lumber, client_name), "poplar",
     .help = "how the client reads it; absent: the common name of the wood"},
    {"species", AS_TEXT, FIELD(lumber, species), "yellow-poplar",
     .help = "the wood, a name of the table of woods: for weight and movement"},
    {"thickness", AS_OWN(read_quarters, .range = RANGE(NM_PER_64TH, 6 * NM_PER_INCH)),
     FIELDS(lumber, thickness, thickness_text), "4/4", "27 mm", .needed = true,
     .help = "as bought, in quarters of an inch or a length"},
    {"price", AS_QUANTITY(forms_lumber_price), FIELD(lumber, price), "4.10 per bf", "1800 per m3",
     .needed = true, .help = "of the lot, below the first price break"},
    {"price from",
     AS_OWN(read_breaks, .most = MOST_PRICE_BREAKS, .forms = forms_lumber_price,
            .limit_forms = lumber_amount),
     FIELD(lumber, breaks), "100 bf at 3.75 per bf",
     .help = "price breaks: from which amount the whole lot has which price"},
    {"waste", AS_QUANTITY(waste), FIELDS(lumber, waste, waste_as), "50 % added",
     "33 % lost of what is bought", .needed = true,
     .help = "from finished parts to what is bought, defects included"},
    {"board widths", AS_LENGTHS(INCHES(1, 60)), FIELD(lumber, board_widths), "5 in, 6 in, 8 in",
     .help = "that the yard stocks, for the plan"},
    {"board lengths", AS_LENGTHS(INCHES(12, 480)), FIELD(lumber, board_lengths),
     "8 ft, 10 ft, 12 ft", .help = "that the yard stocks"},
    {"end trim", AS_LENGTH(INCHES(0, 24)), FIELD(lumber, end_trim), "2 in",
     .help = "cut off each end of a board"},
    {"defects", AS_PERCENT(0, 95), FIELD(lumber, defects), "12 %",
     .help = "of each board; used by the plan, the waste factor includes it"},
    {"minimum", AS_QUANTITY(lumber_amount), FIELD(lumber, minimum), "20 bf",
     .help = "the least that the yard sells"},
    {"work", AS_PERCENT(10, 1000), FIELD(lumber, work), "115 %",
     .help = "how long operations by wood take in it; absent: 100 %"},
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

const struct section_kind section_lumber = {"lumber",
                                            lumber_keys,
                                            COUNT_OF(lumber_keys),
                                            SECTIONS(rates, lumber, lumber_count, lumber),
                                            .check = check_lumber,
                                            .help = "A solid wood, by thickness."};

static const struct unit_form sheet_price[] = {{"per sheet", UNIT_MONEY_PER_SHEET, 0, 0, NO_LIMIT},
                                               {0}};
static const struct unit_form half_price[] = {
    {"", UNIT_MONEY_PER_SHEET, 0, 0, NO_LIMIT},
    {"per half sheet", UNIT_MONEY_PER_SHEET, 0, 0, NO_LIMIT},
    {"each", UNIT_MONEY_PER_SHEET, 0, 0, NO_LIMIT},
    {0},
};
static const struct spelling grains[] = {{"length", 1}, {"none", 0}, {0}};

/* `48 in x 96 in`: the grain goes along the longer side. */
static void read_size(struct reader *reader, const struct key *key, const struct entry *entry,
                      void *target) {
    struct sheet *sheet = target;
    const char *cross = strpbrk(entry->text, "xX");
    struct entry first;
    struct entry second;

    if (cross == NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "size '%s' is not two lengths; expected '%s'", entry_quote(reader, entry),
                    key->example);
        return;
    }
    first = entry_part(reader, entry, entry->text, cross);
    second = entry_part(reader, entry, cross + 1, entry->text + strlen(entry->text));
    first.fixed = true; /* what is ordered is no guess */
    second.fixed = true;
    if (length_value(reader, key, &first, key->kind.range, &sheet->width) &&
        length_value(reader, key, &second, key->kind.range, &sheet->length) &&
        sheet->length.amount < sheet->width.amount) {
        struct value longer = sheet->width;

        sheet->width = sheet->length;
        sheet->length = longer;
    }
}

static const struct key sheet_keys[] = {
    {"words", AS_TEXT, FIELD(sheet, client_name), "MDF board",
     .help = "how the client reads it; absent: the name"},
    {"thickness", AS_LENGTH(RANGE(NM_PER_64TH, 4 * NM_PER_INCH)), FIELD(sheet, thickness), "1/4 in",
     .needed = true, .help = "as sold"},
    {"size", AS_OWN(read_size, .range = INCHES(6, 240)), .example = "48 in x 96 in", .needed = true,
     .help = "of a whole sheet; the grain goes along the longer side"},
    {"price", AS_QUANTITY(sheet_price), FIELD(sheet, price), "58.00 per sheet", .needed = true,
     .help = "of a whole sheet"},
    {"half sheet", AS_QUANTITY(half_price), FIELD(sheet, half_price), "33.00",
     .help = "price of half a sheet; absent: only whole ones are sold"},
    {"grain", AS_FLAG(grains), FIELD(sheet, grain), "length", "none",
     .help = "along the length, or none: parts may be turned; absent: none"},
    {"edge trim", AS_LENGTH(INCHES(0, 6)), FIELD(sheet, edge_trim), "1/4 in",
     .help = "cut off each edge of a sheet"},
    {"waste", AS_QUANTITY(waste), FIELDS(sheet, waste, waste_as), "20 % added",
     "17 % lost of what is bought", .needed = true,
     .help = "from finished parts to what is bought"},
    {"density", AS_QUANTITY(density), FIELD(sheet, density), "0.60", "38 lb/cuft",
     .help = "for weight; a bare number is in g/cm3"},
    {"banding", AS_INDEX(NAME_BANDING), FIELD(sheet, banding), "birch tape",
     .help = "a [banding NAME] that goes round every slab of this sheet; absent: bare edges"},
};

const struct section_kind section_sheet = {"sheet", sheet_keys, COUNT_OF(sheet_keys),
                                           SECTIONS(rates, sheets, sheet_count, sheet),
                                           .help = "Plywood, board or another sheet."};

static const struct key glass_keys[] = {
    {"words", AS_TEXT, FIELD(glass, client_name), "clear glass",
     .help = "how the client reads it; absent: the name"},
    {"thickness", AS_LENGTH(RANGE(NM_PER_64TH, 2 * NM_PER_INCH)), FIELD(glass, thickness), "1/8 in",
     .needed = true, .help = "of the pane"},
    {"price", AS_QUANTITY(forms_per_area), FIELD(glass, price), "9.50 per sqft", "95.00 per m2",
     .needed = true, .help = "by area"},
    {"minimum", AS_QUANTITY(area), FIELD(glass, minimum), "1.5 sqft", "0.15 m2",
     .help = "a smaller pane is charged as this"},
    {"round up", AS_LENGTH(RANGE(NM_PER_64TH, 24 * NM_PER_INCH)), FIELD(glass, round_up), "2 in",
     .help = "each side is charged rounded up to a multiple of this"},
    {"density", AS_QUANTITY(density), FIELD(glass, density), "2.5", "156 lb/cuft",
     .help = "for weight; a bare number is in g/cm3"},
    {"stops", AS_QUANTITY(per_run), FIELD(glass, stops), "0.45 per ft", "1.20 per m",
     .help = "what holds a pane, by the length round it; absent: none"},
    {"safety", AS_CHOICE(choices_yes_no), FIELD(glass, safety), "yes", "no",
     .help = "whether it is safety glazing, for the client to read; absent: not said"},
    {"lead", AS_YES_NO, FIELD(glass, lead), "yes", "no",
     .help = "its panes are held in lead: for the cautions; absent: no"},
};

const struct section_kind section_glass = {"glass", glass_keys, COUNT_OF(glass_keys),
                                           SECTIONS(rates, glass, glass_count, glass),
                                           .help = "Glass for frames, bought cut to size."};

static const struct spelling first_cuts[] = {{"rip", 0}, {"crosscut", 1}, {0}};

static const struct key saw_keys[] = {
    {"kerf", AS_LENGTH(INCHES(0, 1)), FIELD(saw, kerf), "1/8 in", .needed = true,
     .help = "lost by each cut"},
    {"length allowance", AS_LENGTH(INCHES(0, 12)), FIELD(saw, length_allowance), "1 in",
     .needed = true, .help = "rough length over finished length"},
    {"edge allowance", AS_LENGTH(INCHES(0, 2)), FIELD(saw, edge_allowance), "1/32 in",
     .needed = true, .help = "rough width over finished width, each edge"},
    {"straighten", AS_LENGTH(INCHES(0, 2)), FIELD(saw, straighten), "1/4 in",
     .help = "taken off each side of a board before it is ripped; used by plan; absent: none"},
    {"first cut", AS_FLAG(first_cuts), FIELD(saw, crosscut_first), "rip", "crosscut",
     .help = "of a board by plan: rip it into strips and crosscut them, or crosscut it into "
             "segments and rip those; absent: rip"},
    {"round sizes to", AS_LENGTH(RANGE(NM_PER_TENTH_MM, NM_PER_INCH / 2)), FIELD(saw, size_step),
     "1/32 in", "0.5 mm",
     .help = "what the shop's tapes and fences have; absent: sizes are as they come"},
};

/* A step that does not go up in the inch or the centimeter is on no tape. */
static void check_saw(struct reader *reader, const struct ini_section *section, void *target) {
    const struct saw *saw = target;
    const bool inches = reader->unit == LENGTH_INCH;
    const length whole = inches ? NM_PER_INCH : 10 * NM_PER_MM;

    (void)section;
    if (saw->size_step.set && whole % saw->size_step.amount != 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "no-tape-step", saw->size_step.place,
                    "sizes cannot be rounded to this: it does not go up in %s; expected a step "
                    "that a tape has, as %s",
                    inches ? "an inch" : "10 mm", inches ? "1/32 or 1/16" : "0.5 or 1 mm");
    }
}

const struct section_kind section_saw = {"saw",
                                         saw_keys,
                                         COUNT_OF(saw_keys),
                                         SECTION(rates, saw),
                                         .needed = true,
                                         .check = check_saw,
                                         .help = "What sawing and milling take."};
