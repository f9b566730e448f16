/* SPDX-License-Identifier: MIT */
#include "read/key/quantity.h"

#include "base/array.h"
#include "base/text.h"
#include "figure/tape.h"
#include "read/key/currency.h"
#include "read/key/range.h"
#include "read/key/unit_suffix.h"

#include <string.h>

static char *copy(struct reader *reader, const char *text, size_t size) {
    return pool_text(&reader->problems->pool, text, size);
}

void comma_report(struct reader *reader, const struct key *key, const struct entry *entry) {
    char *const meant = copy(reader, entry->text, strlen(entry->text));
    char *const comma = meant == NULL ? NULL : strchr(meant, ',');
    const size_t digits = comma == NULL ? 0 : strspn(comma + 1, "0123456789");

    /* three digits may be thousands */
    if (digits > 0 && digits != 3 && strchr(comma + 1, ',') == NULL && strchr(meant, '.') == NULL) {
        *comma = '.';
        problem_add(reader->problems, SEVERITY_ERROR, "comma-in-number", entry->place,
                    "%s '%s' has a comma in its number; write decimals with a point: '%s'",
                    key->name, entry_quote(reader, entry), problem_quote(reader->problems, meant));
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, "comma-in-number", entry->place,
                    "%s '%s' has a comma in its number; write decimals with a point and nothing "
                    "between thousands: '1234.50'",
                    key->name, entry_quote(reader, entry));
    }
}

static void report_number(struct reader *reader, const struct key *key, const struct entry *entry,
                          const char *number) {
    static const char *const signs[] = {"$", "\xE2\x82\xAC", "\xC2\xA3"};
    struct problems *problems = reader->problems;

    for (size_t i = 0; i < COUNT_OF(signs); i++) {
        if (strncmp(number, signs[i], strlen(signs[i])) == 0) {
            problem_add(problems, SEVERITY_ERROR, "currency-sign", entry->place,
                        "%s '%s' has a currency sign; leave it out: '%s'", key->name,
                        entry_quote(reader, entry),
                        problem_quote(problems, text_skip_blanks(number + strlen(signs[i]))));
            return;
        }
    }
    if (length_read(entry->text, reader->unit, &(length){0}) == LENGTH_DATE) {
        problem_add(problems, SEVERITY_ERROR, "not-a-number", entry->place,
                    "%s '%s' is a date: a spreadsheet made it of a number; format the column as "
                    "text and type it anew, as in '%s'",
                    key->name, entry_quote(reader, entry), key->example);
        return;
    }
    problem_add(problems, SEVERITY_ERROR, "not-a-number", entry->place,
                "%s '%s' cannot be read as a number; expected %s", key->name,
                entry_quote(reader, entry), key_expected(reader, key));
}

static bool is_number_part(char c) {
    return (c >= '0' && c <= '9') || c == '.' || c == '-' || c == '+' || c == ',';
}

/* A plain number at the start of text, reported where it is none. *size: how long it is. */
static bool take_number(struct reader *reader, const struct key *key, const struct entry *entry,
                        const char *text, int64_t *amount, uint8_t *decimals, size_t *size) {
    const char *point;

    *size = 0;
    while (is_number_part(text[*size])) {
        (*size)++;
    }
    if (*size > 0 && text[*size - 1] == ',') {
        (*size)--; /* a comma between words */
    }
    if (*size > 1 && memchr(text, ',', *size) != NULL) {
        comma_report(reader, key, entry);
        return false;
    }
    point = memchr(text, '.', *size);
    if (point != NULL && *size - (size_t)(point - text) - 1 > 6) {
        problem_add(reader->problems, SEVERITY_ERROR, "too-many-decimals", entry->place,
                    "%s '%s' has more than 6 decimals; round it", key->name,
                    entry_quote(reader, entry));
        return false;
    }
    if (!text_decimal(text, *size, amount, decimals) ||
        (text[*size] == '/' && is_number_part(text[*size + 1]))) {
        report_number(reader, key, entry, text);
        return false;
    }
    return true;
}

