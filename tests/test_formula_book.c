/* SPDX-License-Identifier: MIT */
/* Formulas of whole books: sums longer than a cell holds, figures made of made figures, what has no
 * formula, and tapes made at random, each worked out by the reader of the tests and held against
 * the tape, before and after givens were changed in their cells. */
#include "book_bench.h"

#include "cmocka_all.h"
#include "report/xlsx/formula.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PATH "formula-book.xlsx"

static fig given(struct tape *tape, enum unit unit, uint8_t decimals, int64_t value) {
    static uint32_t line; /* every given of its own place */
    return tape_given(tape, "given", unit, decimals, value, (struct place){.line = ++line});
}

/* Every figure that has a home: what is stored and what is worked out is the tape's value. */
static void check_homes(const struct book *book, struct xlsx *read, const char *when) {
    const struct tape *const tape = book->tape;
    int wrong = 0;
    for (uint32_t id = 1; id < tape->count; id++) {
        const fig figure = {id};
        const int64_t value = tape_amount(tape, figure);
        const uint8_t decimals = tape_decimals(tape, figure);
        const struct home *const home = book_home(book, figure);
        if (home == NULL) {
            continue;
        }
        struct xlsx_cell *const cell = book_bench_cell(read, home);
        const struct xlsx_value found = xlsx_work_out(read, cell);
        if (found.kind != XLSX_NUMBER || !book_bench_same(found.number, value, decimals)) {
            print_error("%s: figure %u, %s: %.12g %s, expected %lld at %d: =%s\n", when,
                        (unsigned)id, figure_op_name(tape_op(tape, figure)), found.number,
                        found.kind == XLSX_ERROR ? found.text : "", (long long)value, (int)decimals,
                        cell->formula == NULL ? "" : cell->formula);
            wrong++;
        }
    }
    assert_null(read->fault);
    assert_int_equal(wrong, 0);
}

static void check_stored(const struct book *book, const struct xlsx *read) {
    for (uint32_t id = 1; id < book->tape->count; id++) {
        const struct home *const home = book_home(book, (fig){id});
        assert_non_null(home);
        const struct xlsx_cell *const cell = book_bench_cell(read, home);
        assert_int_equal(cell->value.kind, XLSX_NUMBER);
        assert_true(book_bench_same(cell->value.number, tape_amount(book->tape, (fig){id}),
                                    tape_decimals(book->tape, (fig){id})));
    }
}

/* Another value for a given, on the tape and in its cell. */
static void change(struct tape *tape, const struct book *book, struct xlsx *read, fig figure,
                   int64_t value) {
    struct xlsx_cell *const cell = book_bench_cell(read, book_home(book, figure));
    assert_null(cell->formula);
    tape_set(tape, figure, value);
    cell->value.number = (double)value / pow(10, tape_decimals(tape, figure));
}

/* --- long sums --- */

enum { LONG = 1500 };

struct long_case {
    const char *name;
    size_t minus_from; /* terms from there on are taken away */
    bool total;
    uint8_t count_decimals;
    bool scattered; /* no two terms stand in one column */
};

static const struct long_case long_cases[] = {
    {"a column is one range", LONG, false, 0, false},
    {"scattered", LONG, false, 0, true},
    {"scattered, the last third taken away", LONG * 2 / 3, false, 0, true},
    {"a total of columns", LONG, true, 0, false},
    {"a scattered total", LONG, true, 0, true},
    {"a scattered total of counts with decimals", LONG, true, 2, true},
};

/* A number between every two terms keeps them from becoming a range. */
static void place(struct book *book, bool scattered, uint16_t column, size_t row, fig figure) {
    const uint32_t at = (uint32_t)(scattered ? row * 2 : row) + 3;
    book_figure(book, scattered ? (uint16_t)(row % 2) : 0, at, column, LOOK_PLAIN, figure);
    if (scattered && !fig_none(figure)) {
        book_number(book, (uint16_t)(row % 2), at + 1, column, LOOK_PLAIN, UNIT_COUNT, 0, 1);
    }
}

