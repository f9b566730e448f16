/* SPDX-License-Identifier: MIT */
/* Every formula is ROUND(operation, decimals) over cells, which is what the tape computed in
 * integers.
 *
 * Sums over many cells are written as ranges, where operands stand in a column or row one after
 * another; a gap is no hindrance as long as no other number stands in it. */
#include "report/xlsx/formula.h"

#include "base/order.h"
#include "report/xlsx/formula_map.h"

#include <stdlib.h>
#include <string.h>

struct writer {
    const struct book *book;
    const struct formula_map *map;
    uint16_t sheet;
    char *text;
    size_t used;
    bool whole; /* nothing missing, nothing cut */
    bool too_long;
};

/* SUMPRODUCT over two ranges of other sheets, with room to spare for the end of the formula. */
#define LONGEST_TERM 200

static void put_text(struct writer *w, const char *text, size_t size) {
    if (size >= FORMULA_MOST - w->used) {
        w->whole = false;
        return;
    }
    memcpy(w->text + w->used, text, size + 1);
    w->used += size;
}

static void put(struct writer *w, const char *words) {
    put_text(w, words, strlen(words));
}

/* A number with its end into text, which has room for it; returns its digits. */
static size_t write_number(uint32_t number, char *text) {
    size_t size = 1;
    for (uint32_t rest = number; rest > 9; rest /= 10) {
        size++;
    }
    text[size] = '\0';
    for (size_t i = size; i-- > 0; number /= 10) {
        text[i] = (char)('0' + number % 10);
    }
    return size;
}

static void put_number(struct writer *w, uint32_t number) {
    char text[16];
    const size_t size = write_number(number, text);
    put_text(w, text, size);
}

/* Cells are most of a formula, so they are put together by hand. Returns the size; text: room for
 * REFERENCE_MOST. */
static size_t reference(const char *sheet, uint16_t column, uint32_t row, char *text) {
    size_t used = 0;
    if (sheet != NULL) {
        used = strlen(sheet);
        memcpy(text, sheet, used);
        text[used++] = '!';
    }
    if (column >= 26) {
        text[used++] = (char)('A' + column / 26 - 1);
    }
    text[used++] = (char)('A' + column % 26);
    return used + write_number(row + 1, text + used);
}

size_t formula_reference(const struct book *book, uint16_t sheet, const struct home *home,
                         char text[REFERENCE_MOST]) {
    const char *const name = home->sheet == sheet ? NULL : book->sheets[home->sheet].name;
    return reference(name, home->column, home->row, text);
}

static void put_cell(struct writer *w, const struct home *cell) {
    char text[REFERENCE_MOST];
    if (cell == NULL) {
        w->whole = false;
        return;
    }
    const size_t size = formula_reference(w->book, w->sheet, cell, text);
    put_text(w, text, size);
}

static const struct home *home(const struct writer *w, fig figure) {
    return book_home(w->book, figure);
}

static const struct home *operand_home(const struct writer *w, fig figure, size_t i) {
    return home(w, tape_operand(w->book->tape, figure, i).f);
}

static void put_range(struct writer *w, const struct home *first, const struct home *last) {
    char text[REFERENCE_MOST] = ":";
    put_cell(w, first);
    put_text(w, text, 1 + reference(NULL, last->column, last->row, text + 1));
}

/* One term of a sum, or pair of a total: where in the operands it stands. */
struct term {
    const struct home *count; /* of a total; else NULL */
    const struct home *cell;  /* what is added */
    fig times, added;         /* the figures there */
    bool minus;
};

static int compare_terms(const void *x, const void *y) {
    const struct term *const a = x;
    const struct term *const b = y;
    const int first = order_by_number(a->cell->sheet, b->cell->sheet);
    const int second = first != 0 ? first : order_by_number(a->cell->column, b->cell->column);
    const int third = second != 0 ? second : order_by_number(a->cell->row, b->cell->row);
    return third != 0 ? third : order_by_number(a->minus, b->minus);
}

/* The terms in the order of their cells: a sum does not mind, and ranges come out of it. NULL: out
 * of memory, or a term without a cell (then *whole is false). */
