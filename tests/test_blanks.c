/* SPDX-License-Identifier: MIT */
/* Short parts milled as longer blanks: how many, how long, what they take, by hand. */
#include "questions.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

/* Kerf 1/8, length allowance 1, both edges 1/16. */
#define SHOP(least)                                                                                \
    ("machine planer|rate = 60.00 per hour\nshortest = " least),                                   \
        ("operation plane|machine = planer\nper = ft of frame\nhandling = 1.00 min per part"),     \
        "door plain|operations = plane", "saw|kerf = 1/8"
#define FRONTS "id,use,count,width,height\n"

static const struct bench_case cases[] = {
    /* Stiles of 6, rough 7: two and a kerf and 1 in are 13 1/8. Rails of 11 1/4, rough 12 1/4. */
    {"two stiles of a front in one blank",
     {SHOP("12 in")},
     FRONTS "F1,drawer front,1,15,6\n",
     {PART(0, blank[0], "13.125"), PART(0, blanks[0], "1"), PART(0, blank_holds[0], "2"),
      PART(0, blanks[1], "0"), PART(0, rough_length, NULL), PART(1, rough_length, "12.25"),
      /* 1 x 2 3/8 x 13 1/8 / 144 / 2 */
      PART(0, rough, "0.1082"),
      /* one blank and two rails */
      OPERATION(0, run, "3")}},
    {"the first machine of the shop asks as well",
     {"machine sander|shortest = 12 in",
      "operation plane|machine = sander\nper = ft of frame\nhandling = 1.00 min per part",
      "door plain|operations = plane", "saw|kerf = 1/8"},
     FRONTS "F1,drawer front,1,15,6\n",
     {PART(0, blank[0], "13.125"), PART(0, blank_holds[0], "2"), PART(1, rough_length, "12.25"),
      OPERATION(0, run, "3")}},
    {"rails of one length share a blank, which stands with the first",
     {SHOP("12 1/2 in")},
     FRONTS "F1,drawer front,1,15,6\n",
     {PART(1, blank[0], "23.625"), PART(1, blank_holds[0], "2"), PART(2, blank[0], NULL),
      PART(2, rough_length, NULL), PART(1, rough, "0.1948"), PART(2, rough, "0.1948"),
      OPERATION(0, run, "2")}},
    /* Three of 6 make 19 1/4, two are too short: of ten pieces three blanks, one for four. */
    {"pieces are shared out evenly",
     {SHOP("18 in")},
     FRONTS "F1,drawer front,5,24,6\n",
     {PART(0, blank[1], "25.375"), PART(0, blanks[1], "1"), PART(0, blank_holds[1], "4"),
      PART(0, blank[0], "19.25"), PART(0, blanks[0], "2"), PART(0, blank_holds[0], "3"),
      /* 25 3/8 + 2 x 19 1/4 = 63 7/8; by 2 3/8 / 144 / 10 */
      PART(0, rough, "0.1053"),
      /* three blanks and ten rails */
      OPERATION(0, run, "13")}},
    {"a rail of 12 1/4 is just long enough by itself",
     {SHOP("12 1/4 in")},
     FRONTS "F1,drawer front,1,15,6\n",
     {PART(1, blank[0], NULL), PART(1, rough_length, "12.25"), PART(0, blank[0], "13.125")}},
    /* 1 1/4 x 2 3/8 x 13 1/8 / 144 / 2 */
    {"thicker lumber",
     {SHOP("12 in"), "make|frame = thick-poplar"},
     FRONTS "F1,drawer front,1,15,6\n",
     {PART(0, rough, "0.1353")}},
    {"two of 6, a kerf and an inch are just long enough",
     {SHOP("13 1/8 in")},
     FRONTS "F1,drawer front,3,24,6\n",
     {PART(0, blank[0], "13.125"), PART(0, blanks[0], "3"), PART(0, blank_holds[0], "2"),
      PART(0, blanks[1], "0")}},
    {"and of a machine that asks for more three",
     {SHOP("13 9/64 in")},
     FRONTS "F1,drawer front,3,24,6\n",
     {PART(0, blank[0], "19.25"), PART(0, blanks[0], "2"), PART(0, blank_holds[0], "3"),
      PART(0, blanks[1], "0")}},
    {"too few for a blank: one is bought as long as the machine asks",
     {SHOP("24 in")},
     FRONTS "F1,drawer front,1,30,6\n",
     {PART(0, blank[0], "24"), PART(0, blanks[0], "1"), PART(0, blank_holds[0], "2"),
      PART(0, rough, "0.1979")}},
    {"a part as long as the machine asks is milled by itself",
     {SHOP("7 in")},
     FRONTS "F1,drawer front,1,15,6\n",
     {PART(0, blank[0], NULL), PART(0, rough_length, "7"), OPERATION(0, run, "4")}},
    /* 2 1/4 long: five are long enough, so nine are one blank, with eight kerfs and an inch 22 1/4
     */
    {"a short mid stile is no piece of the stiles' blank",
     {SHOP("12 in")},
     "id,use,count,width,height,mid stiles\nF1,drawer front,9,24,6,1\n",
     {PART(0, blank[0], "13.125"), PART(0, blanks[0], "9"), PART(0, blank_holds[0], "2"),
      PART(3, length, "2.25"), PART(3, blank[0], "22.25"), PART(3, blank_holds[0], "9")}},
    {"a machine that works on whole doors asks for none",
     {"machine planer|rate = 60.00 per hour\nshortest = 12 in",
      "operation plane|machine = planer\nper = door\nminutes = 1", "door plain|operations = plane"},
     FRONTS "F1,drawer front,1,15,6\n",
     {PART(0, blank[0], NULL), PART(0, rough_length, "7")}},
    {"a panel is no blank, however short",
     {"machine planer|rate = 60.00 per hour\nshortest = 12 in",
      "operation plane|machine = planer\nper = panel\nminutes = 1\nhandling = 1.00 min per part",
      "door plain|operations = plane"},
     FRONTS "F1,drawer front,2,15,6\n",
     {PART(4, blank[0], NULL), OPERATION(0, run, "4")}},
    {"no rail is there to be handled",
     {"machine planer|rate = 60.00 per hour\nshortest = 12 in",
      "operation plane|machine = planer\nper = rail\nminutes = 1\nhandling = 1.00 min per part",
      "door slab|operations = plane", "make|style = slab"},
     "D1,18,30\n",
     {SHARE(0, run, NULL)}},
    {"the plan cuts the blanks",
     {SHOP("12 in"), "shop|price lumber by = plan",
      "lumber poplar|board widths = 3\nboard lengths = 4 ft"},
     FRONTS "F1,drawer front,1,15,6\n",
     /* 13 1/8 and two rails of 12 1/4 with two kerfs are 37 7/8 of 48: one board */
     {LUMBER(0, plan.boards, "1")}},
};

