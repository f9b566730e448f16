/* SPDX-License-Identifier: MIT */
/* Change orders of small jobs, line by line, and price lists: what is told of two lists is what
 * differs in them, and all that is told adds up to what the client pays more. Expected lines are
 * written by hand. */
#include "support.h"

#include "file_bench.h"
#include "report/offer_make/offer_maker.h"
#include "size_bench.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define MOST_LINES 24

struct list_of {
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
};

struct order_case {
    const char *name;
    struct list_of older, newer;
    const char *lines[MOST_LINES]; /* ended by NULL */
};

/* --- change orders --- */

static void tell_order(struct dump *told, const struct offer *o) {
    static const char *const kinds[] = {
        [OFFER_TAKEN_OFF] = "off", [OFFER_CHANGED] = "changed", [OFFER_ADDED] = "added"};
    *told = (struct dump){.text = "\n", .used = 1};
    for (size_t i = 0; i < o->changes->row_count; i++) {
        const struct offer_change *const c = &o->changes->rows[i];
        dump_add(told, "%s %s: %s = %s\n", kinds[c->kind], c->id, c->words, c->amount.text);
    }
    for (size_t i = 0; i < o->changes->line_count; i++) {
        const struct offer_compared *const c = &o->changes->lines[i];
        dump_add(told, "%s: %s -> %s = %s%s\n", c->words, c->older.text, c->newer.text,
                 c->difference.text, c->total ? " total" : "");
    }
    for (size_t i = 0; i < o->included.count; i++) {
        dump_add(told, "now: %s\n", o->included.text[i]);
    }
    for (size_t i = 0; i < o->excluded.count; i++) {
        dump_add(told, "no longer: %s\n", o->excluded.text[i]);
    }
}

/* The lines between doors and total, and rows where they are told, add up. */
static void check_sums(struct bench *bench, const struct offer *o) {
    const struct offer_changes *const c = o->changes;
    int64_t lines = 0;
    int64_t rows = 0;
    int64_t doors = 0;
    int64_t total = 0;
    for (size_t i = 0; i < c->line_count; i++) {
        const struct offer_compared *const line = &c->lines[i];
        const bool sum = line->older.text[0] == '\0' && line->newer.text[0] == '\0';
        if (line->total) {
            total = line->difference.value;
        } else if (sum) {
            rows += line->difference.value;
        } else if (strncmp(line->words, "Before ", 7) != 0) {
            lines += line->difference.value;
            doors += i == 0 || strncmp(line->words, "Doors", 5) == 0 ? line->difference.value : 0;
        }
        if (!sum && line->newer.value - line->older.value != line->difference.value) {
            bench_wrong(bench, "'%s' is not what is less what was", line->words);
        }
    }
    if (lines != total) {
        bench_wrong(bench, "lines come to %lld, the total to %lld more", (long long)lines,
                    (long long)total);
    }
    if (c->each && rows != doors) {
        bench_wrong(bench, "rows come to %lld, the doors to %lld more", (long long)rows,
                    (long long)doors);
    }
}

#define CHARGES(text) "sale|charges = " text

