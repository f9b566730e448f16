/* SPDX-License-Identifier: MIT */
/* The book of cells: where figures are at home, what texts, names and numbers become in the file.
 * Files are read back by the reader of the tests. */
#include "book_bench.h"

#include "cmocka_all.h"
#include "report/xlsx/book_look.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PATH "book.xlsx"

static fig money(struct tape *tape, int64_t cents) {
    static uint32_t line;
    return tape_given(tape, "given", UNIT_MONEY, 2, cents, (struct place){.line = ++line});
}

static void check_formula(const struct xlsx *read, const char *sheet, const char *at,
                          const char *formula, double value) {
    const struct xlsx_cell *const cell = xlsx_at(read, sheet, at);
    assert_non_null(cell);
    if (formula == NULL) {
        assert_null(cell->formula);
    } else {
        assert_non_null(cell->formula);
        assert_string_equal(cell->formula, formula);
    }
    assert_int_equal(cell->value.kind, XLSX_NUMBER);
    assert_true(fabs(cell->value.number - value) < 1e-9);
}

/* --- homes --- */

/* What is done with one figure of 12.34, step by step, and what the cells then are. */
enum verb { END, FIGURE, CLAIM, MENTION, LESS, SETTLE };

struct home_case {
    const char *name;
    struct {
        enum verb verb;
        uint16_t column;
    } steps[5];
    const char *cells[5]; /* `A1` and its formula; a home has none: `A1` alone */
};

static const struct home_case home_cases[] = {
    {"the first is at home", {{FIGURE, 0}, {FIGURE, 1}, {FIGURE, 2}}, {"A1", "B1=A1", "C1=A1"}},
    {"a mention waits for its home", {{MENTION, 0}, {FIGURE, 1}}, {"A1=B1", "B1"}},
    {"a claim takes the home", {{FIGURE, 0}, {CLAIM, 1}, {FIGURE, 2}}, {"A1=B1", "B1", "C1=B1"}},
    {"the last claim has it", {{CLAIM, 0}, {CLAIM, 1}, {CLAIM, 2}}, {"A1=C1", "B1=C1", "C1"}},
    {"a claim of what has no home", {{MENTION, 0}, {CLAIM, 1}}, {"A1=B1", "B1"}},
    {"the other sign", {{FIGURE, 0}, {LESS, 1}}, {"A1", "B1=-A1"}},
    {"the other sign before the home", {{LESS, 0}, {FIGURE, 1}}, {"A1=-B1", "B1"}},
    {"the first mention becomes the home",
     {{MENTION, 0}, {MENTION, 1}, {SETTLE, 0}, {FIGURE, 2}},
     {"A1", "B1=A1", "C1=A1"}},
    {"no home of another sign",
     {{LESS, 0}, {MENTION, 1}, {SETTLE, 0}, {FIGURE, 2}},
     {"A1=-B1", "B1", "C1=B1"}},
    {"a home on the workings", {{LESS, 0}, {SETTLE, 0}, {FIGURE, 1}}, {"A1=-B1", "B1"}},
    {"right of the last column", {{FIGURE, 256}, {FIGURE, 1}}, {"B1"}},
    {"the last column", {{FIGURE, 255}, {FIGURE, 1}}, {"IV1", "B1=IV1"}},
    {"a claim right of the last column", {{FIGURE, 0}, {CLAIM, 256}}, {"A1"}},
    {"a claim there, then a mention", {{FIGURE, 0}, {CLAIM, 300}, {MENTION, 3}}, {"A1", "D1=A1"}},
    {"a mention right of the last column", {{FIGURE, 0}, {MENTION, 256}, {LESS, 256}}, {"A1"}},
};

static void take_steps(struct book *book, const struct home_case *c, fig figure) {
    for (size_t i = 0; i < COUNT(c->steps) && c->steps[i].verb != END; i++) {
        const uint16_t column = c->steps[i].column;
        switch (c->steps[i].verb) {
        case FIGURE:
            book_figure(book, 0, 0, column, LOOK_PLAIN, figure);
            break;
        case CLAIM:
            book_set_home(book, 0, 0, column, LOOK_PLAIN, figure);
            break;
        case MENTION:
            book_mention(book, 0, 0, column, LOOK_PLAIN, figure);
            break;
        case LESS:
            book_negated(book, 0, 0, column, LOOK_PLAIN, figure);
            break;
        default:
            book_assign_homes(book);
            break;
        }
    }
}

