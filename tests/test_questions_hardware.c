/* SPDX-License-Identifier: MIT */
/* What is asked about hinges and other hardware, and what is not. */
#include "questions.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define ONE "D1,18,30\n"
#define FITTED                                                                                     \
    "make|hinge = cup\npull = knob", "hardware cup|price = 3 each", "hardware knob|price = 2 each"
#define LIES(overlay) "make|measure = opening\nhinge = cup\n" overlay
#define CUP           "hardware cup|price = 3 each\noverlay = 3/8 in to 5/8 in"
#define SUNK          "hardware cup|price = 3 each\noverlay = Inset"
#define LIES_WRONG    "hinge-and-overlay"
static const struct question_case hardware_cases[] = {
    {"a hinge for its overlay", {LIES("overlay = 5/8"), CUP}, ONE, LIES_WRONG, false},
    {"the least overlay of a hinge", {LIES("overlay = 3/8"), CUP}, ONE, LIES_WRONG, false},
    {"half overlay hinge, full overlay", {LIES("overlay = 1 1/4"), CUP}, ONE, LIES_WRONG, true},
    {"half overlay hinge, little overlay", {LIES("overlay = 1/4"), CUP}, ONE, LIES_WRONG, true},
    {"half overlay hinge, inset", {LIES("reveal = 1/8"), CUP}, ONE, LIES_WRONG, true},
    {"inset hinge, inset", {LIES("reveal = 1/8"), SUNK}, ONE, LIES_WRONG, false},
    {"inset hinge, overlay", {LIES("overlay = 1/2"), SUNK}, ONE, LIES_WRONG, true},
    {"a hinge that says nothing",
     {LIES("overlay = 2"), "hardware cup|price = 3 each"},
     ONE,
     LIES_WRONG,
     false},
    {"the other side lies otherwise",
     {LIES("overlay = 1/2\noverlay left = 2"), CUP},
     "id,width,height,hinge side\nD1,18,30,right\n",
     LIES_WRONG,
     false},
    {"the hinged side lies otherwise",
     {LIES("overlay = 1/2\noverlay left = 2"), CUP},
     "id,width,height,hinge side\nD1,18,30,left\n",
     LIES_WRONG,
     true},
    {"hung at the top, by the overlay there",
     {LIES("overlay = 2\noverlay top = 1/2"), CUP},
     "id,width,height,opens\nD1,18,30,lift up\n",
     LIES_WRONG,
     false},
    {"hung at the bottom, by the overlay there",
     {LIES("overlay = 1/2\noverlay bottom = 2"), CUP},
     "id,width,height,opens\nD1,18,30,drop down\n",
     LIES_WRONG,
     true},
    {"a bi-fold hangs on its hinge side alone",
     {LIES("overlay = 1/2\noverlay left = 2\ngap = 1/8\nfold hinge = cup"), CUP},
     "id,width,height,opens,hinge side\nD1,36,30,bi-fold,right\n",
     LIES_WRONG,
     false},
    {"a bi-fold hung left",
     {LIES("overlay = 1/2\noverlay left = 2\ngap = 1/8\nfold hinge = cup"), CUP},
     "id,width,height,opens,hinge side\nD1,36,30,bi-fold,left\n",
     LIES_WRONG,
     true},
    {"one side of two that may be it",
     {LIES("overlay = 1/2\noverlay left = 2"), CUP},
     ONE,
     LIES_WRONG,
     false},
    {"a pair hangs on both",
     {LIES("overlay = 1/2\noverlay right = 2\ngap = 1/8"), CUP},
     "id,width,height,leaves\nD1,36,30,2\n",
     LIES_WRONG,
     true},
    {"a door measured itself",
     {"make|measure = door\nhinge = cup\noverlay = 2", CUP},
     ONE,
     LIES_WRONG,
     false},
    {"a front has no hinge",
     {LIES("overlay = 2"), CUP},
     "id,use,width,height\nF1,drawer front,18,6\n",
     LIES_WRONG,
     false},
    {"fewer hinges than the rule",
     {"make|hinge = hinge"},
     "id,width,height,hinges\nD1,18,62,3\n",
     "hinges-few",
     true},
    {"as many as the rule gives", {"make|hinge = hinge"}, ONE, "hinges-few", false},
    {"hinges where there is no rule",
     {"make|hinge = hinge", "hinges|by height\nby weight"},
     "id,width,height,hinges\nD1,18,30,5\n",
     "hinges-many",
     false},
    {"the count is of the hinge on the cabinet, not of that between leaves",
     {"make|measure = opening\noverlay = 1/2\ngap = 1/8\nhinge = hinge\nfold hinge = hinge",
      "hinges|by height = 40 in: 4, 100 in: 2\nby weight"},
     "id,opens,width,height,hinges\nD1,bi-fold,36,30,4\n",
     "hinges-few",
     false},
    {"as many hinges as the rule",
     {"make|hinge = hinge"},
     "id,width,height,hinges\nD1,18,62,4\n",
     "hinges-few",
     false},
    {"twice the hinges of the rule",
     {"make|hinge = hinge"},
     "id,width,height,hinges\nD1,18,30,4\n",
     "hinges-many",
     false},
    {"more than twice the hinges of the rule",
     {"make|hinge = hinge"},
     "id,width,height,hinges\nD1,18,30,5\n",
     "hinges-many",
     true},
    {"past the chart, the row says how many",
     {"make|hinge = hinge"},
     "id,width,height,hinges\nD1,18,101,6\n",
     "hinges-beyond-chart",
     false},
    {"the pull is in the list too",
     {FITTED, "make|hardware = 2 knob"},
     ONE,
     "hardware-twice",
     true},
    {"the pull is in the list of a panel without one",
     {FITTED},
     "id,use,width,height,hardware\nE1,end panel,18,30,2 knob\n",
     "hardware-twice",
     false},
    {"a cup of what is a pull",
     {FITTED, "hardware knob|price = 3 each\ncup = 35 mm\ncup center = 22.5 mm"},
     ONE,
     "without-effect",
     true},
    {"a cup of a hinge that is in the list too",
     {FITTED, "hardware cup|price = 3 each\ncup = 35 mm\ncup center = 22.5 mm"},
     "id,width,height,hardware\nD1,18,30,1 cup\n",
     "without-effect",
     false},
    {"a cup of what no row has",
     {FITTED, "hardware other|price = 3 each\ncup = 35 mm\ncup center = 22.5 mm"},
     ONE,
     "without-effect",
     false},
    {"the hinge is in the list too",
     {FITTED},
     "id,width,height,hardware\nD1,18,30,1 cup\n",
     "hardware-twice",
     true},
};

