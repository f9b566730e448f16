/* SPDX-License-Identifier: MIT */
#include "report/book_write.h"

#include "base/text.h"
#include "report/book_look.h"
#include "report/book_objects.h"
#include "report/formula.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define LEAST_WIDTH 4.0
#define MOST_WIDTH  60.0
#define LINE_HEIGHT 12.5

struct binder {
    const struct book *book;
    const struct book_facts *facts;
    lxw_workbook *workbook;
    lxw_worksheet *sheets[BOOK_MOST_SHEETS];
    struct book_looks looks;
    struct formula_map *map;
    uint32_t spare_row; /* of the last sheet, below all its cells */
    double widths[BOOK_MOST_SHEETS][BOOK_MOST_COLUMNS];
};

static int64_t cell_value(const struct binder *b, const struct cell *cell) {
    return cell->kind == CELL_NUMBER || cell->kind == CELL_FORMULA
               ? cell->number
               : tape_amount(b->book->tape, cell->figure);
}

static double as_double(int64_t value, uint8_t decimals) {
    double step = 1;
    for (uint8_t d = 0; d < decimals; d++) {
        step *= 10;
    }
    return (double)value / step;
}

/* --- widths and heights
 * ------------------------------------------------------------------------------------------------------
 */

/* Words that run over into empty cells beside them don't widen their column. */
static bool runs_over(enum look look) {
    return look == LOOK_TITLE || look == LOOK_NOTE || look == LOOK_SECTION || look == LOOK_WRAP ||
           look == LOOK_WARN;
}

static size_t longest_word(const char *text) {
    size_t longest = 0;
    while (*text != '\0') {
        const size_t size = strcspn(text, " -");
        longest = size > longest ? size : longest;
        text += size;
        text += *text != '\0' ? 1 : 0;
    }
    return longest;
}

static double needed_width(const struct binder *b, const struct cell *cell) {
    char shown[64];
    if (cell->kind == CELL_TEXT) {
        if (cell->span > 0 || runs_over((enum look)cell->look)) {
            return 0;
        }
        if (cell->look == LOOK_HEAD) {
            return (double)longest_word(cell->text) * 1.1 + 1.2;
        }
        return cell->look == LOOK_TALL ? LEAST_WIDTH
                                       : (double)text_columns(cell->text) * 0.98 + 1.5;
    }
    look_shown((enum unit)cell->unit, cell->decimals, cell_value(b, cell), shown, sizeof shown);
    const bool bold =
        cell->look == LOOK_TOTAL || cell->look == LOOK_GRAND || cell->look == LOOK_LABEL;
    const double factor = cell->look == LOOK_GRAND ? 1.35 : (bold ? 1.12 : 1.0);
    return (double)strlen(shown) * factor + 1.4;
}

static void measure_widths(struct binder *b) {
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = &b->book->cells[i];
        double *const width = &b->widths[cell->sheet][cell->column];
        const double needed = needed_width(b, cell);
        *width = needed > *width ? needed : *width;
    }
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        for (uint16_t c = 0; c < BOOK_MOST_COLUMNS; c++) {
            const double given =
                c < b->book->sheets[s].width_count ? b->book->sheets[s].widths[c] : 0;
            double width = given > 0 ? given : b->widths[s][c];
            if (width > 0) {
                width =
                    width < LEAST_WIDTH ? LEAST_WIDTH : (width > MOST_WIDTH ? MOST_WIDTH : width);
                worksheet_set_column(b->sheets[s], c, c, width, NULL);
            }
            b->widths[s][c] = width > 0 ? width : 8.43;
        }
    }
}

/* How many lines a text takes in a column, counted by words as a spreadsheet breaks them. */
static double lines_of(const char *text, double width) {
    const double room = width * 1.02 - 1.0;
    double lines = 1;
    double used = 0;
    while (*text != '\0') {
        const size_t size = strcspn(text, " ");
        const double word = (double)size + (used > 0 ? 1 : 0);
        if (used > 0 && used + word > room) {
            lines++;
            used = (double)size;
        } else {
            used += word;
        }
        while (used > room && room > 1) {
            lines++;
            used -= room;
        }
        text += size;
        text += *text == ' ' ? 1 : 0;
    }
    return lines;
}

/* The width of a cell with the columns that it runs over. */
static double spanned_width(const struct binder *b, const struct cell *cell) {
    double width = 0;
    for (uint16_t c = cell->column; c <= cell->column + cell->span && c < BOOK_MOST_COLUMNS; c++) {
        width += b->widths[cell->sheet][c];
    }
    return width;
}

