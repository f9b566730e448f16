/* SPDX-License-Identifier: MIT */
/* The arithmetic of figures: what each operation does to the values of its operands. */
#ifndef DOORCOST_FIGURE_OPERATION_H
#define DOORCOST_FIGURE_OPERATION_H

#include "figure/tape_parts.h"

/* The value of figure `made` (op, operands, decimals set; value not yet) from the figures before
 * it. TAPE_OK: *value is set, |value| < 10^12. */
enum tape_fault operation_value(const struct tape *tape, const struct figure *made, int64_t *value)
    __attribute__((warn_unused_result));

/* The three below: the same at once for what nearly every figure of a long list is: values of 64
 * bits at decimals that need no lining up. They take the operands as the makers have them (terms
 * below TAPE_MINUS_BIT or with it; none is passed over) and give what operation_value gives; false:
 * that has to be asked. Of a ratio: what is above and below the line. */
bool operation_short_ratio(const struct tape *tape, uint8_t decimals, const figs *over,
                           const figs *under, int64_t *value) __attribute__((warn_unused_result));
/* Of a sum: the terms, each with its sign. */
bool operation_short_sum(const struct tape *tape, uint8_t decimals, const fig *terms, size_t count,
                         int64_t *value) __attribute__((warn_unused_result));
/* Of a total: counts[i] x each[i]. */
bool operation_short_total(const struct tape *tape, uint8_t decimals, const fig *counts,
                           const fig *each, size_t count, int64_t *value)
    __attribute__((warn_unused_result));

#endif
