/* SPDX-License-Identifier: MIT */
/* The cells of a sheet of an .xlsx, by ECMA-376 part 1, 18.3.1. */
#include "base/text.h"
#include "read/sheet/sheet.h"
#include "read/sheet/xlsx_parts.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The sheet as its tags come. */
struct cells {
    struct xlsx xlsx;
    uint32_t next_row;    /* from 0 */
    uint32_t next_column; /* from 0 */
    bool in_row, in_cell, in_value, in_inline, skipping;
    uint32_t column;
    enum { CELL_NUMBER, CELL_SHARED, CELL_TEXT, CELL_BOOL, CELL_ERROR } type;
    uint32_t style;
    bool formula;
    bool damaged;
};

/* `D7` to column 3 and row 6; without digits the row stays. Returns what stands behind; NULL: it is
 * no reference. */
static const char *read_address(const char *text, const char *end, uint32_t *column,
                                uint32_t *row) {
    uint32_t letters = 0;
    uint32_t digits = 0;
    for (; text < end && *text >= 'A' && *text <= 'Z' && letters < SHEET_MOST_COLUMNS; text++) {
        letters = 26 * letters + (uint32_t)(*text - 'A' + 1);
    }
    for (; text < end && *text >= '0' && *text <= '9' && digits < SHEET_MOST_ROWS; text++) {
        digits = 10 * digits + (uint32_t)(*text - '0');
    }
    if (letters == 0 || letters > SHEET_MOST_COLUMNS || digits == 0 || digits > SHEET_MOST_ROWS) {
        return NULL;
    }
    *column = letters - 1;
    *row = digits - 1;
    return text;
}

static bool open_row(struct cells *cells, const struct tag *tag) {
    const uint32_t row = attribute_number(tag, NULL, "r", SHEET_MOST_ROWS, cells->next_row + 1);
    cells->damaged = row <= cells->next_row || !cell_grid_row(&cells->xlsx.reading->grid, row - 1);
    if (cells->damaged) {
        return false;
    }
    cells->next_row = row;
    cells->next_column = 0;
    cells->in_row = true;
    return true;
}

static bool open_cell(struct cells *cells, const struct tag *tag) {
    size_t size;
    const char *const address = attribute_value(tag, NULL, "r", &size);
    uint32_t row = cells->next_row - 1;
    cells->column = cells->next_column;
    if (address != NULL &&
        (read_address(address, address + size, &cells->column, &row) != address + size ||
         row != cells->next_row - 1 || cells->column < cells->next_column)) {
        cells->damaged = true;
        return false;
    }
    cells->next_column = cells->column + 1;
    cells->type = attribute_says(tag, NULL, "t", "s")   ? CELL_SHARED
                  : attribute_says(tag, NULL, "t", "b") ? CELL_BOOL
                  : attribute_says(tag, NULL, "t", "e") ? CELL_ERROR
                  : attribute_says(tag, NULL, "t", "str") ||
                          attribute_says(tag, NULL, "t", "inlineStr") ||
                          attribute_says(tag, NULL, "t", "d")
                      ? CELL_TEXT
                      : CELL_NUMBER;
    cells->style = attribute_number(tag, NULL, "s", UINT32_MAX, 0);
    cells->formula = false;
    cells->in_cell = true;
    cells->xlsx.reading->cell.size = 0;
    return true;
}

/* `D7:D9` of a cell that goes over others. */
static bool take_span(struct cells *cells, const struct tag *tag) {
    size_t size;
    const char *at = attribute_value(tag, NULL, "ref", &size);
    struct span span = {0};
    uint32_t last_column = 0;

    if (at == NULL) {
        return true;
    }
    const char *const end = at + size;
    at = read_address(at, end, &span.column, &span.row);
    if (at == NULL || at == end) {
        return true;
    }
    at = *at == ':' ? read_address(at + 1, end, &last_column, &span.last_row) : NULL;
    return at == NULL || cell_grid_span(&cells->xlsx.reading->grid, span);
}

static bool open_tag(void *context, const struct tag *tag) {
    struct cells *const cells = context;
    const char *const name = tag->name;

    if (strcmp(name, "row") == 0) {
        return open_row(cells, tag);
    }
    if (strcmp(name, "mergeCell") == 0) {
        return take_span(cells, tag);
    }
    if (!cells->in_row) {
        return true;
    }
    if (strcmp(name, "c") == 0) {
        return open_cell(cells, tag);
    }
    cells->formula = cells->formula || strcmp(name, "f") == 0;
    cells->in_inline = cells->in_inline || strcmp(name, "is") == 0;
    cells->skipping = cells->skipping || strcmp(name, "rPh") == 0;
    cells->in_value = cells->in_cell && !cells->skipping &&
                      (strcmp(name, "v") == 0 || (cells->in_inline && strcmp(name, "t") == 0));
    return true;
}

static bool take_text(void *context, const char *text, size_t size) {
    struct cells *const cells = context;
    if (cells->in_value && !gather(&cells->xlsx.reading->cell, text, size)) {
        cells->xlsx.failed = true;
    }
    return !cells->xlsx.failed;
}

