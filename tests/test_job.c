/* SPDX-License-Identifier: MIT */
/* The job file: its values, and how a row's door is made of [make], an option and the row. */
#include "case.h"
#include "cmocka_all.h"
#include "model/construction.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include "model/job.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define BASE DOORCOST_SOURCE "/tests/problems/base"

struct inputs {
    struct problems problems;
    struct job job;
    struct rates rates;
};

/* Reads the base with another job file and door list. */
static void read_inputs(struct inputs *inputs, const char *job, const char *doors) {
    assert_true(case_prepare(BASE, NULL, "job-case"));
    assert_true(case_save("job-case/job.ini", job, strlen(job)));
    assert_true(case_save("job-case/doors.csv", doors, strlen(doors)));
    problems_init(&inputs->problems);
    assert_true(job_read(&inputs->job, &inputs->rates, "job-case/job.ini", &inputs->problems));
}

static void clear_inputs(struct inputs *inputs) {
    job_clear(&inputs->job);
    rates_clear(&inputs->rates);
    problems_clear(&inputs->problems);
}

static const char job_text[] = "[job]\n"
                               "title = Boathouse galley\n"
                               "number = 0031\n"
                               "client = \"The boat club; skippers' mess\"\n"
                               "date = 2026-02-28\n"
                               "valid = 30 days\n"
                               "unit = in\n"
                               "rates = rates.ini\n"
                               "doors = doors.csv\n"
                               "[make]\n"
                               "style = Shaker\n"
                               "frame = poplar\n"
                               "panel = maple-ply\n"
                               "finish = painted\n"
                               "hinge = cup-hinge\n"
                               "pull = none\n"
                               "overlay = 1/2\n"
                               "overlay top = 1/4 in\n"
                               "gap = 1/8\n"
                               "[sale]\n"
                               "tax = 6.25 %\n"
                               "tax on = materials at cost\n"
                               "tax delivery = yes\n"
                               "exempt =      ; none\n"
                               "delivery = 120.00\n"
                               "charges = 80.00 for samples, 45.00 for templates\n"
                               "deposit = 40 %\n"
                               "stages = 30 % when sprayed\n"
                               "[option maple]\n"
                               "frame = hard-maple\n"
                               "finish = none\n"
                               "[option inset]\n"
                               "reveal = 3/32\n";

static const char doors_text[] = "id,width,height,frame,overlay left,reveal,color\n"
                                 "D01,15 1/2,30,,,,\n"
                                 "D02,15 1/2,30,poplar,0,,sea green\n"
                                 "D03,15 1/2,30,,,1/8,\n";

static void test_values(void **state) {
    struct inputs in;
    const struct sale *sale = &in.job.sale;

    (void)state;
    read_inputs(&in, job_text, doors_text);
    problems_print(&in.problems, stderr, false);
    assert_int_equal(in.problems.count, 0);
    assert_string_equal(in.job.client.s, "The boat club; skippers' mess");
    assert_int_equal(in.job.client.place.line, 4);
    assert_int_equal(in.job.client.place.column, 11);
    assert_string_equal(in.job.number.s, "0031");
    assert_int_equal(in.job.year, 2026);
    assert_int_equal(in.job.month, 2);
    assert_int_equal(in.job.day, 28);
    assert_int_equal(in.job.valid.amount, 30);
    assert_string_equal(in.job.rates_path.s, "job-case/rates.ini");
    assert_null(in.job.terms.s);
    assert_int_equal(sale->tax_on.choice, TAX_ON_MATERIALS_COST);
    assert_int_equal(sale->tax_delivery.choice, 1);
    assert_null(sale->exempt.s);
    assert_int_equal(sale->charge_count, 2);
    assert_int_equal(sale->charges[0].value.amount, 8000);
    assert_string_equal(sale->charges[1].name.s, "templates");
    assert_int_equal(sale->stage_count, 1);
    assert_string_equal(sale->stages[0].name.s, "sprayed");
    assert_int_equal(in.job.option_count, 2);
    assert_string_equal(in.job.construction.style.name.s, "Shaker");
    assert_int_equal(in.job.construction.style.index, 0);
    assert_int_equal(in.job.construction.pull.index, -1);
    assert_string_equal(in.job.construction.pull.name.s, "none");
    assert_int_equal(in.job.construction.overlay[SIDE_TOP].amount, NM_PER_INCH / 4);
    assert_int_equal(in.job.construction.overlay[SIDE_BOTTOM].amount, NM_PER_INCH / 2);
    clear_inputs(&in);
}

/* The section of an option stands behind [job], and is found all the same. */
static void test_agreed(void **state) {
    static const struct {
        const char *written;
        int32_t option;
        const char *wrong; /* NULL: it is right */
    } cases[] = {
        {"as listed, 2026-03-09", -1, NULL},
        {"inset, 2026-03-09", 1, NULL},
        {"oak, 2026-03-09", -1, "unknown-name"},
        {"maple, 2026-02-30", -1, "bad-date"},
        {"maple", -1, "bad-item"},
        {", 2026-03-09", -1, "bad-item"},
        {"inset, 2026-03-09\npaper = estimate", 1, "both-given"},
    };

    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct inputs in;
        char text[4096];
        (void)snprintf(text, sizeof text, "[job]\nagreed = %s\n%s", cases[i].written,
                       strchr(job_text, '\n') + 1);
        read_inputs(&in, text, doors_text);
        assert_int_equal(in.job.agreed.option, cases[i].option);
        assert_int_equal(in.problems.count, cases[i].wrong == NULL ? 0 : 1);
        if (cases[i].wrong != NULL) {
            assert_string_equal(in.problems.list[0].id, cases[i].wrong);
        } else {
            assert_int_equal(in.job.agreed.date.day, 9);
        }
        clear_inputs(&in);
    }
}

