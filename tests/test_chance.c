/* SPDX-License-Identifier: MIT */
/* Draws: the generator's published numbers, the arithmetic against the C library's, sums of draws
 * against what statistics says of them. Seeds are fixed, and so are all results. */
#include "chance/normal.h"
#include "chance/power.h"
#include "chance/random.h"
#include "chance/shape.h"
#include "chance/spread.h"

#include "cmocka_all.h"

#include <math.h>
#include <stdlib.h>

#define DRAWS 100000

/* The first of 1234567 as many programs print them, and of 0; both from memory. */
static void published_numbers(void **state) {
    (void)state;
    static const uint64_t of_1234567[] = {
        UINT64_C(6457827717110365317), UINT64_C(3203168211198807973), UINT64_C(9817491932198370423),
        UINT64_C(4593380528125082431), UINT64_C(16408922859458223821)};
    static const uint64_t of_0[] = {UINT64_C(0xE220A8397B1DCDAF), UINT64_C(0x6E789E6AA1B965F4),
                                    UINT64_C(0x06C45D188009454F)};
    for (size_t i = 0; i < sizeof of_1234567 / sizeof *of_1234567; i++) {
        assert_true(random_at(1234567, i) == of_1234567[i]);
    }
    for (size_t i = 0; i < sizeof of_0 / sizeof *of_0; i++) {
        assert_true(random_at(0, i) == of_0[i]);
    }
}

static void streams_differ(void **state) {
    (void)state;
    assert_true(random_stream(1, "shop labor rate") == random_stream(1, "shop labor rate"));
    assert_true(random_stream(1, "shop labor rate") != random_stream(2, "shop labor rate"));
    assert_true(random_stream(1, "shop labor rate") != random_stream(1, "shop overhead"));
    assert_true(random_part(0) > 0);
    assert_true(random_part(UINT64_MAX) < 1);
}

/* Ten parts of 10,000 draws each: 23.6 is passed by chance once in 200 (chi square of 9). */
static void even(void **state) {
    (void)state;
    const uint64_t seed = random_stream(1, "even");
    double counts[10] = {0};
    double chi = 0;
    for (size_t i = 0; i < DRAWS; i++) {
        counts[(size_t)(random_part(random_at(seed, i)) * 10)]++;
    }
    for (size_t i = 0; i < 10; i++) {
        chi += (counts[i] - DRAWS / 10.0) * (counts[i] - DRAWS / 10.0) / (DRAWS / 10.0);
    }
    assert_true(chi < 23.6);
}

static void assert_near(double value, double wanted, double most) {
    if (fabs(value - wanted) > most) {
        print_error("%.15g, wanted %.15g\n", value, wanted);
        fail();
    }
}

static void like_the_library(void **state) {
    (void)state;
    for (int i = -108; i <= 108; i++) {
        const double x = i * 0.37;
        assert_near(power_exp(x) / exp(x), 1, 1e-14);
        assert_near(power_log(exp(x)), x, 1e-14 * fabs(x) + 1e-15);
        assert_near(power_of(exp(x), 0.7) / pow(exp(x), 0.7), 1, 2e-14);
        const double z = x / 7;
        assert_near(normal_below(z), erfc(-z / sqrt(2)) / 2, 1e-12);
        assert_near(normal_at(normal_below(z)), z, 1e-6);
    }
    assert_true(power_of(0, 0) == 1 && power_of(0, 2) == 0 && power_of(1e-300, 4) == 0);
}

/* The even PERT is the beta distribution of 4 and 4, whose sum is a polynomial. */
static void even_pert(void **state) {
    (void)state;
    struct shape shape;
    shape_make(&shape, SHAPE_PERT, 0, 500000, 1000000);
    for (int i = 1; i < 1000; i++) {
        const double x = i / 1000.0;
        const double u = x * x * x * x * (35 + x * (-84 + x * (70 - 20 * x)));
        assert_near((double)shape_at(&shape, u) / 1e6, x, 2e-4);
    }
}

