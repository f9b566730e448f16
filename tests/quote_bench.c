/* SPDX-License-Identifier: MIT */
/* What a quote takes, step by step:  quote_bench JOB FOLDER NAME
 *
 * Prints a row of a table: seconds of the processor for reading, stages, plans, and each paper, and
 * beside them the floor, which is the cells of the shop's workbook written by the library alone out
 * of a text file. Each of the two runs in a process of its own, so that its memory can be told.
 * FOLDER: for what is written. */
#include "cmocka_all.h"
#include "cut/common/cut_stock.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"
#include "report/client/client_book.h"
#include "report/client/client_pdf.h"
#include "report/offer_make/offer_make.h"
#include "report/shop/workbook.h"
#include "xlsx_read.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>
#include <xlsxwriter.h>

enum { READING, STAGES, PLANS, CLIENT_BOOK, CLIENT_PDF, LAYOUT, WRITING, STEPS };

/* Files of a run, in its folder. */
static char shop_path[512], client_path[512], pdf_path[512], cells_path[512], floor_path[512];

static double processor(void) {
    struct rusage used;
    assert_int_equal(getrusage(RUSAGE_SELF, &used), 0);
    return (double)(used.ru_utime.tv_sec + used.ru_stime.tv_sec) +
           1e-6 * (double)(used.ru_utime.tv_usec + used.ru_stime.tv_usec);
}

/* Seconds since the last call. */
static double lap(double *since) {
    const double now = processor();
    const double took = now - *since;
    *since = now;
    return took;
}

/* --- the quote --- */

static void make(struct estimate *estimates, size_t count, const struct rates *rates,
                 const struct job *job, bool planned, struct problems *problems) {
    for (size_t i = 0; i < count; i++) {
        const struct estimate_request request = {
            .option = (int)i - 1,
            .plans = {.effort = CUT_EFFORT_SECOND, .always = planned && i == 0},
            .traced = i == 0};
        assert_int_equal(estimate_make(&estimates[i], rates, job, request, problems), ESTIMATE_OK);
    }
}

static void clear(struct estimate *estimates, size_t count) {
    for (size_t i = 0; i < count; i++) {
        estimate_clear(&estimates[i]);
    }
}

static void quote(const char *path, double *took) {
    struct rates rates;
    struct job job;
    struct problems problems;
    struct offer offer;
    double since = processor();
    problems_init(&problems);
    assert_true(job_read(&job, &rates, path, &problems));
    assert_int_equal(problems_count(&problems, SEVERITY_ERROR), 0);
    took[READING] = lap(&since);
    const size_t count = job.option_count + 1;
    struct estimate *const estimates = calloc(count, sizeof *estimates);
    assert_non_null(estimates);
    make(estimates, count, &rates, &job, false, &problems);
    took[STAGES] = lap(&since);
    clear(estimates, count);
    lap(&since);
    make(estimates, count, &rates, &job, true, &problems);
    took[PLANS] = lap(&since) - took[STAGES];
    assert_true(offer_make(&offer, estimates, estimates + 1, count - 1));
    assert_true(client_book_write(&offer, client_path, NULL));
    took[CLIENT_BOOK] = lap(&since);
    const char *lacking;
    assert_true(client_pdf_write(&offer, pdf_path, NULL, &offer.pool, &lacking));
    offer_clear(&offer);
    took[CLIENT_PDF] = lap(&since);
    struct shop_book *const book =
        shop_book_new(estimates, estimates + 1, count - 1, &problems, NULL);
    assert_non_null(book);
    estimate_keep_tape(&estimates[0]);
    clear(estimates + 1, count - 1);
    took[LAYOUT] = lap(&since);
    assert_true(shop_book_write(book, shop_path));
    took[WRITING] = lap(&since);
    shop_book_free(book);
    clear(estimates, count);
    free(estimates);
    job_clear(&job);
    rates_clear(&rates);
    problems_clear(&problems);
}

/* --- the floor --- */