static void test_make(void **state) {
    struct inputs in;
    const struct row *rows;
    struct construction construction;

    (void)state;
    read_inputs(&in, job_text, doors_text);
    assert_int_equal(in.job.row_count, 3);
    rows = in.job.rows;

    /* [make] alone */
    assert_int_equal(rows[0].make->whole.frame.kind, MATERIAL_LUMBER);
    assert_int_equal(rows[0].make->whole.frame.index, 0);
    assert_int_equal(rows[0].make->whole.fit.choice, FIT_OVERLAY);
    assert_null(rows[0].make->own.frame.name.s);
    assert_int_equal(rows[0].make->own.frame.index, -1);

    /* an option changes what it says */
    construction = row_construction(&in.job, &rows[0], 0);
    assert_int_equal(construction.frame.index, 1);
    assert_string_equal(construction.finish.name.s, "none");
    assert_int_equal(construction.finish.index, -1);
    assert_int_equal(construction.panel.kind, MATERIAL_SHEET);

    /* a row's own words come before the option's */
    construction = row_construction(&in.job, &rows[1], 0);
    assert_int_equal(construction.frame.index, 0);
    assert_string_equal(construction.color.s, "sea green");
    assert_int_equal(construction.overlay[SIDE_LEFT].amount, 0);
    assert_true(construction.overlay[SIDE_LEFT].set);
    assert_int_equal(construction.overlay[SIDE_RIGHT].amount, NM_PER_INCH / 2);

    /* of overlay and reveal the one said last holds, alone */
    construction = row_construction(&in.job, &rows[0], 1);
    assert_int_equal(construction.fit.choice, FIT_INSET);
    assert_int_equal(construction.reveal.amount, 3 * NM_PER_INCH / 32);
    assert_false(construction.overlay[SIDE_TOP].set);
    construction = row_construction(&in.job, &rows[1], 1);
    assert_int_equal(construction.fit.choice, FIT_OVERLAY);
    assert_false(construction.reveal.set);
    construction = rows[2].make->whole;
    assert_int_equal(construction.fit.choice, FIT_INSET);
    assert_int_equal(construction.reveal.amount, NM_PER_INCH / 8);
    clear_inputs(&in);
}

/* All problems of all files in one run, and in their order. */
static void test_all_files_at_once(void **state) {
    static const char *const ids[] = {"unknown-key", "bad-date", "unknown-material", "not-a-length",
                                      "out-of-range"};
    struct inputs in;

    (void)state;
    read_inputs(&in,
                "[job]\ntilte = x\ndate = yesterday\nunit = in\nrates = rates.ini\n"
                "doors = doors.csv\n[make]\nstyle = shaker\nframe = popla\npanel = maple-ply\n"
                "finish = none\noverlay = 0\n",
                "id,count,width,height\nD01,1,broad,30\nD02,0,12,30\n");
    problems_sort(&in.problems);
    assert_int_equal(in.problems.count, COUNT(ids));
    for (size_t i = 0; i < COUNT(ids); i++) {
        assert_string_equal(in.problems.list[i].id, ids[i]);
    }
    clear_inputs(&in);
}

/* Without rates nothing can be said of names: only the missing file is reported. */
static void test_missing_rates(void **state) {
    struct inputs in;

    (void)state;
    read_inputs(&in,
                "[job]\ndate = 2026-01-02\nunit = in\nrates = no.ini\ndoors = doors.csv\n[make]\n"
                "style = shaker\nframe = poplar\nfinish = painted\noverlay = 0\n",
                "id,width,height\nD01,12,30\n");
    assert_int_equal(in.problems.count, 1);
    assert_string_equal(in.problems.list[0].id, "file-missing");
    assert_int_equal(in.problems.list[0].place.line, 4);
    assert_int_equal(in.job.row_count, 1);
    clear_inputs(&in);
}

static const struct {
    const char *date;
    bool good;
} dates[] = {
    {"2026-03-02", true},  {"2024-02-29", true},  {"2000-02-29", true},  {"2026-02-29", false},
    {"1900-02-29", false}, {"2026-13-01", false}, {"2026-00-10", false}, {"2026-04-31", false},
    {"2026-3-2", false},   {"02/03/2026", false}, {"2026-03-2x", false}, {"2026-03-02 ", true},
};

static void test_dates(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(dates); i++) {
        char job[400];
        struct inputs in;

        (void)snprintf(job, sizeof(job),
                       "[job]\ndate = %s\nunit = in\nrates = rates.ini\ndoors = doors.csv\n[make]\n"
                       "style = shaker\nframe = poplar\npanel = maple-ply\nfinish = none\n"
                       "overlay = 0\n",
                       dates[i].date);
        read_inputs(&in, job, "id,width,height\nD01,12,30\n");
        if ((in.problems.count == 0) != dates[i].good) {
            fail_msg("'%s'", dates[i].date);
        }
        clear_inputs(&in);
    }
}

static void test_no_job_file(void **state) {
    struct inputs in;

    (void)state;
    problems_init(&in.problems);
    assert_true(job_read(&in.job, &in.rates, "no/such/job.ini", &in.problems));
    assert_int_equal(in.problems.count, 1);
    assert_string_equal(in.problems.list[0].id, "file-missing");
    clear_inputs(&in);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_values),        cmocka_unit_test(test_agreed),
        cmocka_unit_test(test_make),          cmocka_unit_test(test_all_files_at_once),
        cmocka_unit_test(test_missing_rates), cmocka_unit_test(test_dates),
        cmocka_unit_test(test_no_job_file),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
