/* SPDX-License-Identifier: MIT */
#include "stock/banding.h"

static void buy(struct tape *tape, const struct measures *m, const struct banding *banding,
                bool charge_used, struct banding_buy *b) {
    b->needed = b->net;
    if (banding->waste.set) {
        const fig waste = measures_given(tape, m, "waste", &banding->waste);
        const fig all = fig_plus(tape, "net and waste, percent of net", m->hundred, waste);
        b->needed = fig_ratio(tape, "banding with waste", m->run, (figs){{b->net, all}},
                              (figs){{m->hundred}});
    }
    b->price = measures_given(tape, m, "price", &banding->price);
    if (!banding->roll.set) {
        b->cost = fig_ratio(tape, "banding cost", UNIT_MONEY, (figs){{b->needed, b->price}},
                            (figs){{{0}}});
        b->charged = b->cost;
        return;
    }
    const fig roll = measures_given(tape, m, "length of a roll", &banding->roll);
    const fig run =
        fig_ratio(tape, "run of a roll", m->run, (figs){{roll}}, (figs){{m->length_per_run}});
    const fig share =
        fig_ratio(tape, "rolls by length", UNIT_FACTOR, (figs){{b->needed}}, (figs){{run}});
    b->rolls = fig_up(tape, "whole rolls", share, m->one);
    b->cost =
        fig_ratio(tape, "banding cost", UNIT_MONEY, (figs){{b->rolls, b->price}}, (figs){{{0}}});
    b->charged = charge_used ? fig_ratio(tape, "banding cost charged", UNIT_MONEY,
                                         (figs){{b->cost, b->needed}}, (figs){{b->rolls, run}})
                             : b->cost;
}

bool banding_make(struct banding_list *list, struct pool *pool, struct tape *tape,
                  const struct measures *measures, const struct rates *rates,
                  const struct quantities *quantities) {
    *list = (struct banding_list){0};
    list->buys = pool_take(pool, rates->banding_count, sizeof *list->buys);
    fig *const pieces = pool_take(pool, quantities->count, sizeof *pieces);
    fig *const each = pool_take(pool, quantities->count, sizeof *each);
    if (pool_failed(pool)) {
        return false;
    }
    for (size_t i = 0; i < rates->banding_count; i++) {
        size_t n = 0;
        for (size_t r = 0; r < quantities->count; r++) {
            if (quantities->leaves[r].banding == (int32_t)i) {
                pieces[n] = quantities->leaves[r].pieces;
                each[n++] = quantities->leaves[r].banded;
            }
        }
        if (n > 0) {
            tape_about(tape, rates->bandings[i].name.s);
            struct banding_buy *const b = &list->buys[list->count++];
            *b = (struct banding_buy){
                .banding = (int32_t)i,
                .net = fig_total(tape, "banded edges", measures->run, pieces, each, n)};
            buy(tape, measures, &rates->bandings[i],
                rates->shop.charge_sheets.choice == CHARGED_USED, b);
        }
    }
    tape_about_again(tape, 0);
    return true;
}
