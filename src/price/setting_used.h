/* SPDX-License-Identifier: MIT */
/* Which lines of its rates or of its own file a job takes numbers from. */
#ifndef DOORCOST_PRICE_SETTING_USED_H
#define DOORCOST_PRICE_SETTING_USED_H

#include "price/estimate.h"

/* By setting of a file of the estimate (settings->list): whether a figure was made of it; what
 * stages put on the tape for all doors alike may be of none here. Of a traced estimate. In pool;
 * NULL: out of memory. */
bool *settings_used(const struct estimate *estimate, const struct settings *settings,
                    struct pool *pool);

#endif
