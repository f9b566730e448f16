/* SPDX-License-Identifier: MIT */
/* A small linear program of coverage: least cost of columns, such that each row is covered at
 * least (or at most) so often. Columns are added while it is being solved.
 *
 * Primal simplex with a dense inverse, meant for some hundred rows. It works in doubles: its
 * values guide a search and its duals are proposals. No bound is taken from it without integer
 * arithmetic (strip_relax.h). Only + - * / are used, in a fixed order, so that all
 * machines with IEEE doubles agree. */
#ifndef DOORCOST_CUT_COMMON_CUT_LP_H
#define DOORCOST_CUT_COMMON_CUT_LP_H

#include "cut/common/cut_model.h"

struct cut_lp;

struct cut_lp_entry {
    size_t row;
    double value;
};

/* A program of `rows` rows without columns. rhs: what each row wants, 0 or more. at_most: rows from
 * this one on are upper limits, those before it are demands. Costs of columns should be of the
 * order of 1. NULL: an allocation failed. */
__attribute__((warn_unused_result)) struct cut_lp *cut_lp_new(size_t rows, const double *rhs,
                                                              size_t at_most);
/* Frees a program; NULL is accepted. */
void cut_lp_free(struct cut_lp *lp);

/* Adds a column; columns are numbered from 0 in order. false: an allocation failed. */
__attribute__((warn_unused_result)) bool
cut_lp_add(struct cut_lp *lp, const struct cut_lp_entry *entries, size_t count, double cost);

/* Solves from where the last call ended, spending at most `limit` of work, which is added to
 * *spent. true: solved; false: out of work or stuck, values and duals are of the last basis. */
bool cut_lp_solve(struct cut_lp *lp, int64_t limit, int64_t *spent);

/* How often each column is taken, as last solved; values: room for one a column. */
void cut_lp_values(const struct cut_lp *lp, double *values);
/* What a unit of each row is worth, as last solved: of a demand 0 or more, of a limit 0 or less.
 * duals: room for one a row. */
void cut_lp_duals(const struct cut_lp *lp, double *duals);

#endif
