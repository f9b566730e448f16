/* SPDX-License-Identifier: MIT */
#include "chance/power.h"

#include <assert.h>
#include <float.h>
#include <math.h>

/* frexp, ldexp and floor are exact, and so the same everywhere. */
_Static_assert(FLT_EVAL_METHOD == 0 && DBL_MANT_DIG == 53,
               "doubles are figured as doubles; draws differ from those of others else");

/* ln 2 in two pieces: a whole number of up to 2^10 times the first is exact. */
static const double ln2_high = 0x1.62e42fee00000p-1;
static const double ln2_low = 0x1.a39ef35793c76p-33;

double power_log(double x) {
    assert(x > 0);
    int exponent;
    double m = frexp(x, &exponent);
    if (m < 0.70710678118654752) {
        m *= 2;
        exponent--;
    }
    const double s = (m - 1) / (m + 1);
    const double square = s * s;
    double sum = 0;
    for (int n = 25; n >= 1; n -= 2) { /* s is below 0.172: s^27 / 27 is below 10^-21 */
        sum = sum * square + 1.0 / n;
    }
    return exponent * ln2_high + (2 * s * sum + exponent * ln2_low);
}

double power_exp(double x) {
    assert(x >= -700 && x <= 700);
    const double halves = floor(x / (ln2_high + ln2_low) + 0.5);
    const double rest = (x - halves * ln2_high) - halves * ln2_low;
    double sum = 1;
    for (int n = 16; n >= 1; n--) { /* |rest| is below 0.35: rest^17 / 17! is below 10^-22 */
        sum = 1 + sum * rest / n;
    }
    return ldexp(sum, (int)halves);
}

double power_of(double x, double p) {
    assert(x >= 0 && p >= 0);
    if (p <= 0) {
        return 1;
    }
    if (x <= 0) {
        return 0;
    }
    const double exponent = p * power_log(x);
    return exponent < -700 ? 0 : power_exp(exponent);
}
