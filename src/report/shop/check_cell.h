/* SPDX-License-Identifier: MIT */
/* Check cells: they say `run again` when a cell of the workbook was changed so that a choice of the
 * program may no longer hold. */
#ifndef DOORCOST_REPORT_SHOP_CHECK_CELL_H
#define DOORCOST_REPORT_SHOP_CHECK_CELL_H

#include "report/shop/paper.h"

/* Columns of the check cells on the sheets Finish, Lumber and Sheets, and of the marks on the sheet
 * Rates that tell which cells were changed. */
#define CHECK_COLUMN      10
#define CHECK_PLAN_COLUMN 4
#define CHANGED_COLUMN    6

/* Whether a spreadsheet can follow when the cell of a given figure is changed: prices, rates,
 * percents, minutes, volumes.  Sizes and counts go into the parts, the set-ups and the plans, and
 * humidity into a choice: these need another run. */
bool check_is_input(const struct tape *tape, fig figure);

/* The containers of a product, whose first row is `row` of the sheet Finish: need in column need,
 * volumes of the sizes down column price - 1, prices down column price.  The choice holds while the
 * need stays between the least need that has it and what is bought, and while no size and no price
 * was changed. */
void check_containers(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t need,
                      uint16_t price, const struct product *product);

/* A cutting plan; chosen: one of the figures that its planner gave.  It holds while all that the
 * planner was given is as it was: prices, and the share kept for defects.  A plan that the job's
 * total does not hang on says so: `plan: run again`. */
void check_plan(const struct paper *paper, uint16_t sheet, uint32_t row, fig chosen);

/* The mark of an input on the sheet Rates: `as read`, or `changed`; of a percent under 1 that it is
 * one, as 5 % are typed as 5. */
void check_changed(const struct paper *paper, uint16_t sheet, uint32_t row, fig figure);

/* One cell for the quote: `as the program made it`; `changed since it was made` where a cell was
 * changed and all choices hold; or that figures were changed for which the program must be run
 * again.
 */
void check_all(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column);

/* One cell for the options, which were estimated apart: they hold while no input was changed. */
void check_options(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column);

#endif
