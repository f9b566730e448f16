/* SPDX-License-Identifier: MIT */
#include "report/json/json_stream.h"

#include <string.h>

static void indent(const struct json_stream *stream) {
    for (unsigned i = 0; i < stream->depth; i++) {
        fputc(' ', stream->out);
    }
}

/* What stands before a value: the comma behind the one before it, a line of its own, its key. */
static void lead(struct json_stream *stream, const char *key) {
    if (stream->depth > 0) {
        fputs(stream->filled ? ",\n" : "\n", stream->out);
        indent(stream);
    }
    if (key != NULL) {
        fprintf(stream->out, "\"%s\": ", key);
    }
    stream->filled = true;
}

void json_open(struct json_stream *stream, const char *key, char bracket) {
    lead(stream, key);
    fputc(bracket, stream->out);
    stream->depth++;
    stream->filled = false;
}

void json_close(struct json_stream *stream, char bracket) {
    stream->depth--;
    if (stream->filled) {
        fputc('\n', stream->out);
        indent(stream);
    }
    fputc(bracket, stream->out);
    if (stream->depth == 0) {
        fputc('\n', stream->out);
    }
    stream->filled = true;
}

/* The value's own lines are moved in: a text of JSON holds no line feed but between its values. */
static int put(const char *text, size_t size, void *data) {
    struct json_stream *const stream = data;
    while (size > 0) {
        const char *const end = memchr(text, '\n', size);
        const size_t line = end == NULL ? size : (size_t)(end - text) + 1;
        (void)fwrite(text, 1, line, stream->out);
        if (end != NULL) {
            indent(stream);
        }
        text += line;
        size -= line;
    }
    return 0;
}

void json_send(struct json_stream *stream, const char *key, json_t *value) {
    if (value == NULL) {
        stream->failed = true;
        return;
    }
    lead(stream, key);
    if (json_dump_callback(value, put, stream, JSON_INDENT(1) | JSON_ENCODE_ANY) != 0) {
        stream->failed = true;
    }
    json_decref(value);
}

void json_send_members(struct json_stream *stream, json_t *object) {
    const char *key;
    json_t *value;
    stream->failed = stream->failed || object == NULL;
    json_object_foreach(object, key, value) {
        json_send(stream, key, json_incref(value));
    }
    json_decref(object);
}
