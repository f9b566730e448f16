/* SPDX-License-Identifier: MIT */
/* Columns, rows and printed pages of a book, read from the file: what is expected was worked out by
 * hand from the paper (letter 612 x 792 points, A4 595 x 842), margins of 0.55, 0.6 and 0.7 inches
 * and columns of 7 dots a digit and 5 more; and over many sheets made at random every page holds
 * what the breaks put on it. */
#include "book_bench.h"
#include "draw.h"

#include "cmocka_all.h"
#include "report/xlsx/book_write.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PATH "book-page.xlsx"
#define ROW  12.75
enum { MOST_BREAKS = 64, MOST_ROWS = 400, MOST_COLUMNS = 80 };

/* A sheet's layout as the file has it. */
struct pages {
    bool landscape;
    int paper, scale;
    long rows[MOST_BREAKS], columns[MOST_BREAKS]; /* that pages start with; ended by 0 */
    size_t row_count, column_count;
    double heights[MOST_ROWS], widths[MOST_COLUMNS];
};

static const char *behind(const char *text, const char *what) {
    const char *const at = text == NULL ? NULL : strstr(text, what);
    return at == NULL ? NULL : at + strlen(what);
}

/* The number behind ` name="` within the tag at text; otherwise. */
static double number_of(const char *tag, const char *name, double otherwise) {
    char what[32];
    (void)snprintf(what, sizeof what, " %s=\"", name);
    const char *const end = strchr(tag, '>');
    const char *const at = behind(tag, what);
    return at == NULL || at > end ? otherwise : strtod(at, NULL);
}

static size_t breaks_of(const char *sheet, const char *tag, const char *end_tag, long *list) {
    size_t count = 0;
    const char *at = strstr(sheet, tag);
    const char *const end = at == NULL ? NULL : strstr(at, end_tag);
    for (at = behind(at, "<brk"); at != NULL && at < end; at = behind(at, "<brk")) {
        assert_true(count < MOST_BREAKS);
        list[count++] = (long)number_of(at, "id", 0);
    }
    return count;
}

static void read_pages(struct pages *p, size_t number) {
    char name[64];
    *p = (struct pages){0};
    (void)snprintf(name, sizeof name, "xl/worksheets/sheet%zu.xml", number);
    char *const sheet = xlsx_part(PATH, name);
    assert_non_null(sheet);
    const char *const setup = behind(sheet, "<pageSetup");
    assert_non_null(setup);
    p->landscape = strncmp(behind(setup, "orientation=\""), "landscape", 9) == 0;
    p->paper = (int)number_of(setup, "paperSize", 0);
    p->scale = (int)number_of(setup, "scale", 100);
    p->row_count = breaks_of(sheet, "<rowBreaks", "</rowBreaks>", p->rows);
    p->column_count = breaks_of(sheet, "<colBreaks", "</colBreaks>", p->columns);
    const double usual = number_of(behind(sheet, "<sheetFormatPr"), "defaultRowHeight", 0);
    for (size_t r = 0; r < MOST_ROWS; r++) {
        p->heights[r] = usual;
    }
    for (const char *at = behind(sheet, "<row "); at != NULL; at = behind(at, "<row ")) {
        const size_t row = (size_t)number_of(at - 1, "r", 0);
        assert_in_range(row, 1, MOST_ROWS);
        p->heights[row - 1] = number_of(at - 1, "ht", usual);
    }
    for (const char *at = behind(sheet, "<col "); at != NULL; at = behind(at, "<col ")) {
        const double wide = number_of(at - 1, "width", 0);
        for (int c = (int)number_of(at - 1, "min", 0); c <= (int)number_of(at - 1, "max", 0); c++) {
            assert_in_range(c, 1, MOST_COLUMNS);
            p->widths[c - 1] = wide;
        }
    }
    free(sheet);
}

/* --- pages below and beside each other --- */

struct page_case {
    const char *name;
    uint16_t columns; /* each 10 digits wide, 56.25 points */
    uint32_t rows;
    uint32_t heads; /* rows repeated on each page */
    uint32_t hand;  /* a break by hand; 0: none */
    struct book_block blocks[2];
    bool asked_landscape, a4;
    bool landscape;
    int scale;
    long breaks[6]; /* rows; 0 ends them */
    size_t folds;   /* breaks of columns */
};

