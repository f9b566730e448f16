/* SPDX-License-Identifier: MIT */
#include "stock/hardware.h"

#include "model/construction.h"

/* The pieces of it that `hardware` lists for the leaf. */
static fig listed_on_leaf(int32_t hardware, const struct leaf_figures *leaf) {
    const struct hardware_items *const items =
        row_hardware(leaf->door->row, leaf->door->construction);
    for (size_t i = 0; i < items->count; i++) {
        if (items->list[i].hardware.index == hardware) {
            return leaf->pieces_of[i];
        }
    }
    return (fig){0};
}

fig hardware_on_leaf(const struct hardware_buy *buy, const struct leaf_figures *leaf) {
    const struct construction *const construction = leaf->door->construction;
    switch (buy->role) {
    case ROLE_HINGE:
        return door_hinge(leaf->door)->index == buy->hardware ? leaf->hinges : (fig){0};
    case ROLE_PULL:
        return construction->pull.index == buy->hardware ? leaf->pulls : (fig){0};
    case ROLE_OTHER:
        return listed_on_leaf(buy->hardware, leaf);
    case ROLE_COUNT:
        break;
    }
    return (fig){0};
}

static void buy(const struct calc *c, const struct hardware *h, struct hardware_buy *b) {
    const bool charge_used = c->rates->shop.charge_hardware.choice == CHARGED_USED;
    const bool by_pack = h->price_by.choice == PRICE_PER_PACK;
    b->with_spares = b->needed;
    if (h->spares.set) {
        const fig spares = calc_given(c, "spares", &h->spares);
        const fig all = fig_plus(c->tape, "needed and spares, percent", c->units->hundred, spares);
        const fig raw = calc_percent(c, "pieces with spares", UNIT_FACTOR, b->needed, all);
        b->with_spares = fig_up(c->tape, "pieces with spares, whole", raw, c->units->one);
    }
    b->price = calc_given(c, by_pack ? "price of a pack" : "price each", &h->price);
    b->bought = b->with_spares;
    fig pack = {0};
    if (h->pack.set) {
        pack = calc_given(c, "pieces in a pack", &h->pack);
        const fig share = fig_ratio(c->tape, "packs by pieces", UNIT_FACTOR,
                                    (figs){{b->with_spares}}, (figs){{pack}});
        b->packs = fig_up(c->tape, "whole packs", share, c->units->one);
        b->bought = calc_product(c, "pieces bought", UNIT_COUNT, b->packs, pack);
    }
    b->cost =
        calc_product(c, "hardware cost", UNIT_MONEY, by_pack ? b->packs : b->bought, b->price);
    b->charged = b->cost;
    if (charge_used && (by_pack || h->pack.set)) {
        b->charged =
            fig_ratio(c->tape, "hardware cost charged", UNIT_MONEY,
                      (figs){{b->with_spares, b->price}}, (figs){{by_pack ? pack : (fig){0}}});
    }
}

bool hardware_make(struct hardware_list *list, const struct calc *c) {
    const struct quantities *const q = c->quantities;
    const size_t most = ROLE_COUNT * c->rates->hardware_count;
    *list = (struct hardware_list){0};
    list->buys = pool_take(c->pool, most, sizeof *list->buys);
    fig *const each = pool_take(c->pool, q->count, sizeof *each);
    if (pool_failed(c->pool)) {
        return false;
    }
    for (size_t i = 0; i < most; i++) {
        struct hardware_buy b = {.hardware = (int32_t)(i / ROLE_COUNT),
                                 .role = (enum hardware_role)(i % ROLE_COUNT)};
        const struct hardware *const h = &c->rates->hardware[b.hardware];
        for (size_t r = 0; r < q->count; r++) {
            each[r] = hardware_on_leaf(&b, &q->leaves[r]);
        }
        tape_about(c->tape, h->name.s);
        b.needed = quantities_sum(c, "pieces needed", UNIT_COUNT, each);
        if (fig_none(b.needed)) {
            continue;
        }
        b.by_others = h->by_others;
        if (!b.by_others) {
            buy(c, h, &b);
        }
        list->buys[list->count++] = b;
    }
    tape_about_job(c->tape);
    return true;
}
