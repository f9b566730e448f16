/* SPDX-License-Identifier: MIT */
/* What is on the rack is used first: the rest that is bought, worked out by hand. */
#include "model/limits.h"
#include "support.h"

#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define RACK "rack-of-test.csv" /* in the folder of the test */
#define SLAB "make|style = slab"
/* Stands for the key that names it by its whole path. */
#define STOCK    "shop|stock"
#define AT_STOCK 1 /* its place among the edits */
/* A square foot of edges each: a hundred of them take 100 / 401 gal at 4 mil, 0.2494. */
#define BY_PLAN        "shop|price sheets by = plan"
#define NO_KERF        "saw|kerf = 0"
#define GRAIN          "sheet board|grain = length"
#define TRIM           "sheet board|edge trim = 1/2"
#define FEET(n)        "id,count,width,height\nS1," #n ",12,12\n" /* slabs of a square foot */
#define BOARDS         "lumber poplar|board widths = 6\nboard lengths = 8 ft"
#define LUMBER_BY_PLAN "shop|price lumber by = plan"
#define DOORS(n)       "id,count,width,height\nD1," #n ",18,30\n"
#define EDGES          "id,count,width,height\nD1,100,48,48\n"

static const struct rack_case {
    const char *rack;
    struct bench_case bench;
} cases[] = {
    /* 10 doors take 20 hinges at 3.00; 12 are there, worth 6.00: 8 are bought */
    {"what,left,worth\nhinge,12,6.00\n",
     {"hinges of the rack",
      {(SLAB "\nhinge = hinge"), STOCK},
      "id,count,width,height\nD1,10,18,30\n",
      {HARDWARE(0, from_rack, "12"), HARDWARE(0, to_buy, "8"), HARDWARE(0, bought, "8"),
       HARDWARE(0, cost, "24"), HARDWARE(0, charged, "30"), PURCHASE(spent[COST_HARDWARE], "24")}}},
    /* of 30 worth 6.00 twenty are 4.00 */
    {"what,left,worth\nhinge,30,6.00\n",
     {"all hinges of the rack",
      {(SLAB "\nhinge = hinge"), STOCK},
      "id,count,width,height\nD1,10,18,30\n",
      {HARDWARE(0, from_rack, "20"), HARDWARE(0, bought, "0"), HARDWARE(0, cost, "0"),
       HARDWARE(0, charged, "4")}}},
    /* 20 less 9 are 11, two packs of 10 at 25.00; charged 11 of 10 */
    {"what,left\nhinge,9\n",
     {"the rest in packs",
      {(SLAB "\nhinge = hinge"), STOCK, "hardware hinge|price = 25.00 per pack\npack = 10"},
      "id,count,width,height\nD1,10,18,30\n",
      {HARDWARE(0, packs, "2"), HARDWARE(0, bought, "20"), HARDWARE(0, cost, "50"),
       HARDWARE(0, charged, "27.5")}}},
    /* a piece that is pull and is listed: 10 of 14 go to the pulls, 4 to the others */
    {"what,left\npull,14\n",
     {"two roles share what is there",
      {(SLAB "\npull = pull\nhardware = 1 pull"), STOCK},
      "id,count,width,height\nD1,10,18,30\n",
      {HARDWARE(0, from_rack, "10"), HARDWARE(0, bought, "0"), HARDWARE(1, from_rack, "4"),
       HARDWARE(1, bought, "6")}}},
    /* 0.2494 of 0.5 gal worth 10.00 are 4.99; nothing is bought */
    {"what,left,worth\npaint,0.5 gal,10.00\n",
     {"a can of the rack is enough",
      {(SLAB "\nfinish = painted"), STOCK, "finish painted|faces = none",
       "spray gun|transfer efficiency = 100 %"},
      EDGES,
      {PRODUCT(0, from_rack, "0.2494"), PRODUCT(0, to_buy, "0"), PRODUCT(0, bought, "0"),
       PRODUCT(0, left_over, "0"), PRODUCT(0, cost, "0"), PRODUCT(0, charged, "4.99")}}},
    /* 0.2494 less 0.1 are 0.1494 of a can of 1 gal at 100.00 */
    {"what,left\npaint,0.1 gal\n",
     {"a can of the rack is not enough",
      {(SLAB "\nfinish = painted"), STOCK, "finish painted|faces = none",
       "spray gun|transfer efficiency = 100 %"},
      EDGES,
      {PRODUCT(0, from_rack, "0.1"), PRODUCT(0, to_buy, "0.1494"), PRODUCT(0, bought, "1"),
       PRODUCT(0, left_over, "0.8506"), PRODUCT(0, cost, "100"), PRODUCT(0, charged, "14.94")}}},
    {"what,left\npaint,0 gal\n",
     {"a can of the rack is empty",
      {(SLAB "\nfinish = painted"), STOCK, "finish painted|faces = none",
       "spray gun|transfer efficiency = 100 %"},
      EDGES,
      {PRODUCT(0, from_rack, "0"), PRODUCT(0, to_buy, "0.2494"), PRODUCT(0, bought, "1"),
       PRODUCT(0, charged, "24.94")}}},
    /* white is there, green is needed */
    {"what,color,left\npaint,white,1 gal\n",
     {"another color is no help",
      {(SLAB "\nfinish = painted\ncolor = green"), STOCK, "finish painted|faces = none",
       "coating paint|tinted = yes", "spray gun|transfer efficiency = 100 %"},
      EDGES,
      {PRODUCT(0, from_rack, NULL), PRODUCT(0, bought, "1")}}},
    {"what,color,left\npaint,GREEN,1 gal\n",
     {"the color is there",
      {(SLAB "\nfinish = painted\ncolor = green"), STOCK, "finish painted|faces = none",
       "coating paint|tinted = yes", "spray gun|transfer efficiency = 100 %"},
      EDGES,
      {PRODUCT(0, from_rack, "0.2494"), PRODUCT(0, bought, "0")}}},
    /* 33 slabs of a square foot: 32 on a sheet at 80.00, one of two offcuts worth 6.00 */
    {"what,width,length,left,worth\nboard,12,12,2,6.00\n",
     {"an offcut of the rack saves a sheet",
      {SLAB, STOCK, BY_PLAN, NO_KERF},
      FEET(33),
      {SHEET(0, by_plan.whole, "1"), SHEET(0, by_plan.from_rack, "1"), SHEET(0, by_plan.cost, "80"),
       SHEET(0, by_plan.bought, "32"), SHEET(0, by_plan.cut, "33"), SHEET(0, by_plan.yield, "100"),
       SHEET(0, less_rack, "-1"), SHEET(0, offcuts, "0"), SHEET(0, plan.rack.charged, "3"),
       SHEET(0, charged, "83"), SHEET(0, plan.gap, "0"), PURCHASE(spent[COST_SHEETS], "80")}}},
    /* the same charged by what is used: 33 of 34 slabs are on 64 sq ft for 160.00 */
    {"what,width,length,left\nboard,12,12,1\n",
     {"charged is the part of what is bought",
      {SLAB, STOCK, BY_PLAN "\ncharge sheets = used", NO_KERF},
      FEET(34),
      {SHEET(0, by_plan.whole, "2"), SHEET(0, by_plan.from_rack, "1"),
       SHEET(0, plan.sold_parts, "33"), SHEET(0, charged, "82.50")}}},
    /* a sheet of the rack is one that is not bought */
    {"what,left,worth\nboard,1,30.00\n",
     {"a whole sheet of the rack",
      {SLAB, STOCK, BY_PLAN, NO_KERF},
      FEET(64),
      {SHEET(0, by_plan.whole, "1"), SHEET(0, by_plan.from_rack, "1"), SHEET(0, charged, "110")}}},
    {"what,width,length,left\nboard,24,24,1\n",
     {"nothing is bought where the rack is enough",
      {SLAB, STOCK, BY_PLAN "\ncharge sheets = used", NO_KERF},
      FEET(4),
      {SHEET(0, by_plan.whole, "0"), SHEET(0, by_plan.from_rack, "1"), SHEET(0, by_plan.cost, "0"),
       SHEET(0, charged, "0"), SHEET(0, by_plan.yield, "100")}}},
    {"what,left,worth\nboard,1,90.00\n",
     {"what is worth more than a new sheet stays there",
      {SLAB, STOCK, BY_PLAN, NO_KERF},
      FEET(32),
      {SHEET(0, by_plan.whole, "1"), SHEET(0, by_plan.from_rack, "0"), SHEET(0, charged, "80")}}},
    /* two of 12 and a kerf of 1/8 take 24 1/8; edges are trimmed of whole sheets alone */
    {"what,width,length,left\nboard,24 1/8,24 1/8,1\n",
     {"a kerf between, and no edge trimmed of an offcut",
      {SLAB, STOCK, BY_PLAN, TRIM},
      FEET(4),
      {SHEET(0, by_plan.whole, "0"), SHEET(0, by_plan.from_rack, "1"), SHEET(0, plan.cuts, "3"),
       SHEET(0, plan.trim, "0")}}},
    {"what,width,length,left\nboard,24 1/16,24 1/8,1\n",
     {"too narrow by a sixteenth: two of four",
      {SLAB, STOCK, BY_PLAN},
      FEET(4),
      {SHEET(0, by_plan.whole, "1")}}},
    /* 47 x 95 of a whole sheet are left to cut, bought or not */
    {"what,left\nboard,1\n",
     {"edges of a whole sheet of the rack are trimmed",
      {SLAB, STOCK, BY_PLAN, TRIM},
      "id,count,width,height\nS1,1,47,95\n",
      {SHEET(0, by_plan.whole, "0"), SHEET(0, by_plan.from_rack, "1"), SHEET(0, plan.cuts, "4")}}},
    {"what,width,length,left\nboard,11,90,5\n",
     {"no part fits the offcuts",
      {SLAB, STOCK, BY_PLAN},
      FEET(1),
      {SHEET(0, by_plan.whole, "1"), SHEET(0, by_plan.from_rack, "0")}}},
    {"what,width,length,left\nboard,48,96,1\nboard,12,12,0\n",
     {"an offcut as large as the sheet is one; none is left of another",
      {SLAB, STOCK, BY_PLAN, TRIM},
      FEET(1),
      {SHEET(0, by_plan.whole, "0"), SHEET(0, by_plan.from_rack, "1"), SHEET(0, plan.cuts, "6")}}},
    {"what,width,length,left\nboard,96,48,1\n",
     {"turned, and as large as the sheet: one, whose edges are trimmed",
      {SLAB, STOCK, BY_PLAN, TRIM},
      FEET(1),
      {SHEET(0, by_plan.whole, "0"), SHEET(0, by_plan.from_rack, "1"), SHEET(0, plan.cuts, "6")}}},
    {"what,width,length,left\nboard,12,12,1\n",
     {"a factor knows no pieces",
      {SLAB, STOCK, NO_KERF},
      FEET(33),
      {SHEET(0, priced.whole, "2"), SHEET(0, by_plan.from_rack, NULL),
       SHEET(0, charged, "82.50")}}},
    /* A door has stiles of 31 and rails of 15 1/4, rough, all 2 3/8 wide: with three kerfs of 1/8
     * they are 92 7/8 long, and a board of 6 x 96, 4 bf at 4.00, holds two such strips. */
    {"what,width,length,sawn,left,worth\npoplar,2 3/8,92 7/8,yes,1,3.00\n",
     {"an offcut holds all, nothing is bought",
      {BOARDS "\nminimum = 10 bf", STOCK, LUMBER_BY_PLAN},
      DOORS(1),
      {LUMBER(0, by_plan.bought, "0"), LUMBER(0, by_factor.bought, "0"),
       LUMBER(0, by_plan.from_rack, "1.5318"), LUMBER(0, by_plan.cost, "0"),
       LUMBER(0, plan.rack.charged, "3"), LUMBER(0, with_rack, "3"), LUMBER(0, plan.boards, "1"),
       LUMBER(0, on_rack, "1.3830"), LUMBER(0, plan.gap, "0"), LUMBER(0, plan.measured, "1.5318"),
       PURCHASE(spent[COST_LUMBER], "0"), PURCHASE(board_feet, "0")}}},
    /* Of three strips one is on the rack: 439.38 of 659.06 sq in, rounded so, are bought, 3.0513 of
     * 4.5768 bf rough; 2.7661 of 4.1490 net, with 50 % waste. */
    {"what,width,length,sawn,left,worth\npoplar,2 3/8,93,yes,2,6.00\n",
     {"the factor buys what the plan does not cut of the rack",
      {BOARDS "\nwaste = 50 % added", STOCK},
      DOORS(3),
      {LUMBER(0, net, "4.1490"), LUMBER(0, on_rack, "1.3829"), LUMBER(0, with_waste, "4.1492"),
       LUMBER(0, by_factor.bought, "5"), LUMBER(0, by_plan.bought, "4"),
       LUMBER(0, priced.cost, "20"), LUMBER(0, plan.rack.pieces, "1"), LUMBER(0, with_rack, "23"),
       PURCHASE(spent[COST_LUMBER], "20"), LUMBER(0, less_rack, "-1.5339")}}},
    {"what,width,length,sawn,left,worth\npoplar,2 3/8,93,yes,2,6.00\n",
     {"what is bought is at least the minimum of the yard",
      {BOARDS "\nminimum = 10 bf", STOCK, LUMBER_BY_PLAN},
      DOORS(3),
      {LUMBER(0, by_plan.bought, "10"), LUMBER(0, priced.cost, "40"), LUMBER(0, over_plan, "6"),
       LUMBER(0, with_rack, "43")}}},
    /* two boards, 8 bf, and nothing less: 16.00 are saved by it */
    {"what,width,length,sawn,left,worth\npoplar,2 3/8,93,yes,1,16.50\n",
     {"what is worth more than the board that it saves stays there",
      {BOARDS, STOCK, LUMBER_BY_PLAN},
      DOORS(3),
      {LUMBER(0, plan.rack.pieces, "0"), LUMBER(0, by_plan.bought, "8"), LUMBER(0, with_rack, "32"),
       LUMBER(0, on_rack, "0")}}},
    /* 95 less two ends of 1, and no edges: as long as the strip */
    {"what,thickness,width,length,left\npoplar,4/4,2 3/8,94 7/8,1\n",
     {"ends of a whole board are trimmed",
      {BOARDS "\nend trim = 1", STOCK, LUMBER_BY_PLAN},
      DOORS(1),
      {LUMBER(0, plan.rack.pieces, "1"), LUMBER(0, by_plan.bought, "0")}}},
    {"what,thickness,width,length,left\npoplar,4/4,2 3/8,94 13/16,1\n",
     {"so one that is 1/16 shorter does not save a board",
      {BOARDS "\nend trim = 1", STOCK, LUMBER_BY_PLAN},
      DOORS(1),
      {LUMBER(0, by_plan.bought, "4")}}},
    /* a piece of 2 ft gives two rails; stiles fit the rack alone */
    {"what,width,length,sawn,left\npoplar,2 3/8,31,yes,2\n",
     {"what no board stocked holds is cut of the rack",
      {"lumber poplar|board widths = 6\nboard lengths = 2 ft", STOCK, LUMBER_BY_PLAN},
      DOORS(1),
      {LUMBER(0, plan.rack.pieces, "2"), LUMBER(0, by_plan.bought, "1"),
       LUMBER(0, priced.cost, "4")}}},
    {"what,width,length,left\npoplar,6,96,0\n",
     {"no board is left, and no plan is made for it",
      {BOARDS, STOCK},
      DOORS(1),
      {LUMBER(0, plan.boards, NULL), LUMBER(0, on_rack, NULL), LUMBER(0, by_factor.bought, "2")}}},
    {"what,left\nhinge,0\n",
     {"nothing is left of it",
      {(SLAB "\nhinge = hinge"), STOCK},
      "id,count,width,height\nD1,10,18,30\n",
      {HARDWARE(0, from_rack, "0"), HARDWARE(0, bought, "20"), HARDWARE(0, charged, "60")}}},
};

