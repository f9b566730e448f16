/* SPDX-License-Identifier: MIT */
/* Elevations before they are drawn: the boxes cover the leaf and nothing twice, dimensions run from
 * edge to edge, a pair is its own mirror image, hinge marks stand where the row says. */
#include "support.h"

#include "report/doors/door_elevation.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static bool is_face(enum trait trait) {
    return trait == TRAIT_SLAB || trait == TRAIT_STILE || trait == TRAIT_RAIL ||
           trait == TRAIT_PANEL || trait == TRAIT_GLASS || trait == TRAIT_OPEN;
}

static size_t count_of(const struct door_elevation *e, enum trait trait) {
    size_t count = 0;
    for (size_t i = 0; i < e->drawing.box_count; i++) {
        count += e->drawing.boxes[i].trait == trait ? 1 : 0;
    }
    return count;
}

/* What an arch leaves above itself is the rail's, whose box is wider by the rise. */
static struct elevation_box below_arch(const struct elevation_box *box) {
    struct elevation_box b = *box;
    b.y += b.rise;
    b.height -= b.rise;
    return b;
}

static bool overlap(const struct elevation_box *one, const struct elevation_box *other) {
    const struct elevation_box below[2] = {below_arch(one), below_arch(other)};
    const struct elevation_box *const a = &below[0];
    const struct elevation_box *const b = &below[1];
    return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height &&
           b->y < a->y + a->height;
}

/* In millionths of a square meter, so that areas stay exact enough to compare. */
static double area(const struct elevation_box *b) {
    return (double)b->width / 1e6 * ((double)(b->height - b->rise) / 1e6);
}

static void check_faces(struct bench *bench, const struct door_elevation *e) {
    double covered = 0;
    for (size_t i = 0; i < e->drawing.box_count; i++) {
        const struct elevation_box *const b = &e->drawing.boxes[i];
        if (!is_face(b->trait)) {
            continue;
        }
        covered += area(b);
        if (b->x < 0 || b->y < 0 || b->x + b->width > e->drawing.width ||
            b->y + b->height > e->drawing.height) {
            bench_wrong(bench, "%s: a box outside the leaf", e->door->row->id.s);
        }
        for (size_t k = i + 1; k < e->drawing.box_count; k++) {
            if (is_face(e->drawing.boxes[k].trait) && overlap(b, &e->drawing.boxes[k])) {
                bench_wrong(bench, "%s: boxes %zu and %zu overlap", e->door->row->id.s, i, k);
            }
        }
    }
    const length beside = e->door->beside == NULL ? 0 : e->door->beside->width;
    const double leaf = (double)(e->door->width + beside) / 1e6 * ((double)e->door->height / 1e6);
    const double missing = covered - leaf * (double)e->door->leaves;
    if (missing > 0.001 || missing < -0.001) {
        bench_wrong(bench, "%s: the boxes do not cover the leaf", e->door->row->id.s);
    }
}

/* Each chain starts at 0, has no gaps, and ends at the edge; below leaves that fold and differ one
 * has the gap between them. */
static void check_chain(struct bench *bench, const struct door_elevation *e, bool upright,
                        bool whole) {
    length at = 0;
    size_t count = 0;
    size_t gaps = 0;
    for (size_t i = 0; i < e->drawing.dimension_count; i++) {
        const struct elevation_dimension *const d = &e->drawing.dimensions[i];
        if (d->upright == upright && d->whole == whole) {
            if (d->from != at || d->to <= d->from) {
                gaps++;
            }
            at = d->to;
            count++;
        }
    }
    const bool slab = count_of(e, TRAIT_SLAB) > 0; /* or bought in, and no more is known */
    const bool two =
        !upright && e->door->beside != NULL && e->door->beside->width != e->door->width;
    const length wide = two && e->door->leaves == 1 ? e->drawing.width : e->door->width;
    if (gaps != (two && count > 0 ? 1 : 0)) {
        bench_wrong(bench, "%s: %zu gaps between dimensions", e->door->row->id.s, gaps);
    }
    if ((whole || !slab) && !(two && e->door->leaves > 1) &&
        at != (upright ? e->door->height : wide)) {
        bench_wrong(bench, "%s: dimensions end before the edge", e->door->row->id.s);
    }
    if (whole ? count != (two ? 2 : 1) : (slab ? count != 0 : count < 3)) {
        bench_wrong(bench, "%s: %zu dimensions in a chain", e->door->row->id.s, count);
    }
}

