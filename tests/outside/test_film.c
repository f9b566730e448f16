/* SPDX-License-Identifier: MIT */
/* Spread, film and losses against published examples (film.csv): some 650,000 sq ft of slabs
 * sprayed with the row's coating, so that four decimals of a gallon do not show. */
#include "ways.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>

#include <cmocka.h>

/* area / volume */
static int64_t spread_of(const struct bench *bench, const struct want *volume) {
    const struct want sprayed = BATCH(0, area, NULL);
    const int64_t area = ways_value(bench, &sprayed) / 1000;
    const int64_t by = ways_value(bench, volume) / 1000;
    assert_true(by > 0);
    return (int64_t)(((__int128)area * ROWS_ONE + by / 2) / by);
}

/* The film that was given leaves the dry film that was printed. */
static void expect_dry(const struct bench *bench, const struct rows *rows, size_t row,
                       const char *column) {
    const int64_t dry = rows_number(rows, row, column);
    if (dry > 0) {
        const struct want film = COAT(0, dry_film, NULL);
        if (llabs(ways_value(bench, &film) - dry) > ROWS_ONE / 1000) {
            fail_msg("%s: %s is not what the film dries to", rows_cell(rows, row, "id"), column);
        }
    }
}

static int64_t spread(const struct bench *bench, const struct rows *rows, size_t row) {
    const struct want mix = COAT(0, mix, NULL);
    expect_dry(bench, rows, row, "dry mil");
    expect_dry(bench, rows, row, "dry um");
    return spread_of(bench, &mix);
}

static int64_t spread_as_sold(const struct bench *bench, const struct rows *rows, size_t row) {
    const struct want coating = COAT(0, coating_volume, NULL);
    (void)rows;
    (void)row;
    return spread_of(bench, &coating);
}

/* Cents a square foot. */
static int64_t cents(const struct bench *bench, const struct rows *rows, size_t row) {
    const struct want sprayed = BATCH(0, area, NULL);
    const struct want money = BATCH(0, cost, NULL);
    expect_dry(bench, rows, row, "dry mil");
    return (int64_t)((__int128)ways_value(bench, &money) * 100 * ROWS_ONE /
                     ways_value(bench, &sprayed));
}

#define SPRAYED "make|style = slab\nfinish = painted"
#define GUN     "spray gun|transfer efficiency = {transfer %} %\nother loss = {other loss %} %"
#define PAINT(more)                                                                                \
    "coating paint|spread by\nwet film\nsolids = {solids %} %\n"                                   \
    "reducer = {reducer %} % of coating\n" more
#define BY_MIL                                                                                     \
    PAINT("spread by = wet film\nwet film = {wet mil} mil\nsizes = 1 gal at {price per gal}")
#define BY_COVERAGE PAINT("coverage = {coverage sqft per gal} sqft per gal theoretical")
#define SLABS       "id,count,width,height\nS1,9999,48,96\n"

static const struct way ways[] = {
    {.check = "spread", .edits = {SPRAYED, GUN, BY_MIL}, .doors = SLABS, .ask = spread},
    {.check = "spread by coverage",
     .edits = {SPRAYED, GUN, BY_COVERAGE},
     .doors = SLABS,
     .ask = spread},
    {.check = "spread, metric",
     .unit = BENCH_MM,
     .edits = {SPRAYED, GUN,
               PAINT("spread by = wet film\nwet film = {wet um} um\nsizes = 1 L at 1.00")},
     .doors = "id,count,width,height\nS1,9999,1200,2400\n",
     .ask = spread},
    {.check = "dry",
     .edits = {SPRAYED, GUN, BY_MIL},
     .doors = SLABS,
     .answer = COAT(0, dry_film, NULL)},
    {.check = "dry, reducer of the mix",
     .edits = {SPRAYED, GUN,
               "coating paint|spread by = wet film\nwet film = {wet mil} mil\n"
               "solids = {solids %} %\nreducer = {reducer %} % of mix"},
     .doors = SLABS,
     .answer = COAT(0, dry_film, NULL)},
    {.check = "spread as sold, by film",
     .edits = {SPRAYED, GUN, BY_MIL},
     .doors = SLABS,
     .ask = spread_as_sold},
    {.check = "spread as sold, by coverage",
     .edits = {SPRAYED, GUN, BY_COVERAGE},
     .doors = SLABS,
     .ask = spread_as_sold},
    {.check = "cents",
     .edits = {SPRAYED, GUN, BY_MIL, "shop|charge finish = used"},
     .doors = SLABS,
     .ask = cents},
};

static void test_published(void **state) {
    (void)state;
    ways_run("film.csv", ways, COUNT(ways));
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_published)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
