/* SPDX-License-Identifier: MIT */
/* From areas to sheets, and the hardware. A slab of 12 x 12 is one square foot, a sheet of 48 x 96
 * holds 32. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define SLABS   "make|style = slab"
#define FEET(n) "id,count,width,height\nS1," #n ",12,12\n"
#define HALF    "sheet board|half sheet = 45.00"

static const struct bench_case sheet_cases[] = {
    {"32 sq ft are one sheet",
     {SLABS},
     FEET(32),
     {SHEET(0, net, "32"), SHEET(0, each, "32"), SHEET(0, priced.whole, "1"),
      SHEET(0, priced.half, NULL), SHEET(0, priced.bought, "32"), SHEET(0, priced.cost, "80"),
      SHEET(0, charged, "80"), SHEET(0, priced.yield, "100")}},
    {"33 are two",
     {SLABS},
     FEET(33),
     {SHEET(0, priced.whole, "2"), SHEET(0, priced.bought, "64"), SHEET(0, priced.cost, "160"),
      SHEET(0, priced.factor, "1.939394"), SHEET(0, priced.waste_added, "93.9394"),
      SHEET(0, priced.yield, "51.5625")}},
    {"33 with halves: one and a half",
     {SLABS, HALF},
     FEET(33),
     {SHEET(0, priced.whole, "1"), SHEET(0, priced.half, "1"), SHEET(0, priced.bought, "48"),
      SHEET(0, priced.cost, "125")}},
    {"48 are just one and a half",
     {SLABS, HALF},
     FEET(48),
     {SHEET(0, priced.whole, "1"), SHEET(0, priced.half, "1"), SHEET(0, priced.cost, "125")}},
    {"49 are two whole ones",
     {SLABS, HALF},
     FEET(49),
     {SHEET(0, priced.whole, "2"), SHEET(0, priced.half, "0"), SHEET(0, priced.cost, "160")}},
    {"16 are a half",
     {SLABS, HALF},
     FEET(16),
     {SHEET(0, priced.whole, "0"), SHEET(0, priced.half, "1"), SHEET(0, priced.bought, "16"),
      SHEET(0, priced.cost, "45")}},
    {"17 are a whole one",
     {SLABS, HALF},
     FEET(17),
     {SHEET(0, priced.whole, "1"), SHEET(0, priced.half, "0"), SHEET(0, priced.cost, "80")}},
    {"32 with halves: no half",
     {SLABS, HALF},
     FEET(32),
     {SHEET(0, priced.whole, "1"), SHEET(0, priced.half, "0"), SHEET(0, priced.cost, "80")}},
    {"20 % added: 28 x 1.2 = 33.6",
     {SLABS, "sheet board|waste = 20 % added"},
     FEET(28),
     {SHEET(0, needed, "33.6"), SHEET(0, priced.whole, "2")}},
    {"20 % lost: 32 / 0.8 = 40",
     {SLABS, "sheet board|waste = 20 % lost"},
     FEET(32),
     {SHEET(0, needed, "40"), SHEET(0, priced.whole, "2")}},
    {"40 panels of 14 1/8 x 26 1/8, 20 % added: 123.0048 sq ft, 4 sheets",
     {"sheet ply|waste = 20 % added"},
     "id,count,width,height\nD1,40,18,30\n",
     {SHEET(0, net, "102.504"), SHEET(0, needed, "123.0048"), SHEET(0, priced.whole, "4"),
      SHEET(0, priced.cost, "200")}},
    {"35 of them: 107.6292, three and a half",
     {"sheet ply|waste = 20 % added\nhalf sheet = 30.00"},
     "id,count,width,height\nD1,35,18,30\n",
     {SHEET(0, net, "89.691"), SHEET(0, needed, "107.6292"), SHEET(0, priced.whole, "3"),
      SHEET(0, priced.half, "1"), SHEET(0, priced.cost, "180")}},

    /* what the job pays */
    {"charge used: 160 x 33 / 64",
     {SLABS, "shop|charge sheets = used"},
     FEET(33),
     {SHEET(0, priced.cost, "160"), SHEET(0, charged, "82.50")}},
    {"charge used with a half: 125 x 33 / 48",
     {SLABS, HALF, "shop|charge sheets = used"},
     FEET(33),
     {SHEET(0, priced.cost, "125"), SHEET(0, charged, "85.94")}},
    {"used counts the waste: 160 x 39.6 / 64",
     {SLABS, "sheet board|waste = 20 % added", "shop|charge sheets = used"},
     FEET(33),
     {SHEET(0, charged, "99")}},
    {"charge bought", {SLABS, "shop|charge sheets = bought"}, FEET(33), {SHEET(0, charged, "160")}},
    {"panels and slabs of two rows, in the order of the rates",
     {NULL},
     "id,style,count,width,height\nS1,slab,4,12,12\nD1,plain,1,18,30\nS2,slab,2,12,12\n",
     {SHEET(0, net, "2.5626"), SHEET(1, net, "6"), SHEET(2, net, NULL)}},
};

