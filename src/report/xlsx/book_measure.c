/* SPDX-License-Identifier: MIT */
/* Widths of columns and heights of rows, found from what stands in them: programs differ in what
 * they fit when they open a file, and the pages are broken by these sizes. */
#include "report/xlsx/book_binder.h"

#include <stdlib.h>
#include <string.h>

#define LEAST_WIDTH 4.0
/* Characters: heads up to this are not broken; what their columns are wider. */
#define SHORT_HEAD 9.5
#define HEAD_FREE  1.6
#define MOST_WIDTH 60.0 /* of a column whose width nobody gave */
/* Dots at 96 an inch: letters of 9 points, the digits that columns are counted in, what a column is
 * wider than its digits, and what a cell keeps free at its sides. */
#define LETTER_SIZE 12.0
#define DIGIT       7.0
#define COLUMN_MORE 5.0
#define CELL_FREE   6.0
#define ALLOWANCE   1.02 /* programs differ a little in how they set a line */
/* Points: a line of these letters is 15 dots high, and programs leave a dot below it. */
#define LINE_HEIGHT 12.0
#define ROW_HEIGHT  12.75
#define PART_ABOVE  5.0 /* what LOOK_PART leaves free above its words */

int64_t binder_value(const struct binder *b, const struct cell *cell) {
    if (cell->kind != CELL_HOME && cell->kind != CELL_MENTION) {
        return book_own(b->book, cell)->number;
    }
    const int64_t amount = tape_amount(b->book->tape, cell->figure);
    return cell->less ? -amount : amount;
}

double book_letters(const struct book *book, const char *text, bool bold) {
    return text_width(book->letters, text, strlen(text), bold) * LETTER_SIZE * ALLOWANCE / DIGIT;
}

double binder_points(double characters) {
    return (double)(int)(characters * DIGIT + COLUMN_MORE + 0.5) * 72 / 96;
}

double binder_between(const struct binder *b, uint16_t sheet, uint16_t first, uint16_t end) {
    double wide = 0;
    for (uint16_t c = first; c < end; c++) {
        wide += binder_points(b->widths[sheet][c]);
    }
    return wide;
}

/* Words that run over into empty cells beside them don't widen their column. */
static bool runs_over(enum look look) {
    return look == LOOK_TITLE || look == LOOK_NOTE || look == LOOK_SECTION || look == LOOK_PART ||
           look == LOOK_WRAP || look == LOOK_WARN;
}

static double needed_width(const struct binder *b, const struct cell *cell) {
    char shown[64];
    if (cell->kind == CELL_TEXT) {
        if (cell->span > 0 || runs_over((enum look)cell->look)) {
            return 0;
        }
        if (cell->look == LOOK_HEAD) {
            const double whole = book_letters(b->book, book_words(b->book, cell), true);
            return whole <= SHORT_HEAD
                       ? whole + HEAD_FREE
                       : text_widest_word(b->book->letters, book_words(b->book, cell), true) *
                                 LETTER_SIZE * ALLOWANCE / DIGIT +
                             HEAD_FREE;
        }
        const bool plain = cell->look != LOOK_LABEL && cell->look != LOOK_CHECK;
        const double indent = cell->look == LOOK_UNIT || cell->look == LOOK_CHECK ? 1.5 : 0;
        return cell->look == LOOK_TALL
                   ? LEAST_WIDTH
                   : book_letters(b->book, book_words(b->book, cell), !plain) + 1.5 + indent;
    }
    look_shown((enum unit)cell->unit, cell->decimals, binder_value(b, cell), shown, sizeof shown);
    const bool bold = cell->look == LOOK_TOTAL || cell->look == LOOK_GRAND ||
                      cell->look == LOOK_LABEL || cell->look == LOOK_PART_SUM;
    const double factor = cell->look == LOOK_GRAND ? 1.3 : (bold ? 1.06 : 0.97);
    const double sign = cell->look == LOOK_DIFFERENCE ? 1 : 0;
    return ((double)strlen(shown) + sign) * factor + 1.5;
}

