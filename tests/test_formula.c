/* SPDX-License-Identifier: MIT */
/* Every operation of the tape as a formula of the workbook: written to a file, read back, worked
 * out in doubles as a spreadsheet program does, and held against the value that it should have;
 * then again after one of its operands was changed in its cell.  Each case is laid out in several
 * ways, because sums become ranges where their terms stand in a column or a row. */
#include "book_bench.h"

#include "base/text.h"
#include "cmocka_all.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PATH "formula.xlsx"
#define MOST 12

struct formula_case {
    const char *name;
    enum unit unit;
    const char *of; /* a sum: behind `-` all are taken away; a ratio: behind `/` below the line; a
                       total: count, each, ...; a pick: by, limit, value, ... */
    const char *expected;
    size_t change; /* the operand that gets another value */
    const char *to, *then;
};

/* Expected by hand; common practice, no source: halves go away from zero, once. */
static const struct formula_case sums[] = {
    {"a sum keeps all decimals", UNIT_MONEY, "4.10 1.2345", "5.3345", 1, "-4.1001", "-0.0001"},
    {"a difference", UNIT_MONEY, "1.00 - 2.50", "-1.50", 0, "2.50", "0.00"},
    {"one and many taken away", UNIT_MONEY, "10 - 1 2 3 4", "0.00", 3, "2.99", "0.01"},
    {"added, then taken away", UNIT_MONEY, "1 2 3 4 - 0.01 0.02 0.03", "9.94", 5, "9.02", "0.94"},
    {"nothing but taken away", UNIT_MONEY, "- 1 2 3 4", "-10.00", 2, "-3", "-4.00"},
    {"doubles do not hold tenths", UNIT_MONEY, "0.1 0.2 - 0.3", "0.00", 2, "0.29", "0.01"},
    {"twelve terms", UNIT_COUNT, "1 2 3 4 5 6 7 8 9 10 11 12", "78", 11, "-12", "54"},
    {"twelve digits", UNIT_MONEY, "9999999999.98 0.01", "9999999999.99", 1, "0", "9999999999.98"},
    {"twelve below zero", UNIT_MONEY, "-9999999999.98 - 0.01", "-9999999999.99", 0, "9999999999.98",
     "9999999999.97"},
};

static const struct formula_case totals[] = {
    {"a total rounds once", UNIT_MONEY, "3 1.005 1 2.010", "5.03", 0, "1", "3.02"},
    {"of ties, each half a cent", UNIT_MONEY, "1 0.005 1 0.005", "0.01", 2, "2", "0.02"},
    {"of a tie below zero", UNIT_MONEY, "-1 0.005 2 0.000", "-0.01", 3, "0.001", "0.00"},
    {"counts with decimals", UNIT_MONEY, "2.5 1.50 0.25 3.00 1.125 8", "13.50", 0, "0.5", "10.50"},
    {"six pairs", UNIT_COUNT, "1 1 2 2 3 3 4 4 5 5 6 6", "91", 10, "0", "55"},
    {"one pair", UNIT_SQFT, "7 1.23456", "8.6419", 0, "1", "1.2346"},
};

static const struct formula_case ratios[] = {
    {"a tie goes up", UNIT_MONEY, "1.005", "1.01", 0, "1.004999", "1.00"},
    {"a tie below zero goes down", UNIT_MONEY, "-1.005", "-1.01", 0, "-1.004999", "-1.00"},
    {"a tie that no double holds", UNIT_MONEY, "8.3 2.35 / 2", "9.75", 0, "1.1", "1.29"},
    {"half a cent", UNIT_MONEY, "9999999999.99 / 2", "5000000000.00", 0, "9999999999.97",
     "4999999999.99"},
    {"half a unit of a tax", UNIT_MONEY, "7.41 6 / 100", "0.44", 0, "7.50", "0.45"},
    {"a third", UNIT_FACTOR, "1 / 3", "0.333333", 0, "2", "0.666667"},
    {"three over three", UNIT_FACTOR, "7 11 13 / 2 3 5", "33.366667", 5, "0.5", "333.666667"},
    {"signs", UNIT_MONEY, "-10 / -4", "2.50", 0, "10", "-2.50"},
    {"nothing above", UNIT_MONEY, "5 / 3", "1.67", 0, "0", "0.00"},
    {"millions", UNIT_COUNT, "999999.999999 1000000", "999999999999", 0, "0.000001", "1"},
    {"a millionth", UNIT_FACTOR, "0.000001 0.5", "0.000001", 1, "0.499999", "0"},
};

