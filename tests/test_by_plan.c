/* SPDX-License-Identifier: MIT */
/* Cutting plans on the tape: what is bought, what it costs, where it goes; work counted by them. */
#include "support.h"

#include "stock/plan_input.h"

#include <setjmp.h>
#include <stdarg.h>
#include <string.h>

#include <cmocka.h>

#define BY_PLAN "shop|price lumber by = plan\nprice sheets by = plan"
#define SLABS   "make|style = slab"

static const struct bench_case cases[] = {
    {"sheets: 8 slabs of 24 x 24 fill one, where no kerf is lost",
     {SLABS, BY_PLAN, "saw|kerf = 0"},
     "id,count,width,height\nS1,8,24,24\n",
     {SHEET(0, by_plan.whole, "1"), SHEET(0, by_plan.cost, "80"), SHEET(0, plan.fewest, "1"),
      SHEET(0, plan.gap, "0"), SHEET(0, plan.cuts, "7"), SHEET(0, plan.kerf, "0"),
      SHEET(0, offcuts, "0"), SHEET(0, implied_waste, "0"), SHEET(0, priced.whole, "1")}},
    {"and with it three a sheet: 24 is half of 48 and the factor knows no kerf",
     {SLABS, BY_PLAN, "saw|kerf = 1/8", "sheet board|waste = 0 % added"},
     "id,count,width,height\nS1,8,24,24\n",
     {SHEET(0, by_plan.whole, "3"), SHEET(0, by_factor.whole, "1"), SHEET(0, priced.whole, "3"),
      SHEET(0, plan.fewest, "3"), SHEET(0, priced.cost, "240"),
      /* Three, three and two a sheet. Of three, ripping first keeps 96 x 23 7/8 in one piece: 96
       * and three times 24 in. Of two, cutting the end off first keeps 47 3/4 x 48: 48, 48 1/8 and
       * 24 in. All by 1/8: 57.0156 sq in. All that is left is worth keeping, so the kerf alone is
       * lost. */
      SHEET(0, plan.cuts, "11"), SHEET(0, plan.kerf, "0.396"), SHEET(0, implied_waste, "1.2375"),
      SHEET(0, short_of_plan, "64 sq ft")}},
    {"offcuts worth keeping are no waste: a slab of 24 x 48 in a sheet of 48 x 96",
     {SLABS, BY_PLAN, "saw|kerf = 0", "sheet board|waste = 20 % lost"},
     "id,count,width,height\nS1,1,24,48\n",
     {SHEET(0, by_plan.bought, "32"), SHEET(0, plan.keep_worth, "24"), SHEET(0, implied_waste, "0"),
      SHEET(0, short_of_plan, "0")}},
    {"a half sheet where one is enough",
     {SLABS, BY_PLAN, "saw|kerf = 0", "sheet board|half sheet = 45.00"},
     "id,count,width,height\nS1,4,24,24\n",
     {SHEET(0, by_plan.whole, "0"), SHEET(0, by_plan.half, "1"), SHEET(0, by_plan.cost, "45"),
      SHEET(0, plan.gap, "0"), SHEET(0, plan.fewest, NULL)}},
    {"priced by factor and nothing asks for a plan: there is none",
     {SLABS},
     "id,count,width,height\nS1,8,24,24\n",
     {SHEET(0, by_plan.whole, NULL), SHEET(0, plan.cuts, NULL), SHEET(0, implied_waste, NULL)}},
    {"5/4 lumber by the board foot: 6 in x 8 ft is 4 ft of surface, 5 bf at 5.00",
     {BY_PLAN, "make|frame = thick-poplar",
      "lumber thick-poplar|board widths = 6\nboard lengths = 8 ft"},
     "D1,18,30\n",
     {LUMBER(0, by_plan.bought, "5 bf"), LUMBER(0, by_plan.cost, "25"),
      LUMBER(0, plan.boards, "1")}},
    {"work counted by cuts makes the plan",
     {SLABS, "saw|kerf = 0", "shop|operations = saw it", "operation saw it|per = cut\nminutes = 2"},
     "id,count,width,height\nS1,8,24,24\n",
     {SHEET(0, plan.cuts, "7"), OPERATION(0, job_count, "7"), OPERATION(0, run, "14")}},
    {"cuts are of lumber and of sheets: set up for each",
     {"shop|operations = saw it", "lumber poplar|board widths = 6\nboard lengths = 8 ft",
      "operation saw it|per = cut\nminutes = 2\nsetup = 5 min per material"},
     "D1,18,30\n",
     {OPERATION(0, setups, "2"), OPERATION(0, setup_minutes, "10")}},
    {"and not for the glass",
     {"make|style = glazed", "shop|operations = saw it",
      "lumber poplar|board widths = 6\nboard lengths = 8 ft",
      "operation saw it|per = cut\nminutes = 2\nsetup = 5 min per material"},
     "D1,18,30\n",
     {OPERATION(0, setups, "1")}},
};

