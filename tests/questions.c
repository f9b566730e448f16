/* SPDX-License-Identifier: MIT */
#include "questions.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

void questions_run(const struct question_case *cases, size_t count) {
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
