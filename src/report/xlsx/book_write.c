/* SPDX-License-Identifier: MIT */
#include "report/xlsx/book_write.h"

#include "report/xlsx/book_binder.h"
#include "report/xlsx/book_objects.h"
#include "report/xlsx/book_proof.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static double as_double(int64_t value, uint8_t decimals) {
    double step = 1;
    for (uint8_t d = 0; d < decimals; d++) {
        step *= 10;
    }
    return (double)value / step;
}

/* --- cells
 * ---------------------------------------------------------------------------------------------------------------------
 */

/* Keeps a part of a long sum, to go below everything on the spare sheet. */
static void keep_part(void *to, const char *formula, double value) {
    struct binder *const b = to;
    b->parts =
        array_grow(b->parts, &b->part_room, b->part_count + 1, sizeof *b->parts, &b->part_failed);
    char *const copy = b->part_failed ? NULL : strdup(formula);
    if (copy == NULL) {
        b->part_failed = true;
        return;
    }
    b->parts[b->part_count++] = (struct binder_part){.formula = copy, .value = value};
    b->spare_row++;
}

/* A figure at home: a formula; a plain number where it is given or chosen; a sum of sums where it
 * is too long for one cell. */
static void write_home(struct binder *b, const struct cell *cell, char *formula, lxw_format *format,
                       double shown) {
    lxw_worksheet *const sheet = b->sheets[cell->sheet];
    const enum formula_result result = formula_write(b->book, b->map, cell, formula);
    if (result == FORMULA_PLAIN) {
        worksheet_write_number(sheet, cell->row, cell->column, shown, format);
        return;
    }
    if (result == FORMULA_LONG) {
        const uint16_t spare = b->book->spare_sheet;
        const uint32_t first = b->spare_row;
        if (!formula_parts(b->book, b->map, cell, spare, formula, keep_part, b)) {
            worksheet_write_number(sheet, cell->row, cell->column, shown, format);
            return;
        }
        (void)snprintf(formula, FORMULA_MOST, "=ROUND(SUM(%s!A%u:A%u),%u)",
                       b->book->sheets[spare].name, first + 1, b->spare_row,
                       tape_decimals(b->book->tape, cell->figure));
    }
    worksheet_write_formula_num(sheet, cell->row, cell->column, formula, format, shown);
}

/* The formula of a check, `{n}` replaced by the home of figure n. */
static void write_check(struct binder *b, const struct cell *cell, char *formula) {
    size_t used = (size_t)snprintf(formula, FORMULA_MOST, "=");
    for (const char *text = book_own(b->book, cell)->formula;
         *text != '\0' && used < FORMULA_MOST - 80;) {
        if (*text != '{') {
            formula[used++] = *text++;
            continue;
        }
        char *end = NULL;
        const fig figure = {(uint32_t)strtoul(text + 1, &end, 10)};
        used += formula_reference(b->book, cell->sheet, book_home(b->book, figure), formula + used);
        text = end + 1;
    }
    formula[used] = '\0';
    worksheet_write_formula_str(b->sheets[cell->sheet], cell->row, cell->column, formula,
                                look_format(&b->looks, (enum look)cell->look, "", false),
                                book_own(b->book, cell)->shown);
}

/* Decimals that a person reads of what was computed; the cell holds all. What was given is shown as
 * it was written. */
static uint8_t shown_decimals(const struct binder *b, const struct cell *cell) {
    const bool figure = cell->kind == CELL_HOME || cell->kind == CELL_MENTION;
    const uint8_t read = figure ? tape_read_decimals(b->book->tape, cell->figure) : cell->decimals;
    const bool amount = cell->unit >= UNIT_SQFT && cell->unit <= UNIT_L && cell->unit != UNIT_M3;
    return figure && amount && read > 2 && b->book->sheets[cell->sheet].few_decimals ? 2 : read;
}

