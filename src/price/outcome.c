/* SPDX-License-Identifier: MIT */
#include "price/outcome.h"

#include "model/charge.h"

struct outcome outcome_of(const struct estimate *e) {
    struct outcome o = {
        .client = estimate_money(e, e->sale.total),
        .before_tax = estimate_money(e, e->sale.subtotal),
        .tax = fig_none(e->sale.tax) ? 0 : estimate_money(e, e->sale.tax),
        .direct = estimate_money(e, e->costs.job.direct),
        .profit = estimate_money(e, e->sale.profit_left),
        .bought = estimate_money(e, e->purchase.total),
        .hours = tape_scaled(&e->tape, e->labor.hours, 2),
        .bench = tape_scaled(&e->tape, e->labor.bench_hours, 2),
    };
    for (size_t i = 0; i < charge_count(e->job); i++) {
        o.direct += estimate_money(e, e->costs.charges[i].direct);
    }
    for (size_t i = 0; i < e->labor.operation_count; i++) {
        o.setups += tape_scaled(&e->tape, e->labor.operations[i].setups, 0);
    }
    o.left = o.before_tax - o.direct;
    return o;
}

struct outcome outcome_minus(struct outcome a, struct outcome b) {
    return (struct outcome){
        .client = a.client - b.client,
        .before_tax = a.before_tax - b.before_tax,
        .tax = a.tax - b.tax,
        .direct = a.direct - b.direct,
        .left = a.left - b.left,
        .profit = a.profit - b.profit,
        .bought = a.bought - b.bought,
        .hours = a.hours - b.hours,
        .bench = a.bench - b.bench,
        .setups = a.setups - b.setups,
    };
}

bool outcome_none(struct outcome o) {
    return o.client == 0 && o.before_tax == 0 && o.tax == 0 && o.direct == 0 && o.left == 0 &&
           o.bought == 0 && o.hours == 0 && o.bench == 0 && o.setups == 0 && o.profit == 0;
}

size_t outcome_rows_without(struct row *rows, const struct job *job, const size_t *without,
                            size_t count) {
    size_t kept = 0;
    for (size_t r = 0, next = 0; r < job->row_count; r++) {
        if (next < count && without[next] == r) {
            next++;
        } else {
            rows[kept++] = job->rows[r];
        }
    }
    return kept;
}

enum estimate_result outcome_try(struct outcome *outcome, const struct rates *rates,
                                 const struct job *job, int option, struct plan_request plans) {
    const struct estimate_request request = {.option = option, .plans = plans, .purchase = true};
    struct estimate e;
    struct problems unheard;
    *outcome = (struct outcome){0};
    if (job->row_count == 0) { /* nothing is left to be made */
        return ESTIMATE_OK;
    }
    problems_init(&unheard);
    enum estimate_result result = estimate_make(&e, rates, job, request, &unheard);
    if (unheard.failed) {
        result = ESTIMATE_MEMORY;
    }
    if (result == ESTIMATE_OK) {
        *outcome = outcome_of(&e);
    }
    estimate_clear(&e);
    problems_clear(&unheard);
    return result;
}
