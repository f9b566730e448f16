/* SPDX-License-Identifier: MIT */
#include "days/order/order_bound.h"

#include "base/order.h"

#include <stdlib.h>

static int64_t larger(int64_t a, int64_t b) {
    return a > b ? a : b;
}

static int64_t up(int64_t over, int64_t under) {
    return (over + under - 1) / under;
}

bool ends_make(struct order_ends *ends, const struct order_work *work, struct pool *pool) {
    ends->heads = pool_take(pool, work->task_count, sizeof *ends->heads);
    ends->tails = pool_take(pool, work->task_count, sizeof *ends->tails);
    if (pool_failed(pool)) {
        return false;
    }
    for (size_t t = 0; t < work->task_count; t++) {
        const struct order_task *const task = &work->tasks[t];
        ends->heads[t] = work_from(work->time, task->ready);
        for (size_t i = 0; i < task->link_count; i++) {
            const struct order_link *const link = &work->links[task->first_link + i];
            const int64_t done = ends->heads[link->before] + work->tasks[link->before].minutes;
            const int64_t free =
                link->lag == 0 ? done
                               : work_from(work->time, clock_ends(work->time, done) + link->lag);
            ends->heads[t] = larger(ends->heads[t], free);
        }
    }
    for (size_t t = work->task_count; t-- > 0;) {
        const struct order_task *const task = &work->tasks[t];
        ends->tails[t] = larger(ends->tails[t], task->hold) + task->minutes;
        for (size_t i = 0; i < task->link_count; i++) {
            const struct order_link *const link = &work->links[task->first_link + i];
            ends->tails[link->before] =
                larger(ends->tails[link->before], link->lag + ends->tails[t]);
        }
    }
    return true;
}

/* A task as a resource sees it. */
struct user {
    int64_t head, tail; /* minutes of work; tail: behind the task, lags left out */
    int64_t load;       /* minutes of work x amount */
    int64_t kept;       /* (minutes + hold) x amount of what is kept; else 0 */
};

static int longest_tail_first(const void *x, const void *y) {
    const struct user *const a = x;
    const struct user *const b = y;
    const int tail = order_by_number(b->tail, a->tail);
    return tail != 0 ? tail : order_by_number(a->head, b->head);
}

/* Minutes of work behind each task, lags left out. */
static void work_tails(const struct order_work *work, int64_t *tails) {
    for (size_t t = work->task_count; t-- > 0;) {
        const struct order_task *const task = &work->tasks[t];
        for (size_t i = 0; i < task->link_count; i++) {
            const int32_t before = work->links[task->first_link + i].before;
            tails[before] = larger(tails[before], tails[t] + task->minutes);
        }
    }
}

static size_t users_of(const struct order_work *work, const struct order_ends *ends,
                       const int64_t *tails, int32_t resource, struct user *users) {
    size_t count = 0;
    for (size_t t = 0; t < work->task_count; t++) {
        const struct order_task *const task = &work->tasks[t];
        for (size_t i = 0; i < task->demand_count; i++) {
            const struct order_demand *const d = &work->demands[task->first_demand + i];
            if (d->resource == resource) {
                users[count++] =
                    (struct user){.head = ends->heads[t],
                                  .tail = tails[t],
                                  .load = task->minutes * d->amount,
                                  .kept = d->kept ? (task->minutes + task->hold) * d->amount : 0};
            }
        }
    }
    qsort(users, count, sizeof *users, longest_tail_first);
    return count;
}

static int64_t bound_by(const struct order_work *work, const struct user *users, size_t count,
                        int32_t capacity) {
    int64_t most = 0; /* minutes of work */
    for (size_t h = 0; h < count; h++) {
        int64_t load = 0;
        for (size_t i = 0; i < count; i++) {
            if (users[i].head >= users[h].head && users[i].load > 0) {
                load += users[i].load;
                most = larger(most, users[h].head + up(load, capacity) + users[i].tail);
            }
        }
    }
    int64_t first = INT64_MAX;
    int64_t kept = 0;
    for (size_t i = 0; i < count; i++) {
        kept += users[i].kept;
        if (users[i].kept > 0 && users[i].head < first) {
            first = users[i].head;
        }
    }
    const int64_t end = clock_ends(work->time, most);
    return kept == 0 ? end : larger(end, clock_begins(work->time, first) + up(kept, capacity));
}

bool bounds_make(struct order_plan *plan, const struct order_work *work,
                 const struct order_ends *ends, struct pool *pool) {
    struct user *const users = pool_take(pool, work->task_count, sizeof *users);
    int64_t *const tails = pool_take(pool, work->task_count, sizeof *tails);
    plan->by_resource = pool_take(pool, work->resource_count, sizeof *plan->by_resource);
    if (pool_failed(pool)) {
        return false;
    }
    plan->path = 0;
    for (size_t t = 0; t < work->task_count; t++) {
        plan->path = larger(plan->path, order_held_until(work, t, ends->heads[t]));
    }
    plan->bound = plan->path;
    work_tails(work, tails);
    for (size_t r = 0; r < work->resource_count; r++) {
        const size_t count = users_of(work, ends, tails, (int32_t)r, users);
        plan->by_resource[r] = bound_by(work, users, count, work->capacity[r]);
        plan->bound = larger(plan->bound, plan->by_resource[r]);
    }
    return true;
}
