/* SPDX-License-Identifier: MIT */
/* The rates file with proposals in it: only the values of keys change, and the comments behind
 * them grow. */
#include "learn/proposal.h"

#include "read/file/ini_edit.h"

/* A line with the new value, and behind its comment what it was and why. */
static const char *changed_line(const struct proposal *p, const char *line, struct pool *pool) {
    const struct rate_number *const n = p->number;
    const char *const new = p->low == NULL ? rate_number_learned(n, p->text, p->paid_on, pool)
                                           : rate_number_with(n, p->text, pool);
    const char *const was = rate_number_ranged(n) ? pool_words(pool, "%s (%s to %s)", n->likely,
                                                               n->low_text, n->high_text)
                                                  : n->likely;
    return ini_line_with(line, new, pool_words(pool, "was %s: %s", was, p->why), pool);
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
    struct ini_lines out = {.list = pool_take(pool, count, sizeof(const char *)), .count = count};
    if (out.list == NULL) {
        return NULL;
    }
    for (size_t i = 0; i < count; i++) {
        const struct proposal *const p = proposal_at(proposals, i + 1);
        out.list[i] = p == NULL ? lines[i] : changed_line(p, lines[i], pool);
    }
    return ini_text(&out, pool);
}