static void test_hardware(void **state) {
    (void)state;
    questions_run(hardware_cases, COUNT(hardware_cases));
}

/* --- in which words --- */

#define CUP_IS(overlay) "hardware cup|price = 3 each\noverlay = " overlay
static const struct {
    const char *edits[BENCH_MOST_EDITS];
    const char *row, *text;
} words[] = {
    {{LIES("overlay = 1/2"), CUP_IS("Inset")},
     ",",
     "hinge 'cup' is for inset doors, and door 'D1' lies over its opening"},
    {{LIES("reveal = 1/8"), CUP_IS("3/8 in to 5/8 in")},
     ",",
     "hinge 'cup' is for an overlay of 3/8 to 5/8, and door 'D1' is inset"},
    {{LIES("overlay = 1/2\noverlay left = 2"), CUP_IS("1/2 in")},
     ",left",
     "hinge 'cup' is for an overlay of 1/2, and door 'D1' has 2 on its left"},
    {{LIES("overlay = 1/2\noverlay right = 3/4"), CUP_IS("1/2 in")},
     ",right",
     "hinge 'cup' is for an overlay of 1/2, and door 'D1' has 3/4 on its right"},
    {{LIES("overlay = 1/2\noverlay top = 3/8"), CUP_IS("1/2 in")},
     "lift up,",
     "hinge 'cup' is for an overlay of 1/2, and door 'D1' has 3/8 on its top"},
    {{LIES("overlay = 1/2\noverlay bottom = 5/8"), CUP_IS("1/2 in")},
     "tilt out,",
     "hinge 'cup' is for an overlay of 1/2, and door 'D1' has 5/8 on its bottom"},
};