static void ends(void **state) {
    (void)state;
    struct shape shape;
    static const enum shape_kind kinds[] = {SHAPE_TRIANGLE, SHAPE_PERT};
    for (size_t k = 0; k < 2; k++) {
        for (int64_t likely = 100; likely <= 200; likely += 10) {
            shape_make(&shape, kinds[k], 100, likely, 200);
            int64_t before = 100;
            for (int i = 0; i < 1000; i++) {
                const int64_t value = shape_at(&shape, (i + 0.001) / 1000);
                assert_true(value >= before && value <= 200);
                before = value;
            }
            assert_int_equal(shape_at(&shape, 0x1p-53), 100);
            assert_int_equal(shape_at(&shape, 1 - 0x1p-53), 200);
        }
        shape_make(&shape, kinds[k], 7, 7, 7);
        assert_int_equal(shape_at(&shape, 0.3), 7);
    }
}

/* One line of a sum, by its three points. */
struct line {
    const char *name;
    int64_t low, likely, high;
};

/* Mean and standard deviation of the sum of lines drawn one by one, and how many of a hundred are
 * at most `limit`. */
static void draw_sum(enum shape_kind kind, const struct line *lines, size_t count, int64_t limit,
                     double *mean, double *deviation, double *percent) {
    int64_t *const sums = calloc(DRAWS, sizeof *sums);
    assert_non_null(sums);
    double all = 0;
    double squares = 0;
    for (size_t l = 0; l < count; l++) {
        struct shape shape;
        const uint64_t seed = random_stream(1, lines[l].name);
        shape_make(&shape, kind, lines[l].low, lines[l].likely, lines[l].high);
        for (size_t i = 0; i < DRAWS; i++) {
            sums[i] += shape_at(&shape, random_part(random_at(seed, i)));
        }
    }
    for (size_t i = 0; i < DRAWS; i++) {
        all += (double)sums[i];
        squares += (double)sums[i] * (double)sums[i];
    }
    spread_sort(sums, DRAWS);
    *mean = all / DRAWS;
    *deviation = sqrt(squares / DRAWS - *mean * *mean);
    *percent = 100.0 - 100.0 * (double)spread_above(sums, DRAWS, limit) / DRAWS;
    free(sums);
}

/* Means add, variances add. Bounds: four standard errors of 100,000 draws. */
static void triangles_add(void **state) {
    (void)state;
    static const struct line lines[] = {{"a", 9000, 10000, 12000},
                                        {"b", 400, 400, 900},
                                        {"c", 2000, 5000, 5000},
                                        {"d", 100, 250, 300}};
    double mean = 0;
    double variance = 0;
    for (size_t l = 0; l < 4; l++) {
        const double a = (double)lines[l].low;
        const double m = (double)lines[l].likely;
        const double b = (double)lines[l].high;
        mean += (a + m + b) / 3;
        variance += (a * a + m * m + b * b - a * m - a * b - m * b) / 18;
    }
    double drawn;
    double deviation;
    double percent;
    draw_sum(SHAPE_TRIANGLE, lines, 4, (int64_t)mean, &drawn, &deviation, &percent);
    assert_near(drawn, mean, 4 * sqrt(variance / DRAWS));
    assert_near(deviation, sqrt(variance), 4 * sqrt(variance / (2.0 * DRAWS)));
}

/* Published chains of three-point estimates. schematex.js.org, PERT three-point estimation: means
 * 3.17, 8.5, 4.17, 2, standard deviations 0.5, 1.5, 0.5, 0.33: 17.83 and 1.69. curioustab.com, PERT
 * network of three activities: means 3, 8, 6, standard deviations 1, 2, 2: done by 20 with 0.8413
 * by the normal distribution. Where the source has no three points they are worked back. In
 * thousandths. */
