/* SPDX-License-Identifier: MIT */
/* Markup read back by a parser of XML (expat): what is not well-formed fails the test. */
#ifndef DOORCOST_TESTS_MARKUP_READ_H
#define DOORCOST_TESTS_MARKUP_READ_H

#include <stddef.h>

#define MARKUP_MOST_ATTRIBUTES 12

struct markup_element {
    char *name;
    char *text;    /* all that stands in it, also in elements of its own */
    size_t parent; /* index of the element that it stands in; of the first its own */
    char *keys[MARKUP_MOST_ATTRIBUTES], *values[MARKUP_MOST_ATTRIBUTES];
    size_t attribute_count;
};

/* Elements in the order in which they begin. */
struct markup {
    struct markup_element *elements;
    size_t count, room;
    size_t open[64], depth;
};

/* Reads one element with all that stands in it; entities of HTML are not known. To be cleared. */
void markup_read(struct markup *markup, const char *text, size_t size);
/* Reads a page of HTML that is written as XML would be, but for its first line, elements that are
 * never closed (meta, img, input), attributes without a value, and styles and scripts, which are
 * left out. */
void markup_read_page(struct markup *markup, const char *path);
void markup_clear(struct markup *markup);

/* The value of an attribute; NULL: there is none. */
const char *markup_value(const struct markup_element *element, const char *key);
/* The same as a number; fails the test where it is none. */
double markup_number(const struct markup_element *element, const char *key);
/* How many elements there are of that name, with that value of `class` (NULL: any). */
size_t markup_count(const struct markup *markup, const char *name, const char *class);
/* The `at`th of them; NULL: there are fewer. */
const struct markup_element *markup_find(const struct markup *markup, const char *name,
                                         const char *class, size_t at);

#endif
