/* SPDX-License-Identifier: MIT */
/* What becomes of the boards of a plan: one board, worked out by hand as docs/cutting.md has it. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <string.h>

#include <cmocka.h>

/* Boards 48 long, their ends trimmed by 1 in each, both edges straightened by 1/4; kerf 1/8. */
#define BOARD(width, more)                                                                         \
    "shop|price lumber by = plan", "saw|straighten = 1/4",                                         \
        ("lumber poplar|board lengths = 4 ft\nend trim = 1\nboard widths = " width "\n" more),     \
        "make|style = slab\nslab = poplar"

static const struct bench_case cases[] = {
    /* In square inches, 144 to the board foot: 288 in all, 150 of them the part as it is cut,
     * 141.375 of it finished. Trimmed: 2 x 6 of ends and 2 x 1/4 x 46 of edges, 35. Kerf: the rip
     * of 46 and the cut of 5, 1/8 x 51. Defects: a tenth of 46 x 5 3/8. */
    {"a slab of 4 7/8 x 29, and less than 12 in left of its strip",
     {BOARD("6", "defects = 10 %")},
     "D1,4 7/8,29\n",
     {LUMBER(0, plan.boards, "1"), LUMBER(0, plan.bought, "2 bf"), LUMBER(0, plan.measured, "2"),
      LUMBER(0, plan.rough, "1.0417"), LUMBER(0, plan.allowances, "0.0599"),
      LUMBER(0, plan.trim, "0.2431"), LUMBER(0, plan.kerf, "0.0443"),
      LUMBER(0, plan.defects, "0.1717"), LUMBER(0, plan.keep_worth, "0"),
      LUMBER(0, plan.offcuts, "0.4992"), LUMBER(0, plan.tally, "0"), LUMBER(0, plan.cuts, "6"),
      LUMBER(0, plan.at_price, "8"), LUMBER(0, plan.bound, "8"), LUMBER(0, plan.gap, "0"),
      LUMBER(0, implied_waste, "103.7075"), LUMBER(0, over_plan, "0"),
      LUMBER(0, short_of_plan, "1")}},
    /* 5 x 48 are 1 2/3 sq ft of surface, which a yard counts as 2; of the strip 46 - 30 1/8 in are
     * left, 4 wide. Of 0.7804 bf net (2 - 0.4410 - 0.7804) / 0.7804 are waste. */
    {"a narrower one, and an offcut worth keeping",
     {BOARD("5", "defects")},
     "D1,3 7/8,29\n",
     {LUMBER(0, plan.boards, "1"), LUMBER(0, plan.bought, "2 bf"),
      LUMBER(0, plan.measured, "1.6667"), LUMBER(0, plan.rough, "0.8333"),
      LUMBER(0, plan.trim, "0.2292"), LUMBER(0, plan.kerf, "0.0434"), LUMBER(0, plan.defects, "0"),
      LUMBER(0, plan.keep_worth, "0.441"), LUMBER(0, plan.offcuts, "0.5608"),
      LUMBER(0, plan.tally, "0.3333"), LUMBER(0, implied_waste, "99.7693")}},
    /* two boards of 6 in, 2 bf each, and a minimum of 6 bf */
    {"the yard's minimum is more than the plan",
     {BOARD("6", "minimum = 6 bf")},
     "id,count,width,height\nD1,2,4 7/8,29\n",
     {LUMBER(0, plan.bought, "4"), LUMBER(0, by_plan.bought, "6"), LUMBER(0, over_plan, "2"),
      LUMBER(0, by_factor.bought, "6"), LUMBER(0, short_of_plan, "0"),
      LUMBER(0, by_plan.cost, "24")}},
};

static void test_boards(void **state) {
    (void)state;
    bench_run(cases, COUNT(cases), BENCH_INCH);
}

/* What a plan of twice the thickness comes to is twice as much, but for the last decimals. */
static int twice(const char *name, enum bench_unit unit, const char *const *thin,
                 const char *const *thick) {
    static const struct want volumes[] = {
        LUMBER(0, plan.measured, NULL), LUMBER(0, plan.rough, NULL),
        LUMBER(0, plan.trim, NULL),     LUMBER(0, plan.kerf, NULL),
        LUMBER(0, plan.defects, NULL),  LUMBER(0, plan.keep_worth, NULL)};
    struct bench a;
    struct bench b;
    const char *const doors = unit == BENCH_MM ? "D1,100,725\n" : "D1,3 7/8,29\n";
    bench_open(&a, name, unit, thin, doors);
    bench_open(&b, name, unit, thick, doors);
    bench_sound(&a);
    bench_sound(&b);
    for (size_t i = 0; i < COUNT(volumes); i++) {
        const char *const of_a = bench_thing(&a, &volumes[i]);
        const char *const of_b = bench_thing(&b, &volumes[i]);
        fig one;
        fig two;
        if (of_a == NULL || of_b == NULL) {
            bench_wrong(&b, "there is no %s", volumes[i].what);
            continue;
        }
        memcpy(&one, of_a + volumes[i].at, sizeof one);
        memcpy(&two, of_b + volumes[i].at, sizeof two);
        const int64_t value = tape_amount(&a.estimate.tape, one);
        const int64_t off = tape_amount(&b.estimate.tape, two) - 2 * value;
        if (value < 0 || off < -2 || off > 2) {
            bench_wrong(&b, "%s is %lld more than twice %lld", volumes[i].what, (long long)off,
                        (long long)value);
        }
    }
    (void)bench_close(&a);
    return bench_close(&b);
}

static void test_thickness(void **state) {
    (void)state;
#define BOARD_MM                                                                                   \
    "shop|price lumber by = plan", "saw|straighten = 6",                                           \
        ("lumber poplar|board lengths = 1200\nend trim = 25\nboard widths = 125\n"                 \
         "defects = 10 %"),                                                                        \
        "make|style = slab\nslab = poplar", "door slab|thickness = 20"
    static const char *const thin[] = {BOARD("5", "defects = 10 %"),
                                       "lumber poplar|thickness = 5/4", NULL};
    static const char *const thick[] = {BOARD("5", "defects = 10 %"),
                                        "lumber poplar|thickness = 10/4", NULL};
    static const char *const thin_mm[] = {BOARD_MM, "lumber poplar|thickness = 27", NULL};
    static const char *const thick_mm[] = {BOARD_MM, "lumber poplar|thickness = 54", NULL};
    assert_int_equal(twice("5/4 and 10/4", BENCH_INCH, thin, thick), 0);
    assert_int_equal(twice("27 and 54 mm", BENCH_MM, thin_mm, thick_mm), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_boards),
                                       cmocka_unit_test(test_thickness)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