static void dump_cells(void) {
    struct xlsx read;
    FILE *const file = fopen(cells_path, "w");
    assert_non_null(file);
    xlsx_read(&read, shop_path);
    for (size_t i = 0; i < read.count; i++) {
        const struct xlsx_cell *const c = &read.cells[i];
        const bool number = c->value.kind == XLSX_NUMBER;
        const char *const text = number || c->value.text == NULL ? "" : c->value.text;
        fprintf(file, "%u\t%u\t%u\t%.15g\t%s\t%.*s\n", c->sheet, (unsigned)c->row, c->column,
                number ? c->value.number : 0, c->formula == NULL ? "" : c->formula,
                (int)strcspn(text, "\n"), text);
    }
    xlsx_clear(&read);
    assert_int_equal(fclose(file), 0);
}

static void put_line(lxw_workbook *workbook, lxw_worksheet **sheets, char *line) {
    char *const end = line + strcspn(line, "\n");
    char *at = line;
    *end = '\0';
    const unsigned long sheet = strtoul(at, &at, 10);
    const lxw_row_t row = (lxw_row_t)strtoul(at, &at, 10);
    const lxw_col_t column = (lxw_col_t)strtoul(at, &at, 10);
    const double number = strtod(at, &at);
    char *const formula = at + 1;
    char *const text = strchr(formula, '\t') + 1;
    text[-1] = '\0';
    assert_in_range(sheet, 0, 31);
    if (sheets[sheet] == NULL) {
        sheets[sheet] = workbook_add_worksheet(workbook, NULL);
    }
    if (formula[0] != '\0') {
        worksheet_write_formula_num(sheets[sheet], row, column, formula, NULL, number);
    } else if (text[0] != '\0') {
        worksheet_write_string(sheets[sheet], row, column, text, NULL);
    } else {
        worksheet_write_number(sheets[sheet], row, column, number, NULL);
    }
}

static void write_floor(double *took) {
    lxw_workbook *const workbook = workbook_new(floor_path);
    lxw_worksheet *sheets[32] = {0};
    FILE *const file = fopen(cells_path, "r");
    char *line = NULL;
    size_t room = 0;
    double since = processor();
    assert_non_null(file);
    while (getline(&line, &room, file) > 0) {
        put_line(workbook, sheets, line);
    }
    free(line);
    (void)fclose(file);
    assert_int_equal(workbook_close(workbook), LXW_NO_ERROR);
    *took = lap(&since);
}

/* --- processes --- */

/* Runs a part in a process of its own; its seconds go to took, its peak of memory is returned, in
 * MB. */
static double apart(const char *job, double *took, size_t count) {
    int ends[2];
    struct rusage used;
    int status;
    assert_int_equal(pipe(ends), 0);
    const pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        if (job == NULL) {
            write_floor(took);
        } else {
            quote(job, took);
        }
        _exit(write(ends[1], took, count * sizeof *took) == (ssize_t)(count * sizeof *took) ? 0
                                                                                            : 1);
    }
    assert_int_equal(wait4(child, &status, 0, &used), child);
    assert_int_equal(status, 0);
    assert_int_equal(read(ends[0], took, count * sizeof *took), (ssize_t)(count * sizeof *took));
    (void)close(ends[0]);
    (void)close(ends[1]);
    return (double)used.ru_maxrss / 1024;
}

static void set_path(char path[512], const char *folder, const char *name) {
    assert_in_range(snprintf(path, 512, "%s/%s", folder, name), 1, 511);
}

int main(int argc, char **argv) {
    double took[STEPS] = {0};
    double all = 0;
    double floor_took = 0;
    struct stat about;
    if (argc != 4) {
        fprintf(stderr, "usage: quote_bench JOB FOLDER NAME\n");
        return 2;
    }
    set_path(shop_path, argv[2], "shop.xlsx");
    set_path(client_path, argv[2], "client.xlsx");
    set_path(pdf_path, argv[2], "client.pdf");
    set_path(cells_path, argv[2], "cells.txt");
    set_path(floor_path, argv[2], "floor.xlsx");
    const double memory = apart(argv[1], took, STEPS);
    dump_cells();
    const double floor_memory = apart(NULL, &floor_took, 1);
    assert_int_equal(stat(shop_path, &about), 0);
    printf("| %s |", argv[3]);
    for (size_t i = 0; i < STEPS; i++) {
        printf(" %.3f |", took[i]);
        all += took[i];
    }
    printf(" %.3f | %.0f MB | %.2f MB | %.3f | %.0f MB |\n", all, memory,
           (double)about.st_size / 1e6, floor_took, floor_memory);
    return 0;
}
