/* SPDX-License-Identifier: MIT */
/* Small jobs of boards, and every way of cutting them by the words of docs/method.md, "By plan". */
#ifndef DOORCOST_TESTS_BOARD_WAYS_H
#define DOORCOST_TESTS_BOARD_WAYS_H

#include "cut/board/board_plan.h"
#include "draw_number.h"

#define WAYS_PARTS  5 /* of a job at most */
#define WAYS_STOCKS 5

/* What the boards of the cheapest of all ways cost, rip first or crosscut first as the job has it;
 * INT64_MAX: there is no way. */
int64_t ways_least_cost(const struct board_job *job);

/* Draws sizes and demands of so many items, WAYS_PARTS parts in all at most: lengths of 20 to
 * 10 x longest, widths of 12 to widest. */
void ways_draw_items(uint64_t *seed, struct cut_item *items, size_t count, int64_t longest,
                     int64_t widest);

#endif
