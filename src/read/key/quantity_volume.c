/* SPDX-License-Identifier: MIT */
/* Liquid volumes: numbers that carry a unit of their own. */
#include "base/array.h"
#include "base/int128.h"
#include "read/key/quantity.h"
#include "read/key/range.h"
#include "read/key/unit_suffix.h"

#include <string.h>

/* Each as a fraction of a US gallon or of a litre, exactly. */
static const struct volume_row {
    const char *suffix;
    int64_t gallon_over, gallon_under, litre_over, litre_under;
} volumes[] = {
    {"floz", 1, 128, 0, 0}, {"pt", 1, 8, 0, 0},    {"qt", 1, 4, 0, 0},
    {"gal", 1, 1, 0, 0},    {"ml", 0, 0, 1, 1000}, {"l", 0, 0, 1, 1},
};

static const struct volume_row *find_volume(const char *suffix) {
    for (size_t i = 0; i < COUNT_OF(volumes); i++) {
        if (strcmp(volumes[i].suffix, suffix) == 0) {
            return &volumes[i];
        }
    }
    return NULL;
}

static const struct unit_form any_number[] = {
    {"", UNIT_NUMBER, 0, 0, NO_LIMIT},
    {NULL, UNIT_NUMBER, 0, 0, 0},
};

/* amount / 10^decimals of a row's unit, in millionths of a gallon or litre. */
static int64_t convert(const struct volume_row *row, enum length_unit unit, int64_t amount,
                       uint8_t decimals) {
    int128 over = (int128)amount * 1000000;
    int128 under = 1;

    for (; decimals > 0; decimals--) {
        under *= 10;
    }
    if (row->gallon_under != 0) {
        over *= row->gallon_over;
        under *= row->gallon_under;
        if (unit == LENGTH_MM) {
            over *= LITRES_PER_GALLON_OVER;
            under *= LITRES_PER_GALLON_UNDER;
        }
    } else {
        over *= row->litre_over;
        under *= row->litre_under;
        if (unit == LENGTH_INCH) {
            over *= LITRES_PER_GALLON_UNDER;
            under *= LITRES_PER_GALLON_OVER;
        }
    }
    return (int64_t)int128_round(over, under);
}

static void report_volume(struct reader *reader, const struct key *key, const struct entry *entry) {
    problem_add(reader->problems, SEVERITY_ERROR, "wrong-unit", entry->place,
                "%s '%s' has no unit of volume (fl oz, pt, qt, gal, ml, L); expected %s", key->name,
                entry_quote(reader, entry), key_expected(reader, key));
}

/* The number of a volume with the range that may follow it, as written. plain: all that stands
 * behind the number, in the spelling of forms; row: its unit, NULL: it has none. */
static bool take_volume(struct reader *reader, const struct key *key, const struct entry *entry,
                        const char *plain, const struct volume_row *row, struct value *value) {
    const struct unit_form forms[] = {{plain, UNIT_NUMBER, 0, 0, NO_LIMIT}, {0}};

    return quantity_value(reader, key, entry, row == NULL ? any_number : forms, value, NULL) &&
           row != NULL;
}

bool volume_value(struct reader *reader, const struct key *key, const struct entry *entry,
                  const char *per, struct value *value) {
    char *const text = pool_text(&reader->problems->pool, entry->text, strlen(entry->text));
    const size_t size = strspn(entry->text, "+-0123456789.");
    const struct volume_row *row;
    char plain[UNIT_SUFFIX_SIZE] = "";
    char suffix[UNIT_SUFFIX_SIZE];
    char *low;
    char *high;
    char *end;

    if (text == NULL || !range_take(reader, entry, text, &low, &high)) {
        return false;
    }
    if (!unit_suffix_plain(text + size, plain)) {
        report_volume(reader, key, entry);
        return false;
    }
    memcpy(suffix, plain, sizeof suffix);
    if (per != NULL) {
        end = strstr(suffix, " per ");
        if (end == NULL || strcmp(end + 5, per) != 0) {
            problem_add(reader->problems, SEVERITY_ERROR, "wrong-unit", entry->place,
                        "%s '%s' does not say 'per %s'; expected %s", key->name,
                        entry_quote(reader, entry), per, key_expected(reader, key));
            return false;
        }
        *end = '\0';
    }
    row = find_volume(suffix);
    if (row == NULL && size > 0) {
        report_volume(reader, key, entry);
        return false;
    }
    if (!take_volume(reader, key, entry, plain, row, value)) {
        value->set = false;
        return false;
    }
    const bool nought = value->amount == 0 && key->kind.nought;
    if (value->amount > 0 && value->amount < INT64_C(1000000000)) {
        value->amount = convert(row, reader->unit, value->amount, value->decimals);
    } else {
        value->amount = 0;
    }
    value->unit = reader->unit == LENGTH_INCH ? UNIT_GAL : UNIT_L;
    value->decimals = 6;
    value_drop_zeros(value, 0);
    if ((value->amount == 0 && !nought) || value->amount >= INT64_C(1000000000000)) {
        value->set = false;
        problem_add(reader->problems, SEVERITY_ERROR, "out-of-range", entry->place,
                    "%s '%s' is out of range; expected %s", key->name, entry_quote(reader, entry),
                    key_expected(reader, key));
        return false;
    }
    return true;
}
