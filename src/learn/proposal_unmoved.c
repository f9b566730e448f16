/* SPDX-License-Identifier: MIT */
/* What was noted and can change no rate: goods and work that are looked at once the rates have been
 * gone through. */
#include "learn/proposal_parts.h"

static bool has_price(const struct learned_goods *g) {
    return g->paid_for > 0;
}
static bool has_waste(const struct learned_goods *g) {
    return g->has_waste;
}
static bool has_transfer(const struct learned_goods *g) {
    return g->transfer > 0;
}

/* Whether any job tells that of the goods. */
static bool is_told(const struct maker *m, const struct learned_goods *of,
                    bool (*told)(const struct learned_goods *)) {
    for (size_t i = 0; i < m->job_count; i++) {
        const struct learned *const l = m->jobs[i].learned;
        for (size_t g = 0; g < l->goods_count; g++) {
            const struct learned_goods *const goods = &l->goods[g];
            if (goods->kind == of->kind && goods->index == of->index && told(goods)) {
                return true;
            }
        }
    }
    return false;
}

static void explain(struct maker *m, const struct learned_goods *g, const char *of,
                    const char *why) {
    if (why != NULL) {
        proposal_none(m, pool_words(m->pool, "%s, %s", g->name, of), why, false);
    }
}

static void explain_price(struct maker *m, const struct learned_goods *g) {
    const char *const steps = proposal_price_steps(m->rates, g->kind, g->index);
    if (g->has_paid) {
        explain(m, g, "price",
                steps != NULL              ? steps
                : is_told(m, g, has_price) ? NULL
                                           : "no row says how much was bought for what was paid");
    }
}

/* Of a waste that the rates do not have nothing can be moved. */
static void explain_waste(struct maker *m, const struct learned_goods *g) {
    if (g->has_waste && g->waste_was <= 0) {
        explain(m, g, "waste", "the rates have no waste of it");
    } else if (g->waste_lacks != NULL && !is_told(m, g, has_waste)) {
        explain(m, g, "waste", g->waste_lacks);
    }
}

static void explain_work(struct maker *m, const struct learned_work *w) {
    if (w->estimated <= 0 || w->noted <= 0) {
        proposal_none(m, pool_words(m->pool, "%s, hours", w->name),
                      w->noted <= 0 ? "no time is noted of it" : "the estimate has none of it",
                      false);
    }
}

static bool rates_have_remakes(const struct maker *m) {
    return m->rates->shop.remakes.set && m->rates->shop.remakes.amount > 0;
}

void proposals_explain(struct maker *m) {
    for (size_t i = 0; i < m->job_count; i++) {
        const struct learned *const l = m->jobs[i].learned;
        for (size_t w = 0; w < l->work_count; w++) {
            explain_work(m, &l->work[w]);
        }
        for (size_t g = 0; g < l->goods_count; g++) {
            explain_price(m, &l->goods[g]);
            explain_waste(m, &l->goods[g]);
            if (!is_told(m, &l->goods[g], has_transfer)) {
                explain(m, &l->goods[g], "transfer efficiency", l->goods[g].transfer_lacks);
            }
        }
        if (l->has_remade && !rates_have_remakes(m)) {
            proposal_none(m, "doors made again", "the rates have no remakes that could be moved",
                          false);
        }
    }
}
