/* SPDX-License-Identifier: MIT */
/* New rates from what was noted: inverse variance weighting worked again in doubles
 * (docs/method.md, "New rates"), what changes no rate and why, and the file that is written with
 * it. */
#include "noted_bench.h"

#include "file_bench.h"
#include "read/file/ini.h"
#include "read/file/source.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>
#include <math.h>

static const struct proposal *proposal_of(const struct noted *n, const char *section,
                                          const char *key) {
    for (size_t i = 0; i < n->made.count; i++) {
        const struct rate_number *const number = n->made.list[i].number;
        if (strcmp(number->section, section) == 0 && strcmp(number->key, key) == 0) {
            return &n->made.list[i];
        }
    }
    return NULL;
}

/* --- what is weighted --- */

struct weighed {
    double value, spread;
};

/* Mean and what it lies within nine times out of ten; NIST/SEMATECH e-Handbook of Statistical
 * Methods, weighted means, from memory. */
static void weigh(const struct weighed *all, size_t count, double range[3]) {
    double weight = 0;
    double sum = 0;
    for (size_t i = 0; i < count; i++) {
        const double w = 1 / (all[i].spread * all[i].spread);
        weight += w;
        sum += w * all[i].value;
    }
    range[1] = sum / weight;
    range[0] = range[1] - 1.645 / sqrt(weight);
    range[2] = range[1] + 1.645 / sqrt(weight);
}

/* Within half of the last digit that is written, and a thousandth of it. */
static void check_range(struct noted *n, const char *what, const struct proposal *p, double was,
                        const double range[3]) {
    const char *const texts[] = {p->low, p->alone, p->high};
    for (size_t i = 0; i < 3; i++) {
        const char *const point = strchr(texts[i], '.');
        const double step = point == NULL ? 1 : pow(10, -(double)strspn(point + 1, "0123456789"));
        const double found = strtod(texts[i], NULL);
        const double wanted = was * range[i];
        /* noughts at the end are left out: at least three digits count */
        if (fabs(found - wanted) > fmax(fmin(step / 2, wanted / 180), wanted / 500)) {
            bench_wrong(&n->bench, "%s is %s, expected %.6f", what, texts[i], wanted);
        }
    }
    char wanted[100];
    (void)snprintf(wanted, sizeof wanted, "%s%s (%s to %s)", p->alone, p->number->unit, p->low,
                   p->high);
    if (strcmp(p->text, wanted) != 0) {
        bench_wrong(&n->bench, "%s is told as %s, expected %s", what, p->text, wanted);
    }
    if (p->small != (range[1] > 0.95 && range[1] < 1.05)) {
        bench_wrong(&n->bench, "%s is %s", what, p->small ? "small" : "not small");
    }
}

/* A job of ten doors, 10 min for each: 100 min of `work`. */
#define WORK  "operation work|per = door\nminutes = 10"
#define DOORS "id,count,width,height\nA,10,15,30\n"

struct hours_case {
    const char *name, *minutes; /* as the rates have them */
    double was, prior;          /* the number, and its spread */
    const char *notes[MOST_JOBS + 1];
    double took[MOST_JOBS]; /* noted / estimated of each job */
    double as;              /* spread of that */
    const char *why;
};

