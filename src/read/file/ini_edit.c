/* SPDX-License-Identifier: MIT */
#include "read/file/ini_edit.h"

#include "base/text.h"
#include "read/file/ini.h"
#include "read/file/source.h"

#include <string.h>

/* Columns of a line that is put in: the `=`, and the comment. */
#define EQUALS_AT  13
#define COMMENT_AT 45

static bool is_comment(const char *text) {
    return *text == ';' || *text == '#';
}

/* Whether [from, to), blanks reduced to one each, is that name. */
static bool is_name(const char *from, const char *to, const char *name) {
    char word[INI_LONGEST_LINE + 1];
    size_t size = 0;
    from = text_skip_blanks(from);
    to = text_trim_end(from, to < from ? from : to);
    for (; from < to && size + 1 < sizeof word; from++) {
        const bool blank = *from == ' ' || *from == '\t';
        if (!blank) {
            word[size++] = *from;
        } else if (size > 0 && word[size - 1] != ' ') {
            word[size++] = ' ';
        }
    }
    word[size] = '\0';
    return text_same(word, name);
}

static bool is_head(const char *line) {
    return *text_skip_blanks(line) == '[';
}

static bool is_head_of(const char *line, const char *section) {
    const char *const open = text_skip_blanks(line);
    const char *const close = strchr(open, ']');
    return *open == '[' && close != NULL && is_name(open + 1, close, section);
}

/* The `=` of a line that gives a key; NULL: it gives none. */
static const char *equals_of(const char *line) {
    const char *const text = text_skip_blanks(line);
    return *text == '[' || is_comment(text) ? NULL : strchr(text, '=');
}

/* Where the comment behind a value begins, or the end of the line. */
static const char *comment_of(const char *value) {
    const bool quoted = *value == '"' || *value == '\'';
    const char *const close = quoted ? strchr(value + 1, *value) : NULL;
    const char *const end = close == NULL ? strchr(value, ';') : strpbrk(close, ";#");
    return end == NULL ? value + strlen(value) : end;
}

const char *ini_line_with(const char *line, const char *value, const char *more,
                          struct pool *pool) {
    const char *const equals = equals_of(line);
    if (equals == NULL) {
        return line;
    }
    const char *const old = text_skip_blanks(equals + 1);
    const char *const comment = comment_of(old);
    const char *const head =
        pool_words(pool, "%.*s%s%s", (int)(old - line), line, old == equals + 1 ? " " : "", value);
    if (*comment == '\0' && more == NULL) {
        return head;
    }
    const size_t column = text_columns(pool_words(pool, "%.*s", (int)(comment - line), line));
    const size_t width = text_columns(head);
    const size_t blanks = width < column ? column - width : 1;
    return pool_words(pool, "%s%*s%s%s%s", head, (int)blanks, "", comment, more == NULL ? "" : "; ",
                      text_or_empty(more));
}

const char *ini_value(const char *text, struct pool *pool) {
    const char *const from = text_skip_blanks(text);
    const size_t size = (size_t)(text_trim_end(from, from + strlen(from)) - from);
    if (!source_line_good(text) || size > INI_LONGEST_LINE / 2) {
        return NULL;
    }
    const char *const plain = pool_text(pool, from, size);
    const bool quoted = plain != NULL && size > 0 &&
                        (strpbrk(plain, ";#") != NULL || *plain == '"' || *plain == '\'' ||
                         plain[size - 1] == '\\');
    if (!quoted) {
        return plain;
    }
    const char quote = strchr(plain, '"') == NULL ? '"' : '\'';
    return strchr(plain, quote) != NULL ? NULL : pool_format(pool, "%c%s%c", quote, plain, quote);
}

/* --- lines put in and taken out --- */

static bool put_in(struct ini_lines *lines, size_t at, const char *line, struct pool *pool) {
    const char **const list = pool_take(pool, lines->count + 1, sizeof *list);
    if (list == NULL) {
        return false;
    }
    if (lines->count > 0) {
        memcpy(list, lines->list, at * sizeof *list);
        memcpy(list + at + 1, lines->list + at, (lines->count - at) * sizeof *list);
    }
    list[at] = line;
    lines->list = list;
    lines->count++;
    return true;
}

static void take_out(struct ini_lines *lines, size_t at) {
    lines->count--;
    memmove(lines->list + at, lines->list + at + 1, (lines->count - at) * sizeof *lines->list);
}

/* beside: a line of the section, whose column of `=` it takes where that gives a key. */
static const char *new_line(const struct ini_change *change, const char *beside,
                            struct pool *pool) {
    const char *const equals = equals_of(beside);
    const int column = equals == NULL ? EQUALS_AT : (int)(equals - beside);
    const char *const head =
        pool_words(pool, "%-*s%s= %s", column, change->key,
                   strlen(change->key) < (size_t)column ? "" : " ", change->value);
    const size_t width = text_columns(head);
    return change->comment == NULL ? head
                                   : pool_words(pool, "%s%*s; %s", head,
                                                width < COMMENT_AT ? (int)(COMMENT_AT - width) : 1,
                                                "", change->comment);
}

static bool put_section(struct ini_lines *lines, const struct ini_change *change,
                        struct pool *pool) {
    const bool blank = lines->count > 0 && lines->list[lines->count - 1][0] != '\0';
    return (!blank || put_in(lines, lines->count, "", pool)) &&
           (change->about == NULL ||
            put_in(lines, lines->count, pool_words(pool, "; %s", change->about), pool)) &&
           put_in(lines, lines->count, pool_words(pool, "[%s]", change->section), pool);
}

struct ini_lines ini_lines_of(const struct source *source, struct pool *pool) {
    return (struct ini_lines){
        .list = pool_copy(pool, source->lines, source->count * sizeof *source->lines),
        .count = source->count};
}

bool ini_edit(struct ini_lines *lines, const struct ini_change *change, struct pool *pool) {
    size_t at = 0;
    while (at < lines->count && !is_head_of(lines->list[at], change->section)) {
        at++;
    }
    if (at == lines->count && change->value != NULL) {
        if (!put_section(lines, change, pool)) {
            return false;
        }
        at = lines->count - 1;
    }
    size_t last = at; /* line of the section that gives a key, or its head */
    for (size_t i = at + 1; i < lines->count && !is_head(lines->list[i]); i++) {
        const char *const equals = equals_of(lines->list[i]);
        if (equals == NULL) {
            continue;
        }
        if (is_name(lines->list[i], equals, change->key)) {
            if (change->value == NULL) {
                take_out(lines, i);
            } else {
                lines->list[i] = ini_line_with(lines->list[i], change->value, NULL, pool);
            }
            return !pool_failed(pool);
        }
        last = i;
    }
    return change->value == NULL ||
           (put_in(lines, last + 1, new_line(change, lines->list[last], pool), pool) &&
            !pool_failed(pool));
}

const char *ini_text(const struct ini_lines *lines, struct pool *pool) {
    size_t size = 1;
    for (size_t i = 0; i < lines->count; i++) {
        size += strlen(lines->list[i]) + 1;
    }
    char *const text = pool_failed(pool) ? NULL : pool_take(pool, size, 1);
    char *at = text;
    for (size_t i = 0; i < lines->count && text != NULL; i++) {
        const size_t bytes = strlen(lines->list[i]);
        memcpy(at, lines->list[i], bytes);
        at[bytes] = '\n';
        at += bytes + 1;
    }
    return text;
}