/* `_x000D_`, as the format writes what XML may not hold, to that character where it is a blank. */
static void unescape(struct gathered *cell) {
    char *to = cell->text;
    if (cell->size > SHEET_LONGEST_LINE) {
        return; /* not whole, and too long for a row as it is */
    }
    for (const char *from = cell->text; *from != '\0';) {
        unsigned code = 0;
        int digits = 0;
        if (from[0] == '_' && from[1] == 'x') {
            for (; digits < 4 && strchr("0123456789ABCDEFabcdef", from[2 + digits]) != NULL &&
                   from[2 + digits] != '\0';
                 digits++) {
                const char c = from[2 + digits];
                code = 16 * code + (unsigned)(c <= '9' ? c - '0' : (c & 0x5F) - 'A' + 10);
            }
        }
        if (digits == 4 && from[6] == '_' &&
            (code == '\r' || code == '\n' || code == '\t' || code == '_')) {
            *to++ = code == '_' ? '_' : ' ';
            from += 7;
        } else {
            *to++ = *from++;
        }
    }
    *to = '\0';
    cell->size = (size_t)(to - cell->text);
}

/* The text that many cells share, by its number. */
static bool put_shared(struct cells *cells) {
    struct sheet_reading *const reading = cells->xlsx.reading;
    char *end;
    const unsigned long number = strtoul(reading->cell.text, &end, 10);
    if (*end != '\0' || reading->cell.text[0] == '-' || number >= cells->xlsx.shared_count) {
        return false;
    }
    const struct shared_text text = cells->xlsx.shared[number];
    reading->cell.size = 0;
    if (!gather(&reading->cell, text.text, text.size)) {
        cells->xlsx.failed = true;
        return false;
    }
    unescape(&reading->cell);
    return cell_grid_cell(&reading->grid, cells->column, reading->cell.text, reading->cell.size);
}

static bool put_number(struct cells *cells) {
    struct cell_grid *const grid = &cells->xlsx.reading->grid;
    struct gathered *const cell = &cells->xlsx.reading->cell;
    const struct number_form form = cells->style < cells->xlsx.form_count
                                        ? cells->xlsx.forms[cells->style]
                                        : (struct number_form){NUMBER_PLAIN, NULL};
    char room[NUMBER_TEXT + NUMBER_SUFFIX];
    const char *const text = number_text(room, cell->text, form, cells->xlsx.from_1904);
    if (form.suffix != NULL && text == room) {
        number_suffix(room, form.suffix);
    }
    return cell_grid_cell(grid, cells->column, text, strlen(text));
}

static bool put_cell(struct cells *cells) {
    struct cell_grid *const grid = &cells->xlsx.reading->grid;
    struct gathered *const cell = &cells->xlsx.reading->cell;
    const char *word;
    bool good;

    if (cell->size == 0) {
        if (!cells->formula || cells->type == CELL_TEXT) {
            return true; /* blank, or a formula that gives an empty text */
        }
        good = cell_grid_cell(grid, cells->column, "?", 1);
        cell_grid_report(
            grid, "cell-formula",
            "the cell has a formula, and its value was not saved with it; open the file in "
            "a spreadsheet and save it there");
        return good;
    }
    switch (cells->type) {
    case CELL_SHARED:
        return put_shared(cells);
    case CELL_BOOL:
        word = cell->text[0] == '1' || cell->text[0] == 't' ? "yes" : "no";
        return cell_grid_cell(grid, cells->column, word, strlen(word));
    case CELL_ERROR:
        good = cell_grid_cell(grid, cells->column, cell->text, cell->size);
        cell_grid_report(
            grid, "cell-error",
            "the cell shows an error of its formula; mend it in the spreadsheet, or type "
            "the value");
        return good;
    case CELL_TEXT:
        unescape(cell);
        return cell_grid_cell(grid, cells->column, cell->text, cell->size);
    case CELL_NUMBER:
        break;
    }
    return put_number(cells);
}

static bool close_tag(void *context, const char *name) {
    struct cells *const cells = context;

    cells->in_value = false;
    if (strcmp(name, "row") == 0) {
        cells->in_row = false;
    } else if (strcmp(name, "is") == 0) {
        cells->in_inline = false;
    } else if (strcmp(name, "rPh") == 0) {
        cells->skipping = false;
    } else if (strcmp(name, "c") == 0 && cells->in_cell) {
        cells->in_cell = false;
        cells->damaged = !put_cell(cells);
        return !cells->damaged;
    }
    return true;
}

static bool read_cells(struct cells *cells) {
    struct sheet_reading *const reading = cells->xlsx.reading;
    const struct part_reader reader = {
        .open = open_tag, .close = close_tag, .text = take_text, .context = cells};
    if (!archive_read(&reading->archive, cells->xlsx.sheet, &reader)) {
        return false;
    }
    if (cells->damaged && reading->grid.large == NULL && !reading->grid.failed) {
        reading->archive.fault = ARCHIVE_DAMAGED;
    }
    return !cells->damaged && !cells->xlsx.failed && cell_grid_end(&reading->grid);
}

bool xlsx_read(struct sheet_reading *reading, const char *workbook) {
    struct cells cells = {.xlsx = {.reading = reading}};
    const bool good = xlsx_find_parts(&cells.xlsx, workbook) && xlsx_read_texts(&cells.xlsx) &&
                      xlsx_read_styles(&cells.xlsx) && read_cells(&cells);
    reading->grid.failed = reading->grid.failed || cells.xlsx.failed;
    xlsx_parts_clear(&cells.xlsx);
    return good;
}
