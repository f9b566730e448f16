/* SPDX-License-Identifier: MIT */
/* Where a value was given: section and key of the rates or the job file, from its place alone. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static void check(const struct settings *settings, struct place place, const char *section,
                  const char *key) {
    const struct setting *const s = setting_at(settings, place);
    assert_non_null(s);
    assert_string_equal(s->section, section);
    assert_string_equal(s->key, key);
    assert_int_equal(s->line, place.line);
}

static void sections_and_keys(void **state) {
    struct bench bench;
    (void)state;
    bench_open(&bench, "origins", BENCH_INCH,
               (const char *const[BENCH_MOST_EDITS]){"shop|minimum  door = 1.5 sqft",
                                                     "lumber gray elm|thickness = 4/4\n"
                                                     "price = 6.00 per bf\nwaste = 10 % added"},
               "D1,18,30\n");
    bench_sound(&bench);
    const struct rates *const rates = &bench.rates;
    const struct job *const job = &bench.job;
    check(&rates->settings, rates->shop.labor_rate.place, "[shop]", "labor rate");
    check(&rates->settings, rates->shop.minimum_door.place, "[shop]", "minimum door");
    check(&rates->settings, rates->lumber[0].price.place, "[lumber poplar]", "price");
    check(&rates->settings, rates->lumber[rates->lumber_count - 1].price.place, "[lumber gray elm]",
          "price");
    check(&job->settings, job->title.place, "[job]", "title");
    check(&job->settings, job->construction.gap.place, "[make]", "gap");
    assert_non_null(strstr(rates->settings.file_name, "shop.ini"));
    assert_non_null(strstr(job->settings.file_name, "job.ini"));
    assert_int_equal(bench_close(&bench), 0);
}

/* A value of another file, of a line without a key, of nowhere. */
static void no_setting(void **state) {
    struct bench bench;
    (void)state;
    bench_open(&bench, "none", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0}, "D1,18,30\n");
    bench_sound(&bench);
    const struct settings *const rates = &bench.rates.settings;
    const struct place row = bench.job.rows[0].width.place;
    const struct place title = bench.job.title.place;
    assert_null(setting_at(rates, row));
    assert_null(setting_at(&bench.job.settings, row));
    assert_null(setting_at(rates, title));
    assert_null(setting_at(rates, (struct place){0}));
    assert_null(setting_at(rates, (struct place){.file = rates->file, .line = 1}));
    assert_null(setting_at(rates, (struct place){.file = rates->file, .line = 100000}));
    assert_null(setting_at(&(struct settings){0}, (struct place){0}));
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sections_and_keys),
        cmocka_unit_test(no_setting),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
