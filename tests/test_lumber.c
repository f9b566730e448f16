/* SPDX-License-Identifier: MIT */
/* From net lumber to what is ordered. A slab of lumber of 12 x 12 is one board foot, so that the
 * count of a row is its footage. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define SLABS   "make|style = slab\nslab = poplar"
#define FEET(n) "id,count,width,height\nS1," #n ",12,12\n"
#define BREAK   "lumber poplar|price = 4.10 per bf\nprice from = 100 bf at 3.75 per bf"
#define BREAKS                                                                                     \
    "lumber poplar|price = 7.40 per bf\n"                                                          \
    "price from = 100 bf at 6.90 per bf, 250 bf at 6.55 per bf"

static const struct bench_case inch_cases[] = {
    {"97 bf without a break",
     {SLABS, "lumber poplar|price = 4.10 per bf"},
     FEET(97),
     {LUMBER(0, net, "97"), LUMBER(0, priced.needed, "97"), LUMBER(0, priced.bought, "97"),
      LUMBER(0, priced.price, "4.10"), LUMBER(0, priced.cost, "397.70"),
      LUMBER(0, priced.cost_as_needed, NULL)}},
    {"97 bf at 4.10 = 397.70, 100 at 3.75 = 375.00: buy 100",
     {SLABS, BREAK},
     FEET(97),
     {LUMBER(0, priced.needed, "97"), LUMBER(0, priced.bought, "100"),
      LUMBER(0, priced.price, "3.75"), LUMBER(0, priced.cost, "375"),
      LUMBER(0, priced.cost_as_needed, "397.70")}},
    {"92 bf at 4.10 = 377.20: buy 100",
     {SLABS, BREAK},
     FEET(92),
     {LUMBER(0, priced.bought, "100"), LUMBER(0, priced.cost, "375")}},
    {"91 bf at 4.10 = 373.10: as needed",
     {SLABS, BREAK},
     FEET(91),
     {LUMBER(0, priced.bought, "91"), LUMBER(0, priced.price, "4.10"),
      LUMBER(0, priced.cost, "373.10"), LUMBER(0, priced.cost_as_needed, "373.10")}},
    /* One of two rails is spoiled with 19 %, two of three with 2.8 %, three of four with 0.37 %,
     * four of five with 0.05 %: of a set-up of 60.00 a first spare saves 9.72, a second 1.46, a
     * third 0.19, and 14 1/4 x 2 1/4 are 0.2227 bf, rough 15 1/4 x 2 3/8 are 0.2515, about a
     * dollar; of each part four decimals are kept. */
    {"two spare rails of a width, which are milled and cut of the same boards",
     {"shop|remakes = 10 % of doors\nspare rails = yes", "door plain|operations = saw",
      "operation saw|per = rail\nminutes = 1\nsetup = 60 min per width"},
     "D1,18,30\n",
     {LUMBER(0, net, "1.3830"), LUMBER(0, spares, "0.4454"), LUMBER(0, milled, "1.8284"),
      LUMBER(0, rough, "2.0286")}},
    /* 14 1/4 x 3 are 0.2969 bf, of which a second spare saves as much and costs 1.22 */
    {"and two of another width",
     {"shop|remakes = 10 % of doors\nspare rails = yes", "door plain|operations = saw",
      "door profiled|top rail = 3 in\nbottom rail = 3 in\noperations = saw",
      "operation saw|per = rail\nminutes = 1\nsetup = 60 min per width"},
     "id,width,height,style\nD1,18,30,plain\nD2,18,30,profiled\n",
     {LUMBER(0, spares, "1.0392")}},
    /* One of one is spoiled with 10 %, of two 1 %: a first spare saves 5.40, a second 0.54. */
    {"one each of a top and a bottom rail of two widths",
     {"shop|remakes = 10 % of doors\nspare rails = yes", "door plain|bottom rail = 3 in",
      "door plain|operations = saw",
      "operation saw|per = rail\nminutes = 1\nsetup = 60 min per width"},
     "D1,18,30\n",
     {LUMBER(0, spares, "0.5196")}},
    {"the break prices the whole lot",
     {SLABS, BREAK},
     FEET(120),
     {LUMBER(0, priced.bought, "120"), LUMBER(0, priced.price, "3.75"),
      LUMBER(0, priced.cost, "450")}},
    {"just at the break",
     {SLABS, BREAK},
     FEET(100),
     {LUMBER(0, priced.bought, "100"), LUMBER(0, priced.price, "3.75"),
      LUMBER(0, priced.cost, "375")}},
    {"of equal lots the larger: 90 at 4.00 or 100 at 3.60",
     {SLABS, "lumber poplar|price from = 100 bf at 3.60 per bf"},
     FEET(90),
     {LUMBER(0, priced.bought, "100"), LUMBER(0, priced.cost, "360"),
      LUMBER(0, priced.cost_as_needed, "360")}},
    {"93 at 7.40 = 688.20",
     {SLABS, BREAKS},
     FEET(93),
     {LUMBER(0, priced.bought, "93"), LUMBER(0, priced.cost, "688.20")}},
    {"94 at 7.40 = 695.60, 100 at 6.90 = 690.00",
     {SLABS, BREAKS},
     FEET(94),
     {LUMBER(0, priced.bought, "100"), LUMBER(0, priced.price, "6.90"),
      LUMBER(0, priced.cost, "690")}},
    {"237 at 6.90 = 1635.30 under 250 at 6.55 = 1637.50",
     {SLABS, BREAKS},
     FEET(237),
     {LUMBER(0, priced.bought, "237"), LUMBER(0, priced.price, "6.90"),
      LUMBER(0, priced.cost, "1635.30")}},
    {"238 at 6.90 = 1642.20: buy 250",
     {SLABS, BREAKS},
     FEET(238),
     {LUMBER(0, priced.bought, "250"), LUMBER(0, priced.price, "6.55"),
      LUMBER(0, priced.cost, "1637.50")}},
    {"300 at 6.55",
     {SLABS, BREAKS},
     FEET(300),
     {LUMBER(0, priced.bought, "300"), LUMBER(0, priced.cost, "1965")}},
    {"the far break is the cheapest though the near one is not",
     {SLABS, "lumber poplar|price from = 100 bf at 3.00 per bf, 200 bf at 1.00 per bf"},
     FEET(51),
     {LUMBER(0, priced.bought, "200"), LUMBER(0, priced.price, "1"), LUMBER(0, priced.cost, "200"),
      LUMBER(0, priced.cost_as_needed, "204")}},
    {"and not when it is not",
     {SLABS, "lumber poplar|price from = 100 bf at 3.00 per bf, 200 bf at 1.00 per bf"},
     FEET(49),
     {LUMBER(0, priced.bought, "49"), LUMBER(0, priced.cost, "196")}},

    /* waste in its two readings */
    {"30 % added to net: 50 x 1.30",
     {SLABS, "lumber poplar|waste = 30 % added"},
     FEET(50),
     {LUMBER(0, with_waste, "65"), LUMBER(0, priced.bought, "65"), LUMBER(0, priced.cost, "260"),
      LUMBER(0, priced.factor, "1.3"), LUMBER(0, priced.waste_added, "30"),
      LUMBER(0, priced.yield, "76.9231")}},
    {"30 % lost of what is bought: 50 / 0.70",
     {SLABS, "lumber poplar|waste = 30 % lost"},
     FEET(50),
     {LUMBER(0, with_waste, "71.4286"), LUMBER(0, priced.bought, "72"),
      LUMBER(0, priced.cost, "288"), LUMBER(0, priced.factor, "1.44"),
      LUMBER(0, priced.waste_added, "44"), LUMBER(0, priced.yield, "69.4444")}},
    {"50 % added is 33 1/3 % lost",
     {SLABS, "lumber poplar|waste = 33.3333 % lost of what is bought"},
     FEET(50),
     {LUMBER(0, with_waste, "75"), LUMBER(0, priced.bought, "75")}},
    {"a part of a board foot is a whole one",
     {SLABS, "lumber poplar|waste = 1 % added"},
     FEET(50),
     {LUMBER(0, with_waste, "50.5"), LUMBER(0, priced.bought, "51")}},
    {"a ten-thousandth over is one more",
     {SLABS},
     "id,count,width,height\nS1,10,12 1/64,12\n",
     {LUMBER(0, net, "10.013"), LUMBER(0, priced.bought, "11")}},

    /* the yard */
    {"the yard's minimum",
     {SLABS, "lumber poplar|minimum = 20 bf"},
     FEET(3),
     {LUMBER(0, priced.needed, "20"), LUMBER(0, priced.bought, "20"),
      LUMBER(0, priced.cost, "80")}},
    {"over the minimum",
     {SLABS, "lumber poplar|minimum = 20 bf"},
     FEET(21),
     {LUMBER(0, priced.bought, "21")}},
    {"the minimum comes before the breaks",
     {SLABS, "lumber poplar|minimum = 100 bf\nprice from = 100 bf at 3.00 per bf"},
     FEET(3),
     {LUMBER(0, priced.needed, "100"), LUMBER(0, priced.price, "3"),
      LUMBER(0, priced.cost, "300")}},
    {"what goes where: 13 x 12 1/8 rough is 1.0946 each",
     {SLABS, "lumber poplar|waste = 30 % added"},
     FEET(50),
     {LUMBER(0, rough, "54.73"), LUMBER(0, allowances, "4.73"), LUMBER(0, priced.rest, "10.27")}},
    {"5/4 is 1.25 bf each",
     {"make|style = slab\nslab = thick-poplar"},
     FEET(4),
     {LUMBER(0, net, "5"), LUMBER(0, priced.cost, "25")}},
    {"two kinds, in the order of the rates",
     {"make|style = slab"},
     "id,slab,count,width,height\nS1,thick-poplar,4,12,12\nS2,poplar,3,12,12\n"
     "S3,thick-poplar,4,12,12\n",
     {LUMBER(0, net, "3"), LUMBER(0, priced.cost, "12"), LUMBER(1, net, "10"),
      LUMBER(1, priced.cost, "50"), LUMBER(2, net, NULL)}},
};

