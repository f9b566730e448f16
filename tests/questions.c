/* SPDX-License-Identifier: MIT */
#include "questions.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>
#include <string.h>

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

void asked_run(const struct asked_case *cases, size_t count) {
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct bench bench;
        bench_open(&bench, cases[i].name, cases[i].unit, cases[i].edits, cases[i].doors);
        const char *const text = bench_said(&bench, cases[i].id);
        if (problems_count(&bench.problems, SEVERITY_ERROR) > 0) {
            bench_wrong(&bench, "has errors");
        } else if (cases[i].text == NULL ? text != NULL
                                         : text == NULL || strcmp(text, cases[i].text) != 0) {
            bench_wrong(&bench, "%s", text == NULL ? "not asked" : text);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}
