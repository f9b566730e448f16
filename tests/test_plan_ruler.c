/* SPDX-License-Identifier: MIT */
/* Sizes laid out on paper, against a second way to lay them out: the scale is found by halving, as
 * the one at which stretches that get their least and those to scale fill the room. Lists in
 * columns, against all that a reader wants of them. */
#include "report/plan/plan_draw.h"
#include "report/plan/plan_ruler.h"

#include "draw.h"

#include "cmocka_all.h"

#include <math.h>
#include <string.h>

#define MOST 12

/* --- rulers --- */

struct stretch {
    int64_t from, to;
    double least;
};

/* All stretches between neighboring marks, those among them that nobody asked room for; both ends
 * of each stretch are marks. Returns how many. */
static size_t between(const struct stretch *given, size_t count, struct stretch *all) {
    size_t n = 0;
    for (size_t i = 0; i < count; i++) {
        if (i > 0 && given[i].from > given[i - 1].to) {
            all[n++] = (struct stretch){given[i - 1].to, given[i].from, 0};
        }
        all[n++] = given[i];
    }
    return n;
}

static double sum_at(const struct stretch *all, size_t count, double scale) {
    double sum = 0;
    for (size_t i = 0; i < count; i++) {
        sum += fmax((double)(all[i].to - all[i].from) * scale, all[i].least);
    }
    return sum;
}

/* Stretches in order, some side by side, some with a gap between. */
static size_t draw_stretches(uint32_t *seed, struct stretch *given) {
    const size_t count = 1 + draw_below(seed, MOST - 1);
    int64_t at = draw_below(seed, 1000);
    for (size_t i = 0; i < count; i++) {
        const int64_t size = 1 + draw_below(seed, draw_below(seed, 2) == 0 ? 50 : 100000);
        given[i] = (struct stretch){at, at + size, draw_below(seed, 40)};
        at += size + (draw_below(seed, 2) == 0 ? 0 : draw_below(seed, 5000));
    }
    return count;
}

static void check_ruler(struct ruler *r, const struct stretch *all, size_t count, double from,
                        double to) {
    double least = 0;
    for (size_t i = 0; i < count; i++) {
        least += all[i].least;
    }
    assert_true(fabs(ruler_least(r) - least) < 1e-6);
    ruler_lay(r, from, to);
    assert_true(fabs(ruler_place(r, all[0].from) - from) < 1e-6);
    assert_true(fabs(ruler_place(r, all[count - 1].to) - to) < 1e-6);
    const double room = to - from;
    const double squeeze = least > room ? room / least : 1;
    double low = 0;
    double high = room;
    for (int i = 0; i < 200; i++) {
        const double middle = (low + high) / 2;
        double sum = 0;
        for (size_t k = 0; k < count; k++) {
            sum += fmax((double)(all[k].to - all[k].from) * middle, all[k].least * squeeze);
        }
        low = sum <= room ? middle : low;
        high = sum <= room ? high : middle;
    }
    for (size_t i = 0; i < count; i++) {
        const double wide = ruler_place(r, all[i].to) - ruler_place(r, all[i].from);
        const double wanted = fmax((double)(all[i].to - all[i].from) * low, all[i].least * squeeze);
        assert_true(fabs(wide - wanted) < 1e-3);
        /* what lies within stands at its share */
        const int64_t within = (all[i].from + all[i].to) / 2;
        const double middle = ruler_place(r, within);
        const double share = (double)(within - all[i].from) / (double)(all[i].to - all[i].from);
        assert_true(fabs(middle - ruler_place(r, all[i].from) - share * wide) < 1e-3);
    }
}

static void test_rulers(void **state) {
    uint32_t seed = 3;
    (void)state;
    for (int n = 0; n < 3000; n++) {
        struct stretch given[MOST] = {{0}};
        struct stretch all[2 * MOST] = {{0}};
        struct pool pool;
        const size_t count = draw_stretches(&seed, given);
        const size_t all_count = between(given, count, all);
        const double room = 20 + draw_below(&seed, 500);
        const double from = draw_below(&seed, 60);
        pool_init(&pool);
        struct ruler r = ruler_make(&pool, count);
        for (size_t i = 0; i < count; i++) { /* in any order */
            const size_t k = (i * 7 + (size_t)n) % count;
            if (count % 7 != 0) {
                ruler_add(&r, given[k].from, given[k].to, given[k].least);
            } else {
                ruler_add(&r, given[i].from, given[i].to, given[i].least);
            }
        }
        check_ruler(&r, all, all_count, from, from + room);
        pool_clear(&pool);
    }
    assert_true(sum_at(&(struct stretch){0, 10, 5}, 1, 1) == 10);
}

