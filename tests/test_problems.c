/* SPDX-License-Identifier: MIT */
/* The catalog of problems: each id has a small case in tests/problems that makes it, whose
 * printed text is known, and an entry in docs/problems.md that shows it.
 *
 * With DOORCOST_WRITE_EXPECTED set, the texts are written instead of compared. */
#include "case.h"
#include "learn/rack_after.h"
#include "read/actuals/actuals_file.h"
#include "read/job/accept.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include "support.h"

#include <ctype.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cmocka.h>

#define CASES DOORCOST_SOURCE "/tests/problems"
#define BASE  CASES "/base"

/* Where problems come from. */
static const char *const sources[] = {
    DOORCOST_SOURCE "/src/base",       DOORCOST_SOURCE "/src/model",
    DOORCOST_SOURCE "/src/door",       DOORCOST_SOURCE "/src/read/file",
    DOORCOST_SOURCE "/src/read/sheet", DOORCOST_SOURCE "/src/read/key",
    DOORCOST_SOURCE "/src/read/rates", DOORCOST_SOURCE "/src/read/job",
    DOORCOST_SOURCE "/src/stock",      DOORCOST_SOURCE "/src/labor",
    DOORCOST_SOURCE "/src/price",      DOORCOST_SOURCE "/src/read/actuals",
    DOORCOST_SOURCE "/src/learn",      DOORCOST_SOURCE "/src/days/work"};

/* The questions of the stages behind the reader: of inputs without errors. */
static void ask_stages(const struct job *job, const struct rates *rates,
                       struct problems *problems) {
    struct estimate estimate;

    if (problems_count(problems, SEVERITY_ERROR) == 0 && job->row_count > 0) {
        assert_int_not_equal(estimate_make(&estimate, rates, job, bench_request(-1), problems),
                             ESTIMATE_MEMORY);
        estimate_clear(&estimate);
    }
}

/* What is asked of what was noted of the job, in cases that have it. */
static void ask_noted(const struct job *job, const struct rates *rates, struct problems *problems) {
    struct estimate_request request = bench_request(-1);
    struct problems unheard;
    struct estimate estimate;
    struct actuals actuals;
    struct learned learned;
    struct rack next;
    struct pool pool;

    if (access("noted.csv", F_OK) != 0) {
        return;
    }
    pool_init(&pool);
    problems_init(&unheard);
    request.purchase = true;
    assert_int_equal(estimate_make(&estimate, rates, job, request, &unheard), ESTIMATE_OK);
    assert_true(actuals_read(&actuals, rates, "noted.csv", problems));
    if (problems_count(problems, SEVERITY_ERROR) == 0) {
        assert_true(learned_make(&learned, &estimate, &actuals, problems, &pool));
        assert_true(rack_after(&next, &estimate, &learned, problems, &pool));
    }
    actuals_clear(&actuals);
    estimate_clear(&estimate);
    problems_clear(&unheard);
    pool_clear(&pool);
}

/* Reads the job in the current folder; what is printed of it, on the heap. *made: whether the first
 * problem has that id. */
static char *run(const char *id, bool *made) {
    struct problems problems;
    struct rates rates;
    struct job job;
    char *text = NULL;
    size_t size = 0;
    FILE *out = open_memstream(&text, &size);

    assert_non_null(out);
    problems_init(&problems);
    const bool saved = access("saved.json", F_OK) == 0; /* in cases of a saved quote */
    struct job_texts texts;
    assert_true(job_read_keep(&job, &rates, saved ? "saved.json" : "job.ini",
                              (struct job_instead){.saved = saved}, &texts, &problems));
    ask_stages(&job, &rates, &problems);
    assert_true(accept_apply(&job, &problems, problems_count(&problems, SEVERITY_ERROR) == 0));
    ask_noted(&job, &rates, &problems);
    problems_print(&problems, out, false);
    problems_sort(&problems);
    *made = problems.count > 0 && strcmp(problems.list[0].id, id) == 0;
    problems_clear(&problems);
    job_clear(&job);
    rates_clear(&rates);
    assert_int_equal(fclose(out), 0);
    return text;
}

/* Prepares a case in a folder of its own and runs it there. */
static char *run_case(const char *name, bool *made) {
    char *spoiled = strcmp(name, "base") == 0 ? NULL : case_path(CASES, name);
    char *folder = case_path("cases", name);
    char here[1024];
    char *text;

    assert_non_null(getcwd(here, sizeof(here)));
    (void)mkdir("cases", 0777);
    assert_true(case_prepare(BASE, spoiled, folder));
    assert_int_equal(chdir(folder), 0);
    text = run(name, made);
    assert_int_equal(chdir(here), 0);
    free(spoiled);
    free(folder);
    return text;
}

static void test_base_is_good(void **state) {
    bool made;
    char *text = run_case("base", &made);

    (void)state;
    assert_string_equal(text, "");
    free(text);
}

static bool check_case(const char *name) {
    char *folder = case_path(CASES, name);
    char *path = case_path(folder, "expected");
    char *expected = case_load(path, NULL);
    bool made = false;
    char *text = run_case(name, &made);
    bool good = made && expected != NULL && strcmp(text, expected) == 0;

    if (getenv("DOORCOST_WRITE_EXPECTED") != NULL) {
        good = made && case_save(path, text, strlen(text));
    }
    if (!good) {
        print_error("%s: %s\n--- expected\n%s--- printed\n%s", name,
                    made ? "another text" : "the first problem is another",
                    expected == NULL ? "" : expected, text);
    }
    free(text);
    free(expected);
    free(path);
    free(folder);
    return good;
}

