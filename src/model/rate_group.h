/* SPDX-License-Identifier: MIT */
/* Which ranges of the rates share a cause, so that they move together: `together` of [chance]. */
#ifndef DOORCOST_MODEL_RATE_GROUP_H
#define DOORCOST_MODEL_RATE_GROUP_H

#include "model/rates.h"

/* Whether a name of `together` is of the number: its section (`lumber poplar`), the kind of it
 * (`lumber`), either with its key behind (`lumber price`), of [shop] the key alone, or `all`. */
bool rate_group_holds(const char *name, const struct rate_number *number);

/* The first of rates->chance.together that holds the number: with that it moves. -1: none. */
int32_t rate_group_of(const struct rates *rates, const struct rate_number *number);

#endif
