/* SPDX-License-Identifier: MIT */
/* What every stage of an estimate works with, and the steps that many of them share.
 *
 * The estimate owns all of it; stages borrow it.  The makers put figures on the tape and return
 * them: what is the figure's label, static; faults stick to the tape (figure/tape.h). */
#ifndef DOORCOST_MODEL_CALC_H
#define DOORCOST_MODEL_CALC_H

#include "model/job.h"
#include "model/units.h"

struct quantities; /* door/quantity.h */
struct spare_list; /* stock/spares.h */

struct calc {
    struct tape *tape;
    const struct units *units;
    const struct rates *rates;
    const struct job *job;
    const struct quantities *quantities; /* NULL until quantities_make has made them */
    const struct spare_list *spares;     /* NULL until spares_make has made them */
    struct pool *pool;                   /* of all that the stages hold; freed with the estimate */
    struct problems *problems;           /* what the stages find */
};

/* A value of a file as a figure in its own unit, a length in the job's; none where it is not set:
 * units_given. */
fig calc_given(const struct calc *calc, const char *what, const struct value *value);

/* A length (nm) that the drawing of a door has worked out, from what stands at place, as a figure
 * in the job's unit, 6 decimals: tape_worked. */
fig calc_length(const struct calc *calc, const char *what, length value, struct place place);

/* A length (nm) as it is given, where it is the one that stands at `from`, else as worked out from
 * there. */
fig calc_size(const struct calc *calc, const char *what, length size, const struct value *from);

/* A count of the drawing likewise, from 0 on; none for 0. */
fig calc_count(const struct calc *calc, const char *what, int64_t count, struct place place);

/* a x b in unit; a where b is none. */
fig calc_product(const struct calc *calc, const char *what, enum unit unit, fig a, fig b);

/* base x percent / 100 in unit. */
fig calc_percent(const struct calc *calc, const char *what, enum unit unit, fig base, fig percent);

/* Two lengths in the job's unit as an area (sq ft, m2). */
fig calc_area(const struct calc *calc, const char *what, fig a, fig b);

/* A length in the job's unit as a run (ft, m). */
fig calc_run(const struct calc *calc, const char *what, fig along);

/* The sum of count terms; none where there are no terms. */
fig calc_sum(const struct calc *calc, const char *what, enum unit unit, const fig *terms,
             size_t count);

/* counts[i] x each[i] added up; none where there are no pairs. */
fig calc_total(const struct calc *calc, const char *what, enum unit unit, const fig *counts,
               const fig *each, size_t count);

#endif
