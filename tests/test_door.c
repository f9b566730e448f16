/* SPDX-License-Identifier: MIT */
/* From a row to the parts of a leaf. The sizes are worked out by hand; docs/method.md, "Sizes of a
 * door", has the same examples. */
#include "support.h"

#include "door/leaf.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* length runs along the grain */
struct part_case {
    enum part_kind kind;
    int32_t count;
    const char *length, *width;
};

struct door_case {
    const char *name;
    enum bench_unit unit;
    const char *edits[4];
    const char *doors;
    const char *width, *height; /* of the leaf */
    int32_t leaves, joints;
    const char *stuck; /* inner edge of the frame */
    struct part_case parts[8];
};

#define EIGHTEEN_BY_THIRTY .doors = "D1,18,30\n", .width = "18", .height = "30", .leaves = 1
#define ROWS_HEAD          "id,width,height,mid rails,mid stiles,rows\n"
#define LEAF_HEAD          "id,width,height,leaves,measure,overlay,reveal\n"
#define USE_HEAD           "id,use,width,height\n"

static const struct door_case door_cases[] = {
    {.name = "18 x 30, cope and stick",
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_PANEL, 1, "26 1/8", "14 1/8"}}},
    {.name = "18 x 30, tenon 1 1/4",
     .edits = {"make|style = tenoned"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "16", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "16", "2 1/4"},
               {PART_PANEL, 1, "26 1/8", "14 1/8"}}},
    {.name = "18 x 30, dowels",
     .edits = {"make|style = dowelled"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "13 1/2", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "13 1/2", "2 1/4"},
               {PART_PANEL, 1, "26 1/8", "14 1/8"}}},
    {.name = "18 x 30, dowels with a tongue in the file: none all the same",
     .edits = {"make|style = dowelled", "door dowelled|tongue = 1/2"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "13 1/2", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "13 1/2", "2 1/4"},
               {PART_PANEL, 1, "26 1/8", "14 1/8"}}},
    {.name = "18 x 30, mitred: long point to long point",
     .edits = {"make|style = mitred"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "18", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "18", "2 1/4"},
               {PART_PANEL, 1, "26 1/8", "14 1/8"}}},
    {.name = "18 x 30, solid panel, 1/8 across the upright grain",
     .edits = {"make|style = solid\npanel = poplar"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_PANEL, 1, "26 1/8", "14"}}},
    {.name = "18 x 30, solid panel, grain across: the height gives the room",
     .edits = {"make|style = solid\npanel = poplar", "door solid|panel grain = horizontal"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_PANEL, 1, "14 1/8", "26"}}},
    {.name = "18 x 30, glass: rabbet 3/8, clearance 1/8",
     .edits = {"make|style = glazed"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_PANE, 1, "26", "14"}}},
    {.name = "18 x 30, open frame",
     .edits = {"make|style = open"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "78",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"}}},
    {.name = "18 x 30, slab",
     .edits = {"make|style = slab"},
     EIGHTEEN_BY_THIRTY,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "30", "18"}}},
    {.name = "rails of different widths",
     .edits = {"door plain|top rail = 2\nbottom rail = 3"},
     EIGHTEEN_BY_THIRTY,
     .joints = 4,
     .stuck = "77",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "3"},
               {PART_PANEL, 1, "25 5/8", "14 1/8"}}},

    /* dividing the frame */
    {.name = "one mid rail",
     .doors = ROWS_HEAD "D1,18,30,1,,\n",
     .width = "18",
     .height = "30",
     .leaves = 1,
     .joints = 6,
     .stuck = "100 1/2",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_MID_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_PANEL, 2, "12 1/4", "14 1/8"}}},
    {.name = "mitred with a mid rail: that one goes between the stiles",
     .edits = {"make|style = mitred"},
     .doors = ROWS_HEAD "D1,18,30,1,,\n",
     .width = "18",
     .height = "30",
     .leaves = 1,
     .joints = 6,
     .stuck = "100 1/2",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "18", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "18", "2 1/4"},
               {PART_MID_RAIL, 1, "13 1/2", "2 1/4"},
               {PART_PANEL, 2, "12 1/4", "14 1/8"}}},
    {.name = "one mid stile",
     .doors = ROWS_HEAD "D1,18,30,,1,\n",
     .width = "18",
     .height = "30",
     .leaves = 1,
     .joints = 6,
     .stuck = "124 1/2", /* 2 x 2 x (5 5/8 + 25 1/2) */
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_MID_STILE, 1, "26 1/4", "2 1/4"},
               {PART_PANEL, 2, "26 1/8", "6 1/4"}}},
    {.name = "mid rail and mid stiles",
     .doors = ROWS_HEAD "D1,24,30,1,2,\n",
     .width = "24",
     .height = "30",
     .leaves = 1,
     .joints = 14,       /* 4 + 2 x 1 + 2 x 2 x 2 */
     .stuck = "199 1/2", /* columns 5, rows 11 5/8: 6 x 2 x 16 5/8 */
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "20 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "20 1/4", "2 1/4"},
               {PART_MID_RAIL, 1, "20 1/4", "2 1/4"},
               {PART_MID_STILE, 4, "12 3/8", "2 1/4"},
               {PART_PANEL, 6, "12 1/4", "5 5/8"}}},
    {.name = "given rows",
     .doors = ROWS_HEAD "D1,18,30,,,7 1/4 | 16\n",
     .width = "18",
     .height = "30",
     .leaves = 1,
     .joints = 6,
     .stuck = "100 1/2",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_MID_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_PANEL, 1, "7 7/8", "14 1/8"},
               {PART_PANEL, 1, "16 5/8", "14 1/8"}}},
    {.name = "two mid rails, rows of 7",
     .doors = ROWS_HEAD "D1,18,30,2,,\n",
     .width = "18",
     .height = "30",
     .leaves = 1,
     .joints = 8,
     .stuck = "123",
     .parts = {{PART_STILE, 2, "30", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_MID_RAIL, 2, "14 1/4", "2 1/4"},
               {PART_PANEL, 3, "7 5/8", "14 1/8"}}},
    {.name = "22 in three rows: 7 21/64 twice, the last takes what remains",
     .doors = ROWS_HEAD "D1,18,31,2,,\n",
     .width = "18",
     .height = "31",
     .leaves = 1,
     .joints = 8,
     .stuck = "125",
     .parts = {{PART_STILE, 2, "31", "2 1/4"},
               {PART_TOP_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "14 1/4", "2 1/4"},
               {PART_MID_RAIL, 2, "14 1/4", "2 1/4"},
               {PART_PANEL, 2, "7 61/64", "14 1/8"},
               {PART_PANEL, 1, "7 31/32", "14 1/8"}}},

    /* from opening to leaf */
    {.name = "overlay on all sides",
     .edits = {"make|style = slab"},
     .doors = LEAF_HEAD "D1,17,29,,opening,1/2,\n",
     .width = "18",
     .height = "30",
     .leaves = 1,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "30", "18"}}},
    {.name = "an overlay for each side",
     .edits = {"make|style = slab\nmeasure = opening\noverlay left = 1/4\noverlay right = 1\n"
               "overlay top = 3/8\noverlay bottom = 0"},
     .doors = "D1,17,29\n",
     .width = "18 1/4",
     .height = "29 3/8",
     .leaves = 1,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "29 3/8", "18 1/4"}}},
    {.name = "one side of an overlay given by itself",
     .edits = {"make|style = slab\nmeasure = opening\noverlay = 1/2\noverlay right = 1/4"},
     .doors = "D1,17,29\n",
     .width = "17 3/4",
     .height = "30",
     .leaves = 1,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "30", "17 3/4"}}},
    {.name = "inset: the reveal on each side",
     .edits = {"make|style = slab"},
     .doors = LEAF_HEAD "D1,18 3/16,24 5/16,,opening,,3/32\n",
     .width = "18",
     .height = "24 1/8",
     .leaves = 1,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "24 1/8", "18"}}},
    {.name = "an inset row in an overlay job",
     .edits = {"make|style = slab\noverlay = 1/2"},
     .doors = LEAF_HEAD "D1,18 3/16,24 5/16,,opening,,3/32\n",
     .width = "18",
     .height = "24 1/8",
     .leaves = 1,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "24 1/8", "18"}}},
    {.name = "a pair shares the width less the gap",
     .edits = {"make|style = slab"},
     .doors = LEAF_HEAD "D1,33,29 5/8,2,opening,1/2,\n",
     .width = "16 15/16",
     .height = "30 5/8",
     .leaves = 2,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "30 5/8", "16 15/16"}}},
    {.name = "an inset pair",
     .edits = {"make|style = slab"},
     .doors = LEAF_HEAD "D1,33,30,2,opening,,1/16\n",
     .width = "16 3/8", /* (33 - 1/8 - 1/8) / 2 */
     .height = "29 7/8",
     .leaves = 2,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "29 7/8", "16 3/8"}}},
    {.name = "a pair whose half is between 64ths is rounded up",
     .edits = {"make|style = slab"},
     .doors = LEAF_HEAD "D1,33 1/64,30,2,opening,,1/16\n",
     .width = "16 25/64",
     .height = "29 7/8",
     .leaves = 2,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "29 7/8", "16 25/64"}}},
    {.name = "measure = door: one leaf as it stands, of a pair too",
     .edits = {"make|style = slab\noverlay = 1/2"},
     .doors = LEAF_HEAD "D1,18,30,2,door,,\n",
     .width = "18",
     .height = "30",
     .leaves = 2,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "30", "18"}}},

    /* drawer fronts */
    {.name = "a low drawer front is a slab",
     .edits = {"make|style = drawer"},
     .doors = USE_HEAD "F1,drawer front,15,6 31/64\n",
     .width = "15",
     .height = "6 31/64",
     .leaves = 1,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "6 31/64", "15"}}},
    {.name = "one of just the height is not",
     .edits = {"make|style = drawer"},
     .doors = USE_HEAD "F1,drawer front,15,6 1/2\n",
     .width = "15",
     .height = "6 1/2",
     .leaves = 1,
     .joints = 4,
     .stuck = "28",
     .parts = {{PART_STILE, 2, "6 1/2", "2 1/4"},
               {PART_TOP_RAIL, 1, "11 1/4", "1 1/2"},
               {PART_BOTTOM_RAIL, 1, "11 1/4", "1 1/2"},
               {PART_PANEL, 1, "4 1/8", "11 1/8"}}},
    {.name = "the finished height counts, not the opening",
     .edits = {"make|style = drawer\nmeasure = opening\noverlay = 1/2"},
     .doors = USE_HEAD "F1,drawer front,30 1/2,5 1/2\n",
     .width = "31 1/2",
     .height = "6 1/2",
     .leaves = 1,
     .joints = 4,
     .stuck = "61",
     .parts = {{PART_STILE, 2, "6 1/2", "2 1/4"},
               {PART_TOP_RAIL, 1, "27 3/4", "1 1/2"},
               {PART_BOTTOM_RAIL, 1, "27 3/4", "1 1/2"},
               {PART_PANEL, 1, "4 1/8", "27 5/8"}}},
    {.name = "a low false front is a slab like the drawer fronts beside it",
     .edits = {"make|style = drawer"},
     .doors = USE_HEAD "F1,false front,15,6\n",
     .width = "15",
     .height = "6",
     .leaves = 1,
     .stuck = "0",
     .parts = {{PART_SLAB, 1, "6", "15"}}},
    {.name = "a low door stays a frame with the rails of a door",
     .edits = {"make|style = drawer"},
     .doors = USE_HEAD "D1,door,15,6\n",
     .width = "15",
     .height = "6",
     .leaves = 1,
     .joints = 4,
     .stuck = "24",
     .parts = {{PART_STILE, 2, "6", "2 1/4"},
               {PART_TOP_RAIL, 1, "11 1/4", "2 1/4"},
               {PART_BOTTOM_RAIL, 1, "11 1/4", "2 1/4"},
               {PART_PANEL, 1, "2 1/8", "11 1/8"}}},

    /* millimeters */
    {.name = "a pair in mm",
     .unit = BENCH_MM,
     .doors = LEAF_HEAD "D1,860,640,2,opening,15,\n",
     .width = "443.5",
     .height = "670",
     .leaves = 2,
     .joints = 4,
     .stuck = "1727",
     .parts = {{PART_STILE, 2, "670", "60"},
               {PART_TOP_RAIL, 1, "343.5", "60"},
               {PART_BOTTOM_RAIL, 1, "343.5", "70"},
               {PART_PANEL, 1, "558", "341.5"}}},
    {.name = "thirds of mm: 0.1 steps, the last takes what remains",
     .unit = BENCH_MM,
     .doors = ROWS_HEAD "D1,400,660,2,,\n", /* 660 - 130 - 120 = 410 */
     .width = "400",
     .height = "660",
     .leaves = 1,
     .joints = 8,
     .stuck = "2500",
     .parts = {{PART_STILE, 2, "660", "60"},
               {PART_TOP_RAIL, 1, "300", "60"},
               {PART_BOTTOM_RAIL, 1, "300", "70"},
               {PART_MID_RAIL, 2, "300", "60"},
               {PART_PANEL, 2, "154.7", "298"},
               {PART_PANEL, 1, "154.6", "298"}}},
};

