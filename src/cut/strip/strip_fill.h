/* SPDX-License-Identifier: MIT */
/* The most valuable filling of one board: a bounded knapsack, solved exactly in integers. */
#ifndef DOORCOST_CUT_STRIP_STRIP_FILL_H
#define DOORCOST_CUT_STRIP_STRIP_FILL_H

#include "cut/common/cut_model.h"

struct strip_fill_item {
    int64_t size;  /* above 0 */
    int64_t value; /* 0 or more; all times most together below 2^62 */
    int64_t most;  /* pieces at hand, 0 or more */
};

struct strip_fill_result {
    int64_t value; /* the best value found, or the floor asked for when none is above it */
    bool found;    /* something above the floor was found */
    bool exact;    /* nothing above `value` exists */
};

/* The largest total value of items within the capacity, if it is above `floor`. counts: one an
 * item, set when found. Work is added to *spent. false: an allocation failed. Method: lists of
 * undominated states, cut off by the fractional bound (Nemhauser, Ullmann 1969; Martello, Toth
 * 1990, chapter 2). It gives up being exact above some millions of states. */
__attribute__((warn_unused_result)) bool
strip_fill_best(const struct strip_fill_item *items, size_t count, int64_t capacity, int64_t floor,
                int64_t *counts, struct strip_fill_result *result, int64_t *spent);

#endif