static fig make_long(struct tape *tape, struct book *book, const struct long_case *c, fig *each) {
    fig counts[LONG] = {{0}};
    fig terms[LONG];
    for (size_t i = 0; i < LONG; i++) {
        each[i] = given(tape, UNIT_MONEY, 2, 101 + (int64_t)i * 7);
        terms[i] = i >= c->minus_from ? fig_minus(each[i]) : each[i];
        if (c->total) {
            counts[i] = given(tape, UNIT_COUNT, c->count_decimals, 3 + (int64_t)i % 11);
        }
    }
    const fig made = c->total ? fig_total(tape, "made", UNIT_MONEY, counts, each, LONG)
                              : fig_sum(tape, "made", UNIT_MONEY, terms, LONG);
    book_init(book, tape);
    (void)book_sheet(book, "Left", "left", false);
    (void)book_sheet(book, "Right", "right", false);
    (void)book_sheet(book, "Results", "results", false);
    for (size_t i = 0; i < LONG; i++) {
        place(book, c->scattered, 2, i, each[i]);
        place(book, c->scattered, 30, i, counts[i]);
    }
    book_figure(book, 2, 5, 3, LOOK_GRAND, made);
    return made;
}

/* A part of a long sum shows what it is before anybody recalculates. */
static size_t check_parts(struct xlsx *read, const struct xlsx_cell *made) {
    size_t parts = 0;
    for (size_t i = 0; i < read->count; i++) {
        struct xlsx_cell *const cell = &read->cells[i];
        if (cell->sheet == 2 && cell != made && cell->formula != NULL) {
            const struct xlsx_value found = xlsx_work_out(read, cell);
            assert_true(strlen(cell->formula) < 8192);
            assert_true(fabs(found.number - cell->value.number) < 1e-6);
            assert_true(cell->row > made->row);
            parts++;
        }
    }
    return parts;
}

static void test_long_sums(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(long_cases); i++) {
        const struct long_case *const c = &long_cases[i];
        struct tape tape;
        struct book book;
        struct xlsx read;
        fig each[LONG];
        tape_init(&tape, true);
        const fig made = make_long(&tape, &book, c, each);
        assert_int_equal(tape_fault(&tape), TAPE_OK);
        book_bench_read(&book, PATH, &read);
        check_stored(&book, &read);
        check_homes(&book, &read, c->name);
        const struct xlsx_cell *const cell = book_bench_cell(&read, book_home(&book, made));
        const size_t parts = check_parts(&read, cell);
        assert_true(c->scattered ? parts > 1 : parts == 0);
        assert_true(!c->scattered ? strlen(cell->formula) < 60 : true);
        for (size_t t = 0; t < LONG; t += 97) { /* every term is in some part */
            change(&tape, &book, &read, each[t], 999999);
        }
        change(&tape, &book, &read, each[LONG - 1], 1);
        (void)tape_replay(&tape);
        xlsx_forget(&read);
        check_homes(&book, &read, c->name);
        xlsx_clear(&read);
        book_clear(&book);
        tape_clear(&tape);
    }
}

/* --- what has no formula, and what may vanish --- */

static bool choose_twice(const int64_t *in, size_t count, int64_t *out, size_t outputs) {
    for (size_t i = 0; i < outputs; i++) {
        out[i] = count == 0 ? 0 : in[0] / 500000;
    }
    return true;
}

