/* SPDX-License-Identifier: MIT */
/* The sheet of words: what is part of it, and on which terms. */
#include "report/client/client_book_parts.h"

/* Characters. */
#define NUMBER_WIDTH 5.0
#define WORDS_WIDTH  60.0 /* the widest that a column is */

void client_book_span(struct client_sheet *s, uint16_t first, uint16_t last, enum look look,
                      const char *text) {
    if (first == last) {
        book_text(s->book, s->sheet, s->row, first, look, text);
    } else {
        book_span(s->book, s->sheet, s->row, first, last, look, text);
    }
}

static void put_list(struct client_sheet *s, const char *head, const struct offer_texts *texts,
                     bool numbered) {
    if (texts->count == 0) {
        return;
    }
    book_text(s->book, s->sheet, s->row++, 0, LOOK_SECTION, head);
    for (size_t i = 0; i < texts->count; i++) {
        if (numbered) {
            book_format(s->book, s->sheet, s->row, 0, LOOK_PLAIN, "%zu", i + 1);
        }
        client_book_span(s, 1, 2, LOOK_WRAP, texts->text[i]);
        s->row++;
    }
    s->row++;
}

static void put_line_to_sign(struct client_sheet *s, const char *who) {
    s->row += 2;
    book_format(s->book, s->sheet, s->row++, 1, LOOK_PLAIN,
                "%s: ______________________________ date: ____________", who);
}

void client_book_words(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    s->sheet = book_sheet(s->book, "Terms", "What is part of it, and on which terms", false);
    s->row = 0;
    book_width(s->book, s->sheet, 0, NUMBER_WIDTH);
    book_width(s->book, s->sheet, 1, WORDS_WIDTH);
    book_width(s->book, s->sheet, 2, WORDS_WIDTH / 2);
    book_text(s->book, s->sheet, s->row, 0, LOOK_TITLE, "What is part of it, and on which terms");
    s->row += 2;
    put_list(s, "Wood, panels and finish", &o->made, false);
    put_list(s, "Included", &o->included, false);
    put_list(s, "Not included", &o->excluded, false);
    put_list(s, "Notes", &o->notes, false);
    const uint32_t terms = s->row;
    put_list(s, o->terms_head, &o->terms, true);
    book_text(s->book, s->sheet, s->row++, 0, LOOK_SECTION, o->sign_head);
    client_book_span(s, 1, 2, LOOK_WRAP, o->agreed);
    put_line_to_sign(s, o->client[0] == '\0' ? "For the client" : o->client);
    if (!o->estimate) {
        put_line_to_sign(s, o->shop[0] == '\0' ? "For the shop" : o->shop);
    }
    /* what is signed stands on one page with the terms, where a page holds them */
    book_keep(s->book, s->sheet, terms, s->row - 1);
}
