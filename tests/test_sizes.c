/* SPDX-License-Identifier: MIT */
/* Sizes to cut as a tape and a fence can take them: worked out by hand, each way of rounding. */
#include "support.h"

#include "base/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define ROWS_HEAD "id,width,height,mid rails,mid stiles,rows\n"
#define LEAF_HEAD "id,width,height,leaves,measure,overlay,reveal\n"
#define TO(step)  "saw|round sizes to = " step

/* The leaf, then its parts: count and kind, length x width, rough too where it is of lumber. */
static const struct size_case {
    const char *name;
    enum bench_unit unit;
    const char *edits[4];
    const char *doors;
    const char *sizes;
} cases[] = {
    {"door and panel down, rails by what is left of them",
     BENCH_INCH,
     {TO("1/8")},
     "D1,18 3/16,30 1/16\n",
     "18 1/8 x 30; 2 stile 30 x 2 1/4, 31 x 2 3/8; 1 top rail 14 3/8 x 2 1/4, 15 3/8 x 2 3/8; "
     "1 bottom rail 14 3/8 x 2 1/4, 15 3/8 x 2 3/8; 1 panel 26 1/8 x 14 1/4"},
    /* openings 13 3/8 x 25 3/8 and 2 (3/8 - 3/32) = 9/16: 25 15/16 x 13 15/16 */
    {"a panel of 1/16 down to 1/8, stiles of 1/16 to the nearest",
     BENCH_INCH,
     {TO("1/8"), "door plain|panel clearance = 3/32\nstile = 2 5/16"},
     "D1,18,30\n",
     "18 x 30; 2 stile 30 x 2 3/8, 31 x 2 1/2; 1 top rail 14 1/8 x 2 3/8, 15 1/8 x 2 1/2; "
     "1 bottom rail 14 1/8 x 2 3/8, 15 1/8 x 2 1/2; 1 panel 25 7/8 x 13 7/8"},
    /* 22 - 6 3/4 = 15 1/4, half of it 7 5/8 */
    {"divided columns to the nearest 1/4, the last takes what remains",
     BENCH_INCH,
     {TO("1/4")},
     ROWS_HEAD "D1,22,30,,1,\n",
     "22 x 30; 2 stile 30 x 2 1/4, 31 x 2 1/2; 1 top rail 18 1/4 x 2 1/4, 19 1/4 x 2 1/2; "
     "1 bottom rail 18 1/4 x 2 1/4, 19 1/4 x 2 1/2; 1 mid stile 26 1/4 x 2 1/4, 27 1/4 x 2 1/2; "
     "1 panel 26 x 8 1/4; 1 panel 26 x 8"},
    {"rough sizes up",
     BENCH_INCH,
     {TO("1/4\nlength allowance = 5/8"), "make|style = slab\nslab = poplar"},
     "D1,18,30\n",
     "18 x 30; 1 slab 30 x 18, 30 3/4 x 18 1/4"},
    {"a pane down",
     BENCH_INCH,
     {TO("1/4"), "make|style = glazed", "door glazed|glass clearance = 3/32"},
     "D1,18,30\n",
     "18 x 30; 2 stile 30 x 2 1/4, 31 x 2 1/2; 1 top rail 14 1/4 x 2 1/4, 15 1/4 x 2 1/2; "
     "1 bottom rail 14 1/4 x 2 1/4, 15 1/4 x 2 1/2; 1 pane 26 x 14"},
    /* 859.7 + 30 - 3 = 886.7, half of it 443.35 */
    {"a pair in mm down",
     BENCH_MM,
     {TO("0.5")},
     LEAF_HEAD "D1,859.7,640,2,opening,15,\n",
     "443 x 670; 2 stile 670 x 60, 695 x 63; 1 top rail 343 x 60, 368 x 63; "
     "1 bottom rail 343 x 70, 368 x 73; 1 panel 558 x 341"},
    {"without the key sizes are as they come",
     BENCH_INCH,
     {"door plain|panel clearance = 3/64"},
     "D1,18 1/64,30\n",
     "18 1/64 x 30; 2 stile 30 x 2 1/4, 31 x 2 3/8; 1 top rail 14 17/64 x 2 1/4, "
     "15 17/64 x 2 3/8; 1 bottom rail 14 17/64 x 2 1/4, 15 17/64 x 2 3/8; "
     "1 panel 26 5/32 x 14 11/64"},
};

