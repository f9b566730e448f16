/* SPDX-License-Identifier: MIT */
/* What commands print on a terminal for jobs whose names are as long as names may be: lines of 80
 * columns where words allow it, no letter broken, no name cut, no number run into another. */
#include "command_bench.h"

#include "base/text.h"
#include "case.h"
#include "file_bench.h"

#include "cmocka_all.h"

#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define FOLDER "test-text-papers"
#define WIDTH  80

/* A name that begins and ends in a word of its own: each is printed as often as the other. */
struct names {
    const char *title;
    const char *middle; /* what stands between the two words */
    size_t longest;     /* columns of the longest word */
};

static const struct names all_names[] = {
    {"words", " of the second load from the mill by the river ", 12},
    {"hyphens", " with-a-hyphen-after-each-word-of-the-name ", 42},
    {"wide letters", " \u6a71\u67dc\u9580\u6a71 \u67dc\u9580\u6a71\u67dc\u9580 ", 12},
    {"accents", " \u00e9tag\u00e8re \u00e0 gla\u00e7ure na\u00efve ", 12},
};

/* The things that are named; first and last word of each are told apart by its letter. */
static const char things[] = "lsgdofhmcbx";

static const char *name_of(const struct names *names, char thing, char *text, size_t size) {
    (void)snprintf(text, size, "first%c%slast%c", thing, names->middle, thing);
    return text;
}

/* --- files --- */

static void save(const char *name, const char *text) {
    char path[200];
    (void)snprintf(path, sizeof path, FOLDER "/%s", name);
    file_bench_write(path, text, strlen(text));
}

/* The plain shop with sections of these names, among them prices as large as they may be. */
static void write_rates(const struct names *names) {
    struct dump whole = {0};
    char n[COUNT(things)][200];
    for (size_t i = 0; things[i] != '\0'; i++) {
        (void)name_of(names, things[i], n[i], sizeof n[i]);
    }
    char *const text = case_load(DOORCOST_SOURCE "/tests/data/plain-shop.ini", NULL);
    assert_non_null(text);
    char *const shop = strstr(text, "[shop]\n");
    assert_non_null(shop);
    *shop = '\0';
    dump_add(&whole, "%s[shop]\nwoods = " DOORCOST_SOURCE "/rates/woods.csv\n%s", text,
             shop + strlen("[shop]\n"));
    dump_add(&whole,
             "\n[lumber %s]\nspecies = yellow-poplar\nthickness = 4/4\n"
             "price = 123.45 per bf (100 to 140)\nwaste = 45 %% added\n"
             "board widths = 6, 8, 10\nboard lengths = 8 ft, 10 ft\n",
             n[0]);
    dump_add(&whole,
             "\n[sheet %s]\nthickness = 1/4\nsize = 48 x 96\nprice = 50.00 per sheet\n"
             "waste = 10 %% added\ndensity = 0.60 g/cm3\n",
             n[1]);
    dump_add(&whole, "\n[glass %s]\nthickness = 1/8\nprice = 10.00 per sqft\n", n[2]);
    dump_add(&whole,
             "\n[door %s]\nkind = panel\njoint = cope and stick\nthickness = 3/4\nstile = 2 1/4\n"
             "tongue = 3/8\ngroove = 3/8\npanel clearance = 1/16\noperations = %s, %s B\n",
             n[3], n[4], n[4]);
    dump_add(&whole,
             "\n[operation %s]\nper = door\nminutes = 12.5 (10 to 15)\nmachine = %s\n"
             "\n[operation %s B]\nper = job\nminutes = 1200\n",
             n[4], n[7], n[4]);
    dump_add(&whole,
             "\n[coating %s]\nspread by = wet film\nwet film = 4 mil\nsizes = 1 gal at 1000.00, "
             "5 gal at 4000.00\nreducer = 10 %% of coating\nreducer product = thinner\n",
             n[8]);
    dump_add(&whole, "\n[finish %s]\nspray = gun\ncoats = %s x 3\n", n[5], n[8]);
    dump_add(&whole, "\n[hardware %s]\nprice = 3.00 each\n", n[6]);
    dump_add(&whole, "\n[machine %s]\nrate = 6.00 per hour\n", n[7]);
    save("shop.ini", whole.text);
    free(text);
}

static void write_job(const struct names *names) {
    struct dump job = {0};
    struct dump noted = {0};
    char n[200];
    dump_add(&job, "[job]\ntitle = %s\n", name_of(names, 'x', n, sizeof n));
    dump_add(&job,
             "number = 0042\nclient = C. Client\ndate = 2026-03-02\nunit = in\nrates = shop.ini\n"
             "doors = doors.csv\n\n[make]\n");
    dump_add(&job, "style = %s\n", name_of(names, 'd', n, sizeof n));
    dump_add(&job, "frame = %s\n", name_of(names, 'l', n, sizeof n));
    dump_add(&job, "panel = %s\n", name_of(names, 's', n, sizeof n));
    dump_add(&job, "finish = %s\n", name_of(names, 'f', n, sizeof n));
    dump_add(&job, "hinge = %s\n", name_of(names, 'h', n, sizeof n));
    dump_add(&job, "slab = board\nglass = clear\npull = pull\nmeasure = door\ngap = 1/8\n"
                   "\n[sale]\ntax = 8.25 %%\ntax on = selling price\ndeposit = 50 %%\n");
    dump_add(&job, "\n[option %s]\nframe = poplar\n", name_of(names, 'b', n, sizeof n));
    save("job.ini", job.text);
    char *const rate = strstr(job.text, "tax = 8.25");
    assert_non_null(rate);
    rate[strlen("tax = ")] = '6';
    save("later.ini", job.text);
    dump_add(&noted, "what,hours,bought,paid,taken,left\n");
    dump_add(&noted, "%s,30,,,,\n", name_of(names, 'o', n, sizeof n));
    dump_add(&noted, "%s,,100 bf,12000.00,100 bf,3 bf\n", name_of(names, 'l', n, sizeof n));
    dump_add(&noted, "%s,,3,150.00,,\n", name_of(names, 's', n, sizeof n));
    save("noted.csv", noted.text);
    save("doors.csv", "id,count,width,height,room,note\n"
                      "first-row,12,15 13/16,30 5/8,,\n"
                      "R02,2,18,40,the galley with the window over the water,over the sink\n"
                      "R03,1,12,24,,\n");
}

