/* SPDX-License-Identifier: MIT */
#include "json_read.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#define DEEPEST 100

struct reader {
    const char *text;
    size_t size, at;
    int depth;
    bool failed;
};

static struct json_node *value(struct reader *r);

static int peek(const struct reader *r) {
    return r->at < r->size ? (unsigned char)r->text[r->at] : -1;
}

static bool take(struct reader *r, const char *word) {
    const size_t size = strlen(word);
    if (r->size - r->at < size || memcmp(r->text + r->at, word, size) != 0) {
        return false;
    }
    r->at += size;
    return true;
}

static void need(struct reader *r, const char *word) {
    r->failed = r->failed || !take(r, word);
}

/* RFC 8259, 2: blank, tab, line feed, carriage return. */
static void blanks(struct reader *r) {
    while (peek(r) == ' ' || peek(r) == '\t' || peek(r) == '\n' || peek(r) == '\r') {
        r->at++;
    }
}

static struct json_node *node_of(enum json_kind kind) {
    struct json_node *const node = calloc(1, sizeof *node);
    if (node == NULL) {
        abort();
    }
    node->kind = kind;
    return node;
}

/* Bytes of UTF-8 for a code point. */
static size_t put_code(uint32_t code, char *out) {
    if (code < 0x80) {
        out[0] = (char)code;
        return 1;
    }
    if (code < 0x800) {
        out[0] = (char)(0xC0 | code >> 6);
        out[1] = (char)(0x80 | (code & 0x3F));
        return 2;
    }
    if (code < 0x10000) {
        out[0] = (char)(0xE0 | code >> 12);
        out[1] = (char)(0x80 | (code >> 6 & 0x3F));
        out[2] = (char)(0x80 | (code & 0x3F));
        return 3;
    }
    out[0] = (char)(0xF0 | code >> 18);
    out[1] = (char)(0x80 | (code >> 12 & 0x3F));
    out[2] = (char)(0x80 | (code >> 6 & 0x3F));
    out[3] = (char)(0x80 | (code & 0x3F));
    return 4;
}

/* A character that stands for itself; RFC 3629, 4. */
static size_t plain(struct reader *r, char *out) {
    static const struct {
        unsigned char first, last, low, high;
        size_t more;
    } forms[] = {
        {0x20, 0x7F, 0, 0, 0},       {0xC2, 0xDF, 0x80, 0xBF, 1}, {0xE0, 0xE0, 0xA0, 0xBF, 2},
        {0xE1, 0xEC, 0x80, 0xBF, 2}, {0xED, 0xED, 0x80, 0x9F, 2}, {0xEE, 0xEF, 0x80, 0xBF, 2},
        {0xF0, 0xF0, 0x90, 0xBF, 3}, {0xF1, 0xF3, 0x80, 0xBF, 3}, {0xF4, 0xF4, 0x80, 0x8F, 3},
    };
    const unsigned char *const c = (const unsigned char *)r->text + r->at;
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
        const size_t more = forms[i].more;
        if (c[0] < forms[i].first || c[0] > forms[i].last) {
            continue;
        }
        bool good = r->size - r->at > more;
        for (size_t k = 1; good && k <= more; k++) {
            good =
                c[k] >= (k == 1 ? forms[i].low : 0x80) && c[k] <= (k == 1 ? forms[i].high : 0xBF);
        }
        if (good) {
            memcpy(out, c, more + 1);
            r->at += more + 1;
            return more + 1;
        }
    }
    r->failed = true;
    return 0;
}

static uint32_t four_digits(struct reader *r) {
    uint32_t code = 0;
    for (int i = 0; i < 4; i++) {
        static const char digits[] = "0123456789abcdef0123456789ABCDEF";
        const char *const digit = peek(r) < 0 ? NULL : strchr(digits, peek(r));
        if (digit == NULL || *digit == '\0') {
            r->failed = true;
            return 0;
        }
        code = code * 16 + (uint32_t)(digit - digits) % 16;
        r->at++;
    }
    return code;
}

/* Behind a backslash. */
static size_t escape(struct reader *r, char *out) {
    static const char *const letters = "\"\\/bfnrt";
    static const char *const means = "\"\\/\b\f\n\r\t";
    const char *const letter = peek(r) <= 0 ? NULL : strchr(letters, peek(r));
    if (letter != NULL) {
        *out = means[letter - letters];
        r->at++;
        return 1;
    }
    need(r, "u");
    uint32_t code = four_digits(r);
    if (code >= 0xD800 && code < 0xDC00) {
        need(r, "\\u");
        const uint32_t low = four_digits(r);
        r->failed = r->failed || low < 0xDC00 || low > 0xDFFF;
        code = 0x10000 + ((code - 0xD800) << 10) + (low & 0x3FF);
    } else if (code >= 0xDC00 && code <= 0xDFFF) {
        r->failed = true;
    }
    r->failed = r->failed || code == 0; /* what is read are C strings */
    return put_code(code, out);
}

