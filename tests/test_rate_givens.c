/* SPDX-License-Identifier: MIT */
/* Where numbers of the rates stand on the tape: of the givens of their line just those that read
 * otherwise on the tape of the same job with another number in its file. */
#include "price/rate_givens.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define EDITS 10
static const char *const edits[BENCH_MOST_EDITS] = {
    "make|finish = painted\npanel = board\nhinge = hinge\ncolor = green",
    "shop|labor rate = 60.00 per hour (50 to 72)\nprofit = 20 % markup (15 to 25)\n"
    "price sheets by = plan",
    "saw|kerf = 1/8 (1/16 to 3/16)",
    "spray gun|transfer efficiency = 60 % (55 to 62.5)\nfixed loss = 6 fl oz per mix (4 to 8.5)",
    "coating paint|wet film = 4 mil (3 to 5)\ntinted = yes\ntouch-up = 0.25 gal per color (0.2 to "
    "0.3)",
    "finish painted|coats = paint x 2\noperations = mask",
    "door plain|operations = saw",
    "lumber poplar|price from = 2 bf at 3.90 per bf (3 to 4), 4 bf at 3.80 per bf",
    "operation saw|per = door\nminutes = 10 (8 to 11)\nsetup = 30 min per length (20 to 60)\n"
    "machine = sander",
    "operation mask|per = door\nminutes = 10 (8 to 12)\nmachine = sander"};
#define DOORS "id,count,width,height\nD1,3,18,30\nD2,1,20,36\n"

/* A fiftieth more of the number with its range, as its file would say it. */
static const char *changed_text(const struct rate_number *n, struct pool *pool) {
    const bool is_length = n->value.unit == UNIT_NM;
    const int64_t amount = n->value.amount * 102 / (is_length ? 100 : 1);
    const uint8_t decimals = (uint8_t)(n->value.decimals + (is_length ? 0 : 2));
    const char *text = rate_number_text(n, amount, decimals, pool);
    if (rate_number_ranged(n)) {
        text = pool_words(pool, "%s (%s to %s)", text, n->low_text, n->high_text);
    }
    return rate_number_with(n, text, pool);
}

static bool is_listed(const struct rate_givens *givens, fig f) {
    for (size_t i = 0; i < givens->count; i++) {
        if (givens->list[i].id == f.id) {
            return true;
        }
    }
    return false;
}

/* What the tests have met. */
struct met {
    size_t ways[RATE_AS_FILM + 1], not_as_written;
};

/* Of two tapes that are alike but for one number. */
static void compare(struct bench *a, const struct tape *other, const struct rate_number *n,
                    const struct rate_givens *givens, struct met *met) {
    const struct tape *const tape = &a->estimate.tape;
    size_t listed = 0;
    bool all = true;
    assert_int_equal(tape->count, other->count);
    for (uint32_t i = 1; i < tape->count; i++) {
        const fig f = {i};
        const struct place from = tape_origin(tape, f).place;
        if (tape_op(tape, f) != OP_GIVEN || from.file != n->value.place.file ||
            from.line != n->value.place.line) {
            continue;
        }
        const bool differs = tape_scaled(tape, f, 6) != tape_scaled(other, f, 6);
        listed += is_listed(givens, f) ? 1 : 0;
        all = all && differs == is_listed(givens, f);
    }
    if (givens->as_written != all) {
        bench_wrong(a, "%s, %s: as written %d, but the givens that differ are%s those listed",
                    n->section, n->key, givens->as_written, all ? "" : " not");
    }
    assert_int_equal(listed, givens->count);
    met->not_as_written += givens->as_written ? 0 : 1;
    met->ways[givens->way] += givens->as_written && listed > 0 ? 1 : 0;
}

