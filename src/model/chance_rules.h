/* SPDX-License-Identifier: MIT */
/* How the ranges of the rates are drawn from: [chance]. */
#ifndef DOORCOST_MODEL_CHANCE_RULES_H
#define DOORCOST_MODEL_CHANCE_RULES_H

#include "model/value.h"

/* How likely what lies within a range is. */
enum chance_shape { CHANCE_PERT, CHANCE_TRIANGLE };

struct chance_rules {
    struct choice shape;          /* enum chance_shape; unset: as PERT */
    struct value confidence;      /* percent; unset: 80 */
    struct named_value *together; /* `together = operation minutes at 0.6`: the ranges that the name
                                     is of (model/rate_group.h) move together so much, 0 to 1 */
    size_t together_count;
};

#endif
