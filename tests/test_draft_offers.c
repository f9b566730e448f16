/* SPDX-License-Identifier: MIT */
/* What is offered for a job to be: by the rates, by answers so far, by the old job that is gone on
 * from; and the lines that become of the answers, read back as an INI file. */
#include "support.h"

#include "base/text.h"
#include "draft/defaults.h"
#include "read/file/source.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define MOST_ANSWERS 6

/* A draft on the rates of a bench. */
struct table {
    struct bench bench;
    struct pool pool;
    struct problems problems;
    struct folder folder;
    struct ini old;
    struct draft draft;
};

static void lay(struct table *t, const char *name, const char *const *edits, const char *old) {
    struct source source;
    const bool metric = edits != NULL && edits[0] != NULL && strcmp(edits[0], "mm") == 0;
    *t = (struct table){0};
    bench_open(&t->bench, name, metric ? BENCH_MM : BENCH_INCH, metric ? edits + 1 : edits,
               metric ? "A,400,700\n" : "A,15,30\n");
    bench_sound(&t->bench);
    pool_init(&t->pool);
    problems_init(&t->problems);
    t->draft = (struct draft){.pool = &t->pool,
                              .path = "new-kitchen.ini",
                              .folder = &t->folder,
                              .rates = &t->bench.rates,
                              .date = {2026, 3, 9}};
    if (old != NULL) {
        assert_true(source_text(&source, "old.ini", old, &t->problems));
        assert_true(ini_read_lines(&t->old, &source, &t->problems));
        assert_int_equal(problems_count(&t->problems, SEVERITY_ERROR), 0);
        t->draft.old = &t->old;
        t->draft.old_path = "old.ini";
    }
}

static int clear(struct table *t) {
    pool_clear(&t->pool);
    problems_clear(&t->problems);
    return bench_close(&t->bench);
}

/* `make.style = slab` each. */
static void answer(struct table *t, const char *const *answers) {
    for (size_t i = 0; i < MOST_ANSWERS && answers[i] != NULL; i++) {
        char section[16];
        char key[40];
        const char *const dot = strchr(answers[i], '.');
        const char *const is = strstr(answers[i], " = ");
        assert_true(dot != NULL && is != NULL);
        (void)snprintf(section, sizeof section, "%.*s", (int)(dot - answers[i]), answers[i]);
        (void)snprintf(key, sizeof key, "%.*s", (int)(is - dot - 1), dot + 1);
        const size_t at = question_find(section, key);
        assert_true(at < MOST_QUESTIONS);
        t->draft.values[at] = is + strlen(" = ");
    }
}

/* --- offers --- */

struct offer_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *answers[MOST_ANSWERS];
    const char *old; /* text of the job that is gone on from; NULL: none */
    const char *section, *key;
    const char *offer; /* NULL: nothing is offered */
};

#define OVERLAY(range) "hardware hinge|overlay = " range
#define OLD                                                                                        \
    "[job]\ntitle = Old\nnumber = 7\nclient = C. Client\nunit = in\nrates = r.ini\nvalid = 10 "    \
    "days\n"                                                                                       \
    "\n[make]\nstyle = slab\nframe = thick-poplar\nfinish = gone\ncolor = white\noverlay = 3/8\n"

