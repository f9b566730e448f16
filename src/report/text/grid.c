/* SPDX-License-Identifier: MIT */
#include "report/text/grid.h"

#include "base/text.h"

#include <assert.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#define GAP 2 /* blanks between columns */

enum cell_kind { CELL_TEXT, CELL_HEADING, CELL_RULE };

struct grid_cell {
    const char *text;
    size_t width;
    enum cell_kind kind; /* a heading or rule stands first in a row and fills it */
};

/* What has no place on a terminal becomes `?`, a byte each. */
static void make_safe(char *text) {
    const size_t size = strlen(text);
    size_t length;
    for (size_t at = 0; at < size; at += length) {
        if (!text_shows(text + at, size - at, &length)) {
            memset(text + at, '?', length);
        }
    }
}

/* The first bytes of text that take at most `columns`. */
static size_t bytes_within(const char *text, size_t columns, struct pool *pool) {
    size_t fits = 0;
    size_t at = 0;
    while (text[at] != '\0') {
        do {
            at++;
        } while (((unsigned char)text[at] & 0xC0) == 0x80);
        const char *const part = pool_text(pool, text, at);
        if (part == NULL || text_columns(part) > columns) {
            break;
        }
        fits = at;
    }
    return fits;
}

const char *grid_cut(struct pool *pool, const char *text, size_t columns) {
    if (text_columns(text) <= columns) {
        return pool_text(pool, text, strlen(text));
    }
    return pool_format(pool, "%.*s...", (int)bytes_within(text, columns - 3, pool), text);
}

/* --- filling --- */

void grid_init(struct grid *grid, const struct grid_column *columns, size_t count, size_t indent) {
    assert(count > 0);
    *grid = (struct grid){.columns = columns, .column_count = count, .indent = indent};
    pool_init(&grid->pool);
}

void grid_clear(struct grid *grid) {
    free(grid->cells);
    pool_clear(&grid->pool);
    *grid = (struct grid){0};
}

static void add(struct grid *grid, enum cell_kind kind, char *text) {
    bool failed = text == NULL;
    grid->cells = array_grow(grid->cells, &grid->cell_room, grid->cell_count + 1,
                             sizeof *grid->cells, &failed);
    if (failed) {
        grid->failed = true;
        return;
    }
    make_safe(text);
    grid->cells[grid->cell_count++] =
        (struct grid_cell){.text = text, .width = text_columns(text), .kind = kind};
}

void grid_put(struct grid *grid, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    char *const text = pool_format_list(&grid->pool, format, arguments);
    va_end(arguments);
    add(grid, CELL_TEXT, text);
}

void grid_end_row(struct grid *grid) {
    while (!grid->failed && grid->cell_count % grid->column_count != 0) {
        grid_put(grid, "%s", "");
    }
}

void grid_heading(struct grid *grid, const char *format, ...) {
    grid_end_row(grid);
    va_list arguments;
    va_start(arguments, format);
    char *const text = pool_format_list(&grid->pool, format, arguments);
    va_end(arguments);
    add(grid, CELL_HEADING, text);
    grid_end_row(grid);
}

void grid_rule(struct grid *grid) {
    grid_end_row(grid);
    add(grid, CELL_RULE, pool_text(&grid->pool, "", 0));
    grid_end_row(grid);
}

/* --- printing --- */

static bool has_head(const struct grid *grid) {
    for (size_t c = 0; c < grid->column_count; c++) {
        if (grid->columns[c].title != NULL) {
            return true;
        }
    }
    return false;
}

static void measure(const struct grid *grid, size_t *widths) {
    size_t all = grid->indent + GAP * (grid->column_count - 1);
    size_t yielding = grid->column_count;
    for (size_t c = 0; c < grid->column_count; c++) {
        const char *const title = grid->columns[c].title;
        widths[c] = title == NULL ? 0 : text_columns(title);
        for (size_t i = c; i < grid->cell_count; i += grid->column_count) {
            const struct grid_cell *const first = &grid->cells[i - c];
            if (first->kind == CELL_TEXT && grid->cells[i].width > widths[c]) {
                widths[c] = grid->cells[i].width;
            }
        }
        all += widths[c];
        if (grid->columns[c].yields) {
            yielding = c;
        }
    }
    if (all > GRID_WIDTH && yielding < grid->column_count) {
        const size_t over = all - GRID_WIDTH;
        const size_t least = 8;
        widths[yielding] = widths[yielding] > over + least ? widths[yielding] - over : least;
    }
}

