/* SPDX-License-Identifier: MIT */
/* What buying lumber and buying sheets work with beside the tape. */
#ifndef DOORCOST_STOCK_ORDER_H
#define DOORCOST_STOCK_ORDER_H

#include "door/quantity.h"
#include "stock/plan_part.h"

struct order {
    struct pool *pool;
    const struct rates *rates;
    const struct quantities *quantities;
    struct problems *problems;
    struct plan_wish wish;
};

#endif
