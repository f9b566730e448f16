/* SPDX-License-Identifier: MIT */
/* Storage of the tape: figures in one array, their operands as words in another (a figure's number,
 * the top bit for `minus` or `below the line`), origins of givens, labels and subjects each once.
 */
#include "figure/tape.h"

#include "figure/operation.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define MOST_LABELS UINT16_MAX

void tape_init(struct tape *tape) {
    *tape = (struct tape){0};
    pool_init(&tape->pool);
    tape->last = calloc(1, sizeof *tape->last);
    tape->label_slots = calloc(LABEL_SLOTS, sizeof *tape->label_slots);
    bool failed = tape->last == NULL || tape->label_slots == NULL;
    tape->figures =
        array_grow(tape->figures, &tape->figure_room, 1, sizeof *tape->figures, &failed);
    tape->labels = array_grow(tape->labels, &tape->label_room, 1, sizeof *tape->labels, &failed);
    tape->subjects =
        array_grow(tape->subjects, &tape->subject_room, 1, sizeof *tape->subjects, &failed);
    if (failed) {
        tape->fault = TAPE_MEMORY;
        return;
    }
    tape->figures[0] = (struct figure){0};
    tape->labels[0] = "";
    tape->subjects[0] = "";
    tape->count = tape->label_count = tape->subject_count = 1;
}

void tape_clear(struct tape *tape) {
    free(tape->figures);
    free(tape->words);
    free(tape->origins);
    free(tape->labels);
    free(tape->label_slots);
    free(tape->subjects);
    free(tape->choosers);
    free(tape->index);
    free(tape->last);
    pool_clear(&tape->pool);
    *tape = (struct tape){0};
}

void tape_set_fault(struct tape *tape, enum tape_fault fault, fig at) {
    if (tape->fault == TAPE_OK && fault != TAPE_OK) {
        tape->fault = fault;
        tape->fault_at = at;
    }
}

uint32_t tape_about(struct tape *tape, const char *name) {
    bool failed = false;
    tape->subjects = array_grow(tape->subjects, &tape->subject_room, tape->subject_count + 1u,
                                sizeof *tape->subjects, &failed);
    if (failed) {
        tape_set_fault(tape, TAPE_MEMORY, (fig){0});
        return 0;
    }
    tape->subjects[tape->subject_count] = name;
    tape->about = tape->subject_count++;
    return tape->about;
}

void tape_about_again(struct tape *tape, uint32_t subject) {
    assert(subject < tape->subject_count || subject == 0);
    tape->about = subject;
}

/* Adds a label, or finds an equal one: the same words may stand at several addresses. */
static bool add_label(struct tape *tape, const char *what, uint16_t *number) {
    for (uint32_t i = 0; i < tape->label_count; i++) {
        if (strcmp(tape->labels[i], what) == 0) {
            *number = (uint16_t)i;
            return true;
        }
    }
    bool failed = tape->label_count >= MOST_LABELS;
    tape->labels = array_grow(tape->labels, &tape->label_room, tape->label_count + 1u,
                              sizeof *tape->labels, &failed);
    if (failed) {
        tape_set_fault(tape, TAPE_MEMORY, (fig){0});
        return false;
    }
    *number = (uint16_t)tape->label_count;
    tape->labels[tape->label_count++] = what;
    return true;
}

/* Labels are literals, each asked for once a row: an address seen before needs no search. */
uint16_t tape_label_number(struct tape *tape, const char *what) {
    if (tape->label_slots == NULL) {
        return 0; /* memory was out from the start */
    }
    const uint64_t mixed = (uint64_t)(uintptr_t)what * UINT64_C(0x9E3779B97F4A7C15);
    struct label_slot *const slot = &tape->label_slots[(size_t)(mixed >> 32) & (LABEL_SLOTS - 1)];
    if (slot->what != what) {
        uint16_t number = 0;
        if (!add_label(tape, what, &number)) {
            return 0;
        }
        *slot = (struct label_slot){.what = what, .number = number};
    }
    return slot->number;
}

bool tape_add_word(struct tape *tape, uint32_t word) {
    bool failed = tape->word_count == UINT32_MAX;
    tape->words = array_grow(tape->words, &tape->word_room, (size_t)tape->word_count + 1,
                             sizeof *tape->words, &failed);
    if (failed) {
        tape_set_fault(tape, TAPE_MEMORY, (fig){0});
        return false;
    }
    tape->words[tape->word_count++] = word;
    return true;
}

/* Adds a figure whose operands are the words from `first` on, and works its value out. */
fig tape_add_figure(struct tape *tape, struct figure made, const char *what) {
    made.label = tape_label_number(tape, what);
    made.subject = tape->about;
    bool failed = tape->fault == TAPE_MEMORY || tape->count >= ~TAPE_MINUS_BIT;
    tape->figures = array_grow(tape->figures, &tape->figure_room, tape->count + 1u,
                               sizeof *tape->figures, &failed);
    if (failed) {
        tape_set_fault(tape, TAPE_MEMORY, (fig){0});
        return (fig){0};
    }
    const fig handle = {tape->count};
    const enum tape_fault fault = operation_value(tape, &made, &made.value);
    made.fault = (uint8_t)fault;
    tape->figures[tape->count++] = made;
    tape_set_fault(tape, fault, handle);
    return handle;
}

void tape_set(struct tape *tape, fig given, int64_t value) {
    assert(given.id < tape->count && tape->figures[given.id].op == OP_GIVEN);
    tape->figures[given.id].value = value;
}

uint32_t tape_replay(struct tape *tape) {
    uint32_t changed = 0;
    tape->fault = TAPE_OK;
    tape->fault_at = (fig){0};
    if (tape->last != NULL) {
        tape->last->key = 0; /* the operands may have changed */
    }
    for (uint32_t i = 1; i < tape->count; i++) {
        struct figure *const figure = &tape->figures[i];
        const int64_t before = figure->value;
        const enum tape_fault fault = operation_value(tape, figure, &figure->value);
        figure->fault = (uint8_t)fault;
        tape_set_fault(tape, fault, (fig){i});
        changed += figure->value != before ? 1 : 0;
    }
    return changed;
}
