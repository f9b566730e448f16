/* SPDX-License-Identifier: MIT */
/* One way of each thing: against every pick there is, against GLPK, and against published
 * knapsacks. */
#include "cmocka_all.h"
#include "price/pick.h"

#include <glpk.h>
#include <math.h>
#include <stdbool.h>
#include <stdio.h>

#define MOST_THINGS 24
#define MOST_WAYS   4

struct problem {
    struct pick_way ways[MOST_THINGS][MOST_WAYS];
    struct pick_thing things[MOST_THINGS];
    size_t count;
    int64_t limit;
};

/* A generator of our own, so that every machine tries the same. */
static uint32_t next(uint32_t *seed, uint32_t below) {
    *seed = *seed * 1664525U + 1013904223U;
    return (*seed >> 8) % below;
}

/* `coarse`: of few different numbers, so that picks are often equal. */
static void make_problem(struct problem *p, size_t count, bool coarse, uint32_t *seed) {
    const int64_t step = coarse ? 50 : 1;
    int64_t least = 0;
    int64_t most = 0;
    p->count = count;
    for (size_t i = 0; i < count; i++) {
        int64_t low = INT64_MAX;
        int64_t high = INT64_MIN;
        p->things[i] = (struct pick_thing){p->ways[i], 1 + next(seed, MOST_WAYS)};
        for (size_t w = 0; w < p->things[i].count; w++) {
            struct pick_way *const way = &p->ways[i][w];
            way->hours = ((int64_t)next(seed, 400) - 100) / step * step;
            way->money = ((int64_t)next(seed, 60000) - 20000) / step * step;
            low = way->hours < low ? way->hours : low;
            high = way->hours > high ? way->hours : high;
        }
        least += low;
        most += high;
    }
    p->limit = least - 20 + (int64_t)next(seed, (uint32_t)(most - least) + 40);
}

static struct pick_way sum_of(const struct problem *p, const size_t *picked) {
    struct pick_way sum = {0};
    for (size_t i = 0; i < p->count; i++) {
        assert_true(picked[i] < p->things[i].count);
        sum.hours += p->ways[i][picked[i]].hours;
        sum.money += p->ways[i][picked[i]].money;
    }
    return sum;
}

/* Every pick there is; whether one is within the limit, and the best of all. */
static bool try_all(const struct problem *p, struct pick_way *best) {
    size_t picked[MOST_THINGS] = {0};
    bool within = false;
    bool any = false;
    size_t i = 0;
    while (i < p->count) {
        const struct pick_way sum = sum_of(p, picked);
        const bool fits = sum.hours <= p->limit;
        const bool better =
            fits ? sum.money < best->money || (sum.money == best->money && sum.hours < best->hours)
                 : sum.hours < best->hours || (sum.hours == best->hours && sum.money < best->money);
        if (!any || (fits && !within) || (fits == within && better)) {
            *best = sum;
            within = fits;
            any = true;
        }
        for (i = 0; i < p->count && ++picked[i] == p->things[i].count; i++) {
            picked[i] = 0;
        }
    }
    return within;
}

static void test_all(void **state) {
    uint32_t seed = 20261127;
    int over = 0;
    (void)state;
    for (int n = 0; n < 4000; n++) {
        struct problem p;
        size_t picked[MOST_THINGS];
        struct pick_way best = {0};
        make_problem(&p, 1 + next(&seed, 6), n % 2 == 0, &seed);
        const bool within = try_all(&p, &best);
        assert_int_equal(pick_make(p.things, p.count, p.limit, picked),
                         within ? PICK_WITHIN : PICK_OVER);
        const struct pick_way found = sum_of(&p, picked);
        assert_int_equal(found.money, best.money);
        assert_int_equal(found.hours, best.hours);
        over += within ? 0 : 1;
    }
    assert_in_range(over, 50, 2000); /* both sorts were tried */
}

