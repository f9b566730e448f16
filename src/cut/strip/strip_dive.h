/* SPDX-License-Identifier: MIT */
/* The search for a plan of boards: quick plans first, then dives through the relaxation. */
#ifndef DOORCOST_CUT_STRIP_STRIP_DIVE_H
#define DOORCOST_CUT_STRIP_STRIP_DIVE_H

#include "cut/strip/strip_pool.h"

/* A search and what it found. Empty when all zero but the model. */
struct strip_search {
    const struct cut_model *model;
    int64_t effort, spent;
    struct strip_pool seed; /* patterns worth trying */
    struct strip_pool best; /* the boards of the best plan */
    int64_t cost;           /* its cost; INT64_MAX: none yet */
    int64_t bound;          /* proven, rounded up to a sum of prices */
};

/* Runs the search until its effort is spent or the bound is met. The search is cleared by its
 * owner, also after a failure. false: an allocation failed. */
__attribute__((warn_unused_result)) bool strip_search_run(struct strip_search *search);

/* Frees what a search holds. */
void strip_search_clear(struct strip_search *search);

#endif
