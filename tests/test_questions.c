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
     "id,width,height,leaves,hinge side\nD1,18,30,2,top\n",
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
     {OILED, "make|finish = clear\npanel = mdf", "sheet mdf|" BOARD},
     "D1,18,30\n",
     CLEAR,
     true},
    {"clear on what the words call MDF",
     {OILED, "make|finish = clear\npanel = thin", "sheet thin|" BOARD "\nwords = MDF board"},
     "D1,18,30\n",
     CLEAR,
     true},
    {"clear on a slab of MDF, in an option",
     {OILED, "make|style = slab\nslab = mdf", "option bright|finish = clear", "sheet mdf|" BOARD},
     "D1,18,30\n",
     CLEAR,
     true},
    {"a finish that its words call clear",
     {OILED, "make|finish = satin\npanel = mdf", "sheet mdf|" BOARD,
      "finish satin|spray = gun\ncoats = sealer x 1\nwords = clear, satin"},
     "D1,18,30\n",
     CLEAR,
     true},
    {"bare MDF",
     {"make|finish = none\npanel = mdf", "sheet mdf|" BOARD},
     "D1,18,30\n",
     CLEAR,
     false},
    {"clear on plywood", {OILED, "make|finish = clear"}, "D1,18,30\n", CLEAR, false},
    {"clear on veneered MDF",
     {OILED, "make|finish = clear\npanel = oak-mdf",
      "sheet oak-mdf|" BOARD "\nwords = oak veneered MDF"},
     "D1,18,30\n",
     CLEAR,
     false},
    {"clear on MDF with grain",
     {OILED, "make|finish = clear\npanel = mdf", "sheet mdf|" BOARD "\ngrain = length"},
     "D1,18,30\n",
     CLEAR,
     false},
    {"a tinted coat on MDF",
     {OILED, "make|finish = clear\npanel = mdf", "sheet mdf|" BOARD, "coating sealer|tinted = yes"},
     "D1,18,30\n",
     CLEAR,
     false},
    {"glass in a clear frame, MDF named for others",
     {OILED, "make|finish = clear\npanel = mdf\nstyle = glazed", "sheet mdf|" BOARD},
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
     {CHERRY, "make|panel = sheet-4", "sheet sheet-4|" BOARD "\nwords = poplar plywood"},
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

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_fronts),
        cmocka_unit_test(test_effect),
        cmocka_unit_test(test_clear),
        cmocka_unit_test(test_mixed),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
