/* SPDX-License-Identifier: MIT */
#include "report/calendar/calendar_file.h"

#include "base/text.h"

#include <string.h>

#define MOST_BYTES 75 /* of a line, its end not counted */

/* A line in the writing. */
struct line {
    FILE *out;
    size_t bytes;
};

/* Bytes that stay together: a character, or one with what escapes it. */
static void put(struct line *line, const char *bytes, size_t size) {
    if (line->bytes + size > MOST_BYTES) {
        (void)fputs("\r\n ", line->out);
        line->bytes = 1;
    }
    (void)fwrite(bytes, 1, size, line->out);
    line->bytes += size;
}

static void put_words(struct line *line, const char *words) {
    for (const char *c = words; *c != '\0'; c++) {
        put(line, c, 1);
    }
}

static struct line begin(FILE *out, const char *name) {
    struct line line = {.out = out};
    put_words(&line, name);
    put(&line, ":", 1);
    return line;
}

static void end(struct line *line) {
    (void)fputs("\r\n", line->out);
}

void calendar_line(FILE *out, const char *name, const char *value) {
    struct line line = begin(out, name);
    put_words(&line, value);
    end(&line);
}

void calendar_text(FILE *out, const char *name, const char *text) {
    struct line line = begin(out, name);
    const char *const stop = text + strlen(text);
    for (const char *c = text; c < stop;) {
        size_t length = 1;
        const bool shows = text_shows(c, (size_t)(stop - c), &length);
        const char escaped[] = {'\\', *c};
        if (*c == '\n') {
            put(&line, "\\n", 2);
        } else if (*c == '\\' || *c == ';' || *c == ',') {
            put(&line, escaped, sizeof escaped);
        } else if (*c == '\t') {
            put(&line, " ", 1);
        } else {
            put(&line, shows ? c : "?", shows ? length : 1);
        }
        c += length;
    }
    end(&line);
}

void calendar_day(FILE *out, const char *name, int32_t day) {
    const struct date date = date_of_number(day);
    char parts[40];
    char text[16];
    (void)snprintf(parts, sizeof parts, "%s;VALUE=DATE", name);
    (void)snprintf(text, sizeof text, "%04d%02d%02d", date.year % 10000, date.month, date.day);
    calendar_line(out, parts, text);
}
