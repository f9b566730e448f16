/* SPDX-License-Identifier: MIT */
/* The table of cautions against docs/cautions.md, and that a job gets those that it needs and no
 * others: each comes with what brings it, and is not there without. */
#include "case.h"
#include "support.h"

#include "report/words/caution.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* --- the docs --- */

/* `shop, plans`: the papers as the docs name them. */
static void name_papers(unsigned papers, char *text, size_t size) {
    static const struct {
        enum caution_paper paper;
        const char *name;
    } names[] = {{CAUTION_SHOP, "shop"},  {CAUTION_PLAN, "plans"},  {CAUTION_FINISH, "finish"},
                 {CAUTION_BUY, "buying"}, {CAUTION_QUOTE, "quote"}, {CAUTION_CLIENT, "client"}};
    text[0] = '\0';
    for (size_t i = 0; i < COUNT(names); i++) {
        if ((papers & names[i].paper) != 0) {
            const size_t used = strlen(text);
            (void)snprintf(text + used, size - used, "%s%s", used == 0 ? "" : ", ", names[i].name);
        }
    }
}

static void docs_say_the_same(void **state) {
    char *const docs = case_load(DOORCOST_SOURCE "/docs/cautions.md", NULL);
    size_t rows = 0;
    (void)state;
    assert_non_null(docs);
    const char *const start = strstr(docs, "\n## What is printed\n");
    assert_non_null(start);
    const char *const end = strstr(start + 1, "\n## ");
    assert_non_null(end);
    for (size_t i = 0; i < caution_count; i++) {
        char papers[64];
        char row[800];
        name_papers(cautions[i].papers, papers, sizeof papers);
        (void)snprintf(row, sizeof row, "\n| %s | %s | %s | %s |\n", cautions[i].subject,
                       cautions[i].when, papers, cautions[i].text);
        const char *const at = strstr(start, row);
        if (at == NULL || at > end) {
            fail_msg("docs/cautions.md lacks: %s", row + 1);
        }
    }
    for (const char *at = strstr(start, "\n| "); at != NULL && at < end;
         at = strstr(at + 1, "\n| ")) {
        rows++;
    }
    assert_int_equal(rows, caution_count + 1); /* and the heading */
    free(docs);
}

/* --- which a job gets --- */

static const char *find(const struct caution_list *list, const struct caution *caution) {
    for (size_t i = 0; i < list->count; i++) {
        if (strncmp(list->texts[i], caution->text, strlen(caution->text)) == 0) {
            return list->texts[i] + strlen(caution->text);
        }
    }
    return NULL;
}

struct brings {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    const char *subjects[16]; /* all that the plain job has not; behind a '|' what it is about */
};

#define PLAIN "D1,18,30\n"
#define AT_A(kind)                                                                                 \
    {                                                                                              \
        "machine saw|rate = 3.00 per hour\nkind = " kind,                                          \
            "operation cut|machine = saw\nper = door\nminutes = 1", "door plain|operations = cut"  \
    }
#define PAINTED "make|finish = painted"