/* Prices are as fine as the currency: with any the plan is held against a bound that it reaches. */
static const struct bench_case currencies[] = {
    {"thousandths",
     {BY_PLAN, "shop|currency = KWD", "lumber thick-poplar|board widths = 6\nboard lengths = 8 ft",
      "lumber thick-poplar|price = 5.0012 per bf", "make|frame = thick-poplar"},
     "D1,18,30\n",
     {LUMBER(0, by_plan.cost, "25.006"), LUMBER(0, plan.at_price, "25.006"),
      LUMBER(0, plan.bound, "25.006"), LUMBER(0, plan.gap, "0")}},
    {"none",
     {BY_PLAN, "shop|currency = JPY", "lumber thick-poplar|board widths = 6\nboard lengths = 8 ft",
      "lumber thick-poplar|price = 501 per bf", "make|frame = thick-poplar"},
     "D1,18,30\n",
     {LUMBER(0, by_plan.cost, "2505"), LUMBER(0, plan.at_price, "2505"),
      LUMBER(0, plan.bound, "2505"), LUMBER(0, plan.gap, "0")}},
    {"sheets in thousandths",
     {SLABS, BY_PLAN, "shop|currency = KWD", "sheet board|price = 60.125 per sheet",
      "saw|kerf = 0"},
     "id,count,width,height\nS1,8,24,24\n",
     {SHEET(0, by_plan.cost, "60.125"), SHEET(0, plan.bound, "60.125"), SHEET(0, plan.gap, "0"),
      SHEET(0, plan.fewest, "1")}},
    {"sheets in whole yen",
     {SLABS, BY_PLAN, "shop|currency = JPY", "sheet board|price = 60125 per sheet", "saw|kerf = 0"},
     "id,count,width,height\nS1,8,24,24\n",
     {SHEET(0, by_plan.cost, "60125"), SHEET(0, plan.bound, "60125"), SHEET(0, plan.gap, "0")}},
};

static void plans_in_currencies(void **state) {
    (void)state;
    bench_run(currencies, COUNT(currencies), BENCH_INCH);
}

static void whole_prices(void **state) {
    (void)state;
    static const struct {
        int64_t prices[2], whole[2]; /* at 6 decimals; as made whole */
        uint8_t decimals;
    } rows[] = {
        {{80000000, 45000000}, {8000, 4500}, 2},
        {{80000000, 45005000}, {80000, 45005}, 3},
        {{80123400, 0}, {801234, 0}, 4},
        {{1, 1000000}, {1, 1000000}, 6},
        {{10, 20}, {1, 2}, 5},
        {{0, 0}, {0, 0}, 2},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct cut_stock stocks[] = {{.price = rows[i].prices[0]}, {.price = rows[i].prices[1]}};
        assert_int_equal(plan_input_prices(stocks, 2), rows[i].decimals);
        assert_int_equal(stocks[0].price, rows[i].whole[0]);
        assert_int_equal(stocks[1].price, rows[i].whole[1]);
    }
}

/* Operands of no plan are refused: own ones, of which the last is how many sizes are sold, those of
 * the rack, of these sawn; then 3 a size, 4 a size of the rack, 3 an item. */
