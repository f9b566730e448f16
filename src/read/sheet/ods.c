/* SPDX-License-Identifier: MIT */
/* The cells of a sheet of an .ods, by OASIS OpenDocument 1.2 part 1, chapters 6 and 9. A cell holds
 * its value and the text that is shown: of that a number takes whether it is a fraction, and the
 * unit behind it. Tags are known by their usual prefixes. */
#include "base/array.h"
#include "read/sheet/number.h"
#include "read/sheet/sheet.h"
#include "read/sheet/sheet_parts.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define CONTENT  "content.xml"
#define MANIFEST "META-INF/manifest.xml"

struct hidden_style {
    const char *name;
    struct hidden_style *next;
};

struct cells {
    struct sheet_reading *reading;
    struct pool *pool;
    const char *style;           /* the one that is being told */
    struct hidden_style *hidden; /* of sheets that are not shown; of pool */
    unsigned depth, skipped;     /* open tags; the depth at which what is skipped began, 0: none */
    bool in_table, in_row, in_cell, in_text;
    uint32_t row, column;   /* from 0 */
    uint32_t rows, columns; /* how often the row and the cell stand */
    enum { CELL_BLANK, CELL_TEXT, CELL_NUMBER, CELL_PERCENT, CELL_DATE, CELL_TIME, CELL_BOOL } type;
    bool error, formula;
    uint32_t spanned; /* rows that the cell goes over */
    unsigned paragraphs;
    struct gathered value;
    bool damaged, failed;
};

static bool is_tag(const struct tag *tag, const char *prefix, const char *name) {
    return strcmp(tag->name, name) == 0 && strcmp(tag->prefix, prefix) == 0;
}

/* What stands in a sheet and is no cell of it: notes, drawings, what was changed. */
static bool is_aside(const struct tag *tag) {
    static const char *const asides[] = {"annotation",      "shapes", "forms",
                                         "tracked-changes", "frame",  "custom-shape"};
    for (size_t i = 0; i < COUNT_OF(asides); i++) {
        if (strcmp(tag->name, asides[i]) == 0) {
            return true;
        }
    }
    return false;
}

/* --- opening tags --- */

static void open_style(struct cells *cells, const struct tag *tag) {
    if (is_tag(tag, "style", "style")) {
        cells->style = attribute_says(tag, "style", "family", "table")
                           ? attribute_text(tag, "style", "name", cells->pool)
                           : NULL;
    } else if (is_tag(tag, "style", "table-properties") && cells->style != NULL &&
               attribute_says(tag, "table", "display", "false")) {
        struct hidden_style *const style = pool_take(cells->pool, 1, sizeof *style);
        if (style != NULL) { /* the pool remembers */
            *style = (struct hidden_style){.name = cells->style, .next = cells->hidden};
            cells->hidden = style;
        }
    }
}

static void open_table(struct cells *cells, const struct tag *tag) {
    const char *const name = attribute_text(tag, "table", "name", cells->pool);
    bool hidden = false;
    for (const struct hidden_style *s = cells->hidden; s != NULL; s = s->next) {
        hidden = hidden || attribute_says(tag, "table", "style-name", s->name);
    }
    cells->in_table = name != NULL && sheet_take(cells->reading, name, hidden);
    if (!cells->in_table) {
        cells->skipped = cells->depth;
    }
}

static bool open_row(struct cells *cells, const struct tag *tag) {
    cells->rows = attribute_number(tag, "table", "number-rows-repeated", SHEET_MOST_ROWS, 1);
    cells->column = 0;
    cells->in_row = true;
    cells->damaged = !cell_grid_row(&cells->reading->grid, cells->row);
    return !cells->damaged;
}

static const char *const value_types[] = {
    [CELL_TEXT] = "string", [CELL_NUMBER] = "float", [CELL_PERCENT] = "percentage",
    [CELL_DATE] = "date",   [CELL_TIME] = "time",    [CELL_BOOL] = "boolean"};
static const char *const value_names[] = {
    [CELL_TEXT] = "string-value", [CELL_NUMBER] = "value",    [CELL_PERCENT] = "value",
    [CELL_DATE] = "date-value",   [CELL_TIME] = "time-value", [CELL_BOOL] = "boolean-value"};

static bool open_cell(struct cells *cells, const struct tag *tag) {
    cells->type =
        attribute_says(tag, "office", "value-type", "currency") ? CELL_NUMBER : CELL_BLANK;
    for (unsigned i = CELL_TEXT; i < COUNT_OF(value_types); i++) {
        if (attribute_says(tag, "office", "value-type", value_types[i])) {
            cells->type = i;
        }
    }
    cells->error = attribute_says(tag, "calcext", "value-type", "error");
    size_t size;
    cells->formula = attribute_value(tag, "table", "formula", &size) != NULL;
    cells->columns =
        attribute_number(tag, "table", "number-columns-repeated", SHEET_MOST_COLUMNS, 1);
    cells->spanned = attribute_number(tag, "table", "number-rows-spanned", SHEET_MOST_ROWS, 1);
    cells->paragraphs = 0;
    cells->reading->cell.size = 0;
    cells->value.size = 0;
    cells->in_cell = true;
    if (cells->type != CELL_BLANK) {
        const char *const value = attribute_value(tag, "office", value_names[cells->type], &size);
        cells->failed = cells->failed || (value != NULL && !gather(&cells->value, value, size));
    }
    return !cells->failed;
}

