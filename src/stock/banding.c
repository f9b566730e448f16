/* SPDX-License-Identifier: MIT */
#include "stock/banding.h"

static void buy(const struct calc *c, const struct banding *banding, struct banding_buy *b) {
    b->needed = b->net;
    if (banding->waste.set) {
        const fig waste = calc_given(c, "waste", &banding->waste);
        const fig all =
            fig_plus(c->tape, "net and waste, percent of net", c->units->hundred, waste);
        b->needed = calc_percent(c, "banding with waste", c->units->run, b->net, all);
    }
    b->price = calc_given(c, "price", &banding->price);
    if (!banding->roll.set) {
        b->cost = calc_product(c, "banding cost", UNIT_MONEY, b->needed, b->price);
        b->charged = b->cost;
        return;
    }
    const fig run = calc_run(c, "run of a roll", calc_given(c, "length of a roll", &banding->roll));
    const fig share =
        fig_ratio(c->tape, "rolls by length", UNIT_FACTOR, (figs){{b->needed}}, (figs){{run}});
    b->rolls = fig_up(c->tape, "whole rolls", share, c->units->one);
    b->cost = calc_product(c, "banding cost", UNIT_MONEY, b->rolls, b->price);
    b->charged = b->cost;
    if (c->rates->shop.charge_banding.choice == CHARGED_USED) {
        b->charged = fig_ratio(c->tape, "banding cost charged", UNIT_MONEY,
                               (figs){{b->cost, b->needed}}, (figs){{b->rolls, run}});
    }
}

bool banding_make(struct banding_list *list, const struct calc *c) {
    const struct quantities *const q = c->quantities;
    *list = (struct banding_list){0};
    list->buys = pool_take(c->pool, c->rates->banding_count, sizeof *list->buys);
    fig *const each = pool_take(c->pool, q->count, sizeof *each);
    if (pool_failed(c->pool)) {
        return false;
    }
    for (size_t i = 0; i < c->rates->banding_count; i++) {
        for (size_t r = 0; r < q->count; r++) {
            each[r] = q->leaves[r].banding == (int32_t)i ? q->leaves[r].banded : (fig){0};
        }
        tape_about(c->tape, c->rates->bandings[i].name.s);
        const fig net = quantities_sum(c, "banded edges", c->units->run, each);
        if (!fig_none(net)) {
            struct banding_buy *const b = &list->buys[list->count++];
            *b = (struct banding_buy){.banding = (int32_t)i, .net = net};
            buy(c, &c->rates->bandings[i], b);
        }
    }
    tape_about_job(c->tape);
    return true;
}
