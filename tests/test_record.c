/* SPDX-License-Identifier: MIT */
/* One record of a CSV file: its cells, the lines it takes, where each cell stands, and what is
 * refused. Every expectation is written by hand. */
#include "cmocka_all.h"
#include "read/file/record.h"

#include <string.h>

#define MOST 4

struct sample {
    const char *lines[MOST];
    char separator;
    size_t expected;   /* cells, as the heading would say; 0: not known */
    const char *id;    /* of the problem; NULL: the record is good */
    size_t takes;      /* lines */
    const char *cells; /* with a '|' behind each */
    unsigned columns[MOST], widths[MOST];
};

static const struct sample samples[] = {
    {{"a,b"}, ',', 0, NULL, 1, "a|b|", {1, 3}, {1, 1}},
    {{""}, ',', 0, NULL, 1, "|", {1}, {0}},
    {{"a,,c"}, ',', 3, NULL, 1, "a||c|", {1, 3, 4}, {1, 0, 1}},
    {{"a,"}, ',', 2, NULL, 1, "a||", {1, 3}, {1, 0}},
    {{" a , b c "}, ',', 2, NULL, 1, "a|b c|", {2, 6}, {1, 3}},
    {{"a;b,c"}, ';', 2, NULL, 1, "a|b,c|", {1, 3}, {1, 3}},
    {{"a\tb"}, '\t', 2, NULL, 1, "a|b|", {1, 3}, {1, 1}},
    /* quotes: around a separator, doubled, and as an inch mark in a bare cell */
    {{"\"a,b\",c"}, ',', 2, NULL, 1, "a,b|c|", {2, 7}, {3, 1}},
    {{"\"3 1/2\"\"\",c"}, ',', 2, NULL, 1, "3 1/2\"|c|", {2, 11}, {7, 1}},
    {{"3 1/2\",c"}, ',', 2, NULL, 1, "3 1/2\"|c|", {1, 8}, {6, 1}},
    {{"\xC3\xA9,b"}, ',', 2, NULL, 1, "\xC3\xA9|b|", {1, 4}, {2, 1}},
    /* over a line end: only where that gives the cells of the heading */
    {{"\"a", "b\",c"}, ',', 2, NULL, 2, "a b|c|", {2, 4}, {0, 1}},
    {{"x,\"a", "b\",c"}, ',', 2, "open-quote", 1, "", {0}, {0}},
    {{"\"a,b"}, ',', 2, "open-quote", 1, "", {0}, {0}},
    {{"\"a\"b,c"}, ',', 2, "stray-quote", 1, "", {0}, {0}},
};

static void check_cells(const struct sample *sample, const struct record *record) {
    char cells[100] = "";
    size_t used = 0;

    for (size_t i = 0; i < record->count; i++) {
        used += (size_t)snprintf(cells + used, sizeof(cells) - used, "%s|", record->cells[i].text);
        assert_int_equal(record->cells[i].place.column, sample->columns[i]);
        assert_int_equal(record->cells[i].place.width, sample->widths[i]);
    }
    assert_string_equal(cells, sample->cells);
}

static void test_records(void **state) {
    (void)state;
    for (size_t i = 0; i < sizeof(samples) / sizeof(samples[0]); i++) {
        const struct sample *sample = &samples[i];
        bool bad[MOST] = {false};
        struct source source = {.lines = sample->lines, .bad = bad, .open = true};
        struct problems problems;
        struct record record;

        while (source.count < MOST && sample->lines[source.count] != NULL) {
            source.count++;
        }
        problems_init(&problems);
        assert_true(
            record_read(&record, &source, 0, sample->separator, sample->expected, &problems));
        if (record.good != (sample->id == NULL) || record.lines != sample->takes) {
            fail_msg("record %zu: %s, %zu lines", i, record.good ? "good" : "refused",
                     record.lines);
        }
        if (sample->id == NULL) {
            assert_int_equal(problems.count, 0);
            check_cells(sample, &record);
        } else {
            assert_int_equal(problems.count, 1);
            assert_string_equal(problems.list[0].id, sample->id);
        }
        problems_clear(&problems);
    }
}

static void test_separators(void **state) {
    (void)state;
    assert_int_equal(record_separator("id,width,height"), ',');
    assert_int_equal(record_separator("id;width;note, if any"), ';');
    assert_int_equal(record_separator("id\twidth"), '\t');
    assert_int_equal(record_separator("\"a;b;c\",d"), ','); /* within quotes none counts */
    assert_int_equal(record_separator("id"), ',');
    assert_int_equal(record_separator(""), ',');
}

/* 20000 bytes are read, one more is refused. */
static void test_longest(void **state) {
    static char line[20002];
    const char *const lines[] = {line};
    bool bad[] = {false};
    const struct source source = {.lines = lines, .bad = bad, .count = 1, .open = true};

    (void)state;
    for (size_t size = 20000; size <= 20001; size++) {
        struct problems problems;
        struct record record;

        memset(line, 'a', size);
        problems_init(&problems);
        assert_true(record_read(&record, &source, 0, ',', 1, &problems));
        assert_int_equal(record.good, size == 20000);
        assert_int_equal(problems.count, size == 20000 ? 0 : 1);
        problems_clear(&problems);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_records),
        cmocka_unit_test(test_separators),
        cmocka_unit_test(test_longest),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
