/* SPDX-License-Identifier: MIT */
/* What of invented rates a job still takes, and what of it is the shop's own by now. */
#include "support.h"

#include "report/words/moves.h"
#include "report/words/shipped.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

struct shipped_case {
    const char *name, *shop; /* keys of [shop] */
    size_t used, left;
    const char *groups; /* `kind: names;` each */
};

/* The plain job of a slab of one board: 18 x 30 of a sheet at 80.00, an hour's rate. */
static const struct shipped_case cases[] = {
    {"all", "invented = yes", 10, 10,
     "shop: labor rate, hours per day;sheet: board;machine: saw;operation: cut;"},
    {"a key",
     "invented = yes\n"
     "own = labor rate",
     10, 9, "shop: hours per day;sheet: board;machine: saw;operation: cut;"},
    {"a section",
     "invented = yes\n"
     "own = Sheet Board",
     10, 5, "shop: labor rate, hours per day;machine: saw;operation: cut;"},
    {"a kind",
     "invented = yes\n"
     "own = operation, machine",
     10, 7, "shop: labor rate, hours per day;sheet: board;"},
    {"a whole section",
     "invented = yes\n"
     "own = shop",
     10, 8, "sheet: board;machine: saw;operation: cut;"},
    {"what the job does not use",
     "invented = yes\n"
     "own = lumber poplar, glass",
     10, 10, "shop: labor rate, hours per day;sheet: board;machine: saw;operation: cut;"},
    {"nothing",
     "invented = yes\n"
     "own = shop, sheet board, operation, machine saw",
     10, 0, ""},
};

static void counted(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        const struct shipped_case *const c = &cases[i];
        char shop[256];
        char groups[512] = "";
        struct bench bench;
        struct pool pool;
        (void)snprintf(shop, sizeof shop, "shop|%s", c->shop);
        bench_open(
            &bench, c->name, BENCH_INCH,
            (const char *const[BENCH_MOST_EDITS]){
                shop, "make|style = slab", "machine saw|rate = 3.00 per hour\nkind = other",
                "operation cut|machine = saw\nper = door\nminutes = 2\nsetup = 3 min per job",
                "door slab|operations = cut"},
            "D1,18,30\n");
        bench_sound(&bench);
        pool_init(&pool);
        const struct shipped s = shipped_of(&bench.estimate, &pool);
        for (size_t g = 0; g < s.group_count; g++) {
            const size_t used = strlen(groups);
            (void)snprintf(groups + used, sizeof groups - used, "%s: %s;", s.groups[g].kind,
                           s.groups[g].names);
        }
        if (s.used != c->used || s.left != c->left || strcmp(groups, c->groups) != 0) {
            bench_wrong(&bench, "%zu of %zu, %s", s.left, s.used, groups);
        }
        if (!shipped_example(&bench.estimate)) {
            bench_wrong(&bench, "no example");
        }
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Rates that do not say so are the shop's own, all of them. */
static void own_rates(void **state) {
    struct bench bench;
    (void)state;
    bench_open(&bench, "own", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0}, "D1,18,30\n");
    bench_sound(&bench);
    assert_false(shipped_example(&bench.estimate));
    assert_int_equal(bench.problems.count, 0);
    assert_false(shipped_still(
        &bench.rates, setting_at(&bench.rates.settings, bench.rates.shop.labor_rate.place)));
    assert_int_equal(bench_close(&bench), 0);
}