static bool put_text(struct cells *cells, const char *text, size_t size) {
    cells->failed = cells->failed || !gather(&cells->reading->cell, text, size);
    return !cells->failed;
}

/* What stands in a cell: paragraphs, and blanks that are told by tags. */
static bool open_content(struct cells *cells, const struct tag *tag) {
    if (is_tag(tag, "text", "p")) {
        cells->in_text = true;
        return cells->paragraphs++ == 0 || put_text(cells, " ", 1);
    }
    uint32_t blanks = is_tag(tag, "text", "tab") || is_tag(tag, "text", "line-break") ? 1 : 0;
    if (is_tag(tag, "text", "s")) {
        blanks = attribute_number(tag, "text", "c", SHEET_LONGEST_LINE, 1);
    }
    for (; blanks > 0 && cells->reading->cell.size <= SHEET_LONGEST_LINE; blanks--) {
        if (!put_text(cells, " ", 1)) {
            return false;
        }
    }
    return true;
}

static bool open_tag(void *context, const struct tag *tag) {
    struct cells *const cells = context;
    cells->depth++;
    if (cells->skipped > 0) {
        return true;
    }
    if (is_aside(tag)) {
        cells->skipped = cells->depth;
    } else if (strcmp(tag->prefix, "style") == 0) {
        open_style(cells, tag);
    } else if (is_tag(tag, "table", "table") && !cells->in_table) {
        open_table(cells, tag);
    } else if (is_tag(tag, "table", "table-row") && cells->in_table) {
        return open_row(cells, tag);
    } else if ((is_tag(tag, "table", "table-cell") || is_tag(tag, "table", "covered-table-cell")) &&
               cells->in_row) {
        return open_cell(cells, tag);
    } else if (cells->in_cell) {
        return open_content(cells, tag);
    }
    return true;
}

static bool take_text(void *context, const char *text, size_t size) {
    struct cells *const cells = context;
    return cells->skipped > 0 || !cells->in_text || put_text(cells, text, size);
}

/* --- cells --- */

/* What is shown behind the last digit: " mm"; "" where nothing, or no digit, is. */
static const char *unit_shown(const char *shown) {
    const char *unit = "";
    if (!isdigit((unsigned char)*shown) && *shown != '-') {
        return "";
    }
    for (const char *c = shown; *c != '\0'; c++) {
        unit = isdigit((unsigned char)*c) ? c + 1 : unit;
    }
    return unit[strspn(unit, " ")] == '\0' ? "" : unit;
}

/* `PT03H30M00S` to 3:30. */
static void put_time(char *room, const char *value) {
    unsigned long parts[3] = {0};
    static const char marks[] = "HMS";
    const char *at = strchr(value, 'T');
    for (size_t i = 0; at != NULL && i < COUNT_OF(parts); i++) {
        char *end;
        const unsigned long number = strtoul(at + 1, &end, 10);
        if (*end == marks[i] || (marks[i] == 'S' && (*end == '.' || *end == ','))) {
            parts[i] = number < 1000000 ? number : 0;
            at = end;
        }
    }
    if (parts[2] == 0) {
        (void)snprintf(room, NUMBER_TEXT, "%lu:%02lu", parts[0], parts[1]);
    } else {
        (void)snprintf(room, NUMBER_TEXT, "%lu:%02lu:%02lu", parts[0], parts[1], parts[2]);
    }
}

static const char *number_words(const struct cells *cells, char *room) {
    const struct gathered *const cell = &cells->reading->cell;
    const char *const shown = cell->size == 0 ? "" : cell->text;
    const bool percent = cells->type == CELL_PERCENT;
    const struct number_form form = {percent                      ? NUMBER_PERCENT
                                     : strchr(shown, '/') != NULL ? NUMBER_FRACTION
                                                                  : NUMBER_PLAIN,
                                     NULL};
    const char *const text = number_text(room, cells->value.text, form, false);
    if (!percent && text == room) {
        number_suffix(room, unit_shown(shown));
    }
    return text;
}