static void operands_of_plans(void **state) {
    (void)state;
    static const struct {
        int64_t sold, rack, sawn;
        size_t count;
        bool read;
        size_t items;
    } rows[] = {
        {1, 0, 0, 4 + 3, true, 0},      {1, 0, 0, 4 + 3 + 6, true, 2},
        {2, 1, 1, 4 + 10, true, 0},     {2, 1, 0, 4 + 10 + 3, true, 1},
        {2, 1, 2, 4 + 10, false, 0},    {2, 1, 1, 4 + 9, false, 0},
        {0, 1, 1, 4 + 4 + 3, false, 0}, {3, 1, 1, 4 + 13, false, 0},
        {1, 51, 0, 300, false, 0},      {1, 50, 50, 300, true, (300 - 4 - 3 - 200) / 3},
        {1, 0, 0, 3, false, 0},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        int64_t in[400] = {0, rows[i].sold * 1000000, rows[i].rack * 1000000,
                           rows[i].sawn * 1000000};
        struct plan_operands o;
        for (size_t k = 4; k < COUNT(in); k++) {
            in[k] = (int64_t)k * 1000000;
        }
        assert_int_equal(plan_operands_read(&o, in, rows[i].count, 2, true, 2, true), rows[i].read);
        if (rows[i].read) {
            const size_t first = rows[i].count - 3 * rows[i].items;
            assert_int_equal(o.item_count, rows[i].items);
            assert_int_equal(o.stocks[0].length, in[4]);
            assert_int_equal(o.stocks[0].copies, CUT_UNLIMITED);
            for (size_t k = 0; k < o.rack; k++) {
                const size_t at = first - 4 * (o.rack - k);
                assert_int_equal(o.stocks[o.sold + k].width, in[at + 1]);
                assert_int_equal(o.stocks[o.sold + k].copies, at + 3);
            }
            for (size_t k = 0; k < o.item_count; k++) {
                assert_int_equal(o.items[k].length, in[first + 3 * k]);
                assert_int_equal(o.items[k].demand, first + 3 * k + 2);
            }
        }
        plan_operands_free(&o);
    }
}

static void plans_on_the_tape(void **state) {
    (void)state;
    bench_run(cases, COUNT(cases), BENCH_INCH);
}

/* Work that is counted by the plan of a lumber needs one. */
static void cuts_need_a_plan(void **state) {
    (void)state;
    static const char *const edits[BENCH_MOST_EDITS] = {"shop|operations = saw it",
                                                        "operation saw it|per = cut\nminutes = 2"};
    struct bench bench;
    bench_open(&bench, "cuts of lumber that no board is stocked of", BENCH_INCH, edits,
               "D1,18,30\n");
    assert_int_equal(bench.result, ESTIMATE_FAULT);
    assert_true(bench_has(&bench, "no-plan"));
    assert_int_equal(bench_close(&bench), 0);
}

/* Why there is no plan of a lumber: none of its boards are stocked, or of too many sizes. */
static void no_plans(void **state) {
    (void)state;
    static const struct {
        const char *boards, *reason;
    } rows[] = {
        {"lumber poplar|waste = 0 % added", "no board widths and lengths are stocked"},
        {"lumber poplar|board widths = 6\nboard lengths = 8 ft", NULL},
        {"lumber poplar|board widths = 4, 5, 6, 7, 8, 9, 10, 11\n"
         "board lengths = 6 ft, 7 ft, 8 ft, 9 ft, 10 ft, 11 ft, 12 ft, 13 ft",
         "more board sizes than the planner takes"},
    };
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct bench b;
        bench_open(&b, rows[i].boards, BENCH_INCH, (const char *[]){rows[i].boards, NULL},
                   "D1,18,30\n");
        bench_sound(&b);
        estimate_clear(&b.estimate);
        struct estimate_request request = bench_request(-1);
        request.plans.always = true;
        assert_int_equal(estimate_make(&b.estimate, &b.rates, &b.job, request, &b.problems),
                         ESTIMATE_OK);
        const char *const reason = b.estimate.lumber.buys[0].plan.no_plan_reason;
        if ((reason == NULL) != (rows[i].reason == NULL) ||
            (reason != NULL && strcmp(reason, rows[i].reason) != 0)) {
            bench_wrong(&b, "no plan, as %s", reason == NULL ? "-" : reason);
        }
        assert_int_equal(bench_close(&b), 0);
    }
}

/* All parts of what is bought, in the figures' own decimals. */
static void must_add_up(struct bench *bench, const char *what, fig bought, const fig *terms,
                        size_t count) {
    int64_t sum = 0;
    for (size_t i = 0; i < count; i++) {
        sum += fig_none(terms[i]) ? 0 : tape_scaled(&bench->estimate.tape, terms[i], 6);
    }
    if (sum != tape_scaled(&bench->estimate.tape, bought, 6)) {
        bench_wrong(bench, "%s: the parts of the waste do not add up", what);
    }
}

