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

static uint32_t given_hash(const struct figure *f, const struct origin *o) {
    const uint64_t parts[] = {o->place.file,      o->place.line,
                              o->place.column,    f->label,
                              (uint64_t)f->value, f->unit,
                              f->decimals,        o->source == NULL ? 0 : strlen(o->source)};
    uint64_t hash = 14695981039346656037u; /* FNV-1a, a word at a time */
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
        hash = (hash ^ parts[i]) * 1099511628211u;
        hash ^= hash >> 29;
    }
    return (uint32_t)(hash ^ hash >> 32);
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
static struct given_slot *find_slot(const struct tape *tape, uint32_t hash, const struct figure *f,
                                    const struct origin *o) {
    size_t at = hash & (tape->index_room - 1);
    while (tape->index[at].id != 0 &&
           (tape->index[at].hash != hash || !same_given(tape, tape->index[at].id, f, o))) {
        at = (at + 1) & (tape->index_room - 1);
    }
    return &tape->index[at];
}

/* Keeps the index at most half full; its size is a power of two. */
static bool grow_index(struct tape *tape) {
    if (tape->index != NULL && 2 * (tape->given_count + 1) <= tape->index_room) {
        return true;
    }
    const size_t room = tape->index == NULL ? 256 : 2 * tape->index_room;
    struct given_slot *const index = calloc(room, sizeof *index);
    if (index == NULL) {
        tape_set_fault(tape, TAPE_MEMORY, (fig){0});
        return false;
    }
    for (size_t i = 0; tape->index != NULL && i < tape->index_room; i++) {
        size_t at = tape->index[i].hash & (room - 1);
        while (tape->index[i].id != 0 && index[at].id != 0) {
            at = (at + 1) & (room - 1);
        }
        if (tape->index[i].id != 0) {
            index[at] = tape->index[i];
        }
    }
    free(tape->index);
    tape->index = index;
    tape->index_room = room;
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
    const uint32_t hash = given_hash(&made, &origin);
    struct given_slot *const slot = find_slot(tape, hash, &made, &origin);
    if (slot->id != 0) {
        return (fig){slot->id};
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
    *slot = (struct given_slot){.id = handle.id, .hash = hash};
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
