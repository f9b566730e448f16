/* SPDX-License-Identifier: MIT */
/* A length is read as a fraction of whole numbers times the nanometers of its unit, and rounded
 * once. */
#include "base/length.h"

#include "base/array.h"
#include "base/int128.h"
#include "base/text.h"

#include <stdio.h>
#include <string.h>

/* 1 km in nm. */
#define LONGEST INT64_C(1000000000000)
/* More digits than any length needs; the products below then stay far inside 128 bits. */
#define MOST_DIGITS 12
#define TOO_MANY    INT64_C(1000000000000)

struct ratio {
    int64_t over, under;
    bool improper; /* the fraction in it, by itself, is one or more */
};

static const struct unit_row {
    const char *name;
    length size; /* nm */
} units[] = {
    {"in", NM_PER_INCH},
    {"inch", NM_PER_INCH},
    {"inches", NM_PER_INCH},
    {"\"", NM_PER_INCH},
    {"''", NM_PER_INCH},
    {"\xE2\x80\xB3", NM_PER_INCH},             /* double prime */
    {"\xE2\x80\x9D", NM_PER_INCH},             /* closing double quote */
    {"\xE2\x80\xB2\xE2\x80\xB2", NM_PER_INCH}, /* two primes */
    {"ft", NM_PER_FOOT},
    {"foot", NM_PER_FOOT},
    {"feet", NM_PER_FOOT},
    {"'", NM_PER_FOOT},
    {"\xE2\x80\xB2", NM_PER_FOOT}, /* prime */
    {"\xE2\x80\x99", NM_PER_FOOT}, /* closing single quote */
    {"mm", NM_PER_MM},
    {"cm", 10 * NM_PER_MM},
    {"m", 1000 * NM_PER_MM},
    {"mil", NM_PER_MIL},
    {"mils", NM_PER_MIL},
    {"um", NM_PER_UM},
    {"\xC2\xB5m", NM_PER_UM}, /* micro sign */
    {"\xCE\xBCm", NM_PER_UM}, /* Greek mu */
};

static const struct fraction_row {
    const char *sign;
    int64_t over, under;
} fractions[] = {
    {"\xC2\xBC", 1, 4},     {"\xC2\xBD", 1, 2},     {"\xC2\xBE", 3, 4},
    {"\xE2\x85\x93", 1, 3}, {"\xE2\x85\x94", 2, 3}, {"\xE2\x85\x9B", 1, 8},
    {"\xE2\x85\x9C", 3, 8}, {"\xE2\x85\x9D", 5, 8}, {"\xE2\x85\x9E", 7, 8},
};

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool take(const char **at, const char *sign) {
    size_t size = strlen(sign);

    if (strncmp(*at, sign, size) != 0) {
        return false;
    }
    *at += size;
    return true;
}

static void skip_blanks(const char **at) {
    *at = text_skip_blanks(*at);
}

/* A run of digits; false: none. More than MOST_DIGITS read as a number that is too large for all.
 * *count: how many, may be NULL. */
static bool take_digits(const char **at, int64_t *number, int *count) {
    const char *from = *at;
    int64_t sum = 0;
    int digits = 0;

    while (is_digit(*from)) {
        digits++;
        sum = digits > MOST_DIGITS ? TOO_MANY : sum * 10 + (*from - '0');
        from++;
    }
    if (digits == 0) {
        return false;
    }
    *at = from;
    *number = sum;
    if (count != NULL) {
        *count = digits;
    }
    return true;
}

/* `7/16` or a fraction written as one character. */
static bool take_fraction(const char **at, struct ratio *value) {
    const char *from = *at;
    struct ratio read = {0, 1, false};

    for (size_t i = 0; i < COUNT_OF(fractions); i++) {
        if (take(&from, fractions[i].sign)) {
            *value = (struct ratio){fractions[i].over, fractions[i].under, false};
            *at = from;
            return true;
        }
    }
    if (!take_digits(&from, &read.over, NULL)) {
        return false;
    }
    if (!take(&from, "/") && !take(&from, "\xE2\x81\x84")) {
        return false;
    }
    if (!take_digits(&from, &read.under, NULL) || read.under == 0 || read.under > 1000000) {
        return false;
    }
    read.improper = read.over >= read.under;
    *value = read;
    *at = from;
    return true;
}

