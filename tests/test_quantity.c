/* SPDX-License-Identifier: MIT */
/* What a leaf takes of lumber, sheets and glass, its surface, weight, hinges and the counts that
 * labor goes by. Worked by hand from the formulas of docs/method.md; each figure is rounded once to
 * its decimals before it is used again. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define DOOR_18_BY_30 "D1,18,30\n"
#define MID_HEAD      "id,width,height,mid rails\n"

static const struct bench_case inch_cases[] = {
    /* lumber: 1 x 2 1/4 x 30 / 144 = 0.4688; 1 x 2 1/4 x 14 1/4 / 144 = 0.2227 */
    {"18 x 30, flat panel",
     {NULL},
     DOOR_18_BY_30,
     {PART(0, net, "0.4688"), PART(1, net, "0.2227"), PART(0, rough, "0.5113"),
      PART(1, rough, "0.2515"), PART(3, area, "2.5626"), LEAF(0, uses[0].net, "1.3830"),
      LEAF(0, uses[0].rough, "1.5256"), LEAF(0, uses[1].net, "2.5626"), LEAF(0, face, "3.75"),
      LEAF(0, perimeter, "96"), LEAF(0, sprayed, NULL), LEAF(0, weight, "4.54"),
      LEAF(0, hinges, NULL), LEAF(0, pulls, NULL)}},
    {"tenon 1 1/4: rails of 16",
     {"make|style = tenoned"},
     DOOR_18_BY_30,
     {PART(1, net, "0.25"), LEAF(0, uses[0].net, "1.4376"), PART(3, area, "2.5626")}},
    {"dowels: rails of 13 1/2",
     {"make|style = dowelled"},
     DOOR_18_BY_30,
     {PART(1, net, "0.2109"), LEAF(0, uses[0].net, "1.3594"), PART(3, area, "2.5626")}},
    {"mitred: rails of 18",
     {"make|style = mitred"},
     DOOR_18_BY_30,
     {PART(1, net, "0.2813"), LEAF(0, uses[0].net, "1.5002"), PART(3, area, "2.5626")}},
    {"solid panel: lumber as well, counted at 4/4",
     {"make|style = solid\npanel = poplar"},
     DOOR_18_BY_30,
     {PART(3, net, "2.5399"), LEAF(0, uses[0].net, "3.9229"), PART(3, area, NULL)}},
    {"solid panel of another lumber is a use of its own",
     {"make|style = solid\npanel = thick-poplar"},
     DOOR_18_BY_30,
     {PART(3, net, "3.1749"), LEAF(0, uses[0].net, "1.3830"), LEAF(0, uses[1].net, "3.1749")}},
    {"a panel of three staves, each with both its edges",
     {"make|style = solid\npanel = poplar", "door solid|stave = 5"},
     DOOR_18_BY_30,
     {PART(3, staves, "3"), PART(3, stave_width, "4.791667")}},
    {"5/4 counts 1 1/4 in",
     {"make|frame = thick-poplar"},
     DOOR_18_BY_30,
     {PART(0, net, "0.5859"), PART(1, net, "0.2783"), LEAF(0, uses[0].net, "1.7284")}},
    {"3/4 counts as 1 in",
     {"lumber poplar|thickness = 3/4"},
     DOOR_18_BY_30,
     {PART(0, net, "0.4688"), LEAF(0, uses[0].net, "1.3830")}},
    {"one mid rail",
     {"make|style = profiled\nfinish = painted"},
     MID_HEAD "D1,18,30,1\n",
     {LEAF(0, uses[0].net, "1.6057"), PART(4, area, "1.2016"), LEAF(0, uses[1].net, "2.4032"),
      LEAF(0, profile, "0.3490"), LEAF(0, sprayed, "8.3490")}},

    /* surface */
    {"flat panel: both faces and the edges",
     {"make|finish = painted"},
     DOOR_18_BY_30,
     {LEAF(0, faces, "7.5"), LEAF(0, edges, "0.5"), LEAF(0, inner_edges, NULL),
      LEAF(0, profile, NULL), LEAF(0, sprayed, "8")}},
    {"with 1/2 in of profile",
     {"make|style = profiled\nfinish = painted"},
     DOOR_18_BY_30,
     {LEAF(0, profile, "0.2708"), LEAF(0, sprayed, "8.2708")}},
    {"front only",
     {"make|finish = painted", "finish painted|faces = front"},
     DOOR_18_BY_30,
     {LEAF(0, faces, "3.75"), LEAF(0, sprayed, "4.25")}},
    {"back only",
     {"make|finish = painted", "finish painted|faces = back"},
     DOOR_18_BY_30,
     {LEAF(0, faces, "3.75"), LEAF(0, sprayed, "4.25")}},
    {"no faces: the edges are sprayed all the same",
     {"make|finish = painted", "finish painted|faces = none"},
     DOOR_18_BY_30,
     {LEAF(0, faces, NULL), LEAF(0, sprayed, "0.5")}},
    {"glass 18 x 30: 2.72 + 0.50 + 0.41 = 3.63 sq ft",
     {"make|style = glazed\nfinish = painted"},
     DOOR_18_BY_30,
     {LEAF(0, see_through, "2.3906"), LEAF(0, faces, "2.7188"), LEAF(0, edges, "0.5"),
      LEAF(0, inner_edges, "0.4063"), LEAF(0, sprayed, "3.6251")}},
    {"glass with 1/4 in of profile",
     {"make|style = glazed\nfinish = painted", "door glazed|profile extra = 1/4"},
     DOOR_18_BY_30,
     {LEAF(0, profile, "0.1354"), LEAF(0, sprayed, "3.7605")}},
    {"glass, front only: one open face comes off",
     {"make|style = glazed\nfinish = painted", "finish painted|faces = front"},
     DOOR_18_BY_30,
     {LEAF(0, faces, "1.3594"), LEAF(0, sprayed, "2.2657")}},
    {"open frame: as the glass door",
     {"make|style = open\nfinish = painted"},
     DOOR_18_BY_30,
     {LEAF(0, faces, "2.7188"), LEAF(0, sprayed, "3.6251"), LEAF(0, uses[0].net, "1.3830"),
      LEAF(0, weight, "2.54")}},
    {"an open door that is bought has no inner edges: 2 x 3.75 + 0.50",
     {"make|style = open\nfinish = painted", "door open|bought in = 24.00 per sqft"},
     DOOR_18_BY_30,
     {LEAF(0, inner_edges, NULL), LEAF(0, faces, "7.5"), LEAF(0, sprayed, "8")}},
    {"hung at the left: 70 in have 4 hinges",
     {"make|hinge = hinge", "hinges|by height = 40 in: 2, 60 in: 3, 80 in: 4"},
     "id,hinge side,width,height\nD1,left,17,70\n",
     {LEAF(0, hinges, "4")}},
    {"hung at the top: 17 in have 2",
     {"make|hinge = hinge", "hinges|by height = 40 in: 2, 60 in: 3, 80 in: 4"},
     "id,opens,width,height\nD1,lift up,17,70\n",
     {LEAF(0, hinges, "2")}},
    {"hung at the bottom: 70 in wide have 4",
     {"make|hinge = hinge", "hinges|by height = 40 in: 2, 60 in: 3, 80 in: 4"},
     "id,opens,width,height\nD1,tilt out,70,17\n",
     {LEAF(0, hinges, "4")}},
    {"slab 15 3/8 x 6 1/4",
     {"make|style = slab\nfinish = painted"},
     "F1,15 3/8,6 1/4\n",
     {PART(0, area, "0.6673"), LEAF(0, faces, "1.3346"), LEAF(0, edges, "0.2253"),
      LEAF(0, sprayed, "1.5599"), LEAF(0, weight, "1.95")}},
    {"a slab of lumber has the thickness of its style",
     {"make|style = slab\nslab = poplar\nfinish = painted"},
     "F1,12,12\n",
     {PART(0, net, "1"), LEAF(0, edges, "0.25"), LEAF(0, sprayed, "2.25")}},
    {"drawer front with a frame",
     {"make|style = drawer\nfinish = painted", "door drawer|profile extra = 1/2"},
     "id,use,width,height\nF1,drawer front,31 1/2,9 7/8\n",
     {PART(0, net, "0.1543"), PART(1, net, "0.2891"), LEAF(0, uses[0].net, "0.8868"),
      LEAF(0, uses[1].net, "1.4388"), LEAF(0, faces, "4.3204"), LEAF(0, edges, "0.4310"),
      LEAF(0, profile, "0.2352"), LEAF(0, sprayed, "4.9866"), LEAF(0, hinges, NULL)}},

    /* glass: 14 x 26 / 144 = 2.5278 */
    {"pane as it is",
     {"make|style = glazed"},
     DOOR_18_BY_30,
     {PART(3, area, "2.5278"), PART(3, cost, "25.28"), GLASS(0, cost, "25.28")}},
    {"pane charged to even inches",
     {"make|style = glazed", "glass clear|round up = 2"},
     "D1,17 7/16,29 3/8\n",
     {PART(3, area, "2.5278"), PART(3, cost, "25.28")}},
    {"even inches stay",
     {"make|style = glazed", "glass clear|round up = 2"},
     DOOR_18_BY_30,
     {PART(3, area, "2.5278")}},
    {"a small pane is charged the minimum",
     {"make|style = glazed", "glass clear|minimum = 3 sqft"},
     DOOR_18_BY_30,
     {PART(3, area, "3"), PART(3, cost, "30")}},
    {"each pane has its minimum",
     {"make|style = glazed", "glass clear|minimum = 3 sqft"},
     MID_HEAD "D1,18,30,1\n",
     {LEAF(0, uses[1].net, "6"), LEAF(0, uses[1].cost, "60"), GLASS(0, area, "6"),
      GLASS(0, cost, "60")}},

    /* weight: poplar 62.43 x 0.42 x 1.12 = 29.367072 lb/cu ft; plywood 37.456777, glass 156.0699 */
    {"glass door: 2.54 of frame and 4.11 of pane",
     {"make|style = glazed"},
     DOOR_18_BY_30,
     {PART(0, weight, "0.86"), PART(1, weight, "0.41"), PART(3, weight, "4.11"),
      LEAF(0, weight, "6.65")}},
    /* basswood, the first of the table: 62.43 x 0.37 x 1.12 x 30 x 2 1/4 x 3/4 / 1728 */
    {"stiles of basswood",
     {"make|style = glazed", "lumber poplar|species = american-basswood"},
     DOOR_18_BY_30,
     {PART(0, weight, "0.76")}},
    {"a wood that is not in the table has no weight",
     {"make|frame = unknown-wood"},
     DOOR_18_BY_30,
     {PART(0, weight, NULL), PART(3, weight, "2"), LEAF(0, weight, NULL), JOB(weight, NULL)}},
    {"and none has the job, whatever its other doors weigh",
     {NULL},
     "id,frame,width,height\nD1,,18,30\nD2,unknown-wood,18,30\nD3,,18,30\n",
     {LEAF(0, weight, "4.54"), LEAF(1, weight, NULL), JOB(weight, NULL)}},
    {"density in lb/cu ft as it is",
     {"make|style = slab", "sheet board|density = 48 lb/cuft"},
     "F1,24,24\n",
     {LEAF(0, weight, "12")}}, /* 48 x 4 x 0.75 / 12 */
    {"density in kg/m3: 1000 kg/m3 is 62.428 lb/cu ft",
     {"make|style = slab", "sheet board|density = 1000 kg/m3"},
     "F1,24,24\n",
     {LEAF(0, weight, "15.61")}},
    {"one door of one leaf where the list has no such columns: figures as well",
     {NULL},
     DOOR_18_BY_30,
     {LEAF(0, openings, "1"), LEAF(0, leaves, "1"), LEAF(0, pieces, "1")}},
    {"and where the cell is empty",
     {NULL},
     "id,count,leaves,width,height\nD1,,2,18,30\n",
     {LEAF(0, openings, "1"), LEAF(0, leaves, "2"), LEAF(0, pieces, "2")}},
    {"the job: count x leaves x weight",
     {NULL},
     "id,count,leaves,width,height\nD1,3,2,18,30\nD2,1,1,18,30\n",
     {LEAF(0, pieces, "6"), LEAF(1, pieces, "1"), JOB(all_leaves, "7"), JOB(weight, "31.78"),
      PART(0, count, "2"), PART(0, pieces, "12")}},
};

