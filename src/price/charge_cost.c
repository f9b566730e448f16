/* SPDX-License-Identifier: MIT */
#include "price/charge_cost.h"

#include "price/build_up.h"

void charges_cost(struct costs *costs, const struct calc *c, const struct labor *labor) {
    for (size_t i = 0; i < labor->operation_count; i++) {
        const struct operation_figures *const o = &labor->operations[i];
        if (o->charge < 0) {
            continue;
        }
        const struct operation *const op = &c->rates->operations[o->operation];
        struct build_up *const pile = &costs->charges[o->charge];
        tape_about(c->tape, op->name.s);
        pile->group[COST_LABOR] = o->labor;
        pile->group[COST_MACHINE] = o->machine;
        build_up_price(
            pile, c,
            build_up_minutes(c, o->person_minutes, op->off_bench ? (fig){0} : o->person_minutes),
            false);
        pile->materials = (fig){0}; /* work alone: nothing is bought, and nothing taxed */
        pile->group[COST_PURCHASE_TAX] = (fig){0};
    }
    tape_about_job(c->tape);
}
