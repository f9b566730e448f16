/* SPDX-License-Identifier: MIT */
/* Questions about the rates: slips of the pen in prices, minutes and percentages. */
#include "questions.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define USUAL               "beyond-usual"
#define WORK(counted, keys) "operation work|per = " counted "\n" keys
#define ONE                 "D1,18,30\n"
#define GUN(coverage_of_coating, kept)                                                             \
    "coating sealer|coverage = " coverage_of_coating " theoretical\nsizes = 1 gal at 40.00",       \
        "spray gun|transfer efficiency = " kept, "finish clear|spray = gun\ncoats = sealer x 2"
#define DRILL           "machine drill|rate = 4.00 per hour", "operation bore|per = door\nminutes = 1"
#define YEN             "shop|currency = JPY"
#define HINGE_AT(price) "hardware cup|price = " price
static const struct question_case usual_cases[] = {
    {"a wage without its point", {"shop|labor rate = 3800 per hour"}, ONE, USUAL, true},
    {"a wage in hundreds", {"shop|labor rate = 0.38 per hour"}, ONE, USUAL, true},
    {"the least wage", {"shop|labor rate = 8 per hour"}, ONE, USUAL, false},
    {"the most", {"shop|labor rate = 250.00 per hour"}, ONE, USUAL, false},
    {"more than the most", {"shop|labor rate = 250.01 per hour"}, ONE, USUAL, true},
    {"work that is not paid", {"shop|labor rate = 0 per hour"}, ONE, USUAL, true},
    {"work that is not paid, as meant",
     {"shop|labor rate = 0 per hour", "plausible|labor rate = 0 to 250 per hour"},
     ONE,
     USUAL,
     false},
    {"an operation that is not paid",
     {DRILL, "operation bore|labor rate = 0 per hour"},
     ONE,
     USUAL,
     true},
    {"a wage of its own", {DRILL, "operation bore|labor rate = 4400 per hour"}, ONE, USUAL, true},
    {"a machine", {DRILL}, ONE, USUAL, false},
    {"a dear machine", {DRILL, "machine drill|rate = 400 per hour"}, ONE, USUAL, true},
    {"overhead by the hour", {"shop|overhead = 1400 per hour"}, ONE, USUAL, true},
    {"overhead by the bench hour", {"shop|overhead = 1400 per bench hour"}, ONE, USUAL, true},
    {"overhead as a part", {"shop|overhead = 0.18 % of cost"}, ONE, USUAL, true},
    {"usual overhead", {"shop|overhead = 14 per bench hour"}, ONE, USUAL, false},
    {"an hour a day", {"shop|hours per day = 1"}, ONE, USUAL, true},
    {"an allowance as a part", {"shop|allowance = 0.12 % added"}, ONE, USUAL, true},
    {"an allowance of most of the shift", {"shop|allowance = 80 % of shift"}, ONE, USUAL, true},
    {"an allowance of 80 % added", {"shop|allowance = 80 % added"}, ONE, USUAL, false},
    {"a contingency as a part", {"shop|contingency = 0.03 %"}, ONE, USUAL, true},
    {"remakes as a part", {"shop|remakes = 0.02 % of doors"}, ONE, USUAL, true},
    {"a profit as a part", {"shop|profit = 0.25 % markup"}, ONE, USUAL, true},
    {"a margin of 90 %", {"shop|profit = 90 % margin"}, ONE, USUAL, true},
    {"a markup of 90 %", {"shop|profit = 90 % markup"}, ONE, USUAL, false},
    {"the markup of a group", {"markup|lumber = 0.15 %"}, ONE, USUAL, true},
    {"lumber without its point", {"lumber poplar|price = 410 per bf"}, ONE, USUAL, true},
    {"lumber by the cubic meter", {"lumber poplar|price = 1800 per m3"}, ONE, USUAL, false},
    {"lumber by the cubic meter, cheap", {"lumber poplar|price = 4.10 per m3"}, ONE, USUAL, true},
    {"a break without its point",
     {"lumber poplar|price from = 100 bf at 375 per bf"},
     ONE,
     USUAL,
     true},
    {"waste without its point", {"lumber poplar|waste = 450 % added"}, ONE, USUAL, true},
    {"waste as a part", {"lumber poplar|waste = 0.45 % added"}, ONE, USUAL, true},
    {"80 % of waste lost", {"lumber poplar|waste = 80 % lost of what is bought"}, ONE, USUAL, true},
    {"80 % of waste added", {"lumber poplar|waste = 80 % added"}, ONE, USUAL, false},
    {"a sheet without its point", {"sheet ply|price = 5800 per sheet"}, ONE, USUAL, true},
    {"a sheet's waste", {"sheet ply|waste = 200 % added"}, ONE, USUAL, true},
    {"glass without its point", {"glass clear|price = 950 per sqft"}, ONE, USUAL, true},
    {"a hinge without its point", {HINGE_AT("420 each")}, ONE, USUAL, true},
    {"a pack of hinges", {HINGE_AT("420 per pack\npack = 100")}, ONE, USUAL, false},
    {"coverage", {GUN("400 sqft per gal", "65 %")}, ONE, USUAL, false},
    {"coverage of a whole house", {GUN("4000 sqft per gal", "65 %")}, ONE, USUAL, true},
    {"transfer without its last digit", {GUN("400 sqft per gal", "6 %")}, ONE, USUAL, true},
    {"banding by the length", {"banding tape|price = 22 per ft"}, ONE, USUAL, true},
    {"a roll of banding", {"banding tape|price = 32 per roll\nroll = 250 ft"}, ONE, USUAL, false},
    {"half of the banding wasted as a part",
     {"banding tape|price = 0.2 per ft\nwaste = 0.1 %"},
     ONE,
     USUAL,
     true},
    {"stops without their point", {"glass clear|stops = 45 per ft"}, ONE, USUAL, true},
    {"a door bought in", {"door bought|kind = slab\nbought in = 3400 per sqft"}, ONE, USUAL, true},
    {"a door bought in by the piece",
     {"door bought|kind = slab\nbought in = 3400 per door"},
     ONE,
     USUAL,
     false},
    {"a finish put out", {"finish sent|put out = 420 per sqft"}, ONE, USUAL, true},
    {"minutes of a joint", {WORK("joint", "minutes = 90")}, ONE, USUAL, false},
    {"minutes of a joint, no point", {WORK("joint", "minutes = 91")}, ONE, USUAL, true},
    {"minutes of a foot", {WORK("ft of frame", "minutes = 31")}, ONE, USUAL, true},
    {"minutes of a board foot", {WORK("bf", "minutes = 31")}, ONE, USUAL, false},
    {"minutes of a job", {WORK("job", "minutes = 150")}, ONE, USUAL, false},
    {"minutes of a job that are hours", {WORK("job", "minutes = 0.5")}, ONE, USUAL, true},
    {"handling", {WORK("door", "handling = 30 min per door")}, ONE, USUAL, true},
    {"a set-up of a week",
     {WORK("door", "minutes = 1\nsetup = 2400 min per job")},
     ONE,
     USUAL,
     true},
    {"a feed of inches", {WORK("ft of frame", "feed = 0.16 ft per min")}, ONE, USUAL, true},
    {"a feed", {WORK("ft of frame", "feed = 16 ft per min")}, ONE, USUAL, false},
    {"defects as a part", {"lumber poplar|defects = 0.1 %"}, ONE, USUAL, true},
    {"solids as a part", {"coating paint|solids = 3.8 %"}, ONE, USUAL, true},
    {"a reducer as a part", {"coating paint|reducer = 0.05 % of coating"}, ONE, USUAL, true},
    {"a catalyst as a part", {"coating paint|catalyst = 0.03 % of mix"}, ONE, USUAL, true},
    {"a reserve as a part", {"coating paint|reserve = 0.05 %"}, ONE, USUAL, true},
    {"half of it lost", {"spray gun|other loss = 50 %"}, ONE, USUAL, true},
    {"spares as a part", {"hardware knob|price = 2 each\nspares = 0.03 %"}, ONE, USUAL, true},
    {"a stage as a part", {"sale|stages = 0.4 % when sprayed"}, ONE, USUAL, true},
    {"tax as a part", {"sale|tax on = selling price\ntax = 0.0625 %"}, ONE, USUAL, true},
    {"tax", {"sale|tax on = selling price\ntax = 6.25 %"}, ONE, USUAL, false},
    {"tax on purchases as a part", {"shop|tax on purchases = 0.06 %"}, ONE, USUAL, true},
    {"no tax on purchases", {"shop|tax on purchases = 0 %"}, ONE, USUAL, false},
    {"a discount as a part", {"sale|discount = 0.05 %"}, ONE, USUAL, true},
    {"a card fee without its point", {"sale|card fee = 29 % added"}, ONE, USUAL, true},
    {"a deposit as a part", {"sale|deposit = 0.5 %"}, ONE, USUAL, true},
    {"the year 1926", {"job|date = 1926-03-02"}, ONE, USUAL, true},
    {"the year 2000", {"job|date = 2000-01-01"}, ONE, USUAL, false},
    {"a range of the shop's own",
     {"shop|labor rate = 3800 per hour", "plausible|labor rate = 8 to 3800 per h"},
     ONE,
     USUAL,
     false},
    {"a range of another key",
     {"shop|labor rate = 3800 per hour", "plausible|machine rate = 8 to 3800 per h"},
     ONE,
     USUAL,
     true},
    {"a range that is narrower", {"plausible|labor rate = 8 to 50.50 per hour"}, ONE, USUAL, true},
    {"a range in another unit",
     {"shop|overhead = 1400 per hour", "plausible|overhead = 1 to 2000 % of cost"},
     ONE,
     USUAL,
     true},
    {"a range of what is lost leaves what is added",
     {"lumber poplar|waste = 450 % added", "plausible|lumber waste = 1 to 500 % lost"},
     ONE,
     USUAL,
     true},
    {"a year of the shop's own",
     {"job|date = 1926-03-02", "plausible|year = 1926 to 2099"},
     ONE,
     USUAL,
     false},
    {"a wage in yen", {YEN, "shop|labor rate = 3800 per hour"}, ONE, USUAL, false},
    {"waste where money is in yen", {YEN, "lumber poplar|waste = 450 % added"}, ONE, USUAL, true},
    {"a wage in yen, its range given",
     {YEN, "shop|labor rate = 38 per hour", "plausible|labor rate = 1000 to 9000 per hour"},
     ONE,
     USUAL,
     true},
};

