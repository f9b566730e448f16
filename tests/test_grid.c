/* SPDX-License-Identifier: MIT */
/* The table printer: widths, cutting, safe text, no blanks at the end of a line. */
#include "report/text/grid.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <stdlib.h>
#include <string.h>

static const struct grid_column columns[] = {{"name", GRID_LEFT, true},
                                             {"money", GRID_RIGHT, false}};

/* What a grid of one or two rows prints, on the heap. */
static char *printed(const struct grid *grid) {
    char *text = NULL;
    size_t size = 0;
    FILE *const out = open_memstream(&text, &size);
    assert_non_null(out);
    struct page page = {.out = out};
    grid_print(grid, &page);
    assert_false(page.failed);
    assert_int_equal(fclose(out), 0);
    return text;
}

static void expect(const struct grid *grid, const char *expected) {
    char *const text = printed(grid);
    assert_string_equal(text, expected);
    free(text);
}

static void numbers_stand_right(void **state) {
    (void)state;
    struct grid grid;
    grid_init(&grid, columns, 2, 2);
    grid_put(&grid, "glue");
    grid_put(&grid, "%d.00", 10);
    grid_put(&grid, "\xC3\xA9toile"); /* two bytes, one column */
    grid_put(&grid, "9.50");
    grid_rule(&grid);
    grid_put(&grid, "total");
    grid_end_row(&grid);
    expect(&grid, "  name    money\n"
                  "  glue    10.00\n"
                  "  \xC3\xA9toile   9.50\n"
                  "          -----\n"
                  "  total\n");
    grid_clear(&grid);
}

static void long_names_take_further_lines(void **state) {
    (void)state;
    struct grid grid;
    char name[101];
    memset(name, 'n', sizeof name - 1);
    name[sizeof name - 1] = '\0';
    grid_init(&grid, columns, 2, 0);
    grid_put(&grid, "%s and more", name);
    grid_put(&grid, "1.00");
    grid_heading(&grid, "  %s", name);
    char *const text = printed(&grid);
    char expected[600];
    (void)snprintf(expected, sizeof expected,
                   "name%76s\n%.73s   1.00\n%.27s and more\n  %.78s\n    %.22s\n", "money", name,
                   name, name, name);
    assert_string_equal(text, expected);
    free(text);
    grid_clear(&grid);
}

static void lines_break_at_blanks(void **state) {
    (void)state;
    struct grid grid;
    grid_init(&grid, columns, 2, 0);
    grid_put(&grid,
             "KITCHEN-NORTH-WALL-AND-THE-ONE-BEHIND-IT-01 drawer front, shaker, painted white");
    grid_put(&grid, "1.00");
    expect(&grid,
           "name                                                                       money\n"
           "KITCHEN-NORTH-WALL-AND-THE-ONE-BEHIND-IT-01 drawer front, shaker, painted   1.00\n"
           "white\n");
    grid_clear(&grid);
}

static void control_characters_stay_off_the_terminal(void **state) {
    (void)state;
    struct grid grid;
    grid_init(&grid, columns, 2, 0);
    grid_put(&grid, "a\033[31m\tb\xC2\x9B"
                    "c");
    grid_put(&grid, "1");
    expect(&grid, "name         money\na?[31m?b??c      1\n");
    grid_clear(&grid);
}

static void paragraphs_wrap(void **state) {
    (void)state;
    char *text = NULL;
    size_t size = 0;
    FILE *const out = open_memstream(&text, &size);
    assert_non_null(out);
    struct page page = {.out = out};
    say_wrapped(&page, "  --json", 12, "%s %s %s",
                "prints the result as one object with keys in a fixed order,",
                "numbers that were figured as texts,", "and a line feed at the end");
    say(&page, "line\n%d", 3);
    assert_int_equal(fclose(out), 0);
    assert_false(page.failed);
    assert_string_equal(
        text, "  --json    prints the result as one object with keys in a fixed order, numbers\n"
              "            that were figured as texts, and a line feed at the end\n"
              "line?3\n");
    free(text);
}

int main(void) {
    (void)setlocale(LC_CTYPE, "C.UTF-8");
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_stand_right),
        cmocka_unit_test(long_names_take_further_lines),
        cmocka_unit_test(lines_break_at_blanks),
        cmocka_unit_test(control_characters_stay_off_the_terminal),
        cmocka_unit_test(paragraphs_wrap),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
