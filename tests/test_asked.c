/* SPDX-License-Identifier: MIT */
/* Questions at their limits: just there nothing is asked, a step beyond it is, in these words. */
#include "questions.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define HEAD  "id,width,height\n"
#define FOUR  HEAD "A,18,30\nB,18,30\nC,18,30\nD,18,30\n"
#define FAR   "size-far-from-rest"
#define ALIKE "nearly-alike"

static const struct asked_case size_cases[] = {
    {"three times the middle", BENCH_INCH, {NULL}, FOUR "E,54,30\n", FAR, NULL},
    {"and a 64th more",
     BENCH_INCH,
     {NULL},
     FOUR "E,54 1/64,30\n",
     FAR,
     "door 'E' is 54 1/64 wide, the middle one of its kind 18; is that so, or a slip of the pen?"},
    {"a third of it", BENCH_INCH, {NULL}, FOUR "E,18,10\n", FAR, NULL},
    {"and a 64th less",
     BENCH_INCH,
     {NULL},
     FOUR "E,18,9 63/64\n",
     FAR,
     "door 'E' is 9 63/64 high, the middle one of its kind 30; is that so, or a slip of the pen?"},
    {"four have no middle",
     BENCH_INCH,
     {NULL},
     HEAD "A,18,30\nB,18,30\nC,18,30\nD,60,30\n",
     FAR,
     NULL},
    {"the middle of five that differ, in any order",
     BENCH_INCH,
     {NULL},
     HEAD "A,40,30\nB,12,30\nC,60 1/64,30\nD,20,30\nE,15,30\n",
     FAR,
     "door 'C' is 60 1/64 wide, the middle one of its kind 20; is that so, or a slip of the pen?"},
    {"fronts are another kind",
     BENCH_INCH,
     {NULL},
     "id,use,width,height\nA,,18,30\nB,,18,30\nC,,18,30\nD,,18,30\nF,drawer front,60,30\n",
     FAR,
     NULL},
    {"1/16 apart",
     BENCH_INCH,
     {NULL},
     HEAD "A,18,30\nB,18 1/16,30\n",
     ALIKE,
     "door 'B' is 18 1/16 wide and door 'A' 18; one size, or two?"},
    {"in height, the first of the list is named",
     BENCH_INCH,
     {NULL},
     HEAD "A,18,30\nB,18,30\nC,18,29 15/16\n",
     ALIKE,
     "door 'C' is 29 15/16 high and door 'A' 30; one size, or two?"},
    {"no two that are the same", BENCH_INCH, {NULL}, HEAD "A,18,30\nB,18,30\n", ALIKE, NULL},
    {"a 64th more", BENCH_INCH, {NULL}, HEAD "A,18,30\nB,18 9/64,30\n", ALIKE, NULL},
    {"in height", BENCH_INCH, {NULL}, HEAD "A,18,30\nB,18,30 5/64\n", ALIKE, NULL},
    {"both a little", BENCH_INCH, {NULL}, HEAD "A,18,30\nB,18 1/16,30 5/64\n", ALIKE, NULL},
    {"one leaf and one of a pair, whose openings are not alike",
     BENCH_INCH,
     {"make|measure = opening\noverlay = 1/2\ngap = 1/8"},
     "id,width,height,leaves\nA,18,30,1\nB,37 1/16,30,2\n",
     ALIKE,
     "door 'B' is made 18 31/32 wide and door 'A' 19; one size, or two?"},
    {"one of each style",
     BENCH_INCH,
     {NULL},
     "id,width,height,style\nA,18,30,plain\nB,18 1/16,30,dowelled\n",
     ALIKE,
     NULL},
    {"a door and a front",
     BENCH_INCH,
     {NULL},
     "id,use,width,height\nA,,18,30\nB,drawer front,18 1/16,30\n",
     ALIKE,
     NULL},
    {"2 mm apart",
     BENCH_MM,
     {NULL},
     HEAD "A,400,700\nB,402,700\n",
     ALIKE,
     "door 'B' is 402 wide and door 'A' 400; one size, or two?"},
    {"a tenth more", BENCH_MM, {NULL}, HEAD "A,400,700\nB,402.1,700\n", ALIKE, NULL},
};

#define WIDE "leaf-wide"
#define HIGH "panel-high"
#define SLIT "opening-slit"
#define MOST "limits|widest leaf = 24\nhighest panel = 45"

