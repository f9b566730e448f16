/* SPDX-License-Identifier: MIT */
/* Triangles, PERT and the normal distribution against published values (chance.csv). Mean and
 * standard deviation are those of 1,000,000 values at even steps of chance. */
#include "chance/normal.h"
#include "chance/shape.h"
#include "rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <string.h>

#include <cmocka.h>

#define STEPS 1000000

/* Thousand-millionths as a number, and back. */
static double number(const struct rows *rows, size_t row, const char *column) {
    return (double)rows_number(rows, row, column) / (double)ROWS_ONE;
}
static int64_t scaled(double value) {
    return (int64_t)floor(value * (double)ROWS_ONE + 0.5);
}

static void moments(const struct shape *shape, double *mean, double *deviation) {
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < STEPS; i++) {
        sum += (double)shape_at(shape, (i + 0.5) / STEPS);
    }
    *mean = sum / STEPS;
    for (int i = 0; i < STEPS; i++) {
        const double off = (double)shape_at(shape, (i + 0.5) / STEPS) - *mean;
        squares += off * off;
    }
    *deviation = sqrt(squares / STEPS);
}

/* In ten-thousandths, so that rounding to whole numbers is not seen. */
#define PER_ONE 10000.0

static double of_shape(const struct rows *rows, size_t row, enum shape_kind kind) {
    struct shape shape;
    double mean;
    double deviation;
    shape_make(&shape, kind, (int64_t)(number(rows, row, "low") * PER_ONE + 0.5),
               (int64_t)(number(rows, row, "likely") * PER_ONE + 0.5),
               (int64_t)(number(rows, row, "high") * PER_ONE + 0.5));
    const char *const what = rows_cell(rows, row, "what");
    if (strcmp(what, "percentile") == 0) {
        return (double)shape_at(&shape, number(rows, row, "argument")) / PER_ONE;
    }
    moments(&shape, &mean, &deviation);
    return (strcmp(what, "mean") == 0 ? mean : deviation) / PER_ONE;
}

static void published(void **state) {
    (void)state;
    struct rows rows;
    rows_read(&rows, "chance.csv");
    for (size_t i = 0; i < rows.count; i++) {
        const double argument = number(&rows, i, "argument");
        if (rows_check_is(&rows, i, "triangle")) {
            rows_expect(&rows, i, scaled(of_shape(&rows, i, SHAPE_TRIANGLE)));
        } else if (rows_check_is(&rows, i, "pert")) {
            rows_expect(&rows, i, scaled(of_shape(&rows, i, SHAPE_PERT)));
        } else if (strcmp(rows_cell(&rows, i, "what"), "below") == 0) {
            rows_expect(&rows, i, scaled(normal_below(argument)));
        } else {
            rows_expect(&rows, i, scaled(normal_at(argument)));
        }
    }
    rows_done(&rows);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(published)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
