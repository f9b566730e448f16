/* SPDX-License-Identifier: MIT */
/* Values are held against the ranges of the shop, else against those of the table
 * (plausible_keys.c). */
#include "read/rates/plausible.h"

#include "base/array.h"
#include "base/text.h"
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/rates/rates_keys.h"

#include <stddef.h>
#include <string.h>

/* --- ranges --- */

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
    const struct key *const key = &section_plausible.keys[usual];
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
    const struct key *const key = &section_plausible.keys[usual];
    /* 0 says of the others that there is none of it; nobody works for nothing */
    if (!value->set || (value->amount == 0 && usual != USUAL_LABOR_RATE)) {
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
#define IN(usual, list, count, one, field)                                                         \
    { usual, SECTIONS(rates, list, count, one), offsetof(struct one, field), NO_CHOICE }
    IN_SHOP(USUAL_LABOR_RATE, labor_rate),
    IN_SHOP_BY(USUAL_OVERHEAD, overhead, overhead_on),
    IN_SHOP(USUAL_HOURS, hours_per_day),
    IN_SHOP_BY(USUAL_ALLOWANCE, allowance, allowance_on),
    IN_SHOP(USUAL_CONTINGENCY, contingency),
    IN_SHOP(USUAL_REMAKES, remakes),
    IN_SHOP_BY(USUAL_PROFIT, profit, profit_as),
    IN_SHOP(USUAL_TAX, purchase_tax),
    IN(USUAL_LABOR_RATE, operations, operation_count, operation, labor_rate),
    IN(USUAL_MACHINE_RATE, machines, machine_count, machine, rate),
    IN(USUAL_LUMBER_PRICE, lumber, lumber_count, lumber, price),
    {USUAL_LUMBER_WASTE, SECTIONS(rates, lumber, lumber_count, lumber),
     offsetof(struct lumber, waste), offsetof(struct lumber, waste_as)},
    IN(USUAL_SHEET_PRICE, sheets, sheet_count, sheet, price),
    {USUAL_SHEET_WASTE, SECTIONS(rates, sheets, sheet_count, sheet), offsetof(struct sheet, waste),
     offsetof(struct sheet, waste_as)},
    IN(USUAL_GLASS_PRICE, glass, glass_count, glass, price),
    {USUAL_HARDWARE_PRICE, SECTIONS(rates, hardware, hardware_count, hardware),
     offsetof(struct hardware, price), offsetof(struct hardware, price_by)},
    IN(USUAL_COVERAGE, coatings, coating_count, coating, coverage),
    IN(USUAL_DEFECTS, lumber, lumber_count, lumber, defects),
    IN(USUAL_BANDING_PRICE, bandings, banding_count, banding, price),
    IN(USUAL_RESERVE, bandings, banding_count, banding, waste),
    IN(USUAL_STOPS_PRICE, glass, glass_count, glass, stops),
    IN(USUAL_BOUGHT_IN, styles, style_count, style, bought_in),
    IN(USUAL_PUT_OUT, finishes, finish_count, finish, put_out),
    IN(USUAL_HANDLING, operations, operation_count, operation, handling),
    IN(USUAL_SETUP, operations, operation_count, operation, setup),
    IN(USUAL_FEED, operations, operation_count, operation, feed),
    IN(USUAL_SOLIDS, coatings, coating_count, coating, solids),
    IN(USUAL_MIXED_IN, coatings, coating_count, coating, reducer),
    IN(USUAL_MIXED_IN, coatings, coating_count, coating, catalyst),
    IN(USUAL_RESERVE, coatings, coating_count, coating, reserve),
    IN(USUAL_LOSS, sprays, spray_count, spray, other_loss),
    IN(USUAL_RESERVE, hardware, hardware_count, hardware, spares),
    IN(USUAL_TRANSFER, sprays, spray_count, spray, transfer),
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

/* Minutes are of a piece, of a measure, or of the job; USUAL_COUNT: nothing is said of them. */
static enum usual usual_minutes(const struct operation *operation) {
    switch ((enum driver)operation->per.choice) {
    case DRIVER_JOB:
        return USUAL_MINUTES_PER_JOB;
    case DRIVER_FRAME_RUN:
    case DRIVER_EDGE_RUN:
    case DRIVER_DOOR_RUN:
    case DRIVER_GLUE_LINE:
    case DRIVER_RAISED_RUN:
    case DRIVER_BANDED_RUN:
    case DRIVER_BAR_RUN:
    case DRIVER_AREA:
    case DRIVER_SPRAYED:
    case DRIVER_SPRAYED_PER_COAT:
    case DRIVER_SPRAYED_BETWEEN:
    case DRIVER_SOLID_AREA:
        return USUAL_MINUTES_BY_SIZE;
    case DRIVER_DOOR:
    case DRIVER_PART:
    case DRIVER_STILE:
    case DRIVER_RAIL:
    case DRIVER_PANEL:
    case DRIVER_JOINT:
    case DRIVER_ARCH:
    case DRIVER_BAR:
    case DRIVER_HINGE:
    case DRIVER_SOLID_PANEL:
    case DRIVER_PANE:
    case DRIVER_SHEET:
    case DRIVER_BOARD:
    case DRIVER_PULL:
    case DRIVER_HARDWARE:
    case DRIVER_CUT:
        return USUAL_MINUTES;
    case DRIVER_LUMBER: /* board feet or cubic meters, which differ by more than a slip */
    case DRIVER_COUNT:
        break;
    }
    return USUAL_COUNT;
}

void plausible_check_rates(struct reader *reader, const struct rates *rates) {
    for (size_t i = 0; i < COUNT_OF(checked); i++) {
        ask_checked(reader, rates, &checked[i]);
    }
    for (size_t i = 0; i < rates->operation_count; i++) {
        const struct operation *const operation = &rates->operations[i];
        const enum usual usual = usual_minutes(operation);
        if (usual < USUAL_COUNT) {
            ask(reader, rates, usual, &operation->minutes, 0);
        }
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
    for (size_t i = 0; i < sale->stage_count; i++) {
        ask(reader, rates, USUAL_DEPOSIT, &sale->stages[i].value, 0);
    }
}
