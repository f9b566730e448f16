/* SPDX-License-Identifier: MIT */
/* A text put together from many: the names of all rows that are alike. Takes time and memory in
 * proportion to its length. */
#ifndef DOORCOST_BASE_JOINED_H
#define DOORCOST_BASE_JOINED_H

#include "base/pool.h"

/* Start from {0}. Failure sticks. */
struct joined {
    char *text; /* not terminated; on the heap */
    size_t size, room;
    bool failed;
};

/* Adds text at the end. */
void joined_add(struct joined *joined, const char *text);

/* The whole text, in pool, and joined empty again; NULL: out of memory on the way. */
char *joined_take(struct joined *joined, struct pool *pool) __attribute__((warn_unused_result));

#endif
