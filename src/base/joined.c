/* SPDX-License-Identifier: MIT */
#include "base/joined.h"

#include <stdlib.h>
#include <string.h>

void joined_add(struct joined *joined, const char *text) {
    const size_t size = strlen(text);

    joined->text = array_grow(joined->text, &joined->room, joined->size + size, 1, &joined->failed);
    if (!joined->failed && size > 0) {
        memcpy(joined->text + joined->size, text, size);
        joined->size += size;
    }
}

char *joined_take(struct joined *joined, struct pool *pool) {
    char *const whole = joined->failed
                            ? NULL
                            : pool_text(pool, joined->size == 0 ? "" : joined->text, joined->size);

    free(joined->text);
    *joined = (struct joined){0};
    return whole;
}
