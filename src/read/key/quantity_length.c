/* SPDX-License-Identifier: MIT */
/* Lengths: numbers that may carry a unit of their own. */
#include "base/text.h"

#include "base/array.h"
#include "figure/tape.h"
#include "read/key/quantity.h"
#include "read/key/range.h"

#include <stdlib.h>
#include <string.h>

static bool is_bare(const char *text) {
    return strspn(text, " \t-0123456789./") == strlen(text);
}

/* The days by which a spreadsheet counts dates, 1982 to 2091; for a length that is too large. */
static bool is_date_serial(const char *text) {
    return strspn(text, "0123456789") == 5 && text[5] == '\0' && text[0] >= '3' && text[0] <= '6';
}

/* The fraction that a date of day and month was made of, read as a person wrote it: month / day or
 * day / month, whichever a rule shows; "" where neither is one. In the problems' pool. */
static const char *fraction_of_date(struct reader *reader, const char *text) {
    int day = 0;
    int month = 0;

    if (!length_date(text, &day, &month)) {
        return "";
    }
    for (int turn = 0; turn < 2; turn++) {
        const int over = turn == 0 ? month : day;
        const int under = turn == 0 ? day : month;

        if (over % 2 == 1 && over < under && (under & (under - 1)) == 0) {
            return pool_words(&reader->problems->pool, "%d/%d", over, under);
        }
    }
    return "";
}

static void report_date(struct reader *reader, const struct key *key, const struct entry *entry) {
    const char *const fraction = fraction_of_date(reader, entry->text);

    if (fraction[0] != '\0') {
        problem_add(reader->problems, SEVERITY_ERROR, "length-is-date", entry->place,
                    "%s '%s' is a date: a spreadsheet made it of %s; type '0 %s', or format the "
                    "column as text",
                    key->name, entry_quote(reader, entry), fraction, fraction);
    } else {
        problem_add(reader->problems, SEVERITY_ERROR, "length-is-date", entry->place,
                    "%s '%s' is a date: a spreadsheet made it of a size; format the column as "
                    "text, then type the size anew, as in '%s'",
                    key->name, entry_quote(reader, entry), key->example);
    }
}

/* `15 1/2 x 30`: a digit on either side of an x. */
static bool is_two_sizes(const char *text) {
    const char *const x = text + strcspn(text, "xX");
    return *x != '\0' && strpbrk(x, "0123456789") != NULL &&
           strcspn(text, "0123456789") < (size_t)(x - text);
}

static void report_length(struct reader *reader, const struct key *key, const struct entry *entry,
                          enum length_fault fault) {
    struct problems *problems = reader->problems;

    if (fault == LENGTH_DATE || (fault == LENGTH_TOO_LARGE && is_date_serial(entry->text))) {
        report_date(reader, key, entry);
    } else if (fault == LENGTH_FRACTION) {
        problem_add(problems, SEVERITY_ERROR, "fraction-over-one", entry->place,
                    "%s '%s' has a fraction that is one or more; type a blank between the whole "
                    "inches and the fraction: '14 5/8'",
                    key->name, entry_quote(reader, entry));
    } else if (is_two_sizes(entry->text)) {
        problem_add(problems, SEVERITY_ERROR, "not-a-length", entry->place,
                    "%s '%s' has two sizes; expected one, the other in a column of its own",
                    key->name, entry_quote(reader, entry));
    } else if (fault == LENGTH_OTHER_UNIT) {
        problem_add(problems, SEVERITY_ERROR, "wrong-unit", entry->place,
                    "%s '%s' has a unit that is no length; expected %s", key->name,
                    entry_quote(reader, entry), key_expected(reader, key));
    } else if (fault == LENGTH_TOO_LARGE) {
        problem_add(problems, SEVERITY_ERROR, "size-absurd", entry->place,
                    "%s '%s' is over a kilometer; expected %s", key->name,
                    entry_quote(reader, entry), key_expected(reader, key));
    } else if (strchr(entry->text, ',') != NULL) {
        comma_report(reader, key, entry);
    } else {
        problem_add(problems, SEVERITY_ERROR, "not-a-length", entry->place,
                    "%s '%s' cannot be read as a length; expected %s", key->name,
                    entry_quote(reader, entry), key_expected(reader, key));
    }
}

