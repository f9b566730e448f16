/* SPDX-License-Identifier: MIT */
/* A part of a tape made again comes to what the whole tape made again comes to: of every sample,
 * with random givens of its files changed, for its costs. Seeds are fixed. */
#include "figure/replay.h"
#include "stock/board_chooser.h"
#include "stock/sheets_by_plan.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>

#include <cmocka.h>

static const char *const samples[] = {
    "samples/kitchen/kitchen.ini", "samples/old-house/old-house.ini",
    "samples/metric/tea-kitchen.ini", "samples/station/station.ini"};
static const struct chooser *const none[] = {NULL};
static const struct chooser *const plans[] = {&boards_chooser, &sheets_chooser, NULL};

static unsigned below(uint32_t *state, unsigned most) { /* xorshift32, Marsaglia 2003 */
    *state ^= *state << 13;
    *state ^= *state >> 17;
    *state ^= *state << 5;
    return *state % most;
}

/* Numbers that no geometry is made of: money, percents, minutes. */
static bool may_move(const struct tape *tape, fig f) {
    switch (tape_unit(tape, f)) {
    case UNIT_MONEY:
    case UNIT_MONEY_PER_HOUR:
    case UNIT_MONEY_PER_BF:
    case UNIT_MONEY_PER_M3:
    case UNIT_PERCENT:
    case UNIT_MIN:
    case UNIT_MIL:
    case UNIT_UM:
        return tape_op(tape, f) == OP_GIVEN && tape_origin(tape, f).source == NULL &&
               tape_amount(tape, f) > 10;
    default:
        return false;
    }
}

#define MOST_MOVED 40

static size_t pick(const struct tape *tape, uint32_t *state, fig *moved) {
    size_t count = 0;
    for (uint32_t i = 1; i < tape->count && count < MOST_MOVED; i++) {
        if (may_move(tape, (fig){i}) && below(state, 4) == 0) {
            moved[count++] = (fig){i};
        }
    }
    return count;
}

static void part_is_as_whole(const struct bench *b, uint32_t seed) {
    const struct estimate *const e = &b->estimate;
    const fig wanted[] = {e->costs.job.direct, e->costs.job.full, e->sale.total, {0}};
    fig moved[MOST_MOVED];
    struct replay part;
    struct replay whole;
    uint32_t state = seed;
    const size_t count = pick(&e->tape, &state, moved);
    assert_true(count > 3);
    struct replay_request request = {moved, wanted, count, 4, none};
    assert_true(replay_make(&part, &e->tape, request));
    request.wanted = moved;
    assert_true(replay_make(&whole, &e->tape, request)); /* for values of its own */
    assert_true(part.count > 0 && part.count < e->tape.count && !part.held);
    for (size_t round = 0; round < 20; round++) {
        for (size_t i = 0; i < count; i++) {
            const int64_t amount = tape_amount(&e->tape, moved[i]);
            const int64_t value = amount * (80 + below(&state, 50)) / 100;
            replay_set(&part, moved[i], value, tape_decimals(&e->tape, moved[i]));
            tape_set(&whole.tape, moved[i], value);
        }
        (void)tape_replay(&whole.tape);
        assert_int_equal(tape_fault(&whole.tape), TAPE_OK);
        assert_int_equal(replay_run(&part), TAPE_OK);
        for (size_t w = 0; w < 4; w++) {
            assert_int_equal(tape_amount(&part.tape, wanted[w]),
                             tape_amount(&whole.tape, wanted[w]));
        }
    }
    /* back at the old values all is as it was, and the tape itself never moved */
    for (size_t i = 0; i < count; i++) {
        replay_set(&part, moved[i], tape_amount(&e->tape, moved[i]),
                   tape_decimals(&e->tape, moved[i]));
    }
    assert_int_equal(replay_run(&part), TAPE_OK);
    for (uint32_t i = 1; i < e->tape.count; i++) {
        assert_int_equal(tape_amount(&part.tape, (fig){i}), tape_amount(&e->tape, (fig){i}));
    }
    replay_clear(&part);
    replay_clear(&whole);
}

static void samples_in_part(void **state) {
    (void)state;
    for (size_t s = 0; s < sizeof samples / sizeof *samples; s++) {
        struct bench b;
        bench_open_job(&b, samples[s]);
        bench_sound(&b);
        for (uint32_t seed = 1; seed <= 5; seed++) {
            part_is_as_whole(&b, seed);
        }
        assert_int_equal(bench_close(&b), 0);
    }
}

/* The price of lumber that is priced by plan moves the plan, which is held on demand. */
static void plans_are_held(void **state) {
    (void)state;
    struct bench b;
    static const char *const edits[] = {"shop|price lumber by = plan",
                                        "lumber poplar|board widths = 6 in\nboard lengths = 8 ft\n",
                                        NULL};
    bench_open(&b, "held", BENCH_INCH, edits, "D1,18,30\n");
    bench_sound(&b);
    const struct estimate *const e = &b.estimate;
    fig price = {0};
    for (uint32_t i = 1; i < e->tape.count; i++) {
        price = tape_unit(&e->tape, (fig){i}) == UNIT_MONEY_PER_BF &&
                        tape_op(&e->tape, (fig){i}) == OP_GIVEN
                    ? (fig){i}
                    : price;
    }
    assert_false(fig_none(price));
    struct replay replay;
    struct replay_request request = {&price, &e->costs.job.direct, 1, 1, none};
    assert_true(replay_make(&replay, &e->tape, request));
    assert_false(replay.held);
    const size_t all = replay.count;
    replay_clear(&replay);
    request.held = plans;
    assert_true(replay_make(&replay, &e->tape, request));
    assert_true(replay.held);
    assert_true(replay.count > 0 && replay.count < all);
    replay_clear(&replay);
    assert_int_equal(bench_close(&b), 0);
}

/* A fault of a draw is told, and gone with the next. */
static void faults(void **state) {
    (void)state;
    struct tape tape;
    struct replay replay;
    tape_init(&tape, true);
    const struct place place = {.line = 1, .file = 1, .column = 1};
    const fig over = tape_given(&tape, "over", UNIT_MONEY, 2, 500, place);
    const fig under = tape_given(&tape, "under", UNIT_NUMBER, 0, 5, place);
    const fig aside = tape_given(&tape, "aside", UNIT_NUMBER, 0, 7, place);
    const fig ratio = fig_ratio(&tape, "ratio", UNIT_MONEY, (figs){{over}}, (figs){{under}});
    (void)fig_plus(&tape, "aside", aside, under);
    assert_true(replay_make(&replay, &tape, (struct replay_request){&under, &ratio, 1, 1, none}));
    assert_int_equal(replay.count, 1);
    replay_set(&replay, under, 0, 0);
    assert_int_equal(replay_run(&replay), TAPE_DIVISION);
    replay_set(&replay, under, 25, 1);
    assert_int_equal(replay_run(&replay), TAPE_OK);
    assert_int_equal(tape_amount(&replay.tape, ratio), 200);
    assert_int_equal(tape_amount(&tape, ratio), 100);
    replay_clear(&replay);
    tape_clear(&tape);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(samples_in_part),
        cmocka_unit_test(plans_are_held),
        cmocka_unit_test(faults),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
