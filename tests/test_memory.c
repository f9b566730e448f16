/* SPDX-License-Identifier: MIT */
/* Each allocation fails in turn: reading says so, nothing is left behind and nothing is touched
 * that is not there. */
#include "bridge/bridge.h"
#include "case.h"
#include "cmocka_all.h"
#include "learn/proposal.h"
#include "price/size_table.h"
#include "price/strike.h"
#include "price/target.h"
#include "price/ways.h"
#include "read/actuals/actuals_file.h"
#include "read/job/job_file.h"
#include "read/job/style_row.h"
#include "read/rates/rates_file.h"
#include "report/offer_make/offer_make.h"
#include "trial/range_chance.h"

#include "model/job.h"

#include <iniparser.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define BASE DOORCOST_SOURCE "/tests/problems/base"

/* The linker sends the program's own calls here (see tests/read.cmake), by names that it asks for.
 */
// NOLINTBEGIN(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp)
void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *old, size_t size);
void __real_free(void *thing);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *old, size_t size);
void __wrap_free(void *thing);

static size_t calls;   /* since the count began */
static size_t failing; /* the call that fails; 0: none */
static long alive;     /* allocated and not freed */

static bool fails(void) {
    calls++;
    return calls == failing;
}

void *__wrap_malloc(size_t size) {
    void *thing = fails() ? NULL : __real_malloc(size);

    alive += thing != NULL ? 1 : 0;
    return thing;
}

void *__wrap_calloc(size_t count, size_t size) {
    void *thing = fails() ? NULL : __real_calloc(count, size);

    alive += thing != NULL ? 1 : 0;
    return thing;
}

void *__wrap_realloc(void *old, size_t size) {
    void *thing = fails() ? NULL : __real_realloc(old, size);

    alive += thing != NULL && old == NULL ? 1 : 0;
    return thing;
}

void __wrap_free(void *thing) {
    alive -= thing != NULL ? 1 : 0;
    __real_free(thing);
}
// NOLINTEND(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp)

/* Reads the job with that call failing; whether it was said to have worked. */
static bool read_with_failure(const char *path, size_t call, size_t *problem_count) {
    struct problems problems;
    struct rates rates;
    struct job job;
    bool good;

    calls = 0;
    alive = 0;
    failing = call;
    problems_init(&problems);
    good = job_read(&job, &rates, path, &problems);
    *problem_count = problems.count;
    problems_clear(&problems);
    job_clear(&job);
    rates_clear(&rates);
    failing = 0;
    assert_int_equal(alive, 0);
    return good;
}

static void check_folder(const char *spoiled) {
    size_t found;
    size_t found_now;
    size_t last;

    assert_true(case_prepare(BASE, spoiled, "memory-case"));
    assert_true(read_with_failure("memory-case/job.ini", 0, &found));
    last = calls;
    assert_true(last > 10);
    for (size_t call = 1; call <= last; call++) {
        bool good = read_with_failure("memory-case/job.ini", call, &found_now);

        /* a result is either whole or said not to be */
        assert_true(!good || found_now == found);
        assert_false(good);
    }
}

static void test_good_inputs(void **state) {
    (void)state;
    check_folder(NULL);
}

static void test_bad_inputs(void **state) {
    (void)state;
    check_folder(DOORCOST_SOURCE "/tests/problems/duplicate-section");
    check_folder(DOORCOST_SOURCE "/tests/problems/no-overlay");
    check_folder(DOORCOST_SOURCE "/tests/problems/stray-quote");
}

static int kept_so_far; /* keys that iniparser has loaded */
static int lost;        /* the one that it drops; 0: none */

/* What the library does when an allocation of its own fails: a line is gone. */
// NOLINTBEGIN(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp)
dictionary *__real_iniparser_load(const char *path);
dictionary *__wrap_iniparser_load(const char *path);

dictionary *__wrap_iniparser_load(const char *path) {
    dictionary *const loaded = __real_iniparser_load(path);
    for (ssize_t i = 0; loaded != NULL && i < loaded->size; i++) {
        const char *const key = loaded->key[i];
        if (key != NULL && strchr(key, ':') != NULL && ++kept_so_far == lost) {
            iniparser_unset(loaded, key);
        }
    }
    return loaded;
}
// NOLINTEND(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp)

