/* SPDX-License-Identifier: MIT */
/* What is asked of figures on a tape, and which are one. Operations: tests/test_tape.c. */
#include "figure/tape.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Without history equal figures of a door are one; nothing left of a count is a figure too. */
static void equal_figures_without_history(void **state) {
    (void)state;
    struct tape tape;
    tape_init(&tape, false);
    const fig one = tape_given(&tape, "one", UNIT_NUMBER, 0, 1, (struct place){.line = 1});
    tape_about(&tape, "door");
    const fig none_left = fig_plus(&tape, "left", one, fig_minus(one));
    const fig two = fig_plus(&tape, "two", one, one);
    assert_false(fig_none(none_left));
    assert_int_equal(tape_amount(&tape, none_left), 0);
    assert_false(fig_same(none_left, two));
    assert_true(fig_same(none_left, fig_plus(&tape, "left again", one, fig_minus(one))));
    assert_true(fig_same(two, fig_plus(&tape, "two again", one, one)));
    tape_clear(&tape);
}

/* Half away from nothing, on either side of it. */
static void scaled_to_fewer_decimals(void **state) {
    static const struct {
        int64_t value, expected;
    } cents[] = {{149, 1}, {150, 2},  {49, 0},    {50, 1},   {0, 0},
                 {-49, 0}, {-50, -1}, {-149, -1}, {-150, -2}};
    (void)state;
    struct tape tape;
    tape_init(&tape, true);
    for (size_t i = 0; i < sizeof cents / sizeof *cents; i++) {
        const fig f =
            tape_given(&tape, "amount", UNIT_MONEY, 2, cents[i].value, (struct place){.line = 1});
        assert_int_equal(tape_scaled(&tape, f, 0), cents[i].expected);
        assert_int_equal(tape_scaled(&tape, f, 2), cents[i].value);
        assert_int_equal(tape_scaled(&tape, f, 3), cents[i].value * 10);
    }
    tape_clear(&tape);
}

/* What is worked out is read at two decimals of a percent, what was given at all of its own, with
 * history and without. */
static void decimals_that_are_read(void **state) {
    (void)state;
    for (int traced = 0; traced < 2; traced++) {
        struct tape tape;
        tape_init(&tape, traced == 1);
        const struct place place = {.line = 1};
        const fig given = tape_given(&tape, "waste", UNIT_PERCENT, 3, 12345, place);
        const fig three = tape_given(&tape, "three", UNIT_COUNT, 0, 3, place);
        const fig made = fig_ratio(&tape, "share", UNIT_PERCENT, (figs){{given}}, (figs){{three}});
        assert_true(tape_decimals(&tape, made) > 2);
        assert_int_equal(tape_read_decimals(&tape, made), 2);
        assert_int_equal(tape_read_decimals(&tape, given), 3);
        assert_int_equal(tape_read_decimals(&tape, three), 0);
        tape_clear(&tape);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(scaled_to_fewer_decimals),
                                       cmocka_unit_test(equal_figures_without_history),
                                       cmocka_unit_test(decimals_that_are_read)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
