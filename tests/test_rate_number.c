/* SPDX-License-Identifier: MIT */
/* Numbers of the rates as they are kept: with their ranges, and as they are written anew. What each
 * comes to is written by hand. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* How a key is written, and what of it is kept: its number that has a range, or else its first. */
static const struct number_case {
    const char *edit, *section, *key;
    const char *lead, *likely, *low, *high; /* low: NULL where there is no range */
    const char *at_low;                     /* the value of the key with its low text in it */
    const char *at_tenth;                   /* a tenth more of it, as it would be written */
    const char *reason;
} numbers[] = {
    {"shop|labor rate = 38.00 per hour (34 to 44.50)  ;  two wage slips ", "shop", "labor rate", "",
     "38.00 per hour", "34 per hour", "44.50 per hour", "34 per hour", "41.8 per hour",
     "two wage slips"},
    {"shop|labor rate = 38.00 per hour ; no range", "shop", "labor rate", "", "38.00 per hour",
     NULL, NULL, NULL, "41.8 per hour", "no range"},
    {"shop|minimum job = 450.05", "shop", "minimum job", "", "450.05", NULL, NULL, NULL, "495.06",
     NULL},
    {"lumber poplar|price = 4.1 per bf (3.80 per board foot to 4.605/bf) ;", "lumber poplar",
     "price", "", "4.1 per bf", "3.80 per board foot", "4.605/bf", "3.80 per board foot",
     "4.51 per bf", NULL},
    {"lumber poplar|waste = \"45 % lost (40 to 50)\" # of what is bought\nprice = 4 per bf",
     "lumber poplar", "waste", "", "45 % lost", "40 % lost", "50 % lost", "40 % lost",
     "49.5 % lost", "of what is bought"},
    {"lumber poplar|price from = 100 bf at 3.75 per bf (3.5 to 4), 500 bf at 3 per bf",
     "lumber poplar", "price from", "100 bf at ", "3.75 per bf", "3.5 per bf", "4 per bf",
     "100 bf at 3.5 per bf, 500 bf at 3 per bf", "4.125 per bf", NULL},
    {"lumber poplar|price from = 100 bf at 3.75 per bf, 500 bf at 3 per bf (2 to 3.10)",
     "lumber poplar", "price from", "500 bf at ", "3 per bf", "2 per bf", "3.10 per bf",
     "100 bf at 3.75 per bf, 500 bf at 2 per bf", "3.3 per bf", NULL},
    {"lumber poplar|price = 4.10 per bf (3.80 to 4.60) (on 2026-01-10, 4 % a year) ; two yards",
     "lumber poplar", "price", "", "4.10 per bf", "3.80 per bf", "4.60 per bf",
     "3.80 per bf (on 2026-01-10, 4 % a year)", "4.51 per bf", "two yards"},
    {"lumber poplar|price from = 100 bf at 3.75 per bf (on 2024-02-29, -2.5 % per year), 500 bf at "
     "3 "
     "per bf (2 to 3.10)",
     "lumber poplar", "price from", "500 bf at ", "3 per bf", "2 per bf", "3.10 per bf",
     "100 bf at 3.75 per bf (on 2024-02-29, -2.5 % per year), 500 bf at 2 per bf", "3.3 per bf",
     NULL},
    {"saw|kerf = 3.2 mm (3 to 1/8 in) ; blade", "saw", "kerf", "", "3.2 mm", NULL, NULL, NULL, NULL,
     NULL},
    {"saw|kerf = 1/8 in (1/16 to 3.5 mm) ; blade", "saw", "kerf", "", "1/8 in", "1/16 in", "3.5 mm",
     "1/16 in", "0.1375 in", "blade"},
    {"saw|kerf = 1/8 (1/16 to 1/4)", "saw", "kerf", "", "1/8", "1/16", "1/4", "1/16", "0.1375 in",
     NULL},
    {"lumber poplar|board lengths = 8 ft, 10 ft (9 to 11), 12 ft", "lumber poplar", "board lengths",
     "", "10 ft", "9 ft", "11 ft", "8 ft, 9 ft, 12 ft", "132 in", NULL},
    {"spray gun|transfer efficiency = 60 % (55 to 62.5) ; weighed", "spray gun",
     "transfer efficiency", "", "60 %", "55 %", "62.5 %", "55 %", "66 %", "weighed"},
    {"spray gun|fixed loss = 6 fl oz per mix (4 to 8.5)\ntransfer efficiency = 60 %", "spray gun",
     "fixed loss", "", "6 fl oz per mix", "4 fl oz per mix", "8.5 fl oz per mix", "4 fl oz per mix",
     "6.6 fl oz per mix", NULL},
};

/* The number of that key with a range, or its first; NULL: none is kept. */
static const struct rate_number *find(const struct rates *rates, const char *section,
                                      const char *key) {
    const struct rate_number *found = NULL;
    for (size_t i = 0; i < rates->numbers.count; i++) {
        const struct rate_number *const n = &rates->numbers.list[i];
        if (strcmp(n->section, section) == 0 && strcmp(n->key, key) == 0 &&
            (found == NULL || rate_number_ranged(n))) {
            found = n;
        }
    }
    return found;
}