#define SOLID "make|style = solid\npanel = poplar"
#define SOLID_MM                                                                                   \
    "door solid|kind = solid\njoint = dowel\nthickness = 20\nstile = 60\ngroove = 10\n"            \
    "panel clearance = 1\nclearance across = 2"

static const struct asked_case panel_cases[] = {
    /* poplar moves by 0.00289 a percent: 14 x 0.00289 x (20.5 - 7) */
    {"swells more than there is room",
     BENCH_INCH,
     {SOLID, "climate|driest = 30 %\nwettest = 90 %\nmoisture = 7 %"},
     HEAD "A,18,30\n",
     "panel-no-room",
     "the solid panel of door 'A', 14 in across the grain, swells by 0.546 in in the wettest air "
     "and "
     "has 0.250 in of room; give it more clearance across, or a deeper groove"},
    /* 14 x 0.00289 x (14 - 1.3) */
    {"shrinks out of its grooves",
     BENCH_INCH,
     {SOLID, "climate|driest = 5 %\nwettest = 60 %\nmoisture = 14 %"},
     HEAD "A,18,30\n",
     "panel-comes-out",
     "the solid panel of door 'A', 14 in across the grain, shrinks by 0.514 in in the driest air "
     "and "
     "stands 0.500 in in its grooves; make the grooves deeper, or the panel of two"},
    {"neither",
     BENCH_INCH,
     {SOLID, "climate|driest = 30 %\nwettest = 60 %\nmoisture = 7 %"},
     HEAD "A,18,30\n",
     "panel-no-room",
     NULL},
    /* 7 x 0.00289 x (20.5 - 8.1421) is 0.25, as the clearances are */
    {"swells just into its room",
     BENCH_INCH,
     {SOLID, "climate|driest = 30 %\nwettest = 90 %\nmoisture = 8.1421 %"},
     HEAD "A,11,30\n",
     "panel-no-room",
     NULL},
    {"swells by a hair more",
     BENCH_INCH,
     {SOLID, "climate|driest = 30 %\nwettest = 90 %\nmoisture = 8.142 %"},
     HEAD "A,11,30\n",
     "panel-no-room",
     "the solid panel of door 'A', 7 in across the grain, swells by 0.250 in in the wettest air "
     "and "
     "has 0.250 in of room; give it more clearance across, or a deeper groove"},
    /* 7 x 0.00289 x (13.6579 - 1.3) is 0.25, as deep as it stands */
    {"shrinks just out of its grooves",
     BENCH_INCH,
     {SOLID, "door solid|groove = 1/4",
      "climate|driest = 5 %\nwettest = 60 %\nmoisture = 13.6579 %"},
     HEAD "A,11 1/4,30\n",
     "panel-comes-out",
     "the solid panel of door 'A', 7 in across the grain, shrinks by 0.250 in in the driest air "
     "and "
     "stands 0.250 in in its grooves; make the grooves deeper, or the panel of two"},
    {"stays by a hair",
     BENCH_INCH,
     {SOLID, "door solid|groove = 1/4",
      "climate|driest = 5 %\nwettest = 60 %\nmoisture = 13.6578 %"},
     HEAD "A,11 1/4,30\n",
     "panel-comes-out",
     NULL},
    /* 14 x 0.0033 x (20.5 - 7): the first wood of the table */
    {"basswood",
     BENCH_INCH,
     {SOLID, "climate|driest = 30 %\nwettest = 90 %\nmoisture = 7 %",
      "lumber poplar|species = american-basswood"},
     HEAD "A,18,30\n",
     "panel-no-room",
     "the solid panel of door 'A', 14 in across the grain, swells by 0.624 in in the wettest air "
     "and "
     "has 0.250 in of room; give it more clearance across, or a deeper groove"},
    /* 396 x 0.00289 x (16 - 7) */
    {"metric, no room",
     BENCH_MM,
     {SOLID, SOLID_MM, "climate|driest = 30 %\nwettest = 80 %\nmoisture = 7 %"},
     HEAD "A,500,700\n",
     "panel-no-room",
     "the solid panel of door 'A', 396 mm across the grain, swells by 10.3 mm in the wettest air "
     "and "
     "has 4.0 mm of room; give it more clearance across, or a deeper groove"},
};

