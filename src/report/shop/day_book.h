/* SPDX-License-Identifier: MIT */
/* A workbook of one sheet, Days: the work by day as a list to tick off, and what waits meanwhile.
 */
#ifndef DOORCOST_REPORT_SHOP_DAY_BOOK_H
#define DOORCOST_REPORT_SHOP_DAY_BOOK_H

#include "days/work/day_rows.h"

/* Writes it to path as it stands (the caller has seen to a safe place). rows: of the plan. false:
 * not written (errno tells), or memory ran out. */
bool day_book_write(const struct day_plan *plan, const struct day_rows *rows, const char *path)
    __attribute__((warn_unused_result));

#endif
