/* SPDX-License-Identifier: MIT */
#include "model/work_cost.h"

/* Machine minutes x hands, with the allowance for rest and delay. */
static fig person_minutes(const struct calc *c, const struct operation *op, fig machine_minutes) {
    const struct shop *const shop = &c->rates->shop;
    const fig hands = calc_given(c, "hands", &op->hands);
    const fig allowance = calc_given(c, "allowance", &shop->allowance);
    const fig hundred = c->units->hundred;
    figs over = {{machine_minutes, hands}};
    figs under = {{{0}}};
    if (!fig_none(allowance) && shop->allowance_on.choice == ALLOWANCE_ADDED) {
        over.f[2] = fig_plus(c->tape, "work and allowance", hundred, allowance);
        under.f[0] = hundred;
    } else if (!fig_none(allowance)) {
        over.f[2] = hundred;
        under.f[0] = fig_plus(c->tape, "work, percent of shift", hundred, fig_minus(allowance));
    }
    return fig_ratio(c->tape, "person-minutes", UNIT_MIN, over, under);
}

/* minutes x an hour's rate. */
static fig pay(const struct calc *c, const char *what, fig minutes, fig hour) {
    return fig_ratio(c->tape, what, UNIT_MONEY, (figs){{minutes, hour}}, (figs){{c->units->sixty}});
}

struct work_cost work_cost_of(const struct calc *c, const struct operation *op,
                              fig machine_minutes) {
    struct work_cost cost = {.person_minutes = person_minutes(c, op, machine_minutes)};
    const fig rate = calc_given(c, "labor rate",
                                op->labor_rate.set ? &op->labor_rate : &c->rates->shop.labor_rate);
    cost.labor = pay(c, "labor", cost.person_minutes, rate);
    cost.all = cost.labor;
    if (op->machine >= 0 && c->rates->machines[op->machine].rate.set) {
        const fig hour = calc_given(c, "machine rate", &c->rates->machines[op->machine].rate);
        cost.machine = pay(c, "machine", machine_minutes, hour);
        cost.all = fig_plus(c->tape, "labor and machine", cost.labor, cost.machine);
    }
    return cost;
}
