/* SPDX-License-Identifier: MIT */
/* Tables of comma-separated values read back: what is on the rack by the reader of it, prices by
 * size by libcsv, in its strict mode. Every record has as many cells as the heading: RFC 4180,
 * section 2, rule 4. */
#include "support.h"

#include "draw.h"
#include "report/csv/csv_rack.h"
#include "report/csv/csv_size_table.h"
#include "size_bench.h"

#include <csv.h>
#include <limits.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

/* --- the rack --- */

#define RACK "test-csv-rack.csv"

static bool same_text(const struct text *a, const struct text *b) {
    return a->s == NULL ? b->s == NULL : b->s != NULL && strcmp(a->s, b->s) == 0;
}

/* Values of one unit, noughts at the end aside. */
static bool same_value(const struct value *a, const struct value *b) {
    return a->set == b->set &&
           (!a->set || (value_at(a, 6) == value_at(b, 6) && a->unit == b->unit));
}

static void check_item(struct bench *bench, size_t i, const struct rack_item *a,
                       const struct rack_item *b) {
    if (a->kind != b->kind || a->index != b->index || a->sawn != b->sawn ||
        !same_text(&a->what, &b->what) || !same_text(&a->color, &b->color) ||
        !same_text(&a->note, &b->note)) {
        bench_wrong(bench, "row %zu is of something else", i);
    }
    if (!same_value(&a->left, &b->left) || !same_value(&a->worth, &b->worth) ||
        !same_value(&a->width, &b->width) || !same_value(&a->length, &b->length) ||
        !same_value(&a->thickness, &b->thickness)) {
        bench_wrong(bench, "row %zu has other amounts", i);
    }
}

/* Reads the table, writes what was read, and reads that: the same rows. */
static int check_rack(const char *name, const char *text, enum bench_unit unit) {
    const char *const edits[] = {"coating paint|tinted = yes", "lumber poplar|board widths = 6",
                                 bench_rack_edit(RACK), NULL};
    const char *const doors = unit == BENCH_MM ? "A,400,700\n" : "A,15,30\n";
    struct bench first;
    struct bench second;
    bench_rack_write(RACK, text);
    bench_open(&first, name, unit, &edits[unit == BENCH_MM ? 2 : 0], doors);
    if (problems_count(&first.problems, SEVERITY_ERROR) > 0) {
        bench_sound(&first);
        return bench_close(&first);
    }
    FILE *const file = fopen(RACK, "wb");
    assert_non_null(file);
    csv_rack(file, &first.rates.rack, &first.rates);
    assert_int_equal(fclose(file), 0);
    bench_open(&second, name, unit, &edits[unit == BENCH_MM ? 2 : 0], doors);
    if (problems_count(&second.problems, SEVERITY_ERROR) > 0) {
        bench_sound(&second);
    } else if (first.rates.rack.count != second.rates.rack.count) {
        bench_wrong(&second, "%zu rows became %zu", first.rates.rack.count,
                    second.rates.rack.count);
    } else {
        for (size_t i = 0; i < first.rates.rack.count; i++) {
            check_item(&second, i, &first.rates.rack.items[i], &second.rates.rack.items[i]);
        }
    }
    assert_int_equal(unlink(RACK), 0);
    return bench_close(&first) + bench_close(&second);
}

#define RACK_HEAD "what,color,thickness,width,length,sawn,left,worth,note\n"

static void test_racks(void **state) {
    static const struct {
        const char *name;
        enum bench_unit unit;
        const char *text;
    } rows[] = {
        {"nothing", BENCH_INCH, RACK_HEAD},
        {"pieces", BENCH_INCH, "what,left\nhinge,12\npull,0\n"},
        {"volumes", BENCH_INCH,
         "what,color,left\npaint,lamp white,0.25 gal\npaint,,2.50 gal\nthinner,,16 fl oz\n"},
        {"boards and offcuts", BENCH_INCH,
         "what,thickness,width,length,sawn,left\npoplar,4/4,5 1/2,96,,3\n"
         "poplar,,4 3/16,31 5/8,yes,1\npoplar,4/4,6,10 ft,no,2\n"},
        {"sheets", BENCH_INCH,
         "what,width,length,left,worth\nboard,,,2,80\nboard,24,48 1/2,1,12.50\nboard,47,3,7,\n"},
        {"another order, other names", BENCH_INCH,
         "left,note,what\n3,\"from the \"\"annex\"\", top\",hardware hinge\n"},
        {"millimeters", BENCH_MM,
         "what,width,length,left,worth\nboard,600,1200,1,7.05\nboard,24 in,300.5,2,\n"},
        {"liters", BENCH_MM, "what,left,worth\npaint,0.375 L,9\n"},
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        wrong += check_rack(rows[i].name, rows[i].text, rows[i].unit);
    }
    assert_int_equal(wrong, 0);
}

/* Notes with all that a cell has to be quoted for. */
static void test_notes(void **state) {
    static const char *const pieces[] = {"\"\"", ",", "a", " ", "'", ";", "\u00e9", "|", "="};
    uint32_t seed = 5;
    int wrong = 0;
    (void)state;
    for (int n = 0; n < 60; n++) {
        char text[600] = RACK_HEAD "hinge,,,,,,3,,\"x";
        draw_pieces(&seed, text, sizeof text - 20, 20, pieces, COUNT(pieces));
        (void)strncat(text, "x\"\n", sizeof text - strlen(text) - 1);
        wrong += check_rack("notes", text, BENCH_INCH);
    }
    assert_int_equal(wrong, 0);
}

/* --- prices by size --- */

#define MOST_CELLS 64
#define CELL       100

struct record {
    char cells[MOST_CELLS][CELL];
    size_t count;
};

