/* SPDX-License-Identifier: MIT */
#include "days/order/order_plan.h"

#include "chance/random.h"
#include "days/order/order_bound.h"
#include "days/order/order_serial.h"

#include <string.h>

/* The rules of priority, by what comes first. */
enum rule {
    RULE_LONGEST_TAIL, /* the longest way to the end: Kolisch has it among the best */
    RULE_LISTED,       /* as the tasks are listed: job after job */
    RULE_SHORTEST,
    RULE_LONGEST,
    RULE_SOONEST, /* that could begin first if nothing were scarce */
    RULE_COUNT
};

static int64_t key_by(enum rule rule, const struct order_work *work, const struct order_ends *ends,
                      size_t task) {
    switch (rule) {
    case RULE_LONGEST_TAIL:
        return -ends->tails[task];
    case RULE_SHORTEST:
        return work->tasks[task].minutes;
    case RULE_LONGEST:
        return -work->tasks[task].minutes;
    case RULE_SOONEST:
        return ends->heads[task];
    case RULE_LISTED:
    case RULE_COUNT:
        break;
    }
    return (int64_t)task;
}

/* How the orders of priority are come by, one after another. */
struct search {
    const struct order_work *work;
    const struct order_ends *ends;
    int64_t *keys, *best_keys; /* of each task */
    int32_t tries;
};

/* A tail moved by up to half of it either way; of every fourth order nothing but chance. */
static int64_t random_key(const struct search *s, size_t task, int32_t try) {
    const uint64_t bits = random_at((uint64_t)try, task);
    return try % 4 == 3 ? (int64_t)(bits >> 32)
                        : -(s->ends->tails[task] * (int64_t)(512 + (bits >> 54)));
}

/* The keys of an order: first the rules, then chance, in the second half of the tries the best that
 * was found with two tasks changed for each other. */
static void make_keys(const struct search *s, int32_t at) {
    const size_t count = s->work->task_count;
    const int32_t try = at - RULE_COUNT;
    if (try >= 0 && try >= s->tries / 2) {
        const uint64_t bits = random_at((uint64_t)try, count);
        const size_t one = (size_t)(bits >> 32) % count;
        const size_t other = (size_t)(bits & UINT32_MAX) % count;
        memcpy(s->keys, s->best_keys, count * sizeof *s->keys);
        s->keys[one] = s->best_keys[other];
        s->keys[other] = s->best_keys[one];
        return;
    }
    for (size_t t = 0; t < count; t++) {
        s->keys[t] = try < 0 ? key_by((enum rule)at, s->work, s->ends, t) : random_key(s, t, try);
    }
}

/* false: out of memory. */
static bool search(struct order_plan *plan, const struct search *s, struct serial *serial,
                   int64_t *begins) {
    const size_t count = s->work->task_count;
    for (int32_t i = 0; i < RULE_COUNT + s->tries && plan->end > plan->bound; i++) {
        make_keys(s, i);
        const int64_t end = serial_place(serial, s->keys, begins);
        if (serial->failed) {
            return false;
        }
        if (end < plan->end) {
            memcpy(plan->begins, begins, count * sizeof *begins);
        }
        if (end <= plan->end) { /* an equal one too, so that the search moves on */
            memcpy(s->best_keys, s->keys, count * sizeof *s->keys);
            plan->end = end;
        }
    }
    return true;
}

bool order_make(struct order_plan *plan, const struct order_work *work, int32_t tries,
                struct pool *pool) {
    struct serial serial;
    struct order_ends ends;
    const struct search s = {.work = work,
                             .ends = &ends,
                             .keys = pool_take(pool, work->task_count, sizeof(int64_t)),
                             .best_keys = pool_take(pool, work->task_count, sizeof(int64_t)),
                             .tries = work->task_count > 1 ? tries : 0};
    int64_t *const begins = pool_take(pool, work->task_count, sizeof *begins);
    *plan = (struct order_plan){.begins = pool_take(pool, work->task_count, sizeof *plan->begins),
                                .end = INT64_MAX};
    const bool held = serial_init(&serial, work, pool) && ends_make(&ends, work, pool) &&
                      bounds_make(plan, work, &ends, pool) && search(plan, &s, &serial, begins);
    serial_clear(&serial);
    return held;
}
