/* SPDX-License-Identifier: MIT */
/* What is asked about and, as much, what is not: a question about a right input is a defect. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

/* edits and doors as in struct bench_case. */
struct question_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *id;
    bool asked;
};

static void run(const struct question_case *cases, size_t count) {
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct bench bench;
        bench_open(&bench, cases[i].name, BENCH_INCH, cases[i].edits, cases[i].doors);
        if (problems_count(&bench.problems, SEVERITY_ERROR) > 0) {
            bench_wrong(&bench, "has errors");
        }
        if (bench_has(&bench, cases[i].id) != cases[i].asked) {
            bench_wrong(&bench, cases[i].asked ? "%s is not asked" : "%s is asked", cases[i].id);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

#define FRONTS "id,use,width,height\nF1,drawer front,18,6\n"
static const struct question_case front_cases[] = {
    {"one front of three is swapped",
     {NULL},
     FRONTS "F2,drawer front,18,6\nF3,drawer front,6,18\n",
     "front-high",
     true},
    {"a false front among drawer fronts",
     {NULL},
     FRONTS "F2,false front,6,18\n",
     "front-high",
     true},
    {"two pull-outs",
     {NULL},
     FRONTS "F2,drawer front,8,24\nF3,drawer front,8,24\n",
     "front-high",
     false},
    {"one front alone",
     {NULL},
     "id,use,width,height\nF1,drawer front,8,24\nD1,door,18,30\n",
     "front-high",
     false},
    {"a square front", {NULL}, FRONTS "F2,drawer front,18,18\n", "front-high", false},
};

static void test_fronts(void **state) {
    (void)state;
    run(front_cases, COUNT(front_cases));
}

#define EFFECT "without-effect"
#define FITTED                                                                                     \
    "make|hinge = cup\npull = knob", "hardware cup|price = 3 each", "hardware knob|price = 2 each"
#define OVERLAY "make|measure = opening\noverlay = 1/2"
static const struct question_case effect_cases[] = {
    {"the make's hinge and pull among fronts and panels",
     {FITTED},
     "id,use,width,height\nF1,false front,18,6\nE1,end panel,18,30\n",
     EFFECT,
     false},
    {"a hinge on a false front",
     {FITTED},
     "id,use,width,height,hinge\nF1,false front,18,6,cup\n",
     EFFECT,
     true},
    {"no hinge on a false front",
     {FITTED},
     "id,use,width,height,hinge\nF1,false front,18,6,none\n",
     EFFECT,
     false},
    {"a hinge on a door", {FITTED}, "id,width,height,hinge\nD1,18,30,cup\n", EFFECT, false},
    {"a slab style where no front becomes a slab",
     {"door plain|slab style = slab"},
     "D1,18,30\n",
     "without-effect",
     true},
    {"grain of a panel whose sheet has none",
     {"sheet ply|grain = none"},
     "id,width,height,grain\nD1,18,30,horizontal\n",
     EFFECT,
     true},
    {"grain of a panel whose sheet has some",
     {"sheet ply|grain = length"},
     "id,width,height,grain\nD1,18,30,horizontal\n",
     EFFECT,
     false},
    {"grain of solid panels",
     {"make|style = solid\npanel = poplar"},
     "id,width,height,grain\nD1,18,30,horizontal\n",
     EFFECT,
     false},
    {"grain of glass",
     {"make|style = glazed"},
     "id,width,height,grain\nD1,18,30,vertical\n",
     EFFECT,
     true},
    {"grain of a sheet without, but with some in an option",
     {"sheet ply|grain = none", "sheet board|grain = length", "option other|panel = board"},
     "id,width,height,grain\nD1,18,30,horizontal\n",
     EFFECT,
     false},
    {"a hinge side of a drawer front",
     {FITTED},
     "id,use,width,height,hinge side\nF1,drawer front,18,6,left\n",
     EFFECT,
     true},
    {"a pull on an end panel",
     {FITTED},
     "id,use,width,height,pull\nE1,end panel,18,30,knob\n",
     EFFECT,
     true},
    {"a pull on a drawer front",
     {FITTED},
     "id,use,width,height,pull,pulls\nF1,drawer front,30,8,knob,2\n",
     EFFECT,
     false},
    {"pulls and no pull", {NULL}, "id,width,height,pulls\nD1,18,30,2\n", EFFECT, true},
    {"no pulls and no pull", {NULL}, "id,width,height,pulls\nD1,18,30,0\n", EFFECT, false},
    {"pulls that an option has",
     {FITTED, "make|pull = none", "option knobs|pull = knob"},
     "id,width,height,pulls\nD1,18,30,2\n",
     EFFECT,
     false},
    {"a pair hinged left",
     {NULL},
     "id,width,height,leaves,hinge side\nD1,18,30,2,left\n",
     EFFECT,
     true},
    {"a pair hinged at the top",
     {NULL},
     "id,width,height,leaves,opens\nD1,18,30,2,lift up\n",
     EFFECT,
     false},
    {"a pair", {NULL}, "id,width,height,hinge side\nD1,18,30,pair\n", EFFECT, false},
    {"a panel of a slab", {NULL}, "id,width,height,style,panel\nD1,18,30,slab,ply\n", EFFECT, true},
    {"a frame of a slab",
     {NULL},
     "id,width,height,style,frame\nD1,18,30,slab,poplar\n",
     EFFECT,
     true},
    {"mid rails of a slab",
     {NULL},
     "id,width,height,style,mid rails\nD1,18,30,slab,1\n",
     EFFECT,
     true},
    {"no mid rails of a slab",
     {NULL},
     "id,width,height,style,mid rails\nD1,18,30,slab,0\n",
     EFFECT,
     false},
    {"mid stiles of a slab",
     {NULL},
     "id,width,height,style,mid stiles\nD1,18,30,slab,1\n",
     EFFECT,
     true},
    {"rows of a slab", {NULL}, "id,width,height,style,rows\nD1,18,30,slab,10 | 12\n", EFFECT, true},
    {"mid rails of a low drawer front",
     {"make|style = drawer"},
     "id,use,width,height,mid rails\nF1,drawer front,18,6,1\n",
     EFFECT,
     true},
    {"a panel of a slab that an option frames",
     {"option framed|style = plain", "make|style = slab"},
     "id,width,height,panel,mid rails\nD1,18,30,ply,1\n",
     EFFECT,
     false},
    {"a slab of a framed door", {NULL}, "id,width,height,slab\nD1,18,30,board\n", EFFECT, true},
    {"a slab of a low drawer front",
     {"make|style = drawer"},
     "id,use,width,height,slab\nF1,drawer front,18,6,board\n",
     EFFECT,
     false},
    {"glass of a door with a panel",
     {NULL},
     "id,width,height,glass\nD1,18,30,clear\n",
     EFFECT,
     true},
    {"glass of a glazed door",
     {NULL},
     "id,width,height,style,glass\nD1,18,30,glazed,clear\n",
     EFFECT,
     false},
    {"the panel of a solid door where the job names solid panels",
     {"make|style = solid\nsolid panel = poplar"},
     "id,width,height,panel\nD1,18,30,thick-poplar\n",
     EFFECT,
     true},
    {"the panel of a solid door",
     {"make|style = solid\npanel = poplar"},
     "id,width,height,panel\nD1,18,30,thick-poplar\n",
     EFFECT,
     false},
    {"a solid panel of a door with a sheet",
     {NULL},
     "id,width,height,solid panel\nD1,18,30,poplar\n",
     EFFECT,
     true},
    {"the panel of a door bought in",
     {"make|style = louver", "door louver|kind = open\nthickness = 3/4\nbought in = 24 per sqft"},
     "id,width,height,panel\nD1,18,30,ply\n",
     EFFECT,
     true},
    {"an overlay of a measured door",
     {NULL},
     "id,width,height,overlay left\nD1,18,30,1/4\n",
     EFFECT,
     true},
    {"an overlay of an opening",
     {OVERLAY},
     "id,width,height,overlay left\nD1,18,30,1/4\n",
     EFFECT,
     false},
    {"an overlay of an end panel",
     {OVERLAY},
     "id,use,width,height,overlay left\nE1,end panel,18,30,1/4\n",
     EFFECT,
     true},
    {"an end panel measured as an opening",
     {OVERLAY},
     "id,use,width,height,measure\nE1,end panel,18,30,opening\n",
     EFFECT,
     true},
    {"an end panel measured as a door",
     {OVERLAY},
     "id,use,width,height,measure\nE1,end panel,18,30,door\n",
     EFFECT,
     false},
    {"a gap of one leaf", {OVERLAY}, "id,width,height,gap\nD1,18,30,1/16\n", EFFECT, true},
    {"a gap of a pair", {OVERLAY}, "id,width,height,leaves,gap\nD1,30,30,2,1/16\n", EFFECT, false},
};

static void test_effect(void **state) {
    (void)state;
    run(effect_cases, COUNT(effect_cases));
}

#define CLEAR "clear-on-board"
#define OILED                                                                                      \
    "coating sealer|spread by = wet film\nwet film = 4 mil\nsizes = 1 gal at 40.00",               \
        "spray gun|transfer efficiency = 65 %", "finish clear|spray = gun\ncoats = sealer x 2"
#define BOARD "thickness = 1/4\nsize = 48 x 96\nprice = 30.00 per sheet\nwaste = 0 % added"
static const struct question_case clear_cases[] = {
    {"clear on MDF",
     {OILED, "make|finish = clear\npanel = mdf", ("sheet mdf|" BOARD)},
     "D1,18,30\n",
     CLEAR,
     true},
    {"clear on what the words call MDF",
     {OILED, "make|finish = clear\npanel = thin", ("sheet thin|" BOARD "\nwords = MDF board")},
     "D1,18,30\n",
     CLEAR,
     true},
    {"clear on a slab of MDF, in an option",
     {OILED, "make|style = slab\nslab = mdf", "option bright|finish = clear", ("sheet mdf|" BOARD)},
     "D1,18,30\n",
     CLEAR,
     true},
    {"a finish that its words call clear",
     {OILED, "make|finish = satin\npanel = mdf", ("sheet mdf|" BOARD),
      "finish satin|spray = gun\ncoats = sealer x 1\nwords = clear, satin"},
     "D1,18,30\n",
     CLEAR,
     true},
    {"bare MDF",
     {"make|finish = none\npanel = mdf", ("sheet mdf|" BOARD)},
     "D1,18,30\n",
     CLEAR,
     false},
    {"clear on plywood", {OILED, "make|finish = clear"}, "D1,18,30\n", CLEAR, false},
    {"clear on veneered MDF",
     {OILED, "make|finish = clear\npanel = oak-mdf",
      ("sheet oak-mdf|" BOARD "\nwords = oak veneered MDF")},
     "D1,18,30\n",
     CLEAR,
     false},
    {"clear on MDF with grain",
     {OILED, "make|finish = clear\npanel = mdf", ("sheet mdf|" BOARD "\ngrain = length")},
     "D1,18,30\n",
     CLEAR,
     false},
    {"a tinted coat on MDF",
     {OILED, "make|finish = clear\npanel = mdf", ("sheet mdf|" BOARD),
      "coating sealer|tinted = yes"},
     "D1,18,30\n",
     CLEAR,
     false},
    {"glass in a clear frame, MDF named for others",
     {OILED, "make|finish = clear\npanel = mdf\nstyle = glazed", ("sheet mdf|" BOARD)},
     "D1,18,30\n",
     CLEAR,
     false},
};

static void test_clear(void **state) {
    (void)state;
    run(clear_cases, COUNT(clear_cases));
}

#define MIXED "woods-mixed"
#define CHERRY                                                                                     \
    "lumber cherry|species = black-cherry\nthickness = 4/4\nprice = 6.00 per bf\n"                 \
    "waste = 0 % added",                                                                           \
        "option cherry|frame = cherry"
static const struct question_case mixed_cases[] = {
    {"a forgotten solid panel",
     {CHERRY, "make|style = solid\nsolid panel = poplar"},
     "D1,18,30\n",
     MIXED,
     true},
    {"a forgotten slab",
     {CHERRY, "make|slab = poplar"},
     "id,width,height,style\nD1,18,30,slab\n",
     MIXED,
     true},
    {"a forgotten slab of other poplar",
     {CHERRY, "make|slab = thick-poplar"},
     "id,width,height,style\nD1,18,30,slab\n",
     MIXED,
     true},
    {"a forgotten panel of poplar plywood",
     {CHERRY, "make|panel = sheet-4", ("sheet sheet-4|" BOARD "\nwords = poplar plywood")},
     "D1,18,30\n",
     MIXED,
     true},
    {"a solid panel that is named",
     {CHERRY, "make|style = solid\nsolid panel = poplar", "option cherry|solid panel = cherry"},
     "D1,18,30\n",
     MIXED,
     false},
    {"a solid panel that is named as it was",
     {CHERRY, "make|style = solid\nsolid panel = poplar", "option cherry|solid panel = poplar"},
     "D1,18,30\n",
     MIXED,
     false},
    {"a solid panel that no row has",
     {CHERRY, "make|solid panel = poplar"},
     "D1,18,30\n",
     MIXED,
     false},
    {"a solid panel that the row names",
     {CHERRY, "make|style = solid\nsolid panel = poplar"},
     "id,width,height,solid panel\nD1,18,30,poplar\n",
     MIXED,
     false},
    {"a row with a frame of its own",
     {CHERRY, "make|style = solid\nsolid panel = poplar"},
     "id,width,height,frame\nD1,18,30,poplar\n",
     MIXED,
     false},
    {"a panel of another wood as listed",
     {CHERRY, "make|style = solid\nsolid panel = unknown-wood"},
     "D1,18,30\n",
     MIXED,
     false},
    {"panels and slabs of board",
     {CHERRY},
     "id,width,height,style\nD1,18,30,\nD2,18,30,slab\n",
     MIXED,
     false},
    {"thicker lumber of the same wood",
     {"option thick|frame = thick-poplar", "make|style = solid\nsolid panel = poplar"},
     "D1,18,30\n",
     MIXED,
     false},
};

static void test_mixed(void **state) {
    (void)state;
    run(mixed_cases, COUNT(mixed_cases));
}

#define USUAL "beyond-usual"
#define ONE   "D1,18,30\n"
#define GUN(coverage_of_coating, kept)                                                             \
    "coating sealer|coverage = " coverage_of_coating " theoretical\nsizes = 1 gal at 40.00",       \
        "spray gun|transfer efficiency = " kept, "finish clear|spray = gun\ncoats = sealer x 2"
#define DRILL           "machine drill|rate = 4.00 per hour", "operation bore|per = door\nminutes = 1"
#define YEN             "shop|currency = JPY"
#define HINGE_AT(price) "hardware cup|price = " price
static const struct question_case usual_cases[] = {
    {"a wage without its point", {"shop|labor rate = 3800 per hour"}, ONE, USUAL, true},
    {"a wage in hundreds", {"shop|labor rate = 0.38 per hour"}, ONE, USUAL, true},
    {"the least wage", {"shop|labor rate = 8 per hour"}, ONE, USUAL, false},
    {"the most", {"shop|labor rate = 250.00 per hour"}, ONE, USUAL, false},
    {"more than the most", {"shop|labor rate = 250.01 per hour"}, ONE, USUAL, true},
    {"work that is not paid", {"shop|labor rate = 0 per hour"}, ONE, USUAL, false},
    {"a wage of its own", {DRILL, "operation bore|labor rate = 4400 per hour"}, ONE, USUAL, true},
    {"a machine", {DRILL}, ONE, USUAL, false},
    {"a dear machine", {DRILL, "machine drill|rate = 400 per hour"}, ONE, USUAL, true},
    {"overhead by the hour", {"shop|overhead = 1400 per hour"}, ONE, USUAL, true},
    {"overhead by the bench hour", {"shop|overhead = 1400 per bench hour"}, ONE, USUAL, true},
    {"overhead as a part", {"shop|overhead = 0.18 % of cost"}, ONE, USUAL, true},
    {"usual overhead", {"shop|overhead = 14 per bench hour"}, ONE, USUAL, false},
    {"an hour a day", {"shop|hours per day = 1"}, ONE, USUAL, true},
    {"an allowance as a part", {"shop|allowance = 0.12 % added"}, ONE, USUAL, true},
    {"an allowance of most of the shift", {"shop|allowance = 80 % of shift"}, ONE, USUAL, true},
    {"an allowance of 80 % added", {"shop|allowance = 80 % added"}, ONE, USUAL, false},
    {"a contingency as a part", {"shop|contingency = 0.03 %"}, ONE, USUAL, true},
    {"remakes as a part", {"shop|remakes = 0.02 % of doors"}, ONE, USUAL, true},
    {"a profit as a part", {"shop|profit = 0.25 % markup"}, ONE, USUAL, true},
    {"a margin of 90 %", {"shop|profit = 90 % margin"}, ONE, USUAL, true},
    {"a markup of 90 %", {"shop|profit = 90 % markup"}, ONE, USUAL, false},
    {"the markup of a group", {"markup|lumber = 0.15 %"}, ONE, USUAL, true},
    {"lumber without its point", {"lumber poplar|price = 410 per bf"}, ONE, USUAL, true},
    {"lumber by the cubic meter", {"lumber poplar|price = 1800 per m3"}, ONE, USUAL, false},
    {"lumber by the cubic meter, cheap", {"lumber poplar|price = 4.10 per m3"}, ONE, USUAL, true},
    {"a break without its point",
     {"lumber poplar|price from = 100 bf at 375 per bf"},
     ONE,
     USUAL,
     true},
    {"waste without its point", {"lumber poplar|waste = 450 % added"}, ONE, USUAL, true},
    {"waste as a part", {"lumber poplar|waste = 0.45 % added"}, ONE, USUAL, true},
    {"80 % of waste lost", {"lumber poplar|waste = 80 % lost of what is bought"}, ONE, USUAL, true},
    {"80 % of waste added", {"lumber poplar|waste = 80 % added"}, ONE, USUAL, false},
    {"a sheet without its point", {"sheet ply|price = 5800 per sheet"}, ONE, USUAL, true},
    {"a sheet's waste", {"sheet ply|waste = 200 % added"}, ONE, USUAL, true},
    {"glass without its point", {"glass clear|price = 950 per sqft"}, ONE, USUAL, true},
    {"a hinge without its point", {HINGE_AT("420 each")}, ONE, USUAL, true},
    {"a pack of hinges", {HINGE_AT("420 per pack\npack = 100")}, ONE, USUAL, false},
    {"coverage", {GUN("400 sqft per gal", "65 %")}, ONE, USUAL, false},
    {"coverage of a whole house", {GUN("4000 sqft per gal", "65 %")}, ONE, USUAL, true},
    {"transfer without its last digit", {GUN("400 sqft per gal", "6 %")}, ONE, USUAL, true},
    {"tax as a part", {"sale|tax on = selling price\ntax = 0.0625 %"}, ONE, USUAL, true},
    {"tax", {"sale|tax on = selling price\ntax = 6.25 %"}, ONE, USUAL, false},
    {"tax on purchases as a part", {"shop|tax on purchases = 0.06 %"}, ONE, USUAL, true},
    {"no tax on purchases", {"shop|tax on purchases = 0 %"}, ONE, USUAL, false},
    {"a discount as a part", {"sale|discount = 0.05 %"}, ONE, USUAL, true},
    {"a card fee without its point", {"sale|card fee = 29 % added"}, ONE, USUAL, true},
    {"a deposit as a part", {"sale|deposit = 0.5 %"}, ONE, USUAL, true},
    {"the year 1926", {"job|date = 1926-03-02"}, ONE, USUAL, true},
    {"the year 2000", {"job|date = 2000-01-01"}, ONE, USUAL, false},
    {"a range of the shop's own",
     {"shop|labor rate = 3800 per hour", "plausible|labor rate = 8 to 3800 per h"},
     ONE,
     USUAL,
     false},
    {"a range of another key",
     {"shop|labor rate = 3800 per hour", "plausible|machine rate = 8 to 3800 per h"},
     ONE,
     USUAL,
     true},
    {"a range that is narrower", {"plausible|labor rate = 8 to 50.50 per hour"}, ONE, USUAL, true},
    {"a range in another unit",
     {"shop|overhead = 1400 per hour", "plausible|overhead = 1 to 2000 % of cost"},
     ONE,
     USUAL,
     true},
    {"a range of what is lost leaves what is added",
     {"lumber poplar|waste = 450 % added", "plausible|lumber waste = 1 to 500 % lost"},
     ONE,
     USUAL,
     true},
    {"a year of the shop's own",
     {"job|date = 1926-03-02", "plausible|year = 1926 to 2099"},
     ONE,
     USUAL,
     false},
    {"a wage in yen", {YEN, "shop|labor rate = 3800 per hour"}, ONE, USUAL, false},
    {"waste where money is in yen", {YEN, "lumber poplar|waste = 450 % added"}, ONE, USUAL, true},
    {"a wage in yen, its range given",
     {YEN, "shop|labor rate = 38 per hour", "plausible|labor rate = 1000 to 9000 per hour"},
     ONE,
     USUAL,
     true},
};

static void test_usual(void **state) {
    (void)state;
    run(usual_cases, COUNT(usual_cases));
}

#define DEARER      "larger-dearer"
#define CANS(sizes) "coating sealer|spread by = wet film\nwet film = 4 mil\nsizes = " sizes
static const struct question_case dearer_cases[] = {
    {"cans that get cheaper",
     {CANS("1 qt at 27.00, 1 gal at 84.00, 5 gal at 370.00")},
     ONE,
     DEARER,
     false},
    {"a can at four times the price of a quarter",
     {CANS("1 qt at 21.00, 1 gal at 84.00")},
     ONE,
     DEARER,
     false},
    {"a can at more than that", {CANS("1 qt at 20.99, 1 gal at 84.00")}, ONE, DEARER, true},
    {"swapped cans", {CANS("1 qt at 84.00, 1 gal at 27.00")}, ONE, DEARER, true},
    {"the third can", {CANS("1 qt at 27.00, 1 gal at 84.00, 5 gal at 3700.00")}, ONE, DEARER, true},
    {"an additive", {"additive thinner|sizes = 1 qt at 18.00, 1 gal at 5.20"}, ONE, DEARER, true},
    {"a break", {"lumber poplar|price from = 100 bf at 3.75 per bf"}, ONE, DEARER, false},
    {"a break at the price",
     {"lumber poplar|price from = 100 bf at 4.00 per bf"},
     ONE,
     DEARER,
     false},
    {"a break that is dearer",
     {"lumber poplar|price from = 100 bf at 4.75 per bf"},
     ONE,
     DEARER,
     true},
    {"a second break that is dearer",
     {"lumber poplar|price from = 100 bf at 3.75 per bf, 200 bf at 3.80 per bf"},
     ONE,
     DEARER,
     true},
    {"half a sheet", {"sheet ply|half sheet = 28.00"}, ONE, DEARER, false},
    {"half a sheet dearer than a whole one", {"sheet ply|half sheet = 56.00"}, ONE, DEARER, true},
    {"two halves cheaper than a whole one", {"sheet ply|half sheet = 24.00"}, ONE, DEARER, true},
};

static void test_dearer(void **state) {
    (void)state;
    run(dearer_cases, COUNT(dearer_cases));
}

/* Lines of [plausible] that cannot be read are errors. */
static void test_ranges(void **state) {
    (void)state;
    static const struct {
        const char *edit, *id;
    } cases[] = {
        {"plausible|labor rate = 8 per hour", "bad-item"},
        {"plausible|labor rate = 8 to 250", "missing-unit"},
        {"plausible|labor rate = 8 to 250 per bf", "wrong-unit"},
        {"plausible|labor rate = about 8 to 250 per hour", "not-a-number"},
        {"plausible|labor rate = 250 to 8 per hour", "not-ascending"},
        {"plausible|wage = 8 to 250 per hour", "unknown-key"},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        const char *const edits[BENCH_MOST_EDITS] = {cases[i].edit};
        bench_open(&bench, cases[i].edit, BENCH_INCH, edits, ONE);
        if (!bench_has(&bench, cases[i].id)) {
            bench_wrong(&bench, "no %s", cases[i].id);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_fronts), cmocka_unit_test(test_effect), cmocka_unit_test(test_clear),
        cmocka_unit_test(test_mixed),  cmocka_unit_test(test_usual),  cmocka_unit_test(test_dearer),
        cmocka_unit_test(test_ranges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