static void test_cases(void **state) {
    size_t count;
    char **names = case_names(CASES, &count);
    size_t bad = 0;

    (void)state;
    assert_true(count > 1);
    for (size_t i = 0; i < count; i++) {
        bad += strcmp(names[i], "base") == 0 || check_case(names[i]) ? 0 : 1;
        free(names[i]);
    }
    free(names);
    assert_int_equal(bad, 0);
}

/* The entry of an id in the catalog: from its heading to the next. NULL: none. */
static char *find_entry(const char *catalog, const char *id) {
    char heading[128];
    const char *start;
    const char *end;

    (void)snprintf(heading, sizeof(heading), "\n### %s\n", id);
    start = strstr(catalog, heading);
    if (start == NULL) {
        return NULL;
    }
    end = strstr(start + 5, "\n#");
    return end == NULL ? strdup(start) : strndup(start, (size_t)(end - start));
}

/* The catalog shows the first problem that the case prints, as it is printed. */
static bool check_entry(const char *catalog, const char *id) {
    char *folder = case_path(CASES, id);
    char *path = case_path(folder, "expected");
    char *expected = case_load(path, NULL);
    char *entry = find_entry(catalog, id);
    bool good = false;

    if (expected == NULL) {
        print_error("%s: no case in tests/problems\n", id);
    } else if (entry == NULL) {
        print_error("%s: no entry in docs/problems.md\n", id);
    } else {
        char *end = strchr(expected, '\n');

        if (end != NULL) {
            *end = '\0';
        }
        good = strstr(entry, expected) != NULL;
        if (!good) {
            print_error("%s: docs/problems.md does not show: %s\n", id, expected);
        }
    }
    free(entry);
    free(expected);
    free(path);
    free(folder);
    return good;
}

/* The id that a call at text names: its first literal, before the statement ends. false: none. */
static bool take_id(const char *text, char id[64]) {
    const char *from = text + strcspn(text, "\";{");
    size_t size;

    if (*from != '"') {
        return false;
    }
    size = strspn(from + 1, "abcdefghijklmnopqrstuvwxyz0123456789-");
    if (size == 0 || size >= 64 || from[1 + size] != '"') {
        return false;
    }
    memcpy(id, from + 1, size);
    id[size] = '\0';
    return true;
}

/* Every id in one source text. */
static size_t check_source(const char *source, const char *catalog) {
    static const char *const calls[] = {"SEVERITY_ERROR,", "SEVERITY_WARNING,", "report_file("};
    size_t bad = 0;

    for (size_t i = 0; i < sizeof(calls) / sizeof(calls[0]); i++) {
        for (const char *at = strstr(source, calls[i]); at != NULL; at = strstr(at + 1, calls[i])) {
            char id[64];

            bad += take_id(at, id) && !check_entry(catalog, id) ? 1 : 0;
        }
    }
    return bad;
}

static void test_every_problem_is_in_the_catalog(void **state) {
    char *catalog = case_load(DOORCOST_SOURCE "/docs/problems.md", NULL);
    size_t bad = 0;

    (void)state;
    assert_non_null(catalog);
    for (size_t i = 0; i < sizeof(sources) / sizeof(sources[0]); i++) {
        size_t count;
        char **names = case_names(sources[i], &count);

        for (size_t k = 0; k < count; k++) {
            char *path = case_path(sources[i], names[k]);

            /* a folder has no dot in its name; the planners below find no problems of their own */
            if (strchr(names[k], '.') != NULL) {
                char *source = case_load(path, NULL);
                bad += source == NULL ? 1 : check_source(source, catalog);
                free(source);
            }
            free(path);
            free(names[k]);
        }
        free(names);
    }
    free(catalog);
    assert_int_equal(bad, 0);
}

static bool is_question(const char *id) {
    for (size_t i = 0; i < question_id_count; i++) {
        if (strcmp(question_ids[i], id) == 0) {
            return true;
        }
    }
    return false;
}

/* What the catalog calls a warning can be accepted, and nothing else. */
static void test_every_warning_can_be_accepted(void **state) {
    char *catalog = case_load(DOORCOST_SOURCE "/docs/problems.md", NULL);
    size_t warnings = 0;

    (void)state;
    assert_non_null(catalog);
    for (const char *at = strstr(catalog, "\n### "); at != NULL; at = strstr(at + 1, "\n### ")) {
        const char *from = at + strlen("\n### ");
        char *id = strndup(from, strcspn(from, "\n"));
        bool warning = strncmp(from + strlen(id), "\n\nWarning.", 10) == 0;

        /* it asks about an answer */
        warning = warning && strcmp(id, "accept-without-effect") != 0;
        warnings += warning ? 1 : 0;
        if (warning != is_question(id)) {
            print_error("%s: %s in question_ids of read/job/accept.c\n", id,
                        warning ? "lacks" : "is no warning and stands");
        }
        assert_int_equal(warning, is_question(id));
        free(id);
    }
    assert_int_equal(warnings, question_id_count);
    free(catalog);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_base_is_good),
        cmocka_unit_test(test_cases),
        cmocka_unit_test(test_every_problem_is_in_the_catalog),
        cmocka_unit_test(test_every_warning_can_be_accepted),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