static const struct hours_case hours[] = {
    {"as long as estimated, by a range",
     "10 (7 to 13)",
     10,
     0.1,
     {"work,,120,,,,,,\n", NULL},
     {1.2},
     0.25,
     "work, 2.00 h for 1.67 h in 1 job"},
    {"no range",
     "10",
     10,
     0.25,
     {"work,2.5,,,,,,,\n", NULL},
     {1.5},
     0.25,
     "work, 2.50 h for 1.67 h in 1 job"},
    {"two at it",
     "10",
     10,
     0.25,
     {"work,,40,2,,,,,\n", NULL},
     {0.8},
     0.25,
     "work, 1.33 h for 1.67 h in 1 job"},
    {"two rows are added",
     "10",
     10,
     0.25,
     {"work,,60,,,,,,\nwork,1,,,,,,,\n", NULL},
     {1.2},
     0.25,
     "work, 2.00 h for 1.67 h in 1 job"},
    {"two jobs",
     "10",
     10,
     0.25,
     {"work,,150,,,,,,\n", "work,,200,,,,,,\n", NULL},
     {1.5, 2},
     0.25,
     "work, 5.83 h for 3.33 h in 2 jobs"},
    {"under all",
     "10",
     10,
     0.25,
     {"all,,150,,,,,,\n", NULL},
     {1.5},
     0.5,
     "all, 2.50 h for 1.67 h in 1 job"},
    {"of its sort", "10", 10, 0.25, {"around it,,50,,,,,,\n", NULL}, {0.5}, 0.5, NULL},
};

static void test_hours(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(hours); i++) {
        const struct hours_case *const c = &hours[i];
        char edit[100];
        struct noted n = {0};
        struct weighed shop[MOST_JOBS + 1] = {{1, 0.30}};
        struct weighed ratio[MOST_JOBS + 1] = {{1, c->prior}};
        double range[3];
        double shop_range[3];
        size_t count = 0;
        (void)snprintf(edit, sizeof edit, "operation work|per = door\nminutes = %s", c->minutes);
        const char *const edits[] = {edit, "door plain|operations = work", NULL};
        bench_open(&n.bench, c->name, BENCH_INCH, edits, DOORS);
        note(&n, c->notes);
        for (; count < MOST_JOBS && c->took[count] > 0; count++) {
            shop[count + 1] = (struct weighed){c->took[count], 0.08};
        }
        weigh(shop, count + 1, shop_range);
        for (size_t k = 0; k < count; k++) {
            ratio[k + 1] = (struct weighed){c->took[k] / shop_range[1], c->as};
        }
        weigh(ratio, count + 1, range);
        for (size_t k = 0; k < 3; k++) {
            range[k] *= shop_range[1];
        }
        const struct proposal *const p = proposal_of(&n, "operation work", "minutes");
        if (p == NULL) {
            if (c->why != NULL) {
                bench_wrong(&n.bench, "nothing is proposed");
            }
        } else {
            check_range(&n, "minutes", p, c->was, range);
            if (c->why != NULL && strcmp(p->why, c->why) != 0) {
                bench_wrong(&n.bench, "because %s, expected %s", p->why, c->why);
            }
        }
        wrong += noted_close(&n);
    }
    assert_int_equal(wrong, 0);
}

/* --- tables of texts --- */

#define MOST_NUMBERS 3

struct text_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *notes[MOST_JOBS + 1];
    struct {
        const char *section, *key, *text, *why; /* text NULL: it is not proposed */
    } wants[MOST_NUMBERS];
    const char *unmoved, *because; /* NULL: nothing is said */
};

