/* SPDX-License-Identifier: MIT */
/* One value of a key: numbers with their units, ranges, lengths, volumes, choices.  Every text is
 * read by a row of a table of the test's own, and what it gives is written by hand. */
#include "read/key/quantity.h"
#include "read/key/rows.h"
#include "read/key/unit_suffix.h"

#include "cmocka_all.h"
#include "file_bench.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What the rows fill. */
struct target {
    struct value value;
    struct choice choice;
    struct text text;
    bool flag;
    enum length_unit unit;
};

static const struct unit_form waste_forms[] = {{"% added", UNIT_PERCENT, WASTE_ADDED, 0, 200},
                                               {"% lost", UNIT_PERCENT, WASTE_LOST, 0, 90},
                                               {0}};
static const struct unit_form price_forms[] = {{"per bf", UNIT_MONEY_PER_BF, 0, 0, NO_LIMIT},
                                               {"per m3", UNIT_MONEY_PER_M3, 1, 0, NO_LIMIT},
                                               {0}};
static const struct spelling colors[] = {{"clear", 3}, {"paint gray", 4}, {NULL, 0}};

enum which {
    PRICE,
    WASTE,
    MONEY,
    COUNTED,
    PERCENT,
    FEED,
    LENGTH,
    FILM,
    VOLUME,
    MIX,
    QUARTERS,
    COLOR,
    YES
};

static const struct key rows[] = {
    [PRICE] = {"price", AS_OWN(read_quantity, .forms = price_forms), FIELDS(target, value, choice),
               "4.10 per bf"},
    [WASTE] = {"waste", AS_OWN(read_quantity, .forms = waste_forms), FIELDS(target, value, choice),
               "45 % added", "31 % lost"},
    [MONEY] = {"minimum", AS_MONEY, FIELD(target, value), "450.00"},
    [COUNTED] = {"count", AS_COUNT(1, 20, 1), FIELD(target, value), "2"},
    [PERCENT] = {"tax", AS_PERCENT(0, 30), FIELD(target, value), "8.875 %"},
    [FEED] = {"feed", AS_QUANTITY(FORM("ft per min", UNIT_FT_PER_MIN, 1, 500)),
              FIELD(target, value), "15 ft per min"},
    [LENGTH] = {"kerf", AS_LENGTH(RANGE(0, NM_PER_INCH)), FIELD(target, value), "1/8 in"},
    [FILM] = {"wet film", AS_LENGTH(RANGE(NM_PER_UM, 40 * NM_PER_MIL)), FIELD(target, value),
              "4 mil"},
    [VOLUME] = {"size", AS(read_volume), FIELD(target, value), "1 gal"},
    [MIX] = {"mix leaves", AS_VOLUME_PER("mix"), FIELD(target, value), "2 fl oz per mix"},
    [QUARTERS] = {"thickness", AS_OWN(read_quarters, .range = RANGE(0, 8 * NM_PER_INCH)),
                  FIELDS(target, value, text), "5/4"},
    [COLOR] = {"color", AS_CHOICE(colors), FIELD(target, choice), "clear"},
    [YES] = {"sand", AS_YES_NO, FIELD(target, flag), "yes"},
};

struct key_case {
    enum which row;
    const char *text;
    const char *expected; /* `amount/decimals unit`, ` #choice`; or problems */
};