static const struct order_case orders[] = {
    {"nothing changes",
     {{NULL}, "A,15,30\n"},
     {{NULL}, "A,15,30\n"},
     {"Doors and fronts: 11.15 -> 11.15 = 0.00", "Total, USD: 11.15 -> 11.15 = 0.00 total"}},
    {"a row is taken off, one changed, one added",
     {{"job|detail = each", NULL}, "A,15,30\nB,15,30\nC,15,30\n"},
     {{"job|detail = each", NULL}, "A,15,30\nB,16,30\nD,18,30\n"},
     {"off C: 1 of 15 x 30: door, plain = -8.48",
      "changed B: 1 of 15 x 30, now 1 of 16 x 30 = +0.25",
      "added D: 1 of 18 x 30: door, plain = +9.54", "Rows taken off:  ->  = -8.48",
      "Rows changed:  ->  = +0.25", "Rows added:  ->  = +9.54", "All other rows:  ->  = -0.16",
      "Doors and fronts: 25.44 -> 26.59 = +1.15", "Total, USD: 25.44 -> 26.59 = +1.15 total"}},
    {"the count alone",
     {{"job|detail = each", NULL}, "id,width,height,count\nA,15,30,2\n"},
     {{"job|detail = each", NULL}, "id,width,height,count\nA,15,30,3\n"},
     {"changed A: 2 of 15 x 30, now 3 of 15 x 30 = +7.12", "Rows changed:  ->  = +7.12",
      "Doors and fronts: 18.32 -> 25.44 = +7.12", "Total, USD: 18.32 -> 25.44 = +7.12 total"}},
    {"one door becomes a pair, with a note",
     {{"job|detail = each", NULL}, "id,width,height,leaves,note\nA,15,30,1,\n"},
     {{"job|detail = each", NULL}, "id,width,height,leaves,note\nA,15,30,2,over the sink\n"},
     {"changed A: 1 door in each, now 2 doors in each; door, plain, now pair of doors, plain; "
      "door, now door; over the sink = +7.17",
      "Rows changed:  ->  = +7.17", "Doors and fronts: 11.15 -> 18.32 = +7.17",
      "Total, USD: 11.15 -> 18.32 = +7.17 total"}},
    {"tax, discount and charges",
     {{"sale|tax = 6 %\ntax on = selling price\ndiscount = 5 %", CHARGES("80.00 for samples"),
       NULL},
      "A,15,30\n"},
     {{"sale|tax = 7 %\ntax on = selling price", CHARGES("45.00 for templates"), NULL},
      "A,15,30\n"},
     {"Doors and fronts: 11.15 -> 11.15 = 0.00", "Less discount, 5 %: -0.56 ->  = +0.56",
      "Samples: 80.00 ->  = -80.00", "Templates:  -> 45.00 = +45.00",
      "Before tax: 90.59 -> 56.15 = -34.44", "Tax, 6 %, now 7 %: 5.44 -> 3.93 = -1.51",
      "Total, USD: 96.03 -> 60.08 = -35.95 total", "now: Templates", "no longer: Samples"}},
    {"two charges of one name",
     {{CHARGES("80.00 for samples, 45.00 for samples"), NULL}, "A,15,30\n"},
     {{CHARGES("80.00 for samples, 50.00 for samples"), NULL}, "A,15,30\n"},
     {"Doors and fronts: 11.15 -> 11.15 = 0.00", "Samples: 80.00 -> 80.00 = 0.00",
      "Samples: 45.00 -> 50.00 = +5.00", "Total, USD: 136.15 -> 141.15 = +5.00 total"}},
    {"one of two charges of one name is dropped",
     {{CHARGES("80.00 for samples, 45.00 for samples"), NULL}, "A,15,30\n"},
     {{CHARGES("80.00 for samples"), NULL}, "A,15,30\n"},
     {"Doors and fronts: 11.15 -> 11.15 = 0.00", "Samples: 45.00 ->  = -45.00",
      "Samples: 80.00 -> 80.00 = 0.00", "Total, USD: 136.15 -> 91.15 = -45.00 total"}},
    {"a minimum is met",
     {{"shop|minimum job = 500", NULL}, "A,15,30\n"},
     {{"shop|minimum job = 500", NULL}, "id,width,height,count\nA,15,30,40\n"},
     {"changed A: 1 of 15 x 30, now 40 of 15 x 30 = 0.00",
      "Doors and fronts: 11.15 -> 334.00 = +322.85",
      "Up to the least that a job is done for: 488.85 -> 166.00 = -322.85",
      "Total, USD: 500.00 -> 500.00 = 0.00 total"}},
    {"another wood, finish and hinges",
     {{NULL}, "A,15,30\n"},
     {{"make|frame = thick-poplar\nfinish = painted\nhinge = hinge", NULL}, "A,15,30\n"},
     {"Doors and fronts: 11.15 -> 21.73 = +10.58", "Total, USD: 11.15 -> 21.73 = +10.58 total",
      "now: Finish: painted, on both faces and the edges.", "now: Hinges: hinge, 2 supplied",
      "now: Not included: Boring the doors for their hinges",
      "now: Not included: Fitting the hinges to the doors",
      "now: Not included: Fixing the hinge plates to the cabinets",
      "no longer: Finish: left bare, without a finish.",
      "no longer: Not included: Hinges, boring for them and fitting them"}},
};

