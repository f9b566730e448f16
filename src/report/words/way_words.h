/* SPDX-License-Identifier: MIT */
/* What the ways of a row, and choices of them for all rows, are called. All texts are static. */
#ifndef DOORCOST_REPORT_WORDS_WAY_WORDS_H
#define DOORCOST_REPORT_WORDS_WAY_WORDS_H

#include "price/ways.h"

/* `made here`, `as listed`, `bought in`, `finish sent out`, `bought, sent out`. */
const char *way_words(const struct ways_row *row, size_t way);
/* The same of a kind, for rows made here or not. */
const char *way_kind_words(enum way_kind kind);

/* `each at least direct`, `all bought in`, ... */
const char *ways_all_words(enum ways_all all);

#endif