static void test_lost_line(void **state) {
    size_t found;
    int count;
    (void)state;
    assert_true(case_prepare(BASE, NULL, "memory-case"));
    kept_so_far = 0;
    lost = 0;
    assert_true(read_with_failure("memory-case/job.ini", 0, &found));
    count = kept_so_far;
    assert_true(count > 50);
    for (int i = 1; i <= count; i++) {
        kept_so_far = 0;
        lost = i;
        assert_false(read_with_failure("memory-case/job.ini", 0, &found));
    }
    lost = 0;
}

/* Strikes the rows of a job with that call failing; whether it was said to have worked. */
static bool strike_with_failure(const struct estimate *base, size_t call) {
    struct strike strike;
    struct pool pool;

    pool_init(&pool);
    calls = 0;
    alive = 0;
    failing = call;
    const bool good = strike_make(&strike, base, (struct plan_request){0}, NULL, 0, &pool);
    failing = 0;
    pool_clear(&pool);
    assert_int_equal(alive, 0);
    return good;
}

/* Learns from what was noted of a job with that call failing; whether it was said to have worked.
 */
static bool learn_with_failure(const struct estimate *base, const char *path, size_t call) {
    struct actuals actuals;
    struct problems problems;
    struct learned learned;
    struct pool pool;

    calls = 0;
    alive = 0;
    failing = call;
    pool_init(&pool);
    problems_init(&problems);
    const struct learned_job job = {base, &learned};
    struct proposals proposals;
    const bool good = actuals_read(&actuals, base->rates, path, &problems) &&
                      learned_make(&learned, base, &actuals, &problems, &pool) &&
                      proposals_make(&proposals, &job, 1, &pool);
    failing = 0;
    assert_true(!good || problems_count(&problems, SEVERITY_ERROR) == 0);
    actuals_clear(&actuals);
    problems_clear(&problems);
    pool_clear(&pool);
    assert_int_equal(alive, 0);
    return good;
}

/* The same of prices by size: two counts of the first style of the rates, and a price list of them.
 */
static bool table_with_failure(const struct estimate *base, size_t call) {
    static const int64_t counts[] = {1, 5};
    struct size_line line = {0};
    struct size_style style = {.name = "any", .lines = &line, .line_count = 1};
    struct size_table table = {
        .styles = &style, .style_count = 1, .counts = counts, .count_count = 2};
    struct pool pool;

    style.make = style_make(base->rates, base->job, 0);
    line.row = style_row(&style.make, 15 * NM_PER_INCH, 30 * NM_PER_INCH);
    pool_init(&pool);
    calls = 0;
    alive = 0;
    failing = call;
    const struct offer offer = {.mark = "", .currency = "", .title = "", .shop = ""};
    struct offer list = {0};
    const bool good = size_table_make(&table, base, (struct plan_request){0}, &pool) &&
                      offer_prices_make(&list, &offer, base, &table);
    failing = 0;
    assert_true(!good || list.prices->table_count == SIZE_WAY_COUNT);
    offer_clear(&list);
    assert_true(!good || (line.prices[SIZE_ADDED][1].has && line.prices[SIZE_ALONE][1].has));
    pool_clear(&pool);
    assert_int_equal(alive, 0);
    return good;
}

static void check_learn(const struct estimate *base) {
    static const char noted[] = "what,hours,bought,paid,left\ngroove,0.1,,,\nall,2,,,\n"
                                "poplar,,30 bf,90.00,2 bf\ntopcoat,,1 gal,,1 qt\n";
    assert_true(case_save("memory-case/noted.csv", noted, strlen(noted)));
    assert_true(learn_with_failure(base, "memory-case/noted.csv", 0));
    const size_t last = calls;
    assert_true(last > 3);
    for (size_t call = 1; call <= last; call++) {
        assert_false(learn_with_failure(base, "memory-case/noted.csv", call));
    }
}

/* The same of a wanted total, which no lever reaches without many estimates. */
static bool target_with_failure(const struct estimate *base, size_t call) {
    struct target target = {.wanted = outcome_of(base).client / 2};
    struct pool pool;

    pool_init(&pool);
    calls = 0;
    alive = 0;
    failing = call;
    const bool good = target_make(&target, base, (struct plan_request){0}, &pool);
    failing = 0;
    pool_clear(&pool);
    assert_int_equal(alive, 0);
    return good;
}

static void fail_each(bool (*with_failure)(const struct estimate *, size_t),
                      const struct estimate *base) {
    assert_true(with_failure(base, 0));
    const size_t last = calls;
    assert_true(last > 10);
    for (size_t call = 1; call <= last; call++) {
        assert_false(with_failure(base, call));
    }
}

