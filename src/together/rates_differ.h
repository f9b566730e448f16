/* SPDX-License-Identifier: MIT */
/* Whether two jobs can be put together by what their rates say, wherever these stand. */
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

/* What jobs share. */
enum rates_of {
    RATES_BOUGHT, /* materials, waste, prices and packs; wages and profit may differ */
    RATES_SHOP /* operations, machines, [days] and the hours of a day; wages and prices may differ
                */
};

/* What of the rates that this goes by b has otherwise than a. *changes: in pool, those that matter
 * (their count 0: none). *words: why they can't be put together at all, and what to do, as with
 * sizes in other units; NULL. false: out of memory. */
bool rates_differ(struct bridge_changes *changes, const char **words, enum rates_of of,
                  const struct rates_side *a, const struct rates_side *b, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
