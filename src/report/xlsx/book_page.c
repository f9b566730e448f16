/* SPDX-License-Identifier: MIT */
/* The printed pages of a sheet.  A sheet is printed as wide as its paper, but never so small that
 * it can't be read: it is turned on its side, and what then is still too wide goes over several
 * pages, each with the first column.  What belongs together is not parted where a page can hold it.
 */
#include "report/xlsx/book_binder.h"

#include "base/order.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define LEAST_SCALE 0.82 /* letters of 9 points are then just over 7 */
#define MARGIN_SIDE 0.55 /* inches */
#define MARGIN_TOP  0.6
#define MARGIN_FOOT 0.7
/* No two programs measure quite the same: this much of a page is used, and every break is set by
 * hand, so that none falls between what belongs together. */
#define SPARE 0.97
/* A column that nothing stands in, in points. */
#define EMPTY_COLUMN 48.0
/* More breaks than these a sheet can't hold. */
#define MOST_BREAKS 1000
/* A last page that holds less than this is not worth a page. */
#define SCRAP       0.3
#define MOST_GROUPS 64
/* 255 letters of at most 4 bytes. */
#define FOOTER_BYTES 1024

struct layout {
    const struct binder *b;
    const struct book_sheet *sheet;
    uint16_t index;
    bool landscape;
    double scale;
    double wide, high;         /* points of the paper that are printed on */
    struct book_block *blocks; /* of the sheet, by their first rows */
};

static double between(const struct layout *l, uint16_t first, uint16_t end) {
    return binder_between(l->b, l->index, first, end);
}

/* The width of all columns, and of the charts. */
static double sheet_width(const struct layout *l) {
    double wide = between(l, 0, l->b->columns[l->index]);
    for (size_t i = 0; i < l->b->book->chart_count; i++) {
        const struct book_chart *const chart = &l->b->book->charts[i];
        const double right = between(l, 0, chart->column) + BOOK_CHART_WIDTH;
        wide = chart->sheet == l->index && right > wide ? right : wide;
    }
    return wide;
}

static void turn(struct layout *l, bool landscape) {
    const bool letter = l->b->facts->letter;
    const double side = letter ? 612 : 595;
    const double length = letter ? 792 : 842;
    l->landscape = landscape;
    l->wide = (landscape ? length : side) - 2 * 72 * MARGIN_SIDE;
    l->high = (landscape ? side : length) - 72 * (MARGIN_TOP + MARGIN_FOOT);
}

/* --- pages below each other --- */

static uint32_t printed_end(const struct layout *l) {
    const uint32_t rows = l->b->rows[l->index];
    return l->sheet->print_end > 0 && l->sheet->print_end < rows ? l->sheet->print_end : rows;
}

static int by_first_row(const void *x, const void *y) {
    return order_by_number(((const struct book_block *)x)->first,
                           ((const struct book_block *)y)->first);
}

static double block_height(const struct layout *l, const struct book_block *block) {
    double high = 0;
    for (uint32_t r = block->first; r <= block->last && r < l->b->rows[l->index]; r++) {
        high += l->b->heights[l->index][r];
    }
    return high;
}

/* The largest of the blocks from *next on that begin at a row; 0: none does. Rows are asked for one
 * after another: *next goes on with them. */
static double block_at(const struct layout *l, size_t *next, uint32_t row, double room) {
    double best = 0;
    for (; *next < l->sheet->block_count && l->blocks[*next].first == row; (*next)++) {
        const double high = block_height(l, &l->blocks[*next]);
        best = high > best && high <= room ? high : best;
    }
    return best;
}

/* Whether a page is to start before a row; *next as for block_at. */
static bool broken_by_hand(const struct layout *l, size_t *next, uint32_t row) {
    const bool broken = *next < l->sheet->break_count && l->sheet->breaks[*next] == row;
    *next += broken ? 1 : 0;
    return broken;
}

/* Pages at a scale; breaks: takes the rows before which a page starts, 0 after the last, where not
 * NULL.  *last: how much of the last page is used. */
