/* SPDX-License-Identifier: MIT */
#include "report/xlsx/book.h"

#include "base/text.h"
#include "report/xlsx/book_texts.h"

#include <assert.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

void book_init(struct book *book, const struct tape *tape) {
    *book = (struct book){.tape = tape};
    pool_init(&book->pool);
    book->homes = calloc((tape == NULL ? 0 : (size_t)tape->count) + 1, sizeof *book->homes);
    book->letters = text_widths_new();
    book->texts = book_texts_new();
    book->failed = book->homes == NULL || book->letters == NULL || book->texts == NULL;
}

void book_clear(struct book *book) {
    for (uint16_t i = 0; i < book->sheet_count; i++) {
        free(book->sheets[i].breaks);
        free(book->sheets[i].blocks);
    }
    for (size_t i = 0; i < book->block_room; i++) {
        free(book->blocks[i]);
    }
    free(book->blocks);
    free(book->owns);
    book_texts_free(book->texts);
    free(book->names);
    free(book->links);
    free(book->pictures);
    free(book->heights);
    free(book->charts);
    free(book->homes);
    text_widths_free(book->letters);
    pool_clear(&book->pool);
    *book = (struct book){0};
}

bool book_failed(const struct book *book) {
    return book->failed || pool_failed(&book->pool);
}

uint16_t book_sheet(struct book *book, const char *name, const char *title, bool landscape) {
    assert(book->sheet_count < BOOK_MOST_SHEETS);
    struct book_sheet *const sheet = &book->sheets[book->sheet_count];
    *sheet = (struct book_sheet){.name = name, .title = title, .landscape = landscape};
    sheet->widths = pool_take(&book->pool, BOOK_MOST_COLUMNS, sizeof *sheet->widths);
    sheet->width_count = sheet->widths == NULL ? 0 : BOOK_MOST_COLUMNS;
    book->spare_sheet = book->sheet_count;
    return book->sheet_count++;
}

void book_width(struct book *book, uint16_t sheet, uint16_t column, double characters) {
    assert(sheet < book->sheet_count);
    if (column < book->sheets[sheet].width_count) {
        book->sheets[sheet].widths[column] = characters;
    }
}

void book_headings(struct book *book, uint16_t sheet, uint32_t first, uint32_t last,
                   uint16_t freeze_column) {
    assert(sheet < book->sheet_count);
    book->sheets[sheet].repeat_first = first;
    book->sheets[sheet].repeat_last = last;
    book->sheets[sheet].freeze_row = last + 1;
    book->sheets[sheet].freeze_column = freeze_column;
}

void book_heads_end(struct book *book, uint16_t sheet, uint32_t end) {
    book->sheets[sheet].heads_end = end;
}

void book_few_decimals(struct book *book, uint16_t sheet) {
    book->sheets[sheet].few_decimals = true;
}

void book_print_rows(struct book *book, uint16_t sheet, uint32_t first, uint32_t end) {
    assert(first > 0);
    book->sheets[sheet].print_from = first;
    book->sheets[sheet].print_end = end;
}

void book_on_screen(struct book *book, uint16_t sheet) {
    book->sheets[sheet].on_screen = true;
}

void book_break(struct book *book, uint16_t sheet, uint32_t row) {
    struct book_sheet *const s = &book->sheets[sheet];
    assert(s->break_count == 0 || s->breaks[s->break_count - 1] < row);
    s->breaks =
        array_grow(s->breaks, &s->break_room, s->break_count + 1, sizeof *s->breaks, &book->failed);
    if (!book->failed) {
        s->breaks[s->break_count++] = row;
    }
}

/* Sees that there is room for one more cell. */
static bool has_room(struct book *book) {
    const size_t block = book->cell_count / BOOK_BLOCK;
    const size_t before = book->block_room;
    book->blocks = array_grow(book->blocks, &book->block_room, block + 1, sizeof(struct cell *),
                              &book->failed);
    for (size_t i = before; i < book->block_room; i++) {
        book->blocks[i] = NULL;
    }
    if (!book->failed && book->blocks[block] == NULL) {
        book->blocks[block] = malloc(BOOK_BLOCK * sizeof **book->blocks);
        book->failed = book->blocks[block] == NULL;
    }
    return !book->failed;
}

