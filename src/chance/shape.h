/* SPDX-License-Identifier: MIT */
/* How likely each value between a low and a high one is, when one in between is most likely.
 *
 * A triangle rises straight to the most likely value and falls straight from there. The shape of
 * PERT is the beta distribution with the mean and the standard deviation that PERT is known by:
 * (low + 4 likely + high) / 6 and (high - low) / 6 (Malcolm, Roseboom, Clark, Fazar, "Application
 * of a technique for research and development program evaluation", Operations Research 7, 1959).
 * With t = (mean - low) / (high - low) its parameters are t v and (1 - t) v, v = 36 t (1 - t) - 1.
 * It puts less on the ends than the triangle; its peak is within a thirtieth of the range of the
 * likely value. */
#ifndef DOORCOST_CHANCE_SHAPE_H
#define DOORCOST_CHANCE_SHAPE_H

#include <stdint.h>

enum shape_kind { SHAPE_TRIANGLE, SHAPE_PERT };

/* Straight pieces into which the sum of chances of a PERT shape is cut. */
#define SHAPE_PIECES 1024

struct shape {
    enum shape_kind kind;
    int64_t low, high;
    double likely;                  /* as a part of the way from low to high */
    double below[SHAPE_PIECES + 1]; /* of PERT: the chance to be below each piece's end */
};

/* low <= likely <= high, of one unit and as many decimals, each below 10^12. */
void shape_make(struct shape *shape, enum shape_kind kind, int64_t low, int64_t likely,
                int64_t high);

/* The value, to the nearest whole number, below which the chance is u, 0 < u < 1. Between the ends
 * of the pieces of PERT chances grow in proportion, which is off by less than a thousandth of the
 * range. */
int64_t shape_at(const struct shape *shape, double u);

#endif