/* Rows with wrapped or upright words get their height here: not every program fits it when it opens
 * a file. */
static bool set_heights(struct binder *b) {
    struct {
        uint32_t rows;
        double *heights;
    } sheets[BOOK_MOST_SHEETS] = {0};
    bool held = true;
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = &b->book->cells[i];
        uint32_t *const rows = &sheets[cell->sheet].rows;
        *rows = cell->row + 1 > *rows ? cell->row + 1 : *rows;
    }
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        sheets[s].heights = calloc((size_t)sheets[s].rows + 1, sizeof *sheets[s].heights);
        held = held && sheets[s].heights != NULL;
    }
    for (size_t i = 0; held && i < b->book->cell_count; i++) {
        const struct cell *const cell = &b->book->cells[i];
        double height = 0;
        if (cell->kind == CELL_TEXT && cell->look == LOOK_TALL) {
            height = (double)text_columns(cell->text) * 5.6 + 10;
        } else if (cell->kind == CELL_TEXT && (cell->look == LOOK_HEAD || cell->look == LOOK_WRAP ||
                                               cell->look == LOOK_WARN)) {
            const double bold = cell->look == LOOK_HEAD ? 0.88 : 1.0;
            height = lines_of(cell->text, spanned_width(b, cell) * bold) * LINE_HEIGHT + 2.5;
        } else if (cell->look == LOOK_TITLE) {
            height = 21;
        }
        double *const row = &sheets[cell->sheet].heights[cell->row];
        *row = height > *row ? height : *row;
    }
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        for (uint32_t r = 0; held && r < sheets[s].rows; r++) {
            if (sheets[s].heights[r] > 15) {
                worksheet_set_row(b->sheets[s], r, sheets[s].heights[r], NULL);
            }
        }
        free(sheets[s].heights);
    }
    for (size_t i = 0; i < b->book->height_count; i++) {
        const struct book_height *const h = &b->book->heights[i];
        worksheet_set_row(b->sheets[h->sheet], h->row, h->points, NULL);
    }
    return held;
}

/* --- cells
 * ---------------------------------------------------------------------------------------------------------------------
 */

/* Where the parts of a long sum go: below everything on the last sheet. */
struct part_place {
    struct binder *b;
    uint16_t sheet;
    uint32_t first, row;
};

static void write_part(void *to, const char *formula, double value) {
    struct part_place *const place = to;
    worksheet_write_formula_num(place->b->sheets[place->sheet], place->row++, 0, formula, NULL,
                                value);
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
        struct part_place place = {.b = b,
                                   .sheet = (uint16_t)(b->book->sheet_count - 1),
                                   .first = b->spare_row,
                                   .row = b->spare_row};
        if (!formula_parts(b->book, b->map, cell, place.sheet, formula, write_part, &place)) {
            worksheet_write_number(sheet, cell->row, cell->column, shown, format);
            return;
        }
        b->spare_row = place.row;
        (void)snprintf(formula, FORMULA_MOST, "=ROUND(SUM(%s!A%u:A%u),%u)",
                       b->book->sheets[place.sheet].name, place.first + 1, place.row,
                       tape_figure(b->book->tape, cell->figure)->decimals);
    }
    worksheet_write_formula_num(sheet, cell->row, cell->column, formula, format, shown);
}

/* The formula of a check, `{n}` replaced by the home of figure n. */
static void write_check(struct binder *b, const struct cell *cell, char *formula) {
    size_t used = (size_t)snprintf(formula, FORMULA_MOST, "=");
    for (const char *text = cell->text; *text != '\0' && used < FORMULA_MOST - 80;) {
        if (*text != '{') {
            formula[used++] = *text++;
            continue;
        }
        char *end = NULL;
        const fig figure = {(uint32_t)strtoul(text + 1, &end, 10)};
        formula_reference(b->book, cell->sheet, book_home(b->book, figure), formula + used,
                          FORMULA_MOST - used);
        used += strlen(formula + used);
        text = end + 1;
    }
    formula[used] = '\0';
    worksheet_write_formula_str(b->sheets[cell->sheet], cell->row, cell->column, formula,
                                look_format(&b->looks, (enum look)cell->look, ""), cell->shown);
}

