/* SPDX-License-Identifier: MIT */
/* Rates changed and moved: a changed reading is that of an edited file, what is wrong with a change
 * is said where it was typed, and what moves most stands first. */
#include "trial/range.h"

#include "case.h"
#include "file_bench.h"
#include "read/job/job_file.h"
#include "read/rates/change.h"
#include "read/rates/rates_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define BASE         DOORCOST_SOURCE "/tests/problems/base"
#define COUNT(array) (sizeof(array) / sizeof *(array))

static const struct plan_request no_plans = {.effort = CUT_EFFORT_SECOND};

/* --- a change as the user types it --- */

static const struct parse_case {
    const char *text;
    const char *expected; /* `section|key|value|column`, or what is wrong */
} parses[] = {
    {"lumber poplar.price = 4.60 per bf", "lumber poplar|price|4.60 per bf|23"},
    {" lumber   poplar . price from=100 bf at 3.7 ", "lumber poplar|price from|100 bf at 3.7|31"},
    {"[lumber poplar] price = 4.60 per bf", "lumber poplar|price|4.60 per bf|25"},
    {"lumber 4.4 oak.price = 4.60", "lumber 4.4 oak|price|4.60|24"},
    {"labor rate = 40 per hour", "shop|labor rate|40 per hour|14"},
    {"shop.labor rate = 40.50 per hour", "shop|labor rate|40.50 per hour|19"},
    {"lumber poplar.price 4.60 per bf", "has no '='"},
    {"lumber poplar.price =", "has no value"},
    {"lumber poplar. = 4.60", "names no key"},
    {".price = 4.60", "names no key"},
    {"= 4.60", "names no key"},
    {"", "has no '='"},
    {"shop.labor rate = 40 per hour ; guess", "has a quote or a comment in its value"},
    {"shop.labor rate = '40 per hour'", "has a quote or a comment in its value"},
    {"shop.labor rate = 40 per hour (38 to 44)", "has a range; give one value"},
};

static void typed_changes(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(parses); i++) {
        struct rate_change change;
        struct pool pool;
        struct dump dump = {.used = 0};
        pool_init(&pool);
        const char *const fault = change_parse(&change, parses[i].text, &pool);
        if (fault == NULL) {
            dump_add(&dump, "%s|%s|%s|%d", change.section, change.key, change.value, change.column);
        } else {
            dump_add(&dump, "%s", fault);
        }
        wrong = dump_compare(&dump, parses[i].expected, parses[i].text, wrong);
        pool_clear(&pool);
    }
    assert_int_equal(wrong, 0);
}

/* --- what is wrong with a change --- */

static const struct fault_case {
    const char *text, *expected; /* problems, as FILE:LINE: TEXT */
} faults[] = {
    {"lumber poplar.price = 4.60 per bf", ""},
    {"lumber popplar.price = 4.60 per bf",
     "--set:1: error: the rates have no section [lumber popplar]; did you mean 'lumber poplar'?\n"},
    {"carriage.price = 4.60 per bf",
     "--set:1: error: the rates have no section [carriage]; give one of theirs, as in 'lumber "
     "poplar.price = 4.60 per bf'\n"},
    {"lumber poplar.prize = 4.60 per bf",
     "--set:1: error: [lumber poplar] knows no key 'prize'; did you mean 'price'?\n"},
    {"lumber poplar.price = 4.60",
     "--set:1: error: price '4.60' has no unit; expected '4.10 per bf' or '1800 per m3'\n"},
    {"shop.labor rate = -1 per hour",
     "--set:1: error: labor rate '-1 per hour' is out of range; expected 0 to 100000\n"},
    {"shop.labor rate = 4 per hour",
     "--set:1: warning: labor rate of 4 per hour is not within 8 to 250 per hour (from the least "
     "wage to a specialist's, with what is paid on it); a slip? if it is meant, say 'labor rate = "
     "4 "
     "to 250 per hour' in [plausible] of the rates\n"},
};

