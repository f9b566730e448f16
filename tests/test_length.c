/* SPDX-License-Identifier: MIT */
#include "base/length.h"

#include "cmocka_all.h"

#include <string.h>

static const struct {
    const char *text;
    enum length_unit bare;
    enum length_fault fault;
    length value; /* nm */
} readings[] = {
    {"23 7/16", LENGTH_INCH, LENGTH_OK, 595312500},
    {"23-7/16", LENGTH_INCH, LENGTH_OK, 595312500},
    {"23\xE2\x80\x91"
     "7/16",
     LENGTH_INCH, LENGTH_OK, 595312500},
    {"23\xE2\x80\x93"
     "7/16",
     LENGTH_INCH, LENGTH_OK, 595312500},
    {"1'\xE2\x80\x90"
     "6\"",
     LENGTH_INCH, LENGTH_OK, 457200000},
    {"23 - 7/16", LENGTH_INCH, LENGTH_OK, 595312500},
    {"23 7/16\"", LENGTH_INCH, LENGTH_OK, 595312500},
    {"23.4375 in", LENGTH_MM, LENGTH_OK, 595312500},
    {"1' 11 7/16\"", LENGTH_MM, LENGTH_OK, 595312500},
    {"1'-11 7/16", LENGTH_MM, LENGTH_OK, 595312500},
    {"8 ft", LENGTH_INCH, LENGTH_OK, 96 * NM_PER_INCH},
    {"8ft 6in", LENGTH_INCH, LENGTH_OK, 102 * NM_PER_INCH},
    {"595 mm", LENGTH_INCH, LENGTH_OK, 595 * NM_PER_MM},
    {"59.5 cm", LENGTH_INCH, LENGTH_OK, 595 * NM_PER_MM},
    {"2.4 m", LENGTH_INCH, LENGTH_OK, 2400 * NM_PER_MM},
    {"4 mil", LENGTH_INCH, LENGTH_OK, 101600},
    {"100 um", LENGTH_INCH, LENGTH_OK, 100000},
    {"100 \xC2\xB5m", LENGTH_INCH, LENGTH_OK, 100000},
    {"595", LENGTH_MM, LENGTH_OK, 595 * NM_PER_MM},
    {"0.01", LENGTH_MM, LENGTH_OK, 10000},
    {".5", LENGTH_INCH, LENGTH_OK, 12700000},
    {"1/64", LENGTH_INCH, LENGTH_OK, 396875},
    {"2 1/3 in", LENGTH_INCH, LENGTH_OK, 59266667}, /* 59 266 666.67 */
    {"1/3 mm", LENGTH_INCH, LENGTH_OK, 333333},
    {"0.0000000196850393 in", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"\xC2\xBD", LENGTH_INCH, LENGTH_OK, 12700000},
    {"3\xC2\xBE\xE2\x80\xB3", LENGTH_INCH, LENGTH_OK, 95250000},
    {"3 1\xE2\x81\x84"
     "4",
     LENGTH_INCH, LENGTH_OK, 82550000},
    {"1\xE2\x80\xB2 6\xE2\x80\xB3", LENGTH_INCH, LENGTH_OK, 18 * NM_PER_INCH},
    {"  12\xC2\xA0mm\t", LENGTH_INCH, LENGTH_OK, 12 * NM_PER_MM},
    {"12 in.", LENGTH_MM, LENGTH_OK, 12 * NM_PER_INCH},
    {"-1/2", LENGTH_INCH, LENGTH_OK, -12700000},
    {"0", LENGTH_INCH, LENGTH_OK, 0},
    {"", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"wide", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"23,5", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"1 234", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"3/0", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"2.5 1/2", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"1' 14\"", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"12 in wide", LENGTH_INCH, LENGTH_UNREADABLE, 0},
    {"3 lb", LENGTH_INCH, LENGTH_OTHER_UNIT, 0},
    {"4 gal", LENGTH_INCH, LENGTH_OTHER_UNIT, 0},
    {"4 miles", LENGTH_INCH, LENGTH_OTHER_UNIT, 0},
    {"10 %", LENGTH_INCH, LENGTH_OTHER_UNIT, 0},
    {"2-Jan", LENGTH_INCH, LENGTH_DATE, 0},
    {"Jan-2", LENGTH_INCH, LENGTH_DATE, 0},
    {"2 January", LENGTH_INCH, LENGTH_DATE, 0},
    {"2-Jan-26", LENGTH_INCH, LENGTH_DATE, 0},
    {"2026-01-02", LENGTH_INCH, LENGTH_DATE, 0},
    {"2026-01-02 00:00:00", LENGTH_INCH, LENGTH_DATE, 0},
    {"01/02/2026", LENGTH_INCH, LENGTH_DATE, 0},
    {"1.2.2026", LENGTH_INCH, LENGTH_DATE, 0},
    {"145/8", LENGTH_INCH, LENGTH_FRACTION, 0},
    {"14 9/8", LENGTH_INCH, LENGTH_FRACTION, 0},
    {"14 8/8", LENGTH_INCH, LENGTH_FRACTION, 0},
    {"1' 5/4\"", LENGTH_INCH, LENGTH_FRACTION, 0},
    {"14 5/7", LENGTH_INCH, LENGTH_OK, 373742857},
    {"1001 m", LENGTH_INCH, LENGTH_TOO_LARGE, 0},
    {"1000 m", LENGTH_INCH, LENGTH_OK, 1000000 * NM_PER_MM},
    {"99999999999999999999", LENGTH_INCH, LENGTH_TOO_LARGE, 0},
};

