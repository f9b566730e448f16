/* SPDX-License-Identifier: MIT */
/* How many spares cost least. */
#ifndef DOORCOST_STOCK_SPARE_CHOOSER_H
#define DOORCOST_STOCK_SPARE_CHOOSER_H

#include "figure/tape.h"

/* Outputs: the spares; the chance, in hundredths of a percent, rounded half up, that all has to be
 * set up once more without spares and with these. */
enum { SPARE_OUT_COUNT, SPARE_OUT_SHORT_WITHOUT, SPARE_OUT_SHORT_WITH, SPARE_OUTPUTS };

/* Operands: pieces that are needed (1 to MOST_SPARED), percent of them that come out spoiled, what
 * a spare costs, what setting up once more costs.
 *
 * With s spares n + s pieces are milled, and B of them come out spoiled, a binomial number. Costs
 * least is the least s x each + P(B > s) x set-up + E[max(B - s, 0)] x each, of equal ones the
 * fewest spares: what lacks has to be made then. In whole numbers of 10^-15, so that it is the same
 * on every machine. */
extern const struct chooser spare_chooser;

#endif
