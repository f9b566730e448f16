/* SPDX-License-Identifier: MIT */
/* Check cells: they say `run again` when a cell of the workbook was changed so that a choice of the
 * program may no longer hold. */
#ifndef DOORCOST_REPORT_SHOP_CHECK_CELL_H
#define DOORCOST_REPORT_SHOP_CHECK_CELL_H

#include "report/shop/paper.h"

/* Columns of the check cells on the sheets Finish, Lumber and Sheets; of the values on the sheet
 * Rates, and of the marks there that tell which were changed, right of which stands what was read.
 */
#define CHECK_COLUMN      10
#define CHECK_PLAN_COLUMN 4
#define VALUE_COLUMN      3
#define CHANGED_COLUMN    6

/* Behind a difference: two numbers are the same when they differ by less than any figure can:
 * programs don't read 0.07 to the same last bit. */
#define CHECK_SAME_AS "<same_within" /* a cell of the sheet Checks by its name */

/* Which given figures, by their ids, a spreadsheet can follow when their cells are changed: prices,
 * rates, percents, minutes, volumes.  Sizes and counts go into the parts, the set-ups and the
 * plans, and humidity into a choice: these need another run. To be freed; NULL: out of memory. */
bool *check_inputs(const struct tape *tape) __attribute__((warn_unused_result));

/* Notes the containers of a product, whose check cell is in this row of the sheet Finish. The
 * choice holds while the need stays between the least need that has it and what is bought, and
 * while no size and no price was changed. */
void check_containers(const struct paper *paper, uint16_t sheet, uint32_t row,
                      const struct product *product);

/* Notes how many spare rails are milled, whose check cell is in this row of the sheet Lumber. It
 * holds while the rails spoiled, what a spare costs and what a set-up costs are as they were. */
void check_spares(const struct paper *paper, uint16_t sheet, uint32_t row,
                  const struct spare_rails *rails);

/* Notes a cutting plan; chosen: one of the figures that its planner gave.  It holds while all that
 * the planner was given is as it was: prices, and the share kept for defects.  A plan that the
 * job's total does not hang on says so: `plan: run again`. */
void check_plan(const struct paper *paper, uint16_t sheet, uint32_t row, fig chosen);

/* The mark of an input on the sheet Rates, and right of it what was read: `as read`, or `changed`;
 * of a percent under 1 that it is one, as 5 % are typed as 5. */
void check_changed(const struct paper *paper, uint16_t sheet, uint32_t row, fig figure);

/* A formula that counts the marks of changed inputs; after the sheet Rates. */
const char *check_changed_count(const struct paper *paper);

/* A cell that repeats what all checks come to. */
void check_all(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
               enum look look);

/* A cell that repeats whether the options, which were estimated apart, are as they were made. */
void check_options(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column);

/* Cells of the sheet Checks, by their places in formulas. */
struct check_counts {
    const char *again;   /* how many choices may not hold */
    const char *sums;    /* how many sums do not add up */
    const char *changed; /* how many inputs were changed */
    const char *total;   /* whether the total is as made: `no` where it is not */
};

/* The cell that check_all repeats: `as the program made it`; `changed since it was made` where a
 * cell was changed and all choices hold; or that figures were changed for which the program must be
 * run again. */
void check_state(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                 const struct check_counts *at);

/* The cell that check_options repeats; changed: as in check_counts. */
void check_options_state(const struct paper *paper, uint16_t sheet, uint32_t row, uint16_t column,
                         const char *changed);

#endif
