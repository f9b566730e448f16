/* SPDX-License-Identifier: MIT */
/* The operations of the tape, one by one. Replay: tests/test_replay.c. */
#include "figure/tape.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>

#define MOST 6

struct number {
    int64_t value;
    uint8_t decimals;
};

/* One figure made from givens.  over: how many of the operands of a ratio stand above the line, or
 * of a sum are added. */
struct operation_case {
    const char *name;
    enum figure_op op;
    enum unit unit;
    struct number of[MOST];
    size_t count, over;
    int64_t expected;
    uint8_t decimals;
    enum tape_fault fault;
};

static const struct operation_case cases[] = {
    {"a sum keeps all decimals", OP_SUM, UNIT_MONEY, {{410, 2}, {12345, 4}}, 2, 2, 53345, 4, 0},
    {"a sum subtracts", OP_SUM, UNIT_MONEY, {{100, 2}, {250, 2}}, 2, 1, -150, 2, 0},
    {"a sum of nothing is nothing", OP_SUM, UNIT_MONEY, {{0, 0}}, 0, 0, 0, 2, 0},
    {"a sum too large",
     OP_SUM,
     UNIT_MONEY,
     {{999999999999, 2}, {1, 2}},
     2,
     2,
     0,
     2,
     TAPE_TOO_LARGE},
    {"a sum too far below nothing",
     OP_SUM,
     UNIT_MONEY,
     {{999999999999, 2}, {1, 2}},
     2,
     0,
     0,
     2,
     TAPE_TOO_LARGE},
    {"the largest there is",
     OP_SUM,
     UNIT_MONEY,
     {{999999999998, 2}, {1, 2}},
     2,
     2,
     999999999999,
     2,
     0},
    {"a total rounds once",
     OP_TOTAL,
     UNIT_MONEY,
     {{3, 0}, {1005, 3}, {1, 0}, {2010, 3}},
     4,
     4,
     503,
     2,
     0},
    {"a total of unlike decimals: 3 x 1.005 + 2.5",
     OP_TOTAL,
     UNIT_MONEY,
     {{3, 0}, {1005, 3}, {1, 0}, {25, 1}},
     4,
     4,
     552,
     2,
     0},
    {"a total of ties, each of them half a cent",
     OP_TOTAL,
     UNIT_MONEY,
     {{1, 0}, {5, 3}, {1, 0}, {5, 3}},
     4,
     4,
     1,
     2,
     0},
    {"a ratio of a tie goes up", OP_RATIO, UNIT_MONEY, {{1005, 3}}, 1, 1, 101, 2, 0},
    /* 123456.123456 x 1234 = 152344856.344704: of 12 decimals 10 are rounded away */
    {"rounded by ten powers of ten",
     OP_RATIO,
     UNIT_MONEY,
     {{123456123456, 6}, {1234000000, 6}},
     2,
     2,
     15234485634,
     2,
     0},
    {"below a tie it stays", OP_RATIO, UNIT_MONEY, {{1004999, 6}}, 1, 1, 100, 2, 0},
    {"a negative tie goes away from nothing", OP_RATIO, UNIT_MONEY, {{-1005, 3}}, 1, 1, -101, 2, 0},
    {"two negatives", OP_RATIO, UNIT_MONEY, {{-10, 0}, {-4, 0}}, 2, 1, 250, 2, 0},
    {"a negative below", OP_RATIO, UNIT_MONEY, {{10, 0}, {-4, 0}}, 2, 1, -250, 2, 0},
    {"board feet of a stile, docs/method.md",
     OP_RATIO,
     UNIT_BF,
     {{1, 0}, {225, 2}, {30, 0}, {144, 0}},
     4,
     3,
     4688,
     4,
     0},
    {"tax of docs/method.md",
     OP_RATIO,
     UNIT_MONEY,
     {{1234, 2}, {8875, 3}, {100, 0}},
     3,
     2,
     110,
     2,
     0},
    {"tax that must not round twice",
     OP_RATIO,
     UNIT_MONEY,
     {{741, 2}, {6, 0}, {100, 0}},
     3,
     2,
     44,
     2,
     0},
    {"three over three",
     OP_RATIO,
     UNIT_FACTOR,
     {{7, 0}, {11, 0}, {13, 0}, {2, 0}, {3, 0}, {5, 0}},
     6,
     3,
     33366667,
     6,
     0},
    {"a product near the limit",
     OP_RATIO,
     UNIT_COUNT,
     {{999999, 0}, {1000000, 0}},
     2,
     2,
     999999000000,
     0,
     0},
    {"a product too large",
     OP_RATIO,
     UNIT_COUNT,
     {{1000000, 0}, {1000000, 0}},
     2,
     2,
     0,
     0,
     TAPE_TOO_LARGE},
    {"large on the way, small in the end",
     OP_RATIO,
     UNIT_COUNT,
     {{999999999999, 0},
      {999999999999, 0},
      {999999999999, 0},
      {999999999999, 0},
      {999999999999, 0}},
     5,
     3,
     999999999999,
     0,
     0},
    {"nothing below the line", OP_RATIO, UNIT_MONEY, {{1, 0}, {0, 0}}, 2, 1, 0, 2, TAPE_DIVISION},
    {"nothing over nothing is nothing", OP_RATIO, UNIT_MONEY, {{0, 0}, {0, 0}}, 2, 1, 0, 2, 0},
    {"the larger, decimals of both", OP_LARGER, UNIT_MONEY, {{15, 1}, {1499, 3}}, 2, 2, 1500, 3, 0},
    {"the smaller", OP_SMALLER, UNIT_MONEY, {{15, 1}, {1499, 3}}, 2, 2, 1499, 3, 0},
    {"the larger of negatives", OP_LARGER, UNIT_MONEY, {{-2, 0}, {-3, 0}}, 2, 2, -2, 0, 0},
    {"up to a multiple", OP_UP, UNIT_MONEY, {{100001, 4}, {50, 2}}, 2, 2, 1050, 2, 0},
    {"a multiple stays", OP_UP, UNIT_MONEY, {{105000, 4}, {50, 2}}, 2, 2, 1050, 2, 0},
    {"up of nothing", OP_UP, UNIT_MONEY, {{0, 0}, {50, 2}}, 2, 2, 0, 2, 0},
    {"up of a negative goes toward nothing",
     OP_UP,
     UNIT_MONEY,
     {{-105, 2}, {50, 2}},
     2,
     2,
     -100,
     2,
     0},
    {"up by nothing", OP_UP, UNIT_MONEY, {{1, 0}, {0, 0}}, 2, 2, 0, 0, TAPE_DIVISION},
    {"pick up to: at a limit",
     OP_PICK_UPTO,
     UNIT_COUNT,
     {{40, 0}, {40, 0}, {2, 0}, {60, 0}, {3, 0}},
     5,
     5,
     2,
     0,
     0},
    {"pick up to: just over it",
     OP_PICK_UPTO,
     UNIT_COUNT,
     {{4001, 2}, {40, 0}, {2, 0}, {60, 0}, {3, 0}},
     5,
     5,
     3,
     0,
     0},
    {"pick up to: past the last",
     OP_PICK_UPTO,
     UNIT_COUNT,
     {{99, 0}, {40, 0}, {2, 0}, {60, 0}, {3, 0}},
     5,
     5,
     3,
     0,
     0},
    {"pick from: at a limit",
     OP_PICK_FROM,
     UNIT_MONEY,
     {{100, 0}, {0, 0}, {410, 2}, {100, 0}, {375, 2}},
     5,
     5,
     375,
     2,
     0},
    {"pick from: just under it",
     OP_PICK_FROM,
     UNIT_MONEY,
     {{999999, 4}, {0, 0}, {410, 2}, {100, 0}, {375, 2}},
     5,
     5,
     410,
     2,
     0},
    {"pick from: below the first",
     OP_PICK_FROM,
     UNIT_MONEY,
     {{-1, 0}, {0, 0}, {410, 2}, {100, 0}, {375, 2}},
     5,
     5,
     410,
     2,
     0},
    {"a pick has the decimals of its finest value",
     OP_PICK_FROM,
     UNIT_MONEY,
     {{0, 0}, {0, 0}, {4, 0}, {100, 0}, {375, 2}},
     5,
     5,
     400,
     2,
     0},
    {"a given too large", OP_GIVEN, UNIT_MONEY, {{1000000000000, 2}}, 1, 1, 0, 2, TAPE_TOO_LARGE},
};

