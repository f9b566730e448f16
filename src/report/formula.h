/* SPDX-License-Identifier: MIT */
/* The formula that makes a figure's home cell from the homes of its operands. */
#ifndef DOORCOST_REPORT_FORMULA_H
#define DOORCOST_REPORT_FORMULA_H

#include "report/book.h"

/* The longest formula that spreadsheet programs take. */
#define FORMULA_MOST 8192

struct formula_map; /* which cells hold numbers, sorted, to tell whether a range may be summed over
                       its gaps */

/* NULL: out of memory. To be made when every cell is in the book; freed by formula_map_free. */
struct formula_map *formula_map_new(const struct book *book);
void formula_map_free(struct formula_map *map);

/* Writes the formula (with '=') of the figure whose home is `home` into text (FORMULA_MOST bytes).
 * false: the figure stays a plain value, because it is given or chosen, an operand has no home, or
 * the formula would be too long. */
bool formula_write(const struct book *book, const struct formula_map *map, const struct cell *home,
                   char *text);

/* Writes a reference to cell as seen from sheet (`Doors!C7`) into text. */
void formula_reference(const struct book *book, uint16_t sheet, const struct cell *cell, char *text,
                       size_t size);

#endif
