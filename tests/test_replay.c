/* SPDX-License-Identifier: MIT */
/* Whole jobs replayed: every sample with every option, and random jobs over the shipped rates (the
 * same seed every time).  Replaying gives the same figures; a changed given, replayed, gives what
 * an estimate from that value gives.  And of a tape that can't be replayed: equal figures once. */
#include "read/job/job_file.h"
#include "read/rates/rates_file.h"
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>

static const char *const samples[] = {
    DOORCOST_SOURCE "/samples/kitchen/kitchen.ini",
    DOORCOST_SOURCE "/samples/old-house/old-house.ini",
    DOORCOST_SOURCE "/samples/metric/tea-kitchen.ini",
};

struct inputs {
    struct problems problems;
    struct job job;
    struct rates rates;
};

/* false: the inputs have errors; they are shown where `wanted`. */
static bool inputs_read(struct inputs *in, const char *path, bool wanted) {
    problems_init(&in->problems);
    assert_true(job_read(&in->job, &in->rates, path, &in->problems));
    const bool good = problems_count(&in->problems, SEVERITY_ERROR) == 0;
    if (wanted && !good) {
        problems_print(&in->problems, stderr, false);
    }
    return good;
}

static void inputs_clear(struct inputs *in) {
    job_clear(&in->job);
    rates_clear(&in->rates);
    problems_clear(&in->problems);
}

static void replays_alike(struct inputs *in, int option) {
    struct estimate e;
    assert_int_equal(estimate_make(&e, &in->rates, &in->job, bench_request(option), &in->problems),
                     ESTIMATE_OK);
    assert_true(e.tape.count > 100);
    assert_int_equal(tape_replay(&e.tape), 0);
    assert_int_equal(tape_fault(&e.tape),
                     TAPE_OK); /* a choice that cannot be made changes nothing */
    estimate_clear(&e);
}

static void same_amount(const struct estimate *a, fig f, const struct estimate *b, fig g) {
    assert_int_equal(tape_amount(&a->tape, f), tape_amount(&b->tape, g));
    assert_int_equal(fig_none(f), fig_none(g));
}

/* The results do not hang on whether it is kept how they came about. */
static void same_without_trace(struct inputs *in, int option) {
    struct estimate_request request = bench_request(option);
    struct estimate traced;
    struct estimate plain;
    assert_int_equal(estimate_make(&traced, &in->rates, &in->job, request, &in->problems),
                     ESTIMATE_OK);
    request.traced = false;
    assert_int_equal(estimate_make(&plain, &in->rates, &in->job, request, &in->problems),
                     ESTIMATE_OK);
    same_amount(&traced, traced.sale.total, &plain, plain.sale.total);
    same_amount(&traced, traced.costs.job.full, &plain, plain.costs.job.full);
    same_amount(&traced, traced.labor.hours, &plain, plain.labor.hours);
    same_amount(&traced, traced.quantities.weight, &plain, plain.quantities.weight);
    same_amount(&traced, traced.finish.products[0].need, &plain, plain.finish.products[0].need);
    for (size_t r = 0; r < in->job.row_count; r++) {
        same_amount(&traced, traced.costs.doors[r].amount, &plain, plain.costs.doors[r].amount);
    }
    assert_true(plain.tape.count < traced.tape.count);
    estimate_clear(&traced);
    estimate_clear(&plain);
}

static void samples_replay(void **state) {
    (void)state;
    for (size_t s = 0; s < sizeof samples / sizeof *samples; s++) {
        struct inputs in;
        assert_true(inputs_read(&in, samples[s], true));
        for (int option = -1; option < (int)in.job.option_count; option++) {
            replays_alike(&in, option);
            same_without_trace(&in, option);
        }
        inputs_clear(&in);
    }
}

/* --- random jobs --- */

static uint64_t draw(uint64_t *state) { /* splitmix64 */
    uint64_t z = (*state += UINT64_C(0x9E3779B97F4A7C15));
    z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
    return z ^ (z >> 31);
}

static unsigned below(uint64_t *state, unsigned most) {
    return (unsigned)(draw(state) % most);
}

#define PICK(seed, list) (list)[below(seed, sizeof(list) / sizeof *(list))]

