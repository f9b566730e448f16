/* SPDX-License-Identifier: MIT */
/* How wide text runs, letter by letter, where it is not set on a page but handed to another
 * program: a spreadsheet breaks lines by these widths.  Each letter is asked of the typeface once
 * and then remembered.
 *
 * Widths are in ems: a letter of size 9 points is 9 x its width wide.  Text is UTF-8.  Pairs of
 * letters are not drawn together here as text_measure does, since spreadsheets don't either. */
#ifndef DOORCOST_REPORT_TYPE_TEXT_WIDTH_H
#define DOORCOST_REPORT_TYPE_TEXT_WIDTH_H

#include <stdbool.h>
#include <stddef.h>

struct text_widths;

/* NULL: out of memory. Owned by the caller, for text_widths_free. */
struct text_widths *text_widths_new(void) __attribute__((warn_unused_result));
/* Accepts NULL. */
void text_widths_free(struct text_widths *widths);

/* The width of the first size bytes of text. */
double text_width(struct text_widths *widths, const char *text, size_t size, bool bold);

/* The widest of the words that stand between blanks and hyphens. */
double text_widest_word(struct text_widths *widths, const char *text, bool bold);

/* Lines that a text takes in a column: broken at blanks, and within a word that is wider than the
 * column. room: width of the column in ems, above 0. At least 1. */
size_t text_lines(struct text_widths *widths, const char *text, bool bold, double room);

#endif
