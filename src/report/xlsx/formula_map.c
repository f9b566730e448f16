/* SPDX-License-Identifier: MIT */
#include "report/xlsx/formula_map.h"

#include <stdlib.h>

struct spot {
    uint32_t row;
    uint16_t sheet, column;
};

struct formula_map {
    struct spot *by_column; /* sheet, column, row */
    struct spot *by_row;    /* sheet, row, column */
    size_t count;
};

int cell_order(int64_t a, int64_t b) {
    return a < b ? -1 : (a > b ? 1 : 0);
}

static int compare_columns(const void *x, const void *y) {
    const struct spot *const a = x;
    const struct spot *const b = y;
    const int first = cell_order(a->sheet, b->sheet);
    const int second = first != 0 ? first : cell_order(a->column, b->column);
    return second != 0 ? second : cell_order(a->row, b->row);
}

static int compare_rows(const void *x, const void *y) {
    const struct spot *const a = x;
    const struct spot *const b = y;
    const int first = cell_order(a->sheet, b->sheet);
    const int second = first != 0 ? first : cell_order(a->row, b->row);
    return second != 0 ? second : cell_order(a->column, b->column);
}

struct formula_map *formula_map_new(const struct book *book) {
    struct formula_map *const map = calloc(1, sizeof *map);
    if (map == NULL) {
        return NULL;
    }
    map->by_column = calloc(book->cell_count + 1, sizeof *map->by_column);
    map->by_row = calloc(book->cell_count + 1, sizeof *map->by_row);
    if (map->by_column == NULL || map->by_row == NULL) {
        formula_map_free(map);
        return NULL;
    }
    for (size_t i = 0; i < book->cell_count; i++) {
        const struct cell *const cell = &book->cells[i];
        if (cell->kind != CELL_TEXT && cell->kind != CELL_CHECK) {
            const struct spot spot = {
                .row = cell->row, .sheet = cell->sheet, .column = cell->column};
            map->by_column[map->count] = spot;
            map->by_row[map->count++] = spot;
        }
    }
    qsort(map->by_column, map->count, sizeof *map->by_column, compare_columns);
    qsort(map->by_row, map->count, sizeof *map->by_row, compare_rows);
    return map;
}

void formula_map_free(struct formula_map *map) {
    if (map != NULL) {
        free(map->by_column);
        free(map->by_row);
        free(map);
    }
}

/* The place of the first spot that is not before `spot`. */
static size_t place_of(const struct spot *spots, size_t count, const struct spot *spot,
                       int (*compare)(const void *, const void *)) {
    size_t low = 0;
    size_t high = count;
    while (low < high) {
        const size_t middle = low + (high - low) / 2;
        if (compare(&spots[middle], spot) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

bool cells_in_column(const struct cell *a, const struct cell *b) {
    return a->sheet == b->sheet && a->column == b->column;
}

bool cells_in_row(const struct cell *a, const struct cell *b) {
    return a->sheet == b->sheet && a->row == b->row;
}

/* How many cells with numbers stand from a to b, which share a column or a row. */
size_t formula_map_numbers(const struct formula_map *map, const struct cell *a,
                           const struct cell *b) {
    const struct spot first = {.row = a->row, .sheet = a->sheet, .column = a->column};
    const struct spot last = {.row = b->row, .sheet = b->sheet, .column = b->column};
    if (cells_in_column(a, b)) {
        return place_of(map->by_column, map->count, &last, compare_columns) -
               place_of(map->by_column, map->count, &first, compare_columns) + 1;
    }
    return place_of(map->by_row, map->count, &last, compare_rows) -
           place_of(map->by_row, map->count, &first, compare_rows) + 1;
}
