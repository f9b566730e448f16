/* SPDX-License-Identifier: MIT */
/* Prices at the edge: jobs that cost nothing or a cent, work that is charged for by itself, and
 * jobs that have one thing of many. */
#include "support.h"

#include "price/outcome.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>

#include <cmocka.h>
#include <string.h>

#define ONE "S1,24,24\n"
/* A slab from one sheet, which is all that the job costs. */
#define COSTS(price)                                                                               \
    "make|style = slab", "shop|charge sheets = bought", ("sheet board|price = " price " per sheet")
#define TAXED "sale|tax = 50 %\ntax on = materials at selling price"
#define SHOWN                                                                                      \
    "sale|charges = for samples by show", "shop|labor rate = 60.00 per hour",                      \
        "shop|overhead = 10.00 per bench hour"

static const struct bench_case cases[] = {
    {"a cent is taxed half a cent, which is one, and has a margin",
     {COSTS("0.01"), TAXED},
     ONE,
     {COST(job.direct, "0.01"), SALE(sold, "0.01"), SALE(taxable, "0.01"), SALE(total, "0.02"),
      SALE(margin_left, "0")}},
    {"nothing has no materials to tax and no margin",
     {COSTS("0"), TAXED},
     ONE,
     {COST(job.direct, "0"), SALE(sold, "0"), SALE(taxable, NULL), SALE(tax, NULL),
      SALE(margin_left, NULL)}},
    {"a cent has its group's profit",
     {COSTS("0.01"), "markup|sheets = 100 %"},
     ONE,
     {COST(job.profit, "0.01"), COST(job.price, "0.02")}},
    {"nothing has none",
     {COSTS("0"), "markup|sheets = 100 %", "shop|profit = 50 % markup"},
     ONE,
     {COST(job.profit, "0"), COST(job.price, "0")}},
    /* half an hour at 60.00, and 5.00 of overhead */
    {"a charge that is worked for at the bench",
     {COSTS("100"), SHOWN, "operation show|per = job\nminutes = 30"},
     ONE,
     {COST(job.overhead, "0"), SALE(sold, "100"), SALE(subtotal, "135")}},
    {"a charge that is worked for elsewhere has no overhead by the bench hour",
     {COSTS("100"), SHOWN, "operation show|per = job\nminutes = 30\noff the bench = yes"},
     ONE,
     {SALE(sold, "100"), SALE(subtotal, "130")}},
    /* 8 sq ft of faces and 1/2 of edges at 4.00 */
    {"a finish sent out is bought in, and nothing of the shop's",
     {COSTS("100"), "make|finish = painted",
      "finish painted|put out = 4.00 per sqft\ncoats\nspray"},
     ONE,
     {COST(job.group[COST_FINISH], NULL), DOOR(0, cost.group[COST_FINISH], NULL),
      DOOR(0, cost.group[COST_BOUGHT_IN], "34"), DOOR(0, unit, "134")}},
    /* 8 1/2 sq ft of one coat at 0.10 */
    {"paper is used up by the area that is sprayed",
     {COSTS("100"), "make|finish = painted", "consumable paper|price = 0.10 per sqft"},
     ONE,
     {CONSUMABLE(0, quantity, "8.5"), CONSUMABLE(0, cost, "0.85"),
      COST(job.group[COST_CONSUMABLES], "0.85"), DOOR(0, cost.group[COST_CONSUMABLES], "0.85")}},
    {"and not where the finish is sent out",
     {COSTS("100"), "make|finish = painted", "consumable paper|price = 0.10 per sqft",
      "finish painted|put out = 4.00 per sqft\ncoats\nspray"},
     ONE,
     {CONSUMABLE(0, cost, NULL), DOOR(0, cost.group[COST_CONSUMABLES], NULL)}},
    {"no overhead without a rate of it",
     {COSTS("100"), "door slab|operations = saw", "operation saw|per = job\nminutes = 30"},
     ONE,
     {COST(job.overhead, NULL), COST(job.full, "130")}},
    {"the minimum door, of a door that costs just that",
     {COSTS("100"), "shop|minimum door = 100.00"},
     ONE,
     {DOOR(0, priced, "100"), COST(minimum, "0"), COST(rounding, "0")}},
    {"and a cent less",
     {COSTS("99.99"), "shop|minimum door = 100.00"},
     ONE,
     {DOOR(0, priced, "100"), COST(minimum, "0.01"), COST(rounding, "0")}},
    {"the minimum job, just met",
     {COSTS("100"), "shop|minimum job = 100.00"},
     ONE,
     {SALE(minimum_line, "0"), SALE(sold, "100")}},
    {"and missed by a cent",
     {COSTS("99.99"), "shop|minimum job = 100.00"},
     ONE,
     {SALE(minimum_line, "0.01"), SALE(sold, "100")}},
    {"a discount from just so many doors",
     {COSTS("100"), "sale|discounts = 2: 10 %"},
     "id,count,width,height\nS1,2,24,24\n",
     {SALE(discount, "10"), SALE(sold, "90")}},
    {"and of one door less",
     {COSTS("100"), "sale|discounts = 2: 10 %"},
     ONE,
     {SALE(discount, "0"), SALE(sold, "100")}},
    {"delivery alone is taxed where it says so",
     {COSTS("100"), "sale|tax = 10 %\ntax on = materials at cost\ntax delivery = yes\n"
                    "delivery = 50.00"},
     ONE,
     {SALE(taxable, "150"), SALE(tax, "15"), SALE(total, "165")}},
    {"and is not where it does not",
     {COSTS("100"), "sale|tax = 10 %\ntax on = selling price\ndelivery = 50.00"},
     ONE,
     {SALE(taxable, "100"), SALE(tax, "10"), SALE(total, "160")}},
};