static const struct asked_case door_cases[] = {
    {"as wide as a leaf may be", BENCH_INCH, {MOST}, HEAD "A,24,30\n", WIDE, NULL},
    {"wider",
     BENCH_INCH,
     {MOST},
     HEAD "A,24 1/64,30\n",
     WIDE,
     "door 'A' is 24 1/64 wide, more than the shop's 24 for one leaf; a pair, or a mid stile?"},
    {"with a mid stile", BENCH_INCH, {MOST}, "id,width,height,mid stiles\nA,30,30,1\n", WIDE, NULL},
    {"a slab", BENCH_INCH, {MOST, "make|style = slab"}, HEAD "A,30,30\n", WIDE, NULL},
    {"an end panel", BENCH_INCH, {MOST}, "id,use,width,height\nA,end panel,30,30\n", WIDE, NULL},
    {"no limit", BENCH_INCH, {NULL}, HEAD "A,30,60\n", WIDE, NULL},
    /* a panel is as high as its door less 4 1/2, plus twice 5/16 */
    {"as high as a panel may be", BENCH_INCH, {MOST}, HEAD "A,18,48 7/8\n", HIGH, NULL},
    {"higher",
     BENCH_INCH,
     {MOST},
     HEAD "A,18,48 57/64\n",
     HIGH,
     "the panel of door 'A' is 45 1/64 high, more than the shop's 45; a mid rail?"},
    {"a pane",
     BENCH_INCH,
     {MOST, "make|style = glazed"},
     HEAD "A,18,49 1/64\n",
     HIGH,
     "the panel of door 'A' is 45 1/64 high, more than the shop's 45; a mid rail?"},
    {"no limit of panels", BENCH_INCH, {NULL}, HEAD "A,18,60\n", HIGH, NULL},
    {"an inch between rails", BENCH_INCH, {NULL}, HEAD "A,18,5 1/2\n", SLIT, NULL},
    {"less",
     BENCH_INCH,
     {NULL},
     HEAD "A,18,5 31/64\n",
     SLIT,
     "door 'A' has only 63/64 between its rails; narrower ones, or a slab?"},
    {"an inch between stiles", BENCH_INCH, {NULL}, HEAD "A,5 1/2,18\n", SLIT, NULL},
    {"less, too",
     BENCH_INCH,
     {NULL},
     HEAD "A,5 31/64,18\n",
     SLIT,
     "door 'A' has only 63/64 between its stiles; narrower ones, or a slab?"},
    {"as high as the chart goes",
     BENCH_INCH,
     {"make|hinge = hinge"},
     HEAD "A,18,100\n",
     "hinges-beyond-chart",
     NULL},
    {"higher than it goes",
     BENCH_INCH,
     {"make|hinge = hinge"},
     HEAD "A,18,100 1/64\n",
     "hinges-beyond-chart",
     "the hinged edge of door 'A' is 100 1/64, the chart of [hinges] ends at 100: its last count "
     "is "
     "taken; ask the maker of the hinge"},
};

#define BOARDS "lumber poplar|board lengths = 6 ft, 8 ft\nboard widths = 4, 5\nend trim = 2"
#define SLABS  "make|style = slab\nslab = poplar"
#define SHEETS "make|style = slab", "sheet board|edge trim = 1/4"
#define GRAIN  "make|style = slab", "sheet board|edge trim = 1/4\ngrain = length"

#define CUTS                                                                                       \
    "make|style = slab", "sheet board|half sheet = 45.00", "shop|operations = saw it",             \
        "operation saw it|per = cut\nminutes = 1"
#define BUYS(factor, plan)                                                                         \
    "the waste of 'board' buys " factor ", and its cutting plan needs " plan                       \
    "; buy by the plan, and price sheets by plan or raise the waste"