static void write_cell(struct binder *b, const struct cell *cell, char *formula) {
    lxw_worksheet *const sheet = b->sheets[cell->sheet];
    if (cell->kind == CELL_TEXT && cell->span > 0) {
        worksheet_merge_range(sheet, cell->row, cell->column, cell->row,
                              (lxw_col_t)(cell->column + cell->span), cell->text,
                              look_format(&b->looks, (enum look)cell->look, ""));
        return;
    }
    if (cell->kind == CELL_TEXT) {
        worksheet_write_string(sheet, cell->row, cell->column, cell->text,
                               look_format(&b->looks, (enum look)cell->look, ""));
        return;
    }
    if (cell->kind == CELL_CHECK) {
        write_check(b, cell, formula);
        return;
    }
    char number[32];
    const int64_t value = cell_value(b, cell);
    look_number_format((enum unit)cell->unit, cell->decimals, value, number);
    lxw_format *const format = look_format(&b->looks, (enum look)cell->look, number);
    const double shown = as_double(value, cell->decimals);
    if (cell->kind == CELL_FORMULA) {
        (void)snprintf(formula, FORMULA_MOST, "=%s", cell->text);
        worksheet_write_formula_num(sheet, cell->row, cell->column, formula, format, shown);
    } else if (cell->kind == CELL_MENTION) {
        char reference[80];
        formula_reference(b->book, cell->sheet, book_home(b->book, cell->figure), reference,
                          sizeof reference);
        (void)snprintf(formula, FORMULA_MOST, "=%s", reference);
        worksheet_write_formula_num(sheet, cell->row, cell->column, formula, format, shown);
    } else if (cell->kind == CELL_HOME) {
        write_home(b, cell, formula, format, shown);
    } else {
        worksheet_write_number(sheet, cell->row, cell->column, shown, format);
    }
}

/* --- pages
 * ---------------------------------------------------------------------------------------------------------------------
 */

static void set_page(const struct binder *b, uint16_t index) {
    const struct book_sheet *const s = &b->book->sheets[index];
    lxw_worksheet *const sheet = b->sheets[index];
    char footer[240];
    worksheet_set_paper(sheet, b->facts->letter ? 1 : 9);
    if (s->landscape) {
        worksheet_set_landscape(sheet);
    }
    worksheet_fit_to_pages(sheet, 1, 0);
    worksheet_set_margins(sheet, 0.55, 0.55, 0.6, 0.7);
    (void)snprintf(footer, sizeof footer, "&L&8%.100s&C&8%.60s&R&8page &P of &N", b->facts->footer,
                   s->title);
    worksheet_set_footer(sheet, footer);
    worksheet_gridlines(sheet, LXW_HIDE_ALL_GRIDLINES);
    if (s->repeat_last > 0) {
        worksheet_repeat_rows(sheet, s->repeat_first, s->repeat_last);
    }
    if (s->freeze_row > 0 || s->freeze_column > 0) {
        worksheet_freeze_panes(sheet, s->freeze_row, s->freeze_column);
    }
    if (b->book->protect) {
        lxw_protection may = {.format_columns = 1, .format_rows = 1, .format_cells = 1};
        worksheet_protect(sheet, NULL, &may);
    }
    if (s->breaks != NULL) {
        worksheet_set_h_pagebreaks(sheet, s->breaks);
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

static bool bind(struct binder *b) {
    set_properties(b);
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        b->sheets[s] = workbook_add_worksheet(b->workbook, b->book->sheets[s].name);
        if (b->sheets[s] == NULL) {
            return false;
        }
        set_page(b, s);
    }
    measure_widths(b);
    char *const formula = malloc(FORMULA_MOST);
    b->map = formula_map_new(b->book);
    const bool held = formula != NULL && b->map != NULL && set_heights(b);
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = &b->book->cells[i];
        if (cell->sheet + 1 == b->book->sheet_count && cell->row + 3 > b->spare_row) {
            b->spare_row = cell->row + 3;
        }
    }
    for (size_t i = 0; held && i < b->book->cell_count; i++) {
        write_cell(b, &b->book->cells[i], formula);
    }
    book_put_names(b->book, b->workbook);
    book_put_marks(b->book, b->workbook, b->sheets);
    formula_map_free(b->map);
    free(formula);
    return held && book_put_pictures(b->book, b->sheets) &&
           book_put_charts(b->book, b->workbook, b->sheets);
}

bool book_write(const struct book *book, const struct book_facts *facts, const char *path) {
    struct binder *const b = calloc(1, sizeof *b);
    if (b == NULL) {
        return false;
    }
    b->book = book;
    b->facts = facts;
    b->workbook = workbook_new(path);
    b->looks.workbook = b->workbook;
    bool done = b->workbook != NULL && bind(b);
    if (b->workbook != NULL) {
        done = workbook_close(b->workbook) == LXW_NO_ERROR && done;
    }
    free(b);
    return done;
}
