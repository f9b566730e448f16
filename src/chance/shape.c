/* SPDX-License-Identifier: MIT */
#include "chance/shape.h"

#include "chance/power.h"

#include <assert.h>
#include <math.h>
#include <stddef.h>

/* The integral of t^(a - 1) (1 - t)^(b - 1) from 0 to x, for x of at most 1/2: x^a times the sum of
 * (1 - b)(2 - b)...(n - b) / n! x^n / (a + n), the binomial series of the second factor. */
static double beta_part(double x, double a, double b) {
    double factor = 1;
    double sum = 0;
    for (int n = 0; n < 64; n++) { /* b is below 7: |factor| is below 10^-18 in the end */
        sum += factor / (a + n);
        factor *= (n + 1 - b) / (n + 1) * x;
    }
    return power_of(x, a) * sum;
}

/* What is beyond the middle is what is below it seen from the other end, so only the half where the
 * series is quick is ever asked for. */
static void sum_beta(double *below, double likely) {
    const double mean = (1 + 4 * likely) / 6;
    const double both = 36 * mean * (1 - mean) - 1;
    const double a = mean * both;
    const double b = both - a;
    const double left = beta_part(0.5, a, b);
    const double whole = left + beta_part(0.5, b, a);
    for (size_t i = 0; i <= SHAPE_PIECES; i++) {
        const double x = (double)i / SHAPE_PIECES;
        const double part =
            2 * i <= SHAPE_PIECES ? beta_part(x, a, b) : whole - beta_part(1 - x, b, a);
        below[i] = part / whole;
    }
    below[0] = 0;
    below[SHAPE_PIECES] = 1;
}

void shape_make(struct shape *shape, enum shape_kind kind, int64_t low, int64_t likely,
                int64_t high) {
    assert(low <= likely && likely <= high);
    *shape = (struct shape){.kind = kind, .low = low, .high = high};
    if (high == low) {
        return;
    }
    shape->likely = (double)(likely - low) / (double)(high - low);
    if (kind == SHAPE_PERT) {
        sum_beta(shape->below, shape->likely);
    }
}

/* Each as a part of the way from low to high. */
static double triangle_at(double likely, double u) {
    return u <= likely ? sqrt(u * likely) : 1 - sqrt((1 - u) * (1 - likely));
}

static double pert_at(const double *below, double u) {
    size_t from = 0;
    size_t to = SHAPE_PIECES;
    while (to - from > 1) { /* below[from] <= u < below[to] */
        const size_t middle = (from + to) / 2;
        if (below[middle] <= u) {
            from = middle;
        } else {
            to = middle;
        }
    }
    return ((double)from + (u - below[from]) / (below[to] - below[from])) / SHAPE_PIECES;
}

int64_t shape_at(const struct shape *shape, double u) {
    assert(u > 0 && u < 1);
    if (shape->high == shape->low) {
        return shape->low;
    }
    const double part =
        shape->kind == SHAPE_PERT ? pert_at(shape->below, u) : triangle_at(shape->likely, u);
    return shape->low + (int64_t)floor(part * (double)(shape->high - shape->low) + 0.5);
}
