/* SPDX-License-Identifier: MIT */
/* Labels: one for each piece, none twice, in the order of cutting; what stands on them. That a
 * frame's stiles stand upright and its rails lie, with the grain along each, is common practice, no
 * source. */
#include "support.h"

#include "report/labels/label_list.h"
#include "report/labels/label_words.h"
#include "report/words/cut_list.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* --- which there are --- */

/* Pieces by multiplication: openings x leaves x pieces of each part. */
static int64_t wanted_of(const struct estimate *e, enum label_of of, const size_t *rows,
                         size_t row_count) {
    int64_t count = 0;
    for (size_t i = 0; i < e->quantities.count; i++) {
        const struct door *const door = e->quantities.leaves[i].door;
        int64_t pieces = of == LABEL_OF_DOORS ? 1 : 0;
        for (size_t p = 0; of == LABEL_OF_PARTS && p < door->part_count; p++) {
            pieces += door->parts[p].count;
        }
        bool wanted = row_count == 0;
        for (size_t r = 0; r < row_count; r++) {
            wanted = wanted || &e->job->rows[rows[r]] == door->row;
        }
        count += wanted ? door->row->count.amount * door->leaves * pieces : 0;
    }
    return count;
}

static int by_all(const void *x, const void *y) {
    return memcmp(x, y, sizeof(struct label));
}

/* The labels of one leaf of a piece of wood or glass differ in something each. */
static void check_unlike(struct bench *bench, const struct label_list *list) {
    struct label *const sorted = calloc(list->count + 1, sizeof *sorted);
    assert_non_null(sorted);
    for (size_t i = 0; i < list->count; i++) { /* field by field: what is between them is zero */
        sorted[i].leaf = list->labels[i].leaf;
        sorted[i].part = list->labels[i].part;
        sorted[i].opening = list->labels[i].opening;
        sorted[i].hung = list->labels[i].hung;
        sorted[i].piece = list->labels[i].piece;
    }
    qsort(sorted, list->count, sizeof *sorted, by_all);
    for (size_t i = 1; i < list->count; i++) {
        if (by_all(&sorted[i - 1], &sorted[i]) == 0) {
            bench_wrong(bench, "a label stands twice");
            break;
        }
    }
    free(sorted);
}

/* Parts as they are cut; what is cut alike leaf by leaf, part by part, piece by piece. */
static bool in_turn(const struct label *before, const struct label *l) {
    const int order = cut_order(before->part, l->part);
    if (order != 0) {
        return order < 0;
    }
    if (before->number != l->number) {
        return before->number < l->number;
    }
    return before->part != l->part ? before->part < l->part : before->piece < l->piece;
}

static void check_each(struct bench *bench, const struct label_list *list) {
    for (size_t i = 0; i < list->count; i++) {
        const struct label *const l = &list->labels[i];
        const struct door *const door = l->leaf->door;
        if (l->opening < 1 || l->opening > door->row->count.amount || l->hung < 1 ||
            l->hung > door->leaves || l->number < 1) {
            bench_wrong(bench, "label %zu is of no leaf", i);
        }
        if ((l->part == NULL) != (list->of == LABEL_OF_DOORS) ||
            (l->part != NULL && (l->piece < 1 || l->piece > l->part->count))) {
            bench_wrong(bench, "label %zu is of no piece", i);
        }
        if (i == 0) {
            continue;
        }
        const struct label *const before = &list->labels[i - 1];
        if (l->part == NULL ? l->number <= before->number : !in_turn(before, l)) {
            bench_wrong(bench, "label %zu stands before its turn", i);
        }
    }
}

static void check_list(struct bench *bench, const size_t *rows, size_t row_count) {
    for (int of = LABEL_OF_PARTS; of <= LABEL_OF_DOORS; of++) {
        struct label_list list;
        struct pool pool;
        const int64_t wanted = wanted_of(&bench->estimate, (enum label_of)of, rows, row_count);
        pool_init(&pool);
        assert_true(
            label_list_make(&list, &pool, &bench->estimate, (enum label_of)of, rows, row_count));
        if (list.wanted != wanted || (int64_t)list.count != wanted) {
            bench_wrong(bench, "%zu labels of %lld, expected %lld", list.count,
                        (long long)list.wanted, (long long)wanted);
        }
        check_each(bench, &list);
        check_unlike(bench, &list);
        pool_clear(&pool);
    }
}

