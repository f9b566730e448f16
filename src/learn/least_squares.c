/* SPDX-License-Identifier: MIT */
#include "learn/least_squares.h"

#include <math.h>

/* A column whose rest is less than this part of it says nothing that those before have not said. */
#define TELLS_APART 1e-10

static double *at(const struct matrix *m, size_t row, size_t column) {
    return &m->x[row * m->columns + column];
}

static double length_from(const struct matrix *m, size_t row, size_t column) {
    double sum = 0;
    for (size_t i = row; i < m->rows; i++) {
        sum += *at(m, i, column) * *at(m, i, column);
    }
    return sqrt(sum);
}

/* Mirrors numbers that stand `step` apart, from row k down, by the vector v of column k with
 * square 2 / scale. */
static void mirror(const struct matrix *m, size_t k, double scale, double *numbers, size_t step) {
    double dot = 0;
    for (size_t i = k; i < m->rows; i++) {
        dot += *at(m, i, k) * numbers[i * step];
    }
    dot *= scale;
    for (size_t i = k; i < m->rows; i++) {
        numbers[i * step] -= dot * *at(m, i, k);
    }
}

/* Mirrors column k: the numbers from row k down are the vector. Makes column k one number and zeros
 * below it; y is mirrored with it. The number goes to diagonal, as its place holds the vector
 * meanwhile. false: nothing of the column is left. */
static bool reduce(const struct matrix *m, size_t k, double *y, double *diagonal) {
    const double whole = length_from(m, 0, k);
    const double rest = length_from(m, k, k);
    if (!(rest > TELLS_APART * whole)) {
        return false;
    }
    const double sign = *at(m, k, k) > 0 ? -rest : rest;
    *diagonal = sign;
    *at(m, k, k) -= sign;
    const double square = length_from(m, k, k);
    const double scale = 2 / (square * square);
    for (size_t column = k + 1; column < m->columns; column++) {
        mirror(m, k, scale, m->x + column, m->columns);
    }
    mirror(m, k, scale, y, 1);
    return true;
}

bool least_squares(const struct matrix *m, double *y, double *b, double *spread) {
    const size_t rows = m->rows;
    const size_t columns = m->columns;
    for (size_t k = 0; k < columns; k++) {
        if (!reduce(m, k, y, &b[k])) {
            return false;
        }
    }
    for (size_t k = columns; k-- > 0;) { /* b[k] is the diagonal until its row is solved */
        double left = y[k];
        for (size_t column = k + 1; column < columns; column++) {
            left -= *at(m, k, column) * b[column];
        }
        b[k] = left / b[k];
    }
    double sum = 0;
    for (size_t i = columns; i < rows; i++) {
        sum += y[i] * y[i];
    }
    *spread = rows > columns ? sqrt(sum / (double)(rows - columns)) : 0;
    return true;
}