static fig make_sum(struct tape *tape, const struct operation_case *c, const fig *of) {
    fig terms[MOST];
    for (size_t i = 0; i < c->count; i++) {
        terms[i] = i < c->over ? of[i] : fig_minus(of[i]);
    }
    return fig_sum(tape, "made", c->unit, terms, c->count);
}

static fig make_ratio(struct tape *tape, const struct operation_case *c, const fig *of) {
    figs over = {{{0}}};
    figs under = {{{0}}};
    for (size_t i = 0; i < c->count; i++) {
        if (i < c->over) {
            over.f[i] = of[i];
        } else {
            under.f[i - c->over] = of[i];
        }
    }
    return fig_ratio(tape, "made", c->unit, over, under);
}

/* Every other operand from `first` on. */
static void every_other(const fig *of, size_t count, size_t first, fig *out) {
    for (size_t i = first; i < count; i += 2) {
        *out++ = of[i];
    }
}

static fig make_table(struct tape *tape, const struct operation_case *c, const fig *of) {
    fig left[MOST];
    fig right[MOST];
    const size_t start = c->op == OP_TOTAL ? 0 : 1;
    const size_t rows = (c->count - start) / 2;
    every_other(of, c->count, start, left);
    every_other(of, c->count, start + 1, right);
    if (c->op == OP_TOTAL) {
        return fig_total(tape, "made", c->unit, left, right, rows);
    }
    return c->op == OP_PICK_UPTO ? fig_pick_upto(tape, "made", of[0], left, right, rows)
                                 : fig_pick_from(tape, "made", of[0], left, right, rows);
}