/* Upright letter paper has 698.4 points of height, of which 0.97 are used: 53 rows of 12.75. */
static const struct page_case page_cases[] = {
    {.name = "a page", .columns = 3, .rows = 53, .scale = 100},
    {.name = "a row more: made a little smaller", .columns = 3, .rows = 54, .scale = 98},
    {.name = "sixty rows", .columns = 3, .rows = 60, .scale = 88},
    {.name = "as small as may be", .columns = 3, .rows = 64, .scale = 83},
    {.name = "65 rows need two", .columns = 3, .rows = 65, .scale = 100, .breaks = {53}},
    {.name = "two pages, the second full enough",
     .columns = 3,
     .rows = 70,
     .scale = 100,
     .breaks = {53}},
    {.name = "three pages", .columns = 3, .rows = 140, .scale = 100, .breaks = {53, 106}},
    /* four rows of heading stand on the second page again: 49 others have room */
    {.name = "headings", .columns = 3, .rows = 140, .heads = 4, .scale = 100, .breaks = {53, 102}},
    {.name = "by hand", .columns = 3, .rows = 30, .hand = 10, .scale = 100, .breaks = {10}},
    {.name = "by hand, then full",
     .columns = 3,
     .rows = 90,
     .hand = 10,
     .scale = 100,
     .breaks = {10, 63}},
    {.name = "a block goes over whole",
     .columns = 3,
     .rows = 80,
     .blocks = {{50, 60}},
     .scale = 100,
     .breaks = {50}},
    {.name = "a block that has room stays",
     .columns = 3,
     .rows = 80,
     .blocks = {{42, 52}},
     .scale = 100,
     .breaks = {53}},
    {.name = "a block that no page holds",
     .columns = 3,
     .rows = 80,
     .blocks = {{10, 75}},
     .scale = 100,
     .breaks = {53}},
    {.name = "a block that no page holds with its headings",
     .columns = 3,
     .rows = 80,
     .heads = 4,
     .blocks = {{10, 60}},
     .scale = 100,
     .breaks = {53}},
    {.name = "headings are not what a last page is for",
     .columns = 3,
     .rows = 106,
     .heads = 10,
     .scale = 91,
     .breaks = {58}},
    {.name = "blocks in blocks",
     .columns = 3,
     .rows = 90,
     .blocks = {{20, 85}, {50, 60}},
     .scale = 100,
     .breaks = {50}},
    /* A4 upright is 748.4 high: 56 rows */
    {.name = "A4", .columns = 3, .rows = 80, .a4 = true, .scale = 100, .breaks = {56}},
    /* on its side letter has 518.4: 39 rows */
    {.name = "on its side",
     .columns = 3,
     .rows = 60,
     .asked_landscape = true,
     .landscape = true,
     .scale = 100,
     .breaks = {39}},
    /* upright 532.8 wide, of which 0.98 are used: 9 columns; 11 at 84 percent, 12 would need 77 */
    {.name = "nine columns", .columns = 9, .rows = 5, .scale = 100},
    {.name = "eleven columns", .columns = 11, .rows = 5, .scale = 84},
    {.name = "twelve are turned", .columns = 12, .rows = 5, .landscape = true, .scale = 100},
    {.name = "fifteen", .columns = 15, .rows = 5, .landscape = true, .scale = 82},
    {.name = "sixteen are parted",
     .columns = 16,
     .rows = 5,
     .landscape = true,
     .scale = 82,
     .folds = 1},
    {.name = "forty", .columns = 40, .rows = 5, .landscape = true, .scale = 82, .folds = 2},
    {.name = "eighty", .columns = 80, .rows = 5, .landscape = true, .scale = 82, .folds = 6},
    /* 11 columns at 84.39 percent: 62 rows a page */
    {.name = "small and long", .columns = 11, .rows = 100, .scale = 84, .breaks = {62}},
};

