/* SPDX-License-Identifier: MIT */
/* The cutting planners: small cases with a proof by hand, random jobs with fixed seeds, and every
 * allocation failing in turn. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

#include "cut/board/board_plan.h"
#include "cut/common/cut_random.h"
#include "strip_check.h"

#define EFFORT       (CUT_EFFORT_SECOND / 50)
#define COUNT(array) (sizeof(array) / sizeof(array)[0])

/* NOLINTBEGIN(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp): the linker's names. */
/* Allocations: the linker sends the planners' calls here (-Wl,--wrap). */
void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *old, size_t size);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *old, size_t size);

static long allocations_left = -1; /* -1: none fails */

static bool allocation_fails(void) {
    if (allocations_left > 0) {
        allocations_left--;
    }
    return allocations_left == 0;
}

void *__wrap_malloc(size_t size) {
    return allocation_fails() ? NULL : __real_malloc(size);
}

void *__wrap_calloc(size_t count, size_t size) {
    return allocation_fails() ? NULL : __real_calloc(count, size);
}

void *__wrap_realloc(void *old, size_t size) {
    return allocation_fails() ? NULL : __real_realloc(old, size);
}

/* NOLINTEND(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp) */

static struct strip_plan *strips(const struct cut_job *job, int64_t effort) {
    struct strip_plan *plan = NULL;
    assert_int_equal(strip_plan_make(job, effort, &plan), CUT_DONE);
    assert_string_equal(plan_fault_text(strip_check(job, plan)), plan_fault_text(PLAN_GOOD));
    assert_true(plan->bound <= plan->cost);
    return plan;
}

static struct sheet_plan *sheets(const struct cut_job *job, int64_t effort) {
    struct sheet_plan *plan = NULL;
    assert_int_equal(sheet_plan_make(job, (struct offcut_rule){0}, effort, &plan), CUT_DONE);
    assert_string_equal(plan_fault_text(sheet_plan_check(job, plan).fault),
                        plan_fault_text(PLAN_GOOD));
    assert_true(plan->bound <= plan->cost);
    return plan;
}

/* A job of one kind of stock and one or two kinds of item, and its least cost. */
struct small_case {
    const char *name;
    int64_t kerf, trim;
    struct cut_stock stocks[2];
    struct cut_item items[3];
    int64_t least;
};

static struct cut_job job_of(const struct small_case *row) {
    struct cut_job job = {
        .kerf = row->kerf, .trim = row->trim, .stocks = row->stocks, .items = row->items};
    while (job.stock_count < 2 && row->stocks[job.stock_count].length > 0) {
        job.stock_count++;
    }
    while (job.item_count < 3 && row->items[job.item_count].length > 0) {
        job.item_count++;
    }
    return job;
}

#define ANY CUT_UNLIMITED

static const struct small_case strip_cases[] = {
    {"three to a board, no kerf", 0, 0, {{9, 1, 1, ANY}}, {{3, 1, 6, false}}, 2},
    {"two kerfs just fit", 1, 0, {{11, 1, 1, ANY}}, {{3, 1, 3, false}}, 1},
    {"two kerfs do not fit", 1, 0, {{10, 1, 1, ANY}}, {{3, 1, 3, false}}, 2},
    {"trim at both ends just fits", 1, 2, {{15, 1, 1, ANY}}, {{3, 1, 3, false}}, 1},
    {"trim at both ends does not fit", 1, 2, {{14, 1, 1, ANY}}, {{3, 1, 3, false}}, 2},
    {"pairs of 6 + 4", 0, 0, {{10, 1, 1, ANY}}, {{6, 1, 4, false}, {4, 1, 4, false}}, 4},
    {"no two of six fit", 0, 0, {{10, 1, 1, ANY}}, {{6, 1, 5, false}}, 5},
    {"two short boards beat a long one",
     0,
     0,
     {{10, 1, 10, ANY}, {20, 1, 25, ANY}},
     {{10, 1, 2, false}},
     20},
    {"a long board beats two short ones",
     0,
     0,
     {{10, 1, 10, ANY}, {20, 1, 18, ANY}},
     {{10, 1, 2, false}},
     18},
    {"one board at hand for nothing",
     0,
     0,
     {{10, 1, 0, 1}, {10, 1, 7, ANY}},
     {{5, 1, 4, false}},
     7},
    {"sizes in nanometres",
     INT64_C(3175000),
     INT64_C(25400000),
     {{INT64_C(2438400000), 1, 1250, ANY}},
     {{INT64_C(790575000), 1, 6, false}},
     2500},
    {"sizes without a common divisor",
     0,
     0,
     {{INT64_C(1000000007), 1, 1, ANY}},
     {{INT64_C(500000003), 1, 2, false}, {INT64_C(333333331), 1, 3, false}},
     2},
};

