/* SPDX-License-Identifier: MIT */
/* What is usual, the keys of [plausible]: the examples of a row are the ranges that hold where the
 * rates file gives none. They are wide: a number beyond them has mostly lost its point, its unit or
 * its percent sign. Common practice, no source. */
#include "base/array.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <string.h>

static const struct unit_form overhead[] = {
    {"per hour", UNIT_MONEY_PER_HOUR, OVERHEAD_PER_HOUR, 0, NO_LIMIT},
    {"% of cost", UNIT_PERCENT, OVERHEAD_OF_COST, 0, NO_LIMIT},
    {0},
};
static const struct unit_form allowance[] = {
    {"% added", UNIT_PERCENT, ALLOWANCE_ADDED, 0, NO_LIMIT},
    {"% of shift", UNIT_PERCENT, ALLOWANCE_OF_SHIFT, 0, NO_LIMIT},
    {0},
};
static const struct unit_form profit[] = {
    {"% markup", UNIT_PERCENT, PROFIT_MARKUP, 0, NO_LIMIT},
    {"% margin", UNIT_PERCENT, PROFIT_MARGIN, 0, NO_LIMIT},
    {0},
};
static const struct unit_form waste[] = {
    {"% added", UNIT_PERCENT, WASTE_ADDED, 0, NO_LIMIT},
    {"% lost", UNIT_PERCENT, WASTE_LOST, 0, NO_LIMIT},
    {0},
};
static const struct unit_form coverage[] = {
    {"sqft per gal", UNIT_SQFT_PER_GAL, 0, 0, NO_LIMIT},
    {"m2 per l", UNIT_M2_PER_L, 0, 0, NO_LIMIT},
    {0},
};

static const struct unit_form per_run[] = {
    {"per ft", UNIT_MONEY_PER_FT, 0, 0, NO_LIMIT},
    {"per m", UNIT_MONEY_PER_M, 0, 0, NO_LIMIT},
    {0},
};
static const struct unit_form feed[] = {
    {"ft per min", UNIT_FT_PER_MIN, 0, 0, NO_LIMIT},
    {"m per min", UNIT_M_PER_MIN, 0, 0, NO_LIMIT},
    {0},
};

/* `LOW to HIGH UNIT`, as the shop gives it. */
static void read_range(struct reader *reader, const struct key *key, const struct entry *entry,
                       void *target) {
    struct bounds *const field = key_field(key, target);
    const char *const to = strstr(entry->text, " to ");
    const char *const end = entry->text + strlen(entry->text);
    struct bounds read;
    if (to == NULL) {
        problem_add(reader->problems, SEVERITY_ERROR, "bad-item", entry->place,
                    "%s '%s' is no range; expected one like %s", key->name,
                    entry_quote(reader, entry), key_expected(reader, key));
        return;
    }
    struct entry high = entry_part(reader, entry, to + 4, end);
    struct entry low = entry_part(reader, entry, entry->text, to);
    high.fixed = true;
    low.fixed = true;
    if (!quantity_value(reader, key, &high, key->kind.forms, &read.high, &field->choice)) {
        return;
    }
    low.text = pool_format(&reader->problems->pool, "%s%s", low.text,
                           high.text + strspn(high.text, "+-0123456789."));
    if (low.text == NULL ||
        !quantity_value(reader, key, &low, key->kind.forms, &read.low, &field->choice)) {
        return;
    }
    if (value_above(&read.low, &read.high)) {
        problem_add(reader->problems, SEVERITY_ERROR, "not-ascending", entry->place,
                    "%s: '%s' goes down; expected one from small to large, like %s", key->name,
                    entry_quote(reader, entry), key_expected(reader, key));
        return;
    }
    field->low = read.low;
    field->high = read.high;
}

#define AS_USUAL(allowed) AS_OWN(read_range, .forms = (allowed))
#define MINUTES           FORM("", UNIT_MIN, 0, NO_LIMIT)
#define PERCENT           FORM("%", UNIT_PERCENT, 0, NO_LIMIT)
#define AT(which)                                                                                  \
    { (which) * sizeof(struct bounds), 0 }