/* Feed: one over the factors. 100 ft of frame ... the doors have 90 ft in all. */
static const struct text_case texts[] = {
    {"what was paid is the price",
     {NULL},
     {"poplar,,,,50 bf,225.00,,,\n", NULL},
     {{"lumber poplar", "price", "4.5 per bf", "225.00 paid for 50.00"}},
     NULL,
     NULL},
    {"rounded to the cent, half away from zero: 100 / 32 = 3.125",
     {NULL},
     {"poplar,,,,32 bf,100.00,,,\n", NULL},
     {{"lumber poplar", "price", "3.13 per bf", "100.00 paid for 32.00"}},
     NULL,
     NULL},
    {"the last of two jobs counts",
     {NULL},
     {"poplar,,,,50 bf,225.00,,,\n", "poplar,,,,10 bf,60.00,,,\n", NULL},
     {{"lumber poplar", "price", "6 per bf", "60.00 paid for 10.00"}},
     NULL,
     NULL},
    {"paid in two lots",
     {NULL},
     {"poplar,,,,30 bf,150.00,,,\npoplar,,,,20 bf,50.00,,,\n", NULL},
     {{"lumber poplar", "price", NULL, NULL}},
     "lumber poplar price",
     "what was paid is the price that the rates have"},
    {"the same price with a day is written with the new day",
     {"lumber poplar|price = 4.00 per bf (on 2026-01-10)", NULL},
     {"poplar,,,,50 bf,200.00,,,\n", NULL},
     {{"lumber poplar", "price", "4 per bf", "200.00 paid for 50.00"}},
     NULL,
     NULL},
    {"the same price of that day",
     {"lumber poplar|price = 4.00 per bf (on 2026-03-02)", NULL},
     {"poplar,,,,50 bf,200.00,,,\n", NULL},
     {{"lumber poplar", "price", NULL, NULL}},
     "lumber poplar price",
     "what was paid is the price that the rates have"},
    {"a price of steps",
     {"lumber poplar|price from = 100 bf at 3.50 per bf", NULL},
     {"poplar,,,,50 bf,225.00,,,\n", NULL},
     {{"lumber poplar", "price", NULL, NULL}},
     "poplar, price",
     "its price has breaks, and one purchase tells of one step; put that in yourself"},
    {"half sheets",
     {"sheet ply|half sheet = 30.00", NULL},
     {"ply,,,,2,225.00,,,\n", NULL},
     {{"sheet ply", "price", NULL, NULL}},
     "ply, price",
     "half sheets have a price of their own, and both are in what was paid; put them in yourself"},
    {"whole sheets",
     {NULL},
     {"ply,,,,2,111.00,,,\n", NULL},
     {{"sheet ply", "price", "55.5 per sheet", "111.00 paid for 2.00"}},
     NULL,
     NULL},
    {"hardware by others",
     {"hardware hinge|price = by others", "make|hinge = hinge", NULL},
     {"hinge,,,,20,111.00,,,\n", NULL},
     {{"hardware hinge", "price", NULL, NULL}},
     "hinge, price",
     "it is supplied by others"},
    {"hardware sold singly",
     {"make|hinge = hinge", NULL},
     {"hinge,,,,20,70.00,,,\n", NULL},
     {{"hardware hinge", "price", "3.5 each", "70.00 paid for 20.00"}},
     NULL,
     NULL},
    {"hours of what the estimate has not",
     {WORK, NULL},
     {"work,2,,,,,,,\n", NULL},
     {{"operation work", "minutes", NULL, NULL}},
     "work, hours",
     "the estimate has none of it"},
    {"remakes that the rates have not",
     {NULL},
     {"doors,,,,,,,,2\n", NULL},
     {{"shop", "remakes", NULL, NULL}},
     "doors made again",
     "the rates have no remakes that could be moved"},
    {"remakes that the rates have: 0 of 10 doors, of 2 %",
     {"shop|remakes = 2 % of doors (1 to 4)", NULL},
     {"doors,,,,,,,,0\n", NULL},
     {{"shop", "remakes", "1.97 % of doors (1.16 to 2.79)", "0 of 10 doors made again in 1 job"}},
     NULL,
     NULL},
    {"less used than is in the doors",
     {"lumber poplar|waste = 30 % added", NULL},
     {"poplar,,,,2 bf,,2 bf,,\n", NULL},
     {{"lumber poplar", "waste", NULL, NULL}},
     "poplar, waste",
     "less of it is noted as used than is in the doors"},
    {"a waste that the rates have not",
     {NULL},
     {"poplar,,,,50 bf,,50 bf,2 bf,\n", NULL},
     {{"lumber poplar", "waste", NULL, NULL}},
     "poplar, waste",
     "the rates have no waste of it"},
};

static const char *text_or_none(const char *text) {
    return text == NULL ? "nothing" : text;
}

