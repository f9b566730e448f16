/* SPDX-License-Identifier: MIT */
/* A line of what was noted: its columns, and what must hold between its cells. For src/read/actuals
 * only. */
#ifndef DOORCOST_READ_ACTUALS_ACTUALS_ROW_H
#define DOORCOST_READ_ACTUALS_ACTUALS_ROW_H

#include "model/actuals.h"
#include "read/key/key.h"

/* A line as its cells say it. An amount has the unit of its material, which another cell names, so
 * it is read when all cells are known. */
struct actual_said {
    struct actual row;
    struct text bought, taken, left;
};

extern const struct key actual_keys[];
extern const size_t actual_key_count;

/* Finds what the line is about, reads its amounts and checks it; faults are reported, and questions
 * about what is odd. said->row is whole after. */
void actual_complete(struct reader *reader, struct actual_said *said);

#endif
