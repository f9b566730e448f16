/* SPDX-License-Identifier: MIT */
/* Goods: what was bought and used up against what was to be. */
#include "learn/learned_parts.h"

static int64_t amount_of(const struct estimate *e, fig f) {
    return tape_scaled(&e->tape, f, GOODS_DECIMALS);
}

/* --- what was estimated --- */

static void estimate_lumber(const struct estimate *e, struct learned_goods *g) {
    g->unit = e->rates->lumber[g->index].price.unit == UNIT_MONEY_PER_M3 ? UNIT_M3 : UNIT_BF;
    for (size_t i = 0; i < e->lumber.count; i++) {
        const struct lumber_buy *const buy = &e->lumber.buys[i];
        if (buy->material == g->index) {
            g->to_buy = amount_of(e, buy->priced.bought);
            g->from_rack = amount_of(e, buy->priced.from_rack);
            g->to_use = g->from_rack + (buy->planned ? g->to_buy : amount_of(e, buy->with_waste));
            g->net = amount_of(e, buy->milled);
            g->cost = estimate_money(e, buy->priced.cost);
        }
    }
}

static void estimate_sheet(const struct estimate *e, struct learned_goods *g) {
    for (size_t i = 0; i < e->sheets.count; i++) {
        const struct sheet_buy *const buy = &e->sheets.buys[i];
        if (buy->material == g->index) {
            const int64_t each = amount_of(e, buy->each);
            g->to_buy = amount_of(e, buy->priced.whole) + amount_of(e, buy->priced.half) / 2;
            g->from_rack = buy->planned ? amount_of(e, buy->plan.rack.pieces) : 0;
            g->net = learned_share(amount_of(e, buy->net), GOODS_ONE, each);
            g->to_use = buy->planned ? g->to_buy + g->from_rack
                                     : learned_share(amount_of(e, buy->needed), GOODS_ONE, each);
            g->cost = estimate_money(e, buy->priced.cost);
        }
    }
}

static void estimate_glass(const struct estimate *e, struct learned_goods *g) {
    g->unit = e->rates->glass[g->index].price.unit == UNIT_MONEY_PER_M2 ? UNIT_M2 : UNIT_SQFT;
    for (size_t i = 0; i < e->glass.count; i++) {
        const struct glass_buy *const buy = &e->glass.buys[i];
        if (buy->material == g->index) {
            g->to_buy = g->to_use = amount_of(e, buy->area);
            g->cost = estimate_money(e, buy->cost);
        }
    }
}

static void estimate_banding(const struct estimate *e, struct learned_goods *g) {
    const struct banding *const banding = &e->rates->bandings[g->index];
    const bool metric = banding->price.unit == UNIT_MONEY_PER_M || e->job->unit == LENGTH_MM;
    g->unit = banding->roll.set ? UNIT_NUMBER : metric ? UNIT_M : UNIT_FT;
    for (size_t i = 0; i < e->banding.count; i++) {
        const struct banding_buy *const buy = &e->banding.buys[i];
        if (buy->banding != g->index) {
            continue;
        }
        const int64_t run = amount_of(e, buy->needed);
        g->cost = estimate_money(e, buy->cost);
        if (!banding->roll.set) {
            g->to_buy = g->to_use = run;
        } else {
            const bool feet = tape_unit(&e->tape, buy->needed) == UNIT_FT;
            const length one = feet ? 12 * NM_PER_INCH : 1000 * NM_PER_MM;
            g->to_buy = amount_of(e, buy->rolls);
            g->to_use = learned_share(run, one, banding->roll.amount);
        }
    }
}

static void estimate_product(const struct estimate *e, struct learned_goods *g) {
    g->unit = e->rates->shop.unit == LENGTH_INCH ? UNIT_GAL : UNIT_L;
    for (size_t i = 0; i < e->finish.product_count; i++) {
        const struct product *const p = &e->finish.products[i];
        if ((g->kind == NAME_COATING ? p->coating : p->additive) == g->index) {
            g->to_buy += amount_of(e, p->bought);
            g->to_use += amount_of(e, p->used);
            g->from_rack += amount_of(e, p->from_rack);
            g->cost += estimate_money(e, p->cost);
        }
    }
}