static const struct offer_case offers[] = {
    {"the unit is that of the rates", {NULL}, {NULL}, NULL, "job", "unit", "in"},
    {"of metric rates too", {"mm", NULL}, {NULL}, NULL, "job", "unit", "mm"},
    {"today", {NULL}, {NULL}, NULL, "job", "date", "2026-03-09"},
    {"no job, the first number", {NULL}, {NULL}, NULL, "job", "number", "0001"},
    {"the file's name", {NULL}, {NULL}, NULL, "job", "title", "New kitchen"},
    {"nobody knows the client", {NULL}, {NULL}, NULL, "job", "client", NULL},
    {"rates that ship, in inches",
     {NULL},
     {"job.unit = in", NULL},
     NULL,
     "job",
     "rates",
     "rates/small-shop.ini"},
    {"rates that ship, in mm",
     {NULL},
     {"job.unit = mm", NULL},
     NULL,
     "job",
     "rates",
     "rates/metric-shop.ini"},

    /* [make] */
    {"the first style", {NULL}, {NULL}, NULL, "make", "style", "plain"},
    {"the first that is made here",
     {"door plain|bought in = 50.00 per door", NULL},
     {NULL},
     NULL,
     "make",
     "style",
     "profiled"},
    {"the first lumber", {NULL}, {NULL}, NULL, "make", "frame", "poplar"},
    {"a panel that goes into a groove",
     {NULL},
     {"make.style = plain", NULL},
     NULL,
     "make",
     "panel",
     "ply"},
    {"a solid panel is of the frame's wood",
     {NULL},
     {"make.style = solid", "make.frame = thick-poplar", NULL},
     NULL,
     "make",
     "panel",
     "thick-poplar"},
    {"of the first lumber where no frame is named",
     {NULL},
     {"make.style = solid", NULL},
     NULL,
     "make",
     "panel",
     "poplar"},
    {"a slab as thick as doors",
     {NULL},
     {"make.style = slab", NULL},
     NULL,
     "make",
     "slab",
     "board"},
    {"no sheet is so thick",
     {"sheet board|thickness = 5/8", NULL},
     {"make.style = slab", NULL},
     NULL,
     "make",
     "slab",
     "poplar"},
    {"the first finish", {NULL}, {NULL}, NULL, "make", "finish", "painted"},
    {"the first glass", {NULL}, {NULL}, NULL, "make", "glass", "clear"},
    {"no piece says that it is a hinge", {NULL}, {NULL}, NULL, "make", "hinge", "none"},
    {"one tells which overlays it takes",
     {OVERLAY("1/4 in to 5/8 in"), NULL},
     {NULL},
     NULL,
     "make",
     "hinge",
     "hinge"},
    {"what is called a pull", {NULL}, {NULL}, NULL, "make", "pull", "pull"},
    {"openings are measured", {NULL}, {NULL}, NULL, "make", "measure", "opening"},

    /* lengths: common practice, no source */
    {"half an inch",
     {OVERLAY("1/4 in to 5/8 in"), NULL},
     {"make.hinge = hinge", "job.unit = in", NULL},
     NULL,
     "make",
     "overlay",
     "1/2 in"},
    {"the hinge takes half an inch at the most",
     {OVERLAY("1/4 in to 1/2 in"), NULL},
     {"make.hinge = hinge", NULL},
     NULL,
     "make",
     "overlay",
     "1/2 in"},
    {"it takes less",
     {OVERLAY("1/4 in to 7/16 in"), NULL},
     {"make.hinge = hinge", NULL},
     NULL,
     "make",
     "overlay",
     "1/4 in"},
    {"it takes half an inch at the least",
     {OVERLAY("1/2 in to 1 in"), NULL},
     {"make.hinge = hinge", NULL},
     NULL,
     "make",
     "overlay",
     "1/2 in"},
    {"it takes more",
     {OVERLAY("5/8 in to 1 in"), NULL},
     {"make.hinge = hinge", NULL},
     NULL,
     "make",
     "overlay",
     "5/8 in"},
    {"an inset hinge takes none",
     {OVERLAY("inset"), NULL},
     {"make.hinge = hinge", NULL},
     NULL,
     "make",
     "overlay",
     NULL},
    {"no hinge", {NULL}, {"make.hinge = none", NULL}, NULL, "make", "overlay", "1/2 in"},
    {"in millimeters", {NULL}, {"job.unit = mm", NULL}, NULL, "make", "overlay", "15 mm"},
    {"a reveal", {NULL}, {NULL}, NULL, "make", "reveal", "3/32 in"},
    {"a reveal in millimeters", {NULL}, {"job.unit = mm", NULL}, NULL, "make", "reveal", "2 mm"},
    {"a gap", {NULL}, {NULL}, NULL, "make", "gap", "1/8 in"},
    {"a gap in millimeters", {NULL}, {"job.unit = mm", NULL}, NULL, "make", "gap", "3 mm"},

    /* an old job */
    {"its style goes on", {NULL}, {NULL}, OLD, "make", "style", "slab"},
    {"its wood too", {NULL}, {NULL}, OLD, "make", "frame", "thick-poplar"},
    {"its overlay too", {NULL}, {NULL}, OLD, "make", "overlay", "3/8"},
    {"these rates have no such finish", {NULL}, {NULL}, OLD, "make", "finish", "painted"},
    {"a color is of one job", {NULL}, {NULL}, OLD, "make", "color", NULL},
    {"so is the client", {NULL}, {NULL}, OLD, "job", "client", NULL},
    {"how long a quote is valid goes on", {NULL}, {NULL}, OLD, "job", "valid", "10 days"},
    {"what the old one left out is left out", {NULL}, {NULL}, OLD, "make", "pull", NULL},
    {"but not what every job needs",
     {NULL},
     {NULL},
     "[job]\ntitle = Old\n",
     "job",
     "rates",
     "rates/small-shop.ini"},
    {"the rates under the name that they have here", {NULL}, {NULL}, OLD, "job", "rates", "r.ini"},
};

