/* SPDX-License-Identifier: MIT */
/* What of a figure rests on those before it: the tape is gone through once, from the result back,
 * and each figure hands the slope that it has on to its operands (the chain rule). */
#include "figure/tape.h"

#include <stdlib.h>

double tape_real(const struct tape *tape, fig f) {
    double value = (double)tape_amount(tape, f);
    for (uint8_t d = tape_decimals(tape, f); d > 0; d--) {
        value /= 10;
    }
    return value;
}

/* The operand that a pick, or the larger of two, has taken its value from: the first that has it,
 * of those from `first` on, a step apart; `count` where none has. */
static size_t taken(const struct tape *tape, fig f, size_t first, size_t step, size_t count) {
    const int64_t value = tape_scaled(tape, f, 6);
    size_t i = first;
    while (i < count && tape_scaled(tape, tape_operand(tape, f, i).f, 6) != value) {
        i += step;
    }
    return i < count ? i : count;
}

static void hand_ratio(const struct tape *tape, fig f, double *slopes) {
    const double value = tape_real(tape, f);
    for (size_t i = 0; i < tape_operands(tape, f); i++) {
        const struct operand o = tape_operand(tape, f, i);
        const double by = tape_real(tape, o.f);
        if (by != 0) {
            slopes[o.f.id] += slopes[f.id] * (o.minus ? -value : value) / by;
        }
    }
}

static void hand_total(const struct tape *tape, fig f, double *slopes) {
    for (size_t i = 0; i + 1 < tape_operands(tape, f); i += 2) {
        const fig count = tape_operand(tape, f, i).f;
        const fig each = tape_operand(tape, f, i + 1).f;
        slopes[count.id] += slopes[f.id] * tape_real(tape, each);
        slopes[each.id] += slopes[f.id] * tape_real(tape, count);
    }
}

/* Hands the slope of a figure on. What is chosen stays as it is. */
static void hand_on(const struct tape *tape, fig f, double *slopes) {
    const size_t count = tape_operands(tape, f);
    const enum figure_op op = tape_op(tape, f);
    size_t at = count;
    switch (op) {
    case OP_SUM:
        for (size_t i = 0; i < count; i++) {
            const struct operand o = tape_operand(tape, f, i);
            slopes[o.f.id] += o.minus ? -slopes[f.id] : slopes[f.id];
        }
        break;
    case OP_TOTAL:
        hand_total(tape, f, slopes);
        break;
    case OP_RATIO:
        hand_ratio(tape, f, slopes);
        break;
    case OP_LARGER:
    case OP_SMALLER:
        at = taken(tape, f, 0, 1, count);
        break;
    case OP_PICK_UPTO:
    case OP_PICK_FROM:
        at = taken(tape, f, 2, 2, count);
        break;
    case OP_UP:
        at = 0;
        break;
    case OP_GIVEN:
    case OP_CHOSEN:
    case OP_COUNT:
        break;
    }
    if (at < count) {
        slopes[tape_operand(tape, f, at).f.id] += slopes[f.id];
    }
}

double *tape_weigh(const struct tape *tape, fig result) {
    double *const slopes = calloc((size_t)tape->count + 1, sizeof *slopes);
    if (slopes == NULL) {
        return NULL;
    }
    slopes[result.id] = 1;
    for (uint32_t id = result.id; id > 0; id--) {
        if (slopes[id] != 0) {
            hand_on(tape, (fig){id}, slopes);
        }
    }
    slopes[0] = 0;
    for (uint32_t id = 1; id < tape->count; id++) {
        slopes[id] *= tape_real(tape, (fig){id});
    }
    return slopes;
}