static void check_texts(struct noted *n, const struct text_case *c) {
    for (size_t i = 0; i < MOST_NUMBERS && c->wants[i].section != NULL; i++) {
        const struct proposal *const p = proposal_of(n, c->wants[i].section, c->wants[i].key);
        const char *const text = p == NULL ? "nothing" : p->text;
        const char *const why = p == NULL ? "nothing" : p->why;
        if (strcmp(text, text_or_none(c->wants[i].text)) != 0 ||
            strcmp(why, text_or_none(c->wants[i].why)) != 0) {
            bench_wrong(&n->bench, "%s: '%s' as '%s', expected '%s' as '%s'", c->wants[i].key, text,
                        why, text_or_none(c->wants[i].text), text_or_none(c->wants[i].why));
        }
    }
    const struct unmoved *found = NULL;
    for (size_t i = 0; i < n->made.unmoved_count; i++) {
        const struct unmoved *const u = &n->made.unmoved[i];
        found = c->unmoved != NULL && strcmp(u->what, c->unmoved) == 0 ? u : found;
        for (size_t k = 0; k < i; k++) {
            if (strcmp(u->what, n->made.unmoved[k].what) == 0) {
                bench_wrong(&n->bench, "'%s' is said twice", u->what);
            }
        }
    }
    if (c->unmoved != NULL && (found == NULL || strcmp(found->why, c->because) != 0)) {
        bench_wrong(&n->bench, "'%s': %s, expected %s", c->unmoved,
                    found == NULL ? "not said" : found->why, c->because);
    }
    if (c->unmoved == NULL && n->made.unmoved_count > 0) {
        bench_wrong(&n->bench, "'%s' is said: %s", n->made.unmoved[0].what, n->made.unmoved[0].why);
    }
}

static void test_texts(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(texts); i++) {
        struct noted n = {0};
        bench_open(&n.bench, texts[i].name, BENCH_INCH, texts[i].edits, DOORS);
        note(&n, texts[i].notes);
        check_texts(&n, &texts[i]);
        wrong += noted_close(&n);
    }
    assert_int_equal(wrong, 0);
}

/* --- doors made again, waste --- */

/* The example of docs/method.md: 2 of 55 doors, of 2 % with a range from 1 to 4. */
static void test_remakes(void **state) {
    static const char *const edits[] = {"shop|remakes = 2 % of doors (1 to 4)", NULL};
    static const char *const notes[] = {"doors,,,,,,,,2\n", NULL};
    const struct weighed all[] = {{1, 0.25}, {2.0 / 55 / 0.02, sqrt(0.98 / (55 * 0.02))}};
    double range[3];
    struct noted n = {0};
    (void)state;
    bench_open(&n.bench, "remakes", BENCH_INCH, edits, "id,count,width,height\nA,55,15,30\n");
    note(&n, notes);
    const struct proposal *const p = proposal_of(&n, "shop", "remakes");
    assert_non_null(p);
    weigh(all, 2, range);
    assert_string_equal(p->alone, "2.11");
    assert_string_equal(p->why, "2 of 55 doors made again in 1 job");
    check_range(&n, "remakes", p, 2, range);
    assert_int_equal(noted_close(&n), 0);
}