static void test_offers(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(offers); i++) {
        const struct offer_case *const c = &offers[i];
        struct table t;
        size_t count;
        const struct question *const rows = questions(&count);
        lay(&t, c->name, c->edits, c->old);
        answer(&t, c->answers);
        const size_t at = question_find(c->section, c->key);
        assert_true(at < count);
        const char *const offer = draft_offer(&t.draft, &rows[at]);
        if ((offer == NULL) != (c->offer == NULL) ||
            (offer != NULL && strcmp(offer, c->offer) != 0)) {
            bench_wrong(&t.bench, "'%s' is offered, expected '%s'", offer == NULL ? "none" : offer,
                        c->offer == NULL ? "none" : c->offer);
        }
        wrong += clear(&t);
    }
    assert_int_equal(wrong, 0);
}

/* What is offered is what the reader takes. */
static void test_taken(void **state) {
    struct table t;
    size_t count;
    const struct question *const rows = questions(&count);
    (void)state;
    for (int metric = 0; metric < 2; metric++) {
        static const char *const edits[][3] = {{OVERLAY("1/4 in to 5/8 in"), NULL}, {"mm", NULL}};
        lay(&t, "taken", edits[metric], NULL);
        for (size_t i = 0; i < count; i++) {
            const char *const offer = draft_offer(&t.draft, &rows[i]);
            t.draft.values[i] = offer;
            if (offer != NULL && !draft_takes(&t.draft, &rows[i], offer, &t.problems)) {
                bench_wrong(&t.bench, "[%s] %s: '%s' is offered and not taken", rows[i].section,
                            rows[i].key, offer);
            }
        }
        assert_int_equal(clear(&t), 0);
    }
}

/* --- what is asked --- */

static void test_asked(void **state) {
    static const struct {
        const char *name;
        const char *edits[3], *answers[3];
        bool color, overlay, reveal;
    } rows[] = {
        {"nothing is said", {NULL}, {NULL}, false, true, true},
        {"finished doors", {NULL}, {"make.measure = door", NULL}, false, false, false},
        {"openings", {NULL}, {"make.measure = opening", NULL}, false, true, true},
        {"openings in capitals", {NULL}, {"make.measure = Opening", NULL}, false, true, true},
        {"overlay is said", {NULL}, {"make.overlay = 1/2", NULL}, false, true, false},
        {"a finish that is not tinted", {NULL}, {"make.finish = painted", NULL}, false, true, true},
        {"a tinted finish",
         {"coating paint|tinted = yes", NULL},
         {"make.finish = painted", NULL},
         true,
         true,
         true},
        {"no finish",
         {"coating paint|tinted = yes", NULL},
         {"make.finish = none", NULL},
         false,
         true,
         true},
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct table t;
        lay(&t, rows[i].name, rows[i].edits, NULL);
        answer(&t, rows[i].answers);
        if (wants_color(&t.draft) != rows[i].color || wants_overlay(&t.draft) != rows[i].overlay ||
            wants_reveal(&t.draft) != rows[i].reveal) {
            bench_wrong(&t.bench, "other questions are asked");
        }
        assert_true(lacks_rates(&t.draft));
        assert_false(wants_rates(&t.draft) || wants_own_columns(&t.draft));
        wrong += clear(&t);
    }
    assert_int_equal(wrong, 0);
}

/* --- lines --- */

struct lines_case {
    const char *name, *old;
    const char *answers[MOST_ANSWERS];
    const char *wanted; /* lines, without comments */
    const char *kept, *changed, *dropped;
};