/* The least money as GLPK finds it, by branch and bound over 0 and 1; NAN: none is within. */
static double ask_glpk(const struct problem *p) {
    glp_prob *const lp = glp_create_prob();
    glp_iocp parameters;
    int columns = 0;
    int indices[3];
    double values[3];
    glp_add_rows(lp, (int)p->count + 1);
    for (size_t i = 0; i < p->count; i++) {
        glp_set_row_bnds(lp, (int)i + 1, GLP_FX, 1, 1);
    }
    const int hours = (int)p->count + 1;
    glp_set_row_bnds(lp, hours, GLP_UP, 0, (double)p->limit);
    for (size_t i = 0; i < p->count; i++) {
        for (size_t w = 0; w < p->things[i].count; w++) {
            columns = glp_add_cols(lp, 1);
            glp_set_col_kind(lp, columns, GLP_BV);
            glp_set_obj_coef(lp, columns, (double)p->ways[i][w].money);
            indices[1] = (int)i + 1;
            values[1] = 1;
            indices[2] = hours;
            values[2] = (double)p->ways[i][w].hours;
            glp_set_mat_col(lp, columns, 2, indices, values);
        }
    }
    glp_init_iocp(&parameters);
    parameters.msg_lev = GLP_MSG_OFF;
    parameters.presolve = GLP_ON;
    const int failed = glp_intopt(lp, &parameters);
    const double found = failed == 0 && glp_mip_status(lp) == GLP_OPT ? glp_mip_obj_val(lp) : NAN;
    glp_delete_prob(lp);
    return found;
}

static void test_glpk(void **state) {
    uint32_t seed = 4711;
    int within = 0;
    (void)state;
    for (int n = 0; n < 60; n++) {
        struct problem p;
        size_t picked[MOST_THINGS];
        make_problem(&p, 8 + next(&seed, 17), n % 2 == 0, &seed);
        const enum pick_result result = pick_make(p.things, p.count, p.limit, picked);
        const double theirs = ask_glpk(&p);
        assert_int_equal(result == PICK_OVER, isnan(theirs));
        if (result == PICK_WITHIN) {
            const struct pick_way found = sum_of(&p, picked);
            assert_true(found.hours <= p.limit);
            assert_true(fabs((double)found.money - theirs) < 0.5);
            within++;
        }
    }
    assert_in_range(within, 30, 60);
}

/* Knapsacks of 0 and 1: P01, P02 and P07 of the data sets KNAPSACK_01, Florida State University,
 * with their best picks, from memory: each is taken (1) or left (0). GLPK finds the same profit. */
static void test_published(void **state) {
    static const struct {
        int64_t capacity, profit;
        size_t count;
        int64_t weights[15], profits[15];
        size_t best[15];
    } published[] = {
        {165,
         309,
         10,
         {23, 31, 29, 44, 53, 38, 63, 85, 89, 82},
         {92, 57, 49, 68, 60, 43, 67, 84, 87, 72},
         {1, 1, 1, 1, 0, 1, 0, 0, 0, 0}},
        {26, 51, 5, {12, 7, 11, 8, 9}, {24, 13, 23, 15, 16}, {0, 1, 1, 1, 0}},
        {750,
         1458,
         15,
         {70, 73, 77, 80, 82, 87, 90, 94, 98, 106, 110, 113, 115, 118, 120},
         {135, 139, 149, 150, 156, 163, 173, 184, 192, 201, 210, 214, 221, 229, 240},
         {1, 0, 1, 0, 1, 0, 1, 1, 1, 0, 0, 0, 0, 1, 1}},
    };
    (void)state;
    for (size_t n = 0; n < sizeof published / sizeof *published; n++) {
        struct problem p = {.count = published[n].count, .limit = published[n].capacity};
        size_t picked[MOST_THINGS];
        for (size_t i = 0; i < p.count; i++) {
            p.ways[i][1] = (struct pick_way){published[n].weights[i], -published[n].profits[i]};
            p.things[i] = (struct pick_thing){p.ways[i], 2};
        }
        assert_int_equal(pick_make(p.things, p.count, p.limit, picked), PICK_WITHIN);
        assert_int_equal(-sum_of(&p, picked).money, published[n].profit);
        assert_memory_equal(picked, published[n].best, p.count * sizeof *picked);
        assert_true(fabs(ask_glpk(&p) + (double)published[n].profit) < 0.5);
    }
}

/* Nothing is cut off in silence: 2^23 sums, none of which betters another. */
static void test_too_many(void **state) {
    struct problem p = {.count = 23, .limit = INT64_C(1) << 40};
    size_t picked[MOST_THINGS];
    (void)state;
    for (size_t i = 0; i < p.count; i++) {
        p.ways[i][1] = (struct pick_way){INT64_C(1) << i, -(INT64_C(1) << i)};
        p.things[i] = (struct pick_thing){p.ways[i], 2};
    }
    assert_int_equal(pick_make(p.things, p.count, p.limit, picked), PICK_TOO_MANY);
    assert_int_equal(pick_make(p.things, 12, p.limit, picked), PICK_WITHIN);
    assert_int_equal(pick_make(p.things, 0, 0, picked), PICK_WITHIN);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_all),
        cmocka_unit_test(test_glpk),
        cmocka_unit_test(test_published),
        cmocka_unit_test(test_too_many),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
