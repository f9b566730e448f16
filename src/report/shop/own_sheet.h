/* SPDX-License-Identifier: MIT */
/* A sheet of plain numbers as it grows downward, of a workbook that a command writes by itself: no
 * number of it is of the tape, as each is from an estimate of its own. Words and lists begin in
 * column 0. A failure sticks to the book. */
#ifndef DOORCOST_REPORT_SHOP_OWN_SHEET_H
#define DOORCOST_REPORT_SHOP_OWN_SHEET_H

#include "price/estimate.h"
#include "report/xlsx/book.h"

struct own_sheet {
    struct book *book;
    const struct estimate *base;
    uint16_t sheet;
    uint32_t row;     /* the next */
    uint16_t last;    /* column up to which words run */
    uint8_t decimals; /* of money */
};

/* Adds a landscape sheet to the book, with these widths in characters. tab: as of book_sheet; foot:
 * printed below; both borrowed until the book is written. last: column up to which words run. */
struct own_sheet own_sheet_add(struct book *book, const struct estimate *base, const char *tab,
                               const char *foot, const double *widths, uint16_t count,
                               uint16_t last);

/* An amount of money in the present row, with the decimals of the sheet. */
void own_sheet_money(const struct own_sheet *s, uint16_t column, int64_t money);
/* The head of a part of the sheet, behind an empty row. */
void own_sheet_section(struct own_sheet *s, const char *words);
/* A row of words that run over the columns 0 to last. */
void own_sheet_words(struct own_sheet *s, enum look look, const char *words);
/* A row of heads, from column 0 on. */
void own_sheet_heads(struct own_sheet *s, const char *const *heads, size_t count);
/* A chart below its table, whose words stand in column 0 and which ends before the present row; at
 * the right of it where the chart's column is given. Nothing where the table is empty. The chart's
 * kind, title, alt, series and rows are given; axis: NULL: money. */
void own_sheet_chart(struct own_sheet *s, struct book_chart *chart);

/* Writes the book, whose sheets are laid out, to path as it stands (the caller has seen to a safe
 * place), and clears it. false: not written (errno tells), or memory ran out. */
bool own_sheet_write(struct book *book, const struct estimate *base, const char *path)
    __attribute__((warn_unused_result));

#endif
