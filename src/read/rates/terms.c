/* SPDX-License-Identifier: MIT */
#include "read/rates/terms.h"

#include "read/file/source.h"

#include <string.h>

static bool is_comment(const char *line) {
    return line[strspn(line, " \t")] == ';';
}

static bool is_blank(const char *line) {
    return line[strspn(line, " \t\f\v")] == '\0';
}

/* Puts a line's words behind those of the paragraph, blanks reduced to one. */
static size_t add_words(char *text, size_t used, const char *line) {
    while (*line != '\0') {
        line += strspn(line, " \t\f\v");
        const size_t size = strcspn(line, " \t\f\v");
        if (size > 0 && used > 0) {
            text[used++] = ' ';
        }
        memcpy(text + used, line, size);
        used += size;
        line += size;
    }
    return used;
}

/* One paragraph from lines [from, to). */
static void add_paragraph(struct reader *reader, struct shop *shop, const struct source *source,
                          size_t from, size_t to) {
    const struct place place = {.file = source->file, .line = (uint32_t)from + 1};
    size_t room = 1;
    for (size_t i = from; i < to; i++) {
        room += strlen(source->lines[i]) + 1;
    }
    char *const text = pool_take(reader->pool, room, 1);
    size_t used = 0;
    for (size_t i = from; text != NULL && i < to; i++) {
        if (!source->bad[i] && !is_comment(source->lines[i])) {
            used = add_words(text, used, source->lines[i]);
        }
    }
    if (text == NULL || used == 0) {
        return;
    }
    if (used > TERMS_LONGEST) {
        problem_add(reader->problems, SEVERITY_ERROR, "terms-too-long", place,
                    "the paragraph has %zu bytes; expected at most %zu, with a blank line between "
                    "paragraphs",
                    used, TERMS_LONGEST);
    } else if (shop->term_count == TERMS_MOST_PARAGRAPHS) {
        problem_add(reader->problems, SEVERITY_ERROR, "terms-too-many",
                    (struct place){.file = source->file},
                    "the terms have over %zu paragraphs; expected no more than a client reads",
                    TERMS_MOST_PARAGRAPHS);
    } else {
        shop->terms[shop->term_count++] = (struct text){.s = text, .place = place};
    }
}

bool terms_read(struct reader *reader, struct shop *shop) {
    struct source source = {0};
    if (shop->terms_path.s == NULL) {
        return true;
    }
    if (!source_read(&source, shop->terms_path.s, shop->terms_path.place, reader->problems)) {
        return false;
    }
    shop->terms = pool_take(reader->pool, TERMS_MOST_PARAGRAPHS, sizeof *shop->terms);
    for (size_t from = 0; shop->terms != NULL && from < source.count;) {
        size_t to = from;
        while (to < source.count && !is_blank(source.lines[to])) {
            to++;
        }
        if (to > from) {
            add_paragraph(reader, shop, &source, from, to);
        }
        from = to + 1;
    }
    return !pool_failed(reader->pool) && !reader->problems->failed;
}
