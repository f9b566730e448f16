/* SPDX-License-Identifier: MIT */
/* A price list as a sheet: a table for each style and way of ordering. */
#include "report/client/client_book_parts.h"

#define FIRST_PRICE ((uint16_t)1)

void client_book_price_columns(struct client_sheet *s) {
    static const double widths[1 + OFFER_MOST_COUNTS] = {22, 14, 14, 14, 14, 14};
    s->last = OFFER_MOST_COUNTS;
    for (uint16_t c = 0; c <= s->last; c++) {
        book_width(s->book, s->sheet, c, widths[c]);
    }
}

static void put_text(struct client_sheet *s, uint16_t column, enum look look, const char *text) {
    book_text(s->book, s->sheet, s->row, column, look, text);
}

static void put_size(struct client_sheet *s, const struct offer_price_table *table,
                     const struct offer_size *size) {
    put_text(s, 0, LOOK_PLAIN, size->words);
    for (size_t c = 0; c < table->count; c++) {
        const uint16_t column = (uint16_t)(FIRST_PRICE + c);
        if (size->prices[c].text[0] == '\0') {
            put_text(s, column, LOOK_UNIT, client_price_text(&size->prices[c]));
        } else {
            client_book_amount(s, column, LOOK_PLAIN, &size->prices[c]);
        }
    }
    s->row++;
}

static void put_table(struct client_sheet *s, const struct offer_price_table *table) {
    const uint32_t first = s->row;
    if (table->style[0] != '\0') {
        client_book_span(s, 0, s->last, LOOK_SECTION, table->style);
        s->row++;
        client_book_span(s, 0, s->last, LOOK_WRAP, table->made);
        s->row++;
    }
    client_book_span(s, 0, s->last, LOOK_LABEL, table->head);
    s->row++;
    put_text(s, 0, LOOK_HEAD, CLIENT_SIZE_HEAD);
    for (size_t c = 0; c < table->count; c++) {
        put_text(s, (uint16_t)(FIRST_PRICE + c), LOOK_HEAD, table->counts[c]);
    }
    s->row++;
    for (size_t i = 0; i < table->size_count; i++) {
        put_size(s, table, &table->sizes[i]);
    }
    book_keep(s->book, s->sheet, first, s->row - 1);
    s->row++;
}

void client_book_prices(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    for (size_t i = 0; i < o->prices->table_count; i++) {
        put_table(s, &o->prices->tables[i]);
    }
    client_book_span(s, 0, s->last, LOOK_NOTE, o->list_note);
}
