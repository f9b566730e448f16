/* SPDX-License-Identifier: MIT */
/* What is usual stands in one table, the keys of [plausible]: the examples of a row are the ranges
 * that hold where the rates file gives none. They are wide: a number beyond them has mostly lost
 * its point, its unit or its percent sign. Common practice, no source. */
#include "read/rates/plausible.h"

#include "base/array.h"
#include "base/text.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <stddef.h>
#include <string.h>

/* --- the table --- */

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

/* The number in front of text; *size: how long it is. */
static bool take_number(const char *text, struct value *value, size_t *size) {
    *size = strspn(text, "0123456789.");
    return text_decimal(text, *size, &value->amount, &value->decimals);
}

/* The form that is written behind a number; NULL: none of these. */
static const struct unit_form *form_behind(const char *text, const struct unit_form *forms) {
    text += strspn(text, " ");
    for (; forms->suffix != NULL; forms++) {
        if (text_same(forms->suffix, text)) {
            return forms;
        }
    }
    return NULL;
}

/* A range as the table has it, `8 to 250 per hour`; NULL: text is NULL, or no range. */
static const struct unit_form *usual_range(const char *text, const struct unit_form *forms,
                                           struct bounds *bounds) {
    const char *const to = text == NULL ? NULL : strstr(text, " to ");
    size_t size;
    if (to == NULL || !take_number(text, &bounds->low, &size) ||
        !take_number(to + 4, &bounds->high, &size)) {
        return NULL;
    }
    return form_behind(to + 4 + size, forms);
}

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
    const struct entry high = entry_part(reader, entry, to + 4, end);
    struct entry low = entry_part(reader, entry, entry->text, to);
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
    {"coverage", AS_USUAL(coverage), AT(USUAL_COVERAGE), "30 to 3000 sqft per gal",
     "0.7 to 75 m2 per l", .help = "from a thick primer to a dye"},
    {"transfer efficiency", AS_USUAL(FORM("%", UNIT_PERCENT, 0, 100)), AT(USUAL_TRANSFER),
     "15 to 100 %", .help = "the worst of conventional guns keeps about a quarter on the work"},
    {"tax", AS_USUAL(FORM("%", UNIT_PERCENT, 0, NO_LIMIT)), AT(USUAL_TAX), "1 to 35 %",
     .help = "sales tax or VAT, of the job or on purchases: 0.0625 % is 6.25 %"},
    {"discount", AS_USUAL(FORM("%", UNIT_PERCENT, 0, 100)), AT(USUAL_DISCOUNT), "0.5 to 70 %",
     .help = "0.05 % is 5 %"},
    {"card fee", AS_USUAL(FORM("%", UNIT_PERCENT, 0, 100)), AT(USUAL_CARD_FEE), "0.2 to 10 %",
     .help = "what card companies take"},
    {"deposit", AS_USUAL(FORM("%", UNIT_PERCENT, 0, 100)), AT(USUAL_DEPOSIT), "2 to 100 %",
     .help = "0.5 % is 50 %"},
    {"year", AS_USUAL(FORM("", UNIT_COUNT, 1900, 9999)), AT(USUAL_YEAR), "2000 to 2099",
     .help = "of the date of a job: 1926 is 2026"},
};

const struct section_kind section_plausible = {"plausible", plausible_keys, USUAL_COUNT,
                                               SECTION(rates, usual),
                                               .help = "Between which values nothing is asked."};

/* --- asking --- */

static bool is_money(enum unit unit) {
    return unit >= UNIT_MONEY && unit <= UNIT_MONEY_PER_M;
}

/* Currencies of which one buys about what a dollar does. */
static bool is_like_dollars(const char *code) {
    static const char *const codes[] = {"USD", "EUR", "GBP", "CAD", "AUD", "NZD", "CHF", "SGD"};
    for (size_t i = 0; code != NULL && i < COUNT_OF(codes); i++) {
        if (strcmp(codes[i], code) == 0) {
            return true;
        }
    }
    return false;
}

/* What is usual of a value: the shop's range, else that of the table; NULL: nothing is said of its
 * unit. choice: what its suffix means. */
static const struct unit_form *find_range(const struct rates *rates, enum usual usual,
                                          const struct value *value, int choice,
                                          struct bounds *bounds) {
    const struct key *const key = &plausible_keys[usual];
    const struct bounds *const own = &rates->usual[usual];
    const char *const texts[] = {key->example, key->other};
    const bool percent = value->unit == UNIT_PERCENT || value->unit == UNIT_MONEY_EACH;
    for (const struct unit_form *form = key->kind.forms; own->high.set && form->suffix != NULL;
         form++) {
        if (own->high.unit == value->unit && form->unit == (enum unit)value->unit &&
            form->choice == own->choice && (!percent || own->choice == choice)) {
            *bounds = *own;
            return form;
        }
    }
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        const struct unit_form *const form = usual_range(texts[i], key->kind.forms, bounds);
        if (form != NULL && form->unit == (enum unit)value->unit &&
            (!percent || form->choice == choice) &&
            (!is_money(form->unit) || is_like_dollars(rates->shop.currency.s))) {
            return form;
        }
    }
    return NULL;
}