static const struct bench_case mm_cases[] = {
    {"2070 x 2800 is 5.796 m2",
     {SLABS},
     "id,count,width,height\nS1,6,1000,1000\n",
     {SHEET(0, each, "5.796"), SHEET(0, net, "6"), SHEET(0, priced.whole, "2"),
      SHEET(0, priced.cost, "160")}},
};

#define HANGED "make|hinge = hinge"
#define CATCH  "hardware catch|price = 1.40 each"
#define DOORS5 "id,count,width,height\nD1,5,18,30\n"

static const struct bench_case hardware_cases[] = {
    {"ten hinges",
     {HANGED},
     DOORS5,
     {HARDWARE(0, needed, "10"), HARDWARE(0, bought, "10"), HARDWARE(0, packs, NULL),
      HARDWARE(0, cost, "30"), HARDWARE(0, charged, "30")}},
    {"3 % of spares are a whole one",
     {HANGED, "hardware hinge|spares = 3 %"},
     DOORS5,
     {HARDWARE(0, with_spares, "11"), HARDWARE(0, cost, "33")}},
    {"10 % of spares are just one",
     {HANGED, "hardware hinge|spares = 10 %"},
     DOORS5,
     {HARDWARE(0, with_spares, "11")}},
    {"packs of 8, whole packs charged",
     {HANGED, "hardware hinge|pack = 8\nprice = 20.00 per pack", "shop|charge hardware = bought"},
     DOORS5,
     {HARDWARE(0, packs, "2"), HARDWARE(0, bought, "16"), HARDWARE(0, cost, "40"),
      HARDWARE(0, charged, "40")}},
    {"packs of 8, pieces charged: 10 x 20 / 8",
     {HANGED, "hardware hinge|pack = 8\nprice = 20.00 per pack", "shop|charge hardware = used"},
     DOORS5,
     {HARDWARE(0, packs, "2"), HARDWARE(0, cost, "40"), HARDWARE(0, charged, "25")}},
    {"packs of 8 at a price each, whole packs charged",
     {HANGED, "hardware hinge|pack = 8\nprice = 2.50 each", "shop|charge hardware = bought"},
     DOORS5,
     {HARDWARE(0, packs, "2"), HARDWARE(0, bought, "16"), HARDWARE(0, cost, "40"),
      HARDWARE(0, charged, "40")}},
    {"packs of 8 at a price each, pieces charged",
     {HANGED, "hardware hinge|pack = 8\nprice = 2.50 each", "shop|charge hardware = used"},
     DOORS5,
     {HARDWARE(0, packs, "2"), HARDWARE(0, cost, "40"), HARDWARE(0, charged, "25")}},
    {"spares fill the pack",
     {HANGED, "hardware hinge|pack = 10\nprice = 20.00 per pack\nspares = 5 %",
      "shop|charge hardware = used"},
     DOORS5,
     {HARDWARE(0, with_spares, "11"), HARDWARE(0, packs, "2"), HARDWARE(0, charged, "22")}},
    {"by others: named, not sold",
     {HANGED, "hardware hinge|price = by others"},
     DOORS5,
     {HARDWARE(0, needed, "10"), HARDWARE(0, cost, NULL), COST(job.group[COST_HARDWARE], NULL)}},
    {"hinges and pulls",
     {HANGED "\npull = pull"},
     DOORS5,
     {HARDWARE(0, needed, "10"), HARDWARE(1, needed, "5"), COST(job.group[COST_HARDWARE], "40"),
      DOOR(0, cost.group[COST_HARDWARE], "8")}},
    {"a list of hardware, on each leaf and for a pair",
     {"make|hardware = 1 catch, bolt per opening", CATCH, "hardware bolt|price = 6.00 each"},
     "id,count,leaves,width,height\nD1,3,2,15,30\nD2,2,1,15,30\n",
     {LEAF(0, other_hardware, "1.5"), LEAF(1, other_hardware, "2"), HARDWARE(0, needed, "8"),
      HARDWARE(0, cost, "11.2"), HARDWARE(1, needed, "5"), HARDWARE(1, cost, "30"),
      COST(job.group[COST_HARDWARE], "41.2"), DOOR(0, cost.group[COST_HARDWARE], "4.4"),
      DOOR(1, cost.group[COST_HARDWARE], "7.4")}},
    {"what the job lists is for doors; a row lists for itself, or none",
     {"make|hardware = 1 catch", CATCH},
     "id,use,width,height,hardware\nF1,drawer front,18,8,\nF2,drawer front,18,8,2 catch\n"
     "E1,end panel,18,30,\nD1,door,18,30,\nD2,door,18,30,none\nD3,door,18,30,3 Catch\n",
     {LEAF(0, other_hardware, NULL), LEAF(1, other_hardware, "2"), LEAF(2, other_hardware, NULL),
      LEAF(3, other_hardware, "1"), LEAF(4, other_hardware, NULL), LEAF(5, other_hardware, "3"),
      HARDWARE(0, needed, "6")}},
    {"of leaves that fold the one that is pulled, of four the one lock in two parts",
     {"make|fold hinge = hinge\nhinge = hinge\nhardware = 1 catch, bolt per opening\ngap = 1/8",
      CATCH, "hardware bolt|price = 6.00 each"},
     "id,width,height,opens,hinge side,hinges\nD1,30,30,bi-fold,left,3\nD2,60,30,bi-fold,pair,\n",
     {LEAF(0, other_hardware, NULL), LEAF(1, other_hardware, "2"), LEAF(2, other_hardware, NULL),
      LEAF(3, other_hardware, "1.5"), LEAF(0, hinges, "3"), LEAF(1, hinges, "2"),
      HARDWARE(1, needed, "3"), HARDWARE(2, needed, "2")}},
    {"a name that begins with digits",
     {"make|hardware = 2 35 mm bumper", "hardware 35 mm bumper|price = 0.10 each"},
     DOORS5,
     {HARDWARE(0, needed, "10"), HARDWARE(0, cost, "1")}},
    {"a piece in two roles is bought in each",
     {HANGED "\nhardware = 1 hinge"},
     DOORS5,
     {HARDWARE(0, needed, "10"), HARDWARE(1, needed, "5"), COST(job.group[COST_HARDWARE], "45")}},
    {"one piece as hinge and as pull is bought twice",
     {HANGED "\npull = hinge"},
     DOORS5,
     {HARDWARE(0, needed, "10"), HARDWARE(1, needed, "5"), COST(job.group[COST_HARDWARE], "45")}},
};

static void test_sheets(void **state) {
    (void)state;
    bench_run(sheet_cases, COUNT(sheet_cases), BENCH_INCH);
}

static void test_mm(void **state) {
    (void)state;
    bench_run(mm_cases, COUNT(mm_cases), BENCH_MM);
}

static void test_hardware(void **state) {
    (void)state;
    bench_run(hardware_cases, COUNT(hardware_cases), BENCH_INCH);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_sheets),
        cmocka_unit_test(test_mm),
        cmocka_unit_test(test_hardware),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
