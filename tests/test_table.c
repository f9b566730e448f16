/* SPDX-License-Identifier: MIT */
/* Tables of cells under a heading.  Rows marked RFC are the examples of RFC 4180, section 2. */
#include "draw.h"
#include "read/file/table.h"

#include "cmocka_all.h"
#include "file_bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PATH "table.csv"
#define MOST ((size_t)5)

/* What is read: cells with a `|` behind each, rows in `{}`, the heading first; then problems. */
struct table_case {
    const char *name, *bytes;
    size_t size;
    const char *expected;
};

static const struct table_case cases[] = {
    /* RFC 4180, 2.1 to 2.7; a line end within a cell reads as a blank */
    {"RFC 1: rows end with CR LF", BYTES("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
     "{aaa|bbb|ccc|}{zzz|yyy|xxx|}"},
    {"RFC 2: the last may have no end", BYTES("aaa,bbb,ccc\r\nzzz,yyy,xxx"),
     "{aaa|bbb|ccc|}{zzz|yyy|xxx|}"},
    {"RFC 3: a heading", BYTES("field_name,field_name,field_name\r\naaa,bbb,ccc\r\n"),
     "{field_name|field_name|field_name|}{aaa|bbb|ccc|}"},
    {"RFC 5: quotes", BYTES("h,i,j\r\n\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
     "{h|i|j|}{aaa|bbb|ccc|}{zzz|yyy|xxx|}"},
    {"RFC 6: a line end in quotes", BYTES("h,i,j\r\n\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
     "{h|i|j|}{aaa|b bb|ccc|}{zzz|yyy|xxx|}"},
    {"RFC 7: a quote in quotes", BYTES("h,i,j\r\n\"aaa\",\"b\"\"bb\",\"ccc\""),
     "{h|i|j|}{aaa|b\"bb|ccc|}"},
    /* separators */
    {"semicolons", BYTES("a;b\n1,5;2\n"), "{a|b|}{1,5|2|}"},
    {"tabs", BYTES("a\tb\n1\t\n"), "{a|b|}{1||}"},
    {"one column", BYTES("a\n1\n2\n"), "{a|}{1|}{2|}"},
    {"one column with commas", BYTES("a\n1,2\n"), " no-heading@1:1+1"},
    {"a title", BYTES("doors,,\na,b,c\n1,2,3\n"), " no-heading@1:1+5"},
    {"a separator told", BYTES("sep=;\na;b\n1;2\n"), " no-heading@1:1+4"},
    {"no-break spaces",
     BYTES("\xC2\xA0"
           "a\xE2\x80\xAF,b \xC2\xA0\n1\xC2\xA0,\xC2\xA0\"2\"\n"),
     "{a|b|}{1|2|}"},
    {"another separator", BYTES("a;b\n1,2\n3;4\n"), "{a|b|}{3|4|} other-separator@2"},
    {"another, in all rows", BYTES("a,b\n1;2\n3;4\n"), "{a|b|} other-separator@2,3"},
    {"tabs under commas", BYTES("a,b\n1\t2\n"), "{a|b|} other-separator@2"},
    {"a separator in quotes", BYTES("a,b\n\"1,5\",2\n"), "{a|b|}{1,5|2|}"},
    /* blanks */
    {"around cells", BYTES(" a , b \n 1 ,\t2\t\n"), "{a|b|}{1|2|}"},
    {"around quotes", BYTES("a,b\n \"1\" , \" 2 \" \n"), "{a|b|}{1|2|}"},
    {"empty cells", BYTES("a,b,c\n,,\n1,,\n,2,\n"), "{a|b|c|}{1|||}{|2||}"},
    {"empty rows", BYTES("\n\na,b\n\n , \n1,2\n\n"), "{a|b|}{1|2|}"},
    {"rows of quotes alone", BYTES("a,b\n\"\",\"\"\n1,2\n"), "{a|b|}{1|2|}"},
    /* columns */
    {"too few", BYTES("a,b,c\n1,2\n3,4,5\n"), "{a|b|c|}{3|4|5|} too-few-cells@2"},
    {"too many", BYTES("a,b\n1,2,3\n4,5\n"), "{a|b|}{4|5|} too-many-cells@2"},
    {"empty ones behind", BYTES("a,b,,\n1,2,,,,\n3,4\n"), "{a|b|}{1|2|}{3|4|}"},
    {"a column without a heading", BYTES("a,,c\n1,2,3\n"), "{a||c|}{1|2|3|}"},
    {"words behind empty ones", BYTES("a,b\n1,2,,x\n"), "{a|b|} too-many-cells@2"},
    /* quotes */
    {"a mark of inches", BYTES("a,b\n23 7/16\",2\n"), "{a|b|}{23 7/16\"|2|}"},
    {"doubled in quotes", BYTES("a,b\n\"23 7/16\"\"\",2\n"), "{a|b|}{23 7/16\"|2|}"},
    {"feet and inches", BYTES("a,b\n1' 11\",5'\n"), "{a|b|}{1' 11\"|5'|}"},
    {"quotes within a bare cell", BYTES("a,b\nx \"y\" z,2\n"), "{a|b|}{x \"y\" z|2|}"},
    {"text behind", BYTES("a,b\n\"x\" y,2\n3,4\n"), "{a|b|}{3|4|} stray-quote@2"},
    {"an inch mark within", BYTES("a,b\n\"23 7/16\"\",2\n3,4\n"), "{a|b|}{3|4|} open-quote@2"},
    {"not closed", BYTES("a,b\n\"x,2\n3,4\n"), "{a|b|}{3|4|} open-quote@2"},
    {"not closed at the end", BYTES("a,b\n1,2\n\"x,2"), "{a|b|}{1|2|} open-quote@3"},
    {"two of them", BYTES("a,b\n\"x,2\n\"y,4\n"), "{a|b|} stray-quote@2"},
    {"over three lines", BYTES("a,b\n\"1\n2\n\n3\",4\n5,6\n"), "{a|b|}{1 2  3|4|}{5|6|}"},
    {"a heading over two lines", BYTES("\"a\nb\",c\n1,2\n"), "{a b|c|}{1|2|}"},
    {"a heading not closed", BYTES("\"a,b\n1,2\n"), " open-quote@1"},
    {"a separator behind a line end", BYTES("a,b\n\"1\n,2\",3\n"), "{a|b|}{1 ,2|3|}"},
    /* bytes */
    {"CR", BYTES("a,b\r1,2\r"), "{a|b|}{1|2|}"},
    {"a mark",
     BYTES("\xEF\xBB\xBF"
           "a,b\n1,2"),
     "{a|b|}{1|2|}"},
    {"a NUL", BYTES("a,b\n1,\0\n3,4\n"), "{a|b|}{3|4|} nul-byte@2"},
    {"a NUL in the heading", BYTES("a,\0\n1,2\n"), " nul-byte@1"},
    {"latin 1", BYTES("a,b\n1,\xE9\n3,4\n"), "{a|b|}{3|4|} not-utf-8@2:3+1"},
    {"a bad line within quotes", BYTES("a,b\n\"1\n\xE9\",2\n3,4\n"),
     "{a|b|}{3|4|} not-utf-8@3:1+1 open-quote@2"},
    /* nothing */
    {"an empty file", BYTES(""), " empty-table@0"},
    {"blank lines", BYTES("\n , \n\n"), " empty-table@0"},
    {"a heading alone", BYTES("a,b\n"), "{a|b|}"},
    /* five rows may be */
    {"as many rows as may be", BYTES("a\n1\n2\n3\n4\n5\n\n"), "{a|}{1|}{2|}{3|}{4|}{5|}"},
    {"one more", BYTES("a\n1\n2\n3\n4\n5\n6\n7\n"), "{a|}{1|}{2|}{3|}{4|}{5|}! too-many-rows@7"},
    {"a bad row does not count", BYTES("a,b\n1,1\n2\n3,3\n4,4\n5,5\n6,6\n"),
     "{a|b|}{1|1|}{3|3|}{4|4|}{5|5|}{6|6|} too-few-cells@3"},
};

static void dump_cells(struct dump *dump, const struct cell *cells, size_t count) {
    dump_add(dump, "{");
    for (size_t i = 0; i < count; i++) {
        dump_add(dump, "%s|", cells[i].text);
    }
    dump_add(dump, "}");
}

static void dump_table(struct dump *dump, const struct table *table,
                       const struct problems *problems) {
    if (table->columns > 0) {
        dump_cells(dump, table->heading, table->columns);
    }
    for (size_t r = 0; r < table->count; r++) {
        dump_cells(dump, table->rows[r].cells, table->columns);
    }
    dump_add(dump, "%s", table->over ? "!" : "");
    dump_problems(dump, problems);
}

static void test_files(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct dump dump = {.used = 0};
        struct problems problems;
        struct table table;
        problems_init(&problems);
        file_bench_write(PATH, cases[i].bytes, cases[i].size);
        assert_true(table_read(&table, PATH, (struct place){0}, (struct table_wanted){.most = MOST},
                               &problems));
        assert_true(table.open);
        dump_table(&dump, &table, &problems);
        wrong = dump_compare(&dump, cases[i].expected, cases[i].name, wrong);
        problems_clear(&problems);
    }
    assert_int_equal(wrong, 0);
}

static void test_places(void **state) {
    (void)state;
    static const struct {
        size_t row, column; /* row 0: the heading */
        unsigned line, at, width;
    } wanted[] = {
        {0, 0, 2, 1, 2}, {0, 1, 2, 5, 5}, {1, 0, 3, 1, 3}, {1, 1, 3, 6, 1},
        {2, 0, 4, 2, 0}, {2, 1, 5, 4, 2}, {3, 0, 7, 1, 0}, {3, 1, 7, 2, 1},
    };
    struct problems problems;
    struct table table;
    problems_init(&problems);
    file_bench_write(PATH, BYTES("\nid, width\nD01, 7\n\"D\n2\",12\n\n,9\n"));
    assert_true(table_read(&table, PATH, (struct place){0}, (struct table_wanted){.most = MOST},
                           &problems));
    assert_int_equal(problems.count, 0);
    assert_int_equal(table.count, 3);
    for (size_t i = 0; i < COUNT(wanted); i++) {
        const struct cell *const cells =
            wanted[i].row == 0 ? table.heading : table.rows[wanted[i].row - 1].cells;
        const struct place place = cells[wanted[i].column].place;
        if (place.line != wanted[i].line || place.column != wanted[i].at ||
            place.width != wanted[i].width) {
            fail_msg("cell %zu of row %zu stands at %u:%u+%u", wanted[i].column, wanted[i].row,
                     (unsigned)place.line, (unsigned)place.column, (unsigned)place.width);
        }
    }
    assert_int_equal(table.rows[1].place.line, 4);
    problems_clear(&problems);
}

/* A quoted cell goes over 20 lines, not over 21; nor over a record of more than 20,000 bytes. */
static void test_long_quotes(void **state) {
    (void)state;
    static char bytes[64000];
    for (int lines = 19; lines <= 21; lines++) {
        struct problems problems;
        struct table table;
        size_t used = (size_t)snprintf(bytes, sizeof bytes, "a,b\n\"");
        for (int i = 1; i < lines; i++) {
            bytes[used++] = 'x';
            bytes[used++] = '\n';
        }
        used += (size_t)snprintf(bytes + used, sizeof bytes - used, "x\",2\n");
        problems_init(&problems);
        file_bench_write(PATH, bytes, used);
        assert_true(table_read(&table, PATH, (struct place){0}, (struct table_wanted){.most = 100},
                               &problems));
        if (lines <= 20) {
            assert_int_equal(problems.count, 0);
            assert_int_equal(table.count, 1);
            assert_int_equal(strlen(table.rows[0].cells[0].text), 2 * (size_t)lines - 1);
        } else {
            assert_string_equal(problems.list[0].id, "open-quote");
            assert_int_equal(problems.list[0].place.line, 2);
        }
        problems_clear(&problems);
    }
    memset(bytes, 'x', sizeof bytes);
    static const char head[] = {'a', ',', 'b', '\n', '"'};
    static const char tail[] = {'"', ',', '2', '\n'};
    memcpy(bytes, head, sizeof head);
    bytes[15000] = '\n';
    memcpy(bytes + 29990, tail, sizeof tail);
    struct problems problems;
    struct table table;
    problems_init(&problems);
    file_bench_write(PATH, bytes, 29994);
    assert_true(
        table_read(&table, PATH, (struct place){0}, (struct table_wanted){.most = 100}, &problems));
    assert_int_equal(table.count, 0);
    assert_string_equal(problems.list[0].id, "open-quote");
    problems_clear(&problems);
}

/* --- tables made at random --- */

static uint32_t seed;

/* A cell written the way of RFC 4180 reads as it was, but for blanks at its ends. */
static void test_random_cells(void **state) {
    (void)state;
    static const char *const pieces[] = {",",   ";", "\"", "\"\"",  "x",
                                         "y z", "'", "\t", "1/2\"", "="};
    static const char separators[] = {',', ';', '\t'};
    for (uint32_t round = 1; round <= 3000; round++) {
        char cells[3][80];
        char bytes[1200];
        struct problems problems;
        struct table table;
        seed = round;
        const char separator = separators[draw_below(&seed, 3)];
        size_t used = (size_t)snprintf(bytes, sizeof bytes, "a%cb%cc\n", separator, separator);
        for (size_t i = 0; i < 3; i++) {
            (void)snprintf(cells[i], sizeof cells[i], "p");
            draw_pieces(&seed, cells[i], sizeof cells[i], 6, pieces, COUNT(pieces));
            (void)strncat(cells[i], "q", sizeof cells[i] - strlen(cells[i]) - 1);
            bytes[used++] = '"';
            for (const char *c = cells[i]; *c != '\0'; c++) {
                bytes[used++] = *c;
                if (*c == '"') {
                    bytes[used++] = '"';
                }
            }
            bytes[used++] = '"';
            bytes[used] = '\n';
            if (i < 2) {
                bytes[used] = separator;
            }
            used++;
        }
        problems_init(&problems);
        file_bench_write(PATH, bytes, used);
        assert_true(table_read(&table, PATH, (struct place){0}, (struct table_wanted){.most = MOST},
                               &problems));
        assert_int_equal(problems.count, 0);
        assert_int_equal(table.count, 1);
        for (size_t i = 0; i < 3; i++) {
            assert_string_equal(table.rows[0].cells[i].text, cells[i]);
        }
        problems_clear(&problems);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_files),
        cmocka_unit_test(test_places),
        cmocka_unit_test(test_long_quotes),
        cmocka_unit_test(test_random_cells),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
