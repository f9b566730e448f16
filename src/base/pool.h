/* SPDX-License-Identifier: MIT */
/* A pool of memory that is freed together: what a job reads lives in one.
 *
 * Failure sticks: after the first allocation that fails every call gives NULL, and pool_failed
 * tells.  So a reader may go on for a while and ask once. Memory from a pool is zeroed, aligned for
 * any type, never freed singly. */
#ifndef DOORCOST_BASE_POOL_H
#define DOORCOST_BASE_POOL_H

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

struct pool_block;
struct pool {
    struct pool_block *blocks;
    bool failed;
};

/* Makes an empty pool, which holds no memory yet. Cannot fail. */
void pool_init(struct pool *pool);
/* Frees all that was taken from the pool; every pointer into it is dead. The pool is empty then.
 * */
void pool_clear(struct pool *pool);
/* Whether memory ran out at any time. */
bool pool_failed(const struct pool *pool);

/* Zeroed room for count things of size bytes each; NULL when memory is out or the product
 * overflows. count 0 gives a valid pointer to nothing. */
void *pool_take(struct pool *pool, size_t count, size_t size);

/* A copy of size bytes, aligned for anything; NULL when memory is out. */
void *pool_copy(struct pool *pool, const void *bytes, size_t size);

/* A copy of the first size bytes of text, terminated. */
char *pool_text(struct pool *pool, const char *text, size_t size);

/* A formatted text. */
char *pool_format(struct pool *pool, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* The same of a list of arguments, which is used up. */
char *pool_format_list(struct pool *pool, const char *format, va_list arguments)
    __attribute__((format(printf, 2, 0)));

/* A formatted text; "" when memory is out, so that it may be shown before pool_failed is asked. */
const char *pool_words(struct pool *pool, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* What array_grow does where there is no room; for that alone. */
void *array_grow_more(void *array, size_t *room, size_t need, size_t size, bool *failed)
    __attribute__((warn_unused_result));

/* Grows an array that the caller owns on the heap so that it holds at least need things of size
 * bytes: the one place where sizes are multiplied.  array: NULL where *room is 0.  Returns the
 * array, which has moved or not; the caller owns it.  Out of memory or overflow: *failed is set,
 * never cleared, and array and *room stay as they are. */
__attribute__((warn_unused_result)) static inline void *
array_grow(void *array, size_t *room, size_t need, size_t size, bool *failed) {
    return need <= *room ? array : array_grow_more(array, room, need, size, failed);
}

#endif
