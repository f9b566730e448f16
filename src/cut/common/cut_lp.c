/* SPDX-License-Identifier: MIT */
/* Revised simplex. Variables are numbered: slack of row r = r, artificial of row r = rows + r,
 * column c = 2 * rows + c. The inverse is kept row by row; it is made anew when a count of pivots
 * has passed, as errors add up. */
#include "cut/common/cut_lp.h"

#include "base/pool.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Uncovered demand costs so much a piece: far above any price, which is about 1. */
#define UNCOVERED_COST 1e4

/* Below this a reduced cost, or a pivot, is rounding. */
#define COST_TOLERANCE  1e-9
#define PIVOT_TOLERANCE 1e-9

/* Pivots between two fresh inverses. */
#define REFRESH_PIVOTS 200

struct column {
    double cost;
    size_t first, end; /* its entries: first to end - 1 */
    bool basic;
};

struct cut_lp {
    struct pool pool; /* holds all arrays but the columns and their entries */
    size_t rows, at_most;
    double *rhs;
    size_t columns, column_room;
    struct column *column;
    size_t entries, entry_room;
    struct cut_lp_entry *entry;
    size_t *basis;   /* the variable of each row */
    bool *basic;     /* of the variables that are no column */
    double *inverse; /* rows x rows */
    double *level;   /* value of each basic variable */
    double *dual;    /* one a row */
    double *image;   /* inverse times the entering column */
    size_t pivots;   /* since the last fresh inverse */
};

static double variable_cost(const struct cut_lp *lp, size_t variable) {
    if (variable < lp->rows) {
        return 0.0;
    }
    return variable < 2 * lp->rows ? UNCOVERED_COST : lp->column[variable - 2 * lp->rows].cost;
}

/* Whether a variable is in the basis. */
static bool *basic(struct cut_lp *lp, size_t variable) {
    return variable < 2 * lp->rows ? &lp->basic[variable]
                                   : &lp->column[variable - 2 * lp->rows].basic;
}

/* Slack of a demand counts down, of a limit up. */
static double slack_sign(const struct cut_lp *lp, size_t row) {
    return row < lp->at_most ? -1.0 : 1.0;
}

/* Adds factor times the variable's column to a dense vector. */
static void scatter(const struct cut_lp *lp, size_t variable, double *dense) {
    if (variable < lp->rows) {
        dense[variable] += slack_sign(lp, variable);
    } else if (variable < 2 * lp->rows) {
        dense[variable - lp->rows] += 1.0;
    } else {
        const struct column *column = &lp->column[variable - 2 * lp->rows];
        for (size_t e = column->first; e < column->end; e++) {
            dense[lp->entry[e].row] += lp->entry[e].value;
        }
    }
}

struct cut_lp *cut_lp_new(size_t rows, const double *rhs, size_t at_most) {
    struct cut_lp *lp = calloc(1, sizeof *lp);
    if (lp == NULL) {
        return NULL;
    }
    struct pool *const pool = &lp->pool;
    pool_init(pool);
    lp->rows = rows;
    lp->at_most = at_most;
    lp->rhs = pool_take(pool, rows, sizeof *lp->rhs);
    lp->basis = pool_take(pool, rows, sizeof *lp->basis);
    lp->basic = pool_take(pool, 2 * rows, sizeof *lp->basic);
    lp->inverse = pool_take(pool, rows * rows, sizeof *lp->inverse);
    lp->level = pool_take(pool, rows, sizeof *lp->level);
    lp->dual = pool_take(pool, rows, sizeof *lp->dual);
    lp->image = pool_take(pool, rows, sizeof *lp->image);
    if (pool_failed(pool)) {
        cut_lp_free(lp);
        return NULL;
    }
    for (size_t r = 0; r < rows; r++) {
        lp->rhs[r] = rhs[r];
        lp->level[r] = rhs[r];
        lp->basis[r] = r < at_most ? rows + r : r;
        lp->basic[lp->basis[r]] = true;
        lp->inverse[r * rows + r] = 1.0;
        lp->dual[r] = r < at_most ? UNCOVERED_COST : 0.0;
    }
    return lp;
}

void cut_lp_free(struct cut_lp *lp) {
    if (lp == NULL) {
        return;
    }
    pool_clear(&lp->pool);
    free(lp->column);
    free(lp->entry);
    free(lp);
}

