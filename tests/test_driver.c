/* SPDX-License-Identifier: MIT */
/* Which parts work is on, by what it is counted by, as the table of drivers in docs/formats.md has
 * it: a part in a column, a driver in a row. */
#include "door/driver.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <string.h>

static const struct part parts[] = {
    {.kind = PART_STILE, .material_kind = MATERIAL_LUMBER, .staves = 1},
    {.kind = PART_MID_STILE, .material_kind = MATERIAL_LUMBER, .staves = 1},
    {.kind = PART_TOP_RAIL, .material_kind = MATERIAL_LUMBER, .staves = 1},
    {.kind = PART_TOP_RAIL, .material_kind = MATERIAL_LUMBER, .staves = 1, .rise = 1},
    {.kind = PART_MID_RAIL, .material_kind = MATERIAL_LUMBER, .staves = 1},
    {.kind = PART_BOTTOM_RAIL, .material_kind = MATERIAL_LUMBER, .staves = 1},
    {.kind = PART_PANEL, .material_kind = MATERIAL_SHEET, .staves = 1},
    {.kind = PART_PANEL, .material_kind = MATERIAL_LUMBER, .staves = 1, .rise = 1},
    {.kind = PART_PANEL, .material_kind = MATERIAL_LUMBER, .staves = 2},
    {.kind = PART_PANEL, .material_kind = MATERIAL_LUMBER, .staves = 1, .raised = true},
    {.kind = PART_PANE, .material_kind = MATERIAL_GLASS, .staves = 1},
    {.kind = PART_SLAB, .material_kind = MATERIAL_SHEET, .staves = 1},
    {.kind = PART_SLAB, .material_kind = MATERIAL_LUMBER, .staves = 2},
    {.kind = PART_BAR, .material_kind = MATERIAL_LUMBER, .staves = 1},
};

/* Stile, mid stile; top rail, arched one, mid rail, bottom rail; panel of sheet, solid one (cut to
 * an arch), glued up one, raised one; pane; slab of sheet, solid one; bar. */
static const struct {
    const char *name;
    enum driver driver;
    const char *works; /* x: on that part */
} drivers[] = {
    {"job", DRIVER_JOB, "xx xxxx xxxx x xx x"},
    {"part", DRIVER_PART, "xx xxxx xxxx x xx x"},
    {"stile", DRIVER_STILE, "xx .... .... . .. ."},
    {"rail", DRIVER_RAIL, ".. xxxx .... . .. ."},
    {"panel", DRIVER_PANEL, ".. .... xxxx x xx ."},
    {"joint", DRIVER_JOINT, "xx xxxx .... . .. ."},
    {"arch", DRIVER_ARCH, ".. .x.. .... . .. ."},
    {"ft of frame", DRIVER_FRAME_RUN, "xx xxxx .... . .. ."},
    {"pane", DRIVER_PANE, ".. .... .... x .. ."},
    {"bar", DRIVER_BAR, ".. .... .... . .. x"},
    {"ft of bar", DRIVER_BAR_RUN, ".. .... .... . .. x"},
    {"solid panel", DRIVER_SOLID_PANEL, ".. .... .xxx . .x ."},
    {"sqft of solid panel", DRIVER_SOLID_AREA, ".. .... .xxx . .x ."},
    {"ft of glue line", DRIVER_GLUE_LINE, ".. .... ..x. . .x ."},
    {"ft of raised edge", DRIVER_RAISED_RUN, ".. .... ...x . .. ."},
    {"ft of banding", DRIVER_BANDED_RUN, ".. .... .... . x. ."},
    {"bf", DRIVER_LUMBER, "xx xxxx .xxx . .x x"},
    {"board", DRIVER_BOARD, "xx xxxx .xxx . .x x"},
    {"sheet", DRIVER_SHEET, ".. .... x... . x. ."},
    {"cut", DRIVER_CUT, "xx xxxx xxxx . xx x"},
    {"door", DRIVER_DOOR, "xx xxxx xxxx x xx x"},
    {"hinge", DRIVER_HINGE, "xx xxxx xxxx x xx x"},
};

static void test_works_on(void **state) {
    int wrong = 0;
    (void)state;
    for (size_t d = 0; d < sizeof drivers / sizeof *drivers; d++) {
        char found[32] = "";
        const char *at = drivers[d].works;
        size_t size = 0;
        for (size_t p = 0; p < sizeof parts / sizeof *parts; p++) {
            if (*at == ' ') {
                found[size++] = *at++;
            }
            found[size++] = driver_works_on(drivers[d].driver, &parts[p]) ? 'x' : '.';
            at++;
        }
        if (strcmp(found, drivers[d].works) != 0) {
            wrong++;
            (void)fprintf(stderr, "%s: works on %s, wanted %s\n", drivers[d].name, found,
                          drivers[d].works);
        }
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_works_on)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
