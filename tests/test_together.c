/* SPDX-License-Identifier: MIT */
/* Jobs bought together: small ones whose saving is worked out by hand. Whole samples cut in two
 * against what they are as one: tests/outside/together.py. */
#include "support.h"
#include "together/together.h"

#include <setjmp.h>
#include <stdarg.h>
#include <string.h>

#include <cmocka.h>

#define MOST 3
#define HEAD "id,count,width,height\n"
#define SLAB "make|style = slab"
/* A square foot of edges each: a hundred of them take 100 / 401 gal at 4 mil. */
#define EDGES       HEAD "D1,100,48,48\n"
#define COLOR(name) "id,count,width,height,color\nD1,100,48,48," name "\n"
#define PAINTED                                                                                    \
    (SLAB "\nfinish = painted"), "finish painted|faces = none",                                    \
        "spray gun|transfer efficiency = 100 %"

/* Amounts in cents. */
static const struct together_case {
    const char *name;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors[MOST];
    const char *line;
    int64_t alone, together;
    int64_t parts[MOST];
} cases[] = {
    /* four slabs of 3.75 sq ft are 15 of the 32 of a sheet at 80.00: one each, or one for both */
    {"half a sheet each",
     {SLAB},
     {HEAD "D1,4,18,30\n", HEAD "D1,4,18,30\n"},
     "board",
     16000,
     8000,
     {4000, 4000}},
    /* a frame is (2 x 30 + 2 x 14 1/4) x 2 1/4 / 144 = 1.3828 bf: four 5.53, so 6 bf, 24.00; eight
     * 11.06, so 12 bf, 48.00; twelve 16.59, so 17 bf, from which they are 3.00: 51.00 */
    {"a price break is reached together",
     {"make|style = open", "lumber poplar|price from = 17 bf at 3.00 per bf"},
     {HEAD "D1,4,18,30\n", HEAD "D1,8,18,30\n"},
     "poplar",
     7200,
     5100,
     {1700, 3400}},
    /* 0.2494 gal each of a can of 1 gal at 100.00; thirds of a can in whole cents */
    {"a quarter of a can each",
     {PAINTED},
     {EDGES, EDGES, EDGES},
     "paint",
     30000,
     10000,
     {3333, 3334, 3333}},
    /* 0.2494 and 0.3 gal are one can; 0.4988 and twice 0.3 are two, as each client keeps some */
    {"each client keeps some of the color",
     {PAINTED, "make|color = white", "coating paint|tinted = yes\ntouch-up = 0.3 gal per color"},
     {EDGES, EDGES},
     "paint, white",
     20000,
     20000,
     {10000, 10000}},
    /* 0.2494 and 0.6 are one can; two, if those who have no white kept some as well */
    {"who has not the color keeps none of it",
     {PAINTED, "coating paint|tinted = yes\ntouch-up = 0.6 gal per color"},
     {COLOR("white"), COLOR("green"), COLOR("green")},
     "paint, white",
     10000,
     10000,
     {10000, 0, 0}},
    /* other colors are other cans */
    {"an untinted can is shared by all colors",
     {PAINTED, "coating paint|tinted = no"},
     {COLOR("white"), COLOR("green")},
     "paint",
     20000,
     10000,
     {5000, 5000}},
    /* a set-up of 50 min and a door of 10 are an hour, and stay one for each */
    {"supplies by the hour go by the hours of each job",
     {SLAB, "door slab|operations = saw", "consumable mask|price = 1.00 per hour",
      "operation saw|per = door\nminutes = 10\nsetup = 50 min per length"},
     {HEAD "D1,1,18,30\n", HEAD "D1,1,18,30\n"},
     "mask",
     200,
     200,
     {100, 100}},
    /* what [make] lists is for doors: a pack of 10 pulls for 4 and 4 of them, none on the fronts */
    {"fronts do not take the hardware of doors",
     {(SLAB "\nhardware = 2 pull"), "hardware pull|price = 20.00 per pack\npack = 10"},
     {"id,use,count,width,height\nD1,door,2,18,30\nF1,drawer front,9,18,6\n",
      "id,use,count,width,height\nF1,drawer front,9,18,6\nD1,door,2,18,30\n"},
     "pull",
     4000,
     2000,
     {1000, 1000}},
    {"what one job alone takes is its own",
     {SLAB},
     {"id,count,width,height,hinge\nD1,4,18,30,hinge\n",
      "id,count,width,height,hinge\nD1,4,18,30,none\n"},
     "hinge",
     2400,
     2400,
     {2400, 0}},
};

