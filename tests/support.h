/* SPDX-License-Identifier: MIT */
/* A shop and a job on the bench: the plain files of tests/data with some keys changed, read by the
 * real reader and estimated, and figures of the estimate held against what they should be.
 *
 * A test is a table of cases; a case that fails is printed with its name, and the others still run.
 */
#ifndef DOORCOST_TESTS_SUPPORT_H
#define DOORCOST_TESTS_SUPPORT_H

#include "model/rate_change.h"
#include "price/estimate.h"

enum bench_unit { BENCH_INCH, BENCH_MM };

/* An option (-1: the base job) estimated with no plans but those that price or count its work. */
static inline struct estimate_request bench_request(int option) {
    return (struct estimate_request){
        .option = option, .plans = {.effort = CUT_EFFORT_SECOND}, .purchase = true, .traced = true};
}

#define BENCH_MOST_EDITS 12
#define BENCH_MOST_WANTS 20

/* What a figure stands in. */
enum thing {
    THING_NONE, /* ends a list */
    THING_LEAF,
    THING_PART, /* of the first row */
    THING_JOB,  /* struct quantities */
    THING_LUMBER,
    THING_SHEET,
    THING_GLASS,
    THING_BANDING,
    THING_HARDWARE,
    THING_BATCH,
    THING_COAT, /* of the first batch */
    THING_PRODUCT,
    THING_OPERATION,
    THING_SHARE, /* of the first operation, by row */
    THING_MACHINE,
    THING_LABOR,
    THING_COST,
    THING_CONSUMABLE,
    THING_DOOR,
    THING_SALE,
    THING_PURCHASE,
};

/* value: decimal, compared exactly, and behind a blank the unit if that is asked for: `6 min`;
 * NULL: the figure must be none. */
struct want {
    const char *what;
    enum thing thing;
    size_t index, at;
    const char *value;
};

#define WANT(thing, type, i, field, value)                                                         \
    { #type " " #i " " #field, thing, i, offsetof(struct type, field), value }
#define LEAF(i, field, value)       WANT(THING_LEAF, leaf_figures, i, field, value)
#define PART(i, field, value)       WANT(THING_PART, part_figures, i, field, value)
#define JOB(field, value)           WANT(THING_JOB, quantities, 0, field, value)
#define LUMBER(i, field, value)     WANT(THING_LUMBER, lumber_buy, i, field, value)
#define SHEET(i, field, value)      WANT(THING_SHEET, sheet_buy, i, field, value)
#define GLASS(i, field, value)      WANT(THING_GLASS, glass_buy, i, field, value)
#define BANDING(i, field, value)    WANT(THING_BANDING, banding_buy, i, field, value)
#define HARDWARE(i, field, value)   WANT(THING_HARDWARE, hardware_buy, i, field, value)
#define BATCH(i, field, value)      WANT(THING_BATCH, batch, i, field, value)
#define COAT(i, field, value)       WANT(THING_COAT, coat_figures, i, field, value)
#define PRODUCT(i, field, value)    WANT(THING_PRODUCT, product, i, field, value)
#define OPERATION(i, field, value)  WANT(THING_OPERATION, operation_figures, i, field, value)
#define SHARE(i, field, value)      WANT(THING_SHARE, operation_share, i, field, value)
#define MACHINE(i, field, value)    WANT(THING_MACHINE, machine_figures, i, field, value)
#define LABOR(field, value)         WANT(THING_LABOR, labor, 0, field, value)
#define COST(field, value)          WANT(THING_COST, costs, 0, field, value)
#define CONSUMABLE(i, field, value) WANT(THING_CONSUMABLE, consumable_figures, i, field, value)
#define DOOR(i, field, value)       WANT(THING_DOOR, door_price, i, field, value)
#define SALE(field, value)          WANT(THING_SALE, sale_figures, 0, field, value)
#define PURCHASE(field, value)      WANT(THING_PURCHASE, purchase, 0, field, value)

/* edits: each `SECTION|KEY = VALUE`, and more `KEY = VALUE` on lines below; a key is changed where
 * it stands or added to its section, a section that is not there is added. `SECTION|KEY` takes the
 * key away. [job], [make], [sale] and [option ...] are the job's. doors: the door list; without a
 * heading its columns are id,width,height. */
struct bench_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    struct want wants[BENCH_MOST_WANTS];
};

struct bench {
    const char *name;
    char folder[32];
    struct problems problems;
    struct rates rates;
    struct job job;
    struct estimate estimate;
    enum estimate_result result;
    int wrong; /* checks that failed */
};

/* Reads and estimates; problems are left for the caller to look at. Fails the test when the files
 * cannot be written or memory is out. */
void bench_open(struct bench *bench, const char *name, enum bench_unit unit,
                const char *const *edits, const char *doors);
/* The same for a job of the tree, by its name from the top of the sources. */
void bench_open_job(struct bench *bench, const char *path);
/* With changes to its rates, as if their file had them so; NULL: none. */
void bench_open_changed(struct bench *bench, const char *path, const struct rate_changes *changes);
/* What went wrong, for the sum over all cases. */
int bench_close(struct bench *bench);

/* What a want is about; NULL where there is no such thing. */
const void *bench_thing(const struct bench *bench, const struct want *want);
/* Counts and prints what is not as it should be. */
void bench_expect(struct bench *bench, const struct want *want);
void bench_figure(struct bench *bench, const char *what, fig figure, const char *value);
void bench_wrong(struct bench *bench, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
/* No errors, and figures all in order: made again, choices and all, they come to the same. */
void bench_sound(struct bench *bench);
/* The words of the first problem of that id; NULL: there is none. */
const char *bench_said(const struct bench *bench, const char *id);
/* Whether there is a problem of that id. */
bool bench_has(const struct bench *bench, const char *id);

/* Writes a rack where the test runs. */
void bench_rack_write(const char *file, const char *text);
/* The edit that names it, with its whole path, as the rates stand in another folder. Static, until
 * the next call. */
const char *bench_rack_edit(const char *file);

/* A job as bench_open takes it. */
struct bench_job {
    const char *name;
    enum bench_unit unit;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
};
/* Checks a job that is open and sound; closes it, and returns what bench_close does. */
typedef int bench_check(struct bench *bench);
/* Opens one after the other, and fails the test when one of them is wrong. */
void bench_each(const struct bench_job *jobs, size_t count, bench_check *check);
/* The same of jobs of the tree, by their names from the top of the sources. */
void bench_each_job(const char *const *paths, size_t count, bench_check *check);

/* Runs all cases and fails the test when one of them is wrong. */
void bench_run(const struct bench_case *cases, size_t count, enum bench_unit unit);

#define COUNT(array) (sizeof(array) / sizeof *(array))

#endif
