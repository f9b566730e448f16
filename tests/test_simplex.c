/* SPDX-License-Identifier: MIT */
/* The simplex of the planners against GLPK, a solver by others: every linear program that the
 * planners pose while they plan the sample instances and the boards of the sample jobs is given to
 * both, and both must find the same least cost. */
#include "cmocka_all.h"
#include "cut/common/cut_lp.h"
#include "cut/strip/strip_plan.h"
#include "cut_file.h"
#include "price/estimate.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include <dirent.h>
#include <glpk.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What cut_lp.c says of a demand that no column covers. */
#define UNCOVERED_COST 1e4

/* A program of ours, and the same one in GLPK. Rows and columns there count from 1; its first
 * columns are what stays uncovered of each demand. */
struct twin {
    const struct cut_lp *ours;
    glp_prob *theirs;
    size_t rows, at_most, columns;
    double *rhs;
    struct twin *next;
};

static struct twin *twins;
static size_t solved, apart;

static void *take(size_t count, size_t size) {
    void *const memory = calloc(count + 1, size);
    if (memory == NULL) {
        abort();
    }
    return memory;
}

static struct twin *twin_of(const struct cut_lp *lp) {
    struct twin *twin = twins;
    while (twin->ours != lp) {
        twin = twin->next;
    }
    return twin;
}

/* NOLINTBEGIN(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp): the linker's names. */
/* Calls of the planners: the linker sends them here (-Wl,--wrap). */
struct cut_lp *__real_cut_lp_new(size_t rows, const double *rhs, size_t at_most);
bool __real_cut_lp_add(struct cut_lp *lp, const struct cut_lp_entry *entries, size_t count,
                       double cost);
bool __real_cut_lp_solve(struct cut_lp *lp, int64_t limit, int64_t *spent);
void __real_cut_lp_free(struct cut_lp *lp);
struct cut_lp *__wrap_cut_lp_new(size_t rows, const double *rhs, size_t at_most);
bool __wrap_cut_lp_add(struct cut_lp *lp, const struct cut_lp_entry *entries, size_t count,
                       double cost);
bool __wrap_cut_lp_solve(struct cut_lp *lp, int64_t limit, int64_t *spent);
void __wrap_cut_lp_free(struct cut_lp *lp);

static void add_column(struct twin *twin, const struct cut_lp_entry *entries, size_t count,
                       double cost) {
    int *const rows = take(count, sizeof *rows);
    double *const values = take(count, sizeof *values);
    for (size_t i = 0; i < count; i++) {
        rows[i + 1] = (int)entries[i].row + 1;
        values[i + 1] = entries[i].value;
    }
    const int column = glp_add_cols(twin->theirs, 1);
    glp_set_col_bnds(twin->theirs, column, GLP_LO, 0, 0);
    glp_set_obj_coef(twin->theirs, column, cost);
    glp_set_mat_col(twin->theirs, column, (int)count, rows, values);
    free(rows);
    free(values);
}

struct cut_lp *__wrap_cut_lp_new(size_t rows, const double *rhs, size_t at_most) {
    struct twin *const twin = take(1, sizeof *twin);
    *twin = (struct twin){.ours = __real_cut_lp_new(rows, rhs, at_most),
                          .theirs = glp_create_prob(),
                          .rows = rows,
                          .at_most = at_most,
                          .rhs = take(rows, sizeof *twin->rhs),
                          .next = twins};
    assert_non_null(twin->ours);
    twins = twin;
    if (rows > 0) {
        glp_add_rows(twin->theirs, (int)rows);
    }
    for (size_t r = 0; r < rows; r++) {
        twin->rhs[r] = rhs[r];
        glp_set_row_bnds(twin->theirs, (int)r + 1, r < at_most ? GLP_LO : GLP_UP, rhs[r], rhs[r]);
    }
    for (size_t r = 0; r < at_most; r++) {
        add_column(twin, &(struct cut_lp_entry){r, 1}, 1, UNCOVERED_COST);
    }
    return (struct cut_lp *)twin->ours;
}

bool __wrap_cut_lp_add(struct cut_lp *lp, const struct cut_lp_entry *entries, size_t count,
                       double cost) {
    struct twin *const twin = twin_of(lp);
    add_column(twin, entries, count, cost);
    twin->columns++;
    return __real_cut_lp_add(lp, entries, count, cost);
}