/* Waste as (used - net) / net or / used, which is weighed with that of the rates, 20 % each. */
static void test_waste(void **state) {
    static const struct {
        const char *waste;
        bool lost;
        double was, used;
    } rows[] = {{"30 % added", false, 30, 60},
                {"30 % added", false, 30, 46},
                {"25 % lost", true, 25, 60},
                {"25 % lost", true, 25, 45}};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        char edit[100];
        char noted[100];
        double range[3];
        struct noted n = {0};
        (void)snprintf(edit, sizeof edit, "lumber poplar|waste = %s", rows[i].waste);
        (void)snprintf(noted, sizeof noted, "poplar,,,,80 bf,,80 bf,%.0f bf,\n", 80 - rows[i].used);
        const char *const edits[] = {edit, NULL};
        const char *const notes[] = {noted, NULL};
        bench_open(&n.bench, rows[i].waste, BENCH_INCH, edits,
                   "id,count,width,height\nA,20,15,30\n");
        note(&n, notes);
        const double net = tape_real(&n.bench.estimate.tape, n.bench.estimate.lumber.buys[0].net);
        const double waste = 100 * (rows[i].used - net) / (rows[i].lost ? rows[i].used : net);
        const struct weighed all[] = {{1, 0.2}, {waste / rows[i].was, 0.2}};
        const struct proposal *const p = proposal_of(&n, "lumber poplar", "waste");
        assert_true(net > 20 && net < 45);
        assert_non_null(p);
        weigh(all, 2, range);
        assert_string_equal(p->why, "as measured of poplar in 1 job");
        check_range(&n, "waste", p, rows[i].was, range);
        wrong += noted_close(&n);
    }
    assert_int_equal(wrong, 0);
}

/* Of two jobs, the second used nothing that tells a waste. */
static void test_one_of_two(void **state) {
    static const char *const edits[] = {"lumber poplar|waste = 30 % added", NULL};
    static const char *const notes[] = {"poplar,,,,80 bf,,80 bf,20 bf,\n",
                                        "poplar,,,,80 bf,,80 bf,79 bf,\n", NULL};
    static const char *const both[] = {"poplar,,,,80 bf,,80 bf,20 bf,\n",
                                       "poplar,,,,80 bf,,80 bf,22 bf,\n", NULL};
    (void)state;
    for (int two = 0; two < 2; two++) {
        struct noted n = {0};
        bench_open(&n.bench, "one of two", BENCH_INCH, edits,
                   "id,count,width,height\nA,20,15,30\n");
        note(&n, two == 0 ? notes : both);
        const struct proposal *const p = proposal_of(&n, "lumber poplar", "waste");
        if (p != NULL) {
            assert_string_equal(p->why, two == 0 ? "as measured of poplar in 1 job"
                                                 : "as measured of poplar in 2 jobs");
        }
        assert_non_null(p);
        assert_int_equal(n.made.unmoved_count, 0);
        assert_int_equal(noted_close(&n), 0);
    }
}

/* What leaves the gun and stays on the doors: of 65 %, with 8 % of it to either side. */
static void test_transfer(void **state) {
    static const char *const edits[] = {"make|finish = painted", NULL};
    static const char *const used[] = {"paint,,,,9 gal,,9 gal,7 gal,\n",
                                       "paint,,,,9 gal,,9 gal,5.5 gal,\n",
                                       "paint,,,,9 gal,,9 gal,8.99 gal,\n"};
    (void)state;
    for (size_t i = 0; i < COUNT(used); i++) {
        struct noted n = {0};
        double range[3];
        const char *const notes[] = {used[i], NULL};
        bench_open(&n.bench, "transfer", BENCH_INCH, edits, "id,count,width,height\nA,90,15,30\n");
        note(&n, notes);
        const struct learned_goods *const g = &n.learned[0].goods[0];
        const struct proposal *const p = proposal_of(&n, "spray gun", "transfer efficiency");
        assert_true(g->transfer > 0 && p != NULL);
        const struct weighed all[] = {{1, 0.08}, {(double)g->transfer / 6500, 0.08}};
        weigh(all, 2, range);
        /* what is measured cannot leave more than there is on the doors */
        for (size_t k = 0; k < 3; k++) {
            range[k] = range[k] * 65 > 100 ? 100.0 / 65 : range[k];
        }
        if (p != NULL) {
            check_range(&n, "transfer", p, 65, range);
            assert_string_equal(p->why, "as measured of paint in 1 job");
        }
        assert_int_equal(noted_close(&n), 0);
    }
}

