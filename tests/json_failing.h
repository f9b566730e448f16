/* SPDX-License-Identifier: MIT */
/* The JSON library's allocations, counted, of which one can be made to fail. */
#ifndef DOORCOST_TESTS_JSON_FAILING_H
#define DOORCOST_TESTS_JSON_FAILING_H

#include <jansson.h>
#include <stdlib.h>

static size_t calls;   /* asked for so far */
static size_t failing; /* which of them fails; 0: none */
static long alive;     /* not given back yet */

static void *take(size_t size) {
    void *const thing = ++calls == failing ? NULL : malloc(size);
    alive += thing != NULL ? 1 : 0;
    return thing;
}

static void drop(void *thing) {
    alive -= thing != NULL ? 1 : 0;
    free(thing);
}

/* From here on they are counted. */
static inline void json_failing_begin(void) {
    calls = failing = 0;
    json_set_alloc_funcs(take, drop);
}

/* And from here on no more. */
static inline void json_failing_end(void) {
    json_set_alloc_funcs(malloc, free);
}

#endif
