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

/* Points: all columns of the paper, so that it is upright on letter and A4 alike. */
#define PAPER_WIDE 590.0
/* Columns count in characters, each is a little wider than its own. */
#define CHARACTER   5.25
#define COLUMN_MORE 3.75
#define GAP         1.5 /* characters beside what stands in a column */
/* Rows of a price of eight digits. */
#define AMOUNT_LEAST  12.0
#define PERCENT_LEAST 11.0

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

void client_book_span(struct client_sheet *s, uint16_t first, uint16_t last, enum look look,
                      const char *text) {
    if (first == last) {
        book_text(s->book, s->sheet, s->row, first, look, text);
    } else {
        book_span(s->book, s->sheet, s->row, first, last, look, text);
    }
}

void client_book_repeat(struct client_sheet *s, uint32_t first, uint32_t last) {
    book_headings(s->book, s->sheet, first, last, 0);
    s->book->sheets[s->sheet].freeze_row = 0;
}

char client_book_letter(uint16_t column) {
    return (char)('A' + column);
}

/* --- the head --- */

static void pair_line(struct client_sheet *s, const char *label, const char *text) {
    if (text[0] != '\0') {
        client_book_span(s, CLIENT_ID, CLIENT_KIND, LOOK_LABEL, label);
        client_book_span(s, CLIENT_WHAT, s->last, LOOK_WRAP, text);
        s->row++;
    }
}

/* The shop's picture has a row of its own, LOGO_HEIGHT high or LOGO_WIDTH wide. */
static void put_logo(struct client_sheet *s) {
    const struct offer_logo *const logo = &s->offer->logo;
    if (logo->bytes == NULL) {
        return;
    }
    const double by_height = LOGO_HEIGHT / logo->height;
    const double by_width = LOGO_WIDTH / logo->width;
    const double scale = by_height < by_width ? by_height : by_width;
    const char *const alt = pool_words(&s->book->pool, "The picture of %s",
                                       s->offer->shop[0] == '\0' ? "the shop" : s->offer->shop);
    book_height(s->book, s->sheet, s->row, logo->height * scale * 72 / 96 + 8);
    book_picture(s->book, s->sheet, s->row++, CLIENT_ID, logo->bytes, logo->size, scale, 0, alt);
}

static void put_head(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    put_logo(s);
    client_book_span(s, CLIENT_ID, s->last, LOOK_TITLE,
                     pool_words(&s->book->pool, "%s: %s", o->paper, o->title));
    s->row++;
    if (o->mark[0] != '\0') {
        client_book_span(s, CLIENT_ID, s->last, LOOK_SECTION, o->mark);
        s->row++;
    }
    s->row++;
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
        client_book_span(s, CLIENT_ID, s->last, LOOK_WRAP, o->statements.text[i]);
        s->row++;
    }
    s->row++;
}

/* --- the file --- */

static bool write_file(struct book *book, const struct offer *o, const char *path) {
    const char *const footer = book_footer_or(
        &book->pool,
        pool_words(&book->pool, "%s%s%s", o->shop, o->shop[0] == '\0' ? "" : "  |  ", o->reference),
        o->reference);
    const struct book_facts facts = {
        .title = pool_text(&book->pool, o->title, strlen(o->title)),
        .subject = pool_format(&book->pool, "%s", o->reference),
        .author = pool_text(&book->pool, o->shop, strlen(o->shop)),
        .footer = footer,
        .year = o->year,
        .month = o->month,
        .day = o->day,
        .letter = o->letter,
    };
    return !book_failed(book) && footer != NULL && book_write(book, &facts, path);
}

static double measure(void *paper, const char *text, bool bold) {
    return book_letters(paper, text, bold);
}

/* The amounts of the price stand in the last column, percentages beside them. */
static void set_columns(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    const double least[] = {PERCENT_LEAST, AMOUNT_LEAST};
    const double all =
        (PAPER_WIDE - CLIENT_COLUMN_COUNT * COLUMN_MORE) / CHARACTER; /* never more columns */
    client_columns_make(&s->columns, o, measure, s->book, all, GAP);
    s->last = (uint16_t)(s->columns.count - 1);
    for (size_t i = 0; i < 2; i++) {
        struct client_column *const column = &s->columns.list[s->last - 1 + i];
        const double head = book_letters(s->book, column->head, true) + GAP;
        double needed = head > least[i] ? head : least[i];
        for (size_t n = 0; i == 1 && n < o->line_count; n++) {
            const double wide = 1.3 * book_letters(s->book, o->lines[n].amount.text, true) + GAP;
            needed = wide > needed ? wide : needed;
        }
        if (needed > column->width) {
            s->columns.list[CLIENT_WHAT].width -= needed - column->width;
            column->width = needed;
        }
    }
    for (uint16_t c = 0; c <= s->last; c++) {
        book_width(s->book, s->sheet, c, s->columns.list[c].width);
    }
}

bool client_book_write(const struct offer *o, const char *path, const struct stop *stop) {
    struct book book;
    book_init(&book, NULL);
    book.stop = stop;
    struct client_sheet s = {.offer = o, .book = &book};
    s.sheet = book_sheet(&book, o->paper, o->paper, false);
    bool done = true;
    if (o->prices != NULL) {
        client_book_price_columns(&s);
        put_head(&s);
        client_book_prices(&s);
    } else if (o->changes != NULL) {
        client_book_change_columns(&s);
        put_head(&s);
        client_book_changes(&s);
        client_book_words(&s);
    } else {
        set_columns(&s);
        put_head(&s);
        client_book_price(&s);
        s.row++;
        client_book_list(&s);
        client_book_words(&s);
        done = client_book_kinds(&s);
    }
    done = done && write_file(&book, o, path);
    book_clear(&book);
    return done;
}