static void boards_are_least(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(strip_cases); i++) {
        struct cut_job job = job_of(&strip_cases[i]);
        struct strip_plan *plan = strips(&job, EFFORT);
        if (plan->cost != strip_cases[i].least || plan->bound != plan->cost) {
            fail_msg("%s: cost %lld, bound %lld", strip_cases[i].name, (long long)plan->cost,
                     (long long)plan->bound);
        }
        strip_plan_free(plan);
    }
}

static const struct small_case sheet_cases[] = {
    {"four quarters", 0, 0, {{10, 10, 1, ANY}}, {{5, 5, 4, false}}, 1},
    {"a kerf each way just fits", 1, 0, {{11, 11, 1, ANY}}, {{5, 5, 4, false}}, 1},
    {"a kerf each way does not fit", 1, 0, {{10, 11, 1, ANY}}, {{5, 5, 4, false}}, 2},
    {"trim at four edges just fits", 1, 2, {{15, 15, 1, ANY}}, {{5, 5, 4, false}}, 1},
    {"the whole sheet", 3, 2, {{14, 9, 1, ANY}}, {{10, 5, 3, false}}, 3},
    {"turning saves a sheet", 0, 0, {{6, 4, 1, ANY}}, {{4, 4, 1, false}, {4, 2, 1, true}}, 1},
    {"grain costs a sheet", 0, 0, {{6, 4, 1, ANY}}, {{4, 4, 1, false}, {4, 2, 1, false}}, 2},
    {"a half sheet is enough", 0, 0, {{8, 4, 58, ANY}, {4, 4, 33, ANY}}, {{4, 2, 2, false}}, 33},
    {"a sheet beats two halves", 0, 0, {{8, 4, 58, ANY}, {4, 4, 33, ANY}}, {{4, 4, 2, false}}, 58},
    {"one offcut at hand", 0, 0, {{8, 4, 58, ANY}, {4, 4, 0, 1}}, {{4, 4, 2, false}}, 58},
    {"no two of the same fit", 0, 0, {{10, 10, 1, ANY}}, {{6, 6, 4, true}}, 4},
    {"sizes in nanometres",
     INT64_C(3175000),
     INT64_C(6350000),
     {{INT64_C(2438400000), INT64_C(1219200000), 5800, ANY}},
     {{INT64_C(600000000), INT64_C(300000000), 14, false}},
     11600},
};

static void sheets_are_least(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(sheet_cases); i++) {
        struct cut_job job = job_of(&sheet_cases[i]);
        struct sheet_plan *plan = sheets(&job, EFFORT);
        if (plan->cost != sheet_cases[i].least) {
            fail_msg("%s: cost %lld, bound %lld", sheet_cases[i].name, (long long)plan->cost,
                     (long long)plan->bound);
        }
        sheet_plan_free(plan);
    }
}

struct refusal {
    const char *name;
    struct small_case job;
    enum cut_status strips, sheets;
};

static const struct refusal refusals[] = {
    {"too long", {"", 0, 0, {{10, 10, 1, ANY}}, {{11, 1, 1, true}}, 0}, CUT_NO_ROOM, CUT_NO_ROOM},
    {"too long with trim",
     {"", 0, 1, {{10, 10, 1, ANY}}, {{9, 1, 1, false}}, 0},
     CUT_NO_ROOM,
     CUT_NO_ROOM},
    {"too few boards", {"", 0, 0, {{10, 10, 1, 1}}, {{10, 10, 2, false}}, 0}, CUT_SHORT, CUT_SHORT},
    {"negative kerf",
     {"", -1, 0, {{10, 10, 1, ANY}}, {{1, 1, 1, false}}, 0},
     CUT_BAD_INPUT,
     CUT_BAD_INPUT},
    {"price out of range",
     {"", 0, 0, {{10, 10, CUT_PRICE_MAX + 1, ANY}}, {{1, 1, 1, false}}, 0},
     CUT_BAD_INPUT,
     CUT_BAD_INPUT},
    {"too many pieces",
     {"", 0, 0, {{10, 10, 1, ANY}}, {{1, 1, CUT_PIECES_MAX + 1, false}}, 0},
     CUT_BAD_INPUT,
     CUT_BAD_INPUT},
    {"no width", {"", 0, 0, {{10, 10, 1, ANY}}, {{1, 0, 1, false}}, 0}, CUT_DONE, CUT_BAD_INPUT},
};