static void put_blanks(FILE *out, size_t count) {
    for (; count > 0; count--) {
        fputc(' ', out);
    }
}

/* A row as it goes out: blanks wait until something follows them, so that no line ends in one. */
struct pen {
    FILE *out;
    size_t waiting;
    struct pool *scratch;
};

static void put_cell(struct pen *pen, const char *text, size_t size, size_t width,
                     enum grid_align align) {
    const size_t blanks = width > size ? width - size : 0;
    if (align == GRID_RIGHT) {
        pen->waiting += blanks;
    }
    if (text[0] != '\0') {
        put_blanks(pen->out, pen->waiting);
        pen->waiting = 0;
        if (size <= width) {
            fputs(text, pen->out);
        } else {
            const size_t bytes = bytes_within(text, width - 3, pen->scratch);
            fwrite(text, 1, bytes, pen->out);
            fputs("...", pen->out);
        }
    }
    pen->waiting += align == GRID_LEFT ? blanks : 0;
}

static void put_rule(struct pen *pen, const struct grid *grid, const size_t *widths) {
    for (size_t c = 0; c < grid->column_count; c++) {
        pen->waiting += c > 0 ? GAP : 0;
        const bool last = c + 1 == grid->column_count;
        if (grid->columns[c].align == GRID_RIGHT && (last || has_head(grid))) {
            put_blanks(pen->out, pen->waiting);
            pen->waiting = 0;
            for (size_t i = 0; i < widths[c]; i++) {
                fputc('-', pen->out);
            }
        } else {
            pen->waiting += widths[c];
        }
    }
}

/* The first line of text in `columns`: broken at a blank, or within a word that is too long for
 * any line. *rest: what follows. A copy in scratch, "" when memory is out. */
static const char *first_line(const char *text, size_t columns, struct pool *scratch,
                              const char **rest) {
    size_t bytes = strlen(text);
    if (text_columns(text) > columns) {
        const size_t fits = bytes_within(text, columns, scratch);
        bytes = fits;
        while (bytes > 0 && text[bytes] != ' ') {
            bytes--;
        }
        bytes = bytes > 0 ? bytes : fits;
    }
    *rest = text + bytes + strspn(text + bytes, " ");
    const char *const line = bytes > 0 ? pool_text(scratch, text, bytes) : NULL;
    if (line == NULL) {
        *rest = "";
        return "";
    }
    return line;
}

/* Further lines of a cell that did not fit into one. */
static void put_rest(struct pen *pen, const char *rest, size_t at, size_t columns) {
    while (rest[0] != '\0') {
        const char *const line = first_line(rest, columns, pen->scratch, &rest);
        fputc('\n', pen->out);
        pen->waiting = at;
        put_cell(pen, line, text_columns(line), columns, GRID_LEFT);
    }
}

/* A heading keeps its own indent, and a little more in its further lines. */
static void put_heading(struct pen *pen, const char *text) {
    const size_t own = strspn(text, " ");
    const size_t at = pen->waiting + own;
    const char *rest = "";
    const char *const line = first_line(text + own, GRID_WIDTH - at, pen->scratch, &rest);
    pen->waiting = at;
    put_cell(pen, line, text_columns(line), GRID_WIDTH - at, GRID_LEFT);
    put_rest(pen, rest, at + 2, GRID_WIDTH - at - 2);
}