static const struct formula_case larger[] = {
    {"the larger", UNIT_MONEY, "1.5 1.499", "1.500", 1, "1.501", "1.501"},
    {"the larger below zero", UNIT_MONEY, "-2 -3", "-2", 0, "-4", "-3"},
    {"the larger of equals", UNIT_MONEY, "2 2.00", "2.00", 1, "1.99", "2.00"},
};

static const struct formula_case smaller[] = {
    {"the smaller", UNIT_MONEY, "1.5 1.499", "1.499", 1, "1.501", "1.500"},
    {"the smaller below zero", UNIT_MONEY, "-2 -3", "-3", 1, "5", "-2"},
};

static const struct formula_case ups[] = {
    {"up to a half", UNIT_MONEY, "10.0001 0.50", "10.50", 0, "10.5000", "10.50"},
    {"up by tenths that no double holds", UNIT_MONEY, "0.3 0.1", "0.3", 0, "0.7", "0.7"},
    {"up by a millionth too much", UNIT_COUNT, "3.000001 1", "4", 0, "3.000000", "3"},
    {"up of nothing", UNIT_MONEY, "0 0.50", "0.00", 0, "0.01", "0.50"},
    {"up of a negative", UNIT_MONEY, "-1.05 0.50", "-1.00", 0, "-0.49", "0.00"},
    {"up to thousands", UNIT_MONEY, "1 5000", "5000", 0, "5000.01", "10000"},
    {"a millionth to thousands", UNIT_MONEY, "0.000001 5000", "5000", 0, "0", "0"},
    {"a millionth to a million", UNIT_MONEY, "0.000001 999999", "999999", 0, "999999.000001",
     "1999998"},
    {"up of much by little", UNIT_MONEY, "9999999.999 0.01", "10000000.00", 0, "9999999.99",
     "9999999.99"},
    {"steps of 0.07", UNIT_MONEY, "100 0.07", "100.03", 0, "99.96", "99.96"},
};

static const struct formula_case picks_upto[] = {
    {"at a limit", UNIT_COUNT, "40 40 2 60 3", "2", 0, "40.01", "3"},
    {"past the last", UNIT_COUNT, "99 40 2 60 3 70 4", "4", 0, "60.000001", "4"},
    {"the middle row", UNIT_COUNT, "41 40 2 60 3 70 4", "3", 3, "40.5", "4"},
    {"a table of one row", UNIT_COUNT, "1 0 7", "7", 2, "8", "8"},
};

static const struct formula_case picks_from[] = {
    {"at a limit", UNIT_MONEY, "100 0 4.10 100 3.75", "3.75", 0, "99.9999", "4.10"},
    {"below the first", UNIT_MONEY, "-1 0 4.10 100 3.75", "4.10", 0, "1000", "3.75"},
    {"the middle row", UNIT_MONEY, "50 0 4.10 50 3.9 100 3.75", "3.90", 3, "50.000001", "4.10"},
    {"a table of one row", UNIT_MONEY, "1 5 7", "7", 2, "-8", "-8"},
};

static const struct {
    enum figure_op op;
    const struct formula_case *cases;
    size_t count;
} tables[] = {
    {OP_SUM, sums, COUNT(sums)},
    {OP_TOTAL, totals, COUNT(totals)},
    {OP_RATIO, ratios, COUNT(ratios)},
    {OP_LARGER, larger, COUNT(larger)},
    {OP_SMALLER, smaller, COUNT(smaller)},
    {OP_UP, ups, COUNT(ups)},
    {OP_PICK_UPTO, picks_upto, COUNT(picks_upto)},
    {OP_PICK_FROM, picks_from, COUNT(picks_from)},
};

/* --- how operands are laid out --- */

