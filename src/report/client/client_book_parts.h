/* SPDX-License-Identifier: MIT */
/* Shared by the files that make the client's workbook, and by nobody else. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_BOOK_PARTS_H
#define DOORCOST_REPORT_CLIENT_CLIENT_BOOK_PARTS_H

#include "report/client/client_layout.h"
#include "report/xlsx/book.h"

struct client_sheet {
    const struct offer *offer;
    struct book *book;
    struct client_columns columns; /* of the list; the price stands in the last two */
    uint16_t sheet;
    uint16_t last; /* the last column */
    uint32_t row;
};

/* client_book_price.c: the lines of the price, payments and options; below them, from the row after
 * next, stands the list of doors, as high as client_book_list_rows. */
void client_book_price(struct client_sheet *sheet);
/* client_book.c: an amount in the row. */
void client_book_amount(struct client_sheet *sheet, uint16_t column, enum look look,
                        const struct offer_amount *amount);
/* The same amount, made by a formula over cells of the sheet; formula: without `=`. */
void client_book_formula(struct client_sheet *sheet, uint16_t column, enum look look,
                         const struct offer_amount *amount, const char *formula);
/* A text over the columns first to last, as many lines as it needs. */
void client_book_span(struct client_sheet *sheet, uint16_t first, uint16_t last, enum look look,
                      const char *text);
/* Rows first to last, which must be over 0, are printed on every page of the sheet behind them;
 * they are not kept in sight, as they may stand far down. */
void client_book_repeat(struct client_sheet *sheet, uint32_t first, uint32_t last);
/* The letter of a column. */
char client_book_letter(uint16_t column);
/* client_book_list.c: the list of doors by room. */
void client_book_list(struct client_sheet *sheet);
/* Rows from the first room to the last door. */
uint32_t client_book_list_rows(const struct offer *offer);
/* client_book_changes.c: of a change order, the columns of its sheet. */
void client_book_change_columns(struct client_sheet *sheet);
/* What changes, and the price before and now. */
void client_book_changes(struct client_sheet *sheet);
/* client_book_prices.c: of a price list, the columns of its sheet. */
void client_book_price_columns(struct client_sheet *sheet);
/* Its tables. */
void client_book_prices(struct client_sheet *sheet);
/* client_book_words.c: a sheet with the words: what is part of it, on which terms, who signs. */
void client_book_words(struct client_sheet *sheet);
/* A sheet with a drawing of each kind. false: memory is out. */
bool client_book_kinds(struct client_sheet *sheet);

#endif
