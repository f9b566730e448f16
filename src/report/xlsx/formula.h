/* SPDX-License-Identifier: MIT */
/* The formula that makes a figure's home cell from the homes of its operands. */
#ifndef DOORCOST_REPORT_XLSX_FORMULA_H
#define DOORCOST_REPORT_XLSX_FORMULA_H

#include "report/xlsx/formula_map.h"

/* The longest formula that spreadsheet programs take. */
#define FORMULA_MOST 8192

enum formula_result {
    FORMULA_DONE,
    FORMULA_PLAIN, /* the figure stays a plain value: it is given or chosen, or an operand has no
                      home */
    FORMULA_LONG,  /* a sum of more terms than a formula takes: see formula_parts */
};

/* Writes the formula (with '=') of the figure whose home is `cell` into text (FORMULA_MOST bytes).
 */
enum formula_result formula_write(const struct book *book, const struct formula_map *map,
                                  const struct cell *cell, char *text);

/* Writes a sum that is too long for one formula as several, each with the value that it has, for
 * cells of `sheet`; text: room of FORMULA_MOST bytes.  The figure is then the sum of these cells.
 * false: not written whole. */
typedef void formula_part_write(void *to, const char *formula, double value);
/* Writes a sum that is too long for one formula as several, each with the value that it has, for
 * cells of `sheet`; text: room of FORMULA_MOST bytes. The figure is then the sum of these cells.
 * false: not written whole. */
bool formula_parts(const struct book *book, const struct formula_map *map, const struct cell *cell,
                   uint16_t sheet, char *text, formula_part_write *write, void *to);

/* Room for a reference: the name of a sheet, which has at most 31 letters, and a cell. */
#define REFERENCE_MOST 64

/* Writes a reference to a home as seen from sheet (`Doors!C7`) into text; returns its size. */
size_t formula_reference(const struct book *book, uint16_t sheet, const struct home *home,
                         char text[REFERENCE_MOST]);

#endif
