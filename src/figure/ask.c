/* SPDX-License-Identifier: MIT */
/* Asking the tape: values, names, operands, and figures as text. */
#include "figure/tape.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>

enum tape_fault tape_fault(const struct tape *tape) {
    return tape->fault;
}

const char *tape_fault_label(const struct tape *tape) {
    return tape->fault_label;
}

const char *tape_fault_subject(const struct tape *tape) {
    return tape->fault_subject;
}

static const struct history *history_of(const struct tape *tape, fig f) {
    static const struct history none = {0};
    const uint32_t id = f.id & ~TAPE_MINUS_BIT;
    assert(tape->traced);
    return id < tape->count ? &tape->histories[id] : &none;
}

enum unit tape_unit(const struct tape *tape, fig f) {
    return (enum unit)value_unit(tape_packed(tape, f));
}

uint8_t tape_decimals(const struct tape *tape, fig f) {
    return value_decimals(tape_packed(tape, f));
}

uint8_t tape_read_decimals(const struct tape *tape, fig f) {
    const uint8_t decimals = tape_decimals(tape, f);
    const enum unit unit = tape_unit(tape, f);
    const uint8_t most = unit == UNIT_PERCENT ? 2 : (unit == UNIT_M3 ? 4 : decimals);
    const bool given =
        tape->traced ? tape_op(tape, f) == OP_GIVEN : decimals != unit_decimals(unit);
    return decimals <= most || given ? decimals : most;
}

int64_t tape_amount(const struct tape *tape, fig f) {
    return value_amount(tape_packed(tape, f));
}

int64_t tape_scaled(const struct tape *tape, fig f, uint8_t decimals) {
    const uint8_t kept = tape_decimals(tape, f);
    int64_t value = tape_amount(tape, f);
    for (uint8_t d = kept; d < decimals; d++) {
        value *= 10;
    }
    int64_t step = 1;
    for (uint8_t d = decimals; d < kept; d++) {
        step *= 10;
    }
    const int64_t half = value < 0 ? -(step / 2) : step / 2;
    return (value + half) / step;
}

enum figure_op tape_op(const struct tape *tape, fig f) {
    return (enum figure_op)history_of(tape, f)->op;
}

uint32_t tape_subject(const struct tape *tape, fig f) {
    return history_of(tape, f)->subject;
}

const char *tape_label(const struct tape *tape, fig f) {
    return tape->label_count == 0 ? "" : tape->labels[history_of(tape, f)->label];
}

const char *tape_subject_name(const struct tape *tape, fig f) {
    return tape->subject_count == 0 ? "" : tape->subjects[tape_subject(tape, f)];
}

struct origin tape_origin(const struct tape *tape, fig f) {
    const struct history *const history = history_of(tape, f);
    if (fig_none(f) || history->op != OP_GIVEN) {
        return (struct origin){0};
    }
    return tape->origins[history->first];
}

size_t tape_operands(const struct tape *tape, fig f) {
    const struct history *const history = history_of(tape, f);
    return history->op == OP_CHOSEN ? history->operands - 1 : history->operands;
}

struct operand tape_operand(const struct tape *tape, fig f, size_t i) {
    const struct history *const history = history_of(tape, f);
    assert(i < tape_operands(tape, f));
    const uint32_t word = tape->words[history->first + i + (history->op == OP_CHOSEN ? 1 : 0)];
    return (struct operand){.f = {word & ~TAPE_MINUS_BIT}, .minus = (word & TAPE_MINUS_BIT) != 0};
}

const struct chooser *tape_chooser(const struct tape *tape, fig f, uint32_t *output) {
    const struct history *const history = history_of(tape, f);
    if (history->op != OP_CHOSEN) {
        return NULL;
    }
    *output = history->output;
    return tape->choosers[tape->words[history->first]];
}

const char *figure_op_name(enum figure_op op) {
    static const char *const names[OP_COUNT] = {"given",     "sum",     "total", "ratio",
                                                "larger",    "smaller", "up",    "pick upto",
                                                "pick from", "chosen"};
    return op < OP_COUNT ? names[op] : "";
}

char *figure_text(int64_t value, uint8_t decimals, char *text, size_t size) {
    int64_t step = 1;
    for (uint8_t d = 0; d < decimals; d++) {
        step *= 10;
    }
    const int64_t amount = llabs(value);
    const char *const sign = value < 0 ? "-" : "";
    if (decimals == 0) {
        (void)snprintf(text, size, "%s%lld", sign, (long long)amount);
    } else {
        (void)snprintf(text, size, "%s%lld.%0*lld", sign, (long long)(amount / step), (int)decimals,
                       (long long)(amount % step));
    }
    return text;
}

char *tape_text(const struct tape *tape, fig f, char *text, size_t size) {
    return figure_text(tape_amount(tape, f), tape_decimals(tape, f), text, size);
}
