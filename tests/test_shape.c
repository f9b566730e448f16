/* SPDX-License-Identifier: MIT */
/* What a row may say of the shape of its doors: how their grain runs. Worked out by hand;
 * docs/method.md has the same. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

/* Parts run along the grain, whatever the style says. */
static const struct bench_case grain_cases[] = {
    {"a slab with level grain",
     {"make|style = slab\ngrain = horizontal"},
     "D1,18,30\n",
     {PART(0, length, "18"), PART(0, width, "30")}},
    {"a row's own grain, upright in a style of level grain",
     {"make|style = slab", "door slab|panel grain = horizontal"},
     "id,width,height,grain\nD1,18,30,vertical\n",
     {PART(0, length, "30"), PART(0, width, "18")}},
    {"a solid panel: its clearance across is of its height",
     {"make|style = solid\npanel = poplar"},
     "id,width,height,grain\nD1,18,30,horizontal\n",
     {PART(3, length, "14.125"), PART(3, width, "26")}},
    {"a pane has none",
     {"make|style = glazed\ngrain = horizontal"},
     "D1,18,30\n",
     {PART(3, length, "26"), PART(3, width, "14")}},
    {"level grain: more staves, and movement by the height",
     {"make|style = solid\npanel = poplar\ngrain = horizontal", "door solid|stave = 5",
      "climate|driest = 30 %\nwettest = 60 %\nmoisture = 7 %"},
     "D1,18,30\n",
     {PART(3, width, "26"), PART(3, length, "14.125"), PART(3, rough_width, "26.75"),
      PART(3, glue, "5.8854"), PART(3, movement.swell, "0.30056"), PART(3, movement.room, "0.25"),
      PART(3, net, "2.5503")}},
};

static void test_grain(void **state) {
    (void)state;
    bench_run(grain_cases, COUNT(grain_cases), BENCH_INCH);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_grain)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
