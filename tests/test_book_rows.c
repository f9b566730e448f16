/* SPDX-License-Identifier: MIT */
/* A large sheet, which is written row by row, holds what it would hold if the library kept all of
 * it, as it does of a sheet with a chart: the same book is written both ways. */
#include "book_bench.h"

#include "cmocka_all.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ROWS = 5200, COLUMNS = 8, FIRST = 3 };

/* Laid out column by column, with a total over every other row at the top, longer than a formula.
 * spare: the sheet that its parts stand on. */
static void lay_out(struct book *book, struct tape *tape, bool chart, uint16_t spare) {
    fig *const each = calloc(ROWS, sizeof *each);
    assert_non_null(each);
    tape_init(tape, true);
    for (uint32_t r = 0; r < ROWS; r++) {
        each[r] = tape_given(tape, "given", UNIT_MONEY, 2, 100 + r, (struct place){.line = r + 1});
    }
    fig *const odd = calloc(ROWS, sizeof *odd);
    assert_non_null(odd);
    for (uint32_t r = 0; r < ROWS; r += 2) {
        odd[r] = each[r];
    }
    const fig all = fig_sum(tape, "every other", UNIT_MONEY, odd, ROWS);
    free(odd);
    book_init(book, tape);
    const uint16_t doors = book_sheet(book, "Doors", "Doors", false);
    const uint16_t other = book_sheet(book, "Other", "Other", false);
    book->spare_sheet = spare;
    for (uint32_t r = 0; r < ROWS; r++) {
        book_format(book, doors, FIRST + r, 0, LOOK_PLAIN, "door %u <&> \"%u\"  ", r % 7, r);
    }
    for (int column = 1; column < COLUMNS; column++) {
        const uint16_t c = (uint16_t)column;
        for (uint32_t r = ROWS; r > 0; r--) {
            book_figure(book, doors, FIRST + r - 1, c, LOOK_PLAIN, each[r - 1]);
        }
    }
    book_figure(book, doors, 0, 1, LOOK_GRAND, all);
    free(each);
    book_text(book, doors, 0, 0, LOOK_TITLE, "All");
    book_span(book, doors, 1, 0, 2, LOOK_NOTE, "words over three columns");
    book_link(book, doors, 0, 2, other);
    book_link(book, other, 0, 0, doors);
    book_height(book, doors, 2, 44);
    if (chart) {
        book_chart(book, &(struct book_chart){.sheet = doors,
                                              .column = 9,
                                              .kind = CHART_BARS,
                                              .title = "t",
                                              .axis = "a",
                                              .alt = "bars",
                                              .series = 1,
                                              .first = FIRST,
                                              .last = FIRST + 1});
    }
}

static void write_and_read(const char *path, bool chart, uint16_t spare, struct xlsx *read) {
    struct tape tape;
    struct book book;
    lay_out(&book, &tape, chart, spare);
    book_bench_read(&book, path, read);
    book_clear(&book);
    tape_clear(&tape);
}

static void check_same(const struct xlsx_value *a, const struct xlsx_value *b) {
    assert_int_equal(a->kind, b->kind);
    if (a->kind == XLSX_TEXT) {
        assert_string_equal(a->text, b->text);
    } else {
        assert_true(a->number == b->number);
    }
}

/* What of a part is found between two words: the same in both files. */
static void check_same_part(const char *name, const char *from, const char *to) {
    char *const a = xlsx_part("rows.xlsx", name);
    char *const b = xlsx_part("kept.xlsx", name);
    const char *const a_from = strstr(a, from);
    const char *const b_from = strstr(b, from);
    assert_non_null(a_from);
    assert_non_null(b_from);
    const size_t size = (size_t)(strstr(a_from, to) - a_from);
    assert_int_equal(strncmp(a_from, b_from, size + strlen(to)), 0);
    free(a);
    free(b);
}

static void check_books(uint16_t spare) {
    struct xlsx rows = {0};
    struct xlsx kept = {0};
    write_and_read("rows.xlsx", false, spare, &rows);
    write_and_read("kept.xlsx", true, spare, &kept);
    assert_true(rows.count > (size_t)ROWS * COLUMNS);
    assert_int_equal(rows.count, kept.count);
    for (size_t i = 0; i < rows.count; i++) {
        const struct xlsx_cell *const a = &rows.cells[i];
        const struct xlsx_cell *const b = &kept.cells[i];
        assert_int_equal(a->sheet, b->sheet);
        assert_int_equal(a->row, b->row);
        assert_int_equal(a->column, b->column);
        assert_int_equal(a->formula == NULL, b->formula == NULL);
        if (a->formula != NULL && b->formula != NULL) {
            assert_string_equal(a->formula, b->formula);
        }
        check_same(&a->value, &b->value);
    }
    char total[32];
    (void)snprintf(total, sizeof total, "%.2f", xlsx_at(&rows, "Doors", "B1")->value.number);
    assert_string_equal(total, "70174.00"); /* 2600 x 1.00 + (0 + 2 + ... + 5198) x 0.01 */
    /* the parts of the total stand below all else on their sheet */
    assert_non_null(strstr(xlsx_at(&rows, "Doors", "B1")->formula, spare == 0 ? "A5206:" : "A4:"));
    check_same_part("xl/worksheets/sheet1.xml", " ht=\"44\"", ">");
    check_same_part("xl/worksheets/sheet1.xml", "<hyperlinks>", "</hyperlinks>");
    check_same_part("xl/worksheets/sheet1.xml", "<mergeCells", "</mergeCells>");
    xlsx_clear(&rows);
    xlsx_clear(&kept);
}

static void test_same_cells(void **state) {
    (void)state;
    for (uint16_t spare = 0; spare < 2; spare++) {
        check_books(spare);
    }
}

/* The two books are indeed written in different ways. */
static void test_ways(void **state) {
    (void)state;
    check_books(1);
    char *const rows = xlsx_part("rows.xlsx", "xl/worksheets/sheet1.xml");
    char *const kept = xlsx_part("kept.xlsx", "xl/worksheets/sheet1.xml");
    assert_non_null(strstr(rows, "inlineStr"));
    assert_null(strstr(kept, "inlineStr"));
    free(rows);
    free(kept);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_same_cells),
        cmocka_unit_test(test_ways),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
