/* SPDX-License-Identifier: MIT */
/* Shared by the files that make the client's workbook, and by nobody else. */
#ifndef DOORCOST_REPORT_CLIENT_BOOK_PARTS_H
#define DOORCOST_REPORT_CLIENT_BOOK_PARTS_H

#include "report/book.h"
#include "report/offer.h"

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

#define CLIENT_WORDS_WIDTH 60.0 /* the widest that a column is */

struct client_sheet {
    struct offer *offer;
    struct book *book;
    uint16_t sheet;
    uint32_t row;
    bool priced;                        /* each door */
    uint32_t first_amount, last_amount; /* rows of the doors */
};

/* client_book_price.c: the lines of the price, payments and options. */
void client_book_price(struct client_sheet *sheet);
/* client_book_kinds.c: a sheet with a drawing of each kind. false: memory is out. */
bool client_book_kinds(struct client_sheet *sheet);

#endif
