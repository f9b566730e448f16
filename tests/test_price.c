/* SPDX-License-Identifier: MIT */
/* From cost to price and from price to what the client pays. A slab from one sheet of 1,000.00
 * makes a direct cost of just that. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define THOUSAND                                                                                   \
    "make|style = slab", "sheet board|price = 1000.00 per sheet", "shop|charge sheets = bought"
#define WAGE "shop|labor rate = 60.00 per hour"
#define SHOW "operation show|per = job\nminutes = 30"
#define ONE  "S1,24,24\n"
/* 500.00 of labor besides */
#define LABORED "door slab|operations = work", "operation work|per = job\nminutes = 500"

static const struct bench_case build_cases[] = {
    {"1,000; 3 % 1,030; 18 % 1,215.40; 25 % markup 1,519.25",
     {THOUSAND, "shop|contingency = 3 %\noverhead = 18 % of cost\nprofit = 25 % markup"},
     ONE,
     {COST(job.materials, "1000"), COST(job.direct, "1000"), COST(job.contingency, "30"),
      COST(job.overhead, "185.40"), COST(job.full, "1215.40"), COST(job.profit, "303.85"),
      COST(job.price, "1519.25"), DOOR(0, unit, "1519.25"), COST(doors_total, "1519.25"),
      COST(rounding, "0")}},
    {"25 % margin is not 25 % markup: 1,215.40 / 0.75",
     {THOUSAND, "shop|contingency = 3 %\noverhead = 18 % of cost\nprofit = 25 % margin"},
     ONE,
     {COST(job.full, "1215.40"), COST(job.price, "1620.53"), COST(job.profit, "405.13")}},
    {"nothing added",
     {THOUSAND},
     ONE,
     {COST(job.group[COST_BOUGHT_IN], NULL), COST(job.bought_doors, NULL),
      COST(job.contingency, NULL), COST(job.overhead, NULL), COST(job.profit, NULL),
      COST(job.full, "1000"), COST(job.price, "1000"), DOOR(0, unit, "1000")}},
    {"0 % is as nothing",
     {THOUSAND, "shop|contingency = 0 %\noverhead = 0 % of cost\nprofit = 0 % margin"},
     ONE,
     {COST(job.contingency, "0"), COST(job.price, "1000")}},
    {"overhead by the hour: 500 minutes at 14.00",
     {THOUSAND, LABORED, "shop|overhead = 14.00 per hour"},
     ONE,
     {COST(job.group[COST_LABOR], "500"), COST(job.direct, "1500"), COST(job.overhead, "116.67"),
      COST(job.full, "1616.67")}},
    {"overhead by the bench hour: 300 of 500 minutes at 14.00, the door's likewise",
     {THOUSAND, "door slab|operations = work, away", "operation work|per = job\nminutes = 300",
      "operation away|per = job\nminutes = 200\noff the bench = yes",
      "shop|overhead = 14.00 per bench hour"},
     ONE,
     {COST(job.group[COST_LABOR], "500"), COST(job.overhead, "70"), COST(job.full, "1570"),
      DOOR(0, cost.overhead, "70")}},
    {"contingency stands before overhead of cost",
     {THOUSAND, "shop|contingency = 10 %\noverhead = 10 % of cost"},
     ONE,
     {COST(job.contingency, "100"), COST(job.overhead, "110"), COST(job.full, "1210")}},
    {"remakes and tax on purchases are a cost",
     {THOUSAND, LABORED, "shop|remakes = 2 % of doors\ntax on purchases = 6 %\ncontingency = 3 %"},
     ONE,
     {COST(job.group[COST_PURCHASE_TAX], "60"), COST(job.group[COST_REMAKES], "31.20"),
      COST(job.direct, "1591.20"), COST(job.contingency, "47.74")}},
    {"consumables: 4 doors, 3 hours, sprayed area",
     {THOUSAND, "door slab|operations = work", "operation work|per = job\nminutes = 180",
      "make|finish = painted", "consumable tape|price = 0.20 per sqft",
      "consumable bumper|price = 0.25 per door", "consumable mask|price = 1.50 per hour"},
     "id,count,width,height\nS1,4,24,24\n", /* 4 x (8 + 0.5) sq ft */
     {COST(job.group[COST_CONSUMABLES], "12.30")}},
};

