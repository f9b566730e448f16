/* SPDX-License-Identifier: MIT */
/* What is asked about and, as much, what is not: a question about a right input is a defect. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

/* edits and doors as in struct bench_case. */
struct question_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *id;
    bool asked;
};

static void run(const struct question_case *cases, size_t count) {
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct bench bench;
        bench_open(&bench, cases[i].name, BENCH_INCH, cases[i].edits, cases[i].doors);
        if (problems_count(&bench.problems, SEVERITY_ERROR) > 0) {
            bench_wrong(&bench, "has errors");
        }
        if (bench_has(&bench, cases[i].id) != cases[i].asked) {
            bench_wrong(&bench, cases[i].asked ? "%s is not asked" : "%s is asked", cases[i].id);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

#define FRONTS "id,use,width,height\nF1,drawer front,18,6\n"
static const struct question_case front_cases[] = {
    {"one front of three is swapped",
     {NULL},
     FRONTS "F2,drawer front,18,6\nF3,drawer front,6,18\n",
     "front-high",
     true},
    {"a false front among drawer fronts",
     {NULL},
     FRONTS "F2,false front,6,18\n",
     "front-high",
     true},
    {"two pull-outs",
     {NULL},
     FRONTS "F2,drawer front,8,24\nF3,drawer front,8,24\n",
     "front-high",
     false},
    {"one front alone",
     {NULL},
     "id,use,width,height\nF1,drawer front,8,24\nD1,door,18,30\n",
     "front-high",
     false},
    {"a square front", {NULL}, FRONTS "F2,drawer front,18,18\n", "front-high", false},
};

static void test_fronts(void **state) {
    (void)state;
    run(front_cases, COUNT(front_cases));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_fronts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
