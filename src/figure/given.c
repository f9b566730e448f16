/* SPDX-License-Identifier: MIT */
/* Givens: what a file says, or a published source; each once. */
#include "figure/tape.h"
#include "figure/tape_parts.h"

#include <assert.h>
#include <string.h>

/* Sources are compared as texts: whether equal literals of two files are one is the linker's
 * choice, and the numbers of the figures must not hang on it. */
static bool same_source(const char *a, const char *b) {
    return a == b || (a != NULL && b != NULL && strcmp(a, b) == 0);
}

/* A given that is looked for on a traced tape. */
struct wanted {
    uint64_t packed;
    uint16_t label;
    struct origin origin;
};

static uint64_t wanted_hash(const struct wanted *w) {
    const struct place place = w->origin.place;
    uint64_t hash = hash_word(HASH_START, w->packed);
    hash = hash_word(hash, w->label);
    hash = hash_word(hash, (uint64_t)place.file << 16 | place.column);
    hash = hash_word(hash, place.line);
    return hash_word(hash, w->origin.source == NULL ? 0 : strlen(w->origin.source));
}

/* Whether figure `id` is the given that is wanted. One that memory was out for has no figure. */
static bool is_wanted(const void *list, size_t id, const void *thing) {
    const struct tape *const tape = list;
    const struct wanted *const w = thing;
    if (id >= tape->count || tape->values[id] != w->packed) {
        return false;
    }
    const struct history *const history = &tape->histories[id];
    const struct origin *const from = &tape->origins[history->first];
    return history->label == w->label && from->place.file == w->origin.place.file &&
           from->place.line == w->origin.place.line &&
           from->place.column == w->origin.place.column && from->worked == w->origin.worked &&
           same_source(from->source, w->origin.source);
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
    struct figure made = {
        .value = value, .op = OP_GIVEN, .unit = (uint8_t)unit, .decimals = decimals};
    if (!tape->traced) {
        return tape_add_figure(tape, &made, what);
    }
    const struct wanted wanted = {.packed = value_pack(value, made.unit, decimals),
                                  .label = tape_label_number(tape, what),
                                  .origin = origin};
    bool failed = false;
    const size_t id = index_add(&tape->givens, wanted_hash(&wanted), is_wanted, tape, &wanted,
                                tape->count, &failed);
    if (failed) {
        tape_out_of_memory(tape);
        return (fig){0};
    }
    if (id < tape->count) {
        return (fig){(uint32_t)id};
    }
    made.first = tape->origin_count;
    return keep_origin(tape, origin) ? tape_add_figure(tape, &made, what) : (fig){0};
}

fig tape_given(struct tape *tape, const char *what, enum unit unit, uint8_t decimals, int64_t value,
               struct place place) {
    return add_given(tape, what, unit, decimals, value, (struct origin){.place = place});
}

fig tape_worked(struct tape *tape, const char *what, enum unit unit, uint8_t decimals,
                int64_t value, struct place place) {
    return add_given(tape, what, unit, decimals, value,
                     (struct origin){.place = place, .worked = true});
}

fig tape_constant(struct tape *tape, const char *what, enum unit unit, uint8_t decimals,
                  int64_t value, const char *source) {
    return add_given(tape, what, unit, decimals, value, (struct origin){.source = source});
}