/* A job that could not be estimated for want of memory is no job that costs nothing. */
static void test_outcomes(void **state) {
    struct problems problems;
    struct rates rates;
    struct job job;
    struct estimate base;

    (void)state;
    assert_true(case_prepare(BASE, NULL, "memory-case"));
    problems_init(&problems);
    assert_true(job_read(&job, &rates, "memory-case/job.ini", &problems));
    assert_int_equal(estimate_make(&base, &rates, &job,
                                   (struct estimate_request){.option = -1, .purchase = true},
                                   &problems),
                     ESTIMATE_OK);
    fail_each(strike_with_failure, &base);
    fail_each(table_with_failure, &base);
    fail_each(target_with_failure, &base);
    check_learn(&base);
    estimate_clear(&base);
    problems_clear(&problems);
    job_clear(&job);
    rates_clear(&rates);
}

/* Reads and estimates a job with a rate changed, that call failing; what came of it. */
static enum trial_result change_with_failure(size_t call) {
    const struct rate_change change = {"lumber poplar", "defects", "5 %", 1};
    const char *const line = "5 %";
    const struct rate_changes changes = {&change, 1, &line, "--set"};
    const struct trial_job job = {"memory-case/job.ini", -1, {0}};
    struct problems problems;
    struct outcome outcome;

    calls = 0;
    alive = 0;
    failing = call;
    problems_init(&problems);
    const enum trial_result result = trial_try(&job, &changes, &outcome, &problems);
    failing = 0;
    problems_clear(&problems);
    assert_int_equal(alive, 0);
    return result;
}

static void test_change(void **state) {
    (void)state;
    assert_true(case_prepare(BASE, NULL, "memory-case"));
    assert_int_equal(change_with_failure(0), TRIAL_DONE);
    const size_t last = calls;
    assert_true(last > 10);
    for (size_t call = 1; call <= last; call++) {
        assert_int_equal(change_with_failure(call), TRIAL_MEMORY);
    }
}

/* Goes from one job to another with that call failing; whether it was said to have worked. */
static bool bridge_with_failure(size_t call) {
    struct bridge bridge;

    calls = 0;
    alive = 0;
    failing = call;
    const enum bridge_result result = bridge_make(
        &bridge, "memory-case/job.ini", "memory-other/job.ini", NULL, (struct plan_request){0});
    failing = 0;
    assert_true(result == BRIDGE_OK || result == BRIDGE_MEMORY);
    assert_true(result != BRIDGE_OK || bridge.step_count == 3);
    bridge_clear(&bridge);
    assert_int_equal(alive, 0);
    return result == BRIDGE_OK;
}

/* Reads a saved quote with that call failing; what the library of JSON takes fails in test_saved.
 */
static bool saved_with_failure(size_t call) {
    struct problems problems;
    struct job_texts texts;
    struct rates rates;
    struct job job;

    calls = 0;
    alive = 0;
    failing = call;
    problems_init(&problems);
    const bool good = job_read_keep(&job, &rates, DOORCOST_SOURCE "/tests/data/saved.json",
                                    (struct job_instead){.saved = true}, &texts, &problems);
    failing = 0;
    assert_true(!good || (problems.count == 0 && job.row_count > 0));
    problems_clear(&problems);
    job_clear(&job);
    rates_clear(&rates);
    assert_int_equal(alive, 0);
    return good;
}

static void test_saved(void **state) {
    (void)state;
    assert_true(saved_with_failure(0));
    const size_t last = calls;
    assert_true(last > 5);
    for (size_t call = 1; call <= last; call++) {
        assert_false(saved_with_failure(call));
    }
}

/* A step that could not be made for want of memory is no step that cannot be estimated. */
static void test_bridge(void **state) {
    (void)state;
    assert_true(case_prepare(BASE, NULL, "memory-case"));
    assert_true(case_prepare(BASE, DOORCOST_SOURCE "/tests/data/bridge-edit", "memory-other"));
    assert_true(bridge_with_failure(0));
    const size_t last = calls;
    assert_true(last > 10);
    for (size_t call = 1; call <= last; call++) {
        assert_false(bridge_with_failure(call));
    }
}

/* The ways of a job that has some, chosen within so many hours, with that call failing. */
static enum ways_result ways_with_failure(const struct estimate *base, int64_t limit, size_t call) {
    struct ways ways;
    struct pool pool;