/* All rows, one of them, some of them; the leaves keep their numbers whichever are asked for. */
static void test_samples(void **state) {
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini",
                                       "samples/old-house/old-house.ini", "tests/data/opens.ini"};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(jobs); i++) {
        struct bench bench;
        bench_open_job(&bench, jobs[i]);
        bench_sound(&bench);
        const size_t last = bench.job.row_count - 1;
        const size_t some[] = {0, last / 2, last};
        check_list(&bench, NULL, 0);
        check_list(&bench, some, 3);
        check_list(&bench, &some[2], 1);
        struct pool pool;
        struct label_list all = {0};
        struct label_list one = {0};
        pool_init(&pool);
        assert_true(label_list_make(&all, &pool, &bench.estimate, LABEL_OF_DOORS, NULL, 0) &&
                    label_list_make(&one, &pool, &bench.estimate, LABEL_OF_DOORS, &some[2], 1));
        if (all.count > 0 && one.count > 0) {
            assert_int_equal(all.labels[all.count - 1].number, all.count);
            assert_int_equal(one.labels[one.count - 1].number, all.count);
            assert_int_equal(one.labels[0].number, all.count - one.count + 1);
        }
        pool_clear(&pool);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* As many labels as one paper takes, and one more: then none is listed, but counted. */
static void test_limit(void **state) {
    static const struct {
        const char *doors;
        int64_t wanted;
    } rows[] = {
        {"id,count,width,height\nA,9999,12,24\nB,9999,12,24\nC,2,12,24\n", MOST_LABELS},
        {"id,count,width,height\nA,9999,12,24\nB,9999,12,24\nC,3,12,24\n", MOST_LABELS + 1}};
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        static const char *const edits[] = {"make|style = slab", NULL};
        struct bench bench;
        struct label_list list;
        struct pool pool;
        bench_open(&bench, "limit", BENCH_INCH, edits, rows[i].doors);
        bench_sound(&bench);
        pool_init(&pool);
        assert_true(label_list_make(&list, &pool, &bench.estimate, LABEL_OF_DOORS, NULL, 0));
        assert_int_equal(list.wanted, rows[i].wanted);
        assert_int_equal(list.count, rows[i].wanted <= MOST_LABELS ? rows[i].wanted : 0);
        pool_clear(&pool);
        assert_int_equal(bench_close(&bench), 0);
    }
}

/* --- what they say --- */

/* lines: of label `at`, parted by ` | `; what is bold between stars. No size is broken: its blanks
 * are U+00A0. */
struct words_case {
    const char *name;
    enum bench_unit unit;
    enum label_of of;
    const char *edits[BENCH_MOST_EDITS];
    const char *doors;
    size_t at;
    const char *lines;
};

