/* SPDX-License-Identifier: MIT */
/* Every formula is ROUND(operation, decimals) over cells, which is what the tape computed in
 * integers.
 *
 * Sums over many cells are written as ranges, where operands stand in a column or row one after
 * another; a gap is no hindrance as long as no other number stands in it. */
#include "report/formula.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

struct spot {
    uint32_t row;
    uint16_t sheet, column;
};

struct formula_map {
    struct spot *by_column; /* sheet, column, row */
    struct spot *by_row;    /* sheet, row, column */
    size_t count;
};

struct writer {
    const struct book *book;
    const struct formula_map *map;
    uint16_t sheet;
    char *text;
    size_t used;
    bool whole; /* nothing missing, nothing cut */
};

/* --- which cells hold numbers
 * -------------------------------------------------------------------------------------------- */

static int order(int64_t a, int64_t b) {
    return a < b ? -1 : (a > b ? 1 : 0);
}

static int compare_columns(const void *x, const void *y) {
    const struct spot *const a = x;
    const struct spot *const b = y;
    const int first = order(a->sheet, b->sheet);
    const int second = first != 0 ? first : order(a->column, b->column);
    return second != 0 ? second : order(a->row, b->row);
}

static int compare_rows(const void *x, const void *y) {
    const struct spot *const a = x;
    const struct spot *const b = y;
    const int first = order(a->sheet, b->sheet);
    const int second = first != 0 ? first : order(a->row, b->row);
    return second != 0 ? second : order(a->column, b->column);
}

struct formula_map *formula_map_new(const struct book *book) {
    struct formula_map *const map = calloc(1, sizeof *map);
    if (map == NULL) {
        return NULL;
    }
    map->by_column = calloc(book->cell_count + 1, sizeof *map->by_column);
    map->by_row = calloc(book->cell_count + 1, sizeof *map->by_row);
    if (map->by_column == NULL || map->by_row == NULL) {
        formula_map_free(map);
        return NULL;
    }
    for (size_t i = 0; i < book->cell_count; i++) {
        const struct cell *const cell = &book->cells[i];
        if (cell->kind != CELL_TEXT) {
            const struct spot spot = {
                .row = cell->row, .sheet = cell->sheet, .column = cell->column};
            map->by_column[map->count] = spot;
            map->by_row[map->count++] = spot;
        }
    }
    qsort(map->by_column, map->count, sizeof *map->by_column, compare_columns);
    qsort(map->by_row, map->count, sizeof *map->by_row, compare_rows);
    return map;
}

void formula_map_free(struct formula_map *map) {
    if (map != NULL) {
        free(map->by_column);
        free(map->by_row);
        free(map);
    }
}

