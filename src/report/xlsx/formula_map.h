/* SPDX-License-Identifier: MIT */
/* Which cells of a book hold numbers, to tell whether a range may be summed over its gaps. */
#ifndef DOORCOST_REPORT_XLSX_FORMULA_MAP_H
#define DOORCOST_REPORT_XLSX_FORMULA_MAP_H

#include "report/xlsx/book.h"

struct formula_map;

/* Finds numbers by row and column. To be made when every cell is in the book. NULL: out of
 * memory. */
struct formula_map *formula_map_new(const struct book *book);
/* Frees the map; NULL is accepted. */
void formula_map_free(struct formula_map *map);

/* How many cells with numbers stand from a to b, which share a column or a row. */
size_t formula_map_numbers(const struct formula_map *map, const struct cell *a,
                           const struct cell *b);

/* Whether two cells stand in one column of one sheet. */
bool cells_in_column(const struct cell *a, const struct cell *b);
/* Whether two cells stand in one row of one sheet. */
bool cells_in_row(const struct cell *a, const struct cell *b);

/* -1, 0, 1. */
int cell_order(int64_t a, int64_t b);

#endif
