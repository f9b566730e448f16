/* SPDX-License-Identifier: MIT */
/* Small helpers for text: UTF-8 checks, plain comparisons, the nearest known name. */
#ifndef DOORCOST_BASE_TEXT_H
#define DOORCOST_BASE_TEXT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

struct pool;

/* true when size bytes are valid UTF-8 (no overlong forms, no surrogates, nothing over U+10FFFF).
 * *bad: offset of the first byte that is not, when false; may be NULL. */
bool text_is_utf8(const char *text, size_t size, size_t *bad);

/* Whether the first character of text (size bytes, 1 or more) may go to a terminal; *length: its
 * bytes, of bad UTF-8 one. false: a control character (C0, DEL, C1), a mark that turns the
 * direction of writing (U+061C, U+200E, U+200F, U+202A to U+202E, U+2066 to U+2069), or no UTF-8.
 */
bool text_shows(const char *text, size_t size, size_t *length);

/* Writes size bytes of text with `?` for each character that text_shows refuses, but line feeds,
 * and a blank for a tab. Errors are those of out. */
void text_put(FILE *out, const char *text, size_t size);

/* The same for a message whose first size bytes go on in a line that holds `column` columns
 * already: on a terminal it is broken at blanks, so that lines have 80 columns where words allow
 * it, and goes on further in. Elsewhere lines stay whole, for programs that read them. */
void text_put_message(FILE *out, const char *text, size_t size, size_t column);

/* As fprintf, the result as text_put_message writes it from the start of a line: for all words on a
 * terminal that hold names of the user's. Out of memory: nothing is written. */
void text_print(FILE *out, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* text behind the blanks that it begins with: blanks, tabs and the no-break spaces that word
 * processors and web pages put in (U+00A0, U+202F). Borrowed. */
const char *text_skip_blanks(const char *text);
/* Where the last of [from, to) ends that is no such blank. */
const char *text_trim_end(const char *from, const char *to);

/* Equal but for ASCII case. */
bool text_same(const char *a, const char *b);
/* The same with a hyphen or underscore as good as a blank: `lift-up`, `Lift up`. */
bool text_same_word(const char *a, const char *b);

/* The order of two texts, ASCII case ignored, for sorting: less than 0, 0 where text_same, more
 * than 0. */
int text_order(const char *a, const char *b);

/* Whether the first size bytes of word stand in text as a whole word, no ASCII letter before or
 * behind, ASCII case ignored. false where text is NULL, or size 0 or over 63. */
bool text_holds_word(const char *text, const char *word, size_t size);

/* How many single-letter edits (insert, delete, replace, swap of neighbors) make b of a, ASCII
 * case ignored. Texts over 63 bytes count as far apart (SIZE_MAX). */
size_t text_distance(const char *a, const char *b);

/* The name nearest to text out of count names, or NULL when none is near enough to suggest (more
 * edits than a third of the longer one's length, at least one allowed). Borrowed from names. */
const char *text_nearest(const char *text, const char *const *names, size_t count);

/* Whether name is one of those that commas part in list: text_same, but for blanks around each. */
bool text_lists(const char *list, const char *name);

/* text, or "" where it is NULL. Borrowed. */
const char *text_or_empty(const char *text);

/* Columns a terminal needs for UTF-8 text (LC_CTYPE must be set for other than ASCII; falls back to
 * characters). */
size_t text_columns(const char *text);

/* Length of UTF-8 text as workbooks count it, in units of UTF-16: an emoji counts two. */
size_t text_units(const char *text);

/* text where it has at most `most` units (text_units); else as many whole characters as leave room
 * for an ellipsis, and that. For limits of foreign formats only: elsewhere texts are not cut. In
 * pool; NULL when memory is out. */
char *text_cut(struct pool *pool, const char *text, size_t most)
    __attribute__((warn_unused_result));

/* Reads a plain decimal number: digits, at most one point, optional sign, at most 6 decimals,
 * nothing else. '4.10' gives value 410, decimals 2. false: not such a number, or |value| would
 * reach 10^12. */
bool text_decimal(const char *text, size_t size, int64_t *value, uint8_t *decimals);

#endif
