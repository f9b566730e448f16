/* SPDX-License-Identifier: MIT */
/* What papers say of draws, of chances made by hand: how they were drawn, what moves together, what
 * was held, risks by their keys, the contingency in money and percent. */
#include "support.h"

#include "report/words/chance_words.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define MOST_INPUTS 5

struct told_case {
    const char *name;
    size_t drawn, held, idle, planned;
    enum chance_shape shape;
    int32_t groups[MOST_INPUTS]; /* of those that are drawn, -1: by itself */
    const char *words;
    const char *notes; /* the first ones, parted by ` | `, behind them that on opinions */
};

#define IDLE_ "without effect on the cost of this job."
#define HELD_                                                                                      \
    "Not drawn but held at the likely value, as more than amounts hangs on it (sizes, how the "    \
    "job "                                                                                         \
    "is made, a cutting plan): "
#define PLANS_                                                                                     \
    "Cutting plans are held as planned with the likely values; containers are chosen anew in "     \
    "each "                                                                                        \
    "draw."
#define NONE_                                                                                      \
    "Nothing is drawn: no range of the rates moves the cost of this job in a way that can be "     \
    "drawn."

static const struct told_case cases[] = {
    {"nothing", 0, 0, 0, 0, CHANCE_PERT, {-1}, NONE_, ""},
    {"nothing but what is held",
     0,
     2,
     0,
     0,
     CHANCE_PERT,
     {-1},
     NONE_,
     HELD_ "[lumber poplar] price, [lumber poplar] price. | "},
    {"one", 1, 0, 0, 0, CHANCE_PERT, {-1}, "500 draws of 1 range, by PERT, seed 7.", ""},
    {"one as a triangle",
     1,
     0,
     1,
     0,
     CHANCE_TRIANGLE,
     {-1},
     "500 draws of 1 range, as triangles, seed 7.",
     "1 range " IDLE_ " | "},
    {"two by themselves",
     2,
     0,
     2,
     0,
     CHANCE_PERT,
     {-1, -1},
     "500 draws of 2 ranges at once, by PERT, seed 7; taken as independent: each moves by itself.",
     "2 ranges " IDLE_ " | "},
    {"two that move together",
     2,
     0,
     0,
     0,
     CHANCE_PERT,
     {0, 0},
     "500 draws of 2 ranges at once, by PERT, seed 7; taken to move together: 2 of sheet "
     "at 0.6.",
     ""},
    {"two of one group, one by itself",
     3,
     0,
     0,
     1,
     CHANCE_PERT,
     {0, -1, 0},
     "500 draws of 3 ranges at once, by PERT, seed 7; taken to move together: 2 of sheet "
     "at 0.6; each other by itself.",
     PLANS_ " | "},
    {"one alone of its group moves by itself",
     2,
     0,
     0,
     0,
     CHANCE_PERT,
     {0, -1},
     "500 draws of 2 ranges at once, by PERT, seed 7; taken as independent: each moves by itself.",
     ""},
    {"two groups",
     4,
     1,
     0,
     0,
     CHANCE_PERT,
     {0, 1, 1, 0},
     "500 draws of 4 ranges at once, by PERT, seed 7; taken to move together: 2 of sheet "
     "at 0.6, 2 of lumber at 1.",
     HELD_ "[lumber poplar] price. | "},
};

#define OPINION_                                                                                   \
    "A range is an opinion until it is measured, and so is all that is drawn from it. What has "   \
    "no "                                                                                          \
    "range does not move here."

static void check_notes(struct bench *bench, const struct chance *chance, const char *wanted,
                        struct pool *pool) {
    const char *const *const notes = chance_notes(chance, pool);
    const char *all = "";
    assert_non_null(notes);
    for (size_t i = 0; notes[i] != NULL; i++) {
        all = pool_words(pool, "%s%s%s", all, i == 0 ? "" : " | ", notes[i]);
    }
    const char *const expected = pool_words(pool, "%s%s", wanted, OPINION_);
    if (strcmp(all, expected) != 0) {
        bench_wrong(bench, "notes are\n  %s, expected\n  %s", all, expected);
    }
}