static void test_ruler_edges(void **state) {
    struct pool pool;
    (void)state;
    pool_init(&pool);
    struct ruler empty = ruler_make(&pool, 0);
    ruler_lay(&empty, 10, 20);
    assert_true(ruler_least(&empty) == 0 && ruler_place(&empty, 5) == 0);
    struct ruler r = ruler_make(&pool, 2);
    ruler_add(&r, 7, 7, 100); /* nothing: no stretch */
    ruler_add(&r, 9, 4, 100);
    assert_int_equal(r.count, 0);
    ruler_add(&r, 0, 100, 0);
    ruler_add(&r, 0, 100, 0); /* the same again takes no more room */
    ruler_add(&r, 100, 300, 0);
    ruler_add(&r, 300, 400, 0); /* one more than it was made for: it has a pair of marks to spare */
    ruler_lay(&r, 0, 30);
    assert_true(fabs(ruler_place(&r, 100) - 10) < 1e-9);
    assert_true(fabs(ruler_place(&r, 250) - 25) < 1e-9);
    pool_clear(&pool);
}

/* --- lines in columns --- */

static const char *const words[] = {
    "rip", " 2 3/8", " stile", " of the left door in the kitchen,", " 12 times", " and"};

struct list {
    struct plan_line lines[60];
    char texts[60][400];
    size_t count;
};

static void draw_list(uint32_t *seed, struct list *list) {
    list->count = 1 + draw_below(seed, 59);
    for (size_t i = 0; i < list->count; i++) {
        list->texts[i][0] = '\0';
        draw_pieces(seed, list->texts[i], sizeof list->texts[i], 14, words, COUNT(words));
        list->lines[i] = (struct plan_line){.text = list->texts[i],
                                            .lead = draw_below(seed, 3) == 0 ? "12-14" : ""};
        if (i == 0 || draw_below(seed, 6) == 0) {
            list->lines[i] = (struct plan_line){.text = "poplar 4/4", .heading = true};
        }
        list->lines[i].box = !list->lines[i].heading && draw_below(seed, 5) == 0;
    }
}

static cairo_t *measure_with(void) {
    cairo_surface_t *const surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, 1, 1);
    cairo_t *const cr = cairo_create(surface);
    cairo_surface_destroy(surface);
    return cr;
}

/* What is drawn stays within the room that was measured for it, to a hair of the letters' edges. */
static void check_drawn(const struct plan_columns *c, double width) {
    double x = 0;
    double y = 0;
    double wide = 0;
    double high = 0;
    cairo_surface_t *const surface =
        cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, NULL);
    cairo_t *const cr = cairo_create(surface);
    plan_columns_draw(cr, c, 100, 200);
    cairo_recording_surface_ink_extents(surface, &x, &y, &wide, &high);
    assert_true(x >= 99 && y >= 199 && x + wide <= 101 + width && y + high <= 201 + c->height);
    assert_true(y + high >= 200 + c->height - 2 * LINE_SIZE); /* and uses it */
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
}

/* What fills the rest of a list goes on another page: no line is lost, none is told twice, no page
 * is empty, no column higher than its room, where a single line and its heading have room. */
