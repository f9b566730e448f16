/* SPDX-License-Identifier: MIT */
#include "read/key/told_name.h"

#include "base/text.h"

#include <string.h>

/* The name behind the word of a kind, `coating clear`; NULL: text does not begin with it. */
static const char *behind_kind(enum name_kind kind, const char *text) {
    const char *const section = name_section(kind);
    const size_t size = strlen(section);
    char first[16];
    if (strlen(text) <= size || text[size] != ' ' || size >= sizeof first) {
        return NULL;
    }
    memcpy(first, text, size);
    first[size] = '\0';
    return text_same(first, section) ? text_skip_blanks(text + size) : NULL;
}

enum told_name told_name_find(struct reader *reader, const struct text *what, unsigned kinds,
                              enum name_kind *kind, int32_t *index) {
    unsigned found = 0;
    for (unsigned k = 0; k < NAME_KIND_COUNT; k++) {
        if ((kinds >> k & 1U) == 0) {
            continue;
        }
        const char *const name = behind_kind((enum name_kind)k, what->s);
        const int32_t told = name == NULL ? -1 : name_find(reader->rates, (enum name_kind)k, name);
        const int32_t plain = name_find(reader->rates, (enum name_kind)k, what->s);
        if (told >= 0 || plain >= 0) {
            found++;
            *kind = (enum name_kind)k;
            *index = told >= 0 ? told : plain;
        }
        if (told >= 0) {
            return TOLD_ONE;
        }
    }
    if (found > 1) {
        problem_add(reader->problems, SEVERITY_ERROR, "several-named", what->place,
                    "'%s' is the name of several sections; write the kind before it, as in '%s %s'",
                    problem_quote(reader->problems, what->s), name_section(*kind),
                    problem_quote(reader->problems, what->s));
        return TOLD_SEVERAL;
    }
    return found == 1 ? TOLD_ONE : TOLD_NONE;
}