static void test_words(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(words); i++) {
        char doors[96];
        char text[160];
        struct bench bench;
        (void)snprintf(doors, sizeof doors, "id,width,height,opens,hinge side\nD1,18,30,%s\n",
                       words[i].row);
        (void)snprintf(text, sizeof text, "%s; another hinge, or another overlay?", words[i].text);
        bench_open(&bench, words[i].text, BENCH_INCH, words[i].edits, doors);
        const char *const said = bench_said(&bench, LIES_WRONG);
        if (said == NULL || strcmp(said, text) != 0) {
            bench_wrong(&bench, "says: %s", said == NULL ? "nothing" : said);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- where hinges are bored --- */

#define BORED(center) "hardware hinge|cup = 1 in\ncup center = " center
#define ALONG         "run off the ends of its hinged edge"
#define ACROSS        "run off the door across its hinged edge"
#define PLACES        "; give the row other places in the column 'hinges at'"
#define RULE          ", or change 'from the ends' of [hinges]"
#define CUP_ITSELF    "; change 'cup' or 'cup center' of the hinge, or its width"
#define NO_FRONT      "; 'use' tells of a drawer front, which has none"
static const struct {
    const char *hinge, *row; /* width, height, opens, use, hinges, hinges at */
    const char *text;        /* what is said of door D1 behind `the hinges of door 'D1', at` */
} bores[] = {
    {BORED("1/2 in"), "18,30,,door,,1/2 | 29 1/2", NULL},
    {BORED("31/64 in"), "18,30,,door,,3 | 27", "3 | 27 of 30, " ACROSS CUP_ITSELF},
    {BORED("1 1/2 in"), "2,30,,door,,3 | 27", NULL},
    {BORED("1 33/64 in"), "2,30,,door,,3 | 27", "3 | 27 of 30, " ACROSS CUP_ITSELF},
    {BORED("2 1/2 in"), "18,3,lift up,door,,3 | 15", NULL},
    {BORED("2 33/64 in"), "18,3,lift up,door,,3 | 15", "3 | 15 of 18, " ACROSS CUP_ITSELF},
    {BORED("7/8 in"), "18,30,,door,,31/64 | 27", "31/64 | 27 of 30, " ALONG PLACES},
    {BORED("7/8 in"), "18,30,,door,,3 | 29 33/64", "3 | 29 33/64 of 30, " ALONG PLACES},
    {BORED("7/8 in"), "18,30,,door,,27 | 3",
     "27 | 3 of 30, are not in order; list them from the upper or left end on"},
    {BORED("7/8 in"), "18,30,,door,,3 | 4", "3 | 4 of 30, run into each other" PLACES},
    {BORED("7/8 in"), "18,30,,door,,3 | 4 1/64", NULL},
    {BORED("7/8 in"), "18,30,,door,1,29 1/2", NULL},
    {BORED("7/8 in"), "18,30,,door,1,29 33/64", "29 33/64 of 30, " ALONG PLACES},
    {BORED("7/8 in"), "18,30,,door,,3 | 5 | 5", "3 | 5 | 5 of 30, run into each other" PLACES},
    {"hardware hinge|", "18,30,,door,,0 | 30", NULL},
    {"hardware hinge|", "18,30,,door,,3 | 3", "3 | 3 of 30, run into each other" PLACES},
    {BORED("7/8 in"), "18,8 1/64,,door,,", NULL},
    {BORED("7/8 in"), "18,7,,door,,", "3 1/2 | 3 1/2 of 7, run into each other" PLACES RULE},
    {BORED("7/8 in"), "18,6,,door,,", "3 1/2 | 2 1/2 of 6, run into each other" PLACES RULE},
    {BORED("7/8 in"), "18,3,,door,,", "3 1/2 | -1/2 of 3, " ALONG PLACES RULE},
    {BORED("7/8 in"), "6 1/64,6,,,,",
     "3 1/2 | 2 1/2 of 6, run into each other" PLACES RULE NO_FRONT},
    {BORED("7/8 in"), "6,6,,,,", "3 1/2 | 2 1/2 of 6, run into each other" PLACES RULE},
    {BORED("7/8 in"), "18,6,,,,3 | 4", "3 | 4 of 6, run into each other" PLACES},
};

/* What is said of the hinges of the first row behind its name; NULL: nothing. */
static const char *bores_said(const struct bench *bench) {
    const char *const text = bench_said(bench, "hinge-bores");
    const char *const from = text == NULL ? NULL : strstr(text, "'D1', at ");
    return from == NULL ? NULL : from + strlen("'D1', at ");
}

/* At a limit the bore is right, and a 64th beyond it is wrong. */
static void test_bores(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(bores); i++) {
        const char *const edits[BENCH_MOST_EDITS] = {"make|hinge = hinge", bores[i].hinge,
                                                     "hinges|from the ends = 3 1/2"};
        char doors[160];
        struct bench bench;
        (void)snprintf(doors, sizeof doors,
                       "id,width,height,opens,use,hinges,hinges at,style\nD1,%s,slab\n",
                       bores[i].row);
        bench_open(&bench, bores[i].row, BENCH_INCH, edits, doors);
        const char *const said = bores_said(&bench);
        if (bores[i].text == NULL ? said != NULL
                                  : said == NULL || strcmp(said, bores[i].text) != 0) {
            bench_wrong(&bench, "%s: says: %s", bores[i].hinge, said == NULL ? "nothing" : said);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- once for rows that hang alike --- */

static size_t times_asked(const struct bench *bench, const char *id) {
    size_t n = 0;
    for (size_t i = 0; i < bench->problems.count; i++) {
        n += strcmp(bench->problems.list[i].id, id) == 0 ? 1 : 0;
    }
    return n;
}

#define WAYS "id,use,opens,hinge side,leaves,width,second width,height,style,hardware,pulls\n"
static const char *const ways[] = {
    "door,,,1,18,,30,,1 knob,1",
    "door,,left,1,18,,30,,1 knob,1",
    "door,,right,1,18,,30,,1 knob,1",
    "door,,,2,36,,30,,1 knob,1",
    "door,lift up,,1,18,,30,,1 knob,1",
    "door,lift up,,2,36,,30,,1 knob,1",
    "door,tilt out,,1,18,,30,,1 knob,1",
    "door,drop down,,1,18,,30,,1 knob,1",
    "door,bi-fold,,,36,,30,,1 knob,1",
    "door,bi-fold,left,,36,,30,,1 knob,1",
    "door,bi-fold,right,,36,,30,,1 knob,1",
    "door,bi-fold,pair,,60,,30,,1 knob,1",
    "door,pie cut,,,12,12,30,,1 knob,1",
    "door,pie cut,left,,12,12,30,,1 knob,1",
    "door,pie cut,right,,12,12,30,,1 knob,1",
    "drawer front,,,1,18,,8,,1 knob,1",
    "drawer front,,left,1,18,,8,,1 knob,1",
    "drawer front,,right,1,18,,8,,1 knob,1",
    "false front,,,1,18,,8,,1 knob,1",
    "false front,tilt out,,1,18,,8,,1 knob,1",
    "door,,,1,18,,30,solid,1 knob,1",
    "drawer front,,,1,18,,8,solid,1 knob,1",
    "end panel,,,1,18,,30,solid,1 knob,1",
};

/* Of leaves that fold, both alike: of each of them, of one alone, of none. */
static const struct {
    const char *name, *hinge, *doors;
    size_t asked;
} folds[] = {
    {"one leaf", "hinge = hinge", "D1,,18,101\n", 1},
    {"both alike are asked about once", "hinge = hinge\nfold hinge = hinge",
     "D1,bi-fold,36 1/8,101\n", 1},
    {"the hung one alone", "hinge = hinge\nfold hinge = none", "D1,bi-fold,36 1/8,101\n", 1},
    {"the folding one alone", "hinge = none\nfold hinge = hinge", "D1,bi-fold,36 1/8,101\n", 1},
    {"neither", "hinge = none\nfold hinge = none", "D1,bi-fold,36 1/8,101\n", 0},
    {"as high as the chart goes", "hinge = hinge\nfold hinge = hinge", "D1,bi-fold,36 1/8,100\n",
     0},
};

static void test_folds(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(folds); i++) {
        char edit[96];
        char doors[96];
        struct bench bench;
        (void)snprintf(edit, sizeof edit, "make|measure = opening\noverlay = 0\n%s",
                       folds[i].hinge);
        (void)snprintf(doors, sizeof doors, "id,opens,width,height\n%s", folds[i].doors);
        const char *const edits[BENCH_MOST_EDITS] = {edit};
        bench_open(&bench, folds[i].name, BENCH_INCH, edits, doors);
        bench_sound(&bench);
        if (times_asked(&bench, "hinges-beyond-chart") != folds[i].asked) {
            bench_wrong(&bench, "asked %zu times", times_asked(&bench, "hinges-beyond-chart"));
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Each way to hang has its question, and two rows of one way share theirs. */
static void test_once(void **state) {
    (void)state;
    const char *const edits[BENCH_MOST_EDITS] = {FITTED,
                                                 "make|measure = opening\noverlay = 1/2\n"
                                                 "gap = 1/8\ncorner = 7/8\nfold hinge = none\n"
                                                 "solid panel = poplar"};
    char doors[4096] = WAYS;
    struct bench bench;
    for (size_t i = 0; i < 2 * COUNT(ways); i++) {
        char row[128];
        (void)snprintf(row, sizeof row, "D%zu,%s\n", i + 1, ways[i / 2]);
        (void)strncat(doors, row, sizeof doors - strlen(doors) - 1);
    }
    bench_open(&bench, "once", BENCH_INCH, edits, doors);
    assert_int_equal(problems_count(&bench.problems, SEVERITY_ERROR), 0);
    assert_int_equal(times_asked(&bench, "hardware-twice"), COUNT(ways));
    (void)bench_close(&bench);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_hardware), cmocka_unit_test(test_once),
                                       cmocka_unit_test(test_words), cmocka_unit_test(test_folds),
                                       cmocka_unit_test(test_bores)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
