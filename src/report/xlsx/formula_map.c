/* SPDX-License-Identifier: MIT */
/* A bit a cell, column by column: sheets are full of numbers, so a bit a place is a hundredth of
 * what the cells take. */
#include "report/xlsx/formula_map.h"

#include <stdlib.h>

#define WORD_BITS ((size_t)64)

struct formula_map {
    uint64_t *columns[BOOK_MOST_SHEETS][BOOK_MOST_COLUMNS]; /* NULL: no number stands there */
    size_t words[BOOK_MOST_SHEETS];                         /* of each column of a sheet */
};

static bool is_number(const struct cell *cell) {
    return cell->kind != CELL_TEXT && cell->kind != CELL_CHECK;
}

static void find_rows(struct formula_map *map, const struct book *book) {
    for (size_t i = 0; i < book->cell_count; i++) {
        const struct cell *const cell = book_cell(book, i);
        const size_t words = cell->row / WORD_BITS + 1;
        size_t *const most = &map->words[cell->sheet];
        *most = is_number(cell) && words > *most ? words : *most;
    }
}

static bool set_number(struct formula_map *map, const struct cell *cell) {
    uint64_t **const column = &map->columns[cell->sheet][cell->column];
    if (*column == NULL) {
        *column = calloc(map->words[cell->sheet], sizeof **column);
    }
    if (*column != NULL) {
        (*column)[cell->row / WORD_BITS] |= UINT64_C(1) << cell->row % WORD_BITS;
    }
    return *column != NULL;
}

struct formula_map *formula_map_new(const struct book *book) {
    struct formula_map *const map = calloc(1, sizeof *map);
    if (map == NULL) {
        return NULL;
    }
    find_rows(map, book);
    for (size_t i = 0; i < book->cell_count; i++) {
        const struct cell *const cell = book_cell(book, i);
        if (is_number(cell) && !set_number(map, cell)) {
            formula_map_free(map);
            return NULL;
        }
    }
    return map;
}

void formula_map_free(struct formula_map *map) {
    for (size_t s = 0; map != NULL && s < BOOK_MOST_SHEETS; s++) {
        for (size_t c = 0; c < BOOK_MOST_COLUMNS; c++) {
            free(map->columns[s][c]);
        }
    }
    free(map);
}

bool homes_in_column(const struct home *a, const struct home *b) {
    return a->sheet == b->sheet && a->column == b->column;
}

bool homes_in_row(const struct home *a, const struct home *b) {
    return a->sheet == b->sheet && a->row == b->row;
}

static bool empty_column(const uint64_t *column, size_t from, size_t end) {
    for (size_t row = from; row < end;) {
        const size_t at = row % WORD_BITS;
        const uint64_t rest = column[row / WORD_BITS] >> at;
        const size_t here = WORD_BITS - at < end - row ? WORD_BITS - at : end - row;
        if ((here == WORD_BITS ? rest : rest & ((UINT64_C(1) << here) - 1)) != 0) {
            return false;
        }
        row += here;
    }
    return true;
}

bool formula_map_gap(const struct formula_map *map, const struct home *a, const struct home *b) {
    uint64_t *const *const columns = map->columns[a->sheet];
    if (homes_in_column(a, b)) {
        return empty_column(columns[a->column], (size_t)a->row + 1, b->row);
    }
    for (size_t c = (size_t)a->column + 1; c < b->column; c++) {
        if (columns[c] != NULL && !empty_column(columns[c], a->row, (size_t)a->row + 1)) {
            return false;
        }
    }
    return true;
}
