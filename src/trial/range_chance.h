/* SPDX-License-Identifier: MIT */
/* From ranges whose ends were estimated to draws from them: the ends are what tells whether a range
 * may be drawn. */
#ifndef DOORCOST_TRIAL_RANGE_CHANCE_H
#define DOORCOST_TRIAL_RANGE_CHANCE_H

#include "price/chance.h"
#include "trial/range.h"

/* What the ends of each number of the rates came to, for chance_make. ranges: made of base by
 * ranges_make. In pool; NULL: out of memory. */
const struct chance_ends *range_chance_ends(const struct ranges *ranges,
                                            const struct estimate *base, struct pool *pool);

#endif
