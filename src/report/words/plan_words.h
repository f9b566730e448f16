/* SPDX-License-Identifier: MIT */
/* Cutting plans in words, the same on every paper: boards and sheets that are cut alike taken
 * together, sizes, the names of parts, the proof. */
#ifndef DOORCOST_REPORT_WORDS_PLAN_WORDS_H
#define DOORCOST_REPORT_WORDS_PLAN_WORDS_H

#include "report/words/show.h"

/* Boards or sheets of one plan that are cut alike into the same parts. */
struct alike {
    size_t first;  /* the first of them, in the plan */
    size_t number; /* what it is called: from 1, all that are alike counted on */
    size_t copies;
};

/* The groups of a plan of boards, in the order of their first; *count: how many. In pool; NULL
 * when memory is out. */
struct alike *plan_alike_boards(struct pool *pool, const struct board_plan *plan, size_t *count);
/* The same of a plan of sheets. */
struct alike *plan_alike_sheets(struct pool *pool, const struct sheet_plan *plan, size_t *count);

/* A size of a planner's job, millionths of the job's unit, in nm. */
length plan_length(const struct estimate *estimate, int64_t size);
/* A size of a planner's job: `30 1/2`. */
struct shown plan_show(const struct estimate *estimate, int64_t size);
/* Width and length of one: `2 3/8 x 30 1/2`. */
struct shown plan_show_size(const struct estimate *estimate, int64_t across, int64_t along);
/* The same of what is not cut to this size, as an offcut: down to 1/32 in or whole mm. */
struct shown plan_show_left(const struct estimate *estimate, int64_t across, int64_t along);

/* `D01 top rail`: which door's which part an item is. In pool; empty when memory is out, which
 * fails the pool. */
const char *plan_part_name(struct pool *pool, const struct plan_part *part);

/* What a stock of such a plan is called, in the singular: sheet, half sheet, rack sheet or rack
 * offcut; static. */
const char *plan_sheet_noun(const struct sheets_plan *plan, size_t stock);
/* The same of a board: `board`, `rack board`, `rack offcut`. */
const char *plan_board_noun(const struct lumber_plan *plan, size_t stock);

/* `boards 1 to 3`, `board 4`. */
struct shown plan_numbers(const struct alike *alike, const char *noun);

/* `23 boards, 291.10 at the price of a small lot; less than 259.06 is impossible`. */
struct shown plan_proof_boards(const struct estimate *estimate, const struct lumber_buy *buy);
/* `3 sheets; fewer than 3 is impossible`. */
struct shown plan_proof_sheets(const struct estimate *estimate, const struct sheet_buy *buy);

/* `the plan asks for 34.1197 % added; the rates say 45 %`. */
struct shown plan_asks(const struct estimate *estimate, fig asks, const struct value *waste,
                       enum waste_as as);

/* `The plan needs 8 bf more than the factor buys: buy by the plan.`; empty: it needs no more. */
struct shown plan_short(const struct estimate *estimate, fig short_of_plan);

/* A way of buying side by side with the other: `by factor` and `by plan`; which prices the job. */
const char *plan_prices(bool planned);

#endif