static void write_case(const struct page_case *c) {
    char title[] = "Pages";
    const struct book_facts facts = {.title = title,
                                     .subject = title,
                                     .author = title,
                                     .footer = "foot",
                                     .letter = !c->a4,
                                     .year = 2026,
                                     .month = 3,
                                     .day = 2};
    struct book book;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", c->asked_landscape);
    for (uint16_t i = 0; i < c->columns; i++) {
        book_width(&book, 0, i, 10);
        book_number(&book, 0, 0, i, LOOK_PLAIN, UNIT_COUNT, 0, i);
    }
    for (uint32_t r = 0; r < c->rows; r++) {
        book_number(&book, 0, r, 0, LOOK_PLAIN, UNIT_COUNT, 0, r);
    }
    if (c->heads > 0) {
        book_headings(&book, 0, 0, c->heads - 1, 1);
    }
    if (c->hand > 0) {
        book_break(&book, 0, c->hand);
    }
    for (size_t i = 0; i < COUNT(c->blocks) && c->blocks[i].last > 0; i++) {
        book_keep(&book, 0, c->blocks[i].first, c->blocks[i].last);
    }
    book_assign_homes(&book);
    assert_false(book_failed(&book));
    assert_true(book_write(&book, &facts, PATH));
    book_clear(&book);
}

/* The columns that repeat and those between two breaks fit on the paper. */
static void check_folds(const struct pages *p, uint16_t columns, double room) {
    const double points = 56.25 * p->scale / 100;
    long start = 1;
    long least = columns;
    long most = 0;
    for (size_t i = 0; i <= p->column_count; i++) {
        const long end = i < p->column_count ? p->columns[i] : columns;
        assert_true(end > start);
        assert_true((double)(end - start + 1) * points <= room);
        least = end - start < least ? end - start : least;
        most = end - start > most ? end - start : most;
        start = end;
    }
    assert_true(2 * least >= most); /* no page of one column behind full ones */
}

static void test_pages(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(page_cases); i++) {
        const struct page_case *const c = &page_cases[i];
        struct pages p;
        size_t breaks = 0;
        bool same = true;
        write_case(c);
        read_pages(&p, 1);
        while (breaks < COUNT(c->breaks) && c->breaks[breaks] != 0) {
            same = same && p.rows[breaks] == c->breaks[breaks];
            breaks++;
        }
        if (!same || breaks != p.row_count || p.scale != c->scale || p.column_count != c->folds ||
            p.landscape != c->landscape || p.paper != (c->a4 ? 9 : 1)) {
            print_error("%s: %s, scale %d, %zu breaks (%ld, %ld), %zu of columns\n", c->name,
                        p.landscape ? "landscape" : "upright", p.scale, p.row_count, p.rows[0],
                        p.rows[1], p.column_count);
            wrong++;
        }
        if (c->folds > 0) {
            check_folds(&p, c->columns, 792 - 2 * 0.55 * 72);
        }
    }
    assert_int_equal(wrong, 0);
}

/* --- sheets made at random --- */

enum { BLOCKS = 20 };

struct random_sheet {
    uint32_t seed, rows;
    bool landscape, letter;
    struct book_block blocks[BLOCKS];
};

static void write_random(struct random_sheet *s) {
    char title[] = "Pages";
    const struct book_facts facts = {.title = title,
                                     .subject = title,
                                     .author = title,
                                     .footer = "",
                                     .letter = s->letter,
                                     .year = 2026,
                                     .month = 1,
                                     .day = 1};
    struct book book;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", s->landscape);
    s->rows = 40 + draw_below(&s->seed, 300);
    for (uint32_t r = 0; r < s->rows; r++) {
        book_number(&book, 0, r, 0, LOOK_PLAIN, UNIT_COUNT, 0, r);
        if (draw_below(&s->seed, 4) == 0) {
            book_height(&book, 0, r, 10 + draw_below(&s->seed, 60));
        }
    }
    book_headings(&book, 0, 1, 3, 0);
    for (size_t i = 0; i < BLOCKS; i++) {
        s->blocks[i].first = 4 + draw_below(&s->seed, s->rows - 10);
        s->blocks[i].last = s->blocks[i].first + draw_below(&s->seed, 4);
        book_keep(&book, 0, s->blocks[i].first, s->blocks[i].last);
    }
    book_assign_homes(&book);
    assert_true(book_write(&book, &facts, PATH));
    book_clear(&book);
}

/* Every page that the breaks make has room for its rows. */
static void check_room(const struct random_sheet *s, const struct pages *p) {
    const double paper = s->letter ? (p->landscape ? 612 : 792) : (p->landscape ? 595 : 842);
    const double room = (paper - 1.3 * 72) * 100 / p->scale;
    size_t at = 0;
    double used = 0;
    for (uint32_t r = 0; r < s->rows; r++) {
        if (at < p->row_count && p->rows[at] == (long)r) {
            /* what is left of a page that is not full is less than its next row or block */
            assert_true(used > room / 2);
            used = p->heights[1] + p->heights[2] + p->heights[3];
            at++;
        }
        used += p->heights[r];
        assert_true(used <= room);
    }
    assert_int_equal(at, p->row_count);
}

