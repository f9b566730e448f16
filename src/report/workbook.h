/* SPDX-License-Identifier: MIT */
/* The shop's workbook of an estimate. */
#ifndef DOORCOST_REPORT_WORKBOOK_H
#define DOORCOST_REPORT_WORKBOOK_H

#include "price/estimate.h"

enum book_result {
    BOOK_OK,
    BOOK_EDITED,       /* path holds a workbook that is not ours or that somebody has saved since */
    BOOK_CANNOT_WRITE, /* errno tells */
    BOOK_MEMORY
};

/* Writes the workbook of base to path, beside it first and then renamed.  options: option_count
 * estimates of the same job. force: overwrite whatever stands there. On any result but BOOK_OK what
 * stood at path is untouched. */
enum book_result workbook_write(const char *path, bool force, const struct estimate *base,
                                const struct estimate *options, size_t option_count,
                                const struct problems *problems)
    __attribute__((warn_unused_result));

#endif
