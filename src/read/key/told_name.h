/* SPDX-License-Identifier: MIT */
/* A cell that names a section of the rates by its name alone, or with its kind before it where
 * several have the name: `topcoat`, `coating clear`. */
#ifndef DOORCOST_READ_KEY_TOLD_NAME_H
#define DOORCOST_READ_KEY_TOLD_NAME_H

#include "read/key/key.h"

enum told_name { TOLD_NONE, TOLD_ONE, TOLD_SEVERAL };

/* Finds the section among the kinds whose bit (1 << enum name_kind) is set. TOLD_SEVERAL was
 * reported; of TOLD_NONE nothing is said. */
enum told_name told_name_find(struct reader *reader, const struct text *what, unsigned kinds,
                              enum name_kind *kind, int32_t *index);

#endif
