/* SPDX-License-Identifier: MIT */
#include "report/client_book_parts.h"
#include "report/offer_parts.h"

#include <stdio.h>

/* Rows (from 1) of the lines that others are made from; 0: there is none. */
struct rows {
    uint32_t doors, first, delivery, before, taxed, tax, before_card, card, total, first_payment;
};

/* The formula of a line in its row, from 1; "": a plain value. */
static void formula_of(const struct client_sheet *s, const struct offer_line *line,
                       const struct rows *rows, uint32_t at, char *text, size_t size) {
    const unsigned places = tape_figure(&s->offer->e->tape, line->amount)->decimals;
    const bool percent = !fig_none(line->percent);
    text[0] = '\0';
    switch (line->kind) {
    case OFFER_DOORS:
        if (s->offer->e->job->detail.word != PRICES_SUM) {
            (void)snprintf(text, size, "ROUND(SUM(I%u:I%u),%u)", s->first_amount + 1,
                           s->last_amount + 1, places);
        }
        break;
    case OFFER_DISCOUNT:
        (void)snprintf(text, size, "-ROUND(I%u*H%u/100,%u)", rows->doors, at, places);
        break;
    case OFFER_AFTER:
        (void)snprintf(text, size, "ROUND(I%u+I%u,%u)", rows->doors, at - 1, places);
        break;
    case OFFER_BEFORE_TAX:
        (void)snprintf(text, size, "ROUND(SUM(I%u:I%u),%u)", rows->first, at - 1, places);
        break;
    case OFFER_TAXED:
        (void)snprintf(text, size, "ROUND(I%u-I%u,%u)", rows->before, rows->delivery, places);
        break;
    case OFFER_TAX:
        if (percent) {
            (void)snprintf(text, size, "ROUND(I%u*H%u/100,%u)",
                           rows->taxed > 0 ? rows->taxed : rows->before, at, places);
        }
        break;
    case OFFER_CARD:
        (void)snprintf(text, size, "ROUND(I%u*H%u/100,%u)", rows->before_card, at, places);
        break;
    case OFFER_BEFORE_CARD:
    case OFFER_TOTAL:
        if (rows->card > 0) {
            (void)snprintf(text, size, "ROUND(I%u+I%u,%u)", rows->before_card, rows->card, places);
        } else if (rows->tax > 0) {
            (void)snprintf(text, size, "ROUND(I%u+I%u,%u)", rows->before, rows->tax, places);
        } else {
            (void)snprintf(text, size, "ROUND(SUM(I%u:I%u),%u)", rows->first, at - 1, places);
        }
        break;
    case OFFER_DEPOSIT:
    case OFFER_STAGE:
        (void)snprintf(text, size, "ROUND(I%u*H%u/100,%u)", rows->total, at, places);
        break;
    case OFFER_BALANCE:
        if (rows->first_payment == at) {
            (void)snprintf(text, size, "I%u", rows->total);
        } else {
            (void)snprintf(text, size, "ROUND(I%u-SUM(I%u:I%u),%u)", rows->total,
                           rows->first_payment, at - 1, places);
        }
        break;
    case OFFER_MINIMUM:
    case OFFER_CHARGE:
    case OFFER_DELIVERY:
        break;
    }
}

static void note_row(struct rows *rows, enum offer_line_kind kind, uint32_t at) {
    switch (kind) {
    case OFFER_DOORS:
        rows->doors = at;
        rows->first = at;
        break;
    case OFFER_AFTER:
        rows->first = at;
        break;
    case OFFER_DELIVERY:
        rows->delivery = at;
        break;
    case OFFER_BEFORE_TAX:
        rows->before = at;
        break;
    case OFFER_TAXED:
        rows->taxed = at;
        break;
    case OFFER_TAX:
        rows->tax = at;
        break;
    case OFFER_BEFORE_CARD:
        rows->before_card = at;
        break;
    case OFFER_CARD:
        rows->card = at;
        break;
    case OFFER_TOTAL:
        rows->total = at;
        break;
    case OFFER_DISCOUNT:
    case OFFER_MINIMUM:
    case OFFER_CHARGE:
    case OFFER_DEPOSIT:
    case OFFER_STAGE:
    case OFFER_BALANCE:
        break;
    }
}