/* What each question is asked about: a `shortest` that no operation on frames goes by. */
#define SHORT(per)                                                                                 \
    "machine planer|rate = 60.00 per hour\nshortest = 12 in",                                      \
        "operation plane|machine = planer\nminutes = 1\nper = " per
#define ONE    "D1,18,30\n"
#define EFFECT "without-effect"
static const struct question_case questions[] = {
    {"stiles alone go through the machine", {SHORT("stile")}, ONE, EFFECT, false},
    {"rails alone", {SHORT("rail")}, ONE, EFFECT, false},
    {"both", {SHORT("part")}, ONE, EFFECT, false},
    {"whole doors", {SHORT("door")}, ONE, EFFECT, true},
    {"panels", {SHORT("panel")}, ONE, EFFECT, true},
    {"once a job", {SHORT("job")}, ONE, EFFECT, true},
    {"no operation at all",
     {"machine planer|rate = 60.00 per hour\nshortest = 12 in"},
     ONE,
     EFFECT,
     true},
    {"the second of two operations",
     {SHORT("door"), "operation joint|machine = planer\nminutes = 1\nper = stile"},
     ONE,
     EFFECT,
     false},
};

static void test_questions(void **state) {
    (void)state;
    questions_run(questions, sizeof questions / sizeof *questions);
}

static void test_blanks(void **state) {
    (void)state;
    bench_run(cases, sizeof cases / sizeof *cases, BENCH_INCH);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_blanks),
                                       cmocka_unit_test(test_questions)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
