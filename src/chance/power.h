/* SPDX-License-Identifier: MIT */
/* Logarithm, exponential and powers out of + - * / alone, which IEEE 754 rounds alike everywhere;
 * those of C libraries differ in their last digits from one machine to another. Right to 14 digits
 * in the ranges named. */
#ifndef DOORCOST_CHANCE_POWER_H
#define DOORCOST_CHANCE_POWER_H

/* The natural logarithm of x > 0: with x = m 2^e, e ln 2 and the series of artanh((m - 1)/(m + 1)).
 */
double power_log(double x);

/* e to the x, x from -700 to 700: a power of two, and the series of the rest. */
double power_exp(double x);

/* x to the p for x of 0 or more and p of 0 or more; 1 where p is 0. */
double power_of(double x, double p);

#endif
