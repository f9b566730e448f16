/* SPDX-License-Identifier: MIT */
#include "trial/range_chance.h"

const struct chance_ends *range_chance_ends(const struct ranges *ranges,
                                            const struct estimate *base, struct pool *pool) {
    const struct rate_numbers *const numbers = &base->rates->numbers;
    struct chance_ends *const ends = pool_take(pool, numbers->count, sizeof *ends);
    for (size_t i = 0; ends != NULL && i < ranges->count; i++) {
        const struct range_row *const row = &ranges->rows[i];
        if (row->low.has && row->high.has) {
            ends[row->number - numbers->list] =
                (struct chance_ends){.known = true,
                                     .low = ranges->job.direct + row->low.more.direct,
                                     .high = ranges->job.direct + row->high.more.direct};
        }
    }
    return ends;
}
