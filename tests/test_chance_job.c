/* SPDX-License-Identifier: MIT */
/* Draws over whole jobs. A draw comes to what the job comes to whose rates file is edited so, to
 * the cent; a job whose cost is one drawn price has the percentiles of its shape as published
 * (outside/chance.csv, E15); draws that move together spread as they should. */
#include "price/chance_parts.h"
#include "trial/range_chance.h"

#include "read/job/job_file.h"
#include "read/rates/rates_file.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const struct plan_request no_plans = {.effort = CUT_EFFORT_SECOND};

/* A job with its rates and estimate. */
struct opened {
    struct problems problems;
    struct job job;
    struct rates rates;
    struct estimate estimate;
};

static void open_job(struct opened *o, const char *path, const struct rate_changes *changes) {
    problems_init(&o->problems);
    assert_true(job_read_changed(&o->job, &o->rates, path, changes, &o->problems));
    if (problems_count(&o->problems, SEVERITY_ERROR) > 0) {
        problems_print(&o->problems, stderr, false);
        fail();
    }
    assert_int_equal(
        estimate_make(&o->estimate, &o->rates, &o->job,
                      (struct estimate_request){.option = -1, .plans = no_plans, .traced = true},
                      &o->problems),
        ESTIMATE_OK);
}

static void close_job(struct opened *o) {
    estimate_clear(&o->estimate);
    job_clear(&o->job);
    rates_clear(&o->rates);
    problems_clear(&o->problems);
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

static void find_sources(struct drawn *d, const struct opened *o, const char *path,
                         const struct chance_figures *figures, struct pool *pool) {
    struct ranges ranges;
    assert_true(ranges_make(&ranges, &o->estimate, &(struct trial_job){path, -1, no_plans}, pool));
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
    struct opened o;
    struct pool pool;
    struct replay still;
    pool_init(&pool);
    open_job(&o, path, changes);
    const struct chance_figures figures = chance_figures_of(&o.estimate, &pool);
    assert_true(chance_replay(&still, &o.estimate, &figures, NULL, 0));
    *direct = chance_direct(&still, &figures);
    *overhead = chance_overhead(&still, &figures);
    replay_clear(&still);
    close_job(&o);
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
        struct opened plain;
        struct opened o;
        struct pool pool;
        struct replay replay;
        pool_init(&pool);
        (void)snprintf(path, sizeof path, DOORCOST_SOURCE "/samples/%s.ini", samples[s]);
        open_job(&plain, path, NULL);
        const struct rate_changes ranged = range_some(&plain.rates, s % 3, &pool);
        open_job(&o, path, &ranged);
        const struct chance_figures figures = chance_figures_of(&o.estimate, &pool);
        find_sources(&d, &o, path, &figures, &pool);
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
        close_job(&o);
        close_job(&plain);
        pool_clear(&pool);
    }
}

/* --- closed forms through whole jobs --- */

/* A thousand slabs of nothing but small things bought for each door, sold at what they cost with
 * their likely values. */
#define THOUSAND                                                                                   \
    "make|style = slab", "sheet board|price = 0.00 per sheet", "shop|labor rate = 0.00 per hour"
#define ROWS "id,count,width,height\nD1,1000,18,30\n"
/* 10 less 10 %, more 20 %: of 1,000 doors 10,000 (9,000 to 12,000) */
#define TENS "price = 10.000000 per door (9.000000 to 12.000000)"

static void draw(struct chance *chance, const char *name, const char *const *edits,
                 struct chance_request request, struct pool *pool) {
    struct bench b;
    bench_open(&b, name, BENCH_INCH, edits, ROWS);
    bench_sound(&b);
    struct chance_ends *const ends = pool_take(pool, b.rates.numbers.count, sizeof *ends);
    assert_non_null(ends);
    for (size_t i = 0; i < b.rates.numbers.count; i++) {
        const struct rate_number *const n = &b.rates.numbers.list[i];
        if (rate_number_ranged(n)) {
            const int64_t direct = tape_amount(&b.estimate.tape, b.estimate.costs.job.direct);
            const int64_t per_door = 100000; /* 1,000 doors in cents, of millionths */
            const int64_t likely = n->value.amount * per_door / 1000000;
            ends[i] =
                (struct chance_ends){.known = true,
                                     .low = direct - likely + n->low.amount * per_door / 1000000,
                                     .high = direct - likely + n->high.amount * per_door / 1000000};
        }
    }
    request.ends = ends;
    assert_int_equal(chance_make(chance, &b.estimate, request, pool), ESTIMATE_OK);
    assert_int_equal(bench_close(&b), 0);
}

static void near(int64_t value, int64_t wanted, int64_t most) {
    if (llabs((long long)(value - wanted)) > most) {
        print_error("%lld, wanted %lld\n", (long long)value, (long long)wanted);
        fail();
    }
}

#define TEN_THOUSAND ((struct chance_request){.draws = 10000, .seed = 1})

/* Published of the triangle (outside/chance.csv): P10 9,547.72, P50 10,267.95, P80 10,904.55, P90
 * 11,225.40; at most 10,000 with 1/3. Bounds: four standard errors, sqrt(p (1 - p) / n) / f. */