static size_t count_pages(const struct layout *l, double scale, uint32_t *breaks, double *last) {
    const double *const heights = l->b->heights[l->index];
    const double page = l->high / scale * SPARE;
    double heads = 0;
    size_t pages = 1;
    size_t count = 0;
    for (uint32_t r = l->sheet->repeat_first;
         l->sheet->repeat_last > 0 && r <= l->sheet->repeat_last && r < l->b->rows[l->index]; r++) {
        heads += heights[r];
    }
    size_t next_block = 0;
    size_t next_break = 0;
    double used = 0;
    for (uint32_t r = l->sheet->print_from; r < printed_end(l); r++) {
        const double block = block_at(l, &next_block, r, page - heads);
        const bool by_hand = broken_by_hand(l, &next_break, r);
        const bool starts = r > l->sheet->print_from && (by_hand || used + heights[r] > page ||
                                                         (block > 0 && used + block > page));
        if (starts) {
            pages++;
            used = heads;
        }
        if (starts && breaks != NULL && count < MOST_BREAKS) {
            breaks[count++] = r;
        }
        used += heights[r];
    }
    if (breaks != NULL) {
        breaks[count] = 0;
    }
    *last = (used - heads) / page;
    return pages;
}

/* A little smaller, where that saves a last page with next to nothing on it. */
static void save_page(struct layout *l) {
    double last;
    const size_t pages = count_pages(l, l->scale, NULL, &last);
    if (pages == 1 || last > SCRAP) {
        return;
    }
    for (int less = 1; l->scale - less / 100.0 >= LEAST_SCALE; less++) {
        if (count_pages(l, l->scale - less / 100.0, NULL, &last) < pages) {
            l->scale -= less / 100.0;
            return;
        }
    }
}

/* --- pages beside each other --- */

/* Breaks columns into groups that fit, about `goal` wide each; returns how many groups. */
static size_t break_columns(const struct layout *l, uint16_t repeated, double goal,
                            lxw_col_t *breaks) {
    const double room = l->wide / l->scale * SPARE - between(l, 0, repeated);
    size_t count = 0;
    double used = 0;
    for (uint16_t c = repeated; c < l->b->columns[l->index] && count < MOST_GROUPS; c++) {
        const double wide = between(l, c, (uint16_t)(c + 1));
        if (used > 0 && (used + wide > room || used + wide / 2 > goal)) {
            breaks[count++] = c;
            used = 0;
        }
        used += wide;
    }
    breaks[count] = 0;
    return count + 1;
}

/* Columns over as few pages as hold them, about as many on each. */
static void group_columns(const struct layout *l) {
    lxw_col_t breaks[MOST_GROUPS + 1] = {0};
    const uint16_t repeated = l->sheet->freeze_column > 0 ? l->sheet->freeze_column : 1;
    const double all = between(l, repeated, l->b->columns[l->index]);
    const size_t least = break_columns(l, repeated, all, breaks);
    double goal = all / (double)least;
    while (break_columns(l, repeated, goal, breaks) > least && goal < all) {
        goal *= 1.02;
    }
    worksheet_repeat_columns(l->b->sheets[l->index], 0, (lxw_col_t)(repeated - 1));
    if (breaks[0] != 0) {
        worksheet_set_v_pagebreaks(l->b->sheets[l->index], breaks);
    }
}

/* What of a sheet is printed. A blank cell far off, as programs print a sheet without a print area
 * whole; of one whose first rows stay on screen the rest, words that run over its last column with
 * it. */
static void set_print_area(const struct layout *l) {
    lxw_worksheet *const sheet = l->b->sheets[l->index];
    if (l->sheet->on_screen) {
        worksheet_print_area(sheet, 0, BOOK_MOST_COLUMNS - 1, 0, BOOK_MOST_COLUMNS - 1);
        return;
    }
    const uint32_t rows = printed_end(l);
    if (l->sheet->print_from == 0 || rows <= l->sheet->print_from) {
        return;
    }
    uint16_t columns = l->b->columns[l->index];
    const double words = l->b->words_end[l->index];
    for (double end = sheet_width(l); end < words && columns < BOOK_MOST_COLUMNS; columns++) {
        end += EMPTY_COLUMN;
    }
    worksheet_print_area(sheet, l->sheet->print_from, 0, rows - 1, (lxw_col_t)(columns - 1));
}

