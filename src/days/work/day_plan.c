/* SPDX-License-Identifier: MIT */
/* The plan is made for the shop as it is, then once more for each thing of which there is one more.
 */
#include "days/work/day_plan.h"

#include "base/order.h"
#include "days/work/day_sums.h"
#include "days/work/step_job.h"
#include "model/hazard.h"

#include <assert.h>
#include <stdlib.h>

/* Orders that are tried are as many as make up that much work, within limits: some tenths of a
 * second. */
#define TRY_TASKS   200000
#define LEAST_TRIES 20
#define MOST_TRIES  1000

/* What plans are made with. */
struct maker {
    struct day_request request;
    const struct rates *rates;
    struct work_time time;
    int32_t start; /* date_number of day 0 */
    struct day_job *jobs;
    struct pool *pool;
};

/* A plan of the shop with that much of each resource. */
struct trial {
    struct step_list list;
    struct order_work work;
    struct order_plan plan;
};

static int32_t count_of(const struct value *value, int32_t absent) {
    return value->set ? (int32_t)value->amount : absent;
}

/* How much there is of each resource; NULL: out of memory. */
static int32_t *capacities(const struct maker *m) {
    const struct rates *const rates = m->rates;
    const struct day_rules *const days = &rates->days;
    int32_t *const capacity =
        pool_take(m->pool, RESOURCE_MACHINES + rates->machine_count, sizeof *capacity);
    if (capacity == NULL) {
        return NULL;
    }
    capacity[RESOURCE_PEOPLE] = count_of(&days->people, 1);
    capacity[RESOURCE_RACKS] = days->racks.set && days->places.set
                                   ? count_of(&days->racks, 1) * count_of(&days->places, 1)
                                   : NEVER_SCARCE;
    for (size_t i = 0; i < rates->machine_count; i++) {
        capacity[RESOURCE_MACHINES + i] = rates->machines[i].kind.choice == MACHINE_CLAMPS
                                              ? count_of(&days->clamps, NEVER_SCARCE)
                                              : 1;
    }
    return capacity;
}

/* The steps of all jobs, put in order. trial: always left so that step_list_clear may be called. */
static enum day_result try_make(struct trial *trial, const struct maker *m, const int32_t *capacity,
                                bool lags) {
    struct step_list *const list = &trial->list;
    *trial = (struct trial){.list = {.pool = m->pool, .capacity = capacity}};
    for (size_t j = 0; j < m->request.count && !list->failed; j++) {
        list->job = j;
        list->ready = (int64_t)(m->jobs[j].from - m->start) * CLOCK_DAY;
        job_steps(list, m->jobs[j].estimate);
        if (list->count > MOST_TASKS) {
            return DAY_TOO_MANY;
        }
    }
    for (size_t t = 0; t < list->count && !lags; t++) {
        list->tasks[t].hold = 0;
    }
    for (size_t i = 0; i < list->link_count && !lags; i++) {
        list->links[i].lag = 0;
    }
    trial->work =
        (struct order_work){.time = &m->time,
                            .tasks = list->tasks,
                            .task_count = list->count,
                            .demands = list->demands,
                            .links = list->links,
                            .capacity = capacity,
                            .resource_count = RESOURCE_MACHINES + m->rates->machine_count};
    int32_t tries = (int32_t)(TRY_TASKS / (list->count + 1));
    tries = tries > MOST_TRIES ? MOST_TRIES : tries;
    tries = tries < LEAST_TRIES ? LEAST_TRIES : tries;
    return !list->failed && order_make(&trial->plan, &trial->work, tries, m->pool) ? DAY_OK
                                                                                   : DAY_MEMORY;
}

static int32_t day_at(const struct maker *m, int64_t clock) {
    return day_of_clock(&m->time, m->start, clock);
}

/* Working days from the first to the one that a minute on the clock is of, both counted. */
static int64_t days_until(const struct maker *m, int64_t clock) {
    return clock == 0 ? 1 : work_day(&m->time, work_from(&m->time, clock - 1)) + 1;
}

/* Whether a resource is used at all. */
static bool is_used(const struct order_work *work, size_t resource) {
    for (size_t t = 0; t < work->task_count; t++) {
        for (size_t i = 0; i < work->tasks[t].demand_count; i++) {
            if (work->demands[work->tasks[t].first_demand + i].resource == (int32_t)resource) {
                return true;
            }
        }
    }
    return false;
}

static int latest_first(const void *x, const void *y) {
    const struct day_bound *const a = x;
    const struct day_bound *const b = y;
    const int clock = order_by_number(b->clock, a->clock);
    const int cause = order_by_number(a->cause, b->cause);
    return clock != 0 ? clock : cause != 0 ? cause : order_by_number(a->machine, b->machine);
}

static enum day_cause cause_of(const struct rates *rates, size_t resource) {
    if (resource == RESOURCE_PEOPLE || resource == RESOURCE_RACKS) {
        return resource == RESOURCE_PEOPLE ? CAUSE_PEOPLE : CAUSE_RACKS;
    }
    return rates->machines[resource - RESOURCE_MACHINES].kind.choice == MACHINE_CLAMPS
               ? CAUSE_CLAMPS
               : CAUSE_MACHINE;
}

