/* SPDX-License-Identifier: MIT */
/* What lies on sheets beside cells: pictures, charts, links, heights of rows. */
#include "report/xlsx/book.h"

#include "base/text.h"

#include <assert.h>
#include <ctype.h>
#include <string.h>

/* Longer words would run into those in the middle of the footer. */
#define FOOTER_LETTERS ((size_t)45)
/* A footer may have 255 letters, codes among them; this leaves enough for the program's own. */
#define FOOTER_CODED ((size_t)180)

void book_picture(struct book *book, uint16_t sheet, uint32_t row, uint16_t column,
                  const unsigned char *png, size_t size, double scale, double below,
                  const char *alt) {
    assert(alt != NULL && alt[0] != '\0');
    char *const bytes = pool_text(&book->pool, (const char *)png, size);
    const char *const words = pool_text(&book->pool, alt, strlen(alt));
    book->failed = book->failed || bytes == NULL || words == NULL;
    book->pictures = array_grow(book->pictures, &book->picture_room, book->picture_count + 1,
                                sizeof *book->pictures, &book->failed);
    if (book->failed) {
        return;
    }
    book->pictures[book->picture_count++] =
        (struct book_picture){.sheet = sheet,
                              .column = column,
                              .row = row,
                              .png = (const unsigned char *)bytes,
                              .size = size,
                              .scale = scale,
                              .below = below,
                              .alt = words};
}

void book_link(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, uint16_t to) {
    book_text(book, sheet, row, column, LOOK_LINK, book->sheets[to].name);
    book->links = array_grow(book->links, &book->link_room, book->link_count + 1,
                             sizeof *book->links, &book->failed);
    if (book->failed) {
        return;
    }
    book->links[book->link_count++] =
        (struct book_link){.row = row, .sheet = sheet, .column = column, .to = to};
}

fig book_figure_at(const struct book *book, uint16_t sheet, const char *place) {
    uint64_t column = 0;
    uint64_t row = 0;
    const char *c = place + (*place == '$' ? 1 : 0);
    for (; isalpha((unsigned char)*c) && column < UINT16_MAX; c++) {
        column = column * 26 + (uint64_t)(toupper((unsigned char)*c) - 'A' + 1);
    }
    c += *c == '$' ? 1 : 0;
    for (; isdigit((unsigned char)*c) && row < UINT32_MAX; c++) {
        row = row * 10 + (uint64_t)(*c - '0');
    }
    for (size_t i = 0; *c == '\0' && column > 0 && row > 0 && i < book->cell_count; i++) {
        const struct cell *const cell = book_cell(book, i);
        if (cell->sheet == sheet && cell->row == row - 1 && cell->column == column - 1 &&
            (cell->kind == CELL_HOME || cell->kind == CELL_MENTION)) {
            return cell->figure;
        }
    }
    return (fig){0};
}

void book_height(struct book *book, uint16_t sheet, uint32_t row, double points) {
    book->heights = array_grow(book->heights, &book->height_room, book->height_count + 1,
                               sizeof *book->heights, &book->failed);
    if (book->failed) {
        return;
    }
    book->heights[book->height_count++] =
        (struct book_height){.sheet = sheet, .row = row, .points = points};
}

void book_keep(struct book *book, uint16_t sheet, uint32_t first, uint32_t last) {
    struct book_sheet *const s = &book->sheets[sheet];
    s->blocks =
        array_grow(s->blocks, &s->block_room, s->block_count + 1, sizeof *s->blocks, &book->failed);
    if (book->failed) {
        return;
    }
    s->blocks[s->block_count++] = (struct book_block){.first = first, .last = last};
}

/* The code of the font that the footer has anyhow: it parts letters that would be a code. */
#define NO_CHANGE "&\"Arial,Regular\""

/* `&` starts a code in a footer; two of them are one.  The library takes `&G` and `&[Picture]` for
 * a picture even behind another `&`, and a digit first would be one of the size of letters. */
static char *without_codes(struct pool *pool, const char *text) {
    char *const out = pool_take(pool, (2 + sizeof NO_CHANGE) * (strlen(text) + 1), 1);
    size_t used = 0;
    for (const char *c = text; out != NULL && *c != '\0'; c++) {
        const bool size = c == text && *c >= '0' && *c <= '9';
        const bool picture = c > text && c[-1] == '&' && (*c == 'G' || *c == '[');
        if (size || picture) {
            memcpy(out + used, NO_CHANGE, sizeof NO_CHANGE - 1);
            used += sizeof NO_CHANGE - 1;
        }
        out[used++] = *c;
        if (*c == '&') {
            out[used++] = '&';
        }
    }
    return out;
}

const char *book_footer(struct pool *pool, const char *text) {
    const char *out = NULL;
    for (size_t letters = FOOTER_LETTERS; out == NULL || text_units(out) > FOOTER_CODED;
         letters--) {
        const char *const cut = text_cut(pool, text, letters);
        out = cut == NULL ? NULL : without_codes(pool, cut);
        if (out == NULL) {
            return NULL;
        }
    }
    return out;
}

const char *book_footer_or(struct pool *pool, const char *text, const char *shorter) {
    return book_footer(pool, text_units(text) <= FOOTER_LETTERS ? text : shorter);
}

double book_chart_height(const struct book_chart *chart) {
    const double bars = 60 + 14 * (double)(chart->last - chart->first + 1);
    return chart->kind == CHART_BARS && bars > 216 ? bars : 216;
}

void book_chart(struct book *book, const struct book_chart *chart) {
    assert(chart->alt != NULL && chart->alt[0] != '\0' && chart->first <= chart->last);
    struct book_chart copy = *chart;
    copy.title = pool_text(&book->pool, chart->title, strlen(chart->title));
    copy.axis = pool_text(&book->pool, chart->axis, strlen(chart->axis));
    copy.alt = pool_text(&book->pool, chart->alt, strlen(chart->alt));
    book->failed = book->failed || pool_failed(&book->pool);
    book->charts = array_grow(book->charts, &book->chart_room, book->chart_count + 1,
                              sizeof *book->charts, &book->failed);
    if (book->failed) {
        return;
    }
    book->charts[book->chart_count++] = copy;
}