static fig make(struct tape *tape, const struct operation_case *c) {
    fig of[MOST] = {{0}};
    for (size_t i = 0; i < c->count; i++) {
        of[i] = tape_given(tape, "given", c->unit, c->of[i].decimals, c->of[i].value,
                           (struct place){.line = 1});
    }
    switch (c->op) {
    case OP_SUM:
        return make_sum(tape, c, of);
    case OP_RATIO:
        return make_ratio(tape, c, of);
    case OP_LARGER:
        return fig_larger(tape, "made", of[0], of[1]);
    case OP_SMALLER:
        return fig_smaller(tape, "made", of[0], of[1]);
    case OP_UP:
        return fig_up(tape, "made", of[0], of[1]);
    case OP_TOTAL:
    case OP_PICK_UPTO:
    case OP_PICK_FROM:
        return make_table(tape, c, of);
    default:
        return of[0];
    }
}

/* On a tape of either sort: what is traced is never asked by an operation. */
static void operate(const struct operation_case *c, bool traced) {
    struct tape tape;
    tape_init(&tape, traced);
    const fig made = make(&tape, c);
    const int64_t value = tape_amount(&tape, made);
    const uint8_t decimals = tape_decimals(&tape, made);
    if (tape_fault(&tape) != c->fault ||
        (c->fault == TAPE_OK && (value != c->expected || decimals != c->decimals))) {
        print_error("%s: fault %d, value %lld, decimals %d\n", c->name, (int)tape_fault(&tape),
                    (long long)value, (int)decimals);
    }
    assert_int_equal(tape_fault(&tape), c->fault);
    if (c->fault == TAPE_OK) {
        assert_int_equal(value, c->expected);
        assert_int_equal(decimals, c->decimals);
        assert_int_equal(traced ? tape_replay(&tape) : 0, 0);
        assert_int_equal(traced ? tape_operands(&tape, made) : c->count, c->count);
    }
    tape_clear(&tape);
}

