/* SPDX-License-Identifier: MIT */
/* The terms file, the logo, and the keys of the client's papers. */
#include "case.h"
#include "cmocka_all.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include "model/job.h"
#include "read/rates/terms.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define BASE   DOORCOST_SOURCE "/tests/problems/base"
#define FOLDER "terms-case"

struct inputs {
    struct problems problems;
    struct job job;
    struct rates rates;
};

/* Puts a line behind another one of a file in the folder. */
static void add_line(const char *file, const char *behind, const char *line) {
    char *path = case_path(FOLDER, file);
    char *text = case_load(path, NULL);
    assert_non_null(text);
    const char *at = strstr(text, behind);
    assert_non_null(at);
    const size_t before = (size_t)(at - text) + strlen(behind);
    const size_t size = strlen(text) + strlen(line);
    char *all = malloc(size + 1);
    assert_non_null(all);
    (void)snprintf(all, size + 1, "%.*s%s%s", (int)before, text, line, text + before);
    assert_true(case_save(path, all, size));
    free(all);
    free(text);
    free(path);
}

static void open_inputs(struct inputs *in) {
    problems_init(&in->problems);
    assert_true(job_read(&in->job, &in->rates, FOLDER "/job.ini", &in->problems));
}

static void close_inputs(struct inputs *in) {
    job_clear(&in->job);
    rates_clear(&in->rates);
    problems_clear(&in->problems);
}

/* Reads the base with these terms; NULL: the file is not there. */
static void read_terms(struct inputs *in, const char *terms, size_t size) {
    assert_true(case_prepare(BASE, NULL, FOLDER));
    add_line("rates.ini", "currency = USD\n", "terms file = terms.txt\n");
    (void)unlink(FOLDER "/terms.txt");
    if (terms != NULL) {
        assert_true(case_save(FOLDER "/terms.txt", terms, size));
    }
    open_inputs(in);
}

static void paragraphs(void **state) {
    static const char text[] = "\xEF\xBB\xBF; for the shop\n\n  First  line,\nsecond line.\n"
                               "; a remark between\nthird line.\n\n\n; only a remark\n\n \t \r\n"
                               "Last\tone\r\n";
    struct inputs in;
    (void)state;
    read_terms(&in, text, sizeof text - 1);
    assert_int_equal(problems_count(&in.problems, SEVERITY_ERROR), 0);
    assert_int_equal(in.rates.shop.term_count, 2);
    assert_string_equal(in.rates.shop.terms[0].s, "First line, second line. third line.");
    assert_string_equal(in.rates.shop.terms[1].s, "Last one");
    close_inputs(&in);
}

static void nothing_to_say(void **state) {
    struct inputs in;
    (void)state;
    read_terms(&in, "", 0);
    assert_int_equal(in.problems.count, 0);
    assert_int_equal(in.rates.shop.term_count, 0);
    close_inputs(&in);
    read_terms(&in, "; only the shop's own\n", 22);
    assert_int_equal(in.problems.count, 0);
    assert_int_equal(in.rates.shop.term_count, 0);
    close_inputs(&in);
}

/* What is wrong is said with its place. */
static void expect_problem(struct inputs *in, const char *id, const char *file, uint32_t line) {
    problems_sort(&in->problems);
    assert_true(in->problems.count > 0);
    const struct problem *const p = &in->problems.list[0];
    if (strcmp(p->id, id) != 0) {
        print_error("'%s': %s\n", p->id, p->text);
    }
    assert_string_equal(p->id, id);
    assert_non_null(strstr(problems_file_name(&in->problems, p->place.file), file));
    assert_int_equal(p->place.line, line);
    close_inputs(in);
}

