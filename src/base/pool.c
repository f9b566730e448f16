/* SPDX-License-Identifier: MIT */
/* A chain of blocks. Small things share a block, large ones get their own. */
#include "base/pool.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What a job reads is some tens of kilobytes: a few blocks. */
#define BLOCK_SIZE ((size_t)16384)

struct pool_block {
    struct pool_block *next;
    size_t used, size;
    max_align_t data[];
};

void pool_init(struct pool *pool) {
    *pool = (struct pool){0};
}

void pool_clear(struct pool *pool) {
    struct pool_block *block = pool->blocks;

    while (block != NULL) {
        struct pool_block *next = block->next;

        free(block);
        block = next;
    }
    pool_init(pool);
}

bool pool_failed(const struct pool *pool) {
    return pool->failed;
}

/* The new block goes in front, except that a large one goes behind the block in use, which still
 * has room. */
static struct pool_block *add_block(struct pool *pool, size_t need) {
    bool large = need > BLOCK_SIZE / 4;
    size_t size = large ? need : BLOCK_SIZE;
    struct pool_block *block = calloc(1, sizeof(struct pool_block) + size);

    if (block == NULL) {
        pool->failed = true;
        return NULL;
    }
    block->size = size;
    if (large && pool->blocks != NULL) {
        block->next = pool->blocks->next;
        pool->blocks->next = block;
    } else {
        block->next = pool->blocks;
        pool->blocks = block;
    }
    return block;
}

void *pool_take(struct pool *pool, size_t count, size_t size) {
    const size_t step = sizeof(max_align_t);
    struct pool_block *block = pool->blocks;
    unsigned char *thing;
    size_t need;

    if (pool->failed) {
        return NULL;
    }
    if (size != 0 && count > (SIZE_MAX / 2) / size) {
        pool->failed = true;
        return NULL;
    }
    need = (count * size + step - 1) / step * step;
    if (need == 0) {
        need = step;
    }
    if (block == NULL || block->size - block->used < need) {
        block = add_block(pool, need);
        if (block == NULL) {
            return NULL;
        }
    }
    thing = (unsigned char *)block->data + block->used;
    block->used += need;
    return thing;
}

void *pool_copy(struct pool *pool, const void *bytes, size_t size) {
    void *const copy = pool_take(pool, 1, size);
    if (copy != NULL && size > 0) {
        memcpy(copy, bytes, size);
    }
    return copy;
}

/* Room for a text of size bytes and its end, from the end of the block in use, where nothing has
 * to be aligned: texts of long lists are short. */
static char *take_text(struct pool *pool, size_t size) {
    struct pool_block *const block = pool->blocks;

    if (pool->failed || block == NULL || size >= block->size - block->used) {
        return pool_take(pool, size + 1, 1);
    }
    block->size -= size + 1;
    return (char *)block->data + block->size;
}

char *pool_text(struct pool *pool, const char *text, size_t size) {
    char *copy = take_text(pool, size);

    if (copy != NULL) {
        memcpy(copy, text, size);
    }
    return copy;
}

char *pool_format_list(struct pool *pool, const char *format, va_list arguments) {
    va_list again;
    char *text = NULL;
    int size;

    va_copy(again, arguments);
    /* the analyzer does not see that va_copy sets it */
    size = vsnprintf(NULL, 0, format, again); // NOLINT(clang-analyzer-valist.Uninitialized)
    va_end(again);
    if (size < 0) {
        pool->failed = true;
        return NULL;
    }
    text = take_text(pool, (size_t)size);
    if (text != NULL) {
        (void)vsnprintf(text, (size_t)size + 1, format, arguments);
    }
    return text;
}

char *pool_format(struct pool *pool, const char *format, ...) {
    va_list arguments;
    char *text;

    va_start(arguments, format);
    text = pool_format_list(pool, format, arguments);
    va_end(arguments);
    return text;
}

const char *pool_words(struct pool *pool, const char *format, ...) {
    va_list arguments;

    va_start(arguments, format);
    const char *const text = pool_format_list(pool, format, arguments);
    va_end(arguments);
    return text == NULL ? "" : text;
}

void *array_grow_more(void *array, size_t *room, size_t need, size_t size, bool *failed) {
    size_t wanted = *room;
    void *grown;

    if (size == 0) {
        return array;
    }
    while (wanted < need && wanted <= SIZE_MAX / 4) {
        wanted = wanted < 8 ? 8 : wanted * 2;
    }
    if (wanted < need || wanted > (SIZE_MAX / 2) / size) {
        *failed = true;
        return array;
    }
    grown = realloc(array, wanted * size);
    if (grown == NULL) {
        *failed = true;
        return array;
    }
    *room = wanted;
    return grown;
}