static void test_homes(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(home_cases); i++) {
        const struct home_case *const c = &home_cases[i];
        struct tape tape;
        struct book book;
        struct xlsx read;
        size_t wanted = 0;
        tape_init(&tape, true);
        const fig figure = money(&tape, 1234);
        book_init(&book, &tape);
        (void)book_sheet(&book, "Sheet", "title", false);
        assert_null(book_home(&book, figure));
        take_steps(&book, c, figure);
        book_bench_read(&book, PATH, &read);
        for (; wanted < COUNT(c->cells) && c->cells[wanted] != NULL; wanted++) {
            char at[8];
            const char *const formula = strchr(c->cells[wanted], '=');
            const bool less = formula != NULL && formula[1] == '-';
            (void)snprintf(at, sizeof at, "%.*s", (int)strcspn(c->cells[wanted], "="),
                           c->cells[wanted]);
            check_formula(&read, "Sheet", at, formula == NULL ? NULL : formula + 1,
                          less ? -12.34 : 12.34);
        }
        if (read.count != wanted || book_home(&book, figure) == NULL) {
            fail_msg("%s: %zu cells, expected %zu", c->name, read.count, wanted);
        }
        xlsx_clear(&read);
        book_clear(&book);
        tape_clear(&tape);
    }
}

/* Cells of several blocks: each is written once, and points at homes that lie in blocks which are
 * freed by then. */
static void test_blocks(void **state) {
    (void)state;
    enum { MANY = 3 * (int)BOOK_BLOCK + 5 };
    struct tape tape;
    struct book book;
    struct xlsx read;
    tape_init(&tape, true);
    const fig first = money(&tape, 100);
    const fig moved = money(&tape, 200);
    book_init(&book, &tape);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_figure(&book, 0, 0, 0, LOOK_PLAIN, first);
    book_figure(&book, 0, 0, 1, LOOK_PLAIN, moved);
    for (uint32_t row = 1; row < MANY; row++) {
        book_figure(&book, 0, row, 0, LOOK_PLAIN, first);
    }
    book_set_home(&book, 0, MANY, 1, LOOK_PLAIN, moved);
    book_bench_read(&book, PATH, &read);
    assert_int_equal(read.count, MANY + 2);
    check_formula(&read, "Sheet", "A1", NULL, 1);
    check_formula(&read, "Sheet", "B1", "B12294", 2);
    check_formula(&read, "Sheet", "A12293", "A1", 1);
    check_formula(&read, "Sheet", "B12294", NULL, 2);
    xlsx_clear(&read);
    book_clear(&book);
    tape_clear(&tape);
}

/* Nothing is written for a figure that is none. */
static void test_none(void **state) {
    (void)state;
    struct tape tape;
    struct book book;
    tape_init(&tape, true);
    book_init(&book, &tape);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_figure(&book, 0, 0, 0, LOOK_PLAIN, (fig){0});
    book_set_home(&book, 0, 0, 1, LOOK_PLAIN, (fig){0});
    book_mention(&book, 0, 0, 2, LOOK_PLAIN, (fig){0});
    book_negated(&book, 0, 0, 3, LOOK_PLAIN, (fig){0});
    book_text(&book, 0, 0, 4, LOOK_PLAIN, NULL);
    assert_int_equal(book.cell_count, 0);
    book_clear(&book);
    tape_clear(&tape);
}

/* --- texts --- */

/* A text as a workbook means it: `_x000D_` stands for the character of that code (ECMA-376 part 1,
 * 22.9.2.19, ST_Xstring). ASCII alone is looked at. */
static void plain(const char *text, char *out, size_t size) {
    size_t used = 0;
    while (*text != '\0' && used + 1 < size) {
        char *end = NULL;
        const unsigned long code = strncmp(text, "_x", 2) == 0 && strlen(text) >= 7 &&
                                           strspn(text + 2, "0123456789abcdefABCDEF") == 4
                                       ? strtoul(text + 2, &end, 16)
                                       : 0;
        if (end != NULL && *end == '_' && code < 0x80) {
            out[used++] = (char)code;
            text = end + 1;
        } else {
            out[used++] = *text++;
        }
    }
    out[used] = '\0';
}