/* The problems of a reading with that change; whether it is as expected. */
static bool is_said(const struct fault_case *c) {
    const struct trial_job job = {"range-plain/job.ini", -1, no_plans};
    struct rate_change change;
    struct outcome outcome;
    struct problems problems;
    struct pool pool;
    struct dump dump = {.used = 0};
    pool_init(&pool);
    problems_init(&problems);
    assert_null(change_parse(&change, c->text, &pool));
    const struct rate_changes changes = {&change, 1, &c->text, "--set"};
    const enum trial_result result = trial_try(&job, &changes, &outcome, &problems);
    for (size_t p = 0; p < problems.count; p++) {
        const struct problem *const problem = &problems.list[p];
        dump_add(&dump, "%s:%u: %s: %s\n", problems_file_name(&problems, problem->place.file),
                 problem->place.line, problem->severity == SEVERITY_ERROR ? "error" : "warning",
                 problem->text);
    }
    const bool done = problems_count(&problems, SEVERITY_ERROR) == 0;
    assert_int_equal(result, done ? TRIAL_DONE : TRIAL_WRONG);
    assert_true(done || outcome.client == 0);
    problems_clear(&problems);
    pool_clear(&pool);
    return dump_compare(&dump, c->expected, c->text, 0) == 0;
}

static void said_where_typed(void **state) {
    int wrong = 0;
    (void)state;
    assert_true(case_prepare(BASE, NULL, "range-plain"));
    for (size_t i = 0; i < COUNT(faults); i++) {
        wrong += is_said(&faults[i]) ? 0 : 1;
    }
    assert_int_equal(wrong, 0);
}

/* --- an edited file --- */

/* A line of the base's rates, as it is edited, and the same as it is typed for one reading. */
static const struct edit {
    const char *from, *to, *typed;
} edits[] = {
    {"labor rate = 38.00 per hour", "labor rate = 41.25 per hour", "labor rate = 41.25 per hour"},
    {"price = 4.10 per bf", "price = 4.61 per bf", "lumber poplar.price = 4.61 per bf"},
    {"price from = 100 bf at 3.75 per bf", "price from = 2 bf at 3.75 per bf",
     "[lumber poplar] price from = 2 bf at 3.75 per bf"},
    {"feed = 12 ft per min", "feed = 3 ft per min", "operation groove.feed = 3 ft per min"},
    {"stile = 2 1/4 in", "stile = 3 in", "door shaker.stile = 3 in"},
    {"rate = 4.00 per hour", "rate = 9 per hour", "machine router table.rate = 9 per hour"},
    {"profit = 25 % markup", "profit = 25 % margin", "SHOP.Profit = 25 % margin"},
    {"minimum job = 5", "minimum job = 5000", "minimum job = 5000"},
    {"hours per day = 7", "remakes = 2 % of doors\nhours per day = 7", "remakes = 2 % of doors"},
    {"sizes = 1 qt at 27.00, 1 gal at 84.00", "sizes = 1 qt at 27.00, 1 gal at 20.00",
     "coating topcoat.sizes = 1 qt at 27.00, 1 gal at 20.00"},
    {"transfer efficiency = 65 %", "transfer efficiency = 30 %",
     "spray pressure-pot.transfer efficiency = 30 %"},
    {"by height = 40 in: 2, 60 in: 3, 130 in: 5", "by height = 20 in: 2, 60 in: 3, 130 in: 5",
     "hinges.by height = 20 in: 2, 60 in: 3, 130 in: 5"},
};

static void edit_rates(const char *path, const char *from, const char *to) {
    static char text[8192];
    char *const rates = case_load(path, NULL);
    assert_non_null(rates);
    char *const at = strstr(rates, from);
    assert_non_null(at);
    *at = '\0';
    (void)snprintf(text, sizeof text, "%s%s%s", rates, to, at + strlen(from));
    assert_true(case_save(path, text, strlen(text)));
    free(rates);
}

/* The base, without the minimum that would hide most of what changes. */
static void prepare(const char *folder, const char *path) {
    assert_true(case_prepare(BASE, NULL, folder));
    edit_rates(path, "minimum job = 450", "minimum job = 5");
}

static struct outcome outcome_at(const char *path, const struct rate_changes *changes) {
    struct problems problems;
    struct outcome outcome;
    problems_init(&problems);
    const struct trial_job job = {path, -1, no_plans};
    if (trial_try(&job, changes, &outcome, &problems) != TRIAL_DONE) {
        problems_print(&problems, stderr, false);
        fail_msg("%s: the job cannot be estimated", path);
    }
    problems_clear(&problems);
    return outcome;
}

