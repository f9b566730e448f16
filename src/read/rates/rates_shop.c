/* SPDX-License-Identifier: MIT */
/* What concerns the whole shop: money, hours, hardware and small things. */
#include "read/key/currency.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <string.h>

const struct unit_form forms_per_hour[] = {
    {"per hour", UNIT_MONEY_PER_HOUR, 0, 0, 100000},
    {0},
};

static const struct unit_form allowance[] = {
    {"% added", UNIT_PERCENT, ALLOWANCE_ADDED, 0, 200},
    {"% of shift", UNIT_PERCENT, ALLOWANCE_OF_SHIFT, 0, 90},
    {0},
};
static const struct unit_form overhead[] = {
    {"per hour", UNIT_MONEY_PER_HOUR, OVERHEAD_PER_HOUR, 0, 100000},
    {"per bench hour", UNIT_MONEY_PER_HOUR, OVERHEAD_PER_BENCH_HOUR, 0, 100000},
    {"% of cost", UNIT_PERCENT, OVERHEAD_OF_COST, 0, 1000},
    {0},
};
static const struct unit_form profit[] = {
    {"% markup", UNIT_PERCENT, PROFIT_MARKUP, 0, 1000},
    {"% margin", UNIT_PERCENT, PROFIT_MARGIN, 0, 95},
    {0},
};
static const struct unit_form remakes[] = {{"% of door", UNIT_PERCENT, 0, 0, 100}, {0}};
static const struct unit_form minimum_door[] = {
    {"sqft", UNIT_SQFT, 0, 0, 100},
    {"m2", UNIT_M2, 0, 0, 10},
    {"", UNIT_MONEY, 0, 0, NO_LIMIT},
    {0},
};
static const struct unit_form hours_per_day[] = {
    {"", UNIT_HOUR, 0, 1, 24},
    {"hour", UNIT_HOUR, 0, 1, 24},
    {0},
};
static const struct spelling priced_by[] = {
    {"factor", PRICED_BY_FACTOR}, {"plan", PRICED_BY_PLAN}, {0}};
const struct spelling choices_paper_size[] = {{"letter", PAPER_LETTER}, {"A4", PAPER_A4}, {0}};
static const struct spelling charged[] = {{"used", CHARGED_USED}, {"bought", CHARGED_BOUGHT}, {0}};

static void read_currency(struct reader *reader, const struct key *key, const struct entry *entry,
                          void *target) {
    read_text(reader, key, entry, target);
    if (!currency_known(entry->text)) {
        const char *meant = currency_meant(entry->text);

        problem_add(reader->problems, SEVERITY_WARNING, "unknown-currency", entry->place,
                    "currency '%s' is no code of ISO 4217%s%s%s", entry_quote(reader, entry),
                    meant == NULL ? "; expected one like 'USD'" : "; did you mean '",
                    meant == NULL ? "" : meant, meant == NULL ? "" : "'?");
    }
}

static void read_own(struct reader *reader, const struct key *key, const struct entry *entry,
                     void *target) {
    struct texts *const field = key_field(key, target);
    struct entry *items;
    size_t count;

    if (!list_split(reader, key, entry, false, &items, &count)) {
        return;
    }
    field->t = pool_take(reader->pool, count, sizeof *field->t);
    for (size_t i = 0; field->t != NULL && i < count; i++) {
        field->t[i] = entry_text(reader, &items[i]);
    }
    field->count = field->t == NULL ? 0 : count;
}

