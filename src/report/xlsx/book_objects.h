/* SPDX-License-Identifier: MIT */
/* Puts the pictures and charts of a book on the sheets of the workbook; for book_write.c. */
#ifndef DOORCOST_REPORT_XLSX_BOOK_OBJECTS_H
#define DOORCOST_REPORT_XLSX_BOOK_OBJECTS_H

#include "report/xlsx/book.h"

#include <xlsxwriter.h>

/* Lays the pictures of the book on their sheets. sheets: by their number in the book, cells and
 * heights written. false: memory ran out. */
bool book_put_pictures(const struct book *book, lxw_worksheet *const *sheets)
    __attribute__((warn_unused_result));
/* Lays its charts on them, likewise. */
bool book_put_charts(const struct book *book, lxw_workbook *workbook, lxw_worksheet *const *sheets)
    __attribute__((warn_unused_result));

/* Defines the names of cells. */
void book_put_names(const struct book *book, lxw_workbook *workbook);

/* Puts a link on its sheet, before its cell is written: that brings its words. */
void book_put_link(const struct book *book, const struct book_link *link, lxw_worksheet *sheet);

/* Makes every check cell stand out that says `run again` or `changed`, and tells at every
 * input what may be typed. */
void book_put_marks(const struct book *book, lxw_workbook *workbook, lxw_worksheet *const *sheets);

#endif
