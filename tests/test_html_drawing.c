/* SPDX-License-Identifier: MIT */
/* Doors as SVG, read back by a parser of XML: each box of the elevation stands to scale where the
 * elevation has it, each dimension is as long as what it says, nothing stands outside of the
 * picture, and no label runs into its neighbor. Path commands: SVG 1.1, section 8.3. */
#include "support.h"

#include "markup_read.h"
#include "report/doors/door_elevation.h"
#include "report/html/html.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>
#include <math.h>

#define STEP      0.051 /* of what is written with one decimal */
#define LEAF_WIDE 190.0
#define LEAF_HIGH 210.0
#define DIGIT     5.32 /* of a letter of 9.5 units */

struct drawn {
    struct bench *bench;
    const char *id;
    const struct elevation *e;
    struct markup read;
    double left, top, right, bottom; /* of the picture */
    double scale;
};

static void wrong(struct drawn *d, const char *what) {
    bench_wrong(d->bench, "%s: %s", d->id, what);
}

static bool near(double a, double b) {
    return fabs(a - b) <= 2 * STEP;
}

/* How far marks of hinges stand out of the leaf. */
static double mark_of(const struct drawn *d) {
    length out = 0;
    for (size_t i = 0; i < d->e->box_count; i++) {
        const struct elevation_box *const b = &d->e->boxes[i];
        const length sides[] = {-b->x, -b->y, b->x + b->width - d->e->width,
                                b->y + b->height - d->e->height};
        for (size_t k = 0; k < COUNT(sides); k++) {
            out = sides[k] > out ? sides[k] : out;
        }
    }
    return (double)out * d->scale;
}

static void draw(struct drawn *d, bool sizes, const char *words) {
    struct html html = {0};
    char *text = NULL;
    size_t size;
    html.out = open_memstream(&text, &size);
    assert_non_null(html.out);
    pool_init(&html.pool);
    html_drawing(&html, d->e, sizes, words);
    assert_int_equal(fclose(html.out), 0);
    pool_clear(&html.pool);
    markup_read(&d->read, text, size);
    free(text);
    const char *const box = markup_value(&d->read.elements[0], "viewBox");
    char *end;
    assert_non_null(box);
    d->left = strtod(box, &end);
    d->top = strtod(end, &end);
    d->right = d->left + strtod(end, &end);
    d->bottom = d->top + strtod(end, &end);
    const double wide = LEAF_WIDE / (double)d->e->width;
    const double high = LEAF_HIGH / (double)d->e->height;
    d->scale = wide < high ? wide : high;
    if (!near(d->right - (double)d->e->width * d->scale - 3, mark_of(d)) ||
        !near(-d->top - 3, mark_of(d))) {
        wrong(d, "the picture has not the room of its marks and an edge of 3 around it");
    }
    assert_true(fabs(markup_number(&d->read.elements[0], "width") - (d->right - d->left)) <= 0.6);
    assert_true(fabs(markup_number(&d->read.elements[0], "height") - (d->bottom - d->top)) <= 0.6);
}

/* --- what is drawn --- */

/* The points of a path; an arc is its end. Returns how many. */
static size_t points_of(const char *path, double points[][2], size_t most) {
    double x = 0;
    double y = 0;
    size_t count = 0;
    char *end;
    while (*path != '\0' && *path != 'Z') {
        const char command = *path++;
        if (command == 'A') {
            for (int i = 0; i < 5; i++) {
                (void)strtod(path, &end);
                path = end;
            }
        }
        const double one = strtod(path, &end);
        path = end;
        const bool level = command == 'H' || command == 'h';
        const bool upright = command == 'V' || command == 'v';
        const bool relative = command == 'h' || command == 'v' || command == 'l';
        const double two = level || upright ? 0 : strtod(path, &end);
        path = end;
        const double across = level ? one : upright ? (relative ? 0 : x) : one;
        const double down = upright ? one : level ? (relative ? 0 : y) : two;
        x = relative ? x + across : across;
        y = relative ? y + down : down;
        assert_true(count < most);
        points[count][0] = x;
        points[count++][1] = y;
    }
    return count;
}

static bool is_hidden(enum trait trait) {
    return trait == TRAIT_HIDDEN || trait == TRAIT_HINGE || trait == TRAIT_BORE;
}