/* What is kept together is on one page. Of blocks that reach into each other one may be parted, at
 * the first row of the other. */
static void check_blocks(const struct random_sheet *s, const struct pages *p) {
    for (size_t i = 0; i < BLOCKS * p->row_count; i++) {
        const struct book_block *const block = &s->blocks[i % BLOCKS];
        const long at = p->rows[i / BLOCKS];
        bool starts = false;
        for (size_t k = 0; k < BLOCKS; k++) {
            starts = starts || (long)s->blocks[k].first == at;
        }
        assert_true(at <= (long)block->first || at > (long)block->last || starts);
    }
}

static void test_random_pages(void **state) {
    (void)state;
    for (uint32_t round = 0; round < 80; round++) {
        struct random_sheet s = {
            .seed = round, .landscape = round % 3 == 0, .letter = round % 2 == 0};
        struct pages p;
        write_random(&s);
        read_pages(&p, 1);
        assert_int_equal(p.landscape, s.landscape);
        check_room(&s, &p);
        check_blocks(&s, &p);
    }
}

/* --- widths and heights --- */

static void test_widths(void **state) {
    (void)state;
    static const struct {
        enum look look;
        const char *text;
        double given, least, most; /* of the width in digits */
    } cases[] = {
        {LOOK_PLAIN, "x", 0, 4, 5},
        {LOOK_PLAIN, "twelve lettr", 0, 9, 14},
        {LOOK_PLAIN, "MMMMMMMMMM", 0, 15, 18},
        {LOOK_PLAIN, "iiiiiiiiii", 0, 4, 6.5},
        {LOOK_LABEL, "MMMMMMMMMM", 0, 16, 19},
        {LOOK_PLAIN, "MMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMM", 0, 60, 61},
        {LOOK_PLAIN, "\xE6\x9C\xA8\xE6\x9C\xA8\xE6\x9C\xA8\xE6\x9C\xA8\xE6\x9C\xA8", 0, 8, 12},
        {LOOK_NOTE, "words that run over into the next", 0, 0, 0}, /* as if it were empty */
        {LOOK_TITLE, "words that run over into the next", 0, 0, 0},
        {LOOK_TALL, "a heading that stands upright", 0, 4, 5},
        {LOOK_HEAD, "unbreakableword and more", 0, 14, 20},
        {LOOK_PLAIN, "given", 22, 22, 23},
        {LOOK_PLAIN, "given", 1, 1, 5},
    };
    struct book book;
    struct pages p;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    for (uint16_t i = 0; i < (uint16_t)COUNT(cases); i++) {
        book_text(&book, 0, 0, i, cases[i].look, cases[i].text);
        if (cases[i].given > 0) {
            book_width(&book, 0, i, cases[i].given);
        }
    }
    book_bench_write(&book, PATH);
    book_clear(&book);
    read_pages(&p, 1);
    for (size_t i = 0; i < COUNT(cases); i++) {
        if (p.widths[i] < cases[i].least || p.widths[i] > cases[i].most + 0.8) {
            fail_msg("'%s' in look %d is %.2f wide", cases[i].text, (int)cases[i].look,
                     p.widths[i]);
        }
    }
}

static void test_bold_is_wider(void **state) {
    (void)state;
    struct book book;
    struct pages p;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_text(&book, 0, 0, 0, LOOK_PLAIN, "twelve lettr");
    book_text(&book, 0, 0, 1, LOOK_LABEL, "twelve lettr");
    book_number(&book, 0, 0, 2, LOOK_PLAIN, UNIT_MONEY, 2, 1234567);
    book_number(&book, 0, 0, 3, LOOK_TOTAL, UNIT_MONEY, 2, 1234567);
    book_number(&book, 0, 0, 4, LOOK_GRAND, UNIT_MONEY, 2, 1234567);
    book_bench_write(&book, PATH);
    book_clear(&book);
    read_pages(&p, 1);
    assert_true(p.widths[1] > p.widths[0] + 0.5);
    assert_true(p.widths[3] > p.widths[2] + 0.5);
    assert_true(p.widths[4] > p.widths[3] + 0.5);
}

