/* SPDX-License-Identifier: MIT */
/* A book while it is written: shared by the files that measure its sheets, set its pages and write
 * its cells, and by nobody else. */
#ifndef DOORCOST_REPORT_XLSX_BOOK_BINDER_H
#define DOORCOST_REPORT_XLSX_BOOK_BINDER_H

#include "report/xlsx/book_look.h"
#include "report/xlsx/book_write.h"
#include "report/xlsx/formula.h"

struct binder {
    struct book *book;
    const struct book_facts *facts;
    lxw_workbook *workbook;
    lxw_worksheet *sheets[BOOK_MOST_SHEETS];
    struct book_looks looks;
    struct formula_map *map;
    uint32_t spare_row;                                 /* of the spare sheet, below its cells */
    double widths[BOOK_MOST_SHEETS][BOOK_MOST_COLUMNS]; /* in characters */
    uint16_t columns[BOOK_MOST_SHEETS];                 /* how many hold something */
    uint32_t rows[BOOK_MOST_SHEETS];
    double *heights[BOOK_MOST_SHEETS]; /* of the rows, in points */
};

/* What a cell's number is, at its decimals. */
int64_t binder_value(const struct binder *binder, const struct cell *cell);

/* The width of so many characters in points, as a spreadsheet has it whose own letters have digits
 * of 7 dots: the book's first format sees to that. */
double binder_points(double characters);

/* Finds the widths of columns and the heights of rows and sets them. binder_clear frees the
 * heights. false: memory ran out. */
bool binder_measure(struct binder *binder) __attribute__((warn_unused_result));
/* Frees the heights of the rows. */
void binder_clear(struct binder *binder);

/* Sets paper, scale, headings, foot and breaks of the pages of a sheet; after binder_measure.
 * false: memory ran out. */
bool binder_page(const struct binder *binder, uint16_t sheet) __attribute__((warn_unused_result));

#endif
