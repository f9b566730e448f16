/* SPDX-License-Identifier: MIT */
/* Quotes that were saved: what the files said comes back as it was, and damaged documents are
 * refused. That prices come back too is tests/outside/bridge.py's. */
#include "read/job/saved.h"

#include "case.h"
#include "cmocka_all.h"
#include "json_bench.h"
#include "json_failing.h"

#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PATH "saved-case.json"

static const char *const jobs[] = {"samples/kitchen/kitchen.ini", "samples/old-house/old-house.ini",
                                   "samples/metric/tea-kitchen.ini", "samples/station/station.ini"};

/* The document of a job with its inputs alone, to be freed. */
static char *document(struct json_bench *bench, const char *job) {
    bool good;
    size_t size;
    json_bench_open(bench, job);
    const struct json_paper paper = json_bench_paper(bench, JSON_INPUTS);
    char *const text = json_bench_text(&paper, &size, &good);
    assert_true(good);
    return text;
}

/* --- there and back --- */

static void expect_ini(const struct ini *is, const struct ini *was) {
    size_t papers = 0;
    assert_true(is->open);
    assert_int_equal(is->count, was->count);
    for (size_t s = 0; s < is->count; s++) {
        const struct ini_section *const a = &is->sections[s];
        const struct ini_section *const b = &was->sections[s];
        size_t k = 0;
        assert_string_equal(a->kind, b->kind);
        assert_string_equal(a->name, b->name);
        assert_int_equal(a->place.line, b->place.line);
        for (size_t old = 0; old < b->count; old++) {
            if (strcmp(b->keys[old].name, "terms file") == 0 ||
                strcmp(b->keys[old].name, "logo") == 0) {
                papers++;
                continue;
            }
            assert_true(k < a->count);
            assert_string_equal(a->keys[k].name, b->keys[old].name);
            assert_string_equal(a->keys[k].value, b->keys[old].value);
            assert_int_equal(a->keys[k].place.line, b->keys[old].place.line);
            k++;
        }
        assert_int_equal(k, a->count);
    }
    assert_true(papers <= 2);
}

static void expect_cells(const struct cell *is, const struct cell *was, size_t count) {
    for (size_t i = 0; i < count; i++) {
        assert_string_equal(is[i].text, was[i].text);
    }
}

static void expect_table(const struct table *is, const struct table *was) {
    assert_true(is->open && was->open);
    assert_int_equal(is->columns, was->columns);
    assert_int_equal(is->count, was->count);
    expect_cells(is->heading, was->heading, is->columns);
    for (size_t i = 0; i < is->count; i++) {
        assert_int_equal(is->rows[i].place.line, was->rows[i].place.line);
        expect_cells(is->rows[i].cells, was->rows[i].cells, is->columns);
    }
}

static void expect_texts(const struct job_texts *is, const struct job_texts *was) {
    expect_ini(&is->job, &was->job);
    expect_ini(&is->rates, &was->rates);
    expect_table(&is->list, &was->list);
    expect_table(&is->woods, &was->woods);
}

static void test_there_and_back(void **state) {
    (void)state;
    for (size_t i = 0; i < sizeof jobs / sizeof *jobs; i++) {
        struct json_bench bench;
        struct problems problems;
        struct job_texts texts;
        char *const text = document(&bench, jobs[i]);
        assert_true(case_save(PATH, text, strlen(text)));
        problems_init(&problems);
        assert_true(saved_is(PATH));
        assert_true(saved_read(&texts, PATH, &problems));
        assert_int_equal(problems.count, 0);
        assert_true(texts.saved);
        expect_texts(&texts, &bench.texts);
        problems_clear(&problems);
        free(text);
        json_bench_close(&bench);
    }
}

/* --- damage --- */

#define HEAD "{\"program\": \"doorcost\", \"command\": \"quote\", \"job\": {}, "

/* The id of the first problem of the document, or "". */
static const char *id_of(const char *text) {
    struct problems problems;
    struct job_texts texts;
    assert_true(case_save(PATH, text, strlen(text)));
    problems_init(&problems);
    assert_true(saved_read(&texts, PATH, &problems));
    const char *const id = problems.count == 0 ? "" : problems.list[0].id;
    assert_int_equal(problems.count, id[0] == '\0' ? 0 : 1);
    assert_int_equal(texts.job.open, id[0] == '\0');
    problems_clear(&problems);
    return id; /* static */
}

