/* SPDX-License-Identifier: MIT */
/* Kinds of doors and of cost beyond the framed sheet panel: solid panels, banding, stops, what
 * others make, small costs. Worked out by hand; docs/method.md, "Worked examples", has the same. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define SOLID "make|style = solid\npanel = poplar"
#define AIR   "climate|driest = 30 %\nwettest = 60 %\nmoisture = 7 %"

static const struct bench_case solid_cases[] = {
    {"glued up of three staves, flat",
     {SOLID, "door solid|stave = 5"},
     "D1,18,30\n",
     {PART(3, width, "14"), PART(3, length, "26.125"), PART(3, rough_width, "14.375"),
      PART(3, rough_length, "27.125"), PART(3, net, "2.5399"), PART(3, rough, "2.7078"),
      PART(3, glue, "4.3542"), PART(3, solid, "2.5399"), PART(3, raised, NULL),
      PART(3, weight, "4.66"), PART(3, movement.swell, NULL), LUMBER(0, net, "3.9229")}},
    {"raised: its mean thickness weighs",
     {SOLID, "door solid|stave = 5\nraised = yes\npanel thickness = 5/8\nmean thickness = 1/2"},
     "D1,18,30\n",
     {PART(3, net, "2.5399"), PART(3, raised, "6.6875"), PART(3, weight, "3.11")}},
    {"of one board: no glue line",
     {SOLID},
     "D1,18,30\n",
     {PART(3, rough_width, "14.125"), PART(3, glue, NULL)}},
    {"movement between 6.2 and 11 % moisture",
     {SOLID, AIR},
     "D1,18,30\n",
     {PART(3, movement.swell, "0.16184"), PART(3, movement.shrink, "0.032368"),
      PART(3, movement.room, "0.25"), PART(3, movement.hold, "0.5"),
      PART(0, movement.swell, NULL)}},
    {"a slab moves freely",
     {"make|style = slab\nslab = poplar", AIR},
     "D1,18,30\n",
     {PART(0, movement.swell, NULL), PART(0, movement.room, NULL)}},
    {"a panel of a sheet stands still",
     {"make|style = plain", AIR},
     "D1,18,30\n",
     {PART(3, movement.swell, NULL)}},
    {"of a wood whose movement is not known nothing is told",
     {SOLID, AIR, "lumber poplar|species = khaya"},
     "D1,18,30\n",
     {PART(3, movement.swell, NULL), PART(3, movement.room, NULL)}},
    {"nor of a lumber whose wood is not named",
     {"make|style = solid\npanel = unknown-wood", AIR},
     "D1,18,30\n",
     {PART(3, movement.swell, NULL), PART(3, movement.room, NULL)}},
    {"solid panels have lumber of their own",
     {"make|style = solid\nsolid panel = thick-poplar"},
     "D1,18,30\n",
     {PART(3, net, "3.1749"), LUMBER(1, priced.needed, "4")}},
    {"glue-up labor by the glue line",
     {SOLID, "door solid|stave = 5\noperations = glue up",
      "operation glue up|per = ft of glue line\nminutes = 2\nhandling = 3 min per panel\n"
      "setup = 10 min per thickness"},
     "D1,18,30\n",
     {OPERATION(0, run, "11.71"), OPERATION(0, setups, "1"),
      OPERATION(0, machine_minutes, "21.71")}},
    {"raising by the edge, three passes",
     {SOLID, "door solid|raised = yes\noperations = raise",
      "operation raise|per = ft of raised edge\nfeed = 6 ft per min\npasses = 3"},
     "D1,18,30\n",
     {OPERATION(0, run, "3.34")}},
    {"planing by the area, twice as often over a narrow drum",
     {SOLID, "door solid|operations = flatten",
      "operation flatten|per = sqft of solid panel\nminutes = 0.5\npasses = 2\n"
      "capacity = 8, one side open"},
     "D1,18,30\n",
     {OPERATION(0, run, "5.08")}},
};

static const struct bench_case edge_cases[] = {
    {"banding by the roll",
     {"make|style = slab", "sheet board|banding = tape",
      "banding tape|price = 32.00 per roll\nroll = 250 ft\nwaste = 10 %"},
     "id,count,width,height\nD1,12,18,30\n",
     {LEAF(0, banded, "8"), BANDING(0, net, "96"), BANDING(0, needed, "105.6"),
      BANDING(0, rolls, "1"), BANDING(0, cost, "32"), BANDING(0, charged, "13.52")}},
    {"and of two rolls: 64 x 316.8 / 500",
     {"make|style = slab", "sheet board|banding = tape",
      "banding tape|price = 32.00 per roll\nroll = 250 ft\nwaste = 10 %"},
     "id,count,width,height\nD1,36,18,30\n",
     {BANDING(0, needed, "316.8"), BANDING(0, rolls, "2"), BANDING(0, cost, "64"),
      BANDING(0, charged, "40.55")}},
    {"whole rolls are charged where the rates say so: 32, not 32 x 105.6 / 250",
     {"make|style = slab", "sheet board|banding = tape", "shop|charge banding = bought",
      "banding tape|price = 32.00 per roll\nroll = 250 ft\nwaste = 10 %"},
     "id,count,width,height\nD1,12,18,30\n",
     {BANDING(0, cost, "32"), BANDING(0, charged, "32")}},
    {"banding by the length",
     {"make|style = slab", "sheet board|banding = tape",
      "banding tape|price = 0.24 per ft\nwaste = 10 %"},
     "id,count,width,height\nD1,12,18,30\n",
     {BANDING(0, needed, "105.6"), BANDING(0, rolls, NULL), BANDING(0, cost, "25.34")}},
    {"a frame is not banded",
     {"sheet ply|banding = tape", "banding tape|price = 0.24 per ft"},
     "D1,18,30\n",
     {LEAF(0, banded, NULL)}},
    {"stops within the price of a pane",
     {"make|style = glazed", "glass clear|stops = 0.45 per ft"},
     "D1,18,30\n",
     {PART(3, area, "2.5278"), PART(3, stops, "3"), PART(3, cost, "28.28"), GLASS(0, stops, "3"),
      GLASS(0, cost, "28.28")}},
    {"sides up to even inches, least area",
     {"make|style = glazed", "glass clear|round up = 2\nminimum = 1.5 sqft"},
     "D1,12 3/4,18\n",
     {PART(3, area, "1.5"), PART(3, cost, "15")}},
    {"the method's pane with stops",
     {"make|style = glazed",
      "glass clear|price = 9.50 per sqft\nround up = 2\nstops = 0.45 per ft"},
     "D1,18,30\n",
     {PART(3, cost, "27.01"), PART(3, stops, "3")}},
    {"mid stiles and given rows",
     {NULL},
     "id,width,height,mid stiles,rows\nD1,22 1/2,40,1,12 | 21 1/4\n",
     {PART(3, length, "18.75"), PART(4, length, "12.75"), PART(5, width, "8.5"),
      PART(5, length, "12.625"), PART(5, count, "2"), PART(6, length, "22"),
      PART(7, length, "21.875"), LEAF(0, driver[DRIVER_JOINT], "10")}},
    {"less overlay on one side",
     {"make|measure = opening\noverlay = 1/2"},
     "id,width,height,overlay left\nD1,17 1/4,22 3/4,1/4\n",
     {LEAF(0, width, "18"), LEAF(0, height, "23.75")}},
    {"an end panel: no hinge, no pull",
     {"make|hinge = hinge\npull = pull"},
     "id,use,width,height\nD1,end panel,18,30\n",
     {LEAF(0, hinges, NULL), LEAF(0, pulls, NULL)}},
    {"an end panel is measured as itself, among overlay doors",
     {"make|measure = opening\noverlay = 1/2"},
     "id,use,width,height\nD1,end panel,23 1/4,30 1/2\nD2,door,23 1/4,30 1/2\n",
     {LEAF(0, width, "23.25"), LEAF(0, height, "30.5"), LEAF(1, width, "24.25"),
      LEAF(1, height, "31.5")}},
    {"an end panel among inset doors, whatever its row says",
     {"make|measure = opening\nreveal = 3/32"},
     "id,use,width,height,measure\nD1,end panel,18,30,opening\n",
     {LEAF(0, width, "18"), LEAF(0, height, "30")}},
    {"a low front is made in all by its slab style",
     {"make|style = drawer\nslab = poplar", "door drawer|slab style = plank\noperations = drum",
      ("door plank|kind = slab\nthickness = 5/8\nstave = 3\npanel grain = horizontal\n"
       "operations = ease"),
      "operation drum|per = door\nminutes = 5", "operation ease|per = ft of edge\nminutes = 0.1"},
     "id,use,width,height\nF1,drawer front,15,6\nD1,door,18,30\n",
     {LEAF(0, thickness, "0.625"), PART(0, length, "15"), PART(0, glue, "1.25"),
      OPERATION(0, run, "5"), OPERATION(1, run, "0.35"), SHARE(0, run, NULL), SHARE(1, run, "5")}},
    {"a slab of a sheet is as thick as the sheet, whatever its style says",
     {"make|style = drawer", "door slab|thickness = 1"},
     "id,use,width,height\nF1,drawer front,15,6\n",
     {LEAF(0, thickness, "0.75")}},
    {"an open frame has no panel",
     {"make|style = open"},
     "D1,18,30\n",
     {PART(2, count, "1"), SHEET(0, net, NULL)}},
};

static const struct bench_case others_cases[] = {
    {"bought in by the area",
     {"make|style = louver", "door louver|kind = open\nthickness = 3/4\nbought in = 24 per sqft"},
     "D1,18,30\n",
     {LEAF(0, bought_in, "90"), COST(job.group[COST_BOUGHT_IN], "90"),
      COST(job.group[COST_LUMBER], NULL), DOOR(0, cost.group[COST_BOUGHT_IN], "90")}},
    {"bought in with a profile that nobody measured",
     {"make|style = profiled\nfinish = painted", "door profiled|bought in = 55.00 per door"},
     "D1,18,30\n",
     {LEAF(0, profile, NULL), LEAF(0, inner_edges, NULL)}},
    {"bought in by the door",
     {"make|style = louver", "door louver|kind = open\nbought in = 55.00 per door"},
     "id,count,width,height\nD1,3,18,30\n",
     {LEAF(0, bought_in, "55"), COST(job.group[COST_BOUGHT_IN], "165")}},
    {"the rest is weighed",
     {"door louver|kind = open\nbought in = 55.00 per door"},
     "id,style,width,height\nD1,,18,30\nD2,louver,18,30\n",
     {LEAF(0, weight, "4.54"), LEAF(1, weight, NULL), JOB(weight, "4.54")}},
    {"finish put out",
     {"make|finish = dipped", "finish dipped|put out = 4.20 per sqft",
      "consumable abrasive|price = 1.00 per sqft"},
     "D1,18,30\n",
     {LEAF(0, sprayed, "8"), LEAF(0, put_out, "33.6"), COST(job.group[COST_BOUGHT_IN], "33.6"),
      COST(job.group[COST_CONSUMABLES], NULL)}},
    {"hinges by others are bored for, not sold",
     {"make|hinge = hinge", "hardware hinge|price = by others",
      "consumable screws|price = 0.12 per hinge"},
     "D1,18,30\n",
     {LEAF(0, hinges, "2"), HARDWARE(0, needed, "2"), HARDWARE(0, cost, NULL),
      CONSUMABLE(0, cost, "0.24")}},
    {"two pulls on each leaf where the row says so, on an end panel as well",
     {"make|pull = knob", "hardware knob|price = 2.60 each"},
     "id,use,count,leaves,width,height,pulls\nF1,drawer front,2,1,30,8,2\nD1,door,1,2,15,30,\n"
     "D2,door,1,1,15,30,0\nE1,end panel,1,1,24,30,2\nE2,end panel,1,1,24,30,\n",
     {LEAF(0, pulls, "2"), LEAF(1, pulls, "1"), LEAF(2, pulls, NULL), LEAF(3, pulls, "2"),
      LEAF(4, pulls, NULL), HARDWARE(0, needed, "8"), HARDWARE(0, cost, "20.8")}},
    {"a pull that the row of an end panel names",
     {"make|pull = knob", "hardware knob|price = 2.60 each"},
     "id,use,width,height,pull\nE1,end panel,24,30,knob\nE2,end panel,24,30,none\n",
     {LEAF(0, pulls, "1"), LEAF(1, pulls, NULL), HARDWARE(0, needed, "1")}},
    {"a pull of its own that is the first of the hardware",
     {"make|pull = hinge"},
     "id,use,width,height,pull,pulls\nE1,end panel,24,30,hinge,\nE2,end panel,24,30,,\n"
     "E3,end panel,24,30,,0\n",
     {LEAF(0, pulls, "1"), LEAF(1, pulls, NULL), LEAF(2, pulls, NULL), HARDWARE(0, needed, "1")}},
    {"packs with spares",
     {"make|hinge = hinge", "hardware hinge|price = 42.00 per pack\npack = 10\nspares = 5 %",
      "shop|charge hardware = bought"},
     "id,count,width,height\nD1,5,18,30\n",
     {HARDWARE(0, needed, "10"), HARDWARE(0, with_spares, "11"), HARDWARE(0, packs, "2"),
      HARDWARE(0, bought, "20"), HARDWARE(0, charged, "84")}},
};

static const struct bench_case money_cases[] = {
    {"a group with a markup of its own",
     {"shop|profit = 25 % markup", "markup|lumber = 10 %"},
     "D1,18,30\n",
     {COST(job.group[COST_LUMBER], "8"), COST(job.group[COST_SHEETS], "4"), COST(job.profit, "1.8"),
      COST(job.price, "13.8")}},
    {"and its part of the overhead",
     {"shop|profit = 25 % markup\noverhead = 50 % of cost", "markup|lumber = 10 %"},
     "D1,18,30\n",
     {COST(job.full, "18"), COST(job.profit, "2.7"), COST(job.price, "20.7")}},
    {"card fee on all that is paid",
     {"sale|card fee = 2.5 % added\ndelivery = 88.00\ntax = 10 %\ntax on = selling price\n"
      "deposit = 50 %"},
     "D1,18,30\n",
     {SALE(subtotal, "100"), SALE(tax, "1.2"), SALE(before_fee, "101.2"), SALE(card_fee, "2.53"),
      SALE(total, "103.73"), SALE(deposit, "51.87"), SALE(balance, "51.86")}},
    {"the least price of a door, by area at the job's own price",
     {"shop|minimum door = 5 sqft"},
     "D1,18,30\n",
     {COST(job.price, "12"), COST(least, "16"), DOOR(0, priced, "16"), COST(minimum, "4")}},
    {"the least price as an amount",
     {"shop|minimum door = 45.00"},
     "D1,18,30\n",
     {DOOR(0, priced, "45"), COST(minimum, "33")}},
    {"an operation with a wage of its own",
     {"shop|operations = quote, check",
      "operation quote|per = job\nminutes = 30\nlabor rate = 80 per hour",
      "operation check|per = door\nminutes = 3"},
     "D1,18,30\n",
     {OPERATION(0, labor, "40"), OPERATION(1, labor, "3"), LABOR(general_minutes, "33"),
      LABOR(making, NULL)}},
    {"remakes and spare parts",
     {"shop|remakes = 5 % of doors"},
     "D1,18,30\n",
     {COST(job.group[COST_REMAKES], "0.6"), COST(job.direct, "12.6")}},
};

static const struct bench_case mm_cases[] = {
    {"a solid panel by the cubic meter",
     {"make|style = solid\npanel = poplar",
      "door solid|kind = solid\njoint = loose tenon\nthickness = 22\nstile = 60\ngroove = 12\n"
      "panel clearance = 1\nclearance across = 5\nstave = 110",
      "climate|driest = 30 %\nwettest = 65 %\nmoisture = 9 %"},
     "D1,450,730\n",
     {PART(3, width, "344"), PART(3, length, "632"), PART(3, glue, "1.896"),
      PART(3, movement.swell, "2.98248"), PART(3, movement.room, "10")}},
};

#define RUN(cases, unit)                                                                           \
    (void)state;                                                                                   \
    bench_run(cases, COUNT(cases), unit)

static void test_solid(void **state) {
    RUN(solid_cases, BENCH_INCH);
}
static void test_edges(void **state) {
    RUN(edge_cases, BENCH_INCH);
}
static void test_others(void **state) {
    RUN(others_cases, BENCH_INCH);
}
static void test_money(void **state) {
    RUN(money_cases, BENCH_INCH);
}
static void test_mm(void **state) {
    RUN(mm_cases, BENCH_MM);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_solid), cmocka_unit_test(test_edges), cmocka_unit_test(test_others),
        cmocka_unit_test(test_money), cmocka_unit_test(test_mm),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