static const struct together_line *find(const struct together *t, const char *name) {
    for (size_t i = 0; i < t->line_count; i++) {
        if (strcmp(t->lines[i].name, name) == 0) {
            return &t->lines[i];
        }
    }
    return NULL;
}

static void expect(struct bench *bench, const char *what, int64_t is, int64_t wanted) {
    if (is != wanted) {
        bench_wrong(bench, "%s is %lld, not %lld", what, (long long)is, (long long)wanted);
    }
}

/* Parts add up to lines, lines to what the one estimate spends. */
static void check_sums(struct bench *bench, const struct together *t) {
    int64_t all = 0;
    for (size_t i = 0; i < t->line_count; i++) {
        int64_t parts = 0;
        for (size_t j = 0; j < t->count; j++) {
            parts += t->lines[i].part_of[j];
        }
        expect(bench, t->lines[i].name, parts, t->lines[i].together);
        all += parts;
    }
    expect(bench, "all lines", all, estimate_money(&t->estimate, t->estimate.purchase.total));
    expect(bench, "together", t->all.together, all);
}

static int run_case(const struct together_case *c) {
    struct bench benches[MOST];
    struct together_job jobs[MOST];
    struct together t;
    size_t count = 0;
    int wrong = 0;
    while (count < MOST && c->doors[count] != NULL) {
        bench_open(&benches[count], c->name, BENCH_INCH, c->edits, c->doors[count]);
        bench_sound(&benches[count]);
        jobs[count] = (struct together_job){.path = "job.ini", .alone = &benches[count].estimate};
        count++;
    }
    struct bench *const first = &benches[0];
    if (together_make(&t, jobs, count, NULL, TOGETHER_BOUGHT, bench_request(-1),
                      &first->problems) != ESTIMATE_OK) {
        bench_wrong(first, "not estimated together");
    } else {
        const struct together_line *const line = find(&t, c->line);
        if (line == NULL) {
            bench_wrong(first, "no line %s", c->line);
        } else {
            expect(first, "alone", line->alone, c->alone);
            expect(first, "together", line->together, c->together);
            for (size_t i = 0; i < count; i++) {
                expect(first, "part", line->part_of[i], c->parts[i]);
            }
        }
        check_sums(first, &t);
    }
    together_clear(&t);
    for (size_t i = 0; i < count; i++) {
        wrong += bench_close(&benches[i]);
    }
    return wrong;
}

static void test_cases(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        wrong += run_case(&cases[i]);
    }
    assert_int_equal(wrong, 0);
}

/* Three sheets of which halves are planned together: cut by plan, two of each job fit one. */
static void test_plans(void **state) {
    (void)state;
    struct bench a;
    struct bench b;
    struct together t;
    static const char *const edits[BENCH_MOST_EDITS] = {
        SLAB, "shop|price sheets by = plan", "sheet board|size = 48 x 96\nedge trim = 0"};
    /* two of 23 x 47 side by side are half a sheet of 48 x 96 */
    bench_open(&a, "half a sheet by plan", BENCH_INCH, edits, HEAD "D1,2,23,47\n");
    bench_open(&b, "half a sheet by plan", BENCH_INCH, edits, HEAD "D1,2,23,47\n");
    const struct together_job jobs[] = {{"a.ini", &a.estimate}, {"b.ini", &b.estimate}};
    assert_int_equal(together_make(&t, jobs, 2, NULL, TOGETHER_CUT, bench_request(-1), &a.problems),
                     ESTIMATE_OK);
    assert_int_equal(t.line_count, 1);
    assert_int_equal(t.all.alone, 16000);
    assert_int_equal(t.all.together, 8000);
    assert_string_equal(t.estimate.quantities.leaves[0].door->name, "A-D1");
    assert_string_equal(t.estimate.quantities.leaves[1].door->name, "B-D1");
    together_clear(&t);
    bench_close(&a);
    bench_close(&b);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_cases),
        cmocka_unit_test(test_plans),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