static void test_read(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(readings); i++) {
        length value = -7;
        enum length_fault fault = length_read(readings[i].text, readings[i].bare, &value);

        if (fault != readings[i].fault || value != (fault == LENGTH_OK ? readings[i].value : -7)) {
            fail_msg("'%s': fault %d, %lld nm", readings[i].text, (int)fault, (long long)value);
        }
    }
}

static const struct {
    length value;
    enum length_unit unit;
    length cut;
    const char *shown;
} shown[] = {
    {595312500, LENGTH_INCH, 595312500, "23 7/16"},
    {12700000, LENGTH_INCH, 12700000, "1/2"},
    {-12700000, LENGTH_INCH, -12700000, "-1/2"},
    {0, LENGTH_INCH, 0, "0"},
    {-100, LENGTH_INCH, 0, "0"},
    {NM_PER_FOOT, LENGTH_INCH, NM_PER_FOOT, "12"},
    /* half a step goes away from zero: 1/128 in is 198 437.5 nm */
    {198438, LENGTH_INCH, 396875, "1/64"},
    {198437, LENGTH_INCH, 0, "0"},
    {-198438, LENGTH_INCH, -396875, "-1/64"},
    {25400000 - 1, LENGTH_INCH, 25400000, "1"},
    {595 * NM_PER_MM, LENGTH_MM, 595 * NM_PER_MM, "595"},
    {595500000, LENGTH_MM, 595500000, "595.5"},
    {595550000, LENGTH_MM, 595600000, "595.6"},
    {-50000, LENGTH_MM, -100000, "-0.1"},
};

static void test_cut_and_show(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(shown); i++) {
        char text[32];

        assert_int_equal(length_cut(shown[i].value, shown[i].unit), shown[i].cut);
        assert_string_equal(length_show(shown[i].value, shown[i].unit, text, sizeof(text)),
                            shown[i].shown);
    }
}

/* What is shown can be read again and is the same length. */
static void test_shown_is_readable(void **state) {
    (void)state;
    for (length value = 0; value < 30 * NM_PER_INCH; value += 17 * NM_PER_64TH) {
        char text[32];
        length again = -1;

        length_show(value, LENGTH_INCH, text, sizeof(text));
        assert_int_equal(length_read(text, LENGTH_INCH, &again), LENGTH_OK);
        assert_int_equal(again, value);
    }
}

static void test_show_fits(void **state) {
    char text[4];

    (void)state;
    assert_string_equal(length_show(595312500, LENGTH_INCH, text, sizeof(text)), "23 ");
}

/* What is left: down to 1/32 in or 1 mm, and less than that as it is. */
static void test_by_tape(void **state) {
    (void)state;
    assert_int_equal(length_by_tape(NM_PER_INCH, LENGTH_INCH), NM_PER_INCH);
    assert_int_equal(length_by_tape(NM_PER_INCH + NM_PER_64TH, LENGTH_INCH), NM_PER_INCH);
    assert_int_equal(length_by_tape(NM_PER_INCH - 1, LENGTH_INCH), NM_PER_INCH - 2 * NM_PER_64TH);
    assert_int_equal(length_by_tape(25 * NM_PER_MM + 999999, LENGTH_MM), 25 * NM_PER_MM);
    assert_int_equal(length_by_tape(NM_PER_64TH, LENGTH_INCH), NM_PER_64TH);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_read),
        cmocka_unit_test(test_cut_and_show),
        cmocka_unit_test(test_shown_is_readable),
        cmocka_unit_test(test_show_fits),
        cmocka_unit_test(test_by_tape),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
