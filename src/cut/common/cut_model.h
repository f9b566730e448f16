/* SPDX-License-Identifier: MIT */
/* A job made plain for the planners: no kerf, no trim, equal items merged, sizes divided by their
 * common divisor, largest first.
 *
 * The reduction is exact. Pieces a, b, ... with kerfs between them fit a usable size U = stock - 2
 * trim when a + k + b + k + ... <= U + k; so each piece grows by a kerf, and the usable size as
 * well. Divided by the common divisor of all grown pieces, a stock may be rounded down: sums of
 * pieces are multiples of the divisor. */
#ifndef DOORCOST_CUT_COMMON_CUT_MODEL_H
#define DOORCOST_CUT_COMMON_CUT_MODEL_H

#include "cut/common/cut_stock.h"

/* Pieces of one size. */
struct cut_kind {
    int64_t length, width; /* reduced; boards: width is 1 */
    int64_t demand;        /* above 0 */
    bool turn;             /* turning is allowed and makes a difference */
    size_t first;          /* in cut_model.items: `items` of them are of this kind */
    size_t items;
};

/* A stock that can hold at least one item. */
struct cut_bin {
    int64_t length, width; /* reduced; boards: width is 1 */
    int64_t price;
    int64_t copies; /* never CUT_UNLIMITED: then as many as there are pieces */
    bool limited;   /* copies is a real limit */
    size_t stock;   /* in the job's list */
};

struct cut_model {
    size_t kind_count;
    struct cut_kind *kinds; /* by area, largest first, then by length and width */
    size_t bin_count;
    struct cut_bin *bins; /* in the job's order */
    size_t item_count;
    size_t *items;       /* indexes into the job's list, by kind */
    int64_t pieces;      /* demands in all */
    int64_t length_unit; /* reduced sizes times these are sizes of the job */
    int64_t width_unit;
};

/* Fills *model, an empty one after any failure. flat: boards, only lengths count.
 * Gives CUT_DONE, CUT_NO_MEMORY, CUT_BAD_INPUT or CUT_NO_ROOM. The model is cleared by its owner.
 */
__attribute__((warn_unused_result)) enum cut_status
cut_model_init(struct cut_model *model, const struct cut_job *job, bool flat);

/* Frees what a model owns and empties it. */
void cut_model_clear(struct cut_model *model);

/* Whether a piece of the kind fits the empty bin, whichever way it may lie. */
bool cut_model_fits(const struct cut_kind *kind, const struct cut_bin *bin);

/* Gives the items of each kind one by one, in the order of the job. */
struct cut_handout {
    const struct cut_model *model;
    const struct cut_job *job;
    size_t *at;    /* one a kind: the item in turn, in model->items */
    int64_t *left; /* one a kind: how many of that item */
};

/* At the first item of each kind; model and job are borrowed until it is cleared, which its owner
 * does also after a failure. false: out of memory. */
__attribute__((warn_unused_result)) bool cut_handout_init(struct cut_handout *handout,
                                                          const struct cut_model *model,
                                                          const struct cut_job *job);

/* The next item of a kind, in the job's list; asked for at most as often as the kind's demand. */
size_t cut_handout_next(struct cut_handout *handout, size_t kind);

/* Frees what a handout owns. */
void cut_handout_clear(struct cut_handout *handout);

/* The greatest number that divides both, each 0 or more; of 0 and another the other. */
int64_t cut_common_divisor(int64_t a, int64_t b);

/* Adds work to *spent without passing INT64_MAX. */
static inline void cut_spend(int64_t *spent, int64_t work) {
    *spent = work > INT64_MAX - *spent ? INT64_MAX : *spent + work;
}

#endif
