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

/* Whether no number stands between two cells that share a column, a above b, or a row, a left of
 * b. */
bool formula_map_gap(const struct formula_map *map, const struct home *a, const struct home *b);

/* Whether two cells stand in one column of one sheet. */
bool homes_in_column(const struct home *a, const struct home *b);
/* Whether two cells stand in one row of one sheet. */
bool homes_in_row(const struct home *a, const struct home *b);

#endif
