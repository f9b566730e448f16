/* SPDX-License-Identifier: MIT */
/* A workbook of one sheet, Range: rates moved through their ranges, with bars, and what the job may
 * come to when all are drawn at once, with the steps of its cost as columns. */
#ifndef DOORCOST_REPORT_SHOP_RANGE_BOOK_H
#define DOORCOST_REPORT_SHOP_RANGE_BOOK_H

#include "price/chance.h"
#include "trial/range.h"

/* Writes it to path as it stands (the caller has seen to a safe place). ranges, chance: of base,
 * made by ranges_make and chance_make. false: not written (errno tells), or memory ran out. */
bool range_book_write(const struct estimate *base, const struct ranges *ranges,
                      const struct chance *chance, const char *path)
    __attribute__((warn_unused_result));

#endif
