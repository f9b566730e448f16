/* SPDX-License-Identifier: MIT */
/* What a row may say of the shape of its doors: how their grain runs, arched tops,
 * bars on glass.
 * Worked out by hand;
 * docs/method.md has the same. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>

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

#define ARCHED "id,width,height,mid stiles,arch\n"
static const struct bench_case arch_cases[] = {
    {"the rail's blank is wider by the rise, the panel a rectangle",
     {"make|style = profiled\nfinish = painted"},
     ARCHED "D1,18,30,0,2\n",
     {PART(1, width, "4.25"), PART(1, length, "14.25"), PART(1, net, "0.4206"), PART(1, rise, "2"),
      PART(1, rough_width, "4.375"), PART(2, width, "2.25"), PART(2, rise, NULL),
      PART(3, length, "26.125"), PART(3, rise, "2"), LUMBER(0, net, "1.5809"),
      LEAF(0, profile, "0.2597"), LEAF(0, faces, "7.5"), LEAF(0, driver[DRIVER_ARCH], "1")}},
    {"an arched frame for glass: the open part is less, the pane is not",
     {"make|style = glazed\nfinish = painted"},
     ARCHED "D1,18,30,0,2\n",
     {LEAF(0, see_through, "2.3302"), LEAF(0, faces, "2.8396"), LEAF(0, inner_edges, "0.3895"),
      LEAF(0, sprayed, "3.7291"), PART(3, length, "26"), PART(3, rise, NULL)}},
    {"half a circle, 13 1/2 across: 20 61/64 along it, not 21.206",
     {"make|style = open\nfinish = painted"},
     ARCHED "D1,18,30,0,6 3/4\n",
     {LEAF(0, inner_edges, "0.3748"), LEAF(0, see_through, "2.2588")}},
    {"an arch over each column; their mid stile ends where they spring",
     {NULL},
     ARCHED "D1,22 1/2,40,1,1\n",
     {PART(3, length, "35.25"), LEAF(0, driver[DRIVER_ARCH], "2"),
      LEAF(0, driver[DRIVER_JOINT], "6")}},
    {"a template for each length of rail",
     {"door plain|operations = saw",
      "operation saw|per = arch\nminutes = 5\nsetup = 20 min per length"},
     "id,count,width,height,mid rails,arch\nD1,1,18,30,0,2\nD2,3,18,40,1,2\nD3,1,20,30,0,2\n"
     "D4,1,22,30,0,\n",
     {OPERATION(0, run, "25"), OPERATION(0, setups, "2"), OPERATION(0, machine_minutes, "65"),
      SHARE(3, run, NULL)}},
    {"no arch: 0 is a straight rail",
     {NULL},
     ARCHED "D1,18,30,0,0\n",
     {PART(1, width, "2.25"), LEAF(0, driver[DRIVER_ARCH], NULL)}},
};

#define BARS                                                                                       \
    "make|style = glazed\nfinish = painted", "door glazed|bar width = 5/8\nbar thickness = 1/4"
#define BARRED "id,width,height,mid rails,bars\n"
static const struct bench_case bar_cases[] = {
    {"one upright and two level bars on the front",
     {BARS},
     BARRED "D1,18,30,0,2 x 3\n",
     {PART(4, length, "25.5"), PART(4, width, "0.25"), PART(4, count, "1"), PART(4, net, "0.0443"),
      PART(4, rough_width, "0.375"), PART(4, rough_length, "26.5"), PART(4, solid, NULL),
      PART(5, length, "13.5"), PART(5, count, "2"), PART(5, net, "0.0234"),
      LEAF(0, bar_area, "0.4102"), LEAF(0, sprayed, "4.0353"), LEAF(0, driver[DRIVER_BAR], "3"),
      LEAF(0, driver[DRIVER_BAR_RUN], "4.375"), LEAF(0, driver[DRIVER_PANEL], "1"),
      LEAF(0, driver[DRIVER_SOLID_PANEL], NULL), LEAF(0, driver[DRIVER_PART], "8"),
      LUMBER(0, net, "1.4741")}},
    {"on both faces",
     {BARS "\nbars on = both"},
     BARRED "D1,18,30,0,2 x 3\n",
     {PART(4, count, "2"), PART(5, count, "4"), LEAF(0, bar_area, "0.8203")}},
    {"on both faces, of which the finish covers one",
     {BARS "\nbars on = both", "finish painted|faces = back"},
     BARRED "D1,18,30,0,2 x 3\n",
     {LEAF(0, bar_area, "0.4102")}},
    {"on the front of a door whose back is finished",
     {BARS, "finish painted|faces = back"},
     BARRED "D1,18,30,0,2 x 3\n",
     {LEAF(0, bar_area, NULL), LEAF(0, driver[DRIVER_BAR], "3")}},
    {"on each pane of two",
     {BARS},
     BARRED "D1,18,30,1,2 x 1\n",
     {LEAF(0, driver[DRIVER_BAR], "2"), LEAF(0, driver[DRIVER_BAR_RUN], "1.9375")}},
    {"their weight is of a strip 5/8 by 1/4",
     {BARS},
     BARRED "D1,18,30,0,2 x 1\n",
     {PART(4, weight, "0.07")}},
};

/* Of the parts of a frame the top rail alone is arched, and none is glued up. */
static void test_straight(void **state) {
    (void)state;
    struct bench bench;
    const char *const edits[BENCH_MOST_EDITS] = {BARS};
    bench_open(&bench, "straight", BENCH_INCH, edits,
               "id,width,height,mid rails,mid stiles,arch,bars\nD1,36,60,1,1,2,2 x 2\n");
    bench_sound(&bench);
    const struct door *const door = &bench.estimate.doors.doors[0];
    unsigned kinds = 0;
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const part = &door->parts[i];
        kinds |= 1U << part->kind;
        if ((part->rise > 0) != (part->kind == PART_TOP_RAIL) || part->staves != 1) {
            bench_wrong(&bench, "part %zu rises by %lld, of %d", i, (long long)part->rise,
                        (int)part->staves);
        }
    }
    assert_int_equal(bench_close(&bench), 0);
    assert_int_equal(kinds, 1U << PART_STILE | 1U << PART_TOP_RAIL | 1U << PART_BOTTOM_RAIL |
                                1U << PART_MID_RAIL | 1U << PART_MID_STILE | 1U << PART_PANE |
                                1U << PART_BAR);
}

