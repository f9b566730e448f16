/* SPDX-License-Identifier: MIT */
/* Ways to open: the leaves of a row that folds, what each carries, hangs on and costs, and what
 * papers call them. */
#include "support.h"

#include "report/words/door_words.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define FOLDS                                                                                      \
    "make|hinge = hinge\nfold hinge = fold\npull = pull\nmeasure = opening\noverlay = 1/2\n"       \
    "gap = 1/8\ncorner = 7/8",                                                                     \
        "hardware fold|price = 5.00 each", "hinges|by height = 40 in: 2, 60 in: 3, 80 in: 4"
#define CORNER "id,opens,width,second width,height,hinge side\n"

static const struct bench_case inch_cases[] = {
    /* (36 + 2 x 1/2 - 1/8) / 2 = 18.4375 */
    {"a bi-fold shares its opening; one leaf hangs, the other folds and is pulled",
     {FOLDS},
     "id,opens,count,width,height\nD1,bi-fold,3,36,30\n",
     {LEAF(0, width, "18.4375"), LEAF(1, width, "18.4375"), LEAF(0, height, "31"),
      LEAF(0, leaves, "1"), LEAF(1, leaves, "1"), LEAF(0, pieces, "3"), LEAF(1, pieces, "3"),
      LEAF(0, hinges, "2"), LEAF(1, hinges, "2"), LEAF(0, pulls, NULL), LEAF(1, pulls, "1"),
      JOB(all_leaves, "6"), JOB(hinges, "12"), HARDWARE(0, needed, "6"), HARDWARE(1, needed, "3"),
      HARDWARE(2, needed, "6")}},
    /* (60 + 1 - 3/8) / 4 = 15.1563, cut as 15 5/32 */
    {"at both sides: four leaves, two of each",
     {FOLDS},
     "id,opens,hinge side,width,height\nD1,bi-fold,pair,60,30\n",
     {LEAF(0, width, "15.15625"), LEAF(1, width, "15.15625"), LEAF(0, leaves, "2"),
      LEAF(1, leaves, "2"), JOB(all_leaves, "4"), JOB(hinges, "8"), HARDWARE(2, needed, "4")}},
    {"the hinges on the cabinet carry both leaves, those between them one",
     {"make|hinge = hinge\nfold hinge = fold", "hardware fold|price = 5.00 each",
      "hinges|by weight = 5 lb: 2, 10 lb: 3"},
     "id,opens,width,height\nD1,bi-fold,18,30\n",
     {LEAF(0, weight, "4.54"), LEAF(1, weight, "4.54"), LEAF(0, hinges, "3"),
      LEAF(1, hinges, "2")}},
    {"a wood without a density asks for no hinges by weight",
     {"make|frame = unknown-wood\nhinge = hinge\nfold hinge = fold",
      "hardware fold|price = 5.00 each", "hinges|by height",
      "hinges|by weight = 5 lb: 3, 10 lb: 4"},
     "id,opens,width,height\nD1,bi-fold,18,30\n",
     {LEAF(0, weight, NULL), LEAF(0, hinges, "2"), LEAF(1, hinges, "2")}},
    {"joined by others",
     {FOLDS, "make|fold hinge = none"},
     "id,opens,width,height\nD1,bi-fold,36,30\n",
     {LEAF(0, hinges, "2"), LEAF(1, hinges, NULL)}},
    /* 11 + 1/2 - 7/8, 12 + 1/2 - 7/8 */
    {"a pie cut: the left leaf hangs",
     {FOLDS},
     CORNER "D1,pie cut,11,12,30,left\n",
     {LEAF(0, width, "10.625"), LEAF(1, width, "11.625"), LEAF(0, height, "31"),
      LEAF(1, height, "31"), LEAF(0, pulls, NULL), LEAF(1, pulls, "1")}},
    {"a pie cut: the right leaf hangs",
     {FOLDS},
     CORNER "D1,pie cut,11,12,30,right\n",
     {LEAF(0, width, "11.625"), LEAF(1, width, "10.625")}},
    {"a pie cut, side not said: the left one is taken",
     {FOLDS},
     CORNER "D1,pie cut,11,12,30,\n",
     {LEAF(0, width, "10.625"), LEAF(1, width, "11.625")}},
    {"a pie cut: each side's own overlay, and inset",
     {FOLDS, "make|overlay left = 1/4"},
     CORNER "D1,pie cut,11,12,30,left\n",
     {LEAF(0, width, "10.375"), LEAF(1, width, "11.625")}},
    {"an inset pie cut: the reveal of its outer side",
     {FOLDS, "make|overlay\nreveal = 1/8\ncorner = 1/8"},
     CORNER "D1,pie cut,11,12,30,left\n",
     {LEAF(0, width, "10.75"), LEAF(1, width, "11.75"), LEAF(0, height, "29.75")}},
    {"a pie cut measured as doors",
     {FOLDS, "make|measure = door"},
     CORNER "D1,pie cut,11,12,30,left\n",
     {LEAF(0, width, "11"), LEAF(1, width, "12"), LEAF(0, height, "30")}},
    {"a false front that tilts out has hinges along its width",
     {FOLDS, "make|measure = door"},
     "id,use,opens,width,height\nF1,false front,tilt out,50,8\nF2,false front,,50,8\n",
     {LEAF(0, hinges, "3"), LEAF(1, hinges, NULL)}},
    {"two that lift up side by side",
     {FOLDS},
     "id,opens,leaves,width,height\nD1,lift up,2,60,15\n",
     {LEAF(0, width, "30.4375"), LEAF(0, leaves, "2"), LEAF(0, hinges, "2")}},
    /* two leaves of 10.00 extra each */
    {"each leaf has its price",
     {FOLDS},
     "id,opens,width,height,extra charge\nD1,bi-fold,36,30,10.00\n",
     {DOOR(0, extra, "10"), DOOR(1, extra, "10"), COST(extra, "20")}},
};

