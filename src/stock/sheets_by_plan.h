/* SPDX-License-Identifier: MIT */
/* The sheets of one kind by cutting plan: whole sheets and halves, and before them what is on the
 * rack; cut edge to edge, grain kept where there is one. Method: docs/method.md, "By plan", "From
 * the rack"; docs/cutting.md. */
#ifndef DOORCOST_STOCK_SHEETS_BY_PLAN_H
#define DOORCOST_STOCK_SHEETS_BY_PLAN_H

#include "model/plan_request.h"
#include "stock/rack_stock.h"
#include "stock/sheet_chooser.h"

struct sheets_plan {
    const char *no_plan_reason; /* why there is no plan; NULL: there is one */
    struct cut_job job;         /* sizes in millionths of the job's length unit */
    uint8_t price_decimals;     /* of the prices of the job, which are money */
    struct sheet_plan *plan;    /* owned by the list that holds this; NULL where there is no plan */
    struct plan_part *parts;    /* one an item of the job */
    size_t sold;                /* stocks of the job that are sold; the others are of the rack */
    struct rack_stock rack;     /* those, in their order; sizes are areas */
    fig counts[SHEET_STOCKS];   /* to buy */
    fig cost;       /* money: of what is bought, and of the rack as it is counted below */
    fig bound;      /* money: no plan costs less */
    fig gap;        /* money: what the plan costs more; nothing: no plan costs less */
    fig fewest;     /* sheets, where one size is sold and none is there: no plan takes fewer */
    fig sold_parts; /* area of the parts on sheets that are bought; none where the rack is empty */
    struct offcut_rule keep;
    fig cuts; /* of all sheets, trims in */
    /* Areas: net, trim, kerf and offcuts add up to what is bought and taken. */
    fig trim, kerf;
    fig keep_worth; /* of the offcuts: those worth keeping */
};

/* Plans the sheets of a kind (index into rates.sheets), or takes the plan made ahead. plan->plan is
 * owned by the caller and freed by sheet_plan_free, the rest is calc's pool's.  A plan is checked
 * before it is used; one that fails its check is none.  false: out of memory. */
bool sheets_plan_make(struct sheets_plan *plan, const struct calc *calc, int32_t material,
                      struct plan_request request) __attribute__((warn_unused_result));

#endif
