/* SPDX-License-Identifier: MIT */
/* The terms file: plain text for the client's papers, a paragraph a block of lines, blank lines
 * between.  A line that begins with `;` is the shop's own and is never printed. */
#ifndef DOORCOST_READ_RATES_TERMS_H
#define DOORCOST_READ_RATES_TERMS_H

#include "read/key/key.h"

/* More than this nobody reads, or signs. */
#define TERMS_MOST_PARAGRAPHS ((size_t)60)
#define TERMS_LONGEST         ((size_t)2000) /* bytes of a paragraph */

/* Reads the file that the shop names, if any, into shop->terms.  What is wrong goes to problems.
 * false: memory is out. */
bool terms_read(struct reader *reader, struct shop *shop) __attribute__((warn_unused_result));

#endif