static const struct words_case cases[] = {
    {"left bare beside a painted one",
     BENCH_INCH,
     LABEL_OF_DOORS,
     {"make|style = slab", NULL},
     "id,width,height,finish\nG01,15,30,painted\nG02,15,30,none\n",
     1,
     "*G02* | *door* | 15 x 30 | left bare; 9.1 lb | A bench test: piece 2 of 2"},
    {"stile left bare beside a painted one",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {NULL},
     "id,width,height,finish\nG01,15,30,painted\nG02,15,30,none\n",
     2,
     "*G02* | *stile, left* | 30 x 2 1/4 x 3/4  poplar | grain vertical; arrow end up | left bare "
     "| A bench test"},
    {"left stile of a frame",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {NULL},
     "G01,15,30\n",
     0,
     "*G01* | *stile, left* | 30 x 2 1/4 x 3/4  poplar | grain vertical; arrow end up | left bare "
     "| A bench test"},
    {"right stile",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {NULL},
     "G01,15,30\n",
     1,
     "*G01* | *stile, right* | 30 x 2 1/4 x 3/4  poplar | grain vertical; arrow end up | left bare "
     "| A bench test"},
    {"top rail",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {NULL},
     "G01,15,30\n",
     2,
     "*G01* | *top rail* | 11 1/4 x 2 1/4 x 3/4  poplar | grain horizontal; outer edge up | left "
     "bare | A bench test"},
    {"bottom rail",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {NULL},
     "G01,15,30\n",
     3,
     "*G01* | *bottom rail* | 11 1/4 x 2 1/4 x 3/4  poplar | grain horizontal; inner edge up | "
     "left bare | A bench test"},
    {"panel of plywood",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {NULL},
     "G01,15,30\n",
     4,
     "*G01* | *panel* | 11 1/8 x 26 1/8 x 1/4  ply | no grain; arrow edge up | left bare | A bench "
     "test"},
    {"pane of a second pair",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", NULL},
     "id,width,height,count,leaves,style\nG01,30 1/8,30,2,2,glazed\n",
     19,
     "*G01: 2 of 2, right leaf* | *pane* | 26 1/8 x 26 x 1/8  clear | glass; arrow edge up | A "
     "bench test"},
    {"leaf of a pair",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", NULL},
     "id,width,height,count,leaves,style\nG01,30 1/8,30,2,2,glazed\n",
     1,
     "*G01: 1 of 2, left leaf* | *stile, right* | 30 x 2 1/4 x 3/4  poplar | grain vertical; arrow "
     "end up | batch 1: painted | A bench test"},
    {"bar on a pane",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", "door glazed|bar width = 3/4\nbar thickness = 1/4", NULL},
     "id,width,height,count,leaves,style,bars\nG01,30 1/8,30,2,2,glazed,2 x 2\n",
     18,
     "*G01: 2 of 2, left leaf* | *bar* | 25 5/8 x 1/4 x 3/4  poplar | grain along | batch 1: "
     "painted | A bench test"},
    {"left stile beside mid rails",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", NULL},
     "id,width,height,count,mid rails,mid stiles\nG01,30 1/8,30,1,1,1\n",
     0,
     "*G01* | *stile, left* | 30 x 2 1/4 x 3/4  poplar | grain vertical; arrow end up | batch 1: "
     "painted | A bench test"},
    {"right stile beside mid rails",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", NULL},
     "id,width,height,count,mid rails,mid stiles\nG01,30 1/8,30,1,1,1\n",
     1,
     "*G01* | *stile, right* | 30 x 2 1/4 x 3/4  poplar | grain vertical; arrow end up | batch 1: "
     "painted | A bench test"},
    {"top rail over a mid stile",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", NULL},
     "id,width,height,count,mid rails,mid stiles\nG01,30 1/8,30,1,1,1\n",
     2,
     "*G01* | *top rail* | 26 3/8 x 2 1/4 x 3/4  poplar | grain horizontal; outer edge up | batch "
     "1: painted | A bench test"},
    {"bottom rail under one",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", NULL},
     "id,width,height,count,mid rails,mid stiles\nG01,30 1/8,30,1,1,1\n",
     3,
     "*G01* | *bottom rail* | 26 3/8 x 2 1/4 x 3/4  poplar | grain horizontal; inner edge up | "
     "batch 1: painted | A bench test"},
    {"mid rail",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", NULL},
     "id,width,height,count,mid rails,mid stiles\nG01,30 1/8,30,1,1,1\n",
     4,
     "*G01* | *mid rail* | 26 3/8 x 2 1/4 x 3/4  poplar | grain horizontal; arrow edge up | batch "
     "1: painted | A bench test"},
    {"second of four panels",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted", NULL},
     "id,width,height,count,mid rails,mid stiles\nG01,30 1/8,30,1,1,1\n",
     8,
     "*G01* | *panel 2 of 4* | 12 5/16 x 12 1/4 x 1/4  ply | no grain; arrow edge up | batch 1: "
     "painted | A bench test"},
    {"slab front",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted\nstyle = slab", NULL},
     "id,width,height,use\nG01,30 1/8,30,drawer front\n",
     0,
     "*G01* | *slab* | 30 1/8 x 30 x 3/4  board | no grain; arrow edge up | batch 1: painted | A "
     "bench test"},
    {"slab with grain",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|finish = painted\nstyle = slab", "sheet board|grain = length", NULL},
     "id,width,height,use\nG01,30 1/8,10,drawer front\n",
     0,
     "*G01* | *slab* | 30 1/8 x 10 x 3/4  board | grain vertical; arrow edge up | batch 1: painted "
     "| A bench test"},
    {"note, room and weight",
     BENCH_INCH,
     LABEL_OF_DOORS,
     {"make|finish = painted\nstyle = slab\nhinge = hinge",
      "job|number = 0031\nclient = A client\naddress = Elm 3\ndeliver to = Oak 4", NULL},
     "id,width,height,room,count,leaves,hinge side,note\nG01,30 1/8,30,galley,3,1,left,by the "
     "sink\nG02,30,30,,1,2,,\n",
     1,
     "*G01: 2 of 3* | *door, galley* | 30 1/8 x 30, hinges left | painted; 18.4 lb | by the sink | "
     "A client | Oak 4 | A bench test | job 0031: piece 2 of 5"},
    {"left leaf of a pair, to the address",
     BENCH_INCH,
     LABEL_OF_DOORS,
     {"make|finish = painted\nstyle = slab\nhinge = hinge",
      "job|number = 0031\nclient = A client\naddress = Elm 3", NULL},
     "id,width,height,room,count,leaves,hinge side,note\nG01,30 1/8,30,galley,3,1,left,by the "
     "sink\nG02,30,30,,1,2,,\n",
     3,
     "*G02: left leaf* | *door* | 30 x 30, hinges left | painted; 18.3 lb | A client | Elm 3 | A "
     "bench test | job 0031: piece 4 of 5"},
    {"right leaf, no number",
     BENCH_INCH,
     LABEL_OF_DOORS,
     {"make|finish = painted\nstyle = slab\nhinge = hinge", NULL},
     "id,width,height,room,count,leaves,hinge side,note\nG01,30 1/8,30,galley,3,1,left,by the "
     "sink\nG02,30,30,,1,2,,\n",
     4,
     "*G02: right leaf* | *door* | 30 x 30, hinges right | painted; 18.3 lb | A bench test: piece "
     "5 of 5"},
    {"panel in mm",
     BENCH_MM,
     LABEL_OF_PARTS,
     {NULL},
     "G01,450,700\n",
     4,
     "*G01* | *panel* | 348 x 588 x 6  ply | no grain; arrow edge up | left bare | A bench test"},
    {"door in mm",
     BENCH_MM,
     LABEL_OF_DOORS,
     {NULL},
     "G01,450,700\n",
     0,
     "*G01* | *door* | 450 x 700 | left bare; 2.0 kg | A bench test: piece 1 of 1"},
    {"arched rail",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {NULL},
     "id,width,height,arch\nG01,15,30,1 1/2\n",
     2,
     "*G01* | *top rail, arched* | 11 1/4 x 3 3/4 x 3/4, arch 1 1/2  poplar | grain horizontal; "
     "outer edge up | left bare | A bench test"},
    {"arched panel",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {NULL},
     "id,width,height,arch\nG01,15,30,1 1/2\n",
     4,
     "*G01* | *panel, arched* | 11 1/8 x 26 1/8 x 1/4, arch 1 1/2  ply | no grain; arrow edge up | "
     "left bare | A bench test"},
    {"lift-up door",
     BENCH_INCH,
     LABEL_OF_DOORS,
     {NULL},
     "id,width,height,opens\nG01,15,30,lift up\n",
     0,
     "*G01* | *lift-up door* | 15 x 30, hinges top | left bare; 3.9 lb | A bench test: piece 1 of "
     "1"},
    {"lift-up door on hinges",
     BENCH_INCH,
     LABEL_OF_DOORS,
     {"make|hinge = hinge"},
     "id,width,height,opens\nG01,15,30,lift up\n",
     0,
     "*G01* | *lift-up door* | 15 x 30, hinges top | left bare; 3.9 lb | A bench test: piece 1 of "
     "1"},
    {"solid panel of a drawer front",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|panel = poplar\nstyle = solid"},
     "id,width,height,use\nG01,15,10,drawer front\n",
     4,
     "*G01* | *panel* | 11 x 6 1/8 x 3/4  poplar | grain vertical; arrow edge up | left bare | A "
     "bench test"},
    {"solid panel of a door",
     BENCH_INCH,
     LABEL_OF_PARTS,
     {"make|panel = poplar\nstyle = solid"},
     "id,width,height,use\nG01,15,30,door\n",
     2,
     "*G01* | *panel* | 11 x 26 1/8 x 3/4  poplar | grain vertical; arrow edge up | left bare | A "
     "bench test"},
};

