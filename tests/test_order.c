/* SPDX-License-Identifier: MIT */
/* Work put in order: small works against all orders there are, Johnson's rule, an open instance. */
#include "days/order/order_plan.h"

#include "chance/random.h"
#include "cmocka_all.h"

#include <string.h>

#define MOST_DEMANDS 256

/* A work that is built up task by task. */
struct bench {
    struct pool pool;
    struct work_time time;
    struct order_task tasks[40];
    struct order_demand demands[MOST_DEMANDS];
    struct order_link links[MOST_DEMANDS];
    int32_t capacity[8];
    size_t tasks_made, demands_made, links_made, resources;
};

/* Without nights, so that minutes of work are minutes on the clock. */
static void bench_init(struct bench *b, int32_t minutes) {
    *b = (struct bench){0};
    pool_init(&b->pool);
    assert_true(
        work_time_make(&b->time, minutes, 0, minutes == CLOCK_DAY ? 127 : 31, NULL, 0, &b->pool));
}

static int32_t add_task(struct bench *b, int64_t minutes, int64_t hold) {
    b->tasks[b->tasks_made] = (struct order_task){.minutes = minutes,
                                                  .hold = hold,
                                                  .first_demand = b->demands_made,
                                                  .first_link = b->links_made};
    return (int32_t)b->tasks_made++;
}

static void ask(struct bench *b, int32_t resource, int32_t amount, bool kept) {
    b->demands[b->demands_made++] = (struct order_demand){resource, amount, kept};
    b->tasks[b->tasks_made - 1].demand_count++;
}

static void wait_for(struct bench *b, int32_t before, int64_t lag) {
    b->links[b->links_made++] = (struct order_link){before, lag};
    b->tasks[b->tasks_made - 1].link_count++;
}

static struct order_work work_of(const struct bench *b) {
    return (struct order_work){&b->time, b->tasks,    b->tasks_made, b->demands,
                               b->links, b->capacity, b->resources};
}

static struct order_plan plan_of(struct bench *b, int32_t tries) {
    const struct order_work work = work_of(b);
    struct order_plan plan;
    assert_true(order_make(&plan, &work, tries, &b->pool));
    assert_true(plan.bound <= plan.end);
    return plan;
}

/* --- by minute, with nothing of the planner --- */

#define MINUTES 400

struct clockwork {
    int64_t clock[MINUTES]; /* of each minute of work */
    int32_t used[8][MINUTES];
    int64_t begins[40];
};

static void wind(struct clockwork *c, const struct bench *b) {
    memset(c, 0, sizeof *c);
    for (int64_t at = 0; at < MINUTES; at++) {
        c->clock[at] = (int64_t)b->time.days[at / b->time.minutes] * 1440 + b->time.opens +
                       at % b->time.minutes;
    }
}

static int64_t first_from(const struct clockwork *c, int64_t clock) {
    int64_t at = 0;
    while (c->clock[at] < clock) {
        assert_true(++at < MINUTES);
    }
    return at;
}

static int64_t ended(const struct clockwork *c, int64_t at) {
    return at == 0 ? c->clock[0] : c->clock[at - 1] + 1;
}

/* Until when a demand is held: minute of work. */
static int64_t held(const struct clockwork *c, const struct order_task *t,
                    const struct order_demand *d, int64_t begins) {
    const int64_t done = begins + t->minutes;
    return d->kept && t->hold > 0 ? first_from(c, ended(c, done) + t->hold) : done;
}

static bool fits(const struct clockwork *c, const struct bench *b, size_t task, int64_t begins) {
    const struct order_task *const t = &b->tasks[task];
    for (size_t i = 0; i < t->link_count; i++) {
        const struct order_link *const l = &b->links[t->first_link + i];
        const int64_t done = c->begins[l->before] + b->tasks[l->before].minutes;
        if (begins < done || c->clock[begins] < ended(c, done) + l->lag) {
            return false;
        }
    }
    for (size_t i = 0; i < t->demand_count; i++) {
        const struct order_demand *const d = &b->demands[t->first_demand + i];
        for (int64_t at = begins; at < held(c, t, d, begins); at++) {
            if (c->used[d->resource][at] + d->amount > b->capacity[d->resource]) {
                return false;
            }
        }
    }
    return true;
}