static void impossible_jobs_are_refused(void **state) {
    (void)state;
    for (size_t i = 0; i < COUNT(refusals); i++) {
        struct cut_job job = job_of(&refusals[i].job);
        struct strip_plan *boards = NULL;
        struct sheet_plan *panels = NULL;
        enum cut_status by_length = strip_plan_make(&job, EFFORT, &boards);
        enum cut_status by_area = sheet_plan_make(&job, (struct offcut_rule){0}, EFFORT, &panels);
        if (by_length != refusals[i].strips || by_area != refusals[i].sheets ||
            (boards != NULL) != (by_length == CUT_DONE) || (panels != NULL)) {
            fail_msg("%s: %d, %d", refusals[i].name, (int)by_length, (int)by_area);
        }
        strip_plan_free(boards);
        sheet_plan_free(panels);
    }
}

static void nothing_wanted_is_an_empty_plan(void **state) {
    (void)state;
    const struct cut_job job = {0};
    struct strip_plan *boards = strips(&job, EFFORT);
    struct sheet_plan *panels = sheets(&job, EFFORT);
    assert_int_equal(boards->board_count, 0);
    assert_int_equal(panels->sheet_count, 0);
    assert_int_equal(boards->cost + panels->cost, 0);
    strip_plan_free(boards);
    sheet_plan_free(panels);
}

/* A job by chance; every item fits the first stock. */
struct random_job {
    struct cut_job job;
    struct cut_stock stocks[3];
    struct cut_item items[12];
};

static void make_random(struct random_job *made, uint64_t seed) {
    struct cut_random random = {seed};
    int64_t scale = cut_random_below(&random, 2) == 0 ? 1 : 396875;
    made->job = (struct cut_job){.kerf = scale * (int64_t)cut_random_below(&random, 4),
                                 .trim = scale * (int64_t)cut_random_below(&random, 10),
                                 .stock_count = 1 + cut_random_below(&random, 3),
                                 .stocks = made->stocks,
                                 .item_count = 1 + cut_random_below(&random, 12),
                                 .items = made->items};
    for (size_t i = 0; i < made->job.stock_count; i++) {
        int64_t length = 100 + (i > 0 ? (int64_t)cut_random_below(&random, 100) : 0);
        int64_t width = 80 + (i > 0 ? (int64_t)cut_random_below(&random, 80) : 0);
        bool limited = i > 0 && cut_random_below(&random, 2) == 0;
        made->stocks[i] = (struct cut_stock){scale * length, scale * width,
                                             (int64_t)cut_random_below(&random, 5000),
                                             limited ? 2 : CUT_UNLIMITED};
    }
    for (size_t i = 0; i < made->job.item_count; i++) {
        made->items[i] = (struct cut_item){scale * (1 + (int64_t)cut_random_below(&random, 80)),
                                           scale * (1 + (int64_t)cut_random_below(&random, 60)),
                                           (int64_t)cut_random_below(&random, 6),
                                           cut_random_below(&random, 2) == 0};
    }
}

static void same_strips(const struct strip_plan *a, const struct strip_plan *b) {
    assert_int_equal(a->board_count, b->board_count);
    assert_int_equal(a->piece_count, b->piece_count);
    assert_int_equal(a->spent, b->spent);
    assert_int_equal(a->bound, b->bound);
    assert_memory_equal(a->pieces, b->pieces, a->piece_count * sizeof *a->pieces);
    for (size_t i = 0; i < a->board_count; i++) {
        assert_int_equal(a->boards[i].stock, b->boards[i].stock);
        assert_int_equal(a->boards[i].times, b->boards[i].times);
    }
}

static void same_sheets(const struct sheet_plan *a, const struct sheet_plan *b) {
    assert_int_equal(a->sheet_count, b->sheet_count);
    assert_int_equal(a->node_count, b->node_count);
    assert_int_equal(a->spent, b->spent);
    assert_int_equal(a->bound, b->bound);
    for (size_t i = 0; i < a->part_count; i++) {
        assert_int_equal(a->parts[i].item, b->parts[i].item);
        assert_int_equal(a->parts[i].x, b->parts[i].x);
        assert_int_equal(a->parts[i].y, b->parts[i].y);
        assert_int_equal(a->parts[i].turned, b->parts[i].turned);
    }
}