static void test_plain(void **state) {
    (void)state;
    static const struct chooser twice = {.name = "twice", .choose = choose_twice};
    struct tape tape;
    struct book book;
    struct xlsx read;
    fig chosen;
    tape_init(&tape, true);
    const fig a = given(&tape, UNIT_MONEY, 2, 1234567);
    const fig constant = tape_constant(&tape, "inch", UNIT_MM, 1, 254, "definition");
    const fig hidden = given(&tape, UNIT_MONEY, 2, 100);
    const fig over_hidden = fig_plus(&tape, "over hidden", a, hidden);
    fig_chosen(&tape, "chosen", UNIT_COUNT, &twice, &a, 1, &chosen, 1);
    book_init(&book, &tape);
    (void)book_sheet(&book, "Sheet", "title", false);
    book_figure(&book, 0, 0, 0, LOOK_PLAIN, a);
    book_figure(&book, 0, 1, 0, LOOK_PLAIN, constant);
    book_figure(&book, 0, 2, 0, LOOK_PLAIN, over_hidden);
    book_figure(&book, 0, 3, 0, LOOK_PLAIN, chosen);
    book_number(&book, 0, 4, 0, LOOK_PLAIN, UNIT_MONEY, 2, -5);
    book_bench_read(&book, PATH, &read);
    static const struct {
        const char *at;
        double value;
    } wanted[] = {{"A1", 12345.67}, {"A2", 25.4}, {"A3", 12346.67}, {"A4", 24691}, {"A5", -0.05}};
    for (size_t i = 0; i < COUNT(wanted); i++) {
        const struct xlsx_cell *const cell = xlsx_at(&read, "Sheet", wanted[i].at);
        assert_non_null(cell);
        assert_null(cell->formula);
        assert_true(fabs(cell->value.number - wanted[i].value) < 1e-9);
    }
    assert_int_equal(read.count, COUNT(wanted));
    xlsx_clear(&read);
    book_clear(&book);
    tape_clear(&tape);
}

/* A share of a cost that vanishes is nothing; what a file gives below the line gets no such guard:
 * there a 0 is an error that is to be seen. */
static void test_vanishing(void **state) {
    (void)state;
    struct tape tape;
    struct book book;
    struct xlsx read;
    tape_init(&tape, true);
    const fig part = given(&tape, UNIT_MONEY, 2, 300);
    const fig rest = given(&tape, UNIT_MONEY, 2, 600);
    const fig whole = fig_plus(&tape, "whole", part, rest);
    const fig share = fig_ratio(&tape, "share", UNIT_FACTOR, (figs){{part}}, (figs){{whole}});
    const fig both =
        fig_ratio(&tape, "both", UNIT_FACTOR, (figs){{part, part}}, (figs){{whole, rest, whole}});
    book_init(&book, &tape);
    (void)book_sheet(&book, "Sheet", "title", false);
    for (uint32_t id = 1; id < tape.count; id++) {
        book_figure(&book, 0, id, 1, LOOK_PLAIN, (fig){id});
    }
    book_bench_read(&book, PATH, &read);
    check_homes(&book, &read, "whole");
    struct xlsx_cell *const a = book_bench_cell(&read, book_home(&book, share));
    struct xlsx_cell *const b = book_bench_cell(&read, book_home(&book, both));
    assert_true(fabs(xlsx_work_out(&read, a).number - 0.333333) < 1e-9);
    change(&tape, &book, &read, part, 0);
    change(&tape, &book, &read, rest, 0);
    xlsx_forget(&read);
    assert_int_equal(xlsx_work_out(&read, a).kind, XLSX_NUMBER);
    assert_true(fabs(xlsx_work_out(&read, a).number) < 1e-12);
    assert_int_equal(xlsx_work_out(&read, b).kind, XLSX_NUMBER);
    change(&tape, &book, &read, part, 300);
    xlsx_forget(&read);
    assert_true(fabs(xlsx_work_out(&read, a).number - 1) < 1e-12);
    assert_int_equal(xlsx_work_out(&read, b).kind, XLSX_ERROR);
    xlsx_clear(&read);
    book_clear(&book);
    tape_clear(&tape);
}

/* --- references --- */

