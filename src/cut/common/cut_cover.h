/* SPDX-License-Identifier: MIT */
/* The least sum of prices that buys enough: what a lower bound is rounded up to. */
#ifndef DOORCOST_CUT_COMMON_CUT_COVER_H
#define DOORCOST_CUT_COMMON_CUT_COVER_H

#include "base/int128.h"
#include "cut/common/cut_model.h"

/* The least total price of pieces of stock that is at least `at_least` and whose capacities add up
 * to `need` or more, no more pieces of a bin than there are copies. capacity: one a bin, any unit,
 * 0 or more, each below 2^90; need the same unit. Where sums of prices are too many to list, the
 * result is rounded up to the common divisor of the prices only. false: an allocation failed. */
__attribute__((warn_unused_result)) bool cut_cover_least(const struct cut_model *model,
                                                         const int128 *capacity, int128 need,
                                                         int64_t at_least, int64_t *least);

/* The most capacity that so much money buys, with what costs nothing, fractions of a piece allowed:
 * no less, but for rounding. */
double cut_cover_most(const struct cut_model *model, const int128 *capacity, int64_t money);

#endif
