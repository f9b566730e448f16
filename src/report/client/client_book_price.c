/* SPDX-License-Identifier: MIT */
#include "report/client/client_book_parts.h"

#include <assert.h>
#include <stdio.h>

/* Rows (from 1) of the lines that others are made from; 0: there is none. */
struct rows {
    uint32_t list, list_end; /* of the doors, below */
    uint32_t doors, first, delivery, before, taxed, tax, before_card, card, total, first_payment;
};

static void formula_of_doors(const struct client_sheet *s, const struct rows *rows, unsigned places,
                             char *text, size_t size) {
    const char sum = client_book_letter(s->last);
    if (s->offer->detail == OFFER_ROOMS) {
        (void)snprintf(text, size, "ROUND(SUM(%c%u:%c%u),%u)", sum, rows->list, sum, rows->list_end,
                       places);
    } else if (offer_has_sums(s->offer)) {
        /* only rows of doors have a kind: the rooms' own sums are left out */
        (void)snprintf(text, size, "ROUND(SUMIF(B%u:B%u,\"<>\",%c%u:%c%u),%u)", rows->list,
                       rows->list_end, sum, rows->list, sum, rows->list_end, places);
    }
}

/* With what comes last on top of the sum before it. */
static void formula_of_total(const struct rows *rows, char c, uint32_t at, unsigned places,
                             char *text, size_t size) {
    if (rows->card > 0) {
        (void)snprintf(text, size, "ROUND(%c%u+%c%u,%u)", c, rows->before_card, c, rows->card,
                       places);
    } else if (rows->tax > 0) {
        (void)snprintf(text, size, "ROUND(%c%u+%c%u,%u)", c, rows->before, c, rows->tax, places);
    } else {
        (void)snprintf(text, size, "ROUND(SUM(%c%u:%c%u),%u)", c, rows->first, c, at - 1, places);
    }
}

