/* SPDX-License-Identifier: MIT */
/* A part of a tape made again and again with other givens: only what moves with them and is asked
 * for, on values of its own, so that the tape stays as it is.
 *
 * tape_replay makes every figure; of a kitchen with some rates moved, one in dozens changes and
 * bears on its cost. Which these are is found once. */
#ifndef DOORCOST_FIGURE_REPLAY_H
#define DOORCOST_FIGURE_REPLAY_H

#include "figure/tape.h"

/* What is made again of a tape, and what is asked for. */
struct replay_request {
    const fig *moved, *wanted; /* givens; any figures */
    size_t moved_count, wanted_count;
    const struct chooser *const *held; /* whose choices stay as they are; NULL ends the list */
};

struct replay {
    struct tape tape; /* the figures with their present values; to be asked, not to be added to */
    uint32_t *list;   /* numbers of the figures to make again, ascending */
    size_t count;
    bool held; /* what is wanted rests on a choice that would be made again and is held */
};

/* Finds what lies between `moved` and `wanted` of a traced tape, which must outlive the replay and
 * not change. replay_clear must be called whatever the result. false: out of memory. */
bool replay_make(struct replay *replay, const struct tape *tape, struct replay_request request)
    __attribute__((warn_unused_result));
/* Frees what it owns. */
void replay_clear(struct replay *replay);

/* Puts another value, at that many decimals (0 to 6), into a given. */
void replay_set(struct replay *replay, fig given, int64_t value, uint8_t decimals);

/* Makes the figures of the list again; others keep their values. The first fault: what was wanted
 * then means nothing. */
enum tape_fault replay_run(struct replay *replay) __attribute__((warn_unused_result));

#endif
