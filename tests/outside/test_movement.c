/* SPDX-License-Identifier: MIT */
/* Moisture of wood in air, the movement of a panel and the number of hinges against published
 * tables and examples (moisture.csv, movement.csv, hinges.csv). */
#include "rows.h"

#include "door/movement.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>

#include <cmocka.h>

#define THOUSANDTHS (ROWS_ONE / 1000)

static int64_t moisture(const struct rows *rows, size_t row) {
    const int64_t humidity = rows_number(rows, row, "humidity") / THOUSANDTHS * 1000;
    int64_t hundredths = 0;
    assert_true(moisture_chooser.choose(&humidity, 1, &hundredths, 1));
    return hundredths * (ROWS_ONE / 100);
}

static void test_moisture(void **state) {
    (void)state;
    struct rows rows;
    rows_read(&rows, "moisture.csv");
    for (size_t row = 0; row < rows.count; row++) {
        if (rows_check_is(&rows, row, "moisture")) {
            rows_expect(&rows, row, moisture(&rows, row));
        } else {
            rows_pass_over(&rows, row);
        }
    }
    rows_done(&rows);
}

static struct value value_of(enum unit unit, uint8_t decimals, int64_t amount) {
    return (struct value){
        .unit = (uint8_t)unit, .decimals = decimals, .amount = amount, .set = true};
}

/* A panel of the row's width, made up at its moisture, in the air of its humidity. */
static int64_t movement(const struct rows *rows, size_t row) {
    struct wood wood = {
        .coef_tangential = value_of(UNIT_FACTOR, 5, rows_number(rows, row, "coefficient") / 10000)};
    struct lumber lumber = {.wood = 0};
    const struct value air =
        value_of(UNIT_PERCENT, 0, rows_number(rows, row, "humidity") / ROWS_ONE);
    const struct rates rates = {
        .woods = &wood,
        .wood_count = 1,
        .lumber = &lumber,
        .lumber_count = 1,
        .climate = {.driest = air,
                    .wettest = air,
                    .moisture = value_of(UNIT_PERCENT, 1,
                                         rows_number(rows, row, "moisture") / (ROWS_ONE / 10))}};
    const struct style style = {.groove = value_of(UNIT_NM, 0, NM_PER_INCH)};
    const struct door door = {.style = &style};
    const struct part part = {.kind = PART_PANEL, .material_kind = MATERIAL_LUMBER};
    struct tape tape;
    struct units m;
    const struct calc calc = {.tape = &tape, .units = &m, .rates = &rates};
    tape_init(&tape, true);
    units_init(&m, &tape, LENGTH_INCH, false);
    const fig width = units_length(
        &tape, &m, "width", rows_number(rows, row, "width in") / 1000 * NM_PER_INCH / 1000000,
        (struct place){0});
    const struct movement move = movement_make(&calc, &door, &part, width);
    const bool swells = rows_cell(rows, row, "change")[1] == 'w';
    const int64_t value = tape_scaled(&tape, swells ? move.swell : move.shrink, 6) * 1000;
    assert_int_equal(tape_fault(&tape), TAPE_OK);
    tape_clear(&tape);
    return value;
}

static void test_movement(void **state) {
    (void)state;
    struct rows rows;
    rows_read(&rows, "movement.csv");
    for (size_t row = 0; row < rows.count; row++) {
        if (rows_check_is(&rows, row, "movement")) {
            rows_expect(&rows, row, movement(&rows, row));
        } else {
            rows_pass_over(&rows, row);
        }
    }
    rows_done(&rows);
}

/* A slab of 14 in by the row's height under the rules of the plain shop, as heavy as the row says.
 */
static int64_t hinges(const struct rows *rows, size_t row) {
    char doors[64];
    const int64_t height = rows_number(rows, row, "height in") / ROWS_ONE;
    const char *const edits[BENCH_MOST_EDITS] = {"make|style = slab\nhinge = hinge",
                                                 rows_cell(rows, row, "weight lb")[0] == '\0'
                                                     ? "sheet board|density"
                                                     : "sheet board|density = 40 lb/cuft"};
    struct bench bench;
    (void)snprintf(doors, sizeof doors, "D1,14,%lld\n", (long long)height);
    bench_open(&bench, "hinges", BENCH_INCH, edits, doors);
    bench_sound(&bench);
    assert_int_equal(bench.result, ESTIMATE_OK);
    const int64_t value =
        tape_scaled(&bench.estimate.tape, bench.estimate.quantities.leaves[0].hinges, 0) * ROWS_ONE;
    assert_int_equal(bench_close(&bench), 0);
    return value;
}

static void test_hinges(void **state) {
    (void)state;
    struct rows rows;
    rows_read(&rows, "hinges.csv");
    for (size_t row = 0; row < rows.count; row++) {
        if (rows_check_is(&rows, row, "hinges")) {
            rows_expect(&rows, row, hinges(&rows, row));
        } else {
            rows_pass_over(&rows, row);
        }
    }
    rows_done(&rows);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_moisture),
                                       cmocka_unit_test(test_movement),
                                       cmocka_unit_test(test_hinges)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
