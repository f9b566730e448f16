/* SPDX-License-Identifier: MIT */
/* What one operation does to one leaf: its run minutes. */
#ifndef DOORCOST_LABOR_RUN_H
#define DOORCOST_LABOR_RUN_H

#include "labor/labor.h"

/* The rates of an operation; none where the file says nothing of them. */
struct run_rates {
    fig passes, together, feed, minutes, handling;
};

/* Puts the rates of an operation on the tape under the subject that is set, so that they are filed
 * under the operation and not under the first door that it works on. */
struct run_rates run_rates_given(const struct calc *calc, const struct operation *operation);

/* Run minutes of a leaf by share->count of the driver: count / feed, or count x minutes, each by
 * how many are worked on at once, and what is handled x handling, each times the passes.  A leaf
 * wider than the machine takes twice the passes; where that can't be, calc's problems are warned.
 * Sets run. */
void run_leaf(struct operation_share *share, const struct calc *calc,
              const struct operation *operation, const struct run_rates *rates,
              const struct leaf_figures *leaf);

/* Whether a leaf is wider than the machine of an operation takes in one pass. */
bool run_is_wide(const struct operation *operation, const struct door *door);

#endif
