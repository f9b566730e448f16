/* SPDX-License-Identifier: MIT */
#include "base/index.h"

#include <stdlib.h>

uint64_t hash_text(uint64_t hash, const char *text) {
    for (const char *c = text == NULL ? "" : text; *c != '\0'; c++) {
        hash = (hash ^ (unsigned char)*c) * UINT64_C(1099511628211);
    }
    return hash_word(hash, text == NULL ? 1 : 0);
}

uint64_t hash_name(uint64_t hash, const char *name) {
    for (const char *c = name == NULL ? "" : name; *c != '\0'; c++) {
        const char small = (char)(*c >= 'A' && *c <= 'Z' ? *c - 'A' + 'a' : *c);
        hash = (hash ^ (unsigned char)small) * UINT64_C(1099511628211);
    }
    return hash_word(hash, name == NULL ? 1 : 0);
}

/* Keeps the slots at most half full. */
static bool grow(struct index *index) {
    if (index->slots != NULL && 2 * (index->count + 1) <= index->room) {
        return true;
    }
    const size_t room = index->slots == NULL ? 64 : 2 * index->room;
    struct index_slot *const slots = calloc(room, sizeof *slots);
    if (slots == NULL) {
        return false;
    }
    for (size_t i = 0; index->slots != NULL && i < index->room; i++) {
        size_t at = index->slots[i].hash & (room - 1);
        while (index->slots[i].number != 0 && slots[at].number != 0) {
            at = (at + 1) & (room - 1);
        }
        if (index->slots[i].number != 0) {
            slots[at] = index->slots[i];
        }
    }
    free(index->slots);
    index->slots = slots;
    index->room = room;
    return true;
}

size_t index_add(struct index *index, uint64_t hash, index_same *same, const void *list,
                 const void *thing, size_t next, bool *failed) {
    const uint32_t folded = (uint32_t)(hash ^ hash >> 32);
    if (next >= UINT32_MAX - 1 || !grow(index)) {
        *failed = true;
        return next;
    }
    size_t at = folded & (index->room - 1);
    while (index->slots[at].number != 0) {
        const struct index_slot slot = index->slots[at];
        if (slot.hash == folded && same(list, slot.number - 1, thing)) {
            return slot.number - 1;
        }
        at = (at + 1) & (index->room - 1);
    }
    index->slots[at] = (struct index_slot){.number = (uint32_t)next + 1, .hash = folded};
    index->count++;
    return next;
}

void index_clear(struct index *index) {
    free(index->slots);
    *index = (struct index){0};
}
