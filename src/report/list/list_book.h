/* SPDX-License-Identifier: MIT */
/* A list of doors to fill in as a workbook: on a phone, a tablet, in a spreadsheet. */
#ifndef DOORCOST_REPORT_LIST_LIST_BOOK_H
#define DOORCOST_REPORT_LIST_LIST_BOOK_H

#include "base/date.h"
#include "draft/list_draft.h"

/* Rows that can be filled in with checks in their cells; more may be added below. */
#define LIST_BOOK_ROWS 500

/* Writes it to path as it stands (the caller has seen to a safe place). false: not written, or
 * memory ran out. */
bool list_book_write(const struct list_draft *list, struct date date, const char *path)
    __attribute__((warn_unused_result));

#endif