/* --- calls --- */

static size_t times(const char *text, const char *word) {
    size_t count = 0;
    for (const char *at = strstr(text, word); at != NULL; at = strstr(at + 1, word)) {
        count++;
    }
    return count;
}

/* A line of 80 columns, unless it is one word behind its indent that has no room beside others. */
static int check_line(const char *call, const char *line, size_t size, size_t longest) {
    static char text[4000];
    size_t bad;
    assert_true(size < sizeof text);
    memcpy(text, line, size);
    text[size] = '\0';
    if (!text_is_utf8(text, size, &bad)) {
        print_error("%s: a letter is broken: %s\n", call, text);
        return 1;
    }
    const size_t columns = text_columns(text);
    if (columns > WIDTH && columns > longest + 18) {
        print_error("%s: %zu columns: %s\n", call, columns, text);
        return 1;
    }
    if (size > 0 && text[size - 1] == ' ') {
        print_error("%s: a blank at the end: %s\n", call, text);
        return 1;
    }
    return 0;
}

/* Names that a head of a column had no room for: `firstb ...`. */
static size_t times_cut(const char *text, const char *first) {
    size_t count = 0;
    for (const char *at = strstr(text, first); at != NULL; at = strstr(at + 1, first)) {
        const char *const dots = strstr(at, "...");
        count += dots != NULL && dots - at < 16 ? 1 : 0;
    }
    return count;
}

static int check_text(const struct names *names, const char *call, const struct called *r) {
    int wrong = 0;
    for (const char *at = r->out; *at != '\0';) {
        const size_t size = strcspn(at, "\n");
        wrong += check_line(call, at, size, names->longest);
        at += size + (at[size] == '\n' ? 1 : 0);
    }
    for (size_t i = 0; things[i] != '\0'; i++) {
        char first[16];
        char last[16];
        (void)snprintf(first, sizeof first, "first%c", things[i]);
        (void)snprintf(last, sizeof last, "last%c", things[i]);
        const size_t cut = times_cut(r->out, first);
        /* what is cut in a head is told in full beside it */
        if (times(r->out, first) - cut != times(r->out, last) ||
            (cut > 0 && times(r->out, last) == 0)) {
            print_error("%s, %s: '%s' stands there %zu times, '%s' %zu times\n", names->title, call,
                        first, times(r->out, first), last, times(r->out, last));
            wrong++;
        }
    }
    return wrong;
}

#define JOB          "test-text-papers/job.ini"
#define JOB_LATER    "test-text-papers/later.ini"
#define FOLDER_NOTED "test-text-papers/noted.csv"

static const char *const calls[][7] = {
    {"quote", JOB, "--all", "--effort", "0", NULL},
    {"check", JOB, NULL},
    {"finish", JOB, NULL},
    {"buy", JOB, "--effort", "0", NULL},
    {"plan", JOB, "--effort", "0", NULL},
    {"learn", JOB, FOLDER_NOTED, NULL},
    {"bridge", JOB, JOB_LATER, NULL},
    {"buy", JOB, JOB_LATER, NULL},
    {"days", JOB, JOB_LATER, NULL},
    {"compare", JOB, NULL},
    {"strike", JOB, NULL},
    {"days", JOB, NULL},
    {"ways", JOB, NULL},
    {"reach", JOB, "--total", "20000", NULL},
    {"explain", JOB, "total", "--depth", "4", NULL},
    {"range", JOB, "--draws", "100", NULL},
    {"table", JOB, "--counts", "1,999", NULL},
};

static void test_calls(void **state) {
    int wrong = 0;
    (void)state;
    (void)mkdir(FOLDER, 0777);
    for (size_t n = 0; n < COUNT(all_names); n++) {
        write_rates(&all_names[n]);
        write_job(&all_names[n]);
        for (size_t c = 0; c < COUNT(calls); c++) {
            if (c == 0 && n % 2 == 1) {
                continue; /* files with pictures take seconds */
            }
            struct called r = command_bench_call(calls[c], NULL);
            wrong += r.status == STATUS_DONE ? 0 : 1;
            wrong += check_text(&all_names[n], calls[c][0], &r);
            free(r.out);
        }
    }
    static const char *const files[] = {"job.ini",         "later.ini",     "noted.csv",
                                        "shop.ini",        "doors.csv",     "job.xlsx",
                                        "job-client.xlsx", "job-client.pdf"};
    for (size_t i = 0; i < COUNT(files); i++) {
        char path[200];
        (void)snprintf(path, sizeof path, FOLDER "/%s", files[i]);
        (void)unlink(path);
    }
    assert_int_equal(rmdir(FOLDER), 0);
    assert_int_equal(wrong, 0);
}

int main(void) {
    (void)setlocale(LC_CTYPE, "C.UTF-8");
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_calls)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
