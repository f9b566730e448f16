/* SPDX-License-Identifier: MIT */
/* Whether two jobs buy by the same rates: materials, waste, prices and packs; wages and profit may
 * differ. */
#ifndef DOORCOST_TOGETHER_RATES_DIFFER_H
#define DOORCOST_TOGETHER_RATES_DIFFER_H

#include "bridge/change.h"
#include "model/job.h"

/* A job with its rates and what its files say; read without errors, borrowed. */
struct rates_side {
    const struct job *job;
    const struct rates *rates;
    const struct job_texts *texts;
};

/* What of the rates that buying goes by b has otherwise than a. *changes: in pool, those that
 * matter (their count 0: none). *words: why they can't be put together at all, and what to do, as
 * with sizes in other units; NULL. false: out of memory. */
bool rates_differ(struct bridge_changes *changes, const char **words, const struct rates_side *a,
                  const struct rates_side *b, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