static void test_references(void **state) {
    (void)state;
    static const struct {
        uint8_t sheet;
        uint16_t column;
        uint32_t row;
        const char *text;
    } cells[] = {
        {0, 0, 0, "A1"},         {0, 25, 9, "Z10"},     {0, 26, 0, "AA1"},
        {0, 27, 99, "AB100"},    {0, 51, 0, "AZ1"},     {0, 52, 0, "BA1"},
        {0, 255, 0, "IV1"},      {1, 2, 6, "Doors!C7"}, {1, 77, 1048575, "Doors!BZ1048576"},
        {1, 78, 0, "Doors!CA1"},
    };
    struct book book;
    book_init(&book, NULL);
    (void)book_sheet(&book, "Here", "here", false);
    (void)book_sheet(&book, "Doors", "doors", false);
    for (size_t i = 0; i < COUNT(cells); i++) {
        char text[REFERENCE_MOST];
        const struct home cell = {
            .row = cells[i].row, .sheet = cells[i].sheet, .column = cells[i].column};
        (void)formula_reference(&book, 0, &cell, text);
        assert_string_equal(text, cells[i].text);
    }
    book_clear(&book);
}

/* A check's `{n}` is the home of figure n, wherever that lies. */
static void test_checks(void **state) {
    (void)state;
    struct tape tape;
    struct book book;
    struct xlsx read;
    char formula[80];
    tape_init(&tape, true);
    const fig a = given(&tape, UNIT_COUNT, 0, 3);
    const fig b = given(&tape, UNIT_COUNT, 0, 4);
    book_init(&book, &tape);
    (void)book_sheet(&book, "Here", "here", false);
    (void)book_sheet(&book, "There", "there", false);
    (void)snprintf(formula, sizeof formula, "IF({%u}+{%u}*2=11,\"as planned\",\"run again\")",
                   (unsigned)a.id, (unsigned)b.id);
    book_check(&book, 0, 0, 0, LOOK_CHECK, formula, "as planned");
    book_figure(&book, 0, 1, 0, LOOK_PLAIN, a);
    book_figure(&book, 1, 7, 27, LOOK_PLAIN, b);
    book_bench_read(&book, PATH, &read);
    struct xlsx_cell *const cell = xlsx_at(&read, "Here", "A1");
    assert_string_equal(cell->formula, "IF(A2+There!AB8*2=11,\"as planned\",\"run again\")");
    assert_string_equal(cell->value.text, "as planned");
    assert_string_equal(xlsx_work_out(&read, cell).text, "as planned");
    change(&tape, &book, &read, b, 5);
    xlsx_forget(&read);
    assert_string_equal(xlsx_work_out(&read, cell).text, "run again");
    xlsx_clear(&read);
    book_clear(&book);
    tape_clear(&tape);
}

/* --- tapes made at random --- */

enum { GIVENS = 24, FIGURES = 80, ROUNDS = 60, CHANGES = 6 };

static uint64_t seed;

static uint32_t draw(uint32_t below) {
    seed = seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return (uint32_t)(seed >> 33) % below;
}

/* A figure small enough that a product of two has room. */
static fig any(const struct tape *tape) {
    for (int tries = 0; tries < 50; tries++) {
        const fig figure = {1 + draw(tape->count - 1)};
        if (llabs(tape_amount(tape, figure)) < 100000) {
            return figure;
        }
    }
    return (fig){1};
}

/* Values that are often at a tie: few digits, ending in 5 or 0. */
static int64_t any_value(void) {
    static const int64_t ends[] = {0, 5, 50, 25, 125, 1};
    const int64_t value = (int64_t)draw(200) * 10 + ends[draw(COUNT(ends))];
    return draw(8) == 0 ? -value : value;
}

static fig any_table(struct tape *tape, bool upto) {
    fig limits[3];
    fig values[3];
    int64_t limit = (int64_t)draw(100);
    for (size_t i = 0; i < 3; i++) {
        limits[i] = given(tape, UNIT_COUNT, 0, limit);
        limit += 1 + (int64_t)draw(300);
        values[i] = any(tape);
    }
    return upto ? fig_pick_upto(tape, "made", any(tape), limits, values, 3)
                : fig_pick_from(tape, "made", any(tape), limits, values, 3);
}