static const struct key_case inch_cases[] = {
    {PRICE, "4.10 per bf", "410/2 per bf #0"},
    {PRICE, "4.10 per board foot", "410/2 per bf #0"},
    {PRICE, "4.10/bf", "410/2 per bf #0"},
    {PRICE, "4.10  PER   BF", "410/2 per bf #0"},
    {PRICE, "+4 per bf", "4/0 per bf #0"},
    {PRICE, "0 per bf", "0/0 per bf #0"},
    {PRICE, ".5 per bf", "5/1 per bf #0"},
    {PRICE, "4.123456 per bf", "4123456/6 per bf #0"},
    {PRICE, "999999999999 per bf", "999999999999/0 per bf #0"},
    {PRICE, "95 per cubic meter", "95/0 per m3 #1"},
    {PRICE, "95 per m\xC2\xB3", "95/0 per m3 #1"},
    {PRICE, "4.1234567 per bf", "too-many-decimals"},
    {PRICE, "1000000000000 per bf", "not-a-number"},
    {PRICE, "-0.01 per bf", "out-of-range"},
    {PRICE, "4,10 per bf", "comma-in-number"},
    {PRICE, "1,234.50 per bf", "comma-in-number"},
    {PRICE, "$4.10 per bf", "currency-sign"},
    {PRICE,
     "\xE2\x82\xAC"
     "4.10 per bf",
     "currency-sign"},
    {PRICE, "4.10 USD per bf", "currency-sign"},
    {PRICE, "4.10", "missing-unit"},
    {PRICE, "4.10 per sheet", "wrong-unit"},
    {PRICE, "4.10 bf", "wrong-unit"},
    {PRICE, "per bf", "not-a-number"},
    {PRICE, "4.1.0 per bf", "not-a-number"},
    {PRICE, "4-5 per bf", "not-a-number"},
    {PRICE, "4 1/2 per bf", "wrong-unit"},
    {PRICE, "1/2 per bf", "not-a-number"},
    {PRICE, "1e3 per bf", "wrong-unit"},
    /* ranges */
    {PRICE, "4.10 per bf (3.80 to 4.60)", "410/2 per bf #0 range-unused?"},
    {PRICE, "4 per bf (3.5 to 4.625)", "4/0 per bf #0 range-unused?"},
    {PRICE, "4.10 per bf(4.1 to 4.1)", "410/2 per bf #0 range-unused?"},
    {PRICE, "4.10 per bf (3.80 per bf to 4.60 per bf)", "410/2 per bf #0 range-unused?"},
    {PRICE, "4.10 per bf (4.11 to 4.60)", "bad-range"},
    {PRICE, "4.10 per bf (3.80 to 4.09)", "bad-range"},
    {PRICE, "4.10 per bf (4.60 to 3.80)", "bad-range"},
    {PRICE, "4.10 per bf (3.80 - 4.60)", "bad-range"},
    {PRICE, "4.10 per bf (3.80)", "bad-range"},
    {PRICE, "4.10 per bf ()", "bad-range"},
    {PRICE, "4.10 per bf (3.80 per sheet to 4.60)", "bad-range"},
    {PRICE, "4.10 per bf (3.80 to 4.60 gal)", "bad-range"},
    {PRICE, "4.10 per bf (3.80 to 4.60 to 5)", "bad-range"},
    {PRICE, "4.10 per bf (on 2026-01-10)", "date-not-of-price"}, /* read as no rate */
    {PRICE, "4.10 per bf (on 2026-01-10) (3.80 to 4.60)", "date-not-of-price"},
    {PRICE, "4.10 per bf (three to 4.60)", "not-a-number"},
    {PRICE, "4.10 per bf ( to 4.60)", "not-a-number"},
    {PRICE, "4.10 (3.80 to 4.60) per bf", "wrong-unit"},
    {PRICE, "4.10 per bf (-1 to 4.60)", "out-of-range"},
    {COUNTED, "2 (1 to 3)", "2/0  range-unused?"},
    {COUNTED, "2 (1.5 to 3)", "not-whole"},
    {COUNTED, "2 (1 to 3.0)", "not-whole"},
    {COUNTED, "2 (1 to 21)", "out-of-range"},
    {MONEY, "4.50 (4.455 to 5)", "too-many-decimals"},
    {MONEY, "4.50 (4.4500 to 5)", "450/2  range-unused?"},
    /* what the suffix decides */
    {WASTE, "45 % added", "45/0 % #0"},
    {WASTE, "31.5 percent lost", "315/1 % #1"},
    {WASTE, "200 % added", "200/0 % #0"},
    {WASTE, "200.0001 % added", "out-of-range"},
    {WASTE, "90 % lost", "90/0 % #1"},
    {WASTE, "90.1 % lost", "out-of-range"},
    {WASTE, "45 %", "wrong-unit"},
    {WASTE, "45.00001 % added", "too-many-decimals"},
    /* money: the decimals of its currency, or zeros */
    {MONEY, "450", "450/0 "},
    {MONEY, "450.5", "4505/1 "},
    {MONEY, "450.25", "45025/2 "},
    {MONEY, "450.250", "45025/2 "},
    {MONEY, "450.255", "too-many-decimals"},
    {MONEY, "9999999999.99", "999999999999/2 "},
    {MONEY, "10000000000.00", "not-a-number"},
    {MONEY, "450 USD", "currency-sign"},
    {MONEY, "450 per bf", "wrong-unit"},
    /* counts */
    {COUNTED, "1", "1/0 "},
    {COUNTED, "20", "20/0 "},
    {COUNTED, "0", "out-of-range"},
    {COUNTED, "21", "out-of-range"},
    {COUNTED, "2.0", "not-whole"},
    {COUNTED, "two", "not-a-number"},
    {COUNTED, "2 people", "2/0 "},
    {COUNTED, "2 doors", "wrong-unit"},
    /* percent */
    {PERCENT, "8.8750 %", "88750/4 %"},
    {PERCENT, "30 %", "30/0 %"},
    {PERCENT, "30.0001 %", "out-of-range"},
    {PERCENT, "-0.0001 %", "out-of-range"},
    {PERCENT, "8", "missing-unit"},
    {PERCENT, "8pct", "8/0 %"},
    /* systems */
    {FEED, "15 feet per minute", "15/0 ft per min"},
    {FEED, "500 ft/min", "500/0 ft per min"},
    {FEED, "500.1 ft/min", "out-of-range"},
    {FEED, "0.9 ft/min", "out-of-range"},
    {FEED, "5 m per min", "wrong-unit"},
    /* lengths: 1 in is 25.4 mm */
    {LENGTH, "1/8", "3175000/0 nm"},
    {LENGTH, "3 mm", "3000000/0 nm"},
    {LENGTH, "1", "25400000/0 nm"},
    {LENGTH, "25.4 mm", "25400000/0 nm"},
    {LENGTH, "25.401 mm", "size-absurd"},
    {LENGTH, "0", "0/0 nm"},
    {LENGTH, "-1/64", "size-absurd"},
    {LENGTH, "1/8 (1/16 to 1/4)", "3175000/0 nm range-unused?"},
    {LENGTH, "3 mm (2 to 4)", "3000000/0 nm range-unused?"},
    {LENGTH, "1/8 in (2 mm to 4 mm)", "3175000/0 nm range-unused?"},
    {LENGTH, "1/8 (1/4 to 1/2)", "bad-range"},
    {LENGTH, "1/8 (1/16 lb to 1/4)", "bad-range"},
    {LENGTH, "1/8 (1/16, 1/4)", "bad-range"},
    {LENGTH, "1/8 gal", "wrong-unit"},
    {LENGTH, "1,5 mm", "comma-in-number"},
    {LENGTH, "9/8", "fraction-over-one"},
    {LENGTH, "2-Jan", "length-is-date"},
    {LENGTH, "wide", "not-a-length"},
    {LENGTH, "1/7", "3628571/0 nm odd-fraction?"},
    /* volumes in gallons: a quart is a quarter, a fluid ounce 1/128 (NIST Handbook 44, App. C) */
    {VOLUME, "1 gal", "1/0 gal"},
    {VOLUME, "1 quart", "25/2 gal"},
    {VOLUME, "1 pt", "125/3 gal"},
    {VOLUME, "4 fl. oz", "3125/5 gal"},
    {VOLUME, "1 fl oz", "7813/6 gal"}, /* 0.0078125, half up */
    {VOLUME, "1 L", "264172/6 gal"},
    {VOLUME, "3.785412 l", "1/0 gal"},
    {VOLUME, "0 gal", "out-of-range"},
    {VOLUME, "-1 gal", "out-of-range"},
    {VOLUME, "1 lb", "wrong-unit"},
    {VOLUME, "1", "wrong-unit"},
    {VOLUME, "gal", "not-a-number"},
    {VOLUME, "1 gal per mix", "wrong-unit"},
    {VOLUME, "0.000001 fl oz", "out-of-range"},
    {VOLUME, "1000000 gal", "1000000/0 gal"},
    {VOLUME, "99999999.9 L", "out-of-range"}, /* no figure has so many digits */
    {MIX, "2 fl oz per mix", "15625/6 gal"},
    {MIX, "2 fl oz / mix", "15625/6 gal"},
    {MIX, "2 fl oz", "wrong-unit"},
    {MIX, "2 fl oz per door", "wrong-unit"},
    /* quarters of an inch, whatever the file's unit */
    {QUARTERS, "5/4", "31750000/0 nm '5/4'"},
    {QUARTERS, "3/4", "19050000/0 nm '3/4'"},
    {QUARTERS, "24/4", "152400000/0 nm '24/4'"},
    {QUARTERS, "2/4", "out-of-range"},
    {QUARTERS, "25/4", "out-of-range"},
    {QUARTERS, "1 1/4", "31750000/0 nm '1 1/4'"},
    {QUARTERS, "20 mm", "20000000/0 nm '20 mm'"},
    {QUARTERS, "5/8", "15875000/0 nm '5/8'"},
    {QUARTERS, "100/4", "fraction-over-one"},
    /* choices */
    {COLOR, "clear", "=3"},
    {COLOR, "PAINT  Gray", "=4"},
    {COLOR, "paint grey", "unknown-word"},
    {COLOR, "red", "unknown-word"},
    {YES, "Yes", "yes"},
    {YES, "no", "no"},
    {YES, "true", "unknown-word"},
};

