/* SPDX-License-Identifier: MIT */
/* Published conversion values against what the readers make of the units: tests/outside/units.csv
 * has the values, each with its source. */
#include "cmocka_all.h"

#include "base/int128.h"
#include "base/text.h"
#include "read/file/table.h"
#include "read/key/quantity.h"

#include <stdio.h>
#include <string.h>

/* A million of a unit of volume, in millionths of a gallon or litre; 0: no such unit. */
static int64_t read_volume_of(const char *unit, enum length_unit system) {
    const struct key key = {.name = "size", .example = "1 gal"};
    struct problems problems;
    struct pool pool;
    struct reader reader = {
        .pool = &pool, .problems = &problems, .unit = system, .money_decimals = 2};
    struct value value = {0};
    char text[40];
    const struct entry entry = {.text = text};
    int64_t millionths = 0;

    (void)snprintf(text, sizeof(text), "1000000 %s", unit);
    pool_init(&pool);
    problems_init(&problems);
    if (volume_value(&reader, &key, &entry, NULL, &value)) {
        millionths = value.amount;
        for (unsigned i = value.decimals; i < 6; i++) {
            millionths *= 10;
        }
    }
    problems_clear(&problems);
    pool_clear(&pool);
    return millionths;
}

/* How large a unit is, in any measure that holds for both of a row. */
static int64_t size_of(const char *unit, enum length_unit system) {
    char text[40];
    length size = 0;

    (void)snprintf(text, sizeof(text), "1 %s", unit);
    return length_read(text, LENGTH_INCH, &size) == LENGTH_OK ? size : read_volume_of(unit, system);
}

/* from / to, rounded to the digits that are published. */
static void check_row(const char *from, const char *to, const char *published) {
    enum length_unit system = text_same(to, "L") || text_same(to, "ml") ? LENGTH_MM : LENGTH_INCH;
    int128 over = size_of(from, system);
    int128 under = size_of(to, system);
    int64_t value = 0;
    uint8_t decimals = 0;

    if (over <= 0 || under <= 0) {
        fail_msg("1 %s in %s cannot be read", from, to);
        return;
    }
    /* one more decimal than our own numbers have: 7 of them are published */
    if (strlen(published) > 2 && strncmp(published, "0.", 2) == 0 && strlen(published) == 9) {
        assert_true(text_decimal(published + 2, 7, &value, &decimals));
        decimals = 7;
    } else {
        assert_true(text_decimal(published, strlen(published), &value, &decimals));
    }
    for (unsigned i = 0; i < decimals; i++) {
        over *= 10;
    }
    if ((int64_t)((2 * over + under) / (2 * under)) != value) {
        fail_msg("1 %s in %s: %s is published", from, to, published);
    }
}

static void test_units(void **state) {
    struct problems problems;
    struct table table;

    (void)state;
    problems_init(&problems);
    assert_true(table_read(&table, DOORCOST_SOURCE "/tests/outside/units.csv", (struct place){0},
                           (struct table_wanted){.most = 1000}, &problems));
    assert_int_equal(problems.count, 0);
    assert_true(table.count >= 12);
    for (size_t i = 0; i < table.count; i++) {
        const struct cell *cells = table.rows[i].cells;

        assert_true(cells[3].text[0] != '\0'); /* no value without its source */
        check_row(cells[0].text, cells[1].text, cells[2].text);
    }
    problems_clear(&problems);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_units),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