/* A hyphen between a whole and what follows it, or what word processors make of one: U+2010, U+2011
 * and the en dash. */
static bool take_hyphen(const char **at) {
    return take(at, "-") || take(at, "\xE2\x80\x90") || take(at, "\xE2\x80\x91") ||
           take(at, "\xE2\x80\x93");
}

/* Behind a whole number: ` 7/16`, `-7/16`. */
static bool take_joined_fraction(const char **at, struct ratio *value) {
    const char *from = *at;

    skip_blanks(&from);
    if (take_hyphen(&from)) {
        skip_blanks(&from);
    }
    if (!take_fraction(&from, value)) {
        return false;
    }
    *at = from;
    return true;
}

static bool take_decimals(const char **at, struct ratio *value) {
    const char *from = *at;
    int digits = 0;

    if (!take(&from, ".") || !take_digits(&from, &value->over, &digits) || digits > 9) {
        return false;
    }
    value->under = 1;
    value->improper = false;
    while (digits-- > 0) {
        value->under *= 10;
    }
    *at = from;
    return true;
}

static bool take_number(const char **at, struct ratio *value) {
    struct ratio part = {0, 1, false};
    int64_t whole = 0;

    if (take_fraction(at, value) || take_decimals(at, value)) {
        return true;
    }
    if (!take_digits(at, &whole, NULL)) {
        return false;
    }
    if (!take_decimals(at, &part)) {
        (void)take_joined_fraction(at, &part);
    }
    if (whole > INT64_MAX / 4 / part.under) {
        return false;
    }
    *value = (struct ratio){whole * part.under + part.over, part.under, part.improper};
    return true;
}

/* The nanometers of the unit at *at, 0: none known. */
static length take_unit(const char **at) {
    const struct unit_row *best = NULL;
    size_t best_size = 0;

    for (size_t i = 0; i < COUNT_OF(units); i++) {
        const char *name = units[i].name;
        size_t size = strlen(name);
        char word[16] = "";

        if (size <= best_size || strlen(*at) < size) {
            continue;
        }
        memcpy(word, *at, size);
        /* a unit word ends where the letters end: 'm' is not in 'miles' */
        if (text_same(word, name) && !(is_letter(name[size - 1]) && is_letter((*at)[size]))) {
            best = &units[i];
            best_size = size;
        }
    }
    if (best == NULL) {
        return 0;
    }
    *at += best_size;
    if (is_letter(best->name[0])) {
        (void)take(at, ".");
    }
    return best->size;
}

/* The inches behind feet: ` 11 7/16"`, `-6`. true also when there are none. */
static bool take_inches(const char **at, struct ratio *inches) {
    length unit;

    skip_blanks(at);
    if (**at == '\0') {
        return true;
    }
    (void)take_hyphen(at);
    skip_blanks(at);
    if (!take_number(at, inches) || inches->over >= 12 * inches->under) {
        return false;
    }
    skip_blanks(at);
    unit = take_unit(at);
    return unit == 0 || unit == NM_PER_INCH;
}

static const char *const months[] = {"jan", "feb", "mar", "apr", "may", "jun",
                                     "jul", "aug", "sep", "oct", "nov", "dec"};

static bool take_month(const char **at, int *month) {
    const char *from = *at;
    char word[4] = "";

    if (!is_letter(from[0]) || !is_letter(from[1]) || !is_letter(from[2])) {
        return false;
    }
    memcpy(word, from, 3);
    for (size_t i = 0; i < COUNT_OF(months); i++) {
        if (text_same(word, months[i])) {
            while (is_letter(*from)) {
                from++;
            }
            *at = from;
            *month = (int)i + 1;
            return true;
        }
    }
    return false;
}

/* `2-Jan`, `Jan-26`, `2-Jan-2026`, `2026-01-02`, `01/02/2026`. Of the last it can't be told which
 * is the month: it is taken as the second. */
