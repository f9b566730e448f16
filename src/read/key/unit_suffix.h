/* SPDX-License-Identifier: MIT */
/* What stands behind a number, in one plain spelling: `% of cost`, `sqft per gal practical losses
 * included`, so that tables need one row for each meaning. */
#ifndef DOORCOST_READ_KEY_UNIT_SUFFIX_H
#define DOORCOST_READ_KEY_UNIT_SUFFIX_H

#include <stdbool.h>
#include <stddef.h>

/* Enough for every suffix that means something. */
#define UNIT_SUFFIX_SIZE ((size_t)96)

/* Writes the plain spelling of text into suffix: lower case, one blank between words, commas
 * dropped,
 * `/` as `per`, units in their short form (`square feet` is `sqft`, `hrs` is `hour`). false: too
 * long to mean anything. */
bool unit_suffix_plain(const char *text, char suffix[UNIT_SUFFIX_SIZE]);

#endif