/* The unit system that a unit belongs to, -1: both. */
static int system_of(enum unit unit) {
    static const int8_t systems[UNIT_COUNT_OF_UNITS] = {
        [UNIT_SQFT] = 1,
        [UNIT_M2] = 2,
        [UNIT_GAL] = 1,
        [UNIT_L] = 2,
        [UNIT_LB] = 1,
        [UNIT_KG] = 2,
        [UNIT_MONEY_PER_SQFT] = 1,
        [UNIT_MONEY_PER_M2] = 2,
        [UNIT_MONEY_PER_FT] = 1,
        [UNIT_MONEY_PER_M] = 2,
        [UNIT_FT_PER_MIN] = 1,
        [UNIT_M_PER_MIN] = 2,
        [UNIT_SQFT_PER_GAL] = 1,
        [UNIT_M2_PER_L] = 2,
    };

    return systems[unit] == 0 ? -1 : (systems[unit] == 1 ? LENGTH_INCH : LENGTH_MM);
}

/* Whether the first word behind a number is a currency: `6.35 EUR per bf`. */
static bool names_currency(const char *written) {
    const char *choice = written + strspn(written, " \t");
    char code[4] = "";

    if (strlen(choice) < 3) {
        return false;
    }
    memcpy(code, choice, 3);
    return currency_known(code) && (choice[3] == '\0' || choice[3] == ' ');
}

/* The form of that suffix; NULL: reported. */
static const struct unit_form *match_form(struct reader *reader, const struct key *key,
                                          const struct entry *entry, const struct unit_form *forms,
                                          const char *written) {
    char suffix[UNIT_SUFFIX_SIZE];
    bool plain = unit_suffix_plain(written, suffix);

    for (const struct unit_form *form = forms; plain && form->suffix != NULL; form++) {
        if (strcmp(form->suffix, suffix) != 0) {
            continue;
        }
        if (system_of(form->unit) >= 0 && system_of(form->unit) != (int)reader->unit) {
            problem_add(
                reader->problems, SEVERITY_ERROR, "other-system", entry->place,
                "%s '%s' is not in the units of this file, which has unit = %s; expected "
                "%s",
                key->name, entry_quote(reader, entry), reader->unit == LENGTH_INCH ? "in" : "mm",
                reader->unit == LENGTH_INCH ? "feet, square feet, gallons and pounds"
                                            : "meters, square meters, liters and kilograms");
            return NULL;
        }
        return form;
    }
    if (names_currency(written)) {
        problem_add(reader->problems, SEVERITY_ERROR, "currency-sign", entry->place,
                    "%s '%s' names a currency, which [shop] does for all; leave it out, as in %s",
                    key->name, entry_quote(reader, entry), key_expected(reader, key));
    } else if (plain && suffix[0] == '\0') {
        problem_add(reader->problems, SEVERITY_ERROR, "missing-unit", entry->place,
                    "%s '%s' has no unit; expected %s", key->name, entry_quote(reader, entry),
                    key_expected(reader, key));
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, "wrong-unit", entry->place,
                    "%s '%s' has the wrong unit; expected %s", key->name,
                    entry_quote(reader, entry), key_expected(reader, key));
    }
    return NULL;
}

static int64_t power_of_ten(unsigned exponent) {
    int64_t power = 1;

    while (exponent-- > 0) {
        power *= 10;
    }
    return power;
}

/* Most decimals that a unit is written with. */
static uint8_t most_decimals(const struct reader *reader, enum unit unit) {
    switch (unit) {
    case UNIT_MONEY:
        return reader->money_decimals;
    case UNIT_PERCENT:
        return 4;
    case UNIT_COUNT:
        return 0;
    default:
        return 6;
    }
}

static bool check_value(struct reader *reader, const struct key *key, const struct entry *entry,
                        const struct unit_form *form, const struct value *value) {
    struct problems *problems = reader->problems;
    int64_t one = power_of_ten(value->decimals);

    if (form->unit == UNIT_COUNT && value->decimals > 0) {
        problem_add(problems, SEVERITY_ERROR, "not-whole", entry->place,
                    "%s '%s' is no whole number; expected %s", key->name,
                    entry_quote(reader, entry), key_expected(reader, key));
        return false;
    }
    if (value->decimals > most_decimals(reader, form->unit)) {
        problem_add(problems, SEVERITY_ERROR, "too-many-decimals", entry->place,
                    "%s '%s' has more than %d decimals; round it", key->name,
                    entry_quote(reader, entry), most_decimals(reader, form->unit));
        return false;
    }
    if (value->amount < form->low * one ||
        (form->high != NO_LIMIT && value->amount > form->high * one)) {
        if (form->high == NO_LIMIT) {
            problem_add(problems, SEVERITY_ERROR, "out-of-range", entry->place,
                        "%s '%s' is out of range; expected %d or more", key->name,
                        entry_quote(reader, entry), form->low);
        } else {
            problem_add(problems, SEVERITY_ERROR, "out-of-range", entry->place,
                        "%s '%s' is out of range; expected %d to %d", key->name,
                        entry_quote(reader, entry), form->low, form->high);
        }
        return false;
    }
    return true;
}