/* How a limit is shown: in the unit of the file and as fine as its sizes are cut; what begins below
 * that is a film, in mils or micrometers. */
struct showing {
    length unit, step;
    const char *name;
};

static struct showing showing_of(const struct reader *reader, const struct length_range *range) {
    const bool inches = reader->unit == LENGTH_INCH;
    const length step = inches ? NM_PER_64TH : NM_PER_TENTH_MM;
    if (range->low > 0 && range->low < step) {
        return inches ? (struct showing){NM_PER_MIL, 0, "mil"}
                      : (struct showing){NM_PER_UM, 0, "um"};
    }
    return (struct showing){0, step, inches ? "in" : "mm"};
}

/* A limit in the unit of the file, for a message. */
static const char *shown(struct reader *reader, struct showing as, length value, bool above) {
    char text[32];
    length cut = length_cut(value, reader->unit);
    const char *all;

    /* rounding must not show a limit that would be refused */
    if (as.step == 0) {
        const length hundredths = (value * 100 + (above ? as.unit - 1 : 0)) / as.unit;
        (void)figure_text(hundredths, 2, text, sizeof(text));
    } else if (above && cut < value) {
        cut += as.step;
    } else if (!above && cut > value) {
        cut -= as.step;
    }
    all = pool_format(&reader->problems->pool, "%s %s",
                      as.step == 0 ? text : length_show(cut, reader->unit, text, sizeof(text)),
                      as.name);
    return all == NULL ? "" : all;
}

static bool check_length(struct reader *reader, const struct key *key, const struct entry *entry,
                         const struct length_range *range, length value) {
    const char *hint = "";
    struct showing as;

    if (range == NULL || (value >= range->low && value <= range->high)) {
        return true;
    }
    if (value > range->high && is_date_serial(entry->text)) {
        report_date(reader, key, entry);
        return false;
    }
    if (is_bare(entry->text)) {
        hint = reader->unit == LENGTH_INCH ? " (a bare number is in inches here)"
                                           : " (a bare number is in millimeters here)";
    }
    as = showing_of(reader, range);
    problem_add(reader->problems, SEVERITY_ERROR, "size-absurd", entry->place,
                "%s '%s' is %s; expected %s to %s%s", key->name, entry_quote(reader, entry),
                value < 0 ? "negative" : (value < range->low ? "too small" : "too large"),
                shown(reader, as, range->low, true), shown(reader, as, range->high, false), hint);
    return false;
}

/* One end of a range: a bare number has the unit of the value before it. */
static bool read_end(struct reader *reader, const struct key *key, const struct entry *entry,
                     const char *text, const char *unit, struct value *end) {
    const char *whole = text;

    if (is_bare(text)) {
        whole = pool_format(&reader->problems->pool, "%s%s", text, unit);
    }
    *end = (struct value){.place = entry->place, .unit = UNIT_NM, .set = true};
    if (whole == NULL) {
        return false;
    }
    if (length_read(whole, reader->unit, &end->amount) != LENGTH_OK) {
        range_report(reader, key, entry);
        return false;
    }
    return check_length(reader, key, entry, key->kind.range, end->amount);
}

/* How many bytes of text are a digit or the sign of a fraction; 0: it begins with neither. */
static size_t digit_size(const char *text) {
    if (*text >= '0' && *text <= '9') {
        return 1;
    }
    if (text[0] == '\xC2' && text[1] >= '\xBC' && text[1] <= '\xBE') { /* quarters and halves */
        return 2;
    }
    return text[0] == '\xE2' && text[1] == '\x85' && text[2] != '\0' ? 3 : 0; /* other fractions */
}

/* What follows the last digit of a length: its unit. */
static const char *unit_of(const char *text) {
    const char *after = text;

    while (*text != '\0') {
        const size_t size = digit_size(text);
        text += size == 0 ? 1 : size;
        after = size == 0 ? after : text;
    }
    return after;
}

