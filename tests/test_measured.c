/* SPDX-License-Identifier: MIT */
/* Measurements of one thing put together. */
#include "cmocka_all.h"
#include "learn/measured.h"

#include <stdlib.h>

/* Weighted means of measurements with weights 1 / sigma^2 and sigma = 1 / sqrt(sum of weights), as
 * books on data analysis have them (from memory); each worked by hand. */
static void test_put_together(void **state) {
    static const struct {
        int64_t value[3], spread[3];
        size_t count;
        int64_t likely, sigma;
    } rows[] = {
        /* one alone stays what it is */
        {{1000000}, {250000}, 1, 1000000, 250000},
        /* 1.0 and 1.2, as sure: between them; 0.1 / sqrt 2 */
        {{1000000, 1200000}, {100000, 100000}, 2, 1100000, 70711},
        /* 10 +- 1 and 12 +- 2: weights 1 and 1/4, (10 + 3) / 1.25 = 10.4, sigma 1 / sqrt 1.25 */
        {{10000000, 12000000}, {1000000, 2000000}, 2, 10400000, 894427},
        /* three as sure: their mean, 0.3 / sqrt 3 */
        {{900000, 1000000, 1400000}, {300000, 300000, 300000}, 3, 1100000, 173205},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct measured m = measured_start(rows[i].value[0], rows[i].spread[0]);
        for (size_t k = 1; k < rows[i].count; k++) {
            measured_add(&m, rows[i].value[k], rows[i].spread[k]);
        }
        const struct measured_range range = measured_range(&m);
        /* weights are whole numbers */
        assert_true(llabs(range.likely - rows[i].likely) <= rows[i].likely / 1000);
        assert_int_equal(range.likely, measured_likely(&m));
        const int64_t reach = rows[i].sigma * 1645 / 1000;
        assert_true(llabs(range.high - range.likely - reach) <= reach / 100 + 1);
        if (range.likely - reach > range.likely / 10) {
            assert_true(llabs(range.likely - range.low - reach) <= reach / 100 + 1);
        }
    }
}

/* A rate is never moved to nothing, however little is known of it. */
static void test_stays_above_nothing(void **state) {
    const struct measured m = measured_start(1000000, 900000);
    (void)state;
    assert_int_equal(measured_range(&m).low, 100000);
}

/* Half the time is twice the feed, and what is low is high. */
static void test_inverse(void **state) {
    const struct measured_range range =
        measured_inverse((struct measured_range){.low = 500000, .likely = 800000, .high = 2000000});
    (void)state;
    assert_int_equal(range.low, 500000);
    assert_int_equal(range.likely, 1250000);
    assert_int_equal(range.high, 2000000);
}

/* Standard deviations of a binomial share, sqrt(p (1 - p) / n), over p: half of 100 is 0.5 +- 0.05,
 * a fiftieth of 49 is 0.02 +- 0.02, a tenth of 9 is 0.1 +- 0.1. Where all fail, or a thing in a
 * million, the limits. */
static void test_share(void **state) {
    (void)state;
    assert_int_equal(measured_share_spread(500000, 100), 100000);
    assert_int_equal(measured_share_spread(20000, 49), 1000000);
    assert_int_equal(measured_share_spread(100000, 9), 1000000);
    assert_int_equal(measured_share_spread(1000000, 50), 1000);
    assert_int_equal(measured_share_spread(1, 1), 999999499); /* 1000 less a half in a million */
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_put_together),
        cmocka_unit_test(test_stays_above_nothing),
        cmocka_unit_test(test_inverse),
        cmocka_unit_test(test_share),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
