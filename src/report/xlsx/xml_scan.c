/* SPDX-License-Identifier: MIT */
/* Bytes are kept until the tag that they begin is whole; the names of the open elements stand one
 * behind another, each with its end. */
#include "report/xlsx/xml_scan.h"

#include "base/pool.h"
#include "base/text.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* Far more than any element of a workbook has. */
#define MOST_ATTRIBUTES ((size_t)64)

struct xml_scan {
    xml_scan_start *start;
    void *to;
    char *bytes; /* not yet looked at */
    size_t size, room;
    char *open; /* names */
    size_t open_size, open_room;
    bool begun;    /* something was seen */
    bool has_root; /* the outermost element was */
};

/* How it went with a piece: it is good, its end is not yet there, it is bad. */
enum step { STEP_DONE, STEP_MORE, STEP_BAD };

struct xml_scan *xml_scan_new(xml_scan_start *start, void *to) {
    struct xml_scan *const scan = calloc(1, sizeof *scan);
    if (scan != NULL) {
        scan->start = start;
        scan->to = to;
    }
    return scan;
}

void xml_scan_free(struct xml_scan *scan) {
    if (scan != NULL) {
        free(scan->bytes);
        free(scan->open);
        free(scan);
    }
}

bool xml_is(struct xml_piece piece, const char *word) {
    return strlen(word) == piece.size && memcmp(piece.at, word, piece.size) == 0;
}

static bool same(struct xml_piece a, struct xml_piece b) {
    return a.size == b.size && memcmp(a.at, b.at, a.size) == 0;
}

static bool is_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

static bool begins_name(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' || c == ':';
}

static bool is_name(char c) {
    return begins_name(c) || (c >= '0' && c <= '9') || c == '-' || c == '.';
}

/* --- pieces: each moves *at behind what it has looked at --- */

static enum step skip_spaces(const char **at, const char *end) {
    while (*at < end && is_space(**at)) {
        ++*at;
    }
    return *at < end ? STEP_DONE : STEP_MORE;
}

static enum step read_name(const char **at, const char *end, struct xml_piece *name) {
    name->at = *at;
    if (*at < end && !begins_name(**at)) {
        return STEP_BAD;
    }
    while (*at < end && is_name(**at)) {
        ++*at;
    }
    name->size = (size_t)(*at - name->at);
    return *at < end ? STEP_DONE : STEP_MORE;
}

/* `&amp;`; of those by number the line end alone, which attributes have. */
static enum step read_reference(const char **at, const char *end) {
    static const char *const names[] = {"amp", "lt", "gt", "quot", "apos", "#xA"};
    struct xml_piece name = {*at + 1, 0};
    while (name.at + name.size < end && name.at[name.size] != ';' && name.size < 5) {
        name.size++;
    }
    if (name.at + name.size == end) {
        return STEP_MORE;
    }
    *at = name.at + name.size;
    bool known = false;
    for (size_t i = 0; !known && i < sizeof names / sizeof *names; i++) {
        known = xml_is(name, names[i]);
    }
    return known && *(*at)++ == ';' ? STEP_DONE : STEP_BAD;
}

/* What stands between tags or quotes, up to `stop`. */
static enum step read_words(const char **at, const char *end, char stop) {
    enum step step = STEP_DONE;
    while (step == STEP_DONE && *at < end && **at != stop) {
        if (**at == '<') {
            step = STEP_BAD;
        } else if (**at == '&') {
            step = read_reference(at, end);
        } else {
            ++*at;
        }
    }
    return step == STEP_DONE && *at == end ? STEP_MORE : step;
}

static enum step read_attribute(const char **at, const char *end,
                                struct xml_scan_attribute *attribute) {
    enum step step = read_name(at, end, &attribute->name);
    if (step != STEP_DONE || *(*at)++ != '=') {
        return step == STEP_DONE ? STEP_BAD : step;
    }
    if (*at == end) {
        return STEP_MORE;
    }
    const char quote = *(*at)++;
    attribute->value.at = *at;
    step = quote == '"' || quote == '\'' ? read_words(at, end, quote) : STEP_BAD;
    if (step == STEP_DONE) {
        attribute->value.size = (size_t)(*at - attribute->value.at);
        ++*at;
    }
    return step;
}

static enum step read_attributes(const char **at, const char *end,
                                 struct xml_scan_attribute attributes[MOST_ATTRIBUTES],
                                 size_t *count) {
    for (*count = 0;;) {
        const char *const before = *at;
        enum step step = skip_spaces(at, end);
        if (step != STEP_DONE || **at == '>' || **at == '/') {
            return step;
        }
        if (*at == before || *count == MOST_ATTRIBUTES) {
            return STEP_BAD;
        }
        step = read_attribute(at, end, &attributes[*count]);
        for (size_t i = 0; step == STEP_DONE && i < *count; i++) {
            step = same(attributes[i].name, attributes[*count].name) ? STEP_BAD : STEP_DONE;
        }
        if (step != STEP_DONE) {
            return step;
        }
        ++*count;
    }
}

/* --- tags --- */

