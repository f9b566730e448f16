/* SPDX-License-Identifier: MIT */
/* The whole estimate of a job: all stages on one tape. */
#ifndef DOORCOST_PRICE_ESTIMATE_H
#define DOORCOST_PRICE_ESTIMATE_H

#include "price/cost.h"
#include "price/sale.h"

struct estimate {
    const struct rates *rates;
    const struct job *job;
    int option; /* index into job.options, -1: the base job */
    struct pool pool;
    struct tape tape;
    struct measures measures;
    struct doors doors;
    struct quantities quantities;
    struct lumber_list lumber;
    struct sheet_list sheets;
    struct glass_list glass;
    struct banding_list banding;
    struct hardware_list hardware;
    struct finish_list finish;
    struct labor labor;
    struct costs costs;
    struct sale_figures sale;
};

enum estimate_result {
    ESTIMATE_OK,
    ESTIMATE_MEMORY,
    ESTIMATE_FAULT, /* a figure grew too large, or a plan that prices the job is missing; said in
                       problems */
};

/* What an estimate is made with beside the inputs. */
struct estimate_wish {
    int option; /* index into job.options, -1: the base job */
    struct plan_wish plans;
};

/* Estimates a job.  Borrows rates, job and problems.  The inputs must have been read without
 * errors.  estimate: always left so that estimate_clear may be called. */
enum estimate_result estimate_make_as(struct estimate *estimate, const struct rates *rates,
                                      const struct job *job, struct estimate_wish wish,
                                      struct problems *problems)
    __attribute__((warn_unused_result));
/* The same without plans. */
enum estimate_result estimate_make(struct estimate *estimate, const struct rates *rates,
                                   const struct job *job, int option, struct problems *problems)
    __attribute__((warn_unused_result));
void estimate_clear(struct estimate *estimate);

/* The option's name, or the base job's: "as listed". Borrowed. */
const char *estimate_name(const struct estimate *estimate);

#endif