enum layout {
    DOWN,
    UPWARD,
    ACROSS,
    GAPS,
    SHEETS,
    BESIDE,
    SKEWED,
    CROSSED,
    SLANTED,
    AMONG,
    LAYOUTS
};

static uint16_t sheets[3];

static void start_book(struct book *book, const struct tape *tape) {
    book_init(book, tape);
    sheets[0] = book_sheet(book, "Givens", "givens", false);
    sheets[1] = book_sheet(book, "Others", "others", false);
    sheets[2] = book_sheet(book, "Results", "results", false);
}

static void put(struct book *book, uint16_t sheet, uint32_t row, uint16_t column, fig figure) {
    book_figure(book, sheet, row, column, LOOK_PLAIN, figure);
}

static void lay_out(struct book *book, enum layout layout, const fig *of, size_t count) {
    for (size_t i = 0; i < count; i++) {
        const uint32_t n = (uint32_t)i;
        switch (layout) {
        case DOWN:
            put(book, sheets[0], 4 + n, 2, of[i]);
            break;
        case UPWARD:
            put(book, sheets[0], 40 - n, 27, of[i]);
            break;
        case ACROSS:
            put(book, sheets[0], 4, (uint16_t)(24 + n), of[i]);
            break;
        case GAPS: /* words may stand in a gap */
            put(book, sheets[0], 4 + 2 * n, 0, of[i]);
            book_text(book, sheets[0], 5 + 2 * n, 0, LOOK_PLAIN, "1000");
            break;
        case SHEETS:
            put(book, sheets[i % 3], 4 + n, 51, of[i]);
            break;
        case BESIDE: /* pairs side by side */
            put(book, sheets[0], 4 + n / 2, (uint16_t)(1 + n % 2), of[i]);
            break;
        case SKEWED: /* every other at twice the distance */
            put(book, sheets[0], 4 + (n % 2 == 0 ? n : n / 2), (uint16_t)(1 + n % 2), of[i]);
            break;
        case CROSSED: /* every other down, the rest across */
            put(book, sheets[0], n % 2 == 0 ? 1 : 4 + n / 2, (uint16_t)(n % 2 == 0 ? n : 2), of[i]);
            break;
        case SLANTED: /* every other down, the rest down and across */
            put(book, sheets[0], 4 + n / 2, (uint16_t)(n % 2 == 0 ? 1 + n / 2 : 0), of[i]);
            break;
        default: /* other numbers in between */
            put(book, sheets[0], 4 + 2 * n, 3, of[i]);
            book_number(book, sheets[0], 5 + 2 * n, 3, LOOK_PLAIN, UNIT_COUNT, 0, 1000);
            break;
        }
    }
}

/* --- figures --- */

/* What a case is made of. */
struct operands {
    fig f[MOST];
    size_t count, over; /* over: before the sign */
};

static struct operands read_operands(struct tape *tape, const struct formula_case *c) {
    struct operands of = {.over = MOST};
    for (const char *at = c->of; *at != '\0'; at += strspn(at, " ")) {
        const size_t size = strcspn(at, " ");
        int64_t value;
        uint8_t decimals;
        if (size == 1 && (*at == '-' || *at == '/')) {
            of.over = of.count;
        } else {
            assert_true(of.count < MOST && text_decimal(at, size, &value, &decimals));
            const struct place place = {.line = (uint32_t)of.count + 1};
            of.f[of.count++] = tape_given(tape, "given", c->unit, decimals, value, place);
        }
        at += size;
    }
    return of;
}

static fig make_sum(struct tape *tape, enum unit unit, const struct operands *of) {
    fig terms[MOST];
    for (size_t i = 0; i < of->count; i++) {
        terms[i] = i < of->over ? of->f[i] : fig_minus(of->f[i]);
    }
    return fig_sum(tape, "made", unit, terms, of->count);
}

static fig make_ratio(struct tape *tape, enum unit unit, const struct operands *of) {
    figs over = {{{0}}};
    figs under = {{{0}}};
    for (size_t i = 0; i < of->count; i++) {
        *(i < of->over ? &over.f[i] : &under.f[i - of->over]) = of->f[i];
    }
    return fig_ratio(tape, "made", unit, over, under);
}

