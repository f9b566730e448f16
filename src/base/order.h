/* SPDX-License-Identifier: MIT */
/* The order of numbers, as qsort wants it told. */
#ifndef DOORCOST_BASE_ORDER_H
#define DOORCOST_BASE_ORDER_H

#include <stdint.h>

/* -1, 0 or 1 as a is less than b, equal, or more: without a difference that may overflow. */
static inline int order_by_number(int64_t a, int64_t b) {
    return (a > b) - (a < b);
}

#endif
