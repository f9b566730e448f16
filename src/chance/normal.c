/* SPDX-License-Identifier: MIT */
#include "chance/normal.h"

#include "chance/power.h"

#include <assert.h>
#include <math.h>

#define MOST_Z 6.0

double normal_below(double z) {
    z = z > MOST_Z ? MOST_Z : (z < -MOST_Z ? -MOST_Z : z);
    double term = z;
    double sum = z;
    for (int n = 3; fabs(term) > 1e-17 * fabs(sum); n += 2) { /* z^n / (1 x 3 x ... x n) */
        term *= z * z / n;
        sum += term;
    }
    static const double root_two_pi = 2.50662827463100050;
    return 0.5 + sum * power_exp(-z * z / 2) / root_two_pi;
}

/* The first coefficient belongs to the highest power. */
static double polynomial(const double *c, int count, double x) {
    double sum = 0;
    for (int i = 0; i < count; i++) {
        sum = sum * x + c[i];
    }
    return sum;
}

double normal_at(double u) {
    static const double a[] = {59.109374720, 159.29113202, 50.434271938, 3.3871327179};
    static const double b[] = {67.187563600, 78.757757664, 17.895169469, 1.0};
    static const double c[] = {0.17023821103, 1.3067284816, 2.7568153900, 1.4234372777};
    static const double d[] = {0.12021132975, 0.73700164250, 1.0};
    static const double e[] = {0.017337203997, 0.42868294337, 3.0812263860, 6.6579051150};
    static const double f[] = {0.012258202635, 0.24197894225, 1.0};
    assert(u > 0 && u < 1);
    const double q = u - 0.5;
    if (fabs(q) <= 0.425) {
        const double r = 0.180625 - q * q;
        return q * polynomial(a, 4, r) / polynomial(b, 4, r);
    }
    const double r = sqrt(-power_log(q < 0 ? u : 1 - u));
    const double z = r <= 5 ? polynomial(c, 4, r - 1.6) / polynomial(d, 3, r - 1.6)
                            : polynomial(e, 4, r - 5) / polynomial(f, 3, r - 5);
    return q < 0 ? -z : z;
}

double normal_joined(double shared, double own, double together) {
    assert(together >= 0 && together <= 1);
    const double z = sqrt(together) * normal_at(shared) + sqrt(1 - together) * normal_at(own);
    return normal_below(z);
}
