/* SPDX-License-Identifier: MIT */
/* Three sheets: the paper itself, the words to it, and the drawings.  Formulas stand where a client
 * may want to follow the sums: an amount is count x leaves x price, totals are sums of what is
 * above, a percentage is of a cell that can be seen. */
#include "report/client_book.h"

#include "report/book_write.h"
#include "report/client_book_parts.h"
#include "report/offer_parts.h"

#include <stdio.h>
#include <string.h>

/* Dots at 96 an inch. */
#define LOGO_HEIGHT 64.0
#define LOGO_WIDTH  220.0

/* --- the head --- */

static void pair_line(struct client_sheet *s, const char *label, const char *text) {
    if (text[0] != '\0') {
        book_span(s->book, s->sheet, s->row, CLIENT_ID, CLIENT_KIND, LOOK_LABEL, label);
        book_text(s->book, s->sheet, s->row++, CLIENT_WHAT, LOOK_PLAIN, text);
    }
}

/* The shop's picture stands right of the words of the head, LOGO_HEIGHT high or LOGO_WIDTH wide. */
static void put_logo(struct client_sheet *s) {
    const struct picture *const logo = &s->offer->e->rates->shop.logo;
    if (logo->bytes == NULL) {
        return;
    }
    const double by_height = LOGO_HEIGHT / logo->height;
    const double by_width = LOGO_WIDTH / logo->width;
    const char *const alt = pool_format(&s->offer->pool, "The picture of %s",
                                        s->offer->shop[0] == '\0' ? "the shop" : s->offer->shop);
    book_picture(s->book, s->sheet, s->row, CLIENT_COUNT, logo->bytes, logo->size,
                 by_height < by_width ? by_height : by_width, 0, alt == NULL ? "picture" : alt);
}

static void put_head(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    book_format(s->book, s->sheet, s->row++, CLIENT_ID, LOOK_TITLE, "%s: %s", o->paper, o->title);
    s->row++;
    put_logo(s);
    pair_line(s, "From", o->shop);
    pair_line(s, " ", o->shop_address);
    pair_line(s, " ", o->shop_contact);
    pair_line(s, "For", o->client);
    pair_line(s, " ", o->client_address);
    for (size_t i = 0; i < o->fact_count; i++) {
        pair_line(s, o->facts[i].label, o->facts[i].text);
    }
    s->row++;
    for (size_t i = 0; i < o->statements.count; i++) {
        book_span(s->book, s->sheet, s->row++, CLIENT_ID, CLIENT_AMOUNT, LOOK_WRAP,
                  o->statements.text[i]);
    }
    s->row++;
}

/* --- the doors --- */

static void put_figure(struct client_sheet *s, uint16_t column, fig figure) {
    const struct figure *const f = tape_figure(&s->offer->e->tape, figure);
    if (!fig_none(figure)) {
        book_number(s->book, s->sheet, s->row, column, LOOK_PLAIN, (enum unit)f->unit, f->decimals,
                    f->value);
    }
}

static void put_door(struct client_sheet *s, const struct offer_door *door) {
    const struct leaf_figures *const leaf = door->leaf;
    const struct figure *const amount = tape_figure(&s->offer->e->tape, door->price->amount);
    book_text(s->book, s->sheet, s->row, CLIENT_ID, LOOK_LABEL, leaf->door->row->id.s);
    book_text(s->book, s->sheet, s->row, CLIENT_KIND, LOOK_PLAIN,
              s->offer->kinds[door->kind].letter);
    book_text(s->book, s->sheet, s->row, CLIENT_WHAT, LOOK_WRAP, door->words);
    put_figure(s, CLIENT_WIDTH, leaf->width);
    put_figure(s, CLIENT_HEIGHT, leaf->height);
    put_figure(s, CLIENT_COUNT, leaf->openings);
    put_figure(s, CLIENT_LEAVES, leaf->leaves);
    if (s->priced) {
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
    static const char *const heads[] = {"No.",   "kind",         "what",       "width", "height",
                                        "count", "doors to one", "price each", "amount"};
    for (int c = CLIENT_ID; c <= CLIENT_AMOUNT; c++) {
        const bool money = c == CLIENT_EACH || (c == CLIENT_AMOUNT && !s->priced);
        book_text(s->book, s->sheet, s->row, (uint16_t)c, LOOK_HEAD,
                  money && !s->priced ? (c == CLIENT_AMOUNT ? heads[c] : " ") : heads[c]);
    }
    book_headings(s->book, s->sheet, s->row, s->row, 0);
    s->row++;
}

static void put_doors(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    const bool by_room = o->e->job->detail.word == PRICES_ROOMS;
    put_heads(s);
    s->first_amount = s->row;
    for (size_t r = 0; r < o->room_count; r++) {
        const struct offer_room *const room = &o->rooms[r];
        if (room->name[0] != '\0' || by_room) {
            book_text(s->book, s->sheet, s->row, CLIENT_ID, LOOK_SECTION,
                      room->name[0] == '\0' ? "(no room)" : room->name);
            if (by_room) {
                put_figure(s, CLIENT_AMOUNT, room->amount);
            }
            s->row++;
        }
        for (size_t i = 0; i < room->count; i++) {
            put_door(s, &o->doors[room->first + i]);
        }
    }
    s->last_amount = s->row - 1;
    book_format(
        s->book, s->sheet, s->row++, CLIENT_ID, LOOK_NOTE,
        "Finished sizes of one door in %s. Doors to one: 2 where a pair closes one opening.",
        o->e->job->unit == LENGTH_MM ? "mm" : "inches");
    s->row++;
}

/* --- the words --- */

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
        book_span(s->book, s->sheet, s->row++, 1, 2, LOOK_WRAP, texts->text[i]);
    }
    s->row++;
}

