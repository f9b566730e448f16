/* SPDX-License-Identifier: MIT */
#include "report/words/door_names.h"

#include "base/text.h"

#define NAMED ((size_t)16)

void door_names_add(struct door_names *names, struct pool *pool, const char *door, int64_t count) {
    if (names->count++ < NAMED) {
        names->words = pool_words(pool, "%s%s%s %lld", text_or_empty(names->words),
                                  names->words == NULL ? "" : ", ", door, (long long)count);
    }
}

const char *door_names_end(const struct door_names *names, struct pool *pool) {
    const char *const words = text_or_empty(names->words);
    return names->count <= NAMED ? words
                                 : pool_words(pool, "%s, %zu more", words, names->count - NAMED);
}