static const struct brings brings[] = {
    {"miter saw", AT_A("miter saw"), PLAIN, {"machines", "miter saw", "noise"}},
    {"table saw", AT_A("table saw"), PLAIN, {"machines", "table saw", "noise"}},
    {"band saw", AT_A("band saw"), PLAIN, {"machines", "band saw", "noise"}},
    {"jointer", AT_A("jointer"), PLAIN, {"machines", "jointer", "noise"}},
    {"planer", AT_A("planer"), PLAIN, {"machines", "planer", "noise"}},
    {"shaper", AT_A("shaper"), PLAIN, {"machines", "shaper", "noise"}},
    {"router", AT_A("router"), PLAIN, {"machines", "router", "noise"}},
    {"mortiser", AT_A("mortiser"), PLAIN, {"mortiser"}},
    {"boring", AT_A("boring machine"), PLAIN, {"boring machine"}},
    {"sander", AT_A("sander"), PLAIN, {"sander", "noise"}},
    {"clamps", AT_A("clamps"), PLAIN, {"clamps"}},
    {"booth", AT_A("spray booth"), PLAIN, {"spray booth"}},
    {"other", AT_A("other"), PLAIN, {NULL}},
    {"not told",
     {"machine saw|rate = 3.00 per hour", "operation cut|machine = saw\nper = door\nminutes = 1",
      "door plain|operations = cut"},
     PLAIN,
     {"kind not told| Here: saw."}},
    {"not used", {"machine saw|rate = 3.00 per hour\nkind = jointer"}, PLAIN, {NULL}},
    {"short part",
     AT_A("miter saw"),
     "D1,11,30\n",
     {"machines", "miter saw", "noise", "short parts"}},
    {"short parts, by hand", {NULL}, "D1,11,30\n", {NULL}},
    {"side by side",
     {"machine saw|rate = 3.00 per hour\nkind = other",
      "operation cut|machine = saw\nper = part\nminutes = 1\ntogether = 4",
      "door plain|operations = cut"},
     PLAIN,
     {"side by side| Here: cut."}},
    {"wide",
     {"machine saw|rate = 3.00 per hour\nkind = other",
      "operation cut|machine = saw\nper = door\nminutes = 1\ncapacity = 17 in, one side open",
      "door plain|operations = cut"},
     PLAIN,
     {"wide doors| Here: cut."}},
    {"as wide as it takes",
     {"machine saw|rate = 3.00 per hour\nkind = other",
      "operation cut|machine = saw\nper = door\nminutes = 1\ncapacity = 18 in, one side open",
      "door plain|operations = cut"},
     PLAIN,
     {NULL}},
    /* 48 x 96 x 1/4 in are 0.6667 cu ft */
    {"a sheet of 51 lb", {"sheet ply|density = 76.5 lb/cuft"}, PLAIN, {NULL}},
    {"a sheet of 52 lb",
     {"sheet ply|density = 78 lb/cuft"},
     PLAIN,
     {"lifting| Here: ply (52.00 lb)."}},
    {"60 in", {NULL}, "D1,18,60\n", {NULL}},
    {"over 60 in", {NULL}, "D1,18,60 1/16\n", {"tall doors| Here: D1.", "cabinets| Here: D1."}},
    {"seven tall",
     {NULL},
     "D1,18,61\nD2,18,61\nD3,18,61\nD4,18,61\nD5,18,61\nD6,18,61\nD7,18,61\n",
     {"tall doors| Here: D1, D2, D3, D4, D5, D6 and 1 more.",
      "cabinets| Here: D1, D2, D3, D4, D5, D6 and 1 more."}},
    {"glass",
     {"door plain|kind = glass\nglass clearance = 1/8", "make|panel"},
     PLAIN,
     {"glass", "safety glazing", "!panels"}},
    {"lead",
     {"door plain|kind = glass\nglass clearance = 1/8", "make|panel",
      "glass clear|lead = yes\nwords = old panes"},
     PLAIN,
     {"glass", "safety glazing", "lead| Here: old panes.", "lead panes| Here: old panes.",
      "!panels"}},
    {"bought in", {"door plain|bought in = 50.00 per door"}, PLAIN, {"!dust", "!panels"}},
    {"sprayed, not told", {PAINTED}, PLAIN, {"spraying", "hazards not told| Here: paint."}},
    {"none", {PAINTED, "coating paint|hazards = none"}, PLAIN, {"spraying"}},
    {"flammable",
     {PAINTED, "coating paint|hazards = flammable"},
     PLAIN,
     {"spraying", "flammable| Here: paint."}},
    {"waterborne",
     {PAINTED, "coating paint|hazards = waterborne"},
     PLAIN,
     {"spraying", "waterborne| Here: paint."}},
    {"hardener",
     {PAINTED, "coating paint|hazards = none\ncatalyst = 5 % of coating\ncatalyst product = hard",
      "additive hard|hazards = isocyanate, acid\nsizes = 1 qt at 9.00"},
     PLAIN,
     {"spraying", "data sheet", "isocyanate| Here: hard.", "acid catalyst| Here: hard."}},
    {"hardener of no job",
     {"additive hard|hazards = isocyanate\nsizes = 1 qt at 9.00"},
     PLAIN,
     {NULL}},
    {"formaldehyde",
     {PAINTED, "coating paint|hazards = formaldehyde"},
     PLAIN,
     {"spraying", "formaldehyde| Here: paint."}},
    {"oil by hand",
     {PAINTED, "coating paint|hazards = drying oil", "spray gun|by hand = yes"},
     PLAIN,
     {"rags| Here: paint."}},
    {"by hand, not told",
     {PAINTED, "spray gun|by hand = yes"},
     PLAIN,
     {"rags", "hazards not told| Here: paint."}},
    {"by hand, none",
     {PAINTED, "coating paint|hazards = none", "spray gun|by hand = yes"},
     PLAIN,
     {NULL}},
    {"pressure",
     {PAINTED, "coating paint|hazards = none", "spray gun|pressure = yes"},
     PLAIN,
     {"spraying", "pressure"}},
    {"lost",
     {PAINTED, "coating paint|hazards = none", "spray gun|fixed loss = 2 fl oz per mix"},
     PLAIN,
     {"spraying", "waste"}},
    {"tax", {"sale|tax = 5 %\ntax on = selling price"}, PLAIN, {"tax"}},
    {"exempt", {"sale|exempt = E-1"}, PLAIN, {"tax"}},
    {"deposit", {"sale|deposit = 50 %"}, PLAIN, {"deposit"}},
    {"stages", {"sale|stages = 40 % when sprayed"}, PLAIN, {"deposit"}},
    {"card", {"sale|card fee = 2 % added"}, PLAIN, {"card fee"}},
    {"valid", {"job|valid = 30 days"}, PLAIN, {"offer"}},
    {"an estimate binds nobody", {"job|valid = 30 days\npaper = estimate"}, PLAIN, {NULL}},
    {"hung",
     {"operation hang|does = hanging\nper = door\nminutes = 1", "job|also = hang"},
     PLAIN,
     {"hanging"}},
};