static struct term *sorted_terms(struct writer *w, fig figure, size_t *count) {
    const bool total = tape_op(w->book->tape, figure) == OP_TOTAL;
    const size_t step = total ? 2 : 1;
    *count = tape_operands(w->book->tape, figure) / step;
    struct term *const terms = calloc(*count + 1, sizeof *terms);
    for (size_t i = 0; terms != NULL && i < *count; i++) {
        const struct operand first = tape_operand(w->book->tape, figure, step * i);
        terms[i].times = total ? first.f : (fig){0};
        terms[i].added = total ? tape_operand(w->book->tape, figure, step * i + 1).f : first.f;
        terms[i].count = total ? home(w, terms[i].times) : NULL;
        terms[i].cell = home(w, terms[i].added);
        terms[i].minus = first.minus;
        if (terms[i].cell == NULL || (total && terms[i].count == NULL)) {
            w->whole = false;
            free(terms);
            return NULL;
        }
    }
    if (terms == NULL) {
        w->whole = false;
    } else if (*count > 1) {
        bool down = true; /* a row of cells keeps its order */
        for (size_t i = 1; i < *count; i++) {
            down = down && !homes_in_row(terms[i - 1].cell, terms[i].cell);
        }
        if (down) {
            qsort(terms, *count, sizeof *terms, compare_terms);
        }
    }
    return terms;
}

/* Whether the counts from first to next lie to each other as the cells do. */
static bool same_shape(const struct term *first, const struct term *next) {
    if (first->count == NULL) {
        return true;
    }
    return first->count->sheet == next->count->sheet &&
           next->count->row - first->count->row == next->cell->row - first->cell->row &&
           next->count->column - first->count->column == next->cell->column - first->cell->column;
}

/* How many terms from `first` on stand after each other in one column (or row) with no other number
 * between. Counts of rows that have nothing to be counted may stand in the gaps: the cells beside
 * them are empty and count as nothing. */
static size_t run_length(const struct writer *w, const struct term *first, size_t count) {
    size_t length = 1;
    bool down = false;
    for (; length < count; length++) {
        const struct term *const next = &first[length];
        const struct home *const last = first[length - 1].cell;
        const bool in_column = homes_in_column(last, next->cell) && next->cell->row > last->row;
        const bool in_row = homes_in_row(last, next->cell) && next->cell->column > last->column;
        if (next->minus != first->minus || (!in_column && !in_row) ||
            (length > 1 && down != in_column) || !same_shape(first, next) ||
            !formula_map_gap(w->map, last, next->cell)) {
            break;
        }
        down = in_column;
    }
    return length;
}

static void put_term(struct writer *w, const struct term *first, size_t length) {
    const struct term *const last = first + length - 1;
    if (length > 2) {
        put(w, first->count == NULL ? "SUM(" : "SUMPRODUCT(");
        if (first->count != NULL) {
            put_range(w, first->count, last->count);
            put(w, ",");
        }
        put_range(w, first->cell, last->cell);
        put(w, ")");
        return;
    }
    if (first->count != NULL) {
        put_cell(w, first->count);
        put(w, "*");
    }
    put_cell(w, first->cell);
}

/* The terms from `from` on, as far as they fit into `room` characters; returns the first that is
 * left out. */
static size_t put_terms(struct writer *w, const struct term *terms, size_t from, size_t count,
                        size_t room) {
    size_t i = from;
    if (i == count) {
        put(w, "0");
    }
    while (i < count && w->whole && w->used + LONGEST_TERM < room) {
        const size_t run = run_length(w, &terms[i], count - i);
        put(w, terms[i].minus ? "-" : (i > from ? "+" : ""));
        put_term(w, &terms[i], run);
        i += run > 2 ? run : 1;
    }
    return i;
}

static void put_sum(struct writer *w, fig figure) {
    size_t count = 0;
    struct term *const terms = sorted_terms(w, figure, &count);
    if (terms != NULL && put_terms(w, terms, 0, count, FORMULA_MOST) < count) {
        w->whole = false;
        w->too_long = true;
    }
    free(terms);
}

/* Whether what stands below the line may become nothing in the workbook: what is made of figures.
 * 0 / 0 is 0, as on the tape. */
static bool may_vanish(const struct tape *tape, struct operand operand) {
    const enum figure_op op = tape_op(tape, operand.f);
    return operand.minus && op != OP_GIVEN && op != OP_CHOSEN;
}

static void put_ratio(struct writer *w, fig figure) {
    const struct tape *const tape = w->book->tape;
    const size_t count = tape_operands(tape, figure);
    size_t guards = 0;
    for (size_t i = 0; i < count; i++) {
        if (may_vanish(tape, tape_operand(tape, figure, i))) {
            put(w, "IF(");
            put_cell(w, operand_home(w, figure, i));
            put(w, "=0,0,");
            guards++;
        }
    }
    for (size_t i = 0; i < count; i++) {
        put(w, i == 0 ? "" : (tape_operand(tape, figure, i).minus ? "/" : "*"));
        put_cell(w, operand_home(w, figure, i));
    }
    for (; guards > 0; guards--) {
        put(w, ")");
    }
}

