/* SPDX-License-Identifier: MIT */
/* The doors by room, on the sheet of the price and below it: what runs over pages stands last. */
#include "report/client/client_book_parts.h"

#include <stdio.h>

bool client_book_sums(const struct offer *o) {
    return o->e->job->detail.choice != PRICES_SUM;
}

static bool is_priced(const struct offer *o) {
    return o->e->job->detail.choice == PRICES_EACH;
}

static bool has_head(const struct offer *o, const struct offer_room *room) {
    return room->name[0] != '\0' || client_book_sums(o);
}

uint32_t client_book_list_rows(const struct offer *o) {
    size_t rows = o->door_count;
    for (size_t i = 0; i < o->room_count; i++) {
        rows += has_head(o, &o->rooms[i]) ? 1 : 0;
    }
    return (uint32_t)rows;
}

static void put_figure(struct client_sheet *s, uint16_t column, fig figure) {
    const struct figure *const f = tape_figure(&s->offer->e->tape, figure);
    if (!fig_none(figure)) {
        book_number(s->book, s->sheet, s->row, column, LOOK_PLAIN, (enum unit)f->unit, f->decimals,
                    f->value);
    }
}

/* A size; millimeters without noughts behind their point, as the other paper has them. */
static void put_size(struct client_sheet *s, uint16_t column, fig figure) {
    const struct figure *const f = tape_figure(&s->offer->e->tape, figure);
    int64_t value = f->value;
    uint8_t decimals = f->decimals;
    while (s->offer->e->job->unit == LENGTH_MM && decimals > 0 && value % 10 == 0) {
        value /= 10;
        decimals--;
    }
    book_number(s->book, s->sheet, s->row, column, LOOK_PLAIN, (enum unit)f->unit, decimals, value);
}

static void put_door(struct client_sheet *s, const struct offer_door *door) {
    const struct leaf_figures *const leaf = door->leaf;
    const struct figure *const amount = tape_figure(&s->offer->e->tape, door->price->amount);
    const char *const id = leaf->door->row->id.s;
    const unsigned id_lines = client_book_lines(s, CLIENT_ID, CLIENT_ID, true, id);
    const unsigned lines = client_book_lines(s, CLIENT_WHAT, CLIENT_WHAT, false, door->words);
    book_text(s->book, s->sheet, s->row, CLIENT_ID, id_lines > 1 ? LOOK_WRAP : LOOK_LABEL, id);
    book_text(s->book, s->sheet, s->row, CLIENT_KIND, LOOK_PLAIN,
              s->offer->kinds[door->kind].letter);
    book_text(s->book, s->sheet, s->row, CLIENT_WHAT, LOOK_WRAP, door->words);
    client_book_height(s, lines > id_lines ? lines : id_lines);
    put_size(s, CLIENT_WIDTH, leaf->width);
    put_size(s, CLIENT_HEIGHT, leaf->height);
    put_figure(s, CLIENT_COUNT, leaf->openings);
    put_figure(s, CLIENT_LEAVES, leaf->leaves);
    if (is_priced(s->offer)) {
        char formula[96];
        const unsigned at = s->row + 1;
        put_figure(s, CLIENT_EACH, door->price->unit);
        (void)snprintf(formula, sizeof formula, "ROUND(F%u*G%u*H%u,%u)", at, at, at,
                       (unsigned)amount->decimals);
        book_formula(s->book, s->sheet, s->row, CLIENT_AMOUNT, LOOK_PLAIN, UNIT_MONEY,
                     amount->decimals, amount->value, formula);
    }
    s->row++;
}

static void put_heads(struct client_sheet *s) {
    static const char *const heads[] = {"No.",   "kind",          "what",       "width", "height",
                                        "count", "doors in each", "price each", "amount"};
    const bool sums = client_book_sums(s->offer);
    const bool priced = is_priced(s->offer);
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
    if (client_book_sums(s->offer)) {
        const struct figure *const sum = tape_figure(&s->offer->e->tape, room->amount);
        char formula[96];
        (void)snprintf(formula, sizeof formula, "ROUND(SUM(I%u:I%u),%u)", s->row + 2,
                       (unsigned)(s->row + 1 + room->count), (unsigned)sum->decimals);
        if (is_priced(s->offer)) {
            book_formula(s->book, s->sheet, s->row, CLIENT_AMOUNT, LOOK_LABEL, UNIT_MONEY,
                         sum->decimals, sum->value, formula);
        } else {
            book_number(s->book, s->sheet, s->row, CLIENT_AMOUNT, LOOK_LABEL, UNIT_MONEY,
                        sum->decimals, sum->value);
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
    client_book_span(s, CLIENT_ID, CLIENT_AMOUNT, LOOK_NOTE, o->list_note);
    s->row++;
}