/* In the order of enum usual. */
static const struct key plausible_keys[USUAL_COUNT] = {
    {"labor rate", AS_USUAL(forms_per_hour), AT(USUAL_LABOR_RATE), "8 to 250 per hour",
     .help = "from the least wage to a specialist's, with what is paid on it"},
    {"machine rate", AS_USUAL(forms_per_hour), AT(USUAL_MACHINE_RATE), "0.05 to 300 per hour",
     .help = "from a hand tool to a machining center, without the person"},
    {"overhead", AS_USUAL(overhead), AT(USUAL_OVERHEAD), "0.5 to 300 per hour",
     "1 to 300 % of cost", .help = "from a shed to a showroom"},
    {"hours per day", AS_USUAL(FORM("", UNIT_HOUR, 0, 24)), AT(USUAL_HOURS), "2 to 14",
     .help = "from an evening to the longest shift"},
    {"allowance", AS_USUAL(allowance), AT(USUAL_ALLOWANCE), "1 to 100 % added",
     "1 to 60 % of shift", .help = "rest and delay: 0.12 % is a slip for 12 %"},
    {"contingency", AS_USUAL(FORM("%", UNIT_PERCENT, 0, NO_LIMIT)), AT(USUAL_CONTINGENCY),
     "0.1 to 40 %", .help = "0.03 % is 3 %"},
    {"remakes", AS_USUAL(FORM("%", UNIT_PERCENT, 0, NO_LIMIT)), AT(USUAL_REMAKES), "0.1 to 40 %",
     .help = "of doors; over a third is a shop in trouble"},
    {"profit", AS_USUAL(profit), AT(USUAL_PROFIT), "1 to 400 % markup", "1 to 85 % margin",
     .help = "0.25 % is 25 %; of the markup of a group too"},
    {"lumber price", AS_USUAL(forms_lumber_price), AT(USUAL_LUMBER_PRICE), "0.5 to 150 per bf",
     "200 to 64000 per m3", .help = "from home-sawn softwood to rare hardwoods"},
    {"lumber waste", AS_USUAL(waste), AT(USUAL_LUMBER_WASTE), "5 to 200 % added", "5 to 70 % lost",
     .help = "no board is used whole; over two thirds lost is firewood"},
    {"sheet price", AS_USUAL(FORM("per sheet", UNIT_MONEY_PER_SHEET, 0, NO_LIMIT)),
     AT(USUAL_SHEET_PRICE), "3 to 700 per sheet", .help = "from hardboard to fancy veneers"},
    {"sheet waste", AS_USUAL(waste), AT(USUAL_SHEET_WASTE), "2 to 150 % added", "2 to 60 % lost",
     .help = "from panels cut without rest to half the sheet"},
    {"glass price", AS_USUAL(forms_per_area), AT(USUAL_GLASS_PRICE), "1 to 250 per sqft",
     "10 to 2700 per m2", .help = "from picture glass to leaded work"},
    {"hardware price", AS_USUAL(forms_hardware_price), AT(USUAL_HARDWARE_PRICE), "0.05 to 400 each",
     "0.5 to 8000 per pack", .help = "from a screw cap to a forged hinge"},
    {"banding price", AS_USUAL(per_run), AT(USUAL_BANDING_PRICE), "0.02 to 15 per ft",
     "0.06 to 50 per m", .help = "from paper to solid wood; of rolls the price is not asked about"},
    {"stops price", AS_USUAL(per_run), AT(USUAL_STOPS_PRICE), "0.02 to 20 per ft",
     "0.06 to 65 per m", .help = "from pinned strips to molded ones"},
    {"bought in", AS_USUAL(forms_per_area), AT(USUAL_BOUGHT_IN), "2 to 400 per sqft",
     "20 to 4300 per m2", .help = "from plain slabs to carved doors"},
    {"put out", AS_USUAL(forms_per_area), AT(USUAL_PUT_OUT), "0.3 to 80 per sqft",
     "3 to 860 per m2", .help = "from one clear coat to a polish by hand"},
    {"minutes", AS_USUAL(MINUTES), AT(USUAL_MINUTES), "0.01 to 90",
     .help = "of a piece: doors, parts, joints, hinges, panes, sheets, boards, cuts"},
    {"minutes by size", AS_USUAL(MINUTES), AT(USUAL_MINUTES_BY_SIZE), "0.002 to 30",
     .help = "of a foot, a square foot or a board foot, or metric"},
    {"minutes per job", AS_USUAL(MINUTES), AT(USUAL_MINUTES_PER_JOB), "1 to 1200",
     .help = "of what is counted once: from a minute to half a week"},
    {"handling", AS_USUAL(MINUTES), AT(USUAL_HANDLING), "0.005 to 20",
     .help = "from a strip passed on to a door carried by two"},
    {"setup", AS_USUAL(MINUTES), AT(USUAL_SETUP), "0.2 to 300",
     .help = "from a stop that is moved to a machine that is rebuilt"},
    {"feed", AS_USUAL(feed), AT(USUAL_FEED), "1 to 200 ft per min", "0.3 to 60 m per min",
     .help = "from a raised edge by hand to a molder"},
    {"defects", AS_USUAL(PERCENT), AT(USUAL_DEFECTS), "0.5 to 60 %",
     .help = "0.1 % is 10 %; over half of a board is another grade"},
    {"coverage", AS_USUAL(coverage), AT(USUAL_COVERAGE), "30 to 3000 sqft per gal",
     "0.7 to 75 m2 per l", .help = "from a thick primer to a dye"},
    {"solids", AS_USUAL(PERCENT), AT(USUAL_SOLIDS), "4 to 100 %",
     .help = "from a dye to what has no solvent: 0.38 % is 38 %"},
    {"mixed in", AS_USUAL(PERCENT), AT(USUAL_MIXED_IN), "0.3 to 200 %",
     .help = "reducer or catalyst, of coating or mix: 0.05 % is 5 %"},
    {"loss", AS_USUAL(PERCENT), AT(USUAL_LOSS), "0.3 to 40 %",
     .help = "other loss of spraying, beside what misses the work"},
    {"reserve", AS_USUAL(PERCENT), AT(USUAL_RESERVE), "0.3 to 60 %",
     .help = "reserve of a coating, spares of hardware, waste of banding: 0.05 % is 5 %"},
    {"transfer efficiency", AS_USUAL(FORM("%", UNIT_PERCENT, 0, 100)), AT(USUAL_TRANSFER),
     "15 to 100 %", .help = "the worst of conventional guns keeps about a quarter on the work"},
    {"tax", AS_USUAL(FORM("%", UNIT_PERCENT, 0, NO_LIMIT)), AT(USUAL_TAX), "1 to 35 %",
     .help = "sales tax or VAT, of the job or on purchases: 0.0625 % is 6.25 %"},
    {"discount", AS_USUAL(FORM("%", UNIT_PERCENT, 0, 100)), AT(USUAL_DISCOUNT), "0.5 to 70 %",
     .help = "0.05 % is 5 %"},
    {"card fee", AS_USUAL(FORM("%", UNIT_PERCENT, 0, 100)), AT(USUAL_CARD_FEE), "0.2 to 10 %",
     .help = "what card companies take"},
    {"deposit", AS_USUAL(FORM("%", UNIT_PERCENT, 0, 100)), AT(USUAL_DEPOSIT), "2 to 100 %",
     .help = "of a stage too: 0.5 % is 50 %"},
    {"year", AS_USUAL(FORM("", UNIT_COUNT, 1900, 9999)), AT(USUAL_YEAR), "2000 to 2099",
     .help = "of the date of a job: 1926 is 2026"},
};

const struct section_kind section_plausible = {"plausible", plausible_keys, USUAL_COUNT,
                                               SECTION(rates, usual),
                                               .help = "Between which values nothing is asked."};
