/* SPDX-License-Identifier: MIT */
/* Lumber and sheets alike: what is bought by a waste factor or by a cutting plan, with the tables
 * of its figures, so that papers tell both in one way. */
#ifndef DOORCOST_REPORT_WORDS_PLANNED_H
#define DOORCOST_REPORT_WORDS_PLANNED_H

#include "report/words/field.h"

/* A kind of lumber or sheets that a job takes. Borrowed from the estimate. */
struct planned {
    const char *name;
    const char *thickness; /* of lumber, as the rates write it; else NULL */
    const struct value *waste;
    enum waste_as waste_as;
    const void *buy;                          /* struct lumber_buy, struct sheet_buy */
    const void *by_factor, *by_plan, *priced; /* struct purchase_by, struct sheet_purchase_by */
    const struct field_table *needs, *way, *job, *plan; /* of buy, of a way, of buy twice */
    bool planned;                                       /* the plan prices the job */
    const char *no_plan_reason;                         /* NULL: there is a plan */
    fig chosen; /* a figure that its planner gave; none without a plan */
    fig implied_waste;
    fig short_of_plan; /* what the plan needs more than the factor buys */
    fig keep_worth;    /* of the plan's offcuts; none without a plan */
};

/* Lumber i of those that the estimate buys. */
struct planned planned_lumber(const struct estimate *estimate, size_t i);
/* Sheet i of those that it buys. */
struct planned planned_sheet(const struct estimate *estimate, size_t i);

#endif
