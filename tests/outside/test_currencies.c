/* SPDX-License-Identifier: MIT */
/* Source: ISO 4217, as the package iso-codes of Debian has it
 * (/usr/share/iso-codes/json/iso_4217.json). */
#include "read/key/currency.h"
#include "support.h"

#include <jansson.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define LIST "/usr/share/iso-codes/json/iso_4217.json"

static bool is_one_of(const char *code, const char *const *codes, size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (strcmp(codes[i], code) == 0) {
            return true;
        }
    }
    return false;
}

/* Funds, metals, units of account and codes for tests: nobody is paid for doors in them. An X
 * stands for no country, but four are money of several. */
static bool is_no_money(const char *code) {
    static const char *const shared[] = {"XAF", "XCD", "XOF", "XPF"};
    static const char *const funds[] = {"BOV", "CHE", "CHW", "CLF", "COU",
                                        "MXV", "USN", "UYI", "UYW"};
    return code[0] == 'X' ? !is_one_of(code, shared, sizeof shared / sizeof *shared)
                          : is_one_of(code, funds, sizeof funds / sizeof *funds);
}

static void test_codes_are_those_of_the_standard(void **state) {
    json_error_t error;
    json_t *file = json_load_file(LIST, 0, &error);
    const json_t *list = json_object_get(file, "4217");
    size_t known = 0;
    size_t at;
    const json_t *row;

    (void)state;
    assert_true(json_array_size(list) > 150);
    json_array_foreach(list, at, row) {
        const char *code = json_string_value(json_object_get(row, "alpha_3"));
        assert_non_null(code);
        if (currency_known(code) == is_no_money(code)) {
            fail_msg("%s", code);
        }
        known += currency_known(code) ? 1 : 0;
    }
    json_decref(file);
    assert_int_equal(known, 159);
}

static void test_what_is_meant(void **state) {
    (void)state;
    assert_string_equal(currency_meant("cad"), "CAD");
    assert_string_equal(currency_meant("CDA"), "CAD");
    assert_string_equal(currency_meant("\xE2\x82\xAC"), "EUR");
    assert_null(currency_meant("Canadian dollars"));
    assert_false(currency_known("usd"));
}

/* Source: minor units of ISO 4217 as java.util.Currency of OpenJDK 17.0.15 gives them
 * (getDefaultFractionDigits over all currencies in use); every code that is not listed has 2. */
static uint8_t minor_units(const char *code) {
    static const char *const none[] = {"BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW",
                                       "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"};
    static const char *const three[] = {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"};
    if (is_one_of(code, none, sizeof none / sizeof *none)) {
        return 0;
    }
    return is_one_of(code, three, sizeof three / sizeof *three) ? 3 : 2;
}

/* A job in that currency: two thirds of a price have its decimals. */
static void expect_decimals(const char *code) {
    static const char *const thirds[] = {"666667", NULL, "666666.67", "666666.667"};
    char shop[64];
    const uint8_t decimals = minor_units(code);
    const char *const edits[BENCH_MOST_EDITS] = {"make|style = slab",
                                                 "sheet board|price = 1000000 per sheet",
                                                 "shop|charge sheets = bought", shop};
    struct bench bench;
    (void)snprintf(shop, sizeof shop, "shop|currency = %s", code);
    bench_open(&bench, code, BENCH_INCH, edits, "S1,24,24\nS2,24,48\n");
    bench_sound(&bench);
    assert_int_equal(bench.result, ESTIMATE_OK);
    const fig amount = bench.estimate.costs.doors[1].amount;
    bench_figure(&bench, "price", amount, thirds[decimals]);
    assert_int_equal(tape_decimals(&bench.estimate.tape, amount), decimals);
    assert_int_equal(bench_close(&bench), 0);
}

static void test_decimals_are_those_of_the_standard(void **state) {
    json_error_t error;
    json_t *file = json_load_file(LIST, 0, &error);
    size_t at;
    const json_t *row;

    (void)state;
    json_array_foreach(json_object_get(file, "4217"), at, row) {
        const char *code = json_string_value(json_object_get(row, "alpha_3"));
        if (!is_no_money(code)) {
            expect_decimals(code);
        }
    }
    json_decref(file);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_codes_are_those_of_the_standard),
        cmocka_unit_test(test_decimals_are_those_of_the_standard),
        cmocka_unit_test(test_what_is_meant),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