static bool is_date(const char *text, int *day, int *month) {
    const char *at = text;
    int64_t all[3] = {0};
    int numbers = 0;
    int names = 0;
    char between = '\0';

    skip_blanks(&at);
    for (;;) {
        int64_t number;

        if (take_digits(&at, &number, NULL)) {
            *day = numbers == 0 && number <= 31 ? (int)number : *day;
            all[numbers < 3 ? numbers : 2] = number;
            numbers++;
        } else if (take_month(&at, month)) {
            names++;
        } else {
            return false;
        }
        if (*at == '\0' || (numbers + names == 3 && (*at == 'T' || *at == ' '))) {
            break; /* the time of day may follow */
        }
        if (strchr("-/. ", *at) == NULL || (between != '\0' && between != *at)) {
            return false;
        }
        between = *at++;
    }
    if (names == 0 && numbers == 3 && between != ' ') {
        const bool year_first = all[0] > 31;
        *month = all[1] <= 12 ? (int)all[1] : 0;
        *day = year_first && all[2] <= 31 ? (int)all[2] : *day;
        return true;
    }
    return names == 1 && numbers >= 1 && numbers <= 2;
}

bool length_date(const char *text, int *day, int *month) {
    *day = 0;
    *month = 0;
    return is_date(text, day, month) && *day > 0 && *month > 0;
}

int64_t length_millionths(length value, enum length_unit unit) {
    return unit == LENGTH_MM ? value : (int64_t)int128_round((int128)value * 10, 254);
}

enum length_fault length_read(const char *text, enum length_unit bare, length *out) {
    const char *at = text;
    struct ratio value = {0, 1, false};
    struct ratio inches = {0, 1, false};
    length unit;
    bool minus;
    int128 nm;

    skip_blanks(&at);
    minus = take(&at, "-") || take(&at, "\xE2\x88\x92");
    skip_blanks(&at);
    if (is_date(text, &(int){0}, &(int){0})) {
        return LENGTH_DATE;
    }
    if (!take_number(&at, &value)) {
        return LENGTH_UNREADABLE;
    }
    skip_blanks(&at);
    if (*at == '\0') {
        unit = bare == LENGTH_MM ? NM_PER_MM : NM_PER_INCH;
    } else {
        unit = take_unit(&at);
        if (unit == 0) {
            return is_letter(*at) || *at == '%' ? LENGTH_OTHER_UNIT : LENGTH_UNREADABLE;
        }
    }
    if (unit == NM_PER_FOOT && !take_inches(&at, &inches)) {
        return LENGTH_UNREADABLE;
    }
    skip_blanks(&at);
    if (*at != '\0') {
        return LENGTH_UNREADABLE;
    }
    if (value.improper || inches.improper) {
        return LENGTH_FRACTION;
    }
    nm = int128_round((int128)value.over * unit * inches.under +
                          (int128)inches.over * NM_PER_INCH * value.under,
                      (int128)value.under * (int128)inches.under);
    if (nm > LONGEST) {
        return LENGTH_TOO_LARGE;
    }
    *out = minus ? -(length)nm : (length)nm;
    return LENGTH_OK;
}

length length_cut(length value, enum length_unit unit) {
    length step = unit == LENGTH_MM ? NM_PER_TENTH_MM : NM_PER_64TH;

    return (length)(int128_round(value, step) * step);
}

char *length_show(length value, enum length_unit unit, char *text, size_t size) {
    bool minus = value < 0;
    length step = unit == LENGTH_MM ? NM_PER_TENTH_MM : NM_PER_64TH;
    length steps = (length)int128_round(minus ? -value : value, step);
    length per_whole = unit == LENGTH_MM ? 10 : 64;
    long long whole = steps / per_whole;
    long long rest = steps % per_whole;
    const char *sign = minus && steps > 0 ? "-" : "";

    if (rest == 0) {
        (void)snprintf(text, size, "%s%lld", sign, whole);
    } else if (unit == LENGTH_MM) {
        (void)snprintf(text, size, "%s%lld.%lld", sign, whole, rest);
    } else {
        while (rest % 2 == 0) {
            rest /= 2;
            per_whole /= 2;
        }
        if (whole == 0) {
            (void)snprintf(text, size, "%s%lld/%lld", sign, rest, (long long)per_whole);
        } else {
            (void)snprintf(text, size, "%s%lld %lld/%lld", sign, whole, rest, (long long)per_whole);
        }
    }
    return text;
}

length length_by_tape(length value, enum length_unit unit) {
    const length step = unit == LENGTH_INCH ? 2 * NM_PER_64TH : NM_PER_MM;
    return value < step ? value : value - value % step;
}
