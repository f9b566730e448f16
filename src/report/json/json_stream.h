/* SPDX-License-Identifier: MIT */
/* A JSON document written piece by piece, so that a long one is never whole in memory.
 *
 * Objects and lists that may be long are opened, filled and closed; what stands in them is made as
 * a value of jansson, written and freed at once. The bytes are those that jansson gives for the
 * whole document, indented by one blank a level. */
#ifndef DOORCOST_REPORT_JSON_JSON_STREAM_H
#define DOORCOST_REPORT_JSON_JSON_STREAM_H

#include <jansson.h>
#include <stdbool.h>
#include <stdio.h>

/* A document in the writing. Start from {.out = FILE}. Errors of out are for the caller to ask. */
struct json_stream {
    FILE *out;
    unsigned depth; /* open objects and lists */
    bool filled;    /* the innermost one has something in it */
    bool failed;    /* memory was out: the document has holes */
};

/* Opens an object '{' or a list '['. key: its key in an object; NULL in a list and of the whole
 * document. Static. */
void json_open(struct json_stream *stream, const char *key, char bracket);
/* Closes the innermost one, by '}' or ']' as it was opened; behind the last a line feed follows. */
void json_close(struct json_stream *stream, char bracket);

/* Writes what stands in object, each under its key, into the object that is open, and frees it. */
void json_send_members(struct json_stream *stream, json_t *object);

/* Writes value under key, NULL in a list, and frees it. value NULL: memory was out. */
void json_send(struct json_stream *stream, const char *key, json_t *value);

#endif