static const char *const texts[] = {
    "plain",
    "=1+1",
    "=HYPERLINK(\"http://localhost/\",\"client\")",
    "+49 1",
    "-2+3",
    "@SUM(A1:A9)",
    "{=1}",
    "'quoted",
    "=cmd|' /C calc'!A0",
    "\tbehind a tab",
    " a blank before",
    "a blank behind ",
    "two  blanks",
    "a line\nand another",
    "12345678901234567890",
    "1/2",
    "3-4",
    "1e5",
    "TRUE",
    "#REF!",
    "#N/A",
    "<b>&amp;\"'</b>",
    "]]>",
    "<!--",
    "&#65;",
    "%s %n %d",
    "_x0041_",
    "_x000D_ and _x005F_x000D_",
    "_x00e9_",
    "_x00G1_",
    "_x0041",
    "__x0041__",
    "caf\xC3\xA9",
    "\xE2\x82\xAC 5",
    "\xF0\x9F\x9A\xAA door",
    "\xD7\x93\xD7\x9C\xD7\xAA",
    "e\xCC\x81 of two",
    "\x01\x02\x1F",
    "\xEF\xBB\xBFmark",
};

static void test_texts(void **state) {
    (void)state;
    struct book book;
    struct xlsx read;
    int wrong = 0;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    (void)book_sheet(&book, "Spans", "spans", false);
    for (size_t i = 0; i < COUNT(texts); i++) {
        book_text(&book, 0, (uint32_t)i, 0, LOOK_PLAIN, texts[i]);
        book_format(&book, 0, (uint32_t)i, 1, LOOK_WRAP, "%s", texts[i]);
        book_span(&book, 1, (uint32_t)i, 0, 2, LOOK_WRAP, texts[i]);
    }
    book_bench_read(&book, PATH, &read);
    for (size_t i = 0; i < COUNT(texts) * 3; i++) {
        char at[8];
        char found[128];
        (void)snprintf(at, sizeof at, "%c%zu", i % 3 == 1 ? 'B' : 'A', i / 3 + 1);
        const struct xlsx_cell *const cell = xlsx_at(&read, i % 3 == 2 ? "Spans" : "Sheet", at);
        assert_non_null(cell);
        assert_null(cell->formula);
        assert_int_equal(cell->value.kind, XLSX_TEXT);
        plain(cell->value.text, found, sizeof found);
        if (strcmp(found, texts[i / 3]) != 0) {
            print_error("'%s' became '%s'\n", texts[i / 3], found);
            wrong++;
        }
    }
    xlsx_clear(&read);
    book_clear(&book);
    assert_int_equal(wrong, 0);
}

/* 32,767 characters of UTF-16 fit in a cell ("Excel specifications and limits", Microsoft). */
static void test_long_texts(void **state) {
    (void)state;
    static const struct {
        const char *letter;
        size_t count, kept; /* letters */
        bool cut;
    } cases[] = {
        {"a", 32766, 32766, false},
        {"a", 32767, 32767, false},
        {"a", 32768, 32766, true},
        {"a", 40000, 32766, true},
        {"\xC3\xA9", 32767, 32767, false},
        {"\xC3\xA9", 32768, 32766, true},
        {"\xF0\x9F\x9A\xAA", 16383, 16383, false},
        {"\xF0\x9F\x9A\xAA", 16384, 16383, true},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct book book;
        struct xlsx read;
        const size_t size = strlen(cases[i].letter);
        char *const text = calloc(cases[i].count * size + 4, 1);
        assert_non_null(text);
        for (size_t n = 0; n < cases[i].count; n++) {
            memcpy(text + n * size, cases[i].letter, size);
        }
        book_init(&book, NULL);
        (void)book_sheet(&book, "Sheet", "title", false);
        book_text(&book, 0, 0, 0, LOOK_PLAIN, text);
        book_span(&book, 0, 1, 0, 3, LOOK_PLAIN, text);
        book_bench_read(&book, PATH, &read);
        char *const end = text + cases[i].kept * size;
        *end = '\0';
        if (cases[i].cut) {
            memcpy(end, "\xE2\x80\xA6", 4);
        }
        for (size_t row = 0; row < 2; row++) {
            const struct xlsx_cell *const cell = xlsx_at(&read, "Sheet", row == 0 ? "A1" : "A2");
            assert_non_null(cell);
            assert_string_equal(cell->value.text, text);
        }
        xlsx_clear(&read);
        book_clear(&book);
        free(text);
    }
}

