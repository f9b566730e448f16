/* SPDX-License-Identifier: MIT */
/* Quick plans for boards: the start of a search and the end of each dive. */
#ifndef DOORCOST_CUT_STRIP_STRIP_GREEDY_H
#define DOORCOST_CUT_STRIP_STRIP_GREEDY_H

#include "cut/strip/strip_pool.h"

enum strip_greedy_rule {
    STRIP_FIRST_FIT, /* largest pieces first, each board as full as that order makes it */
    STRIP_FULLEST    /* the largest piece, then the fullest board that has it */
};

/* Cuts all that is wanted, board by board, and appends the boards; each board is of the
 * bin that costs least for the length it uses. need is used up, or left with the pieces that no
 * stock at hand could hold. Work is added to *spent. false: an allocation failed. */
__attribute__((warn_unused_result)) bool
strip_greedy_cut(const struct cut_model *model, enum strip_greedy_rule rule,
                 struct strip_need *need, struct strip_pool *boards, int64_t *spent);

#endif
