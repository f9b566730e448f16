/* SPDX-License-Identifier: MIT */
/* What stands on the sheet to measure on: what is known before the visit, lines to write on for
 * what is not, the step that sizes are measured to in the unit of the sheet, names of the rates. */
#include "support.h"

#include "report/visit/visit_parts.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum known { KNOW_NOTHING, KNOW_RATES, KNOW_JOB };

struct visit_case {
    const char *name;
    enum bench_unit bench;
    enum known known;
    enum length_unit unit; /* of the sheet */
    const char *edits[4];
    const char *fit, *size; /* NULL: not looked at */
    const char *names;      /* lines behind the first two, parted by ` | `; NULL: not looked at */
};

#define LINE_  "________"
#define GAP_   "   gap between the leaves of a pair: "
#define ASKED_ "Width and height are of   [   ] the openings   [   ] the finished doors"

static const struct visit_case cases[] = {
    {"nothing is known",
     BENCH_INCH,
     KNOW_NOTHING,
     LENGTH_INCH,
     {NULL},
     "Overlay, each side: " LINE_ "   or inset, reveal each side: " LINE_ GAP_ LINE_,
     "All sizes in inches. " ASKED_,
     ""},
    {"nothing is known, in millimeters",
     BENCH_INCH,
     KNOW_NOTHING,
     LENGTH_MM,
     {NULL},
     NULL,
     "All sizes in millimeters. " ASKED_,
     ""},

    /* the step of the shop, raised where the sheet counts otherwise: 1/32 in are 0.79375 mm, which
     * is not more than 0.8; 0.5 mm are 1.26 64ths, so 2 of them */
    {"a step in inches",
     BENCH_INCH,
     KNOW_RATES,
     LENGTH_INCH,
     {"saw|round sizes to = 1/32", NULL},
     NULL,
     "All sizes in inches, to 1/32. " ASKED_,
     NULL},
    {"the same on a sheet in millimeters",
     BENCH_INCH,
     KNOW_RATES,
     LENGTH_MM,
     {"saw|round sizes to = 1/32", NULL},
     NULL,
     "All sizes in millimeters, to 0.8. " ASKED_,
     NULL},
    {"a step in millimeters",
     BENCH_MM,
     KNOW_RATES,
     LENGTH_MM,
     {"saw|round sizes to = 0.5", NULL},
     NULL,
     "All sizes in millimeters, to 0.5. " ASKED_,
     NULL},
    {"the same on a sheet in inches",
     BENCH_MM,
     KNOW_RATES,
     LENGTH_INCH,
     {"saw|round sizes to = 0.5", NULL},
     NULL,
     "All sizes in inches, to 1/32. " ASKED_,
     NULL},
    {"no step",
     BENCH_INCH,
     KNOW_RATES,
     LENGTH_INCH,
     {NULL},
     NULL,
     "All sizes in inches. " ASKED_,
     NULL},

    /* what the job says */
    {"finished doors",
     BENCH_INCH,
     KNOW_JOB,
     LENGTH_INCH,
     {NULL},
     "Overlay, each side: " LINE_ "   or inset, reveal each side: " LINE_ GAP_ "1/8",
     "All sizes in inches. Width and height are of the finished doors.",
     NULL},
    {"overlay all around",
     BENCH_INCH,
     KNOW_JOB,
     LENGTH_INCH,
     {"make|measure = opening\noverlay = 1/2", NULL},
     "Overlay, each side: 1/2" GAP_ "1/8",
     "All sizes in inches. Width and height are of the openings.",
     NULL},
    {"overlay that differs",
     BENCH_INCH,
     KNOW_JOB,
     LENGTH_INCH,
     {"make|measure = opening\noverlay = 1/2\noverlay top = 3/8", NULL},
     "Overlay left: 1/2   right: 1/2   top: 3/8   bottom: 1/2   gap between the leaves: 1/8",
     NULL,
     NULL},
    {"inset",
     BENCH_INCH,
     KNOW_JOB,
     LENGTH_INCH,
     {"make|measure = opening\nreveal = 3/32", NULL},
     "Inset, reveal each side: 3/32" GAP_ "1/8",
     NULL,
     NULL},
    {"in millimeters",
     BENCH_MM,
     KNOW_JOB,
     LENGTH_MM,
     {"make|measure = opening\noverlay = 15\ngap = 3", NULL},
     "Overlay, each side: 15" GAP_ "3",
     "All sizes in millimeters. Width and height are of the openings.",
     NULL},

    /* names: of what there is only one no line is needed */
    {"styles of the rates",
     BENCH_INCH,
     KNOW_RATES,
     LENGTH_INCH,
     {NULL},
     NULL,
     NULL,
     "style: plain, profiled, drawer, tenoned, dowelled, mitred, solid, glazed, open, slab"},
    {"two finishes and two sorts of glass",
     BENCH_INCH,
     KNOW_RATES,
     LENGTH_INCH,
     {"finish clear|spray = gun\ncoats = paint x 1",
      "glass seeded|thickness = 1/8\nprice = 12.00 per sqft", NULL},
     NULL,
     NULL,
     "style: plain, profiled, drawer, tenoned, dowelled, mitred, solid, glazed, open, slab | "
     "finish: painted, clear, none | glass: clear, seeded"},
};

static void check(struct bench *bench, const char *what, const char *is, const char *wanted) {
    if (wanted != NULL && strcmp(is, wanted) != 0) {
        bench_wrong(bench, "%s is\n  %s, expected\n  %s", what, is, wanted);
    }
}

static int check_case(const struct visit_case *c) {
    const char *lines[VISIT_NAMES];
    char names[1000] = "";
    struct bench bench;
    struct pool pool;
    bench_open(&bench, c->name, c->bench, c->edits,
               c->bench == BENCH_MM ? "A,400,700\n" : "A,15,30\n");
    bench_sound(&bench);
    pool_init(&pool);
    const struct visit visit = {.job = c->known == KNOW_JOB ? &bench.job : NULL,
                                .rates = c->known == KNOW_NOTHING ? NULL : &bench.rates,
                                .unit = c->unit,
                                .letter = true};
    check(&bench, "the fit", visit_fit_words(&visit, &pool), c->fit);
    check(&bench, "the size", visit_size_words(&visit, &pool), c->size);
    const size_t count = visit_names(&visit, &pool, lines);
    assert_true(count >= 2 && count <= VISIT_NAMES);
    for (size_t i = 2; i < count; i++) {
        const size_t used = strlen(names);
        (void)snprintf(names + used, sizeof names - used, "%s%s", i == 2 ? "" : " | ", lines[i]);
    }
    check(&bench, "names", names, c->names);
    pool_clear(&pool);
    return bench_close(&bench);
}

static void test_words(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        wrong += check_case(&cases[i]);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_words)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
