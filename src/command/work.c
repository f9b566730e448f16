/* SPDX-License-Identifier: MIT */
#include "command/work.h"

#include "base/text.h"
#include "cut/ahead/plan_ahead.h"
#include "days/work/day_ready.h"
#include "read/job/accept.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include <stdlib.h>

static bool find_option(const struct job *job, const char *name, int *option) {
    *option = -1;
    if (name == NULL) {
        return true;
    }
    for (size_t i = 0; i < job->option_count; i++) {
        if (text_same(job->options[i].name.s, name)) {
            *option = (int)i;
            return true;
        }
    }
    return false;
}

/* What is asked of estimate `at`, of the job as listed or an option. The first of a run has the
 * plans that were asked for; its options need none where the rates price by factor. */
static struct estimate_request request_of(const struct work *work, size_t at, int option) {
    const struct work_request *const asked = &work->request;
    struct estimate_request request = {
        .option = at == 0 ? option : (int)at - 1,
        .plans = asked->plans,
        .purchase = asked->scope == WORK_PURCHASES || asked->scope == WORK_PURCHASE,
        .traced = asked->trace == TRACE_ALL || (asked->trace == TRACE_FIRST && at == 0)};
    request.plans.always = request.plans.always && at == 0;
    return request;
}

static enum work_result estimate(struct work *work, struct estimate_request request) {
    const enum estimate_result result = estimate_make(&work->estimates[work->count], &work->rates,
                                                      &work->job, request, &work->problems);
    work->count++; /* to be cleared, whatever it came to */
    struct estimate *const made = &work->estimates[work->count - 1];
    if (result == ESTIMATE_OK) {
        const bool planned = day_ready_make(made, &work->problems);
        return !planned                                       ? WORK_MEMORY
               : made->job->planned.asked && made->ready == 0 ? WORK_INPUTS
                                                              : WORK_OK;
    }
    return result == ESTIMATE_MEMORY ? WORK_MEMORY : WORK_INPUTS;
}

/* What the estimate makes of the list. */
static struct list_made list_made_by(const struct estimate *e) {
    struct list_made made = {.doors = tape_amount(&e->tape, e->quantities.all_leaves)};
    for (size_t i = 0; i < e->doors.count; i++) {
        const struct door *const door = &e->doors.doors[i];
        const struct style *const named = &e->rates->styles[door->construction->style.index];
        made.low_fronts += door->style != named ? door->row->count.amount : 0;
        made.false_pulls += door->row->use.choice == USE_FALSE_FRONT && !door->row->pulls.set &&
                                    door->construction->pull.index >= 0
                                ? door->row->count.amount
                                : 0;
    }
    return made;
}

/* An estimate takes several kilobytes a row: where only its problems are wanted, it makes way for
 * the next. */
static void keep_problems(struct work *work, size_t i) {
    if (i == 0) {
        work->made = list_made_by(&work->estimates[0]);
    }
    estimate_clear(&work->estimates[i]);
}

/* Whether the job is estimated as listed and with each of its options. */
static bool wants_all(enum work_scope scope, int option) {
    return (scope == WORK_ALL || scope == WORK_PURCHASES || scope == WORK_PROBLEMS) && option < 0;
}

/* The plans of all estimates, made at once. NULL: out of memory. */
static struct plan_ahead *plans_made(const struct work *work, size_t count, int option) {
    struct plan_ahead *const ahead = plan_ahead_new();
    bool held = ahead != NULL;
    for (size_t i = 0; i < count && held; i++) {
        struct estimate_request request = request_of(work, i, option);
        request.plans.ahead = ahead;
        held = estimate_tell_plans(&work->rates, &work->job, request);
    }
    if (!held) {
        plan_ahead_free(ahead);
        return NULL;
    }
    plan_ahead_make(ahead, plan_ahead_threads());
    return ahead;
}

/* Whether plans are worth to be told before they are asked for: one processor makes them one
 * behind the other in any case. */
static bool wants_plans(const struct work *work) {
    const struct plan_request plans = work->request.plans;
    return plan_ahead_threads() > 1 && plan_wanted_any(&work->rates, plans);
}

/* All estimates are tried, so that the problems of each are seen in one run. */
static enum work_result estimate_all(struct work *work, int option) {
    const enum work_scope scope = work->request.scope;
    const bool all = wants_all(scope, option);
    const size_t count = all ? work->job.option_count + 1 : 1;
    work->estimates = calloc(count, sizeof *work->estimates);
    if (work->estimates == NULL) {
        return WORK_MEMORY;
    }
    struct plan_ahead *ahead = NULL;
    if (wants_plans(work) && (ahead = plans_made(work, count, option)) == NULL) {
        return WORK_MEMORY;
    }
    enum work_result result = WORK_OK;
    for (size_t i = 0; i < count && result != WORK_MEMORY; i++) {
        struct estimate_request request = request_of(work, i, option);
        request.plans.ahead = ahead;
        const enum work_result one = estimate(work, request);
        result = one == WORK_OK ? result : one;
        if (scope == WORK_PROBLEMS && one == WORK_OK) {
            keep_problems(work, i);
        }
    }
    plan_ahead_free(ahead);
    return result;
}

enum work_result work_open(struct work *work, const char *path, struct work_request request) {
    *work = (struct work){.request = request};
    problems_init(&work->problems);
    if (!job_read_keep(&work->job, &work->rates, path, (struct job_instead){.saved = request.saved},
                       &work->texts, &work->problems)) {
        return WORK_MEMORY;
    }
    enum work_result result = WORK_INPUTS;
    int chosen = -1;
    if (problems_count(&work->problems, SEVERITY_ERROR) == 0) {
        result = find_option(&work->job, request.option, &chosen) ? estimate_all(work, chosen)
                                                                  : WORK_NO_OPTION;
    }
    /* an option that is not estimated here may be the one that asks */
    const bool asked = result == WORK_OK && wants_all(request.scope, chosen);
    if (!accept_apply(&work->job, &work->problems, asked)) {
        return WORK_MEMORY;
    }
    problems_sort(&work->problems);
    return work->problems.failed ? WORK_MEMORY : result;
}

void work_close(struct work *work) {
    for (size_t i = 0; i < work->count; i++) {
        estimate_clear(&work->estimates[i]);
    }
    free(work->estimates);
    job_clear(&work->job);
    rates_clear(&work->rates);
    problems_clear(&work->problems);
    *work = (struct work){0};
}
