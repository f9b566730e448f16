/* SPDX-License-Identifier: MIT */
/* The order in which cells are written.  The library keeps every cell of a sheet until the file is
 * closed, which is most of what a long list takes; of a sheet that it was told to keep but one row
 * of, it wants cells row after row. So the cells of such sheets are put in order, by counting how
 * many each row has, and what is known only as others are written, the parts of long sums, goes
 * below the last row at the end.  Texts of these sheets stand in their cells, without the list of
 * texts. */
#include "report/xlsx/book_binder.h"
#include "report/xlsx/book_objects.h"
#include "report/xlsx/book_proof.h"

#include <stdlib.h>

/* From here on a sheet is large: some 20 MB in memory. */
#define LARGE_CELLS 40000

/* Which cells are written when. */
struct order {
    uint32_t *row_ends; /* of the rows of the large sheets, one sheet behind the other: where the
                           cells of each end in `cells` */
    uint32_t first_row[BOOK_MOST_SHEETS]; /* of a sheet among these */
    uint32_t *cells;                      /* of the large sheets, row after row */
    uint32_t *left;                       /* of each block of the book: cells not yet written */
};

static void order_clear(struct order *order) {
    free(order->row_ends);
    free(order->cells);
    free(order->left);
}

/* Sorts the cells of the large sheets; those of one row stay as they were added. false: memory ran
 * out. */
static bool order_make(struct order *order, const struct binder *b) {
    const size_t count = b->book->cell_count;
    size_t rows = 0;
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        order->first_row[s] = (uint32_t)rows;
        rows += b->large[s] ? b->rows[s] : 0;
    }
    order->row_ends = calloc(rows + 1, sizeof *order->row_ends);
    order->cells = calloc(count + 1, sizeof *order->cells);
    order->left = calloc(count / BOOK_BLOCK + 1, sizeof *order->left);
    if (order->row_ends == NULL || order->cells == NULL || order->left == NULL) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        const struct cell *const cell = book_cell(b->book, i);
        order->left[i / BOOK_BLOCK]++;
        if (b->large[cell->sheet]) {
            order->row_ends[order->first_row[cell->sheet] + cell->row + 1]++;
        }
    }
    for (size_t r = 0; r < rows; r++) {
        order->row_ends[r + 1] += order->row_ends[r];
    }
    /* each row's end stands where it begins until its cells are put there */
    for (size_t i = 0; i < count; i++) {
        const struct cell *const cell = book_cell(b->book, i);
        if (b->large[cell->sheet]) {
            order->cells[order->row_ends[order->first_row[cell->sheet] + cell->row]++] =
                (uint32_t)i;
        }
    }
    return true;
}

/* A cell is written: its block is freed when all of it are. */
static void written(struct order *order, struct book *book, size_t i) {
    if (--order->left[i / BOOK_BLOCK] == 0) {
        book_release(book, i / BOOK_BLOCK);
    }
}

/* Writes a row of a large sheet. */
static void write_row(struct binder *b, struct order *order, uint16_t s, uint32_t row,
                      binder_cell_write *write, char *formula) {
    const uint32_t at = order->first_row[s] + row;
    worksheet_set_row(b->sheets[s], row, b->heights[s][row], NULL);
    for (size_t i = 0; i < b->book->link_count; i++) { /* a few a sheet */
        const struct book_link *const link = &b->book->links[i];
        if (link->sheet == s && link->row == row) {
            book_put_link(b->book, link, b->sheets[s]);
        }
    }
    for (uint32_t k = at == 0 ? 0 : order->row_ends[at - 1]; k < order->row_ends[at]; k++) {
        const size_t i = order->cells[k];
        write(b, book_cell(b->book, i), formula);
        written(order, b->book, i);
    }
}

static bool write_large(struct binder *b, struct order *order, binder_cell_write *write,
                        char *formula, size_t *cells) {
    for (uint16_t s = 0; s < b->book->sheet_count; s++) {
        for (uint32_t row = 0; b->large[s] && row < b->rows[s]; row++) {
            write_row(b, order, s, row, write, formula);
            *cells += book_proof_row(b->sheets[s]);
            if (stop_asked(b->book->stop)) {
                return false;
            }
        }
    }
    return true;
}

/* The parts of long sums, one below the other. */
static void write_parts(struct binder *b, size_t *cells) {
    lxw_worksheet *const sheet = b->sheets[b->book->spare_sheet];
    const uint32_t first = b->spare_row - (uint32_t)b->part_count;
    for (size_t i = 0; i < b->part_count; i++) {
        worksheet_write_formula_num(sheet, (lxw_row_t)(first + i), 0, b->parts[i].formula, NULL,
                                    b->parts[i].value);
        *cells += b->large[b->book->spare_sheet] ? book_proof_row(sheet) : 0;
    }
}

bool binder_sheets(struct binder *b) {
    const struct book *const book = b->book;
    size_t counts[BOOK_MOST_SHEETS] = {0};
    for (size_t i = 0; i < book->cell_count; i++) {
        counts[book_cell(book, i)->sheet]++;
    }
    for (uint16_t s = 0; s < book->sheet_count; s++) {
        b->large[s] = counts[s] >= LARGE_CELLS;
    }
    for (size_t i = 0; i < book->picture_count; i++) {
        b->large[book->pictures[i].sheet] = false;
    }
    for (size_t i = 0; i < book->chart_count; i++) {
        b->large[book->charts[i].sheet] = false;
    }
    for (uint16_t s = 0; s < book->sheet_count; s++) {
        b->workbook->options.constant_memory = b->large[s];
        b->sheets[s] = workbook_add_worksheet(b->workbook, book->sheets[s].name);
        if (b->sheets[s] == NULL) {
            return false;
        }
    }
    return true;
}

bool binder_cells(struct binder *b, binder_cell_write *write, char *formula, size_t *cells) {
    struct order order = {0};
    bool held = order_make(&order, b);
    for (size_t i = 0; held && i < b->book->cell_count; i++) {
        const struct cell *const cell = book_cell(b->book, i);
        if (!b->large[cell->sheet]) {
            write(b, cell, formula);
            written(&order, b->book, i);
        }
        held = (i + 1) % BOOK_BLOCK != 0 || !stop_asked(b->book->stop);
    }
    held = held && write_large(b, &order, write, formula, cells);
    if (held) {
        write_parts(b, cells);
        *cells += book_proof_cells(b->workbook);
    }
    order_clear(&order);
    return held && !b->part_failed;
}
