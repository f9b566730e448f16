/* SPDX-License-Identifier: MIT */
/* What minutes of an operation cost: people and machine. */
#ifndef DOORCOST_MODEL_WORK_COST_H
#define DOORCOST_MODEL_WORK_COST_H

#include "model/calc.h"

struct work_cost {
    fig person_minutes; /* machine minutes x hands, with the allowance for rest and delay */
    fig labor;          /* money: person-minutes at the rate of the operation, else the shop's */
    fig machine;        /* money; none for handwork and where the machine has no rate */
    fig all;            /* both */
};

/* Of so many machine minutes, on the tape under the subject that is set. */
struct work_cost work_cost_of(const struct calc *calc, const struct operation *operation,
                              fig machine_minutes);

#endif
