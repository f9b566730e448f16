/* SPDX-License-Identifier: MIT */
/* Finds the number of an equal thing among those that were added before: what is said on every row
 * of a long list is kept once, in time that grows with the rows alone.
 *
 * The caller keeps the things, in a list of its own; the index keeps their hashes. */
#ifndef DOORCOST_BASE_INDEX_H
#define DOORCOST_BASE_INDEX_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct index_slot {
    uint32_t number; /* plus 1; 0: free */
    uint32_t hash;
};

/* All zero: empty. */
struct index {
    struct index_slot *slots; /* open addressing; a power of two of them */
    size_t room, count;
};

/* Whether the thing of that number is equal to the one that is looked for. */
typedef bool index_same(const void *list, size_t number, const void *thing);

/* The number of the thing equal to `thing`; where there is none, `next` is now the number of this
 * one and is returned.  hash: equal things have equal ones, see hash_word. list, thing: handed to
 * same. next: below 2^32 - 1. Out of memory: *failed is set, never cleared, and the result is
 * next. */
size_t index_add(struct index *index, uint64_t hash, index_same *same, const void *list,
                 const void *thing, size_t next, bool *failed);
/* Frees the slots; the index is empty then and may be used again. */
void index_clear(struct index *index);

/* A hash of what was hashed so far, at the start HASH_START, and one word or text more. text: NULL
 * is not the empty one. */
#define HASH_START UINT64_C(14695981039346656037)
static inline uint64_t hash_word(uint64_t hash, uint64_t word) {
    hash = (hash ^ word) * UINT64_C(1099511628211); /* FNV-1a, a word at a time */
    return hash ^ hash >> 29;                       /* the high bits are the better ones */
}
/* The hash with a text more, byte by byte and its end. text: UTF-8, borrowed by this call; NULL
 * is a value of its own. */
uint64_t hash_text(uint64_t hash, const char *text);
/* The same where texts are equal that text_same takes for so: ASCII case ignored. */
uint64_t hash_name(uint64_t hash, const char *name);

#endif