static void put_words(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    s->sheet = book_sheet(s->book, "Terms", "What is part of it, and on which terms", false);
    s->row = 0;
    book_width(s->book, s->sheet, 0, 5);
    book_width(s->book, s->sheet, 1, CLIENT_WORDS_WIDTH);
    book_width(s->book, s->sheet, 2, CLIENT_WORDS_WIDTH / 2);
    book_text(s->book, s->sheet, s->row, 0, LOOK_TITLE, "What is part of it, and on which terms");
    s->row += 2;
    put_list(s, "Wood, panels and finish", &o->made, false);
    put_list(s, "Included", &o->included, false);
    put_list(s, "Not included", &o->excluded, false);
    put_list(s, "Notes", &o->notes, false);
    put_list(s, "Terms", &o->terms, true);
    book_text(s->book, s->sheet, s->row++, 0, LOOK_SECTION, "Agreed");
    book_format(s->book, s->sheet, s->row, 1, LOOK_WRAP, "To the list%s the price of %s%s.",
                o->terms.count > 0 ? "," : " and", o->total_words,
                o->terms.count > 0 ? " and the terms above" : "");
    s->row += 2;
    book_format(s->book, s->sheet, s->row, 1, LOOK_PLAIN,
                "%s: ______________________________ date: ____________",
                o->client[0] == '\0' ? "For the client" : o->client);
    s->row += 3;
    book_format(s->book, s->sheet, s->row, 1, LOOK_PLAIN,
                "%s: ______________________________ date: ____________",
                o->shop[0] == '\0' ? "For the shop" : o->shop);
}

/* --- the file --- */

static bool write_file(struct book *book, struct offer *o, const char *path) {
    const struct job *const job = o->e->job;
    const struct book_facts facts = {
        .title = pool_text(&book->pool, o->title, strlen(o->title)),
        .subject = pool_format(&book->pool, "%s %s", o->paper, offer_or_nothing(job->number.s)),
        .author = pool_text(&book->pool, o->shop, strlen(o->shop)),
        .footer = book_footer(&book->pool, o->title),
        .year = job->year,
        .month = job->month,
        .day = job->day,
        .letter = !o->e->measures.metric,
    };
    return !book_failed(book) && book_write(book, &facts, path);
}

bool client_book_write(struct offer *o, const char *path) {
    static const double widths[] = {7, 5.5, 34, 9, 9, 6.5, 7.5, 11.5, 12.5};
    struct book book;
    book_init(&book, &o->e->tape);
    struct client_sheet s = {
        .offer = o, .book = &book, .priced = o->e->job->detail.word == PRICES_EACH};
    s.sheet = book_sheet(&book, o->paper, o->paper, false);
    for (size_t c = 0; c < sizeof widths / sizeof *widths; c++) {
        book_width(&book, s.sheet, (uint16_t)c, widths[c]);
    }
    put_head(&s);
    put_doors(&s);
    client_book_price(&s);
    put_words(&s);
    const bool done = client_book_kinds(&s) && write_file(&book, o, path);
    book_clear(&book);
    return done;
}
