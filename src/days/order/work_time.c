/* SPDX-License-Identifier: MIT */
/* Minutes of work are found by dividing through the length of a day, minutes on the clock by
 * halving the list of working days. */
#include "days/order/work_time.h"

/* Work begins at eight where the day is long enough for it: nothing but the length of the night
 * counts, and that is the same at any hour. */
#define OPENS 480

bool work_time_make(struct work_time *time, int32_t minutes, int first_weekday, unsigned weekdays,
                    const int32_t *off, size_t off_count, struct pool *pool) {
    int32_t *const days = pool_take(pool, MOST_WORK_DAYS, sizeof *days);
    size_t count = 0;
    size_t next = 0;
    if (days == NULL) {
        return false;
    }
    for (int32_t day = 0; count < MOST_WORK_DAYS; day++) {
        while (next < off_count && off[next] < day) {
            next++;
        }
        const bool is_off = next < off_count && off[next] == day;
        if ((weekdays >> ((first_weekday + day) % 7) & 1u) != 0 && !is_off) {
            days[count++] = day;
        }
    }
    *time = (struct work_time){.opens = minutes + OPENS > CLOCK_DAY ? CLOCK_DAY - minutes : OPENS,
                               .minutes = minutes,
                               .days = days,
                               .day_count = count};
    return true;
}

/* The opening of a working day on the clock. */
static int64_t opening(const struct work_time *time, int64_t day) {
    const size_t last = time->day_count - 1;
    const size_t at = day > (int64_t)last ? last : (size_t)day;
    return (int64_t)time->days[at] * CLOCK_DAY + time->opens;
}

int64_t work_day(const struct work_time *time, int64_t at) {
    return at / time->minutes;
}

int64_t clock_begins(const struct work_time *time, int64_t at) {
    return opening(time, at / time->minutes) + at % time->minutes;
}

int64_t clock_ends(const struct work_time *time, int64_t at) {
    return at == 0 ? opening(time, 0) : clock_begins(time, at - 1) + 1;
}

int64_t work_from(const struct work_time *time, int64_t clock) {
    size_t low = 0; /* the first day that has not closed by then */
    size_t high = time->day_count;
    while (low < high) {
        const size_t middle = low + (high - low) / 2;
        if (opening(time, (int64_t)middle) + time->minutes > clock) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    const int64_t first = (int64_t)low * time->minutes;
    const int64_t begun = low < time->day_count ? clock - opening(time, (int64_t)low) : 0;
    return begun > 0 ? first + begun : first;
}
