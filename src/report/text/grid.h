/* SPDX-License-Identifier: MIT */
/* Text for a terminal: grids of at most 80 columns, wrapped paragraphs, single lines.
 *
 * A grid is a table that is filled cell by cell, row after row; columns become as wide as their
 * widest cell, and where that is more than a line holds, the column that yields goes on in further
 * lines.
 * Text of the inputs may go into any of these: control characters are shown as `?`. Widths are
 * those of wcswidth, so LC_CTYPE should be set. */
#ifndef DOORCOST_REPORT_TEXT_GRID_H
#define DOORCOST_REPORT_TEXT_GRID_H

#include "base/pool.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

#define GRID_WIDTH 80

enum grid_align { GRID_LEFT, GRID_RIGHT };

struct grid_column {
    const char *title; /* NULL in all columns: a grid without a head */
    enum grid_align align;
    bool yields; /* takes further lines where the grid would be too wide; one column at most */
};

/* Where text goes. Failure sticks: the caller asks once, at the end. Whether out took it all is to
 * be asked of out. */
struct page {
    FILE *out;
    bool failed; /* memory ran out */
};

struct grid_cell;
struct grid {
    struct pool pool;
    const struct grid_column *columns; /* borrowed */
    size_t column_count, indent;
    struct grid_cell *cells;
    size_t cell_count, cell_room;
    bool failed; /* memory ran out: the grid is not whole */
};

/* Makes an empty grid. columns: count of them, borrowed as long as the grid lives. indent: blanks
 * before each line. */
void grid_init(struct grid *grid, const struct grid_column *columns, size_t count, size_t indent);
/* Frees what the grid holds. */
void grid_clear(struct grid *grid);

/* The next cell. */
void grid_put(struct grid *grid, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* Empty cells up to the end of the row; nothing where a row is just complete. */
void grid_end_row(struct grid *grid);
/* A line of its own over all columns: a heading between rows. Ends the row before it. */
void grid_heading(struct grid *grid, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* A line under the numbers that a total follows (under the last column of a grid without a head).
 * Ends the row before it. */
void grid_rule(struct grid *grid);

/* Text cut to at most `columns` (4 or more), the last three of them `...` where it was longer. In
 * pool; NULL when memory is out. */
const char *grid_cut(struct pool *pool, const char *text, size_t columns);

/* Prints the grid. One that is not whole fails the page. */
void grid_print(const struct grid *grid, struct page *page);

/* One line, as printf, a line feed added. */
void say(struct page *page, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Text broken at blanks into lines of at most 80 columns, each after `indent` blanks, the first
 * after `first` in their place (may be longer). */
void say_wrapped(struct page *page, const char *first, size_t indent, const char *format, ...)
    __attribute__((format(printf, 4, 5)));

#endif
