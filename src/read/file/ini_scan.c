/* SPDX-License-Identifier: MIT */
#include "read/file/ini_scan.h"

#include "base/text.h"

#include <stdlib.h>
#include <string.h>

/* The library's buffers hold 1024 bytes, and a line that a person reads has far fewer. */
#define LONGEST_NAME ((size_t)80)

/* Where the scan stands. */
struct cursor {
    struct ini_scan *scan;
    struct problems *problems;
    const char *line;
    struct place place; /* of the line */
};

static bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

static bool is_comment(const char *text) {
    return *text == ';' || *text == '#';
}

static struct place place_of(const struct cursor *cursor, const char *from, const char *to) {
    struct place place = cursor->place;

    place.column = (uint16_t)(from - cursor->line + 1);
    place.width = (uint16_t)(to - from);
    return place;
}

/* A name with its blanks reduced to one each; NULL: memory is out. */
static char *take_name(struct problems *problems, const char *from, const char *to) {
    char *name = pool_text(&problems->pool, from, (size_t)(to - from));
    char *write = name;

    if (name == NULL) {
        problems->failed = true;
        return NULL;
    }
    for (const char *read = name; *read != '\0'; read++) {
        if (!is_blank(*read)) {
            *write++ = *read;
        } else if (write > name && write[-1] != ' ') {
            *write++ = ' ';
        }
    }
    *write = '\0';
    return name;
}

/* What the INI form itself uses may stand in no name. */
static bool is_good_name(const char *name) {
    return strpbrk(name, ":[]\"'=#;\\") == NULL && strlen(name) <= LONGEST_NAME;
}

static struct ini_section *current(const struct ini_scan *scan) {
    return scan->count == 0 || scan->skipping ? NULL : &scan->sections[scan->count - 1];
}

static const struct ini_section *find_section(const struct ini_scan *scan, const char *kind,
                                              const char *name) {
    for (size_t i = 0; i < scan->count; i++) {
        if (text_same(scan->sections[i].kind, kind) && text_same(scan->sections[i].name, name)) {
            return &scan->sections[i];
        }
    }
    return NULL;
}

static void add_section(const struct cursor *cursor, char *head, struct place place) {
    struct ini_scan *scan = cursor->scan;
    char *blank = strchr(head, ' ');
    const char *name = "";
    const struct ini_section *earlier;
    bool failed = false;

    if (blank != NULL) {
        *blank = '\0';
        name = blank + 1;
    }
    earlier = find_section(scan, head, name);
    if (earlier != NULL) {
        problem_add(cursor->problems, SEVERITY_ERROR, "duplicate-section", place,
                    "section '%s%s%s' stands in line %u already; give each section once",
                    problem_quote(cursor->problems, head), name[0] == '\0' ? "" : " ",
                    problem_quote(cursor->problems, name), earlier->place.line);
        scan->skipping = true;
        return;
    }
    scan->sections =
        array_grow(scan->sections, &scan->room, scan->count + 1, sizeof(*scan->sections), &failed);
    if (failed) {
        cursor->problems->failed = true;
        return;
    }
    scan->sections[scan->count] = (struct ini_section){.kind = head, .name = name, .place = place};
    scan->count++;
    scan->key_room = 0;
    scan->skipping = false;
}

static void scan_head(const struct cursor *cursor, const char *text) {
    struct problems *problems = cursor->problems;
    const char *end = strchr(text, ']');
    const char *rest = end == NULL ? NULL : text_skip_blanks(end + 1);
    const char *line_end = text + strlen(text);
    char *head;

    /* a head that is nearly right is taken all the same: its keys and its name are meant */
    cursor->scan->skipping = true;
    if (end == NULL) {
        problem_add(problems, SEVERITY_ERROR, "bad-section", place_of(cursor, text, line_end),
                    "the section has no ']'; expected a line like '[lumber poplar]'");
        end = text + strcspn(text, ";#");
    } else if (*rest != '\0' && !is_comment(rest)) {
        problem_add(problems, SEVERITY_ERROR, "text-after-section",
                    place_of(cursor, rest, line_end),
                    "'%s' stands behind the section; put it on a line of its own",
                    problem_quote(problems, rest));
    }
    text = text_skip_blanks(text + 1);
    head = take_name(problems, text, text_trim_end(text, end));
    if (head == NULL) {
        return;
    }
    if (head[0] == '\0' || !is_good_name(head)) {
        problem_add(problems, SEVERITY_ERROR, "bad-section", place_of(cursor, text, end),
                    "'%s' is no section name; expected up to %zu letters, digits, blanks and "
                    "hyphens, like '[lumber poplar]'",
                    problem_quote(problems, head), LONGEST_NAME);
        return;
    }
    add_section(cursor, head, place_of(cursor, text, text_trim_end(text, end)));
}

/* The end of the value at text; NULL when it was reported. */
static const char *scan_value(const struct cursor *cursor, const char *text) {
    struct problems *problems = cursor->problems;
    const char *line_end = text + strlen(text);
    const char *end;
    const char *sign;

    if (*text == '"' || *text == '\'') {
        const char *rest;

        end = strchr(text + 1, *text);
        if (end == NULL) {
            problem_add(problems, SEVERITY_ERROR, "open-quote", place_of(cursor, text, line_end),
                        "the quote is not closed; expected another %c at the end", *text);
            return NULL;
        }
        rest = text_skip_blanks(end + 1);
        if (*rest != '\0' && !is_comment(rest)) {
            problem_add(problems, SEVERITY_ERROR, "text-after-quote",
                        place_of(cursor, rest, line_end),
                        "'%s' stands behind the closing quote; put all of the value into one pair "
                        "of quotes, or none",
                        problem_quote(problems, rest));
            return NULL;
        }
        return end + 1;
    }
    end = strchr(text, ';');
    end = text_trim_end(text, end == NULL ? line_end : end);
    sign = strchr(text, '#');
    if (sign != NULL && sign < end) {
        problem_add(problems, SEVERITY_ERROR, "number-sign", place_of(cursor, sign, sign + 1),
                    "a '#' would cut the value off; put the value in double quotes, or begin a "
                    "comment behind it with ';'");
        return NULL;
    }
    if (end > text && end[-1] == '\\') {
        problem_add(problems, SEVERITY_ERROR, "joined-line", place_of(cursor, end - 1, end),
                    "a '\\' at the end would join this line and the next; take it away");
        return NULL;
    }
    return end;
}

