/* SPDX-License-Identifier: MIT */
/* The search for a plan of sheets: quick plans first, then a cheaper one is asked for, again and
 * again, until the bound is met or the effort is spent; the cheapest is then made neat
 * (sheet_tidy.h). */
#ifndef DOORCOST_CUT_SHEET_SHEET_SEARCH_H
#define DOORCOST_CUT_SHEET_SHEET_SEARCH_H

#include "cut/common/offcut_rule.h"
#include "cut/sheet/sheet_state.h"

struct sheet_search {
    const struct cut_model *model;
    const struct cut_job *job; /* that the model was made of */
    struct offcut_rule keep;   /* which offcuts are worth a place */
    int64_t effort, spent;
    int64_t bound;           /* from the caller: cheaper plans do not exist */
    struct sheet_state best; /* a complete plan, when found */
    bool found;
};

/* Ways of judging places, of which a step takes one by chance. */
#define SHEET_WEIGHTINGS ((size_t)5)
extern const struct tree_weights sheet_weightings[SHEET_WEIGHTINGS];

/* Runs the search. It is cleared by its owner, also after a failure. false: an allocation failed.
 */
__attribute__((warn_unused_result)) bool sheet_search_run(struct sheet_search *search);
/* Frees what a search holds. */
void sheet_search_clear(struct sheet_search *search);

#endif