static void write_doors(uint64_t *seed) {
    static const char *const ways[] = {"", "", "lift up", "bi-fold", "pie cut"};
    static const char *const uses[] = {"door", "door", "drawer front", "false front", "end panel"};
    static const char *const styles[] = {"shaker", "wide-shaker", "shaker-glass", "slab"};
    static const char *const frames[] = {"", "poplar", "hard-maple", "cherry"};
    static const char *const finishes[] = {"", "painted", "clear", "none"};
    FILE *const doors = fopen("random-doors.csv", "w");
    assert_non_null(doors);
    fputs("id,room,use,count,width,second width,height,leaves,style,mid rails,frame,finish,opens\n",
          doors);
    const unsigned rows = 1 + below(seed, 12);
    for (unsigned r = 0; r < rows; r++) {
        const char *const use = PICK(seed, uses);
        const bool door = use[0] == 'd' && use[1] == 'o';
        const char *const opens = door ? PICK(seed, ways) : "";
        const bool cut = opens[0] == 'p';
        const bool folds = cut || opens[0] == 'b';
        const unsigned leaves = folds ? 2 : door ? 1 + below(seed, 2) : 1;
        fprintf(doors, "R%02u,room %u,%s,%u,%u %u/16,%s,%u %u/64,%u,%s,%u,%s,%s,%s\n", r,
                below(seed, 3), use, 1 + below(seed, 30), 12 * leaves + below(seed, 20),
                below(seed, 16), cut ? "13 1/2" : "", 14 + below(seed, 50), below(seed, 64), leaves,
                PICK(seed, styles), below(seed, 3), PICK(seed, frames), PICK(seed, finishes),
                opens);
    }
    assert_int_equal(fclose(doors), 0);
}

static void write_job(uint64_t *seed) {
    static const char *const taxed[] = {"selling price", "materials at selling price",
                                        "materials at cost", "none"};
    FILE *const job = fopen("random-job.ini", "w");
    assert_non_null(job);
    fprintf(job,
            "[job]\ntitle = random\ndate = 2026-01-31\nunit = in\nvalid = 30 days\n"
            "rates = " DOORCOST_SOURCE "/rates/small-shop.ini\ndoors = random-doors.csv\n"
            "[make]\nstyle = shaker\nframe = poplar\npanel = mdf-panel\nslab = mdf-slab\n"
            "glass = clear\nfinish = painted\ncolor = red\nhinge = cup-hinge\npull = knob\n"
            "hardware = 2 cup-hinge, 1 knob per opening\n"
            "measure = opening\noverlay = 1/2\ngap = 1/8\ncorner = 7/8\nfold hinge = "
            "knob\n[sale]\ntax = %u.%02u %%\n"
            "tax on = %s\ndiscount = %u %%\ndelivery = %u.50\ndeposit = %u %%\n",
            below(seed, 25), below(seed, 100), PICK(seed, taxed), below(seed, 15), below(seed, 300),
            1 + below(seed, 60));
    assert_int_equal(fclose(job), 0);
}

static void random_jobs_replay(void **state) {
    (void)state;
    uint64_t seed = 31;
    int estimated = 0;
    for (int round = 0; round < 260; round++) {
        struct inputs in;
        write_doors(&seed);
        write_job(&seed);
        if (inputs_read(&in, "random-job.ini", round == 0)) {
            replays_alike(&in, -1);
            estimated++;
        }
        inputs_clear(&in);
    }
    print_message("%d random jobs replayed\n", estimated);
    assert_true(estimated >= 200);
}

/* --- a changed given --- */

/* Puts `amount` into every given that stands at the place of value. */
static uint32_t set_all(struct tape *tape, const struct value *value, int64_t amount) {
    uint32_t set = 0;
    for (uint32_t id = 1; id < tape->count; id++) {
        const fig f = {id};
        const struct place place = tape_origin(tape, f).place;
        if (tape_op(tape, f) == OP_GIVEN && place.line == value->place.line &&
            place.file == value->place.file && place.column == value->place.column &&
            tape_amount(tape, f) == value->amount) {
            tape_set(tape, f, amount);
            set++;
        }
    }
    return set;
}

static void same_figures(const struct estimate *a, const struct estimate *b) {
    assert_int_equal(a->tape.count, b->tape.count);
    for (uint32_t id = 1; id < a->tape.count; id++) {
        const fig f = {id};
        if (tape_amount(&a->tape, f) != tape_amount(&b->tape, f)) {
            print_error("figure %u '%s' of '%s' differs\n", (unsigned)id, tape_label(&a->tape, f),
                        tape_subject_name(&a->tape, f));
        }
        assert_int_equal(tape_amount(&a->tape, f), tape_amount(&b->tape, f));
    }
}