static const struct bench_case door_cases[] = {
    {"minimum by area: 1.5 sq ft at the job's own 1,000 for 5 sq ft",
     {THOUSAND, "shop|minimum door = 1.5 sqft"},
     "S1,12,12\nS2,24,24\n",
     {COST(least, "300"), DOOR(0, cost.price, "200"), DOOR(0, priced, "300"), DOOR(0, unit, "300"),
      DOOR(1, unit, "800"), COST(minimum, "100"), COST(doors_total, "1100"), COST(rounding, "0")}},
    {"none is under it",
     {THOUSAND, "shop|minimum door = 1.5 sqft"},
     ONE,
     {COST(least, "375"), DOOR(0, unit, "1000"), COST(minimum, "0")}},
    {"minimum by money",
     {THOUSAND, "shop|minimum door = 1200.00"},
     ONE,
     {COST(least, "1200"), DOOR(0, unit, "1200"), COST(minimum, "200")}},
    {"a dearer one is not",
     {THOUSAND, "shop|minimum door = 900.00"},
     ONE,
     {DOOR(0, unit, "1000"), COST(minimum, "0")}},
    {"raised to 0.50",
     {THOUSAND, "shop|round price to = 0.50\nprofit = 51.925 % markup"},
     ONE,
     {DOOR(0, priced, "1519.25"), DOOR(0, unit, "1519.50"), COST(rounding, "0.25")}},
    {"raised to 10.00",
     {THOUSAND, "shop|round price to = 10.00\nprofit = 51.925 % markup"},
     ONE,
     {DOOR(0, unit, "1520"), COST(rounding, "0.75")}},
    {"a multiple stays",
     {THOUSAND, "shop|round price to = 0.50"},
     ONE,
     {DOOR(0, unit, "1000"), COST(rounding, "0")}},
    {"an extra charge of the row, a leaf, after profit",
     {THOUSAND, "shop|profit = 20 % markup"},
     "id,count,leaves,width,height,extra charge\nS1,2,2,24,24,12.00 notched\n",
     {DOOR(0, priced, "300"), DOOR(0, extra, "12"), DOOR(0, unit, "312"), DOOR(0, amount, "1248"),
      COST(extra, "48"), COST(rounding, "0")}},
    {"thirds of 1,000: 333.33 each, a cent is left",
     {THOUSAND},
     "id,count,width,height\nS1,3,24,24\n",
     {DOOR(0, unit, "333.33"), DOOR(0, amount, "999.99"), COST(unshared[COST_SHEETS], "0.01"),
      COST(rounding, "-0.01")}},
    {"shares by area",
     {THOUSAND},
     "S1,12,12\nS2,12,36\n",
     {DOOR(0, cost.group[COST_SHEETS], "250"), DOOR(1, cost.group[COST_SHEETS], "750"),
      COST(unshared[COST_SHEETS], "0")}},
};

