/* SPDX-License-Identifier: MIT */
/* Warnings that need the hours: of the finish once its area and minutes are known, and of work that
 * a job or a row adds. */
#ifndef DOORCOST_LABOR_WARN_H
#define DOORCOST_LABOR_WARN_H

#include "labor/labor.h"

/* Warns of a finish that is thicker, dry, than the shop's limit, and of a mix that takes longer to
 * spray than its pot life: run minutes of one coat (operations at a machine, counted by the sprayed
 * area of all coats) by the mixes of a coat. Asks about a can of the rack that has no color where
 * the job needs that coating in one. */
void finish_warn(const struct calc *calc, const struct finish_list *finish,
                 const struct labor *labor);

/* Asks about what a row has made of its doors, an arch or bars, and no operation is counted by
 * there. */
void shapes_warn(const struct calc *calc, const struct labor *labor);

/* Asks about each operation that 'also' of the job or of a row adds and that does nothing there:
 * the style, the finish or the shop has it already, or the doors have nothing that it is counted
 * by. */
void also_warn(const struct calc *calc, const struct labor *labor);

#endif