/* Operands in pairs, from the first or, in a table, the second on. */
static fig make_pairs(struct tape *tape, enum figure_op op, enum unit unit,
                      const struct operands *of) {
    fig left[MOST];
    fig right[MOST];
    size_t pairs = 0;
    for (size_t i = op == OP_TOTAL ? 0 : 1; i + 1 < of->count; i += 2) {
        left[pairs] = of->f[i];
        right[pairs++] = of->f[i + 1];
    }
    if (op == OP_TOTAL) {
        return fig_total(tape, "made", unit, left, right, pairs);
    }
    return op == OP_PICK_UPTO ? fig_pick_upto(tape, "made", of->f[0], left, right, pairs)
                              : fig_pick_from(tape, "made", of->f[0], left, right, pairs);
}

static fig make(struct tape *tape, enum figure_op op, enum unit unit, const struct operands *of) {
    switch (op) {
    case OP_SUM:
        return make_sum(tape, unit, of);
    case OP_RATIO:
        return make_ratio(tape, unit, of);
    case OP_LARGER:
        return fig_larger(tape, "made", of->f[0], of->f[1]);
    case OP_SMALLER:
        return fig_smaller(tape, "made", of->f[0], of->f[1]);
    case OP_UP:
        return fig_up(tape, "made", of->f[0], of->f[1]);
    default:
        return make_pairs(tape, op, unit, of);
    }
}

static int wrong;

static void check(const char *name, enum layout layout, const char *when, const struct xlsx *book,
                  const struct xlsx_cell *cell, struct xlsx_value found, const char *expected) {
    int64_t value;
    uint8_t decimals;
    assert_true(text_decimal(expected, strlen(expected), &value, &decimals));
    if (found.kind == XLSX_NUMBER && book->fault == NULL &&
        book_bench_same(found.number, value, decimals)) {
        return;
    }
    print_error("%s, layout %d: %s %.12g%s, expected %s: =%s\n", name, (int)layout, when,
                found.number, found.kind == XLSX_ERROR ? found.text : "", expected,
                cell->formula == NULL ? "" : cell->formula);
    wrong++;
}

static void check_case(enum figure_op op, const struct formula_case *c, enum layout layout) {
    struct tape tape;
    struct book book;
    struct xlsx read;
    tape_init(&tape, true);
    const struct operands of = read_operands(&tape, c);
    const fig made = make(&tape, op, c->unit, &of);
    assert_int_equal(tape_fault(&tape), TAPE_OK);
    start_book(&book, &tape);
    put(&book, sheets[2], 2, 1, made);
    lay_out(&book, layout, of.f, of.count);
    book_bench_read(&book, PATH, &read);
    struct xlsx_cell *const cell = xlsx_at(&read, "Results", "B3");
    assert_non_null(cell);
    assert_non_null(cell->formula);
    check(c->name, layout, "stored", &read, cell, cell->value, c->expected);
    check(c->name, layout, "worked out", &read, cell, xlsx_work_out(&read, cell), c->expected);
    const bool range = strstr(cell->formula, "SUM") != NULL && strchr(cell->formula, ':') != NULL;
    const bool alike = layout == DOWN || layout == UPWARD || layout == ACROSS || layout == GAPS;
    if (op == OP_SUM && of.count == MOST && ((alike && !range) || (layout == AMONG && range))) {
        print_error("%s, layout %d: =%s\n", c->name, (int)layout, cell->formula);
        wrong++;
    }
    struct xlsx_cell *const given = book_bench_cell(&read, book_home(&book, of.f[c->change]));
    assert_null(given->formula);
    given->value.number = strtod(c->to, NULL);
    xlsx_forget(&read);
    check(c->name, layout, "changed", &read, cell, xlsx_work_out(&read, cell), c->then);
    xlsx_clear(&read);
    book_clear(&book);
    tape_clear(&tape);
}

static void test_operations(void **state) {
    (void)state;
    wrong = 0;
    for (size_t t = 0; t < COUNT(tables); t++) {
        for (size_t i = 0; i < tables[t].count; i++) {
            for (int layout = 0; layout < LAYOUTS; layout++) {
                check_case(tables[t].op, &tables[t].cases[i], (enum layout)layout);
            }
        }
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_operations),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
