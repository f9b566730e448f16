/* SPDX-License-Identifier: MIT */
/* Board feet and surface measure against published worked examples (board-feet.csv). */
#include "rows.h"

#include "model/units.h"
#include "stock/surface_measure.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>

#include <cmocka.h>

static length given(const struct rows *rows, size_t row, const char *column, const char *unit) {
    char text[64];
    length value = 0;
    (void)snprintf(text, sizeof text, "%s %s", rows_cell(rows, row, column), unit);
    assert_int_equal(length_read(text, LENGTH_INCH, &value), LENGTH_OK);
    return value;
}

/* As lumber is counted: thickness (an inch at least) x width x length over 144 cubic inches, each
 * piece rounded to its decimals, then times the pieces. */
static int64_t board_feet(const struct rows *rows, size_t row) {
    struct tape tape;
    struct units m;
    const struct place nowhere = {0};
    tape_init(&tape, true);
    units_init(&m, &tape, LENGTH_INCH, false);
    const fig thick = fig_larger(
        &tape, "thickness counted",
        units_length(&tape, &m, "thickness", given(rows, row, "thickness in", "in"), nowhere),
        m.inch);
    const fig width = units_length(&tape, &m, "width", given(rows, row, "width in", "in"), nowhere);
    const fig along =
        units_length(&tape, &m, "length", given(rows, row, "length ft", "ft"), nowhere);
    const fig pieces = tape_given(&tape, "pieces", UNIT_COUNT, 0,
                                  rows_number(rows, row, "pieces") / ROWS_ONE, nowhere);
    const fig each = fig_ratio(&tape, "lumber net, each", UNIT_BF, (figs){{thick, width, along}},
                               (figs){{m.length3_per_bf}});
    const fig all = fig_total(&tape, "lumber net", UNIT_BF, &pieces, &each, 1);
    const int64_t value = tape_scaled(&tape, all, 6) * 1000;
    assert_int_equal(tape_fault(&tape), TAPE_OK);
    tape_clear(&tape);
    return value;
}

static int64_t surface(const struct rows *rows, size_t row) {
    struct surface_measure measure = {0};
    const int64_t pieces = rows_number(rows, row, "pieces") / ROWS_ONE;
    for (int64_t i = 0; i < pieces; i++) {
        (void)surface_measure_add(&measure, given(rows, row, "width in", "in"),
                                  given(rows, row, "length ft", "ft"));
    }
    return measure.feet * ROWS_ONE;
}

/* A board as wide as it takes to have its length in whole feet as its surface measure. */
static int64_t tallied_length(const struct rows *rows, size_t row) {
    struct surface_measure measure = {0};
    (void)surface_measure_add(&measure, NM_PER_FOOT, given(rows, row, "length ft", "ft"));
    return measure.feet * ROWS_ONE;
}

static void test_published(void **state) {
    (void)state;
    static const struct {
        const char *check;
        int64_t (*answer)(const struct rows *rows, size_t row);
    } answers[] = {{"board feet", board_feet}, {"surface", surface}, {"length", tallied_length}};
    struct rows rows;
    rows_read(&rows, "board-feet.csv");
    for (size_t row = 0; row < rows.count; row++) {
        size_t a = 0;
        while (a < 3 && !rows_check_is(&rows, row, answers[a].check)) {
            a++;
        }
        if (a < 3) {
            rows_expect(&rows, row, answers[a].answer(&rows, row));
        } else {
            rows_pass_over(&rows, row);
        }
    }
    rows_done(&rows);
}

/* Board feet of a pack of that surface measure; thickness: nominal. */
static int64_t pack_feet(int64_t surface, length thickness) {
    struct tape tape;
    struct units m;
    const struct calc calc = {.tape = &tape, .units = &m};
    const struct place nowhere = {0};
    tape_init(&tape, true);
    units_init(&m, &tape, LENGTH_INCH, false);
    const fig thick = fig_larger(&tape, "thickness counted",
                                 calc_length(&calc, "thickness", thickness, nowhere), m.inch);
    const fig feet = surface_measure_board_feet(
        &calc, tape_given(&tape, "surface", UNIT_COUNT, 0, surface, nowhere), thick);
    const int64_t value = tape_amount(&tape, feet);
    assert_int_equal(tape_fault(&tape), TAPE_OK);
    tape_clear(&tape);
    return value;
}

/* The rules by which a pack is tallied. Sources: surface measure to the nearest whole foot, NHLA
 * Rules Corner, December 2020 (rule book p. 7, par. 16), https://www.nhla.com/rc122020/; whole feet
 * of length, widths as they are, thickness once on the pack,
 * http://goodwoodcorp.com/HardWoodTerminology.asp; an exact half by turns, G. Wengert,
 * http://www.woodweb.com/knowledge_base/Rounding_Numbers_when_Figuring.html. The boards are ours.
 */
static void test_packs(void **state) {
    (void)state;
    static const struct {
        const char *name;
        struct {
            const char *width, *along;
        } boards[4];
        const char *thickness;
        int64_t surface, feet;
    } packs[] = {
        {"one board of 5 10/12", {{"7", "10 ft"}}, "1", 6, 6},
        {"5/4: 7.5, half up", {{"7", "10 ft"}}, "1 1/4", 6, 8},
        {"5/4 is rounded on the pack, not the board",
         {{"7", "10 ft"}, {"7", "10 ft"}},
         "1 1/4",
         12,
         15},
        {"under 1 in counts as 1 in", {{"7", "10 ft"}}, "3/4", 6, 6},
        {"the inches over whole feet are dropped", {{"12", "10 ft 11 in"}}, "1", 10, 10},
        {"a half goes up first", {{"8 1/2", "12 ft"}}, "1", 9, 9},
        {"then down", {{"8 1/2", "12 ft"}, {"8 1/2", "12 ft"}}, "1", 17, 17},
        {"then up again",
         {{"8 1/2", "12 ft"}, {"8 1/2", "12 ft"}, {"8 1/2", "12 ft"}},
         "1",
         26,
         26},
        {"boards between do not change the turn",
         {{"8 1/2", "12 ft"}, {"8 3/4", "12 ft"}, {"8 1/2", "12 ft"}},
         "1",
         26,
         26},
        {"8/4 doubles it", {{"6 1/2", "8 ft"}, {"8", "12 ft"}}, "2", 12, 24},
    };
    int wrong = 0;
    for (size_t i = 0; i < sizeof packs / sizeof *packs; i++) {
        struct surface_measure measure = {0};
        length value = 0;
        for (size_t b = 0; b < 4 && packs[i].boards[b].width != NULL; b++) {
            length along = 0;
            assert_int_equal(length_read(packs[i].boards[b].width, LENGTH_INCH, &value), LENGTH_OK);
            assert_int_equal(length_read(packs[i].boards[b].along, LENGTH_INCH, &along), LENGTH_OK);
            (void)surface_measure_add(&measure, value, along);
        }
        assert_int_equal(length_read(packs[i].thickness, LENGTH_INCH, &value), LENGTH_OK);
        const int64_t feet = pack_feet(measure.feet, value);
        if (measure.feet != packs[i].surface || feet != packs[i].feet) {
            print_error("%s: surface %lld and %lld bf, expected %lld and %lld\n", packs[i].name,
                        (long long)measure.feet, (long long)feet, (long long)packs[i].surface,
                        (long long)packs[i].feet);
            wrong++;
        }
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_published),
                                       cmocka_unit_test(test_packs)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