static const char *size(const struct bench *bench, length a, length b, char *text, size_t room) {
    char first[32];
    char second[32];
    (void)snprintf(text, room, "%s x %s", length_show(a, bench->job.unit, first, sizeof first),
                   length_show(b, bench->job.unit, second, sizeof second));
    return text;
}

/* What a door comes to, as the cases have it. */
static void tell(const struct bench *bench, char *text, size_t room) {
    const struct door *const door = &bench->estimate.doors.doors[0];
    char one[80];
    (void)snprintf(text, room, "%s", size(bench, door->width, door->height, one, sizeof one));
    for (size_t i = 0; i < door->part_count; i++) {
        const struct part *const p = &door->parts[i];
        size_t at = strlen(text);
        (void)snprintf(text + at, room - at, "; %d %s %s", (int)p->count, part_kind_name(p->kind),
                       size(bench, p->length, p->width, one, sizeof one));
        at = strlen(text);
        if (p->material_kind == MATERIAL_LUMBER) {
            (void)snprintf(text + at, room - at, ", %s",
                           size(bench, p->rough_length, p->rough_width, one, sizeof one));
        }
    }
}

static void test_sizes(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct bench bench;
        char text[1000] = "";
        bench_open(&bench, cases[i].name, cases[i].unit, cases[i].edits, cases[i].doors);
        if (bench.result == ESTIMATE_OK) {
            tell(&bench, text, sizeof text);
        }
        if (strcmp(text, cases[i].sizes) != 0) {
            bench_wrong(&bench, "is %s", text);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* 4 7/32 of width in staves: each as wide as it must be, up, so that they make the width. */
static void test_staves(void **state) {
    (void)state;
    const char *const edits[] = {TO("1/16"), "make|style = solid\npanel = poplar",
                                 "door solid|stave = 5", NULL};
    struct bench bench;
    bench_open(&bench, "staves", BENCH_INCH, edits, "D1,18,30\n");
    bench_sound(&bench);
    /* 14 / 3 = 4 2/3, with both edges 4 2/3 + 1/8 = 4.7917: 4 13/16 */
    const fig each = bench.estimate.quantities.leaves[0].parts[3].stave_width;
    assert_int_equal(tape_scaled(&bench.estimate.tape, each, 6), 4812500);
    assert_int_equal(bench_close(&bench), 0);
}

static void test_steps(void **state) {
    (void)state;
    struct saw saw = {.size_step = {.amount = NM_PER_INCH / 32, .set = true}};
    assert_int_equal(size_step_of(&saw, LENGTH_INCH).step, 2 * NM_PER_64TH);
    /* 0.79375 mm in a job in millimeters, which shows tenths */
    assert_int_equal(size_step_of(&saw, LENGTH_MM).step, 8 * NM_PER_TENTH_MM);
    const struct size_step eighth = {LENGTH_INCH, NM_PER_INCH / 8};
    assert_int_equal(size_down(eighth, NM_PER_INCH + 1), NM_PER_INCH);
    assert_int_equal(size_up(eighth, NM_PER_INCH + 1), NM_PER_INCH / 8 * 9);
    assert_int_equal(size_up(eighth, NM_PER_INCH), NM_PER_INCH);
    assert_int_equal(size_nearest(eighth, NM_PER_INCH / 16), NM_PER_INCH / 8);
    assert_int_equal(size_nearest(eighth, NM_PER_INCH / 16 - 1), 0);
    assert_int_equal(size_down(eighth, -1), -NM_PER_INCH / 8);
}

/* Three openings share 1/4 in, of which the first takes nothing in steps of 1/4: no door. */
static void test_too_small(void **state) {
    (void)state;
    static const struct {
        const char *doors;
        bool refused;
    } said[] = {{ROWS_HEAD "D1,9 1/4,30,,2,\n", true},
                {ROWS_HEAD "D1,9 3/4,30,,2,\n", false},
                {ROWS_HEAD "D1,18,9 1/4,2,,\n", true},
                {ROWS_HEAD "D1,18,9 3/4,2,,\n", false}};
    int wrong = 0;
    for (size_t i = 0; i < COUNT(said); i++) {
        struct bench bench;
        bench_open(&bench, said[i].doors, BENCH_INCH, (const char *[]){TO("1/4"), NULL},
                   said[i].doors);
        if (bench_has(&bench, "door-too-small") != said[i].refused) {
            bench_wrong(&bench, said[i].refused ? "not refused" : "refused");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_sizes),
        cmocka_unit_test(test_staves),
        cmocka_unit_test(test_too_small),
        cmocka_unit_test(test_steps),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
