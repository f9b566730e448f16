/* SPDX-License-Identifier: MIT */
#include "json_bench.h"

#include "cmocka_all.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include <stdio.h>
#include <stdlib.h>

static void make_estimates(struct json_bench *bench) {
    for (size_t i = 0; i < bench->count; i++) {
        const struct estimate_request request = {.option = (int)i - 1,
                                                 .plans = {.effort = 1, .always = true},
                                                 .purchase = true,
                                                 .traced = true};
        assert_int_equal(estimate_make(&bench->estimates[i], &bench->rates, &bench->job, request,
                                       &bench->problems),
                         ESTIMATE_OK);
    }
}

void json_bench_crosscut_first(struct json_bench *bench) {
    for (size_t i = 0; i < bench->count; i++) {
        estimate_clear(&bench->estimates[i]);
    }
    bench->rates.saw.crosscut_first = true;
    make_estimates(bench);
}

void json_bench_open(struct json_bench *bench, const char *path) {
    char whole[512];
    *bench = (struct json_bench){.count = 1};
    (void)snprintf(whole, sizeof whole, DOORCOST_SOURCE "/%s", path);
    problems_init(&bench->problems);
    assert_true(job_read_keep(&bench->job, &bench->rates, whole, (struct job_instead){0},
                              &bench->texts, &bench->problems));
    assert_int_equal(problems_count(&bench->problems, SEVERITY_ERROR), 0);
    bench->count += bench->job.option_count > 0 ? 1 : 0;
    make_estimates(bench);
}

void json_bench_close(struct json_bench *bench) {
    for (size_t i = 0; i < bench->count; i++) {
        estimate_clear(&bench->estimates[i]);
    }
    job_clear(&bench->job);
    rates_clear(&bench->rates);
    problems_clear(&bench->problems);
}

struct json_paper json_bench_paper(const struct json_bench *bench, unsigned parts) {
    return (struct json_paper){.command = "quote",
                               .parts = parts,
                               .problems = &bench->problems,
                               .inputs = &bench->texts,
                               .job = &bench->job,
                               .estimates = bench->estimates,
                               .count = bench->count};
}

char *json_bench_text(const struct json_paper *paper, size_t *size, bool *good) {
    char *text = NULL;
    FILE *const out = open_memstream(&text, size);
    assert_non_null(out);
    *good = json_write(paper, out);
    assert_int_equal(fclose(out), 0);
    return text;
}

struct json_node *json_bench_read(const struct json_paper *paper) {
    size_t size;
    size_t bad;
    bool good;
    char *const text = json_bench_text(paper, &size, &good);
    assert_true(good);
    assert_int_equal(text[size - 1], '\n');
    struct json_node *const node = json_read(text, size, &bad);
    if (node == NULL) {
        fail_msg("no JSON from here on: %.60s", text + bad);
    }
    free(text);
    return node;
}
