/* SPDX-License-Identifier: MIT */
/* Of plans that cost the same, the neat one: fewest cuts, then the largest offcut worth keeping.
 * For the files of this folder only. */
#ifndef DOORCOST_CUT_SHEET_SHEET_TIDY_H
#define DOORCOST_CUT_SHEET_SHEET_TIDY_H

#include "cut/sheet/sheet_search.h"

/* Looks for a neater plan than search->best that costs no more, which takes its place; `effort`
 * units of work at most, fewer where none is found for long. They are added to search->spent.
 * false: an allocation failed.
 * Method: ruin and recreate as in the search, late acceptance by cuts and offcut. */
__attribute__((warn_unused_result)) bool sheet_tidy(struct sheet_search *search, int64_t effort);

#endif