/* What stands for letters that would be codes counts too. */
static void test_long_codes(void **state) {
    (void)state;
    enum { CODES = 4681 };
    static char text[CODES * 7 + 1];
    struct book book;
    struct xlsx read;
    for (size_t i = 0; i < CODES; i++) {
        memcpy(text + i * 7, "_x0041_", 8);
    }
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_text(&book, 0, 0, 0, LOOK_PLAIN, text);
    book_bench_read(&book, PATH, &read);
    const struct xlsx_cell *const cell = xlsx_at(&read, "Sheet", "A1");
    static char found[sizeof text];
    assert_non_null(cell);
    assert_in_range(strlen(cell->value.text), 32600, 32769); /* the ellipsis has three bytes */
    plain(cell->value.text, found, sizeof found);
    const char *const dots = strstr(found, "\xE2\x80\xA6");
    assert_non_null(dots);
    assert_int_equal(strncmp(found, text, (size_t)(dots - found)), 0);
    xlsx_clear(&read);
    book_clear(&book);
}

/* Cells that run over others are one in the file, and nothing else of them is. */
static void test_spans(void **state) {
    (void)state;
    struct book book;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_span(&book, 0, 3, 1, 4, LOOK_WRAP, "over four");
    book_span(&book, 0, 5, 2, 2, LOOK_WRAP, "over one");
    book_bench_write(&book, PATH);
    char *const sheet = xlsx_part(PATH, "xl/worksheets/sheet1.xml");
    assert_non_null(sheet);
    assert_non_null(
        strstr(sheet, "<mergeCells count=\"1\"><mergeCell ref=\"B4:E4\"/></mergeCells>"));
    free(sheet);
    book_clear(&book);
}

/* --- names --- */

/* A program that opens the file ignores case in names ("Names in formulas", Microsoft), and calls
 * a file damaged that has one twice. */
static void test_names(void **state) {
    (void)state;
    static const struct {
        const char *asked, *given;
    } names[] = {
        {"in_rate", "in_rate"},     {"in_rate", "in_rate_"},    {"in_rate", "in_rate__"},
        {"in_rate_", "in_rate___"}, {"in_Rate", "in_Rate____"}, {"IN_OTHER", "IN_OTHER"},
        {"in_other", "in_other_"},
    };
    struct book book;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    (void)book_sheet(&book, "Rates", "rates", false);
    for (uint16_t i = 0; i < (uint16_t)COUNT(names); i++) {
        book_number(&book, 1, i, 27, LOOK_INPUT, UNIT_MONEY, 2, i);
        book_define(&book, 1, i, 27, names[i].asked);
    }
    book_bench_write(&book, PATH);
    char *const part = xlsx_part(PATH, "xl/workbook.xml");
    assert_non_null(part);
    for (size_t i = 0; i < COUNT(names); i++) {
        char line[96];
        assert_string_equal(book.names[i].name, names[i].given);
        (void)snprintf(line, sizeof line, "<definedName name=\"%s\">Rates!$AB$%zu</definedName>",
                       names[i].given, i + 1);
        if (strstr(part, line) == NULL) {
            fail_msg("no %s", line);
        }
    }
    free(part);
    book_clear(&book);
}

/* --- how numbers are shown --- */

struct number_case {
    enum unit unit;
    uint8_t decimals;
    int64_t value;
    const char *format, *shown;
};