/* The text with the first `old` from `after` on replaced; to be freed. */
static char *edited(const char *text, const char *after, const char *old, const char *new) {
    const char *const from = strstr(text, after);
    assert_non_null(from);
    const char *const at = strstr(from, old);
    assert_non_null(at);
    const size_t room = strlen(text) + strlen(new) + 1;
    char *const result = malloc(room);
    assert_non_null(result);
    (void)snprintf(result, room, "%.*s%s%s", (int)(at - text), text, new, at + strlen(old));
    return result;
}

static void test_damage(void **state) {
    (void)state;
    static const struct {
        const char *after, *old, *new, *id;
    } edits[] = {
        {"\"inputs\"", "\"kind\": \"job\"", "\"kind\": \"job", "saved-damaged"},
        {"\"inputs\"", "\"line\": 7", "\"line\": 7 7", "saved-damaged"},
        {"\"inputs\"", "\"line\": 7", "\"line\": 0", "saved-damaged"},
        {"\"inputs\"", "\"line\": 7", "\"line\": \"7\"", "saved-damaged"},
        {"\"inputs\"", "\"line\": 7", "\"line\": 7, \"line\": 8", "saved-damaged"},
        {"\"inputs\"", "\"name\": \"\"", "\"name\": null", "saved-damaged"},
        {"\"inputs\"", "\"value\": \"0031\"", "\"value\": \"\"", "saved-damaged"},
        {"\"inputs\"", "\"value\": \"0031\"", "\"value\": 31", "saved-damaged"},
        {"\"inputs\"", "\"value\": \"0031\"", "\"value\": \"00\\n31\"", "saved-damaged"},
        {"\"inputs\"", "\"value\": \"0031\"", "\"value\": \"00\\u001b31\"", "saved-damaged"},
        {"\"inputs\"", "\"value\": \"0031\"", "\"value\": \"00\\u000031\"", "saved-damaged"},
        {"\"inputs\"", "\"value\": \"0031\"", "\"value\": \"0031 \"", "saved-damaged"},
        {"\"inputs\"", "\"value\": \"0031\"", "\"value\": \"\\u00a00031\"", ""},
        {"\"inputs\"", "\"key\": \"number\"", "\"key\": \"title\"", "saved-damaged"},
        {"\"inputs\"", "\"kind\": \"make\"", "\"kind\": \"job\"", "saved-damaged"},
        {"\"doors\": {\n   \"file\"", "\"rows\": [", "\"lines\": [", "saved-damaged"},
        {"\"doors\": {\n   \"file\"", "\"width\"", "\"width\", \"more\"", "saved-damaged"},
        {"\"inputs\"", "\"woods\": {", "\"woods\": 5, \"other\": {", "saved-damaged"},
        {"\"inputs\"", "\"rates\": {", "\"other\": {", "saved-damaged"},
        {"{", "\"inputs\"", "\"others\"", "saved-older"},
        {"{", "\"job\"", "\"other\"", "saved-faulty"},
        {"{", "\"doorcost\"", "\"something\"", "saved-other"},
        {"{", "\"quote\"", "\"check\"", "saved-other"},
        {"{", "\"quote\"", "\"qu\x01te\"", "control-byte"},
        {"{", "\"quote\"", "\"qu\xFFte\"", "not-utf-8"},
        {"{", "\"quote\"", "\"quote\"", ""},
    };
    struct json_bench bench;
    char *const text = document(&bench, jobs[0]);
    for (size_t i = 0; i < sizeof edits / sizeof *edits; i++) {
        char *const spoiled = edited(text, edits[i].after, edits[i].old, edits[i].new);
        const char *const id = id_of(spoiled);
        if (strcmp(id, edits[i].id) != 0) {
            fail_msg("%s for %s: '%s', not '%s'", edits[i].new, edits[i].old, id, edits[i].id);
        }
        free(spoiled);
    }
    text[strlen(text) / 2] = '\0';
    assert_string_equal(id_of(text), "saved-damaged");
    assert_string_equal(id_of(""), "saved-damaged");
    assert_string_equal(id_of("[]"), "saved-other");
    assert_string_equal(id_of("{}"), "saved-other");
    free(text);
    json_bench_close(&bench);
}