static void operations(void **state) {
    (void)state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        operate(&cases[i], true);
        operate(&cases[i], false);
    }
}

/* The first and the last operand. */
static bool choose_ends(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    (void)outputs;
    out[0] = in[0] / 1000000;
    out[1] = in[count - 1] / 1000000;
    return true;
}

/* Choices that follow each other are each asked for, and what is known is taken. */
static void choices_are_told_apart(void **state) {
    (void)state;
    static const struct chooser ends = {.name = "ends", .choose = choose_ends};
    static const char *const labels[] = {"first", "last"};
    for (int traced = 0; traced < 2; traced++) {
        struct tape tape;
        fig out[3][2];
        tape_init(&tape, traced == 1);
        const fig two = tape_constant(&tape, "two", UNIT_COUNT, 0, 2, "test");
        const fig five = tape_constant(&tape, "five", UNIT_COUNT, 0, 5, "test");
        const fig there[] = {two, five};
        const fig back[] = {five, two};
        fig_chosen(&tape, "end", UNIT_COUNT, &ends, there, 2, out[0], 2);
        fig_chosen(&tape, "end", UNIT_COUNT, &ends, back, 2, out[1], 2);
        fig_chosen_known(&tape, labels, UNIT_COUNT, &ends, there, 2, (const int64_t[]){7, 8},
                         out[2], 2);
        static const int64_t expected[3][2] = {{2, 5}, {5, 2}, {7, 8}};
        for (size_t i = 0; i < 6; i++) {
            assert_int_equal(tape_amount(&tape, out[i / 2][i % 2]), expected[i / 2][i % 2]);
        }
        tape_clear(&tape);
    }
}

/* A replay asks again for choices whose operands have changed, and needs none. */
static void a_replay_chooses_again(void **state) {
    (void)state;
    static const struct chooser ends = {.name = "ends", .choose = choose_ends};
    struct tape tape;
    fig out[2];
    tape_init(&tape, true);
    const fig two = tape_given(&tape, "two", UNIT_COUNT, 0, 2, (struct place){.line = 1});
    const fig five = tape_given(&tape, "five", UNIT_COUNT, 0, 5, (struct place){.line = 2});
    assert_int_equal(tape_replay(&tape), 0);
    fig_chosen(&tape, "end", UNIT_COUNT, &ends, (fig[]){two, five}, 2, out, 2);
    tape_set(&tape, two, 3);
    assert_int_equal(tape_replay(&tape), 1);
    assert_int_equal(tape_amount(&tape, out[0]), 3);
    tape_set(&tape, five, 4);
    assert_int_equal(tape_replay(&tape), 1);
    assert_int_equal(tape_amount(&tape, out[1]), 4);
    tape_clear(&tape);
}

/* The first fault sticks, and where it was. */
static void first_fault(bool traced) {
    struct tape tape;
    tape_init(&tape, traced);
    tape_about(&tape, "G01");
    const fig one = tape_constant(&tape, "one", UNIT_COUNT, 0, 1, "test");
    const fig nothing = tape_constant(&tape, "nothing", UNIT_COUNT, 0, 0, "test");
    (void)fig_ratio(&tape, "bad", UNIT_COUNT, (figs){{one}}, (figs){{nothing}});
    const fig huge = tape_constant(&tape, "huge", UNIT_COUNT, 0, INT64_C(2000000000000), "test");
    assert_false(fig_none(huge));
    assert_int_equal(tape_fault(&tape), TAPE_DIVISION);
    assert_string_equal(tape_fault_label(&tape), "bad");
    assert_string_equal(tape_fault_subject(&tape), "G01");
    tape_clear(&tape);
}

static void the_first_fault_sticks(void **state) {
    (void)state;
    first_fault(true);
    first_fault(false);
}

