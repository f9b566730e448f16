/* SPDX-License-Identifier: MIT */
/* The doors by room, on the sheet of the price and below it: what runs over pages stands last. */
#include "report/client/client_book_parts.h"

#include <stdio.h>

static bool has_head(const struct offer *o, const struct offer_room *room) {
    return room->name[0] != '\0' || offer_has_sums(o);
}

uint32_t client_book_list_rows(const struct offer *o) {
    size_t rows = o->door_count;
    for (size_t i = 0; i < o->room_count; i++) {
        rows += has_head(o, &o->rooms[i]) ? 1 : 0;
    }
    return (uint32_t)rows;
}

static void put_door(struct client_sheet *s, const struct offer_door *door) {
    const struct offer_amount *const amount = &door->amount;
    const char *const id = door->id;
    book_text(s->book, s->sheet, s->row, CLIENT_ID, s->long_ids ? LOOK_WRAP : LOOK_LABEL, id);
    book_text(s->book, s->sheet, s->row, CLIENT_KIND, LOOK_PLAIN,
              s->offer->kinds[door->kind].letter);
    book_text(s->book, s->sheet, s->row, CLIENT_WHAT, LOOK_WRAP, door->words);
    client_book_amount(s, CLIENT_WIDTH, LOOK_PLAIN, &door->width);
    client_book_amount(s, CLIENT_HEIGHT, LOOK_PLAIN, &door->height);
    client_book_amount(s, CLIENT_COUNT, LOOK_PLAIN, &door->count);
    client_book_amount(s, CLIENT_LEAVES, LOOK_PLAIN, &door->leaves);
    if (s->offer->detail == OFFER_EACH) {
        char formula[96];
        const unsigned at = s->row + 1;
        client_book_amount(s, CLIENT_EACH, LOOK_PLAIN, &door->price);
        (void)snprintf(formula, sizeof formula, "ROUND(F%u*G%u*H%u,%u)", at, at, at,
                       (unsigned)amount->decimals);
        client_book_formula(s, CLIENT_AMOUNT, LOOK_PLAIN, amount, formula);
    }
    s->row++;
}

static void put_heads(struct client_sheet *s) {
    static const char *const heads[] = {"No.",   "kind",          "what",       "width", "height",
                                        "count", "doors in each", "price each", "amount"};
    const bool sums = offer_has_sums(s->offer);
    const bool priced = s->offer->detail == OFFER_EACH;
    const uint16_t last = priced ? CLIENT_AMOUNT : CLIENT_LEAVES;
    for (uint16_t c = CLIENT_ID; c <= last; c++) {
        book_text(s->book, s->sheet, s->row, c, LOOK_HEAD, heads[c]);
    }
    if (sums && !priced) {
        book_span(s->book, s->sheet, s->row, CLIENT_EACH, CLIENT_AMOUNT, LOOK_HEAD,
                  "amount of the room");
    }
    /* Printed where the list goes on; not kept in sight, as it stands far down the sheet. */
    book_headings(s->book, s->sheet, s->row, s->row, 0);
    s->book->sheets[s->sheet].freeze_row = 0;
    s->row++;
}

static void put_room(struct client_sheet *s, const struct offer_room *room) {
    if (!has_head(s->offer, room)) {
        return;
    }
    book_keep(s->book, s->sheet, s->row, s->row + 1);
    book_text(s->book, s->sheet, s->row, CLIENT_ID, LOOK_SECTION,
              room->name[0] == '\0' ? "(no room)" : room->name);
    if (offer_has_sums(s->offer)) {
        const struct offer_amount *const sum = &room->amount;
        char formula[96];
        (void)snprintf(formula, sizeof formula, "ROUND(SUM(I%u:I%u),%u)", s->row + 2,
                       (unsigned)(s->row + 1 + room->count), (unsigned)sum->decimals);
        if (s->offer->detail == OFFER_EACH) {
            client_book_formula(s, CLIENT_AMOUNT, LOOK_LABEL, sum, formula);
        } else {
            client_book_amount(s, CLIENT_AMOUNT, LOOK_LABEL, sum);
        }
    }
    s->row++;
}

void client_book_list(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    put_heads(s);
    for (size_t r = 0; r < o->room_count; r++) {
        put_room(s, &o->rooms[r]);
        for (size_t i = 0; i < o->rooms[r].count; i++) {
            put_door(s, &o->doors[o->rooms[r].first + i]);
        }
    }
    client_book_span(s, CLIENT_ID, CLIENT_AMOUNT, LOOK_WRAP, o->list_note);
    s->row++;
}
