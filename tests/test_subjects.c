/* SPDX-License-Identifier: MIT */
/* What each figure is about: its door, its material, its product, its operation, or the job. Papers
 * and explanations go by it. */
#include "support.h"

#include <setjmp.h>
#include <stdarg.h>
#include <string.h>

#include <cmocka.h>

#define JOB_ITSELF ""

/* Fails where one of the figures is about something else; those that are none are passed over. */
static void about(struct bench *bench, const char *what, const char *subject, const fig *figures,
                  size_t count) {
    const struct tape *const tape = &bench->estimate.tape;
    for (size_t i = 0; i < count; i++) {
        const char *const is = tape_subject_name(tape, figures[i]);
        if (!fig_none(figures[i]) && strcmp(is, subject) != 0) {
            bench_wrong(bench, "%s, '%s': about '%s', expected '%s'", what,
                        tape_label(tape, figures[i]), is, subject);
        }
    }
}

#define ABOUT(bench, what, subject, ...)                                                           \
    about(bench, what, subject, (const fig[]){__VA_ARGS__},                                        \
          sizeof((const fig[]){__VA_ARGS__}) / sizeof(fig))

static void rows_are_about_themselves(struct bench *bench) {
    const struct estimate *const e = &bench->estimate;
    for (size_t r = 0; r < e->quantities.count; r++) {
        const struct leaf_figures *const leaf = &e->quantities.leaves[r];
        const struct door_price *const price = &e->costs.doors[r];
        const char *const id = bench->job.rows[r].id.s;
        ABOUT(bench, "leaf", id, leaf->pieces, leaf->face, leaf->perimeter, leaf->edges,
              leaf->sprayed, leaf->weight);
        for (size_t p = 0; p < leaf->door->part_count; p++) {
            const struct part_figures *const part = &leaf->parts[p];
            ABOUT(bench, "part", id, part->pieces, part->net, part->rough, part->area, part->weight,
                  part->movement.swell);
        }
        ABOUT(bench, "price", id, price->cost.direct, price->cost.full, price->priced, price->unit,
              price->amount);
        for (size_t i = 0; i < e->labor.operation_count; i++) {
            const struct operation_share *const share = &e->labor.operations[i].shares[r];
            ABOUT(bench, "share", id, share->run, share->person, share->cost);
        }
    }
}

static void materials_are_about_themselves(struct bench *bench) {
    const struct estimate *const e = &bench->estimate;
    const struct rates *const rates = &bench->rates;
    for (size_t i = 0; i < e->lumber.count; i++) {
        const struct lumber_buy *const b = &e->lumber.buys[i];
        ABOUT(bench, "lumber", rates->lumber[b->material].name.s, b->net, b->rough, b->with_waste,
              b->priced.bought, b->priced.cost, b->by_plan.cost);
    }
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheet_buy *const b = &e->sheets.buys[i];
        ABOUT(bench, "sheet", rates->sheets[b->material].name.s, b->net, b->priced.whole,
              b->priced.cost);
    }
    for (size_t i = 0; i < e->glass.count; i++) {
        const struct glass_buy *const b = &e->glass.buys[i];
        ABOUT(bench, "glass", rates->glass[b->material].name.s, b->area, b->cost);
    }
    for (size_t i = 0; i < e->hardware.count; i++) {
        const struct hardware_buy *const b = &e->hardware.buys[i];
        ABOUT(bench, "hardware", rates->hardware[b->hardware].name.s, b->needed, b->cost,
              b->charged);
    }
    for (size_t i = 0; i < e->finish.product_count; i++) {
        const struct product *const p = &e->finish.products[i];
        ABOUT(bench, "product", p->title, p->used, p->need, p->bought, p->cost, p->charged);
    }
}

static void work_is_about_itself(struct bench *bench) {
    const struct labor *const labor = &bench->estimate.labor;
    const struct rates *const rates = &bench->rates;
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        ABOUT(bench, "operation", rates->operations[o->operation].name.s, o->run, o->setups,
              o->setup_minutes, o->machine_minutes, o->person_minutes, o->labor, o->machine,
              o->cost);
    }
    for (size_t i = 0; i < labor->machine_count; i++) {
        const struct machine_figures *const m = &labor->machines[i];
        ABOUT(bench, "machine", m->machine < 0 ? "by hand" : rates->machines[m->machine].name.s,
              m->minutes, m->hours, m->cost);
    }
    ABOUT(bench, "labor", JOB_ITSELF, labor->person_minutes, labor->hours, labor->bench_minutes,
          labor->bench_hours, labor->door_minutes, labor->labor, labor->machine,
          labor->minutes_a_door, labor->work_days);
}

static void sums_are_about_the_job(struct bench *bench) {
    const struct estimate *const e = &bench->estimate;
    const struct sale_figures *const sale = &e->sale;
    const struct build_up *const job = &e->costs.job;
    ABOUT(bench, "quantities", JOB_ITSELF, e->quantities.all_leaves, e->quantities.hinges,
          e->quantities.weight);
    about(bench, "cost", JOB_ITSELF, job->group, COST_GROUP_COUNT);
    ABOUT(bench, "cost", JOB_ITSELF, job->materials, job->direct, job->contingency, job->overhead,
          job->full, job->profit, job->price, e->costs.doors_total, e->costs.rounding);
    ABOUT(bench, "sale", JOB_ITSELF, sale->doors, sale->sold, sale->delivery, sale->subtotal,
          sale->taxable, sale->tax, sale->total, sale->deposit, sale->balance, sale->profit_left,
          sale->margin_left);
    for (size_t i = 0; i < sale->room_count; i++) {
        ABOUT(bench, "room", sale->rooms[i].room, sale->rooms[i].leaves, sale->rooms[i].amount);
    }
}

static void samples_are_told(void **state) {
    (void)state;
    static const char *const jobs[] = {"samples/kitchen/kitchen.ini",
                                       "samples/metric/tea-kitchen.ini",
                                       "samples/old-house/old-house.ini"};
    int wrong = 0;
    for (size_t j = 0; j < COUNT(jobs); j++) {
        struct bench bench;
        bench_open_job(&bench, jobs[j]);
        bench_sound(&bench);
        rows_are_about_themselves(&bench);
        materials_are_about_themselves(&bench);
        work_is_about_itself(&bench);
        sums_are_about_the_job(&bench);
        wrong += bench_close(&bench);
    }
    assert_int_equal(wrong, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(samples_are_told)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
