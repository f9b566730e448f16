/* SPDX-License-Identifier: MIT */
/* Storage of the tape: the values of figures in one array, how they came about in another beside
 * it, their operands as words in a third (a figure's number, the top bit for `minus` or `below the
 * line`), origins of givens, labels and subjects each once. */
#include "figure/tape.h"

#include "figure/operation.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#define MOST_LABELS UINT16_MAX

void tape_init(struct tape *tape, bool traced) {
    *tape = (struct tape){.traced = traced,
                          .fault_label = "",
                          .fault_subject = "",
                          .money_decimals = unit_decimals(UNIT_MONEY)};
    tape->last = calloc(1, sizeof *tape->last);
    tape->label_slots = calloc(LABEL_SLOTS, sizeof *tape->label_slots);
    tape->seen = traced ? NULL : calloc(SEEN_SLOTS, sizeof *tape->seen);
    bool failed =
        tape->last == NULL || tape->label_slots == NULL || (!traced && tape->seen == NULL);
    tape->values = array_grow(tape->values, &tape->value_room, 1, sizeof *tape->values, &failed);
    tape->histories =
        array_grow(tape->histories, &tape->history_room, 1, sizeof *tape->histories, &failed);
    tape->labels = array_grow(tape->labels, &tape->label_room, 1, sizeof *tape->labels, &failed);
    tape->subjects =
        array_grow(tape->subjects, &tape->subject_room, 1, sizeof *tape->subjects, &failed);
    if (failed) {
        tape->fault = TAPE_MEMORY;
        return;
    }
    tape->values[0] = 0;
    tape->histories[0] = (struct history){0};
    tape->labels[0] = "";
    tape->subjects[0] = "";
    tape->count = tape->label_count = tape->subject_count = 1;
}

void tape_set_money(struct tape *tape, uint8_t decimals) {
    assert(decimals <= 4);
    tape->money_decimals = decimals;
}

uint8_t tape_unit_decimals(const struct tape *tape, enum unit unit) {
    return unit == UNIT_MONEY ? tape->money_decimals : unit_decimals(unit);
}

void tape_clear(struct tape *tape) {
    free(tape->values);
    free(tape->histories);
    free(tape->words);
    free(tape->origins);
    free(tape->labels);
    free(tape->label_slots);
    free(tape->subjects);
    free(tape->choosers);
    index_clear(&tape->givens);
    free(tape->seen);
    free(tape->last);
    *tape = (struct tape){0};
}

void tape_set_fault(struct tape *tape, enum tape_fault fault, const char *label,
                    const char *subject) {
    if (tape->fault == TAPE_OK && fault != TAPE_OK) {
        tape->fault = fault;
        tape->fault_label = label;
        tape->fault_subject = subject;
    }
}

void tape_out_of_memory(struct tape *tape) {
    tape_set_fault(tape, TAPE_MEMORY, "", "");
}