static void test_rack(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        bench_rack_write(RACK, cases[i].rack);
        struct bench_case own = cases[i].bench;
        assert_string_equal(own.edits[AT_STOCK], STOCK);
        own.edits[AT_STOCK] = bench_rack_edit(RACK);
        bench_run(&own, 1, BENCH_INCH);
    }
    (void)unlink(RACK);
}

/* As many sizes as a rack may have of one sheet, which is sold in halves too: a slab is cut of the
 * cheapest that holds it, the last of those that are worth less the smaller they are. */
static void test_most_sizes(void **state) {
    (void)state;
    char rack[8192] = "what,width,length,left,worth\n";
    for (int i = 0; i < MOST_RACK_SIZES; i++) {
        const size_t at = strlen(rack);
        (void)snprintf(rack + at, sizeof rack - at, "board,24,%d,1,%d.00\n", 95 - i, 60 - i);
    }
    bench_rack_write(RACK, rack);
    const struct bench_case sizes = {
        "the most sizes there may be",
        {SLAB, bench_rack_edit(RACK), BY_PLAN, "sheet board|half sheet = 60.00 per half sheet"},
        FEET(1),
        {SHEET(0, by_plan.whole, "0"), SHEET(0, by_plan.half, "0"),
         SHEET(0, by_plan.from_rack, "1"), SHEET(0, plan.rack.charged, "11")}};
    bench_run(&sizes, 1, BENCH_INCH);
    (void)unlink(RACK);
}