bool cut_lp_add(struct cut_lp *lp, const struct cut_lp_entry *entries, size_t count, double cost) {
    bool failed = false;
    lp->column =
        array_grow(lp->column, &lp->column_room, lp->columns + 1, sizeof *lp->column, &failed);
    lp->entry =
        array_grow(lp->entry, &lp->entry_room, lp->entries + count, sizeof *lp->entry, &failed);
    if (failed) {
        return false;
    }
    if (count > 0) {
        memcpy(&lp->entry[lp->entries], entries, count * sizeof *entries);
    }
    lp->column[lp->columns++] =
        (struct column){.cost = cost, .first = lp->entries, .end = lp->entries + count};
    lp->entries += count;
    return true;
}

/* The variable that lowers the cost most a unit, or SIZE_MAX; *reduced_cost: by how much. */
static size_t choose_entering(const struct cut_lp *lp, double *reduced_cost) {
    size_t best = SIZE_MAX;
    double best_cost = -COST_TOLERANCE;
    for (size_t r = 0; r < lp->rows; r++) {
        double reduced = -slack_sign(lp, r) * lp->dual[r];
        if (!lp->basic[r] && reduced < best_cost) {
            best = r;
            best_cost = reduced;
        }
    }
    const struct cut_lp_entry *entry = lp->entry;
    for (size_t c = 0; c < lp->columns; c++) {
        const struct column *const column = &lp->column[c];
        const struct cut_lp_entry *const end = lp->entry + column->end;
        double reduced = column->cost;
        for (; entry < end; entry++) {
            reduced -= lp->dual[entry->row] * entry->value;
        }
        if (reduced < best_cost && !column->basic) {
            best = 2 * lp->rows + c;
            best_cost = reduced;
        }
    }
    *reduced_cost = best_cost;
    return best;
}

/* image = inverse x column of the variable. */
static void compute_image(struct cut_lp *lp, size_t variable) {
    size_t rows = lp->rows;
    memset(lp->image, 0, rows * sizeof *lp->image);
    if (variable < 2 * rows) {
        size_t at = variable < rows ? variable : variable - rows;
        double sign = variable < rows ? slack_sign(lp, at) : 1.0;
        for (size_t r = 0; r < rows; r++) {
            lp->image[r] = sign * lp->inverse[r * rows + at];
        }
        return;
    }
    const struct column *column = &lp->column[variable - 2 * rows];
    for (size_t r = 0; r < rows; r++) {
        const double *line = &lp->inverse[r * rows];
        double sum = 0.0;
        for (size_t e = column->first; e < column->end; e++) {
            sum += line[lp->entry[e].row] * lp->entry[e].value;
        }
        lp->image[r] = sum;
    }
}

/* The row whose variable first falls to nothing, or SIZE_MAX; of equals the largest pivot. */
static size_t choose_leaving(const struct cut_lp *lp) {
    size_t best = SIZE_MAX;
    double best_ratio = 0.0;
    for (size_t r = 0; r < lp->rows; r++) {
        if (lp->image[r] <= PIVOT_TOLERANCE) {
            continue;
        }
        double ratio = lp->level[r] / lp->image[r];
        if (best == SIZE_MAX || ratio < best_ratio - 1e-12 ||
            (ratio <= best_ratio + 1e-12 && lp->image[r] > lp->image[best])) {
            best = r;
            best_ratio = ratio;
        }
    }
    return best;
}

/* Divides the pivot row, and clears the column above and below it, in a rows x rows array. */
static void eliminate(double *matrix, size_t rows, size_t pivot, const double *image) {
    double *line = &matrix[pivot * rows];
    for (size_t c = 0; c < rows; c++) {
        line[c] /= image[pivot];
    }
    for (size_t r = 0; r < rows; r++) {
        if (r == pivot || (image[r] <= 1e-14 && image[r] >= -1e-14)) {
            continue;
        }
        double factor = image[r];
        double *other = &matrix[r * rows];
        for (size_t c = 0; c < rows; c++) {
            other[c] -= factor * line[c];
        }
    }
}

static void pivot(struct cut_lp *lp, size_t row, size_t entering) {
    double step = lp->level[row] / lp->image[row];
    for (size_t r = 0; r < lp->rows; r++) {
        lp->level[r] -= step * lp->image[r];
        lp->level[r] = lp->level[r] < 0.0 ? 0.0 : lp->level[r];
    }
    lp->level[row] = step;
    *basic(lp, lp->basis[row]) = false;
    *basic(lp, entering) = true;
    lp->basis[row] = entering;
    eliminate(lp->inverse, lp->rows, row, lp->image);
    lp->pivots++;
}

