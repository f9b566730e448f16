/* SPDX-License-Identifier: MIT */
/* A job with some of its rates changed: its files are read again, with every check, and estimated
 * as a whole, so that the result is that of an edited rates file to the cent. */
#ifndef DOORCOST_TRIAL_TRIAL_H
#define DOORCOST_TRIAL_TRIAL_H

#include "model/rate_change.h"
#include "price/outcome.h"

/* What is tried. */
struct trial_job {
    const char *path; /* of the job file */
    int option;       /* index into job.options, -1: the base job */
    struct plan_request plans;
};

enum trial_result {
    TRIAL_DONE,
    TRIAL_WRONG, /* the files cannot be read so, problems has errors; or the job cannot be estimated
                    so, which the caller says */
    TRIAL_MEMORY
};

/* Reads the job with the changes and gives what it comes to; other than TRIAL_DONE: all of *outcome
 * is 0. problems: takes all that the reading finds, warnings too. */
enum trial_result trial_try(const struct trial_job *job, const struct rate_changes *changes,
                            struct outcome *outcome, struct problems *problems)
    __attribute__((warn_unused_result));

#endif