/* Plans of random jobs are good, and the same when asked again. */
static void random_jobs(void **state) {
    (void)state;
    for (uint64_t seed = 1; seed <= 60; seed++) {
        struct random_job made;
        make_random(&made, seed);
        struct strip_plan *boards = strips(&made.job, EFFORT / 10);
        struct strip_plan *boards_again = strips(&made.job, EFFORT / 10);
        same_strips(boards, boards_again);
        struct sheet_plan *panels = sheets(&made.job, EFFORT / 10);
        struct sheet_plan *panels_again = sheets(&made.job, EFFORT / 10);
        same_sheets(panels, panels_again);
        strip_plan_free(boards);
        strip_plan_free(boards_again);
        sheet_plan_free(panels);
        sheet_plan_free(panels_again);
    }
}

/* More effort never gives a dearer plan or a lower bound on these. */
static void no_effort_still_plans(void **state) {
    (void)state;
    for (uint64_t seed = 100; seed < 120; seed++) {
        struct random_job made;
        make_random(&made, seed);
        struct strip_plan *quick = strips(&made.job, 0);
        struct strip_plan *slow = strips(&made.job, EFFORT);
        assert_true(slow->cost <= quick->cost && quick->bound <= slow->cost);
        strip_plan_free(quick);
        strip_plan_free(slow);
        struct sheet_plan *rough = sheets(&made.job, 0);
        struct sheet_plan *fine = sheets(&made.job, EFFORT);
        assert_true(fine->cost <= rough->cost && rough->bound <= fine->cost);
        sheet_plan_free(rough);
        sheet_plan_free(fine);
    }
}

/* Lets the first, second, ... allocation fail until none does. Leaks are for the sanitizer. */
static void failing_allocations(void **state) {
    (void)state;
    struct random_job made;
    make_random(&made, 3);
    enum cut_status boards = CUT_NO_MEMORY;
    enum cut_status panels = CUT_NO_MEMORY;
    for (long at = 1; boards != CUT_DONE || panels != CUT_DONE; at = at < 400 ? at + 1 : at * 2) {
        struct strip_plan *strip = NULL;
        struct sheet_plan *sheet = NULL;
        allocations_left = at;
        boards = strip_plan_make(&made.job, EFFORT / 100, &strip);
        allocations_left = at;
        panels = sheet_plan_make(&made.job, (struct offcut_rule){0}, EFFORT / 100, &sheet);
        allocations_left = -1;
        assert_true(boards == CUT_DONE || (boards == CUT_NO_MEMORY && strip == NULL));
        assert_true(panels == CUT_DONE || (panels == CUT_NO_MEMORY && sheet == NULL));
        strip_plan_free(strip);
        sheet_plan_free(sheet);
    }
}

/* The same for whole boards: four widths of parts, three sizes of boards. */
static void failing_allocations_of_boards(void **state) {
    (void)state;
    const struct cut_stock stocks[] = {{960, 50, 48, -1}, {960, 80, 77, -1}, {1200, 80, 96, -1}};
    struct cut_item items[12];
    for (size_t i = 0; i < COUNT(items); i++) {
        const int64_t n = (int64_t)i;
        items[i] = (struct cut_item){150 + 37 * n, 16 + 7 * (n % 4), 1 + n % 3, false};
    }
    const struct board_job job = {.kerf = 1,
                                  .end_trim = 10,
                                  .stocks = stocks,
                                  .stock_count = COUNT(stocks),
                                  .items = items,
                                  .item_count = COUNT(items)};
    enum cut_status status = CUT_NO_MEMORY;
    long at = 1;
    for (; status != CUT_DONE; at = at < 400 ? at + 1 : at * 9 / 8) {
        struct board_plan *plan = NULL;
        allocations_left = at;
        status = board_plan_make(&job, EFFORT / 20, &plan);
        allocations_left = -1;
        assert_true(status == CUT_DONE ? board_plan_check(&job, plan) == NULL
                                       : status == CUT_NO_MEMORY && plan == NULL);
        board_plan_free(plan);
    }
    assert_true(at > 400);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(boards_are_least),
        cmocka_unit_test(sheets_are_least),
        cmocka_unit_test(impossible_jobs_are_refused),
        cmocka_unit_test(nothing_wanted_is_an_empty_plan),
        cmocka_unit_test(random_jobs),
        cmocka_unit_test(no_effort_still_plans),
        cmocka_unit_test(failing_allocations),
        cmocka_unit_test(failing_allocations_of_boards),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
