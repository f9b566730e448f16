/* SPDX-License-Identifier: MIT */
/* The sheet of words, with what is signed, and that of the drawings. */
#include "report/client/client_book_parts.h"
#include "report/draw/draw.h"

#include <stdlib.h>

/* Two halves beside each other, each of a number or dash, what it stands before, and a narrow one:
 * for who signs, and when. */
enum { NUMBER, LEFT, LEFT_END, BETWEEN, DASH, RIGHT, RIGHT_END };
static const double widths[] = {[NUMBER] = 3, [LEFT] = 37,  [LEFT_END] = 13, [BETWEEN] = 2,
                                [DASH] = 3,   [RIGHT] = 37, [RIGHT_END] = 13};

static void put_list(struct client_sheet *s, const struct client_words *list) {
    if (list->texts->count == 0) {
        return;
    }
    const uint32_t first = s->row;
    client_book_span(s, NUMBER, RIGHT_END, LOOK_SECTION, list->head);
    for (size_t i = 0; i < list->texts->count; i++) {
        s->row++;
        if (list->numbered) {
            book_format(s->book, s->sheet, s->row, NUMBER, LOOK_PLAIN, "%zu", i + 1);
        }
        client_book_span(s, list->numbered ? LEFT : NUMBER, RIGHT_END, LOOK_WRAP,
                         list->texts->text[i]);
    }
    book_keep(s->book, s->sheet, first, first + 2 < s->row ? first + 2 : s->row);
    s->row += 2;
}

/* A half of two; the row behind it. */
static uint32_t put_half(const struct client_sheet *s, uint16_t first, uint16_t end,
                         const struct client_words *list) {
    uint32_t row = s->row;
    book_span(s->book, s->sheet, row++, first, end, LOOK_SECTION, list->head);
    for (size_t i = 0; i < list->texts->count; i++) {
        book_text(s->book, s->sheet, row, first, LOOK_PLAIN, "\u2013");
        const uint32_t rows = book_span_down(s->book, s->sheet, row, (uint16_t)(first + 1), end,
                                             LOOK_WRAP, list->texts->text[i]);
        book_keep(s->book, s->sheet, row, row + rows - 1);
        row += rows;
    }
    return row;
}

static void put_beside(struct client_sheet *s, const struct client_words *left,
                       const struct client_words *right) {
    const uint32_t first = s->row;
    const uint32_t ends[] = {put_half(s, NUMBER, LEFT_END, left),
                             put_half(s, DASH, RIGHT_END, right)};
    book_keep(s->book, s->sheet, first, first + 2);
    s->row = (ends[0] > ends[1] ? ends[0] : ends[1]) + 1;
}

static void put_signatures(struct client_sheet *s) {
    const char *names[2];
    const size_t count = client_signers(s->offer, names);
    client_book_span(s, NUMBER, RIGHT_END, LOOK_SECTION, s->offer->sign_head);
    s->row++;
    client_book_span(s, NUMBER, RIGHT_END, LOOK_WRAP, s->offer->agreed);
    s->row += 2;
    for (size_t i = 0; i < count; i++) {
        const uint16_t first = i == 0 ? NUMBER : DASH;
        const uint16_t end = i == 0 ? LEFT_END : RIGHT_END;
        client_book_span(s, first, end, LOOK_LABEL, names[i]);
        s->row += 2;
        client_book_span(s, first, (uint16_t)(end - 1), LOOK_TOTAL, CLIENT_SIGN_WHO);
        book_text(s->book, s->sheet, s->row, end, LOOK_TOTAL, CLIENT_SIGN_WHEN);
        s->row -= 2;
    }
    book_height(s->book, s->sheet, s->row + 1, 34);
    s->row += 2;
}

void client_book_words(struct client_sheet *s) {
    struct client_words lists[CLIENT_WORDS_COUNT];
    client_words_make(s->offer, lists);
    s->sheet = book_sheet(s->book, "Terms", "Terms", false);
    s->row = 0;
    for (uint16_t c = NUMBER; c <= (uint16_t)RIGHT_END; c++) {
        book_width(s->book, s->sheet, c, widths[c]);
    }
    client_book_span(s, NUMBER, RIGHT_END, LOOK_TITLE, "What is part of it, and on which terms");
    client_book_repeat(s, s->row, s->row + 1);
    s->row += 2;
    uint32_t last = s->row;
    for (size_t i = 0; i < CLIENT_WORDS_COUNT; i++) {
        const bool two = i + 1 < CLIENT_WORDS_COUNT && lists[i + 1].beside;
        if (lists[i].texts->count > 0 && !lists[i].beside) {
            last = s->row;
        }
        if (two && lists[i].texts->count + lists[i + 1].texts->count == 0) {
            continue;
        }
        if (two) {
            put_beside(s, &lists[i], &lists[i + 1]);
        } else if (!lists[i].beside) {
            put_list(s, &lists[i]);
        }
    }
    const uint32_t signs = s->row;
    put_signatures(s);
    /* what is signed stands on one page with the terms, where a page holds them, and is never
     * parted
     */
    book_keep(s->book, s->sheet, last, s->row);
    book_keep(s->book, s->sheet, signs - 2, s->row);
}

/* --- the drawings --- */

#define ACROSS      4
#define KIND_COLUMN 22.0  /* characters: some 120 points */
#define KIND_FREE   2.0   /* between them, so that words do not touch */
#define WIDTH       116.0 /* points of a drawing */
#define HEIGHT      100.0
#define DOTS        2.0
#define TO_96TH     (96.0 / 72.0) /* dots an inch that the workbook takes for granted, by points */

/* Its words, in the row of the words, and its drawing below them. */
static bool put_kind(struct client_sheet *s, const struct offer_kind *kind, uint16_t column,
                     struct image *image) {
    unsigned char *png = NULL;
    size_t size = 0;
    if (!draw_elevation_png(&kind->drawing, image, DETAIL_SMALL, &png, &size)) {
        return false;
    }
    const char *const alt =
        pool_words(&s->book->pool, "Elevation of kind %s: %s", kind->letter, kind->words);
    book_format(s->book, s->sheet, s->row, column, LOOK_WRAP, "%s  %s", kind->letter, kind->words);
    book_picture(s->book, s->sheet, s->row + 1, column, png, size, TO_96TH / DOTS, 2, alt);
    free(png);
    return true;
}

bool client_book_kinds(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    s->sheet = book_sheet(s->book, "Drawings", "Drawings", false);
    s->row = 0;
    for (uint16_t c = 0; c < ACROSS; c++) {
        book_width(s->book, s->sheet, (uint16_t)(2 * c), KIND_COLUMN);
        book_width(s->book, s->sheet, (uint16_t)(2 * c + 1), KIND_FREE);
    }
    client_book_span(s, 0, 2 * ACROSS - 1, LOOK_TITLE, CLIENT_KINDS_HEAD);
    client_book_repeat(s, s->row, s->row + 1);
    s->row += 2;
    struct image image;
    bool held = true;
    image_open(&image, WIDTH, HEIGHT, DOTS);
    for (size_t i = 0; held && i < o->kind_count; i++) {
        if (i > 0 && i % ACROSS == 0) {
            s->row += 2;
        }
        if (i % ACROSS == 0) {
            book_height(s->book, s->sheet, s->row + 1, HEIGHT + 16);
            book_text(s->book, s->sheet, s->row + 1, 0, LOOK_PLAIN, " ");
            book_keep(s->book, s->sheet, s->row, s->row + 1);
        }
        held = put_kind(s, &o->kinds[i], (uint16_t)(i % ACROSS * 2), &image);
    }
    image_close(&image);
    return held;
}