static void test_bars(void **state) {
    (void)state;
    bench_run(bar_cases, COUNT(bar_cases), BENCH_INCH);
}

static void test_arches(void **state) {
    (void)state;
    bench_run(arch_cases, COUNT(arch_cases), BENCH_INCH);
}

/* An arch rises by half the width of an opening at the most, and by less than its height. */
static void test_too_high(void **state) {
    (void)state;
    static const struct {
        const char *doors;
        bool refused;
    } cases[] = {{"D1,18,30,6 3/4\n", false}, /* of 13 1/2 */
                 {"D1,18,30,6 49/64\n", true},
                 {"D1,40,8,3 31/64\n", false}, /* of 3 1/2 */
                 {"D1,40,8,3 1/2\n", true}};
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        char doors[128];
        (void)snprintf(doors, sizeof doors, "id,width,height,arch\n%s", cases[i].doors);
        bench_open(&bench, cases[i].doors, BENCH_INCH, NULL, doors);
        if (bench_has(&bench, "arch-too-high") != cases[i].refused) {
            bench_wrong(&bench, cases[i].refused ? "not refused" : "refused");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

static void parts_are_named(void **state) {
    (void)state;
    static const struct {
        enum part_kind kind;
        length rise;
        const char *name;
    } parts[] = {
        {PART_TOP_RAIL, 0, "top rail"},
        {PART_TOP_RAIL, 1, "top rail, arched"},
        {PART_PANEL, 0, "panel"},
        {PART_PANEL, 1, "panel, arched"},
    };
    for (size_t i = 0; i < COUNT(parts); i++) {
        const struct part part = {.kind = parts[i].kind, .rise = parts[i].rise};
        assert_string_equal(part_full_name(&part), parts[i].name);
    }
}

static void test_grain(void **state) {
    (void)state;
    bench_run(grain_cases, COUNT(grain_cases), BENCH_INCH);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_grain),      cmocka_unit_test(test_arches),
        cmocka_unit_test(test_bars),       cmocka_unit_test(test_too_high),
        cmocka_unit_test(parts_are_named), cmocka_unit_test(test_straight)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
