/* SPDX-License-Identifier: MIT */
/* Which ranges of the rates share a cause, so that they move together: `together` of [chance]. */
#ifndef DOORCOST_MODEL_RATE_GROUP_H
#define DOORCOST_MODEL_RATE_GROUP_H

#include "model/rates.h"

/* The first of rates->chance.together that holds the number: with that it moves. -1: none. */
int32_t rate_group_of(const struct rates *rates, const struct rate_number *number);

#endif