static const struct key_case mm_cases[] = {
    {PRICE, "4.10 per bf", "410/2 per bf #0"},
    {FEED, "15 ft per min", "other-system"},
    {LENGTH, "3.2", "3200000/0 nm"},
    {LENGTH, "1/8 in", "3175000/0 nm"},
    {LENGTH, "25.4", "25400000/0 nm"},
    {LENGTH, "25.5", "size-absurd"},
    /* litres: a US gallon is 3.785411784 L */
    {VOLUME, "1 L", "1/0 L"},
    {VOLUME, "750 ml", "75/2 L"},
    {VOLUME, "1 gal", "3785412/6 L"},
    {VOLUME, "1 qt", "946353/6 L"},
    {QUARTERS, "5/4", "31750000/0 nm '5/4'"},
    {QUARTERS, "32", "32000000/0 nm '32'"},
};

static bool is_value(enum which row) {
    return row != COLOR && row != YES;
}

static void dump_target(struct dump *dump, enum which row, const struct target *t) {
    if (is_value(row) && t->value.set) {
        dump_add(dump, "%" PRId64 "/%d %s", t->value.amount, (int)t->value.decimals,
                 unit_name((enum unit)t->value.unit));
        if (t->choice.set) {
            dump_add(dump, " #%d", t->choice.choice);
        }
        if (row == QUARTERS) {
            dump_add(dump, " '%s'", t->text.s);
        }
    } else if (row == COLOR && t->choice.set) {
        dump_add(dump, "=%d", t->choice.choice);
    }
}