/* No more bytes than a text takes, without its quotes: to the quote that is not escaped. */
static size_t most_bytes(const struct reader *r) {
    size_t at = r->at + 1;
    while (at < r->size && r->text[at] != '"') {
        at += r->text[at] == '\\' ? 2 : 1;
    }
    return at - r->at;
}

static char *text_of(struct reader *r) {
    char *const out = calloc(most_bytes(r) + 5, 1);
    size_t used = 0;
    if (out == NULL) {
        abort();
    }
    need(r, "\"");
    while (!r->failed && !take(r, "\"")) {
        if (r->at >= r->size) {
            r->failed = true;
        } else if (take(r, "\\")) {
            used += escape(r, out + used);
        } else {
            used += plain(r, out + used);
        }
    }
    return out;
}

static bool digits(struct reader *r) {
    const size_t start = r->at;
    while (peek(r) >= '0' && peek(r) <= '9') {
        r->at++;
    }
    return r->at > start;
}

/* RFC 8259, 6. */
static struct json_node *number(struct reader *r) {
    struct json_node *const node = node_of(NODE_NUMBER);
    const size_t start = r->at;
    (void)take(r, "-");
    if (!take(r, "0")) {
        r->failed = !digits(r) || r->failed;
    }
    if (take(r, ".")) {
        r->failed = !digits(r) || r->failed;
    }
    if (take(r, "e") || take(r, "E")) {
        if (!take(r, "+")) {
            (void)take(r, "-");
        }
        r->failed = !digits(r) || r->failed;
    }
    node->text = strndup(r->text + start, r->at - start);
    return node;
}

static struct json_node *filled(struct reader *r, enum json_kind kind, const char *end) {
    struct json_node *const node = node_of(kind);
    struct json_node **last = &node->first;
    r->failed = r->failed || ++r->depth > DEEPEST;
    blanks(r);
    for (bool more = !take(r, end); more && !r->failed;) {
        char *key = NULL;
        blanks(r);
        if (kind == NODE_OBJECT) {
            key = text_of(r);
            blanks(r);
            need(r, ":");
            r->failed = r->failed || json_get(node, key) != NULL;
        }
        *last = value(r);
        (*last)->key = key;
        last = &(*last)->next;
        more = take(r, ",");
        if (!more) {
            need(r, end);
        }
    }
    r->depth--;
    return node;
}

static struct json_node *value(struct reader *r) {
    struct json_node *node;
    blanks(r);
    if (take(r, "{")) {
        node = filled(r, NODE_OBJECT, "}");
    } else if (take(r, "[")) {
        node = filled(r, NODE_LIST, "]");
    } else if (peek(r) == '"') {
        node = node_of(NODE_TEXT);
        node->text = text_of(r);
    } else if (take(r, "null")) {
        node = node_of(NODE_NULL);
    } else if (take(r, "true")) {
        node = node_of(NODE_TRUE);
    } else if (take(r, "false")) {
        node = node_of(NODE_FALSE);
    } else {
        node = number(r);
    }
    blanks(r);
    return node;
}

struct json_node *json_read(const char *text, size_t size, size_t *bad) {
    struct reader reader = {.text = text, .size = size};
    struct json_node *const node = value(&reader);
    *bad = reader.at;
    if (reader.failed || reader.at != size) {
        json_free(node);
        return NULL;
    }
    return node;
}

void json_free(struct json_node *node) {
    while (node != NULL) {
        struct json_node *const next = node->next;
        json_free(node->first);
        free(node->key);
        free(node->text);
        free(node);
        node = next;
    }
}

const struct json_node *json_get(const struct json_node *node, const char *key) {
    const struct json_node *at = node == NULL ? NULL : node->first;
    while (at != NULL && (at->key == NULL || strcmp(at->key, key) != 0)) {
        at = at->next;
    }
    return at;
}

const struct json_node *json_find(const struct json_node *node, const char *path) {
    while (node != NULL && *path != '\0') {
        char key[64] = "";
        const size_t size = strcspn(path, "/");
        if (size >= sizeof key) {
            return NULL;
        }
        memcpy(key, path, size);
        if (node->kind == NODE_LIST) {
            size_t i = strtoul(key, NULL, 10);
            for (node = node->first; node != NULL && i > 0; i--) {
                node = node->next;
            }
        } else {
            node = json_get(node, key);
        }
        path += size + (path[size] == '/' ? 1 : 0);
    }
    return node;
}

size_t json_length(const struct json_node *node) {
    size_t count = 0;
    for (const struct json_node *at = node->first; at != NULL; at = at->next) {
        count++;
    }
    return count;
}
