/* SPDX-License-Identifier: MIT */
#include "days/work/day_sums.h"

#include "base/order.h"

#include <stdlib.h>

int32_t day_of_clock(const struct work_time *time, int32_t start, int64_t clock) {
    /* what ends at closing time is of that day */
    const int64_t at = clock == 0 ? 0 : work_from(time, clock - 1);
    const int64_t day = work_day(time, at);
    const int64_t last = (int64_t)time->day_count - 1;
    return start + time->days[day > last ? last : day];
}

/* The work of a step on one day. */
struct piece {
    int64_t day; /* of work */
    size_t step, job;
    int64_t begins; /* minute of work */
    int64_t minutes;
};

static int as_the_work_goes(const void *x, const void *y) {
    const struct piece *const a = x;
    const struct piece *const b = y;
    const int day = order_by_number(a->day, b->day);
    const int job = order_by_number((int64_t)a->job, (int64_t)b->job);
    const int begins = order_by_number(a->begins, b->begins);
    return day != 0      ? day
           : job != 0    ? job
           : begins != 0 ? begins
                         : order_by_number((int64_t)a->step, (int64_t)b->step);
}

static int64_t days_of(const struct work_time *time, const struct day_step *step) {
    return step->minutes == 0 ? 0
                              : work_day(time, step->begins + step->minutes - 1) -
                                    work_day(time, step->begins) + 1;
}

/* The pieces of all steps, sorted; *count of them. NULL: out of memory. */
static struct piece *pieces_make(const struct day_plan *plan, const struct work_time *time,
                                 size_t *count, struct pool *pool) {
    size_t n = 0;
    for (size_t s = 0; s < plan->step_count; s++) {
        n += (size_t)days_of(time, &plan->steps[s]);
    }
    struct piece *const pieces = pool_take(pool, n, sizeof *pieces);
    *count = 0;
    for (size_t s = 0; s < plan->step_count && pieces != NULL; s++) {
        const struct day_step *const step = &plan->steps[s];
        const int64_t first = work_day(time, step->begins);
        for (int64_t d = first; d < first + days_of(time, step); d++) {
            const int64_t from = d == first ? step->begins : d * time->minutes;
            const int64_t end = step->begins + step->minutes;
            const int64_t to = end < (d + 1) * time->minutes ? end : (d + 1) * time->minutes;
            pieces[(*count)++] = (struct piece){
                .day = d, .step = s, .job = step->job, .begins = from, .minutes = to - from};
        }
    }
    if (pieces != NULL) {
        qsort(pieces, n, sizeof *pieces, as_the_work_goes);
    }
    return pieces;
}

/* Adds a piece to its line: one of the same day, job, operation and coat, or a new one. */
static void add_piece(struct day_plan *plan, const struct piece *piece, int32_t day) {
    const struct day_step *const step = &plan->steps[piece->step];
    const int64_t minutes = piece->minutes * step->hands;
    for (size_t i = plan->line_count; i-- > 0;) {
        struct day_line *const line = &plan->lines[i];
        if (line->day != day || line->job != piece->job) {
            break;
        }
        if (line->operation == step->operation && line->what == step->what) {
            line->minutes += minutes;
            return;
        }
    }
    plan->lines[plan->line_count++] = (struct day_line){.day = day,
                                                        .job = piece->job,
                                                        .operation = step->operation,
                                                        .what = step->what,
                                                        .minutes = minutes};
}

bool day_sums_make(struct day_plan *plan, const struct work_time *time, int32_t start,
                   const struct order_work *work, struct pool *pool) {
    size_t count = 0;
    struct piece *const pieces = pieces_make(plan, time, &count, pool);
    plan->lines = pool_take(pool, count, sizeof *plan->lines);
    if (pool_failed(pool)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        struct day_job *const job = &plan->jobs[pieces[i].job];
        const int32_t day = start + time->days[pieces[i].day];
        add_piece(plan, &pieces[i], day);
        job->begins = job->minutes == 0 || day < job->begins ? day : job->begins;
        job->minutes += pieces[i].minutes * plan->steps[pieces[i].step].hands;
    }
    for (size_t s = 0; s < plan->step_count; s++) {
        struct day_job *const job = &plan->jobs[plan->steps[s].job];
        const int32_t day =
            day_of_clock(time, start, order_held_until(work, s, plan->steps[s].begins));
        job->ready = day > job->ready ? day : job->ready;
        plan->minutes += plan->steps[s].minutes * plan->steps[s].hands;
    }
    return true;
}
