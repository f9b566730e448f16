/* SPDX-License-Identifier: MIT */
/* Figures and values as papers show them.  What is expected is written by hand; a length in the
 * other system comes from 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
#include "report/words/difference.h"
#include "report/words/plan_words.h"

#include "cmocka_all.h"

#include <stdio.h>
#include <string.h>

/* An estimate with a tape and nothing else but what a test puts in. */
struct stub {
    struct estimate e;
    struct rates rates;
    struct job job;
};

static void open_stub(struct stub *s) {
    *s = (struct stub){.rates.shop.money_decimals = 2, .job.unit = LENGTH_INCH};
    s->e.rates = &s->rates;
    s->e.job = &s->job;
    tape_init(&s->e.tape, true);
}

static void close_stub(struct stub *s) {
    tape_clear(&s->e.tape);
}

static fig given(struct stub *s, enum unit unit, uint8_t decimals, int64_t value) {
    static uint32_t line;
    return tape_given(&s->e.tape, "given", unit, decimals, value, (struct place){.line = ++line});
}

/* --- figures --- */

static void test_figures(void **state) {
    (void)state;
    static const struct {
        enum unit unit;
        uint8_t decimals;
        int64_t value;
        const char *number, *with_unit, *money;
    } cases[] = {
        {UNIT_MONEY, 2, 410, "4.10", "4.10", "4.10"},
        {UNIT_MONEY, 2, -5, "-0.05", "-0.05", "-0.05"},
        {UNIT_MONEY, 0, 18, "18", "18", "18.00"},
        {UNIT_MONEY, 1, -185, "-18.5", "-18.5", "-18.50"},
        {UNIT_MONEY, 4, 12345, "1.2345", "1.2345", "1.2345"},
        {UNIT_MONEY, 2, 999999999999, "9999999999.99", "9999999999.99", "9999999999.99"},
        {UNIT_MONEY, 2, -999999999999, "-9999999999.99", "-9999999999.99", "-9999999999.99"},
        {UNIT_MONEY_PER_BF, 2, 895, "8.95", "8.95 per bf", "8.95"},
        {UNIT_MIL, 0, 4, "4", "4 mil", "4.00"},
        {UNIT_BF, 4, 971234, "97.1234", "97.1234 bf", "97.1234"},
        {UNIT_SQFT, 4, 5, "0.0005", "0.0005 sq ft", "0.0005"},
        {UNIT_M2, 4, 12500, "1.2500", "1.2500 m2", "1.2500"},
        {UNIT_MIN, 2, 1275, "12.75", "12.75 min", "12.75"},
        {UNIT_HOUR, 2, 0, "0.00", "0.00 h", "0.00"},
        {UNIT_PERCENT, 4, 341197, "34.1197", "34.1197 %", "34.1197"},
        {UNIT_COUNT, 0, 7, "7", "7", "7.00"},
        {UNIT_FACTOR, 6, 1450000, "1.450000", "1.450000", "1.450000"},
        {UNIT_SQFT_PER_GAL, 0, 400, "400", "400 sq ft per gal", "400.00"},
        {UNIT_G_PER_CM3, 3, 1250, "1.250", "1.250 g per cm3", "1.250"},
    };
    struct stub s;
    open_stub(&s);
    for (size_t i = 0; i < COUNT(cases); i++) {
        const fig f = given(&s, cases[i].unit, cases[i].decimals, cases[i].value);
        assert_string_equal(show(&s.e, f).text, cases[i].number);
        assert_string_equal(show_unit(&s.e, f).text, cases[i].with_unit);
        assert_string_equal(show_money(&s.e, f).text, cases[i].money);
        assert_string_equal(show_number(cases[i].value, cases[i].decimals).text, cases[i].number);
    }
    assert_string_equal(show(&s.e, (fig){0}).text, "-");
    assert_string_equal(show_unit(&s.e, (fig){0}).text, "-");
    assert_string_equal(show_money(&s.e, (fig){0}).text, "-");
    close_stub(&s);
}