static const struct asked_case stock_cases[] = {
    {"as thick as its lumber",
     BENCH_INCH,
     {"door plain|thickness = 1"},
     HEAD "A,18,30\n",
     "part-too-thick",
     NULL},
    {"thicker",
     BENCH_INCH,
     {"door plain|thickness = 1 1/64"},
     HEAD "A,18,30\n",
     "part-too-thick",
     "a stile is 1 1/64 thick and its lumber 1; name thicker lumber, or a thinner door"},
    /* rough an inch longer than finished; 8 ft less both ends are 92 */
    {"as long as a board gives", BENCH_INCH, {BOARDS}, HEAD "A,18,91\n", "part-too-long", NULL},
    {"longer",
     BENCH_INCH,
     {BOARDS},
     HEAD "A,18,91 1/64\n",
     "part-too-long",
     "a stile is 92 1/64 long, rough, and the longest board stocked gives 92; order longer boards "
     "for it"},
    /* rough 1/8 wider than finished */
    {"as wide as a board is",
     BENCH_INCH,
     {SLABS, BOARDS},
     HEAD "A,4 7/8,30\n",
     "part-too-wide",
     NULL},
    {"wider",
     BENCH_INCH,
     {SLABS, BOARDS},
     HEAD "A,4 57/64,30\n",
     "part-too-wide",
     "a slab is 5 1/64 wide, rough, and the widest board stocked is 5; glue it up (a 'stave' of "
     "its "
     "style), or order wider boards"},
    {"glued up",
     BENCH_INCH,
     {SLABS, BOARDS, "door slab|stave = 4"},
     HEAD "A,8,30\n",
     "part-too-wide",
     NULL},
    /* a sheet of 48 x 96 gives 47 1/2 x 95 1/2 */
    {"as large as a sheet gives",
     BENCH_INCH,
     {SHEETS},
     HEAD "A,47 1/2,95 1/2\n",
     "panel-over-sheet",
     NULL},
    {"turned", BENCH_INCH, {SHEETS}, HEAD "A,95 1/2,47 1/2\n", "panel-over-sheet", NULL},
    {"turned against the grain",
     BENCH_INCH,
     {GRAIN},
     HEAD "A,95 1/2,47 1/2\n",
     "panel-over-sheet",
     "a slab is 95 1/2 wide across the grain and its sheet gives 47 1/2; name a larger sheet, turn "
     "the grain, or make it of two"},
    {"too long",
     BENCH_INCH,
     {SHEETS},
     HEAD "A,47 1/2,95 33/64\n",
     "panel-over-sheet",
     "a slab is 95 33/64 long and its sheet gives 95 1/2; name a larger sheet, or make it of two"},
    {"too wide, turned too long",
     BENCH_INCH,
     {SHEETS},
     HEAD "A,47 33/64,95 1/2\n",
     "panel-over-sheet",
     "a slab is 47 33/64 wide and its sheet gives 47 1/2; name a larger sheet, or make it of two"},
    {"turned too wide",
     BENCH_INCH,
     {SHEETS},
     HEAD "A,95 1/2,47 33/64\n",
     "panel-over-sheet",
     "a slab is 95 1/2 wide and its sheet gives 47 1/2; name a larger sheet, or make it of two"},
    /* 13 8/9 of 32 sq ft each, and no two in a sheet */
    {"half a sheet is too small for the plan",
     BENCH_INCH,
     {CUTS},
     "id,count,width,height\nA,1,40,50\n",
     "plan-over-factor",
     BUYS("half a sheet", "1 sheet")},
    {"so is one sheet",
     BENCH_INCH,
     {CUTS},
     "id,count,width,height\nA,2,40,50\n",
     "plan-over-factor",
     BUYS("1 sheet", "2 sheets")},
    {"so is one and a half",
     BENCH_INCH,
     {CUTS},
     "id,count,width,height\nA,3,40,50\n",
     "plan-over-factor",
     BUYS("1 sheet and a half", "3 sheets")},
    {"as much as the plan needs",
     BENCH_INCH,
     {CUTS},
     "id,count,width,height\nA,1,47,90\n",
     "plan-over-factor",
     NULL},
};

#define THICK  "film-thick"
#define LIFE   "pot-life-short"
#define SLAB   "make|style = slab\nfinish = painted", "finish painted|faces = none"
#define GUN    "finish painted|operations = spray", ("operation spray|machine = sander\n" PER)
#define PER    "per = sqft sprayed per coat\nminutes = 1"
#define DRUM   "door plain|operations = drum", "operation drum|machine = sander\nper = door\n"
#define TOO    "too-wide-for-machine"
#define FEW(n) "id,count,width,height\nA," #n ",48,48\n" /* a square foot of edges each */

#define NO_EFFECT "without-effect"
#define BORE      "operation bore|per = door\nminutes = 1"
#define ALSO      "id,width,height,also\nA,18,30,bore\n"
#define NOT_BORE(why)                                                                              \
    "operation 'bore' has no effect here: " why "; take it away, or check what it is counted by"