static void one_price(void **state) {
    (void)state;
    static const char *const edits[] = {THOUSAND, ("consumable bumper|" TENS),
                                        "chance|ranges = triangle\nconfidence = 90.0 %", NULL};
    struct chance c;
    struct pool pool;
    pool_init(&pool);
    draw(&c, "one price", edits, TEN_THOUSAND, &pool);
    assert_int_equal(c.drawn, 1);
    assert_int_equal(c.inputs[0].share, 1000);
    assert_int_equal(c.direct.figured, 1000000);
    near(c.direct.points[CHANCE_P10], 954772, 3300);
    near(c.direct.points[CHANCE_P50], 1026795, 3500);
    near(c.direct.points[CHANCE_P80], 1090455, 4400);
    near(c.direct.points[CHANCE_P90], 1122540, 4700);
    assert_int_equal(c.direct.sure, c.direct.points[CHANCE_P90]);
    near(c.contingency, 122540, 4700);
    near(c.contingency_rate, 123, 5);
    assert_true(c.direct.least >= 900000 && c.direct.most <= 1200000);
    assert_int_equal(c.price, 1000000);
    near(c.under_direct, 667, 19);
    assert_int_equal(c.under_full, c.under_direct); /* no overhead, no profit */
    assert_int_equal(c.under_wanted, c.under_direct);
    size_t draws = 0;
    for (size_t i = 0; i < c.bin_count; i++) {
        draws += c.bins[i];
    }
    assert_int_equal(draws, 10000);
    assert_true(c.bin_from <= c.full.least &&
                c.bin_from + (int64_t)c.bin_count * c.bin_step > c.full.most);
    pool_clear(&pool);
}

/* The spread from P10 to P90 of two even prices: apart it is root 2 of one, all alike twice, which
 * is root 2 as much again. */
static void two_prices(void **state) {
    (void)state;
    static const char *const apart[] = {
        THOUSAND, "consumable bumper|price = 5.000000 per door (4.000000 to 6.000000)",
        "consumable tag|price = 5.000000 per door (4.000000 to 6.000000)", NULL};
    static const char *const alike[] = {
        THOUSAND, "consumable bumper|price = 5.000000 per door (4.000000 to 6.000000)",
        "consumable tag|price = 5.000000 per door (4.000000 to 6.000000)",
        "chance|together = consumable price at 1", NULL};
    struct chance c;
    struct chance again;
    struct pool pool;
    pool_init(&pool);
    draw(&c, "apart", apart, TEN_THOUSAND, &pool);
    assert_int_equal(c.drawn, 2);
    near(c.inputs[0].share, 500, 30);
    assert_int_equal(c.inputs[0].group, -1);
    const int64_t one = c.direct.points[CHANCE_P90] - c.direct.points[CHANCE_P10];
    /* s.d. of the sum: root 2 x 2,000 / 6 = 471.4; about normal: 2 x 1.2816 of it */
    near(one, 120830, 4500);
    draw(&again, "apart", apart, TEN_THOUSAND, &pool);
    assert_memory_equal(again.bins, c.bins, sizeof c.bins);
    assert_int_equal(again.direct.sure, c.direct.sure);
    draw(&again, "apart", apart, (struct chance_request){.draws = 10000, .seed = 2}, &pool);
    assert_true(again.direct.sure != c.direct.sure);
    near(again.direct.sure, c.direct.sure, 3000);
    draw(&c, "alike", alike, TEN_THOUSAND, &pool);
    assert_int_equal(c.inputs[0].group, 0);
    const int64_t both = c.direct.points[CHANCE_P90] - c.direct.points[CHANCE_P10];
    near(both * 1000 / one, 1414, 60);
    near(c.inputs[0].share, 500, 1);
    pool_clear(&pool);
}

/* What is drawn stands first, and behind it all else that has a range. */
static void drawn_first(void **state) {
    (void)state;
    static const char *const edits[] = {THOUSAND,
                                        "consumable tape|price = 0.20 per hinge (0.10 to 0.30)",
                                        ("consumable bumper|" TENS), NULL};
    struct chance c;
    struct pool pool;
    pool_init(&pool);
    draw(&c, "drawn first", edits, TEN_THOUSAND, &pool);
    assert_int_equal(c.drawn, 1);
    assert_int_equal(c.count, 2);
    assert_string_equal(c.inputs[0].number->section, "consumable bumper");
    assert_non_null(c.inputs[1].number);
    assert_string_equal(c.inputs[1].number->section, "consumable tape");
    pool_clear(&pool);
}

/* Ends that whole estimates do not come to are not drawn; what moves nothing is told apart. */
static void held(void **state) {
    (void)state;
    static const char *const edits[] = {THOUSAND, ("consumable bumper|" TENS),
                                        "consumable tape|price = 0.20 per hinge (0.10 to 0.30)",
                                        NULL};
    struct bench b;
    struct chance c;
    struct pool pool;
    pool_init(&pool);
    bench_open(&b, "held", BENCH_INCH, edits, ROWS);
    bench_sound(&b);
    struct chance_ends *const ends = pool_take(&pool, b.rates.numbers.count, sizeof *ends);
    assert_non_null(ends);
    for (size_t i = 0; i < b.rates.numbers.count; i++) {
        ends[i] = (struct chance_ends){.known = true, .low = 1000000, .high = 1000000};
    }
    struct chance_request request = TEN_THOUSAND;
    request.ends = ends;
    assert_int_equal(chance_make(&c, &b.estimate, request, &pool), ESTIMATE_OK);
    assert_int_equal(c.drawn, 0);
    assert_int_equal(c.held, 1);
    assert_int_equal(c.count, 2);
    assert_string_equal(c.inputs[0].number->section, "consumable bumper");
    assert_int_equal(c.inputs[0].state, CHANCE_HELD);
    assert_int_equal(c.inputs[1].state, CHANCE_NO_EFFECT);
    assert_int_equal(c.direct.most, c.direct.figured);
    assert_int_equal(bench_close(&b), 0);
    pool_clear(&pool);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(draws_are_edited_files),
        cmocka_unit_test(one_price),
        cmocka_unit_test(two_prices),
        cmocka_unit_test(drawn_first),
        cmocka_unit_test(held),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