/* What can't be used is refused, once. */
static void test_refused(void **state) {
    (void)state;
    static const struct {
        const char *rack, *id;
    } wrong[] = {
        {"what,left\nclear,1\n", "rack-kind"},
        {"what,width,left\nboard,12,1\n", "missing-cell"},
        {"what,width,length,left\nhinge,12,12,1\n", "cell-unfit"},
        {"what,width,length,left\nboard,12,24,1\nboard,12,24,2\n", "rack-twice"},
        {"what,width,length,left\nboard,48,96,1\nboard,,,2\n", "rack-twice"},
        {"what,width,length,left\nboard,48,96 1/16,1\n", "rack-over-sheet"},
        {"what,width,length,left\nboard,48 1/16,48 1/16,1\n", "rack-over-sheet"},
        {"what,width,length,left\nboard,96,48,1\n", "rack-over-sheet"},
        {"what,width,length,left\nboard,24 kg,48,1\n", "wrong-unit"},
        {"what,width,length,left\nboard,24,0.5,1\n", "size-absurd"},
        {"what,left,worth\nboard,1,1000000001\n", "out-of-range"},
        {"what,left,worth\nhinge,0,6.00\n", "cell-unfit"},
        {"what,left,worth\npaint,0 gal,6.00\n", "cell-unfit"},
        {"what,left\npaint,0.0001 mL\n", "out-of-range"},
        {"what,color,left\nboard,white,1\n", "cell-unfit"},
        {"what,left\nboard,1 gal\n", "wrong-unit"},
        {"what,left\npoplar,10\n", "missing-cell"},
        {"what,width,left\npoplar,6,10\n", "missing-cell"},
        {"what,width,length,left\npoplar,6,96,10 bf\n", "wrong-unit"},
        {"what,thickness,width,length,left\npoplar,5/4,6,96,1\n", "rack-thickness"},
        {"what,thickness,width,length,left\nboard,3/4,12,12,1\n", "cell-unfit"},
        {"what,width,length,sawn,left\nboard,12,12,yes,1\n", "cell-unfit"},
        {"what,width,length,sawn,left\npoplar,6,96,perhaps,1\n", "unknown-word"},
        {"what,thickness,width,length,left\npoplar,4/4,6,96,1\npoplar,,6,96,2\n", "rack-twice"},
        {"what,thickness,width,length,left\npoplar,thick,6,96,1\n", "not-a-length"},
        {"what,left\nhing,1\n", "unknown-name"},
        {"what,left\nhinge,1 gal\n", "wrong-unit"},
        {"what,left\nhinge,1.5\n", "not-whole"},
        {"what,left\npaint,12 pieces\n", "wrong-unit"},
        {"what,left\nhinge,1\nhinge,2\n", "rack-twice"},
        {"what,color,left\npaint,white,1 gal\n", "cell-unfit"},
        {"what,size,left\nhinge,4,1\n", "unknown-column"},
        {"what,note\nhinge,one\n", "missing-column"},
        {"what,left\nhinge,\n", "missing-cell"},
    };
    int failed = 0;
    for (size_t i = 0; i < COUNT(wrong); i++) {
        struct bench bench;
        const char *const edits[BENCH_MOST_EDITS] = {SLAB, bench_rack_edit(RACK), GRAIN};
        bench_rack_write(RACK, wrong[i].rack);
        bench_open(&bench, wrong[i].rack, BENCH_INCH, edits, "D1,18,30\n");
        if (bench.problems.count != 1 || !bench_has(&bench, wrong[i].id)) {
            bench_wrong(&bench, "not %s alone but %zu problems, %s", wrong[i].id,
                        bench.problems.count,
                        bench.problems.count > 0 ? bench.problems.list[0].id : "none");
        }
        failed += bench_close(&bench);
    }
    (void)unlink(RACK);
    assert_int_equal(failed, 0);
}