static fig any_figure(struct tape *tape) {
    static const enum unit units[] = {UNIT_MONEY, UNIT_COUNT, UNIT_MIN, UNIT_SQFT, UNIT_FACTOR};
    const enum unit unit = units[draw(COUNT(units))];
    fig list[8];
    fig each[8];
    const size_t count = 1 + draw(COUNT(list));
    for (size_t i = 0; i < count; i++) {
        list[i] = draw(4) == 0 ? fig_minus(any(tape)) : any(tape);
        each[i] = any(tape);
    }
    switch (draw(8)) {
    case 0:
    case 1:
        return fig_sum(tape, "made", unit, list, count);
    case 2:
        for (size_t i = 0; i < count; i++) {
            list[i] = any(tape);
        }
        return fig_total(tape, "made", unit, list, each, count);
    case 3:
        return fig_ratio(tape, "made", unit, (figs){{any(tape), any(tape)}},
                         (figs){{given(tape, UNIT_COUNT, 0, 1 + draw(100))}});
    case 4:
        return fig_ratio(tape, "made", unit, (figs){{any(tape)}}, (figs){{{0}}});
    case 5:
        return draw(2) == 0 ? fig_larger(tape, "made", any(tape), any(tape))
                            : fig_smaller(tape, "made", any(tape), any(tape));
    case 6:
        return fig_up(tape, "made", any(tape), given(tape, UNIT_MONEY, 2, 1 + draw(500)));
    default:
        return any_table(tape, draw(2) == 0);
    }
}

/* false: a value got too large on the way; another seed has it better. */
static bool random_tape(struct tape *tape) {
    for (size_t i = 0; i < GIVENS; i++) {
        (void)given(tape, UNIT_MONEY, (uint8_t)draw(4), any_value());
    }
    while (tape->count < FIGURES && tape_fault(tape) == TAPE_OK) {
        if (llabs(tape_amount(tape, any_figure(tape))) > INT64_C(100000000)) {
            return false;
        }
    }
    return tape_fault(tape) == TAPE_OK;
}

static void random_book(struct book *book, const struct tape *tape) {
    book_init(book, tape);
    (void)book_sheet(book, "One", "one", false);
    (void)book_sheet(book, "Two", "two", true);
    (void)book_sheet(book, "Workings", "workings", false);
    for (uint32_t id = 1; id < tape->count; id++) {
        const uint16_t sheet = (uint16_t)draw(3);
        book_figure(book, sheet, id, (uint16_t)draw(3), LOOK_PLAIN, (fig){id});
        if (draw(3) == 0) {
            book_mention(book, sheet, id, (uint16_t)(5 + draw(2)), LOOK_PLAIN, any(tape));
        }
    }
}

static bool check_random(uint64_t round) {
    struct tape tape;
    struct book book;
    struct xlsx read;
    seed = round;
    tape_init(&tape, true);
    const bool good = random_tape(&tape);
    if (good) {
        random_book(&book, &tape);
        book_bench_read(&book, PATH, &read);
        check_stored(&book, &read);
        check_homes(&book, &read, "as made");
        for (int i = 0; i < CHANGES; i++) {
            const fig figure = {1 + draw(GIVENS)};
            change(&tape, &book, &read, figure, any_value());
            (void)tape_replay(&tape);
            xlsx_forget(&read);
            if (tape_fault(&tape) == TAPE_OK) {
                check_homes(&book, &read, "changed");
            }
        }
        xlsx_clear(&read);
        book_clear(&book);
    }
    tape_clear(&tape);
    return good;
}

static void test_random(void **state) {
    (void)state;
    int checked = 0;
    for (uint64_t round = 1; round < UINT64_C(100) * ROUNDS && checked < ROUNDS; round++) {
        checked += check_random(round) ? 1 : 0;
    }
    assert_int_equal(checked, ROUNDS);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_long_sums), cmocka_unit_test(test_plain),
        cmocka_unit_test(test_vanishing), cmocka_unit_test(test_references),
        cmocka_unit_test(test_checks),    cmocka_unit_test(test_random),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