static void test_edges(void **state) {
    (void)state;
    bench_run(cases, COUNT(cases), BENCH_INCH);
}

/* An outcome is nothing where all of its numbers are, and each of them counts. */
static void test_nothing(void **state) {
    (void)state;
    int64_t numbers[sizeof(struct outcome) / sizeof(int64_t)] = {0};
    struct outcome outcome = {0};
    assert_true(outcome_none(outcome));
    for (size_t i = 0; i < COUNT(numbers); i++) {
        numbers[i] = -1;
        memcpy(&outcome, numbers, sizeof outcome);
        assert_false(outcome_none(outcome));
        numbers[i] = 0;
    }
}

/* All lumber of a leaf, in ten-thousandths of a board foot. */
static int64_t lumber_of(const struct bench *b, size_t leaf) {
    const struct leaf_figures *const f = &b->estimate.quantities.leaves[leaf];
    int64_t sum = 0;
    for (size_t u = 0; u < f->use_count; u++) {
        sum += f->uses[u].material_kind == MATERIAL_LUMBER
                   ? tape_scaled(&b->estimate.tape, f->uses[u].net, 4)
                   : 0;
    }
    return sum;
}

/* What is worked by the board foot that is bought is borne by all lumber of a door: of two kinds,
 * of one, of none. 100 minutes a board foot, so that cents are no matter. */
static void test_by_lumber(void **state) {
    (void)state;
    struct bench b;
    bench_open(&b, "by the board foot", BENCH_INCH,
               (const char *[]){"shop|operations = work", "operation work|per = bf\nminutes = 100",
                                "make|panel = thick-poplar", NULL},
               "id,style,width,height\nD1,solid,18,30\nD2,open,18,30\nD3,slab,18,30\n");
    bench_sound(&b);
    const struct operation_share *const shares = b.estimate.labor.operations[0].shares;
    const int64_t both = lumber_of(&b, 0);
    const int64_t one = lumber_of(&b, 1);
    const int64_t of_both = tape_scaled(&b.estimate.tape, shares[0].cost, 2);
    const int64_t of_one = tape_scaled(&b.estimate.tape, shares[1].cost, 2);
    assert_true(one > 0 && both > 2 * one && of_one > 0);
    assert_true(llabs((long long)(of_both * one - of_one * both)) <= both); /* half a cent each */
    assert_true(fig_none(shares[2].cost));
    assert_string_equal(tape_label(&b.estimate.tape, b.estimate.labor.operations[0].job_count),
                        "lumber bought in all");
    assert_int_equal(bench_close(&b), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_by_lumber),
                                       cmocka_unit_test(test_edges),
                                       cmocka_unit_test(test_nothing)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
