/* SPDX-License-Identifier: MIT */
#include "stock/hardware.h"

fig hardware_on_leaf(const struct hardware_buy *buy, const struct leaf_figures *leaf) {
    const struct construction *const construction = &leaf->door->construction;
    if (buy->role == ROLE_HINGE) {
        return construction->hinge.index == buy->hardware ? leaf->hinges : (fig){0};
    }
    return construction->pull.index == buy->hardware ? leaf->pulls : (fig){0};
}

/* What so many pieces cost. */
static fig cost_of(struct tape *tape, const char *what, const struct hardware_buy *b, fig pieces,
                   fig pack) {
    return fig_ratio(tape, what, UNIT_MONEY, (figs){{pieces, b->price}}, (figs){{pack}});
}

static void buy(struct tape *tape, const struct measures *m, const struct hardware *h,
                bool charge_used, struct hardware_buy *b) {
    const bool by_pack = h->price_by.choice == PRICE_PER_PACK;
    b->with_spares = b->needed;
    if (h->spares.set) {
        const fig spares = measures_given(tape, m, "spares", &h->spares);
        const fig all = fig_plus(tape, "needed and spares, percent", m->hundred, spares);
        const fig raw = fig_ratio(tape, "pieces with spares", UNIT_FACTOR, (figs){{b->needed, all}},
                                  (figs){{m->hundred}});
        b->with_spares = fig_up(tape, "pieces with spares, whole", raw, m->one);
    }
    b->price = measures_given(tape, m, by_pack ? "price of a pack" : "price each", &h->price);
    b->bought = b->with_spares;
    fig pack = {0};
    if (h->pack.set) {
        pack = measures_given(tape, m, "pieces in a pack", &h->pack);
        const fig share = fig_ratio(tape, "packs by pieces", UNIT_FACTOR, (figs){{b->with_spares}},
                                    (figs){{pack}});
        b->packs = fig_up(tape, "whole packs", share, m->one);
        b->bought =
            fig_ratio(tape, "pieces bought", UNIT_COUNT, (figs){{b->packs, pack}}, (figs){{{0}}});
    }
    if (by_pack) {
        b->cost = cost_of(tape, "hardware cost", b, b->packs, (fig){0});
        b->charged =
            charge_used ? cost_of(tape, "hardware cost charged", b, b->with_spares, pack) : b->cost;
    } else {
        b->cost = cost_of(tape, "hardware cost", b, b->bought, (fig){0});
        b->charged = charge_used && h->pack.set
                         ? cost_of(tape, "hardware cost charged", b, b->with_spares, (fig){0})
                         : b->cost;
    }
}

bool hardware_make(struct hardware_list *list, struct pool *pool, struct tape *tape,
                   const struct measures *measures, const struct rates *rates,
                   const struct quantities *quantities) {
    *list = (struct hardware_list){0};
    list->buys = pool_take(pool, 2 * rates->hardware_count, sizeof *list->buys);
    fig *const pieces = pool_take(pool, quantities->count, sizeof *pieces);
    fig *const each = pool_take(pool, quantities->count, sizeof *each);
    if (pool_failed(pool)) {
        return false;
    }
    for (size_t i = 0; i < 2 * rates->hardware_count; i++) {
        struct hardware_buy b = {.hardware = (int32_t)(i / 2),
                                 .role = i % 2 == 0 ? ROLE_HINGE : ROLE_PULL};
        const struct hardware *const h = &rates->hardware[b.hardware];
        size_t n = 0;
        for (size_t r = 0; r < quantities->count; r++) {
            each[n] = hardware_on_leaf(&b, &quantities->leaves[r]);
            pieces[n] = quantities->leaves[r].pieces;
            n += fig_none(each[n]) ? 0 : 1;
        }
        if (n == 0) {
            continue;
        }
        tape_about(tape, h->name.s);
        b.needed = fig_total(tape, "pieces needed", UNIT_COUNT, pieces, each, n);
        b.by_others = h->by_others;
        if (!b.by_others) {
            buy(tape, measures, h, rates->shop.charge_hardware.choice == CHARGED_USED, &b);
        }
        list->buys[list->count++] = b;
    }
    tape_about_again(tape, 0);
    return true;
}