static const struct number_case numbers[] = {
    {UNIT_MONEY, 2, 123456, "#,##0.00", "1234.56  "}, /* two more, for the separators */
    {UNIT_MONEY, 2, 12, "#,##0.00", "0.12"},
    {UNIT_MONEY, 2, -99999, "#,##0.00", "-999.99  "},
    {UNIT_MONEY, 0, 5, "#,##0", "5"},
    {UNIT_MONEY_PER_M, 4, 12345, "#,##0.0000", "1.2345"},
    {UNIT_MONEY_PER_HOUR, 2, 3800, "#,##0.00", "38.00"},
    {UNIT_FT_PER_MIN, 1, 155, "0.0", "15.5"},
    {UNIT_FACTOR, 6, 1500000, "0.000000", "1.500000"},
    {UNIT_PERCENT, 4, 88750, "0.0000\" %\"", "8.8750 %"},
    {UNIT_PERCENT, 0, 5, "0\" %\"", "5 %"},
    {UNIT_COUNT, 0, 7, "0", "7"},
    {UNIT_HOUR, 2, 1275, "0.00", "12.75"},
    /* inches that are whole 64ths are fractions; others are decimals */
    {UNIT_IN, 6, 2250000, "# ?/\?\?", "2 1/4"},
    {UNIT_IN, 6, 15625, "# ?/\?\?", "1/64"},
    {UNIT_IN, 6, 18000000, "# ?/\?\?", "18"},
    {UNIT_IN, 6, 0, "# ?/\?\?", "0"},
    {UNIT_IN, 6, 15626, "0.000000", "0.015626"},
    {UNIT_IN, 2, 225, "0.00", "2.25"},
    {UNIT_MM, 6, 18500000, "0.0", "18.5"},
    {UNIT_MM, 6, 18550000, "0.000000", "18.550000"},
    {UNIT_MM, 1, 185, "0.0", "18.5"},
};

static void test_numbers(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(numbers); i++) {
        const struct number_case *const c = &numbers[i];
        char format[32];
        char shown[48];
        look_number_format(c->unit, c->decimals, c->value, format);
        look_shown(c->unit, c->decimals, c->value, shown, sizeof shown);
        assert_string_equal(format, c->format);
        assert_string_equal(shown, c->shown);
    }
}

/* Texts of LOOK_DIFFERENCE are plain: it has a format of numbers alone. */
static bool both_plain(const struct xlsx_cell *a, const struct xlsx_cell *b) {
    const uint32_t rows[] = {LOOK_PLAIN, LOOK_DIFFERENCE};
    return a->column == 3 && b->column == 3 && (a->row == rows[0] || a->row == rows[1]) &&
           (b->row == rows[0] || b->row == rows[1]);
}

/* A look with one format is one style of the file; the number of styles is what was used. */
static void test_looks(void **state) {
    (void)state;
    struct book book;
    struct xlsx read;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    for (uint16_t look = 0; look < (uint16_t)LOOK_COUNT; look++) {
        book_number(&book, 0, look, 0, (enum look)look, UNIT_MONEY, 2, 100);
        book_number(&book, 0, look, 1, (enum look)look, UNIT_MONEY, 2, 200);
        book_number(&book, 0, look, 2, (enum look)look, UNIT_COUNT, 0, 200);
        book_text(&book, 0, look, 3, (enum look)look, "text");
    }
    book_bench_read(&book, PATH, &read);
    assert_int_equal(read.count, 4 * LOOK_COUNT);
    for (size_t i = 0; i < read.count; i++) {
        for (size_t k = 0; k < i; k++) {
            const struct xlsx_cell *const a = &read.cells[i];
            const struct xlsx_cell *const b = &read.cells[k];
            const bool alike = both_plain(a, b) ||
                               (a->row == b->row && (a->column | 1) == 1 && (b->column | 1) == 1);
            assert_int_equal(a->style == b->style, alike);
        }
    }
    xlsx_clear(&read);
    book_clear(&book);
}

/* Inputs may be typed over, are told what they take, and nothing else is open. */
static void test_protection(void **state) {
    (void)state;
    for (int protect = 0; protect < 2; protect++) {
        struct book book;
        book_init(&book, NULL);
        book.protect = protect;
        (void)book_sheet(&book, "Sheet", "title", false);
        book_number(&book, 0, 0, 0, LOOK_INPUT, UNIT_PERCENT, 2, 500);
        book_number(&book, 0, 1, 0, LOOK_INPUT, UNIT_MONEY, 2, 500);
        book_number(&book, 0, 2, 0, LOOK_PLAIN, UNIT_MONEY, 2, 500);
        book_bench_write(&book, PATH);
        char *const sheet = xlsx_part(PATH, "xl/worksheets/sheet1.xml");
        char *const styles = xlsx_part(PATH, "xl/styles.xml");
        assert_int_equal(strstr(sheet, "<sheetProtection sheet=\"1\"") != NULL, protect);
        assert_null(strstr(sheet, "password="));
        assert_non_null(strstr(sheet, "<dataValidations count=\"2\">"));
        assert_non_null(strstr(sheet, "<formula1>AND(ISNUMBER(A1),OR(A1=0,AND(A1&gt;=1,A1&lt;=1000"
                                      ")))</formula1>"));
        assert_non_null(strstr(sheet, "<formula1>AND(ISNUMBER(A2),A2&gt;=0)</formula1>"));
        assert_non_null(strstr(styles, "<protection locked=\"0\"/>"));
        free(sheet);
        free(styles);
        book_clear(&book);
    }
}

