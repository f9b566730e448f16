/* SPDX-License-Identifier: MIT */
/* Numbers drawn at random for tests, the same on every machine. */
#ifndef DOORCOST_TESTS_DRAW_H
#define DOORCOST_TESTS_DRAW_H

#include <stdint.h>
#include <string.h>

/* A number below `below` (> 0); *seed: of the row of numbers, moved on. */
static inline uint32_t draw_below(uint32_t *seed, uint32_t below) {
    *seed = *seed * 1103515245U + 12345U;
    return (*seed >> 12) % below;
}

/* Adds fewer than `most` of the pieces to text, as far as its size goes. */
static inline void draw_pieces(uint32_t *seed, char *text, size_t size, uint32_t most,
                               const char *const *pieces, uint32_t count) {
    for (uint32_t n = draw_below(seed, most); n > 0; n--) {
        (void)strncat(text, pieces[draw_below(seed, count)], size - strlen(text) - 1);
    }
}

#endif
