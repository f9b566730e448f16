/* SPDX-License-Identifier: MIT */
/* From sprayed area to cans. A slab of 48 x 48 x 3/4 whose faces are left out has just one square
 * foot of edges, so that the count of a row is its area. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

#define EDGES   "make|style = slab\nfinish = painted"
#define FACES   "finish painted|faces = none"
#define FEET(n) "id,count,width,height\nS1," #n ",48,48\n"
#define LOSSES                                                                                     \
    "spray gun|transfer efficiency = 60 %\nother loss = 5 %\nfixed loss = 6 fl oz per mix"
#define FULL "spray gun|transfer efficiency = 100 %"
#define TWO  "finish painted|faces = none\ncoats = paint x 2"

static const struct bench_case coat_cases[] = {
    {"200 sq ft, 4 mil, transfer 65 %, other loss 5 %",
     {EDGES, FACES, "spray gun|other loss = 5 %"},
     FEET(200),
     {BATCH(0, area, "200"), COAT(0, film, "4"), COAT(0, theoretical, "0.4987"),
      COAT(0, sprayed, "0.8076"), COAT(0, mixes, NULL), COAT(0, mix, "0.8076"),
      COAT(0, coating_volume, "0.8076"), COAT(0, reducer, NULL), COAT(0, catalyst, NULL)}},
    {"the same with 5 % reducer of the coating",
     {EDGES, FACES, "spray gun|other loss = 5 %", "coating paint|reducer = 5 % of coating"},
     FEET(200),
     {COAT(0, mix, "0.8076"), COAT(0, coating_volume, "0.7691"), COAT(0, reducer, "0.0385")}},
    {"coverage of the product, the catalyst a tenth of the mix: 1 / 0.9",
     {EDGES, FACES, FULL,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical\n"
      "catalyst = 10 % of mix"},
     FEET(400),
     {COAT(0, mix, "1.1111"), COAT(0, catalyst, "0.1111"), COAT(0, coating_volume, "1")}},
    {"coverage of the product, the catalyst a tenth of it",
     {EDGES, FACES, FULL,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical\n"
      "catalyst = 10 % of coating"},
     FEET(400),
     {COAT(0, mix, "1.1"), COAT(0, catalyst, "0.1"), COAT(0, coating_volume, "1")}},
    {"no other loss",
     {EDGES, FACES},
     FEET(200),
     {COAT(0, theoretical, "0.4987"), COAT(0, sprayed, "0.7672")}},
    {"all that is sprayed stays",
     {EDGES, FACES, "spray gun|transfer efficiency = 100 %"},
     FEET(200),
     {COAT(0, theoretical, "0.4987"), COAT(0, sprayed, "0.4987")}},

    /* two coats of 100 sq ft: 0.2494 x 2 / 0.60 / 0.95 = 0.8751 */
    {"two coats, a mix a coat",
     {EDGES, TWO, LOSSES},
     FEET(100),
     {COAT(0, theoretical, "0.2494"), COAT(0, sprayed, "0.8751"), COAT(0, mixes, "2"),
      COAT(0, mix, "0.9689")}},
    {"reducer 5 % and catalyst 3 % of the coating: / 1.08",
     {EDGES, TWO, LOSSES, "coating paint|reducer = 5 % of coating\ncatalyst = 3 % of coating"},
     FEET(100),
     {COAT(0, coating_volume, "0.8971"), COAT(0, reducer, "0.0449"), COAT(0, catalyst, "0.0269")}},
    {"reducer 10 % of the mix, catalyst 3 % of the coating: (m - 0.1 m) / 1.03",
     {EDGES, TWO, LOSSES, "coating paint|reducer = 10 % of mix\ncatalyst = 3 % of coating"},
     FEET(100),
     {COAT(0, reducer, "0.0969"), COAT(0, coating_volume, "0.8466"), COAT(0, catalyst, "0.0254")}},
    {"both of the mix: m x 0.87",
     {EDGES, TWO, LOSSES, "coating paint|reducer = 10 % of mix\ncatalyst = 3 % of mix"},
     FEET(100),
     {COAT(0, reducer, "0.0969"), COAT(0, catalyst, "0.0291"), COAT(0, coating_volume, "0.8429")}},
    {"10 % of the coating is not 10 % of the mix: / 1.1",
     {EDGES, TWO, LOSSES, "coating paint|reducer = 10 % of coating"},
     FEET(100),
     {COAT(0, coating_volume, "0.8808"), COAT(0, reducer, "0.0881")}},
    {"10 % of the mix: x 0.9",
     {EDGES, TWO, LOSSES, "coating paint|reducer = 10 % of mix"},
     FEET(100),
     {COAT(0, coating_volume, "0.8720"), COAT(0, reducer, "0.0969")}},

    /* mixes */
    {"a pot of 2 gal takes a coat",
     {EDGES, TWO, LOSSES, "spray gun|mix size = 2 gal"},
     FEET(100),
     {COAT(0, mixes, "2")}},
    /* 6 fl oz of the 32 in a cup stay in it: 0.43755 / 0.203125 is over two cups a coat */
    {"a cup of 1 qt is filled three times a coat: it holds the fixed loss too",
     {EDGES, TWO, LOSSES, "spray gun|mix size = 1 qt"},
     FEET(100),
     {COAT(0, mixes, "6"), COAT(0, mix, "1.1564")}}, /* 0.8751 + 6 x 0.046875 */
    {"a pot that just takes the coat and the loss",
     {EDGES, FACES,
      "spray gun|transfer efficiency = 100 %\nfixed loss = 0.7508 gal per mix\n"
      "mix size = 2 gal"},
     FEET(501),
     {COAT(0, sprayed, "1.2492"), COAT(0, mixes, "1"), COAT(0, mix, "2")}},
    {"and one that does not",
     {EDGES, FACES,
      "spray gun|transfer efficiency = 100 %\nfixed loss = 0.7509 gal per mix\n"
      "mix size = 2 gal"},
     FEET(501),
     {COAT(0, mixes, "2"), COAT(0, mix, "2.7510")}},
    {"three colors that no row names: each is mixed by itself",
     {EDGES, TWO "\ncolors = 3", LOSSES, "coating paint|tinted = yes"},
     FEET(100),
     {COAT(0, mixes, "6"), COAT(0, mix, "1.1564")}},
    {"two colors",
     {EDGES, TWO "\ncolors = 2", LOSSES, "coating paint|tinted = yes"},
     FEET(100),
     {COAT(0, mixes, "4")}},
    {"three colors of a product that is not tinted: mixed once",
     {EDGES, TWO "\ncolors = 3", LOSSES},
     FEET(100),
     {COAT(0, mixes, "2"), COAT(0, mix, "0.9689")}},
    {"a color that rows name counts for itself",
     {EDGES "\ncolor = white", TWO "\ncolors = 3", LOSSES, "coating paint|tinted = yes"},
     FEET(100),
     {COAT(0, mixes, "2")}},

    /* coverage of a data sheet */
    {"400 sq ft a gal theoretical: losses still to come",
     {EDGES, TWO, LOSSES,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical"},
     FEET(100),
     {COAT(0, film, NULL), COAT(0, theoretical, "0.25"), COAT(0, sprayed, "0.8772"),
      COAT(0, mix, "0.9710")}},
    {"400 sq ft a gal practical: losses included, but for pot and hose",
     {EDGES, TWO, LOSSES,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal practical"},
     FEET(100),
     {COAT(0, theoretical, "0.25"), COAT(0, sprayed, "0.5"), COAT(0, mix, "0.5938")}},

    /* a gallon of the sheet is of the product as sold: 400 sq ft take 1 gal of it, 1.2 of mix */
    {"400 sq ft a gal, thinned by 20 % of the coating",
     {EDGES, FACES, FULL,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical\n"
      "reducer = 20 % of coating"},
     FEET(400),
     {COAT(0, theoretical, "1.2"), COAT(0, mix, "1.2"), COAT(0, coating_volume, "1"),
      COAT(0, reducer, "0.2")}},
    {"the same film told as one: 4.8125 mil = 231000 / 144 / 400 x 1.2",
     {EDGES, FACES, FULL, "coating paint|wet film = 4.8125 mil\nreducer = 20 % of coating"},
     FEET(400),
     {COAT(0, theoretical, "1.2"), COAT(0, coating_volume, "1"), COAT(0, reducer, "0.2")}},
    {"thinned by 20 % of the mix: 1 gal is 80 % of it",
     {EDGES, FACES, FULL,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical\n"
      "reducer = 20 % of mix"},
     FEET(400),
     {COAT(0, mix, "1.25"), COAT(0, coating_volume, "1"), COAT(0, reducer, "0.25")}},
    {"a gallon mixed with its catalyst: 1 gal holds 1 / 1.25 of coating",
     {EDGES, FACES, FULL,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical\n"
      "coverage of = mixed\ncatalyst = 25 % of coating"},
     FEET(400),
     {COAT(0, mix, "1"), COAT(0, coating_volume, "0.8"), COAT(0, catalyst, "0.2")}},
    {"a gallon mixed with its catalyst, a fifth of it: 1 gal holds 0.8 of coating",
     {EDGES, FACES, FULL,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical\n"
      "coverage of = mixed\ncatalyst = 20 % of mix"},
     FEET(400),
     {COAT(0, mix, "1"), COAT(0, coating_volume, "0.8"), COAT(0, catalyst, "0.2")}},
    {"the same of the product as sold",
     {EDGES, FACES, FULL,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical\n"
      "catalyst = 25 % of coating"},
     FEET(400),
     {COAT(0, mix, "1.25"), COAT(0, coating_volume, "1"), COAT(0, catalyst, "0.25")}},
    {"mixed, thinned by a tenth of the mix besides: the reducer is not in the gallon",
     {EDGES, FACES, FULL,
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal theoretical\n"
      "coverage of = mixed\ncatalyst = 25 % of coating\nreducer = 10 % of mix"},
     FEET(360),
     {COAT(0, mix, "1"), COAT(0, reducer, "0.1"), COAT(0, coating_volume, "0.72"),
      COAT(0, catalyst, "0.18")}},
    {"practical, thinned: losses are in the gallon of product",
     {EDGES, TWO, "spray gun|transfer efficiency = 60 %",
      "coating paint|spread by\nwet film\ncoverage = 400 sqft per gal practical\n"
      "reducer = 20 % of coating"},
     FEET(200),
     {COAT(0, coating_volume, "1"), COAT(0, mix, "1.2")}},

    /* dry film, two coats of 4 mil */
    {"38 % solids by volume",
     {EDGES, TWO, "coating paint|solids = 38 %"},
     FEET(100),
     {COAT(0, dry_film, "3.04"), BATCH(0, dry_film, "3.04")}},
    {"reduced 5 % of the coating: / 1.05",
     {EDGES, TWO, "coating paint|solids = 38 %\nreducer = 5 % of coating"},
     FEET(100),
     {COAT(0, dry_film, "2.8952")}},
    {"reduced 10 % of the mix: x 0.9",
     {EDGES, TWO, "coating paint|solids = 34 %\nreducer = 10 % of mix"},
     FEET(100),
     {COAT(0, dry_film, "2.448")}},
    {"no solids known: no dry film",
     {EDGES, TWO},
     FEET(100),
     {COAT(0, dry_film, NULL), BATCH(0, dry_film, NULL)}},
    {"two products: film and hours add up",
     {EDGES, "coating paint|solids = 38 %\ndry = 2 hours",
      "coating top|spread by = wet film\nwet film = 5 mil\nsolids = 30 %\ndry = 3 hours\n"
      "sizes = 1 gal at 90.00",
      "finish painted|faces = none\ncoats = paint x 1, top x 2"},
     FEET(100),
     {COAT(0, dry_film, "1.52"), COAT(1, dry_film, "3"), BATCH(0, dry_film, "4.52"),
      BATCH(0, dry_hours, "8")}},
};

#define SIZES "coating paint|sizes = 1 qt at 27.00, 1 gal at 84.00"
#define COLORS                                                                                     \
    "id,count,color,width,height\nS1,100,white,48,48\nS2,50,green,48,48\nS3,100,White,48,48\n"

static const struct bench_case product_cases[] = {
    {"1 gal at 84.00 is less than 4 qt at 108.00",
     {EDGES, TWO, LOSSES, SIZES, "coating paint|reducer = 8 % of coating"},
     FEET(100),
     {PRODUCT(0, need, "0.8971"), PRODUCT(0, counts[0], "0"), PRODUCT(0, counts[1], "1"),
      PRODUCT(0, bought, "1"), PRODUCT(0, left_over, "0.1029"), PRODUCT(0, cost, "84")}},
    {"3 qt at 81.00 are less than 1 gal",
     {EDGES, FACES, FULL, SIZES},
     FEET(300),
     {PRODUCT(0, need, "0.7481"), PRODUCT(0, counts[0], "3"), PRODUCT(0, counts[1], "0"),
      PRODUCT(0, cost, "81"), PRODUCT(0, left_over, "0.0019")}},
    {"charge used: 84 x 0.8971 / 1",
     {EDGES, TWO, LOSSES, SIZES, "coating paint|reducer = 8 % of coating",
      "shop|charge finish = used"},
     FEET(100),
     {PRODUCT(0, charged, "75.36"), BATCH(0, cost, "75.36"),
      COST(job.group[COST_FINISH], "75.36")}},
    {"charge bought",
     {EDGES, TWO, LOSSES, SIZES, "coating paint|reducer = 8 % of coating",
      "shop|charge finish = bought"},
     FEET(100),
     {PRODUCT(0, charged, "84"), COST(job.group[COST_FINISH], "84")}},
    {"reducer and catalyst are bought too",
     {EDGES, TWO, LOSSES, SIZES,
      "coating paint|reducer = 5 % of coating\nreducer product = thinner",
      "coating paint|catalyst = 3 % of coating\ncatalyst product = hardener",
      "shop|charge finish = bought"},
     FEET(100),
     {PRODUCT(0, need, "0.8971"), PRODUCT(1, need, "0.0449"), PRODUCT(1, cost, "20"),
      PRODUCT(2, need, "0.0269"), PRODUCT(2, cost, "40"), COST(job.group[COST_FINISH], "144")}},
    {"two coatings share one reducer",
     {EDGES, FULL, "coating paint|reducer = 10 % of coating\nreducer product = thinner",
      "coating top|spread by = wet film\nwet film = 4 mil\nreducer = 10 % of coating",
      "coating top|reducer product = thinner\nsizes = 1 gal at 90.00",
      "finish painted|faces = none\ncoats = paint x 1, top x 1"},
     FEET(200),
     {COAT(0, reducer, "0.0453"), COAT(1, reducer, "0.0453"), PRODUCT(1, need, "0.0906"),
      PRODUCT(2, need, "0.4534"), PRODUCT(3, need, NULL)}},
    {"not tinted: one product for all colors",
     {EDGES, FACES, FULL},
     COLORS,
     {BATCH(0, area, "250"), BATCH(1, area, NULL), PRODUCT(0, need, "0.6234"),
      PRODUCT(1, need, NULL)}},
    {"a primer is mixed once for two colors, its loss shared by area; topcoats by color",
     {EDGES, "finish painted|faces = none\ncoats = paint x 1, top x 1",
      "spray gun|transfer efficiency = 100 %\nfixed loss = 0.1 gal per mix",
      "coating top|spread by = wet film\nwet film = 4 mil\ntinted = yes\nsizes = 1 gal at 90.00"},
     COLORS,
     {BATCH(0, area, "200"), BATCH(1, area, "50"), COAT(0, mixes, "1"), COAT(0, sprayed, "0.4987"),
      COAT(0, mix, "0.5787"), COAT(1, mix, "0.5987"), PRODUCT(0, need, "0.7234"),
      PRODUCT(1, need, "0.5987"), PRODUCT(2, need, "0.2247")}},
    {"tinted: each color by itself, however it is spelled",
     {EDGES, FACES, FULL, "coating paint|tinted = yes", "shop|charge finish = bought"},
     COLORS,
     {PRODUCT(0, need, "0.4987"), PRODUCT(0, cost, "100"), PRODUCT(1, need, "0.1247"),
      PRODUCT(1, cost, "100"), PRODUCT(2, need, NULL), COST(job.group[COST_FINISH], "200")}},
    {"a finish left bare takes nothing",
     {EDGES, FACES, FULL},
     "id,count,finish,width,height\nS1,100,none,48,48\nS2,50,painted,48,48\n",
     {BATCH(0, area, "50"), BATCH(1, area, NULL), LEAF(0, sprayed, NULL),
      DOOR(0, cost.group[COST_FINISH], NULL)}},
    /* beyond the coats */
    {"a reserve of 10 % and 4 fl oz (0.03125 gal) for touch-up; the batch pays for all of it",
     {EDGES, FACES, FULL, "coating paint|reserve = 10 %\ntouch-up = 4 fl oz per color",
      "shop|charge finish = used"},
     FEET(200),
     {PRODUCT(0, used, "0.4987"), PRODUCT(0, reserve, "0.0499"), PRODUCT(0, touch_up, "0.0313"),
      PRODUCT(0, need, "0.5799 gal"), PRODUCT(0, charged, "57.99"), BATCH(0, cost, "57.99")}},
    {"touch-up of each color that the finish stands for",
     {EDGES, "coating paint|tinted = yes\ntouch-up = 4 fl oz per color", FULL,
      "finish painted|faces = none\ncolors = 3"},
     FEET(200),
     {PRODUCT(0, touch_up, "0.0938"), PRODUCT(0, reserve, NULL), PRODUCT(0, need, "0.5925")}},
    {"two mixes washed out with a pint each",
     {EDGES, TWO, LOSSES, "spray gun|cleaning = 1 pt per mix\ncleaning product = thinner",
      "coating paint|reducer = 5 % of coating\nreducer product = thinner",
      "shop|charge finish = bought"},
     FEET(100),
     {COAT(0, cleaning, "0.25"), COAT(0, mix, "0.9689"), COAT(0, reducer, "0.0461"),
      PRODUCT(1, need, "0.2961 gal"), PRODUCT(1, cost, "20"), COAT(0, cost, "120")}},
    {"mixes are counted where they are washed out and lose nothing",
     {EDGES, FACES, FULL,
      "spray gun|cleaning = 1 qt per mix\ncleaning product = thinner\n"
      "mix size = 1 qt"},
     FEET(200),
     {COAT(0, mixes, "2"), COAT(0, cleaning, "0.5"), COAT(0, mix, "0.4987")}},

    /* transfer efficiency from 57 to 70 %: 0.4987 / 0.57, / 0.65, / 0.70 */
    {"what is needed where less lands on the doors, and where more",
     {EDGES, FACES, "spray gun|transfer efficiency = 65 % (57 to 70)"},
     FEET(200),
     {PRODUCT(0, need, "0.7672"), PRODUCT(0, need_low, "0.8749"), PRODUCT(0, need_high, "0.7124"),
      PRODUCT(0, bought, "1"), PRODUCT(0, left_over, "0.2328"), PRODUCT(0, left_low, "0.1251")}},
    {"the can of the likely need does not hold the higher one",
     {EDGES, FACES, "spray gun|transfer efficiency = 65 % (57 to 70)",
      "coating paint|reserve = 0 %"},
     FEET(260),
     {PRODUCT(0, need, "0.9974"), PRODUCT(0, bought, "1"), PRODUCT(0, left_low, "-0.1374")}},
    {"no range, no such figures",
     {EDGES, FACES, FULL},
     FEET(200),
     {PRODUCT(0, need_low, NULL), PRODUCT(0, need_high, NULL), PRODUCT(0, left_low, NULL)}},

    /* a way of its own */
    {"a stain that is wiped on: its own losses, and no sprayed coat",
     {EDGES, "spray gun|transfer efficiency = 50 %",
      "spray rag|transfer efficiency = 80 %\nby hand = yes",
      "coating stain|coverage = 400 sqft per gal theoretical\nput on = rag\nsizes = 1 gal at 60",
      "finish painted|faces = none\ncoats = stain x 1, paint x 2\noperations = spray, scuff, wipe",
      "operation spray|per = sqft sprayed per coat\nminutes = 1",
      "operation scuff|per = sqft sprayed between coats\nminutes = 1",
      "operation wipe|per = sqft sprayed\nminutes = 1"},
     FEET(200),
     {COAT(0, sprayed, "0.625"), COAT(1, sprayed, "1.9948"), OPERATION(0, run, "400 min"),
      OPERATION(1, run, "200 min"), OPERATION(2, run, "200 min")}},
    {"all bare: no finish at all",
     {NULL},
     "D1,18,30\n",
     {BATCH(0, area, NULL), PRODUCT(0, need, NULL), COST(job.group[COST_FINISH], NULL)}},
};

/* Slab of 1 x 1 m, 20 mm thick: 2 m2 and 0.08 m2. */
static const struct bench_case mm_cases[] = {
    {"10 m2 and edges at 110 um: 10 x 1.08 x 110 / 1000",
     {EDGES, "sheet board|thickness = 20", "finish painted|faces = front"},
     "id,count,width,height\nS1,10,1000,1000\n",
     {BATCH(0, area, "10.8"), COAT(0, film, "110"), COAT(0, theoretical, "1.188"),
      COAT(0, sprayed, "2.376")}},
    {"9 m2 a liter theoretical",
     {EDGES, "sheet board|thickness = 20", "finish painted|faces = front",
      "coating paint|spread by\nwet film\ncoverage = 9 m2 per l theoretical"},
     "id,count,width,height\nS1,10,1000,1000\n",
     {COAT(0, theoretical, "1.2"), COAT(0, sprayed, "2.4"), PRODUCT(0, bought, "3"),
      PRODUCT(0, cost, "75")}},
    {"dry film in um",
     {EDGES, "coating paint|solids = 40 %"},
     "id,count,width,height\nS1,1,1000,1000\n",
     {COAT(0, dry_film, "44")}},
};

static void test_coats(void **state) {
    (void)state;
    bench_run(coat_cases, COUNT(coat_cases), BENCH_INCH);
}

static void test_products(void **state) {
    (void)state;
    bench_run(product_cases, COUNT(product_cases), BENCH_INCH);
}

static void test_mm(void **state) {
    (void)state;
    bench_run(mm_cases, COUNT(mm_cases), BENCH_MM);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_coats),
        cmocka_unit_test(test_products),
        cmocka_unit_test(test_mm),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
