/* SPDX-License-Identifier: MIT */
/* Which styles, sizes, counts and rows a call goes over, of two samples: as typed, in order and
 * each once; else by the job's own; what is refused and in which words. */
#include "command/row_words.h"
#include "command/sizes.h"
#include "command/work.h"

#include "cmocka_all.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define KITCHEN DOORCOST_SOURCE "/samples/kitchen/kitchen.ini"
#define METRIC  DOORCOST_SOURCE "/samples/metric/tea-kitchen.ini"

#define MOST_WORDS 5

/* Two jobs, opened once. */
struct opened {
    struct work kitchen, metric;
};

static int open_all(void **state) {
    static struct opened opened;
    static const struct work_request request = {.scope = WORK_ONE};
    assert_int_equal(work_open(&opened.kitchen, KITCHEN, request), WORK_OK);
    assert_int_equal(work_open(&opened.metric, METRIC, request), WORK_OK);
    *state = &opened;
    return 0;
}

static int close_all(void **state) {
    struct opened *const opened = *state;
    work_close(&opened->kitchen);
    work_close(&opened->metric);
    return 0;
}

/* What was said, of a call that a check makes. */
struct said {
    char text[2000];
    FILE *file;
};

static struct streams begin(struct said *said) {
    said->text[0] = '\0';
    said->file = fmemopen(said->text, sizeof said->text, "w");
    assert_non_null(said->file);
    return (struct streams){.out = said->file, .err = said->file};
}

static void end(struct said *said) {
    assert_int_equal(fclose(said->file), 0);
}

static size_t count_of(const char *const *words) {
    size_t count = 0;
    while (words[count] != NULL) {
        count++;
    }
    return count;
}

/* --- sizes --- */

struct sizes_case {
    const char *name;
    bool metric;
    const char *words[MOST_WORDS];
    const char *widths, *heights, *counts; /* NULL: not given */
    const char *dump; /* `styles | widths | heights | counts`, or what is said */
};

