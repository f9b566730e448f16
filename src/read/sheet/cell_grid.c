/* SPDX-License-Identifier: MIT */
#include "read/sheet/cell_grid.h"

#include "base/text.h"
#include "read/sheet/sheet.h"

#include <stdlib.h>
#include <string.h>

#define MOST_SPANS ((size_t)10000)  /* cells over several rows */
#define MOST_FILLS ((size_t)100000) /* rows that they go over, taken together */

static bool is_good(const struct cell_grid *grid) {
    return grid->large == NULL && !grid->failed;
}

static struct place place_of(const struct cell_grid *grid, size_t at, size_t size) {
    return (struct place){.file = grid->file,
                          .line = grid->row + 1,
                          .column = (uint16_t)(size > 0 ? at + 1 : 0),
                          .width = (uint16_t)size};
}

static void set_bad(struct cell_grid *grid) {
    if (grid->bad_count > 0 && grid->bad[grid->bad_count - 1] == grid->row) {
        return;
    }
    grid->bad = array_grow(grid->bad, &grid->bad_room, grid->bad_count + 1, sizeof *grid->bad,
                           &grid->failed);
    if (!grid->failed) {
        grid->bad[grid->bad_count++] = grid->row;
    }
}

static const char *copy_line(struct cell_grid *grid, const char *line, size_t size) {
    const char *const copy = pool_text(&grid->problems->pool, line, size);
    grid->failed = grid->failed || copy == NULL;
    grid->total += size;
    grid->large = grid->total > SHEET_MOST_TEXT ? SHEET_LARGE_TEXT : grid->large;
    return copy;
}

static void report_long(struct cell_grid *grid) {
    problem_add(grid->problems, SEVERITY_ERROR, "line-too-long", place_of(grid, 0, 0),
                "the row has over %zu bytes; expected at most so many", SHEET_LONGEST_LINE);
    set_bad(grid);
}

/* Keeps the row that is being read, behind blank ones where rows lack. */
static void keep_line(struct cell_grid *grid) {
    grid->lines = array_grow(grid->lines, &grid->room, (size_t)grid->row + 1, sizeof *grid->lines,
                             &grid->failed);
    if (grid->failed) {
        return;
    }
    while (grid->count < grid->row) {
        grid->lines[grid->count++] = "";
    }
    grid->lines[grid->count++] = copy_line(grid, grid->line, grid->size);
    if (grid->over) {
        report_long(grid);
    }
}

static bool end_row(struct cell_grid *grid) {
    if (grid->any) {
        keep_line(grid);
    }
    grid->size = 0;
    grid->column = 0;
    grid->any = false;
    grid->over = false;
    return is_good(grid);
}

bool cell_grid_row(struct cell_grid *grid, uint32_t row) {
    if (!end_row(grid) || row < grid->count || row >= SHEET_MOST_ROWS) {
        return false;
    }
    grid->row = row;
    return true;
}

bool cell_grid_cell(struct cell_grid *grid, uint32_t column, const char *text, size_t size) {
    if (column < grid->column || column >= SHEET_MOST_COLUMNS || !is_good(grid)) {
        return false;
    }
    grid->given += size;
    grid->large = grid->given > SHEET_MOST_TEXT ? SHEET_LARGE_TEXT : NULL;
    const bool cut = size > SHEET_LONGEST_LINE; /* a longer one is not gathered whole */
    while (size > 0 && strchr(" \t\r\n", *text) != NULL) {
        text++;
        size--;
    }
    if (size == 0 && !cut) {
        return true;
    }
    grid->any = true;
    grid->over =
        grid->over || cut || grid->size + (column - grid->column) + size > SHEET_LONGEST_LINE;
    if (grid->over) {
        return true;
    }
    grid->line = array_grow(grid->line, &grid->line_room, SHEET_LONGEST_LINE, 1, &grid->failed);
    if (grid->failed) {
        return false;
    }
    for (; grid->column < column; grid->column++) {
        grid->line[grid->size++] = '\t';
    }
    for (size_t i = 0; i < size; i++) {
        if (text[i] == '\t' || text[i] == '\n' || text[i] == '\r') {
            grid->line[grid->size++] = ' ';
        } else {
            grid->line[grid->size++] = text[i];
        }
    }
    return true;
}

