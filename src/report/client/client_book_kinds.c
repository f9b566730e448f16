/* SPDX-License-Identifier: MIT */
#include "report/client/client_book_parts.h"
#include "report/draw/draw.h"

#include <stdlib.h>

#define ACROSS  3
#define COLUMN  26.0  /* characters: some 148 points */
#define BETWEEN 4.0   /* between them, so that words do not touch */
#define WIDTH   140.0 /* points of a drawing */
#define HEIGHT  120.0
#define WORDS   27.0 /* for two lines above it */
#define DOTS    2.0
#define TO_96TH (96.0 / 72.0) /* dots an inch that the workbook takes for granted, by points */

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
    book_picture(s->book, s->sheet, s->row, column, png, size, TO_96TH / DOTS, WORDS, alt);
    free(png);
    return true;
}

bool client_book_kinds(struct client_sheet *s) {
    const struct offer *const o = s->offer;
    s->sheet = book_sheet(s->book, "Drawings", "The kinds of doors and fronts", false);
    s->row = 0;
    book_text(s->book, s->sheet, s->row++, 0, LOOK_TITLE, "The kinds of doors and fronts");
    book_text(s->book, s->sheet, s->row, 0, LOOK_NOTE,
              "The letter stands beside each door of the list. Not to one scale.");
    for (uint16_t c = 0; c < ACROSS; c++) {
        book_width(s->book, s->sheet, (uint16_t)(2 * c), COLUMN);
        book_width(s->book, s->sheet, (uint16_t)(2 * c + 1), BETWEEN);
    }
    s->row += 2;
    struct image image;
    bool held = true;
    image_open(&image, WIDTH, HEIGHT, DOTS);
    for (size_t i = 0; held && i < o->kind_count; i++) {
        if (i > 0 && i % ACROSS == 0) {
            s->row++;
        }
        book_height(s->book, s->sheet, s->row, WORDS + HEIGHT + 14);
        held = put_kind(s, &o->kinds[i], (uint16_t)(i % ACROSS * 2), &image);
    }
    image_close(&image);
    return held;
}
