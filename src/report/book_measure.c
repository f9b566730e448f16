/* SPDX-License-Identifier: MIT */
/* Widths of columns and heights of rows, found from what stands in them: programs differ in what
 * they fit when they open a file, and the pages are broken by these sizes. */
#include "report/book_binder.h"

#include "base/text.h"

#include <stdlib.h>
#include <string.h>

#define LEAST_WIDTH 4.0
#define MOST_WIDTH  60.0 /* of a column whose width nobody gave */
#define LINE_HEIGHT 12.5
#define ROW_HEIGHT  12.75

int64_t binder_value(const struct binder *b, const struct cell *cell) {
    return cell->kind == CELL_NUMBER || cell->kind == CELL_FORMULA
               ? cell->number
               : tape_amount(b->book->tape, cell->figure);
}

double binder_points(double characters) {
    return (double)(int)(characters * 7 + 5.5) * 72 / 96;
}

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
    look_shown((enum unit)cell->unit, cell->decimals, binder_value(b, cell), shown, sizeof shown);
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
        if (cell->column + cell->span >= b->columns[cell->sheet]) {
            b->columns[cell->sheet] = (uint16_t)(cell->column + cell->span + 1);
        }
    }
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        for (uint16_t c = 0; c < BOOK_MOST_COLUMNS; c++) {
            const double given =
                c < b->book->sheets[s].width_count ? b->book->sheets[s].widths[c] : 0;
            double width = b->widths[s][c] > MOST_WIDTH ? MOST_WIDTH : b->widths[s][c];
            width = given > 0 ? given : width;
            width = width > 0 && width < LEAST_WIDTH ? LEAST_WIDTH : width;
            if (width > 0) {
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

/* What a cell needs. */
static double needed_height(const struct binder *b, const struct cell *cell) {
    const enum look look = (enum look)cell->look;
    if (look == LOOK_TITLE) {
        return 21;
    }
    if (look == LOOK_SECTION || look == LOOK_GRAND) {
        return 16;
    }
    if (cell->kind == CELL_TEXT && look == LOOK_TALL) {
        return (double)text_columns(cell->text) * 5.2 + 10;
    }
    if (cell->kind == CELL_TEXT && (look == LOOK_HEAD || look == LOOK_WRAP || look == LOOK_WARN)) {
        const double bold = look == LOOK_HEAD ? 0.88 : 1.0;
        return lines_of(cell->text, spanned_width(b, cell) * bold) * LINE_HEIGHT + 2.5;
    }
    return 0;
}

static bool measure_heights(struct binder *b) {
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = &b->book->cells[i];
        uint32_t *const rows = &b->rows[cell->sheet];
        *rows = cell->row + 1 > *rows ? cell->row + 1 : *rows;
    }
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        b->heights[s] = calloc((size_t)b->rows[s] + 1, sizeof *b->heights[s]);
        if (b->heights[s] == NULL) {
            return false;
        }
        for (uint32_t r = 0; r < b->rows[s]; r++) {
            b->heights[s][r] = ROW_HEIGHT;
        }
    }
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = &b->book->cells[i];
        double *const row = &b->heights[cell->sheet][cell->row];
        const double height = needed_height(b, cell);
        *row = height > *row ? height : *row;
    }
    for (size_t i = 0; i < b->book->height_count; i++) {
        const struct book_height *const h = &b->book->heights[i];
        if (h->row < b->rows[h->sheet]) {
            b->heights[h->sheet][h->row] = h->points;
        }
    }
    return true;
}

bool binder_measure(struct binder *b) {
    measure_widths(b);
    if (!measure_heights(b)) {
        return false;
    }
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        worksheet_set_default_row(b->sheets[s], ROW_HEIGHT, LXW_FALSE);
        for (uint32_t r = 0; r < b->rows[s]; r++) {
            worksheet_set_row(b->sheets[s], r, b->heights[s][r], NULL);
        }
    }
    return true;
}

void binder_clear(struct binder *b) {
    for (size_t s = 0; s < BOOK_MOST_SHEETS; s++) {
        free(b->heights[s]);
        b->heights[s] = NULL;
    }
}