static int check_order(const struct order_case *c) {
    struct bench older;
    struct bench newer;
    struct offer before;
    struct offer now;
    struct offer order;
    struct dump told;
    struct dump wanted = {.text = "\n", .used = 1};
    bench_open(&older, c->name, BENCH_INCH, c->older.edits, c->older.doors);
    bench_open(&newer, c->name, BENCH_INCH, c->newer.edits, c->newer.doors);
    bench_sound(&older);
    bench_sound(&newer);
    if (older.wrong == 0 && newer.wrong == 0) {
        assert_true(offer_make(&before, &older.estimate, NULL, 0));
        assert_true(offer_make(&now, &newer.estimate, NULL, 0));
        assert_true(offer_order_make(&order, &before, &now, &newer.estimate));
        tell_order(&told, &order);
        for (size_t i = 0; i < MOST_LINES && c->lines[i] != NULL; i++) {
            dump_add(&wanted, "%s\n", c->lines[i]);
        }
        if (strcmp(told.text, wanted.text) != 0) {
            bench_wrong(&newer, "is%sexpected%s", told.text, wanted.text);
        }
        check_sums(&newer, &order);
        offer_clear(&order);
        offer_clear(&before);
        offer_clear(&now);
    }
    return bench_close(&older) + bench_close(&newer);
}

static void test_orders(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(orders); i++) {
        wrong += check_order(&orders[i]);
    }
    assert_int_equal(wrong, 0);
}

/* --- price lists --- */

/* Counts stand five side by side; a style says what it is and of what once, and has tables for
 * doors that are added and for doors alone. */
static void test_prices(void **state) {
    static const int64_t counts[] = {1, 2, 3, 5, 8, 13, 21};
    static const char *const styles[] = {"Plain", "Slab"};
    static const char *const made[] = {"Frames: yellow-poplar (poplar, tulip poplar). Panels: ply. "
                                       "Finish: left bare, without a finish.",
                                       "Slabs: board. Finish: left bare, without a finish."};
    struct bench bench;
    struct size_table table;
    struct offer offer;
    struct offer list;
    struct pool pool;
    (void)state;
    pool_init(&pool);
    bench_open(&bench, "prices", BENCH_INCH, NULL, "id,count,width,height\nA,4,15,30\n");
    bench_sound(&bench);
    size_bench_make(&table, &bench, counts, COUNT(counts), &pool);
    assert_true(offer_make(&offer, &bench.estimate, NULL, 0));
    assert_true(offer_prices_make(&list, &offer, &bench.estimate, &table));
    assert_string_equal(list.paper, "Price list");
    assert_string_equal(list.client, "");
    assert_int_equal(list.door_count + list.line_count + list.payment_count + list.option_count, 0);
    assert_int_equal(list.prices->table_count, 8);
    for (size_t t = 0; t < list.prices->table_count; t++) {
        const struct offer_price_table *const told = &list.prices->tables[t];
        const size_t s = t / 4;
        const size_t way = t % 4 / 2;
        const size_t from = t % 2 * 5;
        assert_string_equal(told->style, t % 4 == 0 ? styles[s] : "");
        assert_string_equal(told->made, t % 4 == 0 ? made[s] : "");
        assert_string_equal(told->head, way == 0 ? "Price of each, ordered together with this job"
                                                 : "Price of each, ordered alone");
        assert_int_equal(told->count, t % 2 == 0 ? 5 : 2);
        assert_int_equal(told->size_count, SIZE_BENCH_LINES);
        for (size_t c = 0; c < told->count && from + c < COUNT(counts); c++) {
            char head[16];
            (void)snprintf(head, sizeof head, "of %lld", (long long)counts[from + c]);
            assert_string_equal(told->counts[c], head);
        }
        assert_string_equal(told->sizes[0].words, "15 x 30");
        for (size_t l = 0; l < told->size_count; l++) {
            const struct size_line *const line = &table.styles[s].lines[l];
            for (size_t c = 0; c < told->count; c++) {
                const struct offer_amount *const price = &told->sizes[l].prices[c];
                if (line->reason != NULL) {
                    assert_string_equal(price->text, "");
                } else {
                    assert_int_equal(price->value, line->prices[way][from + c].each);
                    assert_true(price->text[0] != '\0' && price->decimals == 2);
                }
            }
        }
    }
    assert_string_equal(list.list_note, "A dash: a door of that size is not made so.");
    for (size_t i = 0; i < list.fact_count; i++) {
        assert_string_not_equal(list.facts[i].label, "Number");
    }
    offer_clear(&list);
    offer_clear(&offer);
    pool_clear(&pool);
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_orders),
        cmocka_unit_test(test_prices),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