/* The place of the first spot that is not before `spot`. */
static size_t place_of(const struct spot *spots, size_t count, const struct spot *spot,
                       int (*compare)(const void *, const void *)) {
    size_t low = 0;
    size_t high = count;
    while (low < high) {
        const size_t middle = low + (high - low) / 2;
        if (compare(&spots[middle], spot) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

static bool same_column(const struct cell *a, const struct cell *b) {
    return a->sheet == b->sheet && a->column == b->column;
}

static bool same_row(const struct cell *a, const struct cell *b) {
    return a->sheet == b->sheet && a->row == b->row;
}

/* How many cells with numbers stand from a to b, which share a column or a row. */
static size_t numbers_between(const struct formula_map *map, const struct cell *a,
                              const struct cell *b) {
    const struct spot first = {.row = a->row, .sheet = a->sheet, .column = a->column};
    const struct spot last = {.row = b->row, .sheet = b->sheet, .column = b->column};
    if (same_column(a, b)) {
        return place_of(map->by_column, map->count, &last, compare_columns) -
               place_of(map->by_column, map->count, &first, compare_columns) + 1;
    }
    return place_of(map->by_row, map->count, &last, compare_rows) -
           place_of(map->by_row, map->count, &first, compare_rows) + 1;
}

/* --- writing
 * ----------------------------------------------------------------------------------------------------------------
 */

__attribute__((format(printf, 2, 3))) static void put(struct writer *w, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    const int size = vsnprintf(w->text + w->used, FORMULA_MOST - w->used, format, arguments);
    va_end(arguments);
    if (size < 0 || (size_t)size >= FORMULA_MOST - w->used) {
        w->whole = false;
        return;
    }
    w->used += (size_t)size;
}

static void column_letters(uint16_t column, char letters[4]) {
    if (column < 26) {
        letters[0] = (char)('A' + column);
        letters[1] = '\0';
    } else {
        letters[0] = (char)('A' + column / 26 - 1);
        letters[1] = (char)('A' + column % 26);
        letters[2] = '\0';
    }
}

void formula_reference(const struct book *book, uint16_t sheet, const struct cell *cell, char *text,
                       size_t size) {
    char letters[4];
    column_letters(cell->column, letters);
    if (cell->sheet == sheet) {
        (void)snprintf(text, size, "%s%u", letters, cell->row + 1);
    } else {
        (void)snprintf(text, size, "%s!%s%u", book->sheets[cell->sheet].name, letters,
                       cell->row + 1);
    }
}

static void put_cell(struct writer *w, const struct cell *cell) {
    char reference[64];
    if (cell == NULL) {
        w->whole = false;
        return;
    }
    formula_reference(w->book, w->sheet, cell, reference, sizeof reference);
    put(w, "%s", reference);
}

static const struct cell *home(const struct writer *w, fig figure) {
    return book_home(w->book, figure);
}

static const struct cell *operand_home(const struct writer *w, fig figure, size_t i) {
    return home(w, tape_operand(w->book->tape, figure, i).f);
}

static void put_range(struct writer *w, const struct cell *first, const struct cell *last) {
    char letters[4];
    put_cell(w, first);
    column_letters(last->column, letters);
    put(w, ":%s%u", letters, last->row + 1);
}

/* The operands step apart from i on that stand after each other in one column (or row) with nothing
 * else between: how many. */
static size_t run_length(const struct writer *w, fig figure, size_t i, size_t step, size_t count) {
    const struct cell *const first = operand_home(w, figure, i);
    const bool minus = tape_operand(w->book->tape, figure, i).minus;
    size_t length = 1;
    bool down = false;
    const struct cell *last = first;
    for (size_t k = i + step; first != NULL && k < count; k += step) {
        const struct cell *const next = operand_home(w, figure, k);
        if (next == NULL || tape_operand(w->book->tape, figure, k).minus != minus) {
            break;
        }
        const bool in_column = same_column(last, next) && next->row > last->row;
        const bool in_row = same_row(last, next) && next->column > last->column;
        if ((length == 1 && !in_column && !in_row) ||
            (length > 1 && (down ? !in_column : !in_row)) ||
            numbers_between(w->map, first, next) != length + 1) {
            break;
        }
        down = in_column;
        last = next;
        length++;
    }
    return length;
}

static void put_sum(struct writer *w, fig figure) {
    const size_t count = tape_operands(w->book->tape, figure);
    if (count == 0) {
        put(w, "0");
    }
    for (size_t i = 0; i < count && w->whole;) {
        const bool minus = tape_operand(w->book->tape, figure, i).minus;
        const size_t length = run_length(w, figure, i, 1, count);
        put(w, "%s", minus ? "-" : (i > 0 ? "+" : ""));
        if (length > 2) {
            put(w, "SUM(");
            put_range(w, operand_home(w, figure, i), operand_home(w, figure, i + length - 1));
            put(w, ")");
            i += length;
        } else {
            put_cell(w, operand_home(w, figure, i));
            i++;
        }
    }
}

/* Whether the runs of counts and of what is counted have the same shape, so that they may be
 * multiplied range by range. */
static bool same_shape(const struct writer *w, fig figure, size_t i, size_t length) {
    const struct cell *const count = operand_home(w, figure, i);
    const struct cell *const each = operand_home(w, figure, i + 1);
    for (size_t k = 1; k < length; k++) {
        const struct cell *const c = operand_home(w, figure, i + 2 * k);
        const struct cell *const e = operand_home(w, figure, i + 2 * k + 1);
        if (c->row - count->row != e->row - each->row ||
            c->column - count->column != e->column - each->column) {
            return false;
        }
    }
    return true;
}

/* Counts of rows that have nothing to be counted stand in the gaps of a range; the cells beside
 * them are empty and count as nothing. So only the run of what is counted must be free of other
 * numbers. */
static size_t product_run(const struct writer *w, fig figure, size_t i, size_t count) {
    size_t length = run_length(w, figure, i + 1, 2, count);
    while (length > 1) {
        bool homes = true;
        for (size_t k = 0; k < length; k++) {
            homes = homes && operand_home(w, figure, i + 2 * k) != NULL;
        }
        if (homes && same_shape(w, figure, i, length)) {
            break;
        }
        length = length / 2;
    }
    return length;
}

static void put_total(struct writer *w, fig figure) {
    const size_t count = tape_operands(w->book->tape, figure);
    if (count == 0) {
        put(w, "0");
    }
    for (size_t i = 0; i < count && w->whole;) {
        const size_t length = product_run(w, figure, i, count);
        put(w, "%s", i > 0 ? "+" : "");
        if (length > 2) {
            put(w, "SUMPRODUCT(");
            put_range(w, operand_home(w, figure, i), operand_home(w, figure, i + 2 * (length - 1)));
            put(w, ",");
            put_range(w, operand_home(w, figure, i + 1),
                      operand_home(w, figure, i + 2 * length - 1));
            put(w, ")");
            i += 2 * length;
        } else {
            put_cell(w, operand_home(w, figure, i));
            put(w, "*");
            put_cell(w, operand_home(w, figure, i + 1));
            i += 2;
        }
    }
}

static void put_ratio(struct writer *w, fig figure) {
    const size_t count = tape_operands(w->book->tape, figure);
    for (size_t i = 0; i < count; i++) {
        put(w, "%s", i == 0 ? "" : (tape_operand(w->book->tape, figure, i).minus ? "/" : "*"));
        put_cell(w, operand_home(w, figure, i));
    }
}

static void put_pick(struct writer *w, fig figure, bool upto) {
    const size_t rows = (tape_operands(w->book->tape, figure) - 1) / 2;
    for (size_t n = 0; n + 1 < rows; n++) {
        const size_t row = upto ? n : rows - 1 - n;
        put(w, "IF(");
        put_cell(w, operand_home(w, figure, 0));
        put(w, "%s", upto ? "<=" : ">=");
        put_cell(w, operand_home(w, figure, 1 + 2 * row));
        put(w, ",");
        put_cell(w, operand_home(w, figure, 2 + 2 * row));
        put(w, ",");
    }
    put_cell(w, operand_home(w, figure, 2 + 2 * (upto ? rows - 1 : 0)));
    for (size_t n = 0; n + 1 < rows; n++) {
        put(w, ")");
    }
}

static void put_pair(struct writer *w, fig figure, const char *function) {
    put(w, "%s(", function);
    put_cell(w, operand_home(w, figure, 0));
    put(w, ",");
    put_cell(w, operand_home(w, figure, 1));
    put(w, ")");
}

/* Up to a multiple: the inner ROUND takes away what doubles add to a whole number of steps. */
static void put_up(struct writer *w, fig figure) {
    put(w, "-INT(-ROUND(");
    put_cell(w, operand_home(w, figure, 0));
    put(w, "/");
    put_cell(w, operand_home(w, figure, 1));
    put(w, ",9))*");
    put_cell(w, operand_home(w, figure, 1));
}

static void put_operation(struct writer *w, fig figure) {
    switch ((enum figure_op)tape_figure(w->book->tape, figure)->op) {
    case OP_SUM:
        put_sum(w, figure);
        break;
    case OP_TOTAL:
        put_total(w, figure);
        break;
    case OP_RATIO:
        put_ratio(w, figure);
        break;
    case OP_LARGER:
        put_pair(w, figure, "MAX");
        break;
    case OP_SMALLER:
        put_pair(w, figure, "MIN");
        break;
    case OP_UP:
        put_up(w, figure);
        break;
    case OP_PICK_UPTO:
        put_pick(w, figure, true);
        break;
    case OP_PICK_FROM:
        put_pick(w, figure, false);
        break;
    case OP_GIVEN:
    case OP_CHOSEN:
    case OP_COUNT:
        w->whole = false;
        break;
    }
}

bool formula_write(const struct book *book, const struct formula_map *map, const struct cell *cell,
                   char *text) {
    struct writer writer = {
        .book = book, .map = map, .sheet = cell->sheet, .text = text, .whole = true};
    const enum figure_op op = (enum figure_op)tape_figure(book->tape, cell->figure)->op;
    if (op == OP_GIVEN || op == OP_CHOSEN) {
        return false;
    }
    put(&writer, "=ROUND(");
    put_operation(&writer, cell->figure);
    put(&writer, ",%u)", tape_figure(book->tape, cell->figure)->decimals);
    return writer.whole;
}