const struct ini_key *ini_key_find(const struct ini_section *section, const char *name) {
    for (size_t i = 0; i < section->count; i++) {
        if (text_same(section->keys[i].name, name)) {
            return &section->keys[i];
        }
    }
    return NULL;
}

static void add_key(const struct cursor *cursor, struct ini_section *section, struct ini_key key) {
    const struct ini_key *earlier = ini_key_find(section, key.name);
    bool failed = false;

    if (earlier != NULL) {
        problem_add(cursor->problems, SEVERITY_ERROR, "duplicate-key", key.place,
                    "key '%s' stands in line %u already; give it once in a section",
                    problem_quote(cursor->problems, key.name), earlier->place.line);
        return;
    }
    section->keys = array_grow(section->keys, &cursor->scan->key_room, section->count + 1,
                               sizeof(key), &failed);
    if (failed) {
        cursor->problems->failed = true;
        return;
    }
    section->keys[section->count] = key;
    section->count++;
}

/* What a comment behind a value says; NULL: there is none, or it says nothing. */
static const char *take_comment(struct problems *problems, const char *value_end) {
    const char *const sign = text_skip_blanks(value_end);
    const char *const words = is_comment(sign) ? text_skip_blanks(sign + 1) : "";
    const char *const end = text_trim_end(words, words + strlen(words));

    return end == words ? NULL : pool_text(&problems->pool, words, (size_t)(end - words));
}

static void scan_key(const struct cursor *cursor, const char *text) {
    struct problems *problems = cursor->problems;
    const char *equals = strchr(text, '=');
    const char *name_end = equals == NULL ? NULL : text_trim_end(text, equals);
    const char *line_end = text_trim_end(text, text + strlen(text));
    struct ini_section *section = current(cursor->scan);
    const char *value;
    const char *value_end;
    struct ini_key key;
    char *name;

    if (equals == NULL || name_end == text || memchr(text, ';', (size_t)(name_end - text))) {
        /* Before any section the file is something else, and one line of it tells that. */
        if (cursor->scan->stray && cursor->scan->count == 0) {
            return;
        }
        cursor->scan->stray = cursor->scan->count == 0 && !cursor->scan->skipping;
        problem_add(problems, SEVERITY_ERROR, "not-a-line", place_of(cursor, text, line_end),
                    "'%s' is neither a section nor a key; expected '[section]' or 'key = value'",
                    problem_quote(problems, text));
        return;
    }
    if (cursor->scan->skipping) {
        return;
    }
    name = take_name(problems, text, name_end);
    if (name == NULL) {
        return;
    }
    if (section == NULL) {
        cursor->scan->stray = true;
        problem_add(problems, SEVERITY_ERROR, "key-outside", place_of(cursor, text, name_end),
                    "a key stands before any section; put it below its '[section]'");
        return;
    }
    if (!is_good_name(name)) {
        problem_add(problems, SEVERITY_ERROR, "bad-key", place_of(cursor, text, name_end),
                    "'%s' is no name of a key; expected letters, digits and blanks",
                    problem_quote(problems, name));
        return;
    }
    value = text_skip_blanks(equals + 1);
    value_end = scan_value(cursor, value);
    key = (struct ini_key){.name = name, .place = place_of(cursor, text, name_end)};
    if (value_end != NULL) {
        key.value = pool_text(&problems->pool, value, (size_t)(value_end - value));
        key.value_place = place_of(cursor, value, value_end);
        key.comment = take_comment(problems, value_end);
        key.cut = *value_end == ';' && *value != '"' && *value != '\'';
    }
    add_key(cursor, section, key);
}

bool ini_scan(struct ini_scan *scan, const struct source *source, struct problems *problems) {
    *scan = (struct ini_scan){0};
    for (size_t i = 0; i < source->count && !problems->failed; i++) {
        const char *line = source->lines[i];
        struct cursor cursor = {.scan = scan,
                                .problems = problems,
                                .line = line,
                                .place = {.file = source->file, .line = (uint32_t)(i + 1)}};
        const char *text;

        if (source->bad[i]) {
            continue;
        }
        if (strlen(line) > INI_LONGEST_LINE) {
            problem_add(problems, SEVERITY_ERROR, "line-too-long", cursor.place,
                        "the line has %zu bytes; expected at most %zu", strlen(line),
                        INI_LONGEST_LINE);
            continue;
        }
        text = text_skip_blanks(line);
        if (*text == '[') {
            scan_head(&cursor, text);
        } else if (*text != '\0' && !is_comment(text)) {
            scan_key(&cursor, text);
        }
    }
    return !problems->failed && !pool_failed(&problems->pool);
}

void ini_scan_clear(struct ini_scan *scan) {
    for (size_t i = 0; i < scan->count; i++) {
        free(scan->sections[i].keys);
    }
    free(scan->sections);
    *scan = (struct ini_scan){0};
}