/* What every made door of a sheet panel has. */
static bool is_plain(const char *subject) {
    return strcmp(subject, "estimate") == 0 || strcmp(subject, "dust") == 0 ||
           strcmp(subject, "panels") == 0;
}

/* The entry of a case on a subject, behind it what it is about; NULL: none. */
static const char *entry_of(const struct brings *b, const char *subject, char mark) {
    const size_t size = strlen(subject);
    for (size_t i = 0; i < COUNT(b->subjects) && b->subjects[i] != NULL; i++) {
        const char *const entry = b->subjects[i] + (mark == '\0' ? 0 : 1);
        if ((mark == '\0' || b->subjects[i][0] == mark) && strncmp(entry, subject, size) == 0 &&
            (entry[size] == '\0' || entry[size] == '|')) {
            return entry + size;
        }
    }
    return NULL;
}

static void check_caution(struct bench *bench, const struct brings *b,
                          const struct caution_list *list, const struct caution *caution) {
    const char *const entry = entry_of(b, caution->subject, '\0');
    const bool wanted =
        entry != NULL || (is_plain(caution->subject) && entry_of(b, caution->subject, '!') == NULL);
    const char *const about = find(list, caution);
    if ((about != NULL) != wanted) {
        bench_wrong(bench, "%s '%s'", wanted ? "missing" : "unwanted", caution->subject);
    } else if (wanted) {
        const char *const expected = entry == NULL || entry[0] == '\0' ? "" : entry + 1;
        if (strcmp(about, expected) != 0) {
            bench_wrong(bench, "'%s' is about '%s'", caution->subject, about);
        }
    }
}

static void needed_and_no_others(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(brings); i++) {
        const struct brings *const b = &brings[i];
        struct bench bench;
        struct pool pool;
        bench_open(&bench, b->name, BENCH_INCH, b->edits, b->doors);
        bench_sound(&bench);
        pool_init(&pool);
        const struct caution_list list = cautions_needed(&bench.estimate, CAUTION_ALL, &pool);
        for (size_t c = 0; c < caution_count; c++) {
            check_caution(&bench, b, &list, &cautions[c]);
        }
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Every caution is brought by some case, so that none is in the table alone. */
static void each_is_brought(void **state) {
    (void)state;
    for (size_t c = 0; c < caution_count; c++) {
        bool brought = is_plain(cautions[c].subject);
        for (size_t i = 0; i < COUNT(brings); i++) {
            brought = brought || entry_of(&brings[i], cautions[c].subject, '\0') != NULL;
        }
        if (!brought) {
            fail_msg("no case brings '%s'", cautions[c].subject);
        }
    }
}

/* A paper has its own only. */
static void by_paper(void **state) {
    struct bench bench;
    struct pool pool;
    (void)state;
    bench_open(&bench, "papers", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){PAINTED}, PLAIN);
    bench_sound(&bench);
    pool_init(&pool);
    for (unsigned paper = 1; paper <= CAUTION_CLIENT; paper <<= 1) {
        const struct caution_list list = cautions_needed(&bench.estimate, paper, &pool);
        for (size_t c = 0; c < caution_count; c++) {
            if (find(&list, &cautions[c]) != NULL && (cautions[c].papers & paper) == 0) {
                bench_wrong(&bench, "'%s' on paper %u", cautions[c].subject, paper);
            }
        }
        if (list.count != (paper == CAUTION_SHOP || paper == CAUTION_FINISH ? 2U
                           : paper == CAUTION_PLAN || paper == CAUTION_BUY  ? 1U
                                                                            : 0U)) {
            bench_wrong(&bench, "paper %u has %zu cautions", paper, list.count);
        }
    }
    pool_clear(&pool);
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(docs_say_the_same),
        cmocka_unit_test(needed_and_no_others),
        cmocka_unit_test(each_is_brought),
        cmocka_unit_test(by_paper),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
