/* SPDX-License-Identifier: MIT */
/* Time at work and time on the clock.
 *
 * Time at work is counted in minutes through the working days alone: minute 0 is the opening of the
 * first one, and a day's last minute is followed by the first of the next working day. Time on the
 * clock is counted in minutes from midnight before day 0, nights and days off included: glue and
 * finish dry by that one. */
#ifndef DOORCOST_DAYS_ORDER_WORK_TIME_H
#define DOORCOST_DAYS_ORDER_WORK_TIME_H

#include "base/pool.h"

#include <stdint.h>

#define CLOCK_DAY 1440 /* minutes */

/* Working days that a plan goes through at most: 40 years. What would lie later is taken for as
 * late as the last of them. */
#define MOST_WORK_DAYS 10000

/* When work is done. The arrays are borrowed, or of the pool that made them. */
struct work_time {
    int32_t opens;       /* minute of the day, 0 or more; opens + minutes is CLOCK_DAY at most */
    int32_t minutes;     /* worked in a working day, 1 or more */
    const int32_t *days; /* the working days, ascending; day 0 is the first that may be one */
    size_t day_count;    /* 1 or more */
};

/* Of which weekdays are worked and which days are off. first_weekday: of day 0, 0 is Monday.
 * weekdays: bits 1 << weekday, at least one. off: day numbers, ascending. Memory of pool. false:
 * out of memory. */
bool work_time_make(struct work_time *time, int32_t minutes, int first_weekday, unsigned weekdays,
                    const int32_t *off, size_t off_count, struct pool *pool)
    __attribute__((warn_unused_result));

/* The minute on the clock at which minute `at` of work begins. at: 0 or more. */
int64_t clock_begins(const struct work_time *time, int64_t at);

/* The minute on the clock at which work that took until `at` has ended: closing time, where at is
 * the end of a day. */
int64_t clock_ends(const struct work_time *time, int64_t at);

/* The first minute of work that does not begin before a minute on the clock. */
int64_t work_from(const struct work_time *time, int64_t clock);

/* The working day, from 0 on, that minute `at` of work is of. */
int64_t work_day(const struct work_time *time, int64_t at);

#endif
