/* SPDX-License-Identifier: MIT */
#include "support.h"
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"

#include "base/text.h"

#include <limits.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

#define FILE_SIZE 16384

/* --- files of the bench
 * -------------------------------------------------------------------------------------------------------
 */

struct sheet_of_text {
    char text[FILE_SIZE];
    size_t size;
};

static void load(struct sheet_of_text *s, const char *path) {
    FILE *const file = fopen(path, "rb");
    assert_non_null(file);
    s->size = fread(s->text, 1, sizeof s->text - 1, file);
    assert_true(s->size < sizeof s->text - 1);
    s->text[s->size] = '\0';
    (void)fclose(file);
}

static void store(const char *folder, const char *name, const char *text) {
    char path[96];
    (void)snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *const file = fopen(path, "wb");
    assert_non_null(file);
    assert_true(fputs(text, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

/* Puts text in the place of [from, to). */
static void splice(struct sheet_of_text *s, size_t from, size_t to, const char *text) {
    const size_t size = strlen(text);
    assert_true(s->size - (to - from) + size + 1 < sizeof s->text);
    memmove(s->text + from + size, s->text + to, s->size - to + 1);
    memcpy(s->text + from, text, size);
    s->size += size - (to - from);
}

/* The start of the line behind the heading of a section; where there is none it is added. */
static size_t section_start(struct sheet_of_text *s, const char *section) {
    char heading[96];
    (void)snprintf(heading, sizeof heading, "\n[%s]\n", section);
    const char *at = strstr(s->text, heading);
    if (at == NULL) {
        splice(s, s->size, s->size, heading);
        at = strstr(s->text, heading);
        assert_non_null(at);
    }
    return (size_t)(at - s->text) + strlen(heading);
}

static size_t line_end(const struct sheet_of_text *s, size_t at) {
    const size_t end = at + strcspn(s->text + at, "\n");
    return s->text[end] == '\n' ? end + 1 : end;
}

static size_t key_size(const char *line) {
    size_t size = strcspn(line, "=\n");
    while (size > 0 && line[size - 1] == ' ') {
        size--;
    }
    return size;
}

static void change_key(struct sheet_of_text *s, const char *section, const char *line) {
    char whole[2048];
    size_t at = section_start(s, section);
    const size_t size = key_size(line);
    (void)snprintf(whole, sizeof whole, "%s\n", strchr(line, '=') == NULL ? "" : line);
    while (s->text[at] != '\0' && s->text[at] != '[') {
        if (key_size(s->text + at) == size && strncmp(s->text + at, line, size) == 0) {
            splice(s, at, line_end(s, at), whole);
            return;
        }
        at = line_end(s, at);
    }
    splice(s, section_start(s, section), section_start(s, section), whole);
}

static bool is_of_job(const char *section) {
    return strcmp(section, "job") == 0 || strcmp(section, "make") == 0 ||
           strcmp(section, "sale") == 0 || strncmp(section, "option ", 7) == 0;
}

static void change(struct sheet_of_text *shop, struct sheet_of_text *job, const char *edit) {
    char text[2048];
    (void)snprintf(text, sizeof text, "%s", edit);
    char *const bar = strchr(text, '|');
    assert_non_null(bar);
    *bar = '\0';
    struct sheet_of_text *const sheet = is_of_job(text) ? job : shop;
    for (char *line = bar + 1; line != NULL;) {
        char *const end = strchr(line, '\n');
        if (end != NULL) {
            *end = '\0';
        }
        change_key(sheet, text, line);
        line = end == NULL ? NULL : end + 1;
    }
}

static void write_files(const struct bench *bench, enum bench_unit unit, const char *const *edits,
                        const char *doors) {
    static struct sheet_of_text shop; /* large for a stack; of one test at a time */
    static struct sheet_of_text job;
    static char list[4 * FILE_SIZE];
    const bool metric = unit == BENCH_MM;
    load(&shop, metric ? DOORCOST_SOURCE "/tests/data/plain-shop-mm.ini"
                       : DOORCOST_SOURCE "/tests/data/plain-shop.ini");
    load(&job, metric ? DOORCOST_SOURCE "/tests/data/plain-job-mm.ini"
                      : DOORCOST_SOURCE "/tests/data/plain-job.ini");
    change(&shop, &job, "shop|woods = " DOORCOST_SOURCE "/rates/woods.csv");
    for (size_t i = 0; i < BENCH_MOST_EDITS && edits != NULL && edits[i] != NULL; i++) {
        change(&shop, &job, edits[i]);
    }
    (void)snprintf(list, sizeof list, "%s%s",
                   strncmp(doors, "id,", 3) == 0 ? "" : "id,width,height\n", doors);
    store(bench->folder, "shop.ini", shop.text);
    store(bench->folder, "job.ini", job.text);
    store(bench->folder, "doors.csv", list);
}

static void drop_files(const struct bench *bench) {
    static const char *const names[] = {"shop.ini", "job.ini", "doors.csv"};
    char path[96];
    for (size_t i = 0; i < COUNT(names); i++) {
        (void)snprintf(path, sizeof path, "%s/%s", bench->folder, names[i]);
        (void)unlink(path);
    }
    (void)rmdir(bench->folder);
}

/* --- the bench
 * -------------------------------------------------------------------------------------------------------
 */

static void estimate(struct bench *bench, const char *path, const struct rate_changes *changes) {
    problems_init(&bench->problems);
    assert_true(job_read_changed(&bench->job, &bench->rates, path, changes, &bench->problems));
    bench->result = ESTIMATE_FAULT; /* not made */
    if (problems_count(&bench->problems, SEVERITY_ERROR) == 0) {
        bench->result = estimate_make(&bench->estimate, &bench->rates, &bench->job,
                                      bench_request(-1), &bench->problems);
        assert_int_not_equal(bench->result, ESTIMATE_MEMORY);
    }
}

void bench_open(struct bench *bench, const char *name, enum bench_unit unit,
                const char *const *edits, const char *doors) {
    char path[96];
    *bench = (struct bench){.name = name, .folder = "/tmp/doorcost-bench-XXXXXX"};
    assert_non_null(mkdtemp(bench->folder));
    write_files(bench, unit, edits, doors);
    (void)snprintf(path, sizeof path, "%s/job.ini", bench->folder);
    estimate(bench, path, NULL);
    drop_files(bench);
}

void bench_open_job(struct bench *bench, const char *path) {
    bench_open_changed(bench, path, NULL);
}

void bench_open_changed(struct bench *bench, const char *path, const struct rate_changes *changes) {
    char whole[512];
    *bench = (struct bench){.name = path};
    (void)snprintf(whole, sizeof whole, DOORCOST_SOURCE "/%s", path);
    estimate(bench, whole, changes);
}

int bench_close(struct bench *bench) {
    estimate_clear(&bench->estimate);
    job_clear(&bench->job);
    rates_clear(&bench->rates);
    problems_clear(&bench->problems);
    return bench->wrong;
}

void bench_wrong(struct bench *bench, const char *format, ...) {
    char text[512];
    va_list arguments;
    va_start(arguments, format);
    (void)vsnprintf(text, sizeof text, format, arguments);
    va_end(arguments);
    print_error("%s: %s\n", bench->name, text);
    bench->wrong++;
}

const char *bench_said(const struct bench *bench, const char *id) {
    for (size_t i = 0; i < bench->problems.count; i++) {
        if (strcmp(bench->problems.list[i].id, id) == 0) {
            return bench->problems.list[i].text;
        }
    }
    return NULL;
}

bool bench_has(const struct bench *bench, const char *id) {
    return bench_said(bench, id) != NULL;
}

void bench_sound(struct bench *bench) {
    if (bench->result == ESTIMATE_OK) {
        const uint32_t changed = tape_replay(&bench->estimate.tape);
        if (changed != 0) {
            bench_wrong(bench, "%u figures are others when made again", (unsigned)changed);
        }
        return;
    }
    bench_wrong(bench, "no estimate");
    for (size_t i = 0; i < bench->problems.count; i++) {
        const struct problem *const p = &bench->problems.list[i];
        print_error("    line %u: %s\n", (unsigned)p->place.line, p->text);
    }
}

/* --- what is asked
 * -------------------------------------------------------------------------------------------------------
 */

const void *bench_thing(const struct bench *bench, const struct want *want) {
    const struct estimate *const e = &bench->estimate;
    const size_t i = want->index;
    const void *const things[] = {
        [THING_NONE] = NULL,
        [THING_LEAF] = i < e->quantities.count ? &e->quantities.leaves[i] : NULL,
        [THING_PART] = e->quantities.count > 0 && i < e->doors.doors[0].part_count
                           ? &e->quantities.leaves[0].parts[i]
                           : NULL,
        [THING_JOB] = &e->quantities,
        [THING_LUMBER] = i < e->lumber.count ? &e->lumber.buys[i] : NULL,
        [THING_SHEET] = i < e->sheets.count ? &e->sheets.buys[i] : NULL,
        [THING_GLASS] = i < e->glass.count ? &e->glass.buys[i] : NULL,
        [THING_BANDING] = i < e->banding.count ? &e->banding.buys[i] : NULL,
        [THING_HARDWARE] = i < e->hardware.count ? &e->hardware.buys[i] : NULL,
        [THING_BATCH] = i < e->finish.batch_count ? &e->finish.batches[i] : NULL,
        [THING_COAT] = e->finish.batch_count > 0 && i < e->finish.batches[0].coat_count
                           ? &e->finish.batches[0].coats[i]
                           : NULL,
        [THING_PRODUCT] = i < e->finish.product_count ? &e->finish.products[i] : NULL,
        [THING_OPERATION] = i < e->labor.operation_count ? &e->labor.operations[i] : NULL,
        [THING_SHARE] = e->labor.operation_count > 0 && i < e->quantities.count
                            ? &e->labor.operations[0].shares[i]
                            : NULL,
        [THING_MACHINE] = i < e->labor.machine_count ? &e->labor.machines[i] : NULL,
        [THING_LABOR] = &e->labor,
        [THING_COST] = &e->costs,
        [THING_CONSUMABLE] = i < e->costs.consumable_count ? &e->costs.consumables[i] : NULL,
        [THING_DOOR] = i < e->quantities.count ? &e->costs.doors[i] : NULL,
        [THING_SALE] = &e->sale,
        [THING_PURCHASE] = &e->purchase,
    };
    return things[want->thing];
}

/* A decimal number at six decimals. */
static bool millionths(const char *text, int64_t *value) {
    uint8_t decimals = 0;
    if (!text_decimal(text, strcspn(text, " "), value, &decimals)) {
        return false;
    }
    for (; decimals < 6; decimals++) {
        *value *= 10;
    }
    return true;
}

void bench_figure(struct bench *bench, const char *what, fig figure, const char *value) {
    char text[32];
    int64_t wanted = 0;
    const struct tape *const tape = &bench->estimate.tape;
    if (value == NULL || fig_none(figure)) {
        if (value != NULL || !fig_none(figure)) {
            bench_wrong(bench, "%s is %s, expected %s", what,
                        fig_none(figure) ? "none" : tape_text(tape, figure, text, sizeof text),
                        value == NULL ? "none" : value);
        }
        return;
    }
    const char *const unit = unit_name(tape_unit(tape, figure));
    const char *const blank = strchr(value, ' ');
    if (!millionths(value, &wanted) || tape_scaled(tape, figure, 6) != wanted ||
        (blank != NULL && strcmp(blank + 1, unit) != 0)) {
        bench_wrong(bench, "%s is %s %s, expected %s", what,
                    tape_text(tape, figure, text, sizeof text), unit, value);
    }
}

void bench_expect(struct bench *bench, const struct want *want) {
    fig figure = {0};
    const char *const thing = bench_thing(bench, want);
    if (thing == NULL) {
        if (want->value != NULL) {
            bench_wrong(bench, "there is no %s, expected %s", want->what, want->value);
        }
        return;
    }
    memcpy(&figure, thing + want->at, sizeof figure);
    bench_figure(bench, want->what, figure, want->value);
}

void bench_rack_write(const char *file, const char *text) {
    FILE *const out = fopen(file, "wb");
    assert_non_null(out);
    assert_true(fputs(text, out) >= 0);
    assert_int_equal(fclose(out), 0);
}

const char *bench_rack_edit(const char *file) {
    static char text[PATH_MAX + 64];
    char folder[PATH_MAX];
    assert_non_null(getcwd(folder, sizeof folder));
    (void)snprintf(text, sizeof text, "shop|stock = %s/%s", folder, file);
    return text;
}

/* Checks what is sound; what is not is told already. */
static int check_one(struct bench *bench, bench_check *check) {
    bench_sound(bench);
    return bench->wrong == 0 ? check(bench) : bench_close(bench);
}

void bench_each(const struct bench_job *jobs, size_t count, bench_check *check) {
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct bench bench;
        bench_open(&bench, jobs[i].name, jobs[i].unit, jobs[i].edits, jobs[i].doors);
        wrong += check_one(&bench, check);
    }
    assert_int_equal(wrong, 0);
}

void bench_each_job(const char *const *paths, size_t count, bench_check *check) {
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct bench bench;
        bench_open_job(&bench, paths[i]);
        wrong += check_one(&bench, check);
    }
    assert_int_equal(wrong, 0);
}

void bench_run(const struct bench_case *cases, size_t count, enum bench_unit unit) {
    int wrong = 0;
    for (size_t i = 0; i < count; i++) {
        struct bench bench;
        bench_open(&bench, cases[i].name, unit, cases[i].edits, cases[i].doors);
        bench_sound(&bench);
        for (size_t w = 0; bench.result == ESTIMATE_OK && w < BENCH_MOST_WANTS &&
                           cases[i].wants[w].thing != THING_NONE;
             w++) {
            bench_expect(&bench, &cases[i].wants[w]);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}