/* Whether a job with that rack is asked the question, or, where it is not to be, none at all: how
 * many of these are wrong. */
static int ask(const char *name, const char *rack, const char *const *edits, const char *doors,
               const char *id, bool asked) {
    struct bench bench;
    bench_rack_write(RACK, rack);
    bench_open(&bench, name, BENCH_INCH, edits, doors);
    if (bench_has(&bench, id) != asked) {
        bench_wrong(&bench, asked ? "not asked" : "asked");
    }
    if (!asked) {
        bench_sound(&bench);
    }
    return bench_close(&bench);
}

#define PAINTED  (SLAB "\nfinish = painted")
#define GREEN    (SLAB "\nfinish = painted\ncolor = green")
#define TINTED   "coating paint|tinted = yes"
#define NO_COLOR "rack-no-color"

/* Whether it is asked what color a can has. */
static void test_no_color(void **state) {
    (void)state;
    static const struct {
        const char *name, *rack, *make, *tinted;
        bool asked;
    } said[] = {
        {"a color is needed, the can has none", "what,left\npaint,1 gal\n", GREEN, TINTED, true},
        {"the can is empty", "what,left\npaint,0 gal\n", GREEN, TINTED, false},
        {"the color stands beside it", "what,color,left\npaint,green,1 gal\n", GREEN, TINTED,
         false},
        {"another color stands beside it", "what,color,left\npaint,red,1 gal\n", GREEN, TINTED,
         false},
        {"another can has the color", "what,color,left\npaint,,1 gal\npaint,green,1 qt\n", GREEN,
         TINTED, false},
        {"another can has another color", "what,color,left\npaint,,1 gal\npaint,red,1 qt\n", GREEN,
         TINTED, true},
        {"no color is needed", "what,left\npaint,1 gal\n", PAINTED, TINTED, false},
        {"it is not tinted", "what,left\npaint,1 gal\n", GREEN, NULL, false},
        {"nothing is painted", "what,left\npaint,1 gal\n", SLAB, TINTED, false},
    };
    int failed = 0;
    for (size_t i = 0; i < COUNT(said); i++) {
        const char *const edits[BENCH_MOST_EDITS] = {said[i].make, bench_rack_edit(RACK),
                                                     said[i].tinted};
        failed += ask(said[i].name, said[i].rack, edits, "D1,18,30\n", NO_COLOR, said[i].asked);
    }
    (void)unlink(RACK);
    assert_int_equal(failed, 0);
}

