/* SPDX-License-Identifier: MIT */
/* A workbook with a part that was cut off, or that lacks a piece, is not whole. */
#include "report/xlsx/book_proof.h"

#include "cmocka_all.h"

#include <stdlib.h>
#include <string.h>
#include <zip.h>

#define PATH  "proof.xlsx"
#define PIECE ((size_t)4096) /* what one write of a buffer loses */
enum { ROWS = 400, COLUMNS = 5 };

/* A book of one sheet; the cells that it has. */
static size_t write_book(void) {
    lxw_workbook *const book = workbook_new(PATH);
    lxw_worksheet *const sheet = workbook_add_worksheet(book, "Doors");
    for (lxw_row_t r = 0; r < ROWS; r++) {
        char text[32];
        (void)snprintf(text, sizeof text, "door %u", (unsigned)r);
        worksheet_write_string(sheet, r, 0, text, NULL);
        for (lxw_col_t c = 1; c < (lxw_col_t)COLUMNS; c++) {
            worksheet_write_number(sheet, r, c, r + c, NULL);
        }
    }
    const size_t cells = book_proof_cells(book);
    assert_int_equal(workbook_close(book), LXW_NO_ERROR);
    return cells;
}

/* Takes `size` bytes from `at` on out of a part; false: it has no such bytes. */
static bool take_out(const char *name, size_t at, size_t size) {
    zip_stat_t about;
    zip_t *const archive = zip_open(PATH, 0, NULL);
    assert_non_null(archive);
    assert_int_equal(zip_stat(archive, name, 0, &about), 0);
    if (at >= about.size) {
        zip_discard(archive);
        return false;
    }
    char *const bytes = malloc(about.size);
    assert_non_null(bytes);
    zip_file_t *const part = zip_fopen(archive, name, 0);
    assert_non_null(part);
    assert_int_equal(zip_fread(part, bytes, about.size), about.size);
    (void)zip_fclose(part);
    size = at + size > about.size ? about.size - at : size;
    memmove(bytes + at, bytes + at + size, about.size - at - size);
    zip_source_t *const source = zip_source_buffer(archive, bytes, about.size - size, 0);
    assert_non_null(source);
    assert_true(zip_file_add(archive, name, source, ZIP_FL_OVERWRITE) >= 0);
    assert_int_equal(zip_close(archive), 0);
    free(bytes); /* given to the library, an empty part would not be freed */
    return true;
}

static void test_whole(void **state) {
    (void)state;
    const size_t cells = write_book();
    assert_int_equal(cells, ROWS * COLUMNS);
    assert_true(book_proof(PATH, cells, NULL));
    assert_false(book_proof(PATH, cells + 1, NULL));
    assert_false(book_proof("no-such.xlsx", cells, NULL));
}

/* Whatever piece is lost, and from wherever on all is lost. */
static void test_lost_pieces(void **state) {
    (void)state;
    static const char *const parts[] = {"xl/worksheets/sheet1.xml", "xl/sharedStrings.xml",
                                        "xl/styles.xml", "xl/workbook.xml", "[Content_Types].xml"};
    for (size_t p = 0; p < sizeof parts / sizeof *parts; p++) {
        for (size_t at = 0;; at += PIECE) {
            const size_t cells = write_book();
            if (!take_out(parts[p], at, PIECE)) {
                break;
            }
            assert_false(book_proof(PATH, cells, NULL));
            (void)write_book();
            assert_true(take_out(parts[p], at, SIZE_MAX / 2));
            assert_false(book_proof(PATH, cells, NULL));
        }
    }
}

/* Whole rows are gone, and what is left is well-formed. */
static void test_lost_rows(void **state) {
    (void)state;
    const size_t cells = write_book();
    static const char row[] = "<row r=\"100\"";
    zip_stat_t about;
    zip_t *const archive = zip_open(PATH, ZIP_RDONLY, NULL);
    assert_non_null(archive);
    assert_int_equal(zip_stat(archive, "xl/worksheets/sheet1.xml", 0, &about), 0);
    char *const bytes = calloc(about.size + 1, 1);
    assert_non_null(bytes);
    zip_file_t *const part = zip_fopen(archive, "xl/worksheets/sheet1.xml", 0);
    assert_int_equal(zip_fread(part, bytes, about.size), about.size);
    (void)zip_fclose(part);
    zip_discard(archive);
    const char *const first = strstr(bytes, row);
    const char *const next = strstr(first, "</row>") + strlen("</row>");
    assert_true(
        take_out("xl/worksheets/sheet1.xml", (size_t)(first - bytes), (size_t)(next - first)));
    free(bytes);
    assert_false(book_proof(PATH, cells, NULL));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_whole),
        cmocka_unit_test(test_lost_pieces),
        cmocka_unit_test(test_lost_rows),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