/* Books a task (times 1) or takes it out (-1); when all is done with it. */
static int64_t book(struct clockwork *c, const struct bench *b, size_t task, int64_t begins,
                    int32_t times) {
    const struct order_task *const t = &b->tasks[task];
    c->begins[task] = begins;
    for (size_t i = 0; i < t->demand_count; i++) {
        const struct order_demand *const d = &b->demands[t->first_demand + i];
        for (int64_t at = begins; at < held(c, t, d, begins); at++) {
            c->used[d->resource][at] += times * d->amount;
        }
    }
    return ended(c, begins + t->minutes) + t->hold;
}

/* The soonest end of all orders of what is not placed yet (bits of left). */
static int64_t all_orders(struct clockwork *c, const struct bench *b, unsigned left, int64_t end) {
    int64_t best = left == 0 ? end : INT64_MAX;
    for (size_t t = 0; t < b->tasks_made; t++) {
        bool open = (left >> t & 1u) != 0;
        for (size_t i = 0; i < b->tasks[t].link_count; i++) {
            open = open && (left >> b->links[b->tasks[t].first_link + i].before & 1u) == 0;
        }
        if (!open) {
            continue;
        }
        int64_t at = 0;
        while (!fits(c, b, t, at)) {
            at++;
        }
        const int64_t until = book(c, b, t, at, 1);
        const int64_t found = all_orders(c, b, left & ~(1u << t), until > end ? until : end);
        (void)book(c, b, t, at, -1);
        best = found < best ? found : best;
    }
    return best;
}

/* That a plan keeps to all there is; its end by minutes. */
static int64_t check_plan(struct clockwork *c, const struct bench *b, const int64_t *begins) {
    int64_t end = 0;
    wind(c, b);
    for (size_t t = 0; t < b->tasks_made; t++) { /* links lead back, so begins are known */
        assert_true(fits(c, b, t, begins[t]));
        const int64_t until = book(c, b, t, begins[t], 1);
        end = until > end ? until : end;
    }
    return end;
}

static int64_t below(uint64_t seed, uint64_t *n, int64_t most) {
    return (int64_t)(random_at(seed, (*n)++) % (uint64_t)most);
}

/* Six tasks, a person or two, two clamps, lags that may pass at night. */
static void random_work(struct bench *b, uint64_t seed) {
    uint64_t n = 0;
    bench_init(b, seed % 3 == 0 ? CLOCK_DAY : 12);
    b->resources = 2;
    b->capacity[0] = (int32_t)(1 + below(seed, &n, 2));
    b->capacity[1] = 2;
    for (int32_t t = 0; t < 6; t++) {
        const bool clamped = below(seed, &n, 2) == 0;
        add_task(b, 1 + below(seed, &n, 9), clamped ? below(seed, &n, 8) : 0);
        ask(b, 0, 1, false);
        if (clamped) {
            ask(b, 1, (int32_t)(1 + below(seed, &n, 2)), true);
        }
        for (int32_t before = 0; before < t; before++) {
            if (below(seed, &n, 4) == 0) {
                wait_for(b, before, below(seed, &n, 2) == 0 ? 0 : below(seed, &n, 15));
            }
        }
    }
}

static void test_small_works_against_all_orders(void **state) {
    int best = 0;
    (void)state;
    for (uint64_t seed = 1; seed <= 80; seed++) {
        struct bench b;
        struct clockwork c;
        random_work(&b, seed);
        const struct order_plan plan = plan_of(&b, 200);
        assert_int_equal(check_plan(&c, &b, plan.begins), plan.end);
        wind(&c, &b);
        const int64_t least = all_orders(&c, &b, (1u << b.tasks_made) - 1, 0);
        assert_true(plan.bound <= least);
        assert_true(least <= plan.end);
        best += plan.end == least ? 1 : 0;
        pool_clear(&b.pool);
    }
    print_message("%d of 80 are the shortest there are\n", best);
    assert_true(best >= 78);
}