static void givens_differ(void **state) {
    (void)state;
    struct bench bench;
    struct met met = {0};
    bench_open(&bench, "givens", BENCH_INCH, edits, DOORS);
    bench_sound(&bench);
    struct pool *const pool = &bench.rates.pool;
    const struct rate_numbers *const numbers = &bench.rates.numbers;
    for (size_t i = 0; i < numbers->count; i++) {
        const struct rate_number *const n = &numbers->list[i];
        struct rate_givens givens;
        struct bench other;
        char edit[500];
        const char *own[BENCH_MOST_EDITS];
        if (!rate_number_may_differ(n) || n->value.amount == 0) {
            continue;
        }
        for (size_t k = 0; k < EDITS; k++) {
            own[k] = edits[k];
        }
        (void)snprintf(edit, sizeof edit, "%s|%s = %s", n->section, n->key, changed_text(n, pool));
        own[EDITS] = edit;
        own[EDITS + 1] = NULL;
        bench_open(&other, edit, BENCH_INCH, own, DOORS);
        bench_sound(&other);
        assert_true(rate_givens_find(&givens, &bench.estimate, n, pool));
        compare(&bench, &other.estimate.tape, n, &givens, &met);
        assert_int_equal(bench_close(&other), 0);
    }
    assert_true(met.ways[RATE_AS_IT_IS] > 10 && met.ways[RATE_AS_LENGTH] > 0 &&
                met.ways[RATE_AS_FILM] > 0 && met.not_as_written > 0);
    assert_int_equal(bench_close(&bench), 0);
}

#define MOST_MORE 3

/* Givens at the place of a kerf of 1/8 in, 1/16 to 3/16, which is not on the tape where no plan is
 * made: in millionths of an inch, ten-thousandths of a mil. */
static void at_its_place(void **state) {
    (void)state;
    static const char *const names[] = {"one", "two", "three"};
    static const struct {
        const char *name;
        struct {
            enum unit unit;
            int64_t amount; /* 0: none */
        } givens[MOST_MORE];
        size_t count;
        bool as_written;
    } said[] = {
        {"it", {{UNIT_IN, 125000}}, 1, true},
        {"its ends", {{UNIT_IN, 62500}, {UNIT_IN, 187500}}, 0, true},
        {"it and an end", {{UNIT_IN, 125000}, {UNIT_IN, 62500}}, 1, true},
        {"it and another", {{UNIT_IN, 125000}, {UNIT_IN, 62501}}, 1, false},
        {"another and it", {{UNIT_IN, 62501}, {UNIT_IN, 125000}}, 1, false},
        {"another and an end", {{UNIT_IN, 62501}, {UNIT_IN, 62500}}, 0, false},
        {"it twice, as two givens", {{UNIT_IN, 125000}, {UNIT_IN, 125000}}, 2, true},
        {"as a film", {{UNIT_MIL, 1250000}}, 1, true},
        {"an end as a film", {{UNIT_MIL, 625000}}, 0, true},
        {"another film", {{UNIT_MIL, 125000}}, 0, false},
        {"it, and as a film", {{UNIT_IN, 125000}, {UNIT_MIL, 1250000}}, 2, false},
        {"and as it is again",
         {{UNIT_IN, 125000}, {UNIT_MIL, 1250000}, {UNIT_IN, 125000}},
         3,
         false},
        {"no length", {{UNIT_COUNT, 125000}}, 0, false},
    };
    const char *const edit[] = {"saw|kerf = 1/8 (1/16 to 3/16)", NULL};
    int wrong = 0;
    for (size_t i = 0; i < COUNT(said); i++) {
        struct bench b;
        struct rate_givens givens;
        bench_open(&b, said[i].name, BENCH_INCH, edit, DOORS);
        const struct rate_number *n = b.rates.numbers.list;
        while (strcmp(n->key, "kerf") != 0) {
            n++;
        }
        for (size_t k = 0; k < MOST_MORE && said[i].givens[k].amount != 0; k++) {
            const enum unit unit = said[i].givens[k].unit;
            (void)tape_given(&b.estimate.tape, names[k], unit, unit == UNIT_MIL ? 4 : 6,
                             said[i].givens[k].amount, n->value.place);
        }
        assert_true(rate_givens_find(&givens, &b.estimate, n, &b.rates.pool));
        if (givens.count != said[i].count || givens.as_written != said[i].as_written) {
            bench_wrong(&b, "%zu, as written %d", givens.count, givens.as_written);
        }
        wrong += bench_close(&b);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    static const struct CMUnitTest tests[] = {cmocka_unit_test(givens_differ),
                                              cmocka_unit_test(at_its_place)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
