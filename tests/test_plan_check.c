/* SPDX-License-Identifier: MIT */
/* The checker of cutting plans: good plans pass, and each sort of broken plan is refused for what
 * is wrong with it. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "strip_check.h"

#define EFFORT       (CUT_EFFORT_SECOND / 50)
#define COUNT(array) (sizeof(array) / sizeof(array)[0])

/* Boards: 2 of 10 with a kerf of 1, pieces of 4 and 5; a good plan is broken in one place each. */
static void checker_refuses_broken_boards(void **state) {
    (void)state;
    const struct cut_stock stock = {10, 1, 7, 2};
    const struct cut_item items[] = {{4, 1, 2, false}, {5, 1, 2, false}};
    const struct cut_job job = {1, 0, 1, &stock, 2, items, 0};
    size_t pieces[] = {1, 0};
    struct strip_board board = {0, 2, 0, 2};
    struct strip_plan plan = {1, &board, 2, pieces, 14, 14, 0};
    assert_int_equal(strip_check(&job, &plan), PLAN_GOOD);
    board.times = 1;
    assert_int_equal(strip_check(&job, &plan), PLAN_WRONG_COUNT);
    board.times = 2;
    pieces[1] = 1;
    assert_int_equal(strip_check(&job, &plan), PLAN_OUTSIDE);
    pieces[1] = 2;
    assert_int_equal(strip_check(&job, &plan), PLAN_WRONG_INDEX);
    pieces[1] = 0;
    board.stock = 1;
    assert_int_equal(strip_check(&job, &plan), PLAN_WRONG_INDEX);
    board.stock = 0;
    plan.cost = 13;
    assert_int_equal(strip_check(&job, &plan), PLAN_WRONG_COST);
    plan.cost = 14;
    plan.bound = 15;
    assert_int_equal(strip_check(&job, &plan), PLAN_WRONG_BOUND);
    plan.bound = 14;
    const struct cut_job wider = {2, 0, 1, &stock, 2, items, 0};
    assert_int_equal(strip_check(&wider, &plan), PLAN_OUTSIDE);
    const struct cut_stock few = {10, 1, 7, 1};
    const struct cut_job scarce = {1, 0, 1, &few, 2, items, 0};
    assert_int_equal(strip_check(&scarce, &plan), PLAN_TOO_MANY);
}

/* A sheet of 11 x 11 with a kerf of 1 and a trim of 0; the parts of a broken plan, and what the
 * checker must say. Its tree is that of an uncut sheet: places are looked at before it. */
struct broken_sheet {
    const char *name;
    struct cut_item item;
    struct sheet_part parts[5];
    size_t count;
    enum plan_fault fault;
};

static const struct broken_sheet broken_sheets[] = {
    {"outside", {5, 5, 1, false}, {{0, 7, 0, false}}, 1, PLAN_OUTSIDE},
    {"outside, negative", {5, 5, 1, false}, {{0, 0, -1, false}}, 1, PLAN_OUTSIDE},
    {"overlap", {5, 5, 2, false}, {{0, 0, 0, false}, {0, 4, 4, false}}, 2, PLAN_OVERLAP},
    {"no kerf", {5, 5, 2, false}, {{0, 0, 0, false}, {0, 5, 0, false}}, 2, PLAN_NO_KERF},
    {"no kerf at a corner",
     {5, 5, 2, false},
     {{0, 0, 0, false}, {0, 5, 5, false}},
     2,
     PLAN_NO_KERF},
    {"turned against its grain", {6, 4, 1, false}, {{0, 0, 0, true}}, 1, PLAN_TURNED},
    {"no such item", {5, 5, 1, false}, {{1, 0, 0, false}}, 1, PLAN_WRONG_INDEX},
    {"a pinwheel",
     {6, 4, 4, true},
     {{0, 0, 0, false}, {0, 7, 0, true}, {0, 5, 7, false}, {0, 0, 5, true}},
     4,
     PLAN_NOT_CUTTABLE},
    {"cuts that give no part", {5, 5, 1, false}, {{0, 0, 0, false}}, 1, PLAN_WRONG_CUT},
};

static void checker_refuses_broken_sheets(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(broken_sheets); i++) {
        const struct broken_sheet *row = &broken_sheets[i];
        const struct cut_stock stock = {11, 11, 7, CUT_UNLIMITED};
        const struct cut_job job = {1, 0, 1, &stock, 1, &row->item, 0};
        struct sheet_part parts[5];
        memcpy(parts, row->parts, sizeof parts);
        struct sheet_node node = {SHEET_OFFCUT, 0,          0,         11, 11, 0,
                                  SHEET_NONE,   SHEET_NONE, SHEET_NONE};
        struct sheet_sheet sheet = {0, 0, 1, 0, row->count};
        const struct sheet_plan plan = {1, &sheet, 1, &node, row->count, parts, 7, 7, 0};
        enum plan_fault fault = sheet_plan_check(&job, &plan).fault;
        if (fault != row->fault) {
            fail_msg("%s: %s", row->name, plan_fault_text(fault));
        }
    }
}