/* false: out of memory. */
static bool push(struct xml_scan *scan, struct xml_piece name) {
    const size_t size = scan->open_size + name.size + 1;
    bool failed = false;
    scan->open = array_grow(scan->open, &scan->open_room, size, 1, &failed);
    if (!failed) {
        memcpy(scan->open + scan->open_size, name.at, name.size);
        scan->open[size - 1] = '\0';
        scan->open_size = size;
    }
    return !failed;
}

/* Whether the innermost open element has this name; it is closed then. */
static bool pop(struct xml_scan *scan, struct xml_piece name) {
    if (scan->open_size < name.size + 1) {
        return false;
    }
    const size_t first = scan->open_size - name.size - 1;
    const bool whole = first == 0 || scan->open[first - 1] == '\0';
    if (!whole || memcmp(scan->open + first, name.at, name.size) != 0) {
        return false;
    }
    scan->open_size = first;
    return true;
}

static enum step read_start(struct xml_scan *scan, const char **at, const char *end) {
    struct xml_scan_attribute attributes[MOST_ATTRIBUTES];
    struct xml_piece name;
    size_t count;
    enum step step = read_name(at, end, &name);
    step = step == STEP_DONE ? read_attributes(at, end, attributes, &count) : step;
    if (step != STEP_DONE) {
        return step;
    }
    const bool empty = **at == '/';
    *at += empty ? 1 : 0;
    if (*at == end) {
        return STEP_MORE;
    }
    if (*(*at)++ != '>' || (scan->open_size == 0 && scan->has_root)) {
        return STEP_BAD;
    }
    scan->has_root = true;
    scan->start(scan->to, name, attributes, count);
    return empty || push(scan, name) ? STEP_DONE : STEP_BAD;
}

static enum step read_end(struct xml_scan *scan, const char **at, const char *end) {
    struct xml_piece name;
    enum step step = read_name(at, end, &name);
    step = step == STEP_DONE ? skip_spaces(at, end) : step;
    if (step != STEP_DONE) {
        return step;
    }
    return *(*at)++ == '>' && pop(scan, name) ? STEP_DONE : STEP_BAD;
}

/* What a document may begin with, as workbooks have it. */
static enum step read_declaration(const struct xml_scan *scan, const char **at, const char *end) {
    static const char words[] = "xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>";
    const size_t size = sizeof words - 1;
    const size_t there = (size_t)(end - *at) < size ? (size_t)(end - *at) : size;
    if (scan->begun || memcmp(*at, words, there) != 0) {
        return STEP_BAD;
    }
    *at += there;
    return there == size ? STEP_DONE : STEP_MORE;
}

/* Words between tags: outside the outermost element blanks alone. No letter is parted. */
static enum step read_between(const struct xml_scan *scan, const char **at, const char *end) {
    if (scan->open_size == 0) {
        (void)skip_spaces(at, end);
        return *at < end && **at != '<' ? STEP_BAD : STEP_DONE;
    }
    const char *const first = *at;
    const enum step step = read_words(at, end, '<');
    if (step != STEP_MORE || *at < end) {
        return step;
    }
    while (*at > first && ((unsigned char)(*at)[-1] & 0x80) != 0) {
        --*at;
    }
    return *at > first ? STEP_DONE : STEP_MORE;
}

static enum step read_next(struct xml_scan *scan, const char **at, const char *end) {
    if (**at != '<') {
        return read_between(scan, at, end);
    }
    if (++*at == end) {
        return STEP_MORE;
    }
    if (**at == '/' || **at == '?') {
        return *(*at)++ == '/' ? read_end(scan, at, end) : read_declaration(scan, at, end);
    }
    return read_start(scan, at, end);
}

/* Whether the bytes are UTF-8 and none is a control character. */
static bool is_text(const char *bytes, size_t size) {
    for (size_t i = 0; i < size; i++) {
        if ((unsigned char)bytes[i] < ' ' && !is_space(bytes[i])) {
            return false;
        }
    }
    return text_is_utf8(bytes, size, NULL);
}

bool xml_scan_take(struct xml_scan *scan, const char *bytes, size_t size) {
    bool failed = false;
    if (size == 0) {
        return true;
    }
    scan->bytes = array_grow(scan->bytes, &scan->room, scan->size + size, 1, &failed);
    if (failed) {
        return false;
    }
    memcpy(scan->bytes + scan->size, bytes, size);
    scan->size += size;
    const char *const end = scan->bytes + scan->size;
    const char *done = scan->bytes;
    enum step step = STEP_DONE;
    while (step == STEP_DONE && done < end) {
        const char *at = done;
        step = read_next(scan, &at, end);
        done = step == STEP_DONE ? at : done;
        scan->begun = scan->begun || step == STEP_DONE;
    }
    const size_t looked = (size_t)(done - scan->bytes);
    const bool good = step != STEP_BAD && is_text(scan->bytes, looked);
    scan->size -= looked;
    memmove(scan->bytes, done, scan->size);
    return good;
}

bool xml_scan_ended(const struct xml_scan *scan) {
    return scan->has_root && scan->open_size == 0 && scan->size == 0;
}