static const struct asked_case work_cases[] = {
    {"as thick as may be",
     BENCH_INCH,
     {"make|finish = painted", "limits|dry film = 3 mil",
      "coating paint|wet film = 6 mil\nsolids = 50 %"},
     HEAD "A,18,30\n",
     THICK,
     NULL},
    {"thicker",
     BENCH_INCH,
     {"make|finish = painted", "limits|dry film = 3 mil",
      "coating paint|wet film = 6.2 mil\nsolids = 50 %"},
     HEAD "A,18,30\n",
     THICK,
     "finish 'painted' is 3.1 mil dry in all, more than the shop's 3.0; most data sheets warn of "
     "thick films: fewer or thinner coats?"},
    {"thicker by a hundredth",
     BENCH_INCH,
     {"make|finish = painted", "limits|dry film = 3 mil",
      "coating paint|wet film = 6.02 mil\nsolids = 50 %"},
     HEAD "A,18,30\n",
     THICK,
     "finish 'painted' is 3.0 mil dry in all, more than the shop's 3.0; most data sheets warn of "
     "thick films: fewer or thinner coats?"},
    {"metric, as thick as may be",
     BENCH_MM,
     {"make|finish = painted", "limits|dry film = 75 um",
      "coating paint|wet film = 150 um\nsolids = 50 %"},
     HEAD "A,400,700\n",
     THICK,
     NULL},
    {"metric, thicker",
     BENCH_MM,
     {"make|finish = painted", "limits|dry film = 75 um",
      "coating paint|wet film = 152 um\nsolids = 50 %"},
     HEAD "A,400,700\n",
     THICK,
     "finish 'painted' is 76.0 um dry in all, more than the shop's 75.0; most data sheets warn of "
     "thick films: fewer or thinner coats?"},
    {"an hour at the gun of a mix that keeps an hour",
     BENCH_INCH,
     {SLAB, GUN, "coating paint|pot life = 1.0 hours"},
     FEW(60),
     LIFE,
     NULL},
    {"a minute more",
     BENCH_INCH,
     {SLAB, GUN, "coating paint|pot life = 1.0 hours"},
     FEW(61),
     LIFE,
     "a mix of 'paint' takes 61 minutes to spray and keeps 1.0 hours; mix less at once (a smaller "
     "'mix size')"},
    {"a hundredth of a minute more",
     BENCH_INCH,
     {SLAB, "finish painted|operations = spray",
      "operation spray|machine = sander\nper = sqft sprayed per coat\nminutes = 0.01",
      "coating paint|pot life = 1 hours"},
     FEW(6001),
     LIFE,
     "a mix of 'paint' takes 60 minutes to spray and keeps 1 hours; mix less at once (a smaller "
     "'mix size')"},
    {"two coats are two mixes",
     BENCH_INCH,
     {SLAB, GUN, "finish painted|coats = paint x 2", "coating paint|pot life = 1 hours"},
     FEW(60),
     LIFE,
     NULL},
    {"of an hour each",
     BENCH_INCH,
     {SLAB, GUN, "finish painted|coats = paint x 2", "coating paint|pot life = 1 hours"},
     FEW(61),
     LIFE,
     "a mix of 'paint' takes 61 minutes to spray and keeps 1 hours; mix less at once (a smaller "
     "'mix size')"},
    {"a coat that is wiped on takes nothing of the time at the gun",
     BENCH_INCH,
     {SLAB, GUN, "finish painted|coats = stain x 1, paint x 1",
      "coating stain|coverage = 400 sqft per gal theoretical\nput on = rag\nsizes = 1 gal at 60",
      "spray rag|transfer efficiency = 80 %\nby hand = yes", "coating paint|pot life = 1 hours"},
     FEW(61),
     LIFE,
     "a mix of 'paint' takes 61 minutes to spray and keeps 1 hours; mix less at once (a smaller "
     "'mix size')"},
    {"in two mixes half an hour each",
     BENCH_INCH,
     {SLAB, GUN, "coating paint|pot life = 1 hours", "spray gun|mix size = 16 fl oz"},
     FEW(61),
     LIFE,
     NULL},
    {"a row's own boring of its hinges",
     BENCH_INCH,
     {"make|hinge = hinge", "operation bore|per = hinge\nminutes = 1"},
     "id,width,height,also\nA,18,30,bore\n",
     "without-effect",
     NULL},
    {"and where it has none",
     BENCH_INCH,
     {"operation bore|per = hinge\nminutes = 1"},
     "id,width,height,also\nA,18,30,bore\n",
     "without-effect",
     "operation 'bore' has no effect here: the row has nothing that it is counted by; take it "
     "away, "
     "or check what it is counted by"},
    {"the row's style has it",
     BENCH_INCH,
     {BORE, "door plain|operations = bore"},
     ALSO,
     NO_EFFECT,
     NOT_BORE("the row's style or finish has it")},
    {"its finish, the first of all, has it",
     BENCH_INCH,
     {BORE, "make|finish = painted\ncolor = white", "finish painted|operations = bore"},
     ALSO,
     NO_EFFECT,
     NOT_BORE("the row's style or finish has it")},
    {"neither of them has it",
     BENCH_INCH,
     {BORE, "make|finish = painted\ncolor = white"},
     ALSO,
     NO_EFFECT,
     NULL},
    {"every door has it by the shop",
     BENCH_INCH,
     {BORE, "shop|operations = bore"},
     ALSO,
     NO_EFFECT,
     NOT_BORE("every door has it")},
    {"every door has it by the job",
     BENCH_INCH,
     {BORE, "job|also = bore"},
     ALSO,
     NO_EFFECT,
     NOT_BORE("every door has it")},
    {"the job asks for what the shop does",
     BENCH_INCH,
     {BORE, "job|also = bore", "shop|operations = bore"},
     HEAD "A,18,30\n",
     NO_EFFECT,
     NOT_BORE("the shop has it for every job")},
    {"the job asks for what no door has",
     BENCH_INCH,
     {"operation bore|per = hinge\nminutes = 1", "job|also = bore"},
     HEAD "A,18,30\n",
     NO_EFFECT,
     NOT_BORE("no door has what it is counted by")},
    {"as wide as a closed machine takes",
     BENCH_INCH,
     {DRUM "minutes = 1\ncapacity = 16"},
     HEAD "A,16,30\n",
     TOO,
     NULL},
    {"as wide as twice an open one",
     BENCH_INCH,
     {DRUM "minutes = 1\ncapacity = 16, one side open"},
     HEAD "A,32,40\n",
     TOO,
     NULL},
    {"wider than a closed one",
     BENCH_INCH,
     {DRUM "minutes = 1\ncapacity = 16"},
     HEAD "A,16 1/64,30\n",
     TOO,
     "door 'A' is 16 1/64 across and operation 'drum' takes at most 16; its minutes are counted as "
     "two passes, plan another way for it"},
    {"wider than twice an open one",
     BENCH_INCH,
     {DRUM "minutes = 1\ncapacity = 16, one side open"},
     HEAD "A,32 1/64,40\n",
     TOO,
     "door 'A' is 32 1/64 across and operation 'drum' takes at most 32; its minutes are counted as "
     "two passes, plan another way for it"},
};

