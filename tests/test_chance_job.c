/* SPDX-License-Identifier: MIT */
/* Draws over whole jobs. A job whose cost is one drawn price has the percentiles of its shape as
 * published (outside/chance.csv, E15); draws that move together spread as they should. Draws of
 * samples: test_chance_files.c. */
#include "price/chance_parts.h"

#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

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
    /* each step is at most two and a half times the one before: 16 at most, over 16 / 2.5 */
    assert_in_range(c.bin_count, 7, 17);
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

/* What moves the cost the most stands first. Of even triangles the variance goes by the square of
 * the width, so of 1 : 4 : 2 it is 1 : 16 : 4, of which the squared rank correlations of a sum of
 * three are near. */
static void largest_first(void **state) {
    (void)state;
    static const char *const edits[] = {
        THOUSAND, "consumable bumper|price = 5.000000 per door (4.500000 to 5.500000)",
        "consumable cord|price = 5.000000 per door (3.000000 to 7.000000)",
        "consumable tag|price = 5.000000 per door (4.000000 to 6.000000)", NULL};
    struct chance c;
    struct pool pool;
    pool_init(&pool);
    draw(&c, "largest first", edits, TEN_THOUSAND, &pool);
    assert_int_equal(c.drawn, 3);
    near(c.inputs[0].share, 16000 / 21, 25);
    near(c.inputs[1].share, 4000 / 21, 25);
    near(c.inputs[2].share, 1000 / 21, 25);
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
    assert_int_equal(c.inputs[0].state, CHANCE_DRAWN);
    assert_non_null(c.inputs[1].number);
    assert_int_equal(c.inputs[1].state, CHANCE_HELD); /* no door is hinged: draw() has it else */
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
        cmocka_unit_test(one_price),     cmocka_unit_test(two_prices),
        cmocka_unit_test(largest_first), cmocka_unit_test(drawn_first),
        cmocka_unit_test(held),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