static void replay_follows_a_given(void **state) {
    (void)state;
    struct tape tape;
    tape_init(&tape, true);
    const fig rate = tape_given(&tape, "rate", UNIT_MONEY_PER_HOUR, 2, 3800, (struct place){0});
    const fig hours = tape_given(&tape, "hours", UNIT_HOUR, 2, 150, (struct place){0});
    const fig pay = fig_ratio(&tape, "pay", UNIT_MONEY, (figs){{rate, hours}}, (figs){{{0}}});
    const fig twice = fig_plus(&tape, "twice", pay, pay);
    assert_int_equal(tape_amount(&tape, twice), 11400);
    tape_set(&tape, rate, 4000);
    assert_int_equal(tape_replay(&tape), 2);
    assert_int_equal(tape_amount(&tape, pay), 6000);
    assert_int_equal(tape_amount(&tape, twice), 12000);
    assert_int_equal(tape_replay(&tape), 0);
    tape_clear(&tape);
}

static void figures_tell_their_operands(void **state) {
    (void)state;
    struct tape tape;
    char text[32];
    tape_init(&tape, true);
    tape_about(&tape, "G01");
    const fig a = tape_given(&tape, "a", UNIT_MONEY, 2, -50, (struct place){.line = 7});
    const fig b = tape_constant(&tape, "b", UNIT_MONEY, 0, 3, "a book");
    const fig sum = fig_plus(&tape, "a less b", a, fig_minus(b));
    assert_int_equal(tape_operands(&tape, sum), 2);
    assert_int_equal(tape_operand(&tape, sum, 1).f.id, b.id);
    assert_true(tape_operand(&tape, sum, 1).minus);
    assert_string_equal(tape_label(&tape, sum), "a less b");
    assert_string_equal(tape_subject_name(&tape, sum), "G01");
    assert_int_equal(tape_origin(&tape, a).place.line, 7);
    assert_string_equal(tape_origin(&tape, b).source, "a book");
    assert_string_equal(tape_text(&tape, sum, text, sizeof text), "-3.50");
    assert_int_equal(tape_scaled(&tape, sum, 0), -4);
    assert_int_equal(tape_scaled(&tape, sum, 4), -35000);
    assert_string_equal(tape_text(&tape, (fig){0}, text, sizeof text), "0");
    tape_clear(&tape);
}

/* Whether equal literals are one is the linker's choice; the tape must not hang on it. */
static void a_source_is_its_text(void **state) {
    (void)state;
    const char one[] = "by definition";
    const char other[] = "by definition";
    struct tape tape;
    tape_init(&tape, true);
    const fig a = tape_constant(&tape, "no money", UNIT_MONEY, 0, 0, one);
    const fig b = tape_constant(&tape, "no money", UNIT_MONEY, 0, 0, other);
    const fig c = tape_constant(&tape, "no money", UNIT_MONEY, 0, 0, "by custom");
    assert_int_equal(a.id, b.id);
    assert_int_not_equal(a.id, c.id);
    tape_clear(&tape);
}

/* A ratio of these decimals, and a whole one of a large number. */
static void ratio_of_decimals(int64_t number, uint8_t over, uint8_t under) {
    struct tape tape;
    tape_init(&tape, true);
    const int64_t large = INT64_C(200000000007);
    const fig a = tape_given(&tape, "a", UNIT_NUMBER, over, number, (struct place){.line = 1});
    const fig b = tape_given(&tape, "b", UNIT_NUMBER, under, 7, (struct place){.line = 2});
    const fig c = tape_given(&tape, "c", UNIT_NUMBER, 6, large, (struct place){.line = 3});
    const fig fine = fig_ratio(&tape, "fine", UNIT_FACTOR, (figs){{a}}, (figs){{b}});
    const fig whole = fig_ratio(&tape, "whole", UNIT_COUNT, (figs){{c}}, (figs){{b}});
    __int128 top = number;
    __int128 bottom = 7;
    __int128 count = large;
    for (int d = 0; d < 6 + under; d++) {
        top *= 10;
        count *= d < under ? 10 : 1;
    }
    for (int d = 0; d < over; d++) {
        bottom *= 10;
    }
    const __int128 seven = 7000000;
    assert_int_equal(tape_amount(&tape, fine), (top + bottom / 2) / bottom);
    assert_int_equal(tape_amount(&tape, whole), (count + seven / 2) / seven);
    assert_int_equal(tape_fault(&tape), TAPE_OK);
    tape_clear(&tape);
}

