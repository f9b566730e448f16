/* SPDX-License-Identifier: MIT */
/* The doors by room, on the sheet of the price and below it: what runs over pages stands last. */
#include "report/client/client_book_parts.h"

#include <stdio.h>

#define NOTE_ABOVE 5.0 /* points */

uint32_t client_book_list_rows(const struct offer *o) {
    size_t rows = o->door_count;
    for (size_t i = 0; i < o->room_count; i++) {
        rows += client_room_has_head(o, &o->rooms[i]) ? 1 : 0;
    }
    return (uint32_t)rows;
}

/* The amount of a row: what stands in its columns of numbers behind the sizes, multiplied. */
static void put_amount(struct client_sheet *s, const struct offer_door *door) {
    char formula[96] = "ROUND(";
    size_t used = sizeof "ROUND(" - 1;
    for (uint16_t c = 0; c < s->last; c++) {
        const enum client_column_is is = s->columns.list[c].is;
        if (is == CLIENT_COUNT || is == CLIENT_LEAVES || is == CLIENT_EACH) {
            used += (size_t)snprintf(formula + used, sizeof formula - used, "%s%c%u",
                                     is == CLIENT_COUNT ? "" : "*", client_book_letter(c),
                                     (unsigned)s->row + 1);
        }
    }
    (void)snprintf(formula + used, sizeof formula - used, ",%u)", (unsigned)door->amount.decimals);
    client_book_formula(s, s->last, LOOK_PLAIN, &door->amount, formula);
}

static void put_door(struct client_sheet *s, const struct offer_door *door) {
    for (uint16_t c = 0; c <= s->last; c++) {
        const enum client_column_is is = s->columns.list[c].is;
        const struct offer_amount cell = client_cell(s->offer, door, is);
        if (is == CLIENT_AMOUNT) {
            if (s->offer->detail == OFFER_EACH) {
                put_amount(s, door);
            }
        } else if (s->columns.list[c].number) {
            client_book_amount(s, c, LOOK_PLAIN, &cell);
        } else {
            book_text(s->book, s->sheet, s->row, c, LOOK_WRAP, cell.text);
        }
    }
    s->row++;
}

static void put_heads(struct client_sheet *s) {
    const uint32_t first = s->row;
    client_book_span(s, 0, s->last, LOOK_SECTION, client_list_head(s->offer));
    s->row++;
    for (uint16_t c = 0; c <= s->last; c++) {
        book_text(s->book, s->sheet, s->row, c, LOOK_HEAD, s->columns.list[c].head);
    }
    client_book_repeat(s, first, s->row);
    s->row++;
}

static void put_room(struct client_sheet *s, const struct offer_room *room) {
    const bool summed = offer_has_sums(s->offer);
    if (!client_room_has_head(s->offer, room)) {
        return;
    }
    book_keep(s->book, s->sheet, s->row, s->row + 1);
    client_book_span(s, 0, (uint16_t)(s->last - (summed ? 1 : 0)), LOOK_PART,
                     room->name[0] == '\0' ? CLIENT_NO_ROOM : room->name);
    if (summed) {
        const struct offer_amount *const sum = &room->amount;
        const char letter = client_book_letter(s->last);
        char formula[96];
        (void)snprintf(formula, sizeof formula, "ROUND(SUM(%c%u:%c%u),%u)", letter, s->row + 2,
                       letter, (unsigned)(s->row + 1 + room->count), (unsigned)sum->decimals);
        if (s->offer->detail == OFFER_EACH) {
            client_book_formula(s, s->last, LOOK_PART_SUM, sum, formula);
        } else {
            client_book_amount(s, s->last, LOOK_PART_SUM, sum);
        }
    }
    s->row++;
}

void client_book_list(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    book_keep(s->book, s->sheet, s->row, s->row + 3);
    put_heads(s);
    for (size_t r = 0; r < o->room_count; r++) {
        put_room(s, &o->rooms[r]);
        for (size_t i = 0; i < o->rooms[r].count; i++) {
            put_door(s, &o->doors[o->rooms[r].first + i]);
        }
    }
    book_height(s->book, s->sheet, s->row++, NOTE_ABOVE);
    client_book_span(s, 0, s->last, LOOK_WRAP, o->list_note);
    s->row++;
}
