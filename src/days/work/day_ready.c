/* SPDX-License-Identifier: MIT */
#include "days/work/day_ready.h"

#include "days/work/day_plan.h"

static void refuse(const struct estimate *e, struct problems *problems, const char *why) {
    problem_add(problems, SEVERITY_ERROR, "ready-unplanned", e->job->ready.place, "ready: %s", why);
}

/* Doors that are sent away for a time that nobody knows. */
static bool is_away(const struct estimate *e) {
    for (size_t b = 0; b < e->finish.batch_count && !e->rates->days.finisher.set; b++) {
        if (e->rates->finishes[e->finish.batches[b].finish].put_out.set) {
            return true;
        }
    }
    return false;
}

bool day_ready_make(struct estimate *e, struct problems *problems) {
    struct day_plan plan;
    struct pool pool;
    struct day_job job = {.estimate = e};
    if (!e->job->planned.asked) {
        return true;
    }
    if (is_away(e)) {
        refuse(e, problems,
               "the rates do not say how long doors are away whose finish is put out; write "
               "'finisher' into [days] of the rates, or a day in place of 'planned'");
        return true;
    }
    pool_init(&pool);
    const enum day_result result = day_plan_make(
        &plan, (struct day_request){.jobs = &job, .count = 1, .from = INT32_MIN}, &pool);
    switch (result) {
    case DAY_OK:
        e->ready = plan.ready;
        break;
    case DAY_TOO_MANY:
    case DAY_TOO_LONG:
        refuse(e, problems,
               "the work is too much for a plan by day; write a day in place of 'planned'");
        break;
    case DAY_MEMORY:
        break;
    }
    pool_clear(&pool);
    return result != DAY_MEMORY;
}
