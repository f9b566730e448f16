/* SPDX-License-Identifier: MIT */
#include "base/pool.h"
#include "base/text.h"

#include "cmocka_all.h"

#include <stdlib.h>
#include <string.h>

static const struct {
    const char *text;
    bool good;
    size_t bad;
} utf8[] = {
    {"", true, 0},
    {"door", true, 0},
    {"caf\xC3\xA9", true, 0},
    {"\xE2\x80\xB3", true, 0},
    {"\xF0\x9F\x9A\xAA", true, 0},
    {"caf\xE9", false, 3},          /* Latin-1 */
    {"a\xC0\x80", false, 1},        /* overlong */
    {"\xE0\x9F\xBF", false, 0},     /* overlong */
    {"\xED\xA0\x80", false, 0},     /* surrogate */
    {"\xF4\x90\x80\x80", false, 0}, /* over U+10FFFF */
    {"ab\xE2\x80", false, 2},       /* cut off */
    {"\x80", false, 0},
};

static void test_utf8(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(utf8); i++) {
        size_t bad = 99;

        assert_int_equal(text_is_utf8(utf8[i].text, strlen(utf8[i].text), &bad), utf8[i].good);
        assert_int_equal(bad, utf8[i].good ? 99 : utf8[i].bad);
    }
}

static void test_same(void **state) {
    (void)state;
    assert_true(text_same("Router Table", "router table"));
    assert_false(text_same("router", "router table"));
    assert_true(text_same("", ""));
    assert_false(text_same("\xC3\x89", "\xC3\xA9")); /* only ASCII case */
}

static void test_order(void **state) {
    (void)state;
    static const char *const ascending[] = {"", "D1", "d10", "D2", "e", "\xC3\x89", "\xC3\xA9"};
    for (size_t i = 0; i < COUNT(ascending); i++) {
        for (size_t j = 0; j < COUNT(ascending); j++) {
            const int order = text_order(ascending[i], ascending[j]);
            assert_true(i < j ? order < 0 : (i > j ? order > 0 : order == 0));
        }
    }
    assert_int_equal(text_order("Galley", "gALLEY"), 0);
}

static void test_distance(void **state) {
    char longer[80];

    (void)state;
    assert_int_equal(text_distance("stile", "stile"), 0);
    assert_int_equal(text_distance("stile", "Stiel"), 1); /* neighbors swapped */
    assert_int_equal(text_distance("poplr", "poplar"), 1);
    assert_int_equal(text_distance("", "rail"), 4);
    assert_int_equal(text_distance("kitten", "sitting"), 3);
    memset(longer, 'a', sizeof(longer) - 1);
    longer[sizeof(longer) - 1] = '\0';
    assert_true(text_distance(longer, "a") == SIZE_MAX);
}

static void test_nearest(void **state) {
    const char *const names[] = {"poplar", "hard-maple", "x"};

    (void)state;
    assert_string_equal(text_nearest("poplr", names, 3), "poplar");
    assert_string_equal(text_nearest("Hard maple", names, 3), "hard-maple");
    assert_null(text_nearest("walnut", names, 3));
    assert_null(text_nearest("y", names, 3)); /* nothing in common */
    assert_null(text_nearest("poplar", names, 0));
}

static void test_columns(void **state) {
    (void)state;
    assert_int_equal(text_columns("door"), 4);
    assert_int_equal(text_columns("caf\xC3\xA9"), 4);
    assert_int_equal(text_columns(""), 0);
}

/* An e with an accent, a Chinese sign, an emoji: 2, 3 and 4 bytes, the last of two units. */
#define ACCENT "\xC3\xA9"
#define SIGN   "\xE6\xA9\xB1"
#define EMOJI  "\xF0\x9F\x9A\xAA"
#define MORE   "\xE2\x80\xA6"

