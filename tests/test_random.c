/* SPDX-License-Identifier: MIT */
/* Inputs spoiled at random, with a fixed seed: whatever stands in them, reading ends, reports and
 * leaves nothing behind. The sanitizers see what goes wrong. */
#include "case.h"
#include "cmocka_all.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include "model/job.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define BASE   DOORCOST_SOURCE "/tests/problems/base"
#define ROUNDS 240

static uint64_t seed = 20260302;

/* splitmix64: the same numbers everywhere. */
static uint64_t next_random(void) {
    uint64_t z = seed += UINT64_C(0x9E3779B97F4A7C15);

    z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
    return z ^ (z >> 31);
}

static size_t below(size_t limit) {
    return (size_t)(next_random() % limit);
}

/* Bytes that mean something to the readers, and some that do not. */
static const char signs[] = "\"',;=[]#\\\n\r\t ./%-+()0123456789xXabc\xC3\xA9\xFF|:";

static char random_byte(void) {
    if (below(8) == 0) {
        return (char)below(256);
    }
    return signs[below(sizeof(signs) - 1)];
}

/* Changes a few bytes, takes a piece out, or doubles one. *size changes; the room is twice it. */
static void spoil(char *bytes, size_t *size) {
    size_t edits = 1 + below(6);

    for (size_t i = 0; i<edits && * size> 10; i++) {
        size_t at = below(*size - 5);
        size_t piece = 1 + below(*size - at > 40 ? 40 : *size - at - 1);

        switch (below(4)) {
        case 0:
            memmove(bytes + at, bytes + at + piece, *size - at - piece);
            *size -= piece;
            break;
        case 1:
            memmove(bytes + at + piece, bytes + at, *size - at);
            *size += piece;
            break;
        default:
            bytes[at] = random_byte();
            break;
        }
    }
}

static void spoil_file(const char *path) {
    size_t size;
    char *bytes = case_load(path, &size);
    char *room;

    assert_non_null(bytes);
    room = malloc(2 * size + 400);
    assert_non_null(room);
    memcpy(room, bytes, size);
    spoil(room, &size);
    assert_true(case_save(path, room, size));
    free(room);
    free(bytes);
}

static void read_and_print(size_t *found) {
    struct problems problems;
    struct rates rates;
    struct job job;
    FILE *out = fopen("/dev/null", "w");

    assert_non_null(out);
    problems_init(&problems);
    assert_true(job_read(&job, &rates, "random-case/job.ini", &problems));
    problems_print(&problems, out, false);
    *found += problems.count > 0 ? 1 : 0;
    problems_clear(&problems);
    job_clear(&job);
    rates_clear(&rates);
    assert_int_equal(fclose(out), 0);
}

static void test_spoiled(void **state) {
    static const char *const files[] = {"random-case/job.ini", "random-case/rates.ini",
                                        "random-case/doors.csv", "random-case/woods.csv"};
    size_t found = 0;

    (void)state;
    for (int round = 0; round < ROUNDS; round++) {
        assert_true(case_prepare(BASE, NULL, "random-case"));
        spoil_file(files[round % 4]);
        read_and_print(&found);
    }
    assert_true(found > ROUNDS / 3);
}

static void test_noise(void **state) {
    size_t found = 0;

    (void)state;
    assert_true(case_prepare(BASE, NULL, "random-case"));
    for (int round = 0; round < ROUNDS; round++) {
        char noise[500];
        size_t size = below(sizeof(noise));

        for (size_t i = 0; i < size; i++) {
            noise[i] = random_byte();
        }
        assert_true(case_save(round % 2 == 0 ? "random-case/doors.csv" : "random-case/rates.ini",
                              noise, size));
        read_and_print(&found);
    }
    assert_true(found > ROUNDS / 2);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_spoiled),
        cmocka_unit_test(test_noise),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
