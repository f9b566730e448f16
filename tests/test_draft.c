/* SPDX-License-Identifier: MIT */
/* Jobs to be: what stands round them in a folder of the test's own, what is offered by it, files
 * named from elsewhere, lists to fill in read back by the reader of tables. */
#include "case.h"
#include "file_bench.h"

#include "draft/defaults.h"
#include "draft/list_draft.h"
#include "model/list_column.h"
#include "read/file/source.h"
#include "read/file/table.h"
#include "read/rates/rates_file.h"

#include "cmocka_all.h"

#include <ftw.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* --- a folder --- */

#define ROOT "test-draft-folder"
#define HERE ROOT "/jobs/"

static const char *const folders[] = {ROOT, ROOT "/rates", ROOT "/jobs", ROOT "/jobs/rates",
                                      ROOT "/jobs/old"};

/* Files that a case writes, each name then its text; NULL ends them. */
#define MOST_FILES 12
struct files {
    const char *list[2 * MOST_FILES + 2];
};

static int drop(const char *path, const struct stat *about, int kind, struct FTW *at) {
    (void)about;
    (void)kind;
    (void)at;
    return remove(path);
}

static void clear_folders(void) {
    assert_true(access(ROOT, F_OK) != 0 || nftw(ROOT, drop, 8, FTW_DEPTH | FTW_PHYS) == 0);
}

static void make_folders(const struct files *files) {
    clear_folders();
    for (size_t i = 0; i < COUNT(folders); i++) {
        assert_int_equal(mkdir(folders[i], 0777), 0);
    }
    for (size_t i = 0; files->list[i] != NULL; i += 2) {
        char path[200];
        (void)snprintf(path, sizeof path, ROOT "/%s", files->list[i]);
        file_bench_write(path, files->list[i + 1], strlen(files->list[i + 1]));
    }
}

#define JOB(more)  ("[job]\n" more)
#define SHOP(more) ("[shop]\n" more)
#define LIST       "id,width,height\nA,15,30\n"
#define INVENTED   "invented = yes\n"

struct folder_case {
    const char *name;
    struct files files;
    const char *dump; /* `jobs; rates; lists; last`, of rates a `*` behind the shop's own */
};

static const struct folder_case looks[] = {
    {"an empty folder", {{NULL}}, "; ; ; none"},
    {"jobs by name, the latest by date",
     {{"jobs/b.ini", JOB("date = 2026-03-01\n"), "jobs/a.ini", JOB("date = 2026-03-05\n"),
       "jobs/c.INI", JOB("date = 2026-02-01\n"), NULL}},
     "a.ini, b.ini, c.INI; ; ; a.ini"},
    {"of one date the last by name",
     {{"jobs/b.ini", JOB("date = 2026-03-01\n"), "jobs/a.ini", JOB("date = 2026-03-01\n"), NULL}},
     "a.ini, b.ini; ; ; b.ini"},
    {"a job without a date",
     {{"jobs/a.ini", JOB("date = 2026-03-01\n"), "jobs/b.ini", JOB("title = x\n"), NULL}},
     "a.ini, b.ini; ; ; a.ini"},
    {"what is no job",
     {{"jobs/a.ini", SHOP("unit = in\n"), "jobs/b.txt", JOB("date = 2026-03-01\n"), "jobs/.c.ini",
       JOB("date = 2026-03-01\n"), NULL}},
     "; a.ini in *; ; none"},
    {"rates of the first place that has any",
     {{"jobs/rates/x.ini", SHOP(INVENTED), "rates/y.ini", SHOP(INVENTED), "jobs/z.ini",
       SHOP(INVENTED), NULL}},
     "; rates/x.ini in; ; none"},
    {"those above where there are none beside",
     {{"rates/y.ini", SHOP(INVENTED "unit = mm\n"), NULL}},
     "; ../rates/y.ini mm; ; none"},
    {"the shop's own before all, wherever they stand",
     {{"jobs/rates/x.ini", SHOP(INVENTED), "rates/y.ini", SHOP("unit = mm\n"), "jobs/z.ini",
       SHOP("labor rate = 60 per hour\n"), NULL}},
     "; ../rates/y.ini mm *, z.ini in *, rates/x.ini in; ; none"},
    {"invented, but some numbers are the shop's own",
     {{"jobs/rates/x.ini", SHOP(INVENTED), "jobs/rates/y.ini", SHOP(INVENTED "own = labor rate\n"),
       NULL}},
     "; rates/y.ini in *, rates/x.ini in; ; none"},
    {"lists that no job names, whole ones first",
     {{"jobs/a.csv", "id,width,height,strange\nA,15,30,x\n", "jobs/b.csv", LIST, "jobs/c.csv",
       "width,height\n15,30\n", "jobs/d.csv", "name,color\nx,y\n", "jobs/e.ini",
       JOB("doors = b.csv\n"), NULL}},
     "e.ini; ; a.csv (strange), c.csv?; e.ini"},
    {"headings tell what sizes are of",
     {{"jobs/a.csv", "id,door width,door height\nA,15,30\n", NULL}},
     "; ; a.csv [door]; none"},
    {"lists in other folders are not looked at",
     {{"jobs/old/a.csv", LIST, "rates/b.csv", LIST, NULL}},
     "; ; ; none"},
};