/* Decimals of currencies: ISO 4217. */
static void test_currencies(void **state) {
    (void)state;
    static const struct {
        uint8_t money_decimals, decimals;
        int64_t value;
        const char *money;
    } cases[] = {
        {0, 0, 18, "18"},       {0, 2, 1850, "18.50"},   {3, 0, 18, "18.000"},
        {3, 2, 1850, "18.500"}, {3, 3, 18505, "18.505"}, {4, 2, -1, "-0.0100"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct stub s;
        open_stub(&s);
        s.rates.shop.money_decimals = cases[i].money_decimals;
        const fig f = given(&s, UNIT_MONEY, cases[i].decimals, cases[i].value);
        assert_string_equal(show_money(&s.e, f).text, cases[i].money);
        close_stub(&s);
    }
}

/* The longest number with the longest unit is not cut. */
static void test_longest(void **state) {
    (void)state;
    struct stub s;
    open_stub(&s);
    for (int unit = 0; unit < UNIT_COUNT_OF_UNITS; unit++) {
        char wanted[96];
        const fig f = given(&s, (enum unit)unit, 6, -999999999999);
        const char *const name = unit_name((enum unit)unit);
        (void)snprintf(wanted, sizeof wanted, "-999999.999999%s%s", name[0] == '\0' ? "" : " ",
                       name);
        assert_string_equal(show_unit(&s.e, f).text, wanted);
    }
    close_stub(&s);
}

/* --- values of inputs --- */

static void test_values(void **state) {
    (void)state;
    static const struct {
        struct value value;
        const char *inch, *mm;
    } cases[] = {
        {{.set = true, .unit = UNIT_NM, .amount = 450850000}, "17 3/4", "450.9"},
        {{.set = true, .unit = UNIT_NM, .amount = 25400000}, "1", "25.4"},
        {{.set = true, .unit = UNIT_NM, .amount = 396875}, "1/64", "0.4"},
        {{.set = true, .unit = UNIT_NM, .amount = 595000000}, "23 27/64", "595"},
        {{.set = true, .unit = UNIT_NM, .amount = 0}, "0", "0"},
        {{.set = true, .unit = UNIT_NM, .amount = -12700000}, "-1/2", "-12.7"},
        {{.set = true, .unit = UNIT_PERCENT, .decimals = 0, .amount = 45}, "45 %", "45 %"},
        {{.set = true, .unit = UNIT_PERCENT, .decimals = 3, .amount = 8875}, "8.875 %", "8.875 %"},
        {{.set = true, .unit = UNIT_MONEY, .decimals = 2, .amount = 1200}, "12.00", "12.00"},
        {{.set = true, .unit = UNIT_MIN, .decimals = 1, .amount = 25}, "2.5 min", "2.5 min"},
        {{.set = true, .unit = UNIT_COUNT, .amount = 3}, "3", "3"},
        {{.set = false, .unit = UNIT_COUNT, .amount = 3}, "", ""},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        assert_string_equal(show_value(&cases[i].value, LENGTH_INCH).text, cases[i].inch);
        assert_string_equal(show_value(&cases[i].value, LENGTH_MM).text, cases[i].mm);
    }
}

static void test_sizes(void **state) {
    (void)state;
    assert_string_equal(show_size(450850000, 603250000, LENGTH_INCH).text, "17 3/4 x 23 3/4");
    assert_string_equal(show_size(450000000, 603500000, LENGTH_MM).text, "450 x 603.5");
    /* the longest: 1 km either way */
    assert_string_equal(show_size(-999999599875, -999999999999, LENGTH_INCH).text,
                        "-39370 1/16 x -39370 5/64");
}

/* 45 % added is a factor of 1.45, 31 % lost one of 1 / 0.69: the point moves by two places. */
static void test_waste(void **state) {
    (void)state;
    static const struct {
        uint8_t decimals;
        int64_t amount;
        const char *added, *lost;
    } cases[] = {
        {0, 45, "45 % added to net (x 1.45)", "45 % lost of what is bought (/ 0.55)"},
        {0, 31, "31 % added to net (x 1.31)", "31 % lost of what is bought (/ 0.69)"},
        {0, 0, "0 % added to net (x 1.00)", "0 % lost of what is bought (/ 1.00)"},
        {1, 125, "12.5 % added to net (x 1.125)", "12.5 % lost of what is bought (/ 0.875)"},
        {0, 99, "99 % added to net (x 1.99)", "99 % lost of what is bought (/ 0.01)"},
        {0, 150, "150 % added to net (x 2.50)", NULL},
        {6, 33333333, "33.333333 % added to net (x 1.33333333)",
         "33.333333 % lost of what is bought (/ 0.66666667)"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        const struct value waste = {.set = true,
                                    .unit = UNIT_PERCENT,
                                    .decimals = cases[i].decimals,
                                    .amount = cases[i].amount};
        assert_string_equal(show_waste(&waste, WASTE_ADDED).text, cases[i].added);
        if (cases[i].lost != NULL) {
            assert_string_equal(show_waste(&waste, WASTE_LOST).text, cases[i].lost);
        }
    }
}

static void test_value_is(void **state) {
    (void)state;
    struct stub s;
    open_stub(&s);
    const fig twelve = given(&s, UNIT_BF, 4, 120000);
    const struct {
        struct value value;
        bool same;
    } cases[] = {
        {{.set = true, .decimals = 0, .amount = 12}, true},
        {{.set = true, .decimals = 6, .amount = 12000000}, true},
        {{.set = true, .decimals = 1, .amount = 121}, false},
        {{.set = true, .decimals = 6, .amount = 12000001}, false},
        {{.set = false, .decimals = 0, .amount = 12}, false},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        assert_int_equal(value_is(&s.e.tape, twelve, &cases[i].value), cases[i].same);
    }
    const fig most = given(&s, UNIT_BF, 0, 999999999999);
    assert_true(value_is(&s.e.tape, most,
                         &(struct value){.set = true, .decimals = 0, .amount = 999999999999}));
    close_stub(&s);
}

/* --- words --- */

static void test_sheets(void **state) {
    (void)state;
    static const struct {
        int64_t whole, half;
        const char *words;
    } cases[] = {
        {5, 0, "5 sheets"},
        {1, 0, "1 sheet"},
        {0, 0, "0 sheets"},
        {1, 1, "1 sheet and a half"},
        {2, 1, "2 sheets and a half"},
        {0, 1, "a half sheet"},
        {3, -1, "3 sheets"},
        {0, -1, "0 sheets"},
    };
    struct stub s;
    open_stub(&s);
    for (size_t i = 0; i < COUNT(cases); i++) {
        const struct sheet_purchase_by bought = {
            .whole = given(&s, UNIT_COUNT, 0, cases[i].whole),
            .half = cases[i].half < 0 ? (fig){0} : given(&s, UNIT_COUNT, 0, cases[i].half)};
        assert_string_equal(show_sheets(&s.e, &bought).text, cases[i].words);
    }
    close_stub(&s);
}

static void test_valid_until(void **state) {
    (void)state;
    static const struct {
        int16_t year;
        int8_t month, day;
        int64_t days;
        const char *until;
    } cases[] = {
        {2026, 3, 2, 30, "2026-04-01"},  {2026, 3, 2, 0, "2026-03-02"},
        {2024, 2, 28, 1, "2024-02-29"},  {2023, 2, 28, 1, "2023-03-01"},
        {2026, 12, 31, 1, "2027-01-01"}, {2000, 2, 28, 2, "2000-03-01"},
        {2100, 2, 28, 1, "2100-03-01"},  {2026, 1, 1, 365, "2027-01-01"},
        {2024, 1, 1, 365, "2024-12-31"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        const struct job job = {.year = cases[i].year,
                                .month = cases[i].month,
                                .day = cases[i].day,
                                .valid = {.set = true, .amount = cases[i].days}};
        assert_string_equal(show_valid_until(&job).text, cases[i].until);
    }
    assert_string_equal(show_valid_until(&(struct job){.year = 2026, .month = 1, .day = 1}).text,
                        "");
}

/* --- differences --- */

static void test_difference(void **state) {
    (void)state;
    static const struct {
        int64_t first, other; /* cents */
        const char *money, *percent;
    } cases[] = {
        {10000, 12345, "+23.45", "+23.45 %"},
        {10000, 7655, "-23.45", "-23.45 %"},
        {10000, 10000, "0.00", "0.00 %"},
        {0, 500, "+5.00", "-"},
        {0, 0, "0.00", "-"},
        {300, 400, "+1.00", "+33.33 %"},
        {300, 500, "+2.00", "+66.67 %"},
        {300, 200, "-1.00", "-33.33 %"},
        {20000, 20001, "+0.01", "+0.01 %"}, /* 0.005 %: half away from zero */
        {20001, 20002, "+0.01", "0.00 %"},
        {20000, 19999, "-0.01", "-0.01 %"},
        {1, 999999999999, "+9999999999.98", "+99999999999800.00 %"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct stub a;
        struct stub b;
        open_stub(&a);
        open_stub(&b);
        a.e.sale.total = given(&a, UNIT_MONEY, 2, cases[i].first);
        b.e.sale.total = given(&b, UNIT_MONEY, 2, cases[i].other);
        const struct shown_difference d = show_difference(&a.e, &b.e);
        assert_string_equal(d.money.text, cases[i].money);
        assert_string_equal(d.percent.text, cases[i].percent);
        close_stub(&a);
        close_stub(&b);
    }
}

/* Totals of unlike decimals; a total below nothing that grows has grown. */
static void test_other_differences(void **state) {
    (void)state;
    struct stub a;
    struct stub b;
    open_stub(&a);
    open_stub(&b);
    a.e.sale.total = given(&a, UNIT_MONEY, 0, 100);
    b.e.sale.total = given(&b, UNIT_MONEY, 3, 100125);
    assert_string_equal(show_difference(&a.e, &b.e).money.text, "+0.125");
    assert_string_equal(show_difference(&a.e, &b.e).percent.text, "+0.13 %");
    assert_string_equal(show_difference(&b.e, &a.e).money.text, "-0.125");
    assert_int_equal(difference_percent(-100, -50), 5000);
    assert_int_equal(difference_percent(-100, -150), -5000);
    assert_int_equal(difference_percent(0, 7), 0);
    close_stub(&a);
    close_stub(&b);
}

/* --- names --- */

static void test_names(void **state) {
    (void)state;
    assert_string_equal(show_paper(&(struct job){.paper = {.choice = PAPER_ESTIMATE}}), "Estimate");
    assert_string_equal(show_paper(&(struct job){.paper = {.choice = PAPER_QUOTE}}), "Quote");
}

/* A blank within a size does not break (U+00A0); a size without one is as length_show has it. */
static void test_unbroken(void **state) {
    (void)state;
    char text[64];
    assert_string_equal(show_unbroken(24 * NM_PER_INCH + 8 * NM_PER_64TH, LENGTH_INCH, text, 64),
                        "24\xC2\xA0"
                        "1/8");
    assert_string_equal(show_unbroken(24 * NM_PER_INCH, LENGTH_INCH, text, 64), "24");
    assert_string_equal(show_unbroken(595 * NM_PER_MM, LENGTH_MM, text, 64), "595");
}

static void test_paper_size(void **state) {
    (void)state;
    static const struct {
        int size;
        bool metric, letter;
    } cases[] = {
        {PAPER_AS_USUAL, false, true}, {PAPER_AS_USUAL, true, false}, {PAPER_LETTER, true, true},
        {PAPER_LETTER, false, true},   {PAPER_A4, false, false},      {PAPER_A4, true, false},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct stub s;
        open_stub(&s);
        s.rates.shop.paper_size.choice = cases[i].size;
        s.rates.shop.unit = cases[i].metric ? LENGTH_MM : LENGTH_INCH;
        assert_int_equal(show_on_letter(&s.e), cases[i].letter);
        close_stub(&s);
    }
}

/* A color is shown where a coat of the finish is mixed to it, or the finish has no coats to tell.
 */
static void test_colors(void **state) {
    (void)state;
    struct coating coatings[] = {{.tinted = false}, {.tinted = true}};
    struct coat clear[] = {{.coating = 0}, {.coating = 0}};
    struct coat mixed[] = {{.coating = 0}, {.coating = 1}};
    struct finish finishes[] = {{.coats = clear, .coat_count = 2},
                                {.coats = mixed, .coat_count = 2},
                                {.coats = NULL, .coat_count = 0}};
    struct stub s;
    open_stub(&s);
    s.rates.coatings = coatings;
    s.rates.finishes = finishes;
    static const char *const shown[] = {"", "gray", "gray"};
    for (int32_t f = 0; f < 3; f++) {
        struct construction c = {.finish.index = f, .color.s = "gray"};
        assert_string_equal(show_color(&s.rates, &c), shown[f]);
        c.color.s = NULL;
        assert_string_equal(show_color(&s.rates, &c), "");
    }
    const struct construction bare = {.finish.index = -1, .color.s = "gray"};
    assert_string_equal(show_color(&s.rates, &bare), "");
    /* batches of the clear finish differ by color alone */
    const struct batch gray = {.finish = 0, .color = "gray"};
    const struct batch several[] = {{.finish = 0, .color = "gray", .several = true},
                                    {.finish = 1, .color = "blue"},
                                    {.finish = 0, .several = true}};
    assert_string_equal(show_batch_color(&s.e, &gray), "");
    assert_string_equal(show_batch_color(&s.e, &several[0]), "gray");
    assert_string_equal(show_batch_color(&s.e, &several[1]), "blue");
    assert_string_equal(show_batch_color(&s.e, &several[2]), "");
    close_stub(&s);
}

/* --- plans --- */

static void test_plan_words(void **state) {
    (void)state;
    struct stub s;
    open_stub(&s);
    /* millionths of an inch, of which one is 25.4 nm; of a millimeter one is a nanometer */
    assert_int_equal(plan_length(&s.e, 1000000), 25400000);
    assert_int_equal(plan_length(&s.e, 15625), 396875);
    assert_int_equal(plan_length(&s.e, 96000000), 2438400000);
    assert_string_equal(plan_show(&s.e, 30500000).text, "30 1/2");
    assert_string_equal(plan_show_size(&s.e, 2375000, 30500000).text, "2 3/8 x 30 1/2");
    s.job.unit = LENGTH_MM;
    assert_int_equal(plan_length(&s.e, 1000000), 1000000);
    assert_string_equal(plan_show(&s.e, 595500000).text, "595.5");
    assert_string_equal(plan_numbers(&(struct alike){.number = 4, .copies = 1}, "board").text,
                        "board 4");
    assert_string_equal(plan_numbers(&(struct alike){.number = 4, .copies = 2}, "board").text,
                        "boards 4 and 5");
    assert_string_equal(plan_numbers(&(struct alike){.number = 1, .copies = 3}, "sheet").text,
                        "sheets 1 to 3");
    close_stub(&s);
}

static void test_plan_proofs(void **state) {
    (void)state;
    struct stub s;
    open_stub(&s);
    struct lumber_buy lumber = {.plan = {.boards = given(&s, UNIT_COUNT, 0, 23),
                                         .at_price = given(&s, UNIT_MONEY, 2, 29110),
                                         .bound = given(&s, UNIT_MONEY, 2, 25906)}};
    assert_string_equal(
        plan_proof_boards(&s.e, &lumber).text,
        "23 boards, 291.10 at the price of a small lot; less than 259.06 is impossible");
    lumber.plan.boards = given(&s, UNIT_COUNT, 0, 1);
    assert_int_equal(strncmp(plan_proof_boards(&s.e, &lumber).text, "1 board, ", 9), 0);
    /* the most that figures hold is not cut off */
    lumber.plan.boards = given(&s, UNIT_COUNT, 0, 99999999);
    lumber.plan.at_price = given(&s, UNIT_MONEY, 2, 999999999999);
    lumber.plan.bound = given(&s, UNIT_MONEY, 2, 999999999998);
    assert_string_equal(plan_proof_boards(&s.e, &lumber).text,
                        "99999999 boards, 9999999999.99 at the price of a small lot; less than "
                        "9999999999.98 is impossible");
    struct sheet_buy sheets = {
        .by_plan = {.whole = given(&s, UNIT_COUNT, 0, 3), .cost = given(&s, UNIT_MONEY, 2, 29700)},
        .plan = {.fewest = given(&s, UNIT_COUNT, 0, 3), .gap = given(&s, UNIT_MONEY, 2, 0)}};
    assert_string_equal(plan_proof_sheets(&s.e, &sheets).text,
                        "3 sheets; fewer than 3 is impossible");
    sheets.plan.gap = given(&s, UNIT_MONEY, 2, 9900);
    sheets.plan.fewest = given(&s, UNIT_COUNT, 0, 2);
    assert_string_equal(plan_proof_sheets(&s.e, &sheets).text, "3 sheets; at least 2");
    sheets.plan.fewest = (fig){0};
    sheets.plan.bound = given(&s, UNIT_MONEY, 2, 25000);
    sheets.by_plan.half = given(&s, UNIT_COUNT, 0, 1);
    assert_string_equal(plan_proof_sheets(&s.e, &sheets).text,
                        "3 sheets and a half, 297.00; less than 250.00 is impossible");
    /* what is bought, and worth 3.00 of the rack */
    sheets.plan.rack.charged = given(&s, UNIT_MONEY, 2, 300);
    sheets.by_plan.from_rack = given(&s, UNIT_COUNT, 0, 2);
    assert_string_equal(plan_proof_sheets(&s.e, &sheets).text,
                        "3 sheets and a half, 2 from the rack, 300.00 with worth; at most 99.00 "
                        "more than the least");
    sheets.plan.gap = given(&s, UNIT_MONEY, 2, 0);
    assert_string_equal(plan_proof_sheets(&s.e, &sheets).text,
                        "3 sheets and a half, 2 from the rack, 300.00 with worth; proved least");
    sheets.plan.gap = given(&s, UNIT_MONEY, 2, 999999999998);
    sheets.by_plan.whole = given(&s, UNIT_COUNT, 0, 99999);
    sheets.by_plan.from_rack = given(&s, UNIT_COUNT, 0, 999999);
    sheets.by_plan.cost = given(&s, UNIT_MONEY, 2, 999999999699);
    assert_string_equal(plan_proof_sheets(&s.e, &sheets).text,
                        "99999 sheets and a half, 999999 from the rack, 9999999999.99 with worth; "
                        "at most 9999999999.98 more than the least");
    const struct value waste = {.set = true, .unit = UNIT_PERCENT, .decimals = 0, .amount = 45};
    const fig asks = given(&s, UNIT_PERCENT, 4, 341197);
    assert_string_equal(plan_asks(&s.e, asks, &waste, WASTE_ADDED).text,
                        "The plan asks for 34.1197 % added; the rates say 45 %.");
    assert_string_equal(plan_asks(&s.e, asks, &waste, WASTE_LOST).text,
                        "The plan asks for 34.1197 % lost; the rates say 45 %.");
    assert_string_equal(plan_prices(true), "The plan prices the job.");
    assert_string_equal(plan_prices(false), "The factor prices the job.");
    close_stub(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_figures),
        cmocka_unit_test(test_currencies),
        cmocka_unit_test(test_longest),
        cmocka_unit_test(test_values),
        cmocka_unit_test(test_sizes),
        cmocka_unit_test(test_waste),
        cmocka_unit_test(test_value_is),
        cmocka_unit_test(test_sheets),
        cmocka_unit_test(test_valid_until),
        cmocka_unit_test(test_difference),
        cmocka_unit_test(test_other_differences),
        cmocka_unit_test(test_names),
        cmocka_unit_test(test_unbroken),
        cmocka_unit_test(test_paper_size),
        cmocka_unit_test(test_colors),
        cmocka_unit_test(test_plan_words),
        cmocka_unit_test(test_plan_proofs),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
