/* SPDX-License-Identifier: MIT */
/* The first half of a step of the search: parts by chance are taken off sheets by chance. For the
 * files of this folder only. */
#ifndef DOORCOST_CUT_SHEET_SHEET_RUIN_H
#define DOORCOST_CUT_SHEET_SHEET_RUIN_H

#include "cut/sheet/sheet_state.h"

/* A bought sheet by chance: its slot, or SIZE_MAX where none was hit. */
size_t sheet_ruin_slot(const struct sheet_state *state, struct cut_random *random);

/* Takes parts off one to three sheets: single ones, a part with its neighbors, rarely all. */
void sheet_ruin(struct sheet_state *state, struct cut_random *random);

#endif