    pool_init(&pool);
    calls = 0;
    alive = 0;
    failing = call;
    const enum ways_result result =
        ways_make(&ways, base, (struct plan_request){0}, NULL, 0, limit, &pool);
    failing = 0;
    assert_true(result != WAYS_OK || ways.row_count > 0);
    pool_clear(&pool);
    assert_int_equal(alive, 0);
    return result;
}

/* A way that could not be estimated for want of memory is no way that the rates do not know. */
static void test_ways(void **state) {
    struct problems problems;
    struct rates rates;
    struct job job;
    struct estimate base;

    (void)state;
    assert_true(case_prepare(BASE, DOORCOST_SOURCE "/tests/data/memory-ways", "memory-case"));
    problems_init(&problems);
    assert_true(job_read(&job, &rates, "memory-case/job.ini", &problems));
    assert_int_equal(problems_count(&problems, SEVERITY_ERROR), 0);
    assert_int_equal(estimate_make(&base, &rates, &job,
                                   (struct estimate_request){.option = -1, .purchase = true},
                                   &problems),
                     ESTIMATE_OK);
    const int64_t hours = tape_scaled(&base.tape, base.labor.bench_hours, 2);
    assert_int_equal(ways_with_failure(&base, hours - 5, 0), WAYS_OK);
    const size_t last = calls;
    assert_true(last > 10);
    for (size_t call = 1; call <= last; call++) {
        assert_int_equal(ways_with_failure(&base, hours - 5, call), WAYS_MEMORY);
    }
    estimate_clear(&base);
    problems_clear(&problems);
    job_clear(&job);
    rates_clear(&rates);
}

/* Draws with that call failing; what came of it. */
static enum estimate_result draw_with_failure(const struct estimate *base,
                                              const struct chance_ends *ends, size_t call) {
    struct chance chance;
    struct pool pool;

    pool_init(&pool);
    calls = 0;
    alive = 0;
    failing = call;
    const enum estimate_result result = chance_make(
        &chance, base,
        (struct chance_request){.draws = CHANCE_LEAST_DRAWS, .seed = 1, .ends = ends}, &pool);
    failing = 0;
    assert_true(result != ESTIMATE_OK || chance.drawn == 2);
    pool_clear(&pool);
    assert_int_equal(alive, 0);
    return result;
}

/* One range moves what is sprayed, so that containers are chosen again in each draw. */
static void test_draws(void **state) {
    static const struct rate_change list[] = {
        {"lumber poplar", "price", "4.10 per bf (3.80 to 4.60)", 0},
        {"spray pressure-pot", "transfer efficiency", "65 % (50 to 70)", 0}};
    const struct rate_changes changes = {.list = list, .count = 2};
    const struct trial_job trial = {"memory-case/job.ini", -1, {0}};
    struct problems problems;
    struct rates rates;
    struct job job;
    struct estimate base;
    struct ranges ranges;
    struct pool pool;

    (void)state;
    assert_true(case_prepare(BASE, NULL, "memory-case"));
    problems_init(&problems);
    pool_init(&pool);
    assert_true(job_read_changed(&job, &rates, trial.path, &changes, &problems));
    assert_int_equal(estimate_make(&base, &rates, &job,
                                   (struct estimate_request){.option = -1, .traced = true},
                                   &problems),
                     ESTIMATE_OK);
    assert_true(ranges_make(&ranges, &base, &trial, &pool));
    const struct chance_ends *const ends = range_chance_ends(&ranges, &base, &pool);
    assert_non_null(ends);
    assert_int_equal(draw_with_failure(&base, ends, 0), ESTIMATE_OK);
    const size_t last = calls;
    assert_true(last > 10);
    for (size_t call = 1; call <= last; call++) {
        assert_int_equal(draw_with_failure(&base, ends, call), ESTIMATE_MEMORY);
    }
    pool_clear(&pool);
    estimate_clear(&base);
    problems_clear(&problems);
    job_clear(&job);
    rates_clear(&rates);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_good_inputs), cmocka_unit_test(test_bad_inputs),
        cmocka_unit_test(test_lost_line),   cmocka_unit_test(test_outcomes),
        cmocka_unit_test(test_change),      cmocka_unit_test(test_bridge),
        cmocka_unit_test(test_saved),       cmocka_unit_test(test_ways),
        cmocka_unit_test(test_draws),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
