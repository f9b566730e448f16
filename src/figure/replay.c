/* SPDX-License-Identifier: MIT */
#include "figure/replay.h"

#include "figure/tape_parts.h"

#include <assert.h>
#include <stdlib.h>

/* Bits of a figure's mark. */
#define MOVES  1u
#define WANTED 2u
#define BOTH   (MOVES | WANTED)

static bool is_held(const struct tape *tape, fig f, const struct chooser *const *held) {
    uint32_t output;
    const struct chooser *const chooser = tape_chooser(tape, f, &output);
    while (chooser != NULL && *held != NULL) {
        if (*held++ == chooser) {
            return true;
        }
    }
    return false;
}

static bool any_moves(const struct tape *tape, fig f, const unsigned char *marks) {
    for (size_t i = 0; i < tape_operands(tape, f); i++) {
        if ((marks[tape_operand(tape, f, i).f.id] & MOVES) != 0) {
            return true;
        }
    }
    return false;
}

/* From what moves forward, then from what is wanted back. */
static void mark(struct replay *replay, const struct tape *tape, unsigned char *marks,
                 const struct chooser *const *held) {
    for (uint32_t i = 1; i < tape->count; i++) {
        const fig f = {i};
        if (any_moves(tape, f, marks) && !is_held(tape, f, held)) {
            marks[i] |= MOVES;
        }
    }
    for (uint32_t i = tape->count - 1; i > 0; i--) {
        const fig f = {i};
        if ((marks[i] & WANTED) == 0) {
            continue;
        }
        if (is_held(tape, f, held)) {
            replay->held = replay->held || any_moves(tape, f, marks);
            continue;
        }
        for (size_t o = 0; o < tape_operands(tape, f); o++) {
            marks[tape_operand(tape, f, o).f.id] |= WANTED;
        }
        replay->count += (marks[i] & BOTH) == BOTH && tape_operands(tape, f) > 0 ? 1 : 0;
    }
}

bool replay_make(struct replay *replay, const struct tape *tape, const fig *moved,
                 size_t moved_count, const fig *wanted, size_t wanted_count,
                 const struct chooser *const *held) {
    assert(tape->traced);
    *replay = (struct replay){0};
    unsigned char *const marks = calloc((size_t)tape->count + 1, sizeof *marks);
    if (marks == NULL) {
        return false;
    }
    for (size_t i = 0; i < moved_count; i++) {
        marks[moved[i].id] |= MOVES;
    }
    for (size_t i = 0; i < wanted_count; i++) {
        marks[wanted[i].id] |= WANTED;
    }
    marks[0] = 0;
    mark(replay, tape, marks, held);
    replay->list = calloc(replay->count + 1, sizeof *replay->list);
    if (replay->list != NULL) {
        size_t n = 0;
        for (uint32_t i = 1; i < tape->count; i++) {
            const bool made = (marks[i] & BOTH) == BOTH && tape_operands(tape, (fig){i}) > 0;
            if (made && !is_held(tape, (fig){i}, held)) {
                replay->list[n++] = i;
            }
        }
        assert(n == replay->count);
    }
    free(marks);
    return replay->list != NULL;
}

void replay_clear(struct replay *replay) {
    free(replay->list);
    *replay = (struct replay){0};
}

enum tape_fault replay_run(const struct replay *replay, struct tape *tape) {
    if (tape->last != NULL) {
        tape->last->key = 0; /* what its operands were may have changed */
    }
    for (size_t i = 0; i < replay->count; i++) {
        bool changed;
        const enum tape_fault fault = tape_make_again(tape, replay->list[i], &changed);
        if (fault != TAPE_OK) {
            return fault;
        }
    }
    return TAPE_OK;
}
