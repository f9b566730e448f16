/* SPDX-License-Identifier: MIT */
/* Widths of text in ems and the lines that it breaks into.  The typeface has the widths of
 * Helvetica, whose letters are published in thousandths of an em (Adobe Font Metrics of the core 14
 * fonts, Helvetica and Helvetica-Bold); lines are counted by hand from those. */
#include "cmocka_all.h"
#include "report/type/text_width.h"

#include <string.h>

struct width_case {
    const char *text;
    bool bold;
    unsigned thousandths;
};

static const struct width_case width_cases[] = {
    {"", false, 0},
    {" ", false, 278},
    {"0", false, 556},
    {"0123456789", false, 5560},
    {"i", false, 222},
    {"i", true, 278},
    {"Wm", false, 944 + 833},
    {"Wm", true, 944 + 889},
    /* no pair is drawn together: A and V have 667 each */
    {"AV", false, 1334},
    {"\xC3\xA9", false, 556},                   /* e with an acute accent, as wide as e */
    {"e\xCC\x81", false, 556},                  /* the same in two: the accent stands over it */
    {"\xE2\x80\xA6", false, 1000},              /* an ellipsis */
    {"\xE2\x82\xAC 5", false, 556 + 278 + 556}, /* the euro sign */
};

static void widths(void **state) {
    struct text_widths *const w = text_widths_new();
    (void)state;
    assert_non_null(w);
    for (int again = 0; again < 2; again++) { /* measured, then remembered */
        for (size_t i = 0; i < COUNT(width_cases); i++) {
            const struct width_case *const c = &width_cases[i];
            const double width = text_width(w, c->text, strlen(c->text), c->bold) * 1000;
            if (width < c->thousandths - 1.0 || width > c->thousandths + 1.0) {
                fail_msg("'%s' is %f wide, expected %u", c->text, width, c->thousandths);
            }
        }
    }
    text_widths_free(w);
}

/* Letters whose codes share their low bits don't take each other's width: 0 and U+1030. */
static void slots(void **state) {
    struct text_widths *const w = text_widths_new();
    (void)state;
    assert_non_null(w);
    const double zero = text_width(w, "0", 1, false);
    (void)text_width(w, "\xE1\x80\xB0", 3, false);
    assert_true(text_width(w, "0", 1, false) == zero);
    text_widths_free(w);
}

static void part_of_a_text(void **state) {
    struct text_widths *const w = text_widths_new();
    (void)state;
    assert_non_null(w);
    assert_true(text_width(w, "00ii", 2, false) == text_width(w, "00", 2, false));
    text_widths_free(w);
    text_widths_free(NULL);
}

struct line_case {
    const char *text;
    bool bold;
    double room; /* ems */
    size_t lines;
};

/* A digit is 0.556 wide, a blank 0.278. */
static const struct line_case line_cases[] = {
    {"", false, 1, 1},
    {"00000", false, 2.80, 1},
    {"00000", false, 2.75, 2},        /* 2.78: the last digit goes on */
    {"000000000000", false, 2.80, 3}, /* 12 digits, 5 a line */
    {"000 000", false, 3.62, 1},      /* 3 x 0.556 x 2 + 0.278 = 3.614 */
    {"000 000", false, 3.60, 2},
    {"000 000 000", false, 3.62, 2},
    {"0 0000000000 0", false, 3.00, 4}, /* 0, then 5 and 5 digits, then 0 */
    {"iiii", false, 0.90, 1},           /* 4 x 0.222 = 0.888 */
    {"iiii", true, 0.90, 2},            /* 4 x 0.278 = 1.112 */
};

static void lines(void **state) {
    struct text_widths *const w = text_widths_new();
    (void)state;
    assert_non_null(w);
    for (size_t i = 0; i < COUNT(line_cases); i++) {
        const struct line_case *const c = &line_cases[i];
        const size_t made = text_lines(w, c->text, c->bold, c->room);
        if (made != c->lines) {
            fail_msg("'%s' in %f takes %zu lines, expected %zu", c->text, c->room, made, c->lines);
        }
    }
    text_widths_free(w);
}

static void widest_word(void **state) {
    struct text_widths *const w = text_widths_new();
    (void)state;
    assert_non_null(w);
    const double widest = text_widest_word(w, "0 0000-000 00", false) * 1000;
    assert_true(widest > 2223 && widest < 2225); /* 4 x 556 */
    assert_true(text_widest_word(w, "", false) == 0);
    text_widths_free(w);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(widths), cmocka_unit_test(slots),       cmocka_unit_test(part_of_a_text),
        cmocka_unit_test(lines),  cmocka_unit_test(widest_word),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
