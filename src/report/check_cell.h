/* SPDX-License-Identifier: MIT */
/* Check cells: they say `run again` when a cell of the workbook was changed so that a choice of the
 * program may no longer hold. */
#ifndef DOORCOST_REPORT_CHECK_CELL_H
#define DOORCOST_REPORT_CHECK_CELL_H

#include "report/paper.h"

#define CHECK_SHEET "Finish"
/* Column of the check cells on that sheet, and the last row that the quote looks at. */
#define CHECK_COLUMN 10
#define CHECK_ROWS   2000

/* The containers of a product, whose first row is `row` of the sheet Finish: need in column need,
 * prices of the sizes down column price.  The choice holds while the need stays between the least
 * need that has it and what is bought, and while no price was changed. */
void check_containers(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t need,
                      uint16_t price, const struct product *product);

/* One cell for all of them: `ok`, or that figures were changed for which the program must be run
 * again. */
void check_all(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column);

#endif
