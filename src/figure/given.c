/* SPDX-License-Identifier: MIT */
/* Givens: what a file says, or a published source; each once. */
#include "base/index.h"
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

/* A given that is looked for. Of a tape that is not traced only `packed` tells it from others. */
struct wanted {
    uint64_t packed;
    uint16_t label;
    struct origin origin;
};

static uint32_t wanted_hash(const struct wanted *w, bool traced) {
    const struct place place = w->origin.place;
    uint64_t hash = hash_word(HASH_START, w->packed);
    if (traced) {
        hash = hash_word(hash, w->label);
        hash = hash_word(hash, (uint64_t)place.file << 16 | place.column);
        hash = hash_word(hash, place.line);
        hash = hash_word(hash, w->origin.source == NULL ? 0 : strlen(w->origin.source));
    }
    return (uint32_t)(hash ^ hash >> 32);
}

static bool is_wanted(const struct tape *tape, uint32_t id, const struct wanted *w) {
    if (tape->values[id] != w->packed || !tape->traced) {
        return tape->values[id] == w->packed;
    }
    const struct history *const history = &tape->histories[id];
    const struct origin *const from = &tape->origins[history->first];
    return history->label == w->label && from->place.file == w->origin.place.file &&
           from->place.line == w->origin.place.line &&
           from->place.column == w->origin.place.column &&
           same_source(from->source, w->origin.source);
}

/* The slot of the index where a given stands or would stand. */
static struct given_slot *find_slot(const struct tape *tape, uint32_t hash,
                                    const struct wanted *w) {
    size_t at = hash & (tape->index_room - 1);
    while (tape->index[at].id != 0 &&
           (tape->index[at].hash != hash || !is_wanted(tape, tape->index[at].id, w))) {
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
        tape_out_of_memory(tape);
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

static bool keep_origin(struct tape *tape, struct origin origin) {
    bool failed = false;
    tape->origins = array_grow(tape->origins, &tape->origin_room, tape->origin_count + 1u,
                               sizeof *tape->origins, &failed);
    if (failed) {
        tape_out_of_memory(tape);
        return false;
    }
    tape->origins[tape->origin_count++] = origin;
    return true;
}

static fig add_given(struct tape *tape, const char *what, enum unit unit, uint8_t decimals,
                     int64_t value, struct origin origin) {
    assert(decimals <= 6);
    struct wanted wanted = {.packed = value_pack(value, (uint8_t)unit, decimals)};
    if (tape->traced) {
        wanted.label = tape_label_number(tape, what);
        wanted.origin = origin;
    }
    if (!grow_index(tape)) {
        return (fig){0};
    }
    const uint32_t hash = wanted_hash(&wanted, tape->traced);
    struct given_slot *const slot = find_slot(tape, hash, &wanted);
    if (slot->id != 0) {
        return (fig){slot->id};
    }
    if (tape->traced && !keep_origin(tape, origin)) {
        return (fig){0};
    }
    const struct figure made = {.value = value,
                                .first = tape->traced ? tape->origin_count - 1 : 0,
                                .op = OP_GIVEN,
                                .unit = (uint8_t)unit,
                                .decimals = decimals};
    const fig handle = tape_add_figure(tape, &made, what);
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