static void check_words(struct bench *bench, const struct words_case *c) {
    struct label_line lines[MOST_LABEL_LINES];
    char text[1000] = "";
    struct label_list list;
    struct pool pool;
    pool_init(&pool);
    assert_true(label_list_make(&list, &pool, &bench->estimate, c->of, NULL, 0));
    if (c->at >= list.count) {
        bench_wrong(bench, "there are %zu labels", list.count);
        pool_clear(&pool);
        return;
    }
    const size_t count = label_words(lines, &pool, &bench->estimate, &list.labels[c->at]);
    assert_true(count <= MOST_LABEL_LINES && !pool_failed(&pool));
    for (size_t i = 0; i < count; i++) {
        const double size = i == 0 ? 1.6 : i == 1 || (i == 2 && c->of == LABEL_OF_DOORS) ? 1.2 : 1;
        if (lines[i].size != size) {
            bench_wrong(bench, "line %zu is %.1f times a plain one", i + 1, lines[i].size);
        }
        const char *const star = lines[i].bold ? "*" : "";
        (void)snprintf(text + strlen(text), sizeof text - strlen(text), "%s%s%s%s",
                       i == 0 ? "" : " | ", star, lines[i].text, star);
    }
    if (strcmp(text, c->lines) != 0) {
        bench_wrong(bench, "says\n  %s, expected\n  %s", text, c->lines);
    }
    pool_clear(&pool);
}

static void test_words(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        bench_open(&bench, cases[i].name, cases[i].unit, cases[i].edits, cases[i].doors);
        bench_sound(&bench);
        if (bench.result == ESTIMATE_OK) {
            check_words(&bench, &cases[i]);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_samples),
        cmocka_unit_test(test_limit),
        cmocka_unit_test(test_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