static const struct key shop_keys[] = {
    {"name", AS_TEXT, FIELD(shop, name), "The door shop",
     .help = "the shop, for the head of the quote"},
    {"address", AS_TEXT, FIELD(shop, address), "4 Mill Yard",
     .help = "below the name on the quote"},
    {"contact", AS_TEXT, FIELD(shop, contact), "doors@example.com",
     .help = "how the client reaches the shop"},
    {"license", AS_TEXT, FIELD(shop, license), "contractor license 00-0000",
     .help = "license and tax number, as the client should read them"},
    {"payment", AS_TEXT, FIELD(shop, payment), "by check, card or transfer",
     .help = "how the client can pay"},
    {"warranty", AS_TEXT, FIELD(shop, warranty), "2 years on joints and finish",
     .help = "what the shop stands for and how long; this may bind it"},
    {"logo", AS_PATH, FIELD(shop, logo_path), "logo.png",
     .help = "a PNG picture for the head of the client's papers, beside this file"},
    {"terms file", AS_PATH, FIELD(shop, terms_path), "terms.txt",
     .help = "the terms for the client's papers, a text file beside this file"},
    {"paper size", AS_CHOICE(choices_paper_size), FIELD(shop, paper_size), "letter", "A4",
     .help = "of all that is printed; absent: letter with `unit = in`, A4 with `unit = mm`"},
    {"currency", AS(read_currency), FIELD(shop, currency), "USD", .needed = true,
     .help = "a code of ISO 4217; amounts have its decimals"},
    {"unit", AS_UNIT, FIELD(shop, unit), "in", "mm", .needed = true,
     .help = "of bare lengths in this file; also decides between gallons and liters and so on"},
    {"woods", AS_PATH, FIELD(shop, woods), "woods.csv",
     .help = "the table of woods; absent: woods.csv beside this file, if there is one"},
    {"stock", AS_PATH, FIELD(shop, stock), "rack.csv",
     .help = "what is on the rack and used up first: a list beside this file; absent: nothing"},
    {"labor rate", AS_QUANTITY(forms_per_hour), FIELD(shop, labor_rate), "38.00 per hour",
     .needed = true, .help = "wage with payroll taxes, insurance and paid leave; no overhead"},
    {"allowance", AS_QUANTITY(allowance), FIELDS(shop, allowance, allowance_on), "12 % added",
     "12 % of shift", .help = "for rest and delay: added to the minutes, or the part of a shift"},
    {"hours per day", AS_QUANTITY(hours_per_day), FIELD(shop, hours_per_day), "7", .needed = true,
     .help = "worked hours of a day"},
    {"overhead", AS_QUANTITY(overhead), FIELDS(shop, overhead, overhead_on), "14.00 per hour",
     "18 % of cost", .help = "rent, power, insurance and the like"},
    {"contingency", AS_PERCENT(0, 100), FIELD(shop, contingency), "3 %",
     .help = "of direct cost, for what goes wrong"},
    {"profit", AS_QUANTITY(profit), FIELDS(shop, profit, profit_as), "25 % markup", "20 % margin",
     .help = "added to cost, or the part of the price"},
    {"remakes", AS_QUANTITY(remakes), FIELD(shop, remakes), "2 % of doors",
     .help = "doors made a second time, as a cost of all"},
    {"spare rails", AS_YES_NO, FIELD(shop, spare_rails), "yes", "no",
     .help = "mill spare rails of each width with the others, as many as cost least by `remakes`; "
             "absent: no"},
    {"tax on purchases", AS_PERCENT(0, 100), FIELD(shop, purchase_tax), "6 %",
     .help = "sales tax that the shop pays on materials; a cost"},
    {"minimum job", AS_MONEY, FIELD(shop, minimum_job), "450",
     .help = "a smaller job is raised to this"},
    {"minimum door", AS_QUANTITY(minimum_door), FIELD(shop, minimum_door), "1.5 sqft", "45.00",
     .help = "a smaller door is priced as this area, or at this price"},
    {"round price to", AS_MONEY, FIELD(shop, round_price_to), "0.01",
     .help = "a door's price is rounded up to this"},
    {"price lumber by", AS_CHOICE(priced_by), FIELD(shop, lumber_by), "factor", "plan",
     .help = "which amount of lumber is charged; both are shown; absent: factor"},
    {"price sheets by", AS_CHOICE(priced_by), FIELD(shop, sheets_by), "factor", "plan",
     .help = "which amount of sheets is charged; both are shown; absent: factor"},
    {"charge finish", AS_CHOICE(charged), FIELD(shop, charge_finish), "used", "bought",
     .help = "what is used of the cans, or the cans; absent: used"},
    {"charge sheets", AS_CHOICE(charged), FIELD(shop, charge_sheets), "bought", "used",
     .help = "what is used of the sheets, or all of them; absent: used"},
    {"charge banding", AS_CHOICE(charged), FIELD(shop, charge_banding), "used", "bought",
     .help = "what is used of rolls of banding, or whole rolls; absent: used"},
    {"charge hardware", AS_CHOICE(charged), FIELD(shop, charge_hardware), "used", "bought",
     .help = "the pieces used, or the packs; absent: used"},
    {"operations", AS_NAMES(NAME_OPERATION), FIELD(shop, operations), "quote and measure, clean up",
     .help = "operations that every job has"},
    {"invented", AS_YES_NO, FIELD(shop, invented), "yes", "no",
     .help = "the numbers of this file are made up, as those that ship: the papers say `example "
             "prices`; absent: no"},
    {"own", AS(read_own), FIELD(shop, own), "labor rate, lumber poplar, machine",
     .help = "of invented rates what is the shop's own by now: keys of [shop], sections, or kinds "
             "of section; absent: nothing"},
};

static void check_shop(struct reader *reader, const struct ini_section *section, void *target) {
    struct shop *shop = target;

    if (shop->spare_rails) {
        section_lacks(reader, section, "remakes", "to tell how many 'spare rails' are worth it");
    }
    if (shop->round_price_to.set && shop->round_price_to.amount == 0) {
        problem_add(reader->problems, SEVERITY_ERROR, "out-of-range", shop->round_price_to.place,
                    "round price to '0' is out of range; expected an amount like '0.01'");
    }
}

const struct section_kind section_shop = {"shop",
                                          shop_keys,
                                          COUNT_OF(shop_keys),
                                          SECTION(rates, shop),
                                          .needed = true,
                                          .check = check_shop,
                                          .help = "What holds for the whole shop."};