static const struct bench_case sale_cases[] = {
    {"10 % off: half a cent goes up",
     {THOUSAND, "shop|profit = 51.925 % markup", "sale|discount = 10 %"},
     ONE,
     {SALE(doors, "1519.25"), SALE(discount, "151.93"), SALE(after_discount, "1367.32"),
      SALE(total, "1367.32")}},
    {"a job that costs nothing and is sold for nothing has none, and no tax",
     {"make|style = slab", "sheet board|price = 0.00 per sheet",
      "sale|tax = 5 %\ntax on = materials at selling price"},
     ONE,
     {SALE(sold, "0"), SALE(margin_left, NULL), SALE(taxable, NULL), SALE(tax, NULL)}},
    {"a job of one cent has a margin, and is taxed",
     {"make|style = slab", "sheet board|price = 0.01 per sheet", "shop|charge sheets = bought",
      "sale|tax = 50 %\ntax on = materials at selling price"},
     ONE,
     {SALE(sold, "0.01"), SALE(margin_left, "0"), SALE(taxable, "0.01"), SALE(tax, "0.01")}},
    {"10 % off a price of 25 % markup halves the profit",
     {THOUSAND, "shop|profit = 25 % markup", "sale|discount = 10 %"},
     ONE,
     {SALE(sold, "1125"), SALE(profit_left, "125"), SALE(margin_left, "11.1111")}},
    {"the job minimum is a line",
     {THOUSAND, "shop|minimum job = 1500.00"},
     ONE,
     {SALE(minimum_line, "500"), SALE(sold, "1500"), SALE(total, "1500")}},
    {"the discount does not pass under it",
     {THOUSAND, "shop|minimum job = 1000.00", "sale|discount = 10 %"},
     ONE,
     {SALE(after_discount, "900"), SALE(minimum_line, "100"), SALE(sold, "1000")}},
    {"reached",
     {THOUSAND, "shop|minimum job = 900.00"},
     ONE,
     {SALE(minimum_line, "0"), SALE(sold, "1000")}},

    /* tax, once, on what it is on */
    {"on the selling price, delivery not taxed",
     {THOUSAND, "sale|tax = 6.25 %\ntax on = selling price\ntax delivery = no\n"
                "delivery = 120.00\ncharges = 60.00 for samples"},
     ONE,
     {SALE(subtotal, "1180"), SALE(taxable, "1060"), SALE(tax, "66.25"), SALE(total, "1246.25")}},
    {"delivery taxed",
     {THOUSAND, "sale|tax = 6.25 %\ntax on = selling price\ntax delivery = yes\n"
                "delivery = 120.00\ncharges = 60.00 for samples"},
     ONE,
     {SALE(taxable, "1180"), SALE(tax, "73.75"), SALE(total, "1253.75")}},
    {"after the discount",
     {THOUSAND, "sale|tax = 6.25 %\ntax on = selling price\ndiscount = 10 %"},
     ONE,
     {SALE(taxable, "900"), SALE(tax, "56.25"), SALE(total, "956.25")}},
    {"materials at selling price: 1,800 x 1,000 / 1,500",
     {THOUSAND, LABORED, "shop|profit = 20 % markup",
      "sale|tax = 5 %\ntax on = materials at selling price"},
     ONE,
     {SALE(sold, "1800"), SALE(taxable, "1200"), SALE(tax, "60"), SALE(total, "1860")}},
    {"materials at cost",
     {THOUSAND, LABORED, "shop|profit = 20 % markup", "sale|tax = 5 %\ntax on = materials at cost"},
     ONE,
     {SALE(taxable, "1000"), SALE(tax, "50"), SALE(total, "1850")}},
    {"a door bought in is goods, its finish by others is not: 90.00 of 123.60",
     {"make|style = open\nfinish = painted", "door open|bought in = 24.00 per sqft",
      "finish painted|put out = 4.20 per sqft", "shop|tax on purchases = 10 %",
      "sale|tax = 5 %\ntax on = materials at cost"},
     "D1,18,30\n", /* 3.75 sq ft; sprayed 8 */
     {COST(job.group[COST_BOUGHT_IN], "123.60"), COST(job.materials, "90"),
      COST(job.group[COST_PURCHASE_TAX], "9"), SALE(taxable, "90"), SALE(tax, "4.50")}},
    {"materials at cost, delivery taxed",
     {THOUSAND,
      "sale|tax = 5 %\ntax on = materials at cost\ntax delivery = yes\ndelivery = 100.00"},
     ONE,
     {SALE(taxable, "1100"), SALE(tax, "55"), SALE(total, "1155")}},
    {"on nothing",
     {THOUSAND, "sale|tax = 5 %\ntax on = none"},
     ONE,
     {SALE(taxable, NULL), SALE(tax, NULL), SALE(total, "1000")}},
    {"exempt",
     {THOUSAND, "sale|tax = 5 %\ntax on = selling price\nexempt = E-1042"},
     ONE,
     {SALE(taxable, NULL), SALE(tax, NULL), SALE(total, "1000")}},
    {"exempt by a number of one digit",
     {THOUSAND, "sale|tax = 5 %\ntax on = selling price\nexempt = 7"},
     ONE,
     {SALE(tax, NULL), SALE(total, "1000")}},
    {"an empty number exempts from nothing",
     {THOUSAND, "sale|tax = 5 %\ntax on = selling price\nexempt ="},
     ONE,
     {SALE(total, "1050")}},
    {"no tax",
     {THOUSAND, "sale|tax = 0 %\ntax on = selling price"},
     ONE,
     {SALE(tax, "0"), SALE(total, "1000")}},

    /* discounts by count: 4 % from 3 doors on, 7 % from 5 */
    {"below the first step there is none",
     {THOUSAND, "sale|discounts = 3: 4 %, 5: 7 %"},
     "id,count,width,height\nS1,2,24,24\n",
     {SALE(discount_rate, "0"), SALE(discount, "0")}},
    {"at a step, and between two",
     {THOUSAND, "sale|discounts = 3: 4 %, 5: 7 %"},
     "id,count,width,height\nS1,3,24,24\nS2,1,24,24\n",
     {SALE(doors, "1000"), SALE(discount_rate, "4"), SALE(discount, "40"), SALE(sold, "960")}},
    {"at the last",
     {THOUSAND, "sale|discounts = 3: 4 %, 5: 7 %"},
     "id,count,width,height\nS1,5,24,24\n",
     {SALE(discount, "70")}},

    /* charges and what they cost: a wage of 60 an hour, 30 min at 1.00 a minute; nothing of it in
     * the doors */
    {"a charge whose cost is known: 80 for 30 of labor",
     {THOUSAND, WAGE, "sale|charges = 80.00 for samples by show", SHOW},
     ONE,
     {SALE(doors, "1000"), SALE(subtotal, "1080"), COST(job.group[COST_LABOR], "0"),
      COST(job.full, "1000"), LABOR(person_minutes, "30"), LABOR(door_minutes, "0"),
      SALE(worked, "1080"), SALE(worked_cost, "1030"), SALE(profit_left, "50")}},
    {"a charge without an operation is income that nobody weighs",
     {THOUSAND, WAGE, "sale|charges = 80.00 for samples"},
     ONE,
     {SALE(subtotal, "1080"), SALE(worked, "1000"), SALE(profit_left, "0")}},
    {"a charge at what it costs, marked up: 30 x 1.25 = 37.50",
     {THOUSAND, WAGE, "shop|profit = 25 % markup", "sale|charges = for samples by show", SHOW},
     ONE,
     {SALE(doors, "1250"), SALE(subtotal, "1287.5"), SALE(profit_left, "257.5")}},
    {"delivery as a percent of what is sold: 3 % of 950",
     {THOUSAND, "sale|delivery = 3 %\ndiscount = 5 %"},
     ONE,
     {SALE(sold, "950"), SALE(delivery, "28.5"), SALE(subtotal, "978.5")}},
    {"delivery done by an operation: taxed as delivery is, remade as nothing is",
     {THOUSAND, WAGE, "shop|remakes = 10 % of doors", "sale|delivery = by show", SHOW},
     ONE,
     {SALE(delivery, "30"), COST(job.full, "1100"), SALE(worked_cost, "1130")}},
    {"overhead by the hour falls on the charge, not on the doors",
     {THOUSAND, WAGE, "shop|overhead = 20 per hour", "sale|delivery = by show", SHOW},
     ONE,
     {COST(job.overhead, "0"), SALE(delivery, "40"), SALE(profit_left, "0")}},

    /* payment */
    {"a card fee on all that is paid",
     {THOUSAND, "sale|tax = 5 %\ntax on = selling price\ncard fee = 3 % added\ndeposit = 50 %"},
     ONE,
     {SALE(tax, "50"), SALE(card_fee, "31.50"), SALE(total, "1081.50"), SALE(deposit, "540.75"),
      SALE(balance, "540.75")}},
    /* The card takes 2.9 % of the 7,717.06 that it is charged with: what is left is the price.
     * 7,717.06 - 223.79 = 7,493.27, with half a cent of rounding on either side. */
    {"a card fee of all that the card takes",
     {THOUSAND, "shop|profit = 649.327 % markup", "sale|card fee = 2.9 % of what is paid"},
     ONE,
     {SALE(before_fee, "7493.27"), SALE(card_fee, "223.79"), SALE(total, "7717.06")}},
    {"deposit and stages: the last takes what remains",
     {THOUSAND, "shop|profit = 51.925 % markup",
      "sale|deposit = 40 %\nstages = 30 % when glued, 15 % when sprayed"},
     ONE,
     {SALE(total, "1519.25"), SALE(deposit, "607.70"), SALE(balance, "227.88")}},
    /* Source: ISO 4217, minor units: the yen has none, the Kuwaiti dinar three decimals. 1519.25 as
     * yen is 1519; a tax of 7.3 % on it 110.887, so 111; half of 1630 is 815. */
    {"a currency without hundredths",
     {THOUSAND, "shop|currency = JPY\nprofit = 51.925 % markup",
      "sale|tax = 7.3 %\ntax on = selling price\ndeposit = 50 %"},
     ONE,
     {SALE(doors, "1519"), SALE(tax, "111"), SALE(total, "1630"), SALE(deposit, "815"),
      SALE(balance, "815")}},
    {"a currency of thousandths",
     {THOUSAND, "shop|currency = KWD\nprofit = 51.9255 % markup",
      "sale|tax = 7.3 %\ntax on = selling price\ndelivery = 1.125"},
     ONE,
     {SALE(doors, "1519.255"), SALE(taxable, "1519.255"), SALE(tax, "110.906"),
      SALE(total, "1631.286")}},
    {"no deposit", {THOUSAND}, ONE, {SALE(deposit, NULL), SALE(balance, "1000")}},
};