static void test_columns(void **state) {
    static struct list list;
    cairo_t *const cr = measure_with();
    uint32_t seed = 5;
    (void)state;
    for (int n = 0; n < 60; n++) {
        struct pool pool;
        const size_t most = 1 + draw_below(&seed, MOST_COLUMNS);
        const double width = 400 + draw_below(&seed, 150);
        const double height = 320 + draw_below(&seed, 300);
        size_t pages = 0;
        pool_init(&pool);
        draw_list(&seed, &list);
        for (size_t from = 0; from < list.count; pages++) {
            const struct plan_columns c =
                plan_columns_make(cr, &pool, list.lines, from, list.count, most, width, height);
            assert_int_equal(c.from, from);
            assert_true(c.to > from && c.to <= list.count);
            assert_in_range(c.columns, 1, most);
            assert_true(c.height > 0 && c.height <= height + 0.02);
            assert_true(fabs(c.width * (double)c.columns + 14 * ((double)c.columns - 1) - width) <
                        1e-6);
            check_drawn(&c, width);
            from = c.to;
        }
        assert_false(pool_failed(&pool));
        pool_clear(&pool);
    }
    cairo_destroy(cr);
}

/* Short lines use the columns that there may be: as low as can be. Equal lines in n columns need
 * the rounded up n-th part of their height. */
static void test_balanced(void **state) {
    static struct list list;
    cairo_t *const cr = measure_with();
    (void)state;
    list.count = 60;
    for (size_t i = 0; i < list.count; i++) {
        list.lines[i] = (struct plan_line){.text = "rip"};
    }
    for (size_t count = 1; count <= list.count; count++) {
        struct pool pool;
        pool_init(&pool);
        const struct plan_columns c =
            plan_columns_make(cr, &pool, list.lines, 0, count, 3, 500, 400);
        const size_t high = (count + c.columns - 1) / c.columns;
        const size_t low = (count + 2) / 3; /* in three columns */
        assert_int_equal(c.to, count);
        assert_true(fabs(c.height - (double)high * LINE_SIZE * 1.2) < 0.01);
        /* one more column would save less than 7 %: */
        assert_true(c.columns == 3 || (double)low > (double)high * 0.92);
        pool_clear(&pool);
    }
    cairo_destroy(cr);
}

/* A heading that would stand at the foot of a column goes to the next with its first line. */
static void test_heading_stays(void **state) {
    static struct list list;
    cairo_t *const cr = measure_with();
    const double line = LINE_SIZE * 1.2;
    (void)state;
    for (size_t before = 1; before < 9; before++) {
        struct pool pool;
        pool_init(&pool);
        list.count = before + 2;
        for (size_t i = 0; i < list.count; i++) {
            list.lines[i] = (struct plan_line){.text = "rip", .heading = i == before};
        }
        /* room for what stands before the heading and the heading, not for what follows it */
        const double height = line * (double)(before + 1) + 4;
        const struct plan_columns c =
            plan_columns_make(cr, &pool, list.lines, 0, list.count, 1, 300, height);
        assert_int_equal(c.to, before);
        const struct plan_columns with =
            plan_columns_make(cr, &pool, list.lines, 0, list.count, 1, 300, height + line);
        assert_int_equal(with.to, list.count);
        pool_clear(&pool);
    }
    cairo_destroy(cr);
}

/* Rows that headings begin: as many lines on a page as have room, the rest on the next. */
static void test_rows(void **state) {
    static struct list list;
    cairo_t *const cr = measure_with();
    uint32_t seed = 17;
    (void)state;
    for (int n = 0; n < 60; n++) {
        const double width = 300 + draw_below(&seed, 250);
        const double height = 120 + draw_below(&seed, 300);
        draw_list(&seed, &list);
        for (size_t from = 0; from < list.count;) {
            const struct plan_columns c =
                plan_rows_make(cr, list.lines, from, list.count, width, height);
            assert_true(c.rows && c.from == from && c.to > from && c.to <= list.count);
            assert_true(c.height <= height || c.to == from + 1);
            check_drawn(&c, width);
            if (c.to < list.count) { /* the next has no room */
                const struct plan_columns more =
                    plan_rows_make(cr, list.lines, from, c.to + 1, width, 1e6);
                assert_int_equal(more.to, c.to + 1);
                assert_true(more.height > height);
            }
            from = c.to;
        }
    }
    cairo_destroy(cr);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_rulers),  cmocka_unit_test(test_ruler_edges),
        cmocka_unit_test(test_columns), cmocka_unit_test(test_balanced),
        cmocka_unit_test(test_rows),    cmocka_unit_test(test_heading_stays),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
