/* SPDX-License-Identifier: MIT */
#include "read/sheet/tag_guard.h"

#include <string.h>

#define MOST_EQUALS   ((size_t)200)
#define LONGEST_PIECE ((size_t)256 * 1024)

/* Behind '<': what kind of piece begins. */
static void begin(struct tag_guard *guard, char c) {
    if (c == '!' || c == '?') {
        guard->state = GUARD_OTHER;
        guard->end[0] = c;
        guard->end[1] = '\0';
        guard->end[2] = '\0';
        return;
    }
    guard->state = c == '>' ? GUARD_TEXT : GUARD_TAG;
    guard->quote = '\0';
}

static bool in_tag(struct tag_guard *guard, char c) {
    if (guard->quote != '\0' && c == guard->quote) {
        guard->quote = '\0';
    } else if (guard->quote != '\0') {
        return true;
    } else if (c == '"' || c == '\'') {
        guard->quote = c;
    } else if (c == '=') {
        guard->equals++;
    } else if (c == '>') {
        guard->state = GUARD_TEXT;
    }
    return guard->equals <= MOST_EQUALS;
}

/* A comment ends with "-->", CDATA with "]]>", an instruction with "?>". */
static bool in_other(struct tag_guard *guard, char c) {
    if (guard->size == 3 && guard->end[0] == '!' && c != '-' && c != '[') {
        return false; /* a document type */
    }
    if (guard->size == 3 && guard->end[0] == '?') {
        guard->end[2] = c;
        return c != '>';
    }
    if (guard->size == 3) {
        guard->end[0] = ']';
        if (c == '-') {
            guard->end[0] = c;
        }
        return true;
    }
    if (c == '>' && guard->end[2] == guard->end[0] &&
        (guard->end[0] == '?' || guard->end[1] == guard->end[0])) {
        guard->state = GUARD_TEXT;
    }
    guard->end[1] = guard->end[2];
    guard->end[2] = c;
    return true;
}

/* Whether a part of UTF-8 text begins so; others would show the guard other bytes than the parser
 * sees. */
static bool begins_well(char c) {
    return c == '<' || c == '\xEF' || c == ' ' || c == '\n' || c == '\r' || c == '\t';
}

static bool pass(struct tag_guard *guard, char c) {
    guard->size++;
    switch (guard->state) {
    case GUARD_NAME:
        begin(guard, c);
        return true;
    case GUARD_TAG:
        return in_tag(guard, c);
    case GUARD_OTHER:
        return in_other(guard, c);
    case GUARD_TEXT:
        break;
    }
    guard->state = GUARD_NAME;
    guard->size = 1;
    guard->equals = 0;
    return true;
}

bool tag_guard_pass(struct tag_guard *guard, const char *bytes, size_t size) {
    if (size == 0) {
        return true;
    }
    if (memchr(bytes, '\0', size) != NULL || (!guard->begun && !begins_well(bytes[0]))) {
        return false;
    }
    guard->begun = true;
    for (size_t i = 0; i < size; i++) {
        if (guard->state == GUARD_TEXT) {
            const char *const next = memchr(bytes + i, '<', size - i);
            const size_t skipped = next == NULL ? size - i : (size_t)(next - (bytes + i));
            guard->size += skipped;
            i += skipped;
        }
        if (guard->size > LONGEST_PIECE || (i < size && !pass(guard, bytes[i]))) {
            return false;
        }
    }
    return true;
}