/* The formula of a line in its row, from 1; "": a plain value. */
static void formula_of(const struct client_sheet *s, const struct offer_line *line,
                       const struct rows *rows, uint32_t at, char *text, size_t size) {
    const unsigned places = line->amount.decimals;
    const char c = client_book_letter(s->last);
    const char p = client_book_letter((uint16_t)(s->last - 1));
    const uint32_t taxed = rows->taxed > 0 ? rows->taxed : rows->before;
    text[0] = '\0';
    switch (line->kind) {
    case OFFER_DOORS:
        formula_of_doors(s, rows, places, text, size);
        break;
    case OFFER_DISCOUNT:
        (void)snprintf(text, size, "-ROUND(%c%u*%c%u/100,%u)", c, rows->doors, p, at, places);
        break;
    case OFFER_AFTER:
        (void)snprintf(text, size, "ROUND(%c%u+%c%u,%u)", c, rows->doors, c, at - 1, places);
        break;
    case OFFER_BEFORE_TAX:
        (void)snprintf(text, size, "ROUND(SUM(%c%u:%c%u),%u)", c, rows->first, c, at - 1, places);
        break;
    case OFFER_TAXED:
        (void)snprintf(text, size, "ROUND(%c%u-%c%u,%u)", c, rows->before, c, rows->delivery,
                       places);
        break;
    case OFFER_TAX:
        if (line->by_percent) {
            (void)snprintf(text, size, "ROUND(%c%u*%c%u/100,%u)", c, taxed, p, at, places);
        }
        break;
    case OFFER_CARD:
        (void)snprintf(text, size, "ROUND(%c%u*%c%u/100,%u)", c, rows->before_card, p, at, places);
        break;
    case OFFER_CARD_OF_PAID:
        (void)snprintf(text, size, "ROUND(%c%u*%c%u/(100-%c%u),%u)", c, rows->before_card, p, at, p,
                       at, places);
        break;
    case OFFER_BEFORE_CARD:
    case OFFER_TOTAL:
        formula_of_total(rows, c, at, places, text, size);
        break;
    case OFFER_DEPOSIT:
    case OFFER_STAGE:
        (void)snprintf(text, size, "ROUND(%c%u*%c%u/100,%u)", c, rows->total, p, at, places);
        break;
    case OFFER_BALANCE:
        if (rows->first_payment == at) {
            (void)snprintf(text, size, "%c%u", c, rows->total);
        } else {
            (void)snprintf(text, size, "ROUND(%c%u-SUM(%c%u:%c%u),%u)", c, rows->total, c,
                           rows->first_payment, c, at - 1, places);
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
    case OFFER_CARD_OF_PAID:
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
    const enum look look = look_of(line->kind);
    char formula[96];
    client_book_span(s, CLIENT_WHAT, (uint16_t)(s->last - 2),
                     look == LOOK_NOTE || look == LOOK_PLAIN ? look : LOOK_LABEL, line->label);
    if (line->by_percent) {
        client_book_amount(s, (uint16_t)(s->last - 1), LOOK_PLAIN, &line->percent);
    }
    formula_of(s, line, rows, s->row + 1, formula, sizeof formula);
    if (formula[0] == '\0') {
        client_book_amount(s, s->last, look, &line->amount);
    } else {
        client_book_formula(s, s->last, look, &line->amount, formula);
    }
    note_row(rows, line->kind, s->row + 1);
    s->row++;
}

static void put_option(struct client_sheet *s, const struct offer_option *option, uint32_t total) {
    const char letter = client_book_letter(s->last);
    char formula[64];
    client_book_span(s, 0, (uint16_t)(s->last - 2), LOOK_LABEL, option->name);
    (void)snprintf(formula, sizeof formula, "ROUND(%c%u-%c%u,%u)", letter, s->row + 1, letter,
                   total, (unsigned)option->decimals);
    book_formula(s->book, s->sheet, s->row, (uint16_t)(s->last - 1), LOOK_DIFFERENCE, UNIT_MONEY,
                 option->decimals, option->difference, formula);
    book_number(s->book, s->sheet, s->row++, s->last, LOOK_PLAIN, UNIT_MONEY, option->decimals,
                option->total);
    client_book_span(s, 0, s->last, LOOK_WRAP, option->effect);
    s->row++;
    client_book_span(s, 0, s->last, LOOK_WRAP, option->words);
    s->row++;
    if (option->payments[0] != '\0') {
        client_book_span(s, 0, s->last, LOOK_WRAP, option->payments);
        s->row++;
    }
}

static void put_options(struct client_sheet *s, uint32_t total) {
    const struct offer *const o = s->offer;
    if (o->option_count == 0) {
        return;
    }
    const uint32_t head = ++s->row;
    client_book_span(s, 0, (uint16_t)(s->last - 2), LOOK_SECTION, CLIENT_OPTIONS_HEAD);
    book_text(s->book, s->sheet, s->row, (uint16_t)(s->last - 1), LOOK_HEAD, "difference");
    book_text(s->book, s->sheet, s->row++, s->last, LOOK_HEAD, "total with it");
    for (size_t i = 0; i < o->option_count; i++) {
        const uint32_t first = s->row;
        put_option(s, &o->options[i], total);
        book_keep(s->book, s->sheet, i == 0 ? head : first, s->row - 1);
    }
}

/* Rows that all this takes, with the blank one between it and the list. */
static uint32_t rows_needed(const struct offer *o) {
    const size_t heads = 2 + (o->payments_head[0] != '\0' ? 1 : 0);
    const size_t words = o->pay_notes.count;
    size_t options = o->option_count > 0 ? 2 : 0;
    for (size_t i = 0; i < o->option_count; i++) {
        options += o->options[i].payments[0] != '\0' ? 4 : 3;
    }
    return (uint32_t)(heads + o->line_count + o->payment_count + words + options);
}

void client_book_price(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    const uint32_t end = s->row + rows_needed(o);
    /* behind it a blank row, the head of the list and those of its columns; rows from 1 */
    struct rows rows = {.list = end + 4, .list_end = end + 3 + client_book_list_rows(o)};
    const uint32_t first = s->row;
    client_book_span(s, 0, s->last, LOOK_SECTION, CLIENT_PRICE_HEAD);
    s->row++;
    for (size_t i = 0; i < o->line_count; i++) {
        put_line(s, &o->lines[i], &rows);
    }
    s->row++;
    if (o->payments_head[0] != '\0') {
        client_book_span(s, CLIENT_WHAT, s->last, LOOK_LABEL, o->payments_head);
        s->row++;
    }
    rows.first_payment = s->row + 1;
    for (size_t i = 0; i < o->payment_count; i++) {
        put_line(s, &o->payments[i], &rows);
    }
    for (size_t i = 0; i < o->pay_notes.count; i++) {
        client_book_span(s, CLIENT_WHAT, s->last, LOOK_WRAP, o->pay_notes.text[i]);
        s->row++;
    }
    book_keep(s->book, s->sheet, first, s->row - 1);
    put_options(s, rows.total);
    assert(s->row == end);
}