static void show_part(char *text, size_t size, enum part_kind kind, int32_t count,
                      const char *along, const char *width) {
    (void)snprintf(text, size, "%d %s %s x %s", (int)count, part_kind_name(kind), along, width);
}

static void check_length(struct bench *bench, const char *what, length value, const char *wanted) {
    char text[32];
    length_show(value, bench->job.unit, text, sizeof text);
    if (strcmp(text, wanted) != 0) {
        bench_wrong(bench, "%s is %s, expected %s", what, text, wanted);
    }
}

static void check_parts(struct bench *bench, const struct door *door,
                        const struct part_case *wanted) {
    size_t i = 0;
    for (; i < 8 && wanted[i].count > 0; i++) {
        char want[96];
        char got[96] = "nothing";
        show_part(want, sizeof want, wanted[i].kind, wanted[i].count, wanted[i].length,
                  wanted[i].width);
        if (i < door->part_count) {
            const struct part *const p = &door->parts[i];
            char along[32];
            char across[32];
            show_part(got, sizeof got, p->kind, p->count,
                      length_show(p->length, bench->job.unit, along, sizeof along),
                      length_show(p->width, bench->job.unit, across, sizeof across));
        }
        if (strcmp(want, got) != 0) {
            bench_wrong(bench, "part %zu is %s, expected %s", i, got, want);
        }
    }
    if (door->part_count > i) {
        bench_wrong(bench, "%zu parts, expected %zu", door->part_count, i);
    }
}

