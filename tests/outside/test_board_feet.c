/* SPDX-License-Identifier: MIT */
/* Board feet and surface measure against published worked examples (board-feet.csv): slabs of
 * lumber as large as the boards, counted by the stages, and boards bought by a plan, tallied. What
 * is longer than a door may be is told as two slabs of half the length. */
#include "ways.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define SLABS "make|style = slab\nslab = poplar"
/* The rough slab is the slab, so that it takes all of its board. */
#define NOTHING_LOST "saw|kerf = 0\nlength allowance = 0\nedge allowance = 0"
#define BY_PLAN      "shop|price lumber by = plan"
#define HEAD         "id,count,width,height\n"
#define ROW(id)      "S" id ",{slabs},{width in},{slab in}\n"

static const struct way ways[] = {
    {.check = "board feet",
     .edits = {SLABS, "lumber poplar|thickness = {thickness in}"},
     .doors = HEAD ROW("1"),
     .answer = LUMBER(0, net, NULL)},
    {.check = "board feet, eight rows",
     .edits = {SLABS, "lumber poplar|thickness = {thickness in}"},
     .doors = HEAD ROW("1") ROW("2") ROW("3") ROW("4") ROW("5") ROW("6") ROW("7") ROW("8"),
     .answer = LUMBER(0, net, NULL)},
    {.check = "surface",
     .edits = {SLABS, NOTHING_LOST, BY_PLAN,
               "lumber poplar|board widths = {width in}\nboard lengths = {length ft} ft"},
     .doors = HEAD ROW("1"),
     .answer = LUMBER(0, by_plan.bought, NULL)},
};

static void test_published(void **state) {
    (void)state;
    ways_run("board-feet.csv", ways, COUNT(ways));
}

#define BOARDS(widths, lengths)                                                                    \
    SLABS, NOTHING_LOST, BY_PLAN,                                                                  \
        ("lumber poplar|board widths = " widths "\nboard lengths = " lengths)

/* The rules by which a pack is tallied. Sources: surface measure to the nearest whole foot, NHLA
 * Rules Corner, December 2020 (rule book p. 7, par. 16), https://www.nhla.com/rc122020/; whole feet
 * of length, widths as they are, thickness once on the pack,
 * http://goodwoodcorp.com/HardWoodTerminology.asp; an exact half by turns, G. Wengert,
 * http://www.woodweb.com/knowledge_base/Rounding_Numbers_when_Figuring.html. The boards are ours.
 */
static const struct bench_case packs[] = {
    {"one board of 5 10/12",
     {BOARDS("7", "10 ft")},
     HEAD "S1,1,7,10 ft\n",
     {LUMBER(0, by_plan.bought, "6 bf")}},
    {"5/4: 7.5, half up",
     {BOARDS("7", "10 ft"), "lumber poplar|thickness = 5/4"},
     HEAD "S1,1,7,10 ft\n",
     {LUMBER(0, by_plan.bought, "8 bf")}},
    {"5/4 is rounded on the pack, not the board",
     {BOARDS("7", "10 ft"), "lumber poplar|thickness = 5/4"},
     HEAD "S1,2,7,10 ft\n",
     {LUMBER(0, by_plan.bought, "15 bf")}},
    {"under 1 in counts as 1 in",
     {BOARDS("7", "10 ft"), "lumber poplar|thickness = 3/4"},
     HEAD "S1,1,7,10 ft\n",
     {LUMBER(0, by_plan.bought, "6 bf")}},
    {"the inches over whole feet are dropped",
     {BOARDS("12", "131 in")},
     HEAD "S1,2,12,60\n",
     {LUMBER(0, by_plan.bought, "10 bf")}},
    {"a half goes up first",
     {BOARDS("8 1/2", "12 ft")},
     HEAD "S1,2,8 1/2,6 ft\n",
     {LUMBER(0, by_plan.bought, "9 bf")}},
    {"then up again, the third time",
     {BOARDS("8 1/2", "12 ft")},
     HEAD "S1,6,8 1/2,6 ft\n",
     {LUMBER(0, by_plan.bought, "26 bf")}},
    {"other boards do not change the turn",
     {BOARDS("8 1/2, 10 3/4", "12 ft")},
     HEAD "S1,2,8 1/2,6 ft\nS2,2,10 3/4,6 ft\nS3,2,8 1/2,6 ft\n",
     {LUMBER(0, by_plan.bought, "28 bf")}},
    {"8/4 doubles it",
     {BOARDS("6 1/2, 8", "8 ft, 12 ft"), "lumber poplar|thickness = 8/4"},
     HEAD "S1,1,6 1/2,8 ft\nS2,2,8,6 ft\n",
     {LUMBER(0, by_plan.bought, "24 bf")}},
};

static void test_packs(void **state) {
    (void)state;
    bench_run(packs, COUNT(packs), BENCH_INCH);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_published),
                                       cmocka_unit_test(test_packs)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
