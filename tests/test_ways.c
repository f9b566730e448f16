/* SPDX-License-Identifier: MIT */
/* Which ways rows go within some hours, where there are more choices than are all estimated: held
 * against all of them, estimated here one by one. */
#include "base/array.h"
#include "price/ways_trial.h"

#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>

#include <cmocka.h>

static const struct plan_request no_plans = {.effort = CUT_EFFORT_SECOND};

static size_t choices(const struct ways *ways) {
    size_t count = 1;
    for (size_t i = 0; i < ways->row_count; i++) {
        count *= ways->rows[i].count;
    }
    return count;
}

/* All choices, each estimated whole. */
static struct outcome *all_of(const struct estimate *base, const struct ways *ways, size_t count,
                              struct pool *pool) {
    struct ways_trial trial;
    struct outcome *const all = pool_take(pool, count, sizeof *all);
    size_t *const picked = pool_take(pool, ways->row_count, sizeof *picked);
    assert_true(ways_trial_init(&trial, base, no_plans, pool));
    assert_non_null(all);
    assert_non_null(picked);
    for (size_t n = 0; n < count; n++) {
        size_t rest = n;
        for (size_t i = 0; i < ways->row_count; i++) {
            picked[i] = rest % ways->rows[i].count;
            rest /= ways->rows[i].count;
        }
        assert_true(ways_trial_run(&trial, ways->rows, picked, ways->row_count, &all[n]));
    }
    return all;
}

/* The least that is spent within the limit; where nothing is within, the fewest hours. */
static struct outcome best_of(const struct outcome *all, size_t count, int64_t limit) {
    struct outcome best = all[0];
    for (size_t n = 1; n < count; n++) {
        const bool within = all[n].bench <= limit;
        const bool before = best.bench <= limit;
        const bool less =
            all[n].bought != best.bought ? all[n].bought < best.bought : all[n].bench < best.bench;
        const bool fewer =
            all[n].bench != best.bench ? all[n].bench < best.bench : all[n].bought < best.bought;
        if (within != before ? within : (within ? less : fewer)) {
            best = all[n];
        }
    }
    return best;
}

/* What a choice comes to by the table: each row alone on its way, added up. */
static struct outcome by_table(const struct ways *ways, const size_t *picked) {
    struct outcome sum = ways->job;
    for (size_t i = 0; i < ways->row_count; i++) {
        const struct outcome *const whole = &ways->rows[i].ways[picked[i]].whole;
        sum.bought += whole->bought - ways->job.bought;
        sum.bench += whole->bench - ways->job.bench;
    }
    return sum;
}

/* What the table advises is the least that any choice within the limit comes to by it. */
static void check_advice(const struct ways *ways, size_t *picked) {
    const int64_t limit = ways->within.limit;
    const struct outcome advised = by_table(ways, ways->within.by_sums.picked);
    int64_t least = INT64_MAX;
    for (size_t n = 0; n < choices(ways); n++) {
        size_t rest = n;
        for (size_t i = 0; i < ways->row_count; i++) {
            picked[i] = rest % ways->rows[i].count;
            rest /= ways->rows[i].count;
        }
        const struct outcome sum = by_table(ways, picked);
        least = sum.bench <= limit && sum.bought < least ? sum.bought : least;
    }
    assert_int_equal(advised.bench <= limit, least < INT64_MAX);
    assert_true(least == INT64_MAX || advised.bought == least);
}

/* How many of some limits have the best choice there is. */
struct found {
    int limits, best;
};

static struct found search(const char *path, const size_t *rows, size_t row_count, int limits) {
    struct bench bench;
    struct pool pool;
    struct ways ways;
    struct found found = {.limits = limits};
    bench_open_job(&bench, path);
    assert_int_equal(bench.result, ESTIMATE_OK);
    pool_init(&pool);
    assert_int_equal(ways_make(&ways, &bench.estimate, no_plans, rows, row_count, -1, &pool),
                     WAYS_OK);
    const size_t count = choices(&ways);
    assert_true(count > WAYS_MOST_WHOLE);
    const struct outcome *const all = all_of(&bench.estimate, &ways, count, &pool);
    const int64_t least = best_of(all, count, 0).bench;
    size_t *const picked = pool_take(&pool, ways.row_count, sizeof *picked);
    assert_non_null(picked);
    for (int i = 0; i < limits; i++) {
        const int64_t limit = least + (ways.job.bench - least) * i / limits - 1;
        struct ways with;
        assert_int_equal(ways_make(&with, &bench.estimate, no_plans, rows, row_count, limit, &pool),
                         WAYS_OK);
        const struct outcome *const real = &with.within.best.real;
        const struct outcome best = best_of(all, count, limit);
        check_advice(&with, picked);
        assert_false(with.within.all);
        assert_true(with.within.tried < count);
        assert_int_equal(with.within.within, real->bench <= limit);
        /* no hours are within before the first that are */
        assert_int_equal(with.within.within, best.bench <= limit);
        assert_true(real->bought >= best.bought || real->bench > best.bench);
        found.best += real->bought == best.bought && real->bench == best.bench ? 1 : 0;
        print_message("%lld hours: %lld, best %lld\n", (long long)limit, (long long)real->bought,
                      (long long)best.bought);
    }
    pool_clear(&pool);
    assert_int_equal(bench_close(&bench), 0);
    return found;
}

static void tea_kitchen(void **state) {
    (void)state;
    const struct found found = search("samples/metric/tea-kitchen.ini", NULL, 0, 24);
    assert_true(found.best >= 23); /* as measured */
}

static void some_of_the_kitchen(void **state) {
    (void)state;
    static const size_t rows[] = {0, 1, 3, 9, 16, 22, 25};
    const struct found found = search("samples/kitchen/kitchen.ini", rows, COUNT_OF(rows), 24);
    assert_int_equal(found.best, found.limits);
}

int main(void) {
    static const struct CMUnitTest tests[] = {cmocka_unit_test(tea_kitchen),
                                              cmocka_unit_test(some_of_the_kitchen)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