static void dump_folder(const struct folder *f, struct dump *d) {
    for (size_t i = 0; i < f->job_count; i++) {
        dump_add(d, "%s%s", i == 0 ? "" : ", ", strrchr(f->jobs[i].path, '/') + 1);
    }
    dump_add(d, "; ");
    for (size_t i = 0; i < f->rates_count; i++) {
        dump_add(d, "%s%s %s%s", i == 0 ? "" : ", ", f->rates[i].name,
                 f->rates[i].unit == LENGTH_MM ? "mm" : "in", f->rates[i].own ? " *" : "");
    }
    dump_add(d, "; ");
    for (size_t i = 0; i < f->list_count; i++) {
        const struct folder_list *const l = &f->lists[i];
        dump_add(d, "%s%s%s", i == 0 ? "" : ", ", l->name, l->whole ? "" : "?");
        if (l->measure != NULL) {
            dump_add(d, " [%s]", l->measure);
        }
        if (l->strange != NULL) {
            dump_add(d, " (%s)", l->strange);
        }
    }
    const struct folder_job *const last = folder_last(f);
    dump_add(d, "; %s", last == NULL ? "none" : strrchr(last->path, '/') + 1);
}

static void test_look(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(looks); i++) {
        struct folder folder;
        struct dump dump = {.used = 0};
        make_folders(&looks[i].files);
        assert_true(folder_look(&folder, HERE "new.ini"));
        dump_folder(&folder, &dump);
        wrong = dump_compare(&dump, looks[i].dump, looks[i].name, wrong);
        folder_clear(&folder);
        assert_int_equal(folder.job_count + folder.rates_count + folder.list_count, 0);
    }
    clear_folders();
    assert_int_equal(wrong, 0);
}

/* Of rates in both units that of the unit, else the first. */
static void test_units(void **state) {
    static const struct files files = {{"jobs/rates/a.ini", SHOP(INVENTED "unit = mm\n"),
                                        "jobs/rates/b.ini", SHOP(INVENTED "unit = in\n"), NULL}};
    struct folder folder;
    (void)state;
    make_folders(&files);
    assert_true(folder_look(&folder, HERE "new.ini"));
    assert_string_equal(folder_rates(&folder, LENGTH_MM)->name, "rates/a.ini");
    assert_string_equal(folder_rates(&folder, LENGTH_INCH)->name, "rates/b.ini");
    folder.rates_count = 1;
    assert_string_equal(folder_rates(&folder, LENGTH_INCH)->name, "rates/a.ini");
    folder.rates_count = 0;
    assert_null(folder_rates(&folder, LENGTH_INCH));
    folder_clear(&folder);
    clear_folders();
}

/* --- what is offered --- */

static void test_titles(void **state) {
    static const struct {
        const char *path, *title;
    } rows[] = {
        {"smith-kitchen.ini", "Smith kitchen"},
        {"a/b/smith_kitchen.ini", "Smith kitchen"},
        {"Kitchen.ini", "Kitchen"},
        {"12-doors.ini", "12 doors"},
        {"kitchen", "Kitchen"},
        {"kitchen.v2.ini", "Kitchen.v2"},
        {"a.b/kitchen", "Kitchen"},
        {"\u00e9tag\u00e8re.ini", "\u00e9tag\u00e8re"},
        {"-x.ini", " x"},
    };
    struct pool pool;
    (void)state;
    pool_init(&pool);
    for (size_t i = 0; i < COUNT(rows); i++) {
        const struct draft draft = {.pool = &pool, .path = rows[i].path};
        assert_string_equal(default_title(&draft), rows[i].title);
    }
    pool_clear(&pool);
}