/* What the tape says of the first cut, as `first cut of [saw]: 0 rip, 1 crosscut`. */
static void check_first_cut(const struct tape *tape, bool crosscut) {
    size_t told = 0;
    for (uint32_t i = 1; i < tape->count; i++) {
        const fig f = {i};
        if (strcmp(tape_label(tape, f), "boards are crosscut first") == 0) {
            assert_int_equal(tape_scaled(tape, f, 6), crosscut ? 1000000 : 0);
            told++;
        }
    }
    assert_true(told > 0);
}

/* Every sample, ripped first and crosscut first: the waste adds up, no plan is below its bound, a
 * replay changes nothing. */
static void samples_by_plan(void **state) {
    (void)state;
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini",
                                       "samples/old-house/old-house.ini"};
    int wrong = 0;
    for (size_t j = 0; j < 2 * COUNT(jobs); j++) {
        struct bench bench;
        bench_open_job(&bench, jobs[j / 2]);
        estimate_clear(&bench.estimate);
        bench.rates.saw.crosscut_first = j % 2 == 1;
        const struct estimate_request request = {
            .option = -1, .plans = {.effort = 1000000, .always = true}, .traced = true};
        bench.result =
            estimate_make(&bench.estimate, &bench.rates, &bench.job, request, &bench.problems);
        const struct estimate *const e = &bench.estimate;
        assert_int_equal(bench.result, ESTIMATE_OK);
        check_first_cut(&e->tape, j % 2 == 1);
        for (size_t i = 0; i < e->lumber.count; i++) {
            const struct lumber_buy *const b = &e->lumber.buys[i];
            const struct lumber_plan *const p = &b->plan;
            const fig terms[] = {b->net,     p->allowances, p->trim,  p->kerf,
                                 p->defects, p->offcuts,    p->tally, b->over_plan};
            assert_null(p->no_plan_reason);
            assert_int_equal(p->job.crosscut_first, j % 2 == 1);
            must_add_up(&bench, "lumber", b->by_plan.bought, terms, COUNT(terms));
            assert_true(tape_amount(&e->tape, p->gap) >= 0);
            assert_string_equal(tape_label(&e->tape, tape_operand(&e->tape, p->cuts, 0).f),
                                "cuts of all boards");
        }
        for (size_t i = 0; i < e->sheets.count; i++) {
            const struct sheet_buy *const b = &e->sheets.buys[i];
            const fig terms[] = {b->net, b->plan.trim, b->plan.kerf, b->offcuts};
            assert_null(b->plan.no_plan_reason);
            must_add_up(&bench, "sheets", b->by_plan.bought, terms, COUNT(terms));
            assert_string_equal(tape_label(&e->tape, tape_operand(&e->tape, b->plan.cuts, 0).f),
                                "cuts of all sheets");
            assert_true(tape_amount(&e->tape, b->plan.gap) >= 0);
        }
        if (tape_replay(&bench.estimate.tape) != 0) {
            bench_wrong(&bench, "a replay changes figures");
        }
        if (tape_fault(&bench.estimate.tape) != TAPE_OK) {
            bench_wrong(&bench, "a replay cannot make '%s'",
                        tape_fault_label(&bench.estimate.tape));
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* What the waste is of, is said. */
static void wastes_are_named(void **state) {
    (void)state;
    static const struct {
        const char *waste, *label;
    } readings[] = {
        {"sheet board|waste = 10 % added", "waste that the plan asks for, of net"},
        {"sheet board|waste = 10 % lost", "waste that the plan asks for, of what is used up"},
    };
    for (size_t i = 0; i < COUNT(readings); i++) {
        struct bench bench;
        const char *const edits[BENCH_MOST_EDITS] = {SLABS, BY_PLAN, readings[i].waste};
        bench_open(&bench, readings[i].waste, BENCH_INCH, edits, "S1,24,24\n");
        bench_sound(&bench);
        assert_string_equal(
            tape_label(&bench.estimate.tape, bench.estimate.sheets.buys[0].implied_waste),
            readings[i].label);
        assert_int_equal(bench_close(&bench), 0);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(plans_on_the_tape), cmocka_unit_test(plans_in_currencies),
        cmocka_unit_test(whole_prices),      cmocka_unit_test(no_plans),
        cmocka_unit_test(operands_of_plans), cmocka_unit_test(cuts_need_a_plan),
        cmocka_unit_test(samples_by_plan),   cmocka_unit_test(wastes_are_named)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