static void folds(void **state) {
    (void)state;
    bench_run(inch_cases, COUNT(inch_cases), BENCH_INCH);
}

/* --- questions --- */

#define FITTED                                                                                     \
    "make|hinge = cup\npull = knob", "hardware cup|price = 3 each", "hardware knob|price = 2 each"

static const struct question_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *id;
    bool asked;
} question_cases[] = {
    {"a bi-fold hinged left",
     {"make|fold hinge = none"},
     "id,width,height,opens,hinge side\nD1,18,30,bi-fold,left\n",
     "without-effect",
     false},
    {"a bi-fold of four leaves hinged left",
     {"make|fold hinge = none"},
     "id,width,height,opens,leaves,hinge side\nD1,18,30,bi-fold,4,left\n",
     "without-effect",
     true},
    {"a fold hinge where nothing folds",
     {FITTED},
     "id,width,height,fold hinge\nD1,18,30,cup\n",
     "without-effect",
     true},
    {"a fold hinge of a bi-fold",
     {FITTED},
     "id,width,height,opens,fold hinge\nD1,18,30,bi-fold,cup\n",
     "without-effect",
     false},
    {"a corner of one leaf",
     {"make|measure = opening\noverlay = 1/2"},
     "id,width,height,corner\nD1,18,30,7/8\n",
     "without-effect",
     true},
    {"a corner of a pie cut measured as doors",
     {"make|measure = door\nfold hinge = none"},
     "id,width,second width,height,opens,corner\nD1,11,12,30,pie cut,7/8\n",
     "without-effect",
     true},
    {"a corner of a pie cut",
     {"make|measure = opening\noverlay = 1/2\nfold hinge = none"},
     "id,width,second width,height,opens,corner\nD1,11,12,30,pie cut,7/8\n",
     "without-effect",
     false},
    {"a gap of a pie cut",
     {"make|measure = opening\noverlay = 1/2\nfold hinge = none\ncorner = 7/8"},
     "id,width,second width,height,opens,gap\nD1,11,12,30,pie cut,1/8\n",
     "without-effect",
     true},
    {"a drawer front that is hinged",
     {NULL},
     "id,use,width,height,opens\nF1,drawer front,18,6,hinged\n",
     "without-effect",
     true},
    {"a hinge on a false front that tilts out",
     {FITTED},
     "id,use,width,height,opens,hinge\nF1,false front,18,6,tilt out,cup\n",
     "without-effect",
     false},
    {"hinges and no fold hinge",
     {FITTED},
     "id,width,height,opens\nD1,18,30,bi-fold\n",
     "no-fold-hinge",
     true},
    {"no hinges and no fold hinge",
     {FITTED, "make|hinge = none"},
     "id,width,height,opens\nD1,18,30,bi-fold\n",
     "no-fold-hinge",
     false},
    {"a wide door",
     {"limits|widest leaf = 24"},
     "id,width,height,opens\nD1,30,31,\n",
     "leaf-wide",
     true},
    {"a wide door that lifts up",
     {"limits|widest leaf = 24"},
     "id,width,height,opens\nD1,30,31,lift up\n",
     "leaf-wide",
     false},
};

