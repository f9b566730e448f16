/* SPDX-License-Identifier: MIT */
/* A change order as a sheet: rows that change, and the price before and now. Differences are
 * formulas, so that the client may follow them. */
#include "report/client/client_book_parts.h"

#include <stdio.h>

/* Before, now and difference stand in the last columns. */
#define FIRST_AMOUNT CLIENT_WIDTH
static const double widths[] = {10, 6, 38, 13, 13, 13};

void client_book_change_columns(struct client_sheet *s) {
    s->last = FIRST_AMOUNT + CLIENT_DIFFERENCE;
    for (uint16_t c = 0; c <= s->last; c++) {
        book_width(s->book, s->sheet, c, widths[c]);
    }
}

static void put_rows(struct client_sheet *s, const struct offer_changes *c) {
    const uint16_t end = c->each ? (uint16_t)(s->last - 1) : s->last;
    client_book_span(s, 0, s->last, LOOK_SECTION, CLIENT_CHANGES_HEAD);
    s->row++;
    for (size_t i = 0; i < c->row_count; i++) {
        const struct offer_change *const row = &c->rows[i];
        if (i == 0 || row->kind != c->rows[i - 1].kind) {
            client_book_span(s, 0, s->last, LOOK_LABEL, client_change_head(row->kind));
            s->row++;
        }
        client_book_span(s, CLIENT_ID, CLIENT_KIND, LOOK_WRAP, row->id);
        client_book_span(s, CLIENT_WHAT, end, LOOK_WRAP, row->words);
        if (c->each) {
            client_book_amount(s, s->last, LOOK_PLAIN, &row->amount);
        }
        s->row++;
    }
    client_book_span(s, 0, s->last, LOOK_NOTE, s->offer->list_note);
    s->row += 2;
}

static void put_line(struct client_sheet *s, const struct offer_compared *line) {
    const enum look look = line->total ? LOOK_GRAND : LOOK_PLAIN;
    char formula[64];
    client_book_span(s, CLIENT_ID, CLIENT_WHAT, line->total ? LOOK_LABEL : LOOK_WRAP, line->words);
    for (int i = CLIENT_WAS; i <= CLIENT_IS; i++) {
        const struct offer_amount *const amount = client_compared(line, i);
        if (amount->text[0] != '\0') {
            client_book_amount(s, (uint16_t)(FIRST_AMOUNT + i), look, amount);
        }
    }
    (void)snprintf(formula, sizeof formula, "ROUND(%c%u-%c%u,%u)",
                   client_book_letter(FIRST_AMOUNT + CLIENT_IS), s->row + 1,
                   client_book_letter(FIRST_AMOUNT), s->row + 1,
                   (unsigned)line->difference.decimals);
    if (line->older.text[0] == '\0' && line->newer.text[0] == '\0') {
        client_book_amount(s, s->last, look, &line->difference);
    } else {
        client_book_formula(s, s->last, look, &line->difference, formula);
    }
    s->row++;
}

void client_book_changes(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    if (o->changes->row_count > 0) {
        put_rows(s, o->changes);
    }
    const uint32_t first = s->row;
    client_book_span(s, 0, CLIENT_WHAT, LOOK_SECTION, CLIENT_PRICE_HEAD);
    for (int i = 0; i < CLIENT_COMPARED; i++) {
        book_text(s->book, s->sheet, s->row, (uint16_t)(FIRST_AMOUNT + i), LOOK_HEAD,
                  client_compared_heads[i]);
    }
    s->row++;
    for (size_t i = 0; i < o->changes->line_count; i++) {
        put_line(s, &o->changes->lines[i]);
    }
    s->row++;
    for (size_t i = 0; i < o->payment_count; i++) {
        client_book_span(s, CLIENT_ID, CLIENT_WHAT, LOOK_WRAP, o->payments[i].words);
        client_book_amount(s, FIRST_AMOUNT + CLIENT_IS, LOOK_PLAIN, &o->payments[i].amount);
        s->row++;
    }
    for (size_t i = 0; i < o->pay_notes.count; i++) {
        client_book_span(s, 0, s->last, LOOK_WRAP, o->pay_notes.text[i]);
        s->row++;
    }
    book_keep(s->book, s->sheet, first, first + 2);
}