static void test_usual(void **state) {
    (void)state;
    questions_run(usual_cases, COUNT(usual_cases));
}

#define DEARER      "larger-dearer"
#define CANS(sizes) "coating sealer|spread by = wet film\nwet film = 4 mil\nsizes = " sizes
static const struct question_case dearer_cases[] = {
    {"cans that get cheaper",
     {CANS("1 qt at 27.00, 1 gal at 84.00, 5 gal at 370.00")},
     ONE,
     DEARER,
     false},
    {"a can at four times the price of a quarter",
     {CANS("1 qt at 21.00, 1 gal at 84.00")},
     ONE,
     DEARER,
     false},
    {"a can at more than that", {CANS("1 qt at 20.99, 1 gal at 84.00")}, ONE, DEARER, true},
    {"swapped cans", {CANS("1 qt at 84.00, 1 gal at 27.00")}, ONE, DEARER, true},
    {"the third can", {CANS("1 qt at 27.00, 1 gal at 84.00, 5 gal at 3700.00")}, ONE, DEARER, true},
    {"an additive", {"additive thinner|sizes = 1 qt at 18.00, 1 gal at 5.20"}, ONE, DEARER, true},
    {"a break", {"lumber poplar|price from = 100 bf at 3.75 per bf"}, ONE, DEARER, false},
    {"a break at the price",
     {"lumber poplar|price from = 100 bf at 4.00 per bf"},
     ONE,
     DEARER,
     false},
    {"a break that is dearer",
     {"lumber poplar|price from = 100 bf at 4.75 per bf"},
     ONE,
     DEARER,
     true},
    {"a second break that is dearer",
     {"lumber poplar|price from = 100 bf at 3.75 per bf, 200 bf at 3.80 per bf"},
     ONE,
     DEARER,
     true},
    {"half a sheet", {"sheet ply|half sheet = 28.00"}, ONE, DEARER, false},
    {"half a sheet dearer than a whole one", {"sheet ply|half sheet = 56.00"}, ONE, DEARER, true},
    {"two halves cheaper than a whole one", {"sheet ply|half sheet = 24.00"}, ONE, DEARER, true},
};

static void test_dearer(void **state) {
    (void)state;
    questions_run(dearer_cases, COUNT(dearer_cases));
}

/* Lines of [plausible] that cannot be read are errors. */
static void test_ranges(void **state) {
    (void)state;
    static const struct {
        const char *edit, *id;
    } cases[] = {
        {"plausible|labor rate = 8 per hour", "bad-item"},
        {"plausible|labor rate = 8 to 250", "missing-unit"},
        {"plausible|labor rate = 8 to 250 per bf", "wrong-unit"},
        {"plausible|labor rate = about 8 to 250 per hour", "not-a-number"},
        {"plausible|labor rate = 250 to 8 per hour", "not-ascending"},
        {"plausible|wage = 8 to 250 per hour", "unknown-key"},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        const char *const edits[BENCH_MOST_EDITS] = {cases[i].edit};
        bench_open(&bench, cases[i].edit, BENCH_INCH, edits, ONE);
        if (!bench_has(&bench, cases[i].id)) {
            bench_wrong(&bench, "no %s", cases[i].id);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_usual),
        cmocka_unit_test(test_dearer),
        cmocka_unit_test(test_ranges),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
