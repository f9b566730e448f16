/* SPDX-License-Identifier: MIT */
/* Texts of the client's workbook that run over lines, and the sheet that is made of them.  Heights
 * of rows are worked out here from the widths of the letters: a program that opens the file may not
 * fit them, and a guess by the count of letters leaves half a line too much or too little. */
#include "report/client/client_book_parts.h"

#include <string.h>

#define WORDS_WIDTH 60.0 /* the widest that a column is */
/* A column is so many dots wide for each character, and keeps some of them free. */
#define DOTS_A_CHARACTER 7.0
#define DOTS_FREE        4.0
#define LETTER_SIZE      12.0 /* dots: 9 points */
/* Programs differ a little in how they set a line. */
#define ALLOWANCE   1.03
#define BOLD        1.08
#define LINE_POINTS 12.0
#define ROW_POINTS  15.0 /* a row of one line */
#define SIGN_POINTS (8 * ROW_POINTS)
/* What fits on a page of either paper. */
#define PAGE_POINTS 690.0

/* The widths of the letters from the blank to the tilde, in thousandths of the size. */
static const uint16_t widths[] = {
    278,  278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, /*   to / */
    556,  556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, /* 0 to ? */
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, /* @ to O */
    667,  778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, /* P to _ */
    333,  556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, /* ` to o */
    556,  556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,      /* p to ~ */
};

/* Of a byte; other than ASCII: as the widest. */
static unsigned letter_width(unsigned char c) {
    if ((c & 0xC0) == 0x80) {
        return 0; /* goes on with a letter that is counted */
    }
    return c >= ' ' && c <= '~' ? widths[c - ' '] : 1000;
}

static double width_of(const char *text, size_t size) {
    unsigned width = 0;
    for (size_t i = 0; i < size; i++) {
        width += letter_width((unsigned char)text[i]);
    }
    return width * LETTER_SIZE / 1000;
}

unsigned client_book_lines(const struct client_sheet *s, uint16_t first, uint16_t last, bool bold,
                           const char *text) {
    double room = 0;
    for (uint16_t c = first; c <= last; c++) {
        room += s->widths[c] * DOTS_A_CHARACTER + DOTS_FREE + 1;
    }
    room = (room - 2 * DOTS_FREE) / ALLOWANCE / (bold ? BOLD : 1);
    const double blank = width_of(" ", 1);
    unsigned lines = 1;
    double used = 0;
    while (*text != '\0') {
        const size_t size = strcspn(text, " ");
        const double word = width_of(text, size);
        if (used > 0 && used + blank + word > room) {
            lines++;
            used = 0;
        }
        used += word + (used > 0 ? blank : 0);
        while (used > room) { /* a word that is broken */
            lines++;
            used -= room;
        }
        text += size;
        text += *text == ' ' ? 1 : 0;
    }
    return lines;
}

static double row_points(unsigned lines) {
    return lines * LINE_POINTS + ROW_POINTS - LINE_POINTS;
}

void client_book_height(struct client_sheet *s, unsigned lines) {
    book_height(s->book, s->sheet, s->row, row_points(lines));
}

void client_book_span(struct client_sheet *s, uint16_t first, uint16_t last, enum look look,
                      const char *text) {
    if (first == last) {
        book_text(s->book, s->sheet, s->row, first, look, text);
    } else {
        book_span(s->book, s->sheet, s->row, first, last, look, text);
    }
    client_book_height(s, client_book_lines(s, first, last, false, text));
}

void client_book_width(struct client_sheet *s, uint16_t column, double characters) {
    s->widths[column] = characters;
    book_width(s->book, s->sheet, column, characters);
}

/* --- the sheet of words --- */

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
        client_book_span(s, 1, 2, LOOK_WRAP, texts->text[i]);
        s->row++;
    }
    s->row++;
}

static void put_line_to_sign(struct client_sheet *s, const char *who) {
    s->row += 2;
    book_format(s->book, s->sheet, s->row++, 1, LOOK_PLAIN,
                "%s: ______________________________ date: ____________", who);
}

/* Points that a list takes with its heading. */
static double list_height(const struct client_sheet *s, const struct offer_texts *texts) {
    double height = 2 * ROW_POINTS;
    for (size_t i = 0; i < texts->count; i++) {
        height += row_points(client_book_lines(s, 1, 2, false, texts->text[i]));
    }
    return texts->count > 0 ? height : 0;
}

/* What is signed stands on one page with the terms: where all does not fit on the first, these
 * begin the second. */
static void break_before_terms(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    const double words = 2 * ROW_POINTS + list_height(s, &o->made) + list_height(s, &o->included) +
                         list_height(s, &o->excluded) + list_height(s, &o->notes);
    const double terms = list_height(s, &o->terms) + SIGN_POINTS;
    if (words + terms > PAGE_POINTS) {
        book_break(s->book, s->sheet, s->row);
    }
}

void client_book_words(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    s->sheet = book_sheet(s->book, "Terms", "What is part of it, and on which terms", false);
    s->row = 0;
    client_book_width(s, 0, 5);
    client_book_width(s, 1, WORDS_WIDTH);
    client_book_width(s, 2, WORDS_WIDTH / 2);
    book_text(s->book, s->sheet, s->row, 0, LOOK_TITLE, "What is part of it, and on which terms");
    s->row += 2;
    put_list(s, "Wood, panels and finish", &o->made, false);
    put_list(s, "Included", &o->included, false);
    put_list(s, "Not included", &o->excluded, false);
    put_list(s, "Notes", &o->notes, false);
    break_before_terms(s);
    put_list(s, o->terms_head, &o->terms, true);
    book_text(s->book, s->sheet, s->row++, 0, LOOK_SECTION, o->sign_head);
    client_book_span(s, 1, 2, LOOK_WRAP, o->agreed);
    put_line_to_sign(s, o->client[0] == '\0' ? "For the client" : o->client);
    if (!o->estimate) {
        put_line_to_sign(s, o->shop[0] == '\0' ? "For the shop" : o->shop);
    }
}