#define HANGED "make|hinge = hinge\npull = pull"

static const struct bench_case hinge_cases[] = {
    /* stile, rails, mid rail, mid stile and what fills the openings */
    {"nothing of a straight door is cut to an arch",
     {NULL},
     "id,width,height,mid rails,mid stiles\nD1,18,30,1,1\n",
     {PART(0, rise, NULL), PART(1, rise, NULL), PART(2, rise, NULL), PART(3, rise, NULL),
      PART(4, rise, NULL), PART(5, rise, NULL)}},
    {"nor of a glazed one",
     {"make|style = glazed"},
     "D1,18,30\n",
     {PART(3, width, "14"), PART(3, rise, NULL)}},
    {"a pane is square behind its arch",
     {"make|style = glazed"},
     "id,width,height,arch\nD1,18,30,2\n",
     {PART(1, rise, "2"), PART(2, rise, NULL), PART(3, rise, NULL)}},
    {"nor is a slab", {"make|style = slab"}, "D1,18,30\n", {PART(0, rise, NULL)}},
    {"a low front by the first style of the shop, which is a slab",
     {"make|style = drawer", "door drawer|slab style = plain",
      "door plain|kind = slab\njoint\nstile\ntongue\ngroove\npanel clearance"},
     "id,use,width,height\nF1,drawer front,18,6\n",
     {PART(0, width, "18"), PART(0, length, "6"), PART(1, width, NULL)}},
    {"one rule of heights, of one step",
     {"make|hinge = hinge", "hinges|by height = 40 in: 3\nby weight"},
     "D1,18,30\n",
     {LEAF(0, hinges, "3"), LEAF(0, hinges_by_rule, "3")}},
    {"one rule of weights, of one step",
     {"make|hinge = hinge", "hinges|by height\nby weight = 40 lb: 3"},
     "D1,18,30\n",
     {LEAF(0, hinges, "3"), LEAF(0, hinges_by_rule, "3")}},
    {"no rule: two",
     {"make|hinge = hinge", "hinges|by height\nby weight"},
     "D1,18,30\n",
     {LEAF(0, hinges, "2"), LEAF(0, hinges_by_rule, NULL)}},
    {"a panel of the job has no pull, be it the first thing of hardware",
     {"make|pull = hinge"},
     "id,use,width,height\nE1,end panel,18,30\n",
     {LEAF(0, pulls, NULL), LEAF(0, hinges, NULL)}},
    {"its own row gives it one",
     {"make|pull = hinge"},
     "id,use,width,height,pull\nE1,end panel,18,30,hinge\n",
     {LEAF(0, pulls, "1")}},
    {"30 in, 4.54 lb", {HANGED}, "D1,18,30\n", {LEAF(0, hinges, "2"), LEAF(0, pulls, "1")}},
    {"just at the limit", {HANGED}, "D1,18,40\n", {LEAF(0, hinges, "2")}},
    {"a 64th over", {HANGED}, "D1,18,40 1/64\n", {LEAF(0, hinges, "3")}},
    {"high and light: height rules", {HANGED}, "D1,12,62\n", {LEAF(0, hinges, "4")}},
    {"low and heavy: weight rules",
     {HANGED "\nstyle = glazed"},
     "D1,36,40\n",
     {LEAF(0, weight, "17.15"), LEAF(0, hinges, "3")}},
    {"past the last limit: the last", {HANGED}, "D1,12,101\n", {LEAF(0, hinges, "5")}},
    {"no weight known: height rules",
     {HANGED "\nframe = unknown-wood"},
     "D1,12,62\n",
     {LEAF(0, weight, NULL), LEAF(0, hinges, "4")}},
    {"no rule by height",
     {HANGED "\nstyle = glazed", "hinges|by height"},
     "D1,36,90\n",
     {LEAF(0, weight, "38.07"), LEAF(0, hinges, "4")}},
    {"no rule by weight",
     {HANGED "\nstyle = glazed", "hinges|by weight"},
     "D1,36,40\n",
     {LEAF(0, hinges, "2")}},
    {"no rule at all: two",
     {HANGED, "hinges|by height", "hinges|by weight"},
     "D1,12,90\n",
     {LEAF(0, hinges, "2")}},
    {"hung at the top: the width is the hinged edge",
     {HANGED},
     "id,width,height,opens\nD1,70,17,lift up\nD2,70,17,drop down\nD3,17,70,hinged\n",
     {LEAF(0, hinges, "4"), LEAF(1, hinges, "4"), LEAF(2, hinges, "4")}},
    {"hung at the top: low and wide is not high",
     {HANGED, "hinges|by weight"},
     "id,width,height,opens\nD1,17,70,lift up\nD2,70,17,hinged\n",
     {LEAF(0, hinges, "2"), LEAF(1, hinges, "2")}},
    {"hung at the top: the weight is what it was",
     {HANGED "\nstyle = glazed"},
     "id,width,height,opens\nD1,36,40,lift up\n",
     {LEAF(0, weight, "17.15"), LEAF(0, hinges, "3")}},
    {"as the row says, more or fewer than the rules",
     {HANGED},
     "id,count,width,height,hinges\nD1,2,18,30,3\nD2,1,18,62,2\nD3,1,18,30,\n",
     {LEAF(0, hinges, "3"), LEAF(0, hinges_by_rule, "2"), LEAF(1, hinges, "2"),
      LEAF(1, hinges_by_rule, "4"), LEAF(2, hinges, "2"), JOB(hinges, "10")}},
    {"hinge = none", {"make|hinge = none\npull = pull"}, "D1,18,30\n", {LEAF(0, hinges, NULL)}},
    {"fronts and end panels get no hinges, an end panel no pull",
     {HANGED},
     "id,use,width,height\nF1,drawer front,18,10\nF2,false front,18,10\nE1,end panel,18,30\n",
     {LEAF(0, hinges, NULL), LEAF(0, pulls, "1"), LEAF(1, hinges, NULL), LEAF(1, pulls, "1"),
      LEAF(2, hinges, NULL), LEAF(2, pulls, NULL)}},
};

