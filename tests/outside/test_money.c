/* SPDX-License-Identifier: MIT */
/* Markup, margin, overhead, tax and allowance against published examples (money.csv), weight
 * (weight.csv): small jobs, read and estimated, whose cost is the row's amount. */
#include "rows.h"

#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* How a row becomes a job, and which figure answers it. AMOUNT, PERCENT and COUNT stand for the
 * row's. */
struct way {
    const char *check;
    const char *edits[6];
    struct want answer;
};

#define SHEETS                                                                                     \
    "make|style = slab", "sheet board|price = AMOUNT per sheet", "shop|charge sheets = bought"

static const struct way ways[] = {
    {"markup price", {SHEETS, "shop|profit = PERCENT % markup"}, COST(job.price, NULL)},
    {"markup profit", {SHEETS, "shop|profit = PERCENT % markup"}, COST(job.profit, NULL)},
    {"markup margin", {SHEETS, "shop|profit = PERCENT % markup"}, SALE(margin_left, NULL)},
    {"overhead of cost", {SHEETS, "shop|overhead = PERCENT % of cost"}, COST(job.overhead, NULL)},
    {"overhead by the hour",
     {"shop|overhead = AMOUNT per hour", "door plain|operations = work",
      "operation work|per = door\nminutes = 60"},
     COST(job.overhead, NULL)},
    {"tax",
     {"make|style = slab", "sheet board|price = 0.00 per sheet", "shop|minimum door = AMOUNT",
      "sale|tax = PERCENT %\ntax on = selling price"},
     SALE(tax, NULL)},
    {"allowance of shift",
     {"shop|allowance = PERCENT % of shift", "door plain|operations = work",
      "operation work|per = door\nminutes = AMOUNT"},
     LABOR(person_minutes, NULL)},
    {"allowance added",
     {"shop|allowance = PERCENT % added", "door plain|operations = work",
      "operation work|per = door\nminutes = AMOUNT"},
     LABOR(person_minutes, NULL)},
};

/* text with the names of columns in it put for what the row says. */
static void put(char *out, size_t size, const char *text, const struct rows *rows, size_t row) {
    static const struct {
        const char *word, *column;
    } words[] = {{"AMOUNT", "amount"}, {"PERCENT", "percent"}, {"COUNT", "count"}};
    size_t at = 0;
    while (*text != '\0' && at + 1 < size) {
        size_t w = 0;
        while (w < COUNT(words) && strncmp(text, words[w].word, strlen(words[w].word)) != 0) {
            w++;
        }
        if (w == COUNT(words)) {
            out[at++] = *text++;
            continue;
        }
        const int more = snprintf(out + at, size - at, "%s", rows_cell(rows, row, words[w].column));
        at += (size_t)more;
        text += strlen(words[w].word);
    }
    out[at < size ? at : size - 1] = '\0';
}

static int64_t answer(struct bench *bench, const struct want *want) {
    const char *const thing = bench_thing(bench, want);
    fig figure = {0};
    assert_non_null(thing);
    memcpy(&figure, thing + want->at, sizeof figure);
    assert_false(fig_none(figure));
    return tape_scaled(&bench->estimate.tape, figure, 6) * 1000;
}

static int64_t go(const struct way *way, const struct rows *rows, size_t row) {
    char texts[6][256];
    char doors[128];
    const char *edits[BENCH_MOST_EDITS] = {0};
    struct bench bench;
    for (size_t i = 0; i < 6 && way->edits[i] != NULL; i++) {
        put(texts[i], sizeof texts[i], way->edits[i], rows, row);
        edits[i] = texts[i];
    }
    put(doors, sizeof doors, "id,count,width,height\nD1,COUNT,18,30\n", rows, row);
    bench_open(&bench, rows_cell(rows, row, "id"), BENCH_INCH, edits, doors);
    bench_sound(&bench);
    assert_int_equal(bench.result, ESTIMATE_OK);
    const int64_t value = answer(&bench, &way->answer);
    assert_int_equal(bench_close(&bench), 0);
    return value;
}