static const struct sizes_case sizes[] = {
    {"by the job", false, {NULL}, NULL, NULL, NULL, "shaker | 12,18 | 24,36,48,60 | 1,2,5,10,50"},
    {"by the metric job",
     true,
     {NULL},
     NULL,
     NULL,
     NULL,
     "frame | 300,400,500 | 800,1200,1600 | 1,2,5,10,50"},
    {"a style that is named",
     false,
     {"slab", NULL},
     NULL,
     NULL,
     NULL,
     "slab | 15,18 | 15,18 | 1,2,5,10,50"},
    {"two styles",
     false,
     {"open", "louvered", NULL},
     NULL,
     NULL,
     NULL,
     "open,louvered | 18,21,24 | 30,33,36,39 | 1,2,5,10,50"},
    {"a style that the job has none of: sizes of all others",
     false,
     {"plank-front", NULL},
     NULL,
     NULL,
     NULL,
     "plank-front | 12,18,24 | 24,36,48,60 | 1,2,5,10,50"},
    {"each once, in the order of the call",
     false,
     {"slab", "SHAKER", "slab", NULL},
     "12",
     "24",
     "1",
     "slab,shaker | 12 | 24 | 1"},
    {"in order, each once",
     false,
     {NULL},
     "18, 12,15 1/2 ,12",
     "30,24",
     "10,1,10",
     "shaker | 12,15 1/2,18 | 24,30 | 1,10"},
    {"the least and the most",
     false,
     {NULL},
     "1,120",
     "120,1",
     "1,9999",
     "shaker | 1,120 | 1,120 | 1,9999"},
    {"below the least",
     false,
     {NULL},
     "63/64",
     "24",
     "1",
     "doorcost: '63/64' is no item of --widths; expected widths from 1 to 120 in with commas "
     "between, as in 12,15 1/2,18\n"},
    {"over the most",
     false,
     {NULL},
     "120 1/64",
     "24",
     "1",
     "doorcost: '120 1/64' is no item of --widths; expected widths from 1 to 120 in with commas "
     "between, as in 12,15 1/2,18\n"},
    {"millimeters", true, {NULL}, "25.4,3048", "600", "1", "frame | 25.4,3048 | 600 | 1"},
    {"below the least in millimeters",
     true,
     {NULL},
     "25.3",
     "600",
     "1",
     "doorcost: '25.3' is no item of --widths; expected widths from 25.4 to 3048 mm with commas "
     "between, as in 300,400,500\n"},
    {"over the most in millimeters",
     true,
     {NULL},
     "600",
     "3048.1",
     "1",
     "doorcost: '3048.1' is no item of --heights; expected heights from 25.4 to 3048 mm with "
     "commas between, as in 600,700,900\n"},
    {"no number",
     false,
     {NULL},
     "12,wide",
     "24",
     "1",
     "doorcost: 'wide' is no item of --widths; expected widths from 1 to 120 in with commas "
     "between, as in 12,15 1/2,18\n"},
    {"nothing between commas",
     false,
     {NULL},
     "12,,18",
     "24",
     "1",
     "doorcost: '' is no item of --widths; expected widths from 1 to 120 in with commas between, "
     "as in 12,15 1/2,18\n"},
    {"nothing at all",
     false,
     {NULL},
     "",
     "24",
     "1",
     "doorcost: '' is no item of --widths; expected widths from 1 to 120 in with commas between, "
     "as in 12,15 1/2,18\n"},
    {"a comma behind the last",
     false,
     {NULL},
     "12,",
     "24",
     "1",
     "doorcost: '' is no item of --widths; expected widths from 1 to 120 in with commas between, "
     "as in 12,15 1/2,18\n"},
    {"a count of none",
     false,
     {NULL},
     "12",
     "24",
     "0",
     "doorcost: '0' is no item of --counts; expected counts from 1 to 9999 with commas between, as "
     "in 1,5,20\n"},
    {"too large a count",
     false,
     {NULL},
     "12",
     "24",
     "10000",
     "doorcost: '10000' is no item of --counts; expected counts from 1 to 9999 with commas "
     "between, as in 1,5,20\n"},
    {"half a door",
     false,
     {NULL},
     "12",
     "24",
     "1.5",
     "doorcost: '1.5' is no item of --counts; expected counts from 1 to 9999 with commas between, "
     "as in 1,5,20\n"},
    {"as many sizes as there may be",
     false,
     {NULL},
     "1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21,22,23,24",
     "24",
     "1,2,3,4,5,6,7,8,9,10,11,12",
     "shaker | 1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21,22,23,24 | 24 | "
     "1,2,3,4,5,6,7,8,9,10,11,12"},
    {"one more size",
     false,
     {NULL},
     "1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21,22,23,24,25",
     "24",
     "1",
     "doorcost: --widths has more than 24 items; take fewer\n"},
    {"one more count",
     false,
     {NULL},
     "1",
     "24",
     "1,2,3,4,5,6,7,8,9,10,11,12,13",
     "doorcost: --counts has more than 12 items; take fewer\n"},
    {"no such style",
     false,
     {"shakr", NULL},
     NULL,
     NULL,
     NULL,
     "doorcost: the rates have no [door shakr]; did you mean 'shaker'?\n"},
    {"a style like none",
     true,
     {"zzzzzz", NULL},
     NULL,
     NULL,
     NULL,
     "doorcost: the rates have no [door zzzzzz]; they have 'frame', 'frame-glass', 'slab', "
     "'frame-solid', 'frame-mortised', 'slatted', 'frame-bought'\n"},
};

static void dump_list(char *text, size_t size, const int64_t *list, size_t count,
                      enum length_unit unit, bool sides) {
    for (size_t i = 0; i < count; i++) {
        char item[32];
        const size_t used = strlen(text);
        if (!sides) {
            (void)snprintf(item, sizeof item, "%lld", (long long)list[i]);
        }
        (void)snprintf(text + used, size - used, "%s%s", i == 0 ? " | " : ",",
                       sides ? length_show(list[i], unit, item, sizeof item) : item);
    }
}