/* One end of a range: of the value's unit, which may be said again. */
static bool take_end(struct reader *reader, const struct key *key, const struct entry *entry,
                     const struct unit_form *form, const char *text, struct value *end) {
    char suffix[UNIT_SUFFIX_SIZE];
    size_t size;

    *end = (struct value){.place = entry->place, .unit = (uint8_t)form->unit, .set = true};
    if (!take_number(reader, key, entry, text, &end->amount, &end->decimals, &size)) {
        return false;
    }
    if (!unit_suffix_plain(text + size, suffix) ||
        (suffix[0] != '\0' && strcmp(suffix, form->suffix) != 0)) {
        range_unread(reader, entry);
        return false;
    }
    if (form->unit == UNIT_MONEY) {
        value_drop_zeros(end, reader->money_decimals);
    }
    return check_value(reader, key, entry, form, end);
}

/* Whether a value lies in the range of the two texts; range: its ends. */
static bool hold_range(struct reader *reader, const struct key *key, const struct entry *entry,
                       const struct unit_form *form, const char *low, const char *high,
                       const struct value *value, struct range *range) {
    if (!take_end(reader, key, entry, form, low, &range->low) ||
        !take_end(reader, key, entry, form, high, &range->high)) {
        return false;
    }
    if (value_above(&range->low, value) || value_above(value, &range->high)) {
        range_report(reader, key, entry);
        return false;
    }
    range->set = true;
    return true;
}

bool quantity_ranged(struct reader *reader, const struct key *key, const struct entry *entry,
                     const struct unit_form *forms, struct value *value, int *choice,
                     struct range *range) {
    struct range ends = {.set = false};
    char *text = copy(reader, entry->text, strlen(entry->text));
    struct value read = {.place = entry->place, .set = true};
    struct price_date date;
    char *low;
    char *high;
    const struct unit_form *form;
    size_t size;

    if (text == NULL || !price_date_take(reader, entry, text, &date) ||
        !range_take(reader, entry, text, &low, &high)) {
        return false;
    }
    if (strstr(text, "(on ") != NULL) { /* before the range */
        price_date_report(reader, key, entry);
        return false;
    }
    if (!take_number(reader, key, entry, text, &read.amount, &read.decimals, &size)) {
        return false;
    }
    form = match_form(reader, key, entry, forms, text + size);
    if (form != NULL && form->unit == UNIT_MONEY) {
        value_drop_zeros(&read, reader->money_decimals);
    }
    if (form == NULL || !check_value(reader, key, entry, form, &read) ||
        (low != NULL && !hold_range(reader, key, entry, form, low, high, &read, &ends))) {
        return false;
    }
    read.unit = (uint8_t)form->unit;
    read.dated = date.on.set;
    const bool kept =
        number_keep(reader, key, entry,
                    &(struct number_written){.value = read,
                                             .ends = ends,
                                             .text = text,
                                             .low = low,
                                             .high = high,
                                             .date = date,
                                             .unit = text + size,
                                             .most_decimals = most_decimals(reader, form->unit),
                                             .least = form->low,
                                             .most = form->high});
    if (read.dated && (!kept || !unit_is_money(form->unit))) {
        price_date_report(reader, key, entry);
        return false;
    }
    *value = read;
    if (range != NULL) {
        *range = ends;
    } else if (ends.set && !kept) {
        range_ask(reader, key, entry);
    }
    if (choice != NULL) {
        *choice = form->choice;
    }
    return true;
}

bool quantity_value(struct reader *reader, const struct key *key, const struct entry *entry,
                    const struct unit_form *forms, struct value *value, int *choice) {
    return quantity_ranged(reader, key, entry, forms, value, choice, NULL);
}

const char *quantity_text(struct reader *reader, const struct value *value) {
    struct value plain = *value;
    char text[32];
    value_drop_zeros(&plain, 0);
    figure_text(plain.amount, plain.decimals, text, sizeof text);
    return text_or_empty(pool_text(&reader->problems->pool, text, strlen(text)));
}
