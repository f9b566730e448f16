/* SPDX-License-Identifier: MIT */
/* The sheets to buy, by waste factor: the area of all parts with waste, up to whole sheets, the
 * last one a half where halves are sold and one is enough; and the glass.  Method: docs/method.md,
 * "Sheets", "Glass". */
#ifndef DOORCOST_STOCK_SHEET_H
#define DOORCOST_STOCK_SHEET_H

#include "model/plan_request.h"
#include "stock/sheets_by_plan.h"

/* How many are bought by one reckoning, factor or plan. */
struct sheet_purchase_by {
    fig whole, half; /* sheets; half: none where halves are not sold */
    fig bought;      /* area */
    fig from_rack;   /* pieces of the rack, by plan; none: nothing is there */
    fig cut;         /* area: bought, and what is taken from the rack; none: nothing is there */
    fig cost;        /* money */
    fig factor, waste_added, yield; /* of the area that is cut */
};

struct sheet_buy {
    int32_t material;    /* index into rates.sheets */
    fig net;             /* area of the parts */
    fig waste, needed;   /* percent; area with waste */
    fig each, each_half; /* area of a sheet, of a half */
    fig weight;          /* of a sheet; none when its density is not known */
    fig price, half_price;
    struct sheet_purchase_by by_factor;
    struct sheet_purchase_by by_plan; /* all none without a plan */
    struct sheet_purchase_by priced;  /* the one of these two that prices the job */
    bool planned;                     /* by_plan prices the job */
    struct sheets_plan plan;
    fig implied_waste; /* percent: the waste that comes to the plan, in the file's reading of it */
    fig short_of_plan; /* area: by_plan.bought - by_factor.bought; 0: the factor buys enough */
    fig offcuts;       /* area that the plan leaves: cut - net - trim - kerf */
    fig less_rack;     /* area taken from the rack, below 0; none: nothing is there */
    fig charged; /* money that the job pays: cost, or its part for the area needed (by plan: for the
                    parts), and what the pieces from the rack are worth */
};

struct sheet_list {
    struct sheet_buy *buys;
    size_t count;
};

/* A buy for each sheet that a part takes, in the order of the rates file. Plans, errors, memory: as
 * lumber_make. false: out of memory. */
bool sheets_make(struct sheet_list *list, const struct calc *calc, struct plan_request request)
    __attribute__((warn_unused_result));
/* Frees the plans. */
void sheets_clear(struct sheet_list *list);

struct glass_buy {
    int32_t material; /* index into rates.glass */
    fig area;         /* charged */
    fig stops;        /* money for what holds the panes, in cost; none without */
    fig cost;
};

struct glass_list {
    struct glass_buy *buys;
    size_t count;
};

/* A buy for each glass that a part takes; the panes are charged singly. Memory of calc's pool.
 * false: out of memory. */
bool glass_make(struct glass_list *list, const struct calc *calc)
    __attribute__((warn_unused_result));

#endif