static void measure_widths(struct binder *b) {
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = book_cell(b->book, i);
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

static void measure_words(struct binder *b) {
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = book_cell(b->book, i);
        double *const end = &b->words_end[cell->sheet];
        if (cell->kind == CELL_TEXT && cell->span == 0 &&
            (cell->look == LOOK_NOTE || cell->look == LOOK_PLAIN)) {
            const double right =
                binder_between(b, cell->sheet, 0, cell->column) +
                binder_points(book_letters(b->book, book_words(b->book, cell), false));
            *end = right > *end ? right : *end;
        }
    }
}

/* Lines that a text takes in columns beside each other. */
static size_t lines_in(const struct book *book, const double *widths, size_t count,
                       const char *text, bool bold, double size) {
    double dots = 0;
    for (size_t c = 0; c < count; c++) {
        dots += widths[c] * DIGIT + COLUMN_MORE;
    }
    const double room = (dots - CELL_FREE) / (size * ALLOWANCE);
    return text_lines(book->letters, text, bold, room > 1 ? room : 1);
}

size_t book_lines(const struct book *book, const double *widths, size_t count, const char *text) {
    return lines_in(book, widths, count, text, false, LETTER_SIZE);
}

/* Lines of a cell in the columns that it runs over; of a check those of what it says now. */
static size_t lines_of(const struct binder *b, const struct cell *cell, bool bold, double size) {
    const bool text = cell->kind == CELL_TEXT;
    const size_t right = (size_t)(BOOK_MOST_COLUMNS - cell->column);
    const size_t count = text ? (size_t)cell->span + 1 : 1;
    return lines_in(b->book, &b->widths[cell->sheet][cell->column], count < right ? count : right,
                    text ? book_words(b->book, cell) : book_own(b->book, cell)->shown, bold, size);
}

/* What a cell needs: a text that runs over columns is broken into lines, whatever its look. */
static double needed_height(const struct binder *b, const struct cell *cell) {
    const enum look look = (enum look)cell->look;
    const bool text = cell->kind == CELL_TEXT;
    const bool large = look == LOOK_SECTION || look == LOOK_PART || look == LOOK_GRAND;
    const double above = look == LOOK_PART ? PART_ABOVE : 0;
    const double one = look == LOOK_TITLE ? 21 : (large ? 16 : LINE_HEIGHT);
    if (text && cell->down > 0) {
        return 0; /* each of its lines has a row */
    }
    if (text && look == LOOK_TALL) {
        return binder_points(book_letters(b->book, book_words(b->book, cell), true)) + 6;
    }
    const bool broken = text && (cell->span > 0 || look == LOOK_HEAD || look == LOOK_WARN);
    if (broken || (look == LOOK_WRAP && (text || cell->kind == CELL_CHECK))) {
        const bool bold = look == LOOK_HEAD || look == LOOK_TITLE || look == LOOK_LABEL || large;
        const double size = LETTER_SIZE * (look == LOOK_TITLE ? 15.0 / 9 : (large ? 11.0 / 9 : 1));
        const size_t lines = lines_of(b, cell, bold, size);
        /* one line is as high as any row; 15 points would be left out of the file, as the usual */
        return (lines > 1 ? (double)lines * one + 0.5 : (one > LINE_HEIGHT ? one : ROW_HEIGHT)) +
               above;
    }
    return one > LINE_HEIGHT ? one + above : 0;
}

static bool measure_heights(struct binder *b) {
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = book_cell(b->book, i);
        uint32_t *const rows = &b->rows[cell->sheet];
        const uint32_t end = cell->row + (cell->kind == CELL_TEXT ? cell->down : 0) + 1;
        *rows = end > *rows ? end : *rows;
    }
    for (size_t i = 0; i < b->book->chart_count; i++) {
        const struct book_chart *const chart = &b->book->charts[i];
        const uint32_t end = chart->row + (uint32_t)(book_chart_height(chart) / ROW_HEIGHT) + 1;
        b->rows[chart->sheet] = end > b->rows[chart->sheet] ? end : b->rows[chart->sheet];
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
        const struct cell *const cell = book_cell(b->book, i);
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
    measure_words(b);
    if (!measure_heights(b)) {
        return false;
    }
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        worksheet_set_default_row(b->sheets[s], ROW_HEIGHT, LXW_FALSE);
        for (uint32_t r = 0; !b->large[s] && r < b->rows[s]; r++) {
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
    for (size_t i = 0; i < b->part_count; i++) {
        free(b->parts[i].formula);
    }
    free(b->parts);
    b->parts = NULL;
    b->part_count = b->part_room = 0;
}
