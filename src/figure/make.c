/* SPDX-License-Identifier: MIT */
/* The makers of figures: each notes its operands as words and lets the tape work the value out. */
#include "figure/tape.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <string.h>

static uint8_t most_decimals(uint8_t a, uint8_t b) {
    return a > b ? a : b;
}

fig fig_minus(fig f) {
    return (fig){f.id | TAPE_MINUS_BIT};
}

fig fig_sum(struct tape *tape, const char *what, enum unit unit, const fig *terms, size_t count) {
    struct figure made = {.first = tape->word_count,
                          .op = OP_SUM,
                          .unit = (uint8_t)unit,
                          .decimals = unit_decimals(unit)};
    for (size_t i = 0; i < count; i++) {
        const fig plain = {terms[i].id & ~TAPE_MINUS_BIT};
        if (fig_none(plain)) {
            continue;
        }
        if (!tape_add_word(tape, terms[i].id)) {
            return (fig){0};
        }
        made.operands++;
        made.decimals = most_decimals(made.decimals, tape->figures[plain.id].decimals);
    }
    return tape_add_figure(tape, made, what);
}

fig fig_plus(struct tape *tape, const char *what, fig a, fig b) {
    const fig terms[] = {a, b};
    return fig_sum(tape, what, (enum unit)tape_figure(tape, a)->unit, terms, 2);
}

fig fig_total(struct tape *tape, const char *what, enum unit unit, const fig *counts,
              const fig *each, size_t count) {
    struct figure made = {.first = tape->word_count,
                          .op = OP_TOTAL,
                          .unit = (uint8_t)unit,
                          .decimals = unit_decimals(unit)};
    for (size_t i = 0; i < count; i++) {
        if (fig_none(counts[i]) || fig_none(each[i])) {
            continue;
        }
        if (!tape_add_word(tape, counts[i].id) || !tape_add_word(tape, each[i].id)) {
            return (fig){0};
        }
        made.operands += 2;
    }
    return tape_add_figure(tape, made, what);
}

fig fig_ratio_to(struct tape *tape, const char *what, enum unit unit, uint8_t decimals, figs over,
                 figs under) {
    struct figure made = {
        .first = tape->word_count, .op = OP_RATIO, .unit = (uint8_t)unit, .decimals = decimals};
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
    return tape_add_figure(tape, made, what);
}

fig fig_ratio(struct tape *tape, const char *what, enum unit unit, figs over, figs under) {
    return fig_ratio_to(tape, what, unit, unit_decimals(unit), over, under);
}

static fig add_pair(struct tape *tape, const char *what, enum figure_op op, fig a, fig b,
                    uint8_t decimals) {
    const struct figure made = {.first = tape->word_count,
                                .operands = 2,
                                .op = (uint8_t)op,
                                .unit = tape_figure(tape, a)->unit,
                                .decimals = decimals};
    if (!tape_add_word(tape, a.id) || !tape_add_word(tape, b.id)) {
        return (fig){0};
    }
    return tape_add_figure(tape, made, what);
}

fig fig_larger(struct tape *tape, const char *what, fig a, fig b) {
    const uint8_t decimals =
        most_decimals(tape_figure(tape, a)->decimals, tape_figure(tape, b)->decimals);
    return add_pair(tape, what, OP_LARGER, a, b, decimals);
}

fig fig_smaller(struct tape *tape, const char *what, fig a, fig b) {
    const uint8_t decimals =
        most_decimals(tape_figure(tape, a)->decimals, tape_figure(tape, b)->decimals);
    return add_pair(tape, what, OP_SMALLER, a, b, decimals);
}

fig fig_up(struct tape *tape, const char *what, fig a, fig step) {
    const struct figure *const to = tape_figure(tape, step);
    const struct figure made = {.first = tape->word_count,
                                .operands = 2,
                                .op = OP_UP,
                                .unit = to->unit,
                                .decimals = to->decimals};
    if (!tape_add_word(tape, a.id) || !tape_add_word(tape, step.id)) {
        return (fig){0};
    }
    return tape_add_figure(tape, made, what);
}

static fig add_pick(struct tape *tape, const char *what, enum figure_op op, fig by,
                    const fig *limits, const fig *values, size_t count) {
    assert(count > 0);
    struct figure made = {.first = tape->word_count, .operands = 1, .op = (uint8_t)op};
    made.unit = tape_figure(tape, values[0])->unit;
    if (!tape_add_word(tape, by.id)) {
        return (fig){0};
    }
    for (size_t i = 0; i < count; i++) {
        made.decimals = most_decimals(made.decimals, tape_figure(tape, values[i])->decimals);
        if (!tape_add_word(tape, limits[i].id) || !tape_add_word(tape, values[i].id)) {
            return (fig){0};
        }
        made.operands += 2;
    }
    return tape_add_figure(tape, made, what);
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
        tape_set_fault(tape, TAPE_MEMORY, (fig){0});
        return false;
    }
    *number = tape->chooser_count;
    tape->choosers[tape->chooser_count++] = chooser;
    return true;
}

/* what: one label an output, or one for all of them. */
static void choose(struct tape *tape, const char *const *what, bool one_label, enum unit unit,
                   const struct chooser *chooser, const fig *operands, size_t count, fig *out,
                   size_t outputs) {
    struct figure made = {
        .first = tape->word_count, .operands = 1, .op = OP_CHOSEN, .unit = (uint8_t)unit};
    uint32_t number;
    assert(outputs <= CHOOSER_MOST_OUTPUTS);
    for (size_t i = 0; i < outputs; i++) {
        out[i] = (fig){0};
    }
    if (!chooser_number(tape, chooser, &number) || !tape_add_word(tape, number)) {
        return;
    }
    for (size_t i = 0; i < count; i++) {
        if (!tape_add_word(tape, operands[i].id)) {
            return;
        }
        made.operands++;
    }
    for (size_t i = 0; i < outputs; i++) {
        made.output = (uint8_t)i;
        out[i] = tape_add_figure(tape, made, what[one_label ? 0 : i]);
    }
}

void fig_chosen(struct tape *tape, const char *what, enum unit unit, const struct chooser *chooser,
                const fig *operands, size_t count, fig *out, size_t outputs) {
    choose(tape, &what, true, unit, chooser, operands, count, out, outputs);
}

void fig_chosen_known(struct tape *tape, const char *const *what, enum unit unit,
                      const struct chooser *chooser, const fig *operands, size_t count,
                      const int64_t *known, fig *out, size_t outputs) {
    if (tape->last != NULL) {
        tape->last->key = tape->word_count + 1;
        memset(tape->last->out, 0, sizeof tape->last->out);
        memcpy(tape->last->out, known, outputs * sizeof *known);
    }
    choose(tape, what, false, unit, chooser, operands, count, out, outputs);
}