/* What stands in `estimates` is not looked at, but where it ends is. */
static void test_skipped(void **state) {
    (void)state;
    static const struct {
        const char *text, *id;
    } skipped[] = {
        {HEAD "\"estimates\": [{\"a]\": \"\\\"]\", \"inputs\": 1}]}", "saved-older"},
        {HEAD "\"estimates\": [1 2, x, {\"a\" 5}]}", "saved-older"},
        {HEAD "\"estimates\": [{\"a\": 5}", "saved-damaged"},
        {HEAD "\"estimates\": [{\"a\": 5]", "saved-damaged"},
        {HEAD "\"estimates\": [{\"a\": \"5}]}", "saved-damaged"},
        {HEAD "\"estimatesx\": [1 2]}", "saved-damaged"},
        {HEAD "\"other\": {\"estimates\": [1 2]}}", "saved-damaged"},
        {HEAD "\"other\": \"estimates\", \"more\": [1 2]}", "saved-damaged"},
    };
    for (size_t i = 0; i < sizeof skipped / sizeof *skipped; i++) {
        if (strcmp(id_of(skipped[i].text), skipped[i].id) != 0) {
            fail_msg("%s: '%s'", skipped[i].text, id_of(skipped[i].text));
        }
    }
}

/* More keys than a file may have lines, and far more: nothing that takes their square in time. */
static void test_too_many(void **state) {
    (void)state;
    const size_t count = 500000;
    const char *const begin = "{\"program\": \"doorcost\", \"command\": \"quote\", \"job\": 1, "
                              "\"inputs\": {\"job\": {\"file\": \"a\", \"sections\": [{\"kind\": "
                              "\"job\", \"name\": \"\", \"line\": 1, \"keys\": [0";
    char *text = NULL;
    size_t size;
    FILE *const out = open_memstream(&text, &size);
    assert_non_null(out);
    (void)fputs(begin, out);
    for (size_t i = 0; i < count; i++) {
        (void)fputs(",0", out);
    }
    (void)fputs("]}]}}}", out);
    assert_int_equal(fclose(out), 0);
    assert_string_equal(id_of(text), "saved-damaged");
    free(text);
}

/* --- which files are such documents --- */

static void test_which(void **state) {
    (void)state;
    assert_true(saved_is("no/such.json"));
    assert_true(saved_is("A.JSON"));
    assert_false(saved_is("no/such.ini"));
    assert_false(saved_is("."));
    assert_true(case_save("saved-case.ini", " \n\t{", 4));
    assert_true(saved_is("saved-case.ini"));
    assert_true(case_save("saved-case.ini", "\xEF\xBB\xBF{", 4));
    assert_true(saved_is("saved-case.ini"));
    assert_true(case_save("saved-case.ini", "[job]\n", 6));
    assert_false(saved_is("saved-case.ini"));
    assert_true(case_save("saved-case.ini", "", 0));
    assert_false(saved_is("saved-case.ini"));
}

/* --- memory --- */

static bool read_with_failure(const struct json_bench *bench, size_t call) {
    struct problems problems;
    struct job_texts texts;
    problems_init(&problems);
    calls = 0;
    failing = call;
    const bool good = saved_read(&texts, PATH, &problems);
    assert_int_equal(alive, 0);
    const bool read = good && texts.job.open;
    assert_true(!good || read == (problems.count == 0));
    if (read) {
        expect_texts(&texts, &bench->texts);
    }
    problems_clear(&problems);
    return read;
}

/* Any allocation of the library fails: what is taken for read is whole, and nothing is left. */
static void test_memory(void **state) {
    (void)state;
    struct json_bench bench;
    char *const text = document(&bench, jobs[0]);
    assert_true(case_save(PATH, text, strlen(text)));
    json_failing_begin();
    assert_true(read_with_failure(&bench, 0));
    const size_t last = calls;
    size_t refused = 0;
    assert_true(last > 1000);
    for (size_t n = 1; n <= last; n += n < 100 ? 1 : 97) {
        refused += read_with_failure(&bench, n) ? 0 : 1;
    }
    json_failing_end();
    assert_true(refused > 100);
    free(text);
    json_bench_close(&bench);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_there_and_back), cmocka_unit_test(test_damage),
        cmocka_unit_test(test_skipped),        cmocka_unit_test(test_too_many),
        cmocka_unit_test(test_which),          cmocka_unit_test(test_memory),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
