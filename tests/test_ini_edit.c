/* SPDX-License-Identifier: MIT */
/* Lines of an INI file with values changed, put in and taken out; and that every value which can be
 * written is read as it was meant. */
#include "read/file/ini_edit.h"

#include "cmocka_all.h"
#include "draw.h"
#include "file_bench.h"
#include "read/file/ini.h"

#include <stdio.h>
#include <string.h>

#define PATH "ini-edit.ini"

struct edit_case {
    const char *name;
    const char *before; /* lines, each with a line feed */
    struct ini_change change;
    const char *after;
};

static const struct edit_case cases[] = {
    {"a value", "[a]\nb = 1 ; one\n", {"a", "b", "2", NULL, NULL}, "[a]\nb = 2 ; one\n"},
    {"comments keep their column",
     "[a]\nb = 1       ; one\n",
     {"a", "b", "2.50", NULL, NULL},
     "[a]\nb = 2.50    ; one\n"},
    {"unless a value is too long",
     "[a]\nb = 1 ; one\n",
     {"a", "b", "123456", NULL, NULL},
     "[a]\nb = 123456 ; one\n"},
    {"no comment", "[a]\nb=1\n", {"a", "b", "2", NULL, NULL}, "[a]\nb= 2\n"},
    {"an empty key", "[a]\nb =\n", {"a", "b", "2", NULL, NULL}, "[a]\nb = 2\n"},
    {"a mark of inches is no quote",
     "[a]\nb = 3/4\" ply ; thick\n",
     {"a", "b", "x", NULL, NULL},
     "[a]\nb = x        ; thick\n"},
    {"a sign within quotes",
     "[a]\nb = \"c;d\" # e\n",
     {"a", "b", "x", NULL, NULL},
     "[a]\nb = x     # e\n"},
    {"names with blanks and in capitals",
     "[ Lumber  Poplar ]\n labor   Rate = 1\n",
     {"lumber poplar", "labor rate", "2", NULL, NULL},
     "[ Lumber  Poplar ]\n labor   Rate = 2\n"},
    {"of its own section",
     "[a]\nb = 1\n[c]\nb = 2\n",
     {"c", "b", "3", NULL, NULL},
     "[a]\nb = 1\n[c]\nb = 3\n"},
    {"not one in a comment",
     "[a]\n; b = 1\nc = 2\n",
     {"a", "b", "3", "new", NULL},
     "[a]\n; b = 1\nc = 2\nb = 3                                        ; new\n"},
    {"a key behind the last of its section",
     "[a]\nbb   = 1\n\n; of c\n[c]\n",
     {"a", "d", "3", NULL, NULL},
     "[a]\nbb   = 1\nd    = 3\n\n; of c\n[c]\n"},
    {"a section at the end",
     "[a]\nb = 1\n",
     {"c", "d", "3", "three", "What c is."},
     "[a]\nb = 1\n\n; What c is.\n[c]\nd            = 3                             ; three\n"},
    {"taken out", "[a]\nb = 1\nc = 2\n", {"a", "b", NULL, NULL, NULL}, "[a]\nc = 2\n"},
    {"taken out where it is not", "[a]\nb = 1\n", {"c", "b", NULL, NULL, NULL}, "[a]\nb = 1\n"},
    {"of nothing", "", {"a", "b", "1", NULL, NULL}, "[a]\nb            = 1\n"},
};

/* The lines of text, which is taken apart in pool. */
static struct ini_lines lines_of(const char *text, struct pool *pool) {
    struct ini_lines lines = {.list = pool_take(pool, strlen(text) + 1, sizeof(const char *))};
    assert_non_null(lines.list);
    for (const char *at = text; *at != '\0';) {
        const char *const end = strchr(at, '\n');
        lines.list[lines.count++] = pool_text(pool, at, (size_t)(end - at));
        at = end + 1;
    }
    return lines;
}

static void test_edits(void **state) {
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct pool pool;
        pool_init(&pool);
        struct ini_lines lines = lines_of(cases[i].before, &pool);
        print_message("%s\n", cases[i].name);
        assert_true(ini_edit(&lines, &cases[i].change, &pool));
        assert_string_equal(ini_text(&lines, &pool), cases[i].after);
        pool_clear(&pool);
    }
}

static void test_more(void **state) {
    (void)state;
    struct pool pool;
    pool_init(&pool);
    assert_string_equal(ini_line_with("a = 1 ; one", "2", "was 1", &pool), "a = 2 ; one; was 1");
    assert_string_equal(ini_line_with("a = 1", "2", "was 1", &pool), "a = 2 ; was 1");
    assert_string_equal(ini_line_with("; a = 1", "2", "was 1", &pool), "; a = 1");
    pool_clear(&pool);
}

/* What the reader makes of a line with that value; in the pool of problems. */
static const char *read_back(const char *value, struct problems *problems) {
    struct ini ini;
    FILE *const file = fopen(PATH, "wb");
    assert_non_null(file);
    assert_true(fprintf(file, "[a]\nb = %s ; a comment\n", value) > 0);
    assert_int_equal(fclose(file), 0);
    assert_true(ini_read(&ini, PATH, (struct place){0}, problems));
    assert_int_equal(problems->count, 0);
    return ini.sections[0].count == 0 ? "" : ini.sections[0].keys[0].value;
}

/* Texts of signs that mean something in such a file. */
static void test_values_are_read(void **state) {
    static const char *const signs[] = {";", "#", "\"", "'",        "\\",           "=", " ", "[",
                                        "]", "%", "a",  "\xC3\xA9", "\xE4\xB8\xAD", ":", "$"};
    size_t written = 0;
    (void)state;
    uint32_t seed = 7;
    for (int round = 0; round < 600; round++) {
        char text[64] = "";
        struct problems problems;
        problems_init(&problems);
        draw_pieces(&seed, text, sizeof text, 9, signs, sizeof signs / sizeof *signs);
        const char *const value = ini_value(text, &problems.pool);
        if (value != NULL) {
            const char *from = text + strspn(text, " ");
            size_t size = strlen(from);
            while (size > 0 && from[size - 1] == ' ') {
                size--;
            }
            const char *const got = read_back(value, &problems);
            if (strlen(got) != size || memcmp(got, from, size) != 0) {
                fail_msg("'%s' is read as '%s'", text, got);
            }
            written++;
        }
        problems_clear(&problems);
    }
    assert_true(written > 400);
}

static void test_no_value(void **state) {
    (void)state;
    char much[700];
    struct pool pool;
    pool_init(&pool);
    memset(much, 'x', sizeof much - 1);
    much[sizeof much - 1] = '\0';
    assert_null(ini_value("a\nb", &pool));
    assert_null(ini_value("a\x1b[2J", &pool));
    assert_null(ini_value("\xFF", &pool));
    assert_null(ini_value("\"'", &pool));
    assert_null(ini_value("a; \"'", &pool));
    assert_null(ini_value(much, &pool));
    assert_false(pool_failed(&pool));
    pool_clear(&pool);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_edits),
        cmocka_unit_test(test_more),
        cmocka_unit_test(test_values_are_read),
        cmocka_unit_test(test_no_value),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
