/* SPDX-License-Identifier: MIT */
/* Every door of the list as it looks, with its sizes.  Rows that look alike share a drawing. */
#include "report/doors/door_looks.h"
#include "report/draw/draw.h"
#include "report/shop/paper.h"

#include <stdlib.h>

#define ACROSS  3
#define COLUMN  34.0  /* characters: some 184 points */
#define WIDTH   178.0 /* points of a drawing */
#define HEIGHT  170.0
#define WORDS   27.0 /* for two lines above it */
#define DOTS    2.0
#define TO_96TH (96.0 / 72.0)
/* A workbook with more pictures is slow to open; `doorcost draw` has no such limit. */
#define MOST_DRAWINGS ((size_t)96)

static bool put_drawing(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                        const struct door_look *look, struct image *image) {
    struct book *const book = paper->book;
    unsigned char *png = NULL;
    size_t bytes = 0;
    if (!draw_elevation_png(&look->elevation.drawing, image, DETAIL_FULL, &png, &bytes)) {
        return false;
    }
    book_format(book, sheet, row, column, LOOK_WRAP, "%s: %s", look->ids, look->words);
    book_picture(book, sheet, row, column, png, bytes, TO_96TH / DOTS, WORDS, look->alt);
    free(png);
    return true;
}

static void put_looks(const struct paper *paper, uint16_t sheet, uint32_t row,
                      const struct door_looks *looks) {
    struct book *const book = paper->book;
    struct image image;
    image_open(&image, WIDTH, HEIGHT, DOTS);
    for (size_t i = 0; !book->failed && i < looks->count && i < MOST_DRAWINGS; i++) {
        if (i > 0 && i % ACROSS == 0) {
            row++;
        }
        book_height(book, sheet, row, WORDS + HEIGHT + 8);
        book->failed =
            stop_asked(book->stop) ||
            !put_drawing(paper, sheet, row, (uint16_t)(i % ACROSS), &looks->list[i], &image) ||
            book->failed;
    }
    image_close(&image);
    if (looks->count > MOST_DRAWINGS) {
        book_format(book, sheet, row + 2, 0, LOOK_NOTE,
                    "%zu more are not drawn here: 'doorcost draw' draws every row.",
                    looks->count - MOST_DRAWINGS);
    }
}

void sheet_elevations(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    const uint32_t row = paper_title(paper, sheet, 0,
                                     "Finished sizes, seen from the front; hinge marks show side "
                                     "and number, not their place; dashed lines meet at the hinged "
                                     "edge.");
    for (uint16_t c = 0; c < ACROSS; c++) {
        book_width(book, sheet, c, COLUMN);
    }
    struct door_looks looks;
    if (door_looks_make(&looks, paper->base, MOST_DRAWINGS, &book->pool)) {
        put_looks(paper, sheet, row, &looks);
    } else {
        book->failed = true;
    }
}
