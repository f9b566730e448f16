/* SPDX-License-Identifier: MIT */
/* A draw over a sample comes to what the job comes to whose rates file is edited so, to the cent.
 */
#include "price/chance_parts.h"
#include "trial/range_chance.h"

#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct plan_request no_plans = {.effort = CUT_EFFORT_SECOND};

static void open_job(struct bench *bench, const char *path, const struct rate_changes *changes) {
    bench_open_changed(bench, path, changes);
    assert_int_equal(bench->result, ESTIMATE_OK);
}

/* --- ranges for a whole rates file --- */

/* Numbers that stand alone behind their key: the others would be changes of one key. */
static bool may_range(const struct rate_number *n) {
    return n->before[0] == '\0' && n->behind[0] == '\0' && n->value.amount > 0 &&
           n->most_decimals > 0 && n->value.unit != UNIT_COUNT && strcmp(n->section, "chance") != 0;
}

/* An amount a little off, a tenth up at the most, of percents a twentieth. */
static const char *off_by(const struct rate_number *n, int percent, struct pool *pool) {
    const bool small = n->value.unit == UNIT_PERCENT;
    const int64_t part = 100 + (small ? percent / 2 : percent);
    if (n->value.unit == UNIT_NM) {
        return rate_number_text(n, n->value.amount * part / 100, 0, pool);
    }
    return rate_number_text(n, n->value.amount * part, (uint8_t)(n->value.decimals + 2), pool);
}

/* Gives every third number that may have one a range, from `first` on; the changes are in pool. */
static struct rate_changes range_some(const struct rates *rates, size_t first, struct pool *pool) {
    struct rate_change *const list = pool_take(pool, rates->numbers.count, sizeof *list);
    size_t count = 0;
    assert_non_null(list);
    for (size_t i = first; i < rates->numbers.count; i += 3) {
        const struct rate_number *const n = &rates->numbers.list[i];
        if (may_range(n)) {
            const char *const text = pool_words(pool, "%s (%s to %s)", n->likely,
                                                off_by(n, -8, pool), off_by(n, 10, pool));
            list[count++] = (struct rate_change){n->section, n->key, text, 0};
        }
    }
    return (struct rate_changes){.list = list, .count = count};
}

/* --- draws against edited files --- */

/* The same rates with the values of draw i. */
static struct rate_changes of_draw(const struct chance_source *sources,
                                   const struct chance_input *inputs, size_t count, size_t i,
                                   struct pool *pool) {
    struct rate_change *const list = pool_take(pool, count, sizeof *list);
    assert_non_null(list);
    for (size_t s = 0; s < count; s++) {
        const struct rate_number *const n = inputs[s].number;
        const int64_t amount = chance_amount(&sources[s], i);
        const char *const text =
            n->value.unit == UNIT_NM /* a millimeter has a million nm */
                ? pool_words(pool, "%lld.%06lld mm", (long long)(amount / 1000000),
                             (long long)(amount % 1000000))
                : rate_number_text(n, amount, sources[s].decimals, pool);
        list[s] = (struct rate_change){n->section, n->key, rate_number_with(n, text, pool), 0};
    }
    return (struct rate_changes){.list = list, .count = count};
}

#define MOST_SOURCES 512

struct drawn {
    struct chance_input inputs[MOST_SOURCES];
    struct chance_source sources[MOST_SOURCES];
    size_t count, idle, held;
};

static void find_sources(struct drawn *d, const struct bench *o,
                         const struct chance_figures *figures, struct pool *pool) {
    struct ranges ranges;
    assert_true(
        ranges_make(&ranges, &o->estimate, &(struct trial_job){o->job.path, -1, no_plans}, pool));
    const struct chance_ends *const ends = range_chance_ends(&ranges, &o->estimate, pool);
    assert_non_null(ends);
    *d = (struct drawn){.count = 0};
    for (size_t i = 0; i < o->rates.numbers.count; i++) {
        struct chance_input *const input = &d->inputs[d->count];
        struct chance_source *const source = &d->sources[d->count];
        *input = (struct chance_input){.number = &o->rates.numbers.list[i], .group = -1};
        if (!rate_number_ranged(input->number)) {
            continue;
        }
        assert_true(chance_source_make(source, input, &o->estimate, figures, &ends[i], pool));
        d->idle += input->state == CHANCE_NO_EFFECT ? 1 : 0;
        if (input->state == CHANCE_HELD) {
            d->held++; /* sizes, what liquids are written in other units than they are used in */
        } else if (input->state == CHANCE_DRAWN) {
            chance_source_seed(source, input, &o->rates, 1, pool);
            d->count++;
            assert_true(d->count < MOST_SOURCES);
        }
    }
}

/* Direct cost and overhead of a job that was estimated as a whole. */
static void whole_cost(const char *path, const struct rate_changes *changes, int64_t *direct,
                       int64_t *overhead) {
    struct bench o;
    struct pool pool;
    struct replay still;
    pool_init(&pool);
    open_job(&o, path, changes);
    const struct chance_figures figures = chance_figures_of(&o.estimate, &pool);
    assert_true(chance_replay(&still, &o.estimate, &figures, NULL, 0));
    *direct = chance_direct(&still, &figures);
    *overhead = chance_overhead(&still, &figures);
    replay_clear(&still);
    assert_int_equal(bench_close(&o), 0);
    pool_clear(&pool);
}

#define DRAWS_COMPARED 25

static void draws_are_edited_files(void **state) {
    (void)state;
    static const char *const samples[] = {"kitchen/kitchen", "old-house/old-house",
                                          "metric/tea-kitchen", "station/station"};
    static struct drawn d;
    for (size_t s = 0; s < sizeof samples / sizeof *samples; s++) {
        char path[512];
        struct bench plain;
        struct bench o;
        struct pool pool;
        struct replay replay;
        pool_init(&pool);
        (void)snprintf(path, sizeof path, "samples/%s.ini", samples[s]);
        open_job(&plain, path, NULL);
        const struct rate_changes ranged = range_some(&plain.rates, s % 3, &pool);
        open_job(&o, path, &ranged);
        const struct chance_figures figures = chance_figures_of(&o.estimate, &pool);
        find_sources(&d, &o, &figures, &pool);
        print_message("%s: %zu drawn, %zu without effect, %zu held\n", samples[s], d.count, d.idle,
                      d.held);
        assert_true(d.count > 30);
        assert_true(chance_replay(&replay, &o.estimate, &figures, d.sources, d.count));
        for (size_t i = 0; i < DRAWS_COMPARED; i++) {
            int64_t direct;
            int64_t overhead;
            const struct rate_changes values = of_draw(d.sources, d.inputs, d.count, i, &pool);
            whole_cost(path, &values, &direct, &overhead);
            for (size_t k = 0; k < d.count; k++) {
                chance_set(&replay, &figures, &d.sources[k], chance_amount(&d.sources[k], i));
            }
            assert_int_equal(replay_run(&replay), TAPE_OK);
            assert_int_equal(chance_direct(&replay, &figures), direct);
            assert_int_equal(chance_overhead(&replay, &figures), overhead);
        }
        replay_clear(&replay);
        assert_int_equal(bench_close(&o), 0);
        assert_int_equal(bench_close(&plain), 0);
        pool_clear(&pool);
    }
}

int main(void) {
    static const struct CMUnitTest tests[] = {cmocka_unit_test(draws_are_edited_files)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