static void published_chains(void **state) {
    (void)state;
    static const struct line four[] = {{"first", 2000, 3000, 5000},
                                       {"second", 5000, 8000, 14000},
                                       {"third", 3000, 4000, 6000},
                                       {"fourth", 1000, 2000, 3000}};
    static const struct line three[] = {
        {"first", 0, 3000, 6000}, {"second", 2000, 8000, 14000}, {"third", 0, 6000, 12000}};
    double mean;
    double deviation;
    double percent;
    draw_sum(SHAPE_PERT, four, 4, 17833, &mean, &deviation, &percent);
    assert_near(mean, 17833, 4 * 1690 / sqrt(DRAWS));
    assert_near(deviation, 1690, 4 * 1690 / sqrt(2.0 * DRAWS) + 5);
    draw_sum(SHAPE_PERT, three, 3, 20000, &mean, &deviation, &percent);
    assert_near(mean, 17000, 4 * 3000 / sqrt(DRAWS));
    assert_near(deviation, 3000, 4 * 3000 / sqrt(2.0 * DRAWS));
    assert_near(percent, 84.13, 1); /* three lines are not quite a normal distribution */
}

/* Joined draws stay even, and their normal values have the correlation that was asked for: its
 * standard error is (1 - r^2) / sqrt(draws). Of ranks it is 6/pi asin(r/2), Pearson 1907. */
static void joined(void **state) {
    (void)state;
    static double z[2][DRAWS];
    static double ranks[2][DRAWS];
    static int64_t u[DRAWS];
    for (int tenths = 0; tenths <= 10; tenths += 2) {
        const double r = tenths / 10.0;
        for (size_t k = 0; k < 2; k++) {
            const uint64_t own = random_stream(1, k == 0 ? "a" : "b");
            const uint64_t shared = random_stream(1, "shared");
            double sum = 0;
            for (size_t i = 0; i < DRAWS; i++) {
                const double part = normal_joined(random_part(random_at(shared, i)),
                                                  random_part(random_at(own, i)), r);
                sum += part;
                z[k][i] = normal_at(part);
                u[i] = (int64_t)(part * 1e15);
            }
            assert_near(sum / DRAWS, 0.5, 4 * sqrt(1.0 / 12 / DRAWS));
            assert_true(spread_ranks(u, DRAWS, ranks[k]));
        }
        const double error = 4 * (1 - r * r) / sqrt(DRAWS) + 1e-6;
        assert_near(spread_correlation(z[0], z[1], DRAWS), r, error);
        assert_near(spread_correlation(ranks[0], ranks[1], DRAWS), 6 / acos(-1) * asin(r / 2),
                    1.1 * error);
    }
}

static void order(void **state) {
    (void)state;
    int64_t draws[] = {40, 10, 30, 20, 30};
    double ranks[5];
    static const double wanted[] = {4, 0, 2.5, 1, 2.5};
    assert_true(spread_ranks(draws, 5, ranks));
    for (size_t i = 0; i < 5; i++) {
        assert_true(ranks[i] == wanted[i]);
    }
    assert_near(spread_correlation(ranks, ranks, 5), 1, 1e-15);
    static const double still[5] = {0};
    assert_near(spread_correlation(ranks, still, 5), 0, 0);
    spread_sort(draws, 5);
    static const struct {
        double percent;
        int64_t draw;
    } points[] = {{1, 10}, {20, 10}, {21, 20}, {40, 20}, {50, 30}, {80, 30}, {81, 40}, {100, 40}};
    for (size_t i = 0; i < sizeof points / sizeof *points; i++) {
        assert_int_equal(spread_percentile(draws, 5, points[i].percent), points[i].draw);
    }
    static const struct {
        int64_t limit;
        size_t above;
    } limits[] = {{9, 5}, {10, 4}, {29, 3}, {30, 1}, {40, 0}, {50, 0}};
    for (size_t i = 0; i < sizeof limits / sizeof *limits; i++) {
        assert_int_equal(spread_above(draws, 5, limits[i].limit), limits[i].above);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_numbers),
        cmocka_unit_test(streams_differ),
        cmocka_unit_test(even),
        cmocka_unit_test(like_the_library),
        cmocka_unit_test(even_pert),
        cmocka_unit_test(ends),
        cmocka_unit_test(triangles_add),
        cmocka_unit_test(published_chains),
        cmocka_unit_test(joined),
        cmocka_unit_test(order),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
