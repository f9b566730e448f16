/* SPDX-License-Identifier: MIT */
/* Linear least squares: the coefficients b that make the sum of squares of y - X b the least, by
 * Householder's reflections (as Golub and Van Loan, Matrix Computations, chapter 5, from memory).
 * In floating point: an estimate to hold others against, no amount that anybody pays. */
#ifndef DOORCOST_LEARN_LEAST_SQUARES_H
#define DOORCOST_LEARN_LEAST_SQUARES_H

#include <stdbool.h>
#include <stddef.h>

/* X: rows x columns numbers, row after row, borrowed. */
struct matrix {
    double *x;
    size_t rows, columns;
};

/* y: rows numbers. Both are used up. rows is at least columns, columns at least 1. b: columns
 * coefficients; *spread: the root of the sum of squared rests by rows - columns, 0 where these are
 * as many. false: the columns do not tell each other apart, and b means nothing. */
bool least_squares(const struct matrix *matrix, double *y, double *b, double *spread)
    __attribute__((warn_unused_result));

#endif
