/* SPDX-License-Identifier: MIT */
#include "learn/learned.h"

#include "learn/learned_parts.h"

int64_t learned_value(const struct value *value, uint8_t decimals) {
    int64_t amount = value->set ? value->amount : 0;
    uint8_t at = value->decimals;
    int64_t under = 1;
    for (; at < decimals; at++) {
        amount *= 10;
    }
    for (; at > decimals; at--) {
        under *= 10;
    }
    return learned_share(amount, 1, under);
}

void learned_ask_far(const struct learner *l, struct place place, const char *name, int64_t noted,
                     int64_t estimated, uint8_t decimals, const char *unit) {
    char texts[2][32];
    if (estimated <= 0 || (noted <= 3 * estimated && noted * 3 >= estimated)) {
        return;
    }
    for (; decimals > 0 && noted % 10 == 0 && estimated % 10 == 0; decimals--) {
        noted /= 10; /* zeros behind both say nothing */
        estimated /= 10;
    }
    problem_add(l->problems, SEVERITY_WARNING, "far-off", place,
                "'%s' is noted with %s %s, where %s were estimated; check the unit, and whether "
                "it is all of this job",
                problem_quote(l->problems, name),
                figure_text(noted, decimals, texts[0], sizeof texts[0]), unit,
                figure_text(estimated, decimals, texts[1], sizeof texts[1]));
}

static void take_remade(const struct learner *l) {
    struct learned *const learned = l->learned;
    const struct actual *first = NULL;
    for (size_t i = 0; i < l->actuals->count; i++) {
        const struct actual *const row = &l->actuals->rows[i];
        if (row->about == ACTUAL_DOORS) {
            first = first == NULL ? row : first;
            learned->has_remade = true;
            learned->remade += row->remade.amount;
        }
    }
    learned->doors = tape_scaled(&l->e->tape, l->e->quantities.all_leaves, 0);
    if (first != NULL && learned->remade > learned->doors) {
        problem_add(l->problems, SEVERITY_WARNING, "far-off", first->what.place,
                    "%lld doors are noted as made again, and the job has %lld; check it, and "
                    "whether it is all of this job",
                    (long long)learned->remade, (long long)learned->doors);
    }
}

bool learned_make(struct learned *learned, const struct estimate *e, const struct actuals *actuals,
                  struct problems *problems, struct pool *pool) {
    const struct learner l = {learned, e, actuals, problems, pool};
    *learned = (struct learned){.money_decimals = e->tape.money_decimals,
                                .income = estimate_money(e, e->sale.subtotal),
                                .profit_was = estimate_money(e, e->sale.profit_left)};
    if (!learned_work_make(&l) || !learned_goods_make(&l)) {
        return false;
    }
    take_remade(&l);
    learned->profit =
        learned->profit_was - learned->more_work - learned->by_price - learned->by_amount;
    return !problems->failed && !pool_failed(pool);
}
