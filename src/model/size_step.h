/* SPDX-License-Identifier: MIT */
/* To what the sizes are rounded that papers name to cut or to buy: what a tape and a fence can
 * take.
 *
 * With `round sizes to` every size is rounded to that step, the way in which it still fits; without
 * it sizes are as they come. Method: docs/method.md, "Sizes that a tape has". */
#ifndef DOORCOST_MODEL_SIZE_STEP_H
#define DOORCOST_MODEL_SIZE_STEP_H

#include "model/rates.h"

struct size_step {
    enum length_unit unit; /* of the job */
    length step;           /* nm, a multiple of 1/64 in or 0.1 mm; 0: none is given */
};

/* The step of a job that counts in the unit: the shop's, raised to a multiple of 1/64 in or 0.1 mm
 * where the job counts in other units than the shop. */
struct size_step size_step_of(const struct saw *saw, enum length_unit unit);

/* A size (nm) rounded to the step, as it is where there is none: to the nearest, half up. */
length size_nearest(struct size_step step, length size);
/* The same down. */
length size_down(struct size_step step, length size);
/* The same up. */
length size_up(struct size_step step, length size);

#endif