static void check_mirror(struct bench *bench, const struct door_elevation *e) {
    for (size_t i = 0; i < e->drawing.box_count; i++) {
        const struct elevation_box *const b = &e->drawing.boxes[i];
        bool found = false;
        for (size_t k = 0; k < e->drawing.box_count; k++) {
            const struct elevation_box *const m = &e->drawing.boxes[k];
            found = found || (m->trait == b->trait && m->y == b->y && m->width == b->width &&
                              m->height == b->height && m->rise == b->rise &&
                              m->x == e->drawing.width - b->x - b->width);
        }
        if (!found) {
            bench_wrong(bench, "%s: a box without its mirror image", e->door->row->id.s);
        }
    }
}

static void check_marks(struct bench *bench, const struct door_elevation *e) {
    const size_t wanted =
        e->drawing.edge == EDGE_NONE ? 0 : (size_t)e->drawing.hinges * (size_t)e->door->leaves;
    if (count_of(e, TRAIT_HINGE) != wanted) {
        bench_wrong(bench, "%s: %zu hinge marks, expected %zu", e->door->row->id.s,
                    count_of(e, TRAIT_HINGE), wanted);
    }
    for (size_t i = 0; i < e->drawing.box_count; i++) {
        const struct elevation_box *const b = &e->drawing.boxes[i];
        const bool inside = b->x >= 0 && b->x + b->width <= e->drawing.width && b->y >= 0 &&
                            b->y + b->height <= e->drawing.height;
        if (b->trait == TRAIT_HINGE && inside) {
            bench_wrong(bench, "%s: a hinge mark on the leaf", e->door->row->id.s);
        }
    }
}

static void check_elevation(struct bench *bench, const struct door_elevation *e) {
    check_faces(bench, e);
    check_chain(bench, e, false, false);
    check_chain(bench, e, false, true);
    check_chain(bench, e, true, false);
    check_chain(bench, e, true, true);
    check_marks(bench, e);
    if (e->door->leaves > 1) {
        check_mirror(bench, e);
    }
}