static void read_case(struct reader *reader, const struct key_case *c, struct dump *dump) {
    struct target target = {.flag = false};
    const struct key *const key = &rows[c->row];
    const struct entry entry = {.text = c->text, .place = {.line = 3, .column = 9, .width = 5}};
    key->kind.read(reader, key, &entry, &target);
    dump_target(dump, c->row, &target);
    if (c->row == YES && reader->problems->count == 0) {
        dump_add(dump, "%s", target.flag ? "yes" : "no");
    }
    for (size_t i = 0; i < reader->problems->count; i++) {
        const struct problem *const p = &reader->problems->list[i];
        dump_add(dump, "%s%s%s", dump->used > 0 ? " " : "", p->id,
                 p->severity == SEVERITY_ERROR ? "" : "?");
        assert_int_equal(p->place.line, 3);
        assert_int_equal(p->place.column, 9);
        /* what was written, of a volume the number */
        char written[80];
        const size_t size = c->row == VOLUME ? strcspn(c->text, " ") : strlen(c->text);
        (void)snprintf(written, sizeof written, "'%.*s", (int)size, c->text);
        if (strstr(p->text, written) == NULL) {
            fail_msg("%s is not in: %s", written, p->text);
        }
    }
}

static int check_cases(const struct key_case *cases, size_t count, enum length_unit unit) {
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct problems problems;
        struct pool pool;
        struct dump dump = {.used = 0};
        problems_init(&problems);
        pool_init(&pool);
        struct reader reader = {.pool = &pool,
                                .problems = &problems,
                                .unit = unit,
                                .money_decimals = 2,
                                .names_known = true};
        read_case(&reader, &cases[i], &dump);
        wrong = dump_compare(&dump, cases[i].expected, cases[i].text, wrong);
        pool_clear(&pool);
        problems_clear(&problems);
    }
    return wrong;
}