/* Each job on one machine after another. machines and minutes: count of each job. */
static void add_jobs(struct bench *b, size_t jobs, size_t count, const int32_t *machines,
                     const int32_t *minutes) {
    for (size_t j = 0; j < jobs; j++) {
        for (size_t i = 0; i < count; i++) {
            const int32_t task = add_task(b, minutes[j * count + i], 0);
            ask(b, machines[j * count + i], 1, false);
            if (i > 0) {
                wait_for(b, task - 1, 0);
            }
        }
    }
    b->resources = count;
    for (size_t r = 0; r < count; r++) {
        b->capacity[r] = 1;
    }
}

/* Johnson 1954, "Optimal two- and three-stage production schedules with setup times included",
 * Naval Research Logistics Quarterly 1: five items through two machines, 4 5, 4 1, 30 4, 6 30, 2 3;
 * by his rule in the order 5, 1, 4, 3, 2, which takes 47 (figures from memory). */
static void test_johnson(void **state) {
    static const int32_t machines[] = {0, 1, 0, 1, 0, 1, 0, 1, 0, 1};
    static const int32_t minutes[] = {4, 5, 4, 1, 30, 4, 6, 30, 2, 3};
    struct bench b;
    (void)state;
    bench_init(&b, CLOCK_DAY);
    add_jobs(&b, 5, 2, machines, minutes);
    const struct order_plan plan = plan_of(&b, 200);
    assert_int_equal(plan.end, 47);
    assert_int_equal(plan.bound, 47);
    pool_clear(&b.pool);
}

/* ft06 of Fisher and Thompson 1963, "Probabilistic learning combinations of local job-shop
 * scheduling rules": six jobs on six machines, the shortest plan 55 (data from memory). */
static void test_job_shop(void **state) {
    static const int32_t machines[] = {2, 0, 1, 3, 5, 4, 1, 2, 4, 5, 0, 3, 2, 3, 5, 0, 1, 4,
                                       1, 0, 2, 3, 4, 5, 2, 1, 4, 5, 0, 3, 1, 3, 5, 0, 4, 2};
    static const int32_t minutes[] = {1, 3, 6, 7, 3, 6, 8, 5, 10, 10, 10, 4, 5, 4, 8, 9,  1, 7,
                                      5, 5, 5, 3, 8, 9, 9, 3, 5,  4,  3,  1, 3, 3, 9, 10, 4, 1};
    struct bench b;
    struct clockwork c;
    (void)state;
    bench_init(&b, CLOCK_DAY);
    add_jobs(&b, 6, 6, machines, minutes);
    const struct order_plan plan = plan_of(&b, 1000);
    print_message("ft06: bound %lld, plan %lld\n", (long long)plan.bound, (long long)plan.end);
    assert_true(plan.bound <= 55);
    assert_true(plan.bound >= 47); /* the longest job, and what is before and behind it */
    assert_in_range(plan.end, 55, 58);
    assert_int_equal(check_plan(&c, &b, plan.begins), plan.end);
    pool_clear(&b.pool);
}

/* 2026-07-03 is a Friday, day 0, off; Saturday and Sunday too. */
static void test_time(void **state) {
    static const int32_t off[] = {0, 4};
    struct pool pool;
    struct work_time time;
    (void)state;
    pool_init(&pool);
    assert_true(work_time_make(&time, 420, 4, 31, off, 2, &pool));
    assert_int_equal(time.days[0], 3);
    assert_int_equal(time.days[1], 5); /* day 4 is off too */
    const int64_t monday = 3 * 1440 + 480;
    assert_int_equal(clock_begins(&time, 0), monday);
    assert_int_equal(clock_ends(&time, 420), monday + 420);
    assert_int_equal(clock_begins(&time, 420), monday + INT64_C(2) * 1440);
    assert_int_equal(work_from(&time, 0), 0);
    assert_int_equal(work_from(&time, monday + 60), 60);
    assert_int_equal(work_from(&time, monday + 420), 420);
    assert_int_equal(work_from(&time, monday + INT64_C(2) * 1440 + 1), 421);
    assert_int_equal(work_day(&time, 839), 1);
    pool_clear(&pool);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_small_works_against_all_orders),
        cmocka_unit_test(test_johnson),
        cmocka_unit_test(test_job_shop),
        cmocka_unit_test(test_time),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
