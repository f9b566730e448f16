/* SPDX-License-Identifier: MIT */
/* JSON read by the letter of RFC 8259, in other code than the library that writes it: nothing that
 * the grammar has not, UTF-8 alone, no key twice in an object. */
#ifndef DOORCOST_TESTS_JSON_READ_H
#define DOORCOST_TESTS_JSON_READ_H

#include <stdbool.h>
#include <stddef.h>

enum json_kind { NODE_NULL, NODE_FALSE, NODE_TRUE, NODE_NUMBER, NODE_TEXT, NODE_LIST, NODE_OBJECT };

struct json_node {
    enum json_kind kind;
    char *key;  /* in an object; else NULL */
    char *text; /* of a number as it stands, of a text without its escapes */
    struct json_node *first, *next;
};

/* A whole document; NULL: it is none, *bad tells from which byte on. To be freed. */
struct json_node *json_read(const char *text, size_t size, size_t *bad);
void json_free(struct json_node *node);

/* A member of an object; NULL: it has none of that key, or is no object. */
const struct json_node *json_get(const struct json_node *node, const char *key);
/* A value further in: keys and numbers of items, parted by `/`: `estimates/0/sale`. */
const struct json_node *json_find(const struct json_node *node, const char *path);
size_t json_length(const struct json_node *node);

#endif