static const struct lines_case lines_of[] = {
    {"a new job",
     NULL,
     {"make.style = slab", "job.title = A; B", "job.number = 0042", "sale.tax = 6 %", NULL},
     "[job]\ntitle = \"A; B\"\nnumber = 0042\n[make]\nstyle = slab\n[sale]\ntax = 6 %\n",
     "",
     "",
     ""},
    {"an old one goes on",
     "[job]\ntitle = Old ; its title\nnumber = 7\nclient = C. Client\nrates = r.ini\n\n[make]\n"
     "style = slab\nframe = poplar\n",
     {"job.title = New", "job.number = 8", "job.rates = r.ini", "make.style = slab",
      "make.frame = thick-poplar", NULL},
     "[job]\ntitle = New\nnumber = 8\nrates = r.ini\n[make]\nstyle = slab\nframe = thick-poplar\n",
     "rates, [make]",
     "title, number, [make] frame",
     "client"},
    {"what it lacked is put in",
     "[job]\ntitle = Old\nrates = r.ini\n[make]\nstyle = slab\n",
     {"job.title = Old", "job.rates = r.ini", "make.style = slab", "make.finish = none", NULL},
     "[job]\ntitle = Old\nrates = r.ini\n[make]\nstyle = slab\nfinish = none\n",
     "rates, [make]",
     "[make] finish",
     ""},
};

/* Lines without comments, blank ones and blanks round what is left. */
static void plain(const char *text, char *to, size_t size) {
    to[0] = '\0';
    while (*text != '\0') {
        const size_t all = strcspn(text, "\n");
        bool quoted = false;
        size_t stop = 0;
        for (; stop < all && (quoted || text[stop] != ';'); stop++) {
            quoted = text[stop] == '"' ? !quoted : quoted;
        }
        while (stop > 0 && text[stop - 1] == ' ') {
            stop--;
        }
        for (size_t i = 0; i < stop; i++) { /* one blank around the `=` */
            if (text[i] != ' ' || text[i + 1] != ' ') {
                (void)strncat(to, &text[i], 1);
            }
        }
        (void)strncat(to, stop > 0 ? "\n" : "", size - strlen(to) - 1);
        text += all + (text[all] == '\n' ? 1 : 0);
    }
}

static void test_lines(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(lines_of); i++) {
        const struct lines_case *const c = &lines_of[i];
        char text[4000];
        struct table t;
        struct source source = {0};
        struct ini_lines lines;
        struct draft_told told;
        const char *bad = NULL;
        lay(&t, c->name, NULL, c->old);
        if (c->old != NULL) {
            assert_true(source_text(&source, "old.ini", c->old, &t.problems));
        }
        t.draft.from = c->old != NULL;
        answer(&t, c->answers);
        assert_true(draft_lines(&t.draft, &source, &lines, &told, &bad));
        assert_null(bad);
        plain(ini_text(&lines, &t.pool), text, sizeof text);
        if (strcmp(text, c->wanted) != 0) {
            bench_wrong(&t.bench, "is\n%sexpected\n%s", text, c->wanted);
        }
        if (strcmp(told.kept, c->kept) != 0 || strcmp(told.changed, c->changed) != 0 ||
            strcmp(told.dropped, c->dropped) != 0) {
            bench_wrong(&t.bench, "kept '%s', changed '%s', dropped '%s'", told.kept, told.changed,
                        told.dropped);
        }
        wrong += clear(&t);
    }
    assert_int_equal(wrong, 0);
}

/* What no line can hold is told by its key. */
static void test_bad_line(void **state) {
    static const char *const answers[] = {"job.title = two\nlines", NULL};
    struct table t;
    struct ini_lines lines;
    struct draft_told told;
    const char *bad = NULL;
    (void)state;
    lay(&t, "bad line", NULL, NULL);
    answer(&t, answers);
    assert_false(draft_lines(&t.draft, &(struct source){0}, &lines, &told, &bad));
    assert_non_null(bad);
    assert_string_equal(text_or_empty(bad), "title");
    assert_int_equal(clear(&t), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_offers),   cmocka_unit_test(test_taken),
        cmocka_unit_test(test_asked),    cmocka_unit_test(test_lines),
        cmocka_unit_test(test_bad_line),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
