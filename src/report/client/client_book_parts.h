/* SPDX-License-Identifier: MIT */
/* Shared by the files that make the client's workbook, and by nobody else. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_BOOK_PARTS_H
#define DOORCOST_REPORT_CLIENT_CLIENT_BOOK_PARTS_H

#include "report/offer/offer.h"
#include "report/xlsx/book.h"

/* Columns of the paper: A to I. */
enum {
    CLIENT_ID,
    CLIENT_KIND,
    CLIENT_WHAT,
    CLIENT_WIDTH,
    CLIENT_HEIGHT,
    CLIENT_COUNT,
    CLIENT_LEAVES,
    CLIENT_EACH,
    CLIENT_AMOUNT
};

#define CLIENT_COLUMNS ((size_t)CLIENT_AMOUNT + 1)

struct client_sheet {
    const struct offer *offer;
    struct book *book;
    uint16_t sheet;
    uint32_t row;
    bool long_ids; /* names of rows are broken into lines */
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
/* client_book_list.c: the list of doors by room. */
void client_book_list(struct client_sheet *sheet);
/* Rows from the first room to the last door. */
uint32_t client_book_list_rows(const struct offer *offer);
/* client_book_words.c: a text over the columns first to last, as many lines as it needs. */
void client_book_span(struct client_sheet *sheet, uint16_t first, uint16_t last, enum look look,
                      const char *text);
/* A sheet with the words: what is part of it, and on which terms. */
void client_book_words(struct client_sheet *sheet);
/* client_book_kinds.c: a sheet with a drawing of each kind. false: memory is out. */
bool client_book_kinds(struct client_sheet *sheet);

#endif