static const struct bench_case mm_cases[] = {
    {"443.5 x 670 of 27 mm",
     {"make|finish = painted\nhinge = hinge"},
     "id,count,leaves,width,height\nD1,1,2,443.5,670\n",
     {PART(0, net, "0.001085"), PART(1, net, "0.000556"), PART(2, net, "0.000649"),
      LEAF(0, uses[0].net, "0.003375"), PART(3, area, "0.1906"), LEAF(0, face, "0.2971"),
      LEAF(0, edges, "0.0445"), LEAF(0, sprayed, "0.6387"), PART(0, weight, "0.38"),
      PART(1, weight, "0.19"), PART(2, weight, "0.23"), PART(3, weight, "0.69"),
      LEAF(0, weight, "1.87"), LEAF(0, hinges, "2"), LEAF(0, driver[DRIVER_FRAME_RUN], "2.027"),
      LEAF(0, driver[DRIVER_EDGE_RUN], "2.227")}},
    {"lumber by the board foot in a metric shop: 27 x 304.8 x 304.8 / 2359737.216",
     {"make|style = slab\nslab = poplar", "lumber poplar|price = 4.00 per bf",
      "door slab|thickness = 20"},
     "F1,304.8,304.8\n",
     {PART(0, net, "1.0630")}},
    {"under 25.4 mm counts as one inch where it is sold by the board foot",
     {"make|style = slab\nslab = poplar", "lumber poplar|price = 4.00 per bf\nthickness = 20 mm",
      "door slab|thickness = 18"},
     "F1,304.8,304.8\n",
     {PART(0, net, "1")}},
    {"and as it is where it is sold by the cubic meter",
     {"make|style = slab\nslab = poplar", "lumber poplar|thickness = 20 mm",
      "door slab|thickness = 18"},
     "F1,500,500\n",
     {PART(0, net, "0.005")}},
};

