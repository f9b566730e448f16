/* SPDX-License-Identifier: MIT */
/* What of a result rests on each of its figures, worked out by hand: by how much the result grows
 * if that figure is doubled, at the slope that it has. */
#include "figure/tape.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#define MOST 6

/* One figure made of givens, which have two decimals; over: how many of them stand above the line,
 * or are added. Of a pick: what it goes by, then limits and values by turns. */
static const struct weigh_case {
    const char *name;
    enum figure_op op;
    size_t count, over;
    double of[MOST], rests[MOST];
} cases[] = {
    {"a sum takes one away", OP_SUM, 3, 2, {3, 2, 1.25}, {3, 2, -1.25}},
    {"a ratio, 6 x 5 / 4", OP_RATIO, 3, 2, {6, 5, 4}, {7.5, 7.5, -7.5}},
    {"nothing among factors moves nothing", OP_RATIO, 2, 2, {0, 5}, {0, 0}},
    {"a total, 3 x 2 and 4 x 5.50", OP_TOTAL, 4, 4, {3, 2, 4, 5.5}, {6, 6, 22, 22}},
    {"the larger, which is the first", OP_LARGER, 2, 2, {5, 3}, {5, 0}},
    {"the larger, which is the second", OP_LARGER, 2, 2, {3, 5}, {0, 5}},
    {"the smaller", OP_SMALLER, 2, 2, {5, 3}, {0, 3}},
    {"up to a step goes with what is raised", OP_UP, 2, 2, {7.25, 5}, {7.25, 0}},
    {"of a pick upward only the value", OP_PICK_UPTO, 5, 5, {15, 10, 7, 20, 8}, {0, 0, 0, 0, 8}},
    {"a value like its limit", OP_PICK_UPTO, 5, 5, {15, 10, 7, 20, 20}, {0, 0, 0, 0, 20}},
    {"a value like what it goes by", OP_PICK_FROM, 5, 5, {15, 10, 15, 20, 8}, {0, 0, 15, 0, 0}},
};

static fig make(struct tape *tape, const struct weigh_case *c, const fig *f) {
    switch (c->op) {
    case OP_RATIO:
        return fig_ratio_to(tape, "made", UNIT_FACTOR, 6, (figs){{f[0], f[1]}},
                            (figs){{c->over < c->count ? f[2] : (fig){0}}});
    case OP_TOTAL:
        return fig_total(tape, "made", UNIT_FACTOR, (fig[]){f[0], f[2]}, (fig[]){f[1], f[3]}, 2);
    case OP_LARGER:
        return fig_larger(tape, "made", f[0], f[1]);
    case OP_SMALLER:
        return fig_smaller(tape, "made", f[0], f[1]);
    case OP_UP:
        return fig_up(tape, "made", f[0], f[1]);
    case OP_PICK_UPTO:
        return fig_pick_upto(tape, "made", f[0], (fig[]){f[1], f[3]}, (fig[]){f[2], f[4]}, 2);
    case OP_PICK_FROM:
        return fig_pick_from(tape, "made", f[0], (fig[]){f[1], f[3]}, (fig[]){f[2], f[4]}, 2);
    default:
        return fig_sum(tape, "made", UNIT_FACTOR, (fig[]){f[0], f[1], fig_minus(f[2])}, 3);
    }
}

/* Each as it stands, then three of them less 1: the slopes are handed on. */
static int weigh(const struct weigh_case *c, int times) {
    struct tape tape;
    fig f[MOST] = {{0}};
    int wrong = 0;
    tape_init(&tape, true);
    for (size_t i = 0; i < c->count; i++) {
        f[i] = tape_given(&tape, "given", UNIT_FACTOR, 2, (int64_t)lround(c->of[i] * 100),
                          (struct place){.line = (uint32_t)i + 1});
    }
    fig result = make(&tape, c, f);
    if (times > 1) {
        const fig three = tape_constant(&tape, "three", UNIT_FACTOR, 0, times, "test");
        const fig one = tape_constant(&tape, "one", UNIT_FACTOR, 0, 1, "test");
        const fig all =
            fig_ratio(&tape, "three of them", UNIT_FACTOR, (figs){{result, three}}, (figs){{{0}}});
        result = fig_plus(&tape, "less one", all, fig_minus(one));
    }
    const fig later = fig_plus(&tape, "figured after the result", f[0], f[0]);
    double *const rests = tape_weigh(&tape, result);
    assert_non_null(rests);
    for (size_t i = 0; i < c->count; i++) {
        if (fabs(rests[f[i].id] - times * c->rests[i]) > 1e-6) {
            (void)fprintf(stderr, "%s: %g rests on %zu, wanted %g\n", c->name, rests[f[i].id], i,
                          times * c->rests[i]);
            wrong++;
        }
    }
    assert_true(rests[later.id] == 0);
    assert_true(rests[0] == 0); /* no figure has that number */
    free(rests);
    tape_clear(&tape);
    return wrong;
}

static void test_rests(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        wrong += weigh(&cases[i], 1);
        wrong += weigh(&cases[i], 3);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_rests)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
