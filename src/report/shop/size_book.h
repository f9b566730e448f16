/* SPDX-License-Identifier: MIT */
/* A workbook of prices by size, a sheet a style: what one more costs beside a flat price by area,
 * as a table and a chart, then prices and cost for each count, added to the job and alone. */
#ifndef DOORCOST_REPORT_SHOP_SIZE_BOOK_H
#define DOORCOST_REPORT_SHOP_SIZE_BOOK_H

#include "price/size_table.h"

/* Styles that a workbook has sheets for. */
#define SIZE_BOOK_MOST_STYLES 28

/* Writes it to path as it stands (the caller has seen to a safe place). table: of base, made by
 * size_table_make, with at most SIZE_BOOK_MOST_STYLES styles. false: not written (errno tells), or
 * memory ran out. */
bool size_book_write(const struct estimate *base, const struct size_table *table, const char *path)
    __attribute__((warn_unused_result));

#endif