static void put_row(struct pen *pen, const struct grid *grid, const size_t *widths, size_t row) {
    const struct grid_cell *const cells = &grid->cells[row * grid->column_count];
    const char *rest = "";
    size_t at = grid->indent;
    size_t rest_at = 0;
    size_t rest_columns = 0;
    pen->waiting = grid->indent;
    if (cells[0].kind == CELL_HEADING) {
        put_heading(pen, cells[0].text);
    } else if (cells[0].kind == CELL_RULE) {
        put_rule(pen, grid, widths);
    } else {
        for (size_t c = 0; c < grid->column_count; c++) {
            const char *line = cells[c].text;
            pen->waiting += c > 0 ? GAP : 0;
            if (cells[c].width > widths[c] && grid->columns[c].yields) {
                line = first_line(line, widths[c], pen->scratch, &rest);
                rest_at = at;
                rest_columns = widths[c];
            }
            put_cell(pen, line, text_columns(line), widths[c], grid->columns[c].align);
            at += widths[c] + GAP;
        }
        put_rest(pen, rest, rest_at, rest_columns);
    }
    fputc('\n', pen->out);
}

void grid_print(const struct grid *grid, struct page *page) {
    size_t *const widths = calloc(grid->column_count, sizeof *widths);
    struct pool scratch;
    pool_init(&scratch);
    bool held = !grid->failed && !pool_failed(&grid->pool) && widths != NULL;
    if (held) {
        struct pen pen = {.out = page->out, .scratch = &scratch};
        measure(grid, widths);
        if (has_head(grid)) {
            pen.waiting = grid->indent;
            for (size_t c = 0; c < grid->column_count; c++) {
                const char *const title = grid->columns[c].title;
                pen.waiting += c > 0 ? GAP : 0;
                put_cell(&pen, title == NULL ? "" : title, title == NULL ? 0 : text_columns(title),
                         widths[c], grid->columns[c].align);
            }
            fputc('\n', page->out);
        }
        for (size_t row = 0; row < grid->cell_count / grid->column_count; row++) {
            put_row(&pen, grid, widths, row);
        }
        held = !pool_failed(&scratch);
    }
    page->failed = page->failed || !held;
    pool_clear(&scratch);
    free(widths);
}

void say(struct page *page, const char *format, ...) {
    struct pool pool;
    pool_init(&pool);
    va_list arguments;
    va_start(arguments, format);
    char *const text = pool_format_list(&pool, format, arguments);
    va_end(arguments);
    if (text != NULL) {
        make_safe(text);
        fprintf(page->out, "%s\n", text);
    }
    page->failed = page->failed || text == NULL;
    pool_clear(&pool);
}

/* Words of text into lines, from column `at` on. A word goes to the next line where it fits there,
 * and is broken where it fits no line: some writing has no blanks. */
static void put_wrapped(FILE *out, size_t at, size_t indent, const char *text,
                        struct pool *scratch) {
    const size_t whole = GRID_WIDTH - indent;
    text =
        pool_words(scratch, "%.*s", (int)(text_trim_end(text, text + strlen(text)) - text), text);
    do {
        const size_t room = at < GRID_WIDTH ? GRID_WIDTH - at : 0;
        const char *const word = pool_text(scratch, text, strcspn(text, " "));
        const size_t width = word == NULL ? 0 : text_columns(word);
        const bool moves = at > indent && width > room && (width <= whole || room < whole / 2);
        if (!moves) {
            fputs(first_line(text, room, scratch, &text), out);
        }
        if (text[0] != '\0') {
            fputc('\n', out);
            put_blanks(out, indent);
            at = indent;
        }
    } while (text[0] != '\0');
    fputc('\n', out);
}

void say_wrapped(struct page *page, const char *first, size_t indent, const char *format, ...) {
    struct pool pool;
    pool_init(&pool);
    va_list arguments;
    va_start(arguments, format);
    char *const text = pool_format_list(&pool, format, arguments);
    va_end(arguments);
    char *const start = pool_text(&pool, first, strlen(first));
    const bool held = text != NULL && start != NULL;
    if (held) {
        make_safe(text);
        make_safe(start);
        fputs(start, page->out);
        size_t at = text_columns(start);
        if (at < indent) {
            put_blanks(page->out, indent - at);
            at = indent;
        }
        put_wrapped(page->out, at, indent, text, &pool);
    }
    page->failed = page->failed || !held || pool_failed(&pool);
    pool_clear(&pool);
}
