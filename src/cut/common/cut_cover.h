/* SPDX-License-Identifier: MIT */
/* The least sum of prices that buys enough: what a lower bound is rounded up to. */
#ifndef DOORCOST_CUT_COMMON_CUT_COVER_H
#define DOORCOST_CUT_COMMON_CUT_COVER_H

#include "base/int128.h"
#include "cut/common/cut_model.h"

/* The least total price of pieces of stock that is at least `at_least` and whose capacities add up
 * to `need` or more. capacity: one a bin, any unit, 0 or more, each below 2^90; need the same
 * unit. Limits of copies are looked at only where the price is 0, which keeps the result a lower
 * bound. Where sums of prices are too many to list, the result is rounded up to the common divisor
 * of the prices only. false: an allocation failed. */
__attribute__((warn_unused_result)) bool cut_cover_least(const struct cut_model *model,
                                                         const int128 *capacity, int128 need,
                                                         int64_t at_least, int64_t *least);

#endif