/* A name that nothing has; a list that has no effect. */
static void asked(void **state) {
    static const struct {
        const char *shop, *id, *text;
    } faults[] = {
        {"shop|invented = yes\n"
         "own = labor rat",
         "unknown-name",
         "own 'labor rat' is neither a key of [shop] nor a section of this file; did you mean "
         "'labor rate'?"},
        {"shop|invented = yes\n"
         "own = sheet boardx",
         "unknown-name",
         "own 'sheet boardx' is neither a key of [shop] nor a section of this file; did you mean "
         "'sheet board'?"},
        {"shop|invented = yes\n"
         "own = everything else",
         "unknown-name",
         "own 'everything else' is neither a key of [shop] nor a section of this file; expected "
         "names like 'labor rate, lumber poplar, machine'"},
        /* a key of a section that is not [shop] says nothing of whose it is */
        {"shop|invented = yes\n"
         "own = kerf",
         "unknown-name", NULL},
        {"shop|own = labor rate", "without-effect", NULL},
        {"shop|invented = no\n"
         "own = labor rate",
         "without-effect", NULL},
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(faults); i++) {
        struct bench bench;
        bench_open(&bench, faults[i].shop, BENCH_INCH,
                   (const char *const[BENCH_MOST_EDITS]){faults[i].shop}, "D1,18,30\n");
        if (bench.problems.count != 1 || strcmp(bench.problems.list[0].id, faults[i].id) != 0 ||
            (faults[i].text != NULL && strcmp(bench.problems.list[0].text, faults[i].text) != 0)) {
            bench_wrong(&bench, "%zu problems, %s", bench.problems.count,
                        bench.problems.count == 0 ? "" : bench.problems.list[0].text);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

static void said(void **state) {
    struct pool pool;
    (void)state;
    pool_init(&pool);
    assert_string_equal(shipped_words(&(struct shipped){.used = 12, .left = 9}, &pool),
                        "Still as shipped: 9 of the 12 numbers that this job takes from the rates");
    assert_string_equal(shipped_words(&(struct shipped){.used = 12, .left = 12}, &pool),
                        "Still as shipped: all 12 numbers that this job takes from the rates");
    assert_string_equal(shipped_words(&(struct shipped){.used = 12}, &pool),
                        "None of the 12 numbers that this job takes from the rates is as shipped: "
                        "'invented = yes' can go");
    pool_clear(&pool);
}

/* What the total grows by, in cents, once the number of that setting is a tenth more: all its
 * figures are set, and the tape is replayed. INT64_MIN: it is a list, whose limits would
 * move too, or a tenth of it is no number that it can have. */
static int64_t replayed(const char *job, size_t setting) {
    struct bench bench;
    bench_open_job(&bench, job);
    struct tape *const tape = &bench.estimate.tape;
    const int64_t before = tape_scaled(tape, bench.estimate.sale.total, 2);
    bool fine = true;
    int64_t first = 0;
    for (uint32_t id = 1; id < tape->count; id++) {
        const fig f = {id};
        if (tape_op(tape, f) == OP_GIVEN &&
            setting_at(&bench.rates.settings, tape_origin(tape, f).place) ==
                &bench.rates.settings.list[setting]) {
            const int64_t value = tape_amount(tape, f);
            first = first == 0 ? value : first;
            fine = fine && value >= 20 && value == first;
            tape_set(tape, f, value * 11 / 10);
        }
    }
    (void)tape_replay(tape);
    const int64_t grown = tape_scaled(tape, bench.estimate.sale.total, 2) - before;
    assert_int_equal(bench_close(&bench), 0);
    return fine ? grown : INT64_MIN;
}

/* The slope foretells what a replay with a tenth more comes to. Prices are rounded up door by door,
 * and a tenth is not little: a quarter and five may lie between. */
static void moves_are_those_of_a_replay(void **state) {
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini"};
    size_t compared = 0;
    (void)state;
    for (size_t j = 0; j < COUNT(jobs); j++) {
        struct bench bench;
        struct pool pool;
        bench_open_job(&bench, jobs[j]);
        pool_init(&pool);
        const struct moves moves = moves_of(&bench.estimate, &pool);
        assert_true(moves.count > 50);
        for (size_t i = 0; i < 12; i++) {
            const struct move *const m = &moves.list[i];
            const int64_t cents =
                replayed(jobs[j], (size_t)(m->setting - bench.rates.settings.list));
            const double adds = (double)cents / 100;
            if (cents != INT64_MIN && fabs(adds - m->adds) > 5 + fabs(m->adds) / 4) {
                bench_wrong(&bench, "%s %s: %.2f, not %.2f", m->setting->title, m->setting->key,
                            m->adds, adds);
            }
            compared += cents != INT64_MIN ? 1 : 0;
            assert_true(i == 0 || fabs(m->adds) <= fabs(m[-1].adds));
        }
        pool_clear(&pool);
        assert_int_equal(bench_close(&bench), 0);
    }
    assert_true(compared > 12);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(counted), cmocka_unit_test(own_rates),
        cmocka_unit_test(asked),   cmocka_unit_test(moves_are_those_of_a_replay),
        cmocka_unit_test(said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