static void put_pick(struct writer *w, fig figure, bool upto) {
    const size_t rows = (tape_operands(w->book->tape, figure) - 1) / 2;
    for (size_t n = 0; n + 1 < rows; n++) {
        const size_t row = upto ? n : rows - 1 - n;
        put(w, "IF(");
        put_cell(w, operand_home(w, figure, 0));
        put(w, upto ? "<=" : ">=");
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
    put(w, function);
    put(w, "(");
    put_cell(w, operand_home(w, figure, 0));
    put(w, ",");
    put_cell(w, operand_home(w, figure, 1));
    put(w, ")");
}

/* Decimals at which a number of steps that is not whole can be told from a whole one: as many as
 * the step has digits, and what the figure raised has more of behind its point. */
static uint32_t step_decimals(const struct tape *tape, fig figure, fig step) {
    const int more = tape_decimals(tape, figure) - tape_decimals(tape, step);
    uint32_t decimals = more > 0 ? (uint32_t)more : 0;
    for (int64_t value = tape_amount(tape, step); value > 0; value /= 10) {
        decimals++;
    }
    return decimals > 9 ? decimals : 9; /* a finer step may be put in the cell */
}

/* Up to a multiple: the inner ROUND takes away what doubles add to a whole number of steps. */
static void put_up(struct writer *w, fig figure) {
    const struct tape *const tape = w->book->tape;
    put(w, "-INT(-ROUND(");
    put_cell(w, operand_home(w, figure, 0));
    put(w, "/");
    put_cell(w, operand_home(w, figure, 1));
    put(w, ",");
    put_number(
        w, step_decimals(tape, tape_operand(tape, figure, 0).f, tape_operand(tape, figure, 1).f));
    put(w, "))*");
    put_cell(w, operand_home(w, figure, 1));
}

static void put_operation(struct writer *w, fig figure) {
    switch (tape_op(w->book->tape, figure)) {
    case OP_SUM:
    case OP_TOTAL:
        put_sum(w, figure);
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

enum formula_result formula_write(const struct book *book, const struct formula_map *map,
                                  const struct cell *cell,
                                  char *text) { /* NOLINT(readability-non-const-parameter) */
    struct writer writer = {
        .book = book, .map = map, .sheet = cell->sheet, .text = text, .whole = true};
    const enum figure_op op = tape_op(book->tape, cell->figure);
    if (op == OP_GIVEN || op == OP_CHOSEN) {
        return FORMULA_PLAIN;
    }
    put(&writer, "=ROUND(");
    put_operation(&writer, cell->figure);
    put(&writer, ",");
    put_number(&writer, tape_decimals(book->tape, cell->figure));
    put(&writer, ")");
    return writer.whole ? FORMULA_DONE : (writer.too_long ? FORMULA_LONG : FORMULA_PLAIN);
}

static long double exact(const struct tape *tape, fig figure) {
    long double step = 1;
    for (uint8_t d = 0; d < tape_decimals(tape, figure); d++) {
        step *= 10;
    }
    return (long double)tape_amount(tape, figure) / step;
}

/* The value of terms from..to of a sum or total, as a double: only what a program shows before it
 * recalculates. */
static double part_value(const struct tape *tape, const struct term *terms, size_t from,
                         size_t to) {
    long double value = 0;
    for (size_t i = from; i < to; i++) {
        const long double times = terms[i].count == NULL ? 1.0L : exact(tape, terms[i].times);
        value += (terms[i].minus ? -1.0L : 1.0L) * times * exact(tape, terms[i].added);
    }
    return (double)value;
}

bool formula_parts(const struct book *book, const struct formula_map *map, const struct cell *cell,
                   uint16_t sheet, char *text, formula_part_write *write, void *to) {
    struct writer writer = {.book = book, .map = map, .sheet = sheet, .text = text, .whole = true};
    size_t count = 0;
    struct term *const terms = sorted_terms(&writer, cell->figure, &count);
    if (terms == NULL) {
        return false;
    }
    for (size_t from = 0; from < count && writer.whole;) {
        writer.used = 0;
        put(&writer, "=");
        const size_t next = put_terms(&writer, terms, from, count, FORMULA_MOST);
        write(to, text, part_value(book->tape, terms, from, next));
        from = next;
    }
    free(terms);
    return writer.whole;
}