static void check_arch(struct drawn *d, const struct elevation_box *b,
                       const struct markup_element *e) {
    double p[6][2] = {{0}};
    const char *const path = markup_value(e, "d");
    assert_non_null(path);
    assert_int_equal(points_of(path, p, 6), 4);
    const double x = (double)b->x * d->scale;
    const double y = (double)b->y * d->scale;
    const double w = (double)b->width * d->scale;
    const double rise = (double)b->rise * d->scale;
    const double radius = strtod(strchr(path, 'A') + 1, NULL);
    /* the arc goes through its top: the middle of its circle lies a radius below */
    const double below = y + radius - (y + rise);
    if (fabs(sqrt(w * w / 4 + below * below) - radius) > 0.2) {
        wrong(d, "an arch does not rise as high as it should");
    }
    if (!near(p[0][0], x) || !near(p[0][1], y + rise) || !near(p[1][0], x + w) ||
        !near(p[2][1], y + (double)b->height * d->scale) || !near(p[3][0], x)) {
        wrong(d, "an arch stands elsewhere");
    }
}

static void check_box(struct drawn *d, const struct elevation_box *b,
                      const struct markup_element *e) {
    const double x = (double)b->x * d->scale;
    const double y = (double)b->y * d->scale;
    const double w = (double)b->width * d->scale;
    const double h = (double)b->height * d->scale;
    if (b->trait == TRAIT_BORE) {
        if (strcmp(e->name, "circle") != 0 || !near(markup_number(e, "cx"), x + w / 2) ||
            !near(markup_number(e, "cy"), y + h / 2) || !near(markup_number(e, "r"), w / 2)) {
            wrong(d, "a bore is no circle in its box");
        }
    } else if (b->rise > 0) {
        check_arch(d, b, e);
    } else if (strcmp(e->name, "rect") != 0 || !near(markup_number(e, "x"), x) ||
               !near(markup_number(e, "y"), y) || !near(markup_number(e, "width"), w) ||
               !near(markup_number(e, "height"), h)) {
        wrong(d, "a box stands elsewhere");
    }
}

/* Boxes in their order; marks of glass and of openings stand behind theirs. */
static void check_boxes(struct drawn *d, bool sizes) {
    size_t at = 1;
    size_t strokes = 0;
    for (size_t i = 0; i < d->e->box_count; i++) {
        const struct elevation_box *const b = &d->e->boxes[i];
        if (is_hidden(b->trait) && !sizes) {
            continue;
        }
        if (at >= d->read.count) {
            wrong(d, "boxes are left out");
            return;
        }
        check_box(d, b, &d->read.elements[at++]);
        at += b->trait == TRAIT_GLASS ? 3 : b->trait == TRAIT_OPEN ? 1 : 0;
    }
    for (size_t i = 0; i < d->e->stroke_count; i++, strokes++) {
        double p[2][2] = {{0}};
        const struct elevation_stroke *const l = &d->e->strokes[i];
        assert_true(at < d->read.count);
        assert_int_equal(points_of(markup_value(&d->read.elements[at++], "d"), p, 2), 2);
        if (!near(p[0][0], (double)l->x1 * d->scale) || !near(p[0][1], (double)l->y1 * d->scale) ||
            !near(p[1][0], (double)l->x2 * d->scale) || !near(p[1][1], (double)l->y2 * d->scale)) {
            wrong(d, "a stroke stands elsewhere");
        }
    }
    const size_t rest = d->read.count - at;
    const size_t labels = sizes ? 2 * d->e->dimension_count : 0;
    if (rest != labels && rest != labels + 1) { /* a note */
        wrong(d, "more or fewer dimensions than there are");
    }
}

/* --- dimensions --- */

/* Where a label stands: a turned one runs down from its end. */
struct label {
    double from, to, low; /* along the chain; how far it reaches away from the leaf */
};

static struct label level_label(const struct markup_element *e) {
    const double wide = (double)strlen(e->text) * DIGIT;
    const char *const turned = markup_value(e, "transform");
    if (turned != NULL) {
        char *end;
        const double x = strtod(turned + strlen("translate("), &end);
        const double y = strtod(end, NULL);
        return (struct label){x - 9.5 * 0.7, x, y + wide};
    }
    const double x = markup_number(e, "x");
    return (struct label){x - wide / 2, x + wide / 2, markup_number(e, "y")};
}

static void check_upright(struct drawn *d, const struct elevation_dimension *of,
                          const double p[][2], const struct markup_element *label) {
    const double wide = (double)strlen(label->text) * DIGIT;
    if (!near(p[0][1], (double)of->from * d->scale) || !near(p[1][1], (double)of->to * d->scale) ||
        p[0][0] >= 0) {
        wrong(d, "an upright dimension does not measure what it says");
    }
    if (markup_number(label, "x") - wide < d->left || markup_number(label, "x") > p[0][0]) {
        wrong(d, "a label beside the leaf leaves the picture");
    }
}

