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

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(scaled_to_fewer_decimals),
                                       cmocka_unit_test(equal_figures_without_history)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