/* The bounds, the latest first. path: the bound by work alone, without what dries. */
static bool take_bounds(struct day_plan *plan, const struct maker *m, const struct trial *trial,
                        int64_t path) {
    struct day_bound *const bounds =
        pool_take(m->pool, trial->work.resource_count + 2, sizeof *bounds);
    size_t n = 0;
    assert(trial->plan.by_resource != NULL);
    if (bounds == NULL) {
        return false;
    }
    bounds[n++] = (struct day_bound){.cause = CAUSE_WORK, .machine = -1, .clock = path};
    if (trial->plan.path > path) {
        bounds[n++] =
            (struct day_bound){.cause = CAUSE_DRYING, .machine = -1, .clock = trial->plan.path};
    }
    for (size_t r = 0; r < trial->work.resource_count; r++) {
        if (trial->work.capacity[r] < NEVER_SCARCE && is_used(&trial->work, r)) {
            const int32_t machine = r >= RESOURCE_MACHINES ? (int32_t)r - RESOURCE_MACHINES : -1;
            bounds[n++] = (struct day_bound){.cause = cause_of(m->rates, r),
                                             .machine = machine,
                                             .clock = trial->plan.by_resource[r]};
        }
    }
    for (size_t i = 0; i < n; i++) {
        bounds[i].day = day_at(m, bounds[i].clock);
    }
    qsort(bounds, n, sizeof *bounds, latest_first);
    plan->bounds = bounds;
    plan->bound_count = n;
    return true;
}

/* What all is done by then; a shop that has more may do as before, so it is never later. */
static void add_more(struct day_plan *plan, const struct maker *m, const struct day_bound *by,
                     int64_t then, int64_t end) {
    const int64_t clock = then < end ? then : end;
    plan->more[plan->more_count++] =
        (struct day_more){.cause = by->cause,
                          .machine = by->machine,
                          .day = day_at(m, clock),
                          .gained = days_until(m, end) - days_until(m, clock)};
}

/* The plan with one more of what a bound is by. */
static enum day_result try_more(struct day_plan *plan, const struct maker *m,
                                const struct day_bound *by, int64_t end) {
    const size_t resource = by->cause == CAUSE_PEOPLE  ? RESOURCE_PEOPLE
                            : by->cause == CAUSE_RACKS ? RESOURCE_RACKS
                                                       : RESOURCE_MACHINES + (size_t)by->machine;
    struct trial trial = {0};
    int32_t *const capacity = capacities(m);
    if (capacity == NULL) {
        return DAY_MEMORY;
    }
    capacity[resource] += by->cause == CAUSE_RACKS ? count_of(&m->rates->days.places, 1) : 1;
    const enum day_result result = try_make(&trial, m, capacity, true);
    if (result == DAY_OK) {
        add_more(plan, m, by, trial.plan.end, end);
    }
    step_list_clear(&trial.list);
    return result;
}

/* One more of all that is scarce, of machines the one alone that holds up the most; and what would
 * be if nothing had to dry, undried. */
static enum day_result take_more(struct day_plan *plan, const struct maker *m, int64_t undried,
                                 int64_t end) {
    enum day_result result = DAY_OK;
    bool machine = false;
    plan->more = pool_take(m->pool, plan->bound_count, sizeof *plan->more);
    if (plan->more == NULL) {
        return DAY_MEMORY;
    }
    for (size_t i = 0; i < plan->bound_count && result == DAY_OK; i++) {
        const struct day_bound *const by = &plan->bounds[i];
        const bool another = by->cause == CAUSE_MACHINE && machine;
        machine = machine || by->cause == CAUSE_MACHINE;
        if (by->cause == CAUSE_DRYING) {
            add_more(plan, m, by, undried, end);
        } else if (by->cause != CAUSE_WORK && !another) {
            result = try_more(plan, m, by, end);
        }
    }
    return result;
}

/* The operations that are not planned, and their minutes. */
static bool take_unplanned(struct day_job *job, struct pool *pool) {
    const struct estimate *const e = job->estimate;
    job->left = "";
    for (size_t i = 0; i < e->labor.operation_count; i++) {
        const struct operation_figures *const work = &e->labor.operations[i];
        if (place_of(e, work) == WORK_UNPLANNED) {
            job->left = pool_words(pool, "%s%s%s", job->left, job->left[0] == '\0' ? "" : ", ",
                                   e->rates->operations[work->operation].name.s);
            job->unplanned += tape_scaled(&e->tape, work->person_minutes, 0);
        }
    }
    return !pool_failed(pool);
}

/* When a job says that it may be begun. */
static int32_t taken_on(const struct job *job) {
    return job->planned.dated         ? date_number(job->planned.from)
           : job->agreed.to.s != NULL ? date_number(job->agreed.date)
                                      : job_quoted(job);
}

/* From when each job may be worked on. */
static bool start_jobs(struct maker *m) {
    for (size_t j = 0; j < m->request.count; j++) {
        const int32_t from =
            m->request.from == INT32_MIN ? taken_on(m->jobs[j].estimate->job) : m->request.from;
        m->jobs[j].from = from;
        m->start = j == 0 || from < m->start ? from : m->start;
        if (!take_unplanned(&m->jobs[j], m->pool)) {
            return false;
        }
    }
    return true;
}