static void test_parts(void **state) {
    (void)state;
    int wrong = 0;
    for (size_t i = 0; i < COUNT(door_cases); i++) {
        const struct door_case *const c = &door_cases[i];
        struct bench bench;
        const char *edits[BENCH_MOST_EDITS] = {0};
        memcpy(edits, c->edits, sizeof c->edits);
        bench_open(&bench, c->name, c->unit, edits, c->doors);
        bench_sound(&bench);
        if (bench.result == ESTIMATE_OK) {
            const struct door *const door = &bench.estimate.doors.doors[0];
            check_length(&bench, "width", door->width, c->width);
            check_length(&bench, "height", door->height, c->height);
            check_length(&bench, "inner edge", door->stuck_edge, c->stuck);
            if (door->leaves != c->leaves || door->joints != c->joints) {
                bench_wrong(&bench, "%d leaves and %d joints, expected %d and %d",
                            (int)door->leaves, (int)door->joints, (int)c->leaves, (int)c->joints);
            }
            check_parts(&bench, door, c->parts);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* Rough sizes: the length allowance once, the edge allowance on both edges; sheets and glass as
 * finished. A kitchen in mm and the same in inches give the same parts. */
static void test_rough(void **state) {
    (void)state;
    static const struct {
        const char *name, *edits[BENCH_MOST_EDITS];
        size_t part;
        const char *length, *width;
    } cases[] = {
        {"a stile", {NULL}, 0, "31", "2 3/8"},
        {"a rail", {NULL}, 1, "15 1/4", "2 3/8"},
        {"a sheet panel", {NULL}, 3, "26 1/8", "14 1/8"},
        {"a solid panel", {"make|style = solid\npanel = poplar"}, 3, "27 1/8", "14 1/8"},
        {"a pane", {"make|style = glazed"}, 3, "26", "14"},
        {"a slab of lumber", {"make|style = slab\nslab = poplar"}, 0, "31", "18 1/8"},
        {"other allowances",
         {"saw|length allowance = 3/4\nedge allowance = 0"},
         0,
         "30 3/4",
         "2 1/4"},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        bench_open(&bench, cases[i].name, BENCH_INCH, cases[i].edits, "D1,18,30\n");
        bench_sound(&bench);
        if (bench.result == ESTIMATE_OK) {
            const struct part *const part = &bench.estimate.doors.doors[0].parts[cases[i].part];
            check_length(&bench, "rough length", part->rough_length, cases[i].length);
            check_length(&bench, "rough width", part->rough_width, cases[i].width);
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

/* 18 x 30 in is 457.2 x 762 mm: every part of the one door is as long as that of the other. */
static void test_inches_are_mm(void **state) {
    (void)state;
    static const struct {
        const char *name, *inches, *mm;
    } cases[] = {
        {"plain", ROWS_HEAD "D1,18,30,,,\n", ROWS_HEAD "D1,457.2,762,,,\n"},
        {"two mid rails", ROWS_HEAD "D1,18,30,2,,\n", ROWS_HEAD "D1,457.2,762,2,,\n"},
        {"units in the cells", ROWS_HEAD "D1,18,30,,,\n", ROWS_HEAD "D1,18 in,76.2 cm,,,\n"},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench in;
        struct bench mm;
        static const char *const metric[BENCH_MOST_EDITS] = {"job|unit = mm"};
        bench_open(&in, cases[i].name, BENCH_INCH, NULL, cases[i].inches);
        bench_open(&mm, cases[i].name, BENCH_INCH, metric, cases[i].mm);
        bench_sound(&in);
        bench_sound(&mm);
        if (in.result == ESTIMATE_OK && mm.result == ESTIMATE_OK) {
            const struct door *const a = &in.estimate.doors.doors[0];
            const struct door *const b = &mm.estimate.doors.doors[0];
            assert_int_equal(a->part_count, b->part_count);
            for (size_t p = 0; p < a->part_count; p++) {
                if (a->parts[p].length != b->parts[p].length ||
                    a->parts[p].width != b->parts[p].width) {
                    bench_wrong(&in, "part %zu differs", p);
                }
            }
        }
        wrong += bench_close(&in) + bench_close(&mm);
    }
    assert_int_equal(wrong, 0);
}

/* Whatever is divided adds up again. */
static void test_rows_add_up(void **state) {
    (void)state;
    for (int rails = 0; rails <= 20; rails++) {
        char doors[96];
        char name[32];
        struct bench bench;
        (void)snprintf(doors, sizeof doors, ROWS_HEAD "D1,40 5/64,90 3/64,%d,%d,\n", rails,
                       rails % 7);
        (void)snprintf(name, sizeof name, "%d mid rails", rails);
        bench_open(&bench, name, BENCH_INCH, NULL, doors);
        bench_sound(&bench);
        const struct door *const door = &bench.estimate.doors.doors[0];
        length height = 0;
        for (size_t o = 0; o < door->opening_count; o++) {
            height += door->openings[o].height * door->openings[o].count;
        }
        const length between = door->height - (2 + rails) * (NM_PER_INCH * 9 / 4);
        assert_true(height == between * (rails % 7 + 1));
        assert_int_equal(bench_close(&bench), 0);
    }
}

static void test_faults(void **state) {
    (void)state;
    static const struct {
        const char *name, *edits[BENCH_MOST_EDITS], *doors, *id;
    } cases[] = {
        {"no room between the stiles", {NULL}, "D1,4 1/2,30\n", "door-too-small"},
        {"room of a 64th", {NULL}, "D1,4 33/64,30\n", NULL},
        {"no room between the rails", {NULL}, "D1,18,4 1/2\n", "door-too-small"},
        {"no room between mid stiles", {NULL}, ROWS_HEAD "D1,9,30,,2,\n", "door-too-small"},
        {"no room between mid rails", {NULL}, ROWS_HEAD "D1,18,9,2,,\n", "door-too-small"},
        {"shares under a 64th", {NULL}, ROWS_HEAD "D1,18,15 49/64,5,,\n", "door-too-small"},
        {"given rows too small", {NULL}, ROWS_HEAD "D1,18,30,,,7 | 16\n", "rows-and-height"},
        {"given rows too large", {NULL}, ROWS_HEAD "D1,18,30,,,8 | 16\n", "rows-and-height"},
        {"one given row of the whole height", {NULL}, ROWS_HEAD "D1,18,30,,,25 1/2\n", NULL},
        {"mitred with a wider stile",
         {"make|style = mitred", "door mitred|stile = 2 1/2\ntop rail = 2 1/4"},
         "D1,18,30\n",
         "mitre-widths"},
        {"mitred drawer front with narrower rails",
         {"make|style = mitred", "door mitred|drawer rail = 1 1/2"},
         USE_HEAD "F1,drawer front,18,10\n",
         "mitre-widths"},
        {"an inset reveal that eats the door",
         {"make|measure = opening\nreveal = 1"},
         "D1,6,30\n",
         "door-too-small"},
        {"no sheet for a panel", {"make|panel"}, "D1,18,30\n", "no-material"},
        {"no lumber for a frame", {"make|frame"}, "D1,18,30\n", "no-material"},
        {"no sheet for a slab", {"make|slab\nstyle = slab"}, "D1,18,30\n", "no-material"},
        {"no glass for a glass door", {"make|glass\nstyle = glazed"}, "D1,18,30\n", "no-material"},
        {"lumber as the panel of a sheet door",
         {"make|panel = poplar"},
         "D1,18,30\n",
         "wrong-material"},
        {"a sheet as a solid panel", {"make|style = solid"}, "D1,18,30\n", "wrong-material"},
    };
    int wrong = 0;
    for (size_t i = 0; i < COUNT(cases); i++) {
        struct bench bench;
        bench_open(&bench, cases[i].name, BENCH_INCH, cases[i].edits, cases[i].doors);
        if (cases[i].id == NULL) {
            bench_sound(&bench);
        } else if (!bench_has(&bench, cases[i].id) || bench.result == ESTIMATE_OK) {
            bench_wrong(&bench, "no %s, %zu problems (%s)", cases[i].id, bench.problems.count,
                        bench.problems.count > 0 ? bench.problems.list[0].id : "");
        }
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_parts),         cmocka_unit_test(test_rough),
        cmocka_unit_test(test_inches_are_mm), cmocka_unit_test(test_rows_add_up),
        cmocka_unit_test(test_faults),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