/* What our columns cost, and what they leave uncovered. */
static double cost_of(const struct twin *twin) {
    double *const values = take(twin->columns, sizeof *values);
    double *const left = take(twin->rows, sizeof *left);
    int *const rows = take(twin->rows, sizeof *rows);
    double *const entries = take(twin->rows, sizeof *entries);
    double cost = 0;
    cut_lp_values(twin->ours, values);
    memcpy(left, twin->rhs, twin->rows * sizeof *left);
    for (size_t c = 0; c < twin->columns; c++) {
        const int column = (int)(twin->at_most + c) + 1;
        const int count = glp_get_mat_col(twin->theirs, column, rows, entries);
        cost += glp_get_obj_coef(twin->theirs, column) * values[c];
        for (int i = 1; i <= count; i++) {
            left[rows[i] - 1] -= entries[i] * values[c];
        }
    }
    for (size_t r = 0; r < twin->rows; r++) {
        /* no limit is passed */
        assert_true(r < twin->at_most || left[r] > -1e-6);
        cost += r < twin->at_most && left[r] > 1e-7 ? UNCOVERED_COST * left[r] : 0;
    }
    free(values);
    free(left);
    free(rows);
    free(entries);
    return cost;
}

/* What our values of the rows add up to: of the best solution as much as it costs. */
static double worth_of(const struct twin *twin) {
    double *const duals = take(twin->rows, sizeof *duals);
    double worth = 0;
    cut_lp_duals(twin->ours, duals);
    for (size_t r = 0; r < twin->rows; r++) {
        worth += duals[r] * twin->rhs[r];
    }
    free(duals);
    return worth;
}

bool __wrap_cut_lp_solve(struct cut_lp *lp, int64_t limit, int64_t *spent) {
    struct twin *const twin = twin_of(lp);
    if (!__real_cut_lp_solve(lp, limit, spent)) {
        return false;
    }
    glp_smcp parameters;
    glp_init_smcp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    if (twin->rows > 0 && glp_simplex(twin->theirs, &parameters) == 0 &&
        glp_get_status(twin->theirs) == GLP_OPT) {
        const double wanted = glp_get_obj_val(twin->theirs);
        const double near = 1e-6 * (1 + fabs(wanted));
        const double cost = cost_of(twin);
        const double worth = worth_of(twin);
        solved++;
        if (fabs(cost - wanted) > near || fabs(worth - wanted) > near) {
            print_error("%zu rows, %zu columns: %.9f, by its values %.9f; GLPK %.9f\n", twin->rows,
                        twin->columns, cost, worth, wanted);
            apart++;
        }
    }
    return true;
}

void __wrap_cut_lp_free(struct cut_lp *lp) {
    for (struct twin **at = &twins; lp != NULL && *at != NULL; at = &(*at)->next) {
        if ((*at)->ours == lp) {
            struct twin *const twin = *at;
            *at = twin->next;
            glp_delete_prob(twin->theirs);
            free(twin->rhs);
            free(twin);
            break;
        }
    }
    __real_cut_lp_free(lp);
}

/* NOLINTEND(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp) */

/* At least so many programs were compared since the last call, all alike. */
static void all_alike(size_t least) {
    assert_int_equal(apart, 0);
    assert_true(solved >= least);
    solved = 0;
}

static int is_instance(const struct dirent *entry) {
    const size_t size = strlen(entry->d_name);
    return size > 4 && strcmp(entry->d_name + size - 4, ".txt") == 0;
}

static void instances_of_boards(void **state) {
    (void)state;
    struct dirent **names = NULL;
    const int count = scandir(DOORCOST_SOURCE "/tests/cutting/1d", &names, is_instance, alphasort);
    assert_true(count > 0);
    for (int i = 0; i < count; i++) {
        char path[1024];
        struct cut_file file;
        struct strip_plan *plan = NULL;
        int line = 0;
        (void)snprintf(path, sizeof path, DOORCOST_SOURCE "/tests/cutting/1d/%s", names[i]->d_name);
        assert_true(cut_file_read(&file, path, true, false, &line));
        assert_int_equal(strip_plan_make(&file.job, CUT_EFFORT_SECOND / 50, &plan), CUT_DONE);
        strip_plan_free(plan);
        cut_file_clear(&file);
        free(names[i]);
    }
    free(names);
    all_alike(100);
}

/* The boards of a job's lumbers, by strips and by whole boards. */
static void plan_job(const char *path) {
    struct problems problems;
    struct job job;
    struct rates rates;
    struct estimate estimate;
    const struct estimate_request request = {
        .option = -1, .plans = {.effort = CUT_EFFORT_SECOND / 100, .always = true}};
    problems_init(&problems);
    assert_true(job_read(&job, &rates, path, &problems));
    assert_int_equal(estimate_make(&estimate, &rates, &job, request, &problems), ESTIMATE_OK);
    estimate_clear(&estimate);
    job_clear(&job);
    rates_clear(&rates);
    problems_clear(&problems);
}

static void boards_of_the_samples(void **state) {
    (void)state;
    plan_job(DOORCOST_SOURCE "/samples/kitchen/kitchen.ini");
    plan_job(DOORCOST_SOURCE "/samples/old-house/old-house.ini");
    plan_job(DOORCOST_SOURCE "/samples/metric/tea-kitchen.ini");
    all_alike(1000);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(instances_of_boards),
        cmocka_unit_test(boards_of_the_samples),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