static const struct bench_case mm_cases[] = {
    {"20 % on all, delivery too",
     {"make|style = slab", "sheet board|price = 1000.00 per sheet", "shop|charge sheets = bought",
      "shop|profit = 18 % margin\nminimum door = 0.12 m2\nround price to = 0.10",
      "sale|tax = 20 %\ntax on = selling price\ntax delivery = yes\ndelivery = 85.00",
      "sale|deposit = 30 %"},
     "id,count,width,height\nS1,3,300,300\n",
     {COST(job.price, "1219.51"), DOOR(0, priced, "542.00"), DOOR(0, unit, "542"),
      SALE(doors, "1626"), SALE(subtotal, "1711"), SALE(tax, "342.20"), SALE(total, "2053.20"),
      SALE(deposit, "615.96"), SALE(balance, "1437.24")}},
};

static void test_build_up(void **state) {
    (void)state;
    bench_run(build_cases, COUNT(build_cases), BENCH_INCH);
}

static void test_doors(void **state) {
    (void)state;
    bench_run(door_cases, COUNT(door_cases), BENCH_INCH);
}

static void test_sale(void **state) {
    (void)state;
    bench_run(sale_cases, COUNT(sale_cases), BENCH_INCH);
}

static void test_mm(void **state) {
    (void)state;
    bench_run(mm_cases, COUNT(mm_cases), BENCH_MM);
}