/* No number is moved past what its key takes: a waste under 100 % lost. */
static void test_limits(void **state) {
    static const char *const edits[] = {"lumber poplar|waste = 94 % lost", NULL};
    static const char *const notes[] = {"poplar,,,,90000 bf,,90000 bf,,\n", NULL};
    struct noted n = {0};
    (void)state;
    bench_open(&n.bench, "limits", BENCH_INCH, edits, DOORS);
    note(&n, notes);
    const struct proposal *const p = proposal_of(&n, "lumber poplar", "waste");
    for (size_t i = 0; p != NULL && i < 3; i++) {
        const char *const texts_of[] = {p->low, p->alone, p->high};
        assert_true(strtod(texts_of[i], NULL) <= (double)p->number->most);
    }
    assert_int_equal(noted_close(&n), 0);
}

/* --- the file that is written --- */

#define RATES   DOORCOST_SOURCE "/rates/small-shop.ini"
#define WRITTEN "test-proposal-rates.ini"

/* The value of a key of the written file. */
static const char *value_of(const struct ini *ini, const struct rate_number *number) {
    for (size_t i = 0; i < ini->count; i++) {
        char name[200];
        (void)snprintf(name, sizeof name, "%s%s%s", ini->sections[i].kind,
                       ini->sections[i].name[0] == '\0' ? "" : " ", ini->sections[i].name);
        const struct ini_key *const key = strcmp(name, number->section) != 0
                                              ? NULL
                                              : ini_key_find(&ini->sections[i], number->key);
        if (key != NULL) {
            return key->value;
        }
    }
    return "";
}

/* Of the rates that ship, noted against: a line of a proposal has its number, and what it was
 * behind its comment; all others are as they were. */
static void test_written(void **state) {
    static const char *const notes[] = {"all,60,,,,,,,\npoplar,,,,110 bf,420.75,110 bf,14 bf,\n"
                                        "doors,,,,,,,,2\n",
                                        NULL};
    struct noted n = {0};
    struct problems problems;
    struct source old;
    struct source new;
    struct ini ini;
    size_t changed = 0;
    (void)state;
    problems_init(&problems);
    bench_open_job(&n.bench, "samples/kitchen/kitchen.ini");
    note(&n, notes);
    assert_true(source_read(&old, RATES, (struct place){0}, &problems));
    const char *const text = proposals_write(&n.made, old.lines, old.count, &n.pool);
    assert_non_null(text);
    file_bench_write(WRITTEN, text, strlen(text));
    assert_true(source_read(&new, WRITTEN, (struct place){0}, &problems));
    assert_true(ini_read(&ini, WRITTEN, (struct place){0}, &problems));
    assert_int_equal(unlink(WRITTEN), 0);
    assert_int_equal(problems_count(&problems, SEVERITY_ERROR), 0);
    assert_int_equal(new.count, old.count);
    assert_true(n.made.count > 10);
    for (size_t i = 0; i < old.count; i++) {
        const struct proposal *p = NULL;
        for (size_t k = 0; k < n.made.count && p == NULL; k++) {
            p = n.made.list[k].number->value.place.line == i + 1 ? &n.made.list[k] : NULL;
        }
        if (p == NULL) {
            assert_string_equal(new.lines[i], old.lines[i]);
            continue;
        }
        changed++;
        const char *const was = strstr(new.lines[i], "was ");
        assert_true(strstr(new.lines[i], p->alone) != NULL && was != NULL);
        assert_true(was == NULL || strstr(was, p->number->likely) != NULL);
        assert_true(was == NULL || strstr(was, p->why) != NULL);
        assert_non_null(strstr(value_of(&ini, p->number), p->text));
    }
    assert_true(changed > 10 && changed <= n.made.count);
    problems_clear(&problems);
    assert_int_equal(noted_close(&n), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_hours),      cmocka_unit_test(test_texts),
        cmocka_unit_test(test_remakes),    cmocka_unit_test(test_waste),
        cmocka_unit_test(test_one_of_two), cmocka_unit_test(test_transfer),
        cmocka_unit_test(test_limits),     cmocka_unit_test(test_written),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