/* A sheet with sawn edges is used to its edges, another is not; of neither more than there are. */
static void checker_knows_sawn_sheets(void **state) {
    (void)state;
    const struct cut_stock stocks[] = {{7, 7, 9, CUT_UNLIMITED}, {5, 5, 0, 2}};
    const struct cut_stock fewer[] = {{7, 7, 9, CUT_UNLIMITED}, {5, 5, 0, 1}};
    const struct cut_item item = {5, 5, 3, false};
    const struct cut_job job = {1, 1, 2, stocks, 1, &item, 1};
    const struct cut_job trimmed = {1, 1, 2, stocks, 1, &item, 0};
    const struct cut_job all_sawn = {1, 1, 2, stocks, 1, &item, 2};
    const struct cut_job scarce = {1, 1, 2, fewer, 1, &item, 1};
    struct sheet_plan *plan = NULL;
    assert_int_equal(sheet_plan_make(&job, (struct offcut_rule){0}, EFFORT, &plan), CUT_DONE);
    assert_int_equal(plan->cost, 9); /* two parts fill the offcuts, the third a trimmed sheet */
    assert_int_equal(plan->bound, 9);
    assert_int_equal(sheet_plan_check(&job, plan).fault, PLAN_GOOD);
    assert_int_equal(sheet_plan_check(&trimmed, plan).fault, PLAN_OUTSIDE);
    assert_int_equal(sheet_plan_check(&all_sawn, plan).fault, PLAN_WRONG_CUT);
    assert_int_equal(sheet_plan_check(&scarce, plan).fault, PLAN_TOO_MANY);
    sheet_plan_free(plan);
}

/* A plan that the planner made, broken in one place each. */
static void checker_refuses_changed_sheets(void **state) {
    (void)state;
    const struct cut_stock stock = {20, 20, 7, CUT_UNLIMITED};
    const struct cut_item items[] = {{8, 5, 3, false}, {4, 4, 2, true}};
    const struct cut_job job = {1, 1, 1, &stock, 2, items, 0};
    struct sheet_plan *plan = NULL;
    assert_int_equal(sheet_plan_make(&job, (struct offcut_rule){0}, EFFORT, &plan), CUT_DONE);
    assert_int_equal(sheet_plan_check(&job, plan).fault, PLAN_GOOD);
    assert_int_equal(plan->sheet_count, 1);
    plan->cost++;
    assert_int_equal(sheet_plan_check(&job, plan).fault, PLAN_WRONG_COST);
    plan->cost--;
    plan->bound = plan->cost + 1;
    assert_int_equal(sheet_plan_check(&job, plan).fault, PLAN_WRONG_BOUND);
    plan->bound = plan->cost;
    const struct cut_item more[] = {{8, 5, 4, false}, {4, 4, 2, true}};
    const struct cut_job missing = {1, 1, 1, &stock, 2, more, 0};
    assert_int_equal(sheet_plan_check(&missing, plan).fault, PLAN_WRONG_COUNT);
    const struct cut_stock none = {20, 20, 7, 0};
    const struct cut_job scarce = {1, 1, 1, &none, 2, items, 0};
    assert_int_equal(sheet_plan_check(&scarce, plan).fault, PLAN_TOO_MANY);
    for (size_t n = 0; n < plan->node_count; n++) {
        struct sheet_node held = plan->nodes[n];
        plan->nodes[n].position++;
        plan->nodes[n].length++;
        assert_int_equal(sheet_plan_check(&job, plan).fault, PLAN_WRONG_CUT);
        plan->nodes[n] = held;
    }
    plan->sheets[0].node_count--;
    assert_int_equal(sheet_plan_check(&job, plan).fault, PLAN_WRONG_CUT);
    plan->sheets[0].node_count++;
    plan->parts[0].x++;
    assert_int_not_equal(sheet_plan_check(&job, plan).fault, PLAN_GOOD);
    plan->parts[0].x--;
    assert_int_equal(sheet_plan_check(&job, plan).fault, PLAN_GOOD);
    sheet_plan_free(plan);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(checker_refuses_broken_boards),
        cmocka_unit_test(checker_refuses_broken_sheets),
        cmocka_unit_test(checker_knows_sawn_sheets),
        cmocka_unit_test(checker_refuses_changed_sheets),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
