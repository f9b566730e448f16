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
#ifndef DOORCOST_STOCK_TALLY_H
#define DOORCOST_STOCK_TALLY_H

#include "base/length.h"

struct tally {
    int64_t surface; /* sq ft, sum of the boards so far */
    int64_t boards;
    bool next_half_down; /* the next exact half goes down */
};

/* Surface measure of one board in whole square feet, and adds it to the tally (starts as all zero).
 * width, along: nm, > 0. */
int64_t tally_board(struct tally *tally, length width, length along);

/* Board feet of the tally at a nominal thickness (nm; under 1 in counts as 1 in). */
int64_t tally_board_feet(const struct tally *tally, length thickness);

#endif
