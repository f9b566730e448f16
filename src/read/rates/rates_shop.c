/* SPDX-License-Identifier: MIT */
/* What concerns the whole shop: money, hours, hardware and small things. */
#include "read/key/currency.h"
#include "read/key/grammar.h"
#include "read/key/measure.h"
#include "read/rates/rates_keys.h"

#include <string.h>

const struct form forms_money[] = {
    {"", UNIT_MONEY, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct form forms_per_hour[] = {
    {"per hour", UNIT_MONEY_PER_HOUR, 0, 0, 100000},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct form forms_percent[] = {
    {"%", UNIT_PERCENT, 0, 0, 100},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct form forms_hours[] = {
    {"hour", UNIT_HOUR, 0, 0, 1000},
    {"", UNIT_HOUR, 0, 0, 1000},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct form forms_minutes[] = {
    {"", UNIT_MIN, 0, 0, 10000},
    {"min", UNIT_MIN, 0, 0, 10000},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
const struct spelling choices_unit[] = {{"in", LENGTH_INCH}, {"mm", LENGTH_MM}, {NULL, 0}};
const struct spelling choices_yes_no[] = {{"yes", 1}, {"no", 0}, {NULL, 0}};

static const struct form allowance[] = {
    {"% added", UNIT_PERCENT, ALLOWANCE_ADDED, 0, 200},
    {"% of shift", UNIT_PERCENT, ALLOWANCE_OF_SHIFT, 0, 90},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form overhead[] = {
    {"per hour", UNIT_MONEY_PER_HOUR, OVERHEAD_PER_HOUR, 0, 100000},
    {"% of cost", UNIT_PERCENT, OVERHEAD_OF_COST, 0, 1000},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form profit[] = {
    {"% markup", UNIT_PERCENT, PROFIT_MARKUP, 0, 1000},
    {"% margin", UNIT_PERCENT, PROFIT_MARGIN, 0, 95},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form remakes[] = {
    {"% of door", UNIT_PERCENT, 0, 0, 100},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form minimum_door[] = {
    {"sqft", UNIT_SQFT, 0, 0, 100},
    {"m2", UNIT_M2, 0, 0, 10},
    {"", UNIT_MONEY, 0, 0, NO_LIMIT},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct form hours_per_day[] = {
    {"", UNIT_HOUR, 0, 1, 24},
    {"hour", UNIT_HOUR, 0, 1, 24},
    {NULL, UNIT_MONEY, 0, 0, 0},
};
static const struct spelling priced_by[] = {
    {"factor", PRICED_BY_FACTOR}, {"plan", PRICED_BY_PLAN}, {NULL, 0}};
static const struct spelling paper_sizes[] = {
    {"letter", PAPER_LETTER}, {"A4", PAPER_A4}, {NULL, 0}};
static const struct spelling charged[] = {
    {"used", CHARGED_USED}, {"bought", CHARGED_BOUGHT}, {NULL, 0}};

static void read_currency(struct reader *reader, const struct key *key, const struct entry *entry,
                          void *target) {
    read_text(reader, key, entry, target);
    if (!currency_known(entry->text)) {
        const char *meant = currency_meant(entry->text);

        problem_add(reader->problems, SEVERITY_WARNING, "unknown-currency", entry->place,
                    "currency '%s' is no code of ISO 4217%s%s%s",
                    problem_quote(reader->problems, entry->text),
                    meant == NULL ? "; expected one like 'USD'" : "; did you mean '",
                    meant == NULL ? "" : meant, meant == NULL ? "" : "'?");
    }
}

static const struct key shop_keys[] = {
    {.name = "name",
     .read = read_text,
     .at = offsetof(struct shop, name),
     .example = "The door shop",
     .help = "the shop, for the head of the quote"},
    {.name = "address",
     .read = read_text,
     .at = offsetof(struct shop, address),
     .example = "4 Mill Yard",
     .help = "below the name on the quote"},
    {.name = "contact",
     .read = read_text,
     .at = offsetof(struct shop, contact),
     .example = "doors@example.com",
     .help = "how the client reaches the shop"},
    {.name = "logo",
     .read = read_path,
     .at = offsetof(struct shop, logo_path),
     .example = "logo.png",
     .help = "a PNG picture for the head of the client's papers, beside this file"},
    {.name = "terms file",
     .read = read_path,
     .at = offsetof(struct shop, terms_path),
     .example = "terms.txt",
     .help = "the terms for the client's papers, a text file beside this file"},
    {.name = "paper size",
     .read = read_choice,
     .at = offsetof(struct shop, paper_size),
     .choices = paper_sizes,
     .example = "letter",
     .other = "A4",
     .help = "of all that is printed; absent: letter with `unit = in`, A4 with `unit = mm`"},
    {.name = "currency",
     .read = read_currency,
     .at = offsetof(struct shop, currency),
     .needed = true,
     .example = "USD",
     .help = "a code of ISO 4217, shown beside money"},
    {.name = "unit",
     .read = read_unit,
     .at = offsetof(struct shop, unit),
     .choices = choices_unit,
     .needed = true,
     .example = "in",
     .other = "mm",
     .help = "of bare lengths in this file; also decides between gallons and liters and so on"},
    {.name = "woods",
     .read = read_path,
     .at = offsetof(struct shop, woods),
     .example = "woods.csv",
     .help = "the table of woods; absent: woods.csv beside this file, if there is one"},
    {.name = "labor rate",
     .read = read_measure,
     .at = offsetof(struct shop, labor_rate),
     .forms = forms_per_hour,
     .needed = true,
     .example = "38.00 per hour",
     .help = "wage with payroll taxes, insurance and paid leave; no overhead"},
    {.name = "allowance",
     .read = read_measure,
     .at = offsetof(struct shop, allowance),
     .choice_at = offsetof(struct shop, allowance_on),
     .forms = allowance,
     .example = "12 % added",
     .other = "12 % of shift",
     .help = "for rest and delay: added to the minutes, or the part of a shift"},
    {.name = "hours per day",
     .read = read_measure,
     .at = offsetof(struct shop, hours_per_day),
     .forms = hours_per_day,
     .needed = true,
     .example = "7",
     .help = "worked hours of a day"},
    {.name = "overhead",
     .read = read_measure,
     .at = offsetof(struct shop, overhead),
     .choice_at = offsetof(struct shop, overhead_on),
     .forms = overhead,
     .example = "14.00 per hour",
     .other = "18 % of cost",
     .help = "rent, power, insurance and the like"},
    {.name = "contingency",
     .read = read_measure,
     .at = offsetof(struct shop, contingency),
     .forms = forms_percent,
     .example = "3 %",
     .help = "of direct cost, for what goes wrong"},
    {.name = "profit",
     .read = read_measure,
     .at = offsetof(struct shop, profit),
     .choice_at = offsetof(struct shop, profit_as),
     .forms = profit,
     .example = "25 % markup",
     .other = "20 % margin",
     .help = "added to cost, or the part of the price"},
    {.name = "remakes",
     .read = read_measure,
     .at = offsetof(struct shop, remakes),
     .forms = remakes,
     .example = "2 % of doors",
     .help = "doors made a second time, as a cost of all"},
    {.name = "tax on purchases",
     .read = read_measure,
     .at = offsetof(struct shop, purchase_tax),
     .forms = forms_percent,
     .example = "6 %",
     .help = "sales tax that the shop pays on materials; a cost"},
    {.name = "minimum job",
     .read = read_measure,
     .at = offsetof(struct shop, minimum_job),
     .forms = forms_money,
     .example = "450",
     .help = "a smaller job is raised to this"},
    {.name = "minimum door",
     .read = read_measure,
     .at = offsetof(struct shop, minimum_door),
     .forms = minimum_door,
     .example = "1.5 sqft",
     .other = "45.00",
     .help = "a smaller door is priced as this area, or at this price"},
    {.name = "round price to",
     .read = read_measure,
     .at = offsetof(struct shop, round_price_to),
     .forms = forms_money,
     .example = "0.01",
     .help = "a door's price is rounded up to this"},
    {.name = "price lumber by",
     .read = read_choice,
     .at = offsetof(struct shop, lumber_by),
     .choices = priced_by,
     .example = "factor",
     .other = "plan",
     .help = "which amount of lumber is charged; both are shown; absent: factor"},
    {.name = "price sheets by",
     .read = read_choice,
     .at = offsetof(struct shop, sheets_by),
     .choices = priced_by,
     .example = "factor",
     .other = "plan",
     .help = "which amount of sheets is charged; both are shown; absent: factor"},
    {.name = "charge finish",
     .read = read_choice,
     .at = offsetof(struct shop, charge_finish),
     .choices = charged,
     .example = "used",
     .other = "bought",
     .help = "what is used of the cans, or the cans; absent: used"},
    {.name = "charge sheets",
     .read = read_choice,
     .at = offsetof(struct shop, charge_sheets),
     .choices = charged,
     .example = "bought",
     .other = "used",
     .help = "what is used of the sheets and of rolls of banding, or all of them; absent: used"},
    {.name = "charge hardware",
     .read = read_choice,
     .at = offsetof(struct shop, charge_hardware),
     .choices = charged,
     .example = "used",
     .other = "bought",
     .help = "the pieces used, or the packs; absent: used"},
    {.name = "operations",
     .read = read_names,
     .at = offsetof(struct shop, operations),
     .names = NAME_OPERATION,
     .example = "quote and measure, clean up",
     .help = "operations that every job has"},
};

static void check_shop(struct reader *reader, const struct ini_section *section, void *target) {
    struct shop *shop = target;

    (void)section;
    if (shop->round_price_to.set && shop->round_price_to.amount == 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "out-of-range", shop->round_price_to.place,
                    "round price to '0' is out of range; expected an amount like '0.01'");
    }
}

const struct section_kind section_shop = {.name = "shop",
                                          .keys = shop_keys,
                                          .key_count = COUNT_OF(shop_keys),
                                          .needed = true,
                                          .at = offsetof(struct rates, shop),
                                          .check = check_shop,
                                          .help = "What holds for the whole shop."};