/* Every door of the samples. */
static void samples(void **state) {
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini"};
    int wrong = 0;
    (void)state;
    for (size_t j = 0; j < COUNT(jobs); j++) {
        struct bench bench;
        bench_open_job(&bench, jobs[j]);
        const struct quantities *const q = &bench.estimate.quantities;
        assert_true(q->count > 5);
        for (size_t r = 0; r < q->count; r++) {
            struct door_elevation e;
            if (q->leaves[r].door->bought_in) {
                continue; /* an outline: nobody here knows its parts */
            }
            assert_true(door_elevation_make(&e, &bench.estimate.pool, q->leaves[r].door,
                                            hung_on_of(&bench.estimate, &q->leaves[r]),
                                            bench.job.unit));
            check_elevation(&bench, &e);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

struct look_case {
    const char *name;
    const char *edits[3];
    const char *doors;
    int32_t hinges;
    enum hinge_edge edge;
    size_t stiles, rails, panels, glass, open, hidden, strokes;
};

#define HEAD   "id,width,height,leaves,mid rails,mid stiles,hinge side\n"
#define OPENS  "id,width,height,opens,hinge side\n"
#define CORNER "id,width,second width,height,opens,hinge side\n"

static const struct look_case look_cases[] = {
    {"a plain door", {0}, "D1,18,30\n", 0, EDGE_NONE, 2, 2, 1, 0, 0, 1, 0},
    {"hinged on the left", {0}, HEAD "D1,18,30,1,0,0,left\n", 3, EDGE_LEFT, 2, 2, 1, 0, 0, 1, 2},
    {"hinged on the right", {0}, HEAD "D1,18,30,1,0,0,right\n", 2, EDGE_RIGHT, 2, 2, 1, 0, 0, 1, 2},
    {"side not said", {0}, HEAD "D1,18,30,1,0,0,\n", 2, EDGE_NONE, 2, 2, 1, 0, 0, 1, 0},
    {"a pair", {0}, HEAD "D1,18,30,2,0,0,\n", 2, EDGE_LEFT, 4, 4, 2, 0, 0, 2, 4},
    {"lifts up", {0}, OPENS "D1,30,18,lift up,\n", 2, EDGE_TOP, 2, 2, 1, 0, 0, 1, 2},
    {"lifts up, without hinges",
     {0},
     OPENS "D1,30,18,lift up,\n",
     0,
     EDGE_TOP,
     2,
     2,
     1,
     0,
     0,
     1,
     2},
    {"tilts out", {0}, OPENS "D1,18,30,tilt out,\n", 2, EDGE_BOTTOM, 2, 2, 1, 0, 0, 1, 2},
    {"drops down", {0}, OPENS "D1,30,18,drop down,\n", 3, EDGE_BOTTOM, 2, 2, 1, 0, 0, 1, 2},
    {"a bi-fold at the left",
     {0},
     OPENS "D1,18,30,bi-fold,left\n",
     2,
     EDGE_LEFT,
     4,
     4,
     2,
     0,
     0,
     2,
     4},
    {"a bi-fold at the right",
     {0},
     OPENS "D1,18,30,bi-fold,right\n",
     2,
     EDGE_RIGHT,
     4,
     4,
     2,
     0,
     0,
     2,
     4},
    {"a bi-fold whose side is not said: how it folds is",
     {0},
     OPENS "D1,18,30,bi-fold,\n",
     2,
     EDGE_NONE,
     4,
     4,
     2,
     0,
     0,
     2,
     2},
    {"a bi-fold at both sides",
     {0},
     OPENS "D1,18,30,bi-fold,pair\n",
     2,
     EDGE_LEFT,
     8,
     8,
     4,
     0,
     0,
     4,
     8},
    {"a pie cut", {0}, CORNER "D1,11,12,30,pie cut,left\n", 2, EDGE_LEFT, 4, 4, 2, 0, 0, 2, 6},
    {"mid rail, mid stile", {0}, HEAD "D1,24,60,1,1,1,\n", 0, EDGE_NONE, 4, 3, 4, 0, 0, 4, 0},
    {"mitred", {"make|style = mitred"}, "D1,18,30\n", 0, EDGE_NONE, 2, 2, 1, 0, 0, 1, 4},
    {"for glass", {"make|style = glazed"}, "D1,18,30\n", 0, EDGE_NONE, 2, 2, 0, 1, 0, 1, 0},
};

static void looks(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(look_cases); i++) {
        const struct look_case *const c = &look_cases[i];
        struct bench bench;
        struct door_elevation e;
        bench_open(&bench, c->name, BENCH_INCH, c->edits, c->doors);
        bench_sound(&bench);
        assert_true(door_elevation_make(&e, &bench.estimate.pool,
                                        bench.estimate.quantities.leaves[0].door,
                                        (struct hung_on){.count = c->hinges}, bench.job.unit));
        check_elevation(&bench, &e);
        const size_t made[] = {count_of(&e, TRAIT_STILE), count_of(&e, TRAIT_RAIL),
                               count_of(&e, TRAIT_PANEL), count_of(&e, TRAIT_GLASS),
                               count_of(&e, TRAIT_OPEN),  count_of(&e, TRAIT_HIDDEN),
                               e.drawing.stroke_count,    (size_t)e.drawing.edge};
        const size_t wanted[] = {c->stiles, c->rails,  c->panels,  c->glass,
                                 c->open,   c->hidden, c->strokes, (size_t)c->edge};
        for (size_t k = 0; k < COUNT(made); k++) {
            if (made[k] != wanted[k]) {
                bench_wrong(&bench, "count %zu: %zu, expected %zu", k, made[k], wanted[k]);
            }
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* The left face of a corner is drawn at the left, whichever leaf hangs; the marks are on that one.
 */
static void sides_of_a_corner(void **state) {
    static const char *const rows[] = {CORNER "D1,11,12,30,pie cut,left\n",
                                       CORNER "D1,11,12,30,pie cut,right\n"};
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct bench bench;
        struct door_elevation e;
        size_t leaf = 0;
        bench_open(&bench, "corner", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0}, rows[i]);
        assert_true(door_elevation_make(&e, &bench.estimate.pool,
                                        bench.estimate.quantities.leaves[0].door,
                                        (struct hung_on){.count = 2}, bench.job.unit));
        for (size_t k = 0; k < e.drawing.box_count; k++) {
            const struct elevation_box *const b = &e.drawing.boxes[k];
            if (b->trait == TRAIT_LEAF) {
                assert_int_equal(b->width, (b->x == 0 ? 11 : 12) * NM_PER_INCH);
                leaf++;
            } else if (b->trait == TRAIT_HINGE) {
                assert_true(i == 0 ? b->x < 0 : b->x == e.drawing.width);
            }
        }
        assert_int_equal(leaf, 2);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* 18 x 30 with stiles of 2 1/4: opening 13 1/2 x 25 1/2, panel 14 1/8 x 26 1/8 about it. */
static void panel_in_its_groove(void **state) {
    struct bench bench;
    struct door_elevation e;
    (void)state;
    bench_open(&bench, "panel", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0}, "D1,18,30\n");
    assert_true(door_elevation_make(&e, &bench.estimate.pool,
                                    bench.estimate.quantities.leaves[0].door, (struct hung_on){0},
                                    bench.job.unit));
    const length sixteenth = NM_PER_INCH / 16;
    for (size_t i = 0; i < e.drawing.box_count; i++) {
        const struct elevation_box *const b = &e.drawing.boxes[i];
        if (b->trait == TRAIT_PANEL) {
            assert_true(b->x == 36 * sixteenth && b->width == 216 * sixteenth &&
                        b->height == 408 * sixteenth);
        } else if (b->trait == TRAIT_HIDDEN) {
            assert_true(b->x == 31 * sixteenth && b->width == 226 * sixteenth &&
                        b->height == 418 * sixteenth);
        }
    }
    assert_int_equal(bench_close(&bench), 0);
}

/* Where hinges are, worked by hand: 63 5/8 less twice 3 1/2 is 56 5/8, a third of it 18 7/8. */
#define AT_64THS(whole, parts) (((whole)*64 + (parts)) * NM_PER_64TH)
static const struct bore_case {
    const char *name, *row;
    length at[4]; /* from the upper or the left end */
    size_t count;
    enum hinge_edge edge;
} bore_cases[] = {
    {"four, on the left",
     "18,63 5/8,hinged,left,,",
     {AT_64THS(3, 32), AT_64THS(22, 24), AT_64THS(41, 16), AT_64THS(60, 8)},
     4,
     EDGE_LEFT},
    {"two, on the right",
     "18,30,hinged,right,,",
     {AT_64THS(3, 32), AT_64THS(26, 32)},
     2,
     EDGE_RIGHT},
    {"one, in the middle", "18,30,hinged,right,1,", {AT_64THS(15, 0)}, 1, EDGE_RIGHT},
    {"level, at the top", "30,18,lift up,,,", {AT_64THS(3, 32), AT_64THS(26, 32)}, 2, EDGE_TOP},
    {"as the row says",
     "18,30,hinged,left,,2 | 7 | 28",
     {AT_64THS(2, 0), AT_64THS(7, 0), AT_64THS(28, 0)},
     3,
     EDGE_LEFT},
};

/* Cups of 35 mm, true to scale, with their middle 22.5 mm from the hinged edge. */
static void check_bores(struct bench *bench, const struct bore_case *c, const struct elevation *e) {
    size_t found = 0;
    for (size_t i = 0; i < e->box_count; i++) {
        const struct elevation_box *const b = &e->boxes[i];
        if (b->trait != TRAIT_BORE) {
            continue;
        }
        const length half = 35 * NM_PER_MM / 2;
        const length x = b->x + half;
        const length y = b->y + half;
        const length in = c->edge == EDGE_LEFT ? x : c->edge == EDGE_RIGHT ? e->width - x : y;
        if (b->width != 2 * half || b->height != 2 * half || in != 22500 * NM_PER_UM ||
            found == c->count || (c->edge == EDGE_TOP ? x : y) != c->at[found]) {
            bench_wrong(bench, "%s: bore %zu of %.3f mm at %.3f x %.3f mm", c->name, found,
                        (double)b->width / 1e6, (double)x / 1e6, (double)y / 1e6);
        }
        found++;
    }
    if (found != c->count) {
        bench_wrong(bench, "%s: %zu bores, expected %zu", c->name, found, c->count);
    }
}

static void bores(void **state) {
    static const char *const edits[BENCH_MOST_EDITS] = {
        "make|hinge = hinge", "hardware hinge|cup = 35 mm\ncup center = 22.5 mm",
        "hinges|from the ends = 3 1/2"};
    (void)state;
    for (size_t i = 0; i < sizeof bore_cases / sizeof *bore_cases; i++) {
        const struct bore_case *const c = &bore_cases[i];
        struct bench bench;
        struct door_elevation e;
        char list[160];
        (void)snprintf(list, sizeof list,
                       "id,width,height,opens,hinge side,hinges,hinges at\nD1,%s\n", c->row);
        bench_open(&bench, c->name, BENCH_INCH, edits, list);
        bench_sound(&bench);
        const struct leaf_figures *const leaf = &bench.estimate.quantities.leaves[0];
        assert_true(door_elevation_make(&e, &bench.estimate.pool, leaf->door,
                                        hung_on_of(&bench.estimate, leaf), bench.job.unit));
        check_elevation(&bench, &e);
        check_bores(&bench, c, &e.drawing);
        assert_int_equal(bench_close(&bench), 0);
    }
}

/* One arch over each opening of the top row, drawn on the opening and on the panel behind it. */
static void arches(void **state) {
    struct bench bench;
    struct door_elevation e;
    size_t openings = 0;
    size_t panels = 0;
    (void)state;
    bench_open(&bench, "arched", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0},
               "id,leaves,width,height,mid stiles,mid rails,arch\nD1,2,24,60,1,1,2\n");
    bench_sound(&bench);
    assert_true(door_elevation_make(&e, &bench.estimate.pool,
                                    bench.estimate.quantities.leaves[0].door, (struct hung_on){0},
                                    bench.job.unit));
    check_elevation(&bench, &e);
    for (size_t i = 0; i < e.drawing.box_count; i++) {
        const struct elevation_box *const b = &e.drawing.boxes[i];
        openings += b->trait == TRAIT_PANEL && b->rise == 2 * NM_PER_INCH ? 1 : 0;
        panels += b->trait == TRAIT_HIDDEN && b->rise == 2 * NM_PER_INCH ? 1 : 0;
    }
    assert_int_equal(openings, 4);
    assert_int_equal(panels, 4);
    assert_int_equal(bench_close(&bench), 0);
}

/* Bars are within the glass that shows; upright ones end at an arch. */
static void bars(void **state) {
    struct bench bench;
    struct door_elevation e;
    size_t low = 0;
    (void)state;
    bench_open(&bench, "bars", BENCH_INCH,
               (const char *const[BENCH_MOST_EDITS]){
                   "make|style = glazed", "door glazed|bar width = 5/8\nbar thickness = 1/4"},
               "id,width,height,arch,bars\nD1,18,30,3,3 x 4\n");
    bench_sound(&bench);
    assert_true(door_elevation_make(&e, &bench.estimate.pool,
                                    bench.estimate.quantities.leaves[0].door, (struct hung_on){0},
                                    bench.job.unit));
    check_elevation(&bench, &e);
    assert_int_equal(count_of(&e, TRAIT_BAR), 5);
    for (size_t i = 0; i < e.drawing.box_count; i++) {
        const struct elevation_box *const b = &e.drawing.boxes[i];
        const length foot = b->y + b->height;
        if (b->trait == TRAIT_BAR) {
            assert_true(b->x >= 9 * NM_PER_INCH / 4 && b->y >= 9 * NM_PER_INCH / 4);
            assert_true(foot <= 111 * NM_PER_INCH / 4);
            low += b->y > 9 * NM_PER_INCH / 4 && foot == 111 * NM_PER_INCH / 4 ? 1 : 0;
        }
    }
    assert_int_equal(low, 2);
    assert_int_equal(bench_close(&bench), 0);
}

/* What is bought in is drawn by what its style tells of it. */
static void slats(void **state) {
    static const struct {
        const char *style;
        size_t stiles, rails, slats, slabs;
    } cases[] = {
        {"door louver|kind = open\nbought in = 55.00 per door", 0, 0, 0, 1},
        {"door louver|kind = open\nbought in = 55.00 per door\nstile = 2", 2, 2, 0, 0},
        {"door louver|kind = open\nbought in = 55.00 per door\nstile = 2\nslats = 1 1/4", 2, 2, 21,
         0},
    };
    int wrong = 0;
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        struct door_elevation e;
        bench_open(&bench, cases[i].style, BENCH_INCH,
                   (const char *const[BENCH_MOST_EDITS]){"make|style = louver", cases[i].style},
                   "D1,18,30\n");
        bench_sound(&bench);
        assert_true(door_elevation_make(&e, &bench.estimate.pool,
                                        bench.estimate.quantities.leaves[0].door,
                                        (struct hung_on){0}, bench.job.unit));
        assert_int_equal(count_of(&e, TRAIT_STILE), cases[i].stiles);
        assert_int_equal(count_of(&e, TRAIT_RAIL), cases[i].rails);
        assert_int_equal(count_of(&e, TRAIT_SLAT), cases[i].slats);
        assert_int_equal(count_of(&e, TRAIT_SLAB), cases[i].slabs);
        check_faces(&bench, &e);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

static void sameness(void **state) {
    struct bench bench;
    struct door_elevation e[4];
    (void)state;
    bench_open(&bench, "same", BENCH_INCH, (const char *const[BENCH_MOST_EDITS]){0},
               "id,width,height,count,mid rails\nD1,18,30,1,0\nD2,18,30,4,0\nD3,18,31,1,0\n"
               "D4,18,30,1,1\n");
    for (size_t i = 0; i < 4; i++) {
        assert_true(door_elevation_make(&e[i], &bench.estimate.pool,
                                        bench.estimate.quantities.leaves[i].door,
                                        (struct hung_on){0}, bench.job.unit));
    }
    assert_true(door_elevation_same(&e[0], &e[1]));
    assert_false(door_elevation_same(&e[0], &e[2]));
    assert_true(door_kind_same(e[0].door, e[2].door));
    assert_false(door_kind_same(e[0].door, e[3].door));
    assert_int_equal(bench_close(&bench), 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(samples),
        cmocka_unit_test(looks),
        cmocka_unit_test(sides_of_a_corner),
        cmocka_unit_test(panel_in_its_groove),
        cmocka_unit_test(sameness),
        cmocka_unit_test(bores),
        cmocka_unit_test(arches),
        cmocka_unit_test(slats),
        cmocka_unit_test(bars),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
