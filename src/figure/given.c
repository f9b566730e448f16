/* SPDX-License-Identifier: MIT */
/* Givens: what a file says, or a published source; each once. */
#include "figure/tape.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

/* Sources are compared as texts: whether equal literals of two files are one is the linker's
 * choice, and the numbers of the figures must not hang on it. */
static bool same_source(const char *a, const char *b) {
    return a == b || (a != NULL && b != NULL && strcmp(a, b) == 0);
}

static uint64_t given_hash(const struct figure *f, const struct origin *o) {
    const uint64_t parts[] = {o->place.file,      o->place.line,
                              o->place.column,    f->label,
                              (uint64_t)f->value, f->unit,
                              f->decimals,        o->source == NULL ? 0 : strlen(o->source)};
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
           same_source(from->source, o->source);
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
        tape_set_fault(tape, TAPE_MEMORY, (fig){0});
        return false;
    }
    tape->index = index;
    tape->index_room = room;
    for (size_t i = 0; old != NULL && i < old_room; i++) {
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
                          .label = tape_label_number(tape, what)};
    if (!grow_index(tape)) {
        return (fig){0};
    }
    const size_t slot = given_slot(tape, &made, &origin);
    if (tape->index[slot] != 0) {
        return (fig){tape->index[slot]};
    }
    bool failed = false;
    tape->origins = array_grow(tape->origins, &tape->origin_room, tape->origin_count + 1u,
                               sizeof *tape->origins, &failed);
    if (failed) {
        tape_set_fault(tape, TAPE_MEMORY, (fig){0});
        return (fig){0};
    }
    tape->origins[tape->origin_count] = origin;
    made.first = tape->origin_count++;
    const fig handle = tape_add_figure(tape, made, what);
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
