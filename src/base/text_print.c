/* SPDX-License-Identifier: MIT */
/* Text for people: what may not be shown is not, and on a terminal lines have their width. */
#include "base/text.h"

#include <stdarg.h>
#include <stdlib.h>
#include <unistd.h>

void text_put(FILE *out, const char *text, size_t size) {
    size_t length;

    for (size_t at = 0; at < size; at += length) {
        const bool shows = text_shows(text + at, size - at, &length);

        if (shows || text[at] == '\n') {
            fwrite(text + at, 1, length, out);
        } else {
            fputc(text[at] == '\t' ? ' ' : '?', out);
        }
    }
}

#define TERMINAL_COLUMNS 80
#define GOES_ON          "  " /* before what a message goes on with */

/* How many columns the word at `at` takes, and where it ends. */
static size_t word_columns(const char *text, size_t at, size_t size, size_t *end) {
    size_t columns = 0;
    size_t length;

    for (*end = at; *end < size && text[*end] != ' ' && text[*end] != '\n'; *end += length) {
        (void)text_shows(text + *end, size - *end, &length);
        columns++;
    }
    return columns;
}

void text_put_message(FILE *out, const char *text, size_t size, size_t column) {
    size_t end;

    if (isatty(fileno(out)) != 1) {
        text_put(out, text, size);
        return;
    }
    for (size_t at = 0; at < size; at = end) {
        const bool blank = text[at] == ' ' || text[at] == '\n';
        const size_t next = blank ? at + 1 : at;
        const size_t wide = word_columns(text, next, size, &end);

        if (text[at] == '\n') {
            text_put(out, "\n", 1);
            column = 0;
        } else if (blank && wide > 0 && column + 1 + wide > TERMINAL_COLUMNS) {
            text_put(out, "\n" GOES_ON, sizeof("\n" GOES_ON) - 1);
            column = sizeof(GOES_ON) - 1;
        } else if (blank) {
            text_put(out, " ", 1);
            column++;
        }
        text_put(out, text + next, end - next);
        column += wide;
    }
}

void text_print(FILE *out, const char *format, ...) {
    va_list arguments;
    va_list again;
    char *text = NULL;
    int size;

    va_start(arguments, format);
    va_copy(again, arguments);
    size = vsnprintf(NULL, 0, format, arguments);
    va_end(arguments);
    if (size >= 0) {
        text = malloc((size_t)size + 1);
    }
    if (text != NULL) {
        (void)vsnprintf(text, (size_t)size + 1, format, again);
        text_put_message(out, text, (size_t)size, 0);
        free(text);
    }
    va_end(again);
}
