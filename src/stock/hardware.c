/* SPDX-License-Identifier: MIT */
#include "stock/hardware.h"

#include "model/construction.h"
#include "model/name.h"

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

/* What the rack gives for b, of which `rest` is still there; the rest then. none: nothing. */
static void take_from_rack(const struct calc *c, struct hardware_buy *b, fig *rest) {
    b->to_buy = b->with_spares;
    if (fig_none(*rest)) {
        return;
    }
    b->from_rack = fig_smaller(c->tape, "pieces from the rack", b->with_spares, *rest);
    b->to_buy =
        fig_plus(c->tape, "pieces beside the rack", b->with_spares, fig_minus(b->from_rack));
    *rest = fig_plus(c->tape, "pieces left on the rack", *rest, fig_minus(b->from_rack));
}

/* What the file says that the pieces from the rack are worth; none: nothing. */
static fig rack_worth(const struct calc *c, const struct hardware_buy *b) {
    const struct rack_item *const item =
        rack_find(&c->rates->rack, NAME_HARDWARE, b->hardware, NULL);
    if (fig_none(b->from_rack) || item == NULL || !item->worth.set) {
        return (fig){0};
    }
    const fig worth = calc_given(c, "worth of what is on the rack", &item->worth);
    const fig left = calc_given(c, "pieces on the rack", &item->left);
    return fig_ratio(c->tape, "worth of the pieces from the rack", UNIT_MONEY,
                     (figs){{worth, b->from_rack}}, (figs){{left}});
}

static void buy(const struct calc *c, const struct hardware *h, struct hardware_buy *b, fig *rest) {
    const bool charge_used = c->rates->shop.charge_hardware.choice == CHARGED_USED;
    const bool by_pack = h->price_by.choice == PRICE_PER_PACK;
    b->with_spares = b->needed;
    if (h->spares.set) {
        const fig spares = calc_given(c, "spares", &h->spares);
        const fig all = fig_plus(c->tape, "needed and spares, percent", c->units->hundred, spares);
        const fig raw = calc_percent(c, "pieces with spares", UNIT_FACTOR, b->needed, all);
        b->with_spares = fig_up(c->tape, "pieces with spares, whole", raw, c->units->one);
    }
    take_from_rack(c, b, rest);
    b->price = calc_given(c, by_pack ? "price of a pack" : "price each", &h->price);
    b->bought = b->to_buy;
    fig pack = {0};
    if (h->pack.set) {
        pack = calc_given(c, "pieces in a pack", &h->pack);
        const fig share =
            fig_ratio(c->tape, "packs by pieces", UNIT_FACTOR, (figs){{b->to_buy}}, (figs){{pack}});
        b->packs = fig_up(c->tape, "whole packs", share, c->units->one);
        b->bought = calc_product(c, "pieces bought", UNIT_COUNT, b->packs, pack);
    }
    b->cost =
        calc_product(c, "hardware cost", UNIT_MONEY, by_pack ? b->packs : b->bought, b->price);
    b->charged = b->cost;
    if (charge_used && (by_pack || h->pack.set)) {
        b->charged = fig_ratio(c->tape, "hardware cost charged", UNIT_MONEY,
                               (figs){{b->to_buy, b->price}}, (figs){{by_pack ? pack : (fig){0}}});
    }
    const fig worth = rack_worth(c, b);
    if (!fig_none(worth)) {
        b->charged = fig_plus(c->tape, "hardware cost charged, with the rack", b->charged, worth);
    }
}

bool hardware_make(struct hardware_list *list, const struct calc *c) {
    const struct quantities *const q = c->quantities;
    const size_t most = ROLE_COUNT * c->rates->hardware_count;
    *list = (struct hardware_list){0};
    list->buys = pool_take(c->pool, most, sizeof *list->buys);
    fig *const on_rack = pool_take(c->pool, c->rates->hardware_count, sizeof *on_rack);
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
            const struct rack_item *const item =
                rack_find(&c->rates->rack, NAME_HARDWARE, b.hardware, NULL);
            fig *const rest = &on_rack[b.hardware];
            if (item != NULL && fig_none(*rest)) { /* its other roles take of the same */
                *rest = calc_given(c, "pieces on the rack", &item->left);
            }
            buy(c, h, &b, rest);
        }
        list->buys[list->count++] = b;
    }
    tape_about_job(c->tape);
    return true;
}