static enum look look_of(enum offer_line_kind kind) {
    switch (kind) {
    case OFFER_TOTAL:
        return LOOK_GRAND;
    case OFFER_AFTER:
    case OFFER_BEFORE_TAX:
    case OFFER_BEFORE_CARD:
        return LOOK_TOTAL;
    case OFFER_TAXED:
        return LOOK_NOTE;
    default:
        return LOOK_PLAIN;
    }
}

static void put_line(struct client_sheet *s, const struct offer_line *line, struct rows *rows) {
    const struct tape *const tape = &s->offer->e->tape;
    const struct figure *const f = tape_figure(tape, line->amount);
    const enum look look = look_of(line->kind);
    const int64_t value = line->less ? -f->value : f->value;
    char formula[96];
    book_text(s->book, s->sheet, s->row, CLIENT_WHAT,
              look == LOOK_NOTE ? LOOK_NOTE : (look == LOOK_PLAIN ? LOOK_PLAIN : LOOK_LABEL),
              line->label);
    if (!fig_none(line->percent)) {
        const struct figure *const percent = tape_figure(tape, line->percent);
        book_number(s->book, s->sheet, s->row, CLIENT_EACH, LOOK_PLAIN, UNIT_PERCENT,
                    percent->decimals, percent->value);
    }
    formula_of(s, line, rows, s->row + 1, formula, sizeof formula);
    if (formula[0] == '\0') {
        book_number(s->book, s->sheet, s->row, CLIENT_AMOUNT, look, UNIT_MONEY, f->decimals, value);
    } else {
        book_formula(s->book, s->sheet, s->row, CLIENT_AMOUNT, look, UNIT_MONEY, f->decimals, value,
                     formula);
    }
    note_row(rows, line->kind, s->row + 1);
    s->row++;
}

static void put_options(struct client_sheet *s, uint32_t total) {
    const struct offer *const o = s->offer;
    if (o->option_count == 0) {
        return;
    }
    s->row++;
    book_text(s->book, s->sheet, s->row, CLIENT_ID, LOOK_SECTION, "Options, for the same list");
    book_text(s->book, s->sheet, s->row, CLIENT_EACH, LOOK_HEAD, "difference");
    book_text(s->book, s->sheet, s->row++, CLIENT_AMOUNT, LOOK_HEAD, "total with it");
    for (size_t i = 0; i < o->option_count; i++) {
        const struct offer_option *const option = &o->options[i];
        char formula[64];
        book_text(s->book, s->sheet, s->row, CLIENT_WHAT, LOOK_LABEL, option->name);
        book_span(s->book, s->sheet, s->row, CLIENT_WIDTH, CLIENT_LEAVES, LOOK_PLAIN,
                  option->adds ? "adds to the total above" : "replaces the total above");
        (void)snprintf(formula, sizeof formula, "ROUND(I%u-I%u,2)", s->row + 1, total);
        book_formula(s->book, s->sheet, s->row, CLIENT_EACH, LOOK_PLAIN, UNIT_MONEY, 2,
                     option->difference, formula);
        book_number(s->book, s->sheet, s->row++, CLIENT_AMOUNT, LOOK_PLAIN, UNIT_MONEY, 2,
                    option->total);
        book_text(s->book, s->sheet, s->row++, CLIENT_WHAT, LOOK_WRAP, option->words);
    }
}

void client_book_price(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    struct rows rows = {0};
    book_text(s->book, s->sheet, s->row++, CLIENT_ID, LOOK_SECTION, "Price");
    for (size_t i = 0; i < o->line_count; i++) {
        put_line(s, &o->lines[i], &rows);
    }
    s->row++;
    rows.first_payment = s->row + 1;
    for (size_t i = 0; i < o->payment_count; i++) {
        put_line(s, &o->payments[i], &rows);
    }
    put_options(s, rows.total);
}