bool cell_grid_repeat(struct cell_grid *grid, uint32_t times) {
    const bool bad = grid->bad_count > 0 && grid->bad[grid->bad_count - 1] == grid->row;
    for (; times > 0 && grid->any && is_good(grid); times--) {
        if (grid->row + 1 >= SHEET_MOST_ROWS) {
            return false;
        }
        keep_line(grid);
        grid->row++;
        if (bad) {
            set_bad(grid);
        }
    }
    return is_good(grid);
}

void cell_grid_report(struct cell_grid *grid, const char *id, const char *text) {
    const char *const line = grid->line;
    size_t at = grid->size;

    while (at > 0 && line[at - 1] != '\t') {
        at--;
    }
    problem_add(grid->problems, SEVERITY_ERROR, id, place_of(grid, at, grid->size - at), "%s",
                text);
    set_bad(grid);
}

void cell_grid_over(struct cell_grid *grid, size_t most, const char *what) {
    grid->large = pool_words(&grid->problems->pool, "over %zu %s", most, what);
    grid->failed = grid->failed || grid->large == NULL;
}

bool cell_grid_span(struct cell_grid *grid, struct span span) {
    if (span.last_row <= span.row) {
        return true;
    }
    if (grid->span_count >= MOST_SPANS) {
        cell_grid_over(grid, MOST_SPANS, "cells that go over several rows");
    }
    grid->spans = array_grow(grid->spans, &grid->span_room, grid->span_count + 1,
                             sizeof *grid->spans, &grid->failed);
    if (!is_good(grid)) {
        return false;
    }
    grid->spans[grid->span_count++] = span;
    return true;
}

/* The cell of a line: where it begins, its bytes; where the line ends before it, size 0 and in
 * *lack how many tabs are missing. */
static const char *find_cell(const char *line, uint32_t column, size_t *size, uint32_t *lack) {
    for (*lack = column; *lack > 0; (*lack)--) {
        const char *const tab = strchr(line, '\t');
        if (tab == NULL) {
            *size = 0;
            return line + strlen(line);
        }
        line = tab + 1;
    }
    *size = strcspn(line, "\t");
    return line;
}

/* Puts a text into a cell of a row that has others, and not that one. */
static void fill(struct cell_grid *grid, uint32_t row, uint32_t column, const char *text,
                 size_t size) {
    const char *const line = grid->lines[row];
    size_t there;
    uint32_t lack;
    const char *const at = find_cell(line, column, &there, &lack);
    const size_t before = (size_t)(at - line);
    const size_t behind = strlen(at);

    if (line[0] == '\0' || there > 0) {
        return;
    }
    if (before + lack + size + behind > SHEET_LONGEST_LINE) {
        grid->row = row;
        report_long(grid);
        return;
    }
    memcpy(grid->line, line, before);
    memset(grid->line + before, '\t', lack);
    memcpy(grid->line + before + lack, text, size);
    memcpy(grid->line + before + lack + size, at, behind);
    grid->lines[row] = copy_line(grid, grid->line, before + lack + size + behind);
}

bool cell_grid_end(struct cell_grid *grid) {
    size_t fills = 0;

    if (!end_row(grid)) {
        return false;
    }
    for (size_t i = 0; i < grid->span_count && is_good(grid); i++) {
        const struct span *const span = &grid->spans[i];
        size_t size;
        uint32_t lack;
        if (span->row >= grid->count) {
            continue;
        }
        const char *const text = find_cell(grid->lines[span->row], span->column, &size, &lack);
        for (uint32_t row = span->row + 1;
             size > 0 && row <= span->last_row && row < grid->count && is_good(grid); row++) {
            if (++fills > MOST_FILLS) {
                cell_grid_over(grid, MOST_FILLS, "rows that such cells go over");
            }
            fill(grid, row, span->column, text, size);
        }
    }
    return is_good(grid);
}

void cell_grid_clear(struct cell_grid *grid) {
    free(grid->lines);
    free(grid->line);
    free(grid->spans);
    free(grid->bad);
    *grid = (struct cell_grid){0};
}
