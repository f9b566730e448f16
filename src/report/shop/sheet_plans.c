/* SPDX-License-Identifier: MIT */
/* The cutting plans as pictures: the same pages as `doorcost plan` draws. */
#include "report/plan/plan_pages.h"
#include "report/shop/paper.h"

#include <stdlib.h>

#define COLUMN  96.0 /* characters: some 508 points, the width of a page */
#define WORDS   14.0 /* above a picture */
#define TO_96TH (96.0 / 72.0)
/* A workbook with more pictures is slow to open; `doorcost plan` has no such limit. */
#define MOST_PAGES ((size_t)60)

static bool put_page(const struct paper *paper, struct plan_pages *pages, size_t at,
                     struct image *image, uint16_t sheet, uint32_t row) {
    const char *const words = plan_pages_words(pages, at);
    unsigned char *png = NULL;
    size_t bytes = 0;
    if (!plan_pages_png(pages, at, image, &png, &bytes)) {
        return false;
    }
    const char *const alt =
        pool_format(&paper->book->pool, "Cutting plan of %s with its parts and cuts", words);
    book_format(paper->book, sheet, row, 0, LOOK_WRAP, "%s (" FIELD_CHOSEN ")", words);
    book_picture(paper->book, sheet, row, 0, png, bytes, TO_96TH / PLAN_PAGES_DOTS, WORDS,
                 alt == NULL ? "" : alt);
    free(png);
    return true;
}

void sheet_plans(const struct paper *paper, uint16_t sheet) {
    struct book *const book = paper->book;
    uint32_t row = paper_title(paper, sheet, 0,
                               "Chosen by the program for the sizes and rates of this run; whether "
                               "they still hold, the checks on Lumber and Sheets tell.");
    struct plan_pages pages;
    bool held = plan_pages_make(&pages, paper->base, MOST_PAGES);
    struct image image;
    image_open(&image, pages.width, pages.height, PLAN_PAGES_DOTS);
    book_width(book, sheet, 0, COLUMN);
    for (size_t i = 0; held && i < pages.count; i++) {
        book_height(book, sheet, row, WORDS + pages.height + 3);
        held = !stop_asked(book->stop) && put_page(paper, &pages, i, &image, sheet, row++);
    }
    image_close(&image);
    if (pages.count == 0) {
        book_text(book, sheet, row, 0, LOOK_PLAIN, "nothing is cut by plan");
    } else if (pages.more) {
        book_text(book, sheet, row, 0, LOOK_NOTE,
                  "The rest is not drawn here: 'doorcost plan' draws all of it.");
    }
    book->failed = book->failed || !held;
    plan_pages_clear(&pages);
}
