/* SPDX-License-Identifier: MIT */
/* Shared by the files that make the client's PDF, and by nobody else. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_PDF_PARTS_H
#define DOORCOST_REPORT_CLIENT_CLIENT_PDF_PARTS_H

#include "report/client/client_layout.h"
#include "report/draw/flow.h"

#define CLIENT_TEXT 9.0 /* size of the running text */
#define CLIENT_GRAY 0.35

struct client_page {
    const struct offer *offer;
    struct pool *pool; /* for texts of this drawing */
    struct flow flow;
    size_t pages; /* in all; 0 while they are counted */
};

/* client_pdf_head.c: letterhead, parties, the total in a box, the sentences below it. */
void client_pdf_head(struct client_page *page);
/* client_pdf_price.c: price and payments, options. */
void client_pdf_price(struct client_page *page);
/* client_pdf_list.c: the list by room, and a small drawing of each kind. */
void client_pdf_list(struct client_page *page);
/* The drawings. */
void client_pdf_kinds(struct client_page *page);
/* client_pdf_changes.c: of a change order, the rows that change. */
void client_pdf_changes(struct client_page *page);
/* The lines of the price, before and now. */
void client_pdf_compared(struct client_page *page);
/* client_pdf_prices.c: the tables of a price list. */
void client_pdf_prices(struct client_page *page);
/* client_pdf_words.c: lists of words and signatures. */
void client_pdf_words(struct client_page *page);

#endif