static struct cell *add_cell(struct book *book, struct cell cell) {
    if (cell.column >= BOOK_MOST_COLUMNS || !has_room(book)) {
        return NULL;
    }
    struct cell *const added = book_cell(book, book->cell_count++);
    *added = cell;
    return added;
}

void book_release(struct book *book, size_t block) {
    free(book->blocks[block]);
    book->blocks[block] = NULL;
}

/* Whether a cell without words is seen, by its band or line. */
static bool shows_empty(const struct cell *cell) {
    switch ((enum look)cell->look) {
    case LOOK_HEAD:
    case LOOK_TALL:
    case LOOK_INPUT:
    case LOOK_TOTAL:
    case LOOK_GRAND:
    case LOOK_WARN:
        return true;
    default:
        return cell->span > 0;
    }
}

static void add_text(struct book *book, struct cell cell, const char *text) {
    cell.kind = CELL_TEXT;
    if (!book->failed && text != NULL && (text[0] != '\0' || shows_empty(&cell))) {
        cell.words = book_texts_add(book->texts, text, &book->failed);
        add_cell(book, cell);
    }
}

void book_text(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
               const char *text) {
    add_text(book,
             (struct cell){.row = row, .sheet = sheet, .column = column, .look = (uint8_t)look},
             text);
}

void book_format(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 const char *format, ...) {
    struct pool pool;
    va_list arguments;
    pool_init(&pool);
    va_start(arguments, format);
    const char *const text = pool_format_list(&pool, format, arguments);
    va_end(arguments);
    book_text(book, sheet, row, column, look, text);
    book->failed = book->failed || text == NULL;
    pool_clear(&pool);
}

void book_span(struct book *book, uint16_t sheet, uint32_t row, uint16_t first, uint16_t last,
               enum look look, const char *text) {
    add_text(book,
             (struct cell){.row = row,
                           .sheet = sheet,
                           .column = first,
                           .look = (uint8_t)look,
                           .span = (uint16_t)(last - first)},
             text);
}

uint32_t book_span_down(struct book *book, uint16_t sheet, uint32_t row, uint16_t first,
                        uint16_t last, enum look look, const char *text) {
    assert(last < book->sheets[sheet].width_count);
    const size_t lines =
        book_lines(book, book->sheets[sheet].widths + first, (size_t)(last - first) + 1, text);
    const uint16_t down = lines > UINT16_MAX ? UINT16_MAX : (uint16_t)(lines - 1);
    add_text(book,
             (struct cell){.row = row,
                           .sheet = sheet,
                           .column = first,
                           .look = (uint8_t)look,
                           .span = (uint16_t)(last - first),
                           .down = down},
             text);
    return (uint32_t)down + 1;
}

/* Adds a cell that holds what is its own. */
static void add_own(struct book *book, struct cell cell, struct book_own own) {
    book->owns = array_grow(book->owns, &book->own_room, book->own_count + 1, sizeof *book->owns,
                            &book->failed);
    if (!book->failed) {
        cell.own = (uint32_t)book->own_count;
        book->owns[book->own_count++] = own;
        add_cell(book, cell);
    }
}

void book_number(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 enum unit unit, uint8_t decimals, int64_t value) {
    add_own(book,
            (struct cell){.row = row,
                          .sheet = sheet,
                          .column = column,
                          .kind = CELL_NUMBER,
                          .look = (uint8_t)look,
                          .unit = (uint8_t)unit,
                          .decimals = decimals},
            (struct book_own){.number = value});
}

void book_formula(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                  enum unit unit, uint8_t decimals, int64_t value, const char *formula) {
    const char *const copy = pool_text(&book->pool, formula, strlen(formula));
    if (copy != NULL) {
        add_own(book,
                (struct cell){.row = row,
                              .sheet = sheet,
                              .column = column,
                              .kind = CELL_FORMULA,
                              .look = (uint8_t)look,
                              .unit = (uint8_t)unit,
                              .decimals = decimals},
                (struct book_own){.number = value, .formula = copy});
    }
}

