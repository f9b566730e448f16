/* SPDX-License-Identifier: MIT */
/* Asking the tape: values, names, operands, and figures as text. */
#include "figure/tape.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <stdio.h>

enum tape_fault tape_fault(const struct tape *tape) {
    return tape->fault;
}

const struct figure *tape_figure(const struct tape *tape, fig f) {
    static const struct figure none = {0};
    const uint32_t id = f.id & ~TAPE_MINUS_BIT;
    return id < tape->count ? &tape->figures[id] : &none;
}

int64_t tape_amount(const struct tape *tape, fig f) {
    return tape_figure(tape, f)->value;
}

int64_t tape_scaled(const struct tape *tape, fig f, uint8_t decimals) {
    const struct figure *const figure = tape_figure(tape, f);
    int64_t value = figure->value;
    for (uint8_t d = figure->decimals; d < decimals; d++) {
        value *= 10;
    }
    int64_t step = 1;
    for (uint8_t d = decimals; d < figure->decimals; d++) {
        step *= 10;
    }
    const int64_t half = value < 0 ? -(step / 2) : step / 2;
    return (value + half) / step;
}

const char *tape_label(const struct tape *tape, fig f) {
    return tape->label_count == 0 ? "" : tape->labels[tape_figure(tape, f)->label];
}

const char *tape_subject_name(const struct tape *tape, fig f) {
    return tape->subject_count == 0 ? "" : tape->subjects[tape_figure(tape, f)->subject];
}

struct origin tape_origin(const struct tape *tape, fig f) {
    const struct figure *const figure = tape_figure(tape, f);
    if (fig_none(f) || figure->op != OP_GIVEN) {
        return (struct origin){0};
    }
    return tape->origins[figure->first];
}

size_t tape_operands(const struct tape *tape, fig f) {
    const struct figure *const figure = tape_figure(tape, f);
    return figure->op == OP_CHOSEN ? figure->operands - 1 : figure->operands;
}

struct operand tape_operand(const struct tape *tape, fig f, size_t i) {
    const struct figure *const figure = tape_figure(tape, f);
    assert(i < tape_operands(tape, f));
    const uint32_t word = tape->words[figure->first + i + (figure->op == OP_CHOSEN ? 1 : 0)];
    return (struct operand){.f = {word & ~TAPE_MINUS_BIT}, .minus = (word & TAPE_MINUS_BIT) != 0};
}

const struct chooser *tape_chooser(const struct tape *tape, fig f, uint32_t *output) {
    const struct figure *const figure = tape_figure(tape, f);
    if (figure->op != OP_CHOSEN) {
        return NULL;
    }
    *output = figure->output;
    return tape->choosers[tape->words[figure->first]];
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
    const int64_t amount = value < 0 ? -value : value;
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
    const struct figure *const figure = tape_figure(tape, f);
    return figure_text(figure->value, figure->decimals, text, size);
}
