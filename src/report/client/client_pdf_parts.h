/* SPDX-License-Identifier: MIT */
/* Shared by the files that make the client's PDF, and by nobody else. */
#ifndef DOORCOST_REPORT_CLIENT_CLIENT_PDF_PARTS_H
#define DOORCOST_REPORT_CLIENT_CLIENT_PDF_PARTS_H

#include "report/draw/flow.h"
#include "report/offer/offer.h"

#define CLIENT_TEXT 9.0 /* size of the running text */
#define CLIENT_GRAY 0.35

struct client_page {
    const struct offer *offer;
    struct pool *pool; /* for texts of this drawing */
    struct flow flow;
    size_t pages; /* in all; 0 while they are counted */
};

/* client_pdf_head.c: letterhead, parties, the total in a box, the sentences below it. */
void client_head(struct client_page *page);
/* client_pdf_doors.c: a small drawing of each kind. */
void client_kinds(struct client_page *page);
/* The list by room. */
void client_doors(struct client_page *page);
/* client_pdf_price.c: price and payments, options. */
void client_price(struct client_page *page);
/* client_pdf_foot.c: what it is made of, what is in and what is not. */
void client_made(struct client_page *page);
/* Notes, terms, signatures. */
void client_words(struct client_page *page);

#endif