uint32_t tape_about(struct tape *tape, const char *name) {
    bool failed = false;
    tape->subjects = array_grow(tape->subjects, &tape->subject_room, tape->subject_count + 1u,
                                sizeof *tape->subjects, &failed);
    if (failed) {
        tape_out_of_memory(tape);
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

void tape_about_job(struct tape *tape) {
    tape_about_again(tape, 0);
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
        tape_out_of_memory(tape);
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

uint32_t tape_begin_words(struct tape *tape) {
    if (!tape->traced) {
        tape->word_count = 0;
    }
    return tape->word_count;
}

static bool keep_history(struct tape *tape, const struct figure *made, const char *what) {
    bool failed = false;
    tape->histories = array_grow(tape->histories, &tape->history_room, (size_t)tape->count + 1,
                                 sizeof *tape->histories, &failed);
    if (!failed) {
        tape->histories[tape->count] = (struct history){.first = made->first,
                                                        .operands = made->operands,
                                                        .subject = tape->about,
                                                        .label = tape_label_number(tape, what),
                                                        .op = made->op,
                                                        .output = made->output};
    }
    return !failed;
}

/* Adds a value; none when memory is out. */
static fig add_packed(struct tape *tape, uint64_t packed) {
    bool failed = tape->fault == TAPE_MEMORY || tape->count >= ~TAPE_MINUS_BIT;
    tape->values = array_grow(tape->values, &tape->value_room, (size_t)tape->count + 1,
                              sizeof *tape->values, &failed);
    if (failed) {
        tape_out_of_memory(tape);
        return (fig){0};
    }
    tape->values[tape->count] = packed;
    return (fig){tape->count++};
}

/* A figure of that value: the last one that fell to its slot, where it is one, else a new one. */
static fig find_packed(struct tape *tape, uint64_t packed) {
    if (tape->seen == NULL) {
        return (fig){0}; /* memory was out from the start */
    }
    const uint64_t mixed = packed * UINT64_C(0x9E3779B97F4A7C15);
    uint32_t *const slot = &tape->seen[(size_t)(mixed >> 32) & (SEEN_SLOTS - 1)];
    if (*slot == 0 || tape->values[*slot] != packed) {
        *slot = add_packed(tape, packed).id;
    }
    return (fig){*slot};
}

fig tape_add_value(struct tape *tape, int64_t value, enum unit unit, uint8_t decimals) {
    const uint64_t packed = value_pack(value, (uint8_t)unit, decimals);
    assert(!tape->traced);
    return tape->about == 0 ? add_packed(tape, packed) : find_packed(tape, packed);
}

fig tape_add_figure(struct tape *tape, const struct figure *made, const char *what) {
    int64_t value = made->value;
    if (tape->fault == TAPE_MEMORY || (tape->traced && !keep_history(tape, made, what))) {
        tape_out_of_memory(tape);
        return (fig){0};
    }
    const enum tape_fault fault = operation_value(tape, made, &value);
    tape_set_fault(tape, fault, what, tape->subjects[tape->about]);
    const uint64_t packed = value_pack(value, made->unit, made->decimals);
    return tape->traced || (tape->about == 0 && made->op != OP_GIVEN) ? add_packed(tape, packed)
                                                                      : find_packed(tape, packed);
}

static struct figure figure_at(const struct tape *tape, uint32_t id) {
    const uint64_t packed = tape->values[id];
    const struct history *const history = &tape->histories[id];
    return (struct figure){.value = value_amount(packed),
                           .first = history->first,
                           .operands = history->operands,
                           .op = history->op,
                           .unit = value_unit(packed),
                           .decimals = value_decimals(packed),
                           .output = history->output};
}

void tape_set(struct tape *tape, fig given, int64_t value) {
    assert(tape_op(tape, given) == OP_GIVEN && given.id < tape->count);
    const uint64_t packed = tape->values[given.id];
    tape->values[given.id] = value_pack(value, value_unit(packed), value_decimals(packed));
}

enum tape_fault tape_make_again(struct tape *tape, uint32_t id, bool *changed) {
    struct figure figure = figure_at(tape, id);
    const int64_t before = figure.value;
    figure.decimals = figure_decimals(tape, &figure);
    const enum tape_fault fault = operation_value(tape, &figure, &figure.value);
    tape->values[id] = value_pack(figure.value, figure.unit, figure.decimals);
    *changed = figure.value != before;
    return fault;
}

uint32_t tape_replay(struct tape *tape) {
    assert(tape->traced);
    uint32_t changed = 0;
    tape->fault = TAPE_OK;
    tape->fault_label = tape->fault_subject = "";
    if (tape->last != NULL) {
        tape->last->key = 0; /* the operands may have changed */
    }
    for (uint32_t i = 1; i < tape->count; i++) {
        bool other;
        const enum tape_fault fault = tape_make_again(tape, i, &other);
        if (fault != TAPE_OK) {
            const fig f = {i};
            tape_set_fault(tape, fault, tape_label(tape, f), tape_subject_name(tape, f));
        }
        changed += other ? 1 : 0;
    }
    return changed;
}