static void estimate_hardware(const struct estimate *e, struct learned_goods *g) {
    for (size_t i = 0; i < e->hardware.count; i++) {
        const struct hardware_buy *const buy = &e->hardware.buys[i];
        if (buy->hardware == g->index && !buy->by_others) {
            g->to_buy += amount_of(e, buy->bought);
            g->to_use += amount_of(e, buy->needed);
            g->from_rack += amount_of(e, buy->from_rack);
            g->cost += estimate_money(e, buy->cost);
        }
    }
}

static void estimate_consumable(const struct estimate *e, struct learned_goods *g) {
    for (size_t i = 0; i < e->costs.consumable_count; i++) {
        if (e->costs.consumables[i].consumable == g->index) {
            g->cost += estimate_money(e, e->costs.consumables[i].cost);
        }
    }
}

static void estimate_goods(const struct estimate *e, struct learned_goods *g) {
    switch (g->kind) {
    case NAME_LUMBER:
        estimate_lumber(e, g);
        break;
    case NAME_SHEET:
        estimate_sheet(e, g);
        break;
    case NAME_GLASS:
        estimate_glass(e, g);
        break;
    case NAME_BANDING:
        estimate_banding(e, g);
        break;
    case NAME_COATING:
    case NAME_ADDITIVE:
        estimate_product(e, g);
        break;
    case NAME_HARDWARE:
        estimate_hardware(e, g);
        break;
    default:
        estimate_consumable(e, g);
        break;
    }
}

/* --- what was noted --- */

static struct learned_goods *goods_of(const struct learner *l, const struct actual *row) {
    struct learned *const learned = l->learned;
    for (size_t i = 0; i < learned->goods_count; i++) {
        if (learned->goods[i].kind == row->kind && learned->goods[i].index == row->index) {
            return &learned->goods[i];
        }
    }
    struct learned_goods *const g = &learned->goods[learned->goods_count++];
    *g = (struct learned_goods){.name = name_at(l->e->rates, row->kind, (size_t)row->index),
                                .kind = row->kind,
                                .index = row->index,
                                .unit = UNIT_NUMBER,
                                .place = row->what.place};
    estimate_goods(l->e, g);
    return g;
}

/* Used up: what was taken less what was left of it. Where no row says what was taken, that is all
 * that was bought. */
static void add_row(const struct learner *l, const struct actual *row) {
    struct learned_goods *const g = goods_of(l, row);
    g->has_bought = g->has_bought || row->bought.set;
    g->has_paid = g->has_paid || row->paid.set;
    g->has_taken = g->has_taken || row->taken.set;
    g->bought += learned_value(&row->bought, GOODS_DECIMALS);
    g->taken += learned_value(&row->taken, GOODS_DECIMALS);
    g->left += learned_value(&row->left, GOODS_DECIMALS);
    g->paid += learned_value(&row->paid, l->learned->money_decimals);
    if (row->paid.set) {
        g->paid_for += learned_value(&row->bought, GOODS_DECIMALS);
    }
}

/* --- the two side by side --- */

static void measure_waste(const struct learner *l, struct learned_goods *g) {
    if (g->net <= 0 || (g->kind != NAME_LUMBER && g->kind != NAME_SHEET)) {
        return;
    }
    if (g->kind == NAME_SHEET && g->from_rack > 0) {
        g->waste_lacks = "pieces of the rack were to be cut too, and these are no sheets";
        return;
    }
    if (g->from_rack > 0 && !g->has_taken) {
        g->waste_lacks = "some was to come from the rack, and what was taken is not noted";
        return;
    }
    if (g->used < g->net) {
        g->waste_lacks = "less of it is noted as used than is in the doors";
        return;
    }
    const bool lumber = g->kind == NAME_LUMBER;
    const struct lumber *const wood = lumber ? &l->e->rates->lumber[g->index] : NULL;
    const struct sheet *const sheet = lumber ? NULL : &l->e->rates->sheets[g->index];
    const int as = lumber ? wood->waste_as.choice : sheet->waste_as.choice;
    g->waste_was = learned_value(lumber ? &wood->waste : &sheet->waste, 2);
    g->waste = learned_share(g->used - g->net, 10000, as == WASTE_LOST ? g->used : g->net);
    g->has_waste = true;
}