/* Whether it is told that boards of the rack are not used, and that a part fits no board. */
static void test_boards(void **state) {
    (void)state;
#define SHORT "lumber poplar|board widths = 6\nboard lengths = 2 ft"
#define TWO   "what,width,length,sawn,left\npoplar,2 3/8,31,yes,2\n"
    static const struct {
        const char *name, *rack, *boards, *by, *id;
        bool asked;
    } said[] = {
        {"no boards are stocked", TWO, NULL, NULL, "rack-no-plan", true},
        {"boards are", TWO, BOARDS, NULL, "rack-no-plan", false},
        {"none is left", "what,width,length,left\npoplar,6,96,0\n", NULL, NULL, "rack-no-plan",
         false},
        {"it is of other lumber", "what,width,length,left\nthick-poplar,6,96,1\n", NULL, NULL,
         "rack-no-plan", false},
        {"the rack holds what no board does", TWO, SHORT, LUMBER_BY_PLAN, "part-too-long", false},
        {"and a plan is made of it", TWO, SHORT, LUMBER_BY_PLAN, "no-plan", false},
        {"the rack has too few", "what,width,length,sawn,left\npoplar,2 3/8,31,yes,1\n", SHORT,
         LUMBER_BY_PLAN, "no-plan", true},
        {"and by the factor it stays there", "what,width,length,sawn,left\npoplar,2 3/8,31,yes,1\n",
         SHORT, NULL, "rack-no-plan", true},
    };
    int failed = 0;
    for (size_t i = 0; i < COUNT(said); i++) {
        const char *const edits[BENCH_MOST_EDITS] = {said[i].boards == NULL ? "make|style = plain"
                                                                            : said[i].boards,
                                                     bench_rack_edit(RACK), said[i].by};
        failed += ask(said[i].name, said[i].rack, edits, DOORS(1), said[i].id, said[i].asked);
    }
    (void)unlink(RACK);
    assert_int_equal(failed, 0);
}