/* --- what holds of every job
 * -------------------------------------------------------------------------------------------------------
 */

static int64_t cents(const struct bench *b, fig f) {
    return tape_scaled(&b->estimate.tape, f, 2);
}

static void expect_equal(struct bench *b, const char *what, int64_t got, int64_t wanted) {
    if (got != wanted) {
        bench_wrong(b, "%s is %lld, expected %lld hundredths", what, (long long)got,
                    (long long)wanted);
    }
}

/* Shares and what they leave are the cost; of labor the machines are part. */
static void check_groups(struct bench *b) {
    const struct costs *const c = &b->estimate.costs;
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        int64_t shared = cents(b, c->unshared[g]);
        for (size_t r = 0; r < b->estimate.quantities.count; r++) {
            shared += tape_scaled(&b->estimate.tape, b->estimate.quantities.leaves[r].pieces, 0) *
                      cents(b, c->doors[r].cost.group[g]);
        }
        int64_t cost = cents(b, c->job.group[g]);
        if (g == COST_LABOR) {
            cost += cents(b, c->job.group[COST_MACHINE]);
        } else if (g == COST_MACHINE) {
            cost = 0; /* shared with labor */
        }
        expect_equal(b, cost_group_name((enum cost_group)g), shared, cost);
    }
}

/* A client's calculator: count x price, and every total the sum of what stands above it. */
static void check_sums(struct bench *b) {
    const struct estimate *const e = &b->estimate;
    const struct sale_figures *const s = &e->sale;
    int64_t doors = 0;
    for (size_t r = 0; r < e->quantities.count; r++) {
        const struct door_price *const p = &e->costs.doors[r];
        const int64_t pieces = tape_scaled(&e->tape, e->quantities.leaves[r].pieces, 0);
        expect_equal(b, "an amount", cents(b, p->amount), pieces * cents(b, p->unit));
        doors += cents(b, p->amount);
    }
    expect_equal(b, "doors", cents(b, s->doors), doors);
    const int64_t sold = doors - cents(b, s->discount) + cents(b, s->minimum_line);
    expect_equal(b, "sold", cents(b, s->sold), sold);
    int64_t subtotal = sold + cents(b, s->delivery);
    for (size_t i = 0; i < s->charge_count; i++) {
        subtotal += cents(b, s->charges[i]);
    }
    expect_equal(b, "subtotal", cents(b, s->subtotal), subtotal);
    expect_equal(b, "total", cents(b, s->total),
                 subtotal + cents(b, s->tax) + cents(b, s->card_fee));
    int64_t paid = cents(b, s->deposit) + cents(b, s->balance);
    for (size_t i = 0; i < s->stage_count; i++) {
        paid += cents(b, s->stages[i]);
    }
    expect_equal(b, "payments", paid, cents(b, s->total));
    const struct build_up *const job = &e->costs.job;
    int64_t direct = 0;
    for (int g = 0; g < COST_GROUP_COUNT; g++) {
        direct += cents(b, job->group[g]);
    }
    expect_equal(b, "direct cost", cents(b, job->direct), direct);
    expect_equal(b, "price", cents(b, job->price),
                 direct + cents(b, job->contingency) + cents(b, job->overhead) +
                     cents(b, job->profit));
    expect_equal(b, "doors as priced", doors,
                 cents(b, job->price) + cents(b, e->costs.minimum) + cents(b, e->costs.extra) +
                     cents(b, e->costs.rounding));
}

