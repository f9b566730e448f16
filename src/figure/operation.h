/* SPDX-License-Identifier: MIT */
/* The arithmetic of figures: what each operation does to the values of its operands. */
#ifndef DOORCOST_FIGURE_OPERATION_H
#define DOORCOST_FIGURE_OPERATION_H

#include "figure/tape_parts.h"

/* The value of figure `made` (op, operands, decimals set; value not yet) from the figures before
 * it. TAPE_OK: *value is set, |value| < 10^12. */
enum tape_fault operation_value(const struct tape *tape, const struct figure *made, int64_t *value)
    __attribute__((warn_unused_result));

#endif