static void test_values(void **state) {
    (void)state;
    assert_int_equal(check_cases(inch_cases, COUNT(inch_cases), LENGTH_INCH), 0);
    assert_int_equal(check_cases(mm_cases, COUNT(mm_cases), LENGTH_MM), 0);
}

/* Yen have no decimals, dinars three (ISO 4217). */
static void test_currencies(void **state) {
    (void)state;
    static const struct {
        uint8_t decimals;
        const char *text, *expected;
    } cases[] = {
        {0, "450", "450/0 "},    {0, "450.00", "450/0 "},  {0, "450.5", "too-many-decimals"},
        {3, "1.234", "1234/3 "}, {3, "1.2340", "1234/3 "}, {3, "1.2345", "too-many-decimals"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct problems problems;
        struct pool pool;
        struct dump dump = {.used = 0};
        const struct key_case c = {MONEY, cases[i].text, cases[i].expected};
        problems_init(&problems);
        pool_init(&pool);
        struct reader reader = {
            .pool = &pool, .problems = &problems, .money_decimals = cases[i].decimals};
        read_case(&reader, &c, &dump);
        assert_int_equal(dump_compare(&dump, c.expected, c.text, 0), 0);
        pool_clear(&pool);
        problems_clear(&problems);
    }
}

/* --- messages --- */

/* File, line, what is wrong, what was expected, and a mark below it. */
static void test_messages(void **state) {
    (void)state;
    static const struct {
        enum which row;
        const char *text, *message;
    } cases[] = {
        {PRICE, "4.10", "price '4.10' has no unit; expected '4.10 per bf'"},
        {PRICE, "4.10 gal", "price '4.10 gal' has the wrong unit; expected '4.10 per bf'"},
        {WASTE, "45", "waste '45' has no unit; expected '45 % added' or '31 % lost'"},
        {WASTE, "201 % added", "waste '201 % added' is out of range; expected 0 to 200"},
        {PRICE, "-1 per bf", "price '-1 per bf' is out of range; expected 0 or more"},
        {COUNTED, "1.5", "count '1.5' is no whole number; expected '2'"},
        {MONEY, "$5", "minimum '$5' has a currency sign; leave it out: '5'"},
        {MONEY, "1.005", "minimum '1.005' has more than 2 decimals; round it"},
        {LENGTH, "2",
         "kerf '2' is too large; expected 0 in to 1 in (a bare number is in inches "
         "here)"},
        {LENGTH, "30 mm", "kerf '30 mm' is too large; expected 0 in to 1 in"},
        {LENGTH, "-1 in", "kerf '-1 in' is negative; expected 0 in to 1 in"},
        {FILM, "100 mil", "wet film '100 mil' is too large; expected 0.04 mil to 40.00 mil"},
        {COLOR, "red", "color 'red' is not known; expected 'clear' or 'paint gray'"},
        {QUARTERS, "25/4", "thickness '25/4' is out of range; expected 3/4 to 24/4"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct problems problems;
        struct pool pool;
        struct target target = {.flag = false};
        char *printed = NULL;
        size_t size = 0;
        char line[128];
        char wanted[512];
        problems_init(&problems);
        pool_init(&pool);
        struct reader reader = {.pool = &pool, .problems = &problems, .money_decimals = 2};
        const struct key *const key = &rows[cases[i].row];
        (void)snprintf(line, sizeof line, "%s = %s", key->name, cases[i].text);
        const char *const lines[] = {"[x]", line};
        const uint16_t file = problems_file(&problems, "rates.ini");
        problems_lines(&problems, file, lines, 2);
        const size_t width = strlen(cases[i].text);
        const size_t column = strlen(key->name) + 4;
        const struct entry entry = {
            .text = cases[i].text,
            .place = {
                .file = file, .line = 2, .column = (uint16_t)column, .width = (uint16_t)width}};
        key->kind.read(&reader, key, &entry, &target);
        FILE *const out = open_memstream(&printed, &size);
        assert_non_null(out);
        problems_print(&problems, out, false);
        assert_int_equal(fclose(out), 0);
        (void)snprintf(wanted, sizeof wanted, "rates.ini:2: error: %s\n  2 | %s\n    | %*s%.*s\n",
                       cases[i].message, line, (int)column - 1, "", (int)width,
                       "^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^");
        assert_string_equal(printed, wanted);
        free(printed);
        pool_clear(&pool);
        problems_clear(&problems);
    }
}

/* --- suffixes --- */

static void test_suffixes(void **state) {
    (void)state;
    static const struct {
        const char *written, *plain;
    } cases[] = {
        {"", ""},
        {"  ", ""},
        {"per hour", "per hour"},
        {"/hr", "per hour"},
        {" / HRS ", "per hour"},
        {"per sq ft", "per sqft"},
        {"per square foot", "per sqft"},
        {"per sq. ft.", "per sqft"},
        {"/ft2", "per sqft"},
        {"/ft\xC2\xB2", "per sqft"},
        {"per square metre", "per m2"},
        {"/m\xC2\xB2", "per m2"},
        {"per cu ft", "per cuft"},
        {"lb/cubic foot", "lb per cuft"},
        {"lb/ft\xC2\xB3", "lb per cuft"},
        {"fluid ounces", "floz"},
        {"Fl. Oz per mix", "floz per mix"},
        {"per board foot", "per bf"},
        {"boards", "board"},
        {"%, of cost", "% of cost"},
        {"%of cost", "% of cost"},
        {"pct", "%"},
        {"sq ft per gal, practical: losses included", "sqft per gal practical: losses included"},
        {"g/cm\xC2\xB3", "g per cm3"},
        {"mitres", "mitres"},
        {"litres", "l"},
        {"people", ""},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        char suffix[UNIT_SUFFIX_SIZE];
        assert_true(unit_suffix_plain(cases[i].written, suffix));
        if (strcmp(suffix, cases[i].plain) != 0) {
            fail_msg("'%s' is '%s', expected '%s'", cases[i].written, suffix, cases[i].plain);
        }
    }
}

/* 95 letters fit, in one word or in many; what does not is no suffix, and nothing is written
 * beyond its room. */
static void test_long_suffixes(void **state) {
    (void)state;
    for (size_t size = 80; size < 400; size++) {
        char text[512];
        struct {
            char suffix[UNIT_SUFFIX_SIZE];
            char beyond[8];
        } room;
        memset(&room, '#', sizeof room);
        memset(text, 'x', sizeof text);
        text[size] = '\0';
        assert_int_equal(unit_suffix_plain(text, room.suffix), size < UNIT_SUFFIX_SIZE - 1);
        for (size_t i = 1; i < size; i += 2) {
            text[i] = ' ';
        }
        const size_t used = size % 2 == 0 ? size - 1 : size; /* without the last blank */
        assert_int_equal(unit_suffix_plain(text, room.suffix), used < UNIT_SUFFIX_SIZE);
        assert_int_equal(memcmp(room.beyond, "########", 8), 0);
        assert_true(strlen(room.suffix) < UNIT_SUFFIX_SIZE);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_values),        cmocka_unit_test(test_currencies),
        cmocka_unit_test(test_messages),      cmocka_unit_test(test_suffixes),
        cmocka_unit_test(test_long_suffixes),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