static int by_day(const void *x, const void *y) {
    return order_by_number(*(const int32_t *)x, *(const int32_t *)y);
}

/* Numbers of the days off, ascending; *count of them. NULL: out of memory. */
static int32_t *days_off(const struct maker *m, size_t *count) {
    const struct days_off *const off = &m->rates->days.off;
    size_t most = 0;
    for (size_t i = 0; i < off->count; i++) {
        most += (size_t)(date_number(off->spans[i].last) - date_number(off->spans[i].first)) + 1;
    }
    int32_t *const numbers = pool_take(m->pool, most, sizeof *numbers);
    *count = 0;
    for (size_t i = 0; i < off->count && numbers != NULL; i++) {
        const int32_t last = date_number(off->spans[i].last);
        for (int32_t day = date_number(off->spans[i].first); day <= last; day++) {
            numbers[(*count)++] = day - m->start;
        }
    }
    if (numbers != NULL) {
        qsort(numbers, most, sizeof *numbers, by_day);
    }
    return numbers;
}

/* The working days from the start on. */
static bool start_time(struct maker *m) {
    const unsigned weekdays = m->rates->days.weekdays;
    const struct value *const hours = &m->rates->shop.hours_per_day;
    int64_t minutes = hours->amount * 60;
    size_t count = 0;
    const int32_t *const off = days_off(m, &count);
    for (uint8_t d = 0; d < hours->decimals; d++) {
        minutes /= 10;
    }
    return off != NULL && work_time_make(&m->time, (int32_t)minutes, date_weekday(m->start),
                                         weekdays == 0 ? 31 : weekdays, off, count, m->pool);
}

/* What papers show of the plan. */
static enum day_result take_plan(struct day_plan *plan, const struct maker *m,
                                 const struct trial *trial) {
    const struct step_list *const list = &trial->list;
    plan->jobs = m->jobs;
    plan->job_count = m->request.count;
    plan->steps = pool_copy(m->pool, list->steps, list->count * sizeof *list->steps);
    plan->step_count = list->count;
    if (plan->steps == NULL) {
        return DAY_MEMORY;
    }
    for (size_t s = 0; s < list->count; s++) {
        plan->steps[s].begins = trial->plan.begins[s];
        plan->steps[s].free =
            work_from(&m->time, order_held_until(&trial->work, s, plan->steps[s].begins));
        if (work_day(&m->time, plan->steps[s].begins + plan->steps[s].minutes) >=
            (int64_t)m->time.day_count - 1) {
            return DAY_TOO_LONG;
        }
    }
    plan->days = days_until(m, trial->plan.end);
    if (plan->days > (int64_t)m->time.day_count) {
        return DAY_TOO_LONG; /* what dries or is away ends behind the last of the steps */
    }
    plan->ready = day_at(m, trial->plan.end);
    plan->soonest = day_at(m, trial->plan.bound);
    plan->soonest_days = days_until(m, trial->plan.bound);
    plan->day_minutes = m->time.minutes;
    plan->first = m->start + m->time.days[0];
    plan->few_hands = list->few_hands;
    plan->people = trial->work.capacity[RESOURCE_PEOPLE];
    plan->clamps = count_of(&m->rates->days.clamps, NEVER_SCARCE);
    plan->places = trial->work.capacity[RESOURCE_RACKS];
    int32_t *const days = pool_copy(m->pool, m->time.days, (size_t)plan->days * sizeof *days);
    if (days == NULL || !day_sums_make(plan, &m->time, m->start, &trial->work, m->pool)) {
        return DAY_MEMORY;
    }
    for (int64_t d = 0; d < plan->days; d++) {
        days[d] += m->start;
    }
    plan->work_days = days;
    plan->work_day_count = (size_t)plan->days;
    return DAY_OK;
}

enum day_result day_plan_make(struct day_plan *plan, struct day_request request,
                              struct pool *pool) {
    struct maker m = {.request = request,
                      .rates = request.jobs[0].estimate->rates,
                      .jobs = request.jobs,
                      .pool = pool};
    struct trial trial = {0};
    struct trial bare = {0};
    *plan = (struct day_plan){0};
    if (!start_jobs(&m) || !start_time(&m)) {
        return DAY_MEMORY;
    }
    const int32_t *const capacity = capacities(&m);
    enum day_result result = capacity == NULL ? DAY_MEMORY : try_make(&trial, &m, capacity, true);
    if (result == DAY_OK) {
        result = take_plan(plan, &m, &trial);
    }
    if (result == DAY_OK) {
        result = try_make(&bare, &m, capacity, false);
    }
    if (result == DAY_OK && !take_bounds(plan, &m, &trial, bare.plan.path)) {
        result = DAY_MEMORY;
    }
    if (result == DAY_OK) {
        result = take_more(plan, &m, bare.plan.end, trial.plan.end);
    }
    step_list_clear(&trial.list);
    step_list_clear(&bare.list);
    return result;
}
