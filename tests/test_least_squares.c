/* SPDX-License-Identifier: MIT */
/* Least squares against certified values. */
#include "cmocka_all.h"
#include "learn/least_squares.h"

#include <math.h>
#include <stdlib.h>

/* NIST Statistical Reference Datasets, linear regression, Norris: calibration of ozone monitors, 36
 * observations (y, x), level of difficulty lower. Data and certified values from memory; that the
 * certified values come out to eleven digits shows that the data are those. */
static const double norris[][2] = {
    {0.1, 0.2},     {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1},    {228.1, 226.5},
    {668.5, 666.3}, {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4},
    {0.1, 0.6},     {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6},
    {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
    {0.6, 0.3},     {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0},
    {10.2, 11.1},   {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5},
};

/* The same, Longley: employment and six economic series, 16 observations, level of difficulty
 * higher, as its columns hardly tell each other apart. From memory, likewise. */
static const double longley[][7] = {
    {60323, 83.0, 234289, 2356, 1590, 107608, 1947},
    {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
    {60171, 88.2, 258054, 3682, 1616, 109773, 1949},
    {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
    {63221, 96.2, 328975, 2099, 3099, 112075, 1951},
    {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
    {64989, 99.0, 365385, 1870, 3547, 115094, 1953},
    {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
    {66019, 101.2, 397469, 2904, 3048, 117388, 1955},
    {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
    {68169, 108.4, 442769, 2936, 2798, 120445, 1957},
    {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
    {68655, 112.6, 482704, 3813, 2552, 123366, 1959},
    {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
    {69331, 115.7, 518173, 4806, 2572, 127852, 1961},
    {70551, 116.9, 554894, 4007, 2827, 130081, 1962},
};

static void check(double got, double certified, double part) {
    if (fabs(got - certified) > fabs(certified) * part) {
        fail_msg("%.15g, certified %.15g", got, certified);
    }
}

static void test_norris(void **state) {
    double x[COUNT(norris) * 2];
    double y[COUNT(norris)];
    double b[2];
    double spread;
    (void)state;
    for (size_t i = 0; i < COUNT(norris); i++) {
        y[i] = norris[i][0];
        x[2 * i] = 1;
        x[2 * i + 1] = norris[i][1];
    }
    assert_true(least_squares(&(struct matrix){x, COUNT(norris), 2}, y, b, &spread));
    check(b[0], -0.262323073774029, 1e-11);
    check(b[1], 1.00211681802045, 1e-12);
    check(spread, 0.884796396144373, 1e-11);
}

static void test_longley(void **state) {
    static const double certified[] = {-3482258.63459582, 15.0618722713733,  -0.0358191792925910,
                                       -2.02022980381683, -1.03322686717359, -0.0511041056535807,
                                       1829.15146461355};
    double x[COUNT(longley) * 7];
    double y[COUNT(longley)];
    double b[7];
    double spread;
    (void)state;
    for (size_t i = 0; i < COUNT(longley); i++) {
        y[i] = longley[i][0];
        x[7 * i] = 1;
        for (size_t k = 1; k < 7; k++) {
            x[7 * i + k] = longley[i][k];
        }
    }
    assert_true(least_squares(&(struct matrix){x, COUNT(longley), 7}, y, b, &spread));
    for (size_t k = 0; k < 7; k++) {
        check(b[k], certified[k], 1e-7);
    }
    check(spread, 304.854073561965, 1e-8);
}

/* Columns of which one is another twice over tell nothing apart. */
static void test_alike(void **state) {
    double x[] = {1, 2, 4, 1, 3, 6, 1, 5, 10, 1, 7, 14};
    double y[] = {1, 2, 3, 4};
    double b[3];
    double spread;
    (void)state;
    assert_false(least_squares(&(struct matrix){x, 4, 3}, y, b, &spread));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_norris),
        cmocka_unit_test(test_longley),
        cmocka_unit_test(test_alike),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
