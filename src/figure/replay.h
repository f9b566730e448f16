/* SPDX-License-Identifier: MIT */
/* A part of a tape made again and again: only what moves with some givens and is asked for.
 *
 * tape_replay makes every figure; of a kitchen with some numbers moved, one in a few dozens changes
 * and bears on its cost. Which these are is found once. */
#ifndef DOORCOST_FIGURE_REPLAY_H
#define DOORCOST_FIGURE_REPLAY_H

#include "figure/tape.h"

struct replay {
    uint32_t *list; /* numbers of the figures to make again, ascending */
    size_t count;
    bool held; /* a choice that is asked for would have to be made again, and is held */
};

/* Finds what lies between the givens `moved` and the figures `wanted` of a traced tape. held: a
 * list that NULL ends, of choosers whose choices stay as they are. The tape may not grow after.
 * replay_clear must be called whatever the result. false: out of memory. */
bool replay_make(struct replay *replay, const struct tape *tape, const fig *moved,
                 size_t moved_count, const fig *wanted, size_t wanted_count,
                 const struct chooser *const *held) __attribute__((warn_unused_result));
/* Frees what it holds. */
void replay_clear(struct replay *replay);

/* Makes these figures again, after tape_set has changed some of `moved`. What lies aside of the way
 * to what was wanted keeps its old values. The first fault; what was wanted then means nothing. */
enum tape_fault replay_run(const struct replay *replay, struct tape *tape)
    __attribute__((warn_unused_result));

#endif
