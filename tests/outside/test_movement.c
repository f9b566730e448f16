/* SPDX-License-Identifier: MIT */
/* Moisture of wood in air, the movement of a panel and the number of hinges against published
 * tables and examples (moisture.csv, movement.csv, hinges.csv). */
#include "door/movement.h"
#include "ways.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>

#include <cmocka.h>

#define SOLID  "make|style = solid\npanel = poplar"
#define AIR    "climate|driest = {humidity} %\nwettest = {humidity} %\nmoisture = {moisture} %"
#define PANEL  3 /* behind the stiles and both rails */
#define WOOD   "lumber poplar|species = row"
#define WOODS  "name,coef_tangential_CT_per_pct\nyellow-poplar,\nrow,{coefficient}\n"
#define ONE    "id,width,height\nD1,18,30\n"
#define ACROSS "id,width,height\nD1,{door in},30\n"

static const struct way moistures[] = {
    {.check = "moisture",
     .edits = {SOLID, "climate|driest = 5 %\nwettest = {humidity} %\nmoisture = 7 %"},
     .doors = ONE,
     .figure = "moisture, wettest"},
};

static void test_moisture(void **state) {
    (void)state;
    ways_run("moisture.csv", moistures, COUNT(moistures));
}

/* Between rows of the table in proportion, to hundredths, a half up: 25 % is 5.4 and 30 % 6.2, so
 * that 0.005 is a 160th of 5 %; 70 % is 13.1 and 75 % 14.4. */
static void test_between(void **state) {
    (void)state;
    static const struct {
        int64_t humidity, moisture;
    } points[] = {{25031249, 540}, {25031250, 541}, {27500000, 580},  {29968749, 619},
                  {29968750, 620}, {30000000, 620}, {72500000, 1375}, {75000000, 1440}};
    for (size_t i = 0; i < COUNT(points); i++) {
        int64_t moisture;
        assert_true(moisture_chooser.choose(&points[i].humidity, 1, &moisture, 1));
        assert_int_equal(moisture, points[i].moisture);
    }
}

/* The panel is as wide as the row says, to the 1/64 in that doors are cut to; what it moves by.
 * The parts of the frame stand in no groove, so nothing is told of them (by definition). */
static int64_t moved(const struct bench *bench, const struct rows *rows, size_t row,
                     const struct want *by) {
    const struct want width = PART(PANEL, width, NULL);
    for (size_t part = 0; part < PANEL; part++) {
        const struct movement *const frame =
            &bench->estimate.quantities.leaves[0].parts[part].movement;
        assert_true(fig_none(frame->swell) && fig_none(frame->shrink));
    }
    assert_true(llabs(ways_value(bench, &width) - rows_number(rows, row, "width in")) <
                ROWS_ONE / 100);
    return ways_value(bench, by);
}

static int64_t swells(const struct bench *bench, const struct rows *rows, size_t row) {
    return moved(bench, rows, row, &(struct want)PART(PANEL, movement.swell, NULL));
}

static int64_t shrinks(const struct bench *bench, const struct rows *rows, size_t row) {
    return moved(bench, rows, row, &(struct want)PART(PANEL, movement.shrink, NULL));
}

static const struct way movements[] = {
    {.check = "swells",
     .edits = {SOLID, AIR, WOOD},
     .woods = WOODS,
     .doors = ACROSS,
     .ask = swells},
    {.check = "shrinks",
     .edits = {SOLID, AIR, WOOD},
     .woods = WOODS,
     .doors = ACROSS,
     .ask = shrinks},
};

static void test_movement(void **state) {
    (void)state;
    ways_run("movement.csv", movements, COUNT(movements));
}

static const struct way hinges[] = {
    {.check = "hinges",
     .edits = {"make|style = slab\nhinge = hinge",
               "hinges|by height\nby weight\nby height = {by height}\nby weight = {by weight}",
               "sheet board|density\ndensity = {board lb/cuft} lb/cuft"},
     .doors = "id,width,height,opens\nD1,{width in},{height in},{opens}\n",
     .answer = LEAF(0, hinges, NULL)},
};

static void test_hinges(void **state) {
    (void)state;
    ways_run("hinges.csv", hinges, COUNT(hinges));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_moisture), cmocka_unit_test(test_between),
        cmocka_unit_test(test_movement), cmocka_unit_test(test_hinges)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
