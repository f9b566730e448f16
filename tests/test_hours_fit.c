/* SPDX-License-Identifier: MIT */
/* Hours of past jobs fitted: what they were made of is found again; too few jobs, or jobs that are
 * alike, are refused. */
#include "noted_bench.h"

#include "learn/hours_fit.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <math.h>

#define WORK  "operation work|per = door\nminutes = 10"
#define DOORS "id,count,width,height\nA,10,15,30\n"

static void test_few_jobs(void **state) {
    static const char *const edits[] = {WORK, "door plain|operations = work", NULL};
    static const char *const notes[] = {"work,2,,,,,,,\n", NULL};
    struct learned_job jobs[HOURS_FIT_LEAST_JOBS];
    struct hours_fit fit;
    struct noted n = {0};
    (void)state;
    bench_open(&n.bench, "few", BENCH_INCH, edits, DOORS);
    note(&n, notes);
    for (size_t i = 0; i < HOURS_FIT_LEAST_JOBS; i++) {
        jobs[i] = n.jobs[0];
    }
    assert_true(hours_fit_make(&fit, jobs, HOURS_FIT_LEAST_JOBS - 1, &n.pool));
    assert_non_null(strstr(fit.lacks, "from eight jobs on"));
    /* eight jobs that are one and the same tell nothing apart */
    assert_true(hours_fit_make(&fit, jobs, HOURS_FIT_LEAST_JOBS, &n.pool));
    assert_non_null(strstr(fit.lacks, "too closely to be told apart"));
    n.learned[0].unnoted = 1;
    assert_true(hours_fit_make(&fit, jobs, HOURS_FIT_LEAST_JOBS, &n.pool));
    assert_non_null(strstr(fit.lacks, "all work of each job was noted"));
    assert_int_equal(noted_close(&n), 0);
}

/* Eight jobs whose noted hours are 1.5 + 0.25 a door + 0.04 a square foot of face + 0.1 one of
 * coats: that is found again. */
static void test_hours_fit(void **state) {
    static const char *const sizes[HOURS_FIT_LEAST_JOBS] = {
        "id,count,width,height,finish\nA,4,15,30,painted\n",
        "id,count,width,height,finish\nA,9,12,24,none\nB,2,18,60,painted\n",
        "id,count,width,height,finish\nA,20,15,30,none\n",
        "id,count,width,height,finish\nA,7,20,40,painted\n",
        "id,count,width,height,finish\nA,30,10,12,painted\nB,3,15,30,none\n",
        "id,count,width,height,finish\nA,2,23,80,none\n",
        "id,count,width,height,finish\nA,12,17,29,painted\nB,12,17,8,none\n",
        "id,count,width,height,finish\nA,1,12,12,painted\n"};
    static struct noted n[HOURS_FIT_LEAST_JOBS];
    struct learned_work works[HOURS_FIT_LEAST_JOBS];
    struct learned_job jobs[HOURS_FIT_LEAST_JOBS];
    struct hours_fit fit;
    (void)state;
    for (size_t i = 0; i < HOURS_FIT_LEAST_JOBS; i++) {
        static const char *const notes[] = {"all,1,,,,,,,\n", NULL};
        static const char *const edits[] = {WORK, "door plain|operations = work", NULL};
        bench_open(&n[i].bench, "fit", BENCH_INCH, edits, sizes[i]);
        note(&n[i], notes);
        const struct estimate *const e = &n[i].bench.estimate;
        double faces = 0;
        double coats = 0;
        for (size_t k = 0; k < n[i].bench.job.row_count; k++) {
            const struct row *const row = &n[i].bench.job.rows[k];
            const double inches = (double)(NM_PER_INCH * 12);
            const double area = (double)row->width.amount / inches * (double)row->height.amount /
                                inches * (double)row->count.amount;
            faces += area;
        }
        for (size_t b = 0; b < e->finish.batch_count; b++) {
            coats += tape_real(&e->tape, e->finish.batches[b].area) *
                     tape_real(&e->tape, e->finish.batches[b].coats[0].times);
        }
        const double doors = tape_real(&e->tape, e->quantities.all_leaves);
        const double wanted = 1.5 + 0.25 * doors + 0.04 * faces + 0.1 * coats;
        works[i] = n[i].learned[0].work[0];
        works[i].noted = llround(wanted * 6000);
        n[i].learned[0].work = &works[i];
        n[i].learned[0].work_count = 1;
        jobs[i] = n[i].jobs[0];
    }
    assert_true(hours_fit_make(&fit, jobs, HOURS_FIT_LEAST_JOBS, &n[0].pool));
    assert_null(fit.lacks);
    assert_true(llabs(fit.by[0] - 1500000) < 20000);
    assert_true(llabs(fit.by[1] - 250000) < 3000);
    assert_true(llabs(fit.by[2] - 40000) < 2000);
    assert_true(llabs(fit.by[3] - 100000) < 2000);
    assert_in_range(fit.spread, 0, 2);
    for (size_t i = 0; i < HOURS_FIT_LEAST_JOBS; i++) {
        assert_int_equal(fit.noted[i], (works[i].noted + 30) / 60);
        assert_true(llabs(fit.noted[i] - fit.fitted[i]) <= 2);
    }
    int wrong = 0;
    for (size_t i = 0; i < HOURS_FIT_LEAST_JOBS; i++) {
        wrong += noted_close(&n[i]);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_few_jobs),
        cmocka_unit_test(test_hours_fit),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
