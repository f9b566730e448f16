/* SPDX-License-Identifier: MIT */
/* What is spent when buying, beside what the job is charged, and how much of each thing. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define SLAB "make|style = slab"

static const struct bench_case cases[] = {
    /* a slab of 18 x 30 are 3.75 of 32 sq ft, its edges 8 of 100 ft */
    {"half a sheet and a roll are bought, what is used of them is charged",
     {SLAB, "sheet board|half sheet = 48.00\nbanding = tape",
      "banding tape|price = 25.00 per roll\nroll = 100 ft"},
     "D1,18,30\n",
     {PURCHASE(spent[COST_SHEETS], "73"), PURCHASE(sheets, "0"), PURCHASE(half_sheets, "1"),
      PURCHASE(total, "73"), PURCHASE(spent[COST_LUMBER], NULL), PURCHASE(board_feet, NULL),
      PURCHASE(spent[COST_GLASS], NULL), PURCHASE(spent[COST_HARDWARE], NULL),
      PURCHASE(spent[COST_FINISH], NULL), PURCHASE(finish, NULL),
      /* 48 x 3.75 / 16 + 25 x 8 / 100 */
      PURCHASE(charged, "13.25")}},
    {"whole and half sheets of two sorts",
     {"sheet board|half sheet = 48.00", "lumber poplar|price = 4.00 per bf"},
     "id,count,width,height,style\nD1,9,18,30,slab\nD2,1,18,30,plain\n",
     /* 33.75 sq ft are a sheet and a half, the panel one of ply; 80 + 48 + 50, 2 bf at 4.00 */
     {PURCHASE(sheets, "2"), PURCHASE(half_sheets, "1"), PURCHASE(spent[COST_SHEETS], "178"),
      PURCHASE(board_feet, "2 bf"), PURCHASE(cubic_meters, NULL), PURCHASE(spent[COST_LUMBER], "8"),
      PURCHASE(total, "186")}},
    {"lumber by the cubic meter and by the board foot",
     {"lumber thick-poplar|price = 3000 per m3", "door tenoned|thickness = 1"},
     "id,width,height,style,frame\nD1,18,30,plain,poplar\nD2,18,30,tenoned,thick-poplar\n",
     /* 1.25 x (2 x 30 + 2 x 16) x 2 1/4 cubic inches are 0.00424 m3 */
     {PURCHASE(board_feet, "2 bf"), PURCHASE(cubic_meters, "0.005 m3"),
      PURCHASE(spent[COST_LUMBER], "23")}},
    {"what others give is not bought",
     {SLAB, "make|hinge = hinge\npull = pull", "hardware pull|price = by others"},
     "D1,18,30\n",
     {PURCHASE(spent[COST_HARDWARE], "6"), PURCHASE(spent[COST_SHEETS], "80"),
      PURCHASE(total, "86")}},
    {"a pack is bought, two of its hinges are charged",
     {SLAB, "make|hinge = hinge", "hardware hinge|price = 30.00 per pack\npack = 10"},
     "D1,18,30\n",
     {PURCHASE(spent[COST_HARDWARE], "30"), PURCHASE(total, "110"),
      PURCHASE(charged, "15.38")}}, /* 6.00, and 3.75 / 32 of 80.00 */
    /* one square foot of edges each: 0.2494 gal on 100 of them at all that is sprayed */
    {"a can is bought",
     {SLAB "\nfinish = painted", "finish painted|faces = none",
      "spray gun|transfer efficiency = 100 %"},
     "id,count,width,height\nD1,100,48,48\n",
     {PURCHASE(spent[COST_FINISH], "100"), PURCHASE(finish, "0.2494 gal")}},
    {"glass, a door bought in and what is used up by the door",
     {"consumable paper|price = 0.50 per door",
      "door louver|kind = open\nthickness = 3/4\nbought in = 24 per door"},
     "id,width,height,style\nD1,18,30,glazed\nD2,18,30,louver\n",
     /* 14 x 26 are 2.5278 sq ft at 10.00 */
     {PURCHASE(spent[COST_GLASS], "25.28"), PURCHASE(spent[COST_BOUGHT_IN], "24"),
      PURCHASE(spent[COST_CONSUMABLES], "1"), PURCHASE(total, "58.28"), PURCHASE(charged, "58.28"),
      DOOR(0, cost.group[COST_GLASS], "25.28"), DOOR(1, cost.group[COST_GLASS], NULL)}},
};

static void test_purchase(void **state) {
    (void)state;
    bench_run(cases, COUNT(cases), BENCH_INCH);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_purchase)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