static void test_adds_up(void **state) {
    (void)state;
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini"};
    int wrong = 0;
    for (size_t i = 0; i < COUNT(jobs); i++) {
        struct bench bench;
        bench_open_job(&bench, jobs[i]);
        bench_sound(&bench);
        if (bench.result == ESTIMATE_OK) {
            check_groups(&bench);
            check_sums(&bench);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Everything that shares and rounds, on one bench. */
static const char *const full[BENCH_MOST_EDITS] = {
    "make|finish = painted\nhinge = hinge\npull = pull\nstyle = profiled",
    "shop|allowance = 12 % added\ncontingency = 3 %\noverhead = 14.00 per hour",
    "shop|profit = 25 % markup\nremakes = 2 % of doors\nminimum door = 1.5 sqft",
    "shop|round price to = 0.50\noperations = quote",
    "lumber poplar|waste = 45 % added\nprice = 4.10 per bf\nprice from = 100 bf at 3.75 per bf",
    "sheet ply|waste = 20 % added\nhalf sheet = 33.00",
    "door profiled|operations = work, cut",
    "operation work|machine = sander\nper = joint\nminutes = 0.75\nsetup = 8 min per length",
    "operation cut|per = sheet\nminutes = 6",
    "operation quote|per = job\nminutes = 150",
    "spray gun|other loss = 5 %\nfixed loss = 6 fl oz per mix",
    "consumable abrasive|price = 0.06 per sqft\n",
};

static void test_adds_up_random(void **state) {
    (void)state;
    uint32_t seed = 20260302;
    int wrong = 0;
    for (int job = 0; job < 40; job++) {
        char doors[2048];
        char name[32];
        struct bench bench;
        size_t size = (size_t)snprintf(doors, sizeof doors, "id,count,leaves,width,height\n");
        for (int row = 0; row < 1 + job % 9; row++) {
            seed = seed * 1664525U + 1013904223U;
            size +=
                (size_t)snprintf(doors + size, sizeof doors - size, "D%d,%u,%u,%u %u/16,%u %u/64\n",
                                 row, 1 + (seed >> 28), 1 + (seed >> 27) % 2, 8 + (seed >> 12) % 20,
                                 1 + (seed >> 20) % 15, 8 + (seed >> 8) % 50, 1 + (seed >> 3) % 63);
        }
        (void)snprintf(name, sizeof name, "random job %d", job);
        bench_open(&bench, name, BENCH_INCH, full, doors);
        bench_sound(&bench);
        if (bench.result == ESTIMATE_OK) {
            check_groups(&bench);
            check_sums(&bench);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Four doors in one row or in two, three or four: each has the same price, and the job the same. */
static void test_split_rows(void **state) {
    (void)state;
    static const char head[] = "id,count,width,height\nX,3,20,24\n";
    static const struct {
        const char *name, *rows;
        size_t count;
    } cases[] = {
        {"1 + 3", "A,1,15 5/8,30\nB,3,15 5/8,30\n", 2},
        {"2 + 2", "A,2,15 5/8,30\nB,2,15 5/8,30\n", 2},
        {"1 + 2 + 1", "A,1,15 5/8,30\nB,2,15 5/8,30\nC,1,15 5/8,30\n", 3},
        {"1 + 1 + 1 + 1", "A,1,15 5/8,30\nB,1,15 5/8,30\nC,1,15 5/8,30\nD,1,15 5/8,30\n", 4},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench whole;
        struct bench split;
        char doors[256];
        (void)snprintf(doors, sizeof doors, "%sA,4,15 5/8,30\n", head);
        bench_open(&whole, "in one row", BENCH_INCH, full, doors);
        (void)snprintf(doors, sizeof doors, "%s%s", head, cases[i].rows);
        bench_open(&split, cases[i].name, BENCH_INCH, full, doors);
        bench_sound(&whole);
        bench_sound(&split);
        if (whole.result == ESTIMATE_OK && split.result == ESTIMATE_OK) {
            const struct costs *const a = &whole.estimate.costs;
            const struct costs *const b = &split.estimate.costs;
            for (size_t r = 1; r <= cases[i].count; r++) {
                expect_equal(&split, "a unit price", cents(&split, b->doors[r].unit),
                             cents(&whole, a->doors[1].unit));
                expect_equal(&split, "a price by cost", cents(&split, b->doors[r].cost.price),
                             cents(&whole, a->doors[1].cost.price));
            }
            expect_equal(&split, "the other door", cents(&split, b->doors[0].unit),
                         cents(&whole, a->doors[0].unit));
            expect_equal(&split, "the job", cents(&split, split.estimate.sale.total),
                         cents(&whole, whole.estimate.sale.total));
        }
        wrong += bench_close(&whole) + bench_close(&split);
    }
    assert_int_equal(wrong, 0);
}

/* The papers list doors by these rooms: one room however its letters are cased, named as it is
 * named first, its rows in the order of the list. */
static void test_rooms(void **state) {
    (void)state;
    static const struct {
        const char *name;
        size_t first, count;
        size_t rows[3];
        const char *leaves;
    } rooms[] = {
        {"Pantry", 0, 3, {0, 2, 5}, "6"}, {"", 3, 1, {1}, "2"},
        {"galley", 4, 2, {3, 4}, "3"},    {"s", 6, 2, {6, 9}, "2"},
        {"r", 8, 3, {7, 8, 10}, "3"},
    };
    struct bench bench;
    bench_open(&bench, "rooms", BENCH_INCH, (const char *const[6]){NULL},
               "id,room,count,width,height\nA,Pantry,1,20,24\nB,,2,20,24\nC,pantry,4,20,24\n"
               "D,galley,1,20,24\nE,GALLEY,2,20,24\nF,PANTRY,1,20,24\nG,s,1,20,24\n"
               "H,r,1,20,24\nI,r,1,20,24\nJ,S,1,20,24\nK,R,1,20,24\n");
    bench_sound(&bench);
    const struct sale_figures *const sale = &bench.estimate.sale;
    assert_int_equal(bench.result, ESTIMATE_OK);
    assert_int_equal(sale->room_count, COUNT(rooms));
    for (size_t i = 0; i < COUNT(rooms); i++) {
        assert_string_equal(sale->rooms[i].room, rooms[i].name);
        assert_int_equal(sale->rooms[i].first, rooms[i].first);
        assert_int_equal(sale->rooms[i].count, rooms[i].count);
        assert_memory_equal(&sale->by_room[rooms[i].first], rooms[i].rows,
                            rooms[i].count * sizeof(size_t));
        bench_figure(&bench, rooms[i].name, sale->rooms[i].leaves, rooms[i].leaves);
    }
    assert_int_equal(bench_close(&bench), 0);
}

/* What follows the charges is of the job again, not of the last charge's operation. */
static void test_subjects(void **state) {
    (void)state;
    static const char *const edits[BENCH_MOST_EDITS] = {"sale|charges = 80.00 for samples by show",
                                                        SHOW};
    struct bench bench;
    bench_open(&bench, "subjects", BENCH_INCH, edits, "D1,18,30\n");
    bench_sound(&bench);
    const struct estimate *const e = &bench.estimate;
    assert_string_equal(tape_subject_name(&e->tape, e->costs.charges[0].direct), "show");
    assert_true(fig_none(e->costs.charges[0].materials)); /* work alone: no tax on it */
    assert_string_equal(tape_subject_name(&e->tape, e->costs.doors_total), "");
    assert_string_equal(tape_subject_name(&e->tape, e->sale.doors), "");
    assert_int_equal(bench_close(&bench), 0);
}

/* --- charges as they are written --- */

static void test_charges_written(void **state) {
    (void)state;
    static const struct {
        const char *sale, *id; /* NULL: it is read */
    } cases[] = {
        {"charges = 80.00 for samples, 5 % for a rush for two", NULL},
        {"charges = for samples by show", NULL},
        {"delivery = by show", NULL},
        {"delivery = 3 % by show", NULL},
        {"charges = 80.00 samples", "bad-item"},
        {"charges = 80.00 for ", "bad-item"},
        {"charges = for samples", "bad-item"},
        {"charges = 1,000.00 for samples", "comma-in-number"},
        {"charges = 80.00 for samples by nobody", "unknown-name"},
        {"charges = 80.00 kg for samples", "wrong-unit"},
        {"delivery = 101 %", "out-of-range"},
        {"delivery = by show\ncharges = 5.00 for samples by show", "paid-twice"},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        char sale[120];
        struct bench bench;
        (void)snprintf(sale, sizeof sale, "sale|%s", cases[i].sale);
        const char *const edits[BENCH_MOST_EDITS] = {sale, SHOW};
        bench_open(&bench, cases[i].sale, BENCH_INCH, edits, ONE);
        if (cases[i].id == NULL) {
            bench_sound(&bench);
        } else if (!bench_has(&bench, cases[i].id)) {
            bench_wrong(&bench, "not refused as %s", cases[i].id);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_charges_written),
        cmocka_unit_test(test_build_up),
        cmocka_unit_test(test_doors),
        cmocka_unit_test(test_sale),
        cmocka_unit_test(test_mm),
        cmocka_unit_test(test_adds_up),
        cmocka_unit_test(test_adds_up_random),
        cmocka_unit_test(test_split_rows),
        cmocka_unit_test(test_rooms),
        cmocka_unit_test(test_subjects),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