/* The number of the last job counted up, past those that are taken. */
static void test_numbers(void **state) {
    static const struct {
        const char *numbers[4]; /* of jobs of ascending dates; "": it has none */
        const char *next;       /* NULL: none is offered */
    } rows[] = {
        {{NULL}, "0001"},
        {{"0041", NULL}, "0042"},
        {{"0099", NULL}, "0100"},
        {{"9999", NULL}, "10000"},
        {{"K-7", NULL}, "K-8"},
        {{"2026/09", NULL}, "2026/10"},
        {{"0042", "0041", NULL}, "0043"},
        {{"0042", "0043", "0041", NULL}, "0044"},
        {{"k-8", "K-7", NULL}, "K-9"}, /* case makes no other number */
        {{"final", NULL}, NULL},
        {{"0041", "", NULL}, NULL},
        {{"999999999999", NULL}, "1000000000000"},
        {{"1234567890123", NULL}, NULL},
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        static const struct files none = {{NULL}};
        struct folder folder;
        struct pool pool;
        make_folders(&none);
        for (size_t k = 0; rows[i].numbers[k] != NULL; k++) {
            char path[100];
            char text[200];
            (void)snprintf(path, sizeof path, HERE "j%zu.ini", k);
            (void)snprintf(text, sizeof text, "[job]\ndate = 2026-03-%02zu\n%s%s\n", k + 1,
                           rows[i].numbers[k][0] == '\0' ? "" : "number = ", rows[i].numbers[k]);
            file_bench_write(path, text, strlen(text));
        }
        pool_init(&pool);
        assert_true(folder_look(&folder, HERE "new.ini"));
        const struct draft draft = {.pool = &pool, .path = HERE "new.ini", .folder = &folder};
        const char *const next = default_number(&draft);
        if ((next == NULL) != (rows[i].next == NULL) ||
            (next != NULL && strcmp(next, rows[i].next) != 0)) {
            print_error("row %zu: %s, expected %s\n", i, next == NULL ? "none" : next,
                        rows[i].next == NULL ? "none" : rows[i].next);
            wrong++;
        }
        folder_clear(&folder);
        pool_clear(&pool);
    }
    clear_folders();
    assert_int_equal(wrong, 0);
}

/* --- files named from elsewhere --- */

/* However a job names a file, another names the same one, by the shortest way there is. */
static void test_renamed(void **state) {
    static const struct files files = {{"jobs/a.csv", LIST, "rates/r.ini", SHOP(""),
                                        "jobs/rates/s.ini", SHOP(""), "top.csv", LIST,
                                        "jobs/old/b.csv", LIST, NULL}};
    static const struct {
        const char *name, *from, *to, *renamed;
    } rows[] = {
        {"a.csv", HERE "x.ini", HERE "y.ini", "a.csv"},
        {"a.csv", HERE "x.ini", HERE "old/y.ini", "../a.csv"},
        {"../rates/r.ini", HERE "x.ini", HERE "old/y.ini", "../../rates/r.ini"},
        {"../rates/r.ini", HERE "x.ini", ROOT "/y.ini", "rates/r.ini"},
        {"../rates/r.ini", HERE "x.ini", ROOT "/rates/y.ini", "r.ini"},
        {"rates/s.ini", HERE "x.ini", ROOT "/y.ini", "jobs/rates/s.ini"},
        {"rates/s.ini", HERE "x.ini", ROOT "/rates/y.ini", "../jobs/rates/s.ini"},
        {"../a.csv", HERE "old/x.ini", HERE "y.ini", "a.csv"},
        {"b.csv", HERE "old/x.ini", HERE "y.ini", "old/b.csv"},
        {"../../top.csv", HERE "old/x.ini", HERE "rates/y.ini", "../../top.csv"},
    };
    int wrong = 0;
    (void)state;
    make_folders(&files);
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct pool pool;
        char one[PATH_MAX];
        char other[PATH_MAX];
        pool_init(&pool);
        const char *const renamed = draft_renamed(rows[i].name, rows[i].from, rows[i].to, &pool);
        assert_non_null(renamed);
        assert_non_null(realpath(source_beside(&pool, rows[i].from, rows[i].name), one));
        if (realpath(source_beside(&pool, rows[i].to, renamed), other) == NULL ||
            strcmp(one, other) != 0 || strcmp(renamed, rows[i].renamed) != 0) {
            print_error("%s from %s: %s, expected %s\n", rows[i].name, rows[i].to, renamed,
                        rows[i].renamed);
            wrong++;
        }
        /* what is named from the root is named so wherever it is */
        assert_string_equal(draft_renamed(one, rows[i].from, rows[i].to, &pool), one);
        pool_clear(&pool);
    }
    clear_folders();
    assert_int_equal(wrong, 0);
}

