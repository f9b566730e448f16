/* SPDX-License-Identifier: MIT */
/* The normal distribution of mean 0 and standard deviation 1, by which draws that belong together
 * are joined. */
#ifndef DOORCOST_CHANCE_NORMAL_H
#define DOORCOST_CHANCE_NORMAL_H

/* The chance of a value up to z, above 0 and below 1: the series 26.2.11 of Abramowitz and Stegun,
 * "Handbook of mathematical functions", 1964. To 12 decimals; |z| above 6 is taken as 6. */
double normal_below(double z);

/* The value up to which the chance is u, 0 < u < 1: algorithm AS 241, PPND7 (Wichura, "The
 * percentage points of the normal distribution", Applied Statistics 37, 1988), right to 7 digits.
 */
double normal_at(double u);

/* One of several draws that move together: from a draw that all of them share and one of its own,
 * each between 0 and 1, a draw between 0 and 1. together: 0 (independent) to 1 (all alike), the
 * correlation of the normal values sqrt(together) x shared + sqrt(1 - together) x own, so any
 * number of draws can be joined, and none of them differently from another. */
double normal_joined(double shared, double own, double together);

#endif