/* 5 x 10^-over / (7 x 10^-under), to 6 decimals and to none: every power of ten that is met, one of
 * which that is off by one shows in either 5 / 7 or 6 / 7. */
static void ratios_of_all_decimals(void **state) {
    (void)state;
    for (uint8_t over = 0; over <= 6; over++) {
        for (uint8_t under = 0; under <= 6; under++) {
            ratio_of_decimals(5, over, under);
            ratio_of_decimals(6, over, under);
        }
    }
}

/* docs/method.md, "Units and rounding"; a rate that is computed has six. */
static void units_have_their_decimals(void **state) {
    (void)state;
    static const struct {
        const char *name;
        enum unit unit;
        uint8_t decimals;
    } units[] = {
        {"", UNIT_NUMBER, 6},
        {"", UNIT_COUNT, 0},
        {"nm", UNIT_NM, 0},
        {"in", UNIT_IN, 6},
        {"mm", UNIT_MM, 6},
        {"ft", UNIT_FT, 4},
        {"m", UNIT_M, 4},
        {"mil", UNIT_MIL, 4},
        {"um", UNIT_UM, 3},
        {"sq ft", UNIT_SQFT, 4},
        {"m2", UNIT_M2, 4},
        {"bf", UNIT_BF, 4},
        {"m3", UNIT_M3, 6},
        {"gal", UNIT_GAL, 4},
        {"L", UNIT_L, 4},
        {"min", UNIT_MIN, 2},
        {"h", UNIT_HOUR, 2},
        {"days", UNIT_DAY, 2},
        {"lb", UNIT_LB, 2},
        {"kg", UNIT_KG, 2},
        {"%", UNIT_PERCENT, 4},
        {"", UNIT_FACTOR, 6},
        {"", UNIT_MONEY, 2},
        {"per bf", UNIT_MONEY_PER_BF, 6},
        {"per m3", UNIT_MONEY_PER_M3, 6},
        {"per sheet", UNIT_MONEY_PER_SHEET, 6},
        {"each", UNIT_MONEY_EACH, 6},
        {"per hour", UNIT_MONEY_PER_HOUR, 6},
        {"per sq ft", UNIT_MONEY_PER_SQFT, 6},
        {"per m2", UNIT_MONEY_PER_M2, 6},
        {"per door", UNIT_MONEY_PER_DOOR, 6},
        {"per hinge", UNIT_MONEY_PER_HINGE, 6},
        {"per ft", UNIT_MONEY_PER_FT, 6},
        {"per m", UNIT_MONEY_PER_M, 6},
        {"ft per min", UNIT_FT_PER_MIN, 6},
        {"m per min", UNIT_M_PER_MIN, 6},
        {"sq ft per gal", UNIT_SQFT_PER_GAL, 6},
        {"m2 per L", UNIT_M2_PER_L, 6},
        {"lb per sq ft", UNIT_LB_PER_SQFT, 6},
        {"kg per m2", UNIT_KG_PER_M2, 6},
        {"lb per cu ft", UNIT_LB_PER_CUFT, 6},
        {"kg per m3", UNIT_KG_PER_M3, 6},
        {"g per cm3", UNIT_G_PER_CM3, 6},
    };
    assert_int_equal(sizeof units / sizeof *units, UNIT_COUNT_OF_UNITS);
    for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
        assert_string_equal(unit_name(units[i].unit), units[i].name);
        assert_int_equal(unit_decimals(units[i].unit), units[i].decimals);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_source_is_its_text),        cmocka_unit_test(operations),
        cmocka_unit_test(units_have_their_decimals),   cmocka_unit_test(ratios_of_all_decimals),
        cmocka_unit_test(the_first_fault_sticks),      cmocka_unit_test(replay_follows_a_given),
        cmocka_unit_test(figures_tell_their_operands), cmocka_unit_test(choices_are_told_apart),
        cmocka_unit_test(a_replay_chooses_again),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
