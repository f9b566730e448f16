/* SPDX-License-Identifier: MIT */
/* The whole estimate of a job: all stages on one tape. */
#ifndef DOORCOST_PRICE_ESTIMATE_H
#define DOORCOST_PRICE_ESTIMATE_H

#include "price/purchase.h"
#include "price/sale.h"
#include "stock/spares.h"

struct estimate {
    const struct rates *rates;
    const struct job *job;
    int option;    /* index into job.options, -1: the base job */
    int32_t ready; /* date_number of the day by a plan (days/work/day_ready.h); 0: not planned */
    struct pool pool;
    struct tape tape;
    struct units units;
    struct doors doors;
    struct quantities quantities;
    struct spare_list spares;
    struct lumber_list lumber;
    struct sheet_list sheets;
    struct glass_list glass;
    struct banding_list banding;
    struct hardware_list hardware;
    struct finish_list finish;
    struct labor labor;
    struct costs costs;
    struct sale_figures sale;
    struct purchase purchase; /* all none where it was not asked for */
};

enum estimate_result {
    ESTIMATE_OK,
    ESTIMATE_MEMORY,
    ESTIMATE_FAULT, /* a figure grew too large, or a plan that prices the job is missing; said in
                       problems */
};

/* What is asked of an estimate beside the inputs. */
struct estimate_request {
    int option; /* index into job.options, -1: the base job */
    struct plan_request plans;
    bool purchase; /* what buying comes to is figured too, behind all the rest */
    bool traced;   /* its papers show how figures came about: tape_init */
};

/* Gathers in request.plans.ahead the plans that estimate_make will ask for, given the same. Nothing
 * else is kept, nor are problems, which the estimate itself finds. false: out of memory. */
bool estimate_tell_plans(const struct rates *rates, const struct job *job,
                         struct estimate_request request) __attribute__((warn_unused_result));

/* Estimates a job: all stages in a row. Borrows rates, job and problems; these must have been read
 * without errors.  Warnings and errors go to problems.  estimate_clear must be called whatever the
 * result. */
enum estimate_result estimate_make(struct estimate *estimate, const struct rates *rates,
                                   const struct job *job, struct estimate_request request,
                                   struct problems *problems) __attribute__((warn_unused_result));
/* Frees all but the tape, of which alone may be asked after: a paper that is laid out needs no
 * more.
 */
void estimate_keep_tape(struct estimate *estimate);
/* Frees all that the estimate owns. */
void estimate_clear(struct estimate *estimate);

/* A figure of its tape as money, at the decimals of its currency. */
static inline int64_t estimate_money(const struct estimate *estimate, fig f) {
    return tape_scaled(&estimate->tape, f, estimate->tape.money_decimals);
}

/* The option's name, or the base job's: "as listed". Borrowed. */
const char *estimate_name(const struct estimate *estimate);

#endif