static void test_words(void **state) {
    static const char *const edits[] = {"lumber poplar|price = 4.00 per bf (3.50 to 4.50)",
                                        "lumber thick-poplar|price = 5.00 per bf (4 to 6)",
                                        "sheet ply|price = 50.00 per sheet (45 to 60)",
                                        "sheet board|price = 80.00 per sheet (70 to 90)",
                                        "chance|together = sheet at 0.6, lumber at 1",
                                        NULL};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        const struct told_case *const c = &cases[i];
        struct chance_input inputs[MOST_INPUTS] = {{0}};
        struct bench bench;
        struct pool pool;
        bench_open(&bench, c->name, BENCH_INCH, edits, "A,15,30\n");
        bench_sound(&bench);
        assert_int_equal(bench.rates.chance.together_count, 2);
        pool_init(&pool);
        const struct rate_number *number = NULL;
        for (size_t n = 0; n < bench.rates.numbers.count; n++) {
            const struct rate_number *const is = &bench.rates.numbers.list[n];
            number =
                strcmp(is->section, "lumber poplar") == 0 && rate_number_ranged(is) ? is : number;
        }
        assert_non_null(number);
        const size_t count = c->drawn + c->held + c->idle;
        assert_true(count <= MOST_INPUTS);
        for (size_t n = 0; n < count; n++) {
            inputs[n] = (struct chance_input){.number = number,
                                              .state = n < c->drawn             ? CHANCE_DRAWN
                                                       : n < c->drawn + c->held ? CHANCE_HELD
                                                                                : CHANCE_NO_EFFECT,
                                              .group = n < c->drawn ? c->groups[n] : -1};
        }
        const struct chance chance = {.inputs = inputs,
                                      .count = count,
                                      .drawn = c->drawn,
                                      .held = c->held,
                                      .planned = c->planned,
                                      .draws = 500,
                                      .seed = 7,
                                      .shape = c->shape};
        const char *const words = chance_drawn_words(&chance, &bench.rates, &pool);
        if (strcmp(words, c->words) != 0) {
            bench_wrong(&bench, "is\n  %s, expected\n  %s", words, c->words);
        }
        check_notes(&bench, &chance, c->notes, &pool);
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Each risk is of its own member. */
static void test_risks(void **state) {
    static const char *const keys[] = {"below direct cost", "loses money",
                                       "earns less than wanted"};
    const struct chance chance = {.under_direct = 11, .under_full = 222, .under_wanted = 333};
    static const int32_t wanted[] = {11, 222, 333};
    (void)state;
    for (int r = 0; r < CHANCE_RISKS; r++) {
        assert_int_equal(chance_risk((enum chance_risk)r, &chance), wanted[r]);
        assert_string_equal(chance_risk_key((enum chance_risk)r), keys[r]);
        assert_true(strlen(chance_risk_words((enum chance_risk)r)) > 20);
    }
}

/* A confidence without noughts at its end, money at its cents, a percent at a tenth. */
static void test_contingency(void **state) {
    static const struct {
        int32_t confidence;
        const char *edit, *words;
    } rows[] = {
        {8000, NULL,
         "Direct cost is at most 1234.50 in 80 % of the draws: 100.05 more than with the likely "
         "values, a contingency of 8.8 % (the rates have none)."},
        {9550, "shop|contingency = 3 %",
         "Direct cost is at most 1234.50 in 95.5 % of the draws: 100.05 more than with the likely "
         "values, a contingency of 8.8 % (the rates have 3 %)."},
        {9999, "shop|contingency = 0 %",
         "Direct cost is at most 1234.50 in 99.99 % of the draws: 100.05 more than with the likely "
         "values, a contingency of 8.8 % (the rates have 0 %)."},
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        const char *const edits[] = {rows[i].edit, NULL};
        const struct chance chance = {.confidence = rows[i].confidence,
                                      .direct = {.sure = 123450},
                                      .contingency = 10005,
                                      .contingency_rate = 88};
        struct bench bench;
        struct pool pool;
        bench_open(&bench, rows[i].words, BENCH_INCH, edits, "A,15,30\n");
        bench_sound(&bench);
        pool_init(&pool);
        const char *const words = chance_contingency_words(&chance, &bench.estimate, &pool);
        if (strcmp(words, rows[i].words) != 0) {
            bench_wrong(&bench, "is %s", words);
        }
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_words),
        cmocka_unit_test(test_risks),
        cmocka_unit_test(test_contingency),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
