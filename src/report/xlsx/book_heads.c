/* SPDX-License-Identifier: MIT */
/* Heads of columns stand as what is below them does, numbers right and words left: sheets needn't
 * tell, and both can't differ. */
#include "report/xlsx/book_binder.h"

#include "base/order.h"

#include <stdlib.h>

/* A head, and the highest cell below it. */
struct head {
    struct cell *cell;
    const struct cell *below; /* NULL: none yet */
};

static int by_place(const struct cell *a, const struct cell *b) {
    if (a->sheet != b->sheet) {
        return order_by_number(a->sheet, b->sheet);
    }
    return a->column != b->column ? order_by_number(a->column, b->column)
                                  : order_by_number(a->row, b->row);
}

static int heads_by_place(const void *a, const void *b) {
    return by_place(((const struct head *)a)->cell, ((const struct head *)b)->cell);
}

/* The last head above a cell in its column; NULL: there is none. heads: by place. */
static struct head *head_above(struct head *heads, size_t count, const struct cell *cell) {
    size_t first = 0;
    for (size_t end = count; first < end;) {
        const size_t middle = first + (end - first) / 2;
        if (by_place(heads[middle].cell, cell) < 0) {
            first = middle + 1;
        } else {
            end = middle;
        }
    }
    struct head *const head = first == 0 ? NULL : &heads[first - 1];
    return head != NULL && head->cell->sheet == cell->sheet && head->cell->column == cell->column
               ? head
               : NULL;
}

/* What runs over other columns is not of one. */
static bool is_of_column(const struct cell *cell) {
    return cell->look != LOOK_HEAD && cell->look != LOOK_SECTION && cell->look != LOOK_PART &&
           cell->look != LOOK_NOTE && (cell->kind != CELL_TEXT || cell->span == 0);
}

static enum look head_look(const struct cell *below) {
    if (below->kind != CELL_TEXT && below->kind != CELL_CHECK) {
        return LOOK_HEAD_RIGHT;
    }
    return below->look == LOOK_UNIT || below->look == LOOK_CHECK ? LOOK_HEAD_INDENTED : LOOK_HEAD;
}

bool binder_heads(struct binder *b) {
    struct book *const book = b->book;
    struct head *heads = NULL;
    size_t count = 0;
    size_t room = 0;
    bool failed = false;
    for (size_t i = 0; i < book->cell_count && !failed; i++) {
        struct cell *const cell = book_cell(book, i);
        if (cell->kind == CELL_TEXT && cell->look == LOOK_HEAD) {
            heads = array_grow(heads, &room, count + 1, sizeof *heads, &failed);
            if (!failed) {
                heads[count++] = (struct head){.cell = cell};
            }
        }
    }
    if (count > 0) {
        qsort(heads, count, sizeof *heads, heads_by_place);
    }
    for (size_t i = 0; i < book->cell_count && count > 0; i++) {
        const struct cell *const cell = book_cell(book, i);
        struct head *const head = is_of_column(cell) ? head_above(heads, count, cell) : NULL;
        if (head != NULL && (head->below == NULL || cell->row < head->below->row)) {
            head->below = cell;
        }
    }
    for (size_t i = 0; i < count; i++) {
        heads[i].cell->look =
            (uint8_t)(heads[i].below == NULL ? LOOK_HEAD : head_look(heads[i].below));
    }
    free(heads);
    return !failed;
}
