/* SPDX-License-Identifier: MIT */
/* The linear relaxation of cutting boards: patterns may be cut a fraction of a time. It gives the
 * lower bound, and says which patterns a good plan is made of.
 * Method: column generation (Gilmore, Gomory 1961), priced by strip_fill.h. */
#ifndef DOORCOST_CUT_STRIP_STRIP_RELAX_H
#define DOORCOST_CUT_STRIP_STRIP_RELAX_H

#include "cut/strip/strip_pool.h"

struct strip_relaxed {
    /* No plan for the need costs less. It is computed from the duals in integers (Farley 1990): the
     * duals are rounded to integers, each bin's best pattern at those values is found exactly,
     * and the values are scaled down until no pattern is worth more than its bin's price. */
    int64_t bound;
    bool solved;            /* the relaxation was solved to its end */
    struct strip_pool pool; /* patterns that the need can use whole */
    double *shares;         /* how often each is cut in the relaxation */
};

/* Solves the relaxation for what is needed. seed: patterns known so far; those found are added to
 * it. Stops when spent passes limit, with what it has. relaxed is cleared by its owner, also after
 * a failure. false: an allocation failed. */
__attribute__((warn_unused_result)) bool strip_relax(const struct cut_model *model,
                                                     const struct strip_need *need,
                                                     struct strip_pool *seed, int64_t limit,
                                                     int64_t *spent, struct strip_relaxed *relaxed);

/* Frees what was found and empties it. */
void strip_relaxed_clear(struct strip_relaxed *relaxed);

#endif