/* --- lists to fill in --- */

/* Rates with two names of each kind that a cell chooses from; the names of `odd` are put in. */
static void shop_of(struct rates *rates, const char *odd, struct problems *problems) {
    char names[3000];
    char *const text = case_load(DOORCOST_SOURCE "/tests/data/plain-shop.ini", NULL);
    assert_non_null(text);
    (void)snprintf(names, sizeof names,
                   "\n[door %s]\nkind = slab\nthickness = 3/4\n"
                   "\n[finish %s]\nspray = gun\ncoats = paint x 1\n",
                   odd, odd);
    char *const shop = strstr(text, "[shop]\n");
    assert_non_null(shop);
    char *const at = shop + strlen("[shop]\n");
    FILE *const out = fopen("test-draft-shop.ini", "wb");
    assert_non_null(out);
    assert_int_equal(fwrite(text, 1, (size_t)(at - text), out), at - text);
    assert_true(fputs("woods = " DOORCOST_SOURCE "/rates/woods.csv\n", out) >= 0);
    /* the odd ones first: their names are the examples */
    const char *const next = strstr(at, "\n[");
    assert_non_null(next);
    assert_int_equal(fwrite(at, 1, (size_t)(next - at), out), next - at);
    assert_true(fputs(names, out) >= 0 && fputs(next, out) >= 0);
    assert_int_equal(fclose(out), 0);
    free(text);
    problems_init(problems);
    assert_true(rates_read(rates, "test-draft-shop.ini", problems));
    assert_int_equal(unlink("test-draft-shop.ini"), 0);
}

/* The cells of the list as the reader of tables reads them. */
static void check_list(const struct rates *rates, enum length_unit unit) {
    struct list_draft list;
    struct pool pool;
    struct problems problems;
    struct table table = {0};
    pool_init(&pool);
    problems_init(&problems);
    assert_true(list_draft_make(&list, rates, unit, &pool));
    const char *const csv = list_draft_csv(&list, &pool);
    assert_non_null(csv);
    file_bench_write("test-draft-list.csv", csv, strlen(csv));
    assert_true(table_read(&table, "test-draft-list.csv", (struct place){0},
                           (struct table_wanted){.most = 10}, &problems));
    assert_int_equal(unlink("test-draft-list.csv"), 0);
    assert_int_equal(problems_count(&problems, SEVERITY_ERROR), 0);
    assert_int_equal(table.columns, list.count);
    assert_int_equal(table.count, 1);
    for (size_t c = 0; c < list.count; c++) {
        const char *const cell = table.rows[0].cells[c].text;
        assert_string_equal(table.heading[c].text, list.columns[c].name);
        assert_string_equal(cell == NULL ? "" : cell, list.columns[c].example);
    }
    assert_string_equal(list.columns[0].name, "id");
    assert_string_equal(list.columns[0].example, LIST_EXAMPLE_ID);
    assert_string_equal(list.columns[list.count - 1].name, "note");
    problems_clear(&problems);
    pool_clear(&pool);
}

static void test_lists(void **state) {
    static const char *const odd[] = {"shaker, wide", "plain odd", "\u00e9tag\u00e8re", "a, b, c"};
    (void)state;
    for (size_t i = 0; i < COUNT(odd); i++) {
        struct rates rates;
        struct problems problems;
        shop_of(&rates, odd[i], &problems);
        assert_int_equal(problems_count(&problems, SEVERITY_ERROR), 0);
        check_list(&rates, LENGTH_INCH);
        check_list(&rates, LENGTH_MM);
        rates_clear(&rates);
        problems_clear(&problems);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_look),    cmocka_unit_test(test_units),
        cmocka_unit_test(test_titles),  cmocka_unit_test(test_numbers),
        cmocka_unit_test(test_renamed), cmocka_unit_test(test_lists),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