/* The text of the cell; room: of NUMBER_TEXT and NUMBER_SUFFIX bytes. */
static const char *cell_words(struct cells *cells, char *room, size_t *size) {
    const struct gathered *const value = &cells->value;
    const struct gathered *const cell = &cells->reading->cell;
    const char *text = value->size == 0 ? "" : value->text;
    const bool shown = cells->type == CELL_TEXT || cells->type == CELL_BLANK || value->size == 0;
    if (shown && cells->paragraphs > 0) {
        *size = cell->size;
        return cell->size == 0 ? "" : cell->text;
    }
    switch (cells->type) {
    case CELL_NUMBER:
    case CELL_PERCENT:
        text = value->size == 0 ? "" : number_words(cells, room);
        break;
    case CELL_TIME:
        put_time(room, text);
        text = room;
        break;
    case CELL_BOOL:
        text = strcmp(text, "true") == 0 ? "yes" : "no";
        break;
    case CELL_DATE:
    case CELL_TEXT:
    case CELL_BLANK:
        break;
    }
    *size = strlen(text);
    return text;
}

static bool put_cell(struct cells *cells) {
    struct cell_grid *const grid = &cells->reading->grid;
    char room[NUMBER_TEXT + NUMBER_SUFFIX];
    size_t size;
    const char *text = cell_words(cells, room, &size);
    const bool unsaved = cells->formula && cells->type == CELL_BLANK && cells->paragraphs == 0;
    const uint32_t first = cells->column;
    text = unsaved ? "?" : text;
    size = unsaved ? 1 : size;
    cells->column += cells->columns;
    if (cells->column > SHEET_MOST_COLUMNS) {
        cells->column = SHEET_MOST_COLUMNS; /* where no cell may be */
        return size == 0;
    }
    for (uint32_t i = 0; size > 0 && i < cells->columns; i++) {
        if (!cell_grid_cell(grid, first + i, text, size)) {
            return false;
        }
    }
    if (unsaved) {
        cell_grid_report(
            grid, "cell-formula",
            "the cell has a formula, and its value was not saved with it; open the file in "
            "a spreadsheet and save it there");
    } else if (cells->error) {
        cell_grid_report(
            grid, "cell-error",
            "the cell shows an error of its formula; mend it in the spreadsheet, or type "
            "the value");
    }
    return cells->spanned < 2 ||
           cell_grid_span(grid, (struct span){cells->row, cells->row + cells->spanned - 1, first});
}

static bool close_row(struct cells *cells) {
    cells->in_row = false;
    const bool good = cell_grid_repeat(&cells->reading->grid, cells->rows - 1);
    cells->row += cells->rows;
    if (cells->row > SHEET_MOST_ROWS) {
        cells->row = SHEET_MOST_ROWS; /* where no row may be */
    }
    return good;
}

static bool close_tag(void *context, const char *name) {
    struct cells *const cells = context;
    const bool aside = cells->skipped > 0;
    bool good = true;
    if (cells->skipped == cells->depth) {
        cells->skipped = 0;
    }
    cells->depth--;
    if (aside) {
        return true;
    }
    if (strcmp(name, "p") == 0) {
        cells->in_text = false;
    } else if ((strcmp(name, "table-cell") == 0 || strcmp(name, "covered-table-cell") == 0) &&
               cells->in_cell) {
        cells->in_cell = false;
        good = put_cell(cells);
    } else if (strcmp(name, "table-row") == 0 && cells->in_row) {
        good = close_row(cells);
    } else if (strcmp(name, "table") == 0 && cells->in_table) {
        return false; /* all of it was read */
    }
    cells->damaged = !good;
    return good;
}

/* --- the file --- */

static bool open_manifest(void *context, const struct tag *tag) {
    bool *const locked = context;
    *locked = *locked || strcmp(tag->name, "encryption-data") == 0;
    return !*locked;
}

static bool is_locked(struct archive *archive) {
    bool locked = false;
    const struct part_reader reader = {.open = open_manifest, .context = &locked};
    if (archive_has(archive, MANIFEST) && archive_read(archive, MANIFEST, &reader) && locked) {
        archive->fault = ARCHIVE_LOCKED;
    }
    return archive->fault != ARCHIVE_GOOD;
}

bool ods_read(struct sheet_reading *reading) {
    struct cells cells = {.reading = reading, .pool = &reading->problems->pool};
    const struct part_reader reader = {
        .open = open_tag, .close = close_tag, .text = take_text, .context = &cells};
    struct archive *const archive = &reading->archive;
    if (!archive_has(archive, CONTENT)) {
        archive->part = NULL;
        archive->fault = ARCHIVE_DAMAGED;
        return false;
    }
    const bool good = !is_locked(archive) && archive_read(archive, CONTENT, &reader) &&
                      !cells.damaged && !cells.failed && reading->found &&
                      cell_grid_end(&reading->grid);
    reading->grid.failed = reading->grid.failed || cells.failed;
    if (cells.damaged && reading->grid.large == NULL && !reading->grid.failed &&
        archive->fault == ARCHIVE_GOOD) {
        archive->fault = ARCHIVE_DAMAGED;
    }
    free(cells.value.text);
    return good;
}
