/* SPDX-License-Identifier: MIT */
#include "markup_read.h"

#include "case.h"
#include "cmocka_all.h"

#include <expat.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static char *copy(const char *text) {
    char *const copied = strdup(text);
    assert_non_null(copied);
    return copied;
}

static void XMLCALL begin(void *data, const XML_Char *name, const XML_Char **attributes) {
    struct markup *const m = data;
    if (m->count == m->room) {
        m->room = m->room == 0 ? 64 : 2 * m->room;
        m->elements = realloc(m->elements, m->room * sizeof *m->elements);
        assert_non_null(m->elements);
    }
    struct markup_element *const e = &m->elements[m->count];
    *e = (struct markup_element){.name = copy(name), .text = copy("")};
    e->parent = m->depth == 0 ? m->count : m->open[m->depth - 1];
    for (size_t i = 0; attributes[i] != NULL; i += 2) {
        assert_true(e->attribute_count < MARKUP_MOST_ATTRIBUTES);
        e->keys[e->attribute_count] = copy(attributes[i]);
        e->values[e->attribute_count++] = copy(attributes[i + 1]);
    }
    assert_true(m->depth < sizeof m->open / sizeof *m->open);
    m->open[m->depth++] = m->count++;
}

static void XMLCALL end(void *data, const XML_Char *name) {
    (void)name;
    ((struct markup *)data)->depth--;
}

static void XMLCALL add_text(void *data, const XML_Char *text, int size) {
    struct markup *const m = data;
    for (size_t i = 0; i < m->depth; i++) {
        struct markup_element *const e = &m->elements[m->open[i]];
        const size_t before = strlen(e->text);
        e->text = realloc(e->text, before + (size_t)size + 1);
        assert_non_null(e->text);
        memcpy(e->text + before, text, (size_t)size);
        e->text[before + (size_t)size] = '\0';
    }
}

void markup_read(struct markup *markup, const char *text, size_t size) {
    *markup = (struct markup){0};
    XML_Parser parser = XML_ParserCreate("UTF-8");
    assert_non_null(parser);
    XML_SetUserData(parser, markup);
    XML_SetElementHandler(parser, begin, end);
    XML_SetCharacterDataHandler(parser, add_text);
    if (XML_Parse(parser, text, (int)size, 1) != XML_STATUS_OK) {
        const size_t at = (size_t)XML_GetCurrentByteIndex(parser);
        fail_msg("%s at: %.80s", XML_ErrorString(XML_GetErrorCode(parser)),
                 at < size ? text + at : "the end");
    }
    XML_ParserFree(parser);
}

/* Copies a tag as XML has it: attributes without a value get one, and what is never closed is.
 * Returns what follows it. */
static const char *copy_tag(const char *at, FILE *out) {
    static const char *const never_closed[] = {"<meta ", "<img ", "<input "};
    bool alone = false;
    for (size_t i = 0; i < sizeof never_closed / sizeof *never_closed; i++) {
        alone = alone || strncmp(at, never_closed[i], strlen(never_closed[i])) == 0;
    }
    const size_t name = strcspn(at, " />");
    (void)fwrite(at, 1, name, out);
    at += name;
    while (*at == ' ') {
        const size_t key = strcspn(at + 1, "= />");
        (void)fprintf(out, " %.*s=", (int)key, at + 1);
        at += 1 + key;
        if (*at == '=') {
            const char *const end_of = strchr(at + 2, '"');
            assert_true(at[1] == '"' && end_of != NULL);
            if (end_of == NULL) {
                return "";
            }
            (void)fwrite(at + 1, 1, (size_t)(end_of - at), out);
            at = end_of + 1;
        } else {
            (void)fputs("\"\"", out);
        }
    }
    (void)fputs(alone || *at == '/' ? "/>" : ">", out);
    at += *at == '/' ? 1 : 0;
    assert_int_equal(*at, '>');
    return at + 1;
}

void markup_read_page(struct markup *markup, const char *path) {
    static const char first[] = "<!DOCTYPE html>\n";
    char *page = NULL;
    size_t size;
    char *const text = case_load(path, NULL);
    assert_non_null(text);
    assert_int_equal(strncmp(text, first, strlen(first)), 0);
    FILE *const out = open_memstream(&page, &size);
    assert_non_null(out);
    for (const char *at = text + strlen(first); *at != '\0';) {
        if (strncmp(at, "<style", 6) == 0 || strncmp(at, "<script", 7) == 0) {
            const char *const close = at[2] == 't' ? "</style>" : "</script>";
            const char *const found = strstr(at, close);
            assert_non_null(found);
            at = found == NULL ? "" : found + strlen(close);
        } else if (*at == '<' && at[1] != '/') {
            at = copy_tag(at, out);
        } else {
            (void)putc(*at++, out);
        }
    }
    assert_int_equal(fclose(out), 0);
    markup_read(markup, page, size);
    free(page);
    free(text);
}

void markup_clear(struct markup *markup) {
    for (size_t i = 0; i < markup->count; i++) {
        struct markup_element *const e = &markup->elements[i];
        for (size_t a = 0; a < e->attribute_count; a++) {
            free(e->keys[a]);
            free(e->values[a]);
        }
        free(e->name);
        free(e->text);
    }
    free(markup->elements);
    *markup = (struct markup){0};
}

const char *markup_value(const struct markup_element *element, const char *key) {
    for (size_t i = 0; i < element->attribute_count; i++) {
        if (strcmp(element->keys[i], key) == 0) {
            return element->values[i];
        }
    }
    return NULL;
}

double markup_number(const struct markup_element *element, const char *key) {
    char *end_of;
    const char *const value = markup_value(element, key);
    assert_non_null(value);
    const double number = strtod(value, &end_of);
    assert_true(end_of != value && *end_of == '\0');
    return number;
}

const struct markup_element *markup_find(const struct markup *markup, const char *name,
                                         const char *class, size_t at) {
    for (size_t i = 0; i < markup->count; i++) {
        const struct markup_element *const e = &markup->elements[i];
        const char *const of = markup_value(e, "class");
        if (strcmp(e->name, name) == 0 &&
            (class == NULL || (of != NULL && strcmp(of, class) == 0)) && at-- == 0) {
            return e;
        }
    }
    return NULL;
}

size_t markup_count(const struct markup *markup, const char *name, const char *class) {
    size_t count = 0;
    while (markup_find(markup, name, class, count) != NULL) {
        count++;
    }
    return count;
}