static const struct bench_case mm_cases[] = {
    {"10 of 500 x 500 x 27, 33 % lost: 0.0675 / 0.67 up to 0.001",
     {SLABS, "door slab|thickness = 20", "lumber poplar|waste = 33 % lost"},
     "id,count,width,height\nS1,10,500,500\n",
     {LUMBER(0, net, "0.0675"), LUMBER(0, with_waste, "0.100746"),
      LUMBER(0, priced.bought, "0.101"), LUMBER(0, priced.cost, "101")}},
    {"minimum in m3",
     {SLABS, "door slab|thickness = 20", "lumber poplar|minimum = 0.150 m3"},
     "id,count,width,height\nS1,10,500,500\n",
     {LUMBER(0, priced.needed, "0.15"), LUMBER(0, priced.cost, "150")}},
    {"0.466 at 1000 = 466.00, 0.500 at 900 = 450.00",
     {SLABS, "door slab|thickness = 20", "lumber poplar|price from = 0.500 m3 at 900.00 per m3"},
     "id,count,width,height\nS1,69,500,500\n",
     {LUMBER(0, priced.needed, "0.466"), LUMBER(0, priced.bought, "0.5"),
      LUMBER(0, priced.cost, "450"), LUMBER(0, priced.cost_as_needed, "466")}},
};

static void test_inches(void **state) {
    (void)state;
    bench_run(inch_cases, COUNT(inch_cases), BENCH_INCH);
}

static void test_mm(void **state) {
    (void)state;
    bench_run(mm_cases, COUNT(mm_cases), BENCH_MM);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_inches), cmocka_unit_test(test_mm)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
