/* SPDX-License-Identifier: MIT */
/* The makers of figures: each notes its operands as words and lets the tape work the value out. A
 * tape that keeps values alone is given the value at once where it is a short one. */
#include "figure/operation.h"
#include "figure/tape.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <string.h>

uint8_t figure_decimals(const struct tape *tape, const struct figure *made) {
    uint32_t from = made->operands;
    uint32_t step = 1;
    switch ((enum figure_op)made->op) {
    case OP_SUM:
    case OP_LARGER:
    case OP_SMALLER:
        from = 0;
        break;
    case OP_UP:
        from = 1; /* the step */
        break;
    case OP_PICK_UPTO:
    case OP_PICK_FROM:
        from = step = 2; /* the values */
        break;
    case OP_GIVEN:
    case OP_TOTAL:
    case OP_RATIO:
    case OP_CHOSEN:
    case OP_COUNT:
        break;
    }
    uint8_t most = made->decimals;
    for (uint32_t i = from; i < made->operands; i += step) {
        const uint8_t decimals =
            value_decimals(tape_packed(tape, (fig){tape->words[made->first + i]}));
        most = decimals > most ? decimals : most;
    }
    return most;
}

fig fig_minus(fig f) {
    return (fig){f.id | TAPE_MINUS_BIT};
}

fig fig_sum(struct tape *tape, const char *what, enum unit unit, const fig *terms, size_t count) {
    const uint8_t decimals = tape_unit_decimals(tape, unit);
    int64_t value = 0;
    if (!tape->traced && operation_short_sum(tape, decimals, terms, count, &value)) {
        return tape_add_value(tape, value, unit, decimals);
    }
    struct figure made = {
        .first = tape_begin_words(tape), .op = OP_SUM, .unit = (uint8_t)unit, .decimals = decimals};
    for (size_t i = 0; i < count; i++) {
        const fig plain = {terms[i].id & ~TAPE_MINUS_BIT};
        if (fig_none(plain)) {
            continue;
        }
        if (!tape_add_word(tape, terms[i].id)) {
            return (fig){0};
        }
        made.operands++;
    }
    made.decimals = figure_decimals(tape, &made);
    return tape_add_figure(tape, &made, what);
}

fig fig_plus(struct tape *tape, const char *what, fig a, fig b) {
    const fig terms[] = {a, b};
    return fig_sum(tape, what, tape_unit(tape, a), terms, 2);
}

fig fig_total(struct tape *tape, const char *what, enum unit unit, const fig *counts,
              const fig *each, size_t count) {
    const uint8_t decimals = tape_unit_decimals(tape, unit);
    int64_t value = 0;
    if (!tape->traced && operation_short_total(tape, decimals, counts, each, count, &value)) {
        return tape_add_value(tape, value, unit, decimals);
    }
    struct figure made = {.first = tape_begin_words(tape),
                          .op = OP_TOTAL,
                          .unit = (uint8_t)unit,
                          .decimals = decimals};
    for (size_t i = 0; i < count; i++) {
        if (fig_none(counts[i]) || fig_none(each[i])) {
            continue;
        }
        if (!tape_add_word(tape, counts[i].id) || !tape_add_word(tape, each[i].id)) {
            return (fig){0};
        }
        made.operands += 2;
    }
    return tape_add_figure(tape, &made, what);
}

fig fig_ratio_to(struct tape *tape, const char *what, enum unit unit, uint8_t decimals, figs over,
                 figs under) {
    int64_t value = 0;
    if (!tape->traced && operation_short_ratio(tape, decimals, &over, &under, &value)) {
        return tape_add_value(tape, value, unit, decimals);
    }
    struct figure made = {.first = tape_begin_words(tape),
                          .op = OP_RATIO,
                          .unit = (uint8_t)unit,
                          .decimals = decimals};
    for (size_t i = 0; i < 6; i++) {
        const fig f = i < 3 ? over.f[i] : under.f[i - 3];
        if (fig_none(f)) {
            continue;
        }
        if (!tape_add_word(tape, i < 3 ? f.id : fig_minus(f).id)) {
            return (fig){0};
        }
        made.operands++;
    }
    return tape_add_figure(tape, &made, what);
}

fig fig_ratio(struct tape *tape, const char *what, enum unit unit, figs over, figs under) {
    return fig_ratio_to(tape, what, unit, tape_unit_decimals(tape, unit), over, under);
}

