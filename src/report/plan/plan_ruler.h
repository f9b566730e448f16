/* SPDX-License-Identifier: MIT */
/* From sizes to places on paper: true to scale as far as each stretch then has the least room that
 * it needs; what is too small gets that, and the rest shrinks alike. */
#ifndef DOORCOST_REPORT_PLAN_PLAN_RULER_H
#define DOORCOST_REPORT_PLAN_PLAN_RULER_H

#include "base/pool.h"

#include <stdint.h>

struct ruler_mark {
    int64_t at;   /* size */
    double least; /* of the stretch from this mark to the next, points */
    double place; /* points */
};

struct ruler {
    struct ruler_mark *marks;
    size_t count, room;
};

/* An empty ruler with room for `stretches`, in pool; memory is out: one that holds none. */
struct ruler ruler_make(struct pool *pool, size_t stretches);
/* Marks a stretch and the least room that it needs, points. Stretches do not overlap. */
void ruler_add(struct ruler *ruler, int64_t from, int64_t to, double least);
/* The points that all stretches need together. */
double ruler_least(struct ruler *ruler);
/* Lays it out from `from` to `to`, points. */
void ruler_lay(struct ruler *ruler, double from, double to);
/* The place of a size that lies on the ruler. */
double ruler_place(const struct ruler *ruler, int64_t size);

#endif
