/* SPDX-License-Identifier: MIT */
/* The rates file with proposals in it: only the values of keys change, and the comments behind
 * them grow. */
#include "learn/proposal.h"

#include <string.h>

/* Where the comment of a line begins, or its end: a `;` outside of double quotes. */
static const char *comment_of(const char *line) {
    bool quoted = false;
    for (; *line != '\0'; line++) {
        quoted = *line == '"' ? !quoted : quoted;
        if (*line == ';' && !quoted) {
            break;
        }
    }
    return line;
}

/* A line with the new value in place of all between `=` and the comment. Comments stay in their
 * column where there is room. */
static const char *changed_line(const struct proposal *p, const char *line, struct pool *pool) {
    const struct rate_number *const n = p->number;
    const char *const comment = comment_of(line);
    const char *const equals = strchr(line, '=');
    if (equals == NULL || equals > comment) {
        return line; /* the reader has found a value in it */
    }
    const char *value = equals + 1;
    while (*value == ' ' || *value == '\t') {
        value++;
    }
    const char *const new = p->low == NULL ? rate_number_learned(n, p->text, p->paid_on, pool)
                                           : rate_number_with(n, p->text, pool);
    const char *const was = rate_number_ranged(n) ? pool_words(pool, "%s (%s to %s)", n->likely,
                                                               n->low_text, n->high_text)
                                                  : n->likely;
    const char *const head = pool_words(pool, "%.*s%s", (int)(value - line), line, new);
    const size_t column = (size_t)(comment - line);
    const size_t blanks = strlen(head) < column ? column - strlen(head) : 1;
    return pool_words(pool, "%s%*s%s%swas %s: %s", head, (int)blanks, "",
                      *comment == '\0' ? "; " : comment, *comment == '\0' ? "" : "; ", was, p->why);
}

/* A proposal for the line of that number; a value of several numbers is changed once for each. */
static const struct proposal *proposal_at(const struct proposals *proposals, size_t line) {
    for (size_t i = 0; i < proposals->count; i++) {
        if (proposals->list[i].number->value.place.line == line) {
            return &proposals->list[i];
        }
    }
    return NULL;
}

const char *proposals_write(const struct proposals *proposals, const char *const *lines,
                            size_t count, struct pool *pool) {
    size_t size = 1;
    const char **const out = pool_take(pool, count + 1, sizeof(const char *));
    for (size_t i = 0; i < count && out != NULL; i++) {
        const struct proposal *const p = proposal_at(proposals, i + 1);
        out[i] = p == NULL ? lines[i] : changed_line(p, lines[i], pool);
        size += strlen(out[i]) + 1;
    }
    char *const text = out == NULL || pool_failed(pool) ? NULL : pool_take(pool, size, 1);
    char *at = text;
    for (size_t i = 0; i < count && text != NULL; i++) {
        const size_t bytes = strlen(out[i]);
        memcpy(at, out[i], bytes);
        at[bytes] = '\n';
        at += bytes + 1;
    }
    return text;
}