/* A batch for each of 28 lengths of stile, 20 pieces each at 29.29 / 20 minutes, and a set-up of 5
 * minutes for each. */
static int64_t batches(const struct rows *rows, size_t row) {
    char doors[2048];
    char setup[128];
    const char *const edits[BENCH_MOST_EDITS] = {"door plain|operations = work", setup};
    struct bench bench;
    size_t size = (size_t)snprintf(doors, sizeof doors, "id,count,width,height\n");
    const int64_t count = rows_number(rows, row, "count") / ROWS_ONE;
    for (int64_t i = 0; i < count; i++) {
        size += (size_t)snprintf(doors + size, sizeof doors - size, "D%d,10,18,%d\n", (int)i,
                                 (int)(20 + i));
    }
    (void)snprintf(setup, sizeof setup,
                   "operation work|per = stile\nminutes = 1.4645\nsetup = %s min per length",
                   rows_cell(rows, row, "amount"));
    bench_open(&bench, "batches", BENCH_INCH, edits, doors);
    bench_sound(&bench);
    assert_int_equal(bench.result, ESTIMATE_OK);
    const struct want minutes = OPERATION(0, machine_minutes, NULL);
    const int64_t value = answer(&bench, &minutes);
    assert_int_equal(bench_close(&bench), 0);
    return value;
}

static void test_published(void **state) {
    (void)state;
    struct rows rows;
    rows_read(&rows, "money.csv");
    for (size_t row = 0; row < rows.count; row++) {
        size_t w = 0;
        while (w < COUNT(ways) && !rows_check_is(&rows, row, ways[w].check)) {
            w++;
        }
        if (w < COUNT(ways)) {
            rows_expect(&rows, row, go(&ways[w], &rows, row));
        } else if (rows_check_is(&rows, row, "batches")) {
            rows_expect(&rows, row, batches(&rows, row));
        } else {
            rows_pass_over(&rows, row);
        }
    }
    rows_done(&rows);
}

static int64_t wood_density(const struct rows *rows, size_t row, bool metric) {
    struct tape tape;
    struct units m;
    const struct value gravity = {.unit = UNIT_NUMBER,
                                  .decimals = 2,
                                  .amount = rows_number(rows, row, "amount") / (ROWS_ONE / 100),
                                  .set = true};
    tape_init(&tape, true);
    units_init(&m, &tape, LENGTH_INCH, metric);
    const int64_t value = tape_scaled(&tape, units_wood_density(&tape, &m, &gravity), 6) * 1000;
    tape_clear(&tape);
    return value;
}

/* A slab of 12 x 12 x 1 in of a sheet of that density. */
static int64_t board_foot_weight(const struct rows *rows, size_t row) {
    char density[96];
    const char *const edits[BENCH_MOST_EDITS] = {"make|style = slab", "sheet board|thickness = 1",
                                                 density};
    struct bench bench;
    (void)snprintf(density, sizeof density, "sheet board|density = %s lb/cuft",
                   rows_cell(rows, row, "amount"));
    bench_open(&bench, "a board foot", BENCH_INCH, edits, "S1,12,12\n");
    bench_sound(&bench);
    assert_int_equal(bench.result, ESTIMATE_OK);
    const struct want weight = LEAF(0, weight, NULL);
    const int64_t value = answer(&bench, &weight);
    assert_int_equal(bench_close(&bench), 0);
    return value;
}

static void test_weight(void **state) {
    (void)state;
    struct rows rows;
    rows_read(&rows, "weight.csv");
    for (size_t row = 0; row < rows.count; row++) {
        if (rows_check_is(&rows, row, "wood density, lb/cu ft")) {
            rows_expect(&rows, row, wood_density(&rows, row, false));
        } else if (rows_check_is(&rows, row, "wood density, kg/m3")) {
            rows_expect(&rows, row, wood_density(&rows, row, true));
        } else if (rows_check_is(&rows, row, "weight of a board foot, lb")) {
            rows_expect(&rows, row, board_foot_weight(&rows, row));
        } else {
            rows_pass_over(&rows, row);
        }
    }
    rows_done(&rows);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_published),
                                       cmocka_unit_test(test_weight)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
