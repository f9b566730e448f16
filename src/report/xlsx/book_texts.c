/* SPDX-License-Identifier: MIT */
#include "report/xlsx/book_texts.h"

#include "base/index.h"
#include "base/pool.h"
#include "base/text.h"

#include <stdlib.h>
#include <string.h>

/* A cell holds no more, codes among them: the library leaves one out that is longer. */
#define MOST_LETTERS ((size_t)32767)
/* Stands for the `_` of a text that would be taken for such a code itself. */
#define CODE_OF_LINE "_x005F_"

struct book_texts {
    struct pool pool;
    struct index index;
    const char **list;
    size_t count, room;
};

struct book_texts *book_texts_new(void) {
    return calloc(1, sizeof(struct book_texts));
}

void book_texts_free(struct book_texts *texts) {
    if (texts != NULL) {
        index_clear(&texts->index);
        free(texts->list);
        pool_clear(&texts->pool);
        free(texts);
    }
}

/* Whether a text begins with what a workbook takes for the code of a letter, as `_x0041_`. */
static bool is_code(const char *text) {
    static const char hex[] = "0123456789abcdefABCDEF";
    return strncmp(text, "_x", 2) == 0 && strspn(text + 2, hex) >= 4 && text[6] == '_';
}

static char *without_codes(struct pool *pool, const char *text) {
    const size_t more = sizeof CODE_OF_LINE - 2;
    size_t size = strlen(text) + 1;
    size_t used = 0;
    for (const char *c = text; *c != '\0'; c++) {
        size += is_code(c) ? more : 0;
    }
    char *const out = pool_take(pool, size, 1);
    for (const char *c = text; out != NULL && *c != '\0'; c++) {
        const bool code = is_code(c);
        memcpy(out + used, code ? CODE_OF_LINE : c, code ? more + 1 : 1);
        used += code ? more + 1 : 1;
    }
    return out;
}

/* A text as a cell holds it. In pool; NULL when memory is out. */
static const char *cell_words(struct pool *pool, const char *text) {
    for (size_t letters = MOST_LETTERS;;) {
        const char *const cut = text_cut(pool, text, letters);
        const char *const out = cut == NULL ? NULL : without_codes(pool, cut);
        const size_t units = out == NULL ? 0 : text_units(out);
        if (units <= MOST_LETTERS) {
            return out;
        }
        letters = letters * MOST_LETTERS / units;
    }
}

/* Whether a cell holds a text as it is. */
static bool is_held(const char *text) {
    for (const char *c = strchr(text, '_'); c != NULL; c = strchr(c + 1, '_')) {
        if (is_code(c)) {
            return false;
        }
    }
    return text_units(text) <= MOST_LETTERS;
}

static bool same_text(const void *list, size_t number, const void *text) {
    return strcmp(((const struct book_texts *)list)->list[number], text) == 0;
}

uint32_t book_texts_add(struct book_texts *texts, const char *text, bool *failed) {
    const char *const held = is_held(text) ? text : cell_words(&texts->pool, text);
    texts->list =
        array_grow(texts->list, &texts->room, texts->count + 1, sizeof *texts->list, failed);
    if (held == NULL || *failed) {
        *failed = true;
        return 0;
    }
    const size_t number = index_add(&texts->index, hash_text(HASH_START, held), same_text, texts,
                                    held, texts->count, failed);
    if (number == texts->count) {
        texts->list[number] = pool_text(&texts->pool, held, strlen(held));
        *failed = *failed || texts->list[number] == NULL;
        texts->count += *failed ? 0 : 1;
    }
    return (uint32_t)number;
}

const char *book_texts_at(const struct book_texts *texts, uint32_t number) {
    return texts->list[number];
}
