/* SPDX-License-Identifier: MIT */
/* Which styles, sizes and counts `table` goes over: as asked for, else those of the job. */
#ifndef DOORCOST_COMMAND_SIZES_H
#define DOORCOST_COMMAND_SIZES_H

#include "base/pool.h"
#include "command/command.h"

#include <stdint.h>

/* At most of each, so that a table takes minutes at the worst and can be read. */
#define MOST_SIZES  24
#define MOST_COUNTS 12

/* Each ascending but for the styles, none twice. Lengths in nm, as measured; styles: indices into
 * rates.styles. */
struct sizes {
    int32_t *styles;
    int64_t *widths, *heights, *counts;
    size_t style_count, width_count, height_count, count_count;
};

/* Reads the words behind the job file, --widths, --heights and --counts. Without words: the style
 * of which the job has most doors. Without sizes: multiples of 3 in or 100 mm between those of the
 * job's doors, at most four. Without counts: 1, 2, 5, 10, 50. Any status but STATUS_DONE: said on
 * err. Memory of pool. work: with its first estimate. */
enum status sizes_read(struct sizes *sizes, const struct request *request, const struct work *work,
                       struct pool *pool, struct streams streams);

#endif
