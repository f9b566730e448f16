/* SPDX-License-Identifier: MIT */
#include "report/xlsx/book.h"

#include "base/text.h"

#include <assert.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

/* A cell holds no more, codes among them: the library leaves one out that is longer. */
#define MOST_LETTERS ((size_t)32767)
/* Stands for the `_` of a text that would be taken for such a code itself. */
#define CODE_OF_LINE "_x005F_"

void book_init(struct book *book, const struct tape *tape) {
    *book = (struct book){.tape = tape};
    pool_init(&book->pool);
    book->homes = calloc((tape == NULL ? 0 : (size_t)tape->count) + 1, sizeof *book->homes);
    book->letters = text_widths_new();
    book->failed = book->homes == NULL || book->letters == NULL;
}

void book_clear(struct book *book) {
    for (uint16_t i = 0; i < book->sheet_count; i++) {
        free(book->sheets[i].breaks);
        free(book->sheets[i].blocks);
    }
    free(book->cells);
    free(book->names);
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

void book_break(struct book *book, uint16_t sheet, uint32_t row) {
    struct book_sheet *const s = &book->sheets[sheet];
    size_t count = 0;
    while (s->breaks != NULL && s->breaks[count] != 0) {
        count++;
    }
    uint32_t *const more = realloc(s->breaks, (count + 2) * sizeof *more);
    if (more == NULL) {
        book->failed = true;
        return;
    }
    more[count] = row;
    more[count + 1] = 0;
    s->breaks = more;
}

static struct cell *add_cell(struct book *book, struct cell cell) {
    book->cells = array_grow(book->cells, &book->cell_room, book->cell_count + 1,
                             sizeof *book->cells, &book->failed);
    if (book->failed) {
        return NULL;
    }
    if (cell.column >= BOOK_MOST_COLUMNS) {
        return NULL;
    }
    book->cells[book->cell_count] = cell;
    return &book->cells[book->cell_count++];
}

/* Whether a text begins with what a workbook takes for the code of a letter, as `_x0041_`. */
static bool is_code(const char *text) {
    static const char hex[] = "0123456789abcdefABCDEF";
    return strncmp(text, "_x", 2) == 0 && strspn(text + 2, hex) >= 4 && text[6] == '_';
}

static char *without_codes(struct pool *pool, const char *text) {
    const size_t more = sizeof CODE_OF_LINE - 2;
    size_t size = strlen(text) + 1;
    size_t used = 0;
    for (const char *c = text; *c != '\0'; c++) {
        size += is_code(c) ? more : 0;
    }
    char *const out = pool_take(pool, size, 1);
    for (const char *c = text; out != NULL && *c != '\0'; c++) {
        const bool code = is_code(c);
        memcpy(out + used, code ? CODE_OF_LINE : c, code ? more + 1 : 1);
        used += code ? more + 1 : 1;
    }
    return out;
}

/* A text as a cell holds it. In pool; NULL when memory is out. */
static const char *cell_words(struct pool *pool, const char *text) {
    for (size_t letters = MOST_LETTERS;;) {
        const char *const cut = text_cut(pool, text, letters);
        const char *const out = cut == NULL ? NULL : without_codes(pool, cut);
        const size_t units = out == NULL ? 0 : text_units(out);
        if (units <= MOST_LETTERS) {
            return out;
        }
        letters = letters * MOST_LETTERS / units;
    }
}

void book_text(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
               const char *text) {
    const char *const copy = text == NULL ? NULL : cell_words(&book->pool, text);
    if (copy != NULL) {
        add_cell(book, (struct cell){.row = row,
                                     .sheet = sheet,
                                     .column = column,
                                     .kind = CELL_TEXT,
                                     .look = (uint8_t)look,
                                     .text = copy});
    }
}

void book_format(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    const char *const text = pool_format_list(&book->pool, format, arguments);
    va_end(arguments);
    book_text(book, sheet, row, column, look, text);
}

void book_span(struct book *book, uint16_t sheet, uint32_t row, uint16_t first, uint16_t last,
               enum look look, const char *text) {
    const char *const copy = cell_words(&book->pool, text);
    if (copy != NULL) {
        add_cell(book, (struct cell){.row = row,
                                     .sheet = sheet,
                                     .column = first,
                                     .kind = CELL_TEXT,
                                     .look = (uint8_t)look,
                                     .text = copy,
                                     .span = (uint16_t)(last - first)});
    }
}

void book_number(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 enum unit unit, uint8_t decimals, int64_t value) {
    add_cell(book, (struct cell){.row = row,
                                 .sheet = sheet,
                                 .column = column,
                                 .kind = CELL_NUMBER,
                                 .look = (uint8_t)look,
                                 .unit = (uint8_t)unit,
                                 .decimals = decimals,
                                 .number = value});
}

void book_formula(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                  enum unit unit, uint8_t decimals, int64_t value, const char *formula) {
    const char *const copy = pool_text(&book->pool, formula, strlen(formula));
    if (copy != NULL) {
        add_cell(book, (struct cell){.row = row,
                                     .sheet = sheet,
                                     .column = column,
                                     .kind = CELL_FORMULA,
                                     .look = (uint8_t)look,
                                     .unit = (uint8_t)unit,
                                     .decimals = decimals,
                                     .number = value,
                                     .text = copy});
    }
}

void book_check(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                const char *formula, const char *shown) {
    const char *const copy = pool_text(&book->pool, formula, strlen(formula));
    const char *const words = pool_text(&book->pool, shown, strlen(shown));
    if (copy != NULL && words != NULL) {
        add_cell(book, (struct cell){.row = row,
                                     .sheet = sheet,
                                     .column = column,
                                     .kind = CELL_CHECK,
                                     .look = (uint8_t)look,
                                     .text = copy,
                                     .shown = words});
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
    if (add_cell(book, cell) != NULL && kind == CELL_HOME) {
        book->homes[figure.id] = (uint32_t)book->cell_count;
    }
}

void book_figure(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                 fig figure) {
    const bool homeless = !book->failed && !fig_none(figure) && book->homes[figure.id] == 0;
    add_figure(book, sheet, row, column, look, figure, homeless ? CELL_HOME : CELL_MENTION);
}

void book_claim(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                fig figure) {
    const uint32_t before = book->failed || fig_none(figure) ? 0 : book->homes[figure.id];
    add_figure(book, sheet, row, column, look, figure, CELL_HOME);
    if (before != 0 && book->homes[figure.id] != before) {
        book->cells[before - 1].kind = CELL_MENTION;
    }
}

void book_mention(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
                  fig figure) {
    add_figure(book, sheet, row, column, look, figure, CELL_MENTION);
}

void book_less(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, enum look look,
               fig figure) {
    const size_t before = book->cell_count;
    add_figure(book, sheet, row, column, look, figure, CELL_MENTION);
    if (book->cell_count > before) {
        book->cells[before].less = true;
    }
}

const struct cell *book_home(const struct book *book, fig figure) {
    const uint32_t at = book->homes[figure.id];
    return at == 0 ? NULL : &book->cells[at - 1];
}

void book_settle(struct book *book) {
    for (size_t i = 0; !book->failed && i < book->cell_count; i++) {
        struct cell *const cell = &book->cells[i];
        if (cell->kind == CELL_MENTION && !cell->less && book->homes[cell->figure.id] == 0) {
            cell->kind = CELL_HOME;
            book->homes[cell->figure.id] = (uint32_t)i + 1;
        }
    }
}