static void test_inches(void **state) {
    (void)state;
    bench_run(inch_cases, COUNT(inch_cases), BENCH_INCH);
}

static void test_hinges(void **state) {
    (void)state;
    bench_run(hinge_cases, COUNT(hinge_cases), BENCH_INCH);
}

static void test_mm(void **state) {
    (void)state;
    bench_run(mm_cases, COUNT(mm_cases), BENCH_MM);
}

/* What of the door is too small is said: its width or its height. */
static void test_too_small(void **state) {
    (void)state;
    static const struct {
        const char *doors, *said;
    } cases[] = {
        {"D1,4 1/2,30\n", "the door is 4 1/2 in wide, its frame alone takes 4 1/2 in"},
        {"D1,18,4 1/2\n", "the door is 4 1/2 in high, its frame alone takes 4 1/2 in"},
        /* a 64th shared by six columns */
        {"id,width,height,mid stiles\nD1,15 49/64,30,5\n",
         "the door is 15 49/64 in wide, its frame alone takes 15 3/4 in"},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        const char *const edits[BENCH_MOST_EDITS] = {NULL};
        bench_open(&bench, cases[i].said, BENCH_INCH, edits, cases[i].doors);
        bool said = false;
        for (size_t p = 0; p < bench.problems.count; p++) {
            said = said || strstr(bench.problems.list[p].text, cases[i].said) != NULL;
        }
        if (!said) {
            bench_wrong(&bench, "not said");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* A fraction that no rule shows is asked about; what a spreadsheet makes of 1/16 is one. */
static void test_fractions(void **state) {
    (void)state;
    static const struct {
        const char *doors;
        bool asked;
    } cases[] = {
        {"D1,14 1/16,30\n", false},
        {"D1,14 63/64,30\n", false},
        {"D1,14 1/9,30\n", true},
        {"D1,14 1/5,30\n", true},
        {"D1,14 1/3,30\n", true},
        {"D1,14 5/7,30\n", true},
        {"D1,1 1/3 ft,30\n", false},
        {"D1,14 \xE2\x85\x93,30\n", true},
        {"D1,14 \xE2\x85\x9B,30\n", false},
        {"D1,1\xE2\x85\x93 ft,30\n", false},
        {"D1,14,2' 6 1/3\n", true},
        {"id,width,height,gap\nD1,14,30,1/16\n", false},
        {"id,width,height,gap\nD1,14,30,1/9\n", true},
        {"id,width,height,overlay right\nD1,14,30,1/3\n", true},
        {"id,width,height,reveal\nD1,14,30,1/42\n", false},
        {"id,width,height,rows\nD1,14,30,12 1/5 | 12\n", true},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        const char *const edits[BENCH_MOST_EDITS] = {NULL};
        bench_open(&bench, cases[i].doors, BENCH_INCH, edits, cases[i].doors);
        if (bench_has(&bench, "odd-fraction") != cases[i].asked) {
            bench_wrong(&bench, cases[i].asked ? "not asked about" : "asked about");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Rows and rails may miss the height by less than what sizes are cut to, and by no more. */
static void test_rows_as_high(void **state) {
    (void)state;
    static const struct {
        const char *doors;
        enum bench_unit unit;
        bool refused;
    } cases[] = {
        {"D1,18,30,12 | 11 1/4\n", BENCH_INCH, false},
        {"D1,18,30,12 | 285.95 mm\n", BENCH_INCH, false}, /* 0.2 over 11 1/4 in */
        {"D1,18,30,12 | 285.55 mm\n", BENCH_INCH, false},
        {"D1,18,30,12 | 11 17/64\n", BENCH_INCH, true},
        {"D1,18,30,12 | 11 15/64\n", BENCH_INCH, true},
        {"D1,400,700,300 | 210\n", BENCH_MM, false},
        {"D1,400,700,300 | 210.2\n", BENCH_MM, true},
        {"D1,400,700,300 | 210.1\n", BENCH_MM, true},
        {"D1,400,700,300 | 209.9\n", BENCH_MM, true},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        char doors[128];
        struct bench bench;
        (void)snprintf(doors, sizeof doors, "id,width,height,rows\n%s", cases[i].doors);
        bench_open(&bench, cases[i].doors, cases[i].unit, NULL, doors);
        if (bench_has(&bench, "rows-and-height") != cases[i].refused) {
            bench_wrong(&bench, cases[i].refused ? "not refused" : "refused");
        }
        /* panels are higher by two tongues less the clearance; the last takes what remains */
        const bool inch = cases[i].unit == BENCH_INCH;
        size_t panels = 0;
        for (size_t k = 0; !cases[i].refused && k < bench.estimate.doors.doors[0].part_count; k++) {
            const struct part *const part = &bench.estimate.doors.doors[0].parts[k];
            const length high[] = {inch ? 808 * NM_PER_64TH : 318 * NM_PER_MM,
                                   inch ? 760 * NM_PER_64TH : 228 * NM_PER_MM};
            if (part->kind == PART_PANEL && (panels == 2 || part->length != high[panels++])) {
                bench_wrong(&bench, "panel %zu is %lld nm high", panels, (long long)part->length);
            }
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* A figure tells the cell that it is from, or the row where there is none. */
static void test_places(void **state) {
    (void)state;
    struct bench bench;
    const char *const edits[BENCH_MOST_EDITS] = {HANGED};
    bench_open(&bench, "places", BENCH_INCH, edits,
               "id,width,height,pulls\nD1,18,30,2\nD2,18,40,\n");
    bench_sound(&bench);
    const struct tape *const tape = &bench.estimate.tape;
    const struct leaf_figures *const leaves = bench.estimate.quantities.leaves;
    const struct place cell = tape_origin(tape, leaves[0].pulls).place;
    const struct place row = tape_origin(tape, leaves[1].pulls).place;
    assert_int_equal(cell.line, 2);
    assert_int_equal(cell.column, bench.job.rows[0].pulls.place.column);
    assert_int_equal(row.line, 3);
    assert_int_equal(row.column, bench.job.rows[1].place.column);
    assert_string_equal(tape_label(tape, leaves[0].leaves), "leaves");
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_too_small),    cmocka_unit_test(test_fractions),
        cmocka_unit_test(test_inches),       cmocka_unit_test(test_hinges),
        cmocka_unit_test(test_mm),           cmocka_unit_test(test_places),
        cmocka_unit_test(test_rows_as_high),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