/* Cells that run over empty columns make the sheet as wide as these. */
static void test_span_widens_the_sheet(void **state) {
    (void)state;
    for (uint16_t last = 8; last <= 11; last += 3) {
        struct book book;
        struct pages p;
        book_init(&book, NULL);
        (void)book_sheet(&book, "Sheet", "title", false);
        for (uint16_t c = 0; c <= 11; c++) {
            book_width(&book, 0, c, 10);
        }
        book_number(&book, 0, 0, 0, LOOK_PLAIN, UNIT_COUNT, 0, 1);
        book_span(&book, 0, 1, 0, last, LOOK_WRAP, "words");
        book_bench_write(&book, PATH);
        book_clear(&book);
        read_pages(&p, 1);
        assert_int_equal(p.landscape, last == 11);
    }
}

/* A number has room with its separators and sign. */
static void test_number_widths(void **state) {
    (void)state;
    static const struct {
        enum look look;
        int64_t value;
        size_t shown; /* letters */
    } cases[] = {
        {LOOK_PLAIN, 123, 4},         {LOOK_PLAIN, 123456789, 12},   {LOOK_TOTAL, 123456789, 12},
        {LOOK_GRAND, -123456789, 13}, {LOOK_PLAIN, 99999999999, 14}, {LOOK_GRAND, 99999999999, 14},
    };
    struct book book;
    struct pages p;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    for (uint16_t i = 0; i < (uint16_t)COUNT(cases); i++) {
        book_number(&book, 0, 0, i, cases[i].look, UNIT_MONEY, 2, cases[i].value);
    }
    book_bench_write(&book, PATH);
    book_clear(&book);
    read_pages(&p, 1);
    for (size_t i = 0; i < COUNT(cases); i++) {
        assert_true(p.widths[i] >= (double)cases[i].shown * 0.9);
        assert_true(p.widths[i] <= (double)cases[i].shown * 1.3 + 4);
    }
}

static void test_heights(void **state) {
    (void)state;
    static const struct {
        enum look look;
        const char *text;
        uint16_t last; /* column that it runs to */
        int lines;     /* in columns of 20 digits */
    } cases[] = {
        {LOOK_WRAP, "short", 0, 1},
        {LOOK_WRAP, "one two three four five six seven eight", 0, 2},
        {LOOK_WRAP, "one two three four five six seven eight", 1, 1},
        {LOOK_WRAP, "one two three four five six seven eight nine ten eleven twelve", 0, 3},
        {LOOK_WARN, "one two three four five six seven eight", 0, 2},
        {LOOK_PLAIN, "one two three four five six seven eight", 0, 1},
        {LOOK_NOTE, "one two three four five six seven eight", 0, 1},
        {LOOK_WRAP, "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", 0, 2},
    };
    struct book book;
    struct pages p;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_width(&book, 0, 0, 20);
    book_width(&book, 0, 1, 20);
    for (uint16_t i = 0; i < (uint16_t)COUNT(cases); i++) {
        book_span(&book, 0, i, 0, cases[i].last, cases[i].look, cases[i].text);
    }
    book_height(&book, 0, COUNT(cases), 33);
    book_number(&book, 0, COUNT(cases), 0, LOOK_PLAIN, UNIT_COUNT, 0, 1);
    book_text(&book, 0, COUNT(cases) + 1, 0, LOOK_TITLE, "title");
    book_text(&book, 0, COUNT(cases) + 2, 0, LOOK_SECTION, "part");
    book_text(&book, 0, COUNT(cases) + 3, 0, LOOK_PART, "part");
    book_check(&book, 0, COUNT(cases) + 4, 0, LOOK_WRAP, "\"as below\"", cases[3].text);
    book_bench_write(&book, PATH);
    book_clear(&book);
    read_pages(&p, 1);
    for (size_t i = 0; i < COUNT(cases); i++) {
        const double lines = cases[i].lines == 1 ? ROW : cases[i].lines * 12 + 0.5;
        if (fabs(p.heights[i] - lines) > 0.01) {
            fail_msg("row %zu is %.2f high, expected %.2f", i, p.heights[i], lines);
        }
    }
    assert_true(fabs(p.heights[COUNT(cases)] - 33) < 0.01);
    assert_true(p.heights[COUNT(cases) + 1] > 18);
    assert_true(fabs(p.heights[COUNT(cases) + 4] - p.heights[3]) < 0.01); /* what it says now */
    assert_true(p.heights[COUNT(cases) + 3] - p.heights[COUNT(cases) + 2] > 4);
}

