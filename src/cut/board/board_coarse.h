/* SPDX-License-Identifier: MIT */
/* Jobs with more sizes of parts than the relaxation takes in its time, made simpler. For
 * board_plan.c only.
 *
 * Parts of one width and of nearly one length become one size. With the least length of each such
 * group every plan of the job is one of the simpler job, so its bound holds; with the greatest,
 * every plan of the simpler job is one of the job. */
#ifndef DOORCOST_CUT_BOARD_BOARD_COARSE_H
#define DOORCOST_CUT_BOARD_BOARD_COARSE_H

#include "cut/board/board_plan.h"

/* What the items of a job become: least and greatest have its item_count items, in its order. */
struct board_coarse {
    struct cut_item *least, *greatest;
    bool simpler; /* false: the job has few sizes, both are as its own */
};

/* Fills *coarse; cleared by its owner, also after a failure. false: out of memory. */
bool board_coarse_make(struct board_coarse *coarse, const struct board_job *job)
    __attribute__((warn_unused_result));
/* Frees what *coarse holds and empties it. */
void board_coarse_clear(struct board_coarse *coarse);

#endif
