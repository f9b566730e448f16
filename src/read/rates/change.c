/* SPDX-License-Identifier: MIT */
#include "read/rates/change.h"

#include "base/text.h"

#include <string.h>

/* Bytes of a line, as of a file. */
#define LONGEST ((size_t)1000)

/* `lumber poplar`, of a section of the file. */
static const char *title_of(const struct ini_section *section, struct pool *pool) {
    return pool_words(pool, "%s%s%s", section->kind, section->name[0] == '\0' ? "" : " ",
                      section->name);
}

static struct ini_section *find_section(const struct ini *ini, const char *title,
                                        struct pool *pool) {
    for (size_t i = 0; i < ini->count; i++) {
        if (text_same(title_of(&ini->sections[i], pool), title)) {
            return &ini->sections[i];
        }
    }
    return NULL;
}

static void report_section(const struct ini *ini, const char *title, struct place place,
                           struct problems *problems) {
    struct pool *const pool = &problems->pool;
    const char **const titles = pool_take(pool, ini->count, sizeof *titles);
    for (size_t i = 0; titles != NULL && i < ini->count; i++) {
        titles[i] = title_of(&ini->sections[i], pool);
    }
    const char *const near = titles == NULL ? NULL : text_nearest(title, titles, ini->count);
    problem_add(problems, SEVERITY_ERROR, "unknown-section", place,
                "the rates have no section [%s]%s%s%s", problem_quote(problems, title),
                near == NULL ? "; give one of theirs, as in 'lumber poplar.price = 4.60 per bf'"
                             : "; did you mean '",
                near == NULL ? "" : problem_quote(problems, near), near == NULL ? "" : "'?");
}

/* The key of that name; where the section has none, one without a value is added, and the reader
 * tells whether it may have it. NULL: out of memory. */
static struct ini_key *find_key(struct ini_section *section, const char *name, struct pool *pool) {
    for (size_t i = 0; i < section->count; i++) {
        if (text_same(section->keys[i].name, name)) {
            return &section->keys[i];
        }
    }
    struct ini_key *const keys = pool_take(pool, section->count + 1, sizeof *keys);
    if (keys == NULL) {
        return NULL;
    }
    if (section->count > 0) {
        memcpy(keys, section->keys, section->count * sizeof *keys);
    }
    keys[section->count] =
        (struct ini_key){.name = name, .place = section->place, .value_place = section->place};
    section->keys = keys;
    return &keys[section->count++];
}

bool changes_apply(struct ini *ini, const struct rate_changes *changes, struct problems *problems) {
    uint16_t file = 0;
    if (changes == NULL) {
        return true;
    }
    if (changes->lines != NULL) {
        file = problems_file(problems, changes->lines_name);
        problems_lines(problems, file, changes->lines, changes->count);
    }
    for (size_t i = 0; i < changes->count && !problems->failed; i++) {
        const struct rate_change *const change = &changes->list[i];
        struct place place = {.line = (uint32_t)i + 1, .file = file, .column = 1};
        struct ini_section *const section = find_section(ini, change->section, &problems->pool);
        if (section == NULL) {
            place.width = (uint16_t)strlen(change->section);
            report_section(ini, change->section, place, problems);
            continue;
        }
        struct ini_key *const key = find_key(section, change->key, &problems->pool);
        if (key == NULL) {
            return false;
        }
        key->value = change->value;
        key->cut = false;
        if (changes->lines != NULL) {
            key->place = place;
            place.column = change->column;
            place.width = (uint16_t)strlen(change->value);
            key->value_place = place;
        }
    }
    return !problems->failed && !pool_failed(&problems->pool);
}

/* A copy of [from, to), trimmed, its blanks reduced to one each; NULL: out of memory. */
static const char *squeezed(const char *from, const char *to, struct pool *pool) {
    from = text_skip_blanks(from);
    char *const text = pool_text(pool, from < to ? from : to,
                                 from < to ? (size_t)(text_trim_end(from, to) - from) : 0);
    char *write = text;
    for (const char *read = text; read != NULL && *read != '\0'; read++) {
        const bool blank = *read == ' ' || *read == '\t';
        if (!blank || (write > text && write[-1] != ' ')) {
            *write = *read;
            if (blank) {
                *write = ' ';
            }
            write++;
        }
    }
    if (write != NULL) {
        *write = '\0';
    }
    return text;
}

/* The end of a section in brackets, as papers show it: `[lumber poplar] price`; NULL: it has none.
 */
static const char *bracket_end(const char *text, const char *equals) {
    const char *const end = *text == '[' ? strchr(text, ']') : NULL;
    return end != NULL && end < equals ? end : NULL;
}

/* Where the section ends and the key begins; NULL: text names the key alone. Names of sections may
 * have points. */
static const char *section_end(const char *text, const char *equals) {
    const char *end = bracket_end(text, equals);
    for (const char *c = equals; end == NULL && c > text; c--) {
        end = c[-1] == '.' ? c - 1 : NULL;
    }
    return end;
}

/* Whether a range stands at the end of a value. */
static bool has_range(const char *value) {
    const char *const open = strrchr(value, '(');
    return open != NULL && value[strlen(value) - 1] == ')' && strstr(open, " to ") != NULL;
}

const char *change_split(struct rate_change *change, const char *text, const char *section,
                         struct pool *pool) {
    const char *const line = text;
    const char *const equals = strchr(text, '=');
    text = text_skip_blanks(text);
    *change = (struct rate_change){0};
    if (equals == NULL) {
        return "has no '='";
    }
    const char *const cut = section_end(text, equals);
    change->section = cut == NULL ? section : squeezed(text + (*text == '[' ? 1 : 0), cut, pool);
    change->key = squeezed(cut == NULL ? text : cut + 1, equals, pool);
    const char *const value = text_skip_blanks(equals + 1);
    const char *const end = text_trim_end(value, value + strlen(value));
    change->value = pool_text(pool, value, end > value ? (size_t)(end - value) : 0);
    change->column = (uint16_t)(value - line + 1);
    if (pool_failed(pool)) {
        return NULL;
    }
    if (change->section[0] == '\0' || change->key[0] == '\0') {
        return "names no key";
    }
    if (change->value[0] == '\0') {
        return "has no value";
    }
    return strlen(line) > LONGEST ? "is longer than a line of a file may be" : NULL;
}

const char *change_parse(struct rate_change *change, const char *text, struct pool *pool) {
    const char *const fault = change_split(change, text, "shop", pool);
    if (fault != NULL || pool_failed(pool)) {
        return fault;
    }
    if (has_range(change->value)) {
        return "has a range; give one value";
    }
    return strpbrk(change->value, ";#\"'\n") != NULL ? "has a quote or a comment in its value"
                                                     : NULL;
}