void book_check(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                const char *formula, const char *shown) {
    const char *const copy = pool_text(&book->pool, formula, strlen(formula));
    const char *const words = pool_text(&book->pool, shown, strlen(shown));
    if (copy != NULL && words != NULL) {
        add_own(book,
                (struct cell){.row = row,
                              .sheet = sheet,
                              .column = column,
                              .kind = CELL_CHECK,
                              .look = (uint8_t)look},
                (struct book_own){.formula = copy, .shown = words});
    }
}

static bool name_is_taken(const struct book *book, const char *name) {
    for (size_t i = 0; i < book->name_count; i++) {
        if (text_same(book->names[i].name, name)) {
            return true;
        }
    }
    return false;
}

void book_define(struct book *book, uint16_t sheet, uint32_t row, uint16_t column,
                 const char *name) {
    const char *copy = pool_text(&book->pool, name, strlen(name));
    while (copy != NULL && name_is_taken(book, copy)) {
        copy = pool_format(&book->pool, "%s_", copy);
    }
    book->failed = book->failed || copy == NULL;
    book->names = array_grow(book->names, &book->name_room, book->name_count + 1,
                             sizeof *book->names, &book->failed);
    if (book->failed) {
        return;
    }
    book->names[book->name_count++] =
        (struct book_name){.name = copy, .row = row, .sheet = sheet, .column = column};
}

static void set_home(struct book *book, const struct cell *cell) {
    book->homes[cell->figure.id] = (struct home){
        .row = cell->row, .column = cell->column, .sheet = (uint8_t)cell->sheet, .stands = true};
}

static void add_figure(struct book *book, uint16_t sheet, uint32_t row, uint16_t column,
                       enum look look, fig figure, enum cell_kind kind) {
    if (fig_none(figure)) {
        return;
    }
    const struct cell cell = {.row = row,
                              .sheet = sheet,
                              .column = column,
                              .kind = (uint8_t)kind,
                              .look = (uint8_t)look,
                              .unit = (uint8_t)tape_unit(book->tape, figure),
                              .decimals = tape_decimals(book->tape, figure),
                              .figure = figure};
    struct cell *const added = add_cell(book, cell);
    if (added != NULL && kind == CELL_HOME) {
        set_home(book, added);
    }
}

void book_figure(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 fig figure) {
    const bool homeless = !book->failed && !fig_none(figure) && !book->homes[figure.id].stands;
    add_figure(book, sheet, row, column, look, figure, homeless ? CELL_HOME : CELL_MENTION);
}

void book_set_home(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                   fig figure) {
    add_figure(book, sheet, row, column, look, figure, CELL_HOME);
}

void book_mention(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                  fig figure) {
    add_figure(book, sheet, row, column, look, figure, CELL_MENTION);
}

void book_negated(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                  fig figure) {
    const size_t before = book->cell_count;
    add_figure(book, sheet, row, column, look, figure, CELL_MENTION);
    if (book->cell_count > before) {
        book_cell(book, before)->less = true;
    }
}

const char *book_words(const struct book *book, const struct cell *cell) {
    assert(cell->kind == CELL_TEXT);
    return book_texts_at(book->texts, cell->words);
}

const struct book_own *book_own(const struct book *book, const struct cell *cell) {
    assert(cell->kind == CELL_NUMBER || cell->kind == CELL_FORMULA || cell->kind == CELL_CHECK);
    return &book->owns[cell->own];
}

const struct home *book_home(const struct book *book, fig figure) {
    const struct home *const home = &book->homes[figure.id];
    return home->stands ? home : NULL;
}

bool book_at_home(const struct book *book, const struct cell *cell) {
    const struct home *const home = &book->homes[cell->figure.id];
    return cell->kind == CELL_HOME && home->row == cell->row && home->column == cell->column &&
           home->sheet == cell->sheet;
}

void book_assign_homes(struct book *book) {
    for (size_t i = 0; !book->failed && i < book->cell_count; i++) {
        struct cell *const cell = book_cell(book, i);
        if (cell->kind == CELL_MENTION && !cell->less && !book->homes[cell->figure.id].stands) {
            cell->kind = CELL_HOME;
            set_home(book, cell);
        }
    }
}