static void write_cell(struct binder *b, const struct cell *cell, char *formula) {
    lxw_worksheet *const sheet = b->sheets[cell->sheet];
    if (cell->kind == CELL_TEXT && cell->span + cell->down > 0) {
        worksheet_merge_range(sheet, cell->row, cell->column, cell->row + cell->down,
                              (lxw_col_t)(cell->column + cell->span), book_words(b->book, cell),
                              look_format(&b->looks, (enum look)cell->look, "", true));
        return;
    }
    if (cell->kind == CELL_TEXT) {
        worksheet_write_string(sheet, cell->row, cell->column, book_words(b->book, cell),
                               look_format(&b->looks, (enum look)cell->look, "", false));
        return;
    }
    if (cell->kind == CELL_CHECK) {
        write_check(b, cell, formula);
        return;
    }
    char number[32];
    const int64_t value = binder_value(b, cell);
    if (!b->book->sheets[cell->sheet].few_decimals ||
        !look_whole_format((enum unit)cell->unit, cell->decimals, value, number)) {
        look_number_format((enum unit)cell->unit, shown_decimals(b, cell), value, number);
    }
    lxw_format *const format = look_format(&b->looks, (enum look)cell->look, number, false);
    const double shown = as_double(value, cell->decimals);
    if (cell->kind == CELL_FORMULA) {
        (void)snprintf(formula, FORMULA_MOST, "=%s", book_own(b->book, cell)->formula);
        worksheet_write_formula_num(sheet, cell->row, cell->column, formula, format, shown);
    } else if (book_at_home(b->book, cell)) {
        write_home(b, cell, formula, format, shown);
    } else if (cell->kind == CELL_HOME || cell->kind == CELL_MENTION) {
        formula[0] = '=';
        formula[1] = '-';
        (void)formula_reference(b->book, cell->sheet, book_home(b->book, cell->figure),
                                formula + (cell->less ? 2 : 1));
        worksheet_write_formula_num(sheet, cell->row, cell->column, formula, format, shown);
    } else {
        worksheet_write_number(sheet, cell->row, cell->column, shown, format);
    }
}

static void set_properties(const struct binder *b) {
    lxw_doc_properties properties = {.title = b->facts->title,
                                     .subject = b->facts->subject,
                                     .author = b->facts->author,
                                     .company = b->facts->author};
    struct tm date = {.tm_year = b->facts->year - 1900,
                      .tm_mon = b->facts->month - 1,
                      .tm_mday = b->facts->day,
                      .tm_hour = 12};
    properties.created = timegm(&date);
    workbook_set_properties(b->workbook, &properties);
}

/* Widths of columns are counted in digits of the book's first format.  Its letters are those of all
 * cells, so that no program has to put others in their place; and of the size at which a digit is 7
 * dots wide, rounded to whole dots (as one program does) or not (as the other does). */
static void set_letters(struct binder *b) {
    lxw_format *const first = STAILQ_FIRST(b->workbook->formats);
    format_set_font_name(first, "Arial");
    format_set_font_size(first, 9.5);
}

/* *cells: how many the file is to hold. */
static bool bind(struct binder *b, size_t *cells) {
    set_properties(b);
    if (!binder_sheets(b)) {
        return false;
    }
    set_letters(b);
    char *const formula = malloc(FORMULA_MOST);
    b->map = formula_map_new(b->book);
    bool held = formula != NULL && b->map != NULL && binder_measure(b) && binder_heads(b);
    for (uint16_t s = 0; held && s < b->book->sheet_count; s++) {
        held = binder_page(b, s) && !stop_asked(b->book->stop);
    }
    b->spare_row = b->rows[b->book->spare_sheet] + 2;
    /* what asks for cells comes before these, which are freed as they are written */
    book_put_names(b->book, b->workbook);
    for (size_t i = 0; i < b->book->link_count; i++) {
        const struct book_link *const link = &b->book->links[i];
        if (!b->large[link->sheet]) {
            book_put_link(b->book, link, b->sheets[link->sheet]);
        }
    }
    book_put_marks(b->book, b->workbook, b->sheets);
    held = held && book_put_pictures(b->book, b->sheets) &&
           book_put_charts(b->book, b->workbook, b->sheets);
    held = held && binder_cells(b, write_cell, formula, cells);
    binder_clear(b);
    formula_map_free(b->map);
    free(formula);
    return held;
}

bool book_write(struct book *book, const struct book_facts *facts, const char *path) {
    struct binder *const b = calloc(1, sizeof *b);
    if (b == NULL) {
        return false;
    }
    b->book = book;
    b->facts = facts;
    b->workbook = workbook_new(path);
    b->looks.workbook = b->workbook;
    size_t cells = 0;
    bool done = b->workbook != NULL && bind(b, &cells);
    done = done && !stop_asked(book->stop);
    if (done) {
        done = workbook_close(b->workbook) == LXW_NO_ERROR;
    } else {
        lxw_workbook_free(b->workbook);
    }
    if (done && !book_proof(path, cells, book->stop)) {
        errno = EIO; /* the library keeps the reason to itself */
        done = false;
    }
    free(b);
    return done;
}
