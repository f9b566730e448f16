/* SPDX-License-Identifier: MIT */
/* Samples estimated with everything that can be asked for, and their documents read back. */
#ifndef DOORCOST_TESTS_JSON_BENCH_H
#define DOORCOST_TESTS_JSON_BENCH_H

#include "json_read.h"
#include "read/job/job_texts.h"
#include "report/json/json.h"

#define JSON_ALL_PARTS 0x3FFu

struct json_bench {
    struct problems problems;
    struct rates rates;
    struct job_texts texts;
    struct job job;
    struct estimate estimates[2]; /* as listed, the first option */
    size_t count;
};

/* Reads and estimates a job of the tree, by its name from the top of the sources; fails the test
 * where that cannot be. */
void json_bench_open(struct json_bench *bench, const char *path);
/* Estimates it anew with boards that are crosscut first. */
void json_bench_crosscut_first(struct json_bench *bench);
void json_bench_close(struct json_bench *bench);

/* What a command would write of it. */
struct json_paper json_bench_paper(const struct json_bench *bench, unsigned parts);
/* A paper's document, to be freed; *good: what json_write said. */
char *json_bench_text(const struct json_paper *paper, size_t *size, bool *good);
/* The same, read back, to be freed by json_free; fails the test where it is not JSON. */
struct json_node *json_bench_read(const struct json_paper *paper);

#endif
