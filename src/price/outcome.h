/* SPDX-License-Identifier: MIT */
/* What a job comes to, so that jobs which differ in one thing can be set side by side. Each is a
 * whole estimate, equal to that of an edited file to the cent. */
#ifndef DOORCOST_PRICE_OUTCOME_H
#define DOORCOST_PRICE_OUTCOME_H

#include "price/estimate.h"

/* What a job comes to for those who decide about it, or by how much two jobs differ. Money has the
 * decimals of the currency. */
struct outcome {
    int64_t client;     /* money: what the client pays, with tax */
    int64_t before_tax; /* money */
    int64_t tax;        /* money; a card fee is in neither of these two */
    int64_t direct;     /* money: direct cost of the doors and of the charges that are worked for */
    int64_t left;       /* before_tax less direct: what bears overhead, contingency and profit */
    int64_t bought;     /* money spent on what is bought */
    int64_t hours;      /* person-hours in hundredths */
    int64_t bench;      /* of these, at the bench */
    int64_t setups;     /* of machines and mixes */
    int64_t profit;     /* money: profit left, of the doors and the charges that are worked for */
};

/* The outcome of an estimate that was made without fault. What is bought is 0 where its purchase
 * was not asked for. */
struct outcome outcome_of(const struct estimate *estimate);

/* By how much a is more than b, in everything. */
struct outcome outcome_minus(struct outcome a, struct outcome b);

/* Whether all of it is 0: of a difference, that there is none. */
bool outcome_none(struct outcome outcome);

/* Copies the rows of the job into `rows`, which has room for all, but for those at the places
 * `without` (count of them, ascending); returns how many it holds then. */
size_t outcome_rows_without(struct row *rows, const struct job *job, const size_t *without,
                            size_t count);

/* Estimates the job, with its purchase, and gives what it comes to; nothing of the estimate is
 * kept. A job without rows comes to nothing. rates, job: read without errors, changed or not;
 * option: index into job->options, -1: the base job. What a craftsman would ask of such a job is
 * not asked. Other than ESTIMATE_OK: it could not be estimated so, and all of *outcome is 0. */
enum estimate_result outcome_try(struct outcome *outcome, const struct rates *rates,
                                 const struct job *job, int option, struct plan_request plans)
    __attribute__((warn_unused_result));

#endif