static const struct {
    const char *text;
    size_t most;
    const char *cut;
} cuts[] = {
    {"door", 4, "door"},
    {"doors", 4, "doo" MORE},
    {ACCENT ACCENT ACCENT, 3, ACCENT ACCENT ACCENT},
    {ACCENT ACCENT ACCENT, 2, ACCENT MORE},
    {SIGN SIGN SIGN, 2, SIGN MORE},
    {EMOJI EMOJI, 4, EMOJI EMOJI},
    {EMOJI EMOJI, 3, EMOJI MORE},
    {EMOJI EMOJI, 2, MORE},
    {"doors", 1, MORE},
    {"doors", 0, ""},
    {"", 0, ""},
};

static void test_cut(void **state) {
    struct pool pool;
    (void)state;
    pool_init(&pool);
    for (size_t i = 0; i < COUNT(cuts); i++) {
        const char *const cut = text_cut(&pool, cuts[i].text, cuts[i].most);
        assert_non_null(cut);
        assert_string_equal(cut, cuts[i].cut);
    }
    assert_int_equal(text_units("a" ACCENT SIGN EMOJI), 5);
    pool_clear(&pool);
}

static const struct { // NOLINT(clang-analyzer-optin.performance.Padding)
    const char *text;
    bool good;
    int64_t value;
    uint8_t decimals;
} decimals[] = {
    {"4.10", true, 410, 2},
    {"12", true, 12, 0},
    {"-0.5", true, -5, 1},
    {"+3", true, 3, 0},
    {"0.000001", true, 1, 6},
    {".5", true, 5, 1},
    {"010", true, 10, 0},
    {"999999999999", true, 999999999999, 0},
    {"1000000000000", false, 0, 0},
    {"0.0000001", false, 0, 0},
    {"1,5", false, 0, 0},
    {"1e5", false, 0, 0},
    {"1.", false, 0, 0},
    {"", false, 0, 0},
    {"-", false, 0, 0},
    {"1.2.3", false, 0, 0},
    {" 1", false, 0, 0},
};

static void test_decimal(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(decimals); i++) {
        int64_t value = 0;
        uint8_t places = 0;
        bool good = text_decimal(decimals[i].text, strlen(decimals[i].text), &value, &places);

        if (good != decimals[i].good ||
            (good && (value != decimals[i].value || places != decimals[i].decimals))) {
            fail_msg("'%s'", decimals[i].text);
        }
    }
}

/* Nothing that a terminal would obey, or that turns what stands beside it around. */
static void test_put(void **state) {
    static const struct {
        const char *text, *put;
    } cases[] = {
        {"plain, \xC3\xA9, \xE6\x9C\xA8, \xF0\x9F\x9A\xAA",
         "plain, \xC3\xA9, \xE6\x9C\xA8, \xF0\x9F\x9A\xAA"},
        {"\033[31mred", "?[31mred"},
        {"bell \a, delete \x7F", "bell ?, delete ?"},
        {"tab\tand\nline", "tab and\nline"},
        {"C1 \xC2\x9B"
         "31m",
         "C1 ?31m"},
        {"last C1 \xC2\x9F, first beyond \xC2\xA0", "last C1 ?, first beyond \xC2\xA0"},
        /* NOLINTBEGIN(misc-misleading-bidirectional): that is what is tested */
        {"right to left \xE2\x80\xAE"
         "cod.exe",
         "right to left ?cod.exe"},
        {"isolates \xE2\x81\xA6 \xE2\x81\xA9, marks \xE2\x80\x8E \xD8\x9C",
         "isolates ? ?, marks ? ?"},
        /* NOLINTEND(misc-misleading-bidirectional) */
        {"a dash \xE2\x80\x93 stays", "a dash \xE2\x80\x93 stays"},
        {"no UTF-8: \xFF \xC3", "no UTF-8: ? ?"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char *text = NULL;
        size_t size = 0;
        FILE *out = open_memstream(&text, &size);
        assert_non_null(out);
        text_print(out, "%s", cases[i].text);
        assert_int_equal(fclose(out), 0);
        assert_string_equal(text, cases[i].put);
        free(text);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_put),      cmocka_unit_test(test_utf8),
        cmocka_unit_test(test_same),     cmocka_unit_test(test_order),
        cmocka_unit_test(test_distance), cmocka_unit_test(test_nearest),
        cmocka_unit_test(test_columns),  cmocka_unit_test(test_decimal),
        cmocka_unit_test(test_cut),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
