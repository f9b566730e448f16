/* SPDX-License-Identifier: MIT */
#include "model/size_step.h"

struct size_step size_step_of(const struct saw *saw, enum length_unit unit) {
    const length base = unit == LENGTH_INCH ? NM_PER_64TH : NM_PER_TENTH_MM;
    const length steps = saw->size_step.set ? (saw->size_step.amount + base - 1) / base : 0;
    return (struct size_step){unit, steps * base};
}

/* What a size is over a multiple of the step, 0 or more, below zero too. */
static length over(length size, length step) {
    return step == 0 ? 0 : (size % step + step) % step;
}

length size_down(struct size_step step, length size) {
    return size - over(size, step.step);
}

length size_up(struct size_step step, length size) {
    return size + over(-size, step.step);
}

length size_nearest(struct size_step step, length size) {
    return 2 * over(size, step.step) < step.step ? size_down(step, size) : size_up(step, size);
}
