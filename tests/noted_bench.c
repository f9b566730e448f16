/* SPDX-License-Identifier: MIT */
#include "noted_bench.h"

#include "file_bench.h"
#include "read/actuals/actuals_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define NOTED "test-noted.csv"
#define HEAD  "what,hours,minutes,people,bought,paid,taken,left,remade\n"

void note(struct noted *n, const char *const *notes) {
    size_t count = 0;
    pool_init(&n->pool);
    bench_sound(&n->bench);
    for (; count < MOST_JOBS && notes[count] != NULL; count++) {
        char text[1000];
        (void)snprintf(text, sizeof text, HEAD "%s", notes[count]);
        file_bench_write(NOTED, text, strlen(text));
        assert_true(actuals_read(&n->actuals[count], &n->bench.rates, NOTED, &n->bench.problems));
        for (size_t i = 0; i < n->bench.problems.count; i++) {
            if (n->bench.problems.list[i].severity == SEVERITY_ERROR) {
                fail_msg("%s: %s", n->bench.name, n->bench.problems.list[i].text);
            }
        }
        assert_int_equal(unlink(NOTED), 0);
        assert_true(learned_make(&n->learned[count], &n->bench.estimate, &n->actuals[count],
                                 &n->bench.problems, &n->pool));
        n->jobs[count] = (struct learned_job){&n->bench.estimate, &n->learned[count]};
    }
    assert_true(proposals_make(&n->made, n->jobs, count, &n->pool));
}

int noted_close(struct noted *n) {
    pool_clear(&n->pool);
    for (size_t i = 0; i < MOST_JOBS; i++) {
        actuals_clear(&n->actuals[i]);
    }
    return bench_close(&n->bench);
}
