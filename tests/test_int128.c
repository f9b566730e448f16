/* SPDX-License-Identifier: MIT */
/* Quotients of 128-bit integers. Wanted values by hand. */
#include "base/int128.h"

#include "cmocka_all.h"

static void to_the_nearest(void **state) {
    (void)state;
    static const struct {
        int64_t over, under, wanted;
    } rows[] = {
        {0, 5, 0}, {7, 1, 7},     {4, 10, 0},    {5, 10, 1},  {6, 10, 1},  {15, 10, 2},
        {2, 5, 0}, {3, 5, 1},     {7, 3, 2},     {8, 3, 3},   {-4, 10, 0}, {-5, 10, -1},
        {1, 2, 1}, {-15, 10, -2}, {-14, 10, -1}, {-8, 3, -3}, {-7, 3, -2}, {-1, 2, -1},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        assert_int_equal((int64_t)int128_round(rows[i].over, rows[i].under), rows[i].wanted);
    }
    /* 10^38 + 6 is close to the largest of all, which is 1.7 x 10^38 */
    int128 huge = 1;
    for (int i = 0; i < 38; i++) {
        huge *= 10;
    }
    assert_true(int128_round(huge + 6, 10) == huge / 10 + 1);
    assert_true(int128_round(huge / 10 * 17, huge) == 2);
}

static void up(void **state) {
    (void)state;
    assert_true(int128_up(0, 7) == 0);
    assert_true(int128_up(1, 7) == 1);
    assert_true(int128_up(7, 7) == 1);
    assert_true(int128_up(8, 7) == 2);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(to_the_nearest),
        cmocka_unit_test(up),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
