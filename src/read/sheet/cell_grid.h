/* SPDX-License-Identifier: MIT */
/* The rows of a sheet as they are read, cell by cell, made to the lines of sheet.h. */
#ifndef DOORCOST_READ_SHEET_CELL_GRID_H
#define DOORCOST_READ_SHEET_CELL_GRID_H

#include "base/problem.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Cells over several rows, from 0, both ends among them. */
struct span {
    uint32_t row, last_row, column;
};

/* Zero but for problems and file: no row yet. */
struct cell_grid {
    struct problems *problems; /* whose pool has the lines */
    uint16_t file;
    const char **lines; /* on the heap */
    size_t room, count;
    char *line; /* the row that is being read, on the heap */
    size_t size, line_room;
    uint32_t row;    /* that row, from 0 */
    uint32_t column; /* how many tabs stand in it */
    bool any;        /* a cell of it holds something */
    bool over;       /* it is longer than a line may be */
    struct span *spans;
    size_t span_count, span_room;
    uint32_t *bad; /* rows with a reported fault, from 0, on the heap */
    size_t bad_count, bad_room;
    size_t total; /* bytes of all lines */
    size_t given; /* bytes of all cells as they came, blanks that are left out among them */
    const char
        *large;  /* what is over a limit, in words: nothing is taken any more; NULL: nothing */
    bool failed; /* memory is out */
};

/* Begins a row, from 0, behind the one before, which is ended. false: grid is large or failed, or
 * the row does not stand behind it. */
bool cell_grid_row(struct cell_grid *grid, uint32_t row) __attribute__((warn_unused_result));

/* Puts a cell into the row, behind those that it has; column from 0. false: as for cell_grid_row. A
 * text of nothing but blanks is a blank cell. */
bool cell_grid_cell(struct cell_grid *grid, uint32_t column, const char *text, size_t size)
    __attribute__((warn_unused_result));

/* Puts the row that was ended or is being read down again, in the rows that follow it. false: as
 * for cell_grid_row. */
bool cell_grid_repeat(struct cell_grid *grid, uint32_t times) __attribute__((warn_unused_result));

/* Reports a fault of the cell that was put in last; its row is not read further. */
void cell_grid_report(struct cell_grid *grid, const char *id, const char *text);

/* Notes that a cell goes over rows; false: there are too many such cells, or memory is out. */
bool cell_grid_span(struct cell_grid *grid, struct span span) __attribute__((warn_unused_result));

/* Says that there is more than `most` of what, in the plural; nothing is taken any more. */
void cell_grid_over(struct cell_grid *grid, size_t most, const char *what);

/* Ends the last row, and fills what goes over several. false: grid is large or failed. */
bool cell_grid_end(struct cell_grid *grid) __attribute__((warn_unused_result));

/* Frees what is on the heap. */
void cell_grid_clear(struct cell_grid *grid);

#endif