static void test_sizes(void **state) {
    (void)state;
    asked_run(size_cases, COUNT(size_cases));
}

static void test_doors(void **state) {
    (void)state;
    asked_run(door_cases, COUNT(door_cases));
    asked_run(panel_cases, COUNT(panel_cases));
}

static void test_stock(void **state) {
    (void)state;
    asked_run(stock_cases, COUNT(stock_cases));
}

static void test_work(void **state) {
    (void)state;
    asked_run(work_cases, COUNT(work_cases));
}

/* Twenty are named, of more it is told how many: pairs 1/64 apart, each an inch from the next. */
static void test_many_alike(void **state) {
    (void)state;
    static const struct {
        int pairs;
        const char *last;
    } cases[] = {
        {20, "door 'B119' is 39 1/64 wide and door 'A119' 39; one size, or two?"},
        {21, "1 more size is nearly as large as another; sort the list by size to see them"},
        {23, "3 more sizes are nearly as large as others; sort the list by size to see them"},
    };
    for (size_t i = 0; i < COUNT(cases); i++) {
        char doors[4096];
        const char *last = NULL;
        struct bench bench;
        size_t size = (size_t)snprintf(doors, sizeof doors, HEAD);
        for (int n = 0; n < cases[i].pairs; n++) {
            size +=
                (size_t)snprintf(doors + size, sizeof doors - size, "A%d,%d,30\nB%d,%d 1/64,30\n",
                                 100 + n, 20 + n, 100 + n, 20 + n);
        }
        bench_open(&bench, "many", BENCH_INCH, NULL, doors);
        for (size_t p = 0; p < bench.problems.count; p++) {
            if (strcmp(bench.problems.list[p].id, ALIKE) == 0) {
                last = bench.problems.list[p].text;
            }
        }
        assert_non_null(last);
        assert_string_equal(last, cases[i].last);
        assert_int_equal(bench_close(&bench), 0);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_sizes), cmocka_unit_test(test_doors),
                                       cmocka_unit_test(test_stock), cmocka_unit_test(test_work),
                                       cmocka_unit_test(test_many_alike)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