static void compute_duals(struct cut_lp *lp) {
    memset(lp->dual, 0, lp->rows * sizeof *lp->dual);
    for (size_t r = 0; r < lp->rows; r++) {
        double cost = variable_cost(lp, lp->basis[r]);
        const double *line = &lp->inverse[r * lp->rows];
        for (size_t c = 0; c < lp->rows && cost > 0.0; c++) {
            lp->dual[c] += cost * line[c];
        }
    }
}

/* Brings the largest rest of column `at` of the matrix to row `at`. */
static void swap_pivot(double *matrix, double *inverse, size_t rows, size_t at) {
    size_t best = at;
    for (size_t r = at + 1; r < rows; r++) {
        if (fabs(matrix[r * rows + at]) > fabs(matrix[best * rows + at])) {
            best = r;
        }
    }
    for (size_t c = 0; c < rows && best != at; c++) {
        double held = matrix[best * rows + c];
        matrix[best * rows + c] = matrix[at * rows + c];
        matrix[at * rows + c] = held;
        held = inverse[best * rows + c];
        inverse[best * rows + c] = inverse[at * rows + c];
        inverse[at * rows + c] = held;
    }
}

/* Inverts the basis from its columns; false: it cannot be inverted, the old inverse is kept. */
static bool refresh(struct cut_lp *lp) {
    size_t rows = lp->rows;
    double *basis = calloc(2 * rows * rows + 1, sizeof *basis);
    if (basis == NULL) {
        return false;
    }
    double *fresh = &basis[rows * rows];
    for (size_t r = 0; r < rows; r++) {
        memset(lp->image, 0, rows * sizeof *lp->image);
        scatter(lp, lp->basis[r], lp->image);
        for (size_t i = 0; i < rows; i++) {
            basis[i * rows + r] = lp->image[i];
        }
        fresh[r * rows + r] = 1.0;
    }
    bool regular = true;
    for (size_t at = 0; at < rows && regular; at++) {
        swap_pivot(basis, fresh, rows, at);
        for (size_t r = 0; r < rows; r++) {
            lp->image[r] = basis[r * rows + at];
        }
        regular = fabs(lp->image[at]) > 1e-11;
        if (regular) {
            eliminate(basis, rows, at, lp->image);
            eliminate(fresh, rows, at, lp->image);
        }
    }
    if (regular) {
        memcpy(lp->inverse, fresh, rows * rows * sizeof *fresh);
    }
    for (size_t r = 0; r < rows && regular; r++) {
        double sum = 0.0;
        for (size_t c = 0; c < rows; c++) {
            sum += lp->inverse[r * rows + c] * lp->rhs[c];
        }
        lp->level[r] = sum > 0.0 ? sum : 0.0;
    }
    lp->pivots = 0;
    free(basis);
    return regular;
}

bool cut_lp_solve(struct cut_lp *lp, int64_t limit, int64_t *spent) {
    int64_t size = (int64_t)(lp->rows * lp->rows);
    int64_t used = 0;
    bool solved = false;
    while (used < limit) {
        double reduced = 0.0;
        size_t entering = choose_entering(lp, &reduced);
        used += 2 * (int64_t)(lp->entries + lp->rows) + 100;
        if (entering == SIZE_MAX) {
            solved = true;
            break;
        }
        compute_image(lp, entering);
        size_t row = choose_leaving(lp);
        if (row == SIZE_MAX) {
            break;
        }
        pivot(lp, row, entering);
        for (size_t c = 0; c < lp->rows; c++) {
            lp->dual[c] += reduced * lp->inverse[row * lp->rows + c];
        }
        used += size / 2;
        if (lp->pivots >= REFRESH_PIVOTS) {
            if (!refresh(lp)) {
                break;
            }
            compute_duals(lp);
            used += size * (int64_t)lp->rows;
        }
    }
    cut_spend(spent, used);
    return solved;
}

void cut_lp_values(const struct cut_lp *lp, double *values) {
    memset(values, 0, lp->columns * sizeof *values);
    for (size_t r = 0; r < lp->rows; r++) {
        if (lp->basis[r] >= 2 * lp->rows) {
            values[lp->basis[r] - 2 * lp->rows] = lp->level[r];
        }
    }
}

void cut_lp_duals(const struct cut_lp *lp, double *duals) {
    memcpy(duals, lp->dual, lp->rows * sizeof *duals);
}