static void check_level(struct drawn *d, const struct elevation_dimension *of, const double p[][2],
                        const struct markup_element *label, struct label *last) {
    const struct label is = level_label(label);
    if (!near(p[0][0], (double)of->from * d->scale) || !near(p[1][0], (double)of->to * d->scale) ||
        p[0][1] <= (double)d->e->height * d->scale) {
        wrong(d, "a level dimension does not measure what it says");
    }
    if (is.low > d->bottom || is.low < p[0][1]) {
        wrong(d, "a label below the leaf leaves the picture");
    }
    if (!of->whole && last->to > 0 && is.from < last->to - 2 * STEP && of->from > 0) {
        wrong(d, "labels of a chain run into each other");
    }
    *last = of->whole ? (struct label){0} : is;
}

static void check_dimensions(struct drawn *d) {
    const struct elevation *const e = d->e;
    struct label last = {0};
    double part = 0; /* how far the chains of parts stand out */
    for (size_t i = 0; i < e->dimension_count; i++) {
        const struct elevation_dimension *const of = &e->dimensions[i];
        const struct markup_element *const path = markup_find(&d->read, "path", "dim", i);
        char text[32];
        double p[6][2] = {{0}};
        if (path == NULL || path + 1 >= d->read.elements + d->read.count) {
            wrong(d, "dimensions are left out");
            return;
        }
        assert_int_equal(points_of(markup_value(path, "d"), p, 6), 6);
        (void)length_show(of->to - of->from, e->unit, text, sizeof text);
        if (strcmp(path[1].name, "text") != 0 || strcmp(path[1].text, text) != 0) {
            wrong(d, "a dimension says another length");
        }
        const double out = of->upright ? -p[0][0] : p[0][1] - (double)e->height * d->scale;
        part = of->whole ? part : fmax(part, out);
        if (of->whole && out < 5.9) {
            wrong(d, "the whole stands upon the leaf");
        }
        if (of->upright) {
            check_upright(d, of, (const double(*)[2])p, &path[1]);
        } else {
            check_level(d, of, (const double(*)[2])p, &path[1], &last);
        }
    }
    for (size_t i = 0; i < e->dimension_count; i++) { /* the whole farther out than its parts */
        const struct elevation_dimension *const of = &e->dimensions[i];
        for (size_t k = 0; k < e->dimension_count && of->whole; k++) {
            const struct elevation_dimension *const other = &e->dimensions[k];
            double whole[6][2] = {{0}};
            double one[6][2] = {{0}};
            if (other->whole || other->upright != of->upright) {
                continue;
            }
            (void)points_of(markup_value(markup_find(&d->read, "path", "dim", i), "d"), whole, 6);
            (void)points_of(markup_value(markup_find(&d->read, "path", "dim", k), "d"), one, 6);
            if (of->upright ? whole[0][0] > one[0][0] - 9.5 : whole[0][1] < one[0][1] + 9.5) {
                wrong(d, "the whole does not stand farther out than its parts");
            }
        }
    }
}

/* All that is drawn lies in the picture. */
static void check_inside(struct drawn *d) {
    for (size_t i = 1; i < d->read.count; i++) {
        const struct markup_element *const e = &d->read.elements[i];
        const char *const path = markup_value(e, "d");
        double p[8][2] = {{0}};
        size_t count = 2;
        if (path != NULL) {
            count = points_of(path, p, 8);
        } else if (strcmp(e->name, "rect") == 0) {
            p[0][0] = markup_number(e, "x");
            p[0][1] = markup_number(e, "y");
            p[1][0] = p[0][0] + markup_number(e, "width");
            p[1][1] = p[0][1] + markup_number(e, "height");
        }
        for (size_t k = 0; k < count; k++) {
            if (p[k][0] < d->left || p[k][0] > d->right || p[k][1] < d->top ||
                p[k][1] > d->bottom) {
                wrong(d, "something stands outside of the picture");
            }
        }
    }
}

static void check_drawing(struct bench *bench, const char *id, const struct elevation *e) {
    for (int sizes = 0; sizes < 2; sizes++) {
        struct drawn d = {.bench = bench, .id = id, .e = e};
        draw(&d, sizes == 1, "door \"A\" <pair>");
        assert_string_equal(markup_value(&d.read.elements[0], "aria-label"), "door \"A\" <pair>");
        check_boxes(&d, sizes == 1);
        check_inside(&d);
        if (sizes == 1) {
            check_dimensions(&d);
        } else if (markup_count(&d.read, "path", "dim") > 0) {
            wrong(&d, "dimensions that nobody asked for");
        }
        markup_clear(&d.read);
    }
}