/* The value is changed on the tape of one estimate, and in the inputs of another. */
static void change(struct inputs *in, struct value *value, int64_t amount) {
    struct estimate replayed;
    struct estimate anew;
    assert_true(value->set);
    assert_int_equal(
        estimate_make(&replayed, &in->rates, &in->job, bench_request(-1), &in->problems),
        ESTIMATE_OK);
    assert_true(set_all(&replayed.tape, value, amount) > 0);
    assert_true(tape_replay(&replayed.tape) > 0);
    assert_int_equal(tape_fault(&replayed.tape), TAPE_OK);
    const int64_t before = value->amount;
    value->amount = amount;
    assert_int_equal(estimate_make(&anew, &in->rates, &in->job, bench_request(-1), &in->problems),
                     ESTIMATE_OK);
    same_figures(&replayed, &anew);
    value->amount = before;
    estimate_clear(&replayed);
    estimate_clear(&anew);
}

static struct lumber *used_lumber(struct inputs *in) {
    struct estimate e;
    assert_int_equal(estimate_make(&e, &in->rates, &in->job, bench_request(-1), &in->problems),
                     ESTIMATE_OK);
    struct lumber *const lumber = &in->rates.lumber[e.lumber.buys[0].material];
    estimate_clear(&e);
    return lumber;
}

static void a_changed_given_replays_as_anew(void **state) {
    (void)state;
    for (size_t s = 0; s < sizeof samples / sizeof *samples; s++) {
        struct inputs in;
        assert_true(inputs_read(&in, samples[s], true));
        struct shop *const shop = &in.rates.shop;
        struct lumber *const lumber = used_lumber(&in);
        change(&in, &shop->labor_rate, shop->labor_rate.amount * 3 / 2);
        change(&in, &shop->profit, shop->profit.amount + 7);
        change(&in, &shop->contingency, shop->contingency.amount + 1);
        change(&in, &lumber->waste, lumber->waste.amount + 20);
        change(&in, &lumber->price, lumber->price.amount * 2);
        change(&in, &in.job.sale.tax, in.job.sale.tax.amount * 2);
        change(&in, &in.job.sale.delivery.value, in.job.sale.delivery.value.amount * 3);
        for (size_t r = 0; r < in.job.row_count; r++) {
            change(&in, &in.job.rows[r].count, in.job.rows[r].count.amount + 2);
        }
        inputs_clear(&in);
    }
}

/* --- a tape that is not traced --- */

/* For that a long list is checked on one. */
static void an_untraced_tape_keeps_equal_givens_once(void **state) {
    (void)state;
    struct tape tape;
    tape_init(&tape, false);
    const fig a = tape_given(&tape, "width", UNIT_IN, 6, 15500000, (struct place){.line = 7});
    const fig b = tape_given(&tape, "height", UNIT_IN, 6, 15500000, (struct place){.line = 9});
    const fig c = tape_given(&tape, "height", UNIT_MM, 6, 15500000, (struct place){.line = 9});
    const fig d = tape_given(&tape, "height", UNIT_IN, 5, 15500000, (struct place){.line = 9});
    assert_int_equal(a.id, b.id);
    assert_int_not_equal(a.id, c.id);
    assert_int_not_equal(a.id, d.id);
    tape_clear(&tape);
}

/* Likewise; papers tell figures of the job apart by which they are (as hours from hours at the
 * bench), so those stay two. */
static void an_untraced_tape_keeps_equal_figures_of_doors_once(void **state) {
    (void)state;
    struct tape tape;
    tape_init(&tape, false);
    const fig three = tape_given(&tape, "three", UNIT_COUNT, 0, 3, (struct place){.line = 1});
    const fig four = tape_given(&tape, "four", UNIT_COUNT, 0, 4, (struct place){.line = 1});
    fig of[2][3];
    for (size_t i = 0; i < 2; i++) {
        if (i > 0) {
            tape_about(&tape, "a door");
        }
        of[i][0] = fig_ratio(&tape, "a", UNIT_COUNT, (figs){{three, four}}, (figs){{{0}}});
        of[i][1] = fig_ratio(&tape, "b", UNIT_COUNT, (figs){{four, three}}, (figs){{{0}}});
        of[i][2] = fig_larger(&tape, "c", of[i][0], of[i][1]);
        assert_int_equal(tape_amount(&tape, of[i][2]), 12);
    }
    assert_false(fig_same(of[0][0], of[0][1]) || fig_same(of[0][1], of[0][2]));
    assert_true(fig_same(of[1][0], of[1][1]) && fig_same(of[1][1], of[1][2]));
    assert_false(fig_same(of[0][0], of[1][0]));
    tape_clear(&tape);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(samples_replay),
        cmocka_unit_test(random_jobs_replay),
        cmocka_unit_test(a_changed_given_replays_as_anew),
        cmocka_unit_test(an_untraced_tape_keeps_equal_givens_once),
        cmocka_unit_test(an_untraced_tape_keeps_equal_figures_of_doors_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