/* --- footers --- */

static void test_footers(void **state) {
    (void)state;
    static const char font[] = "&\"Arial,Regular\"";
    static const struct {
        const char *text, *before, *behind; /* the font's code stands between them */
        bool code;
    } cases[] = {
        {"Kitchen", "Kitchen", "", false},
        {"Oak & Ash", "Oak && Ash", "", false},
        {"7 doors", "", "7 doors", true},
        {"&G", "&&", "G", true},
        {"A&[Picture]", "A&&", "[Picture]", true},
        {"a7", "a7", "", false},
        {"", "", "", false},
        {"&&", "&&&&", "", false},
        {"123456789012345678901234567890123456789012345", "",
         "123456789012345678901234567890123456789012345", true},
        {"abcdefghijabcdefghijabcdefghijabcdefghijabcdefghij",
         "abcdefghijabcdefghijabcdefghijabcdefghijabcd\xE2\x80\xA6", "", false},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct pool pool;
        char wanted[300];
        pool_init(&pool);
        (void)snprintf(wanted, sizeof wanted, "%s%s%s", cases[i].before, cases[i].code ? font : "",
                       cases[i].behind);
        assert_string_equal(book_footer(&pool, cases[i].text), wanted);
        pool_clear(&pool);
    }
}

/* A footer has at most 255 characters ("Excel specifications and limits", Microsoft), whatever the
 * text is. */
static void test_long_footer(void **state) {
    (void)state;
    char text[200];
    struct pool pool;
    pool_init(&pool);
    for (size_t i = 0; i < sizeof text - 1; i++) {
        text[i] = "&G"[i % 2];
    }
    text[sizeof text - 1] = '\0';
    const char *const footer = book_footer(&pool, text);
    assert_non_null(footer);
    assert_true(strlen(footer) <= 182 && strlen(footer) > 100);
    assert_int_equal(strncmp(footer, "&&", 2), 0);
    text[45] = '\0';
    assert_string_equal(book_footer_or(&pool, text, "short"), book_footer(&pool, text));
    text[45] = 'x';
    assert_string_equal(book_footer_or(&pool, text, "short"), "short");
    pool_clear(&pool);
}

/* --- formulas of a sheet's own --- */

static void test_formulas(void **state) {
    (void)state;
    struct book book;
    struct xlsx read;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_number(&book, 0, 0, 0, LOOK_PLAIN, UNIT_MONEY, 2, 1234);
    book_number(&book, 0, 0, 1, LOOK_PLAIN, UNIT_MONEY, 2, -234);
    book_formula(&book, 0, 0, 2, LOOK_PLAIN, UNIT_MONEY, 2, 1000, "A1+B1");
    book_bench_read(&book, PATH, &read);
    check_formula(&read, "Sheet", "A1", NULL, 12.34);
    check_formula(&read, "Sheet", "B1", NULL, -2.34);
    check_formula(&read, "Sheet", "C1", "A1+B1", 10);
    assert_true(fabs(xlsx_work_out(&read, xlsx_at(&read, "Sheet", "C1")).number - 10) < 1e-9);
    xlsx_clear(&read);
    book_clear(&book);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_homes),       cmocka_unit_test(test_blocks),
        cmocka_unit_test(test_none),        cmocka_unit_test(test_texts),
        cmocka_unit_test(test_long_texts),  cmocka_unit_test(test_long_codes),
        cmocka_unit_test(test_spans),       cmocka_unit_test(test_names),
        cmocka_unit_test(test_numbers),     cmocka_unit_test(test_looks),
        cmocka_unit_test(test_protection),  cmocka_unit_test(test_footers),
        cmocka_unit_test(test_long_footer), cmocka_unit_test(test_formulas),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
