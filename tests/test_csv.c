/* SPDX-License-Identifier: MIT */
/* Cells as RFC 4180 writes them: section 2, rules 5 to 7. */
#include "report/csv/csv.h"

#include "cmocka_all.h"

static void test_cells(void **state) {
    char text[200] = "";
    FILE *const file = tmpfile();
    struct csv csv = {.out = file};
    (void)state;
    assert_non_null(file);
    csv_put(&csv, "plain");
    csv_put(&csv, "");
    csv_put(&csv, "17 1/4");
    csv_end(&csv);
    csv_put(&csv, "with, comma");
    csv_put(&csv, "3\" wide");
    csv_put(&csv, "two\nlines");
    csv_end(&csv);
    rewind(file);
    const size_t size = fread(text, 1, sizeof text - 1, file);
    assert_int_equal(fclose(file), 0);
    assert_true(size < sizeof text);
    assert_string_equal(text, "plain,,17 1/4\r\n"
                              "\"with, comma\",\"3\"\" wide\",\"two\nlines\"\r\n");
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_cells)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
