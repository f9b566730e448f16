/* SPDX-License-Identifier: MIT */
/* The man page and docs/commands.md against the tables of commands and options: neither lacks one,
 * neither has one that the program does not. */
#include "command/command.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char man_page[] = DOORCOST_SOURCE "/docs/doorcost.1";
static const char commands_page[] = DOORCOST_SOURCE "/docs/commands.md";

/* The file without backslashes, so that `\-\-json` reads as `--json`. */
static char *read_plain(const char *path) {
    FILE *const file = fopen(path, "r");
    assert_non_null(file);
    char *const text = calloc(1, 65536);
    assert_non_null(text);
    size_t size = 0;
    for (int c = fgetc(file); c != EOF && size < 65535; c = fgetc(file)) {
        if (c != '\\') {
            text[size++] = (char)c;
        }
    }
    (void)fclose(file);
    return text;
}

static void every_name_is_told(const char *path) {
    char *const text = read_plain(path);
    char name[64];
    size_t count;
    const struct option_row *const options = option_rows(&count);
    for (size_t i = 0; i < count; i++) {
        (void)snprintf(name, sizeof name, "--%s", options[i].name);
        if (strstr(text, name) == NULL) {
            print_error("%s lacks %s\n", path, name);
        }
        assert_non_null(strstr(text, name));
    }
    const struct command *const commands = command_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_non_null(strstr(text, commands[i].name));
    }
    free(text);
}

static bool is_option(const char *name, size_t size) {
    size_t count;
    const struct option_row *const options = option_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if (strlen(options[i].name) == size && strncmp(options[i].name, name, size) == 0) {
            return true;
        }
    }
    return false;
}

static void every_option_told_exists(const char *path) {
    char *const text = read_plain(path);
    int found = 0;
    for (const char *at = strstr(text, "--"); at != NULL; at = strstr(at, "--")) {
        at += 2;
        size_t size = 0;
        while (islower((unsigned char)at[size]) || (at[size] == '-' && at[size + 1] != '-')) {
            size++;
        }
        if (size == 0 || at[0] == '-') {
            continue;
        }
        if (!is_option(at, size)) {
            print_error("%s tells of --%.*s\n", path, (int)size, at);
        }
        assert_true(is_option(at, size));
        found++;
        at += size;
    }
    assert_true(found > 5);
    free(text);
}

static void man_page_and_tables(void **state) {
    (void)state;
    every_name_is_told(man_page);
    every_option_told_exists(man_page);
}

static void commands_page_and_tables(void **state) {
    (void)state;
    every_name_is_told(commands_page);
    every_option_told_exists(commands_page);
}

/* The page says what the list of commands says. */
static void summaries_agree(void **state) {
    (void)state;
    char *const text = read_plain(man_page);
    size_t count;
    const struct command *const commands = command_rows(&count);
    for (size_t i = 0; i < count; i++) {
        assert_non_null(strstr(text, commands[i].summary + 1)); /* but for its first letter */
    }
    free(text);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(man_page_and_tables),
        cmocka_unit_test(commands_page_and_tables),
        cmocka_unit_test(summaries_agree),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
