/* SPDX-License-Identifier: MIT */
/* Three sheets: the paper itself, the words to it, and the drawings.  The price stands before the
 * list of doors, so that it is always on the first page and only the list runs over pages. Formulas
 * stand where a client may want to follow the sums: an amount is count x leaves x price, totals are
 * sums of what is above, a percentage is of a cell that can be seen. */
#include "report/client/client_book.h"

#include "report/client/client_book_parts.h"
#include "report/xlsx/book_write.h"

#include <string.h>

/* Dots at 96 an inch. */
#define LOGO_HEIGHT 64.0
#define LOGO_WIDTH  220.0

/* Characters. */
#define ID_LEAST 7.0
#define ID_MOST  20.0
#define ID_FREE  1.5 /* beside a name */

void client_book_amount(struct client_sheet *s, uint16_t column, enum look look,
                        const struct offer_amount *amount) {
    book_number(s->book, s->sheet, s->row, column, look, amount->unit, amount->decimals,
                amount->value);
}

void client_book_formula(struct client_sheet *s, uint16_t column, enum look look,
                         const struct offer_amount *amount, const char *formula) {
    book_formula(s->book, s->sheet, s->row, column, look, amount->unit, amount->decimals,
                 amount->value, formula);
}

/* --- the head --- */

static void pair_line(struct client_sheet *s, const char *label, const char *text) {
    if (text[0] != '\0') {
        book_span(s->book, s->sheet, s->row, CLIENT_ID, CLIENT_KIND, LOOK_LABEL, label);
        book_text(s->book, s->sheet, s->row++, CLIENT_WHAT, LOOK_PLAIN, text);
    }
}

/* The shop's picture stands right of the words of the head, LOGO_HEIGHT high or LOGO_WIDTH wide. */
static void put_logo(struct client_sheet *s) {
    const struct offer_logo *const logo = &s->offer->logo;
    if (logo->bytes == NULL) {
        return;
    }
    const double by_height = LOGO_HEIGHT / logo->height;
    const double by_width = LOGO_WIDTH / logo->width;
    const char *const alt = pool_words(&s->book->pool, "The picture of %s",
                                       s->offer->shop[0] == '\0' ? "the shop" : s->offer->shop);
    book_picture(s->book, s->sheet, s->row, CLIENT_COUNT, logo->bytes, logo->size,
                 by_height < by_width ? by_height : by_width, 0, alt);
}

static void put_head(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    book_format(s->book, s->sheet, s->row++, CLIENT_ID, LOOK_TITLE, "%s: %s", o->paper, o->title);
    if (o->mark[0] != '\0') {
        book_text(s->book, s->sheet, s->row++, CLIENT_ID, LOOK_SECTION, o->mark);
    }
    s->row++;
    put_logo(s);
    pair_line(s, "From", o->shop);
    for (size_t i = 0; i < o->shop_lines.count; i++) {
        pair_line(s, " ", o->shop_lines.text[i]);
    }
    pair_line(s, "For", o->client);
    pair_line(s, " ", o->client_address);
    for (size_t i = 0; i < o->fact_count; i++) {
        pair_line(s, o->facts[i].label, o->facts[i].text);
    }
    s->row++;
    for (size_t i = 0; i < o->statements.count; i++) {
        client_book_span(s, CLIENT_ID, CLIENT_AMOUNT, LOOK_WRAP, o->statements.text[i]);
        s->row++;
    }
    s->row++;
}

/* --- the file --- */

static bool write_file(struct book *book, const struct offer *o, const char *path) {
    const char *const footer = pool_format(&book->pool, "%s  %s", o->reference, o->title);
    const struct book_facts facts = {
        .title = pool_text(&book->pool, o->title, strlen(o->title)),
        .subject = pool_format(&book->pool, "%s", o->reference),
        .author = pool_text(&book->pool, o->shop, strlen(o->shop)),
        .footer = footer == NULL ? NULL : book_footer(&book->pool, footer),
        .year = o->year,
        .month = o->month,
        .day = o->day,
        .letter = o->letter,
    };
    return !book_failed(book) && footer != NULL && book_write(book, &facts, path);
}

/* The column of the rows' names is as wide as the longest, within reason. */
static void set_id_width(struct client_sheet *s) {
    double widest = ID_LEAST;
    for (size_t d = 0; d < s->offer->door_count; d++) {
        const double width = book_letters(s->book, s->offer->doors[d].id, true) + ID_FREE;
        widest = width > widest ? width : widest;
    }
    s->long_ids = widest > ID_MOST;
    book_width(s->book, s->sheet, CLIENT_ID, s->long_ids ? ID_MOST : widest);
}

bool client_book_write(const struct offer *o, const char *path, const struct stop *stop) {
    static const double widths[CLIENT_COLUMNS] = {0, 5.5, 46, 9, 9, 6.5, 7.5, 11.5, 12.5};
    struct book book;
    book_init(&book, NULL);
    book.stop = stop;
    struct client_sheet s = {.offer = o, .book = &book};
    s.sheet = book_sheet(&book, o->paper, o->paper, false);
    set_id_width(&s);
    for (uint16_t c = CLIENT_KIND; c <= (uint16_t)CLIENT_AMOUNT; c++) {
        book_width(&book, s.sheet, c, widths[c]);
    }
    put_head(&s);
    client_book_price(&s);
    s.row++;
    client_book_list(&s);
    client_book_words(&s);
    const bool done = client_book_kinds(&s) && write_file(&book, o, path);
    book_clear(&book);
    return done;
}
