/* SPDX-License-Identifier: MIT */
/* Widths of columns and heights of rows, found from what stands in them: programs differ in what
 * they fit when they open a file, and the pages are broken by these sizes. */
#include "report/xlsx/book_binder.h"

#include <stdlib.h>
#include <string.h>

#define LEAST_WIDTH 4.0
#define MOST_WIDTH  60.0 /* of a column whose width nobody gave */
#define BOLD        1.08 /* of the width of plain letters */
#define LINE_HEIGHT 12.5
#define ROW_HEIGHT  12.75

int64_t binder_value(const struct binder *b, const struct cell *cell) {
    if (cell->kind == CELL_NUMBER || cell->kind == CELL_FORMULA) {
        return cell->number;
    }
    const int64_t amount = tape_amount(b->book->tape, cell->figure);
    return cell->less ? -amount : amount;
}

/* One letter, by the usual widths of a plain typeface without serifs. */
static double letter(unsigned char c) {
    static const struct {
        const char *letters;
        double width;
    } widths[] = {{"ijl'|I", 0.40},   {"ft .,;:/!", 0.48}, {"r-()[]", 0.57},
                  {"cksvxyzJ", 0.86}, {"wGOQ", 1.30},      {"mMW", 1.50}};
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
        if (strchr(widths[i].letters, c) != NULL) {
            return widths[i].width;
        }
    }
    if (c >= 0x80) { /* the first byte of a letter counts, the others are part of it */
        return c < 0xC0 ? 0 : (c < 0xE0 ? 0.96 : 1.75);
    }
    return c >= 'A' && c <= 'Z' ? 1.18 : 0.96;
}

double binder_letters(const char *text) {
    double width = 0;
    for (; *text != '\0'; text++) {
        width += letter((unsigned char)*text);
    }
    return width;
}

double binder_points(double characters) {
    return (double)(int)(characters * 7 + 5.5) * 72 / 96;
}

/* Words that run over into empty cells beside them don't widen their column. */
static bool runs_over(enum look look) {
    return look == LOOK_TITLE || look == LOOK_NOTE || look == LOOK_SECTION || look == LOOK_WRAP ||
           look == LOOK_WARN;
}

/* The width of the first bytes of a text. */
static double width_of(const char *text, size_t size) {
    double width = 0;
    for (size_t i = 0; i < size; i++) {
        width += letter((unsigned char)text[i]);
    }
    return width;
}

static double longest_word(const char *text) {
    double longest = 0;
    while (*text != '\0') {
        const size_t size = strcspn(text, " -");
        const double width = width_of(text, size);
        longest = width > longest ? width : longest;
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
            return longest_word(cell->text) * BOLD + 1.6;
        }
        const bool plain = cell->look != LOOK_LABEL && cell->look != LOOK_CHECK;
        const double indent = cell->look == LOOK_UNIT || cell->look == LOOK_CHECK ? 1.5 : 0;
        return cell->look == LOOK_TALL
                   ? LEAST_WIDTH
                   : binder_letters(cell->text) * (plain ? 1 : BOLD) + 1.5 + indent;
    }
    look_shown((enum unit)cell->unit, cell->decimals, binder_value(b, cell), shown, sizeof shown);
    const bool bold =
        cell->look == LOOK_TOTAL || cell->look == LOOK_GRAND || cell->look == LOOK_LABEL;
    const double factor = cell->look == LOOK_GRAND ? 1.3 : (bold ? 1.06 : 0.97);
    return (double)strlen(shown) * factor + 1.5;
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
    const double room = width > 3 ? width * 0.99 + 0.2 : 2;
    double lines = 1;
    double used = 0;
    while (*text != '\0') {
        const size_t size = strcspn(text, " ");
        const double word = width_of(text, size);
        if (used > 0 && used + letter(' ') + word > room) {
            lines++;
            used = word;
        } else {
            used += word + (used > 0 ? letter(' ') : 0);
        }
        while (used > room) {
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
        return binder_points(binder_letters(cell->text) * BOLD) + 6;
    }
    if (cell->kind == CELL_TEXT && (look == LOOK_HEAD || look == LOOK_WRAP || look == LOOK_WARN)) {
        const double bold = look == LOOK_HEAD ? 1 / BOLD : 1.0;
        const double lines = lines_of(cell->text, spanned_width(b, cell) * bold);
        /* one line is as high as any row; 15 points would be left out of the file, as the usual */
        return lines > 1 ? lines * LINE_HEIGHT + 2.5 : ROW_HEIGHT;
    }
    return 0;
}

static bool measure_heights(struct binder *b) {
    for (size_t i = 0; i < b->book->cell_count; i++) {
        const struct cell *const cell = &b->book->cells[i];
        uint32_t *const rows = &b->rows[cell->sheet];
        *rows = cell->row + 1 > *rows ? cell->row + 1 : *rows;
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