static void faults_of_the_file(void **state) {
    static const char bad[] = "Good.\n\nBad \xFF byte.\n";
    struct inputs in;
    char *text = malloc(TERMS_LONGEST + 2);
    (void)state;
    assert_non_null(text);
    read_terms(&in, NULL, 0);
    expect_problem(&in, "file-missing", "rates.ini", 5);
    read_terms(&in, bad, sizeof bad - 1);
    expect_problem(&in, "not-utf-8", "terms.txt", 3);
    memset(text, 'a', TERMS_LONGEST + 1);
    read_terms(&in, text, TERMS_LONGEST);
    assert_int_equal(in.problems.count, 0);
    close_inputs(&in);
    read_terms(&in, text, TERMS_LONGEST + 1);
    expect_problem(&in, "terms-too-long", "terms.txt", 1);
    for (size_t i = 0; i <= TERMS_MOST_PARAGRAPHS; i++) {
        text[3 * i] = 'a';
        text[3 * i + 1] = '\n';
        text[3 * i + 2] = '\n';
    }
    read_terms(&in, text, 3 * TERMS_MOST_PARAGRAPHS);
    assert_int_equal(in.problems.count, 0);
    assert_int_equal(in.rates.shop.term_count, TERMS_MOST_PARAGRAPHS);
    close_inputs(&in);
    read_terms(&in, text, 3 * (TERMS_MOST_PARAGRAPHS + 1));
    expect_problem(&in, "terms-too-many", "terms.txt", 0);
    free(text);
}

static void a_folder_is_no_file(void **state) {
    struct inputs in;
    (void)state;
    assert_true(case_prepare(BASE, NULL, FOLDER));
    add_line("rates.ini", "currency = USD\n", "terms file = .\n");
    open_inputs(&in);
    expect_problem(&in, "file-is-folder", "rates.ini", 5);
}

static void logo(void **state) {
    static const struct {
        const char *name, *bytes, *id;
        size_t size;
    } cases[] = {
        {"not there", NULL, "file-missing", 0},
        {"empty", "", "not-a-picture", 0},
        {"a text", "not a picture at all, only words", "not-a-picture", 32},
        {"cut short", "\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x02\0\0\0\x02", "not-a-picture", 24},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct inputs in;
        assert_true(case_prepare(BASE, NULL, FOLDER));
        add_line("rates.ini", "currency = USD\n", "logo = logo.png\n");
        (void)unlink(FOLDER "/logo.png");
        if (cases[i].bytes != NULL) {
            assert_true(case_save(FOLDER "/logo.png", cases[i].bytes, cases[i].size));
        }
        open_inputs(&in);
        assert_null(in.rates.shop.logo.bytes);
        expect_problem(&in, cases[i].id, "rates.ini", 5);
    }
}

static void keys(void **state) {
    static const struct {
        const char *line, *id;
    } cases[] = {
        {"paper = offer\n", "unknown-word"},   {"revision = two\n", "not-a-number"},
        {"revision = 0\n", "out-of-range"},    {"detail = all\n", "unknown-word"},
        {"also = levitate\n", "unknown-name"},
    };
    struct inputs in;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        assert_true(case_prepare(BASE, NULL, FOLDER));
        add_line("job.ini", "unit = in\n", cases[i].line);
        open_inputs(&in);
        expect_problem(&in, cases[i].id, "job.ini", 6);
    }
    assert_true(case_prepare(BASE, NULL, FOLDER));
    add_line("job.ini", "frame = hard-maple\n", "price = subtracts\n");
    open_inputs(&in);
    expect_problem(&in, "unknown-word", "job.ini", 24);
    assert_true(case_prepare(BASE, NULL, FOLDER));
    add_line("job.ini", "unit = in\n",
             "paper = estimate\nrevision = 3\nready = in autumn\ndetail = rooms\n"
             "also = groove\n");
    add_line("job.ini", "frame = hard-maple\n", "price = adds\n");
    open_inputs(&in);
    assert_int_equal(in.problems.count, 0);
    assert_int_equal(in.job.paper.choice, PAPER_ESTIMATE);
    assert_int_equal(in.job.revision.amount, 3);
    assert_string_equal(in.job.ready.s, "in autumn");
    assert_int_equal(in.job.detail.choice, PRICES_ROOMS);
    assert_int_equal(in.job.also.count, 1);
    assert_int_equal(in.job.options[0].price.choice, OPTION_ADDS);
    close_inputs(&in);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(paragraphs),
        cmocka_unit_test(nothing_to_say),
        cmocka_unit_test(faults_of_the_file),
        cmocka_unit_test(a_folder_is_no_file),
        cmocka_unit_test(logo),
        cmocka_unit_test(keys),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
