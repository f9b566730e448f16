/* SPDX-License-Identifier: MIT */
/* The sheets to buy, by waste factor: the area of all parts with waste, up to whole sheets, the
 * last one a half where halves are sold and one is enough; and the glass.  Method: docs/method.md,
 * "Sheets", "Glass". */
#ifndef DOORCOST_STOCK_SHEET_H
#define DOORCOST_STOCK_SHEET_H

#include "stock/sheets_by_plan.h"

/* One way of saying how many are bought. */
struct sheet_way {
    fig whole, half; /* sheets; half: none where halves are not sold */
    fig bought;      /* area */
    fig cost;        /* money */
    fig factor, waste_added, yield;
};

struct sheet_buy {
    int32_t material;    /* index into rates.sheets */
    fig net;             /* area of the parts */
    fig waste, needed;   /* percent; area with waste */
    fig each, each_half; /* area of a sheet, of a half */
    fig price, half_price;
    struct sheet_way by_factor, by_plan; /* by_plan: all none without a plan */
    struct sheets_plan plan;
    fig asks;     /* percent: the waste that the plan asks for, in the file's reading of it */
    fig offcuts;  /* area that the plan leaves: bought - net - trim - kerf */
    bool planned; /* by_plan prices the job, else by_factor */
    /* of the way that prices the job */
    fig whole, half, bought, cost, factor, waste_added, yield;
    fig charged; /* money that the job pays: cost, or its part for the area needed (by plan: for the
                    parts) */
};

struct sheet_list {
    struct sheet_buy *buys;
    size_t count;
};

/* A buy for each sheet that a part takes, in the order of the rates file.  effort and errors: as
 * lumber_make.  Memory from pool, plans freed by sheets_clear. true: memory held. */
bool sheets_make(struct sheet_list *list, struct pool *pool, struct tape *tape,
                 const struct measures *measures, const struct rates *rates,
                 const struct quantities *quantities, struct plan_wish wish,
                 struct problems *problems) __attribute__((warn_unused_result));
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

/* A buy for each glass that a part takes; the panes are charged singly. Memory from pool. true:
 * memory held. */
bool glass_make(struct glass_list *list, struct pool *pool, struct tape *tape,
                const struct rates *rates, const struct quantities *quantities)
    __attribute__((warn_unused_result));

#endif