static void dump_sizes(char *text, size_t size, const struct work *work, const struct sizes *s) {
    text[0] = '\0';
    for (size_t i = 0; i < s->style_count; i++) {
        const size_t used = strlen(text);
        (void)snprintf(text + used, size - used, "%s%s", i == 0 ? "" : ",",
                       work->rates.styles[s->styles[i]].name.s);
    }
    dump_list(text, size, s->widths, s->width_count, work->job.unit, true);
    dump_list(text, size, s->heights, s->height_count, work->job.unit, true);
    dump_list(text, size, s->counts, s->count_count, work->job.unit, false);
}

static void test_sizes(void **state) {
    const struct opened *const opened = *state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(sizes); i++) {
        const struct sizes_case *const c = &sizes[i];
        const struct work *const work = c->metric ? &opened->metric : &opened->kitchen;
        const struct request request = {.words = c->words,
                                        .word_count = count_of(c->words),
                                        .widths = c->widths,
                                        .heights = c->heights,
                                        .counts = c->counts};
        struct said said;
        struct sizes found;
        struct pool pool;
        char text[2000];
        pool_init(&pool);
        const struct streams streams = begin(&said);
        const enum status status = sizes_read(&found, &request, work, &pool, streams);
        end(&said);
        if (status == STATUS_DONE) {
            dump_sizes(text, sizeof text, work, &found);
        } else {
            (void)snprintf(text, sizeof text, "%s", said.text);
        }
        if (strcmp(text, c->dump) != 0 || (status != STATUS_DONE && status != STATUS_USE)) {
            print_error("%s: is\n  %s\nexpected\n  %s\n", c->name, text, c->dump);
            wrong++;
        }
        pool_clear(&pool);
    }
    assert_int_equal(wrong, 0);
}

/* --- rows --- */

static void test_rows(void **state) {
    static const struct {
        const char *words[MOST_WORDS];
        const char *rows; /* ids in the order of the list, or what is said */
    } rows[] = {
        {{NULL}, ""},
        {{"G01", NULL}, "G01"},
        {{"W06", "G02", "P01", NULL}, "G02 P01 W06"},
        {{"G02", "G01", "G02", "G02", NULL}, "G01 G02"},
        {{"G99", NULL}, "doorcost: no row of the list is called 'G99'; did you mean 'G09'?\n"},
        {{"G01", "kitchen", NULL}, "doorcost: no row of the list is called 'kitchen'\n"},
        {{"g01", NULL}, "doorcost: no row of the list is called 'g01'; did you mean 'G01'?\n"},
        {{"", NULL}, "doorcost: no row of the list is called ''\n"},
    };
    const struct opened *const opened = *state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(rows); i++) {
        const struct request request = {.words = rows[i].words,
                                        .word_count = count_of(rows[i].words)};
        struct said said;
        struct pool pool;
        size_t *found = NULL;
        size_t count = 0;
        char text[1000] = "";
        pool_init(&pool);
        const struct streams streams = begin(&said);
        const enum status status =
            row_words_find(&request, &opened->kitchen, &pool, &found, &count, streams);
        end(&said);
        for (size_t k = 0; status == STATUS_DONE && k < count; k++) {
            const size_t used = strlen(text);
            (void)snprintf(text + used, sizeof text - used, "%s%s", k == 0 ? "" : " ",
                           opened->kitchen.job.rows[found[k]].id.s);
        }
        const char *const told = status == STATUS_DONE ? text : said.text;
        if (strcmp(told, rows[i].rows) != 0) {
            print_error("row %zu: is\n  %s\nexpected\n  %s\n", i, told, rows[i].rows);
            wrong++;
        }
        pool_clear(&pool);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_sizes),
        cmocka_unit_test(test_rows),
    };
    return cmocka_run_group_tests(tests, open_all, close_all);
}