/* A text that runs down has a row for each of its lines, none higher than the others. */
static void test_span_down(void **state) {
    (void)state;
    static const char text[] = "one two three four five six seven eight nine ten eleven twelve";
    struct book book;
    struct pages p;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_width(&book, 0, 0, 20);
    book_width(&book, 0, 1, 20);
    assert_int_equal(book_span_down(&book, 0, 0, 0, 0, LOOK_WRAP, text), 3);
    assert_int_equal(book_span_down(&book, 0, 3, 0, 1, LOOK_WRAP, text), 2);
    book_bench_write(&book, PATH);
    book_clear(&book);
    char *const sheet = xlsx_part(PATH, "xl/worksheets/sheet1.xml");
    assert_non_null(strstr(sheet, "ref=\"A1:A3\"/><mergeCell ref=\"A4:B5\"/>"));
    free(sheet);
    read_pages(&p, 1);
    assert_true(fabs(p.heights[0] - ROW) < 0.01 && fabs(p.heights[4] - ROW) < 0.01);
}

/* --- heads --- */

static const char *const heads_below[] = {"word", "number", "unit", "nothing"};
static const enum look heads_look[] = {LOOK_HEAD, LOOK_HEAD_RIGHT, LOOK_HEAD_INDENTED, LOOK_HEAD};

/* What stands below a head; wide words, notes and heads are not of its column. */
static void put_below(struct book *book, uint32_t row, uint16_t column, size_t what) {
    book_span(book, 0, row, column, (uint16_t)(column + 1), LOOK_WRAP, "over two columns");
    book_text(book, 0, row + 1, column, LOOK_NOTE, "note");
    if (what == 0) {
        book_text(book, 0, row + 2, column, LOOK_PLAIN, "word");
        book_number(book, 0, row + 3, column, LOOK_PLAIN, UNIT_COUNT, 0, 1);
    } else if (what == 1) {
        book_number(book, 0, row + 2, column, LOOK_PLAIN, UNIT_COUNT, 0, 1);
        book_text(book, 0, row + 3, column, LOOK_PLAIN, "-");
    } else if (what == 2) {
        book_text(book, 0, row + 2, column, LOOK_UNIT, "in");
    }
}

/* The head of every column stands as the cells below it do, up to the next head. */
static void test_heads(void **state) {
    (void)state;
    enum { TABLES = 4, HIGH = 6, APART = 3 };
    struct book book;
    struct xlsx read;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Sheet", "title", false);
    for (uint32_t i = 0; i < TABLES * TABLES; i++) {
        const uint16_t column = (uint16_t)(i % TABLES * APART);
        const uint32_t row = (TABLES - i / TABLES) * HIGH; /* the lowest table first */
        const size_t what = (size_t)(i % TABLES + i / TABLES) % TABLES;
        put_below(&book, row + 1, column, what);
        book_text(&book, 0, row, column, LOOK_HEAD, heads_below[what]);
        book_text(&book, 0, row, (uint16_t)(column + TABLES * APART), heads_look[what], "as it is");
    }
    book_bench_read(&book, PATH, &read);
    size_t found = 0;
    for (size_t i = 0; i < read.count; i++) {
        struct home at = {.row = read.cells[i].row, .column = read.cells[i].column};
        if (at.row % HIGH == 0 && at.column < TABLES * APART) {
            at.column += TABLES * APART;
            assert_int_equal(book_bench_cell(&read, &at)->style, read.cells[i].style);
            found++;
        }
    }
    assert_int_equal(found, TABLES * TABLES);
    xlsx_clear(&read);
    book_clear(&book);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_pages),
        cmocka_unit_test(test_random_pages),
        cmocka_unit_test(test_widths),
        cmocka_unit_test(test_bold_is_wider),
        cmocka_unit_test(test_span_widens_the_sheet),
        cmocka_unit_test(test_number_widths),
        cmocka_unit_test(test_heights),
        cmocka_unit_test(test_span_down),
        cmocka_unit_test(test_heads),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