/* Of what the coats took, the part that left the gun goes with the transfer; the rest stays in pots
 * and hoses whatever it is. */
static void measure_transfer(const struct learner *l, struct learned_goods *g) {
    const struct estimate *const e = l->e;
    const struct spray *way = NULL;
    int64_t sprayed = 0;
    if (g->kind != NAME_COATING) {
        return;
    }
    for (size_t b = 0; b < e->finish.batch_count; b++) {
        const struct batch *const batch = &e->finish.batches[b];
        for (size_t i = 0; i < batch->coat_count; i++) {
            const struct coat_figures *const coat = &batch->coats[i];
            if (coat->coating != g->index) {
                continue;
            }
            if (way != NULL && way != coat->way) {
                g->transfer_lacks = "it is put on in two ways, and one amount does not tell both";
                return;
            }
            way = coat->way;
            sprayed += learned_share(amount_of(e, coat->coating_volume),
                                     amount_of(e, coat->sprayed), amount_of(e, coat->mix));
        }
    }
    const int64_t fixed = g->to_use - sprayed;
    if (way == NULL || sprayed <= 0) {
        return;
    }
    if (g->from_rack > 0 && !g->has_taken) {
        g->transfer_lacks = "some was to come from the rack, and what was taken is not noted";
        return;
    }
    if (g->used <= fixed) {
        g->transfer_lacks = "less of it is noted as used than stays in pots and hoses";
        return;
    }
    g->transfer_was = learned_value(&way->transfer, 2);
    g->transfer = learned_share(g->transfer_was, sprayed, g->used - fixed);
    g->way = way;
}

static const char *unit_of(const struct learned_goods *g) {
    return g->unit == UNIT_NUMBER ? (g->kind == NAME_SHEET ? "sheets" : "pieces")
                                  : unit_name(g->unit);
}

static void compare(const struct learner *l, struct learned_goods *g) {
    struct learned *const learned = l->learned;
    g->has_used = g->has_bought || g->has_taken;
    g->used = (g->has_taken ? g->taken : g->bought) - g->left;
    const bool by_use = g->has_taken || g->left > 0;
    /* where nothing says what was taken, what was bought is held against what was to be */
    g->held = !by_use ? g->to_buy : g->has_taken ? g->to_use : g->to_use - g->from_rack;
    if (g->kind == NAME_CONSUMABLE) {
        g->by_price = g->paid - g->cost;
    } else if (g->to_buy > 0) {
        g->by_price = g->has_paid ? g->paid - learned_share(g->cost, g->paid_for, g->to_buy) : 0;
        g->by_amount = g->has_used ? learned_share(g->cost, g->used - g->held, g->to_buy) : 0;
        learned_ask_far(l, g->place, g->name, g->used, g->held, GOODS_DECIMALS, unit_of(g));
        if (by_use) {
            measure_waste(l, g);
            measure_transfer(l, g);
        }
    } else if (g->to_use > 0) { /* all of it was on the rack */
        g->by_amount = g->paid;
        if (by_use) {
            measure_waste(l, g);
        }
    } else {
        g->by_amount = g->paid;
        problem_add(l->problems, SEVERITY_WARNING, "not-estimated", g->place,
                    "'%s' is noted, but the estimate needs none of it; is it another job, or an "
                    "option of this one (--option)?",
                    problem_quote(l->problems, g->name));
    }
    learned->by_price += g->by_price;
    learned->by_amount += g->by_amount;
}

bool learned_goods_make(const struct learner *l) {
    struct learned *const learned = l->learned;
    learned->goods = pool_take(l->pool, l->actuals->count, sizeof *learned->goods);
    if (learned->goods == NULL) {
        return false;
    }
    for (size_t i = 0; i < l->actuals->count; i++) {
        if (l->actuals->rows[i].about == ACTUAL_MATERIAL) {
            add_row(l, &l->actuals->rows[i]);
        }
    }
    for (size_t i = 0; i < learned->goods_count; i++) {
        compare(l, &learned->goods[i]);
    }
    return true;
}
