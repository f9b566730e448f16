/* SPDX-License-Identifier: MIT */
#include "figure/replay.h"

#include "figure/tape_parts.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

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
static void mark(struct replay *replay, const struct tape *tape, const struct chooser *const *held,
                 unsigned char *marks) {
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
    }
}

/* A given moves by replay_set alone. */
static void list_marked(struct replay *replay, const struct tape *tape,
                        const unsigned char *marks) {
    for (uint32_t i = 1; i < tape->count; i++) {
        if (marks[i] == BOTH && tape_op(tape, (fig){i}) != OP_GIVEN) {
            replay->list[replay->count++] = i;
        }
    }
}

bool replay_make(struct replay *replay, const struct tape *tape, struct replay_request request) {
    assert(tape->traced && tape->fault == TAPE_OK);
    unsigned char *const marks = calloc((size_t)tape->count + 1, sizeof *marks);
    *replay = (struct replay){.tape = *tape};
    replay->tape.values = calloc(tape->count, sizeof *tape->values);
    replay->tape.last = calloc(1, sizeof *tape->last);
    replay->list = calloc(tape->count, sizeof *replay->list);
    const bool made = marks != NULL && replay->tape.values != NULL && replay->tape.last != NULL &&
                      replay->list != NULL;
    if (made) {
        memcpy(replay->tape.values, tape->values, tape->count * sizeof *tape->values);
        for (size_t i = 0; i < request.moved_count; i++) {
            marks[request.moved[i].id] |= MOVES;
        }
        for (size_t i = 0; i < request.wanted_count; i++) {
            marks[request.wanted[i].id] |= WANTED;
        }
        marks[0] = 0; /* what is none neither moves nor is wanted */
        mark(replay, tape, request.held, marks);
        list_marked(replay, tape, marks);
    }
    free(marks);
    return made;
}

void replay_clear(struct replay *replay) {
    free(replay->tape.values);
    free(replay->tape.last);
    free(replay->list);
    *replay = (struct replay){0};
}

void replay_set(struct replay *replay, fig given, int64_t value, uint8_t decimals) {
    uint64_t *const packed = &replay->tape.values[given.id];
    assert(given.id < replay->tape.count && tape_op(&replay->tape, given) == OP_GIVEN);
    *packed = value_pack(value, value_unit(*packed), decimals);
}

enum tape_fault replay_run(struct replay *replay) {
    replay->tape.last->key = 0; /* what its operands were may have changed */
    for (size_t i = 0; i < replay->count; i++) {
        bool changed;
        const enum tape_fault fault = tape_make_again(&replay->tape, replay->list[i], &changed);
        if (fault != TAPE_OK) {
            return fault;
        }
    }
    return TAPE_OK;
}