static void ask(struct reader *reader, const struct rates *rates, enum usual usual,
                const struct value *value, int choice) {
    struct bounds bounds = {0};
    const struct key *const key = &plausible_keys[usual];
    if (!value->set || value->amount == 0) {
        return;
    }
    const struct unit_form *const form = find_range(rates, usual, value, choice, &bounds);
    if (form == NULL || (!value_above(&bounds.low, value) && !value_above(value, &bounds.high))) {
        return;
    }
    const bool below = value_above(&bounds.low, value);
    const char *const unit = form->suffix;
    const char *const gap = unit[0] == '\0' ? "" : " ";
    const char *const is = quantity_text(reader, value);
    const char *const low = quantity_text(reader, &bounds.low);
    const char *const high = quantity_text(reader, &bounds.high);
    problem_add(reader->problems, SEVERITY_WARNING, "beyond-usual", value->place,
                "%s of %s%s%s is not within %s to %s%s%s (%s); a slip? if it is meant, say '%s = "
                "%s to %s%s%s' in [plausible] of the rates",
                key->name, is, gap, unit, low, high, gap, unit, key->help, key->name,
                below ? is : low, below ? high : is, gap, unit);
}

/* Where the values stand. */
#define NO_CHOICE SIZE_MAX
static const struct checked {
    enum usual usual;
    struct section_home home; /* of sections with names; else of the shop */
    size_t value, choice;     /* in the struct of the section; choice: NO_CHOICE */
} checked[] = {
#define IN_SHOP(usual, field)                                                                      \
    { usual, SECTION(rates, shop), offsetof(struct shop, field), NO_CHOICE }
#define IN_SHOP_BY(usual, field, by)                                                               \
    { usual, SECTION(rates, shop), offsetof(struct shop, field), offsetof(struct shop, by) }
    IN_SHOP(USUAL_LABOR_RATE, labor_rate),
    IN_SHOP_BY(USUAL_OVERHEAD, overhead, overhead_on),
    IN_SHOP(USUAL_HOURS, hours_per_day),
    IN_SHOP_BY(USUAL_ALLOWANCE, allowance, allowance_on),
    IN_SHOP(USUAL_CONTINGENCY, contingency),
    IN_SHOP(USUAL_REMAKES, remakes),
    IN_SHOP_BY(USUAL_PROFIT, profit, profit_as),
    IN_SHOP(USUAL_TAX, purchase_tax),
    {USUAL_LABOR_RATE, SECTIONS(rates, operations, operation_count, operation),
     offsetof(struct operation, labor_rate), NO_CHOICE},
    {USUAL_MACHINE_RATE, SECTIONS(rates, machines, machine_count, machine),
     offsetof(struct machine, rate), NO_CHOICE},
    {USUAL_LUMBER_PRICE, SECTIONS(rates, lumber, lumber_count, lumber),
     offsetof(struct lumber, price), NO_CHOICE},
    {USUAL_LUMBER_WASTE, SECTIONS(rates, lumber, lumber_count, lumber),
     offsetof(struct lumber, waste), offsetof(struct lumber, waste_as)},
    {USUAL_SHEET_PRICE, SECTIONS(rates, sheets, sheet_count, sheet), offsetof(struct sheet, price),
     NO_CHOICE},
    {USUAL_SHEET_WASTE, SECTIONS(rates, sheets, sheet_count, sheet), offsetof(struct sheet, waste),
     offsetof(struct sheet, waste_as)},
    {USUAL_GLASS_PRICE, SECTIONS(rates, glass, glass_count, glass), offsetof(struct glass, price),
     NO_CHOICE},
    {USUAL_HARDWARE_PRICE, SECTIONS(rates, hardware, hardware_count, hardware),
     offsetof(struct hardware, price), offsetof(struct hardware, price_by)},
    {USUAL_COVERAGE, SECTIONS(rates, coatings, coating_count, coating),
     offsetof(struct coating, coverage), NO_CHOICE},
    {USUAL_TRANSFER, SECTIONS(rates, sprays, spray_count, spray), offsetof(struct spray, transfer),
     NO_CHOICE},
};

static void ask_checked(struct reader *reader, const struct rates *rates,
                        const struct checked *row) {
    const char *base = (const char *)rates + row->home.at;
    size_t count = 1;
    if (row->home.named) {
        memcpy(&base, (const char *)rates + row->home.at, sizeof base);
        memcpy(&count, (const char *)rates + row->home.count_at, sizeof count);
    }
    for (size_t i = 0; i < count; i++) {
        const char *const one = base + i * row->home.size;
        const struct value *const value = (const void *)(one + row->value);
        const struct choice *const choice =
            row->choice == NO_CHOICE ? NULL : (const void *)(one + row->choice);
        ask(reader, rates, row->usual, value, choice == NULL ? 0 : choice->choice);
    }
}

void plausible_check_rates(struct reader *reader, const struct rates *rates) {
    for (size_t i = 0; i < COUNT_OF(checked); i++) {
        ask_checked(reader, rates, &checked[i]);
    }
    for (size_t i = 0; i < COST_GROUP_COUNT; i++) {
        ask(reader, rates, USUAL_PROFIT, &rates->markup[i], PROFIT_MARKUP);
    }
    for (size_t i = 0; i < rates->lumber_count; i++) {
        const struct lumber *const lumber = &rates->lumber[i];
        for (size_t b = 0; b < lumber->breaks.count; b++) {
            ask(reader, rates, USUAL_LUMBER_PRICE, &lumber->breaks.s[b].value, 0);
        }
    }
}

void plausible_check_job(struct reader *reader, const struct rates *rates, const struct job *job) {
    const struct sale *const sale = &job->sale;
    const struct value year = {.amount = job->year,
                               .place = job->date.place,
                               .unit = UNIT_COUNT,
                               .set = job->date.s != NULL};
    ask(reader, rates, USUAL_YEAR, &year, 0);
    ask(reader, rates, USUAL_TAX, &sale->tax, 0);
    ask(reader, rates, USUAL_DISCOUNT, &sale->discount, 0);
    ask(reader, rates, USUAL_CARD_FEE, &sale->card_fee, 0);
    ask(reader, rates, USUAL_DEPOSIT, &sale->deposit, 0);
}
