/* SPDX-License-Identifier: MIT */
/* Storage of the tape: figures in one array, their operands as words in another (a figure's number,
 * the top bit for `minus` or `below the line`), origins of givens, labels and subjects each once.
 */
#include "figure/tape.h"

#include "figure/operation.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MINUS_BIT   0x80000000u
#define MOST_LABELS UINT16_MAX

void tape_init(struct tape *tape) {
    *tape = (struct tape){0};
    pool_init(&tape->pool);
    if (!array_grow((void **)&tape->figures, &tape->figure_room, 1, sizeof *tape->figures) ||
        !array_grow((void **)&tape->labels, &tape->label_room, 1, sizeof *tape->labels) ||
        !array_grow((void **)&tape->subjects, &tape->subject_room, 1, sizeof *tape->subjects)) {
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
    free(tape->subjects);
    free(tape->choosers);
    free(tape->index);
    pool_clear(&tape->pool);
    *tape = (struct tape){0};
}

static void set_fault(struct tape *tape, enum tape_fault fault, fig at) {
    if (tape->fault == TAPE_OK && fault != TAPE_OK) {
        tape->fault = fault;
        tape->fault_at = at;
    }
}

uint32_t tape_about(struct tape *tape, const char *name) {
    if (!array_grow((void **)&tape->subjects, &tape->subject_room, tape->subject_count + 1u,
                    sizeof *tape->subjects)) {
        set_fault(tape, TAPE_MEMORY, (fig){0});
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

/* The number of a label. Labels are literals, few and used again at once: looking from the last
 * back finds one fast. */
static uint16_t label_number(struct tape *tape, const char *what) {
    for (uint32_t i = tape->label_count; i-- > 0;) {
        if (tape->labels[i] == what) {
            return (uint16_t)i;
        }
    }
    for (uint32_t i = 0; i < tape->label_count; i++) {
        if (strcmp(tape->labels[i], what) == 0) {
            return (uint16_t)i;
        }
    }
    if (tape->label_count >= MOST_LABELS ||
        !array_grow((void **)&tape->labels, &tape->label_room, tape->label_count + 1u,
                    sizeof *tape->labels)) {
        set_fault(tape, TAPE_MEMORY, (fig){0});
        return 0;
    }
    tape->labels[tape->label_count] = what;
    return (uint16_t)tape->label_count++;
}

static bool add_word(struct tape *tape, uint32_t word) {
    if (tape->word_count == UINT32_MAX || !array_grow((void **)&tape->words, &tape->word_room,
                                                      tape->word_count + 1u, sizeof *tape->words)) {
        set_fault(tape, TAPE_MEMORY, (fig){0});
        return false;
    }
    tape->words[tape->word_count++] = word;
    return true;
}

/* Adds a figure whose operands are the words from `first` on, and works its value out. */
static fig add_figure(struct tape *tape, struct figure made, const char *what) {
    made.label = label_number(tape, what);
    made.subject = tape->about;
    if (tape->fault == TAPE_MEMORY || tape->count >= ~MINUS_BIT ||
        !array_grow((void **)&tape->figures, &tape->figure_room, tape->count + 1u,
                    sizeof *tape->figures)) {
        set_fault(tape, TAPE_MEMORY, (fig){0});
        return (fig){0};
    }
    const fig handle = {tape->count};
    const enum tape_fault fault = operation_value(tape, &made, &made.value);
    made.fault = (uint8_t)fault;
    tape->figures[tape->count++] = made;
    set_fault(tape, fault, handle);
    return handle;
}

/* --- givens, each once
 * ---------------------------------------------------------------------------------------------- */

static uint64_t given_hash(const struct figure *f, const struct origin *o) {
    const uint64_t parts[] = {
        o->place.file,      o->place.line, o->place.column, f->label,
        (uint64_t)f->value, f->unit,       f->decimals,     (uint64_t)(uintptr_t)o->source};
    uint64_t hash = 14695981039346656037u; /* FNV-1a, a word at a time */
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
        hash = (hash ^ parts[i]) * 1099511628211u;
        hash ^= hash >> 29;
    }
    return hash;
}

static bool same_given(const struct tape *tape, uint32_t id, const struct figure *f,
                       const struct origin *o) {
    const struct figure *const old = &tape->figures[id];
    const struct origin *const from = &tape->origins[old->first];
    return old->label == f->label && old->value == f->value && old->unit == f->unit &&
           old->decimals == f->decimals && from->place.file == o->place.file &&
           from->place.line == o->place.line && from->place.column == o->place.column &&
           from->source == o->source;
}

/* The slot of the index where a given stands or would stand. */
static size_t given_slot(const struct tape *tape, const struct figure *f, const struct origin *o) {
    size_t slot = (size_t)given_hash(f, o) & (tape->index_room - 1);
    while (tape->index[slot] != 0 && !same_given(tape, tape->index[slot], f, o)) {
        slot = (slot + 1) & (tape->index_room - 1);
    }
    return slot;
}

/* Keeps the index at most half full; its size is a power of two. */
static bool grow_index(struct tape *tape) {
    if (tape->index != NULL && 2 * (tape->given_count + 1) <= tape->index_room) {
        return true;
    }
    const size_t room = tape->index == NULL ? 256 : 2 * tape->index_room;
    uint32_t *const old = tape->index;
    const size_t old_room = tape->index_room;
    uint32_t *const index = calloc(room, sizeof *index);
    if (index == NULL) {
        set_fault(tape, TAPE_MEMORY, (fig){0});
        return false;
    }
    tape->index = index;
    tape->index_room = room;
    for (size_t i = 0; i < old_room; i++) {
        if (old[i] != 0) {
            const struct figure *const f = &tape->figures[old[i]];
            index[given_slot(tape, f, &tape->origins[f->first])] = old[i];
        }
    }
    free(old);
    return true;
}

static fig add_given(struct tape *tape, const char *what, enum unit unit, uint8_t decimals,
                     int64_t value, struct origin origin) {
    assert(decimals <= 6);
    struct figure made = {.value = value,
                          .op = OP_GIVEN,
                          .unit = (uint8_t)unit,
                          .decimals = decimals,
                          .label = label_number(tape, what)};
    if (!grow_index(tape)) {
        return (fig){0};
    }
    const size_t slot = given_slot(tape, &made, &origin);
    if (tape->index[slot] != 0) {
        return (fig){tape->index[slot]};
    }
    if (!array_grow((void **)&tape->origins, &tape->origin_room, tape->origin_count + 1u,
                    sizeof *tape->origins)) {
        set_fault(tape, TAPE_MEMORY, (fig){0});
        return (fig){0};
    }
    tape->origins[tape->origin_count] = origin;
    made.first = tape->origin_count++;
    const fig handle = add_figure(tape, made, what);
    tape->index[slot] = handle.id;
    tape->given_count += fig_none(handle) ? 0 : 1;
    return handle;
}

fig tape_given(struct tape *tape, const char *what, enum unit unit, uint8_t decimals, int64_t value,
               struct place place) {
    return add_given(tape, what, unit, decimals, value, (struct origin){.place = place});
}

fig tape_constant(struct tape *tape, const char *what, enum unit unit, uint8_t decimals,
                  int64_t value, const char *source) {
    return add_given(tape, what, unit, decimals, value, (struct origin){.source = source});
}

static uint8_t most_decimals(uint8_t a, uint8_t b) {
    return a > b ? a : b;
}

fig fig_minus(fig f) {
    return (fig){f.id | MINUS_BIT};
}

fig fig_sum(struct tape *tape, const char *what, enum unit unit, const fig *terms, size_t count) {
    struct figure made = {.first = tape->word_count,
                          .op = OP_SUM,
                          .unit = (uint8_t)unit,
                          .decimals = unit_decimals(unit)};
    for (size_t i = 0; i < count; i++) {
        const fig plain = {terms[i].id & ~MINUS_BIT};
        if (fig_none(plain)) {
            continue;
        }
        if (!add_word(tape, terms[i].id)) {
            return (fig){0};
        }
        made.operands++;
        made.decimals = most_decimals(made.decimals, tape->figures[plain.id].decimals);
    }
    return add_figure(tape, made, what);
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
        if (!add_word(tape, counts[i].id) || !add_word(tape, each[i].id)) {
            return (fig){0};
        }
        made.operands += 2;
    }
    return add_figure(tape, made, what);
}

fig fig_ratio(struct tape *tape, const char *what, enum unit unit, figs over, figs under) {
    struct figure made = {.first = tape->word_count,
                          .op = OP_RATIO,
                          .unit = (uint8_t)unit,
                          .decimals = unit_decimals(unit)};
    for (size_t i = 0; i < 6; i++) {
        const fig f = i < 3 ? over.f[i] : under.f[i - 3];
        if (fig_none(f)) {
            continue;
        }
        if (!add_word(tape, i < 3 ? f.id : fig_minus(f).id)) {
            return (fig){0};
        }
        made.operands++;
    }
    return add_figure(tape, made, what);
}

static fig add_pair(struct tape *tape, const char *what, enum figure_op op, fig a, fig b,
                    uint8_t decimals) {
    const struct figure made = {.first = tape->word_count,
                                .operands = 2,
                                .op = (uint8_t)op,
                                .unit = tape_figure(tape, a)->unit,
                                .decimals = decimals};
    if (!add_word(tape, a.id) || !add_word(tape, b.id)) {
        return (fig){0};
    }
    return add_figure(tape, made, what);
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
    if (!add_word(tape, a.id) || !add_word(tape, step.id)) {
        return (fig){0};
    }
    return add_figure(tape, made, what);
}

static fig add_pick(struct tape *tape, const char *what, enum figure_op op, fig by,
                    const fig *limits, const fig *values, size_t count) {
    assert(count > 0);
    struct figure made = {.first = tape->word_count, .operands = 1, .op = (uint8_t)op};
    made.unit = tape_figure(tape, values[0])->unit;
    if (!add_word(tape, by.id)) {
        return (fig){0};
    }
    for (size_t i = 0; i < count; i++) {
        made.decimals = most_decimals(made.decimals, tape_figure(tape, values[i])->decimals);
        if (!add_word(tape, limits[i].id) || !add_word(tape, values[i].id)) {
            return (fig){0};
        }
        made.operands += 2;
    }
    return add_figure(tape, made, what);
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
    if (!array_grow((void **)&tape->choosers, &tape->chooser_room, tape->chooser_count + 1u,
                    sizeof *tape->choosers)) {
        set_fault(tape, TAPE_MEMORY, (fig){0});
        return false;
    }
    *number = tape->chooser_count;
    tape->choosers[tape->chooser_count++] = chooser;
    return true;
}

fig fig_chosen(struct tape *tape, const char *what, enum unit unit, const struct chooser *chooser,
               uint32_t output, const fig *operands, size_t count) {
    struct figure made = {
        .first = tape->word_count, .operands = 1, .op = OP_CHOSEN, .unit = (uint8_t)unit};
    uint32_t number;
    if (!chooser_number(tape, chooser, &number) || !add_word(tape, number << 16 | output)) {
        return (fig){0};
    }
    for (size_t i = 0; i < count; i++) {
        if (!add_word(tape, operands[i].id)) {
            return (fig){0};
        }
        made.operands++;
    }
    return add_figure(tape, made, what);
}

enum tape_fault tape_fault(const struct tape *tape) {
    return tape->fault;
}

const struct figure *tape_figure(const struct tape *tape, fig f) {
    static const struct figure none = {0};
    const uint32_t id = f.id & ~MINUS_BIT;
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
    return (struct operand){.f = {word & ~MINUS_BIT}, .minus = (word & MINUS_BIT) != 0};
}

const struct chooser *tape_chooser(const struct tape *tape, fig f, uint32_t *output) {
    const struct figure *const figure = tape_figure(tape, f);
    if (figure->op != OP_CHOSEN) {
        return NULL;
    }
    const uint32_t packed = tape->words[figure->first];
    *output = packed & 0xFFFFu;
    return tape->choosers[packed >> 16];
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

void tape_set(struct tape *tape, fig given, int64_t value) {
    assert(given.id < tape->count && tape->figures[given.id].op == OP_GIVEN);
    tape->figures[given.id].value = value;
}

uint32_t tape_replay(struct tape *tape) {
    uint32_t changed = 0;
    tape->fault = TAPE_OK;
    tape->fault_at = (fig){0};
    for (uint32_t i = 1; i < tape->count; i++) {
        struct figure *const figure = &tape->figures[i];
        const int64_t before = figure->value;
        const enum tape_fault fault = operation_value(tape, figure, &figure->value);
        figure->fault = (uint8_t)fault;
        set_fault(tape, fault, (fig){i});
        changed += figure->value != before ? 1 : 0;
    }
    return changed;
}