struct records {
    struct record list[200];
    size_t count;
};

static void take_cell(void *bytes, size_t size, void *data) {
    struct records *const r = data;
    struct record *const record = &r->list[r->count];
    assert_true(record->count < MOST_CELLS && size < CELL);
    memcpy(record->cells[record->count], bytes, size);
    record->cells[record->count++][size] = '\0';
}

static void take_end(int end, void *data) {
    struct records *const r = data;
    (void)end;
    assert_true(++r->count < COUNT(r->list));
}

static void read_records(const char *text, size_t size, struct records *r) {
    struct csv_parser parser;
    assert_int_equal(csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI), 0);
    assert_int_equal(csv_parse(&parser, text, size, take_cell, take_end, r), size);
    assert_int_equal(csv_fini(&parser, take_cell, take_end, r), 0);
    csv_free(&parser);
}

#define STYLES SIZE_BENCH_STYLES
#define LINES  SIZE_BENCH_LINES
static const int64_t counts[] = {1, 7};

static double number(const char *cell) {
    char *end;
    const double found = strtod(cell, &end);
    assert_true(end != cell && *end == '\0');
    return found;
}

/* What stands in a record of a size that can be made: cells are told by the names of the heading,
 * which test_sizes holds in their order. */
static void check_price(const struct record *r, const struct size_price *p, double area,
                        int64_t count) {
    const double price = number(r->cells[7]);
    assert_true(p->has);
    assert_true(fabs(price - (double)p->outcome.before_tax / 100) < 1e-9);
    assert_true(fabs(number(r->cells[8]) - price / (double)count) < 0.00501);
    assert_true(fabs(number(r->cells[9]) - (double)p->outcome.client / 100) < 1e-9);
    assert_true(fabs(number(r->cells[10]) - (double)p->outcome.direct / 100) < 1e-9);
    assert_true(fabs(number(r->cells[12]) - (double)p->outcome.bought / 100) < 1e-9);
    assert_true(fabs(number(r->cells[14]) - price / area / (double)count) < 0.00501);
    const double flat = number(r->cells[15]);
    const char *const does = flat < number(r->cells[10]) ? "loses money"
                             : flat < price              ? "earns less"
                                                         : "bears it";
    assert_string_equal(r->cells[16], does);
}

static const char *const heads[] = {
    "style",      "width",          "height",           "cannot be made", "area of one in sq ft",
    "way",        "count",          "price before tax", "price of each",  "client pays",
    "direct",     "left over",      "to buy",           "hours",          "price by area",
    "flat price", "flat price does"};

/* The records of one size from `at` on; returns where those of the next begin. */
static size_t check_line(const struct records *records, size_t at, const struct size_style *style,
                         const struct size_line *line) {
    const double wide = (double)line->row.width.amount / (double)NM_PER_INCH / 12;
    const double high = (double)line->row.height.amount / (double)NM_PER_INCH / 12;
    for (size_t k = 0; k < (size_t)SIZE_WAY_COUNT * COUNT(counts); k++, at++) {
        const struct record *const r = &records->list[at];
        const size_t way = k / COUNT(counts);
        const int64_t count = counts[k % COUNT(counts)];
        assert_string_equal(r->cells[0], style->name);
        assert_true(fabs(number(r->cells[1]) / 12 - wide) < 1e-9);
        assert_true(fabs(number(r->cells[2]) / 12 - high) < 1e-9);
        assert_string_equal(r->cells[3], line->reason == NULL ? "" : line->reason);
        assert_string_equal(r->cells[5], way == 0 ? "added to this job" : "alone");
        assert_int_equal(strtoll(r->cells[6], NULL, 10), count);
        if (line->reason != NULL) {
            for (size_t c = 7; c < COUNT(heads); c++) {
                assert_string_equal(r->cells[c], "");
            }
            continue;
        }
        assert_true(fabs(number(r->cells[4]) - wide * high) < 0.00006);
        check_price(r, &line->prices[way][k % COUNT(counts)], wide * high, count);
    }
    return at;
}

static void test_sizes(void **state) {
    static const char *const edits[] = {"operation work|per = door\nminutes = 10",
                                        "door plain|operations = work", "shop|profit = 20 % markup",
                                        "sale|tax = 8 %\ntax on = selling price", NULL};
    static struct records records;
    struct bench bench;
    struct size_table table;
    struct pool pool;
    char *text = NULL;
    size_t size;
    size_t at = 1;
    (void)state;
    pool_init(&pool);
    bench_open(&bench, "sizes", BENCH_INCH, edits, "id,count,width,height\nA,4,15,30\n");
    bench_sound(&bench);
    size_bench_make(&table, &bench, counts, COUNT(counts), &pool);
    FILE *const out = open_memstream(&text, &size);
    assert_non_null(out);
    csv_size_table(out, &bench.estimate, &table);
    assert_int_equal(fclose(out), 0);
    records.count = 0;
    read_records(text, size, &records);
    assert_int_equal(records.count, 1 + (size_t)STYLES * LINES * SIZE_WAY_COUNT * COUNT(counts));
    for (size_t i = 0; i < records.count; i++) {
        assert_int_equal(records.list[i].count, COUNT(heads));
    }
    for (size_t c = 0; c < COUNT(heads); c++) {
        assert_string_equal(records.list[0].cells[c], heads[c]);
    }
    for (size_t s = 0; s < STYLES; s++) {
        for (size_t l = 0; l < LINES; l++) {
            at = check_line(&records, at, &table.styles[s], &table.styles[s].lines[l]);
        }
    }
    free(text);
    pool_clear(&pool);
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_racks),
        cmocka_unit_test(test_notes),
        cmocka_unit_test(test_sizes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
