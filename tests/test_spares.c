/* SPDX-License-Identifier: MIT */
/* How many spares cost least: against a published table, and by hand. */
#include "stock/spare_chooser.h"

#include "cmocka_all.h"

#include <stdint.h>

#define MILLION INT64_C(1000000)

static void ask(int64_t pieces, int64_t percent, int64_t each, int64_t setup,
                int64_t out[SPARE_OUTPUTS]) {
    const int64_t in[] = {pieces * MILLION, percent * MILLION, each * MILLION, setup * MILLION};
    assert_true(spare_chooser.choose(in, 4, out, SPARE_OUTPUTS));
}

/* P(X <= k) of n trials, as tables of the cumulative binomial distribution have it, to 4 decimals
 * (National Bureau of Standards, Tables of the Binomial Probability Distribution, AMS 6, 1950;
 * values from memory). Of n milled, k of them spares, more than k are spoiled with 1 less that. */
static void binomial_table(void **state) {
    static const struct {
        int64_t milled, percent, spares, ten_thousandths;
    } table[] = {
        {5, 10, 0, 5905},  {5, 10, 1, 9185},  {5, 10, 2, 9914},  {10, 10, 0, 3487},
        {10, 10, 1, 7361}, {10, 10, 2, 9298}, {10, 10, 3, 9872}, {10, 5, 0, 5987},
        {10, 5, 1, 9139},  {10, 5, 2, 9885},  {10, 20, 2, 6778}, {10, 20, 4, 9672},
        {20, 5, 0, 3585},  {20, 5, 1, 7358},  {20, 5, 2, 9245},  {20, 5, 3, 9841},
        {20, 10, 2, 6769}, {20, 10, 4, 9568}, {10, 30, 3, 6496}, {10, 50, 5, 6230},
    };
    (void)state;
    for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
        int64_t out[SPARE_OUTPUTS] = {-1};
        /* what a set-up costs decides how many spares are worth it */
        for (int64_t setup = 1; out[SPARE_OUT_COUNT] < table[i].spares; setup += 1 + setup / 16) {
            assert_true(setup < 1000000);
            ask(table[i].milled - table[i].spares, table[i].percent, 2, setup, out);
        }
        if (out[SPARE_OUT_COUNT] != table[i].spares ||
            10000 - out[SPARE_OUT_SHORT_WITH] != table[i].ten_thousandths) {
            fail_msg("%d milled at %d %%: %d spares, %d", (int)table[i].milled,
                     (int)table[i].percent, (int)out[SPARE_OUT_COUNT],
                     (int)(10000 - out[SPARE_OUT_SHORT_WITH]));
        }
    }
}

/* docs/method.md, "Spare rails", with a pocket calculator. */
static void by_hand(void **state) {
    int64_t out[SPARE_OUTPUTS];
    (void)state;
    ask(10, 2, 2, 30, out);
    assert_int_equal(out[SPARE_OUT_COUNT], 1);
    assert_int_equal(out[SPARE_OUT_SHORT_WITHOUT], 1829);
    assert_int_equal(out[SPARE_OUT_SHORT_WITH], 195);
    ask(10, 2, 2, 10, out); /* 10 x (0.1829 - 0.0195) saves less than a spare that is not needed */
    assert_int_equal(out[SPARE_OUT_COUNT], 0);
    ask(10, 0, 2, 30, out); /* nothing is spoiled */
    assert_int_equal(out[SPARE_OUT_COUNT], 0);
    ask(1, 100, 2, 30, out); /* all is: no number of spares helps */
    assert_int_equal(out[SPARE_OUT_COUNT], 0);
    ask(3, 50, 0, 30, out); /* spares for nothing: never more than there are rails */
    assert_int_equal(out[SPARE_OUT_COUNT], 3);
}

/* What no stage asks is refused. */
static void refused(void **state) {
    int64_t out[SPARE_OUTPUTS];
    const int64_t many[] = {20001 * MILLION, 2 * MILLION, MILLION, 30 * MILLION};
    const int64_t none[] = {0, 2 * MILLION, MILLION, 30 * MILLION};
    (void)state;
    assert_false(spare_chooser.choose(many, 4, out, SPARE_OUTPUTS));
    assert_false(spare_chooser.choose(none, 4, out, SPARE_OUTPUTS));
    assert_false(spare_chooser.choose(many, 3, out, SPARE_OUTPUTS));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(binomial_table),
        cmocka_unit_test(by_hand),
        cmocka_unit_test(refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
