/* SPDX-License-Identifier: MIT */
/* The pieces of new rates. For src/learn only. */
#ifndef DOORCOST_LEARN_PROPOSAL_PARTS_H
#define DOORCOST_LEARN_PROPOSAL_PARTS_H

#include "learn/learned_parts.h"
#include "learn/measured.h"
#include "learn/proposal.h"

/* What all of its makers work with. */
struct maker {
    const struct learned_job *jobs;
    size_t job_count;
    const struct rates *rates;
    struct pool *pool;
    struct proposals *made;
    int64_t shop; /* factor of all hours together, of MEASURED_ONE */
};

/* The spread of a rate that the file has: of its range a sixth, as a three-point estimate has it,
 * of what it is; else as usual. Of MEASURED_ONE. */
int64_t proposal_spread(const struct rate_number *n, int64_t usual);

/* `1 job`, `3 jobs`. In the maker's pool. */
const char *proposal_jobs(const struct maker *m, size_t jobs);

/* Proposes the number times likely, from low to high, each at most what its key takes, and says so
 * where it stays as it is written.
 * why: `sand, 5.50 h for 3.31 h in 1 job`. */
void proposal_add(struct maker *m, const struct rate_number *n, struct measured_range range,
                  const char *why);

/* Says that what was measured changes no rate; once, however many jobs say so. what, why, as_is: of
 * struct unmoved. */
void proposal_none(struct maker *m, const char *what, const char *why, bool as_is);

/* Why what was paid does not tell the price of goods; NULL: one price tells what any amount costs.
 * Static. */
const char *proposal_price_steps(const struct rates *rates, enum name_kind kind, int32_t index);

/* Proposes what goods tell of a number of the rates: price, waste, transfer. Nothing for another
 * key. index: of the name in its section, of that kind. */
void propose_of_goods(struct maker *m, const struct rate_number *n, enum name_kind kind,
                      int32_t index);

/* Proposes what doors made again tell of that rate. */
void propose_remakes(struct maker *m, const struct rate_number *n);

/* Says of all that was noted and changes no rate, or can change none, why. */
void proposals_explain(struct maker *m);

#endif
