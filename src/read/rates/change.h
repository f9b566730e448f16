/* SPDX-License-Identifier: MIT */
/* Rates changed for one reading (model/rate_change.h). */
#ifndef DOORCOST_READ_RATES_CHANGE_H
#define DOORCOST_READ_RATES_CHANGE_H

#include "model/rate_change.h"
#include "read/key/key.h"

/* Puts the changed values into ini, as if the file were edited so. A section that the file lacks is
 * reported, with the nearest one that it has; keys and values are checked where all are. changes:
 * NULL: none. false: out of memory. */
bool changes_apply(struct ini *ini, const struct rate_changes *changes, struct problems *problems)
    __attribute__((warn_unused_result));

/* Takes `lumber poplar.price = 4.60 per bf` apart, or `[lumber poplar] price = 4.60 per bf` as
 * papers name it; without a section it is of `section`. Texts in pool. NULL: done, or the pool
 * failed; else what is wrong, to be said behind the text; static. */
const char *change_split(struct rate_change *change, const char *text, const char *section,
                         struct pool *pool) __attribute__((warn_unused_result));

/* The same of rates, of [shop] without a section, with one value as it stands in a line. */
const char *change_parse(struct rate_change *change, const char *text, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
