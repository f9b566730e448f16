/* SPDX-License-Identifier: MIT */
/* Every limit of model/limits.h: at it a job is estimated, and with what the last item says; one
 * over it and far over it the reader refuses the file, naming the limit. The numbers stand here
 * once more by hand. */
#include "case.h"
#include "read/actuals/actuals_file.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define TEXT_SIZE 2048

/* --- lists of rates
 * ------------------------------------------------------------------------------------------------------
 */

/* Writes an edit `section|key = item 1, item 2 ...` of `count` items. */
typedef void write_items(char *text, size_t size, size_t count);

static size_t add(char *text, size_t size, size_t at, const char *format, size_t number,
                  size_t more) {
    const int added = snprintf(text + at, size - at, format, number, more);
    assert_true(added > 0 && (size_t)added < size - at);
    return at + (size_t)added;
}

/* Step i: up to 31 in + i so many hinges; the last is 9. */
static void hinge_rules(char *text, size_t size, size_t count) {
    size_t at = add(text, size, 0, "hinges|by height = ", 0, 0);
    for (size_t i = 0; i < count; i++) {
        at = add(text, size, at, i == 0 ? "%zu:%zu" : ", %zu:%zu", 31 + i, i + 1 == count ? 9 : 2);
    }
}
/* From 1 bf + i at 5.00; the last, from 3 bf on, at 0.50: `count` breaks below 3 bf are not whole.
 */
static void breaks(char *text, size_t size, size_t count) {
    size_t at = add(text, size, 0, "lumber poplar|price from = ", 0, 0);
    for (size_t i = 0; i + 1 < count; i++) {
        at = add(text, size, at, "%zu bf at 5 per bf, ", i + 1, 0);
    }
    (void)add(text, size, at, "%zu bf at 0.5 per bf", count, 0);
}
/* Sizes of 2 gal and more at 1,000; the last is the cheapest. */
static void sizes(char *text, size_t size, size_t count) {
    size_t at = add(text, size, 0, "coating paint|sizes = ", 0, 0);
    for (size_t i = 0; i + 1 < count; i++) {
        at = add(text, size, at, "%zu gal at 1000, ", i + 2, 0);
    }
    (void)add(text, size, at, "%zu gal at 3", count + 1, 0);
}
static void coats(char *text, size_t size, size_t count) {
    size_t at = add(text, size, 0, "finish painted|coats = paint", 0, 0);
    for (size_t i = 1; i < count; i++) {
        at = add(text, size, at, ", paint", 0, 0);
    }
}

/* 0 % from 2 doors on, 9 % from the last. */
static void discounts(char *text, size_t size, size_t count) {
    size_t at = add(text, size, 0, "sale|discounts = 2: 0 %%", 0, 0);
    for (size_t i = 1; i < count; i++) {
        at = add(text, size, at, ", %zu: %zu %%", i + 2, i + 1 == count ? 9 : 0);
    }
}

static const struct {
    const char *name;
    write_items *write;
    size_t most;
    const char *doors;
    struct want at_limit;
} lists[] = {
    /* 62 in high is only in the 32nd step, up to 31 + 31 = 62 */
    {"hinge rules", hinge_rules, 32, "id,hinge,width,height\nD1,hinge,18,62\n",
     LEAF(0, hinges, "9")},
    /* 20 doors of 1.383 bf need 28; 32 bf are bought for the 0.50 of the 32nd break */
    {"price breaks", breaks, 32, "id,count,width,height\nD1,20,18,30\n",
     LUMBER(0, priced.cost, "16")},
    /* a need below 2 gal is bought in the eighth size */
    {"container sizes", sizes, 8, "id,finish,width,height\nD1,painted,18,30\n",
     PRODUCT(0, cost, "3")},
    /* 8 sq ft sprayed 32 times */
    {"coats", coats, 32, "id,finish,width,height\nD1,painted,18,30\n",
     LEAF(0, driver[DRIVER_SPRAYED_PER_COAT], "256")},
    /* 33 doors reach the 32nd step */
    {"discounts", discounts, 32, "id,count,width,height\nD1,33,18,30\n", SALE(discount_rate, "9")},
};

static void test_lists(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(lists); i++) {
        const size_t counts[] = {lists[i].most, lists[i].most + 1, lists[i].most + 12};
        for (size_t c = 0; c < COUNT(counts); c++) {
            char text[TEXT_SIZE];
            struct bench bench;
            lists[i].write(text, sizeof text, counts[c]);
            const char *const edits[BENCH_MOST_EDITS] = {text};
            bench_open(&bench, lists[i].name, BENCH_INCH, edits, lists[i].doors);
            if ((c > 0) != bench_has(&bench, "too-many")) {
                bench_wrong(&bench, c > 0 ? "over the limit, not refused" : "refused at the limit");
            }
            if (c == 0) {
                bench_sound(&bench);
                bench_expect(&bench, &lists[i].at_limit);
            }
            wrong += bench_close(&bench);
        }
    }
    assert_int_equal(wrong, 0);
}