/* The heading rows of all pages. breaks: before which rows these start. */
static void repeat_heads(const struct layout *l, const uint32_t *breaks) {
    const struct book_sheet *const s = l->sheet;
    const bool headed = s->heads_end == 0 || (breaks[0] != 0 && breaks[0] < s->heads_end);
    const uint32_t last = headed ? s->repeat_last : s->repeat_last - 1;
    if (s->repeat_last > 0 && last >= s->repeat_first) {
        worksheet_repeat_rows(l->b->sheets[l->index], s->repeat_first, last);
    }
}

/* Fits the sheet to its paper. */
static bool fit(struct layout *l) {
    const double wide = sheet_width(l);
    lxw_worksheet *const sheet = l->b->sheets[l->index];
    uint32_t *const breaks = calloc((size_t)l->b->rows[l->index] + 1, sizeof *breaks);
    double last;
    if (breaks == NULL) {
        return false;
    }
    turn(l, l->sheet->landscape);
    if (l->wide * 0.98 / wide < LEAST_SCALE) {
        turn(l, true);
    }
    const bool folded = l->wide * 0.98 / wide < LEAST_SCALE;
    l->scale = folded ? LEAST_SCALE : l->wide * 0.98 / wide;
    const double words = folded ? 0 : l->b->words_end[l->index];
    if (words > wide && l->wide * 0.98 / words < l->scale) {
        l->scale = l->wide * 0.98 / words;
        l->scale = l->scale < LEAST_SCALE ? LEAST_SCALE : l->scale;
    }
    l->scale = l->scale > 1 ? 1 : l->scale;
    save_page(l);
    if (l->landscape) {
        worksheet_set_landscape(sheet);
    }
    (void)count_pages(l, l->scale, breaks, &last);
    repeat_heads(l, breaks);
    worksheet_set_print_scale(sheet, (uint16_t)(l->scale * 100));
    if (folded) {
        group_columns(l);
    }
    if (breaks[0] != 0) {
        worksheet_set_h_pagebreaks(sheet, breaks);
    }
    free(breaks);
    return true;
}

bool binder_page(const struct binder *b, uint16_t index) {
    const struct book_sheet *const s = &b->book->sheets[index];
    lxw_worksheet *const sheet = b->sheets[index];
    struct layout l = {.b = b, .sheet = s, .index = index};
    char footer[FOOTER_BYTES];
    worksheet_set_paper(sheet, b->facts->letter ? 1 : 9);
    worksheet_set_margins(sheet, MARGIN_SIDE, MARGIN_SIDE, MARGIN_TOP, MARGIN_FOOT);
    (void)snprintf(footer, sizeof footer, "&L&8%s&C&8%s&R&8page &P of &N", b->facts->footer,
                   s->title);
    worksheet_set_footer(sheet, footer);
    worksheet_gridlines(sheet, LXW_HIDE_ALL_GRIDLINES);
    if (s->freeze_row > 0 || s->freeze_column > 0) {
        worksheet_freeze_panes(sheet, s->freeze_row, s->freeze_column);
    }
    if (b->book->protect) {
        lxw_protection may = {.format_columns = 1, .format_rows = 1, .format_cells = 1};
        worksheet_protect(sheet, NULL, &may);
    }
    l.blocks = calloc(s->block_count + 1, sizeof *l.blocks);
    if (l.blocks != NULL && s->block_count > 0) {
        memcpy(l.blocks, s->blocks, s->block_count * sizeof *l.blocks);
        qsort(l.blocks, s->block_count, sizeof *l.blocks, by_first_row);
    }
    const bool fitted = l.blocks != NULL && fit(&l);
    set_print_area(&l);
    free(l.blocks);
    return fitted;
}