#define LARGE(count) "id,count,width,height\nS1," #count ",47 1/2,95 1/2\n"
#define OVER         "panel-over-sheet"
#define UNUSED       "rack-by-factor"

/* Whether it is told that sheets of the rack are not used, and that a part fits no sheet. */
static void test_sheets(void **state) {
    (void)state;
    static const struct {
        const char *name, *rack, *by, *doors, *id;
        bool asked;
    } said[] = {
        {"priced by factor", "what,left\nboard,1\n", NULL, FEET(1), UNUSED, true},
        {"priced by plan", "what,left\nboard,1\n", BY_PLAN, FEET(1), UNUSED, false},
        {"the job takes none of it", "what,left\nply,1\n", NULL, FEET(1), UNUSED, false},
        {"none is left", "what,left\nboard,0\n", NULL, FEET(1), UNUSED, false},
        {"one of two rows has some", "what,width,length,left\nboard,,,0\nboard,12,12,1\n", NULL,
         FEET(1), UNUSED, true},
        /* of 48 x 96 a whole sheet gives 47 x 95; the offcut gives all of its size */
        {"an offcut holds it", "what,width,length,left\nboard,47 3/4,95 3/4,1\n", BY_PLAN, LARGE(1),
         OVER, false},
        {"an offcut would hold it", "what,width,length,left\nboard,47 3/4,95 3/4,1\n", NULL,
         LARGE(1), OVER, true},
        {"the offcuts are too few", "what,width,length,left\nboard,47 3/4,95 3/4,1\n", BY_PLAN,
         LARGE(2), OVER, true},
        {"a whole sheet holds no more than a new one", "what,left\nboard,1\n", BY_PLAN, LARGE(1),
         OVER, true},
    };
    int failed = 0;
    for (size_t i = 0; i < COUNT(said); i++) {
        const char *const edits[BENCH_MOST_EDITS] = {SLAB, bench_rack_edit(RACK), TRIM, said[i].by};
        failed += ask(said[i].name, said[i].rack, edits, said[i].doors, said[i].id, said[i].asked);
    }
    (void)unlink(RACK);
    assert_int_equal(failed, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_rack),     cmocka_unit_test(test_refused),
        cmocka_unit_test(test_no_color), cmocka_unit_test(test_boards),
        cmocka_unit_test(test_sheets),   cmocka_unit_test(test_most_sizes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
