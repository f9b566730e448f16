/* SPDX-License-Identifier: MIT */
/* docs/formats.md and the tables that read the files say the same: every key is in the docs as its
 * row has it, and the docs have no other. */
#include "case.h"
#include "cmocka_all.h"

#include "read/actuals/actuals_row.h"
#include "read/job/job_keys.h"
#include "read/key/heading.h"
#include "read/rates/rack_file.h"
#include "read/rates/rates_keys.h"
#include "read/rates/woods.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The docs from a heading to the next of its level or above, on the heap. */
static char *find_part(const char *docs, const char *heading) {
    const char *start = strstr(docs, heading);
    const char *end;
    const char *upper;

    if (start == NULL) {
        fail_msg("docs/formats.md lacks: %s", heading);
        return NULL;
    }
    end = strstr(start + 1, "\n### ");
    upper = strstr(start + 1, "\n## ");
    if (end == NULL || (upper != NULL && upper < end)) {
        end = upper;
    }
    return end == NULL ? strdup(start) : strndup(start, (size_t)(end - start));
}

/* The line of a key as docs/formats.md has it. */
static void show_key(const struct key *key, char *text, size_t size) {
    char other[128] = "";

    if (key->other != NULL) {
        (void)snprintf(other, sizeof(other), "<br>`%s`", key->other);
    }
    (void)snprintf(text, size, "\n| `%s` | %s | `%s`%s | %s |\n", key->name,
                   key->needed ? "yes" : "", key->example, other, key->help);
}

/* How many rows of keys the part has: those of tables whose heading has 'Needed'. */
static size_t count_rows(const char *part) {
    const char *line = strstr(part, "| Needed |");
    size_t count = 0;

    /* the heading, the rule below it, then the rows */
    for (int skipped = 0; line != NULL && skipped < 2; skipped++) {
        line = strchr(line, '\n');
        line = line == NULL ? NULL : line + 1;
    }
    while (line != NULL && *line == '|') {
        count++;
        line = strchr(line, '\n');
        line = line == NULL ? NULL : line + 1;
    }
    return count;
}

static void check_keys(const char *docs, const char *heading, const struct key *keys,
                       size_t count) {
    char *part = find_part(docs, heading);

    for (size_t i = 0; i < count; i++) {
        char row[600];

        show_key(&keys[i], row, sizeof(row));
        if (strstr(part, row) == NULL) {
            fail_msg("docs/formats.md, %s lacks: %s", heading + 1, row + 1);
        }
    }
    assert_int_equal(count_rows(part), count);
    free(part);
}

static void check_section(const char *docs, const struct section_kind *kind) {
    char heading[64];
    char *part;

    (void)snprintf(heading, sizeof(heading), "\n### `[%s%s]`\n", kind->name,
                   kind->home.named ? " NAME" : "");
    part = find_part(docs, heading);
    assert_non_null(strstr(part, kind->help));
    free(part);
    if (kind->more_keys != NULL) { /* beside keys that another section describes */
        check_keys(docs, heading, kind->more_keys, kind->more_key_count);
    } else {
        check_keys(docs, heading, kind->keys, kind->key_count);
    }
}

/* Every other name of a column stands in the line of that column, and of one that means none alone
 * among those; there are no more. */
static void test_headings(void **state) {
    char *docs = case_load(DOORCOST_SOURCE "/docs/formats.md", NULL);
    char *part = find_part(docs, "\n### Other names of columns\n");
    char *const table = strstr(part, "|---|---|");
    char *const end = strstr(part, "\n\n`opening width`");
    size_t count;
    const struct heading_word *const words = heading_words(&count);
    size_t named = 0;
    size_t ticks = 0;

    (void)state;
    assert_non_null(table);
    assert_non_null(end);
    for (size_t i = 0; i < count; i++) {
        char name[64];
        char line[64];
        (void)snprintf(name, sizeof name, "`%s`", words[i].written);
        if (words[i].by_cells != NULL || words[i].column == NULL) {
            assert_non_null(strstr(end, name));
        }
        if (words[i].column == NULL || strcmp(words[i].written, words[i].column) == 0) {
            continue; /* none, or a column itself */
        }
        (void)snprintf(line, sizeof line, "\n| `%s` | ", words[i].column);
        const char *const at = strstr(table, line);
        const char *const found = at == NULL ? NULL : strstr(at + strlen(line), name);
        if (found == NULL || found > strchr(at + 1, '\n')) {
            fail_msg("docs/formats.md lacks %s of column '%s'", name, words[i].column);
        }
        named++;
    }
    for (const char *c = table; c < end; c++) {
        ticks += *c == '`' ? 1 : 0;
        named += strncmp(c, "\n| `", 4) == 0 ? 1 : 0;
    }
    assert_int_equal(ticks, 2 * named);
    free(part);
    free(docs);
}

static void test_formats(void **state) {
    char *docs = case_load(DOORCOST_SOURCE "/docs/formats.md", NULL);

    (void)state;
    assert_non_null(docs);
    for (size_t i = 0; i < rates_section_count; i++) {
        check_section(docs, rates_sections[i]);
    }
    for (size_t i = 0; i < job_section_count; i++) {
        check_section(docs, job_sections[i]);
    }
    check_keys(docs, "\n## The door list\n", row_keys, row_key_count);
    check_keys(docs, "\n## What was noted\n", actual_keys, actual_key_count);
    check_keys(docs, "\n## What is on the rack\n", rack_columns, rack_column_count);
    check_keys(docs, "\n## The table of woods\n", wood_columns, wood_column_count);
    free(docs);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_formats),
        cmocka_unit_test(test_headings),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
