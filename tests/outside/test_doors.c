/* SPDX-License-Identifier: MIT */
/* Sizes of doors and parts, weights and waste against published rules and examples (doors.csv,
 * weight.csv, waste.csv). */
#include "ways.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define STYLE                                                                                      \
    "door plain|stile = {stile}\ntongue = {tongue}\ngroove = {tongue}\npanel clearance = "         \
    "{clearance}"
#define SOLID                                                                                      \
    "door solid|stile = {stile}\ntongue = {tongue}\ngroove = {tongue}\nclearance across = "        \
    "{clearance}"
#define SOLID_PANEL "make|style = solid\npanel = poplar"
#define OPENING     "make|measure = opening\noverlay = {overlay}\nreveal = {reveal}\ngap\ngap = {gap}"
#define ROW         "id,width,height,leaves\nD1,{width},{height},{leaves}\n"

/* Parts of a frame in their order. */
enum { STILE = 0, RAIL = 1, PANEL = 3 };

static const struct way sizes[] = {
    {.check = "stile", .edits = {STYLE}, .doors = ROW, .answer = PART(STILE, length, NULL)},
    {.check = "rail", .edits = {STYLE}, .doors = ROW, .answer = PART(RAIL, length, NULL)},
    {.check = "panel width", .edits = {STYLE}, .doors = ROW, .answer = PART(PANEL, width, NULL)},
    {.check = "panel height", .edits = {STYLE}, .doors = ROW, .answer = PART(PANEL, length, NULL)},
    {.check = "solid panel across",
     .edits = {SOLID, SOLID_PANEL},
     .doors = ROW,
     .answer = PART(PANEL, width, NULL)},
    {.check = "solid panel along",
     .edits = {SOLID, SOLID_PANEL},
     .doors = ROW,
     .answer = PART(PANEL, length, NULL)},
    {.check = "door width",
     .edits = {STYLE, OPENING},
     .doors = ROW,
     .answer = LEAF(0, width, NULL)},
    {.check = "door height",
     .edits = {STYLE, OPENING},
     .doors = ROW,
     .answer = LEAF(0, height, NULL)},
    {.check = "lumber", .edits = {STYLE}, .doors = ROW, .answer = LUMBER(0, net, NULL)},
    {.check = "sprayed",
     .edits = {STYLE, "make|finish = painted"},
     .doors = ROW,
     .answer = LEAF(0, sprayed, NULL)},
};

static void test_sizes(void **state) {
    (void)state;
    ways_run("doors.csv", sizes, COUNT(sizes));
}

#define SLAB     "id,width,height\nS1,{width},{height}\n"
#define OF_BOARD "make|style = slab"
#define OF_WOOD  "make|style = slab\nslab = poplar", "door slab|thickness = {thickness}"

static const struct way weights[] = {
    {.check = "wood, lb",
     .edits = {OF_WOOD, "lumber poplar|species = row"},
     .woods = "name,sg_12pct_volume\nyellow-poplar,\nrow,{gravity}\n",
     .doors = SLAB,
     .answer = LEAF(0, weight, NULL)},
    {.check = "wood, kg",
     .unit = BENCH_MM,
     .edits = {"make|style = slab\nslab = poplar", "door slab|thickness = {thickness}",
               "lumber poplar|species = row"},
     .woods = "name,sg_12pct_volume\nyellow-poplar,\nrow,{gravity}\n",
     .doors = SLAB,
     .answer = LEAF(0, weight, NULL)},
    {.check = "shipped wood, lb",
     .edits = {OF_WOOD, "lumber poplar|species = {density or wood}"},
     .doors = SLAB,
     .answer = LEAF(0, weight, NULL)},
    {.check = "board, lb",
     .edits = {OF_BOARD, "sheet board|thickness = {thickness}\nsize = 49 x 97\n"
                         "density = {density or wood}"},
     .doors = SLAB,
     .answer = LEAF(0, weight, NULL)},
};

static void test_weights(void **state) {
    (void)state;
    ways_run("weight.csv", weights, COUNT(weights));
}

/* Slabs of 10 board feet, or of 8 sq ft. */
#define TEN     "id,count,width,height\nS1,{slabs},12,120\n"
#define EIGHT   "id,count,width,height\nS1,{slabs},12,96\n"
#define OF_TENS "make|style = slab\nslab = poplar"
#define ADDED   "lumber poplar|waste = {percent} % added\nminimum = {minimum bf} bf"
#define LOST    "lumber poplar|waste = {percent} % lost"

static const struct way wastes[] = {
    {.check = "added",
     .edits = {OF_TENS, ADDED},
     .doors = TEN,
     .answer = LUMBER(0, priced.bought, NULL)},
    {.check = "added, least",
     .edits = {OF_TENS, ADDED},
     .doors = TEN,
     .answer = LUMBER(0, priced.bought, NULL)},
    {.check = "added, yield",
     .edits = {OF_TENS, ADDED},
     .doors = TEN,
     .answer = LUMBER(0, priced.yield, NULL)},
    {.check = "lost",
     .edits = {OF_TENS, LOST},
     .doors = TEN,
     .answer = LUMBER(0, priced.bought, NULL)},
    {.check = "lost, added",
     .edits = {OF_TENS, LOST},
     .doors = TEN,
     .answer = LUMBER(0, priced.waste_added, NULL)},
    {.check = "sheets added",
     .edits = {OF_BOARD, "sheet board|waste = {percent} % added"},
     .doors = EIGHT,
     .answer = SHEET(0, priced.whole, NULL)},
    {.check = "sheets lost",
     .edits = {OF_BOARD, "sheet board|waste = {percent} % lost"},
     .doors = EIGHT,
     .answer = SHEET(0, priced.whole, NULL)},
};

static void test_wastes(void **state) {
    (void)state;
    ways_run("waste.csv", wastes, COUNT(wastes));
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_sizes), cmocka_unit_test(test_weights),
                                       cmocka_unit_test(test_wastes)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