static int check_job(struct bench *bench) {
    const struct estimate *const e = &bench->estimate;
    struct pool pool;
    pool_init(&pool);
    for (size_t i = 0; i < e->quantities.count; i++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[i];
        struct door_elevation made;
        assert_true(
            door_elevation_make(&made, &pool, leaf->door, hung_on_of(e, leaf), bench->job.unit));
        check_drawing(bench, leaf->door->row->id.s, &made.drawing);
    }
    assert_true(e->quantities.count > 0);
    pool_clear(&pool);
    return bench_close(bench);
}

static void test_samples(void **state) {
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini",
                                       "samples/old-house/old-house.ini", "tests/data/opens.ini"};
    (void)state;
    bench_each_job(jobs, COUNT(jobs), check_job);
}

/* Leaves so low, so narrow, so high and wide as a list takes them, of each kind that looks
 * different. */
static void test_extremes(void **state) {
    static const char doors[] = "id,width,height,style,mid rails,mid stiles\n"
                                "low,40,6,plain,,\nhigh,9,96,plain,,\nwide,100,20,plain,,\n"
                                "panes,20,40,glazed,4,3\nbare,14,30,open,,\nflat,6,2,slab,,\n"
                                "square,24,24,drawer,,\n";
    static const struct bench_job extremes = {"extremes", BENCH_INCH, {NULL}, doors};
    (void)state;
    bench_each(&extremes, 1, check_job);
}

/* --- elevations of the test's own --- */

static struct elevation plain(struct elevation_box *box, size_t count) {
    return (struct elevation){.unit = LENGTH_MM,
                              .width = box->width,
                              .height = box->height,
                              .boxes = box,
                              .box_count = count};
}

/* A note stands on the widest box of its kind, in its middle, and only where it fits. */
static void test_note(void **state) {
    static const struct {
        length wide;
        bool shown;
    } rows[] = {{400 * NM_PER_MM, true}, {300 * NM_PER_MM, true}, {60 * NM_PER_MM, false}};
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct bench bench = {.name = "note"};
        struct elevation_box boxes[3] = {
            {.trait = TRAIT_LEAF, .width = 500 * NM_PER_MM, .height = 500 * NM_PER_MM},
            {.trait = TRAIT_PANEL, .width = 50 * NM_PER_MM, .height = 500 * NM_PER_MM},
            {.trait = TRAIT_PANEL,
             .x = 100 * NM_PER_MM,
             .width = rows[i].wide,
             .height = 100 * NM_PER_MM}};
        struct elevation e = plain(boxes, 3);
        e.note = "beads 38 mm";
        e.note_on = TRAIT_PANEL;
        struct drawn d = {.bench = &bench, .id = "note", .e = &e};
        draw(&d, false, "");
        assert_int_equal(markup_count(&d.read, "text", NULL), rows[i].shown ? 1 : 0);
        if (rows[i].shown) {
            const struct markup_element *const text = markup_find(&d.read, "text", "mid", 0);
            assert_non_null(text);
            assert_string_equal(text->text, e.note);
            assert_true(near(markup_number(text, "x"),
                             ((double)boxes[2].x + (double)boxes[2].width / 2) * d.scale));
            assert_true(near(markup_number(text, "y"), (double)(50 * NM_PER_MM) * d.scale));
        }
        markup_clear(&d.read);
    }
}

/* A label turns where it and its ticks are wider than what it measures: `30` of 10.64 units and two
 * ticks of 2.5 at 0.38 units a mm takes 41.2 mm. */
static void test_turned(void **state) {
    static const struct {
        int mm;
        bool turned;
    } rows[] = {{30, true}, {41, true}, {42, false}, {99, false}};
    (void)state;
    for (size_t i = 0; i < COUNT(rows); i++) {
        struct bench bench = {.name = "turned"};
        struct elevation_box box = {
            .trait = TRAIT_SLAB, .width = 500 * NM_PER_MM, .height = 500 * NM_PER_MM};
        struct elevation_dimension dimension = {.to = rows[i].mm * NM_PER_MM};
        struct elevation e = plain(&box, 1);
        e.dimensions = &dimension;
        e.dimension_count = 1;
        struct drawn d = {.bench = &bench, .id = "turned", .e = &e};
        draw(&d, true, "");
        const struct markup_element *const text = markup_find(&d.read, "text", NULL, 0);
        assert_non_null(text);
        assert_int_equal(markup_value(text, "transform") != NULL, rows[i].turned);
        markup_clear(&d.read);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_samples),
        cmocka_unit_test(test_extremes),
        cmocka_unit_test(test_note),
        cmocka_unit_test(test_turned),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
