/* SPDX-License-Identifier: MIT */
/* A book while it is written: shared by the files that measure its sheets, set its pages and write
 * its cells, and by nobody else. */
#ifndef DOORCOST_REPORT_XLSX_BOOK_BINDER_H
#define DOORCOST_REPORT_XLSX_BOOK_BINDER_H

#include "report/xlsx/book_look.h"
#include "report/xlsx/book_write.h"
#include "report/xlsx/formula.h"

/* A formula that holds a part of a long sum, kept until the rows above it are written. */
struct binder_part {
    char *formula;
    double value;
};

struct binder {
    struct book *book;
    const struct book_facts *facts;
    lxw_workbook *workbook;
    lxw_worksheet *sheets[BOOK_MOST_SHEETS];
    struct book_looks looks;
    struct formula_map *map;
    bool large[BOOK_MOST_SHEETS]; /* of the sheets: the library keeps but a row of it in memory */
    uint32_t spare_row;           /* of the spare sheet, below its cells */
    struct binder_part *parts;    /* that stand there */
    size_t part_count, part_room;
    bool part_failed; /* one could not be kept for want of memory */
    double widths[BOOK_MOST_SHEETS][BOOK_MOST_COLUMNS]; /* in characters */
    uint16_t columns[BOOK_MOST_SHEETS];                 /* how many hold something */
    uint32_t rows[BOOK_MOST_SHEETS];
    double words_end[BOOK_MOST_SHEETS]; /* how far words run that no column cuts off, in points */
    double *heights[BOOK_MOST_SHEETS];  /* of the rows, in points */
};

/* What a cell's number is, at its decimals. */
int64_t binder_value(const struct binder *binder, const struct cell *cell);

/* The width of so many characters in points, as a spreadsheet has it whose own letters have digits
 * of 7 dots: the book's first format sees to that. */
double binder_points(double characters);
/* The width of the columns from first to end - 1 of a sheet, in points; once they are measured. */
double binder_between(const struct binder *binder, uint16_t sheet, uint16_t first, uint16_t end);

/* Finds the widths of columns and the heights of rows and sets them, but for the rows of large
 * sheets, which are set as they are written. binder_clear frees the
 * heights. false: memory ran out. */
bool binder_measure(struct binder *binder) __attribute__((warn_unused_result));
/* Gives the heads of columns the looks that stand as the cells below them; after binder_measure.
 * false: memory ran out. */
bool binder_heads(struct binder *binder) __attribute__((warn_unused_result));
/* Frees the heights of the rows and the parts of long sums. */
void binder_clear(struct binder *binder);

/* Sets paper, scale, headings, foot and breaks of the pages of a sheet; after binder_measure.
 * false: memory ran out. */
bool binder_page(const struct binder *binder, uint16_t sheet) __attribute__((warn_unused_result));

/* Adds the sheets to the workbook, with more cells than a quote of a few hundred doors has as large
 * ones, but for those on which pictures or charts lie: the library finds the places of these by the
 * rows that it has in memory. false: memory ran out. */
bool binder_sheets(struct binder *binder) __attribute__((warn_unused_result));

/* Writes a cell; formula: room of FORMULA_MOST bytes. */
typedef void binder_cell_write(struct binder *binder, const struct cell *cell, char *formula);
/* Writes all cells, those of the large sheets row by row, and the parts of long sums. Frees the
 * book's cells as it goes. *cells: how many the file is to hold. false: memory ran out, or the
 * book's stop was asked for. */
bool binder_cells(struct binder *binder, binder_cell_write *write, char *formula, size_t *cells)
    __attribute__((warn_unused_result));

#endif