/* The range of a length, whose ends may be any length of the key's; false: reported. */
static bool take_ends(struct reader *reader, const struct key *key, const struct entry *entry,
                      const struct number_written *written, struct range *ends) {
    if (written->low == NULL) {
        return true;
    }
    if (!read_end(reader, key, entry, written->low, written->unit, &ends->low) ||
        !read_end(reader, key, entry, written->high, written->unit, &ends->high)) {
        return false;
    }
    ends->set =
        ends->low.amount <= written->value.amount && written->value.amount <= ends->high.amount;
    if (!ends->set) {
        range_report(reader, key, entry);
    }
    return ends->set;
}

/* Whether feet follow a number: `1/3 ft`, `2/3'`. */
static bool is_of_feet(const char *behind) {
    while (*behind == ' ') {
        behind++;
    }
    return *behind == 'f' || *behind == '\'';
}

/* The fraction of a length as it is written. */
struct fraction {
    long over, under;
    bool alone;         /* no whole number before it */
    const char *behind; /* what follows it */
};

/* false: the text has none. */
static bool find_fraction(const char *text, struct fraction *fraction) {
    static const struct {
        const char *sign;
        long over;
    } thirds[] = {{"\xE2\x85\x93", 1}, {"\xE2\x85\x94", 2}}; /* the other signs are of eighths */
    const char *slash = strchr(text, '/');
    const char *over = slash;
    char *end;

    for (size_t i = 0; i < COUNT_OF(thirds); i++) {
        const char *at = strstr(text, thirds[i].sign);
        if (at != NULL) {
            *fraction =
                (struct fraction){thirds[i].over, 3, at == text, at + strlen(thirds[i].sign)};
            return true;
        }
    }
    if (slash == NULL) {
        return false;
    }
    while (over > text && over[-1] >= '0' && over[-1] <= '9') {
        over--;
    }
    *fraction = (struct fraction){.over = strtol(over, NULL, 10), .alone = over == text};
    fraction->under = strtol(slash + 1, &end, 10);
    fraction->behind = end;
    return true;
}

/* Asks about 5/7 in and 14 1/9 in: no rule shows such parts; a spreadsheet that shows one digit of
 * a fraction makes 1/9 of 1/16, 1/5 of 3/16 and 1/3 of 5/16. A rule shows thirds of a foot, and a
 * single part of ten or more by itself is how thin stuff is named: veneer of 1/42 in. */
static void ask_fraction(struct reader *reader, const struct key *key, const struct entry *entry) {
    struct fraction fraction;

    if (!find_fraction(entry->text, &fraction) || fraction.under <= 0 ||
        (fraction.under & (fraction.under - 1)) == 0 ||
        (fraction.under == 3 && is_of_feet(fraction.behind)) ||
        (fraction.alone && fraction.over <= 1 && fraction.under >= 10)) {
        return;
    }
    problem_add(reader->problems, SEVERITY_WARNING, "odd-fraction", entry->place,
                "%s '%s' has a fraction that no rule shows; halves, quarters, eighths, "
                "sixteenths, 32nds or 64ths are meant?",
                key->name, entry_quote(reader, entry));
}

bool length_value(struct reader *reader, const struct key *key, const struct entry *entry,
                  const struct length_range *range, struct value *value) {
    char *text = pool_text(&reader->problems->pool, entry->text, strlen(entry->text));
    struct value read = {.place = entry->place, .unit = UNIT_NM, .set = true};
    struct number_written written = {.text = text, .most_decimals = 6, .most = RATE_NO_LIMIT};
    enum length_fault fault;
    char *low;
    char *high;

    if (text == NULL || !range_take(reader, entry, text, &low, &high)) {
        return false;
    }
    fault = length_read(text, reader->unit, &read.amount);
    if (fault != LENGTH_OK) {
        report_length(reader, key, entry, fault);
        return false;
    }
    if (!check_length(reader, key, entry, range, read.amount)) {
        return false;
    }
    written.value = read;
    written.low = low;
    written.high = high;
    written.unit = unit_of(text);
    if (!take_ends(reader, key, entry, &written, &written.ends)) {
        return false;
    }
    if (!number_keep(reader, key, entry, &written) && low != NULL) {
        range_ask(reader, key, entry);
    }
    ask_fraction(reader, key, entry);
    *value = read;
    return true;
}
