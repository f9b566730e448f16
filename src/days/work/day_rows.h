/* SPDX-License-Identifier: MIT */
/* A plan by whose work it is: what each person, machine and place does on each day, for papers that
 * give each of them a row. */
#ifndef DOORCOST_DAYS_WORK_DAY_ROWS_H
#define DOORCOST_DAYS_WORK_DAY_ROWS_H

#include "days/work/day_plan.h"

enum day_row_kind {
    ROW_PERSON,
    ROW_MACHINE,
    ROW_CLAMPS,
    ROW_RACKS,   /* what dries, whether racks are counted or not */
    ROW_FINISHER /* to whom doors are sent */
};

struct day_row {
    enum day_row_kind kind;
    int32_t of; /* a person, from 0 on; index into rates.machines of machines and clamps; else 0 */
    size_t first_entry, entry_count;
};

/* Minutes of a working day, from its opening on; from < to. */
struct day_stretch {
    int32_t from, to;
};

/* One work of one job in a row on one day. */
struct day_entry {
    size_t row;
    size_t day; /* index into work_days of the plan */
    size_t job;
    int32_t operation;             /* index into rates.operations */
    const char *what, *coat;       /* as of the step; borrowed */
    int32_t doors;                 /* that the whole of this work is done to */
    bool waits;                    /* nobody is at it: it sets, dries or is away */
    int64_t minutes;               /* of its spans */
    size_t first_span, span_count; /* one behind the other, with gaps between */
};

/* Of a pool. */
struct day_rows {
    struct day_row *rows; /* those with entries: people, machines, clamps, racks, finisher */
    size_t row_count;
    struct day_entry *entries; /* by row, then day, then as the work goes */
    size_t entry_count;
    struct day_stretch *spans;
};

/* Gives each step the people whom it needs, who did the same before where they are free, and puts
 * all in rows. What waits at night and on days off alone has no entry. Memory of pool; the texts
 * are borrowed from the plan. false: out of memory. */
bool day_rows_make(struct day_rows *rows, const struct day_plan *plan, struct pool *pool)
    __attribute__((warn_unused_result));

#endif
