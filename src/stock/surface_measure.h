/* SPDX-License-Identifier: MIT */
/* How a yard counts hardwood boards: by surface measure.
 *
 * A board's surface measure is its width (in, as it is) times its length (whole ft, the fraction
 * dropped) over 12, to the nearest whole square foot; an exact half goes up on the first board and
 * down on the next, by turns.  The footage of a pack is the sum of all surface measures times the
 * nominal thickness, to the nearest whole board foot, half up: rounded on the pack, not on the
 * board. Source: hardwood measure as taught from the National Hardwood Lumber Association's rules
 * (surface measure, rule book p. 7 par. 16 and 18, as told in its Rules Corner, December 2020);
 * halves by turns: C. A. King, Elements of Woodwork (1911). */
#ifndef DOORCOST_STOCK_SURFACE_MEASURE_H
#define DOORCOST_STOCK_SURFACE_MEASURE_H

#include "model/calc.h"

struct surface_measure {
    int64_t feet;        /* sq ft, sum of the boards so far; starts at 0 */
    bool next_half_down; /* the next exact half goes down */
};

/* Adds a board and returns its own surface measure in whole square feet. width, along: nm, > 0. */
int64_t surface_measure_add(struct surface_measure *measure, length width, length along);

/* Board feet of a pack, whole, from its surface measure (a count) and the thickness that is counted
 * (the job's unit). */
fig surface_measure_board_feet(const struct calc *calc, fig surface, fig thickness);

#endif
