/* SPDX-License-Identifier: MIT */
#include "base/problem.h"

#include "cmocka_all.h"

#include <stdlib.h>
#include <string.h>

static char *print(const struct problems *problems, bool color) {
    char *text = NULL;
    size_t size = 0;
    FILE *out = open_memstream(&text, &size);

    assert_non_null(out);
    problems_print(problems, out, color);
    assert_int_equal(fclose(out), 0);
    return text;
}

static void check_printed(struct problems *problems, const char *expected) {
    char *text = print(problems, false);

    assert_string_equal(text, expected);
    free(text);
}

static void test_order_and_form(void **state) {
    static const char *const lines[] = {"[saw]", "kerf = 1/8 gal"};
    struct problems problems;
    uint16_t rates;
    uint16_t doors;

    (void)state;
    problems_init(&problems);
    rates = problems_file(&problems, "rates.ini");
    doors = problems_file(&problems, "doors.csv");
    problems_lines(&problems, rates, lines, 2);
    problem_add(&problems, SEVERITY_WARNING, "b", (struct place){.file = doors, .line = 4},
                "later");
    problem_add(&problems, SEVERITY_ERROR, "a",
                (struct place){.file = rates, .line = 2, .column = 8, .width = 7}, "no length '%s'",
                "1/8 gal");
    problem_add(&problems, SEVERITY_ERROR, "c", (struct place){.file = rates}, "whole file");
    problem_add(&problems, SEVERITY_ERROR, "d", (struct place){0}, "nowhere");
    check_printed(&problems, "error: nowhere\n"
                             "rates.ini: error: whole file\n"
                             "rates.ini:2: error: no length '1/8 gal'\n"
                             "  2 | kerf = 1/8 gal\n"
                             "    |        ^^^^^^^\n"
                             "doors.csv:4: warning: later\n");
    assert_int_equal(problems_count(&problems, SEVERITY_ERROR), 3);
    assert_int_equal(problems_count(&problems, SEVERITY_WARNING), 1);
    problems_sort(&problems);
    assert_string_equal(problems.list[0].id, "d");
    assert_string_equal(problems.list[3].id, "b");
    problem_add(&problems, SEVERITY_ERROR, "d", (struct place){0}, "nowhere");
    assert_int_equal(problems.count, 4);
    assert_string_equal(problems_file_name(&problems, doors), "doors.csv");
    assert_string_equal(problems_file_name(&problems, 0), "");
    problems_clear(&problems);
}

static void test_same_fault_on_many_lines(void **state) {
    struct problems problems;
    uint16_t file;

    (void)state;
    problems_init(&problems);
    file = problems_file(&problems, "doors.csv");
    for (uint32_t line = 40; line > 1; line--) {
        problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = line},
                    "no style");
        problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = line},
                    "no style");
    }
    problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = 5}, "another");
    assert_int_equal(problems.count, 2);
    assert_int_equal(problems.list[0].place.line, 2);
    assert_int_equal(problems.list[0].more_count, 38);
    for (uint32_t i = 0; i < 38; i++) {
        assert_int_equal(problems.list[0].more[i], i + 3);
    }
    check_printed(&problems, "doors.csv:2: error: no style\n"
                             "  also on lines 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14 and 26 more\n"
                             "doors.csv:5: error: another\n");
    problems_clear(&problems);
}

static void test_few_more_lines(void **state) {
    struct problems problems;
    uint16_t file;

    (void)state;
    problems_init(&problems);
    file = problems_file(&problems, "doors.csv");
    problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = 2}, "x");
    problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = 9}, "x");
    check_printed(&problems, "doors.csv:2: error: x\n  also on line 9\n");
    problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = 5}, "x");
    problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = 7}, "x");
    check_printed(&problems, "doors.csv:2: error: x\n  also on lines 5, 7 and 9\n");
    problems_clear(&problems);
}

static void test_quote(void **state) {
    struct problems problems;
    char longer[200];

    (void)state;
    problems_init(&problems);
    assert_string_equal(problem_quote(&problems, "caf\xC3\xA9"), "caf\xC3\xA9");
    assert_string_equal(problem_quote(&problems, "a\033[31mb\n"), "a?[31mb?");
    assert_string_equal(problem_quote(&problems, "caf\xE9!"), "caf?!");
    memset(longer, 'a', sizeof(longer) - 1);
    longer[sizeof(longer) - 1] = '\0';
    assert_int_equal(strlen(problem_quote(&problems, longer)), 63);
    problems_clear(&problems);
}

