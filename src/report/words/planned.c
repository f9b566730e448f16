/* SPDX-License-Identifier: MIT */
#include "report/words/planned.h"

struct planned planned_lumber(const struct estimate *e, size_t i) {
    const struct lumber_buy *const b = &e->lumber.buys[i];
    const struct lumber *const l = &e->rates->lumber[b->material];
    const bool missing = b->plan.no_plan_reason != NULL;
    return (struct planned){
        .name = l->name.s,
        .thickness = l->thickness_text.s,
        .waste = &l->waste,
        .waste_as = (enum waste_as)l->waste_as.choice,
        .buy = b,
        .by_factor = &b->by_factor,
        .by_plan = &b->by_plan,
        .priced = &b->priced,
        .needs = &fields_lumber,
        .way = &fields_lumber_way,
        .job = &fields_lumber_job,
        .plan = &fields_lumber_plan,
        .planned = b->planned,
        .no_plan_reason = b->plan.no_plan_reason,
        .chosen = missing ? (fig){0} : b->plan.counts[0],
        .implied_waste = b->implied_waste,
        .short_of_plan = b->short_of_plan,
        .keep_worth = b->plan.keep_worth,
    };
}

struct planned planned_sheet(const struct estimate *e, size_t i) {
    const struct sheet_buy *const b = &e->sheets.buys[i];
    const struct sheet *const s = &e->rates->sheets[b->material];
    const bool missing = b->plan.no_plan_reason != NULL;
    return (struct planned){
        .name = s->name.s,
        .waste = &s->waste,
        .waste_as = (enum waste_as)s->waste_as.choice,
        .buy = b,
        .by_factor = &b->by_factor,
        .by_plan = &b->by_plan,
        .priced = &b->priced,
        .needs = &fields_sheet,
        .way = &fields_sheet_way,
        .job = &fields_sheet_job,
        .plan = &fields_sheet_plan,
        .planned = b->planned,
        .no_plan_reason = b->plan.no_plan_reason,
        .chosen = missing ? (fig){0} : b->plan.counts[SHEET_WHOLE],
        .implied_waste = b->implied_waste,
        .short_of_plan = b->short_of_plan,
        .keep_worth = b->plan.keep_worth,
    };
}
