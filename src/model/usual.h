/* SPDX-License-Identifier: MIT */
/* What is usual of the numbers of the rates: [plausible]. */
#ifndef DOORCOST_MODEL_USUAL_H
#define DOORCOST_MODEL_USUAL_H

#include "model/value.h"

/* Of what the rates tell what is usual: the keys of [plausible], in their order. */
enum usual {
    USUAL_LABOR_RATE,
    USUAL_MACHINE_RATE,
    USUAL_OVERHEAD,
    USUAL_HOURS,
    USUAL_ALLOWANCE,
    USUAL_CONTINGENCY,
    USUAL_REMAKES,
    USUAL_PROFIT,
    USUAL_LUMBER_PRICE,
    USUAL_LUMBER_WASTE,
    USUAL_SHEET_PRICE,
    USUAL_SHEET_WASTE,
    USUAL_GLASS_PRICE,
    USUAL_HARDWARE_PRICE,
    USUAL_BANDING_PRICE,
    USUAL_STOPS_PRICE,
    USUAL_BOUGHT_IN,
    USUAL_PUT_OUT,
    USUAL_MINUTES,
    USUAL_MINUTES_BY_SIZE,
    USUAL_MINUTES_PER_JOB,
    USUAL_HANDLING,
    USUAL_SETUP,
    USUAL_FEED,
    USUAL_DEFECTS,
    USUAL_COVERAGE,
    USUAL_SOLIDS,
    USUAL_MIXED_IN,
    USUAL_LOSS,
    USUAL_RESERVE,
    USUAL_TRANSFER,
    USUAL_TAX,
    USUAL_DISCOUNT,
    USUAL_CARD_FEE,
    USUAL_DEPOSIT,
    USUAL_YEAR,
    USUAL_COUNT
};

struct bounds {
    struct value low, high; /* of one unit, both allowed; set false: not given */
    int choice;             /* what their unit means, as of the value that they are of */
};

#endif