/* The mark stands under its text in a line that is too long to be shown whole, and behind letters
 * of several bytes. */
static void test_mark(void **state) {
    char line[400];
    const char *const lines[] = {line, "caf\xC3\xA9\t= x"};
    struct problems problems;
    uint16_t file;
    char *text;
    const char *shown;
    const char *mark;

    (void)state;
    memset(line, '.', sizeof(line) - 1);
    line[sizeof(line) - 1] = '\0';
    memcpy(line + 300, "HERE", 4);
    problems_init(&problems);
    file = problems_file(&problems, "f");
    problems_lines(&problems, file, lines, 2);
    problem_add(&problems, SEVERITY_ERROR, "a",
                (struct place){.file = file, .line = 1, .column = 301, .width = 4}, "x");
    text = print(&problems, false);
    shown = strchr(text, '\n') + 1;
    mark = strchr(shown, '\n') + 1;
    assert_int_equal(strstr(shown, "HERE") - shown, strstr(mark, "^^^^") - mark);
    free(text);
    problems_clear(&problems);

    problems_init(&problems);
    file = problems_file(&problems, "f");
    problems_lines(&problems, file, lines, 2);
    problem_add(&problems, SEVERITY_ERROR, "a",
                (struct place){.file = file, .line = 2, .column = 9, .width = 1}, "x");
    check_printed(&problems, "f:2: error: x\n  2 | caf\xC3\xA9 = x\n    |        ^\n");
    problems_clear(&problems);
}

static void test_color(void **state) {
    struct problems problems;
    char *text;

    (void)state;
    problems_init(&problems);
    problem_add(&problems, SEVERITY_WARNING, "a", (struct place){0}, "x");
    text = print(&problems, true);
    assert_non_null(strstr(text, "\033[1;33mwarning:\033[0m x"));
    free(text);
    problems_clear(&problems);
}

/* A fault in each of very many rows must not take the square of their number. */
static void test_many(void **state) {
    struct problems problems;
    uint16_t file;

    (void)state;
    problems_init(&problems);
    file = problems_file(&problems, "f");
    for (uint32_t i = 1; i <= 50000; i++) {
        problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = i},
                    "row %u", i);
    }
    assert_int_equal(problems.count, 50000);
    assert_false(problems.failed);
    problems_clear(&problems);
}

static bool takes_some(const void *context, struct place place) {
    const uint32_t *lines = context;

    for (; *lines != 0; lines++) {
        if (*lines == place.line) {
            return true;
        }
    }
    return false;
}

/* What is accepted leaves the problem that it was said with; errors and other ids stay. */
static void test_accept(void **state) {
    static const uint32_t some[] = {2, 5, 0};
    static const uint32_t rest[] = {3, 0};
    struct problems problems;
    uint16_t file;

    (void)state;
    problems_init(&problems);
    file = problems_file(&problems, "doors.csv");
    for (uint32_t line = 2; line < 6; line++) {
        problem_add(&problems, SEVERITY_WARNING, "a", (struct place){.file = file, .line = line},
                    "x");
    }
    problem_add(&problems, SEVERITY_WARNING, "b", (struct place){.file = file, .line = 2}, "y");
    problem_add(&problems, SEVERITY_ERROR, "a", (struct place){.file = file, .line = 2}, "z");
    assert_true(problems_accept(&problems, "a", takes_some, some));
    check_printed(&problems, "doors.csv:2: warning: y\n"
                             "doors.csv:2: error: z\n"
                             "doors.csv:3: warning: x\n"
                             "  also on line 4\n");
    assert_int_equal(problems_count(&problems, SEVERITY_ACCEPTED), 1);
    assert_int_equal(problems_count(&problems, SEVERITY_WARNING), 2);
    assert_false(problems_accept(&problems, "a", takes_some, some)); /* accepted already */
    assert_false(problems_accept(&problems, "c", takes_some, some));
    assert_true(problems_accept(&problems, "a", takes_some, rest));
    assert_int_equal(problems_count(&problems, SEVERITY_ACCEPTED), 1); /* one fault, said once */
    problems_sort(&problems);
    assert_int_equal(problems.list[0].severity, SEVERITY_ACCEPTED);
    assert_int_equal(problems.list[0].more_count, 2);
    problems_clear(&problems);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_order_and_form), cmocka_unit_test(test_same_fault_on_many_lines),
        cmocka_unit_test(test_few_more_lines), cmocka_unit_test(test_quote),
        cmocka_unit_test(test_mark),           cmocka_unit_test(test_color),
        cmocka_unit_test(test_many),           cmocka_unit_test(test_accept),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
