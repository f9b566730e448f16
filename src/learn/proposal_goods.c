/* SPDX-License-Identifier: MIT */
/* New rates from goods and from doors made again: what they tell of waste, transfer, prices and
 * remakes. */
#include "learn/proposal_parts.h"

#include "base/text.h"

/* Waste scatters by a fifth, transfer by less, remakes by half from shop to shop. */
#define WASTE_SPREAD    (MEASURED_ONE / 5)
#define TRANSFER_SPREAD (MEASURED_ONE * 8 / 100)
#define REMAKES_SPREAD  (MEASURED_ONE / 2)

/* A percent that goods tell: waste, transfer. take: what a job says, in hundredths; 0: nothing. */
static void propose_percent(struct maker *m, const struct rate_number *n, enum name_kind kind,
                            int32_t index, int64_t usual,
                            int64_t (*take)(const struct learned_goods *)) {
    const int64_t was = learned_value(&n->value, 2);
    struct measured ratio = measured_start(MEASURED_ONE, proposal_spread(n, usual));
    size_t jobs = 0;
    const char *name = "";
    for (size_t i = 0; i < m->job_count; i++) {
        const struct learned *const l = m->jobs[i].learned;
        size_t of_job = 0;
        for (size_t g = 0; g < l->goods_count && was > 0; g++) {
            const struct learned_goods *const goods = &l->goods[g];
            const bool mine =
                kind == NAME_SPRAY
                    ? goods->transfer > 0 &&
                          text_same(goods->way->name.s, name_at(m->rates, kind, (size_t)index))
                    : goods->kind == kind && goods->index == index;
            if (mine && take(goods) > 0) {
                measured_add(&ratio, learned_share(take(goods), MEASURED_ONE, was), usual);
                name = goods->name;
                of_job++;
            }
        }
        jobs += of_job > 0 ? 1 : 0;
    }
    if (jobs > 0) {
        proposal_add(m, n, measured_range(&ratio),
                     pool_words(m->pool, "as measured of %s in %s", name, proposal_jobs(m, jobs)));
    }
}

static int64_t take_waste(const struct learned_goods *goods) {
    return goods->has_waste ? goods->waste : 0;
}
static int64_t take_transfer(const struct learned_goods *goods) {
    return goods->transfer;
}

const char *proposal_price_steps(const struct rates *rates, enum name_kind kind, int32_t index) {
    switch (kind) {
    case NAME_LUMBER:
        return rates->lumber[index].breaks.count == 0 ? NULL
                                                      : "its price has breaks, and one purchase "
                                                        "tells of one step; put that in yourself";
    case NAME_SHEET:
        return !rates->sheets[index].half_price.set
                   ? NULL
                   : "half sheets have a price of their own, and both are in what was paid; put "
                     "them in yourself";
    case NAME_GLASS:
        return !rates->glass[index].stops.set && !rates->glass[index].minimum.set
                   ? NULL
                   : "what was paid has minimum or stops in it; put the price in yourself";
    case NAME_BANDING:
        return NULL;
    case NAME_HARDWARE:
        return rates->hardware[index].by_others ? "it is supplied by others"
               : rates->hardware[index].price_by.choice == PRICE_EACH
                   ? NULL
                   : "it is priced by the pack; put the price in yourself";
    case NAME_COATING:
    case NAME_ADDITIVE:
        return "each size of its containers has a price; put them in yourself";
    default:
        return "it is priced by the work that it goes into, and no amount of it is noted";
    }
}

/* A price is known, not estimated: it is what was paid at last. */
static void propose_price(struct maker *m, const struct rate_number *n, enum name_kind kind,
                          int32_t index) {
    const uint8_t money = m->jobs[0].learned->money_decimals;
    const struct learned_goods *paid = NULL;
    int32_t day = 0;
    for (size_t i = 0; i < m->job_count; i++) {
        const struct learned *const l = m->jobs[i].learned;
        for (size_t g = 0; g < l->goods_count; g++) {
            const struct learned_goods *const goods = &l->goods[g];
            if (goods->kind == kind && goods->index == index && goods->paid_for > 0) {
                paid = goods;
                day = job_quoted(m->jobs[i].estimate->job);
            }
        }
    }
    if (paid == NULL || proposal_price_steps(m->rates, kind, index) != NULL) {
        return;
    }
    const int64_t price = learned_share(paid->paid, GOODS_ONE, paid->paid_for);
    const char *const text = rate_number_text(n, price, money, m->pool);
    const bool anew = n->on.set && n->on.amount < day; /* the same, and known of late */
    if (price > 0 && !anew && price == learned_value(&n->value, money)) {
        proposal_none(m, pool_words(m->pool, "%s %s", n->section, n->key),
                      "what was paid is the price that the rates have", true);
    } else if (price > 0 && !pool_failed(m->pool)) {
        char amounts[2][32];
        m->made->list[m->made->count++] = (struct proposal){
            .number = n,
            .text = text,
            .alone = text,
            .paid_on = day,
            .why = pool_words(m->pool, "%s paid for %s",
                              figure_text(paid->paid, money, amounts[0], sizeof amounts[0]),
                              figure_text(learned_share(paid->paid_for, 100, GOODS_ONE), 2,
                                          amounts[1], sizeof amounts[1]))};
    }
}

void propose_remakes(struct maker *m, const struct rate_number *n) {
    const int64_t was = learned_value(&n->value, 4); /* percent; so of MEASURED_ONE */
    struct measured ratio = measured_start(MEASURED_ONE, proposal_spread(n, REMAKES_SPREAD));
    int64_t remade = 0;
    int64_t doors = 0;
    size_t jobs = 0;
    for (size_t i = 0; i < m->job_count && was > 0; i++) {
        const struct learned *const l = m->jobs[i].learned;
        if (l->has_remade && l->doors > 0) {
            const int64_t rate = learned_share(l->remade, MEASURED_ONE, l->doors);
            measured_add(&ratio, learned_share(rate, MEASURED_ONE, was),
                         measured_share_spread(was, l->doors));
            remade += l->remade;
            doors += l->doors;
            jobs++;
        }
    }
    if (jobs > 0) {
        proposal_add(m, n, measured_range(&ratio),
                     pool_words(m->pool, "%lld of %lld doors made again in %s", (long long)remade,
                                (long long)doors, proposal_jobs(m, jobs)));
    }
}

void propose_of_goods(struct maker *m, const struct rate_number *n, enum name_kind kind,
                      int32_t index) {
    if (text_same(n->key, "price")) {
        propose_price(m, n, kind, index);
    } else if ((kind == NAME_LUMBER || kind == NAME_SHEET) && text_same(n->key, "waste")) {
        propose_percent(m, n, kind, index, WASTE_SPREAD, take_waste);
    } else if (kind == NAME_SPRAY && text_same(n->key, "transfer efficiency")) {
        propose_percent(m, n, kind, index, TRANSFER_SPREAD, take_transfer);
    }
}