static void as_edited(void **state) {
    (void)state;
    prepare("range-plain", "range-plain/rates.ini");
    const struct outcome plain = outcome_at("range-plain/job.ini", NULL);
    for (size_t i = 0; i < COUNT(edits); i++) {
        struct rate_change change;
        struct pool pool;
        pool_init(&pool);
        prepare("range-edited", "range-edited/rates.ini");
        edit_rates("range-edited/rates.ini", edits[i].from, edits[i].to);
        assert_null(change_parse(&change, edits[i].typed, &pool));
        const struct outcome expected = outcome_at("range-edited/job.ini", NULL);
        const struct outcome got =
            outcome_at("range-plain/job.ini", &(struct rate_changes){.list = &change, .count = 1});
        if (memcmp(&got, &expected, sizeof got) != 0 || memcmp(&got, &plain, sizeof got) == 0) {
            fail_msg("%s: client %lld, edited %lld, plain %lld", edits[i].typed,
                     (long long)got.client, (long long)expected.client, (long long)plain.client);
        }
        pool_clear(&pool);
    }
}

/* --- order --- */

/* A profit of (price - variable cost) x market x share - fixed cost, at price 175, variable cost
 * 40, market 12, share 0.25, fixed cost 180: 225. Its inputs at their low and high, and swings of
 * 180, 150 and 90: published with an example of a tornado diagram by Sensitivity analysis notes on
 * TE (tests/outside: E17 to E20). What it comes to is worked out here. */
static int64_t profit(int64_t price, int64_t variable, int64_t fixed) {
    return (price - variable) * 12 / 4 - fixed;
}

static struct range_row swung(const char *key, int64_t at_low, int64_t at_high) {
    const int64_t base = profit(175, 40, 180);
    return (struct range_row){
        .section = "example",
        .key = key,
        .low = {.text = "low", .has = true, .more = {.client = at_low - base}},
        .high = {.text = "high", .has = true, .more = {.client = at_high - base}},
    };
}

static void published_order(void **state) {
    struct range_row rows[] = {
        swung("variable cost", profit(175, 30, 180), profit(175, 60, 180)),
        swung("fixed cost", profit(175, 40, 150), profit(175, 40, 300)),
        swung("price", profit(140, 40, 180), profit(200, 40, 180)),
    };
    static const struct {
        const char *key;
        int64_t low, high, swing;
    } published[] = {
        {"price", 120, 300, 180},
        {"fixed cost", 255, 105, 150},
        {"variable cost", 255, 165, 90},
    };
    (void)state;
    assert_int_equal(profit(175, 40, 180), 225);
    ranges_sort(rows, COUNT(rows));
    for (size_t i = 0; i < COUNT(rows); i++) {
        assert_string_equal(rows[i].key, published[i].key);
        assert_int_equal(225 + rows[i].low.more.client, published[i].low);
        assert_int_equal(225 + rows[i].high.more.client, published[i].high);
        assert_int_equal(rows[i].swing, published[i].swing);
    }
}

/* Both ends on one side of the job as it stands, an end that could not be estimated, equal swings,
 * and what moves nothing. */
static void odd_rows(void **state) {
    struct range_row rows[] = {
        {.key = "idle", .low = {.text = "1", .has = true}, .high = {.text = "2", .has = true}},
        {.key = "first",
         .low = {.text = "1"},
         .high = {.text = "2", .has = true, .more.client = 7}},
        {.key = "second", .low = {.text = "1", .has = true, .more.client = -7}},
        {.key = "both up",
         .low = {.text = "1", .has = true, .more.client = 9},
         .high = {.text = "2", .has = true, .more.client = 4}},
        {.key = "cost alone",
         .low = {.text = "1", .has = true, .more.direct = 3},
         .high = {.text = "2", .has = true}},
    };
    static const struct {
        const char *key;
        int64_t swing;
        bool idle;
    } expected[] = {{"both up", 9, false},
                    {"first", 7, false},
                    {"second", 7, false},
                    {"idle", 0, true},
                    {"cost alone", 0, false}};
    (void)state;
    ranges_sort(rows, COUNT(rows));
    for (size_t i = 0; i < COUNT(rows); i++) {
        assert_string_equal(rows[i].key, expected[i].key);
        assert_int_equal(rows[i].swing, expected[i].swing);
        assert_int_equal(range_row_idle(&rows[i]), expected[i].idle);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(typed_changes), cmocka_unit_test(said_where_typed),
        cmocka_unit_test(as_edited),     cmocka_unit_test(published_order),
        cmocka_unit_test(odd_rows),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