/* --- rows of a door
 * ------------------------------------------------------------------------------------------------------
 */

/* `count` rows of 1 in and rails of 2 1/4: a door that adds up. */
static void test_heights(void **state) {
    (void)state;
    static const size_t counts[] = {21, 22, 32, 33, 90};
    int wrong = 0;
    for (size_t c = 0; c < COUNT(counts); c++) {
        const size_t n = counts[c];
        char text[TEXT_SIZE];
        struct bench bench;
        size_t at =
            add(text, sizeof text, 0, "id,width,height,mid rails,rows\nD1,18,%zu,%zu,", 60, n - 1);
        for (size_t i = 0; i < n; i++) {
            at = add(text, sizeof text, at, i == 0 ? "1" : "|1", 0, 0);
        }
        (void)add(text, sizeof text, at, "\n", 0, 0);
        const char *const edits[BENCH_MOST_EDITS] = {"door plain|mid rail = 1/2"};
        bench_open(&bench, "heights", BENCH_INCH, edits, text);
        if ((n > 32) != bench_has(&bench, "too-many")) {
            bench_wrong(&bench, n > 32 ? "over the limit, not refused" : "refused at the limit");
        }
        if (n <= 32 && n > 21 && !bench_has(&bench, "out-of-range")) {
            bench_wrong(&bench, "more than 20 mid rails pass");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- rows of the list
 * ------------------------------------------------------------------------------------------------------
 */

static void test_rows(void **state) {
    (void)state;
    static const size_t counts[] = {100000, 100001, 150000};
    for (size_t c = 0; c < COUNT(counts); c++) {
        const size_t size = 32 * counts[c] + 64;
        char *const doors = malloc(size);
        assert_non_null(doors);
        size_t at = add(doors, size, 0, "id,width,height\n", 0, 0);
        for (size_t i = 0; i < counts[c]; i++) {
            at = add(doors, size, at, "D%zu,18,30\n", i, 0);
        }
        struct problems problems;
        struct rates rates;
        struct job job;
        assert_true(case_prepare(DOORCOST_SOURCE "/tests/problems/base", NULL, "limits"));
        assert_true(case_save("limits/doors.csv", doors, strlen(doors)));
        problems_init(&problems);
        assert_true(job_read(&job, &rates, "limits/job.ini", &problems));
        assert_int_equal(job.row_count, counts[c] <= 100000 ? counts[c] : 0);
        if (counts[c] > 100000) {
            assert_int_equal(problems_count(&problems, SEVERITY_ERROR), 1);
            assert_string_equal(problems.list[0].id, "too-many-rows");
            assert_int_equal(problems.list[0].place.line, 100002);
        }
        problems_clear(&problems);
        job_clear(&job);
        rates_clear(&rates);
        free(doors);
    }
}

/* --- rows of what was noted
 * ------------------------------------------------------------------------------------------------------
 */

static void test_noted(void **state) {
    (void)state;
    static const size_t counts[] = {20000, 20001, 40000};
    struct problems problems;
    struct rates rates;
    struct job job;
    assert_true(case_prepare(DOORCOST_SOURCE "/tests/problems/base", NULL, "limits"));
    problems_init(&problems);
    assert_true(job_read(&job, &rates, "limits/job.ini", &problems));
    for (size_t c = 0; c < COUNT(counts); c++) {
        const size_t size = 8 * counts[c] + 64;
        char *const rows = malloc(size);
        struct problems found;
        struct actuals actuals;
        assert_non_null(rows);
        size_t at = add(rows, size, 0, "what,hours\n", 0, 0);
        for (size_t i = 0; i < counts[c]; i++) {
            at = add(rows, size, at, "all,%zu\n", i % 9 + 1, 0);
        }
        assert_true(case_save("limits/noted.csv", rows, strlen(rows)));
        problems_init(&found);
        assert_true(actuals_read(&actuals, &rates, "limits/noted.csv", &found));
        assert_int_equal(actuals.count, counts[c] <= 20000 ? counts[c] : 0);
        assert_int_equal(problems_count(&found, SEVERITY_ERROR), counts[c] <= 20000 ? 0 : 1);
        if (counts[c] > 20000) {
            assert_string_equal(found.list[0].id, "too-many-rows");
            assert_int_equal(found.list[0].place.line, 20002);
        }
        actuals_clear(&actuals);
        problems_clear(&found);
        free(rows);
    }
    problems_clear(&problems);
    job_clear(&job);
    rates_clear(&rates);
}

/* --- sizes of a lumber or sheet on the rack
 * ------------------------------------------------------------------------------------------------------
 */

static void test_rack_sizes(void **state) {
    (void)state;
    static const char *const row[] = {"maple-ply,%zu,20,1\n", "poplar,%zu,20,1\n"};
    for (size_t n = 0; n < 2 * COUNT(row); n++) {
        const size_t c = n % 2; /* at the limit, and one over it */
        char rows[51 * 24 + 64];
        struct problems problems;
        struct rates rates;
        struct job job;
        size_t at = add(rows, sizeof rows, 0, "what,width,length,left\n", 0, 0);
        for (size_t i = 0; i < 50 + c; i++) {
            at = add(rows, sizeof rows, at, row[n / 2], i + 10, 0);
        }
        assert_true(case_prepare(DOORCOST_SOURCE "/tests/problems/base",
                                 DOORCOST_SOURCE "/tests/problems/rack-by-factor", "limits"));
        assert_true(case_save("limits/rack.csv", rows, strlen(rows)));
        problems_init(&problems);
        assert_true(job_read(&job, &rates, "limits/job.ini", &problems));
        assert_int_equal(rates.rack.count, 50);
        assert_int_equal(problems_count(&problems, SEVERITY_ERROR), c);
        assert_true(c == 0 || strcmp(problems.list[0].id, "too-many") == 0);
        problems_clear(&problems);
        job_clear(&job);
        rates_clear(&rates);
    }
}

/* --- rows of the rack
 * ------------------------------------------------------------------------------------------------------
 */

/* Rows that nothing stands in twice are not made up: of one row too many only that is told. */
static void test_rack_rows(void **state) {
    (void)state;
    static const size_t counts[] = {2000, 2001};
    for (size_t c = 0; c < COUNT(counts); c++) {
        char rows[2001 * 16 + 64];
        struct problems problems;
        struct rates rates;
        struct job job;
        size_t at = add(rows, sizeof rows, 0, "what,left\n", 0, 0);
        for (size_t i = 0; i < counts[c]; i++) {
            at = add(rows, sizeof rows, at, "cup-hinge,%zu\n", i, 0);
        }
        assert_true(case_prepare(DOORCOST_SOURCE "/tests/problems/base",
                                 DOORCOST_SOURCE "/tests/problems/rack-twice", "limits"));
        assert_true(case_save("limits/rack.csv", rows, strlen(rows)));
        problems_init(&problems);
        assert_true(job_read(&job, &rates, "limits/job.ini", &problems));
        assert_int_equal(rates.rack.count, counts[c] <= 2000 ? 1 : 0);
        assert_string_equal(problems.list[0].id,
                            counts[c] <= 2000 ? "rack-twice" : "too-many-rows");
        problems_clear(&problems);
        job_clear(&job);
        rates_clear(&rates);
    }
}

/* --- days off
 * ------------------------------------------------------------------------------------------------------
 */

/* 366 days from 2026-01-01 on: 365 of 2026 and one. */
static void test_days_off(void **state) {
    (void)state;
    static const struct {
        const char *edit;
        bool fits;
    } spans[] = {
        {"days|holidays = 2026-12-24, 2026-01-01 to 2027-01-01", true},
        {"days|holidays = 2026-12-24, 2026-01-01 to 2027-01-02", false},
        {"days|holidays = 1900-01-01 to 9999-12-31", false},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(spans); i++) {
        const char *const edits[BENCH_MOST_EDITS] = {spans[i].edit};
        struct bench bench;
        bench_open(&bench, "days off", BENCH_INCH, edits, "D1,18,30\n");
        if (spans[i].fits == bench_has(&bench, "bad-item")) {
            bench_wrong(&bench, "%s: %s", spans[i].edit, spans[i].fits ? "refused" : "passes");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* --- the documents
 * ------------------------------------------------------------------------------------------------------
 */

static void test_documented(void **state) {
    (void)state;
    static const char *const rows[] = {
        "| rows of a door list | 100000 |",
        "| heights in `rows` | 32 |",
        "| `mid rails`, `mid stiles` | 20 |",
        "| `count` of a row | 9999 |",
        "| steps in a rule of `[hinges]` | 32 |",
        "| breaks in `price from` | 32 |",
        "| steps in `discounts` | 32 |",
        "| `sizes` of a coating or an additive | 8 |",
        "| coatings in `coats` | 32 |",
        "| rows of the table of woods | 10000 |",
        "| rows of what is on the rack | 2000 |",
        "| sizes of one lumber or sheet there | 50 |",
        "| rows of what was noted of a job | 20000 |",
        "| days of one span of `holidays` | 366 |",
    };
    char *const text = case_load(DOORCOST_SOURCE "/docs/formats.md", NULL);
    assert_non_null(text);
    for (size_t i = 0; i < COUNT(rows); i++) {
        if (strstr(text, rows[i]) == NULL) {
            fail_msg("docs/formats.md lacks: %s", rows[i]);
        }
    }
    free(text);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_lists),      cmocka_unit_test(test_heights),
        cmocka_unit_test(test_rows),       cmocka_unit_test(test_noted),
        cmocka_unit_test(test_rack_sizes), cmocka_unit_test(test_rack_rows),
        cmocka_unit_test(test_days_off),   cmocka_unit_test(test_documented),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