static void expect(struct bench *bench, const char *what, const char *text, const char *expected) {
    if ((text == NULL) != (expected == NULL) || (text != NULL && strcmp(text, expected) != 0)) {
        bench_wrong(bench, "%s is '%s', not '%s'", what, text == NULL ? "-" : text,
                    expected == NULL ? "-" : expected);
    }
}

static void check(struct bench *bench, const struct number_case *c) {
    struct pool *const pool = &bench->rates.pool;
    const struct rate_number *const n = find(&bench->rates, c->section, c->key);
    if (c->at_tenth == NULL) { /* a range that was refused */
        if (n != NULL || !bench_has(bench, "bad-range")) {
            bench_wrong(bench, "kept");
        }
        return;
    }
    if (n == NULL) {
        bench_wrong(bench, "not kept");
        return;
    }
    expect(bench, "lead", n->lead, c->lead);
    expect(bench, "likely", n->likely, c->likely);
    expect(bench, "low", n->low_text, c->low);
    expect(bench, "high", n->high_text, c->high);
    expect(bench, "reason", n->reason, c->reason);
    const bool is_length = n->value.unit == UNIT_NM;
    expect(bench, "a tenth more",
           rate_number_text(n, n->value.amount * 11 / (is_length ? 10 : 1),
                            (uint8_t)(n->value.decimals + (is_length ? 0 : 1)), pool),
           c->at_tenth);
    if (c->at_low != NULL) {
        expect(bench, "at its low", rate_number_with(n, n->low_text, pool), c->at_low);
    }
}

static void kept_as_written(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(numbers); i++) {
        struct bench bench;
        bench_open(&bench, numbers[i].edit, BENCH_INCH,
                   (const char *const[BENCH_MOST_EDITS]){numbers[i].edit}, "D1,18,30\n");
        check(&bench, &numbers[i]);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Days that are none, rises that are none, and what has no price. */
static void days_refused(void **state) {
    static const struct {
        const char *edit, *id;
    } cases[] = {
        {"lumber poplar|price = 4 per bf (on 2026-02-29)", "bad-date"},
        {"lumber poplar|price = 4 per bf (on 10 January 2026)", "bad-date"},
        {"lumber poplar|price = 4 per bf (on )", "bad-date"},
        {"lumber poplar|price = 4 per bf (on 2026-01-10, 4 a year)", "wrong-unit"},
        {"lumber poplar|price = 4 per bf (on 2026-01-10, 4 %)", "wrong-unit"},
        {"lumber poplar|price = 4 per bf (on 2026-01-10, 101 % a year)", "out-of-range"},
        {"lumber poplar|price = 4 per bf (on 2026-01-10, -51 % a year)", "out-of-range"},
        {"lumber poplar|price = 4 per bf (on 2026-01-10,)", "not-a-number"},
        {"lumber poplar|waste = 40 % added (on 2026-01-10)", "date-not-of-price"},
        {"plausible|labor rate = 20 to 90 per hour (on 2026-01-10)", "date-not-of-price"},
        {"saw|kerf = 1/8 in (on 2026-01-10)", "not-a-length"},
        {"spray gun|fixed loss = 6 fl oz per mix (on 2026-01-10)", "wrong-unit"},
        {"sale|delivery = 120.00 (on 2026-01-10)", "date-not-of-price"},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        bench_open(&bench, cases[i].edit, BENCH_INCH,
                   (const char *const[BENCH_MOST_EDITS]){cases[i].edit}, "D1,18,30\n");
        if (!bench_has(&bench, cases[i].id)) {
            fail_msg("%s: no %s", cases[i].edit, cases[i].id);
        }
        (void)bench_close(&bench);
    }
}

/* Limits of lists, what is usual and numbers of the job are not moved. */
static void not_kept(void **state) {
    static const struct {
        const char *edit, *section, *key;
    } cases[] = {
        {"hinges|by weight = 15 lb (12 to 16): 2, 30 lb: 3", "hinges", "by weight"},
        {"plausible|labor rate = 20 to 90 per hour (80 to 95)", "plausible", "labor rate"},
        {"sale|discount = 5 % (0 to 10)", "sale", "discount"},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        bench_open(&bench, cases[i].edit, BENCH_INCH,
                   (const char *const[BENCH_MOST_EDITS]){cases[i].edit}, "D1,18,30\n");
        const struct rate_number *const n = find(&bench.rates, cases[i].section, cases[i].key);
        if ((n != NULL && rate_number_ranged(n)) || !bench_has(&bench, "range-unused")) {
            bench_wrong(&bench, "its range is kept, or not asked about");
        }
        assert_int_equal(bench_close(&bench), 0);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(kept_as_written),
        cmocka_unit_test(days_refused),
        cmocka_unit_test(not_kept),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
