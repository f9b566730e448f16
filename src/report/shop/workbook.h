/* SPDX-License-Identifier: MIT */
/* The shop's workbook of an estimate. */
#ifndef DOORCOST_REPORT_SHOP_WORKBOOK_H
#define DOORCOST_REPORT_SHOP_WORKBOOK_H

#include "price/estimate.h"

/* Writes the workbook of base to path as it stands (the caller has seen to a safe place).  options:
 * option_count estimates of the same job. false: not written (errno tells), or memory ran out. */
bool workbook_write(const char *path, const struct estimate *base, const struct estimate *options,
                    size_t option_count, const struct problems *problems)
    __attribute__((warn_unused_result));

#endif