static void questions(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(question_cases); i++) {
        const struct question_case *const c = &question_cases[i];
        struct bench bench;
        bench_open(&bench, c->name, BENCH_INCH, c->edits, c->doors);
        if (bench_has(&bench, c->id) != c->asked) {
            bench_wrong(&bench, "%s %s", c->id, c->asked ? "is not asked" : "is asked");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* What is asked of the leaf that hangs is not asked again of one just like it. */
static void asked_once(void **state) {
    struct bench bench;
    size_t asked = 0;
    (void)state;
    bench_open(&bench, "twin", BENCH_INCH,
               (const char *const[BENCH_MOST_EDITS]){"limits|widest leaf = 24"},
               "id,width,height,opens\nD1,30,31,bi-fold\n");
    for (size_t i = 0; i < bench.problems.count; i++) {
        asked += strcmp(bench.problems.list[i].id, "leaf-wide") == 0 ? 1 : 0;
    }
    assert_int_equal(asked, 1);
    assert_int_equal(bench_close(&bench), 0);
}

/* --- words --- */

#define WORDS "id,use,opens,leaves,width,second width,height,hinge side\n"

static const struct words_case {
    const char *row;
    const char *leaf[2]; /* what each leaf is called; second NULL: there is one */
    const char *hung[2]; /* where it hangs */
    const char *name[2];
    const char *opening, *sizes, *opens;
} words_cases[] = {
    {"D1,door,,,18,,30,left\n", {"door"}, {"left"}, {"D1"}, "door", "18 x 30", "hinged"},
    {"D1,door,,,18,,30,\n", {"door"}, {NULL}, {"D1"}, "door", "18 x 30", "hinged"},
    {"D1,door,,2,18,,30,\n", {"door"}, {"pair"}, {"D1"}, "pair of doors", "18 x 30", "hinged"},
    {"D1,door,lift up,,30,,18,\n",
     {"lift-up door"},
     {"top"},
     {"D1"},
     "lift-up door",
     "30 x 18",
     "lift up"},
    {"D1,door,tilt out,2,18,,30,\n",
     {"tilt-out door"},
     {"bottom"},
     {"D1"},
     "pair of tilt-out doors",
     "18 x 30",
     "tilt out"},
    {"D1,false front,drop down,,30,,8,\n",
     {"drop-down front"},
     {"bottom"},
     {"D1"},
     "drop-down front",
     "30 x 8",
     "drop down"},
    {"D1,false front,,,30,,8,\n",
     {"false front"},
     {NULL},
     {"D1"},
     "false front",
     "30 x 8",
     "hinged"},
    {"D1,door,bi-fold,,18,,30,right\n",
     {"bi-fold pair, hung leaf", "bi-fold pair, folding leaf"},
     {"right", "hung leaf"},
     {"D1 hung leaf", "D1 folding leaf"},
     "bi-fold pair of doors",
     "18 x 30",
     "bi-fold"},
    {"D1,door,bi-fold,4,18,,30,\n",
     {"bi-fold pair, hung leaf", "bi-fold pair, folding leaf"},
     {"pair", "hung leaf"},
     {"D1 hung leaf", "D1 folding leaf"},
     "two bi-fold pairs of doors",
     "18 x 30",
     "bi-fold"},
    {"D1,door,pie cut,,11,12,30,right\n",
     {"pie-cut pair, hung leaf", "pie-cut pair, folding leaf"},
     {"right", "hung leaf"},
     {"D1 hung leaf", "D1 folding leaf"},
     "pie-cut pair of doors",
     "11 and 12 x 30",
     "pie cut"},
};

static void expect_words(struct bench *bench, const char *words, const char *wanted) {
    if (words == NULL || wanted == NULL ? words != wanted : strcmp(words, wanted) != 0) {
        bench_wrong(bench, "'%s', expected '%s'", words == NULL ? "" : words,
                    wanted == NULL ? "" : wanted);
    }
}

static void words(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(words_cases); i++) {
        const struct words_case *const c = &words_cases[i];
        struct bench bench;
        char list[200];
        (void)snprintf(list, sizeof list, WORDS "%s", c->row);
        bench_open(&bench, c->row, BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0}, list);
        bench_sound(&bench);
        const struct quantities *const q = &bench.estimate.quantities;
        const struct door *const first = q->leaves[0].door;
        struct pool *const pool = &bench.estimate.pool;
        assert_int_equal(q->count, c->leaf[1] == NULL ? 1 : 2);
        for (size_t k = 0; k < q->count; k++) {
            const struct door *const door = q->leaves[k].door;
            expect_words(&bench, show_door(door), c->leaf[k]);
            expect_words(&bench, show_hung(door), c->hung[k]);
            expect_words(&bench, door->name, c->name[k]);
            expect_words(&bench, show_leaf(door),
                         q->count == 1 ? NULL
                         : k == 0      ? "hung leaf"
                                       : "folding leaf");
            assert_ptr_equal(door_drawn(door), first);
        }
        expect_words(&bench, show_opening(pool, first), c->opening);
        expect_words(&bench, show_leaf_sizes(pool, first, bench.job.unit), c->sizes);
        expect_words(&bench, show_opens((enum opens)first->row->opens.choice), c->opens);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

static void uses(void **state) {
    (void)state;
    assert_string_equal(show_use(USE_DOOR), "door");
    assert_string_equal(show_use(USE_DRAWER_FRONT), "drawer front");
    assert_string_equal(show_use(USE_FALSE_FRONT), "false front");
    assert_string_equal(show_use(USE_END_PANEL), "end panel");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(folds), cmocka_unit_test(questions), cmocka_unit_test(asked_once),
        cmocka_unit_test(words), cmocka_unit_test(uses),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