/* Of two operands, in the unit of unit_of. */
static fig add_pair(struct tape *tape, const char *what, enum figure_op op, fig a, fig b,
                    fig unit_of) {
    struct figure made = {.first = tape_begin_words(tape),
                          .operands = 2,
                          .op = (uint8_t)op,
                          .unit = (uint8_t)tape_unit(tape, unit_of)};
    if (!tape_add_word(tape, a.id) || !tape_add_word(tape, b.id)) {
        return (fig){0};
    }
    made.decimals = figure_decimals(tape, &made);
    return tape_add_figure(tape, &made, what);
}

fig fig_larger(struct tape *tape, const char *what, fig a, fig b) {
    return add_pair(tape, what, OP_LARGER, a, b, a);
}

fig fig_smaller(struct tape *tape, const char *what, fig a, fig b) {
    return add_pair(tape, what, OP_SMALLER, a, b, a);
}

fig fig_up(struct tape *tape, const char *what, fig a, fig step) {
    return add_pair(tape, what, OP_UP, a, step, step);
}

static fig add_pick(struct tape *tape, const char *what, enum figure_op op, fig by,
                    const fig *limits, const fig *values, size_t count) {
    assert(count > 0);
    struct figure made = {.first = tape_begin_words(tape), .operands = 1, .op = (uint8_t)op};
    made.unit = (uint8_t)tape_unit(tape, values[0]);
    if (!tape_add_word(tape, by.id)) {
        return (fig){0};
    }
    for (size_t i = 0; i < count; i++) {
        if (!tape_add_word(tape, limits[i].id) || !tape_add_word(tape, values[i].id)) {
            return (fig){0};
        }
        made.operands += 2;
    }
    made.decimals = figure_decimals(tape, &made);
    return tape_add_figure(tape, &made, what);
}

fig fig_pick_upto(struct tape *tape, const char *what, fig by, const fig *limits, const fig *values,
                  size_t count) {
    return add_pick(tape, what, OP_PICK_UPTO, by, limits, values, count);
}

fig fig_pick_from(struct tape *tape, const char *what, fig by, const fig *limits, const fig *values,
                  size_t count) {
    return add_pick(tape, what, OP_PICK_FROM, by, limits, values, count);
}

static bool chooser_number(struct tape *tape, const struct chooser *chooser, uint32_t *number) {
    for (uint32_t i = 0; i < tape->chooser_count; i++) {
        if (tape->choosers[i] == chooser) {
            *number = i;
            return true;
        }
    }
    bool failed = false;
    tape->choosers = array_grow(tape->choosers, &tape->chooser_room, tape->chooser_count + 1u,
                                sizeof(const struct chooser *), &failed);
    if (failed) {
        tape_out_of_memory(tape);
        return false;
    }
    *number = tape->chooser_count;
    tape->choosers[tape->chooser_count++] = chooser;
    return true;
}

/* What is chosen of: the chooser, then the operands. Fills in what is not yet set of made; false:
 * memory is out. */
static bool add_choice(struct tape *tape, struct figure *made, const struct chooser *chooser,
                       const fig *operands, size_t count) {
    uint32_t number;
    made->first = tape_begin_words(tape);
    made->operands = (uint32_t)count + 1;
    tape->last->key = 0;
    if (!chooser_number(tape, chooser, &number) || !tape_add_word(tape, number)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (!tape_add_word(tape, operands[i].id)) {
            return false;
        }
    }
    return true;
}

void fig_chosen(struct tape *tape, const char *what, enum unit unit, const struct chooser *chooser,
                const fig *operands, size_t count, fig *out, size_t outputs) {
    struct figure made = {.op = OP_CHOSEN, .unit = (uint8_t)unit};
    assert(outputs <= CHOOSER_MOST_OUTPUTS);
    const bool held =
        tape->fault != TAPE_MEMORY && add_choice(tape, &made, chooser, operands, count);
    for (size_t i = 0; i < outputs; i++) {
        made.output = (uint8_t)i;
        out[i] = held ? tape_add_figure(tape, &made, what) : (fig){0};
    }
}

void fig_chosen_known(struct tape *tape, const char *const *what, enum unit unit,
                      const struct chooser *chooser, const fig *operands, size_t count,
                      const int64_t *known, fig *out, size_t outputs) {
    struct figure made = {.op = OP_CHOSEN, .unit = (uint8_t)unit};
    assert(outputs <= CHOOSER_MOST_OUTPUTS);
    const bool held =
        tape->fault != TAPE_MEMORY && add_choice(tape, &made, chooser, operands, count);
    if (held) {
        tape->last->key = made.first + 1;
        memset(tape->last->out, 0, sizeof tape->last->out);
        memcpy(tape->last->out, known, outputs * sizeof *known);
    }
    for (size_t i = 0; i < outputs; i++) {
        made.output = (uint8_t)i;
        out[i] = held ? tape_add_figure(tape, &made, what[i]) : (fig){0};
    }
}
